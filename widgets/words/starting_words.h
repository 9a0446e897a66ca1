// What is said where figures rest on numbers that nobody measured.
#pragma once

#include <QString>
#include <functional>
#include <initializer_list>
#include <span>

#include "geometry/car/car.h"
#include "geometry/car/field_id.h"
#include "geometry/car/fields.h"

namespace bolthole {

/// "starting numbers: CG height, lower chassis hole"; empty for none. English on paper and screen alike, as
/// names of numbers are.
[[nodiscard]] QString startingWords(const Car& car, std::span<const FieldId> starts);

/// The same of all that the figures of the car rest on.
[[nodiscard]] QString startingWords(const Car& car);

/// "worked out, not measured: upper length", of what the figures of the car rest on; empty for none.
[[nodiscard]] QString workedOutWords(const Car& car);

/// The same with a capital, for the heading of a paper: "Starting numbers, not measured: CG height",
/// and of lengths that were: "Worked out, not measured: upper length".
[[nodiscard]] QString startingHeading(const Car& car);

/// The same of what stands on one page: of the numbers it rests on, the springs' too.
[[nodiscard]] QString startingHeading(const Car& car, const std::function<bool(Scope)>& rests);

/// The same of what differs between two cars: it rests on both, and where they don't rest on the same, both
/// are said.
[[nodiscard]] QString startingHeading(const Car& before, const Car& after);

/// What the figures are calculated from, and that they know no strength: "Calculated from your measurements;
/// ..." where nobody measured some of what the figures through travel rest on, that it was also calculated
/// from that.
[[nodiscard]] QString calculatedWords(const Car& car);
/// The same of everything in the program: of springs and plates too.
[[nodiscard]] QString allCalculatedWords(const Car& car);

/// "2 lengths were worked out, not measured"; empty where every length was measured or is a starting number.
/// For what keeps the lengths as they are.
[[nodiscard]] QString workedOutLengthsWords(const Car& car);

/// "measured", "a starting number", "worked out, not measured".
[[nodiscard]] QString originWords(Origin origin);

/// Whether a number of one of these scopes is a starting number; of brackets only the holes in use count. For
/// curves, which say so as a whole.
[[nodiscard]] bool restsOnStarts(const Car& car, std::initializer_list<Scope> scopes);

/// What stands where a ± would: a starting number has none.
[[nodiscard]] QString noUncertaintyWords();

}  // namespace bolthole
