// Which numbers of a car nobody has measured: they were put in as a place to start from.
#pragma once

#include <vector>

#include "geometry/car/car.h"
#include "geometry/car/field_id.h"

namespace bolthole {

/// Whether such a number can be a starting number: what a person measures at the car, travel to its stops
/// included; not what is counted, wanted or allowed.
[[nodiscard]] bool mayBeStarting(Field field);

/// Whether the number is there and is a starting number. An own uncertainty never is one.
[[nodiscard]] bool isStarting(const Car& car, const FieldId& id);

/// Marks a number as a starting number, or as measured. Nothing where the id names no part of the car or the
/// number can't be a starting number.
void setStarting(Car& car, const FieldId& id, bool starting);

/// Every number that is there and is measured at a car or still has to be, in the order a person walks
/// around it: the car itself, its links, driveline, ballast and springs.
[[nodiscard]] std::vector<FieldId> measurableNumbers(const Car& car);

/// Those of them that are starting numbers.
[[nodiscard]] std::vector<FieldId> startingNumbers(const Car& car);

/// Marks every number of a hole, link, spring (both their brackets included), driveline or whole car as a
/// starting number. `field`: holeAt or mountAt.
void startFrom(Hole& hole, Field field = Field::holeAt);
void startFrom(Link& link);
void startFrom(SuspensionPart& part);
void startFrom(Driveline& driveline);
void startFrom(Car& car);

/// After an edit that worked out lengths of rods from their holes: a length that is new in `car` or differs
/// from `before` is a starting number where a coordinate it rests on is one, and measured where none is. Both
/// have the same links.
void markWorkedOutLengths(Car& car, const Car& before);

}  // namespace bolthole
