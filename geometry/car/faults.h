// What keeps a car from being computed, and what looks wrong in one that can be.
#pragma once

#include <string>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/car/field_id.h"

namespace bolthole {

/// Something that keeps a car from being computed, at its place.
struct Fault {
    FieldId id;          ///< the number at fault; a number of the whole car where no single one is
    std::string path;    ///< JSON path
    std::string reason;  ///< what is wrong and what was expected
};

/// Everything that makes the car's numbers unusable: outside the limits, not finite. Empty: computable.
[[nodiscard]] std::vector<Fault> findFaults(const Car& car);

/// Something that can be computed but looks wrong.
struct Doubt {
    std::string path;    ///< JSON path
    std::string reason;  ///< in words, lengths in the car's units
    FieldId id;
};

}  // namespace bolthole
