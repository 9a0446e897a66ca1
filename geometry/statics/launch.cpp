#include "geometry/statics/launch.h"

#include <algorithm>
#include <cmath>

namespace bolthole {

double accelerationFromSixtyFoot(double seconds, double rollout) {
    const double roots = std::sqrt(kSixtyFeet + rollout) - std::sqrt(rollout);
    return 2 * roots * roots / (seconds * seconds);
}

LaunchLoads launchLoads(const StandingCar& car, double acceleration) {
    LaunchLoads loads;
    loads.thrust = car.mass * acceleration + car.pulling();
    loads.liftAcceleration = (car.pressing() * car.cgAhead / car.cgHeight - car.pulling()) / car.mass;
    loads.wheelsUp = acceleration > loads.liftAcceleration;
    loads.transfer = std::min(car.transfer(loads.thrust), car.front());
    loads.front = car.front() - loads.transfer;
    loads.rear = car.rear() + loads.transfer;
    return loads;
}

double gripAcceleration(const StandingCar& car, double friction) {
    const double lift = launchLoads(car, 0.0).liftAcceleration;
    const double gain = car.transfer(friction);  // of load on the rear tires for each newton they carry
    if (gain >= 1) {
        return lift;
    }
    const double thrust = friction * car.rear() / (1 - gain);
    return std::min((thrust - car.pulling()) / car.mass, lift);
}

double openGripThrust(double friction, double locked, const std::function<double(double)>& lighterTire) {
    const auto isHeld = [&](double thrust) { return 2 * friction * lighterTire(thrust) >= thrust; };
    if (isHeld(locked)) {
        return locked;
    }
    double held = 0;
    double slips = locked;
    constexpr int kHalvings = 60;  // to the last bit of any thrust
    for (int halving = 0; halving < kHalvings; ++halving) {
        const double middle = (held + slips) / 2;
        (isHeld(middle) ? held : slips) = middle;
    }
    return held;
}

LaunchAttitude attitudeAt(const StandingCar& car, double rearTravel, double moved, const WheelRates& front,
                          const WheelRates& rear, std::optional<double> frontDroop) {
    const double onTire = moved / 2;
    const auto give = [onTire](const WheelRates& rates) { return rates.tire ? onTire / *rates.tire : 0; };
    LaunchAttitude attitude;
    attitude.rearTravel = rearTravel;
    attitude.frontTravel = -onTire / front.wheel;
    if (frontDroop && attitude.frontTravel < -*frontDroop) {
        attitude.frontTravel = -*frontDroop;
        attitude.frontToppedOut = true;
    }
    attitude.rearRise = -rearTravel - give(rear);
    attitude.frontRise = -attitude.frontTravel + give(front);
    attitude.pitch = std::atan2(attitude.rearRise - attitude.frontRise, car.wheelbase);
    return attitude;
}

std::optional<LaunchAttitude> launchAttitude(const StandingCar& car, const LaunchLoads& loads,
                                             double swingArmSlope, const WheelRates& front,
                                             const WheelRates& rear) {
    if (loads.wheelsUp) {
        return std::nullopt;
    }
    const double byLinks = loads.thrust * swingArmSlope;  // what of the load the springs do not see
    return attitudeAt(car, (loads.transfer - byLinks) / 2 / rear.wheel, loads.transfer, front, rear);
}

double risingAntiSquat(const WheelRates& rear) {
    constexpr double kPercent = 100;
    return kPercent * (1 + (rear.tire ? rear.wheel / *rear.tire : 0));
}

double driveshaftTorque(double thrust, double tireRadius, double axleRatio) {
    return thrust * tireRadius / axleRatio;
}

namespace {

// What the front springs take of the driveshaft's torque while all four tires stand, N m.
double frontMoment(double torque, const Stance& stance, const RollStiffness& stiffness) {
    const double rearSprings = suspensionRoll(*stance.rear, *stance.rearTrack);
    const double rearTires = tireRollGive(*stance.rear, *stance.rearTrack);
    return torque / (1 + rearSprings * (1 / stiffness.front + rearTires));
}

// Roll of the body when the front takes `moment` of `torque`, rad.
double bodyRoll(double torque, double moment, const Stance& stance) {
    return (torque - moment) / suspensionRoll(*stance.rear, *stance.rearTrack) -
           moment * tireRollGive(*stance.rear, *stance.rearTrack);
}

}  // namespace

std::optional<LaunchSides> launchSides(const StandingCar& car, const LaunchLoads& loads,
                                       const CornerWeights& standing, double torque, const Stance& stance) {
    const std::optional<RollStiffness> stiffness = rollStiffness(stance);
    if (!stiffness) {
        return std::nullopt;
    }
    const double halfFront = *stance.frontTrack / 2;
    const double halfRear = *stance.rearTrack / 2;
    // Moment of each axle's tires about x, left heavier +, N m: standing, then launching. Their sum stays.
    const double frontStanding = (standing.leftFront - standing.rightFront) * car.gravity * halfFront;
    const double rearStanding = (standing.leftRear - standing.rightRear) * car.gravity * halfRear;
    const double wanted = frontStanding - frontMoment(torque, stance, *stiffness);
    const double most = loads.front * halfFront;
    const double front = std::clamp(wanted, -most, most);
    const double rear = frontStanding + rearStanding - front;
    LaunchSides sides;
    sides.leftFront = loads.front / 2 + front / (2 * halfFront);
    sides.rightFront = loads.front - sides.leftFront;
    sides.leftRear = loads.rear / 2 + rear / (2 * halfRear);
    sides.rightRear = loads.rear - sides.leftRear;
    sides.bodyRoll = bodyRoll(torque, frontStanding - front, stance);
    sides.frontTireUp = loads.wheelsUp || front != wanted;
    return sides;
}

std::optional<Preload> cancelingPreload(double torque, const Stance& stance) {
    const std::optional<RollStiffness> stiffness = rollStiffness(stance);
    if (!stiffness) {
        return std::nullopt;
    }
    const double moment = frontMoment(torque, stance, *stiffness);
    return Preload{.moment = torque,
                   .rearShift = moment / *stance.rearTrack,
                   .frontShift = moment / *stance.frontTrack,
                   .lean = -bodyRoll(torque, moment, stance)};
}

double springDifference(double moment, double base) {
    return 2 * moment / base;
}

}  // namespace bolthole
