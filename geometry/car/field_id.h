// The address of one number of a car.
#pragma once

#include "geometry/car/bracket.h"
#include "geometry/car/field.h"

namespace bolthole {

/// Address of one number. Members that the field does not use stay at their defaults.
struct FieldId {
    Field field = Field::wheelbase;
    int link = -1;
    End end = End::chassis;
    int hole = -1;
    int axis = -1;  ///< 0 x forward, 1 y left, 2 z up
    int item = -1;  ///< index into Car::loads or Car::springs
    /// Not the number itself but its own standard uncertainty; see mayHaveUncertainty().
    bool uncertainty = false;

    bool operator==(const FieldId&) const = default;
};

/// One coordinate of a link's hole.
[[nodiscard]] inline FieldId holeField(int link, End end, int hole, int axis) {
    return {.field = Field::holeAt, .link = link, .end = end, .hole = hole, .axis = axis};
}

}  // namespace bolthole
