#include "geometry/dynamics/launch_inputs.h"

#include <algorithm>
#include <cmath>

#include "geometry/car/tire_rate.h"
#include "geometry/dynamics/damping_line.h"
#include "geometry/statics/suspension_part.h"
#include "geometry/units/say.h"
#include "geometry/weights/entered_figures.h"

namespace bolthole {

namespace {

struct NamedNumber {
    double value;
    std::string_view name;
};

bool isAbove0(const NamedNumber& number) {
    return std::isfinite(number.value) && number.value > 0;
}
bool isAtLeast0(const NamedNumber& number) {
    return std::isfinite(number.value) && number.value >= 0;
}

std::string sprungRefusal(const LaunchBodies& bodies) {
    if (!(bodies.total > bodies.rearUnsprung + bodies.frontUnsprung)) {
        return say("expected less unsprung mass than the whole car's");
    }
    if (!(std::isfinite(bodies.frontLoad) && std::isfinite(bodies.cgAhead))) {
        return say("expected a load on the front tires and a center of gravity");
    }
    return {};
}

std::string engineRefusal(const LaunchEngine& engine) {
    if (engine.torque.empty()) {
        return say("expected a torque curve");
    }
    double last = -1;
    for (const TorquePoint& point : engine.torque) {
        if (!(std::isfinite(point.speed) && point.speed > last && std::isfinite(point.torque))) {
            return say("expected a torque curve whose speeds rise");
        }
        last = point.speed;
    }
    return {};
}

std::string couplingRefusal(const LaunchInputs& inputs) {
    const LaunchCoupling& coupling = inputs.coupling;
    if (coupling.kind == CouplingKind::clutch) {
        return isAbove0({coupling.capacity, ""}) ? std::string() : say("expected a clutch capacity above 0");
    }
    if (!isAbove0({coupling.stallSpeed, ""}) || !isAbove0({coupling.torqueRatio, ""})) {
        return say("expected a stall speed and a torque ratio above 0");
    }
    return coupling.couplingRatio > 0 && coupling.couplingRatio < 1
               ? std::string()
               : say("expected a coupling ratio between 0 and 1");
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
    for (const NamedNumber& number : {NamedNumber{bodies.total, phrase("mass")},
                                      {bodies.frontUnsprung, phrase("front unsprung mass")},
                                      {bodies.rearUnsprung, phrase("rear unsprung mass")},
                                      {bodies.pitchInertia, phrase("pitch inertia")},
                                      {bodies.wheelInertia, phrase("wheel inertia")},
                                      {bodies.wheelbase, phrase("wheelbase")},
                                      {bodies.rearRadius, phrase("rear tire radius")},
                                      {bodies.frontRadius, phrase("front tire radius")},
                                      {bodies.cgHeight, phrase("height of the center of gravity")},
                                      {tires.friction, phrase("tire friction")},
                                      {tires.peakSlip, phrase("slip of the peak")},
                                      {tires.relaxation, phrase("relaxation length")},
                                      {tires.rearRate, phrase("rear tire rate")},
                                      {tires.frontRate, phrase("front tire rate")},
                                      {inputs.engine.inertia, phrase("engine inertia")},
                                      {inputs.engine.launchSpeed, phrase("launch speed")},
                                      {inputs.engine.revLimit, phrase("rev limit")},
                                      {inputs.gear, phrase("gear")},
                                      {inputs.axleRatio, phrase("axle ratio")},
                                      {inputs.efficiency, phrase("efficiency")},
                                      {inputs.front.wheelRate, phrase("front wheel rate")},
                                      {inputs.front.motionRatio, phrase("front motion ratio")},
                                      {inputs.front.droop, phrase("front droop")},
                                      {inputs.front.bump, phrase("front bump travel")},
                                      {inputs.rearWheelRate.value_or(1), phrase("rear wheel rate")}}) {
        if (!isAbove0(number)) {
            return say("expected above 0: %1", say(number.name));
        }
    }
    for (const NamedNumber& number : {NamedNumber{bodies.housingInertia, phrase("housing inertia")},
                                      {bodies.frontWheelInertia, phrase("front wheel inertia")},
                                      {bodies.drivelineInertia, phrase("driveline inertia")},
                                      {bodies.gravity, phrase("gravity")},
                                      {tires.damping, phrase("tire damping")},
                                      {tires.lag, phrase("tire lag")},
                                      {inputs.release, phrase("release")},
                                      {inputs.rollout, phrase("rollout")}}) {
        if (!isAtLeast0(number)) {
            return say("expected 0 or more: %1", say(number.name));
        }
    }
    if (!(tires.sliding > 0 && tires.sliding < 1)) {
        return say("expected less friction sliding than at the peak, above 0");
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

MissingInput missingAt(const std::string& path, std::string_view text) {
    std::string what = say(text);
    return {path, say("expected %1", what), what};
}

/// Reads numbers and notes those that are not there.
class InputReader {
  public:
    explicit InputReader(std::vector<MissingInput>& missing) : missing_(missing) {}

    double need(const std::optional<double>& number, const std::string& path, std::string_view what) {
        if (!number) {
            missing_.push_back(missingAt(path, what));
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
    bodies.rearUnsprung = reader.need(car.launch.unsprungMass, "launch.unsprung_mass",
                                      phrase("the mass of axle, wheels and brakes"));
    bodies.frontUnsprung = reader.need(setup.frontUnsprungMass, "launch.front_unsprung_mass",
                                       phrase("the mass of the front wheels, hubs and brakes"));
    bodies.pitchInertia = reader.need(setup.pitchInertia, "launch.pitch_inertia",
                                      phrase("the sprung mass's moment of inertia in pitch"));
    bodies.housingInertia = setup.housingInertia.value_or(0);
    bodies.wheelInertia = reader.need(setup.wheelInertia, "launch.wheel_inertia",
                                      phrase("the moment of inertia of both rear wheels"));
    bodies.frontWheelInertia = setup.frontWheelInertia.value_or(0);
    bodies.drivelineInertia = setup.drivelineInertia.value_or(0);
}

constexpr double kPercent = 0.01;

void readTires(const Car& car, const EnteredTire& setup, InputReader& reader, LaunchTires& tires) {
    tires.friction = reader.need(car.launch.friction, "launch.friction", phrase("the rear tires' friction"));
    tires.peakSlip = setup.peakSlip.value_or(tires.peakSlip / kPercent) * kPercent;
    tires.sliding = setup.sliding.value_or(tires.sliding / kPercent) * kPercent;
    tires.relaxation = setup.relaxation.value_or(tires.relaxation);
    tires.lag = setup.lag.value_or(tires.lag);
    tires.damping = setup.damping.value_or(tires.damping);
    tires.rearRate =
        reader.need(tireRateNow(car.wheelRates.rear), "wheel_rates.rear.tire", phrase("a rear tire's rate"));
    tires.frontRate = reader.need(tireRateNow(car.wheelRates.front), "wheel_rates.front.tire",
                                  phrase("a front tire's rate"));
}

void readEngine(const EnteredEngine& setup, InputReader& reader, std::vector<MissingInput>& missing,
                LaunchEngine& engine) {
    engine.torque = setup.torque;
    if (setup.torque.empty()) {
        missing.push_back(missingAt("launch.engine.torque", phrase("rows of rpm and torque")));
    }
    engine.inertia =
        reader.need(setup.inertia, "launch.engine.inertia", phrase("the engine's moment of inertia"));
    engine.launchSpeed = reader.need(setup.launchSpeed, "launch.engine.launch_rpm",
                                     phrase("the engine's speed at the release"));
    engine.revLimit = reader.need(setup.revLimit, "launch.engine.rev_limit", phrase("the rev limit"));
}

void readCoupling(const Car& car, const EnteredCoupling& setup, InputReader& reader,
                  std::vector<MissingInput>& missing, LaunchCoupling& coupling) {
    if (!setup.kind) {
        missing.push_back(missingAt("launch.coupling.kind", phrase("converter or clutch")));
        return;
    }
    coupling.kind = *setup.kind;
    if (coupling.kind == CouplingKind::clutch) {
        coupling.capacity = reader.need(setup.capacity, "launch.coupling.capacity",
                                        phrase("the most torque the clutch holds"));
        return;
    }
    coupling.stallSpeed =
        reader.need(setup.stallSpeed, "launch.coupling.stall_rpm", phrase("the converter's stall speed"));
    coupling.couplingRatio = setup.ratio.value_or(coupling.couplingRatio);
    coupling.torqueRatio = car.launch.converter.value_or(1);
}

/// The table with the click it is set to; where that is missing, the table is of no use.
std::optional<Damping> readDamping(const std::optional<Damping>& damping, const std::string& path,
                                   InputReader& reader) {
    if (damping) {
        reader.need(damping->bump.at, path + ".bump.at", phrase("the click the shock is set to"));
        reader.need(damping->rebound.at, path + ".rebound.at", phrase("the click the shock is set to"));
    }
    return damping;
}

void readFront(const Car& car, const EnteredFront& setup, InputReader& reader, LaunchFront& front) {
    front.wheelRate =
        reader.need(car.wheelRates.front.wheel, "wheel_rates.front.wheel", phrase("a front wheel's rate"));
    front.droop = reader.need(setup.droop, "launch.front.droop", phrase("the front's travel to topping out"));
    front.bump = reader.need(setup.bump, "launch.front.bump", phrase("the front's travel to bottoming"));
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
            reader.need(part.rate, path + ".rate", phrase("the spring's rate"));
            reader.need(part.freeLength, path + ".free_length", phrase("the spring's free length"));
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
                                           phrase("a rear wheel's rate, or a spring"));
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
    inputs.gear = reader.need(car.launch.gear, "launch.gear", phrase("the gear's ratio"));
    inputs.axleRatio = reader.need(car.launch.axleRatio, "launch.axle_ratio", phrase("the axle's ratio"));
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
