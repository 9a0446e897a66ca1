// Weights, CG height and what stands on the patches against springs and bodies solved as systems: no formula
// of geometry/ is used on this side, Eigen solves the equations of equilibrium.
#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <array>
#include <cmath>
#include <vector>

#include "geometry/kinematics/standing_car.h"
#include "geometry/kinematics/trace.h"
#include "geometry/weights/cg_height.h"
#include "geometry/weights/weights.h"
#include "tests/outside/corners.h"
#include "tests/support/car_generator.h"

namespace bolthole {
namespace {

using Eigen::Vector2d;
using Eigen::Vector3d;
using Eigen::Vector4d;

CornerWeights asCorners(const Vector4d& loads) {
    return {loads[0], loads[1], loads[2], loads[3]};
}

// A rigid body on four springs standing on pads: heave and two tilts are unknown, three balances give them.
struct FourSprings {
    std::array<Vector2d, 4> at;          // m
    Vector4d rate;                       // N/m
    Vector4d height = Vector4d::Zero();  // of pads and of springs built longer, m

    // Spring forces, N, under masses (kg) at places.
    [[nodiscard]] Vector4d loads(const std::vector<MassAt>& masses) const {
        Eigen::Matrix3d stiffness = Eigen::Matrix3d::Zero();
        Vector3d force = Vector3d::Zero();
        for (std::size_t corner = 0; corner < 4; ++corner) {
            const auto row = static_cast<Eigen::Index>(corner);
            const Vector3d arm(1, at[corner].x(), at[corner].y());
            stiffness += rate[row] * arm * arm.transpose();
            force += rate[row] * height[row] * arm;
        }
        for (const MassAt& mass : masses) {
            force -= mass.mass * kStandardGravity * Vector3d(1, mass.at.x(), mass.at.y());
        }
        const Vector3d place = stiffness.ldlt().solve(force);
        Vector4d result;
        for (std::size_t corner = 0; corner < 4; ++corner) {
            const auto row = static_cast<Eigen::Index>(corner);
            result[row] = rate[row] * (height[row] - place.dot(Vector3d(1, at[corner].x(), at[corner].y())));
        }
        return result;
    }
    [[nodiscard]] CornerWeights weighed(const std::vector<MassAt>& masses) const {
        return asCorners(loads(masses) / kStandardGravity);
    }
};

struct SprungCar {
    Stance stance;
    FourSprings springs;
};

// Springs at the wheels, tires under them, no bar; crossed a little by springs of other lengths.
SprungCar drawSprungCar(CarGenerator& generator) {
    SprungCar car;
    const double wheelbase = generator.between(2.3, 3.1);
    const double frontTrack = generator.between(1.3, 1.6);
    const double rearTrack = generator.between(1.3, 1.6);
    const WheelRates front{.wheel = generator.between(15e3, 60e3), .tire = generator.between(150e3, 300e3)};
    const WheelRates rear{.wheel = generator.between(15e3, 60e3)};
    car.stance = {.wheelbase = wheelbase,
                  .frontTrack = frontTrack,
                  .rearTrack = rearTrack,
                  .front = front,
                  .rear = rear};
    const double series = front.wheel * *front.tire / (front.wheel + *front.tire);
    car.springs.at = {Vector2d(wheelbase, frontTrack / 2), Vector2d(wheelbase, -frontTrack / 2),
                      Vector2d(0, rearTrack / 2), Vector2d(0, -rearTrack / 2)};
    car.springs.rate = {series, series, rear.wheel, rear.wheel};
    for (double& height : car.springs.height) {
        height = generator.between(-0.004, 0.004);
    }
    return car;
}

std::vector<MassAt> drawCarMass(CarGenerator& generator, const Stance& stance) {
    return {{generator.between(1200, 1800),
             {stance.wheelbase * generator.between(0.45, 0.6), generator.between(-0.03, 0.03), 0.5}}};
}

}  // namespace

TEST(WeightBalance, BallastGoesWhereFourSpringsPutIt) {
    CarGenerator generator(71);
    for (int number = 0; number < 300; ++number) {
        const SprungCar car = drawSprungCar(generator);
        std::vector<MassAt> masses = drawCarMass(generator, car.stance);
        const CornerWeights before = car.springs.weighed(masses);
        const std::vector<MassAt> changes{
            {generator.between(50, 110), {1.2, generator.between(-0.4, 0.4), 0.5}},
            {generator.between(-20, 40), {generator.between(-0.8, 0.0), generator.between(-0.5, 0.5), 0.4}}};
        masses.insert(masses.end(), changes.begin(), changes.end());
        const Vector4d after = asVector(car.springs.weighed(masses));
        const BallastResult result = withBallast(before, car.stance, changes);
        ASSERT_TRUE(result.car && result.car->corners) << result.refusal;
        EXPECT_LT((asVector(*result.car->corners) - after).cwiseAbs().maxCoeff(), 1e-9);
        const WeightFigures figures = weightFigures(asCorners(after), car.stance);
        EXPECT_NEAR(result.car->cgAhead, figures.cgAhead, 1e-12);
        EXPECT_NEAR(*result.car->cgLeft, *figures.cgLeft, 1e-12);
        EXPECT_NEAR(result.car->leftPercent->low, figures.leftPercent, 1e-9);
        // Without rates the same car's left side lies within what is said of it.
        Stance unknown = car.stance;
        unknown.rear.reset();
        const BallastResult open = withBallast(before, unknown, changes);
        ASSERT_TRUE(open.car && open.car->leftPercent);
        EXPECT_FALSE(open.car->corners.has_value());
        EXPECT_LE(open.car->leftPercent->low, figures.leftPercent + 1e-9);
        EXPECT_GE(open.car->leftPercent->high, figures.leftPercent - 1e-9);
    }
}

TEST(WeightBalance, CgOfWeightsIsTheCgOfMasses) {
    CarGenerator generator(72);
    for (int number = 0; number < 100; ++number) {
        const SprungCar car = drawSprungCar(generator);
        const std::vector<MassAt> masses = drawCarMass(generator, car.stance);
        const WeightFigures figures = weightFigures(car.springs.weighed(masses), car.stance);
        EXPECT_NEAR(figures.total, masses[0].mass, 1e-9);
        EXPECT_NEAR(figures.cgAhead, masses[0].at.x(), 1e-9);
        EXPECT_NEAR(*figures.cgLeft, masses[0].at.y(), 1e-9);
    }
}

// Pads of any heights under four springs. What they throw is the warp alone, as the body here has no CG
// height.
TEST(WeightBalance, UnlevelPadsThrowCornersAsFourSpringsSay) {
    CarGenerator generator(73);
    for (int number = 0; number < 300; ++number) {
        SprungCar car = drawSprungCar(generator);
        const std::vector<MassAt> masses = drawCarMass(generator, car.stance);
        const CornerWeights level = car.springs.weighed(masses);
        Vector4d pads;
        for (double& height : pads) {
            height = generator.between(-0.01, 0.01);
        }
        car.springs.height += pads;
        const Vector4d thrown = asVector(car.springs.weighed(masses)) - asVector(level);
        const PadFigures figures = padFigures({pads[0], pads[1], pads[2], pads[3]}, level, 0.5, car.stance);
        ASSERT_TRUE(figures.byWarp.has_value());
        EXPECT_LT((asVector(*figures.byWarp) - thrown).cwiseAbs().maxCoeff(), 1e-9);
        EXPECT_NEAR(thrown.sum(), 0, 1e-9) << "the total is right";
        EXPECT_NEAR(*figures.worst(), thrown.cwiseAbs().maxCoeff(), 1e-9);
    }
}

// Derived, no source: with equal tracks and no bar the shift is the warp over the sum of 1/k of the corners,
// tires in series.
TEST(WeightBalance, WarpOverTheSumOfGive) {
    const WheelRates front{.wheel = 30e3, .tire = 200e3};
    const WheelRates rear{.wheel = 22e3, .tire = 180e3};
    const Stance stance{.wheelbase = 2.7, .frontTrack = 1.5, .rearTrack = 1.5, .front = front, .rear = rear};
    const double give = 2 * (1 / 30e3 + 1 / 200e3) + 2 * (1 / 22e3 + 1 / 180e3);
    const PadFigures figures = padFigures({.leftFront = 0.006}, {400, 400, 350, 350}, 0.5, stance);
    EXPECT_NEAR(figures.warp, 0.006, 1e-15);
    EXPECT_NEAR(figures.byWarp->leftFront, 0.006 / give / kStandardGravity, 1e-12);
    EXPECT_NEAR(figures.byWarp->rightFront, -0.006 / give / kStandardGravity, 1e-12);
    EXPECT_NEAR(figures.byWarp->leftRear, -0.006 / give / kStandardGravity, 1e-12);
    EXPECT_NEAR(figures.byWarp->rightRear, 0.006 / give / kStandardGravity, 1e-12);
}

namespace {

// Loads, kg, upright under two supports, of a mass at `cg` (side or rear view).
Vector2d supportLoads(const Vector2d& one, const Vector2d& other, const Vector2d& cg, double mass) {
    Eigen::Matrix2d balance;
    balance << 1, 1, one.x(), other.x();
    return balance.partialPivLu().solve(Vector2d(mass, mass * cg.x()));
}

Vector2d turned(const Vector2d& point, double angle) {
    return Eigen::Rotation2Dd(angle) * point;
}

}  // namespace

// A rigid car on pads that slope, turned as a whole: to first order the shares that padFigures() says.
TEST(WeightBalance, SlopingPadsMoveWeightDownhill) {
    const CornerWeights level{400, 400, 350, 350};
    const Stance stance{.wheelbase = 2.7, .frontTrack = 1.5, .rearTrack = 1.5};
    const double mass = level.total();
    for (const double height : {-0.01, 0.004, 0.02}) {
        const PadFigures nose = padFigures({height, height, 0, 0}, level, 0.55, stance);
        const double slope = std::asin(height / 2.7);
        const Vector2d cg = turned({weightFigures(level, stance).cgAhead, 0.55}, slope);
        const Vector2d loads = supportLoads({0, 0}, turned({2.7, 0}, slope), cg, mass);
        EXPECT_NEAR(nose.frontBySlope, loads[1] - 800, 0.01 * std::abs(nose.frontBySlope));
        EXPECT_NEAR(nose.slope, slope, 1e-4 * std::abs(slope));
        const PadFigures side = padFigures({height, 0, height, 0}, level, 0.55, stance);
        const double lean = std::asin(height / 1.5);
        const Vector2d sides =
            supportLoads(turned({-0.75, 0}, lean), turned({0.75, 0}, lean), turned({0, 0.55}, lean), mass);
        EXPECT_NEAR(*side.leftByLean, sides[1] - 750, 0.01 * std::abs(*side.leftByLean));
        EXPECT_NEAR(side.warp, 0, 1e-15);
        EXPECT_FALSE(side.worst().has_value()) << "rates are not known";
    }
}

namespace {

struct RigidCar {
    LiftCar car;
    double mass;
    Vector2d cg;  // ahead of the rear axle, above the ground; m
};

RigidCar drawRigidCar(CarGenerator& generator) {
    RigidCar rigid;
    rigid.car = {.wheelbase = generator.between(2.2, 3.2),
                 .rearTireRadius = generator.between(0.29, 0.37),
                 .frontTireRadius = generator.between(0.29, 0.37)};
    rigid.mass = generator.between(700, 2200);
    rigid.cg = {rigid.car.wheelbase * generator.between(0.4, 0.65), generator.between(0.35, 0.75)};
    return rigid;
}

// The rigid car turned by `angle` (nose up +) about anywhere: how far one end's tires stood over the other's,
// and what its axles then weigh.
LiftTest liftOf(const RigidCar& rigid, double angle, CarEnd read) {
    const Vector2d rear(0, rigid.car.rearTireRadius);
    const Vector2d front(rigid.car.wheelbase, rigid.car.frontTireRadius);
    const Vector2d level = supportLoads(rear, front, rigid.cg, rigid.mass);
    const Vector2d raised =
        supportLoads(turned(rear, angle), turned(front, angle), turned(rigid.cg, angle), rigid.mass);
    // Each tire touches straight under its center, a radius down.
    const double frontTire = turned(front, angle).y() - rigid.car.frontTireRadius;
    const double rearTire = turned(rear, angle).y() - rigid.car.rearTireRadius;
    LiftTest test;
    test.level = {level[1] / 2, level[1] / 2, level[0] / 2, level[0] / 2};
    test.raised = frontTire > rearTire ? CarEnd::front : CarEnd::rear;
    test.lift = std::abs(frontTire - rearTire);
    test.read = read;
    test.reading = read == CarEnd::front ? raised[1] : raised[0];
    return test;
}

}  // namespace

TEST(WeightBalance, LiftFindsTheCgHeightOfARigidCar) {
    CarGenerator generator(74);
    for (int number = 0; number < 400; ++number) {
        const RigidCar rigid = drawRigidCar(generator);
        const double angle = (number % 2 == 0 ? 1 : -1) * generator.between(0.03, 0.5);
        for (const CarEnd read : {CarEnd::front, CarEnd::rear}) {
            const LiftTest test = liftOf(rigid, angle, read);
            EXPECT_NEAR(liftAngle(test, rigid.car), angle, 1e-12);
            EXPECT_NEAR(liftHeight(test, rigid.car), rigid.cg.y(), 1e-11);
            const CgHeightResult result = cgHeightByLift(test, rigid.car, {}, Units::metric);
            ASSERT_TRUE(result.value.has_value()) << result.refusal;
            EXPECT_EQ(result.value->source, CgHeightSource::lift);
        }
    }
}
// The level car's CG, taken from its corner weights, balances over the contact patches of every station.
TEST(WeightBalance, StandingCarBalancesOnItsPatches) {
    CarGenerator generator(80);
    for (int number = 0; number < 60; ++number) {
        Car car = generator.draw(Layout::triangulated);
        car.travel.frontRatio = generator.between(-1, 1);
        car.travel.steps = 5;
        for (const Station& station : computeTrace(car).stations) {
            ASSERT_TRUE(station.usable);
            const StandingCar standing = standingCar(car, station.ground);
            const Vector2d patch(station.ground.patchX, station.ground.patchZ);
            const double angle = -station[Figure::ground];
            const double cgX = car.wheelbase * car.cornerWeights.front() / car.cornerWeights.total();
            const Vector2d cg = turned(Vector2d(cgX, car.cgHeight) - patch, angle);
            const Vector2d loads = supportLoads({0, 0}, {station.ground.wheelbase, 0}, cg, standing.mass);
            EXPECT_NEAR(standing.cgHeight, cg.y(), 1e-12);
            EXPECT_NEAR(standing.front(), loads[1] * kStandardGravity, 1e-8);
            EXPECT_NEAR(standing.rear(), loads[0] * kStandardGravity, 1e-8);
        }
    }
}

}  // namespace bolthole
