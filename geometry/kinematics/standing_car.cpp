#include "geometry/kinematics/standing_car.h"

#include <cmath>

#include "geometry/weights/entered_figures.h"

namespace bolthole {

double StandingCar::pressing() const {
    return mass * gravity * std::cos(grade);
}

double StandingCar::pulling() const {
    return mass * gravity * std::sin(grade);
}

StandingCar standingCar(const Car& car, const GroundLine& ground) {
    StandingCar standing;
    const CarBalance balance = balanceOf(car);
    standing.mass = balance.total;
    standing.wheelbase = ground.wheelbase;
    const double cgX = balance.cgX(car.wheelbase);
    standing.cgAhead = ground.ahead(cgX, balance.height);
    standing.cgHeight = ground.above(cgX, balance.height);
    return standing;
}

}  // namespace bolthole
