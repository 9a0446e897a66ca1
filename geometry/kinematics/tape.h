// From what a tape reads to the car frame: heights taken from the axle's center, and the fore-aft figure that
// follows from a length, two heights and two sideways figures.
#pragma once

#include <Eigen/Core>
#include <optional>

namespace bolthole {

/// What the height of an axle hole is read from. The car itself always keeps heights above the ground.
enum class HeightDatum { ground, axleCenter };

/// The height to show for a point of the axle, m. `height`: above the ground with the axle at its measured
/// pose, m, car frame. `rearTireRadius`: height of the axle's center at that pose, m.
[[nodiscard]] double shownHeight(double height, HeightDatum datum, double rearTireRadius);

/// The inverse of shownHeight(): height above the ground, m.
[[nodiscard]] double heightFromShown(double shown, HeightDatum datum, double rearTireRadius);

/// What comes of a taped center-to-center length.
struct ForwardFigure {
    std::optional<double> forward;  ///< x of the hole sought, m, car frame; nothing: the length is too short
    double shortest = 0;            ///< m; heights and sideways figures alone already take this length
};

/// Where the hole `sought` stands fore and aft when it is `length` (m) from the hole `known`, center to
/// center: x = x_known +- sqrt(length^2 - dy^2 - dz^2), Pythagoras. Of the two solutions, the one on the side
/// of `known` where `sought` stands now; exactly abreast counts as ahead. Points in m, car frame; the x of
/// `sought` decides the side and nothing else. A length that is not finite or not above 0 gives no figure.
[[nodiscard]] ForwardFigure forwardFromLength(const Eigen::Vector3d& known, const Eigen::Vector3d& sought,
                                              double length);

}  // namespace bolthole
