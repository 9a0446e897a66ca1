// Link loads against Simbody's constraint multipliers, motion ratios against the poses it finds.
#include <gtest/gtest.h>

#include <Eigen/Geometry>
#include <array>
#include <cmath>
#include <vector>

#include "geometry/statics/link_loads.h"
#include "geometry/statics/springs.h"
#include "tests/outside/reference_axle.h"
#include "tests/outside/simbody_reference.h"
#include "tests/support/car_generator.h"
#include "tests/support/made_parts.h"

namespace bolthole {
namespace {

using Eigen::Vector3d;

constexpr std::array kExactlyHeld{Layout::triangulated, Layout::apart, Layout::threeLink, Layout::torqueArm,
                                  Layout::wattsThreeLink};

// A force where it acts, summed to one force and moment about the axle's center.
struct ForceAndMoment {
    Vector3d force = Vector3d::Zero();
    Vector3d moment = Vector3d::Zero();

    void add(const Vector3d& arm, const Vector3d& push) {
        force += push;
        moment += arm.cross(push);
    }
};

// Everything on the axle but its links, with the springs as the balance has them.
ForceAndMoment loadOn(const Station& station, const AxleLoads& applied, const std::vector<PartLine>& springs,
                      const LinkLoads& loads) {
    ForceAndMoment load;
    const AxlePose& pose = station.pose;
    const Vector3d center(pose.x, pose.y, pose.z);
    const Vector3d up(-station.ground.alongZ, 0, station.ground.alongX);
    const Vector3d lateral = pose.rotation().col(1);
    const Vector3d ahead = lateral.cross(up).normalized();
    const double radius = station.ground.above(pose.x, pose.z);
    for (const double side : {+1.0, -1.0}) {
        const double tire = side > 0 ? applied.leftTire : applied.rightTire;
        load.add(side * applied.track / 2 * lateral - radius * up, applied.thrust / 2 * ahead + tire * up);
    }
    load.add(Vector3d::Zero(), -applied.unsprungMass * applied.gravity * up);
    load.moment -= applied.shaftTorque * pose.rotation() *
                   Vector3d(std::cos(applied.pinionAngle), 0, std::sin(applied.pinionAngle));
    for (const PartLine& line : springs) {
        const Vector3d at = pose.carry(line.onAxle);
        const double force = line.side == Side::left ? loads.leftSprings : loads.rightSprings;
        load.add(at - center, force * (at - line.onChassis).normalized());
    }
    return load;
}

}  // namespace

// Simbody is given everything but the links and finds what they do; that nothing accelerates says that the
// springs are right as well.
TEST(LinkLoadsAgainstSimbody, EveryLinkOfExactlyHeldAxles) {
    for (const Layout layout : kExactlyHeld) {
        CarGenerator generator(500 + static_cast<std::uint64_t>(layout));
        for (int number = 0; number < 25; ++number) {
            SCOPED_TRACE(testing::Message() << "layout " << static_cast<int>(layout) << ", car " << number);
            const Car car = generator.draw(layout);
            const Linkage linkage = buildLinkage(car);
            const std::array parts{drawSprings(generator, car.rearTireRadius)};
            std::vector<PartLine> lines;
            buildPartLines(parts, car.rearTireRadius, lines);
            const LoadCase load{.thrust = generator.between(-2000, 9000),
                                .axleRatio = generator.between(3, 5),
                                .leftShift = generator.between(-500, 500),
                                .track = generator.between(1.3, 1.6),
                                .unsprungMass = generator.between(60, 130)};
            SimbodyReference reference(referenceAxle(linkage));
            for (const double travel : {0.0, 0.06, -0.06}) {
                const Station station = solveStation(car, travel);
                ASSERT_TRUE(station.usable && reference.moveTo(travel));
                const AxleLoads applied = axleLoads(car, station.ground, load);
                LinkLoads loads;
                LinkLoadSolver(linkage, parts, lines).solve(station.pose, station.ground, applied, loads);
                const ForceAndMoment rest = loadOn(station, applied, lines, loads);
                const ReferenceForces found = reference.linkForces(rest.force, rest.moment);
                ASSERT_EQ(found.links.size(), loads.count);
                EXPECT_LT(found.acceleration, 1e-4);
                for (std::size_t joint = 0; joint < loads.count; ++joint) {
                    const JointLoad& at = loads.joints[joint];
                    const double computed = std::isnan(at.axial) ? at.force.sum() : at.axial;
                    EXPECT_NEAR(computed, found.links[joint], 1e-4) << "joint " << joint;
                }
            }
        }
    }
}

// Lengths of the springs' lines at poses Simbody assembles, by fourth-order differences, against the motion
// ratios from our rates.
TEST(SpringsAgainstSimbody, MotionRatiosAreSlopesOfItsLengths) {
    for (const Layout layout : {Layout::triangulated, Layout::apart, Layout::threeLink}) {
        CarGenerator generator(520 + static_cast<std::uint64_t>(layout));
        for (int number = 0; number < 10; ++number) {
            Car car = generator.draw(layout);
            car.travel = {.bump = 0.06, .droop = 0.06, .steps = 7};
            const std::array parts{drawSprings(generator, car.rearTireRadius)};
            const SpringSweep sweep = computeSprings(car, parts);
            const Linkage linkage = buildLinkage(car);
            for (std::size_t row = 0; row < sweep.travel.size(); row += 2) {
                constexpr double kStep = 2e-3;  // m
                SimbodyReference reference(referenceAxle(linkage));
                Eigen::Matrix<double, 4, 2> lengths;
                const std::array offsets{-2 * kStep, -kStep, kStep, 2 * kStep};
                for (Eigen::Index at = 0; at < 4; ++at) {
                    ASSERT_TRUE(reference.moveTo(sweep.travel[row] + offsets[static_cast<std::size_t>(at)]));
                    for (Eigen::Index line = 0; line < 2; ++line) {
                        const PartLine& part = sweep.lines[static_cast<std::size_t>(line)];
                        lengths(at, line) = (reference.carry(part.onAxle) - part.onChassis).norm();
                    }
                }
                const Eigen::RowVector2d slope =
                    (lengths.row(0) - lengths.row(3) + 8 * (lengths.row(2) - lengths.row(1))) / (12 * kStep);
                EXPECT_NEAR(sweep.row(row)[0].motionRatio, -slope[0], 1e-8);
                EXPECT_NEAR(sweep.row(row)[1].motionRatio, -slope[1], 1e-8);
            }
        }
    }
}

}  // namespace bolthole
