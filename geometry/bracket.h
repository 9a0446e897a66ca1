// Bolt holes and the brackets they are in, of links and of springs.
#pragma once

#include <Eigen/Core>
#include <string>
#include <vector>

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

    bool operator==(const Hole&) const = default;
};

/// A bracket: one or more holes, one of them bolted.
struct Bracket {
    std::vector<Hole> holes;
    int use = 0;  ///< index of the hole in use

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
