#include "geometry/statics/launch_case.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/car/fields.h"
#include "geometry/statics/launch_attitude.h"
#include "geometry/statics/rollout.h"
#include "geometry/units/say.h"

namespace bolthole {

namespace {

constexpr double kPercent = 0.01;

/// A number that a figure needs, and whether it is there.
struct Need {
    Field field;
    bool isThere;
};

/// "enter the rear track and the axle ratio"; empty where nothing is missing.
std::string wordsOf(const std::vector<FieldId>& missing) {
    if (missing.empty()) {
        return {};
    }
    const auto nameAt = [&missing](std::size_t index) { return say(ruleOf(missing[index].field).words); };
    std::string words = say("enter the %1", nameAt(0));
    for (std::size_t index = 1; index < missing.size(); ++index) {
        const bool isLast = index + 1 == missing.size();
        words = isLast ? say("%1 and the %2", words, nameAt(index)) : say("%1, the %2", words, nameAt(index));
    }
    return words;
}

/// None, for want of the numbers that are not there.
template <class T>
Known<T> missing(std::initializer_list<Need> needs, std::vector<FieldId> fields = {}) {
    for (const Need& need : needs) {
        const FieldId id{.field = need.field};
        if (!need.isThere && std::ranges::find(fields, id) == fields.end()) {
            fields.push_back(id);
        }
    }
    return Known<T>::none(wordsOf(fields), fields);
}

/// None, for want of what `base` lacks and of the numbers that are not there; or for its other reason.
template <class T, class Base>
Known<T> missing(const Known<Base>& base, std::initializer_list<Need> needs) {
    Known<T> none = missing<T>(needs, base.missing);
    return none.missing.empty() ? Known<T>::because(base) : none;
}

/// Whether the figure has to stay unknown.
template <class T>
bool isMissing(const Known<T>& known) {
    return !known.refusal.empty();
}

/// By how much the left rear tire is heavier than half its axle, N, and how that is known.
struct LeftShift {
    double force = 0;
    ShiftSource source = ShiftSource::even;
};

LeftShift shiftOf(const Car& car, const std::optional<LaunchSides>& sides) {
    if (car.launch.leftShift) {
        return {*car.launch.leftShift, ShiftSource::entered};
    }
    return sides ? LeftShift{(sides->leftRear - sides->rightRear) / 2, ShiftSource::computed} : LeftShift{};
}

/// That shift at a thrust, N, before the launch's own is known.
LeftShift shiftAt(const Car& car, const LaunchCase& launch, const LaunchLoads& loads) {
    if (!car.launch.axleRatio) {
        return shiftOf(car, std::nullopt);
    }
    const double torque = driveshaftTorque(loads.thrust, car.rearTireRadius, *car.launch.axleRatio);
    return shiftOf(car, launchSides(launch.standing, loads, launch.corners, torque, launch.stance.stance));
}

/// The most the tires hold, N, and what an open differential's lighter tire was computed with.
struct Grip {
    double force = 0;
    std::optional<ShiftSource> lighterFrom = std::nullopt;
};

/// Nothing without an entered friction. A limited slip is taken to bring both tires to their limit.
std::optional<Grip> gripOf(const Car& car, const LaunchCase& launch) {
    if (!car.launch.friction) {
        return std::nullopt;
    }
    const StandingCar& standing = launch.standing;
    const double friction = *car.launch.friction;
    const double locked = launchLoads(standing, gripAcceleration(standing, friction)).thrust;
    if (car.launch.differential != Differential::open) {
        return Grip{locked};
    }
    const auto loadsAt = [&](double thrust) {
        return launchLoads(standing, (thrust - standing.pulling()) / standing.mass);
    };
    const auto lighterTire = [&](double thrust) {
        const LaunchLoads loads = loadsAt(thrust);
        return std::max(0.0, loads.rear / 2 - std::abs(shiftAt(car, launch, loads).force));
    };
    return Grip{openGripThrust(friction, locked, lighterTire), shiftAt(car, launch, loadsAt(locked)).source};
}

LaunchThrust thrustAt(const Car& car, const LaunchCase& launch, double acceleration) {
    LaunchThrust thrust;
    thrust.from = car.launch.from;
    thrust.acceleration = acceleration;
    thrust.force = launchLoads(launch.standing, acceleration).thrust;
    if (const std::optional<Grip> grip = gripOf(car, launch)) {
        thrust.byGrip = grip->force;
        thrust.lighterFrom = grip->lighterFrom;
    }
    return thrust;
}

Rollout rolloutOf(const Car& car) {
    if (car.launch.rollout) {
        return {*car.launch.rollout, true};
    }
    return {rolloutPastBeam(car.frontTireRadius, std::min(kUsualBeamHeight, car.frontTireRadius)), false};
}

LaunchThrust thrustBySixtyFoot(const Car& car, const LaunchCase& launch) {
    const Rollout rollout = rolloutOf(car);
    LaunchThrust thrust =
        thrustAt(car, launch, accelerationFromSixtyFoot(*car.launch.sixtyFoot, rollout.distance));
    thrust.rollout = rollout;
    return thrust;
}

LaunchThrust thrustByTorque(const Car& car, const LaunchCase& launch) {
    const EnteredLaunch& entered = car.launch;
    const StandingCar& standing = launch.standing;
    const DriveTorque drive{.engine = *entered.engineTorque,
                            .converter = entered.converter.value_or(1),
                            .gear = *entered.gear,
                            .axle = *entered.axleRatio,
                            .efficiency = entered.efficiency.value_or(100) * kPercent};
    const double mostGrip = gripOf(car, launch)->force;
    const Thrust capped = thrustOf(drive, car.rearTireRadius, mostGrip);
    LaunchThrust thrust = thrustAt(car, launch, (capped.force - standing.pulling()) / standing.mass);
    thrust.force = capped.force;
    thrust.byEngine =
        drive.engine * drive.converter * drive.gear * drive.axle * drive.efficiency / car.rearTireRadius;
    if (capped.byGrip) {
        const double lift = launchLoads(standing, 0).liftAcceleration;
        thrust.cap = mostGrip < launchLoads(standing, lift).thrust ? ThrustCap::grip : ThrustCap::lift;
    }
    return thrust;
}

Known<LaunchThrust> findThrust(const Car& car, const LaunchCase& launch) {
    const EnteredLaunch& entered = car.launch;
    switch (entered.from) {
        case LaunchFrom::acceleration:
            if (!entered.acceleration) {
                return missing<LaunchThrust>({{Field::launchAcceleration, false}});
            }
            return thrustAt(car, launch, *entered.acceleration * kStandardGravity);
        case LaunchFrom::sixtyFoot:
            if (!entered.sixtyFoot) {
                return missing<LaunchThrust>({{Field::sixtyFoot, false}});
            }
            return thrustBySixtyFoot(car, launch);
        case LaunchFrom::torque:
            break;
    }
    auto none = missing<LaunchThrust>({{Field::engineTorque, entered.engineTorque.has_value()},
                                       {Field::launchGear, entered.gear.has_value()},
                                       {Field::axleRatio, entered.axleRatio.has_value()},
                                       {Field::friction, entered.friction.has_value()}});
    return isMissing(none) ? none : Known<LaunchThrust>(thrustByTorque(car, launch));
}

constexpr std::string_view kNoSlope = phrase("the side-view swing arm has no slope at ride");

Known<LaunchAttitude> findAttitude(const Car& car, const Trace& trace, const LaunchCase& launch) {
    if (launch.loads && launch.loads->wheelsUp) {
        return Known<LaunchAttitude>::none(say("the front wheels are off the ground: no rest to compute"));
    }
    const Stance& stance = launch.stance.stance;
    auto none = missing<LaunchAttitude>(launch.loads, {{Field::frontWheelRate, stance.front.has_value()},
                                                       {Field::rearWheelRate, stance.rear.has_value()}});
    if (isMissing(none)) {
        return none;
    }
    if (std::isnan(launch.swingArmSlope)) {
        return Known<LaunchAttitude>::none(say(kNoSlope));
    }
    const AttitudeCase with{.standing = launch.standing,
                            .loads = *launch.loads,
                            .acceleration = launch.thrust->acceleration,
                            .rideGround = trace.ride[Figure::ground],
                            .front = *stance.front,
                            .rear = *stance.rear,
                            .unsprungMass = car.launch.unsprungMass.value_or(0),
                            .frontDroop = car.launch.front.droop};
    SwingArm arm(car);
    const auto rest = attitudeOnPath(with, arm);
    return rest ? Known<LaunchAttitude>(*rest)
                : Known<LaunchAttitude>::none(
                      say("no rest with all tires on the ground within the travel entered"));
}

Known<double> findShaftTorque(const Car& car, const LaunchCase& launch) {
    auto none = missing<double>(launch.thrust, {{Field::axleRatio, car.launch.axleRatio.has_value()}});
    return isMissing(none)
               ? none
               : driveshaftTorque(launch.thrust->force, car.rearTireRadius, *car.launch.axleRatio);
}

/// None, if the torque, tracks or rates that roll is computed with are not all there.
template <class T>
Known<T> missingForRoll(const LaunchCase& launch) {
    const Stance& stance = launch.stance.stance;
    return missing<T>(launch.shaftTorque, {{Field::frontTrack, stance.frontTrack.has_value()},
                                           {Field::rearTrack, stance.rearTrack.has_value()},
                                           {Field::frontWheelRate, stance.front.has_value()},
                                           {Field::rearWheelRate, stance.rear.has_value()}});
}

/// Corner weights with what came and went since the scales were read.
CornerWeights cornersNow(const Car& car, const Stance& stance) {
    const BallastResult loaded = withBallast(car.cornerWeights, stance, changesSinceWeighed(ballastOf(car)));
    return loaded.car && loaded.car->corners ? *loaded.car->corners : car.cornerWeights;
}

void findRoll(const Car& car, LaunchCase& launch) {
    const Stance& stance = launch.stance.stance;
    launch.sides = missingForRoll<LaunchSides>(launch);
    launch.preload = missingForRoll<Preload>(launch);
    if (!isMissing(launch.sides)) {
        launch.sides =
            *launchSides(launch.standing, *launch.loads, launch.corners, *launch.shaftTorque, stance);
        launch.preload = *cancelingPreload(*launch.shaftTorque, stance);
    }
    const std::optional<double>& base = car.launch.springBase;
    launch.springDifference = missing<double>(launch.shaftTorque, {{Field::springBase, base.has_value()}});
    if (!isMissing(launch.springDifference)) {
        launch.springDifference = springDifference(*launch.shaftTorque, *base);
    }
}

Known<double> findBrakeTravel(const LaunchCase& launch, const BrakeLoads& loads) {
    if (!launch.stance.stance.rear) {
        return missing<double>({{Field::rearWheelRate, false}});
    }
    const std::optional<double> travel = brakeTravel(loads, *launch.stance.stance.rear);
    return travel ? Known<double>(*travel)
                  : Known<double>::none(say("the rear wheels are off the ground: no rest to compute"));
}

void findBraking(const Car& car, LaunchCase& launch) {
    const EnteredBrakes& entered = car.brakes;
    launch.antiLift = missing<double>({{Field::brakeRearShare, entered.rearShare.has_value()}});
    launch.braking = missing<BrakeFigures>({{Field::brakeRearShare, entered.rearShare.has_value()},
                                            {Field::brakeDeceleration, entered.deceleration.has_value()}});
    if (std::isnan(launch.swingArmSlope)) {
        launch.antiLift = Known<double>::none(say(kNoSlope));
        launch.braking = Known<BrakeFigures>::none(say(kNoSlope));
        return;
    }
    if (!isMissing(launch.antiLift)) {
        launch.antiLift = rearAntiLift(launch.swingArmSlope, launch.standing.cgHeight,
                                       launch.standing.wheelbase, *entered.rearShare * kPercent);
    }
    if (!isMissing(launch.braking)) {
        BrakeFigures figures;
        figures.deceleration = *entered.deceleration * kStandardGravity;
        figures.loads = brakeLoads(launch.standing, figures.deceleration, *entered.rearShare * kPercent,
                                   launch.swingArmSlope);
        figures.travel = findBrakeTravel(launch, figures.loads);
        launch.braking = figures;
    }
}

void chooseSprings(const Car& car, LinkCase& with) {
    with.parts = usableSprings(car);
    if (std::ranges::any_of(with.parts, &SuspensionPart::carries)) {
        return;
    }
    with.baseIsEntered = car.launch.springBase.has_value();
    with.standIn = car.launch.springBase.value_or(kStandInShare * *car.rearTrack);
    with.parts.push_back(uprightSprings(*with.standIn, car.rearTireRadius));
}

Known<LinkCase> findLinkCase(const Car& car, const LaunchCase& launch) {
    const EnteredLaunch& entered = car.launch;
    Known<LinkCase> none =
        missing<LinkCase>(launch.thrust, {{Field::axleRatio, entered.axleRatio.has_value()},
                                          {Field::rearTrack, car.rearTrack.has_value()},
                                          {Field::unsprungMass, entered.unsprungMass.has_value()}});
    if (isMissing(none)) {
        return none;
    }
    LinkCase with;
    with.load = {.thrust = launch.thrust->force,
                 .axleRatio = *entered.axleRatio,
                 .leftShift = 0,
                 .track = *car.rearTrack,
                 .unsprungMass = *entered.unsprungMass,
                 .acceleration = launch.thrust->acceleration};
    const LeftShift shift = shiftOf(car, launch.sides.value);
    with.shift = shift.source;
    with.load.leftShift = shift.force;
    chooseSprings(car, with);
    with.pinionIsKnown = car.driveline.has_value();
    with.factor = entered.loadFactor.value_or(1);
    with.factorIsEntered = entered.loadFactor.has_value();
    const std::string refused = refusal(with.load, car);
    return refused.empty() ? Known<LinkCase>(std::move(with)) : Known<LinkCase>::none(refused);
}

/// A trace of the ride pose alone.
Trace rideOnly(const Trace& trace) {
    Trace ride;
    ride.ride = trace.ride;
    ride.stations = {trace.ride};
    return ride;
}

void compute(const Car& car, const Trace& trace, LaunchCase& launch) {
    launch.balance = balanceOf(car);
    launch.standing = standingCar(car, trace.ride.ground);
    launch.swingArmSlope = std::tan(trace.ride[Figure::swingArmAngle]);
    launch.corners = cornersNow(car, launch.stance.stance);
    launch.thrust = findThrust(car, launch);
    launch.loads = launch.thrust
                       ? Known<LaunchLoads>(launchLoads(launch.standing, launch.thrust->acceleration))
                       : Known<LaunchLoads>::because(launch.thrust);
    launch.attitude = findAttitude(car, trace, launch);
    launch.shaftTorque = findShaftTorque(car, launch);
    findRoll(car, launch);
    findBraking(car, launch);
    launch.linkCase = findLinkCase(car, launch);
    launch.links = launch.linkCase ? Known<LinkFigures>(linkFigures(car, trace, *launch.linkCase))
                                   : Known<LinkFigures>::because(launch.linkCase);
}

}  // namespace

bool LinkFigures::hasShared() const {
    return std::ranges::any_of(joints, [](const JointLoads& joint) { return !joint.worst.determinate; });
}

LaunchCase launchCaseOf(const Car& car, const Trace& trace, const FullStance& stance) {
    LaunchCase launch;
    launch.stance = stance;
    if (trace.ride.usable) {
        compute(car, trace, launch);
    } else {
        launch.problem = say("the links can't be assembled at ride");
    }
    return launch;
}

LinkFigures linkFigures(const Car& car, const Trace& trace, const LinkCase& with) {
    const Linkage linkage = buildLinkage(car);
    LinkFigures figures;
    LinkLoadSweep ride;
    sweepLinkLoads(car, linkage, rideOnly(trace), with.parts, with.load, ride);
    sweepLinkLoads(car, linkage, trace, with.parts, with.load, figures.sweep);
    for (std::size_t index = 0; index < linkage.constraints.size(); ++index) {
        const Constraint& constraint = linkage.constraints[index];
        JointLoads joint;
        joint.link = constraint.link;
        joint.side = constraint.side;
        joint.isRod = constraint.kind == LinkKind::rod;
        joint.worst = figures.sweep.worst[index];
        joint.atRide = ride.values.empty() ? std::numeric_limits<double>::quiet_NaN() : ride.value(0, index);
        if (const auto& rating = car.links[static_cast<std::size_t>(joint.link)].rating) {
            joint.use = ratingUse(joint.worst.largest(), *rating, with.factor);
        }
        figures.joints.push_back(joint);
    }
    return figures;
}

const JointLoads* largestOf(const std::vector<JointLoads>& joints) {
    const auto found =
        std::ranges::max_element(joints, {}, [](const JointLoads& joint) { return joint.worst.largest(); });
    return found == joints.end() ? nullptr : &*found;
}

const JointLoads* mostUsedOf(const std::vector<JointLoads>& joints) {
    const auto found =
        std::ranges::max_element(joints, {}, [](const JointLoads& joint) { return joint.use.value_or(-1); });
    return found == joints.end() || !found->use ? nullptr : &*found;
}

std::vector<FieldId> missingOf(const LaunchCase& launch) {
    std::vector<FieldId> all;
    const auto add = [&all](const std::vector<FieldId>& fields) {
        std::ranges::copy_if(fields, std::back_inserter(all),
                             [&all](const FieldId& id) { return std::ranges::find(all, id) == all.end(); });
    };
    add(launch.thrust.missing);
    add(launch.attitude.missing);
    add(launch.shaftTorque.missing);
    add(launch.sides.missing);
    add(launch.springDifference.missing);
    add(launch.linkCase.missing);
    add(launch.braking.missing);
    if (launch.braking) {
        add(launch.braking->travel.missing);
    }
    return all;
}

std::string jointWords(const Car& car, int link, Side side) {
    std::string words = linkWords(car, link);
    if (sidesOf(car.links[static_cast<std::size_t>(link)]) == 2) {
        words = side == Side::left ? say("%1 (left)", words) : say("%1 (right)", words);
    }
    return words;
}

}  // namespace bolthole
