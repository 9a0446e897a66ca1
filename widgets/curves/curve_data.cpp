#include "widgets/curves/curve_data.h"

#include <algorithm>
#include <cmath>

#include "geometry/units/uncertainty_text.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/scales/center_uncertainty.h"
#include "widgets/scales/distance_scale.h"

namespace bolthole {

namespace {

constexpr double kEndless = std::numeric_limits<double>::infinity();
/// An instant center farther than this, as 1/m, does not set the height's axis: 5 m.
constexpr double kFarInverse = 0.2;
/// Points of the asymptote on each side of a pole; each halves the distance in 1/x.
constexpr int kAsymptotePoints = 7;

CurveCardSpec distanceCard() {
    CurveCardSpec card;
    card.titles = {tr("IC distance"), tr("IC dist."), tr("IC")};
    card.scale = CurveScale::inverseDistance;
    card.minimumSpan = 0.12;  // 1/m: 7 in about an instant center 60 in ahead
    card.least = -kMostInverseDistance;
    card.most = kMostInverseDistance;
    card.reference = 0.0;
    card.axisWords = tr("spaced by 1/distance");
    card.about =
        tr("Spaced by 1/distance: so an instant center that is infinitely far, or behind the axle beyond "
           "that, has "
           "its place too. Toward \u221e a step of the axis is more and more distance.");
    card.lines = {{Figure::icX, tr("IC distance")}};
    return card;
}

CurveCardSpec heightCard() {
    CurveCardSpec card;
    card.titles = {tr("IC height"), tr("IC hgt.")};
    card.scale = CurveScale::throughInfinity;
    card.minimumSpan = kMetresPerInch;
    card.least = -2.5;
    card.most = 2.5;
    card.reference = 0.0;
    card.about = tr(
        "Where the shade of the \u00b1 stands without the curve, the computed height is off the axis and its "
        "uncertainty reaches into it: there the instant center is near infinity.");
    card.lines = {{Figure::icZ, tr("IC height")}};
    return card;
}

CurveCardSpec antiSquatCard() {
    CurveCardSpec card;
    card.titles = {tr("Anti-squat"), tr("A-squat")};
    card.quantity = Quantity::percent;
    card.minimumSpan = 5.0;
    card.least = -2000.0;
    card.most = 2000.0;
    card.reference = 100.0;
    card.lines = {{Figure::antiSquat, tr("anti-squat")}};
    return card;
}

CurveCardSpec pinionCard() {
    CurveCardSpec card;
    card.titles = {tr("Pinion")};
    card.quantity = Quantity::angle;
    card.minimumSpan = 0.5 * kRadiansPerDegree;
    card.reference = 0.0;
    card.lines = {{Figure::pinion, tr("pinion"), {tr("to ground"), tr("ground")}},
                  {Figure::pinionToDriveshaft, tr("pinion to driveshaft"), {tr("to shaft"), tr("shaft")}}};
    return card;
}

CurveCardSpec jointsCard() {
    CurveCardSpec card;
    card.titles = {tr("Joints")};
    card.quantity = Quantity::angle;
    card.minimumSpan = 0.5 * kRadiansPerDegree;
    card.least = 0.0;
    card.neverBelowLeast = true;
    card.lines = {{Figure::frontJoint, tr("front joint"), {tr("front")}},
                  {Figure::rearJoint, tr("rear joint"), {tr("rear")}}};
    return card;
}

/// A row of a curve that may pass infinity: height is tangent / inverse.
struct InfinityRow {
    double travel = 0;
    double inverse = kNaN;  // 1/distance
    double tangent = kNaN;  // of the swing arm
};

InfinityRow infinityRow(const Station& station) {
    return {station[Figure::travel], inverseDistance(station), std::tan(station[Figure::swingArmAngle])};
}

/// The uncertainty of a figure along a trace, as the ends of the axis's value; NaN where that is not known.
class Ends {
  public:
    Ends(const TraceUncertainty* uncertainty, Figure figure, CurveScale scale)
        : uncertainty_(uncertainty != nullptr && uncertainty->known ? uncertainty : nullptr),
          index_(scale == CurveScale::inverseDistance ? kInverseDistance : static_cast<std::size_t>(figure)) {
    }

    /// A point of the figure itself, or of 1/distance.
    [[nodiscard]] ChartPoint at(double travel, double value) const {
        return around(travel, value,
                      uncertainty_ == nullptr ? kNaN : uncertaintyAt(*uncertainty_, index_, travel));
    }
    /// A point of the instant center's height.
    [[nodiscard]] ChartPoint atHeight(const InfinityRow& row) const {
        const double height = row.tangent / row.inverse;
        if (uncertainty_ == nullptr || std::isnan(row.inverse)) {
            return around(row.travel, height, kNaN);
        }
        const std::optional<CenterUncertainty> center = centerUncertaintyAt(*uncertainty_, row.travel);
        if (!center) {
            return around(row.travel, height, kNaN);
        }
        if (inverseEnds(*center, row.inverse).throughInfinity()) {
            return {row.travel, height, -kEndless, kEndless};
        }
        return around(row.travel, height, center->ofHeight(row.inverse, std::atan(row.tangent)));
    }

  private:
    static ChartPoint around(double travel, double value, double standard) {
        const double half = kCoverage95 * standard;
        return {travel, value, value - half, value + half};
    }

    const TraceUncertainty* uncertainty_;
    std::size_t index_;
};

/// Follows the asymptote from a row to the pole at `poleTravel`, or the other way round.
void addAsymptote(const InfinityRow& from, double poleTravel, double poleTangent, bool towardPole,
                  const Ends& ends, std::vector<ChartPoint>& points) {
    for (int i = 1; i <= kAsymptotePoints; ++i) {
        const double left = std::ldexp(1.0, towardPole ? -i : i - kAsymptotePoints - 1);
        points.push_back(ends.atHeight({poleTravel + (from.travel - poleTravel) * left, from.inverse * left,
                                        poleTangent + (from.tangent - poleTangent) * left}));
    }
}

/// Adds the pole between two rows where the instant center passes infinity; nothing elsewhere.
void addPole(const InfinityRow& a, const InfinityRow& b, const Ends& ends, std::vector<ChartPoint>& points) {
    const bool passes = (a.inverse <= 0) != (b.inverse <= 0) || a.inverse == 0 || b.inverse == 0;
    const bool near = std::abs(a.inverse) + std::abs(b.inverse) < kMostInverseDistance;
    if (!passes || !near || a.inverse == b.inverse) {
        return;
    }
    const double share = a.inverse / (a.inverse - b.inverse);
    const double poleTravel = a.travel + (b.travel - a.travel) * share;
    const double poleTangent = a.tangent + (b.tangent - a.tangent) * share;
    if (a.inverse != 0) {
        addAsymptote(a, poleTravel, poleTangent, true, ends, points);
    }
    const ChartPoint pole = ends.atHeight({poleTravel, 0.0, poleTangent});
    points.push_back({poleTravel, kNaN, pole.low, pole.high});
    if (b.inverse != 0) {
        addAsymptote(b, poleTravel, poleTangent, false, ends, points);
    }
}

/// Adds what lies between two usable rows, apart from a straight line.
void addBetween(const Station& a, const Station& b, CurveScale scale, const Ends& ends,
                std::vector<ChartPoint>& points) {
    if (scale == CurveScale::throughInfinity) {
        addPole(infinityRow(a), infinityRow(b), ends, points);
        return;
    }
    const double before = inverseDistance(a);
    const double after = inverseDistance(b);
    const bool overPatch = before * after < 0 && std::abs(before) + std::abs(after) >= kMostInverseDistance;
    if (scale == CurveScale::inverseDistance && overPatch) {
        points.push_back({.imposed = (a[Figure::travel] + b[Figure::travel]) / 2});
    }
}

}  // namespace

const std::vector<CurveCardSpec>& curveCardSpecs() {
    static const std::vector<CurveCardSpec> specs = [] {
        std::vector<CurveCardSpec> cards{distanceCard(), heightCard(), antiSquatCard(), pinionCard(),
                                         jointsCard()};
        cards[0].absent = cards[1].absent = cards[2].absent = tr("no figures");
        cards[3].absent = cards[4].absent = tr("no driveline measured");
        return cards;
    }();
    return specs;
}

ChartCard emptyCard(const CurveCardSpec& spec, Units units) {
    ChartCard card;
    card.titles = spec.titles;
    card.unitText = spec.quantity == Quantity::angle ? tr("deg") : fromView(unitMark(spec.quantity, units));
    card.unit = shownUnit(spec.quantity, units);
    card.axisWords = spec.axisWords;
    card.about = spec.about;
    card.scale = spec.scale == CurveScale::inverseDistance ? ChartScale::inverseDistance : ChartScale::plain;
    card.minimumSpan = spec.minimumSpan;
    card.least = spec.least;
    card.most = spec.most;
    card.neverBelowLeast = spec.neverBelowLeast;
    if (spec.reference) {
        card.rules = {referenceRule(*spec.reference)};
    }
    return card;
}

double axisValue(const Station& station, Figure figure, CurveScale scale) {
    if (!station.usable) {
        return kNaN;
    }
    return scale == CurveScale::inverseDistance ? inverseDistance(station) : station[figure];
}

void curvePoints(const Trace& trace, Figure figure, CurveScale scale, const TraceUncertainty* uncertainty,
                 std::vector<ChartPoint>& points) {
    const Ends ends(uncertainty, figure, scale);
    points.clear();
    const Station* previous = nullptr;
    for (const Station& station : trace.stations) {
        if (previous != nullptr && previous->usable && station.usable && scale != CurveScale::plain) {
            addBetween(*previous, station, scale, ends, points);
        }
        const double value = axisValue(station, figure, scale);
        ChartPoint point = station.usable && scale == CurveScale::throughInfinity
                               ? ends.atHeight(infinityRow(station))
                               : ends.at(station[Figure::travel], value);
        point.value = value;  // exactly the trace's
        points.push_back(point);
        previous = &station;
    }
}

Extent curveExtent(const Trace& trace, const CurveCardSpec& spec) {
    Extent nearby;
    Extent all;
    for (const Station& station : trace.stations) {
        const bool isNear =
            spec.scale != CurveScale::throughInfinity || std::abs(inverseDistance(station)) >= kFarInverse;
        for (const CurveLine& line : spec.lines) {
            const double value =
                std::clamp(axisValue(station, line.figure, spec.scale), spec.least, spec.most);
            all.take(value);
            if (isNear) {
                nearby.take(value);
            }
        }
    }
    return nearby.least <= nearby.most ? nearby : all;
}

}  // namespace bolthole
