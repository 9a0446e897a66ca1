// The launch of every demo car against Simbody moving its bodies on real rods: the chassis, an axle that only
// its links hold, wheels, driveline and front wheels. What acts is the same (loads, thrust, torques, springs,
// shocks by the force laws of geometry/dynamics); what it does is found there by constraints and multipliers,
// here by Lagrange's equations along a tabled path.
#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <string>
#include <vector>

#include "app/carfile/car_file.h"
#include "geometry/dynamics/launch_run.h"
#include "tests/outside/reference_axle.h"
#include "tests/outside/simbody_launch.h"
#include "tests/outside/sundials_reference.h"

namespace bolthole {
namespace {

constexpr double kRodsAgree = 1e-5;  // agreement asked, of the scale of each number

// What each number of the state is of the size of, and of its rates what gravity does to a car.
const std::vector<double> kRodsSize{20, 0.1, 0.1, 0.1, 0.1, 15, 1, 1, 1, 1, 50, 0.05, 500};
constexpr double kSizeOfRates = 10;

RodsBodies rodsBodies(const LaunchModel& model) {
    const LaunchBodies& bodies = model.inputs().bodies;
    const double ratio = model.inputs().gear * model.inputs().axleRatio;
    RodsBodies rods;
    rods.sprungMass = bodies.total - bodies.rearUnsprung - bodies.frontUnsprung;
    // So that the whole car's center is where it was measured.
    rods.sprungX =
        (bodies.total * bodies.cgAhead - bodies.frontUnsprung * bodies.wheelbase) / rods.sprungMass;
    rods.sprungZ = (bodies.total * bodies.cgHeight - bodies.rearUnsprung * bodies.rearRadius -
                    bodies.frontUnsprung * bodies.frontRadius) /
                   rods.sprungMass;
    rods.pitchInertia = bodies.pitchInertia;
    rods.rearUnsprung = bodies.rearUnsprung;
    rods.housingInertia = bodies.housingInertia;
    rods.wheelInertia = bodies.wheelInertia;
    rods.drivelineInertia = bodies.drivelineInertia * ratio * ratio;
    rods.frontUnsprung = bodies.frontUnsprung;
    rods.frontRollingMass = bodies.frontWheelInertia / (bodies.frontRadius * bodies.frontRadius);
    rods.wheelbase = bodies.wheelbase;
    rods.rearRadius = bodies.rearRadius;
    rods.frontRadius = bodies.frontRadius;
    rods.gravity = bodies.gravity;
    return rods;
}

// Both of a pair, each on its own side. How many lines of the model each stands for: see forcesOf().
std::vector<RodsLine> rodsLines(const LaunchInputs& inputs) {
    std::vector<RodsLine> lines;
    for (const LaunchPart& part : inputs.parts) {
        const bool pad = part.kind == PartKind::bumpStop;
        lines.push_back({part.onAxle, part.onChassis, pad});
        if (part.side == Side::both) {
            lines.push_back({mirrored(part.onAxle), mirrored(part.onChassis), pad});
        }
    }
    return lines;
}

// Simbody's rods hold exactly: of a car with one more, one of a mirrored pair is left out; the other stands
// for it.
ReferenceAxle exactlyHeld(const Linkage& linkage) {
    ReferenceAxle axle = referenceAxle(linkage);
    if (axle.links.size() > 4) {
        const auto doubled =
            std::find_if(axle.links.begin(), axle.links.end(), [](const ReferenceLink& link) {
                return link.onAxle.y() > 0 &&
                       (link.kind == ReferenceLink::rod || link.kind == ReferenceLink::sameZ);
            });
        axle.links.erase(doubled);
    }
    return axle;
}

/// Rates of a launch's state as Simbody finds them.
class LaunchOnRods {
  public:
    explicit LaunchOnRods(const LaunchInputs& inputs) {
        if (model_.prepare(inputs).usable()) {
            rods_ = std::make_unique<SimbodyLaunch>(rodsBodies(model_), exactlyHeld(inputs.linkage),
                                                    rodsLines(inputs));
        }
    }
    [[nodiscard]] bool ready() const { return rods_ != nullptr; }
    [[nodiscard]] LaunchModel& model() { return model_; }
    [[nodiscard]] const RodsRates& found() const { return found_; }

    /// Of a state of `model` just derived into `rates`: the rates of the five coordinates and the spin anew.
    [[nodiscard]] bool replace(const LaunchModel& model, const LaunchState& state, LaunchState& rates) {
        const RodsMotion motion{state[kForward],     state[kUp],          state[kPitch],  state[kRearTravel],
                                state[kFrontTravel], state[kForwardRate], state[kUpRate], state[kPitchRate],
                                state[kRearRate],    state[kFrontRate]};
        if (!rods_->moveTo(motion)) {
            return false;
        }
        found_ = rods_->rates(forcesOf(model, state));
        rates[kForwardRate] = found_.forward;
        rates[kUpRate] = found_.up;
        rates[kPitchRate] = found_.pitch;
        rates[kRearRate] = found_.rearTravel;
        rates[kFrontRate] = found_.frontTravel;
        rates[kWheelSpin] = found_.wheelSpin;
        return true;
    }
    /// The whole right-hand side, every piece of the force laws chosen for the state.
    void derive(double time, const double* numbers, double* written) {
        LaunchState state{};
        std::copy_n(numbers, kLaunchStateSize, state.begin());
        while (state[kRearTravel] > model_.table().highest() && model_.cross(kLinkageEnd, +1)) {
        }
        while (state[kRearTravel] < model_.table().lowest() && model_.cross(kLinkageEnd, -1)) {
        }
        model_.observe(time, state);
        model_.choosePieces();
        LaunchState rates{};
        model_.derive(rates);
        followed_ = replace(model_, state, rates) && followed_;
        std::copy(rates.begin(), rates.end(), written);
    }
    [[nodiscard]] bool followed() const { return followed_; }

  private:
    static RodsForces forcesOf(const LaunchModel& model, const LaunchState& state) {
        const LaunchMoment& now = model.moment();
        const LaunchInputs& inputs = model.inputs();
        RodsForces forces;
        forces.rearLoad = now.rearLoad;
        forces.frontLoad = now.frontLoad;
        forces.thrust = now.thrust;
        forces.axleUp = now.axleUp;
        forces.ringTorque = now.ringTorque;
        forces.onPitch = model.rest().onPitch;
        forces.onRear = model.rest().onRear - 2 * inputs.rearWheelRate.value_or(0) * state[kRearTravel];
        forces.onFront = model.rest().onFront + model.frontForce() -
                         2 * inputs.front.motionRatio * model.frontShaftForce();
        for (std::size_t line = 0; line < model.lines().size(); ++line) {
            const auto alike = static_cast<std::size_t>(model.lines()[line].count);
            const double force = model.lineForce(line) + model.lineDamping(line);
            forces.lines.insert(forces.lines.end(), alike, force);
        }
        return forces;
    }

    LaunchModel model_;
    std::unique_ptr<SimbodyLaunch> rods_;
    RodsRates found_{};
    bool followed_ = true;
};

/// The inputs of a demo car, its own.
LaunchInputs demoLaunch(const std::string& name) {
    const ReadResult read = readCarFile(std::string(BOLTHOLE_DEMO_DIR "/") + name + ".bolt.json");
    if (!read.loaded) {
        ADD_FAILURE() << read.problem.line();
        return {};
    }
    LaunchInputsResult result = launchInputsOf(read.loaded->car);
    EXPECT_TRUE(result.inputs.has_value()) << name;
    return result.inputs ? std::move(*result.inputs) : LaunchInputs{};
}

const std::vector<std::string> kDemoCars{"long-roof-wagon", "light-coupe", "short-pickup", "gully-roadster",
                                         "notch-sedan"};

/// At the end of every step of a run: accelerations, and where the axle is, by the equations and by the rods.
class StepsOnRods : public LaunchSimulator::Observer {
  public:
    explicit StepsOnRods(LaunchOnRods& rods) : rods_(rods) {}

    void stepped(LaunchModel& model, const DormandPrince<kLaunchStateSize>& step, double time, double width,
                 double used) override {
        LaunchState state{};
        step.at(used, state);
        LaunchState rates{};
        model.observe(time + used * width, state);
        model.derive(rates);
        LaunchState onRods = rates;
        closed = rods_.replace(model, state, onRods) && closed;
        for (std::size_t place = kForwardRate; place <= kWheelSpin; ++place) {
            largest = std::max(largest, std::abs(onRods[place]));
            differ = std::max(differ, std::abs(onRods[place] - rates[place]) / kSizeOfRates);
        }
        placed = std::max({placed, std::abs(rods_.found().axleX - model.moment().x.value),
                           std::abs(rods_.found().axleTurn - model.moment().turn.value)});
        ++steps;
    }

    bool closed = true;
    int steps = 0;
    double differ = 0;   // largest difference of accelerations, of their size
    double largest = 0;  // m/s^2 or rad/s^2
    double placed = 0;   // m or rad

  private:
    LaunchOnRods& rods_;
};

/// The run's rows by integrating what Simbody says, piece by piece between the clutch's locking and opening.
std::vector<LaunchState> runOnRods(LaunchOnRods& rods, const LaunchRun& run) {
    std::vector<double> times{0};
    for (const LaunchRow& row : run.rows) {
        times.push_back(row.time);
    }
    std::vector<LaunchState> states;
    const LaunchState start = rods.model().atRest();
    std::vector<double> from(start.begin(), start.end());
    double since = 0;
    std::size_t row = 1;
    const auto until = [&](double end, bool last) {
        std::vector<double> wanted{0};
        while (row < times.size() && (last || times[row] <= end)) {
            wanted.push_back(times[row++] - since);
        }
        const std::size_t rows = wanted.size();
        if (!last) {
            wanted.push_back(end - since);
        }
        const auto found = integrateByReference(
            [&](double time, const double* state, double* rates) { rods.derive(since + time, state, rates); },
            from, kRodsSize, wanted, 1e-9);
        for (std::size_t index = 1; index < std::min(rows, found.size()); ++index) {
            LaunchState& state = states.emplace_back();
            std::copy(found[index].begin(), found[index].end(), state.begin());
        }
        if (!found.empty()) {
            from = found.back();
        }
        since = end;
    };
    for (const LaunchEvent& event : run.events) {
        if (event.kind == LaunchEventKind::locked || event.kind == LaunchEventKind::slipping) {
            until(event.time, false);
            LaunchState at{};
            LaunchState rates{};
            std::copy(from.begin(), from.end(), at.begin());
            rods.model().observe(event.time, at);
            rods.model().choosePieces();
            rods.model().derive(rates);
            EXPECT_TRUE(rods.model().cross(kSpeedRatio, -1));
        }
    }
    until(0, true);
    return states;
}

}  // namespace

TEST(LaunchOnRodsBySimbody, EveryStepOfEveryDemoCar) {
    for (const std::string& name : kDemoCars) {
        SCOPED_TRACE(name);
        const LaunchInputs inputs = demoLaunch(name);
        LaunchOnRods rods(inputs);
        ASSERT_TRUE(rods.ready());
        StepsOnRods steps(rods);
        LaunchSimulator simulator;
        LaunchRun run;
        simulator.run(inputs, {.tolerance = 1e-3}, run, &steps);
        ASSERT_EQ(run.end, LaunchEnd::done);
        EXPECT_TRUE(steps.closed);
        EXPECT_GT(steps.steps, 300);
        EXPECT_GT(steps.largest, 20) << "a launch that does something";
        EXPECT_LE(steps.differ, kRodsAgree);
        EXPECT_LE(steps.placed, kRodsAgree * 0.1);
    }
}

TEST(LaunchOnRodsBySimbody, EveryDemoCarRunsTheSameLaunch) {
    for (const std::string& name : kDemoCars) {
        SCOPED_TRACE(name);
        const LaunchInputs inputs = demoLaunch(name);
        const LaunchRun run = simulateLaunch(inputs, {.every = 0.02, .tolerance = 1e-4});
        ASSERT_EQ(run.end, LaunchEnd::done);
        LaunchOnRods rods(inputs);
        ASSERT_TRUE(rods.ready());
        const std::vector<LaunchState> states = runOnRods(rods, run);
        EXPECT_TRUE(rods.followed());
        ASSERT_EQ(states.size(), run.rows.size());
        double differ = 0;
        for (std::size_t index = 0; index < states.size(); ++index) {
            const LaunchRow& row = run.rows[index];
            const LaunchState& state = states[index];
            const auto take = [&](double one, double other, double size) {
                differ = std::max(differ, std::abs(one - other) / size);
            };
            take(state[kForward], row.forward, 18);
            take(state[kUp], row.up, 0.1);
            take(state[kPitch], row.pitch, 0.1);
            take(state[kRearTravel], row.rearTravel, 0.1);
            take(state[kFrontTravel], row.frontTravel, 0.1);
            take(state[kWheelSpin], row.wheelSpin, 50);
            take(state[kEngineSpeed], row.engineSpeed, 500);
        }
        EXPECT_LE(differ, kRodsAgree);
    }
}

}  // namespace bolthole
