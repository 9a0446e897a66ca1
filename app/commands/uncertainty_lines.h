// The uncertainty of a car's figures at ride, in lines of words.
#pragma once

#include <string>
#include <vector>

#include "geometry/car/car.h"

namespace bolthole {

/// A line a figure that exists at ride and is not exact: "anti-squat at ride 121.3 % ± 6.2 (95 in 100, first
/// order); measure again first: ...", with the three numbers that its uncertainty stems from most ("measure
/// first" where nobody measured the foremost). Where a straight line does not do, the interval is drawn at
/// random, the same way every time: "52 to 71 in (95 in 100, drawn)". Units are the car's. Empty where the
/// car can't be assembled. The car must have passed findFaults().
[[nodiscard]] std::vector<std::string> uncertaintyLines(const Car& car);

}  // namespace bolthole
