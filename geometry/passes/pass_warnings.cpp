#include "geometry/passes/pass_warnings.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "geometry/passes/pass_runs.h"
#include "geometry/units/say.h"
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
        return say("60 ft of %1 s: hardly a car takes that", plainDecimal(*pass.sixtyFoot));
    }
    const std::optional<double> last = lastTimeOnGroundOf(pass, log);
    if (pass.sixtyFoot && last && std::abs(*pass.sixtyFoot / *last - 1) > kFarFromOther) {
        return say("60 ft of %1 s, and %2 s the pass before", plainDecimal(*pass.sixtyFoot),
                   plainDecimal(*last));
    }
    const std::array pressures{pass.pressures.leftFront, pass.pressures.rightFront, pass.pressures.leftRear,
                               pass.pressures.rightRear};
    if (std::ranges::any_of(pressures, [](const OptionalNumber& pressure) {
            return pressure && (*pressure < kLeastPressure || *pressure > kMostPressure);
        })) {
        return say("a tire pressure no tire is driven at");
    }
    if (pass.launchRpm && *pass.launchRpm < kLeastLaunchRpm) {
        return say("launched at %1 rpm: no engine idles there", plainDecimal(*pass.launchRpm));
    }
    return {};
}

}  // namespace bolthole
