// Where the instant center may really be: samples drawn from what the tape may have missed.
#pragma once

#include <array>
#include <functional>
#include <vector>

#include "geometry/uncertainty/car_model.h"

namespace bolthole {

/// The figures at ride, drawn at random (JCGM 101), against what first order says of them.
struct IcCloud {
    std::size_t drawn = 0;     ///< samples in which the car could be assembled
    std::size_t infinite = 0;  ///< of these, with the instant center infinitely far
    /// The instant center of some of the samples, car frame, m: forward, up. For drawing.
    std::vector<std::array<float, 2>> points;
    std::array<Coverage, kModelFigures> figures{};  ///< in the order of ModelRow
    /// Whether first order's interval agrees with the drawn one; see firstOrderHolds().
    std::array<bool, kModelFigures> firstOrder{};
    /// The distance of the instant center at the two ends of the drawn 95 % along 1/distance, m, near end
    /// first; infinity or negative where the interval runs through infinity to behind the axle.
    double nearEnd = 0;
    double farEnd = 0;

    [[nodiscard]] bool holds(Figure figure) const { return firstOrder[static_cast<std::size_t>(figure)]; }
    [[nodiscard]] const Coverage& of(Figure figure) const {
        return figures[static_cast<std::size_t>(figure)];
    }
};

/// How many points a cloud keeps for drawing.
inline constexpr std::size_t kCloudPoints = 2'000;

/// Draws the cloud of the car as it is bolted. The same plan gives the same cloud, on any machine and any
/// number of threads. Empty (drawn 0) where cancelled, where the car can't be assembled, and
/// where a number it rests on is a starting number, so that nobody knows how far to draw. The car must have
/// passed findFaults().
[[nodiscard]] IcCloud drawCloud(const Car& car, const SamplePlan& plan);

}  // namespace bolthole
