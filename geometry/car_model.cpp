#include "geometry/car_model.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numeric>

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
        last_.push_back(input.value);
    }
    order_.resize(travels_.size());
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    std::ranges::sort(order_, std::less<>{}, [this](std::size_t index) { return std::abs(travels_[index]); });
    const auto up =
        std::ranges::stable_partition(order_, [this](std::size_t index) { return travels_[index] < 0; });
    firstUp_ = order_.size() - up.size();
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
        if (x[input] == last_[input]) {
            continue;
        }
        last_[input] = x[input];
        rig_.setNumber(place.id, x[input]);
        if (place.follower) {
            rig_.setNumber(*place.follower, x[input] + place.offset);
        }
    }
    if (!rig_.bolt(use_)) {
        return false;
    }
    return settleNearby(y) || followAll(y);
}

bool CarModel::settleNearby(std::span<double> y) {
    if (nominal_.empty()) {
        return false;
    }
    AxleSolver solver(rig_.linkage(), Drive::travel);
    FigureReader reader(rig_.car());
    if (!solver.startNear(*nominal_.back())) {
        return false;
    }
    reader.setRide(solver.pose());
    for (std::size_t index = 0; index < travels_.size(); ++index) {
        if (!nominal_[index]) {
            std::ranges::fill(y.subspan(index * kModelFigures, kModelFigures), kNaN);
            continue;
        }
        if (!solver.startNear(*nominal_[index])) {
            return false;
        }
        readRow(solver, reader, index, y);
    }
    return true;
}

bool CarModel::followAll(std::span<double> y) {
    AxleSolver ride(rig_.linkage(), Drive::travel);
    if (!ride.assemble().usable()) {
        return false;
    }
    FigureReader reader(rig_.car());
    reader.setRide(ride.pose());
    const bool isFirst = nominal_.empty();
    if (isFirst) {
        nominal_.resize(travels_.size() + 1);
        nominal_.back() = ride;
    }
    follow(ride, reader, firstUp_, order_.size(), y, isFirst);
    follow(ride, reader, 0, firstUp_, y, isFirst);
    return true;
}

void CarModel::follow(AxleSolver solver, const FigureReader& reader, std::size_t begin, std::size_t end,
                      std::span<double> y, bool isFirst) {
    bool reached = true;
    for (std::size_t place = begin; place < end; ++place) {
        const std::size_t index = order_[place];
        reached = reached && solver.moveTo(travels_[index]).usable();
        if (reached) {
            readRow(solver, reader, index, y);
        } else {
            std::ranges::fill(y.subspan(index * kModelFigures, kModelFigures), kNaN);
        }
        if (isFirst && reached) {
            nominal_[index] = solver;
        }
    }
}

void CarModel::readRow(const AxleSolver& solver, const FigureReader& reader, std::size_t index,
                       std::span<double> y) {
    reader.read(solver, travels_[index], station_);
    writeRow(station_, y.subspan(index * kModelFigures, kModelFigures));
}

}  // namespace bolthole
