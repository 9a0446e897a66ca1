// A car as a model of its figures: measured numbers in, figures at some travels out.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <vector>

#include "geometry/combinations/hole_combination.h"
#include "geometry/kinematics/trace.h"
#include "geometry/uncertainty/propagation.h"
#include "geometry/uncertainty/uncertain_inputs.h"
#include "geometry/uncertainty/varied_car.h"

namespace bolthole {

/// The numbers the model gives for each travel: every Figure in its order, then 1/distance of the instant
/// center, 1/m, ahead of the rear contact patch +, 0 where it is infinitely far. 1/distance is what first
/// order holds for: it runs smoothly through infinity, which the distance does not.
inline constexpr std::size_t kModelFigures = kFigureCount + 1;
inline constexpr std::size_t kInverseDistance = kFigureCount;
using ModelRow = std::array<double, kModelFigures>;
/// Where a figure at one of the model's travels stands among its outputs.
[[nodiscard]] inline Eigen::Index rowOf(std::size_t place, std::size_t figure) {
    return static_cast<Eigen::Index>(place * kModelFigures + figure);
}

/// The car bolted to one combination of holes. The estimates of its inputs are the numbers in the car; an
/// input that is changed changes all that was set to fit it: unwritten lengths, and those `treatment` sets.
class CarModel final : public MeasurementModel {
  public:
    /// `travels`: m, any order; steps between neighbours should be such as the solver follows (an inch or
    /// two). The car must have passed findFaults() and, for `uppers`, have an upper rod. Solves the car at
    /// the estimates: all that is varied is solved from there, so that evaluate() gives the same whatever it
    /// was asked before. Where y and yaw are held by mirror symmetry alone, it is kept; see
    /// VariedCar::keepSymmetric().
    CarModel(const Car& car, LengthTreatment treatment, const HoleUse& use, std::span<const CarInput> inputs,
             std::vector<double> travels);

    [[nodiscard]] std::size_t outputs() const override { return travels_.size() * kModelFigures; }
    /// False where the car can't be assembled at ride; a travel the links do not reach is NaN throughout.
    bool evaluate(std::span<const double> x, std::span<double> y) override;

    /// The last travel evaluated, with all its figures.
    [[nodiscard]] const Station& station() const { return station_; }

  private:
    bool solveNearby(std::span<double> y);
    bool followAll(std::span<double> y, bool isFirst);
    void follow(AxleSolver solver, const FigureReader& reader, std::size_t begin, std::size_t end,
                std::span<double> y, bool isFirst);
    void readRow(const AxleSolver& solver, const FigureReader& reader, std::size_t index,
                 std::span<double> y);

    VariedCar varied_;
    std::vector<std::size_t> order_;  // of the travels: droop outward, then ride and bump outward
    std::size_t firstUp_ = 0;         // where the second of these begins
    std::vector<double> travels_;
    Station station_;
    /// The solver at each travel, then at ride, at the estimates: what is varied stands close by. Nothing at
    /// a travel out of reach; empty where the car can't be assembled.
    std::vector<std::optional<AxleSolver>> nominal_;
};

}  // namespace bolthole
