#include "tests/outside/ceres_fit.h"

#include <ceres/ceres.h>

#include <map>

namespace bolthole {

namespace {

// Ceres differences over a share of a parameter's size: counted from here none comes near 0, and all steps
// are alike.
constexpr double kShift = 10;
constexpr double kStep = 0.02;  // in standard uncertainties; far below it a launch's own last digits show

// Every residual block asks for the same places: a launch each would be a waste.
class Predictions {
  public:
    explicit Predictions(const CeresFitProblem& problem) : problem_(problem) {}

    const Eigen::VectorXd& at(const double* unknowns) {
        const std::vector<double> key(unknowns, unknowns + problem_.unknowns);
        const auto found = known_.find(key);
        if (found != known_.end()) {
            return found->second;
        }
        const Eigen::VectorXd place =
            Eigen::Map<const Eigen::VectorXd>(key.data(), problem_.unknowns).array() - kShift;
        return known_.emplace(key, problem_.predict(place)).first->second;
    }

  private:
    const CeresFitProblem& problem_;
    std::map<std::vector<double>, Eigen::VectorXd> known_;
};

struct Measurement {
    Predictions* predictions;
    double measured;
    double deviation;
    Eigen::Index index;

    bool operator()(const double* const* unknowns, double* residual) const {
        *residual = (measured - predictions->at(unknowns[0])[index]) / deviation;
        return true;
    }
};

struct Prior {
    int index;

    template <typename T>
    bool operator()(const T* const* unknowns, T* residual) const {
        *residual = unknowns[0][index] - T(kShift);
        return true;
    }
};

}  // namespace

std::optional<Eigen::VectorXd> fitByCeres(const CeresFitProblem& fit) {
    Eigen::VectorXd unknowns = Eigen::VectorXd::Constant(fit.unknowns, kShift);
    Predictions predictions(fit);
    ceres::Problem problem;
    ceres::NumericDiffOptions difference;
    difference.relative_step_size = kStep / kShift;
    const auto count = static_cast<int>(fit.unknowns);
    for (std::size_t index = 0; index < fit.measured.size(); ++index) {
        auto* cost = new ceres::DynamicNumericDiffCostFunction<Measurement, ceres::CENTRAL>(
            new Measurement{&predictions, fit.measured[index], fit.deviation[index],
                            static_cast<Eigen::Index>(index)},
            ceres::TAKE_OWNERSHIP, difference);
        cost->AddParameterBlock(count);
        cost->SetNumResiduals(1);
        problem.AddResidualBlock(cost, new ceres::CauchyLoss(fit.lossWidth), unknowns.data());
    }
    for (int index = 0; index < count; ++index) {
        auto* cost = new ceres::DynamicAutoDiffCostFunction<Prior>(new Prior{index});
        cost->AddParameterBlock(count);
        cost->SetNumResiduals(1);
        problem.AddResidualBlock(cost, nullptr, unknowns.data());
    }
    ceres::Solver::Options options;
    options.linear_solver_type = ceres::DENSE_QR;
    options.logging_type = ceres::SILENT;
    options.max_num_iterations = 200;
    options.function_tolerance = 1e-12;
    options.gradient_tolerance = 1e-10;
    options.parameter_tolerance = 1e-10;
    ceres::Solver::Summary summary;
    ceres::Solve(options, &problem, &summary);
    return summary.termination_type == ceres::CONVERGENCE
               ? std::optional<Eigen::VectorXd>(unknowns.array() - kShift)
               : std::nullopt;
}

}  // namespace bolthole
