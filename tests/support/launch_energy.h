// The energy of a launch, kept as books: what the engine gives, what is stored, and each loss by name.
//
// Written from the bodies' own speeds and the parts' own numbers, not from the equations of motion.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/dynamics/launch_limits.h"
#include "geometry/dynamics/launch_run.h"

namespace bolthole {

/// J, or W where they are rates.
struct EnergyFlows {
    double engine = 0;      ///< work of the engine's torque
    double coupling = 0;    ///< lost in converter or clutch
    double gears = 0;       ///< lost to efficiency
    double brakes = 0;      ///< held back until the release is over
    double tread = 0;       ///< lost where the tread slips
    double rearShocks = 0;  ///< lost in shocks
    double frontShocks = 0;
    double tireDamping = 0;  ///< lost in the tires going up and down

    [[nodiscard]] double lost() const {
        return coupling + gears + brakes + tread + rearShocks + frontShocks + tireDamping;
    }
    void add(const EnergyFlows& other, double share) {
        engine += share * other.engine;
        coupling += share * other.coupling;
        gears += share * other.gears;
        brakes += share * other.brakes;
        tread += share * other.tread;
        rearShocks += share * other.rearShocks;
        frontShocks += share * other.frontShocks;
        tireDamping += share * other.tireDamping;
    }
};

/// Follows a run step by step; largest gap between what came in and what is there or lost, over what came in.
class EnergyBooks : public LaunchSimulator::Observer {
  public:
    void stepped(LaunchModel& model, const DormandPrince<kLaunchStateSize>& step, double time, double width,
                 double used) override {
        // Gauss-Legendre, 5 points on (0, 1) (M. Abramowitz, I. A. Stegun, "Handbook of Mathematical
        // Functions", table 25.4; from memory).
        constexpr std::array<std::pair<double, double>, 5> kPoints{{{0.046910077030668, 0.118463442528095},
                                                                    {0.230765344947158, 0.239314335249683},
                                                                    {0.5, 0.284444444444444},
                                                                    {0.769234655052842, 0.239314335249683},
                                                                    {0.953089922969332, 0.118463442528095}}};
        LaunchState state{};
        if (!begun_) {
            step.at(0, state);
            begin_ = stored(model, time, state);
            begun_ = true;
        }
        for (const auto& [at, weight] : kPoints) {
            step.at(at * used, state);
            flows.add(powers(model, time + at * used * width, state), weight * used * width);
        }
        step.at(used, state);
        const double gap = flows.engine - flows.lost() - (stored(model, time + used * width, state) - begin_);
        largestGap = std::max(largestGap, std::abs(gap));
        ++steps;
    }

    EnergyFlows flows{};
    double largestGap = 0;  ///< J
    int steps = 0;

    /// J, of everything that moves, at the moment `model` last observed, which is that of `y`.
    static double kinetic(const LaunchModel& model, const LaunchState& y) {
        const LaunchBodies& bodies = model.inputs().bodies;
        const LaunchMoment& now = model.moment();
        const Point sprung = pointOf(y, model.rest().sprungX, model.rest().sprungZ, 0, 0);
        const Point axle = pointOf(y, now.x.value, bodies.rearRadius + y[kRearTravel],
                                   now.x.first * y[kRearRate], y[kRearRate]);
        const Point front =
            pointOf(y, bodies.wheelbase, bodies.frontRadius + y[kFrontTravel], 0, y[kFrontRate]);
        const auto moving = [](double mass, const Point& point) {
            return mass * (square(point.alongRate) + square(point.upRate));
        };
        const double housing = y[kPitchRate] + now.turn.first * y[kRearRate];
        const double ratio = model.inputs().gear * model.inputs().axleRatio;
        return (moving(model.rest().sprungMass, sprung) + moving(bodies.rearUnsprung, axle) +
                moving(bodies.frontUnsprung, front) + bodies.pitchInertia * square(y[kPitchRate]) +
                bodies.housingInertia * square(housing) + bodies.wheelInertia * square(y[kWheelSpin]) +
                bodies.frontWheelInertia * square(front.alongRate / bodies.frontRadius) +
                bodies.drivelineInertia * square(ratio * (y[kWheelSpin] - housing)) +
                model.inputs().engine.inertia * square(y[kEngineSpeed])) /
               2;
    }
    /// J, of weight, springs, stops, tires and the constants that hold the rest pose.
    static double potential(const LaunchModel& model, const LaunchState& y) {
        const LaunchInputs& inputs = model.inputs();
        const LaunchBodies& bodies = inputs.bodies;
        const LaunchModel::Rest& rest = model.rest();
        const double sprungUp = pointOf(y, rest.sprungX, rest.sprungZ, 0, 0).up;
        double sum =
            bodies.gravity * (rest.sprungMass * sprungUp + bodies.rearUnsprung * model.moment().axleUp +
                              bodies.frontUnsprung * model.moment().frontUp);
        const Loads elastic = elasticLoads(model);
        sum += square(elastic.rear) / (4 * inputs.tires.rearRate) +
               square(elastic.front) / (4 * inputs.tires.frontRate);
        sum += inputs.front.wheelRate * square(y[kFrontTravel]) +
               kFrontStopRate / 2 *
                   (past(y[kFrontTravel] - inputs.front.bump) + past(-inputs.front.droop - y[kFrontTravel]));
        sum += inputs.rearWheelRate.value_or(0) * square(y[kRearTravel]);
        sum -= rest.onPitch * y[kPitch] + rest.onRear * y[kRearTravel] + rest.onFront * y[kFrontTravel];
        for (std::size_t line = 0; line < model.lines().size(); ++line) {
            const LaunchPart& part = inputs.parts[model.lines()[line].part];
            const double length = model.lineLength(line).value;
            double in = -part.push * length;
            if (part.rate && part.freeLength && part.kind != PartKind::shock &&
                part.kind != PartKind::strap) {
                in += *part.rate / 2 * past(*part.freeLength - length);
            }
            in += kPartStopRate / 2 *
                  (past(part.closedLength.value_or(length) - length) +
                   past(length - part.openLength.value_or(length)));
            sum += model.lines()[line].count * in;
        }
        return sum;
    }

  private:
    static EnergyFlows powers(LaunchModel& model, double time, const LaunchState& state) {
        LaunchState rates{};
        model.observe(time, state);
        model.derive(rates);
        const LaunchMoment& now = model.moment();
        const LaunchInputs& inputs = model.inputs();
        const double given = now.outputTorque * now.turbineSpeed;
        const double kept = now.outputTorque < 0 ? 1 / inputs.efficiency : inputs.efficiency;
        EnergyFlows flows;
        flows.engine = now.engineTorque * state[kEngineSpeed];
        flows.coupling = now.pumpTorque * state[kEngineSpeed] - given;
        flows.gears = given * (1 - kept);
        flows.brakes = given * kept - now.ringTorque * now.turbineSpeed / (inputs.gear * inputs.axleRatio);
        flows.tread = now.thrust * now.creep;
        for (std::size_t line = 0; line < model.lines().size(); ++line) {
            flows.rearShocks -= model.lines()[line].count * model.lineDamping(line) *
                                model.lineLength(line).first * state[kRearRate];
        }
        flows.frontShocks = 2 * model.frontShaftForce() * inputs.front.motionRatio * state[kFrontRate];
        const Loads elastic = elasticLoads(model);
        flows.tireDamping = now.axleUpRate * (elastic.rear - now.rearLoad) +
                            now.frontUpRate * (elastic.front - now.frontLoad);
        return flows;
    }

    struct Loads {
        double rear = 0;
        double front = 0;
    };
    static Loads elasticLoads(const LaunchModel& model) {
        const LaunchInputs& inputs = model.inputs();
        const LaunchBodies& bodies = inputs.bodies;
        const LaunchMoment& now = model.moment();
        const double rear = bodies.total * bodies.gravity - bodies.frontLoad;
        return {std::max(0.0, rear + 2 * inputs.tires.rearRate * (bodies.rearRadius - now.axleUp)),
                std::max(0.0,
                         bodies.frontLoad + 2 * inputs.tires.frontRate * (bodies.frontRadius - now.frontUp))};
    }

    static double square(double number) { return number * number; }
    static double past(double number) { return square(std::max(0.0, number)); }

    // Speed squared and height of a point of the chassis that moves in it.
    struct Point {
        double alongRate;
        double upRate;
        double up;
    };
    static Point pointOf(const LaunchState& y, double x, double z, double xRate, double zRate) {
        const double sine = std::sin(y[kPitch]);
        const double cosine = std::cos(y[kPitch]);
        const double along = xRate + z * y[kPitchRate];
        const double across = zRate - x * y[kPitchRate];
        return {y[kForwardRate] + along * cosine + across * sine, y[kUpRate] - along * sine + across * cosine,
                y[kUp] - x * sine + z * cosine};
    }

    static double stored(LaunchModel& model, double time, const LaunchState& state) {
        model.observe(time, state);
        return kinetic(model, state) + potential(model, state);
    }

    bool begun_ = false;
    double begin_ = 0;
};

}  // namespace bolthole
