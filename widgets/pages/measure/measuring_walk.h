// The measuring sheet as a walk: every number it has a box for, one after the other, and what two readings of
// one make of it.
#pragma once

#include <QString>
#include <array>
#include <optional>
#include <vector>

#include "geometry/edits/edit.h"
#include "widgets/papers/sheets/measuring_plan.h"

namespace bolthole {

/// A number of the sheet.
struct WalkStop {
    std::size_t area = 0;  ///< index into MeasuringWalk::areas
    /// Number or letter of its place in the area's picture, "3–7" between two points; empty: it is not drawn.
    QString sign;
    QString name;  ///< as the sheet's row and column have it: "upper, axle: height"
    FieldId id;
    bool isOfFirstTable = false;  ///< of the area's own points, which its hint is about
};

/// The sheet's numbers in its order.
struct MeasuringWalk {
    std::vector<PlanArea> areas;
    std::vector<WalkStop> stops;
};

/// What the sheet of the car has boxes for. The car need not be whole.
[[nodiscard]] MeasuringWalk measuringWalk(const Car& car);

/// Where a person begins: at the first box that is left, in the sheet's order.
/// Nothing: all is measured.
[[nodiscard]] std::optional<std::size_t> firstLeft(const Car& car, const MeasuringWalk& walk);

/// How many stops are not measured.
[[nodiscard]] std::size_t countLeft(const Car& car, const MeasuringWalk& walk);

/// ", 53 boxes left to fill, 27 of them starting numbers, 2 worked out": those are what the sheet of the car
/// counts; the rest have no number yet.
[[nodiscard]] QString leftWords(const Car& car, const MeasuringWalk& walk);

/// The two of three readings that lie closest: what a third one is taken for when the first two lie far
/// apart, as one of them is a slip.
[[nodiscard]] std::array<double, 2> closestTwo(const std::array<double, 3>& readings);

/// The edit that one or two readings (SI) of a number make. Two: their mean is the number, and their
/// difference is what stands after its ±, where that is more than the tool's own; an own ± that the number
/// had is replaced, by the tool's where there is but one reading. That is the mean's standard uncertainty by
/// the Guide (JCGM 100:2008, 4.2.3: s/√2, half of the difference) with the factor 1.96 for 95 %.
[[nodiscard]] Edit editOfReadings(const Car& car, const FieldId& id, double first,
                                  std::optional<double> second);

}  // namespace bolthole
