#include "widgets/pages/driveline/driveline_cards.h"

#include <algorithm>
#include <cmath>

#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

constexpr double kFarBound = 2.5;  // times the curves' largest value; a bound farther off is not drawn
constexpr double kPercent = 0.01;

DrivelineCardSpec jointCard(const DrivelineReading& reading) {
    DrivelineCardSpec card;
    card.title = tr("Joint angles");
    card.unitText = tr("deg");
    card.unit = kRadiansPerDegree;
    card.minimumSpan = 0.5 * kRadiansPerDegree;
    card.share = 1.35;
    const std::size_t joints = reading.ride.coasting.joints;
    for (std::size_t joint = 0; joint < joints; ++joint) {
        const CurveMark mark = joint == 0            ? CurveMark::circle
                               : joint + 1 == joints ? CurveMark::square
                                                     : CurveMark::diamond;
        card.curves.push_back({jointWords(joint, joints), mark,
                               [joint](const DrivelineFigures& figures) { return figures.angle[joint]; }});
    }
    if (reading.line.jointLimit) {
        card.bounds.push_back({*reading.line.jointLimit, tr("limit entered")});
    }
    if (const std::optional<double> speed = reading.setup.speed()) {
        const AngleLimit limit = jointAngleLimit(*speed);
        const QString words = limit.pastTable ? tr("less than this at %1 rpm") : tr("limit at %1 rpm");
        card.bounds.push_back({limit.angle, words.arg(std::lround(*speed / kRpm))});
    }
    return card;
}

DrivelineCardSpec equivalentCard() {
    DrivelineCardSpec card;
    card.title = tr("Equivalent angle");
    card.unitText = tr("deg");
    card.unit = kRadiansPerDegree;
    card.minimumSpan = 0.5 * kRadiansPerDegree;
    card.curves = {{tr("together"), CurveMark::circle,
                    [](const DrivelineFigures& figures) { return figures.equivalent; }}};
    card.bounds = {{kMostEquivalent, tr("usual most, 3°")}};
    return card;
}

DrivelineCardSpec swingCard() {
    DrivelineCardSpec card;
    card.title = tr("Speed variation");
    card.unitText = QStringLiteral("%");
    card.unit = kPercent;
    card.minimumSpan = 0.05 * kPercent;
    card.curves = {
        {tr("pinion"), CurveMark::circle, [](const DrivelineFigures& figures) { return figures.swing; }}};
    card.bounds = {{speedSwing(kMostEquivalent), tr("that of 3°")}};
    return card;
}

DrivelineCardSpec plungeCard(const DrivelineReading& reading, Units units) {
    DrivelineCardSpec card;
    card.title = tr("Slip-yoke travel");
    card.unitText = unitText(Quantity::length, units);
    card.unit = shownUnit(Quantity::length, units);
    card.decimals = units == Units::inch ? 2 : 1;
    card.minimumSpan = 0.1 * kMetresPerInch;
    card.neverNegative = false;
    card.curves = {
        {tr("out"), CurveMark::circle, [](const DrivelineFigures& figures) { return figures.plunge; }}};
    if (const std::optional<SlipYoke>& slip = reading.setup.slip) {
        card.bounds = {{slip->engagement - slip->leastEngagement, tr("too little spline")},
                       {-slip->inward, tr("bottoms")}};
    }
    return card;
}

}  // namespace

std::vector<DrivelineCardSpec> drivelineCardSpecs(const DrivelineReading& reading, Units units) {
    return {jointCard(reading), equivalentCard(), swingCard(), plungeCard(reading, units)};
}

DrivelineCurveCard::DrivelineCurveCard(DrivelineCardSpec spec)
    : spec_(std::move(spec)), range_(spec_.minimumSpan) {}

void DrivelineCurveCard::setSpec(DrivelineCardSpec spec) {
    if (spec.unit != spec_.unit) {
        range_.forget();
    }
    spec_ = std::move(spec);
}

void DrivelineCurveCard::showReading(const DrivelineReading& reading) {
    reading_ = &reading;
    Extent extent;
    double farthest = spec_.minimumSpan;
    for (const DrivelineRow& row : reading.rows) {
        for (const DrivelineCurve& curve : spec_.curves) {
            if (row.usable) {
                extent.take(curve.value(row.coasting));
                extent.take(curve.value(row.woundUp));
            }
        }
    }
    farthest = std::max({farthest, std::abs(extent.least), std::abs(extent.most)});
    for (const DrivelineBound& bound : spec_.bounds) {
        if (std::abs(bound.at) <= kFarBound * farthest) {
            extent.take(bound.at);
        }
    }
    range_.follow(extent.least, extent.most, spec_.unit,
                  spec_.neverNegative ? 0.0 : -std::numeric_limits<double>::infinity());
}

void DrivelineCurveCard::place(const QRectF& card, const QRectF& plot, const CardType& type) {
    card_ = card;
    plot_ = plot;
    const AxisOnScreen axis{range_.low(), range_.high(),   plot.left(),
                            plot.right(), card.left() + 4, card.right() - 4};
    ticks_ = linearTicks(axis, spec_.unit, type.quietMetrics);
}

bool DrivelineCurveCard::showsBound(const DrivelineBound& bound) const {
    return bound.at >= range_.low() && bound.at <= range_.high();
}

double DrivelineCurveCard::across(double value) const {
    return plot_.left() + (value - range_.low()) / (range_.high() - range_.low()) * plot_.width();
}

QString DrivelineCurveCard::valueText(double value) const {
    if (!std::isfinite(value)) {
        return QStringLiteral("—");
    }
    return tickText(value / spec_.unit, std::pow(10.0, -spec_.decimals));
}

QStringList DrivelineCurveCard::spokenValues(const DrivelineRow& cursor) const {
    QStringList parts;
    for (const DrivelineCurve& curve : spec_.curves) {
        const QString what = spec_.curves.size() == 1 ? spec_.title.toLower() : curve.name;
        QString part =
            QStringLiteral("%1 %2 %3").arg(what, valueText(curve.value(cursor.coasting)), spec_.unitText);
        if (reading_->windUp) {
            part += tr(", wound up %1").arg(valueText(curve.value(cursor.woundUp)));
        }
        parts << part;
    }
    return parts;
}

}  // namespace bolthole
