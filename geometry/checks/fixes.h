// What a warning can be mended by where only one thing can be meant.
#pragma once

#include <optional>
#include <string>

#include "geometry/car/faults.h"
#include "geometry/edits/edit.h"

namespace bolthole {

/// One undoable change that takes a warning away.
struct Fix {
    std::string words;  ///< what it does, short: "Clear the length"
    Edit edit;
};

/// The one certain fix of a warning that findWarnings() found in `car`; nothing where a person has to find
/// out what is right. Certain: a length that has no effect or disagrees with the holes is cleared, two limits
/// that stand the wrong way round are exchanged.
[[nodiscard]] std::optional<Fix> certainFix(const Car& car, const Warning& warning);

}  // namespace bolthole
