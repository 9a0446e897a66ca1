// Leads the solver and an outside library along the same travel and compares every point.
#pragma once

#include <gtest/gtest.h>

#include <vector>

#include "geometry/kinematics/axle_solver.h"
#include "tests/outside/reference_axle.h"

namespace bolthole {

inline constexpr double kAgreement = 1e-9;  // m: a millionth of a millimetre

/// An imposed travel (m) and roll (rad).
struct Position {
    double travel;
    double roll;
};

/// The axle's center and the axle end of every link, from the center.
inline std::vector<Eigen::Vector3d> pointsOf(const Linkage& linkage) {
    std::vector<Eigen::Vector3d> points{Eigen::Vector3d::Zero()};
    for (const Constraint& link : linkage.constraints) {
        points.push_back(link.onAxle);
    }
    return points;
}

/// Every coordinate of every point, within kAgreement.
template <typename Reference>
void expectSamePoints(const Linkage& linkage, const AxlePose& pose, const Reference& reference) {
    for (const Eigen::Vector3d& point : pointsOf(linkage)) {
        const Eigen::Vector3d difference = pose.carry(point) - reference.carry(point);
        EXPECT_LE(difference.lpNorm<Eigen::Infinity>(), kAgreement)
            << "point " << point.transpose() << " differs by " << difference.transpose() << " m";
    }
}

/// Leads the solver of `linkage` and the reference's `axle` through the positions. A reference that does not
/// close is a failure.
template <typename Reference>
void compare(const Linkage& linkage, const ReferenceAxle& axle, Drive drive,
             const std::vector<Position>& positions) {
    AxleSolver solver(linkage, drive);
    Reference reference(axle);
    ASSERT_TRUE(solver.assemble().usable());
    for (const Position& position : positions) {
        SCOPED_TRACE(testing::Message() << "travel " << position.travel << " m, roll " << position.roll);
        ASSERT_TRUE(solver.moveTo(position.travel, position.roll).usable());
        ASSERT_TRUE(reference.moveTo(position.travel, position.roll));
        expectSamePoints(linkage, solver.pose(), reference);
        if constexpr (requires { reference.bind(); }) {
            EXPECT_NEAR(solver.bind(), reference.bind(), kAgreement);
        }
    }
}

/// The same with all the links of `linkage` given to the reference.
template <typename Reference>
void compare(const Linkage& linkage, Drive drive, const std::vector<Position>& positions) {
    compare<Reference>(linkage, referenceAxle(linkage), drive, positions);
}

}  // namespace bolthole
