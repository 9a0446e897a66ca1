#include "widgets/scales/center_uncertainty.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "geometry/units/uncertainty_text.h"
#include "geometry/units/units.h"
#include "widgets/scales/distance_scale.h"

namespace bolthole {

namespace {

constexpr double kSameTravel = 1e-9;  // m
/// Two numbers at once: the square root of the 95 % quantile of chi squared with two degrees of freedom,
/// -2 ln 0.05 (JCGM 102:2011, 6.5.2 with table 1, from memory).
const double kCoverage95Plane = std::sqrt(-2.0 * std::log(0.05));
constexpr int kOutlinePoints = 72;

/// The computed travels beside one, by their places, and how far it is from the first to the second.
struct Between {
    std::size_t first = 0;
    std::size_t second = 0;
    double share = 0;
};

std::optional<Between> placesBeside(const TraceUncertainty& uncertainty, double travel) {
    if (!uncertainty.known) {
        return std::nullopt;
    }
    if (std::abs(travel) < kAtRide) {
        return Between{0, 0, 0};
    }
    const std::vector<double>& travels = uncertainty.travels;
    for (std::size_t place = 1; place + 1 < travels.size(); ++place) {
        if (travel >= travels[place] - kSameTravel && travel <= travels[place + 1] + kSameTravel) {
            const double step = travels[place + 1] - travels[place];
            return Between{place, place + 1, step > 0 ? (travel - travels[place]) / step : 0.0};
        }
    }
    return std::nullopt;
}

CenterUncertainty centerUncertaintyOf(const TraceUncertainty& uncertainty, std::size_t place) {
    if (std::isnan(
            uncertainty.of(place, kInverseDistance))) {  // it rests on a number that nobody measured, too
        return {kNaN, kNaN, kNaN};
    }
    const auto row = [&](std::size_t figure) {
        return uncertainty.sensitivity.change.row(static_cast<Eigen::Index>(place * kModelFigures + figure));
    };
    const auto inverse = row(kInverseDistance);
    const auto angle = row(static_cast<std::size_t>(Figure::swingArmAngle));
    return {inverse.squaredNorm(), angle.squaredNorm(), inverse.dot(angle)};
}

// The instant center of a swing arm in the car frame.
QPointF centerOf(const GroundLine& ground, double inverse, double angle) {
    const double ahead = 1.0 / inverse;
    const double above = ahead * std::tan(angle);
    return {ground.patchX + ahead * ground.alongX - above * ground.alongZ,
            ground.patchZ + ahead * ground.alongZ + above * ground.alongX};
}

}  // namespace

double uncertaintyAt(const TraceUncertainty& uncertainty, std::size_t figure, double travel) {
    return std::abs(travel) < kAtRide ? uncertainty.of(0, figure) : uncertainty.at(figure, travel);
}

double differenceUncertaintyAt(const TraceUncertainty& one, const TraceUncertainty& other, std::size_t figure,
                               double travel) {
    const std::optional<Between> beside = placesBeside(one, travel);
    if (!beside || one.travels != other.travels) {
        return beside && beside->second == 0 ? uncertaintyOfDifference(one, other, 0, figure) : kNaN;
    }
    return (1 - beside->share) * uncertaintyOfDifference(one, other, beside->first, figure) +
           beside->share * uncertaintyOfDifference(one, other, beside->second, figure);
}

double CenterUncertainty::ofInverse() const {
    return std::sqrt(inverse);
}

double CenterUncertainty::ofHeight(double inverseDistance, double swingArm) const {
    const double tangent = std::tan(swingArm);
    const double byAngle = (1 + tangent * tangent) / inverseDistance;
    const double byInverse = -tangent / (inverseDistance * inverseDistance);
    const double variance =
        byAngle * byAngle * angle + byInverse * byInverse * inverse + 2 * byAngle * byInverse * both;
    return std::sqrt(std::max(0.0, variance));
}

std::optional<CenterUncertainty> centerUncertaintyAt(const TraceUncertainty& uncertainty, double travel) {
    const std::optional<Between> beside = placesBeside(uncertainty, travel);
    if (!beside) {
        return std::nullopt;
    }
    const CenterUncertainty first = centerUncertaintyOf(uncertainty, beside->first);
    const CenterUncertainty second = centerUncertaintyOf(uncertainty, beside->second);
    const double share = beside->share;
    const CenterUncertainty result{first.inverse + share * (second.inverse - first.inverse),
                                   first.angle + share * (second.angle - first.angle),
                                   first.both + share * (second.both - first.both)};
    const bool isKnown = std::isfinite(result.inverse) && std::isfinite(result.angle);
    return isKnown ? std::optional(result) : std::nullopt;
}

InverseEnds inverseEnds(const CenterUncertainty& uncertainty, double inverseDistance) {
    const double half = kCoverage95 * uncertainty.ofInverse();
    return {inverseDistance - half, inverseDistance + half};
}

std::vector<std::vector<QPointF>> centerRegion(const CenterUncertainty& uncertainty, const Station& station) {
    const double inverse = inverseDistance(station);
    const double angle = station[Figure::swingArmAngle];
    const double byInverse = uncertainty.ofInverse();
    if (!std::isfinite(inverse) || !std::isfinite(angle) || !(byInverse > 0)) {
        return {};
    }
    // The lower triangle of the covariance's root: a circle through it is the ellipse.
    const double along = uncertainty.both / byInverse;
    const double across = std::sqrt(std::max(0.0, uncertainty.angle - along * along));
    std::vector<std::vector<QPointF>> pieces(1);
    double last = 0;
    for (int i = 0; i <= kOutlinePoints; ++i) {
        const double turn = 2 * std::numbers::pi * i / kOutlinePoints;
        const double c = kCoverage95Plane * std::cos(turn);
        const double s = kCoverage95Plane * std::sin(turn);
        const double at = inverse + byInverse * c;
        if (i > 0 && at * last <= 0 && !pieces.back().empty()) {
            pieces.emplace_back();
        }
        last = at;
        if (at != 0) {
            pieces.back().push_back(centerOf(station.ground, at, angle + along * c + across * s));
        }
    }
    return pieces;
}

}  // namespace bolthole
