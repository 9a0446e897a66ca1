// Which numbers of a car nobody has measured: they were put in as a place to start from.
#pragma once

#include <vector>

#include "geometry/car/car.h"
#include "geometry/car/field_id.h"

namespace bolthole {

/// Whether such a number can be a starting number: what a person measures at the car, travel to its stops
/// included; not what is counted, wanted or allowed.
[[nodiscard]] bool mayBeStarting(Field field);

/// Where the number comes from; measured too where it is absent, or one that nobody measures.
[[nodiscard]] Origin originOf(const Car& car, const FieldId& id);
/// Whether the number is there and is a starting number. An own uncertainty never is one.
[[nodiscard]] bool isStarting(const Car& car, const FieldId& id);
/// Whether the number is there and somebody measured it: neither a starting number nor worked out.
[[nodiscard]] bool isMeasured(const Car& car, const FieldId& id);

/// Says where a number comes from. Nothing where the id names no part of the car or the number can't be a
/// starting number.
void setOrigin(Car& car, const FieldId& id, Origin origin);

/// Every number that is there and is measured at a car or still has to be, those of planned holes left out,
/// in the order a person walks around it: the car itself, its links, driveline, ballast and springs.
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

/// Those that somebody still has to take at the car: starting numbers, and those worked out.
[[nodiscard]] std::vector<FieldId> unmeasuredNumbers(const Car& car);

/// After such a number was worked out: a starting number stays one, and so does, or becomes, a length whose
/// holes have starting numbers; any other is worked out from then on.
void markWorkedOut(Car& car, const FieldId& id);
/// After an edit that worked out lengths of rods from their holes: a length that is new in `car` or differs
/// from `before` is a starting number where a coordinate it rested on or rests on is one, and else worked
/// out. Both have the same links.
void markWorkedOutLengths(Car& car, const Car& before);

}  // namespace bolthole
