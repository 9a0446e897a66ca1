#include "geometry/statics/entered_setup.h"

#include <algorithm>

#include "geometry/car/tire_rate.h"
#include "geometry/statics/springs.h"

namespace bolthole {

std::vector<SuspensionPart> usableSprings(const Car& car) {
    std::vector<SuspensionPart> usable;
    std::ranges::copy_if(car.springs, std::back_inserter(usable),
                         [](const SuspensionPart& part) { return refusal(part).empty(); });
    return usable;
}

FullStance fullStanceOf(const Car& car) {
    FullStance full{stanceOf(car), RearRateSource::entered};
    if (full.stance.rear) {
        return full;
    }
    full.rear = RearRateSource::none;
    std::optional<WheelRates> rates = springRates(car, usableSprings(car), 0);
    if (rates && rates->wheel > 0) {
        rates->tire = tireRateNow(car.wheelRates.rear);
        if (car.wheelRates.rear.roll) {
            rates->roll = car.wheelRates.rear.roll;
        }
        if (rates->roll && !(*rates->roll > 0)) {
            rates->roll.reset();
        }
        full.stance.rear = rates;
        full.rear = RearRateSource::springs;
    }
    return full;
}

ShaftSetup shaftSetupOf(const Driveline& driveline) {
    const EnteredShaft& entered = driveline.shaft;
    ShaftSetup setup;
    setup.carrierJoint = entered.carrierJoint.whole();
    setup.yokeOffset = {entered.frontYokeOffset.value_or(0), entered.rearYokeOffset.value_or(0)};
    const EnteredSlip& slip = entered.slip;
    if (slip.engagement && slip.leastEngagement && slip.inward) {
        setup.slip = SlipYoke{*slip.engagement, *slip.leastEngagement, *slip.inward};
    }
    setup.windUp = entered.windUp.value_or(0);
    setup.engineSpeed = entered.engineSpeed;
    setup.gear = entered.gear;
    return setup;
}

}  // namespace bolthole
