// The units a person may type, and which is meant where none is. Private to typed.cpp.
#pragma once

#include <string_view>

#include "geometry/units/units.h"

namespace bolthole {

/// A unit a person may type. Its SI value is kept as a ratio of exact doubles, so that 12 3/8 in becomes the
/// double nearest to 0.314325 m.
struct TypedUnit {
    std::string_view name;
    Quantity quantity;
    double over;
    double under;

    [[nodiscard]] constexpr bool sameSize(const TypedUnit& other) const {
        return quantity == other.quantity && over == other.over && under == other.under;
    }
};

inline constexpr TypedUnit kInchUnit{"in", Quantity::length, 127, 5000};
inline constexpr TypedUnit kMillimetreUnit{"mm", Quantity::length, 1, 1000};
inline constexpr TypedUnit kFootUnit{"ft", Quantity::length, 1524, 5000};

/// The unit of that name, of the quantity that is wanted where several are called so; null where none is.
[[nodiscard]] const TypedUnit* findUnit(std::string_view name, Quantity wanted);

/// The unit a quantity is shown in, which is meant where none is typed.
[[nodiscard]] const TypedUnit& shownTypedUnit(Quantity quantity, Units units);

/// "a length, such as 12 3/8 in or 314 mm".
[[nodiscard]] std::string targetWords(Quantity quantity);

}  // namespace bolthole
