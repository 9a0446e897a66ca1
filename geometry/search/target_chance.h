// How likely a car with what was measured of it really meets the target.
#pragma once

#include <Eigen/Core>
#include <memory>
#include <vector>

#include "geometry/search/target_figures.h"
#include "geometry/uncertainty/car_model.h"

namespace bolthole {

/// The car with a driveline of no consequence where it has none, so that the housing's attitude has a figure:
/// Figure::pinion. Its joints mean nothing then.
[[nodiscard]] Car withPinion(const Car& car);

/// The numbers that the target depends on, from the measured numbers of a car: 1/distance of the instant
/// center, slope of the swing arm, anti-squat, its change through travel, the pinion's change against now,
/// and both joints at ride, full droop and full bump. First order holds for these; the instant center's
/// height is the slope over 1/distance.
class TargetModel final : public MeasurementModel {
  public:
    enum Output { inverse, slope, antiSquat, change, pinion, joints };
    static constexpr std::size_t kOutputs = joints + 6;

    /// `now`: the car as it stands; `then`: the same with another hole or length, bolted to `use` under
    /// `treatment`. `inputs`: of both, as inputsOf() lists them, with the numbers of `then`.
    TargetModel(const Car& now, const Car& then, LengthTreatment treatment, const HoleUse& use,
                std::vector<CarInput> inputs);

    [[nodiscard]] static std::vector<CarInput> inputsOf(const Car& now, const Car& then, const HoleUse& use);
    [[nodiscard]] std::size_t outputs() const override { return kOutputs; }
    bool evaluate(std::span<const double> x, std::span<double> y) override;

  private:
    CarModel then_;
    CarModel now_;
    std::vector<double> thenRows_;
    std::vector<double> nowRows_;
    std::vector<double> nowInputs_;
    std::vector<double> offsets_;  // what an input was now, less what it is then
};

/// Judges one set of limits: first order's covariance of the outputs above (JCGM 100:2008, 5.1.2), their
/// joint normal distribution drawn with a fixed seed, or integrated where one linear figure alone is wanted.
/// The same for any thread.
class ChanceJudge {
  public:
    /// `now`: the car as it stands; it must have passed findFaults().
    ChanceJudge(const Car& now, const TargetLimits& limits);

    /// The chance that `then`, bolted so, lies within all limits, 0 to 1; NaN where it is not known.
    /// `worstJoint`: the largest joint angle over the whole travel, which may be more than at its ends.
    [[nodiscard]] double chanceOf(const Car& then, LengthTreatment treatment, const HoleUse& use,
                                  double worstJoint) const;

    static constexpr int kDraws = 4000;

  private:
    [[nodiscard]] double drawn(const Sensitivity& sensitivity, double jointMore) const;
    [[nodiscard]] double integrated(const Sensitivity& sensitivity, TargetFigure figure) const;
    [[nodiscard]] bool isNeeded(std::size_t output) const;

    Car now_;
    TargetLimits limits_;
    std::vector<TargetFigure> target_;  // what is not free
    Eigen::MatrixXd normals_;           // a column a draw
};

}  // namespace bolthole
