// One step of the Dormand-Prince method of order 5(4), with its continuous solution of order 4.
//
// E. Hairer, S. P. Norsett, G. Wanner, "Solving Ordinary Differential Equations I", 2nd ed., Springer 1993,
// sec. II.4 and II.6, tables 5.2 and the coefficients of DOPRI5 (from memory).
#pragma once

#include <array>
#include <cmath>
#include <cstddef>

namespace bolthole {

/// Steps for `Size` numbers. Allocates nothing.
template <std::size_t Size>
class DormandPrince {
  public:
    using State = std::array<double, Size>;

    /// A step of `width` from `state` at `time`, whose rates are `rates`. `system(time, state, rates)` is
    /// called six times, the last time at the new state. Afterward newState(), newRates() and error() hold.
    template <class System>
    void step(double time, const State& state, const State& rates, double width, System&& system) {
        from_ = state;
        stages_[0] = rates;
        width_ = width;
        for (std::size_t stage = 1; stage < kStages; ++stage) {
            to_ = state;
            for (std::size_t before = 0; before < stage; ++before) {
                const double share = width * kShares[stage - 1][before];
                for (std::size_t index = 0; index < Size; ++index) {
                    to_[index] += share * stages_[before][index];
                }
            }
            system(time + kTimes[stage - 1] * width, to_, stages_[stage]);
        }
    }

    [[nodiscard]] const State& newState() const { return to_; }
    [[nodiscard]] const State& newRates() const { return stages_[kStages - 1]; }

    /// Root mean square of the estimated error, each number's over its `scale`. NaN where the step went
    /// astray.
    [[nodiscard]] double error(const State& scale) const {
        double sum = 0;
        for (std::size_t index = 0; index < Size; ++index) {
            double difference = 0;
            for (std::size_t stage = 0; stage < kStages; ++stage) {
                difference += kErrors[stage] * stages_[stage][index];
            }
            const double share = width_ * difference / scale[index];
            sum += share * share;
        }
        return std::sqrt(sum / Size);
    }

    /// Makes at() ready for the step just taken.
    void prepareDense() {
        for (std::size_t index = 0; index < Size; ++index) {
            const double change = to_[index] - from_[index];
            const double curvature = width_ * stages_[0][index] - change;
            double odd = 0;
            for (std::size_t stage = 0; stage < kStages; ++stage) {
                odd += kDense[stage] * stages_[stage][index];
            }
            dense_[0][index] = change;
            dense_[1][index] = curvature;
            dense_[2][index] = change - width_ * stages_[kStages - 1][index] - curvature;
            dense_[3][index] = width_ * odd;
        }
    }
    /// The solution within the step, `share` from 0 to 1.
    void at(double share, State& state) const {
        const double rest = 1 - share;
        for (std::size_t index = 0; index < Size; ++index) {
            state[index] =
                from_[index] +
                share * (dense_[0][index] +
                         rest * (dense_[1][index] + share * (dense_[2][index] + rest * dense_[3][index])));
        }
    }

  private:
    static constexpr std::size_t kStages = 7;
    static constexpr std::array<double, 6> kTimes{1.0 / 5, 3.0 / 10, 4.0 / 5, 8.0 / 9, 1, 1};
    static constexpr double kShares[6][6] = {
        {1.0 / 5},
        {3.0 / 40, 9.0 / 40},
        {44.0 / 45, -56.0 / 15, 32.0 / 9},
        {19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729},
        {9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656},
        {35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84}};
    static constexpr std::array<double, kStages> kErrors{
        71.0 / 57600, 0, -71.0 / 16695, 71.0 / 1920, -17253.0 / 339200, 22.0 / 525, -1.0 / 40};
    static constexpr std::array<double, kStages> kDense{
        -12715105075.0 / 11282082432,  0,
        87487479700.0 / 32700410799,   -10690763975.0 / 1880347072,
        701980252875.0 / 199316789632, -1453857185.0 / 822651844,
        69997945.0 / 29380423};

    State from_{};
    State to_{};
    std::array<State, kStages> stages_{};
    std::array<State, 4> dense_{};
    double width_ = 0;
};

}  // namespace bolthole
