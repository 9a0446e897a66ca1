// What a doubt can be mended by where only one thing can be meant.
#pragma once

#include <optional>
#include <string>

#include "geometry/car/faults.h"
#include "geometry/edits/edit.h"

namespace bolthole {

/// One undoable change that takes a doubt away.
struct Fix {
    std::string words;  ///< what it does, short: "Clear the length"
    Edit edit;
};

/// The one sure fix of a doubt that findDoubts() found in `car`; nothing where a person has to find out what
/// is right. Sure: a length that has no effect or disagrees with the holes is cleared, two limits that stand
/// the wrong way round are exchanged.
[[nodiscard]] std::optional<Fix> sureFix(const Car& car, const Doubt& doubt);

}  // namespace bolthole
