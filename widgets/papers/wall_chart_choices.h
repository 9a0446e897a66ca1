// The choices a wall chart shows: what is varied down and across, every choice computed, and where each rod's
// length is said.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "geometry/choices/choice_figures.h"

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

/// Lower choices go down (lower rods and ladder bars), upper choices across (upper rods and torque arms).
/// Where only one of them has holes to choose, there is no across: a list. Crosswise links take part only
/// where nothing else does.
struct ChartAxes {
    HoleAxis down;
    HoleAxis across;

    [[nodiscard]] bool isMatrix() const { return !across.brackets.empty(); }
};
[[nodiscard]] ChartAxes chartAxes(const Car& car);

/// Where a rod's length is said: once for all choices, at a row, at a column, or in every cell.
enum class LengthPlace { once, row, column, cell };

/// One rod of the car, or a mirrored pair, and how its length goes with the choice.
struct ChartRod {
    int link = 0;
    LengthPlace place = LengthPlace::once;
    bool changes = false;  ///< differs from what it is built to now, in some choice
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
/// Steps of a round width, five at most, over the choices that can be assembled: over all of them where they
/// are few, else from their tenth to their ninetieth hundredth, so that a few far out don't leave the rest
/// alike.
inline constexpr int kMostShades = 5;
[[nodiscard]] ShadeScale shadeScale(const std::vector<HoleChoice>& choices);

/// Everything computed for a chart.
struct ChartChoices {
    ChartAxes axes;
    int rows = 1;
    int columns = 1;
    std::vector<HoleChoice> choices;         ///< row by row
    std::optional<std::pair<int, int>> now;  ///< row and column of what the car is bolted to
    std::vector<ChartRod> rods;              ///< in the car's order
    ShadeScale shades;

    [[nodiscard]] const HoleChoice& at(int row, int column) const {
        return choices[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) +
                       static_cast<std::size_t>(column)];
    }
    [[nodiscard]] bool isNow(int row, int column) const { return now && *now == std::pair(row, column); }
    /// The first choice of a row, or of a column, that can be assembled; null: none.
    [[nodiscard]] const HoleChoice* inRow(int row) const;
    [[nodiscard]] const HoleChoice* inColumn(int column) const;
    [[nodiscard]] const HoleChoice* any() const;
};

/// Computes every choice. The car must have passed findFaults() and, for `uppers`, have an upper rod.
[[nodiscard]] ChartChoices computeChart(const Car& car, LengthTreatment lengths);

}  // namespace bolthole
