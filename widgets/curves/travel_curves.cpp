#include "widgets/curves/travel_curves.h"

#include <algorithm>
#include <cmath>

#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/change_words.h"
#include "widgets/words/uncertainty_words.h"

namespace bolthole {

namespace {

// Each line of a card has three series, the ghosts first.
constexpr std::size_t kSeriesALine = 3;
constexpr std::size_t kOwn = 2;

ChartLook travelLook() {
    ChartLook look;
    look.labelsImposed = false;
    look.size = QSize(560, 380);
    return look;
}

ChartSeries ghostSeries(const QString& name, ThemeColor color, ChartLine line, bool isSecond) {
    return {.name = name, .color = color, .line = line, .width = isSecond ? 1.0 : 1.4, .isGhost = true};
}

/// The series of a card's lines, without points.
std::vector<ChartSeries> seriesOf(const CurveCardSpec& spec) {
    std::vector<ChartSeries> series;
    for (const CurveLine& line : spec.lines) {
        const bool isSecond = !series.empty();
        series.push_back(ghostSeries(TravelCurves::tr("%1, before").arg(line.name), &Theme::baseline,
                                     ChartLine::fineDashes, isSecond));
        series.push_back(ghostSeries(TravelCurves::tr("%1, pointed at").arg(line.name), &Theme::ink,
                                     ChartLine::longDashes, isSecond));
        series.push_back({.name = line.name,
                          .keyNames = line.keyNames,
                          .line = isSecond ? ChartLine::dashDotted : ChartLine::solid,
                          .width = isSecond ? 1.7 : 2.2});
    }
    return series;
}

bool hasCurve(const BenchState& state) {
    return state.trace.ride.usable && !state.trace.stations.empty();
}

QString figureWords(const Station& at, const CurveLine& line, const CurveCardSpec& spec, Units units) {
    const double value = at[line.figure];
    if (spec.scale == CurveScale::inverseDistance && at.usable && std::isnan(value)) {
        return QString(kInfinity);
    }
    return QString::fromStdString(figureText(value, spec.quantity, units));
}

/// What it was and by how much it changed, the longest first: cards side by side say it alike.
QStringList baselineWords(const BenchState& state, const CurveLine& line, const CurveCardSpec& spec) {
    const Units units = state.style.units;
    const Station& baseline = state.baseline->cursor;
    const QString was = figureWords(baseline, line, spec, units);
    if (std::isnan(state.cursor[line.figure] - baseline[line.figure])) {
        return {TravelCurves::tr("before %1").arg(was), was};
    }
    const QString by =
        fineShownChange(baseline[line.figure], state.cursor[line.figure], spec.quantity, units);
    return {TravelCurves::tr("before %1, change %2").arg(was, by),
            QStringLiteral("%1 → %2").arg(was, figureWords(state.cursor, line, spec, units)),
            QStringLiteral("Δ ") + by};
}

/// "IC distance 58.2 in"; empty where the figure does not exist.
QString spokenWords(const ChartValue& there, const CurveLine& line, const CurveCardSpec& spec, Units units) {
    if (there.text == QString(kInfinity)) {
        return TravelCurves::tr("%1 infinite").arg(line.name);
    }
    if (std::isnan(there.value)) {
        return {};
    }
    const QString plusMinus = there.plusMinus.isEmpty() ? QString() : QLatin1Char(' ') + there.plusMinus;
    const QString gap = spec.quantity == Quantity::angle ? QString() : QStringLiteral(" ");
    return line.name + QLatin1Char(' ') + there.text + plusMinus + gap +
           fromView(unitMark(spec.quantity, units));
}

void takeValue(const BenchState& state, const CurveLine& line, const CurveCardSpec& spec, ChartValue& there) {
    const Units units = state.style.units;
    there.value = axisValue(state.cursor, line.figure, spec.scale);
    there.text = figureWords(state.cursor, line, spec, units);
    there.plusMinus = cursorUncertaintyWords(state, line.figure);
    there.baseline = state.baseline ? baselineWords(state, line, spec) : QStringList();
    there.spoken = spokenWords(there, line, spec, units);
}

}  // namespace

TravelCurves::TravelCurves(QWidget* parent) : CurveChart(tr("Travel curves"), travelLook(), parent) {
    setStatusTip(tr("Drag to move the axle; Up, Down, Page Up, Page Down, Home, End; R for ride height"));
    setWhatsThis(tr(
        "Each curve shows one figure through the travel, full bump at the top. In the band around it 95 of "
        "100 cars lie that are measured like this one. Drag up or down anywhere to "
        "move the axle. Up and Down: one step; Page Up and Page Down: ten; Home: full bump; End: full "
        "droop; R or a double click: ride height."));
    for (const CurveCardSpec& spec : curveCardSpecs()) {
        made_.push_back(emptyCard(spec, units_));
        made_.back().series = seriesOf(spec);
        there_.emplace_back(made_.back().series.size());
    }
}

QSize TravelCurves::minimumSizeHint() const {
    constexpr double kCardHeights = 5.5;  // of the quiet type: the least width of a card
    constexpr int kGaps = 20;
    const double card = type().quietMetrics.height() * kCardHeights;
    return {static_cast<int>(5 * card) + kGaps, CurveChart::minimumSizeHint().height() + 20};
}

void TravelCurves::takeCard(std::size_t index, const BenchState& state) {
    const CurveCardSpec& spec = curveCardSpecs()[index];
    ChartCard& card = made_[index];
    const Trace* traces[kSeriesALine] = {state.baseline ? &state.baseline->trace : nullptr,
                                         state.pointed ? &state.pointed->trace : nullptr,
                                         hasCurve(state) ? &state.trace : nullptr};
    const TraceUncertainty* uncertainty = state.showsUncertainty ? &state.uncertainty : nullptr;
    Extent extent;
    for (std::size_t each = 0; each < kSeriesALine; ++each) {
        const Trace* trace = traces[each];
        if (trace != nullptr) {
            const Extent theirs = curveExtent(*trace, spec);
            extent.take(theirs.least);
            extent.take(theirs.most);
        }
        for (std::size_t line = 0; line < spec.lines.size(); ++line) {
            std::vector<ChartPoint>& points = card.series[kSeriesALine * line + each].points;
            points.clear();
            if (trace != nullptr) {
                curvePoints(*trace, spec.lines[line].figure, spec.scale, each == kOwn ? uncertainty : nullptr,
                            points);
            }
        }
    }
    card.extent = extent;
    card.hasBaseline = state.baseline.has_value();
    card.restsOnStarts = std::ranges::any_of(spec.lines, [&](const CurveLine& line) {
        return !startsBehind(state.uncertainty, line.figure).empty();
    });
    card.absent = hasCurve(state) ? spec.absent : QString();
    card.stretches.clear();
    for (const OutOfReach& stretch : outOfReach(state.trace)) {
        card.stretches.push_back({stretch.from, stretch.to, tr("out of reach")});
    }
}

void TravelCurves::takeProblem(const BenchState& state) {
    const QString problem = QString::fromStdString(state.problem);
    QString words;
    if (!hasCurve(state)) {
        words = tr("No curve: %1").arg(problem.isEmpty() ? tr("the car can't be assembled") : problem);
    } else if (!state.traceIsCurrent) {
        words =
            tr("Last curve that worked") + (problem.isEmpty() ? QString() : QStringLiteral(". ") + problem);
    }
    showMessage(words);
    setFaded(!state.traceIsCurrent);
}

void TravelCurves::showTrace(const BenchState& state) {
    if (units_ != state.style.units) {
        units_ = state.style.units;
        for (std::size_t card = 0; card < made_.size(); ++card) {
            std::vector<ChartSeries> series = std::move(made_[card].series);
            made_[card] = emptyCard(curveCardSpecs()[card], units_);
            made_[card].series = std::move(series);
        }
    }
    for (std::size_t card = 0; card < made_.size(); ++card) {
        takeCard(card, state);
    }
    showCards(travelAxis(travelSpan(state), units_), made_);
    takeProblem(state);
    showCursor(state);
}

void TravelCurves::showCursor(const BenchState& state) {
    for (std::size_t card = 0; card < there_.size(); ++card) {
        const CurveCardSpec& spec = curveCardSpecs()[card];
        for (std::size_t line = 0; line < spec.lines.size(); ++line) {
            takeValue(state, spec.lines[line], spec, there_[card][kSeriesALine * line + kOwn]);
        }
    }
    CurveChart::showCursor(state.cursorTravel, there_);
}

}  // namespace bolthole
