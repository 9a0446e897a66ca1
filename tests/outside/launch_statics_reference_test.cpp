// Statics as the limit of a slow ramp: a thrust that rises over seconds and then stays leaves the car where
// the balance of forces of a body that does not swing says.
#include <gmock/gmock.h>

#include <cmath>

#include "geometry/dynamics/launch_run.h"
#include "geometry/statics/launch_attitude.h"
#include "tests/support/made_launch.h"

namespace bolthole {
namespace {

constexpr double kSlowly = 2;  // s

// One rate a wheel instead of springs and stops, shocks as they are; a clutch that slips all along and passes
// what the engine gives; wheels and driveline that take nothing to spin up.
LaunchInputs slowRamp(const Car& car, double torque) {
    LaunchInputs inputs = makeLaunch(car);
    std::erase_if(inputs.parts, [](const LaunchPart& part) { return part.kind != PartKind::shock; });
    for (LaunchPart& part : inputs.parts) {
        part.closedLength = part.openLength = std::nullopt;
    }
    inputs.rearWheelRate = 28e3;
    inputs.tires.friction = 3;
    inputs.bodies.wheelInertia = 0.05;
    inputs.bodies.frontWheelInertia = 0;
    inputs.bodies.drivelineInertia = 0;
    inputs.engine = {.torque = {{0, torque}}, .inertia = 1e3, .launchSpeed = 900, .revLimit = 1e4};
    inputs.coupling = {.kind = CouplingKind::clutch, .capacity = torque};
    inputs.efficiency = 1;
    inputs.release = kSlowly;
    return inputs;
}

// N that the rear tires carry more than at rest: moments of every weight and of what it takes to speed it up,
// about the rear tires' patch, where the row has the bodies.
double movedByMoments(const LaunchInputs& inputs, const LaunchRow& row) {
    const LaunchBodies& bodies = inputs.bodies;
    struct Body {
        double mass;
        double x;  // in the car frame
        double z;
    };
    const double sprung = bodies.total - bodies.rearUnsprung - bodies.frontUnsprung;
    // At rest all three together stand where the whole car's center was measured.
    const Body front{bodies.frontUnsprung, bodies.wheelbase, bodies.frontRadius + row.frontTravel};
    const Body rear{bodies.rearUnsprung, 0, bodies.rearRadius + row.rearTravel};
    const Body body{
        sprung, (bodies.total * bodies.cgAhead - bodies.frontUnsprung * bodies.wheelbase) / sprung,
        (bodies.total * bodies.cgHeight - rear.mass * bodies.rearRadius - front.mass * bodies.frontRadius) /
            sprung};
    const auto aheadOfRear = [&](const Body& one) {
        return (one.x - rear.x) * std::cos(row.pitch) + (one.z - rear.z) * std::sin(row.pitch);
    };
    double moment = 0;
    for (const Body& one : {front, rear, body}) {
        const double height = row.up - one.x * std::sin(row.pitch) + one.z * std::cos(row.pitch);
        moment += one.mass * (bodies.gravity * aheadOfRear(one) - row.acceleration * height);
    }
    return bodies.frontLoad - moment / aheadOfRear(front);
}

}  // namespace

TEST(LaunchTimeStatics, ASlowRampEndsWhereStaticsSay) {
    for (const Layout layout : {Layout::triangulated, Layout::threeLink, Layout::torqueArm,
                                Layout::wattsThreeLink, Layout::parallelGuide, Layout::ladderGuide}) {
        SCOPED_TRACE(static_cast<int>(layout));
        Car car = CarGenerator(640 + static_cast<std::uint64_t>(layout)).draw(layout);
        car.frontTireRadius = car.rearTireRadius;
        const LaunchInputs inputs = slowRamp(car, 60);
        const LaunchRun run = simulateLaunch(inputs);
        ASSERT_EQ(run.end, LaunchEnd::timeOut) << "too slow for 60 ft";
        const LaunchRow& row = run.rows.back();
        const double weight = inputs.bodies.total * inputs.bodies.gravity;
        const double moved = row.rearLoad - (weight - inputs.bodies.frontLoad);
        EXPECT_GT(moved, 200);
        EXPECT_NEAR(row.thrust, inputs.bodies.total * row.acceleration, 1e-4 * weight);
        EXPECT_NEAR(moved, movedByMoments(inputs, row), 1e-4 * weight);

        // The springs: in front what the tires lost; behind what the swing arm's slope leaves of it, with the
        // axle's own inertia (attitudeOnPath()).
        const Trace trace = computeTrace(car);
        SwingArm arm(car);
        const auto slopes = arm.at(row.rearTravel, trace.ride[Figure::ground] + row.pitch);
        ASSERT_TRUE(slopes.has_value());
        const double springs = moved - row.thrust * slopes->patch +
                               inputs.bodies.rearUnsprung * row.acceleration * slopes->center;
        EXPECT_NEAR(-2 * inputs.front.wheelRate * row.frontTravel, moved, 1e-4 * weight);
        EXPECT_NEAR(2 * *inputs.rearWheelRate * row.rearTravel, springs, 2e-4 * weight);
        // Which geometry/statics looks for with the weight left where it stood; a launch carries it back as
        // the body leans.
        EXPECT_NEAR(moved, standingCar(car, trace.ride.ground).transfer(row.thrust), 0.03 * moved);
    }
}

}  // namespace bolthole
