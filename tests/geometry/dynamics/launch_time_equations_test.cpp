// Lagrange's equations, one by one, from the bodies' energies alone.
#include <gmock/gmock.h>

#include <array>
#include <cmath>

#include "tests/support/launch_energy.h"
#include "tests/support/made_launch.h"

namespace bolthole {

namespace {

// The six coordinates: their place in the state where they have one, and their rate's.
constexpr std::array<std::size_t, 5> kCoordinates{kForward, kUp, kPitch, kRearTravel, kFrontTravel};
constexpr std::array<std::size_t, 6> kRates{kForwardRate, kUpRate,    kPitchRate,
                                            kRearRate,    kFrontRate, kWheelSpin};

/// Derivatives of the energies by central differences.
class Lagrangian {
  public:
    explicit Lagrangian(LaunchModel& model) : model_(model) {}

    double kinetic(const LaunchState& y) {
        model_.observe(0, y);
        return EnergyBooks::kinetic(model_, y);
    }
    double potential(const LaunchState& y) {
        model_.observe(0, y);
        return EnergyBooks::potential(model_, y);
    }
    // dT/d rate; T is quadratic in the rates, so that any step is exact.
    double momentum(LaunchState y, std::size_t rate) {
        const double at = y[rate];
        y[rate] = at + 1;
        const double above = kinetic(y);
        y[rate] = at - 1;
        return (above - kinetic(y)) / 2;
    }
    // d/dt dT/d rate - d(T - V)/d coordinate, with the accelerations in `change`. `coordinate` may have no
    // place.
    double left(const LaunchState& y, const LaunchState& change, std::size_t rate,
                std::optional<std::size_t> coordinate) {
        const double step = 1e-4;
        double sum = 0;
        for (const double side : {+1.0, -1.0}) {
            LaunchState at = y;
            for (std::size_t index = 0; index < kLaunchStateSize; ++index) {
                at[index] += side * step * change[index];
            }
            sum += side * momentum(at, rate) / (2 * step);
            if (coordinate) {
                at = y;
                at[*coordinate] += side * step;
                sum += side * (potential(at) - kinetic(at)) / (2 * step);
            }
        }
        return sum;
    }

  private:
    LaunchModel& model_;
};

// Nothing that is lost and nothing driven: before the release, tires without creep or damping.
LaunchInputs conservative(Layout layout) {
    LaunchInputs inputs = makeLaunch(CarGenerator(12 + static_cast<std::uint64_t>(layout)).draw(layout));
    inputs.tires.damping = 0;
    inputs.tires.lag = 0;
    inputs.front.damping.reset();
    for (LaunchPart& part : inputs.parts) {
        part.damping.reset();
    }
    return inputs;
}

}  // namespace

// Forces that do work without loss come from the energies; so with the accelerations found, every equation of
// Lagrange is closed (H. Goldstein, "Classical Mechanics", ch. 1; from memory). Thrust and torque are zero
// here; what they do is held against the swing arm and the energy's books.
TEST(LaunchTimeEquations, AreLagranges) {
    for (const Layout layout :
         {Layout::triangulated, Layout::threeLink, Layout::torqueArm, Layout::ladderGuide}) {
        const LaunchInputs inputs = conservative(layout);
        LaunchModel model;
        ASSERT_TRUE(model.prepare(inputs).usable());
        CarGenerator generator(5);
        for (int number = 0; number < 20; ++number) {
            LaunchState state = model.atRest();
            for (const std::size_t coordinate : {kUp, kPitch, kRearTravel, kFrontTravel}) {
                state[coordinate] = generator.between(-0.03, 0.03);
            }
            for (const std::size_t rate : kRates) {
                state[rate] = generator.between(-2, 2);
            }
            LaunchState change{};
            model.observe(0, state);
            model.choosePieces();
            model.derive(change);
            ASSERT_EQ(model.moment().thrust, 0);
            ASSERT_EQ(model.moment().ringTorque, 0);
            LaunchState motion = change;
            motion[kEngineSpeed] = 0;  // the engine turns by itself
            Lagrangian lagrangian(model);
            const double scale = inputs.bodies.total * inputs.bodies.gravity;
            for (std::size_t index = 0; index < kRates.size(); ++index) {
                const auto coordinate =
                    index < kCoordinates.size() ? std::optional(kCoordinates[index]) : std::nullopt;
                EXPECT_NEAR(lagrangian.left(state, motion, kRates[index], coordinate) / scale, 0, 2e-6)
                    << "equation " << index << " layout " << static_cast<int>(layout);
            }
        }
    }
}

// At rest, in gear, the brakes on, nothing moves but the engine.
TEST(LaunchTimeEquations, TheRestPoseIsAnEquilibrium) {
    for (const Layout layout : {Layout::triangulated, Layout::apart, Layout::parallelTrackBar}) {
        CarGenerator generator(77);
        Car car = generator.draw(layout);
        generator.misbuild(car, 0.002);  // lengths a little off the holes: the axle stands turned at rest
        LaunchModel model;
        ASSERT_TRUE(model.prepare(makeLaunch(car)).usable());
        LaunchState change{};
        model.observe(0, model.atRest());
        model.derive(change);
        for (std::size_t index = 0; index < kEngineSpeed; ++index) {
            EXPECT_NEAR(change[index], 0, 1e-9) << index;
        }
    }
}

}  // namespace bolthole
