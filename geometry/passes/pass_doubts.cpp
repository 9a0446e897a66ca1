#include "geometry/passes/pass_doubts.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/units/text.h"

namespace bolthole {

namespace {

constexpr double kLeastSixtyFoot = 0.8;  // s
constexpr double kMostSixtyFoot = 5;     // s
constexpr double kFarFromOther = 1.0 / 3;
constexpr double kLeastPressure = 40;  // kPa: under 6 psi
constexpr double kMostPressure = 500;  // kPa
constexpr double kLeastLaunchRpm = 500;

}  // namespace

std::string slipIn(const Pass& pass, const Pass* other) {
    if (pass.sixtyFoot && (*pass.sixtyFoot < kLeastSixtyFoot || *pass.sixtyFoot > kMostSixtyFoot)) {
        return "60 ft of " + plainDecimal(*pass.sixtyFoot) + " s: hardly a car takes that";
    }
    if (pass.sixtyFoot && other != nullptr && other->sixtyFoot &&
        std::abs(*pass.sixtyFoot / *other->sixtyFoot - 1) > kFarFromOther) {
        return "60 ft of " + plainDecimal(*pass.sixtyFoot) + " s, and " + plainDecimal(*other->sixtyFoot) +
               " s the pass before";
    }
    const std::array pressures{pass.pressures.leftFront, pass.pressures.rightFront, pass.pressures.leftRear,
                               pass.pressures.rightRear};
    if (std::ranges::any_of(pressures, [](const OptionalNumber& pressure) {
            return pressure && (*pressure < kLeastPressure || *pressure > kMostPressure);
        })) {
        return "a tire pressure no tire is driven at";
    }
    if (pass.launchRpm && *pass.launchRpm < kLeastLaunchRpm) {
        return "launched at " + plainDecimal(*pass.launchRpm) + " rpm: no engine idles there";
    }
    return {};
}

}  // namespace bolthole
