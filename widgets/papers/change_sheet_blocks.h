// The blocks of a change sheet, made of its words: tables, lists to tick, ruled room to write.
#pragma once

#include <vector>

#include "widgets/papers/change_sheet_words.h"
#include "widgets/papers/kit/paper_text.h"

namespace bolthole {

/// Makes blocks for pages of a width, mm. The fonts must outlive the blocks.
class ChangeBlocks {
  public:
    ChangeBlocks(const PrintFonts& fonts, double width) : fonts_(fonts), width_(width) {}

    /// A section's heading, and a paragraph.
    [[nodiscard]] SheetBlock heading(const QString& words, const QString& aside = {}) const;
    [[nodiscard]] SheetBlock paragraph(const QString& words) const;
    /// A table with its heading; nothing where it has no rows.
    [[nodiscard]] std::vector<SheetBlock> table(const SheetTable& table) const;
    /// A box to tick, what, and what is expected.
    [[nodiscard]] std::vector<SheetBlock> checks(const std::vector<SheetCheck>& checks) const;
    /// The figures before and after at ride, bump and droop.
    [[nodiscard]] std::vector<SheetBlock> figures(const std::vector<FigureLine>& lines) const;
    /// A ruled row to write in: what, then boxes with a small caption each.
    [[nodiscard]] SheetBlock writingRow(const QString& what, const QStringList& captions) const;
    /// Ruled room for notes that takes what is left of the page.
    [[nodiscard]] SheetBlock notes(const QString& what) const;

  private:
    const PrintFonts& fonts_;
    double width_;
};

}  // namespace bolthole
