// What the links carry: by hand, in balance whatever the car, and what no statics determines.
#include "geometry/statics/link_loads.h"

#include <gmock/gmock.h>

#include <Eigen/Geometry>
#include <array>
#include <cmath>
#include <functional>
#include <vector>

#include "geometry/kinematics/axle_solver.h"
#include "tests/support/car_generator.h"
#include "tests/support/level_car.h"
#include "tests/support/made_parts.h"

namespace bolthole {
namespace {

using Eigen::Vector3d;

constexpr std::array kExactlyHeld{Layout::triangulated, Layout::apart, Layout::threeLink, Layout::torqueArm,
                                  Layout::wattsThreeLink};
constexpr std::array kOverHeld{Layout::parallelGuide, Layout::parallelTrackBar, Layout::triangulatedTrackBar,
                               Layout::ladderGuide};

// A car's linkage, springs and solver, which hold on to each other.
struct Bench {
    Car car;
    std::vector<SuspensionPart> parts;
    Linkage linkage;
    std::vector<PartLine> lines;

    Bench(Car of, std::vector<SuspensionPart> with)
        : car(std::move(of)), parts(std::move(with)), linkage(buildLinkage(car)) {
        buildPartLines(parts, car.rearTireRadius, lines);
    }

    [[nodiscard]] LinkLoads solve(const Station& station, const AxleLoads& applied) const {
        LinkLoads loads;
        LinkLoadSolver(linkage, parts, lines).solve(station.pose, station.ground, applied, loads);
        return loads;
    }
};

AxleLoads drawLoads(CarGenerator& generator) {
    AxleLoads applied;
    applied.thrust = generator.between(-3000, 12000);
    applied.leftTire = generator.between(2000, 6000);
    applied.rightTire = generator.between(2000, 6000);
    applied.track = generator.between(1.3, 1.6);
    applied.shaftTorque = generator.between(-300, 1500);
    applied.pinionAngle = generator.between(-0.05, 0.05);
    applied.unsprungMass = generator.between(60, 130);
    applied.unsprungAt = {0.05, 0.01, -0.02};
    applied.acceleration = generator.between(0, 8);
    return applied;
}

// Springs, shocks with gas, and a stop that is squeezed in bump.
std::vector<SuspensionPart> drawParts(CarGenerator& generator, double axleHeight) {
    SuspensionPart shock = makePart("shock", PartKind::shock, Side::both,
                                    {{-0.2, 0.35, axleHeight + 0.35}, {-0.1, 0.45, axleHeight - 0.1}});
    shock.push = 200;
    SuspensionPart stop = makePart("stop", PartKind::bumpStop, Side::both,
                                   {{0.02, 0.4, axleHeight + 0.12}, {0, 0.4, axleHeight + 0.04}});
    stop.rate = 60e3;
    stop.freeLength = 0.06;
    return {drawSprings(generator, axleHeight), shock, stop};
}

void forEachStation(std::span<const Layout> layouts, int count,
                    const std::function<void(const Bench&, const Station&, CarGenerator&)>& law) {
    for (const Layout layout : layouts) {
        CarGenerator generator(400 + static_cast<std::uint64_t>(layout));
        for (int number = 0; number < count; ++number) {
            SCOPED_TRACE(testing::Message() << "layout " << static_cast<int>(layout) << ", car " << number);
            Car car = generator.draw(layout);
            car.travel.steps = 7;
            const double height = car.rearTireRadius;
            const Bench bench(std::move(car), drawParts(generator, height));
            for (const Station& station : computeTrace(bench.car).stations) {
                law(bench, station, generator);
            }
            if (testing::Test::HasFailure()) {
                return;
            }
        }
    }
}

// Force and moment about the axle's center of everything on the axle, summed force by force from where it
// acts.
struct Sum {
    Vector3d center;
    Vector3d force = Vector3d::Zero();
    Vector3d moment = Vector3d::Zero();

    void add(const Vector3d& at, const Vector3d& push) {
        force += push;
        moment += (at - center).cross(push);
    }
};

// Pushes of the parts: what carries shares its side's force by rate, which in these cars is one spring.
void addParts(const Bench& bench, const AxlePose& pose, const LinkLoads& loads, Sum& sum) {
    for (const PartLine& line : bench.lines) {
        const SuspensionPart& part = bench.parts[static_cast<std::size_t>(line.part)];
        const Vector3d at = pose.carry(line.onAxle);
        // A bump stop's axis is the line between its mounts as measured.
        const Vector3d asMeasured = Vector3d(0, 0, bench.car.rearTireRadius) + line.onAxle - line.onChassis;
        const Vector3d axis =
            (part.kind == PartKind::bumpStop ? asMeasured : Vector3d(at - line.onChassis)).normalized();
        const double length = axis.dot(at - line.onChassis);
        const double force = part.kind == PartKind::spring
                                 ? (line.side == Side::left ? loads.leftSprings : loads.rightSprings)
                                 : part.force(length);
        sum.add(at, force * axis);
    }
}

void addGround(const Station& station, const AxleLoads& applied, Sum& sum) {
    const AxlePose& pose = station.pose;
    const Vector3d up(-station.ground.alongZ, 0, station.ground.alongX);
    const Vector3d along = pose.rotation().col(1).cross(up).normalized();
    for (const double side : {+1.0, -1.0}) {
        // Below the wheel's center by the tire, square to the ground.
        const double radius = station.ground.above(pose.x, pose.z);
        const Vector3d wheel = pose.carry({0, side * applied.track / 2, 0});
        const double load = side > 0 ? applied.leftTire : applied.rightTire;
        sum.add(wheel - radius * up, applied.thrust / 2 * along + load * up);
    }
    sum.add(pose.carry(applied.unsprungAt),
            -applied.unsprungMass * (applied.gravity * up + applied.acceleration * along));
    sum.moment -= applied.shaftTorque * (pose.rotation() * Vector3d(std::cos(applied.pinionAngle), 0,
                                                                    std::sin(applied.pinionAngle)));
}

void expectBalance(const Bench& bench, const Station& station, const AxleLoads& applied,
                   const LinkLoads& loads) {
    Sum sum{.center = Vector3d(station.pose.x, station.pose.y, station.pose.z)};
    for (std::size_t index = 0; index < loads.count; ++index) {
        const Constraint& link = bench.linkage.constraints[index];
        const JointLoad& joint = loads.joints[index];
        const Vector3d at = station.pose.carry(link.onAxle);
        if (link.kind == LinkKind::rod) {
            sum.add(at, joint.axial * (link.onChassis - at).normalized());
            EXPECT_NEAR((joint.force - joint.axial * (link.onChassis - at).normalized()).norm(), 0, 1e-8);
        } else {
            sum.add(at, joint.force);
        }
    }
    addParts(bench, station.pose, loads, sum);
    addGround(station, applied, sum);
    EXPECT_LT(sum.force.norm(), 1e-6);
    EXPECT_LT(sum.moment.norm(), 1e-6);
    EXPECT_LT(loads.unbalanced, 1e-6);
}

}  // namespace

TEST(LinkLoads, EverythingOnTheAxleBalances) {
    const auto law = [](const Bench& bench, const Station& station, CarGenerator& generator) {
        const AxleLoads applied = drawLoads(generator);
        const LinkLoads loads = bench.solve(station, applied);
        ASSERT_EQ(loads.count, bench.linkage.constraints.size());
        expectBalance(bench, station, applied, loads);
        EXPECT_FALSE(isUnbalanced(loads, applied));
    };
    forEachStation(kExactlyHeld, 40, law);
    forEachStation(kOverHeld, 20, law);
}

TEST(LinkLoads, AnExactlyHeldAxleIsDeterminate) {
    forEachStation(kExactlyHeld, 10, [](const Bench& bench, const Station& station, CarGenerator& generator) {
        const LinkLoads loads = bench.solve(station, drawLoads(generator));
        for (const JointLoad& joint : loads.all()) {
            EXPECT_TRUE(joint.determinate);
        }
        EXPECT_TRUE(loads.springsDeterminate);
    });
}

// The links hold the axle against everything but travel and roll, so in a small travel only springs, stops,
// tires, weight and shaft do work. The motion is the solver's, which shares no code with the loads.
TEST(LinkLoads, LinksDoNoWorkInTravelAndRoll) {
    forEachStation(kExactlyHeld, 20, [](const Bench& bench, const Station& station, CarGenerator& generator) {
        const AxleLoads applied = drawLoads(generator);
        const LinkLoads loads = bench.solve(station, applied);
        AxleSolver solver(bench.linkage, Drive::roll);
        ASSERT_TRUE(solver.assemble().usable() && solver.moveTo(station[Figure::travel]).usable());
        Sum sum{.center = Vector3d(station.pose.x, station.pose.y, station.pose.z)};
        addParts(bench, station.pose, loads, sum);
        addGround(station, applied, sum);
        for (const AxleMotion& motion : {travelMotion(solver.pose(), solver.travelRates()),
                                         rollMotion(solver.pose(), solver.rollRates())}) {
            EXPECT_NEAR(sum.force.dot(motion.velocity) + sum.moment.dot(motion.turning), 0, 1e-5);
        }
    });
}

namespace {

// Lowers at 7 in, uppers at 19 in, level, axle at 13 in, held sideways by a guide; springs upright.
Bench levelBench(double springsApart) {
    Car car = levelCar();
    car.links[2] = makeLink("guide", LinkKind::guide, Side::center, {in(0, 0, 13), in(0, 0, 13)});
    const double height = car.rearTireRadius;
    return {std::move(car), {uprightSprings(springsApart, height)}};
}

}  // namespace

// By hand: 6000 N of thrust at the ground turn about the uppers 19 in above it; the lowers 12 in below the
// uppers hold that with 6000 x 19/12 = 9500 N of compression, the uppers the rest, 3500 N of tension, each
// pair half a side. Level links carry no weight, so each spring carries what its tire does.
TEST(LinkLoads, LevelFourLinkByHand) {
    const Bench bench = levelBench(1.5);
    AxleLoads applied;
    applied.thrust = 6000;
    applied.leftTire = applied.rightTire = 4000;
    applied.track = 1.5;
    applied.unsprungMass = 100;
    const LinkLoads loads = bench.solve(computeTrace(bench.car).ride, applied);
    for (std::size_t lower : {0U, 1U}) {
        EXPECT_NEAR(loads.joints[lower].axial, -4750, 1e-8);
    }
    for (std::size_t upper : {2U, 3U}) {
        EXPECT_NEAR(loads.joints[upper].axial, 1750, 1e-8);
    }
    EXPECT_NEAR(loads.leftSprings, 4000 - 50 * kStandardGravity, 1e-8);
    EXPECT_NEAR(loads.rightSprings, loads.leftSprings, 1e-8);
    EXPECT_NEAR(loads.joints[4].value(), 0, 1e-8) << "nothing pushes sideways";
}

// By hand: 600 N m of the driveshaft press the axle's left end down. Springs 1 m apart hold that by pressing
// down 600 N less on the left and 600 N more on the right; where the tires carry 400 N more and less, 1.5 m
// apart, they need not.
TEST(LinkLoads, DriveshaftTorqueByHand) {
    const Bench bench = levelBench(1.0);
    AxleLoads applied;
    applied.leftTire = applied.rightTire = 4000;
    applied.track = 1.5;
    applied.shaftTorque = 600;
    const Station ride = computeTrace(bench.car).ride;
    const LinkLoads level = bench.solve(ride, applied);
    EXPECT_NEAR(level.leftSprings, 4000 - 600, 1e-8);
    EXPECT_NEAR(level.rightSprings, 4000 + 600, 1e-8);
    applied.leftTire += 400;
    applied.rightTire -= 400;
    const LinkLoads shifted = bench.solve(ride, applied);
    EXPECT_NEAR(shifted.leftSprings, 4000, 1e-8);
    EXPECT_NEAR(shifted.rightSprings, 4000, 1e-8);
}

// A ladder bar's front end, by hand: pinned 1 m ahead of the axle at its height, 6000 N at the ground 0.33 m
// below. Forward 3000 N on each; nose up 1980 N m, held down at the front and up by the springs.
TEST(LinkLoads, LadderBarByHand) {
    Car car = levelCar();
    car.rearTireRadius = car.frontTireRadius = 0.33;
    const Ends pin{{1, 0.4, 0.33}, {1, 0.4, 0.33}};
    car.links = {makeLink("ladder bar", LinkKind::pivot, Side::both, pin),
                 makeLink("guide", LinkKind::guide, Side::center, {{0, 0, 0.33}, {0, 0, 0.33}})};
    const Bench bench(car, {uprightSprings(1.0, 0.33)});
    AxleLoads applied;
    applied.thrust = 6000;
    applied.leftTire = applied.rightTire = 4000;
    applied.track = 1.5;
    const LinkLoads loads = bench.solve(computeTrace(bench.car).ride, applied);
    for (std::size_t bar : {0U, 1U}) {
        EXPECT_NEAR(loads.joints[bar].force.x(), -3000, 1e-8);
        EXPECT_NEAR(loads.joints[bar].force.z(), -990, 1e-8);
        EXPECT_NEAR(loads.joints[bar].value(), std::hypot(3000, 990), 1e-8);
        EXPECT_TRUE(std::isnan(loads.joints[bar].axial));
        // Two arms rigid with the axle hold it in roll beside the springs: who holds how much, nobody knows.
        EXPECT_FALSE(loads.joints[bar].determinate);
    }
    EXPECT_NEAR(loads.leftSprings, 4000 - 990, 1e-8);
    EXPECT_FALSE(loads.springsDeterminate);
    EXPECT_TRUE(loads.joints[2].determinate);
}

// Anti-squat is the part of the load transfer the springs do not see: here the springs stand over the axle's
// center, the ground is level, and the links' share is read off the balance.
TEST(LinkLoads, SpringsSeeWhatAntiSquatLeaves) {
    CarGenerator generator(420);
    for (const Layout layout : {Layout::triangulated, Layout::wattsThreeLink, Layout::parallelGuide}) {
        for (int number = 0; number < 40; ++number) {
            Car car = generator.draw(layout);
            car.frontTireRadius = car.rearTireRadius;
            const double height = car.rearTireRadius;
            const Bench bench(std::move(car), {uprightSprings(1.1, height)});
            const Station ride = computeTrace(bench.car).ride;
            LoadCase load{.thrust = 0, .axleRatio = 3.7, .track = 1.5, .unsprungMass = 90};
            const LinkLoads coasting = bench.solve(ride, axleLoads(bench.car, ride.ground, load));
            load.thrust = 4000;
            const LinkLoads pulling = bench.solve(ride, axleLoads(bench.car, ride.ground, load));
            const double transfer = standingCar(bench.car, ride.ground).transfer(load.thrust);
            const double gained =
                pulling.leftSprings + pulling.rightSprings - coasting.leftSprings - coasting.rightSprings;
            EXPECT_NEAR(gained / transfer, 1 - ride[Figure::antiSquat] / 100, 1e-9) << "car " << number;
        }
    }
}

// Two springs a side share as their rates are; one in the middle belongs to both.
TEST(LinkLoads, SpringsOfOneSideShareByTheirRates) {
    Bench bench = levelBench(1.0);
    AxleLoads applied;
    applied.leftTire = 4100;
    applied.rightTire = 3900;
    applied.track = 1.5;
    const Station ride = computeTrace(bench.car).ride;
    SuspensionPart inner = uprightSprings(1.0, bench.car.rearTireRadius);
    SuspensionPart outer = uprightSprings(1.3, bench.car.rearTireRadius);
    inner.rate = 30e3;
    outer.rate = 10e3;
    bench = Bench(bench.car, {inner, outer});
    // Left and right act at (3 x 0.5 + 0.65)/4 = 0.5375 m: 200 N x 0.75 m over both.
    const LinkLoads two = bench.solve(ride, applied);
    EXPECT_NEAR(two.leftSprings, 4000 + 100 * 0.75 / 0.5375, 1e-8);
    EXPECT_NEAR(two.rightSprings, 4000 - 100 * 0.75 / 0.5375, 1e-8);
    SuspensionPart center = uprightSprings(0, bench.car.rearTireRadius);
    center.side = Side::center;
    const LinkLoads one = Bench(bench.car, {center}).solve(ride, applied);
    EXPECT_TRUE(isUnbalanced(one, applied)) << "one spring in the middle holds no roll";
    applied.leftTire = applied.rightTire;
    const LinkLoads even = Bench(bench.car, {center}).solve(ride, applied);
    EXPECT_FALSE(isUnbalanced(even, applied));
    EXPECT_NEAR(even.leftSprings + even.rightSprings, 7800, 1e-8);
    EXPECT_TRUE(isUnbalanced(Bench(bench.car, {}).solve(ride, applied), applied)) << "no spring at all";
}

// Held sideways by symmetry alone: what pulls straight ahead balances, what yaws or shoves does not.
TEST(LinkLoads, WhatNothingHoldsIsSaid) {
    CarGenerator generator(421);
    Car car = generator.draw(Layout::parallel);
    const double height = car.rearTireRadius;
    const Bench bench(std::move(car), {uprightSprings(1.0, height)});
    const Station ride = computeTrace(bench.car).ride;
    AxleLoads applied;
    applied.thrust = 5000;
    applied.leftTire = applied.rightTire = 4000;
    applied.track = 1.5;
    applied.shaftTorque = 500;
    EXPECT_FALSE(isUnbalanced(bench.solve(ride, applied), applied));
    const Bench leaning(bench.car, {makePart("leaning", PartKind::spring, Side::left,
                                             {{0, 0.3, height + 0.3}, {0, 0.5, height}})});
    EXPECT_TRUE(isUnbalanced(leaning.solve(ride, applied), applied));
}

// A track bar and splayed uppers hold the same thing twice. With one link taken away the axle is held
// exactly, and what that link does to the others per newton, pushing at its line, is what shares could be
// moved by: the least sum of squares stands square to it.
TEST(LinkLoads, RedundantLinksShareByTheLeastSquaresAndAreMarked) {
    CarGenerator generator(422);
    Car car = generator.draw(Layout::triangulatedTrackBar);
    const double height = car.rearTireRadius;
    const Bench bench(car, {uprightSprings(1.0, height)});
    AxleLoads applied;
    applied.thrust = 5000;
    applied.leftTire = 4100;
    applied.rightTire = 4000;
    applied.track = 1.5;
    const Station ride = computeTrace(bench.car).ride;
    const LinkLoads loads = bench.solve(ride, applied);
    for (const JointLoad& joint : loads.all()) {
        EXPECT_FALSE(joint.determinate);
    }
    // The track bar as a part that pushes by 1 N, nothing else on the axle.
    SuspensionPart bar = makePart("bar", PartKind::shock, Side::center,
                                  {car.links[2].chassis.inUse().at, car.links[2].axle.inUse().at});
    bar.push = 1;
    car.links.pop_back();
    const LinkLoads moved = Bench(car, {uprightSprings(1.0, height), bar}).solve(ride, {.track = 1.5});
    double product = -loads.joints[4].axial;  // a push is a negative tension
    for (std::size_t joint = 0; joint < 4; ++joint) {
        EXPECT_TRUE(moved.joints[joint].determinate);
        product += loads.joints[joint].axial * moved.joints[joint].axial;
    }
    product += loads.leftSprings * moved.leftSprings + loads.rightSprings * moved.rightSprings;
    EXPECT_NEAR(product, 0, 1e-6);
}

// Parallel links and a guide hold the axle's roll beside the springs; sideways only the guide does.
TEST(LinkLoads, OnlyWhatIsHeldTwiceIsMarked) {
    CarGenerator generator(423);
    Car car = generator.draw(Layout::parallelGuide);
    const double height = car.rearTireRadius;
    const Bench bench(std::move(car), {uprightSprings(1.0, height)});
    AxleLoads applied;
    applied.thrust = 5000;
    applied.leftTire = applied.rightTire = 4000;
    applied.track = 1.5;
    const LinkLoads loads = bench.solve(computeTrace(bench.car).ride, applied);
    EXPECT_TRUE(loads.joints[4].determinate);
    EXPECT_FALSE(loads.joints[0].determinate);
    EXPECT_NEAR(loads.joints[0].axial, loads.joints[1].axial, 1e-7);
    EXPECT_NEAR(loads.joints[2].axial, loads.joints[3].axial, 1e-7);
}

}  // namespace bolthole
