// Springs and driveshaft as they were entered, made ready for the calculations: whole groups only, as in
// geometry/weights/entered_figures.h.
#pragma once

#include <vector>

#include "geometry/car/car.h"
#include "geometry/statics/driveline_figures.h"
#include "geometry/statics/suspension_part.h"
#include "geometry/weights/entered_figures.h"

namespace bolthole {

/// The springs, shocks and stops that can be computed, in the order of Car::springs.
[[nodiscard]] std::vector<SuspensionPart> usableSprings(const Car& car);

/// Where the rear wheel rate comes from.
enum class RearRateSource {
    none,     ///< it is not known
    entered,  ///< a number somebody typed
    springs   ///< computed at ride from the springs' mounts and rates
};
/// The stance with the rear rates the springs make where none is entered. Solves the linkage: not for a drag.
struct FullStance {
    Stance stance;
    RearRateSource rear = RearRateSource::none;
};
[[nodiscard]] FullStance fullStanceOf(const Car& car);

/// The driveshaft's setup; a carrier joint counts where all of it is entered, a slip yoke likewise.
[[nodiscard]] ShaftSetup shaftSetupOf(const Driveline& driveline);

}  // namespace bolthole
