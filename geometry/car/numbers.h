// Reading any number of a car by its address: what it is, what it may be, where it stands in the car file.
#pragma once

#include <optional>
#include <string>

#include "geometry/car/car.h"
#include "geometry/car/field_id.h"

namespace bolthole {

/// What the number is.
[[nodiscard]] Quantity quantityOf(Field field);

/// Whether a number is measured, so that a standard uncertainty of its own may stand beside it: not what is
/// counted, wanted, allowed, or itself an uncertainty.
[[nodiscard]] bool mayHaveUncertainty(Field field);

/// The number's value, SI; nothing where it is absent (an unwritten length, no driveline) or the id names no
/// part.
[[nodiscard]] std::optional<double> numberAt(const Car& car, const FieldId& id);

/// Whether the number may be left out: ClearNumber removes it.
[[nodiscard]] bool mayBeAbsent(const Car& car, const FieldId& id);

/// Where the number stands in the car file: "links[0].axle.holes[2].at[1]".
[[nodiscard]] std::string jsonPath(const FieldId& id);

/// What is allowed for the number and, if `value` (SI) is not, what was expected: "a length above 0". Empty:
/// allowed.
[[nodiscard]] std::string refusal(const FieldId& id, double value);

}  // namespace bolthole
