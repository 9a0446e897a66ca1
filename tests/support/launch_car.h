// A whole car that can be launched, not only the inputs of a launch.
#pragma once

#include "tests/support/made_launch.h"

namespace bolthole {

/// A drawn car with everything its launch takes.
inline Car launchCar(Layout layout, std::uint64_t seed) {
    Car car = CarGenerator(seed).draw(layout);
    const EnteredLaunch drawn = car.launch;
    car.launch = makeLaunchSetup();
    car.launch.unsprungMass = drawn.unsprungMass;
    car.launch.friction = drawn.friction;
    dressForLaunch(car);
    return car;
}

}  // namespace bolthole
