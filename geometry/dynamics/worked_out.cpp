#include "geometry/dynamics/worked_out.h"

#include <cmath>
#include <numbers>

#include "geometry/units/units.h"

namespace bolthole {

std::optional<WorkedOut> tireRateOf(double light, double heavy, double lightHeight, double heavyHeight,
                                    const ReadWith& with) {
    const double load = (heavy - light) * kStandardGravity;
    const double flat = lightHeight - heavyHeight;
    if (!(light > 0 && load > 0 && flat > 0)) {
        return std::nullopt;
    }
    const double rate = load / flat;
    const double ofLoad = std::numbers::sqrt2 * with.mass * kStandardGravity / load;
    const double ofFlat = std::numbers::sqrt2 * with.length / flat;
    return WorkedOut{rate, rate * std::hypot(ofLoad, ofFlat)};
}

std::optional<WorkedOut> wheelInertiaOf(double mass, double arm, double tenSwings, const ReadWith& with) {
    const double period = tenSwings / 10;
    const double square = kStandardGravity * period * period / (4 * std::numbers::pi * std::numbers::pi);
    const double inertia = mass * arm * (square - arm);  // about the wheel's own center
    if (!(mass > 0 && arm > 0 && inertia > 0)) {
        return std::nullopt;
    }
    const double byMass = inertia / mass * with.mass;
    const double byArm = mass * (square - 2 * arm) * with.length;
    const double byTime = mass * arm * 2 * square / period * with.time / 10;
    return WorkedOut{2 * inertia, 2 * std::sqrt(byMass * byMass + byArm * byArm + byTime * byTime)};
}

}  // namespace bolthole
