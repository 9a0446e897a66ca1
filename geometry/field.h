// The names of all numbers of a car. They follow from the rows of the table; see geometry/fields.h.
#pragma once

namespace bolthole {

/// Names every number of a car, in no order that means anything.
enum class Field {
#define BOLTHOLE_FIELD(name, ...) name,
#include "geometry/field_rows.h"
#undef BOLTHOLE_FIELD
};

}  // namespace bolthole
