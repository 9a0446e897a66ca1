// How the uncertainty of what was measured reaches what is computed of it: first order with its second-order
// check (JCGM 100:2008, "Guide to the expression of uncertainty in measurement", cl. 5), and by drawing
// samples (JCGM 101:2008, Supplement 1 to it). Knows no car: any model of numbers from numbers.
#pragma once

#include <Eigen/Core>
#include <cstdint>
#include <functional>
#include <memory>
#include <span>
#include <vector>

namespace bolthole {

/// What an input's error is distributed like, its standard uncertainty given.
enum class Distribution {
    normal,
    rectangular,  ///< anything between two ends is as likely: a digital reading
    triangular    ///< the difference of two readings of one scale: a tape's two ends
};

/// One input: its estimate and standard uncertainty, both in its own unit.
struct UncertainInput {
    double value = 0;
    double uncertainty = 0;  ///< >= 0
    Distribution distribution = Distribution::normal;
};

/// Computes outputs from inputs. Keeps storage of its own, so each thread needs one of its own.
class MeasurementModel {
  public:
    MeasurementModel() = default;
    MeasurementModel(const MeasurementModel&) = delete;
    MeasurementModel& operator=(const MeasurementModel&) = delete;
    virtual ~MeasurementModel() = default;

    /// How many numbers evaluate() fills in.
    [[nodiscard]] virtual std::size_t outputs() const = 0;
    /// The outputs at inputs `x`. NaN: that one does not exist there. False: none does.
    virtual bool evaluate(std::span<const double> x, std::span<double> y) = 0;
};

/// What the outputs do when each input is off by its standard uncertainty, up and down. One row an output,
/// one column an input. NaN where the output did not exist on both sides.
struct Sensitivity {
    Eigen::VectorXd value;      ///< outputs at the estimates
    Eigen::MatrixXd change;     ///< half of f(x + u) - f(x - u): the sensitivity coefficient times u
    Eigen::MatrixXd curvature;  ///< f(x + u) + f(x - u) - 2 f(x): the second derivative times u squared
    bool known = false;         ///< false: the model has no value at the estimates; the rest is then empty

    /// Combined standard uncertainty of an output, inputs independent (JCGM 100, 5.1.2). NaN if not known.
    [[nodiscard]] double uncertainty(Eigen::Index output) const { return change.row(output).norm(); }
    /// How much of the variance of an output stems from an input, 0 to 1; NaN where nothing is uncertain.
    [[nodiscard]] double share(Eigen::Index output, Eigen::Index input) const;
    /// What the second derivatives by one input alone add to the variance, over it: large where a straight
    /// line does not do. From the terms of JCGM 100, 5.1.2, note. 0 where nothing is uncertain, NaN where
    /// uncertainty() is.
    [[nodiscard]] double nonlinearity(Eigen::Index output) const;
};

/// Differences with steps of the standard uncertainties themselves, as JCGM 100, 5.1.3, note 2, has it. Uses
/// the storage of `result` again. An input without uncertainty changes nothing.
void differentiate(MeasurementModel& model, std::span<const UncertainInput> inputs, Sensitivity& result);

/// Covariance matrix of the outputs, inputs independent: change times its transpose (JCGM 100, 5.1.2; for
/// several outputs JCGM 102:2011, 6.2, from memory).
[[nodiscard]] Eigen::MatrixXd covarianceOf(const Sensitivity& sensitivity);
/// The same where the inputs are correlated: `correlation` is symmetric, 1 on its diagonal (JCGM 100, 5.2.2).
[[nodiscard]] Eigen::MatrixXd covarianceOf(const Sensitivity& sensitivity,
                                           const Eigen::MatrixXd& correlation);

/// What the next terms of the series add to the variance of each output, inputs independent and normal: JCGM
/// 100, 5.1.2, note. Evaluates the model four times for each pair of inputs: not for a drag.
[[nodiscard]] Eigen::VectorXd nextOrderVariance(MeasurementModel& model,
                                                std::span<const UncertainInput> inputs);

/// How samples are drawn. The same seed gives the same samples, whatever the number of threads.
struct SamplePlan {
    std::size_t samples = 100'000;
    std::uint64_t seed = 1;
    int threads = 2;
    /// Asked now and then, from any thread; true: give up, and the samples stay incomplete.
    std::function<bool()> isCancelled{};
};

/// One row a sample, one column an output; NaN where an output did not exist.
using Samples = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic>;

/// Draws all inputs at random and evaluates the model (JCGM 101, cl. 7). `makeModel` is asked once a thread.
/// `correlation`, where given, makes the inputs jointly normal, whatever their own Spread (JCGM 101, 6.4.8,
/// from memory).
[[nodiscard]] Samples drawSamples(const std::function<std::unique_ptr<MeasurementModel>()>& makeModel,
                                  std::span<const UncertainInput> inputs, const SamplePlan& plan,
                                  const Eigen::MatrixXd& correlation = {});

/// What samples of one number come to.
struct Coverage {
    std::size_t used = 0;  ///< samples in which the number existed
    double mean = 0;
    double uncertainty = 0;  ///< standard deviation
    double low = 0;          ///< the probabilistically symmetric interval (JCGM 101, 7.7.2)
    double high = 0;
};
/// Of a column of samples, NaN left out. `probability`: 0 to 1. All zero where fewer than two exist. Reorders
/// `values`.
[[nodiscard]] Coverage coverageOf(std::vector<double>& values, double probability = 0.95);

/// Whether first order's interval, estimate +- kCoverage95 times u, agrees with the one drawn: both ends
/// within half a unit of the last place of u when u is given with `digits` significant digits (JCGM
/// 101, 7.9.2 and 8.1).
[[nodiscard]] bool firstOrderHolds(double estimate, double uncertainty, const Coverage& drawn,
                                   int digits = 1);

}  // namespace bolthole
