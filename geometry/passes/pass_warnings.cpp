#include "geometry/passes/pass_warnings.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "geometry/passes/pass_runs.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

constexpr double kLeastSixtyFoot = 0.8;  // s
constexpr double kMostSixtyFoot = 5;     // s
constexpr double kFarFromOther = 1.0 / 3;
constexpr double kLeastPressure = 40;  // kPa: under 6 psi
constexpr double kMostPressure = 500;  // kPa
constexpr double kLeastLaunchRpm = 500;

std::optional<double> lastTimeOnGroundOf(const Pass& pass, const std::vector<Pass>& log) {
    const Ground ground{pass.surface.kind, pass.surface.name};
    std::optional<double> last;
    for (const Pass& each : log) {
        const bool isItself = each.number == pass.number && each.date == pass.date;
        if (isCounted(each) && ground.holds(each) && !isItself) {
            last = each.sixtyFoot;
        }
    }
    return last;
}

}  // namespace

std::string slipIn(const Pass& pass, const std::vector<Pass>& log) {
    if (pass.sixtyFoot && (*pass.sixtyFoot < kLeastSixtyFoot || *pass.sixtyFoot > kMostSixtyFoot)) {
        return "60 ft of " + plainDecimal(*pass.sixtyFoot) + " s: hardly a car takes that";
    }
    const std::optional<double> last = lastTimeOnGroundOf(pass, log);
    if (pass.sixtyFoot && last && std::abs(*pass.sixtyFoot / *last - 1) > kFarFromOther) {
        return "60 ft of " + plainDecimal(*pass.sixtyFoot) + " s, and " + plainDecimal(*last) +
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
