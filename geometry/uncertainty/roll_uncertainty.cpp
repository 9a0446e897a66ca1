#include "geometry/uncertainty/roll_uncertainty.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/units/units.h"

namespace bolthole {

namespace {

std::array<double, kRollFigures> figuresOf(const RollFigures& row) {
    if (!row.usable) {
        return {kNaN, kNaN, kNaN, kNaN};
    }
    return {row.pose.yaw, row.pose.y, row.center, row.steer};
}

}  // namespace

RollModel::RollModel(const Car& car, std::span<const CarInput> inputs, const RollRange& range)
    : varied_(car, LengthTreatment::keep, holesInUse(car), inputs), range_(range) {}

bool RollModel::evaluate(std::span<const double> x, std::span<double> y) {
    if (!varied_.set(x)) {
        return false;
    }
    rolled_ = varied_.car();
    rolled_.travel.steps = kMinSteps;
    computeRollTrace(rolled_, range_, trace_);
    if (!trace_.assembly.usable()) {
        return false;
    }
    auto into = y.begin();
    for (const RollFigures& row : trace_.rows) {
        into = std::ranges::copy(figuresOf(row), into).out;
    }
    return true;
}

double RollUncertainty::of(int row, RollFigure figure) const {
    const auto output = static_cast<Eigen::Index>(static_cast<std::size_t>(row) * kRollFigures +
                                                  static_cast<std::size_t>(figure));
    const bool exists = known && !std::isnan(sensitivity.value[output]);
    return exists && startsBehind(sensitivity, output, starts).empty() ? sensitivity.uncertainty(output)
                                                                       : kNaN;
}

RollUncertainty computeRollUncertainty(const Car& car, const RollRange& range) {
    RollUncertainty uncertainty;
    uncertainty.inputs = uncertainInputs(car);
    RollModel model(car, uncertainty.inputs, range);
    differentiate(model, asInputs(uncertainty.inputs), uncertainty.sensitivity);
    uncertainty.starts = uncertainStarts(uncertainty.inputs);
    uncertainty.known = uncertainty.sensitivity.known;
    return uncertainty;
}

}  // namespace bolthole
