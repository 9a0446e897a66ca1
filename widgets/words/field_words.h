// The words of the car sheet: labels, accessible names, and how each number is measured.
#pragma once

#include <QString>

#include "geometry/edits/edit.h"

namespace bolthole {

/// What a field is called and how its number comes about.
struct FieldWords {
    QString label;  ///< beside the field: "Wheelbase", "height"
    QString name;   ///< alone, for a screen reader: "lower, axle hole top, height"
    QString howTo;  ///< how to measure it
};

/// Words for one number of `car`. The id must name a part of the car.
[[nodiscard]] FieldWords wordsFor(const Car& car, const FieldId& id);

/// Why `value` (SI) is not allowed for the number: what is, with its limits in the units shown. Empty: it is
/// allowed.
[[nodiscard]] std::string refusalIn(const FieldId& id, double value, Units units);

/// What the link's group is headed by: "Lower link, both sides".
[[nodiscard]] QString linkTitle(const Car& car, int link);

/// The link's name as it stands in sentences: "lower", or "link 3" where it has none.
[[nodiscard]] QString linkName(const Car& car, int link);

/// A hole's name as it stands in sentences: "top", or "hole 2" where it has none.
[[nodiscard]] QString holeName(const Bracket& bracket, int hole);

/// What a bracket's holes are headed by: "Chassis holes", "Axle holes".
[[nodiscard]] QString bracketTitle(End end);

/// What the sideways figure of a link on this side is called: "out" where it is mirrored, else "left".
[[nodiscard]] QString sidewaysWord(Side side);

/// The kind of a link in a sentence, for its tool tip.
[[nodiscard]] QString kindWords(LinkKind kind);

/// The axis of a joint or hole in one word: forward, left, height.
[[nodiscard]] QString axisWord(int axis, Side side);

}  // namespace bolthole
