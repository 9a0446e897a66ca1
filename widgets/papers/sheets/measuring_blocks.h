// The blocks of a measuring sheet: tables with two boxes a number, single numbers, limits.
#pragma once

#include <vector>

#include "widgets/papers/kit/paper_flow.h"
#include "widgets/papers/kit/print_type.h"
#include "widgets/papers/sheets/measuring_plan.h"

namespace bolthole {

/// The blocks of an area, and which of them are rows of numbered points.
struct MeasuredBlocks {
    std::vector<SheetBlock> blocks;
    std::vector<int> numbers;  ///< a block's point or wheel; 0: it is no row

    /// The number of one of these blocks; 0 also for any other.
    [[nodiscard]] int numberOf(const SheetBlock* block) const;
};

/// Makes them for pages of a width, mm. The fonts must outlive the blocks.
class MeasuringBlocks {
  public:
    MeasuringBlocks(const PrintFonts& fonts, double width, Units units)
        : fonts_(fonts), width_(width), units_(units) {}

    [[nodiscard]] MeasuredBlocks of(const PlanArea& area) const;
    /// The rows for more holes of its brackets, which stand on a page of their own; the area must have some.
    [[nodiscard]] MeasuredBlocks ofMoreHoles(const PlanArea& area) const;

  private:
    void addTable(const PlanTable& table, MeasuredBlocks& made) const;
    [[nodiscard]] SheetBlock tableHead(const PlanTable& table) const;
    [[nodiscard]] SheetBlock tableRow(const PlanRow& row) const;
    [[nodiscard]] SheetBlock numberLine(const std::vector<PlanNumber>& numbers) const;
    [[nodiscard]] SheetBlock limitLine(const PlanLimits& limits) const;
    [[nodiscard]] QString withUnitOf(const QString& words, const FieldId& id) const;

    const PrintFonts& fonts_;
    double width_;
    Units units_;
};

}  // namespace bolthole
