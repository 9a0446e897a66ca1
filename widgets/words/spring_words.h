// What springs, shocks, stops and straps are called on the Springs page, and which numbers belong to which.
#pragma once

#include <QString>

#include "geometry/edits/edit.h"

namespace bolthole {

/// The part's name as it stands in sentences: "rear coil", or "shock 2" where it has none.
[[nodiscard]] QString springName(const Car& car, int item);

/// What its group is headed by: "Rear coil: spring, both sides".
[[nodiscard]] QString springTitle(const Car& car, int item);

/// "both sides", "left side", "right side", "center".
[[nodiscard]] QString sideWords(Side side);

/// What a mount's holes are headed by: "Chassis mount"; of a bump stop "Foot on the chassis".
[[nodiscard]] QString mountTitle(PartKind kind, End end);

/// Whether a part of that kind has such a number: a strap has no rate.
[[nodiscard]] bool belongsTo(PartKind kind, Field field);

}  // namespace bolthole
