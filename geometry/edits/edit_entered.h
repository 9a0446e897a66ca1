// apply() for the words, ballast and springs of geometry/edits/edit.h. Private to edit.cpp.
#pragma once

#include <string>

#include "geometry/car/fields.h"
#include "geometry/edits/edit.h"

namespace bolthole {

/// The first of a part's numbers that is not allowed, in words; empty: none. `scope`: what the part is.
[[nodiscard]] std::string refuseNumbers(const Part<const Car>& part, Scope scope);

/// Each changes `car`, or gives the reason why not and leaves it alone.
[[nodiscard]] std::string applyTo(Car& car, const SetChoice& edit);
[[nodiscard]] std::string applyTo(Car& car, const SetTorque& edit);
[[nodiscard]] std::string applyTo(Car& car, const SetDamping& edit);
[[nodiscard]] std::string applyTo(Car& car, const AddBallast& edit);
[[nodiscard]] std::string applyTo(Car& car, const RemoveBallast& edit);
[[nodiscard]] std::string applyTo(Car& car, const RenameBallast& edit);
[[nodiscard]] std::string applyTo(Car& car, const AddSpring& edit);
[[nodiscard]] std::string applyTo(Car& car, const RemoveSpring& edit);
[[nodiscard]] std::string applyTo(Car& car, const ChangeSpring& edit);

}  // namespace bolthole
