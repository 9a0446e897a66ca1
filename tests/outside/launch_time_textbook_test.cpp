// The launch in time against what is known in closed form or printed.
#include <gmock/gmock.h>

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "geometry/dynamics/launch_run.h"
#include "geometry/kinematics/trace.h"
#include "geometry/statics/rollout.h"
#include "tests/support/level_launch.h"
#include "tests/support/made_launch.h"

namespace bolthole {

namespace {

using testing::DoubleNear;

// The rates' slopes by central differences around rest, every piece chosen anew.
Eigen::MatrixXd slopesAtRest(const LaunchInputs& inputs) {
    LaunchModel model;
    EXPECT_TRUE(model.prepare(inputs).usable());
    constexpr auto kStates = static_cast<Eigen::Index>(kLaunchStateSize);
    Eigen::MatrixXd slopes(kStates, kStates);
    const double step = 1e-6;
    const auto ratesAt = [&](std::size_t column, double by) {
        LaunchState state = model.atRest();
        state[column] += by;
        LaunchState rates{};
        model.observe(1, state);
        model.choosePieces();
        model.derive(rates);
        return rates;
    };
    for (std::size_t column = 0; column < kLaunchStateSize; ++column) {
        const LaunchState above = ratesAt(column, step);
        const LaunchState below = ratesAt(column, -step);
        for (std::size_t row = 0; row < kLaunchStateSize; ++row) {
            slopes(static_cast<Eigen::Index>(row), static_cast<Eigen::Index>(column)) =
                (above[row] - below[row]) / (2 * step);
        }
    }
    return slopes;
}

// Of the vertical and pitching motion alone, rad/s, rising: wheels and engine are left out.
std::vector<double> frequencies(const LaunchInputs& inputs) {
    const Eigen::MatrixXd all = slopesAtRest(inputs);
    constexpr std::array<Eigen::Index, 8> kKept{kUp,     kPitch,     kRearTravel, kFrontTravel,
                                                kUpRate, kPitchRate, kRearRate,   kFrontRate};
    const Eigen::MatrixXd slopes = all(kKept, kKept);
    const Eigen::EigenSolver<Eigen::MatrixXd> solver(slopes, false);  // outlives the roots that are read
    std::vector<double> found;
    for (const std::complex<double> root : solver.eigenvalues()) {
        if (root.imag() > 0) {
            found.push_back(root.imag());
        }
    }
    std::ranges::sort(found);
    return found;
}

}  // namespace

// Barton & Fieldhouse, Automotive Chassis Engineering (Springer 2018), sec. 3.13, p. 209: 317.5 and 45.4 kg,
// 22 and 192 kN/m, 7.87 and 68.73 rad/s as printed; 7.8786 and 68.7086 recomputed. A half-car whose pitch
// inertia is m a b is two such quarters (derived).
TEST(LaunchTimeTextbook, QuarterCarFrequencies) {
    LaunchInputs inputs = levelLaunch(2 * 317.5 + 2 * 45.4, 2.6, 1.3);
    inputs.bodies.rearUnsprung = inputs.bodies.frontUnsprung = 45.4;
    inputs.bodies.pitchInertia = 635 * 1.3 * 1.3;
    inputs.rearWheelRate = inputs.front.wheelRate = 22e3 / 2;
    inputs.tires.rearRate = inputs.tires.frontRate = 192e3 / 2;
    const std::vector<double> found = frequencies(inputs);
    ASSERT_EQ(found.size(), 4U);
    EXPECT_THAT(found[0], DoubleNear(7.8786, 5e-5));
    EXPECT_THAT(found[1], DoubleNear(7.8786, 5e-5));
    EXPECT_THAT(found[2], DoubleNear(68.7086, 5e-5));
    EXPECT_THAT(found[3], DoubleNear(68.7086, 5e-5));
}

// C. H. Edwards, D. E. Penney, Differential Equations and Linear Algebra, 2nd ed., 7.4-24 (problem and
// edition read in G. B. Gustafson's notes to it, University of Utah, course 2250; the title is that of the
// course's textbook): m 100, I 1000, two springs of 2000, 6 and 4 from the center (slug, ft, lb): 6.1311
// and 10.3155 rad/s, in the notes 6.13 and 10.31. Either spring is suspension and tire in series, of 4000
// each, with no mass between.
TEST(LaunchTimeTextbook, BounceAndPitchOfABodyOnTwoSprings) {
    LaunchInputs inputs = levelLaunch(100, 10, 6);
    inputs.bodies.pitchInertia = 1000;
    inputs.rearWheelRate = inputs.front.wheelRate = 2000;
    inputs.tires.rearRate = inputs.tires.frontRate = 2000;
    const std::vector<double> found = frequencies(inputs);
    ASSERT_GE(found.size(), 2U);
    EXPECT_THAT(found[0], DoubleNear(6.1311, 5e-5));
    EXPECT_THAT(found[1], DoubleNear(10.3155, 5e-5));
}

// A tire of 22 in breaks a beam 1 9/16 in above the ground over 11.3 in (computed: the chord of a circle).
TEST(LaunchTimeTextbook, RolloutIsTheChordAtTheBeam) {
    EXPECT_THAT(rolloutPastBeam(11 * kMetresPerInch, 1.5625 * kMetresPerInch) / kMetresPerInch,
                DoubleNear(11.3, 0.05));
}

// Even acceleration from rest: t = sqrt(2 d/a). The clutch slips all the way; the wheels' inertia is in a.
TEST(LaunchTimeTextbook, ConstantForce) {
    LaunchInputs inputs = sleighLaunch(1600);
    inputs.coupling.capacity = 400;
    inputs.gear = 2;
    inputs.axleRatio = 4;
    inputs.engine.launchSpeed = 5000;
    const double radius = inputs.bodies.rearRadius;
    const double force = 400 * 8 / radius;
    const double a = force / (1600 + inputs.bodies.wheelInertia / (radius * radius));
    const LaunchRun run = simulateLaunch(inputs, {.tolerance = 0.01});
    ASSERT_EQ(run.end, LaunchEnd::done);
    EXPECT_THAT(*run.figures.sixtyFoot, DoubleNear(std::sqrt(2 * kSixtyFeet / a), 1e-4));
}

// Constant power from rest: d = sqrt(8 P/9 m) t^1.5, with t = m v^2/2 P (derived; used by G. T. Fox, Am. J.
// Phys. 1973, title from memory). The clutch slips at even force to 1 m/s and holds from there on, on a
// torque curve of even power; what is compared is what comes after. The tread's creep takes up to 0.3 % of
// the power.
TEST(LaunchTimeTextbook, ConstantPower) {
    const double power = 2.5e5;
    LaunchInputs inputs = sleighLaunch(1600);
    inputs.tires.friction = 60;
    inputs.bodies.wheelInertia = 2;
    inputs.gear = 3;
    inputs.axleRatio = 4;
    inputs.coupling.capacity = power / 40;
    inputs.engine = {.torque = {}, .inertia = 1e-4, .launchSpeed = 40, .revLimit = 1e5};
    for (double speed = 20; speed < 2e4; speed *= 1.02) {
        inputs.engine.torque.push_back({speed, power / speed});
    }
    const LaunchRun run = simulateLaunch(inputs, {.tolerance = 1});
    ASSERT_EQ(run.end, LaunchEnd::done);
    const double mass = 1600 + 2 / (inputs.bodies.rearRadius * inputs.bodies.rearRadius);
    const auto sinceRest = [&](const LaunchRow& row) { return mass * row.speed * row.speed / (2 * power); };
    const auto run60 = [&](double time) { return std::sqrt(8 * power / (9 * mass)) * std::pow(time, 1.5); };
    const LaunchRow* first = nullptr;
    int compared = 0;
    for (const LaunchRow& row : run.rows) {
        if (row.speed < 6 || row.time > *run.figures.fromRelease) {
            continue;
        }
        first = first == nullptr ? &row : first;
        const double time = row.time - first->time;
        const double way = row.distance - first->distance;
        EXPECT_NEAR(sinceRest(row) - sinceRest(*first), time, 5e-3 * time) << row.time;
        EXPECT_NEAR(run60(sinceRest(row)) - run60(sinceRest(*first)), way, 5e-3 * way) << row.time;
        ++compared;
    }
    EXPECT_GT(compared, 50);
}

// Held by the brakes, engine and converter settle where one gives what the other takes: at the stall speed.
TEST(LaunchTimeTextbook, StallIsTheConvertersFixedPoint) {
    LaunchInputs inputs = makeLaunch(CarGenerator(3).draw(Layout::triangulated));
    inputs.release = 1e9;
    const LaunchRun run = simulateLaunch(inputs, {.tolerance = 0.01});
    ASSERT_EQ(run.end, LaunchEnd::timeOut);
    EXPECT_NEAR(run.rows.back().engineSpeed, inputs.coupling.stallSpeed, 1e-6 * inputs.coupling.stallSpeed);
    EXPECT_FALSE(run.figures.sixtyFoot);
}

// Without creep the tread's deflection is forgotten over the relaxation length: u = e^(-x/sigma) (Pacejka,
// Tire and Vehicle Dynamics, ch. 7; from memory).
TEST(LaunchTimeTextbook, TheTreadForgetsOverTheRelaxationLength) {
    LaunchInputs inputs = sleighLaunch(1600);
    inputs.tires.friction = 1e-12;
    inputs.coupling.capacity = 1e-12;
    LaunchModel model;
    ASSERT_TRUE(model.prepare(inputs).usable());
    LaunchState state = model.atRest();
    state[kForwardRate] = 10;
    state[kWheelSpin] = 10 / inputs.bodies.rearRadius;
    state[kTread] = 0.01;
    LaunchState rates{};
    DormandPrince<kLaunchStateSize> step;
    const auto system = [&](double time, const LaunchState& at, LaunchState& change) {
        model.observe(time, at);
        model.derive(change);
    };
    for (int count = 0; count < 100; ++count) {
        system(1, state, rates);
        step.step(1, state, rates, 1e-3, system);
        state = step.newState();
    }
    EXPECT_NEAR(state[kForward], 1, 1e-9);
    EXPECT_NEAR(state[kTread], 0.01 * std::exp(-state[kForward] / inputs.tires.relaxation), 1e-9);
}

// In the steady limit, T = F R, thrust and torque lift the axle with F times the slope of the side-view swing
// arm, here read off the rear patch's velocity, at every travel.
TEST(LaunchTimeTextbook, SteadyThrustActsAlongTheSwingArm) {
    for (const Layout layout :
         {Layout::triangulated, Layout::apart, Layout::threeLink, Layout::torqueArm, Layout::wattsThreeLink,
          Layout::parallel, Layout::parallelGuide, Layout::parallelTrackBar, Layout::triangulatedTrackBar,
          Layout::ladderGuide}) {
        Car car = CarGenerator(400 + static_cast<std::uint64_t>(layout)).draw(layout);
        car.travel = {.bump = 0.08, .droop = 0.08, .steps = 61, .frontRatio = 1};
        const LaunchInputs inputs = makeLaunch(car);
        LaunchModel model;
        ASSERT_TRUE(model.prepare(inputs).usable());
        const Trace trace = computeTrace(car);
        for (const Station& station : trace.stations) {
            ASSERT_TRUE(station.usable);
            LaunchState state = model.atRest();
            state[kRearTravel] = station[Figure::travel];
            // The body comes down by as much, so that the axle is at the loaded radius.
            state[kUp] = -station[Figure::travel];
            model.observe(0, state);
            const double thrust = 1e4;
            const LaunchForces forces = model.drivingForces(thrust, thrust * model.moment().axleUp);
            EXPECT_NEAR(forces[3] / thrust, -std::tan(station[Figure::swingArmAngle]), 1e-9)
                << "layout " << static_cast<int>(layout) << " at " << station[Figure::travel];
        }
    }
}

}  // namespace bolthole
