// The figures of the launch page, from what is entered to what is shown, against textbooks; link loads of
// hole combinations against Simbody's constraint forces and a balance written out here.
#include <gtest/gtest.h>

#include <Eigen/Geometry>
#include <array>
#include <cmath>
#include <vector>

#include "geometry/combinations/combination_loads.h"
#include "tests/outside/reference_axle.h"
#include "tests/outside/simbody_reference.h"
#include "tests/support/car_generator.h"
#include "tests/support/level_car.h"
#include "tests/support/made_parts.h"
#include "tests/support/made_units.h"

namespace bolthole {
namespace {

using Eigen::Vector3d;

LaunchCase caseOf(const Car& car) {
    return launchCaseOf(car, computeTrace(car), fullStanceOf(car));
}

// A car on level links whose weights put its CG `cgAhead` of the rear axle.
Car bookCar(double mass, double wheelbase, double cgAhead, double cgHeight) {
    Car car = levelCar();
    car.wheelbase = wheelbase;
    car.cgHeight = cgHeight;
    const double front = mass * cgAhead / wheelbase / 2;
    const double rear = mass / 2 - front;
    car.cornerWeights = {front, front, rear, rear};
    return car;
}

}  // namespace

// R. C. Hibbeler, Engineering Mechanics: Dynamics, 12th ed., Prentice Hall, 2010, Ex. 17.5 (edition from
// memory; read in the printing with A. Gupta, p. 733): 2000 kg, CG 1.25 m from the front and 0.75 m from the
// rear wheels, 0.3 m high; the rear wheels slip at mu 0.25: 6.88 kN in front, 12.74 kN behind, 1.59 m/s^2
// with g 9.81. Forces and acceleration go with g, which here is 9.80665.
TEST(LaunchCaseTextbook, HibbelerSlippingRearWheels) {
    Car car = bookCar(2000, 2.0, 0.75, 0.3);
    car.launch.from = LaunchFrom::torque;
    car.launch.engineTorque = 900;  // any that spins the tires
    car.launch.gear = 3;
    car.launch.axleRatio = 4;
    car.launch.friction = 0.25;
    const LaunchCase launch = caseOf(car);
    const double gravity = 9.81 / kStandardGravity;
    ASSERT_TRUE(launch.loads);
    EXPECT_EQ(launch.thrust->cap, ThrustCap::grip);
    EXPECT_NEAR(launch.thrust->acceleration * gravity, 1.59, 0.005);
    EXPECT_NEAR(launch.loads->front * gravity, 6880, 5);
    EXPECT_NEAR(launch.loads->rear * gravity, 12740, 5);
}

// J. L. Meriam, L. G. Kraige, Engineering Mechanics: Dynamics, 7th ed., Wiley, 2012 (edition from memory), SP
// 6/1, p. 422 (inputs read, results computed with g 32.2 ft/s^2): 3220 lb up a 10 % grade at 44^2/(2 x 200)
// ft/s^2, CG 24 in high and 60 in from either axle: 804.4 lb of thrust, 1441.1 lb in front, 1762.9 lb behind.
// The page knows level ground alone; a grade is the same balance as level ground with what of the weight
// presses on it, and the part that pulls back added to what accelerates.
TEST(LaunchCaseTextbook, MeriamUpTheGrade) {
    const double grade = std::atan(0.10);
    const double acceleration = 44.0 * 44.0 / (2 * 200);  // ft/s^2
    Car car = bookCar(3220 * std::cos(grade) * kKilogramsPerPound, 120 * kMetresPerInch, 60 * kMetresPerInch,
                      24 * kMetresPerInch);
    car.launch.acceleration = (acceleration / 32.2 + std::sin(grade)) / std::cos(grade);
    const LaunchCase launch = caseOf(car);
    EXPECT_NEAR(launch.thrust->force / kPoundForce, 804.4, 0.05);
    EXPECT_NEAR(launch.loads->front / kPoundForce, 1441.1, 0.05);
    EXPECT_NEAR(launch.loads->rear / kPoundForce, 1762.9, 0.05);
}

// R. N. Jazar, Vehicle Dynamics, 1st ed., Springer, eqs 2.87-2.88, p. 50 (read): axle loads m g a2/l - m g
// (h/l)(a/g) in front and m g a1/l + m g (h/l)(a/g) behind; the front wheels leave the ground at a/g = a2/h.
TEST(LaunchCaseTextbook, JazarAccelerationOnTheLevel) {
    CarGenerator generator(71);
    for (int number = 0; number < 50; ++number) {
        const double m = generator.between(700, 2200);
        const double l = generator.between(2.2, 3.1);
        const double a2 = l * generator.between(0.35, 0.65);
        const double h = generator.between(0.4, 0.7);
        Car car = bookCar(m, l, a2, h);
        const double share = generator.between(0.1, 0.99);
        car.launch.acceleration = share * a2 / h;
        const LaunchCase launch = caseOf(car);
        const double mg = m * kStandardGravity;
        const double along = *car.launch.acceleration;
        EXPECT_NEAR(launch.loads->front, mg * a2 / l - mg * h / l * along, 1e-7);
        EXPECT_NEAR(launch.loads->rear, mg * (l - a2) / l + mg * h / l * along, 1e-7);
        EXPECT_NEAR(launch.loads->liftAcceleration / kStandardGravity, a2 / h, 1e-9);
        EXPECT_FALSE(launch.loads->wheelsUp);
        car.launch.acceleration = 1.01 * a2 / h;
        EXPECT_TRUE(caseOf(car).loads->wheelsUp);
    }
}

namespace {

// Two ladder bars pinned `ahead` of the rear patches and `above` the ground, so that e/d is above/ahead.
Car ladderCar(double ahead, double above) {
    Car car =
        bookCar(3000 * kKilogramsPerPound, 120 * kMetresPerInch, 60 * kMetresPerInch, 30 * kMetresPerInch);
    const Vector3d pin(ahead, 0.4, above);
    const Vector3d middle(-0.1, 0, car.rearTireRadius);
    car.links = {makeLink("ladder", LinkKind::pivot, Side::both, {pin, pin}),
                 makeLink("guide", LinkKind::guide, Side::center, {middle, middle})};
    car.wheelRates.front.wheel = 75 * kPoundPerInch;
    car.wheelRates.rear.wheel = 50 * kPoundPerInch;
    car.launch.acceleration = 0.5;
    return car;
}

}  // namespace

// D. Barton, J. Fieldhouse, Automotive Chassis Engineering (Springer 2018), sec. 3.11, p. 197, eqs 3.63-3.69
// (read): rear deflection times rear rate is m a (h/L - e/d), with W 3000 lb, L 120 in, h 30 in, 150 and 100
// lb/in an axle (computed): no rear deflection at e/d 0.25, no pitch at 0.416667. The book leaves out what
// the movement does to arm and heights, so it is held where there is next to none, at 0.00005 g.
TEST(LaunchCaseTextbook, BartonFieldhouseAttitude) {
    const double d = 60 * kMetresPerInch;
    const auto attitudeAt = [d](double slope) {
        Car car = ladderCar(d, slope * d);
        car.launch.acceleration = 0.5e-4;
        return *caseOf(car).attitude;
    };
    const double inch = kMetresPerInch * 1e-4;
    EXPECT_NEAR(attitudeAt(0.25).rearTravel / inch, 0, 1e-3);
    EXPECT_NEAR(attitudeAt(5.0 / 12).pitch, 0, 1e-8);
    // 1500 lb x (0.25 - 0.1) over 100 lb/in, and 1500 lb x 0.25 over 150 lb/in.
    EXPECT_NEAR(attitudeAt(0.1).rearTravel / inch, 2.25, 1e-3);
    EXPECT_NEAR(attitudeAt(0.1).frontTravel / inch, -2.5, 1e-3);
}

// A front with little droop hangs on its stop and rises by that much, with tires that are rigid.
TEST(LaunchCaseTextbook, AFrontThatTopsOutStaysThere) {
    Car car = ladderCar(60 * kMetresPerInch, 0.25 * 60 * kMetresPerInch);
    car.launch.front.droop = 0.01;
    const LaunchCase launch = caseOf(car);
    EXPECT_TRUE(launch.attitude->frontToppedOut);
    EXPECT_NEAR(launch.attitude->frontTravel, -0.01, 1e-15);
    EXPECT_NEAR(launch.attitude->frontRise, 0.01, 1e-15) << "rigid tires";
}

// Constant acceleration from rest, s = a t^2/2 (any mechanics text): 60 ft in 2 s need 30 ft/s^2.
TEST(LaunchCaseTextbook, SixtyFootTime) {
    Car car = bookCar(1500, 2.8, 1.5, 0.5);
    car.launch.from = LaunchFrom::sixtyFoot;
    car.launch.sixtyFoot = 2.0;
    car.launch.rollout = 0;
    EXPECT_NEAR(caseOf(car).thrust->acceleration, 30 * kFoot, 1e-12);
    EXPECT_NEAR(caseOf(car).thrust->force, 1500 * 30 * kFoot, 1e-6);
    // After 0.9 ft at 30 ft/s^2 it passes the beam at sqrt(54) ft/s: v^2 = 2 a s.
    car.launch.rollout = 0.9 * kFoot;
    car.launch.sixtyFoot = (std::sqrt(54.0 + 3600.0) - std::sqrt(54.0)) / 30;
    EXPECT_NEAR(caseOf(car).thrust->force, 1500 * 30 * kFoot, 1e-6);
}

// T. D. Gillespie, Fundamentals of Vehicle Dynamics (SAE 1992), ch. 2, traction of a solid rear axle with an
// open differential (from memory): each rear tire gains or loses F r/(N t) x Kf/(Kf + Kr), with F the thrust,
// r the tire radius, N the axle ratio, t the track and K the ends' roll stiffnesses. The springs' couple that
// takes F r/N is their difference times half their distance (moments about x).
TEST(LaunchCaseTextbook, GillespieLateralTransferOfALiveAxle) {
    CarGenerator generator(72);
    for (int number = 0; number < 50; ++number) {
        Car car = bookCar(1500, 2.7, 1.4, 0.55);
        car.rearTrack = generator.between(1.3, 1.6);
        car.frontTrack = generator.between(1.3, 1.6);
        const double front = generator.between(10e3, 60e3);
        const double rear = generator.between(10e3, 60e3);
        car.wheelRates.front = {.wheel = 25e3, .roll = front};
        car.wheelRates.rear = {.wheel = 25e3, .roll = rear};
        car.launch.acceleration = generator.between(0.2, 0.6);
        car.launch.axleRatio = generator.between(3, 4.6);
        car.launch.springBase = generator.between(0.8, 1.1);
        const LaunchCase launch = caseOf(car);
        ASSERT_TRUE(launch.sides && launch.preload && launch.springDifference);
        const double torque =
            1500 * *car.launch.acceleration * kStandardGravity * car.rearTireRadius / *car.launch.axleRatio;
        const double shift = torque / *car.rearTrack * front / (front + rear);
        EXPECT_NEAR(launch.sides->leftRear, launch.loads->rear / 2 + shift, 1e-7);
        EXPECT_NEAR(launch.sides->rightRear, launch.loads->rear / 2 - shift, 1e-7);
        EXPECT_NEAR(launch.preload->rearShift, shift, 1e-7) << "standing, the other way around";
        EXPECT_NEAR(*launch.springDifference * *car.launch.springBase / 2, torque, 1e-7);
    }
}

// Moments about the rear patch, written out: braking takes F h/L off the rear, of which links with e/d carry
// their brakes' share times (e/d)/(h/L).
TEST(LaunchCaseBalance, BrakingByMomentsAboutTheRearPatch) {
    Car car = ladderCar(60 * kMetresPerInch, 15 * kMetresPerInch);
    car.brakes = {.rearShare = 40, .deceleration = 0.6};
    const LaunchCase launch = caseOf(car);
    EXPECT_NEAR(*launch.antiLift, 100 * 0.4 * 0.25 / 0.25, 1e-6);
    EXPECT_NEAR(launch.braking->loads.transfer / kPoundForce, 3000 * 0.6 * 30 / 120, 1e-6);
    EXPECT_NEAR(*launch.braking->travel / kMetresPerInch, -450 * (1 - 0.4) / 100, 1e-6);
}

namespace {

Car drilledCar(CarGenerator& generator, Layout layout) {
    Car car = generator.draw(layout);
    drillHoles(car, 2, 0.03);
    car.rearTrack = generator.between(1.4, 1.6);
    car.travel = {.bump = 0.05, .droop = 0.05, .steps = 5};
    car.springs = {drawSprings(generator, car.rearTireRadius)};
    car.launch.acceleration = generator.between(0.4, 1.0);
    car.launch.axleRatio = generator.between(3, 4.6);
    car.launch.unsprungMass = generator.between(70, 130);
    car.launch.leftShift = generator.between(-400, 800);
    return car;
}

// Everything on the axle but its links, summed about its center; written out from the car's own numbers.
std::pair<Vector3d, Vector3d> restOf(const Car& car, const Station& station, const LinkCase& with,
                                     const std::vector<PartLine>& lines, const LinkLoads& loads) {
    const AxlePose& pose = station.pose;
    const Vector3d center(pose.x, pose.y, pose.z);
    const Vector3d up(-station.ground.alongZ, 0, station.ground.alongX);
    const Vector3d lateral = pose.rotation().col(1);
    const Vector3d ahead = lateral.cross(up).normalized();
    const double radius = station.ground.above(pose.x, pose.z);
    const double weight = car.cornerWeights.total() * kStandardGravity;
    const double cgX = car.wheelbase * car.cornerWeights.front() / car.cornerWeights.total();
    const double base = station.ground.wheelbase;
    const double front = weight * station.ground.ahead(cgX, car.cgHeight) / base;
    const double transfer = with.load.thrust * station.ground.above(cgX, car.cgHeight) / base;
    const double rear = weight - front + std::min(transfer, front);
    Vector3d force = -with.load.unsprungMass * (kStandardGravity * up + with.load.acceleration * ahead);
    Vector3d moment = Vector3d::Zero();
    const auto add = [&](const Vector3d& arm, const Vector3d& push) {
        force += push;
        moment += arm.cross(push);
    };
    for (const double side : {+1.0, -1.0}) {
        const double tire = rear / 2 + side * with.load.leftShift;
        add(side * with.load.track / 2 * lateral - radius * up, with.load.thrust / 2 * ahead + tire * up);
    }
    const double torque = with.load.thrust * car.rearTireRadius / with.load.axleRatio;
    const double pinion = car.driveline->pinionAngle;
    moment -= torque * pose.rotation() * Vector3d(std::cos(pinion), 0, std::sin(pinion));
    for (const PartLine& line : lines) {
        const Vector3d at = pose.carry(line.onAxle);
        add(at - center, (line.side == Side::left ? loads.leftSprings : loads.rightSprings) *
                             (at - line.onChassis).normalized());
    }
    return {force, moment};
}

struct ReferenceWorst {
    double load = 0;
    int link = -1;
    double at = 0;
};

// The largest link force Simbody finds through the travel of a car bolted to a combination.
ReferenceWorst worstBySimbody(const Car& car, const LinkCase& with) {
    const Linkage linkage = buildLinkage(car);
    std::vector<PartLine> lines;
    buildPartLines(with.parts, car.rearTireRadius, lines);
    const LinkLoadSolver solver(linkage, with.parts, lines);
    ReferenceWorst worst;
    for (int row = 0; row < car.travel.steps; ++row) {
        const double travel = travelOfRow(car.travel, row);
        const Station station = solveStation(car, travel);
        SimbodyReference reference(referenceAxle(linkage));
        EXPECT_TRUE(station.usable && reference.moveTo(travel));
        LinkLoads loads;
        solver.solve(station.pose, station.ground, axleLoads(car, station.ground, with.load), loads);
        const auto [force, moment] = restOf(car, station, with, lines, loads);
        const ReferenceForces found = reference.linkForces(force, moment);
        EXPECT_LT(found.acceleration, 1e-4) << "the springs hold what the links leave";
        for (std::size_t joint = 0; joint < found.links.size(); ++joint) {
            if (std::abs(found.links[joint]) > worst.load) {
                worst = {std::abs(found.links[joint]), linkage.constraints[joint].link, travel};
            }
        }
    }
    return worst;
}

}  // namespace

// Simbody is given the car bolted to each combination and everything that acts on its axle but the links.
TEST(CombinationLoadsAgainstSimbody, TheWorstOfEveryCombination) {
    int compared = 0;
    for (const Layout layout : {Layout::triangulated, Layout::threeLink, Layout::wattsThreeLink}) {
        CarGenerator generator(930 + static_cast<std::uint64_t>(layout));
        for (int number = 0; number < 4; ++number) {
            SCOPED_TRACE(testing::Message() << "layout " << static_cast<int>(layout) << ", car " << number);
            const Car car = drilledCar(generator, layout);
            const LaunchCase launch = caseOf(car);
            ASSERT_TRUE(launch.linkCase);
            CombinationLoadSolver solver(car, LengthTreatment::refit, *launch.linkCase);
            for (const HoleUse& use : nearCombinations(car, 6).uses) {
                const CombinationLoad load = solver.solve(use);
                const CarResult bolted = carWithCombination(car, use, LengthTreatment::refit);
                ASSERT_TRUE(load.assembled && bolted.car);
                const ReferenceWorst worst = worstBySimbody(*bolted.car, *launch.linkCase);
                EXPECT_NEAR(load.load, worst.load, 1e-3);
                EXPECT_EQ(load.link, worst.link);
                EXPECT_NEAR(load.at, worst.at, 1e-12);
                ++compared;
            }
        }
    }
    EXPECT_EQ(compared, 72);
}

// The axle's balance along the ground, written out: what the rods pull forward is thrust less what the axle's
// own mass takes to accelerate. At ride on level ground, upright springs push nothing along.
TEST(LaunchCaseBalance, RodsPassOnTheThrustLessTheAxlesOwn) {
    for (const Layout layout : {Layout::triangulated, Layout::threeLink, Layout::triangulatedTrackBar}) {
        CarGenerator generator(940 + static_cast<std::uint64_t>(layout));
        for (int number = 0; number < 10; ++number) {
            Car car = drilledCar(generator, layout);
            car.springs.clear();
            car.frontTireRadius = car.rearTireRadius;
            const LaunchCase launch = caseOf(car);
            ASSERT_TRUE(launch.links && launch.linkCase->standIn);
            const Linkage linkage = buildLinkage(car);
            double along = 0;
            for (std::size_t joint = 0; joint < linkage.constraints.size(); ++joint) {
                const Constraint& rod = linkage.constraints[joint];
                const Vector3d bolt = rod.onAxle + Vector3d(0, 0, car.rearTireRadius);
                along += launch.links->joints[joint].atRide * (rod.onChassis - bolt).normalized().x();
            }
            const double mass = car.cornerWeights.total();
            const double a = *car.launch.acceleration * kStandardGravity;
            EXPECT_NEAR(along, -(mass - *car.launch.unsprungMass) * a, 1e-5);
        }
    }
}

}  // namespace bolthole
