#include "widgets/curves/curve_card.h"

#include <algorithm>
#include <cmath>

#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/scales/distance_scale.h"

namespace bolthole {

namespace {

/// The pen of a card's first or second curve: the second is thinner and dash-dotted.
QPen curvePen(bool second, bool faded) {
    QColor color = theme().instantCenter;
    color.setAlphaF(faded ? 0.4F : 1.0F);
    QPen pen(color, second ? 1.7 : 2.2);
    pen.setCapStyle(second ? Qt::FlatCap : Qt::RoundCap);
    pen.setJoinStyle(Qt::RoundJoin);
    if (second) {
        pen.setDashPattern({4.0, 1.8, 1.0, 1.8});
    }
    return pen;
}

QPen ghostPen(const QColor& color, const QList<double>& dashes, bool second) {
    QPen pen(color, second ? 1.0 : 1.4);
    pen.setCapStyle(Qt::FlatCap);
    pen.setDashPattern(dashes);
    return pen;
}

/// An axis that only maps: the card paints grid and labels itself.
void muteAxis(QCPAxis& axis) {
    axis.setVisible(false);
    axis.grid()->setVisible(false);
}

}  // namespace

CurveCard::CurveCard(const CurveCardSpec& spec, QCustomPlot& plot, QCPAxisRect& axisRect)
    : spec_(spec), axisRect_(axisRect), range_(spec.minimumSpan) {
    for (QCPAxis* axis : axisRect.axes()) {
        muteAxis(*axis);
    }
    lines_.reserve(spec.lines.size());
    for (const CurveLine& line : spec.lines) {
        addLine(line, plot);
    }
}

CurveCard::Curve CurveCard::addCurve(const QString& name, QCustomPlot& plot) {
    QCPGraph* graph = plot.addGraph(axisRect_.axis(QCPAxis::atLeft), axisRect_.axis(QCPAxis::atBottom));
    QSharedPointer<QCPGraphDataContainer> points(new QCPGraphDataContainer);
    points->setAutoSqueeze(false);
    graph->setData(points);
    graph->setSelectable(QCP::stNone);
    graph->setAdaptiveSampling(false);
    graph->setName(name);
    return {graph, points, {}};
}

// Ghosts first: the bench's own curve lies over them.
void CurveCard::addLine(const CurveLine& spec, QCustomPlot& plot) {
    Line line{.spec = &spec};
    line.before = addCurve(spec.spokenName + QStringLiteral(", before"), plot);
    line.pointed = addCurve(spec.spokenName + QStringLiteral(", pointed at"), plot);
    line.own = addCurve(spec.spokenName, plot);
    lines_.push_back(std::move(line));
}

void CurveCard::dress(bool faded) {
    for (Line& line : lines_) {
        const bool second = &line != &lines_.front();
        line.own.graph->setPen(curvePen(second, faded));
        line.before.graph->setPen(ghostPen(theme().before, {2.0, 2.0}, second));
        line.pointed.graph->setPen(ghostPen(theme().ink, {5.0, 3.0}, second));
    }
}

// Takes the curves' points and gives the range they ask for.
Extent CurveCard::takeCurves(const Trace& trace, const GhostTraces& ghosts) {
    Extent extent = curveExtent(trace, spec_);
    for (const Trace* ghost : {ghosts.before, ghosts.pointed}) {
        if (ghost != nullptr) {
            const Extent theirs = curveExtent(*ghost, spec_);
            extent.least = std::min(extent.least, theirs.least);
            extent.most = std::max(extent.most, theirs.most);
        }
    }
    const auto take = [&](const Trace* from, const CurveLine& spec, Curve& curve) {
        curve.whole.clear();
        if (from != nullptr) {
            curvePoints(*from, spec.figure, spec_.scale, curve.whole);
        }
    };
    for (Line& line : lines_) {
        take(&trace, *line.spec, line.own);
        take(ghosts.before, *line.spec, line.before);
        take(ghosts.pointed, *line.spec, line.pointed);
    }
    return extent;
}

void CurveCard::takeSpread(const Trace& trace, const TraceSpread* spread) {
    for (Line& line : lines_) {
        line.band.clear();
        if (spread != nullptr) {
            bandPoints(trace, *spread, line.spec->figure, spec_.scale, line.band);
        }
    }
}

void CurveCard::showTrace(const Trace& trace, const GhostTraces& ghosts, const TravelSpan& span, Units units,
                          bool faded) {
    if (units != units_) {
        units_ = units;
        range_.forget();
        ticks_.clear();
    }
    span_ = span;
    outOfReach_ = outOfReach(trace);
    const Extent extent = takeCurves(trace, ghosts);
    hasPoints_ = extent.least <= extent.most;
    hasUsableRows_ = std::any_of(trace.stations.begin(), trace.stations.end(),
                                 [](const Station& station) { return station.usable; });
    const bool inverse = spec_.scale == CurveScale::inverseDistance;
    range_.follow(extent.least, extent.most, inverse ? 1.0 : shownUnit(spec_.quantity, units),
                  spec_.neverBelowLeast ? spec_.least : -std::numeric_limits<double>::infinity());
    axisRect_.axis(QCPAxis::atBottom)->setRange(range_.low(), range_.high());
    // A travel of no extent still needs an axis.
    const double least = span.bump > span.droop ? 0.0 : kMetresPerMillimetre;
    axisRect_.axis(QCPAxis::atLeft)->setRange(span.droop - least, span.bump + least);
    fillGraphs();
    dress(faded);
}

void CurveCard::fillGraphs() {
    filledFor_ = plot().size();
    const double perTravel = filledFor_.height() / axisRect_.axis(QCPAxis::atLeft)->range().size();
    const double perValue = filledFor_.width() / axisRect_.axis(QCPAxis::atBottom)->range().size();
    for (Line& line : lines_) {
        fill(line.before, perTravel, perValue);
        fill(line.pointed, perTravel, perValue);
        fill(line.own, perTravel, perValue);
    }
}

void CurveCard::fill(Curve& curve, double perTravel, double perValue) {
    points_ = curve.whole;
    thinPoints(points_, perTravel, perValue);
    curve.points->clear();
    for (const CurvePoint& point : points_) {
        curve.points->add(QCPGraphData(point.travel, point.value));
    }
}

void CurveCard::showCursor(const Station& cursor, const Station* before) {
    cursorTravel_ = cursor[Figure::travel];
    cursorUsable_ = cursor.usable;
    for (Line& line : lines_) {
        line.cursorValue = axisValue(cursor, line.spec->figure, spec_.scale);
        line.cursorText = valueText(cursor, *line.spec);
        line.beforeTexts = before == nullptr ? QStringList() : beforeTexts(cursor, *before, *line.spec);
    }
}

QStringList CurveCard::beforeTexts(const Station& cursor, const Station& before,
                                   const CurveLine& line) const {
    const QString was = valueText(before, line);
    const double change = cursor[line.figure] - before[line.figure];
    if (std::isnan(change)) {
        return {QCoreApplication::translate("TravelCurves", "before %1").arg(was), was};
    }
    const QString by = signedText(QString::fromStdString(figureText(change, spec_.quantity, units_)));
    return {QCoreApplication::translate("TravelCurves", "before %1, change %2").arg(was, by),
            QCoreApplication::translate("TravelCurves", "%2 from %1").arg(was, by),
            QStringLiteral("%2 (%1)").arg(was, by), by};
}

QString CurveCard::valueText(const Station& cursor, const CurveLine& line) const {
    const double value = cursor[line.figure];
    if (spec_.scale == CurveScale::inverseDistance && cursor.usable && std::isnan(value)) {
        return QString(QChar(0x221e));
    }
    return QString::fromStdString(figureText(value, spec_.quantity, units_));
}

QString CurveCard::unitText() const {
    return spec_.quantity == Quantity::angle ? QCoreApplication::translate("TravelCurves", "deg")
                                             : fromView(unitMark(spec_.quantity, units_));
}

QStringList CurveCard::spokenValues() const {
    QStringList parts;
    const QString mark = fromView(unitMark(spec_.quantity, units_));
    const QString gap = spec_.quantity == Quantity::angle ? QString() : QStringLiteral(" ");
    for (const Line& line : lines_) {
        if (line.cursorText == QChar(0x221e)) {
            parts << QCoreApplication::translate("TravelCurves", "%1 infinite").arg(line.spec->spokenName);
        } else if (!std::isnan(line.cursorValue)) {
            const QString sure = line.sureText.isEmpty() ? QString() : QLatin1Char(' ') + line.sureText;
            parts << line.spec->spokenName + QLatin1Char(' ') + line.cursorText + sure + gap + mark;
            parts << line.beforeTexts.mid(0, 1);
        }
    }
    return parts;
}

QRectF CurveCard::inner() const {
    return QRectF(card()).adjusted(CardType::kPad, 0, -CardType::kPad, 0);
}

TravelOnScreen CurveCard::travelAxis() const {
    const QRect at = plot();
    return {span_, static_cast<double>(at.top()), static_cast<double>(at.top() + at.height())};
}

void CurveCard::place(const CardType& type) {
    const QRectF at = plot();
    const AxisOnScreen axis{range_.low(), range_.high(),      at.left(),
                            at.right(),   inner().left() - 3, inner().right() + 3};
    title_ = fitTitle(spec_.titles, unitText(), inner().width(), type);
    const double unit = shownUnit(spec_.quantity, units_);
    ticks_ = spec_.scale == CurveScale::inverseDistance ? distanceTicks(axis, unit, type.quietMetrics)
                                                        : linearTicks(axis, unit, type.quietMetrics);
    if (plot().size() != filledFor_) {
        fillGraphs();
    }
}

CurveCard::Face CurveCard::faceNow(bool focused) const {
    return {.card = card(),
            .plot = plot(),
            .low = range_.low(),
            .high = range_.high(),
            .units = units_,
            .span = span_,
            .outOfReach = outOfReach_,
            .hasPoints = hasPoints_,
            .hasUsableRows = hasUsableRows_,
            .focused = focused};
}

bool CurveCard::takeFaceChange() {
    Face face = faceNow(false);
    if (face == shownFace_) {
        return false;
    }
    shownFace_ = std::move(face);
    return true;
}

}  // namespace bolthole
