#include "geometry/dynamics/launch_inputs.h"

#include <algorithm>
#include <cmath>

#include "geometry/car/tire_rate.h"
#include "geometry/dynamics/damping_line.h"
#include "geometry/statics/suspension_part.h"
#include "geometry/weights/entered_figures.h"

namespace bolthole {

namespace {

struct NamedNumber {
    double value;
    const char* name;
};

bool isAbove0(const NamedNumber& number) {
    return std::isfinite(number.value) && number.value > 0;
}
bool isAtLeast0(const NamedNumber& number) {
    return std::isfinite(number.value) && number.value >= 0;
}

std::string sprungRefusal(const LaunchBodies& bodies) {
    if (!(bodies.total > bodies.rearUnsprung + bodies.frontUnsprung)) {
        return "expected less unsprung mass than the whole car's";
    }
    if (!(std::isfinite(bodies.frontLoad) && std::isfinite(bodies.cgAhead))) {
        return "expected a load on the front tires and a center of gravity";
    }
    return {};
}

std::string engineRefusal(const LaunchEngine& engine) {
    if (engine.torque.empty()) {
        return "expected a torque curve";
    }
    double last = -1;
    for (const TorquePoint& point : engine.torque) {
        if (!(std::isfinite(point.speed) && point.speed > last && std::isfinite(point.torque))) {
            return "expected a torque curve whose speeds rise";
        }
        last = point.speed;
    }
    return {};
}

std::string couplingRefusal(const LaunchInputs& inputs) {
    const LaunchCoupling& coupling = inputs.coupling;
    if (coupling.kind == CouplingKind::clutch) {
        return isAbove0({coupling.capacity, ""}) ? "" : "expected a clutch capacity above 0";
    }
    if (!isAbove0({coupling.stallSpeed, ""}) || !isAbove0({coupling.torqueRatio, ""})) {
        return "expected a stall speed and a torque ratio above 0";
    }
    return coupling.couplingRatio > 0 && coupling.couplingRatio < 1
               ? ""
               : "expected a coupling ratio between 0 and 1";
}

std::string partRefusal(const LaunchPart& part) {
    SuspensionPart whole;
    whole.chassis.holes = {Hole{.name = {}, .at = part.onChassis}};
    whole.axle.holes = {Hole{.name = {}, .at = part.onAxle}};
    whole.rate = part.rate;
    whole.freeLength = part.freeLength;
    whole.closedLength = part.closedLength;
    whole.openLength = part.openLength;
    whole.push = part.push;
    std::string why = refusal(whole);
    return why.empty() && part.damping ? refusal(*part.damping).reason : why;
}

}  // namespace

std::string refusal(const LaunchInputs& inputs) {
    const LaunchBodies& bodies = inputs.bodies;
    const LaunchTires& tires = inputs.tires;
    for (const NamedNumber& number : {NamedNumber{bodies.total, "mass"},
                                      {bodies.frontUnsprung, "front unsprung mass"},
                                      {bodies.rearUnsprung, "rear unsprung mass"},
                                      {bodies.pitchInertia, "pitch inertia"},
                                      {bodies.wheelInertia, "wheel inertia"},
                                      {bodies.wheelbase, "wheelbase"},
                                      {bodies.rearRadius, "rear tire radius"},
                                      {bodies.frontRadius, "front tire radius"},
                                      {bodies.cgHeight, "height of the center of gravity"},
                                      {tires.friction, "tire friction"},
                                      {tires.peakSlip, "slip of the peak"},
                                      {tires.relaxation, "relaxation length"},
                                      {tires.rearRate, "rear tire rate"},
                                      {tires.frontRate, "front tire rate"},
                                      {inputs.engine.inertia, "engine inertia"},
                                      {inputs.engine.launchSpeed, "launch speed"},
                                      {inputs.engine.revLimit, "rev limit"},
                                      {inputs.gear, "gear"},
                                      {inputs.axleRatio, "axle ratio"},
                                      {inputs.efficiency, "efficiency"},
                                      {inputs.front.wheelRate, "front wheel rate"},
                                      {inputs.front.motionRatio, "front motion ratio"},
                                      {inputs.front.droop, "front droop"},
                                      {inputs.front.bump, "front bump travel"},
                                      {inputs.rearWheelRate.value_or(1), "rear wheel rate"}}) {
        if (!isAbove0(number)) {
            return std::string("expected above 0: ") + number.name;
        }
    }
    for (const NamedNumber& number : {NamedNumber{bodies.housingInertia, "housing inertia"},
                                      {bodies.frontWheelInertia, "front wheel inertia"},
                                      {bodies.drivelineInertia, "driveline inertia"},
                                      {bodies.gravity, "gravity"},
                                      {tires.damping, "tire damping"},
                                      {tires.lag, "tire lag"},
                                      {inputs.release, "release"},
                                      {inputs.rollout, "rollout"}}) {
        if (!isAtLeast0(number)) {
            return std::string("expected 0 or more: ") + number.name;
        }
    }
    if (!(tires.sliding > 0 && tires.sliding < 1)) {
        return "expected less friction sliding than at the peak, above 0";
    }
    std::string why = sprungRefusal(bodies);
    why = why.empty() ? engineRefusal(inputs.engine) : why;
    why = why.empty() ? couplingRefusal(inputs) : why;
    why = why.empty() && inputs.front.damping ? refusal(*inputs.front.damping).reason : why;
    for (const LaunchPart& part : inputs.parts) {
        why = why.empty() ? partRefusal(part) : why;
    }
    return why;
}

namespace {

/// Reads numbers and notes those that are not there.
class InputReader {
  public:
    explicit InputReader(std::vector<MissingInput>& missing) : missing_(missing) {}

    double need(const std::optional<double>& number, const std::string& path, const std::string& what) {
        if (!number) {
            missing_.push_back({path, "expected " + what});
        }
        return number.value_or(0);
    }

  private:
    std::vector<MissingInput>& missing_;
};

void readBodies(const Car& car, const EnteredLaunch& setup, InputReader& reader, LaunchBodies& bodies) {
    const CarBalance balance = balanceOf(car);
    bodies.total = balance.total;
    bodies.frontLoad = balance.front * bodies.gravity;
    bodies.cgAhead = balance.cgX(car.wheelbase);
    bodies.cgHeight = balance.height;
    bodies.wheelbase = car.wheelbase;
    bodies.rearRadius = car.rearTireRadius;
    bodies.frontRadius = car.frontTireRadius;
    bodies.rearUnsprung =
        reader.need(car.launch.unsprungMass, "launch.unsprung_mass", "the mass of axle, wheels and brakes");
    bodies.frontUnsprung = reader.need(setup.frontUnsprungMass, "launch.front_unsprung_mass",
                                       "the mass of the front wheels, hubs and brakes");
    bodies.pitchInertia = reader.need(setup.pitchInertia, "launch.pitch_inertia",
                                      "the sprung mass's moment of inertia in pitch");
    bodies.housingInertia = setup.housingInertia.value_or(0);
    bodies.wheelInertia =
        reader.need(setup.wheelInertia, "launch.wheel_inertia", "the moment of inertia of both rear wheels");
    bodies.frontWheelInertia = setup.frontWheelInertia.value_or(0);
    bodies.drivelineInertia = setup.drivelineInertia.value_or(0);
}

constexpr double kPercent = 0.01;

void readTires(const Car& car, const EnteredTire& setup, InputReader& reader, LaunchTires& tires) {
    tires.friction = reader.need(car.launch.friction, "launch.friction", "the rear tires' friction");
    tires.peakSlip = setup.peakSlip.value_or(tires.peakSlip / kPercent) * kPercent;
    tires.sliding = setup.sliding.value_or(tires.sliding / kPercent) * kPercent;
    tires.relaxation = setup.relaxation.value_or(tires.relaxation);
    tires.lag = setup.lag.value_or(tires.lag);
    tires.damping = setup.damping.value_or(tires.damping);
    tires.rearRate =
        reader.need(tireRateNow(car.wheelRates.rear), "wheel_rates.rear.tire", "a rear tire's rate");
    tires.frontRate =
        reader.need(tireRateNow(car.wheelRates.front), "wheel_rates.front.tire", "a front tire's rate");
}

void readEngine(const EnteredEngine& setup, InputReader& reader, std::vector<MissingInput>& missing,
                LaunchEngine& engine) {
    engine.torque = setup.torque;
    if (setup.torque.empty()) {
        missing.push_back({"launch.engine.torque", "expected rows of rpm and torque"});
    }
    engine.inertia = reader.need(setup.inertia, "launch.engine.inertia", "the engine's moment of inertia");
    engine.launchSpeed =
        reader.need(setup.launchSpeed, "launch.engine.launch_rpm", "the engine's speed at the release");
    engine.revLimit = reader.need(setup.revLimit, "launch.engine.rev_limit", "the rev limit");
}

void readCoupling(const Car& car, const EnteredCoupling& setup, InputReader& reader,
                  std::vector<MissingInput>& missing, LaunchCoupling& coupling) {
    if (!setup.kind) {
        missing.push_back({"launch.coupling.kind", "expected converter or clutch"});
        return;
    }
    coupling.kind = *setup.kind;
    if (coupling.kind == CouplingKind::clutch) {
        coupling.capacity =
            reader.need(setup.capacity, "launch.coupling.capacity", "the most torque the clutch holds");
        return;
    }
    coupling.stallSpeed =
        reader.need(setup.stallSpeed, "launch.coupling.stall_rpm", "the converter's stall speed");
    coupling.couplingRatio = setup.ratio.value_or(coupling.couplingRatio);
    coupling.torqueRatio = car.launch.converter.value_or(1);
}

/// The table with the click it is set to; where that is missing, the table is of no use.
std::optional<Damping> readDamping(const std::optional<Damping>& damping, const std::string& path,
                                   InputReader& reader) {
    if (damping) {
        reader.need(damping->bump.at, path + ".bump.at", "the click the shock is set to");
        reader.need(damping->rebound.at, path + ".rebound.at", "the click the shock is set to");
    }
    return damping;
}

void readFront(const Car& car, const EnteredFront& setup, InputReader& reader, LaunchFront& front) {
    front.wheelRate =
        reader.need(car.wheelRates.front.wheel, "wheel_rates.front.wheel", "a front wheel's rate");
    front.droop = reader.need(setup.droop, "launch.front.droop", "the front's travel to topping out");
    front.bump = reader.need(setup.bump, "launch.front.bump", "the front's travel to bottoming");
    front.motionRatio = setup.motionRatio.value_or(1);
    front.damping = readDamping(setup.damping, "launch.front.damping", reader);
}

void readParts(const Car& car, InputReader& reader, LaunchInputs& inputs) {
    bool carried = false;
    const Eigen::Vector3d center(0, 0, car.rearTireRadius);
    for (std::size_t index = 0; index < car.springs.size(); ++index) {
        const SuspensionPart& part = car.springs[index];
        const std::string path = "springs[" + std::to_string(index) + "]";
        carried = carried || part.carries();
        if (part.carries()) {
            reader.need(part.rate, path + ".rate", "the spring's rate");
            reader.need(part.freeLength, path + ".free_length", "the spring's free length");
        }
        inputs.parts.push_back({.kind = part.kind,
                                .side = part.side,
                                .onChassis = part.chassis.inUse().at,
                                .onAxle = part.axle.inUse().at - center,
                                .rate = part.rate,
                                .freeLength = part.freeLength,
                                .closedLength = part.closedLength,
                                .openLength = part.openLength,
                                .push = part.push,
                                .damping = readDamping(part.damping, path + ".damping", reader)});
    }
    if (!carried) {
        inputs.rearWheelRate = reader.need(car.wheelRates.rear.wheel, "wheel_rates.rear.wheel",
                                           "a rear wheel's rate, or a spring");
    }
}

}  // namespace

LaunchInputsResult launchInputsOf(const Car& car) {
    const EnteredLaunch& setup = car.launch;
    LaunchInputsResult result;
    InputReader reader(result.missing);
    LaunchInputs inputs;
    readBodies(car, setup, reader, inputs.bodies);
    readTires(car, setup.tire, reader, inputs.tires);
    readEngine(setup.engine, reader, result.missing, inputs.engine);
    readCoupling(car, setup.coupling, reader, result.missing, inputs.coupling);
    readFront(car, setup.front, reader, inputs.front);
    readParts(car, reader, inputs);
    inputs.gear = reader.need(car.launch.gear, "launch.gear", "the gear's ratio");
    inputs.axleRatio = reader.need(car.launch.axleRatio, "launch.axle_ratio", "the axle's ratio");
    inputs.efficiency = car.launch.efficiency.value_or(1 / kPercent) * kPercent;
    inputs.release = setup.release.value_or(inputs.release);
    inputs.rollout = setup.rollout.value_or(inputs.rollout);
    inputs.travel = car.travel;
    if (!result.missing.empty()) {
        return result;
    }
    inputs.linkage = buildLinkage(car);
    if (std::string why = refusal(inputs); !why.empty()) {
        result.missing.push_back({"launch", why});
        return result;
    }
    result.inputs = std::move(inputs);
    return result;
}

}  // namespace bolthole
