#include "geometry/dynamics/pitch_inertia.h"

#include "geometry/weights/entered_figures.h"

namespace bolthole {

std::optional<double> estimatedPitchInertia(const Car& car) {
    const std::optional<double>& rear = car.launch.unsprungMass;
    const std::optional<double>& front = car.launch.frontUnsprungMass;
    if (!rear || !front) {
        return std::nullopt;
    }
    const CarBalance balance = balanceOf(car);
    const double sprung = balance.total - *rear - *front;
    if (!(sprung > 0)) {
        return std::nullopt;
    }
    const double ahead = (balance.total * balance.cgX(car.wheelbase) - *front * car.wheelbase) / sprung;
    const double inertia = sprung * ahead * (car.wheelbase - ahead);
    return inertia > 0 ? std::optional(inertia) : std::nullopt;
}

}  // namespace bolthole
