#include "geometry/combinations/present_combination.h"

namespace bolthole {

HoleCombination combinationAsItStands(const Car& car) {
    HoleCombination combination;
    CombinationSolver(car, LengthTreatment::keep).solve(holesInUse(car), combination);
    return combination;
}

}  // namespace bolthole
