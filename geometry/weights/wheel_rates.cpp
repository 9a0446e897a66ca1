#include "geometry/weights/wheel_rates.h"

namespace bolthole {

double suspensionRoll(const WheelRates& rates, double track) {
    return rates.roll.value_or(rates.wheel * track * track / 2);
}

double tireRollGive(const WheelRates& rates, double track) {
    return rates.tire ? 2 / (*rates.tire * track * track) : 0.0;
}

double rollStiffness(const WheelRates& rates, double track) {
    return 1 / (1 / suspensionRoll(rates, track) + tireRollGive(rates, track));
}

double rideGive(const WheelRates& rates) {
    return 1 / rates.wheel + (rates.tire ? 1 / *rates.tire : 0.0);
}

std::optional<RollStiffness> rollStiffness(const Stance& stance) {
    if (!stance.hasTracks() || !stance.front || !stance.rear) {
        return std::nullopt;
    }
    return RollStiffness{rollStiffness(*stance.front, *stance.frontTrack),
                         rollStiffness(*stance.rear, *stance.rearTrack)};
}

}  // namespace bolthole
