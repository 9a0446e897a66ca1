// Words of the fields on the pages beside the bench, a function a page. Private to field_words.cpp.
#pragma once

#include "widgets/words/field_words.h"

namespace bolthole {

/// Weighing, loads and lift.
[[nodiscard]] FieldWords weighingWords(const Car& car, const FieldId& id);
/// The driveshaft beyond its end joints.
[[nodiscard]] FieldWords shaftWords(const Car& car, const FieldId& id);
/// Springs and their mounts, wheel rates.
[[nodiscard]] FieldWords springFieldWords(const Car& car, const FieldId& id);
/// Launch, brakes and link ratings.
[[nodiscard]] FieldWords launchWords(const Car& car, const FieldId& id);
/// What is wanted.
[[nodiscard]] FieldWords wantedWords(const FieldId& id);
/// How sure a number is, and what it was taken with; `isSpread()` ids alone.
[[nodiscard]] FieldWords spreadWords(const Car& car, const FieldId& id);
/// Whether the number is how sure something is: a tool's, or one number's own.
[[nodiscard]] bool isSpread(const FieldId& id);

}  // namespace bolthole
