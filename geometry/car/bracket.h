// Bolt holes and the brackets they are in, of links and of springs.
#pragma once

#include <Eigen/Core>
#include <compare>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "geometry/car/uncertainties.h"

namespace bolthole {

/// Which side of the car a link stands on. `both`: y is given for the left and mirrored to the right.
enum class Side { both, left, right, center };

/// The two ends of a link.
enum class End { chassis, axle };

/// One bolt hole. `id` is its place in the file it was read from, or -1; it ties unknown keys to it.
struct Hole {
    int id = -1;
    std::string name;
    Eigen::Vector3d at = Eigen::Vector3d::Zero();  ///< m, car frame, axle at its measured pose
    Uncertainties uncertainties{};
    bool planned = false;  ///< not drilled yet

    bool operator==(const Hole&) const = default;
};

/// Which numbers of a plate nobody measured: they were put there as a place to start from.
struct PlateStarts {
    /// A coordinate of a corner.
    struct Coordinate {
        std::size_t corner = 0;  ///< index
        int axis = 0;            ///< 0 forward, 1 up

        auto operator<=>(const Coordinate&) const = default;
    };
    std::set<Coordinate> corners;
    bool holeDiameter = false;
    bool edgeDistance = false;
    bool holeSpacing = false;

    [[nodiscard]] bool any() const { return !corners.empty() || holeDiameter || edgeDistance || holeSpacing; }
    /// How many corners have a coordinate that nobody measured.
    [[nodiscard]] std::size_t cornerCount() const;
    /// Says of both coordinates of a corner whether they are such numbers.
    void markCorner(std::size_t corner, bool isStarting);

    bool operator==(const PlateStarts&) const = default;
};

/// The plate of a bracket in side view: where a hole may be drilled. Entered, as the outline is on the car.
struct Plate {
    std::vector<Eigen::Vector2d> corners;  ///< m, car frame: forward, up; in order around, at least 3
    double holeDiameter = 0;               ///< m, of every hole of the bracket
    double edgeDistance = 0;               ///< m, the least from a hole's center to the plate's edge
    double holeSpacing = 0;                ///< the least between two holes' centers, in diameters of the hole
    PlateStarts starts{};                  ///< of corners that are there

    bool operator==(const Plate&) const = default;
};
inline constexpr std::size_t kMinPlateCorners = 3;
inline constexpr std::size_t kMaxPlateCorners = 24;
/// Puts a corner before the one at `at`, or last; nobody has measured it yet.
void insertCorner(Plate& plate, std::size_t at, const Eigen::Vector2d& corner);
/// Takes a corner away. `at`: an index that is there.
void removeCorner(Plate& plate, std::size_t at);
/// Lets two corners change places in the order around the plate.
void swapCorners(Plate& plate, std::size_t one, std::size_t other);

/// What is wrong with a plate and what was expected, with the place below it: {"hole_diameter", "expected
/// ..."}. Both empty: nothing. Corners have to be within 100 m, not all on one line, and their outline must
/// not cross itself; the diameter above 0 and at most 0.2 m, the edge distance from 0 to 1 m, the spacing
/// from 1 to 20.
struct PlateFault {
    std::string path;
    std::string reason;
};
[[nodiscard]] PlateFault refusal(const Plate& plate);

/// A bracket: one or more holes, one of them bolted.
struct Bracket {
    std::vector<Hole> holes;
    int use = 0;  ///< index of the hole in use
    std::optional<Plate> plate = std::nullopt;

    [[nodiscard]] const Hole& inUse() const { return holes[static_cast<std::size_t>(use)]; }

    bool operator==(const Bracket&) const = default;
};

/// How many rods, bolts or springs a part of that side stands for: 2 for `both`, else 1.
[[nodiscard]] inline int sidesOf(Side side) {
    return side == Side::both ? 2 : 1;
}

/// The point on the other side of the car's center plane, m, car frame.
[[nodiscard]] inline Eigen::Vector3d mirrored(const Eigen::Vector3d& point) {
    return {point.x(), -point.y(), point.z()};
}

}  // namespace bolthole
