// Where everything on the wall chart goes: the frame of a sheet, the size of the cells, how many fit a sheet.
// All in mm, from the paintable area's upper left corner.
#pragma once

#include <QPointF>
#include <QRectF>
#include <QSizeF>
#include <vector>

#include "widgets/papers/kit/paper_frame.h"
#include "widgets/papers/wall_chart_words.h"

namespace bolthole {

/// What is the same on every sheet.
struct SheetFrame {
    explicit SheetFrame(const PaperFrame& of) : around(of), text(of.text()), strong(of.strong()) {}

    PaperFrame around;
    PrintType text;
    PrintType strong;
    std::vector<FactWords> facts;
    std::vector<QPointF> factPlaces;  ///< baselines of the labels
    QStringList treatment;
    double treatmentAt = 0;  ///< first baseline
    QRectF body;
};
[[nodiscard]] SheetFrame frameOf(QSizeF page, const PrintFonts& fonts, const ChartWords& words, Units units);

/// How a cell and the headings grow with the scale of the big figures. Lines of a cell from the top: the
/// strip with its marks, in a list the names of the holes, anti-squat, instant center, droop and bump,
/// lengths, problems.
class CellMeasure {
  public:
    CellMeasure(const PrintFonts& fonts, const ChartCombinations& chart, const ChartWords& words);

    /// The least cell at a scale. `stacked`: bump under droop, and the work at a rod under its length.
    [[nodiscard]] QSizeF cell(double scale, bool stacked) const;
    /// Width of the rows' headings, height of the columns'. A list has only its title.
    [[nodiscard]] double rowHeading(double scale) const;
    [[nodiscard]] double columnHeading(double scale) const;

    /// The parts a cell is built of, at a scale.
    [[nodiscard]] static double small(double scale);
    [[nodiscard]] static PrintType name(double scale);
    [[nodiscard]] static PrintType instantCenterType(double scale, const TextRun& run);
    /// Width of a bracket's word and its hole's name; the gap between two on a line; as many on a line of a
    /// column's heading as fit its width. All mm.
    [[nodiscard]] static double nameWidth(const HoleWords& hole, const PrintFonts& fonts, double scale);
    [[nodiscard]] static double nameGap(double scale) { return 3 * small(scale); }
    [[nodiscard]] static std::vector<std::vector<HoleWords>> linesOf(const std::vector<HoleWords>& names,
                                                                     const PrintFonts& fonts, double scale,
                                                                     double width);
    /// The title over the rows' headings, at a scale and the width they have there.
    [[nodiscard]] static QStringList rowTitle(const QString& title, const PrintFonts& fonts, double scale,
                                              double headingWidth);
    /// Width of the tag on the present combination.
    [[nodiscard]] static double nowTag(const PrintFonts& fonts, double scale);
    /// The problems of a cell `width` wide that don't fit the strip atop it and stand below the figures: all
    /// but the first, or all.
    [[nodiscard]] static QStringList problemsBelow(const CellWords& cell, bool isNow, const PrintFonts& fonts,
                                                   double scale, double width);
    [[nodiscard]] double strip(double scale) const { return hasStrip_ ? 4.6 * small(scale) : 0; }

    /// A hole's name wider than this in a heading, at scale 1, is cut short.
    static constexpr double kWidestHeading = 46;
    /// White above the lines of a cell at scale 1, and around them.
    static constexpr double kAboveNumber = 1.1;
    static constexpr double kAboveInstantCenter = 2.7;
    static constexpr double kAboveEnds = 2.5;
    static constexpr double kAboveSmall = 0.4;
    static constexpr double kBelow = 2.6;
    static constexpr double kBelowNames = 1.4;
    static constexpr double kPad = 2.0;
    static constexpr double kHeadingPad = 3.0;  ///< right of a row's heading
    /// Stacked cells set the percent sign at this part of the number's size.
    static constexpr double kSmallPercent = 0.6;

  private:
    void measureCell(const PrintFonts& fonts, const CellWords& cell);
    void measureHeadings(const PrintFonts& fonts, const ChartCombinations& chart, const ChartWords& words);
    void measureProblems(const PrintFonts& fonts, const ChartCombinations& chart, const ChartWords& words);

    bool isMatrix_;
    bool hasStrip_ = false;
    double number_ = 0;
    double percent_ = 0;
    double instantCenter_ = 0;
    double ends_ = 0;         // droop and bump beside each other
    double stackedEnds_ = 0;  // the wider of them
    double lengths_ = 0;
    double stackedLengths_ = 0;
    double names_ = 0;  // names of the holes, in a list
    int nameLines_ = 0;
    int lengthLines_ = 0;
    int problemLinesBeside_ = 0;
    int problemLinesStacked_ = 0;
    /// A bracket's word and its hole's name in a row's heading, at scale 1: the two don't shrink alike.
    struct NameWidth {
        double label = 0;
        double hole = 0;
    };
    std::vector<NameWidth> rowNames_;
    [[nodiscard]] double rowNames(double scale) const;

    double rowSmall_ = 0;
    int rowTitleLines_ = 0;
    int columnNameLines_ = 0;
    int columnSmallLines_ = 0;
};

/// One sheet: the key (side view and explanations), cells, or both.
struct ChartSheet {
    bool hasKey = false;
    int firstRow = 0;
    int rows = 0;  ///< 0: no cells here
    int firstColumn = 0;
    int columns = 0;
};

/// The arrangement chosen. In a list the cells run along the lines of a grid `across` wide, and `rows` counts
/// cells.
struct ChartLayout {
    double scale = 1;
    bool stacked = false;
    QRectF key;     ///< on sheets that have it
    QRectF matrix;  ///< headings and cells
    QSizeF cell;    ///< outer size, gaps not counted
    double gap = 1.4;
    double strip = 0;  ///< height of the strip for marks atop each cell
    double rowHeading = 0;
    double columnHeading = 0;
    int across = 1;
    int sheetsDown = 1;  ///< sheets with cells
    int sheetsAcross = 1;
    std::vector<ChartSheet> sheets;

    /// Where a cell of a sheet stands, counted from the sheet's first.
    [[nodiscard]] QRectF cellAt(int row, int column) const;
};

/// Height of what is written beside the side view, at a width; mm.
[[nodiscard]] double keyTextHeight(const SheetFrame& frame, const PrintFonts& fonts,
                                   const ChartCombinations& chart, const ChartWords& words, double width);

/// Chooses the arrangement: everything on one sheet if it fits at the least sizes, else a key sheet and as
/// few sheets of cells as the least sizes allow; then as large as the room allows.
[[nodiscard]] ChartLayout layOut(const SheetFrame& frame, const PrintFonts& fonts,
                                 const ChartCombinations& chart, const ChartWords& words);

}  // namespace bolthole
