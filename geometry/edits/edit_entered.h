// apply() for the words, loads and springs of geometry/edits/edit.h. Private to edit.cpp.
#pragma once

#include <string>

#include "geometry/edits/edit.h"
#include "geometry/car/fields.h"

namespace bolthole {

/// The first of the car's numbers of that scope (and item) that is not allowed, in words; empty: none.
[[nodiscard]] std::string refuseNumbers(const Car& car, Scope scope, int item = -1);

/// Each changes `car`, or gives the reason why not and leaves it alone.
[[nodiscard]] std::string applyTo(Car& car, const SetChoice& edit);
[[nodiscard]] std::string applyTo(Car& car, const AddLoad& edit);
[[nodiscard]] std::string applyTo(Car& car, const RemoveLoad& edit);
[[nodiscard]] std::string applyTo(Car& car, const RenameLoad& edit);
[[nodiscard]] std::string applyTo(Car& car, const AddSpring& edit);
[[nodiscard]] std::string applyTo(Car& car, const RemoveSpring& edit);
[[nodiscard]] std::string applyTo(Car& car, const ChangeSpring& edit);

}  // namespace bolthole
