// A car as if all of it had been measured without error.
#pragma once

#include "geometry/edits/edit.h"
#include "geometry/uncertainty/uncertain_inputs.h"

namespace bolthole {

inline Car exactCar(Car car) {
    for (const CarInput& input : uncertainInputs(car)) {
        FieldId id = input.id;
        id.uncertainty = true;
        car = apply(car, SetNumber{id, 0.0}).car;
    }
    return car;
}

}  // namespace bolthole
