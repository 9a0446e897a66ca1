// Launch and braking against springs and axles cut free: no formula of geometry/ is used on this side, Eigen
// solves the equations of equilibrium.
#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <array>
#include <cmath>
#include <utility>
#include <vector>

#include "geometry/kinematics/trace.h"
#include "geometry/statics/braking.h"
#include "geometry/statics/launch.h"
#include "geometry/statics/launch_attitude.h"
#include "geometry/weights/weights.h"
#include "tests/outside/corners.h"
#include "tests/support/car_generator.h"

namespace bolthole {
namespace {

using Eigen::Vector2d;
using Eigen::Vector3d;
using Eigen::Vector4d;

// The whole car's springs in roll: body (heave, tilt fore and aft, roll), rear axle (heave, roll) and two
// front wheels, on four tires. Rear springs stand `base` apart on the axle.
class SevenFreedoms {
  public:
    SevenFreedoms(const Stance& stance, double base, double rearSpring, double bar) : stance_(stance) {
        const double front = *stance.frontTrack / 2;
        const double rear = *stance.rearTrack / 2;
        for (const double side : {1.0, -1.0}) {
            const Eigen::Index wheel = side > 0 ? kLeftWheel : kRightWheel;
            addSpring(stance.front->wheel,
                      {{kHeave, 1}, {kTilt, stance.wheelbase}, {kRoll, side * front}, {wheel, -1}});
            addSpring(rearSpring,
                      {{kHeave, 1}, {kRoll, side * base / 2}, {kAxle, -1}, {kAxleRoll, -side * base / 2}});
            addTire(*stance.front->tire, {{wheel, 1}});
            addTire(*stance.rear->tire, {{kAxle, 1}, {kAxleRoll, side * rear}});
        }
        addSpring(bar, {{kRoll, 1}, {kAxleRoll, -1}});
    }

    void pushBody(double moment) { force_[kRoll] += moment; }
    void pushAxle(double moment) { force_[kAxleRoll] += moment; }

    // Extra load of each tire, N, and the body's roll.
    [[nodiscard]] Vector4d tires() const {
        const Vector seven = solve();
        Vector4d loads;
        const std::array<std::size_t, 4> order{0, 2, 1,
                                               3};  // as added: left front, left rear, right front, ...
        for (std::size_t tire = 0; tire < 4; ++tire) {
            loads[static_cast<Eigen::Index>(order[tire])] = -tireRate_[tire] * tireArm_[tire].dot(seven);
        }
        return loads;
    }
    [[nodiscard]] double bodyRoll() const { return solve()[kRoll]; }

  private:
    using Vector = Eigen::Matrix<double, 7, 1>;
    using Arm = std::vector<std::pair<Eigen::Index, double>>;
    static constexpr Eigen::Index kHeave = 0;
    static constexpr Eigen::Index kTilt = 1;
    static constexpr Eigen::Index kRoll = 2;
    static constexpr Eigen::Index kAxle = 3;
    static constexpr Eigen::Index kAxleRoll = 4;
    static constexpr Eigen::Index kLeftWheel = 5;
    static constexpr Eigen::Index kRightWheel = 6;

    Vector addSpring(double rate, const Arm& arm) {
        Vector stretch = Vector::Zero();
        for (const auto& [freedom, lever] : arm) {
            stretch[freedom] += lever;
        }
        stiffness_ += rate * stretch * stretch.transpose();
        return stretch;
    }
    void addTire(double rate, const Arm& arm) {
        tireArm_.push_back(addSpring(rate, arm));
        tireRate_.push_back(rate);
    }
    [[nodiscard]] Vector solve() const { return stiffness_.ldlt().solve(force_); }

    Stance stance_;
    Eigen::Matrix<double, 7, 7> stiffness_ = Eigen::Matrix<double, 7, 7>::Zero();
    Vector force_ = Vector::Zero();
    std::vector<Vector> tireArm_;
    std::vector<double> tireRate_;
};

struct TorqueCase {
    Stance stance;
    double base = 0;
    double spring = 0;
    double bar = 0;
    StandingCar car;
    CornerWeights standing;
    LaunchLoads loads;
    double torque = 0;

    [[nodiscard]] SevenFreedoms springs() const { return {stance, base, spring, bar}; }
};

TorqueCase drawTorqueCase(CarGenerator& generator) {
    TorqueCase one;
    one.base = generator.between(0.7, 1.1);
    one.spring = generator.between(15e3, 50e3);
    one.bar = generator.between(0, 30e3);
    const WheelRates front{.wheel = generator.between(15e3, 50e3), .tire = generator.between(150e3, 300e3)};
    const WheelRates rear{.wheel = one.spring,
                          .tire = generator.between(120e3, 300e3),
                          .roll = one.spring * one.base * one.base / 2 + one.bar};
    one.stance = {.wheelbase = generator.between(2.4, 3.0),
                  .frontTrack = generator.between(1.35, 1.6),
                  .rearTrack = generator.between(1.35, 1.6),
                  .front = front,
                  .rear = rear};
    one.standing = {generator.between(380, 430), generator.between(380, 430), generator.between(320, 370),
                    generator.between(320, 370)};
    one.car = {.mass = one.standing.total(),
               .wheelbase = one.stance.wheelbase,
               .cgAhead = weightFigures(one.standing, one.stance).cgAhead,
               .cgHeight = generator.between(0.45, 0.65)};
    one.loads = launchLoads(one.car, generator.between(2, 5));
    one.torque = generator.between(200, 900);
    return one;
}

Vector4d standingAndTransferred(const TorqueCase& one) {
    const double each = one.loads.transfer / 2;
    return asVector(one.standing) * kStandardGravity + Vector4d(-each, -each, each, each);
}

}  // namespace

TEST(LaunchBalance, DriveshaftTorqueGoesWhereTheSpringsPutIt) {
    CarGenerator generator(75);
    for (int number = 0; number < 300; ++number) {
        const TorqueCase one = drawTorqueCase(generator);
        SevenFreedoms springs = one.springs();
        springs.pushBody(one.torque);
        springs.pushAxle(-one.torque);
        const auto sides = launchSides(one.car, one.loads, one.standing, one.torque, one.stance);
        ASSERT_TRUE(sides.has_value());
        ASSERT_FALSE(sides->frontTireUp);
        const Vector4d found(sides->leftFront, sides->rightFront, sides->leftRear, sides->rightRear);
        EXPECT_LT((found - standingAndTransferred(one) - springs.tires()).cwiseAbs().maxCoeff(), 1e-6);
        EXPECT_NEAR(sides->bodyRoll, springs.bodyRoll(), 1e-12);
        EXPECT_GT(sides->bodyRoll, 0) << "the left side rises";
        EXPECT_GT(springs.tires()[2], 0) << "the left rear gains";
    }
}

// Springs preloaded by a pair of moments: they stand crossed and leaning, and launch as if there were no
// torque.
TEST(LaunchBalance, PreloadCancelsTheTorque) {
    CarGenerator generator(76);
    for (int number = 0; number < 300; ++number) {
        const TorqueCase one = drawTorqueCase(generator);
        const auto preload = cancelingPreload(one.torque, one.stance);
        ASSERT_TRUE(preload.has_value());
        SevenFreedoms standing = one.springs();
        // The right spring pushes harder: the body's right side up, the axle's down.
        const double half = springDifference(preload->moment, one.base) / 2;
        standing.pushBody(-2 * half * one.base / 2);
        standing.pushAxle(2 * half * one.base / 2);
        EXPECT_NEAR(standing.tires()[3], preload->rearShift, 1e-7);
        EXPECT_NEAR(standing.tires()[2], -preload->rearShift, 1e-7);
        EXPECT_NEAR(standing.tires()[0], preload->frontShift, 1e-7);
        EXPECT_NEAR(standing.bodyRoll(), preload->lean, 1e-12);
        SevenFreedoms launching = standing;
        launching.pushBody(one.torque);
        launching.pushAxle(-one.torque);
        EXPECT_LT(launching.tires().cwiseAbs().maxCoeff(), 1e-7);
        EXPECT_NEAR(launching.bodyRoll(), 0, 1e-12);
        // The whole pair with a front end that holds all of it: a difference of 2 T over the track.
        EXPECT_LE(2 * preload->rearShift, 2 * one.torque / *one.stance.rearTrack);
    }
}

namespace {

// The rear axle with its wheels cut free, in side view: forces at the patch, two two-force links along their
// lines, the springs over the axle's center. Solves the three balances; returns what the springs press down
// more, N.
double springLoad(const Car& car, const AxlePose& pose, double along, double up) {
    Eigen::Matrix3d matrix;  // columns: lower pair's tension, upper pair's tension, springs pressing down
    for (Eigen::Index column = 0; column < 2; ++column) {
        const Link& link = car.links[static_cast<std::size_t>(column)];
        const Vector3d arm = pose.carry(link.axle.inUse().at - Vector3d(0, 0, car.rearTireRadius));
        const Vector3d span = link.chassis.inUse().at - arm;
        const Vector2d unit = Vector2d(span.x(), span.z()).normalized();
        const Vector2d fromCenter(arm.x() - pose.x, arm.z() - pose.z);
        matrix.col(column) << unit.x(), unit.y(), fromCenter.x() * unit.y() - fromCenter.y() * unit.x();
    }
    matrix.col(2) << 0, -1, 0;
    // The patch is a tire radius under the center; the brake's torque is within the body cut free.
    return matrix.partialPivLu().solve(-Vector3d(along, up, car.rearTireRadius * along))[2];
}

// The same on ground that rises toward the front by `ground` in the car frame, all directions the ground's,
// with the axle's own inertia at its center.
double springLoadAt(const Car& car, const AxlePose& pose, double ground, double along, double up,
                    double inertia) {
    const Eigen::Rotation2Dd level(-ground);
    Eigen::Matrix3d matrix;
    for (Eigen::Index column = 0; column < 2; ++column) {
        const Link& link = car.links[static_cast<std::size_t>(column)];
        const Vector3d arm = pose.carry(link.axle.inUse().at - Vector3d(0, 0, car.rearTireRadius));
        const Vector3d span = link.chassis.inUse().at - arm;
        const Vector2d unit = level * Vector2d(span.x(), span.z()).normalized();
        const Vector2d fromCenter = level * Vector2d(arm.x() - pose.x, arm.z() - pose.z);
        matrix.col(column) << unit.x(), unit.y(), fromCenter.x() * unit.y() - fromCenter.y() * unit.x();
    }
    matrix.col(2) << 0, -1, 0;
    return matrix.partialPivLu().solve(-Vector3d(along - inertia, up, car.rearTireRadius * along))[2];
}

// The pose at one travel.
AxlePose poseAt(Car car, double travel) {
    car.travel.bump = std::max(travel, 0.0);
    car.travel.droop = std::max(-travel, 0.0);
    car.travel.steps = 3;
    const Trace trace = computeTrace(car);
    return travel > 0 ? trace.stations.back().pose : trace.stations.front().pose;
}

// Both axles move together, so that the ground stays level and the patch stays under the axle's center.
template <typename Check>
void forLevelStations(std::uint64_t seed, const Check& check) {
    CarGenerator generator(seed);
    for (const Layout layout : {Layout::triangulated, Layout::wattsThreeLink, Layout::parallelGuide}) {
        for (int number = 0; number < 60; ++number) {
            Car car = generator.draw(layout);
            car.frontTireRadius = car.rearTireRadius;
            car.travel.steps = 9;
            for (const Station& station : computeTrace(car).stations) {
                ASSERT_TRUE(station.usable);
                check(car, station, standingCar(car, station.ground));
            }
        }
    }
}

}  // namespace

TEST(LaunchBalance, BrakingUnloadsTheSpringsAsTheFreeAxleSays) {
    CarGenerator generator(77);
    const WheelRates rear{.wheel = 25e3};
    forLevelStations(78, [&](const Car& car, const Station& station, const StandingCar& standing) {
        const double deceleration = generator.between(0.5, 8);
        const double share = generator.between(0, 1);
        const double slope = std::tan(station[Figure::swingArmAngle]);
        const BrakeLoads loads = brakeLoads(standing, deceleration, share, slope);
        if (loads.rearUp) {
            return;
        }
        const double force = standing.mass * deceleration;
        const double unload = force * (car.cgHeight - station[Figure::travel]) / station.ground.wheelbase;
        const double springs = springLoad(car, station.pose, -share * force, -unload);
        EXPECT_NEAR(loads.transfer, unload, 1e-7);
        EXPECT_NEAR(loads.rearBrake, share * force, 1e-9);
        EXPECT_NEAR(loads.antiLift, 100 * (1 - springs / -unload), 1e-8);
        EXPECT_NEAR(loads.antiLift, share * station[Figure::antiSquat], 1e-8);
        EXPECT_NEAR(*brakeTravel(loads, rear) * 2 * rear.wheel, springs, 1e-6);
    });
}

TEST(LaunchBalance, LaunchSquatsAsTheFreeAxleSays) {
    const WheelRates front{.wheel = 30e3, .tire = 200e3};
    const WheelRates rear{.wheel = 25e3, .tire = 180e3};
    forLevelStations(79, [&](const Car& car, const Station& station, const StandingCar& standing) {
        const LaunchLoads loads = launchLoads(standing, 4.0);
        const auto attitude =
            launchAttitude(standing, loads, std::tan(station[Figure::swingArmAngle]), front, rear);
        ASSERT_TRUE(attitude.has_value());
        const double transfer =
            standing.mass * 4.0 * (car.cgHeight - station[Figure::travel]) / station.ground.wheelbase;
        const double springs = springLoad(car, station.pose, standing.mass * 4.0, transfer);
        EXPECT_NEAR(attitude->rearTravel, springs / (2 * 25e3), 1e-12);
        EXPECT_NEAR(attitude->rearRise, -springs / (2 * 25e3) - transfer / (2 * 180e3), 1e-12);
        EXPECT_NEAR(attitude->frontRise, transfer / (2 * 30e3) + transfer / (2 * 200e3), 1e-12);
    });
}

// Where it comes to rest the free axle, with its inertia, wants
// of the springs what they push there.
TEST(LaunchBalance, AtRestOnItsPathTheFreeAxleIsInBalance) {
    CarGenerator generator(81);
    int bumps = 0;
    int droops = 0;
    int toppedOut = 0;
    for (const Layout layout : {Layout::triangulated, Layout::wattsThreeLink, Layout::parallelGuide}) {
        for (int number = 0; number < 80; ++number) {
            Car car = generator.draw(layout);
            const Trace trace = computeTrace(car);
            const StandingCar standing = standingCar(car, trace.ride.ground);
            const double acceleration = generator.between(2, 6);
            const AttitudeCase with{.standing = standing,
                                    .loads = launchLoads(standing, acceleration),
                                    .acceleration = acceleration,
                                    .rideGround = trace.ride[Figure::ground],
                                    .front = {.wheel = generator.between(20e3, 40e3), .tire = 200e3},
                                    .rear = {.wheel = generator.between(20e3, 40e3), .tire = 180e3},
                                    .unsprungMass = generator.between(60, 150),
                                    .frontDroop = generator.between(0.02, 0.06)};
            SwingArm arm(car);
            const auto rest = attitudeOnPath(with, arm);
            if (!rest || with.loads.wheelsUp) {
                continue;
            }
            // The CG turns with the body about the rear patch, which the springs and tires have let down or
            // up.
            const Vector2d cg =
                Eigen::Rotation2Dd(-rest->pitch) * Vector2d(standing.cgAhead, standing.cgHeight) +
                Vector2d(0, rest->rearRise);
            const double force = standing.mass * acceleration;
            const double moved = force * cg.y() / standing.wheelbase;
            const double springs =
                springLoadAt(car, poseAt(car, rest->rearTravel), with.rideGround + rest->pitch, force, moved,
                             with.unsprungMass * acceleration);
            EXPECT_NEAR(2 * with.rear.wheel * rest->rearTravel, springs, 2e-3 * standing.pressing());
            EXPECT_NEAR(-2 * with.front.wheel * rest->frontTravel, moved,
                        rest->frontToppedOut ? moved : 2e-3 * standing.pressing());
            EXPECT_GE(rest->frontTravel, -*with.frontDroop);
            (rest->rearTravel > 0 ? bumps : droops)++;
            toppedOut += rest->frontToppedOut ? 1 : 0;
        }
    }
    EXPECT_GT(bumps, 10);
    EXPECT_GT(droops, 10);
    EXPECT_GT(toppedOut, 10);
}

}  // namespace bolthole
