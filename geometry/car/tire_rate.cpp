#include "geometry/car/tire_rate.h"

#include <algorithm>

namespace bolthole {

namespace {

constexpr double kSoftest = 0.1;  // of the softer reading

}  // namespace

bool isReadAtTwoPressures(const EnteredRates& rates) {
    return rates.tire && rates.tirePressure && rates.otherTire && rates.otherPressure &&
           *rates.tirePressure != *rates.otherPressure;
}

std::optional<double> tireRateNow(const EnteredRates& rates) {
    if (!isReadAtTwoPressures(rates) || !rates.pressure) {
        return rates.tire;
    }
    const double slope = (*rates.otherTire - *rates.tire) / (*rates.otherPressure - *rates.tirePressure);
    const double now = *rates.tire + slope * (*rates.pressure - *rates.tirePressure);
    return std::max(now, kSoftest * std::min(*rates.tire, *rates.otherTire));
}

}  // namespace bolthole
