#include "widgets/papers/change_sheet_curves.h"

#include <algorithm>
#include <cmath>

#include "widgets/curves/chart_paper.h"
#include "widgets/curves/curve_data.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

using kit_type::kStrong;
using kit_type::kText;

/// The card of the travel curves that shows the figure, with that one line.
CurveCardSpec specOf(Figure figure) {
    for (const CurveCardSpec& spec : curveCardSpecs()) {
        for (const CurveLine& line : spec.lines) {
            if (line.figure == figure) {
                CurveCardSpec one = spec;
                one.lines = {line};
                return one;
            }
        }
    }
    return {};
}

void addState(const Trace& trace, const CurveCardSpec& spec, bool isAfter, ChartCard& card, Extent& extent) {
    const Figure figure = spec.lines.front().figure;
    const Extent theirs = curveExtent(trace, spec);
    extent.take(theirs.least);
    extent.take(theirs.most);
    ChartSeries line;
    line.line = isAfter ? ChartLine::solid : ChartLine::dashed;
    line.width = isAfter ? 2.2 : 1.4;
    if (trace.assembly.usable()) {
        curvePoints(trace, figure, spec.scale, nullptr, line.points);
    }
    card.series.push_back(std::move(line));
    ChartSeries ride;
    ride.line = ChartLine::none;
    ride.mark = ChartMark::circle;
    ride.isMarkFilled = isAfter;
    ride.marksPoints = true;
    ride.points = {{.imposed = 0, .value = axisValue(trace.ride, figure, spec.scale)}};
    card.series.push_back(std::move(ride));
}

ChartCard cardOf(Figure figure, const Comparison& comparison, Units units) {
    const CurveCardSpec spec = specOf(figure);
    ChartCard card = emptyCard(spec, units);
    const QString& name = spec.lines.front().name;
    card.titles = {name.startsWith(QLatin1String("IC")) ? name : capitalized(name)};
    card.unitText = unitText(spec.quantity, units);
    Extent extent;
    addState(comparison.before, spec, false, card, extent);
    addState(comparison.after, spec, true, card, extent);
    card.extent = extent;
    return card;
}

PaperLettering letteringOf(QPainter& painter, const PrintFonts& fonts) {
    // PrintFonts' sizes are hundredths of a mm; ticks are placed in px.
    QFont font = fonts.font(kText, QStringLiteral("0"));
    font.setPixelSize(static_cast<int>(std::ceil(font.pixelSize() / 100.0 / kPaperPixel)));
    return {kText.digits, QFontMetricsF(font),
            [&fonts](const QString& text) { return fonts.width(text, kText); },
            [&fonts](const QString& text, double width) { return fonts.elided(text, kStrong, width); },
            [&painter, &fonts](QPointF at, const QString& text, bool isTitle, Qt::Alignment align) {
                fonts.draw(painter, at, text, isTitle ? kStrong : kText,
                           static_cast<Qt::AlignmentFlag>(static_cast<int>(align)));
            }};
}

}  // namespace

void drawSheetCurves(QPainter& painter, const QRectF& area, const PrintFonts& fonts,
                     const Comparison& comparison, Units units) {
    const TravelRange& before = comparison.beforeCar.travel;
    const TravelRange& after = comparison.afterCar.travel;
    const TravelSpan span{-std::max(before.droop, after.droop), std::max(before.bump, after.bump),
                          std::max(before.steps, after.steps)};
    const bool hasDriveline = comparison.beforeCar.driveline || comparison.afterCar.driveline;
    std::vector<ChartCard> cards;
    for (const Figure figure :
         {Figure::antiSquat, Figure::icX, hasDriveline ? Figure::pinionToDriveshaft : Figure::icZ}) {
        cards.push_back(cardOf(figure, comparison, units));
    }
    painter.save();
    paintChartOnPaper(painter, area, travelAxis(span, units), cards, letteringOf(painter, fonts));
    painter.restore();
}

}  // namespace bolthole
