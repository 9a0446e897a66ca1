// apply() for whole links of geometry/edits/edit.h. Private to edit.cpp.
#pragma once

#include <string>

#include "geometry/edits/edit.h"

namespace bolthole {

/// Each changes `car`, or gives the reason why not and leaves it alone.
[[nodiscard]] std::string applyTo(Car& car, const AddLink& edit);
[[nodiscard]] std::string applyTo(Car& car, const RemoveLink& edit);
[[nodiscard]] std::string applyTo(Car& car, const ChangeLink& edit);
[[nodiscard]] std::string applyTo(Car& car, const SplitLink& edit);
[[nodiscard]] std::string applyTo(Car& car, const JoinLinks& edit);

}  // namespace bolthole
