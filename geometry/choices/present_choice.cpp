#include "geometry/choices/present_choice.h"

namespace bolthole {

HoleChoice choiceAsItStands(const Car& car) {
    HoleChoice choice;
    ChoiceSolver(car, LengthTreatment::keep).solve(holesInUse(car), choice);
    return choice;
}

}  // namespace bolthole
