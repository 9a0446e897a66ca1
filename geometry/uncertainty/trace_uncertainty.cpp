#include "geometry/uncertainty/trace_uncertainty.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "geometry/uncertainty/car_model.h"
#include "geometry/units/uncertainty_text.h"
#include "geometry/units/units.h"

namespace bolthole {

namespace {

constexpr double kSamePlace = 1e-9;  // m

std::size_t asIndex(Figure figure) {
    return static_cast<std::size_t>(figure);
}

/// Ride, then outward to full droop and full bump: the order the solver follows best.
std::vector<double> travelsFor(const TravelRange& range) {
    std::vector<double> travels{0.0};
    for (int station = 0; station < kUncertaintyStations; ++station) {
        const double last = kUncertaintyStations - 1;
        travels.push_back(station / last * range.bump - (last - station) / last * range.droop);
    }
    return travels;
}

void differentiateCar(const Car& car, LengthTreatment treatment, const HoleUse& use,
                      TraceUncertainty& uncertainty) {
    CarModel model(car, treatment, use, uncertainty.inputs, uncertainty.travels);
    differentiate(model, asInputs(uncertainty.inputs), uncertainty.sensitivity);
    uncertainty.starts = uncertainStarts(uncertainty.inputs);
    uncertainty.known = uncertainty.sensitivity.known;
}

}  // namespace

double TraceUncertainty::of(std::size_t place, std::size_t figure) const {
    const bool exists = known && !std::isnan(sensitivity.value[rowOf(place, figure)]);
    return exists && startsBehindFigure(place, figure).empty() ? sensitivity.uncertainty(rowOf(place, figure))
                                                               : kNaN;
}

std::vector<std::size_t> TraceUncertainty::startsBehindFigure(std::size_t place, std::size_t figure) const {
    return startsBehind(sensitivity, rowOf(place, figure), starts);
}

double TraceUncertainty::atRide(Figure figure) const {
    return of(0, asIndex(figure));
}

double TraceUncertainty::inverseAtRide() const {
    return of(0, kInverseDistance);
}

double TraceUncertainty::at(std::size_t figure, double travel) const {
    const std::size_t last = travels.empty() ? 0 : travels.size() - 1;
    if (!known || last < 4 || travel < travels[1] - kSamePlace || travel > travels[last] + kSamePlace) {
        return kNaN;
    }
    if (travels[last] - travels[1] <= kSamePlace) {
        return of(0, figure);  // a car without travel: all of them are ride
    }
    std::size_t below = 1;
    while (below + 1 < last && travel > travels[below + 1]) {
        ++below;
    }
    if (std::isnan(of(below, figure)) || std::isnan(of(below + 1, figure))) {
        return kNaN;
    }
    const std::size_t first = std::clamp<std::size_t>(below - 1, 1, last - 3);
    for (std::size_t place = first; place < first + 4; ++place) {
        if (std::isnan(of(place, figure))) {
            return interpolated(below, 2, figure, travel);
        }
    }
    return interpolated(first, 4, figure, travel);
}

double TraceUncertainty::interpolated(std::size_t first, std::size_t count, std::size_t figure,
                                      double travel) const {
    std::array<double, 4> weights{};
    for (std::size_t i = 0; i < count; ++i) {
        weights[i] = 1;
        for (std::size_t j = 0; j < count; ++j) {
            if (j != i) {
                weights[i] *= (travel - travels[first + j]) / (travels[first + i] - travels[first + j]);
            }
        }
    }
    double variance = 0;
    for (Eigen::Index input = 0; input < sensitivity.change.cols(); ++input) {
        double change = 0;
        for (std::size_t i = 0; i < count; ++i) {
            change += weights[i] * sensitivity.change(rowOf(first + i, figure), input);
        }
        variance += change * change;
    }
    return std::sqrt(variance);
}

bool TraceUncertainty::isNonlinearAtRide(Figure figure) const {
    const Eigen::Index row = rowOf(0, asIndex(figure));
    if (!known || std::isnan(sensitivity.value[row])) {
        return false;
    }
    const bool isCenter = figure == Figure::icX || figure == Figure::icZ;
    return !(sensitivity.nonlinearity(row) <= kMostNonlinearity) ||
           (isCenter && !(centerNonlinearity() <= kMostNonlinearity));
}

// With s = 1/distance and r its relative uncertainty, 1/s has the second derivative 2/s^3: all inputs
// together add half of (2 u^2/s^3)^2 to (u/s^2)^2, which is 2 r^2 of it. The inputs one by one add less.
double TraceUncertainty::centerNonlinearity() const {
    const double relative = inverseAtRide() / sensitivity.value[rowOf(0, kInverseDistance)];
    return 2 * relative * relative;
}

void computeUncertainty(const Car& car, TraceUncertainty& uncertainty) {
    uncertainty.inputs = uncertainInputs(car);
    uncertainty.travels = travelsFor(car.travel);
    differentiateCar(car, LengthTreatment::keep, holesInUse(car), uncertainty);
}

TraceUncertainty computeUncertainty(const Car& car) {
    TraceUncertainty uncertainty;
    computeUncertainty(car, uncertainty);
    return uncertainty;
}

TraceUncertainty computeUncertainty(const Car& car, LengthTreatment treatment, const HoleUse& use) {
    TraceUncertainty uncertainty;
    uncertainty.inputs = uncertainInputs(car, use);
    uncertainty.travels = {0.0, -car.travel.droop, car.travel.bump};
    differentiateCar(car, treatment, use, uncertainty);
    return uncertainty;
}

namespace {

bool isSameMeasurement(const CarInput& one, const CarInput& other) {
    return one.id == other.id && one.value == other.value &&
           one.numberUncertainty.uncertainty == other.numberUncertainty.uncertainty;
}

// Where the same measurement stands; `inputs.size()` where it is not among them.
std::size_t placeOf(const CarInput& input, const std::vector<CarInput>& inputs) {
    const auto same = std::ranges::find_if(
        inputs, [&input](const CarInput& other) { return isSameMeasurement(input, other); });
    return static_cast<std::size_t>(same - inputs.begin());
}

}  // namespace

double uncertaintyOfDifference(const TraceUncertainty& one, const TraceUncertainty& other, std::size_t place,
                               std::size_t figure) {
    if (std::isnan(one.of(place, figure)) || std::isnan(other.of(place, figure))) {
        return kNaN;
    }
    const auto mine = one.sensitivity.change.row(rowOf(place, figure));
    const auto theirs = other.sensitivity.change.row(rowOf(place, figure));
    double variance = 0;
    for (std::size_t i = 0; i < one.inputs.size(); ++i) {
        const std::size_t same = placeOf(one.inputs[i], other.inputs);
        const double common = same < other.inputs.size() ? theirs[static_cast<Eigen::Index>(same)] : 0.0;
        const double left = mine[static_cast<Eigen::Index>(i)] - common;
        variance += left * left;
    }
    for (std::size_t i = 0; i < other.inputs.size(); ++i) {
        if (placeOf(other.inputs[i], one.inputs) == one.inputs.size()) {
            variance += theirs[static_cast<Eigen::Index>(i)] * theirs[static_cast<Eigen::Index>(i)];
        }
    }
    return std::sqrt(variance);
}

bool cannotTellApart(double difference, double uncertainty) {
    return std::abs(difference) <= kCoverage95 * uncertainty;
}

}  // namespace bolthole
