#include "geometry/trace_spread.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace bolthole {

namespace {

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();

Eigen::Index rowOf(std::size_t place, std::size_t figure) {
    return static_cast<Eigen::Index>(place * kModelFigures + figure);
}

std::size_t asIndex(Figure figure) {
    return static_cast<std::size_t>(figure);
}

/// Ride, then outward to full droop and full bump: the order the solver follows best.
std::vector<double> travelsFor(const TravelRange& range) {
    std::vector<double> travels{0.0};
    for (int station = 0; station < kSpreadStations; ++station) {
        const double last = kSpreadStations - 1;
        travels.push_back(station / last * range.bump - (last - station) / last * range.droop);
    }
    return travels;
}

void differentiateCar(const Car& car, LengthTreatment treatment, const HoleUse& use, TraceSpread& spread) {
    CarModel model(car, treatment, use, spread.inputs, spread.travels);
    differentiate(model, asInputs(spread.inputs), spread.sensitivity);
    spread.known = spread.sensitivity.known;
}

}  // namespace

double TraceSpread::of(std::size_t place, std::size_t figure) const {
    if (!known || std::isnan(sensitivity.value[rowOf(place, figure)])) {
        return kNaN;
    }
    return sensitivity.uncertainty(rowOf(place, figure));
}

double TraceSpread::atRide(Figure figure) const {
    return of(0, asIndex(figure));
}

double TraceSpread::inverseAtRide() const {
    return of(0, kInverseDistance);
}

double TraceSpread::at(std::size_t figure, double travel) const {
    const std::size_t count = travels.size() - 1;
    if (!known || count < 3 || travel < travels[1] - 1e-9 || travel > travels[count] + 1e-9) {
        return kNaN;
    }
    std::size_t first = 1;
    while (first + 3 <= count && travel > (travels[first + 1] + travels[first + 2]) / 2) {
        ++first;
    }
    double result = 0;
    for (std::size_t i = first; i < first + 3; ++i) {
        double weight = 1;
        for (std::size_t j = first; j < first + 3; ++j) {
            if (j != i) {
                weight *= (travel - travels[j]) / (travels[i] - travels[j]);
            }
        }
        result += weight * of(i, figure);
    }
    return result < 0 ? 0.0 : result;
}

bool TraceSpread::bendsAtRide(Figure figure) const {
    return known && sensitivity.bending(rowOf(0, asIndex(figure))) > kMostBending;
}

void computeSpread(const Car& car, TraceSpread& spread) {
    spread.inputs = uncertainInputs(car);
    spread.travels = travelsFor(car.travel);
    differentiateCar(car, LengthTreatment::keep, holesInUse(car), spread);
}

TraceSpread computeSpread(const Car& car) {
    TraceSpread spread;
    computeSpread(car, spread);
    return spread;
}

TraceSpread computeSpread(const Car& car, LengthTreatment treatment, const HoleUse& use) {
    TraceSpread spread;
    spread.inputs = uncertainInputs(car, use);
    spread.travels = {0.0, -car.travel.droop, car.travel.bump};
    differentiateCar(car, treatment, use, spread);
    return spread;
}

namespace {

bool isSameMeasurement(const CarInput& one, const CarInput& other) {
    return one.id == other.id && one.value == other.value &&
           one.sureness.uncertainty == other.sureness.uncertainty;
}

}  // namespace

double spreadOfDifference(const TraceSpread& one, const TraceSpread& other, std::size_t place,
                          std::size_t figure) {
    if (!one.known || !other.known) {
        return kNaN;
    }
    const auto mine = one.sensitivity.change.row(rowOf(place, figure));
    const auto theirs = other.sensitivity.change.row(rowOf(place, figure));
    double variance = mine.squaredNorm() + theirs.squaredNorm();
    for (std::size_t i = 0; i < one.inputs.size(); ++i) {
        const auto same = std::ranges::find_if(
            other.inputs, [&](const CarInput& input) { return isSameMeasurement(one.inputs[i], input); });
        if (same != other.inputs.end()) {
            variance -= 2 * mine[static_cast<Eigen::Index>(i)] * theirs[same - other.inputs.begin()];
        }
    }
    return std::sqrt(std::max(0.0, variance));
}

bool cannotTellApart(double difference, double uncertainty) {
    return std::abs(difference) < kCoverage95 * uncertainty;
}

}  // namespace bolthole
