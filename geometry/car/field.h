// The names of all numbers of a car. They follow from the rows of the table; see geometry/car/fields.h.
#pragma once

namespace bolthole {

/// Names every number of a car, in no order that means anything.
enum class Field {
#ifndef Q_MOC_RUN  // the toolkit's generator of signals can't read such rows, nor does it need them
#define BOLTHOLE_FIELD(name, ...) name,
#include "geometry/car/field_rows.h"
#undef BOLTHOLE_FIELD
#endif
};

}  // namespace bolthole
