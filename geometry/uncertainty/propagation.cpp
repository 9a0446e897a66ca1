#include "geometry/uncertainty/propagation.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>

#include "geometry/algebra/dense.h"
#include "geometry/units/parallel.h"
#include "geometry/units/uncertainty_text.h"
#include "geometry/units/units.h"

namespace bolthole {

namespace {

std::span<double> spanOf(Eigen::VectorXd& values) {
    return {values.data(), static_cast<std::size_t>(values.size())};
}

/// Outputs at shifted inputs; all NaN where the model has none.
class Prober {
  public:
    Prober(MeasurementModel& model, std::span<const UncertainInput> inputs)
        : model_(model), inputs_(inputs), x_(inputs.size()) {
        std::ranges::transform(inputs, x_.begin(), [](const UncertainInput& input) { return input.value; });
    }

    /// Shifts input `index` by `steps` of its uncertainty until it is shifted back.
    void shift(std::size_t index, double steps) {
        x_[index] = inputs_[index].value + steps * inputs_[index].uncertainty;
    }
    bool probe(Eigen::VectorXd& y) {
        y.resize(static_cast<Eigen::Index>(model_.outputs()));
        const bool exists = model_.evaluate(x_, spanOf(y));
        if (!exists) {
            y.setConstant(kNaN);
        }
        return exists;
    }
    /// With one or two inputs shifted.
    Eigen::VectorXd at(std::size_t one, double steps, std::size_t other, double otherSteps) {
        Eigen::VectorXd y;
        shift(one, steps);
        shift(other, one == other ? steps + otherSteps : otherSteps);
        probe(y);
        shift(one, 0);
        shift(other, 0);
        return y;
    }

  private:
    MeasurementModel& model_;
    std::span<const UncertainInput> inputs_;
    std::vector<double> x_;
};

}  // namespace

double Sensitivity::share(Eigen::Index output, Eigen::Index input) const {
    const double variance = change.row(output).squaredNorm();
    return variance > 0 ? change(output, input) * change(output, input) / variance : kNaN;
}

double Sensitivity::nonlinearity(Eigen::Index output) const {
    const double variance = change.row(output).squaredNorm();
    return variance == 0 ? 0.0 : 0.5 * curvature.row(output).squaredNorm() / variance;
}

void differentiate(MeasurementModel& model, std::span<const UncertainInput> inputs, Sensitivity& result) {
    const auto rows = static_cast<Eigen::Index>(model.outputs());
    const auto columns = static_cast<Eigen::Index>(inputs.size());
    Prober prober(model, inputs);
    result.known = prober.probe(result.value);
    result.change.setZero(rows, columns);
    result.curvature.setZero(rows, columns);
    Eigen::VectorXd up;
    Eigen::VectorXd down;
    for (Eigen::Index column = 0; result.known && column < columns; ++column) {
        const auto input = static_cast<std::size_t>(column);
        if (!(inputs[input].uncertainty > 0)) {
            continue;
        }
        prober.shift(input, +1);
        prober.probe(up);
        prober.shift(input, -1);
        prober.probe(down);
        prober.shift(input, 0);
        result.change.col(column) = (up - down) / 2;
        result.curvature.col(column) = up + down - 2 * result.value;
    }
}

Eigen::MatrixXd covarianceOf(const Sensitivity& sensitivity) {
    return product(sensitivity.change, sensitivity.change.transpose());
}

Eigen::MatrixXd covarianceOf(const Sensitivity& sensitivity, const Eigen::MatrixXd& correlation) {
    return product(product(sensitivity.change, correlation), sensitivity.change.transpose());
}

// With H the second and T the third derivatives by x_i and x_j, times their uncertainties, the note's terms
// are H^2/2 + c_i T_ijj, summed over all pairs. All stem from four corners.
Eigen::VectorXd nextOrderVariance(MeasurementModel& model, std::span<const UncertainInput> inputs) {
    Sensitivity first;
    differentiate(model, inputs, first);
    Prober prober(model, inputs);
    Eigen::VectorXd added = Eigen::VectorXd::Zero(first.value.size());
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const Eigen::VectorXd slope = first.change.col(static_cast<Eigen::Index>(i));
        for (std::size_t j = 0; j < inputs.size(); ++j) {
            const Eigen::VectorXd corner = prober.at(i, 1, j, 1);
            const Eigen::VectorXd opposite = prober.at(i, -1, j, -1);
            Eigen::VectorXd second;
            Eigen::VectorXd third;
            if (i == j) {
                second = first.curvature.col(static_cast<Eigen::Index>(i));
                third = (corner - opposite) / 2 - 2 * slope;
            } else {
                const Eigen::VectorXd plus = prober.at(i, 1, j, -1);
                const Eigen::VectorXd minus = prober.at(i, -1, j, 1);
                second = (corner + opposite - plus - minus) / 4;
                third = (corner - minus + plus - opposite) / 2 - 2 * slope;
            }
            added.array() += 0.5 * second.array().square() + slope.array() * third.array();
        }
    }
    return added;
}

namespace {

/// Random numbers that are the same on every machine; the library's own distributions are not.
class Draw {
  public:
    explicit Draw(std::uint64_t seed) : engine_(seed) {}

    /// Above 0 and below 1.
    double uniform() {
        constexpr double kUnit = 1.0 / 9007199254740992.0;  // 2^-53
        return (static_cast<double>(engine_() >> 11U) + 0.5) * kUnit;
    }
    // Box and Muller's pair, the second kept for the next call.
    double normal() {
        if (hasSpare_) {
            hasSpare_ = false;
            return spare_;
        }
        const double radius = std::sqrt(-2 * std::log(uniform()));
        const double angle = 2 * std::numbers::pi * uniform();
        spare_ = radius * std::sin(angle);
        hasSpare_ = true;
        return radius * std::cos(angle);
    }
    /// Of mean 0 and standard deviation 1 (half widths: JCGM 100, 4.3.7 and 4.3.9).
    double standard(Distribution distribution) {
        switch (distribution) {
            case Distribution::rectangular:
                return std::numbers::sqrt3 * (2 * uniform() - 1);
            case Distribution::triangular:
                return std::numbers::sqrt2 * std::numbers::sqrt3 * (uniform() - uniform());
            case Distribution::normal:
                break;
        }
        return normal();
    }

  private:
    std::mt19937_64 engine_;
    double spare_ = 0;
    bool hasSpare_ = false;
};

/// Draws block after block of samples. Each block has a generator of its own, so that it does not matter
/// which thread draws it.
class Sampler {
  public:
    Sampler(std::span<const UncertainInput> inputs, const SamplePlan& plan,
            const Eigen::MatrixXd& correlation, Samples& samples)
        : inputs_(inputs), plan_(plan), samples_(samples) {
        if (correlation.size() > 0) {
            factor_ = factorOf(correlation);
        }
    }

    void work(MeasurementModel& model) {
        const std::size_t blocks = (plan_.samples + kBlock - 1) / kBlock;
        for (std::size_t block = next_++; block < blocks; block = next_++) {
            if (plan_.isCancelled && plan_.isCancelled()) {
                return;
            }
            drawBlock(block, model);
        }
    }

  private:
    static constexpr std::size_t kBlock = 1024;

    [[nodiscard]] bool isJoint() const { return factor_.size() > 0; }
    // Jointly normal inputs are mixed of normal errors, one a mode: none of these may be left out.
    [[nodiscard]] double drawOne(Draw& draw, const UncertainInput& input) const {
        if (isJoint()) {
            return draw.normal();
        }
        return input.uncertainty > 0 ? draw.standard(input.distribution) : 0.0;
    }

    void drawBlock(std::size_t block, MeasurementModel& model) {
        Draw draw(plan_.seed * 0x9E3779B97F4A7C15U + block);
        Eigen::VectorXd errors(static_cast<Eigen::Index>(inputs_.size()));
        std::vector<double> x(inputs_.size());
        Eigen::VectorXd y(samples_.cols());
        const std::size_t end = std::min(plan_.samples, (block + 1) * kBlock);
        for (std::size_t sample = block * kBlock; sample < end; ++sample) {
            for (std::size_t input = 0; input < inputs_.size(); ++input) {
                errors[static_cast<Eigen::Index>(input)] = drawOne(draw, inputs_[input]);
            }
            if (isJoint()) {
                errors = factor_ * errors;
            }
            for (std::size_t input = 0; input < inputs_.size(); ++input) {
                x[input] = inputs_[input].value +
                           inputs_[input].uncertainty * errors[static_cast<Eigen::Index>(input)];
            }
            if (model.evaluate(x, spanOf(y))) {
                samples_.row(static_cast<Eigen::Index>(sample)) = y;
            }
        }
    }

    std::span<const UncertainInput> inputs_;
    const SamplePlan& plan_;
    Samples& samples_;
    Eigen::MatrixXd factor_;
    std::atomic<std::size_t> next_ = 0;
};

}  // namespace

Samples drawSamples(const std::function<std::unique_ptr<MeasurementModel>()>& makeModel,
                    std::span<const UncertainInput> inputs, const SamplePlan& plan,
                    const Eigen::MatrixXd& correlation) {
    std::vector<std::unique_ptr<MeasurementModel>> models;
    for (int thread = 0; thread < std::max(1, plan.threads); ++thread) {
        models.push_back(makeModel());
    }
    Samples samples = Samples::Constant(static_cast<Eigen::Index>(plan.samples),
                                        static_cast<Eigen::Index>(models.front()->outputs()), kNaN);
    Sampler sampler(inputs, plan, correlation, samples);
    std::atomic<std::size_t> next = 0;
    inParallel(static_cast<int>(models.size()), [&] { sampler.work(*models[next++]); });
    return samples;
}

Coverage coverageOf(std::vector<double>& values, double probability) {
    std::erase_if(values, [](double value) { return std::isnan(value); });
    Coverage coverage;
    coverage.used = values.size();
    if (values.size() < 2) {
        return coverage;
    }
    const double count = static_cast<double>(values.size());
    double sum = 0;
    for (const double value : values) {
        sum += value;
    }
    coverage.mean = sum / count;
    double squares = 0;
    for (const double value : values) {
        squares += (value - coverage.mean) * (value - coverage.mean);
    }
    coverage.uncertainty = std::sqrt(squares / (count - 1));
    // q of them lie within, and r is the place of the lower end, counted from 1.
    const auto within = static_cast<std::ptrdiff_t>(std::floor(probability * count + 0.5));
    const auto beyond = static_cast<std::ptrdiff_t>(values.size()) - within;
    const std::ptrdiff_t lower = std::max<std::ptrdiff_t>((beyond + 1) / 2, 1) - 1;
    const std::ptrdiff_t upper = std::min(lower + within, static_cast<std::ptrdiff_t>(values.size()) - 1);
    std::nth_element(values.begin(), values.begin() + lower, values.end());
    coverage.low = values[static_cast<std::size_t>(lower)];
    std::nth_element(values.begin() + lower, values.begin() + upper, values.end());
    coverage.high = values[static_cast<std::size_t>(upper)];
    return coverage;
}

bool firstOrderHolds(double estimate, double uncertainty, const Coverage& drawn, int digits) {
    if (!(uncertainty > 0) || !std::isfinite(estimate) || drawn.used < 2) {
        return false;
    }
    const double lastPlace = std::floor(std::log10(uncertainty)) - (digits - 1);
    const double tolerance = 0.5 * std::pow(10.0, lastPlace);
    const double reach = kCoverage95 * uncertainty;
    return std::abs(estimate - reach - drawn.low) <= tolerance &&
           std::abs(estimate + reach - drawn.high) <= tolerance;
}

}  // namespace bolthole
