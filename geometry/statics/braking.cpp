#include "geometry/statics/braking.h"

#include <algorithm>

#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole {

double rearAntiLift(double swingArmSlope, double cgHeight, double wheelbase, double rearShare) {
    return 100 * rearShare * swingArmSlope * wheelbase / cgHeight;
}

BrakeLoads brakeLoads(const StandingCar& car, double deceleration, double rearShare, double swingArmSlope) {
    const double force = std::max(0.0, car.mass * deceleration - car.pulling());
    BrakeLoads loads;
    // Whatever slows the car acts at the patches; the climb acts at the CG and moves no load by itself.
    loads.transfer = std::min(car.transfer(force), car.rear());
    loads.rearUp = car.transfer(force) > car.rear();
    loads.front = car.front() + loads.transfer;
    loads.rear = car.rear() - loads.transfer;
    loads.rearBrake = rearShare * force;
    loads.antiLift = rearAntiLift(swingArmSlope, car.cgHeight, car.wheelbase, rearShare);
    loads.rearLocksFirst = loads.rearBrake * loads.front > (force - loads.rearBrake) * loads.rear;
    return loads;
}

std::optional<double> brakeTravel(const BrakeLoads& loads, const WheelRates& rear) {
    if (loads.rearUp) {
        return std::nullopt;
    }
    return -loads.transfer * (1 - loads.antiLift / 100) / (2 * rear.wheel);
}

std::optional<Finding> antiLiftWarning(double antiLift) {
    const std::string percent =
        withUnit(figureText(antiLift, Quantity::percent, Units::inch), Quantity::percent, Units::inch);
    if (antiLift > 100) {
        return Finding{Severity::danger,
                       say("rear anti-lift %1 pulls the rear down while braking unloads its tires", percent),
                       say("the axle can hop on the brakes")};
    }
    if (antiLift < 0) {
        return Finding{Severity::check,
                       say("rear anti-lift %1 lifts the rear on the brakes beyond what weight does", percent),
                       say("check the links' slopes")};
    }
    return std::nullopt;
}

}  // namespace bolthole
