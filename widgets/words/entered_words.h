// Words of the numbers that a row of geometry/car/fields.h cannot say alone. Private to field_words.cpp.
#pragma once

#include <optional>

#include "widgets/words/field_words.h"

namespace bolthole {

/// A reading with the driver the other way; of any other number nothing.
[[nodiscard]] std::optional<FieldWords> otherReadingWords(const Car& car, const FieldId& id);
/// A mount, or a number of a spring that is measured another way on each kind; of any other number nothing.
[[nodiscard]] std::optional<FieldWords> springFieldWords(const Car& car, const FieldId& id);
/// The uncertainty of a number: ids whose `uncertainty` is set.
[[nodiscard]] FieldWords fieldUncertaintyWords(const Car& car, const FieldId& id);

}  // namespace bolthole
