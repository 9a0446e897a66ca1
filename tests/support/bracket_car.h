// A car with a bracket whose plate and planned hole were entered.
#pragma once

#include "tests/support/sheet_bench.h"

namespace bolthole::test {

/// The invented car; its lower axle bracket has three holes, a planned one under them and a plate of five
/// corners with 5/8 in holes.
inline Car bracketCar(Units units) {
    Car car = inventedCar();
    car.units = units;
    Bracket& bracket = car.links[0].axle;
    bracket.holes.push_back({-1, "new", inches(0.13, 21, 6.02)});
    bracket.holes.back().planned = true;
    Plate plate;
    const double corners[][2] = {{-0.9, 4.9}, {1.4, 4.9}, {1.9, 8}, {1.4, 11}, {-0.7, 10.8}};
    for (const auto& corner : corners) {
        plate.corners.emplace_back(corner[0] * kMetresPerInch, corner[1] * kMetresPerInch);
    }
    plate.holeDiameter = 0.625 * kMetresPerInch;
    plate.edgeDistance = 0.75 * kMetresPerInch;
    plate.holeSpacing = 1.5;
    bracket.plate = plate;
    return car;
}

}  // namespace bolthole::test
