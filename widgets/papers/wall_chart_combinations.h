// The combinations a wall chart shows: what is varied down and across, every combination computed, and where
// each rod's length is said.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "geometry/combinations/combination_figures.h"

namespace bolthole {

/// One bracket whose holes are varied, with the one on the other side that moves along.
struct ChartBracket {
    int link = 0;
    End end = End::chassis;
    int holes = 1;
    int tiedLink = -1;
};

/// What is varied in one direction of the chart; the last bracket turns fastest.
struct HoleAxis {
    std::vector<ChartBracket> brackets;

    [[nodiscard]] int count() const;
    /// The hole of bracket `place` in step `index`.
    [[nodiscard]] int hole(std::size_t place, int index) const;
    /// Bolts `use` as step `index` says.
    void apply(int index, HoleUse& use) const;
    /// Whether a link takes part, itself or tied.
    [[nodiscard]] bool varies(int link) const;
};

/// Lower combinations go down (lower rods and ladder bars), upper combinations across (upper rods and torque
/// arms). Where only one of them has holes to choose, there is no across: a list. Crosswise links take part
/// only where nothing else does.
struct ChartAxes {
    HoleAxis down;
    HoleAxis across;

    [[nodiscard]] bool isMatrix() const { return !across.brackets.empty(); }
};
[[nodiscard]] ChartAxes chartAxes(const Car& car);

/// Where a rod's length is said: once for all combinations, at a row, at a column, or in every cell.
enum class LengthPosition { once, row, column, cell };

/// One rod of the car, or a mirrored pair, and how its length goes with the combination.
struct ChartRod {
    int link = 0;
    LengthPosition place = LengthPosition::once;
    bool changes = false;  ///< differs from what it is built to now, in some combination
};

/// Gray steps by anti-squat: step i holds first + i * width up to less than first + (i + 1) * width, percent,
/// the lowest also what is below and the highest what is above where they are open.
struct ShadeScale {
    double first = 0;
    double width = 1;
    int steps = 1;
    bool isOpenBelow = false;
    bool isOpenAbove = false;

    /// The step of a figure, as rounded for print.
    [[nodiscard]] int stepOf(double antiSquat) const;
};
/// Steps of a round width, five at most, over the combinations that can be assembled: over all of them where
/// they are few, else from their tenth to their ninetieth hundredth, so that a few far out don't leave the
/// rest alike.
inline constexpr int kMostShades = 5;
[[nodiscard]] ShadeScale shadeScale(const std::vector<HoleCombination>& combinations);

/// Everything computed for a chart.
struct ChartCombinations {
    ChartAxes axes;
    int rows = 1;
    int columns = 1;
    std::vector<HoleCombination> combinations;  ///< row by row
    std::optional<std::pair<int, int>> now;     ///< row and column of what the car is bolted to
    std::vector<ChartRod> rods;                 ///< in the car's order
    ShadeScale shades;

    [[nodiscard]] const HoleCombination& at(int row, int column) const {
        return combinations[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) +
                            static_cast<std::size_t>(column)];
    }
    [[nodiscard]] bool isNow(int row, int column) const { return now && *now == std::pair(row, column); }
    /// The first combination of a row, or of a column, that can be assembled; null: none.
    [[nodiscard]] const HoleCombination* inRow(int row) const;
    [[nodiscard]] const HoleCombination* inColumn(int column) const;
    [[nodiscard]] const HoleCombination* any() const;
};

/// Computes every combination. The car must have passed findFaults() and, for `uppers`, have an upper rod.
[[nodiscard]] ChartCombinations computeChart(const Car& car, LengthTreatment lengths);

}  // namespace bolthole
