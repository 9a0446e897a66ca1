#include "geometry/standing_car.h"

#include <cmath>

namespace bolthole {

double StandingCar::pressing() const {
    return mass * gravity * std::cos(grade);
}

double StandingCar::pulling() const {
    return mass * gravity * std::sin(grade);
}

StandingCar standingCar(const Car& car, const GroundLine& ground) {
    StandingCar standing;
    standing.mass = car.cornerWeights.total();
    standing.wheelbase = ground.wheelbase;
    const double cgX = car.wheelbase * car.cornerWeights.front() / standing.mass;
    standing.cgAhead = ground.ahead(cgX, car.cgHeight);
    standing.cgHeight = ground.above(cgX, car.cgHeight);
    return standing;
}

}  // namespace bolthole
