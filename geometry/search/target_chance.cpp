#include "geometry/search/target_chance.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>

#include "geometry/algebra/dense.h"
#include "geometry/car/numbers.h"
#include "geometry/uncertainty/propagation.h"
#include "geometry/units/units.h"

namespace bolthole {

namespace {

constexpr std::uint64_t kSeed = 20'081'003;
constexpr std::size_t kRide = 0;
constexpr std::size_t kDroop = 1;
constexpr std::size_t kBump = 2;

std::vector<double> endsOf(const Car& car) {
    return {0.0, -car.travel.droop, car.travel.bump};
}

std::size_t asIndex(Figure figure) {
    return static_cast<std::size_t>(figure);
}

/// Standard normal numbers by Box & Muller, "A Note on the Generation of Random Normal Deviates", Annals of
/// Mathematical Statistics 29, 1958 (from memory); the library's own differ between compilers.
Eigen::MatrixXd drawNormals(Eigen::Index rows, Eigen::Index columns) {
    std::mt19937_64 random(kSeed);
    const auto unit = [&random] { return (static_cast<double>(random() >> 11U) + 0.5) * 0x1.0p-53; };
    Eigen::MatrixXd normals(rows, columns);
    for (Eigen::Index index = 0; index < normals.size(); ++index) {
        normals.data()[index] = std::sqrt(-2 * std::log(unit())) * std::cos(2 * std::numbers::pi * unit());
    }
    return normals;
}

double below(double value, double mean, double deviation) {
    return 0.5 * std::erfc((mean - value) / (deviation * std::numbers::sqrt2));
}

}  // namespace

Car withPinion(const Car& car) {
    Car result = car;
    if (!result.driveline) {
        const double height = car.rearTireRadius;
        result.driveline = Driveline{0, {car.wheelbase / 10, 0, height}, 0, {car.wheelbase / 2, 0, height}};
    }
    return result;
}

TargetModel::TargetModel(const Car& now, const Car& then, LengthTreatment treatment, const HoleUse& use,
                         std::vector<CarInput> inputs)
    : then_(withPinion(then), treatment, use, inputs, endsOf(then)),
      now_(withPinion(now), LengthTreatment::keep, holesInUse(now), inputs, {0.0}),
      thenRows_(then_.outputs()),
      nowRows_(now_.outputs()),
      nowInputs_(inputs.size()) {
    for (const CarInput& input : inputs) {
        offsets_.push_back(numberAt(now, input.id).value_or(input.value) -
                           numberAt(then, input.id).value_or(input.value));
    }
}

std::vector<CarInput> TargetModel::inputsOf(const Car& now, const Car& then, const HoleUse& use) {
    std::vector<CarInput> inputs = uncertainInputs(then, use);
    for (const CarInput& input : uncertainInputs(now)) {
        if (std::ranges::find(inputs, input.id, &CarInput::id) == inputs.end()) {
            inputs.push_back(input);
        }
    }
    return inputs;
}

bool TargetModel::evaluate(std::span<const double> x, std::span<double> y) {
    for (std::size_t input = 0; input < x.size(); ++input) {
        nowInputs_[input] = x[input] + offsets_[input];
    }
    if (!then_.evaluate(x, thenRows_)) {
        return false;
    }
    const auto at = [this](std::size_t travel, std::size_t figure) {
        return thenRows_[travel * kModelFigures + figure];
    };
    const bool knowsNow = now_.evaluate(nowInputs_, nowRows_);
    y[inverse] = at(kRide, kInverseDistance);
    y[slope] = std::tan(at(kRide, asIndex(Figure::swingArmAngle)));
    y[antiSquat] = at(kRide, asIndex(Figure::antiSquat));
    y[change] = at(kBump, asIndex(Figure::antiSquat)) - at(kDroop, asIndex(Figure::antiSquat));
    y[pinion] = knowsNow ? at(kRide, asIndex(Figure::pinion)) - nowRows_[asIndex(Figure::pinion)] : kNaN;
    for (std::size_t travel = kRide; travel <= kBump; ++travel) {
        y[joints + 2 * travel] = at(travel, asIndex(Figure::frontJoint));
        y[joints + 2 * travel + 1] = at(travel, asIndex(Figure::rearJoint));
    }
    return true;
}

ChanceJudge::ChanceJudge(const Car& now, const TargetLimits& limits)
    : now_(now), limits_(limits), normals_(drawNormals(TargetModel::kOutputs, kDraws)) {
    for (std::size_t figure = 0; figure < kTargetFigures; ++figure) {
        if (!limits[figure].isFree()) {
            target_.push_back(static_cast<TargetFigure>(figure));
        }
    }
}

bool ChanceJudge::isNeeded(std::size_t output) const {
    return std::ranges::any_of(target_, [output](TargetFigure figure) {
        switch (figure) {
            case TargetFigure::distance:
                return output == TargetModel::inverse;
            case TargetFigure::height:
                return output == TargetModel::inverse || output == TargetModel::slope;
            case TargetFigure::antiSquat:
                return output == TargetModel::antiSquat;
            case TargetFigure::change:
                return output == TargetModel::change;
            case TargetFigure::pinion:
                return output == TargetModel::pinion;
            default:
                return output >= TargetModel::joints;
        }
    });
}

double ChanceJudge::chanceOf(const Car& then, LengthTreatment treatment, const HoleUse& use,
                             double worstJoint) const {
    std::vector<CarInput> inputs = TargetModel::inputsOf(now_, then, use);
    TargetModel model(now_, then, treatment, use, inputs);
    Sensitivity sensitivity;
    differentiate(model, asInputs(inputs), sensitivity);
    if (!sensitivity.known) {
        return kNaN;
    }
    const std::vector<std::size_t> starts = uncertainStarts(inputs);
    for (std::size_t output = 0; output < TargetModel::kOutputs; ++output) {
        const auto row = static_cast<Eigen::Index>(output);
        if (!isNeeded(output)) {
            sensitivity.value[row] = 0;
            sensitivity.change.row(row).setZero();
        } else if (!std::isfinite(sensitivity.value[row]) || !sensitivity.change.row(row).allFinite() ||
                   !startsBehind(sensitivity, row, starts).empty()) {
            return kNaN;
        }
    }
    const bool isOne = target_.size() == 1 && target_.front() != TargetFigure::height &&
                       target_.front() != TargetFigure::joint;
    const double atEnds = sensitivity.value.tail<6>().maxCoeff();
    return isOne ? integrated(sensitivity, target_.front())
                 : drawn(sensitivity, std::isnan(worstJoint) ? 0.0 : std::max(0.0, worstJoint - atEnds));
}

double ChanceJudge::integrated(const Sensitivity& sensitivity, TargetFigure figure) const {
    Eigen::Index row = TargetModel::inverse;
    if (figure == TargetFigure::antiSquat) {
        row = TargetModel::antiSquat;
    } else if (figure == TargetFigure::change) {
        row = TargetModel::change;
    } else if (figure == TargetFigure::pinion) {
        row = TargetModel::pinion;
    }
    const TargetLimit& limit = limits_[static_cast<std::size_t>(figure)];
    const double deviation = sensitivity.uncertainty(row);
    const double mean = sensitivity.value[row];
    if (!(deviation > 0)) {
        return limit.outside(mean) > 0 ? 0.0 : 1.0;
    }
    return below(limit.high, mean, deviation) - below(limit.low, mean, deviation);
}

double ChanceJudge::drawn(const Sensitivity& sensitivity, double jointMore) const {
    const Eigen::MatrixXd factor = factorOf(covarianceOf(sensitivity));
    const Eigen::MatrixXd draws = product(factor, normals_).colwise() + sensitivity.value;
    int within = 0;
    for (Eigen::Index draw = 0; draw < draws.cols(); ++draw) {
        const auto y = draws.col(draw);
        const double inverse = y[TargetModel::inverse];
        const TargetFigures figures{inverse,
                                    inverse == 0 ? kNaN : y[TargetModel::slope] / inverse,
                                    y[TargetModel::antiSquat],
                                    y[TargetModel::change],
                                    y[TargetModel::pinion],
                                    y.tail<6>().maxCoeff() + jointMore};
        within += missSize(figures, limits_) == 0 ? 1 : 0;
    }
    return static_cast<double>(within) / kDraws;
}

}  // namespace bolthole
