// How the edits of passes change a car; part of apply() and describe() in geometry/edits/edit.h, which is
// what others call.
#pragma once

#include <string>

#include "geometry/edits/edit.h"

namespace bolthole {

/// Changes `car`, or gives the reason why not and leaves it alone.
[[nodiscard]] std::string applyTo(Car& car, const AddPass& edit);
[[nodiscard]] std::string applyTo(Car& car, const ChangePass& edit);
[[nodiscard]] std::string applyTo(Car& car, const RemovePass& edit);
[[nodiscard]] std::string applyTo(Car& car, const StrikePass& edit);

/// The edits in a person's words. `before` is the car they apply to.
[[nodiscard]] std::string describePassEdit(const AddPass& edit);
[[nodiscard]] std::string describePassEdit(const ChangePass& edit, const Car& before);
[[nodiscard]] std::string describePassEdit(const RemovePass& edit, const Car& before);
[[nodiscard]] std::string describePassEdit(const StrikePass& edit, const Car& before);

}  // namespace bolthole
