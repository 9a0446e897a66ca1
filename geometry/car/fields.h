// The one table behind every number of a car: its kind, limits, words and place in the car file, and where it
// stands in a Car. What geometry/edits/edit.h offers is built on it, and so are the car file and the words of
// the sheets.
#pragma once

// To add a number: its member in the struct of its part, its row in one of geometry/car/field_rows_*.h, and
// the page that shows it. Name, key, reading and writing, limits, undo, words, uncertainty, schema and the
// fuzzer's words follow from the row.
#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <variant>

#include "geometry/car/measuring_tool.h"
#include "geometry/car/numbers.h"

namespace bolthole {

/// Which part of a car a number belongs to.
enum class Scope { car, link, hole, driveline, target, ballast, spring, mount, tool };

/// What numbers are allowed, SI. Both ends belong to the limits unless `open`.
struct Limits {
    double low;
    double high;
    bool lowIsOpen;
    bool highIsOpen;
    std::string_view expected;  ///< in words: "a length above 0 and at most 100 m", for say()
    std::string_view what;      ///< its first words alone, for other limits: "a length"; for say()
};

/// `T`, const if `CarT` is.
template <class CarT, class T>
using PartOf = std::conditional_t<std::is_const_v<CarT>, const T, T>;

/// Where a number stands in a car; nothing where the id names no part of it.
template <class CarT>
using Slot = std::variant<std::monostate, PartOf<CarT, double>*, PartOf<CarT, int>*,
                          PartOf<CarT, std::optional<double>>*>;

/// A part of a car that numbers stand in; a null pointer where the car has no such part.
template <class CarT>
using Part =
    std::variant<PartOf<CarT, Car>*, PartOf<CarT, Link>*, PartOf<CarT, Hole>*, PartOf<CarT, Driveline>*,
                 PartOf<CarT, TargetWindow>*, PartOf<CarT, EnteredBallast>*, PartOf<CarT, SuspensionPart>*>;

/// How a number is reached from its part. `axis` counts where `isPoint`. Nothing where the part is another's
/// or null, or where what holds the number is absent.
struct FieldAccess {
    Slot<Car> (*slot)(const Part<Car>& part, int axis) = nullptr;
    Slot<const Car> (*constSlot)(const Part<const Car>& part, int axis) = nullptr;
    bool isPoint = false;
    bool isOptional = false;  ///< it may be unknown
};

/// What a person who measures the number is told to mind, after how it is done.
enum class Caution {
    none,
    bench,  ///< the car on its wheels or on stands
    lift,   ///< the car on stands or a lift
    shaft   ///< the same, and the driveshaft cannot turn
};

/// Whether two states of a car are compared by the number; of the car and its driveline alone.
enum class Compared { never, ifEntered, always };

/// One row of the table. Texts are English, as a person reads them; say() puts them into a person's language,
/// and so do the widgets.
struct FieldRule {
    Field field;
    Scope scope;
    std::string_view path;  ///< in the car file, from its part on
    FieldAccess access;
    bool hasAxis = access.isPoint;  ///< one of three coordinates
    bool mayBeUnknown = access.isOptional;
    Quantity quantity = Quantity::length;
    const Limits* limits = nullptr;
    std::string_view words;         ///< what a person calls it: "rear tire radius"
    std::string_view meaning = {};  ///< what the schema says of it, without its unit
    /// What an absent key stands for; nothing: the number must be there, or may be unknown if it is optional.
    std::optional<double> fallback = std::nullopt;
    bool isRare = false;  ///< a new file leaves it out while it is at its default
    /// Whether it is measured, and so may have an uncertainty of its own; see mayHaveUncertainty().
    bool isMeasured = quantity != Quantity::count && scope != Scope::target && scope != Scope::tool;
    MeasuringTool tool = toolFor(quantity);
    std::optional<double> uncertainty = std::nullopt;  ///< standard, SI, an estimate; absent: its tool's
    Compared compared = Compared::ifEntered;
    bool isTyped = true;          ///< else it is chosen from a list
    const char* label = nullptr;  ///< beside its field; %1: its part's name. Absent: `name`
    /// Alone, for a screen reader; %1: its part's name, if it has one, then its axis. Absent: `words`.
    const char* name = nullptr;
    /// How it is measured; of a point axis by axis: forward, left, up.
    std::array<const char*, 3> howTo = {};
    Caution caution = Caution::none;
};

/// Numbers that come in fours, one a wheel: left front, right front, left rear, right rear.
using WheelFields = std::array<Field, 4>;
inline constexpr WheelFields kCornerFields{Field::leftFrontWeight, Field::rightFrontWeight,
                                           Field::leftRearWeight, Field::rightRearWeight};
inline constexpr WheelFields kOtherCornerFields{Field::otherLeftFront, Field::otherRightFront,
                                                Field::otherLeftRear, Field::otherRightRear};
inline constexpr WheelFields kPadFields{Field::padLeftFront, Field::padRightFront, Field::padLeftRear,
                                        Field::padRightRear};

/// Every row, a part of the car after the other and in the order in which a new file has them.
[[nodiscard]] std::span<const FieldRule> fieldRules();

/// The rows of the numbers of one part.
[[nodiscard]] std::span<const FieldRule* const> rulesOf(Scope scope);

/// The row of `field`.
[[nodiscard]] const FieldRule& ruleOf(Field field);

/// What an own uncertainty of that number may be.
[[nodiscard]] const Limits& uncertaintyLimits(Field field);

/// The number `id` names, in `car` itself.
[[nodiscard]] Slot<Car> slotOf(Car& car, const FieldId& id);
[[nodiscard]] Slot<const Car> slotOf(const Car& car, const FieldId& id);

/// The number that stands there; nothing where none does.
[[nodiscard]] std::optional<double> numberIn(const Slot<const Car>& slot);

/// The own uncertainties of the part a number belongs to; null where the id names no part of the car.
[[nodiscard]] const Uncertainties* uncertaintiesAt(const Car& car, const FieldId& id);
[[nodiscard]] Uncertainties* uncertaintiesAt(Car& car, const FieldId& id);

/// The same whether or not that number may have an uncertainty of its own: where its mark as a starting
/// number stands.
[[nodiscard]] const Uncertainties* partMarksAt(const Car& car, const FieldId& id);
[[nodiscard]] Uncertainties* partMarksAt(Car& car, const FieldId& id);

/// The link, or null where there is none of that index.
[[nodiscard]] const Link* findLink(const Car& car, int link);
/// The hole, or null where there is none of that index.
[[nodiscard]] const Hole* findHole(const Car& car, int link, End end, int hole);
/// The load or spring, or null where there is none of that index.
[[nodiscard]] const EnteredBallast* findBallast(const Car& car, int item);
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
[[nodiscard]] std::string ballastWords(const Car& car, int item);
[[nodiscard]] std::string springWords(const Car& car, int item);
/// "shock 2 axle mount".
[[nodiscard]] std::string mountWords(const Car& car, int item, End end);
/// "chassis" or "axle": the file's word, and a text that say() puts into a person's language.
[[nodiscard]] std::string_view endWords(End end);

}  // namespace bolthole
