// What disagrees among everything that was weighed.
#pragma once

#include <Eigen/Core>
#include <optional>
#include <string>
#include <vector>

#include "geometry/car/faults.h"
#include "geometry/units/units.h"
#include "geometry/weights/weights.h"

namespace bolthole {

/// Whole axles on another scale, kg: a truck scale, a weighbridge ticket.
struct AxleTicket {
    std::optional<double> front = std::nullopt;
    std::optional<double> rear = std::nullopt;
    std::optional<double> total = std::nullopt;
    bool driver = true;       ///< whether the driver sat in
    double uncertainty = 10;  ///< kg, standard, of one reading; common practice, no source

    bool operator==(const AxleTicket&) const = default;
};

/// Everything that was weighed.
struct Weighing {
    std::optional<CornerWeights> withDriver = std::nullopt;     ///< kg
    std::optional<CornerWeights> withoutDriver = std::nullopt;  ///< kg
    std::optional<double> driverMass = std::nullopt;            ///< kg, on another scale
    std::optional<Eigen::Vector3d> driverAt = std::nullopt;     ///< m, car frame
    std::optional<AxleTicket> ticket = std::nullopt;
    std::vector<Ballast> ballast;
    std::optional<PadHeights> pads = std::nullopt;
    double scaleUncertainty = kScaleUncertainty;  ///< kg, standard, of one pad's reading

    bool operator==(const Weighing&) const = default;
};

/// What the scales say of the driver: the readings with less those without.
struct DriverFigures {
    CornerWeights corners;                      ///< kg more on each
    double mass = 0;                            ///< kg
    double ahead = 0;                           ///< m ahead of the rear axle
    std::optional<double> left = std::nullopt;  ///< m left of the middle; nothing without both tracks
};
/// Nothing without both readings, or where the driver weighs nothing.
[[nodiscard]] std::optional<DriverFigures> driverFigures(const Weighing& weighing, const Stance& stance);

/// The number a warning points at.
enum class WeightPart { leftFront, rightFront, leftRear, rightRear, corners, driver, ticket, pads, load };

/// Something that can be computed but looks wrong.
struct WeightWarning {
    WeightPart part = WeightPart::corners;
    bool withDriver = true;  ///< which of the two readings, for the corners
    int load = -1;           ///< which load
    Finding finding;
};

/// What disagrees, each by more than twice the combined standard uncertainty of what is compared (about 95 %,
/// JCGM 100:2008, sec. 6.3.3, from memory): the driver's mass and place against both readings, a corner that
/// gets lighter with the driver in, corners against whole axles on another scale, an axle ticket with itself;
/// pads whose warp throws a corner further than the scales are uncertain, or by nobody knows how much; and,
/// common practice, no source: corners, left sides, diagonals and loads outside what cars have.
[[nodiscard]] std::vector<WeightWarning> findWeightWarnings(const Weighing& weighing, double cgHeight,
                                                            const Stance& stance, Units units);

}  // namespace bolthole
