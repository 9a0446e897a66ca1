#include "widgets/curves/curve_data.h"

#include <algorithm>
#include <cmath>

#include "widgets/kit/translation.h"
#include "widgets/scales/distance_scale.h"

namespace bolthole {

namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
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
    card.lines = {{Figure::pinion, tr("pinion"), {tr("to ground"), tr("ground"), tr("gnd")}},
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
    double inverse = kNan;  // 1/distance
    double tangent = kNan;  // of the swing arm
};

InfinityRow infinityRow(const Station& station) {
    return {station[Figure::travel], inverseDistance(station), std::tan(station[Figure::swingArmAngle])};
}

/// Follows the asymptote from a row to the pole at `poleTravel`, or the other way round.
void addAsymptote(const InfinityRow& from, double poleTravel, double poleTangent, bool towardPole,
                  std::vector<CurvePoint>& points) {
    for (int i = 1; i <= kAsymptotePoints; ++i) {
        const double left = std::ldexp(1.0, towardPole ? -i : i - kAsymptotePoints - 1);
        const double travel = poleTravel + (from.travel - poleTravel) * left;
        const double tangent = poleTangent + (from.tangent - poleTangent) * left;
        points.push_back({travel, tangent / (from.inverse * left)});
    }
}

/// Adds the pole between two rows where the instant center passes infinity; nothing elsewhere.
void addPole(const InfinityRow& a, const InfinityRow& b, std::vector<CurvePoint>& points) {
    const bool passes = (a.inverse <= 0) != (b.inverse <= 0) || a.inverse == 0 || b.inverse == 0;
    const bool near = std::abs(a.inverse) + std::abs(b.inverse) < kMostInverseDistance;
    if (!passes || !near || a.inverse == b.inverse) {
        return;
    }
    const double share = a.inverse / (a.inverse - b.inverse);
    const double poleTravel = a.travel + (b.travel - a.travel) * share;
    const double poleTangent = a.tangent + (b.tangent - a.tangent) * share;
    if (a.inverse != 0) {
        addAsymptote(a, poleTravel, poleTangent, true, points);
    }
    points.push_back({poleTravel, kNan});
    if (b.inverse != 0) {
        addAsymptote(b, poleTravel, poleTangent, false, points);
    }
}

/// Adds what lies between two usable rows, apart from a straight line.
void addBetween(const Station& a, const Station& b, CurveScale scale, std::vector<CurvePoint>& points) {
    if (scale == CurveScale::throughInfinity) {
        addPole(infinityRow(a), infinityRow(b), points);
        return;
    }
    const double before = inverseDistance(a);
    const double after = inverseDistance(b);
    const bool overPatch = before * after < 0 && std::abs(before) + std::abs(after) >= kMostInverseDistance;
    if (scale == CurveScale::inverseDistance && overPatch) {
        points.push_back({(a[Figure::travel] + b[Figure::travel]) / 2, kNan});
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

double axisValue(const Station& station, Figure figure, CurveScale scale) {
    if (!station.usable) {
        return kNan;
    }
    return scale == CurveScale::inverseDistance ? inverseDistance(station) : station[figure];
}

void curvePoints(const Trace& trace, Figure figure, CurveScale scale, std::vector<CurvePoint>& points) {
    points.clear();
    const Station* previous = nullptr;
    for (const Station& station : trace.stations) {
        if (previous != nullptr && previous->usable && station.usable && scale != CurveScale::plain) {
            addBetween(*previous, station, scale, points);
        }
        points.push_back({station[Figure::travel], axisValue(station, figure, scale)});
        previous = &station;
    }
}

namespace {

constexpr double kInvisible = 0.1;        // px
constexpr std::size_t kMostTakenOut = 6;  // points in a row

// Whether all points strictly between `from` and `to` lie on the line through those two, as far as the eye
// can tell.
bool isStraight(const std::vector<CurvePoint>& points, std::size_t from, std::size_t to,
                double pixelsPerTravel, double pixelsPerValue) {
    const double across = (points[to].value - points[from].value) * pixelsPerValue;
    const double up = (points[to].travel - points[from].travel) * pixelsPerTravel;
    const double reach = kInvisible * std::hypot(across, up);
    for (std::size_t i = from + 1; i < to; ++i) {
        const double x = (points[i].value - points[from].value) * pixelsPerValue;
        const double y = (points[i].travel - points[from].travel) * pixelsPerTravel;
        if (!(std::abs(x * up - y * across) <= reach)) {  // farther, or a break
            return false;
        }
    }
    return true;
}

}  // namespace

void thinPoints(std::vector<CurvePoint>& points, double pixelsPerTravel, double pixelsPerValue) {
    std::vector<CurvePoint>& kept = points;
    std::size_t keptCount = std::min<std::size_t>(points.size(), 1);
    std::size_t last = 0;  // index of the last kept point, as it came
    for (std::size_t i = 1; i < points.size(); ++i) {
        const bool canGo = i + 1 < points.size() && i - last < kMostTakenOut &&
                           isStraight(points, last, i + 1, pixelsPerTravel, pixelsPerValue);
        if (!canGo) {
            kept[keptCount++] = points[i];
            last = i;
        }
    }
    points.resize(keptCount);
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
