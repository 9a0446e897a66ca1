#include "geometry/car_model.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/entered_figures.h"

namespace bolthole {

namespace {

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();

void writeRow(const Station& station, std::span<double> row) {
    std::ranges::copy(station.figures, row.begin());
    const double distance = station[Figure::icX];
    row[kInverseDistance] = std::isnan(distance) ? 0.0 : 1.0 / distance;
}

}  // namespace

Car withOwnHeight(const Car& car) {
    Car result = car;
    if (car.cgHeightFrom == CgHeightSource::estimate) {
        result.cgHeight = balanceOf(car).from.height;
        result.cgHeightFrom = CgHeightSource::entered;
    }
    return result;
}

CarModel::CarModel(const Car& car, LengthTreatment treatment, const HoleUse& use,
                   std::span<const CarInput> inputs, std::vector<double> travels)
    : rig_(withOwnHeight(car), treatment), use_(use), travels_(std::move(travels)) {
    for (const CarInput& input : inputs) {
        places_.push_back(placeOf(car, input.id));
    }
}

CarModel::Place CarModel::placeOf(const Car& car, const FieldId& id) const {
    Place place{id, std::nullopt, 0};
    const bool isHole = id.field == Field::holeAt && id.end == End::chassis;
    if (isHole && car.links[static_cast<std::size_t>(id.link)].kind != LinkKind::rod) {
        FieldId follower = id;
        follower.end = End::axle;
        follower.hole = use_.of(id.link, End::axle);
        place.offset = numberAt(car, follower).value_or(0) - numberAt(car, id).value_or(0);
        place.follower = follower;
    }
    return place;
}

bool CarModel::evaluate(std::span<const double> x, std::span<double> y) {
    for (std::size_t input = 0; input < places_.size(); ++input) {
        const Place& place = places_[input];
        rig_.setNumber(place.id, x[input]);
        if (place.follower) {
            rig_.setNumber(*place.follower, x[input] + place.offset);
        }
    }
    if (!rig_.bolt(use_)) {
        return false;
    }
    AxleSolver solver(rig_.linkage(), Drive::travel);
    if (!solver.assemble().usable()) {
        return false;
    }
    heldBySymmetry_ = solver.heldBySymmetry();
    FigureReader reader(rig_.car());
    reader.setRide(solver.pose());
    bool reached = true;
    const AxleSolver ride = solver;
    for (std::size_t index = 0; index < travels_.size(); ++index) {
        const std::span<double> row = y.subspan(index * kModelFigures, kModelFigures);
        const bool turns = index > 0 && std::abs(travels_[index]) < std::abs(travels_[index - 1]);
        if (turns || !reached) {
            solver = ride;
        }
        reached = solver.moveTo(travels_[index]).usable();
        if (reached) {
            reader.read(solver, travels_[index], station_);
            writeRow(station_, row);
        } else {
            std::ranges::fill(row, kNaN);
        }
    }
    return true;
}

}  // namespace bolthole
