// The uncertainty of the instant center, in numbers that run smoothly through infinity.
#pragma once

#include <QPointF>
#include <optional>
#include <vector>

#include "widgets/state/bench_state.h"

namespace bolthole {

/// A travel this near to 0 is ride, m: there the uncertainty is computed, not interpolated.
inline constexpr double kAtRide = 5e-5;

/// Standard uncertainty of a figure at a travel; `figure` as in ModelRow. NaN where it is not known.
[[nodiscard]] double uncertaintyAt(const TraceUncertainty& uncertainty, std::size_t figure, double travel);

/// The same of the difference between two cars; NaN also where their travels differ. Between the computed
/// travels along a straight line.
[[nodiscard]] double differenceUncertaintyAt(const TraceUncertainty& one, const TraceUncertainty& other,
                                             std::size_t figure, double travel);

/// Variances of 1/distance (1/m^2) and of the swing arm's angle (rad^2) and their covariance: what first
/// order holds for, where the links' lines are nearly parallel too.
struct CenterUncertainty {
    double inverse = 0;
    double angle = 0;
    double both = 0;

    /// Standard uncertainty of 1/distance, 1/m.
    [[nodiscard]] double ofInverse() const;
    /// Of the height of the instant center that has this 1/distance and angle, m: z = tan(angle) / inverse,
    /// to first order.
    [[nodiscard]] double ofHeight(double inverseDistance, double swingArm) const;
};
/// Nothing where it is not known. Between the computed travels along a straight line.
[[nodiscard]] std::optional<CenterUncertainty> centerUncertaintyAt(const TraceUncertainty& uncertainty,
                                                                   double travel);

/// The ends of 1/distance, estimate -+ kCoverage95 times its uncertainty, 1/m.
struct InverseEnds {
    double low = 0;
    double high = 0;
    /// Whether the instant center may be infinitely far.
    [[nodiscard]] bool throughInfinity() const { return low <= 0 && high >= 0; }
};
[[nodiscard]] InverseEnds inverseEnds(const CenterUncertainty& uncertainty, double inverseDistance);

/// The outline in which 95 in 100 instant centers lie, to first order in 1/distance and swing arm angle; in
/// the car frame (forward, up, m) about the center of `station`. An ellipse where the center is well known;
/// where it is not, what an ellipse in 1/distance becomes. In pieces, where it runs through infinity. Empty:
/// not known.
[[nodiscard]] std::vector<std::vector<QPointF>> centerRegion(const CenterUncertainty& uncertainty,
                                                             const Station& station);

}  // namespace bolthole
