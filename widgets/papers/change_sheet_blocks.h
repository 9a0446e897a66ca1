// Makes the blocks of a change sheet: headings, tables, lists to tick, ruled room to write.
#pragma once

#include <vector>

#include "widgets/papers/change_sheet_flow.h"
#include "widgets/papers/change_sheet_words.h"
#include "widgets/papers/wall_chart_type.h"

namespace bolthole {

/// The types of a change sheet.
namespace sheet_type {
inline constexpr PrintType kText{digit_height::kText, false};
inline constexpr PrintType kStrong{digit_height::kText, true};
inline constexpr PrintType kHeading{3.1, true};
}  // namespace sheet_type

/// A pen for print: black, flat ends, never thinner than kThinnestLine (mm).
[[nodiscard]] QPen printPen(double width);
/// The same, dashed: what stands for the before.
[[nodiscard]] QPen dashedPrintPen(double width);

/// Makes blocks for pages of a width. The fonts must outlive the blocks.
class BlockMaker {
  public:
    BlockMaker(const PrintFonts& fonts, double width) : fonts_(fonts), width_(width) {}

    /// A section's heading with its rule; stands with what follows.
    [[nodiscard]] SheetBlock heading(const QString& title, const QString& aside = {}) const;
    [[nodiscard]] SheetBlock paragraph(const QString& text, PrintType type = sheet_type::kText) const;
    /// Sentences in a thick frame.
    [[nodiscard]] SheetBlock alert(const QString& title, const QStringList& sentences) const;
    /// A table with its heading, a block a row; nothing where it has no rows. Cells wider than their column
    /// are broken into up to three lines, then cut short.
    [[nodiscard]] std::vector<SheetBlock> table(const SheetTable& table) const;
    /// A box to tick, what, and what is expected, a block each.
    [[nodiscard]] std::vector<SheetBlock> checks(const std::vector<SheetCheck>& checks) const;
    /// The figures before and after at ride, bump and droop.
    [[nodiscard]] std::vector<SheetBlock> figures(const std::vector<FigureLine>& lines) const;
    /// A ruled row to write in: what, then boxes with a small caption each.
    [[nodiscard]] SheetBlock writingRow(const QString& what, const QStringList& captions,
                                        double height) const;
    /// Ruled room for notes that takes what is left of the page.
    [[nodiscard]] SheetBlock notes(const QString& what, double height) const;

  private:
    [[nodiscard]] SheetBlock line(double height,
                                  const std::function<void(QPainter&, const QRectF&)>& paint) const;

    const PrintFonts& fonts_;
    double width_;
};

}  // namespace bolthole
