// The figures of roll against Simbody where the axle is exactly held, against Ceres where it is over-held, a
// formula derived independently, and the textbooks' construction through the links' crossings.
#include <gmock/gmock.h>

#include <cmath>

#include "geometry/kinematics/roll.h"
#include "tests/outside/ceres_reference.h"
#include "tests/outside/compare_to_reference.h"
#include "tests/outside/simbody_reference.h"
#include "tests/support/car_generator.h"

namespace bolthole {

namespace {

constexpr double kStep = 0.002;  // rad, for quotients of differences

// How fast the reference carries a point of the axle sideways for each unit of roll at (travel, roll):
// central differences with one Richardson extrapolation, whose error is of the fourth power of the step.
template <typename Reference>
double sideways(Reference& reference, double travel, double roll, const Eigen::Vector3d& fromCenter) {
    const auto at = [&](double where) {
        EXPECT_TRUE(reference.moveTo(travel, where));
        return reference.carry(fromCenter).y();
    };
    const auto quotient = [&](double step) { return (at(roll + step) - at(roll - step)) / (2 * step); };
    return (4 * quotient(kStep) - quotient(2 * kStep)) / 3;
}

// ISO 8855 yaw of the reference's axle.
template <typename Reference>
double yawOf(const Reference& reference) {
    const Eigen::Vector3d along =
        reference.carry(Eigen::Vector3d::UnitX()) - reference.carry(Eigen::Vector3d::Zero());
    return std::atan2(along.y(), along.x());
}

template <typename Reference>
double yawRate(Reference& reference, double travel, double roll) {
    const auto at = [&](double where) {
        EXPECT_TRUE(reference.moveTo(travel, where));
        return yawOf(reference);
    };
    const auto quotient = [&](double step) { return (at(roll + step) - at(roll - step)) / (2 * step); };
    return (4 * quotient(kStep) - quotient(2 * kStep)) / 3;
}

// All columns of the roll table.
template <typename Reference>
void compareRows(const Car& car, double rateAgreement) {
    const RollTrace trace = computeRollTrace(car);
    ASSERT_TRUE(trace.assembly.usable());
    Reference reference(referenceAxle(buildLinkage(car)));
    for (const RollFigures& row : trace.rows) {
        SCOPED_TRACE(testing::Message() << "roll " << row.roll);
        ASSERT_TRUE(row.usable);
        ASSERT_TRUE(reference.moveTo(0.0, row.roll));
        expectSamePoints(buildLinkage(car), row.pose, reference);
        EXPECT_NEAR(row.pose.yaw, yawOf(reference), kAgreement);
        EXPECT_NEAR(row.pose.y, reference.carry(Eigen::Vector3d::Zero()).y(), kAgreement);
        if constexpr (requires { reference.bind(); }) {
            EXPECT_NEAR(row.bind, reference.bind(), kAgreement);
        }
    }
    for (const std::size_t index : {std::size_t{2}, std::size_t{6}, std::size_t{11}}) {
        const RollFigures& row = trace.rows[index];
        const double rate = sideways(reference, 0.0, row.roll, Eigen::Vector3d::Zero());
        EXPECT_NEAR(row.center, car.rearTireRadius + rate, rateAgreement);
        EXPECT_NEAR(row.steer, yawRate(reference, 0.0, row.roll), rateAgreement);
    }
}

template <typename Reference>
void compareCars(Layout layout, int count, double rateAgreement) {
    CarGenerator generator(1400 + static_cast<std::uint64_t>(layout));
    for (int number = 0; number < count; ++number) {
        SCOPED_TRACE(testing::Message() << "layout " << static_cast<int>(layout) << ", car " << number);
        Car car = generator.draw(layout);
        if (number % 2 == 1) {
            generator.misbuild(car, 0.01);
        }
        compareRows<Reference>(car, rateAgreement);
        if (testing::Test::HasFailure()) {
            return;
        }
    }
}

// The roll axis as the reference moves: in the plane of the car's length, the line of points of the axle that
// do not move sideways. Three points' speeds give it, for they are linear in place.
template <typename Reference>
void compareAxis(const Car& car, const RollFigures& figures, const GroundLine& ground) {
    Reference reference(referenceAxle(buildLinkage(car)));
    const Eigen::Matrix3d turned = figures.pose.rotation();
    const Eigen::Vector3d up(-ground.alongZ, 0, ground.alongX);
    const Eigen::Vector3d ahead(ground.alongX, 0, ground.alongZ);
    const double middle = sideways(reference, figures.travel, 0.0, Eigen::Vector3d::Zero());
    const double above = sideways(reference, figures.travel, 0.0, turned.transpose() * up) - middle;
    const double before = sideways(reference, figures.travel, 0.0, turned.transpose() * ahead) - middle;
    EXPECT_NEAR(figures.squareCenter, car.rearTireRadius - middle / above, kAgreement);
    EXPECT_NEAR(figures.axisAngle, std::atan(-before / above), kAgreement);
    EXPECT_NEAR(figures.heading, before * ground.alongX - above * ground.alongZ, kAgreement);
}

// Where the line through both ends crosses the center plane, car frame.
Eigen::Vector3d crossing(const Eigen::Vector3d& one, const Eigen::Vector3d& other) {
    return one + (one.y() / (one.y() - other.y())) * (other - one);
}

}  // namespace

TEST(RollAgainstSimbody, EveryRowWhereExactlyHeld) {
    for (const Layout layout : {Layout::triangulated, Layout::apart, Layout::threeLink, Layout::torqueArm,
                                Layout::wattsThreeLink}) {
        compareCars<SimbodyReference>(layout, 6, kAgreement);
    }
}

// Ride height, bump and droop, the ground inclined by a front axle that does not follow.
TEST(RollAgainstSimbody, RollCenterAndAxisThroughTravelSquareToTheGround) {
    for (const Layout layout : {Layout::triangulated, Layout::apart, Layout::threeLink, Layout::torqueArm,
                                Layout::wattsThreeLink}) {
        CarGenerator generator(1450 + static_cast<std::uint64_t>(layout));
        for (int number = 0; number < 4; ++number) {
            SCOPED_TRACE(testing::Message() << "layout " << static_cast<int>(layout) << ", car " << number);
            Car car = generator.draw(layout);
            car.travel.frontRatio = -0.5;
            car.travel.steps = 5;
            const RollTrace trace = computeRollTrace(car);
            for (const RollFigures& row : trace.travel) {
                ASSERT_TRUE(row.usable);
                AxleSolver solver(buildLinkage(car), Drive::roll);
                ASSERT_TRUE(solver.assemble().usable() && solver.moveTo(row.travel).usable());
                Station station;
                FigureReader(car).read(solver, row.travel, station);
                compareAxis<SimbodyReference>(car, row, station.ground);
            }
        }
    }
}

// Points and bind to a millionth of a millimetre. Quotients of differences of what Ceres leaves over are not
// as fine as its poses: their tolerance is the pose's over the step.
TEST(RollAgainstCeres, EveryRowWhereOverHeld) {
    for (const Layout layout : {Layout::parallelGuide, Layout::parallelTrackBar, Layout::ladderGuide,
                                Layout::triangulatedTrackBar}) {
        compareCars<CeresReference>(layout, 6, kAgreement / kStep);
    }
}

// Derived, no source: of a parallel four-link with a guide at a small roll, with half the links' spacing a,
// their side-view slopes s and cosines u: bind = a roll |s1 - s2| u1 u2 max(u1, u2) / (u1^2 + u2^2).
TEST(RollBind, IsTheSmallAngleFormula) {
    CarGenerator generator(1460);
    for (int number = 0; number < 40; ++number) {
        Car car = generator.draw(Layout::parallelGuide);
        const double a = generator.between(0.3, 0.45);
        double slope[2];
        double cosine[2];
        for (std::size_t pair = 0; pair < 2; ++pair) {
            Eigen::Vector3d& front = car.links[pair].chassis.holes[0].at;
            Eigen::Vector3d& rear = car.links[pair].axle.holes[0].at;
            front.y() = rear.y() = a;
            slope[pair] = (front.z() - rear.z()) / (front.x() - rear.x());
            cosine[pair] = 1.0 / std::hypot(1.0, slope[pair]);
        }
        const double roll = 1e-4;
        const double expected = a * roll * std::abs(slope[0] - slope[1]) * cosine[0] * cosine[1] *
                                std::max(cosine[0], cosine[1]) /
                                (cosine[0] * cosine[0] + cosine[1] * cosine[1]);
        EXPECT_NEAR(solveRoll(car, 0.0, roll).bind / expected, 1.0, 1e-3) << number;
    }
}

// The roll axis of a symmetric four-link runs through the crossing of its uppers and that of its lowers.
// Gillespie, "Fundamentals of Vehicle Dynamics", ch. 7; Milliken & Milliken, "Race Car Vehicle Dynamics", ch.
// 17: both from memory, no page.
TEST(RollAxis, RunsThroughTheLinksCrossings) {
    CarGenerator generator(1470);
    for (int number = 0; number < 100; ++number) {
        SCOPED_TRACE(testing::Message() << "car " << number);
        Car car = generator.draw(Layout::triangulated);
        if (number % 2 == 1) {
            generator.misbuild(car, 0.01);
        }
        const RollFigures ride = computeRollTrace(car).ride;
        const Linkage linkage = buildLinkage(car);
        Eigen::Vector3d met[2];
        for (std::size_t pair = 0; pair < 2; ++pair) {
            const Constraint& left = linkage.constraints[2 * pair];
            met[pair] = crossing(left.onChassis, ride.pose.carry(left.onAxle));
        }
        const double slope = (met[1].z() - met[0].z()) / (met[1].x() - met[0].x());
        EXPECT_NEAR(std::tan(ride.axisAngle), slope, 1e-9);
        EXPECT_NEAR(ride.squareCenter, met[0].z() + slope * (ride.pose.x - met[0].x()), kAgreement);
        if (number % 2 == 0) {  // at the measured pose, without pitch
            EXPECT_NEAR(ride.steer, slope, 1e-9);
            EXPECT_NEAR(ride.center, ride.squareCenter, 1e-12);
        }
    }
}

}  // namespace bolthole
