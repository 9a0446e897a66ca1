#include "geometry/uncertainty/car_model.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numeric>

#include "geometry/units/units.h"

namespace bolthole {

namespace {

void writeRow(const Station& station, std::span<double> row) {
    std::ranges::copy(station.figures, row.begin());
    const double distance = station[Figure::icX];
    row[kInverseDistance] = std::isnan(distance) ? 0.0 : 1.0 / distance;
}

}  // namespace

CarModel::CarModel(const Car& car, LengthTreatment treatment, const HoleUse& use,
                   std::span<const CarInput> inputs, std::vector<double> travels)
    : varied_(car, treatment, use, inputs), travels_(std::move(travels)) {
    order_.resize(travels_.size());
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    std::ranges::sort(order_, std::less<>{}, [this](std::size_t index) { return std::abs(travels_[index]); });
    const auto up = std::stable_partition(order_.begin(), order_.end(),
                                          [this](std::size_t index) { return travels_[index] < 0; });
    firstUp_ = static_cast<std::size_t>(up - order_.begin());
    if (varied_.isBolted()) {
        std::vector<double> estimates(outputs());
        followAll(estimates, true);
    }
    if (!nominal_.empty() && nominal_.back()->heldBySymmetry() != Freedom::none) {
        varied_.keepSymmetric();
    }
}

bool CarModel::evaluate(std::span<const double> x, std::span<double> y) {
    return varied_.set(x) && (solveNearby(y) || followAll(y, false));
}

bool CarModel::solveNearby(std::span<double> y) {
    if (nominal_.empty()) {
        return false;
    }
    AxleSolver solver(varied_.linkage(), Drive::travel);
    FigureReader reader(varied_.car());
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

bool CarModel::followAll(std::span<double> y, bool isFirst) {
    AxleSolver ride(varied_.linkage(), Drive::travel);
    if (!ride.assemble().usable()) {
        return false;
    }
    FigureReader reader(varied_.car());
    reader.setRide(ride.pose());
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
