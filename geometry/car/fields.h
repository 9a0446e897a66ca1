// The one table behind every number of a car: its kind, limits, words and place in the car file, and where it
// stands in a Car. What geometry/edits/edit.h offers is built on it; nothing else needs it.
#pragma once

#include <string>
#include <string_view>
#include <type_traits>
#include <variant>

#include "geometry/car/numbers.h"

namespace bolthole {

/// Which part of a car a number belongs to.
enum class Scope { car, link, hole, driveline, wanted, load, spring, mount, tool };

/// What numbers are allowed, SI. Both ends belong to the limits unless `open`.
struct Limits {
    double low;
    double high;
    bool lowIsOpen;
    bool highIsOpen;
    std::string_view expected;  ///< in words: "a length above 0 and at most 100 m"
};

/// One row of the table.
struct FieldRule {
    Field field;
    Quantity quantity;
    Scope scope;
    bool hasAxis;            ///< one of three coordinates
    std::string_view path;   ///< in the car file, from its part on
    std::string_view words;  ///< what a person calls it: "rear tire radius"
    const Limits* limits;
};

/// The row of `field`.
[[nodiscard]] const FieldRule& ruleOf(Field field);

/// What an own uncertainty of that number may be.
[[nodiscard]] const Limits& spreadLimits(Field field);

/// `T`, const if `CarT` is.
template <class CarT, class T>
using PartOf = std::conditional_t<std::is_const_v<CarT>, const T, T>;

/// Where a number stands in a car; nothing where the id names no part of it.
template <class CarT>
using Slot = std::variant<std::monostate, PartOf<CarT, double>*, PartOf<CarT, int>*,
                          PartOf<CarT, std::optional<double>>*>;

/// The number `id` names, in `car` itself.
[[nodiscard]] Slot<Car> slotOf(Car& car, const FieldId& id);
[[nodiscard]] Slot<const Car> slotOf(const Car& car, const FieldId& id);

/// The own uncertainties of the part a number belongs to; null where the id names no part of the car.
[[nodiscard]] const Spreads* spreadsAt(const Car& car, const FieldId& id);
[[nodiscard]] Spreads* spreadsAt(Car& car, const FieldId& id);

/// The link, or null where there is none of that index.
[[nodiscard]] const Link* findLink(const Car& car, int link);
/// The hole, or null where there is none of that index.
[[nodiscard]] const Hole* findHole(const Car& car, int link, End end, int hole);
/// The load or spring, or null where there is none of that index.
[[nodiscard]] const EnteredLoad* findLoad(const Car& car, int item);
[[nodiscard]] const SuspensionPart* findSpring(const Car& car, int item);

/// Place of a link or of one of its brackets in the car file: "links[0]", "links[0].axle".
[[nodiscard]] std::string linkPath(int link);
[[nodiscard]] std::string bracketPath(int link, End end);
/// Place of the bracket of a spring: "springs[0].axle".
[[nodiscard]] std::string mountPath(int item, End end);

/// Name of the link as in the car, or "link 3" where it has none.
[[nodiscard]] std::string linkWords(const Car& car, int link);
/// "lower axle hole 'top'", or "lower axle hole 2" where it has no name.
[[nodiscard]] std::string holeWords(const Car& car, int link, End end, int hole);
/// Name of the load or spring as in the car, or "load 3", "shock 2" where it has none.
[[nodiscard]] std::string loadWords(const Car& car, int item);
[[nodiscard]] std::string springWords(const Car& car, int item);
/// "chassis" or "axle".
[[nodiscard]] std::string_view endWords(End end);

}  // namespace bolthole
