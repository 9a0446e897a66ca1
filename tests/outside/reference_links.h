// The links as the outside libraries are given them. Free of this project's headers and of C++20, which
// Simbody's headers do not compile under.
#pragma once

#include <Eigen/Core>
#include <vector>

namespace bolthole {

/// One equation on the axle: two points a length apart, or two points level along one axis.
struct ReferenceLink {
    enum Kind { rod, sameX, sameY, sameZ };
    Kind kind = rod;
    Eigen::Vector3d onAxle = Eigen::Vector3d::Zero();     ///< m, from the axle's center, measured pose
    Eigen::Vector3d onChassis = Eigen::Vector3d::Zero();  ///< m, car frame
    double length = 0;                                    ///< m, rods only
};

/// The links and the height of the axle's center at its measured pose, m.
struct ReferenceAxle {
    std::vector<ReferenceLink> links;
    double measuredHeight = 0;
};

}  // namespace bolthole
