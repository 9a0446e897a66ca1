// The uncertainty of the figures of the axle in roll: first order, at every roll of the table.
#pragma once

#include <array>
#include <span>
#include <vector>

#include "geometry/kinematics/roll.h"
#include "geometry/uncertainty/propagation.h"
#include "geometry/uncertainty/varied_car.h"

namespace bolthole {

/// The figures of RollFigures that an uncertainty is computed of, in this order: pose.yaw (rad), pose.y (m),
/// center (m), steer (rad/rad).
enum class RollFigure : std::size_t { yaw, axleY, center, steer, count };
inline constexpr std::size_t kRollFigures = static_cast<std::size_t>(RollFigure::count);

/// The car as it is bolted, rolled at ride: kRollFigures numbers for each roll of a range.
class RollModel final : public MeasurementModel {
  public:
    /// The car must have passed findFaults().
    RollModel(const Car& car, std::span<const CarInput> inputs, const RollRange& range);

    [[nodiscard]] std::size_t outputs() const override {
        return static_cast<std::size_t>(range_.rows) * kRollFigures;
    }
    /// False where the car can't be assembled at ride or is not held in roll; a roll the links do not reach
    /// is NaN throughout.
    bool evaluate(std::span<const double> x, std::span<double> y) override;

  private:
    VariedCar varied_;
    RollRange range_;
    Car rolled_;  // the varied car with a sweep of the shortest: travel is not asked for
    RollTrace trace_;
};

/// The uncertainty of a car's figures in roll.
struct RollUncertainty {
    bool known = false;               ///< false: no figure exists, and the rest is empty
    std::vector<CarInput> inputs;     ///< what was varied
    Sensitivity sensitivity;          ///< kRollFigures rows for each roll, a column an input
    std::vector<std::size_t> starts;  ///< places of the inputs that nobody measured; see uncertainStarts()

    /// Standard uncertainty of a figure in row `row` of the range; NaN: not known, it does not exist, or
    /// rests on a number that nobody measured.
    [[nodiscard]] double of(int row, RollFigure figure) const;
};

/// The car must have passed findFaults().
[[nodiscard]] RollUncertainty computeRollUncertainty(const Car& car, const RollRange& range = {});

}  // namespace bolthole
