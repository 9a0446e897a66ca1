// Words and tables on papers. QTextDocument breaks the lines, sizes columns and rows, and draws them; a
// paper's blocks (paper_flow.h) carry them down its pages a row at a time, a table's head again atop each.
//
// What QTextDocument can't do, the papers do by hand: keep a heading on the page of what follows it, stretch
// a picture and ruled room to fill a page, begin a page only where that costs none (flowed()); boxes to write
// in that are true to size; the wall chart's cells, whose lines are spread over the room a cell has, on gray,
// beside hatching and tags; pictures, rulers and brackets, which are true to scale.
#pragma once

#include <QTextDocument>
#include <memory>
#include <vector>

#include "widgets/papers/kit/paper_flow.h"
#include "widgets/papers/kit/print_type.h"

class QTextTable;

namespace bolthole {

/// A column of a table.
struct TextColumn {
    Qt::Alignment align = Qt::AlignLeft;
    double share = 0;   ///< of the table's width; 0: as wide as its cells, and the widest give way
    double before = 0;  ///< white left of it, beside the gap that all have, mm
    bool isBold = false;
};

/// A cell of a table.
struct TextCell {
    TextCell(QString said)
        : words(std::move(said)) {}  // NOLINT(google-explicit-constructor): cells are words
    TextCell(QString said, bool bold, int columns = 1)
        : words(std::move(said)), isBold(bold), span(columns) {}

    QString words;
    bool isBold = false;  ///< whatever its column is
    int span = 1;         ///< columns it takes
    bool hasBox = false;  ///< a box to tick in its middle, instead of words
};
/// A cell with a box to tick, or with nothing.
[[nodiscard]] TextCell boxCell(bool hasBox = true);
using TextRow = std::vector<TextCell>;

/// A table, or a list.
struct TextTable {
    std::vector<TextColumn> columns;
    std::vector<TextRow> head;  ///< repeated where a page begins inside the table
    std::vector<TextRow> rows;
    PrintType type = kit_type::kText;
    PrintType headType = kit_type::kText;
    double pad = 0.9;      ///< above and below a row's lines, mm
    double gap = 4;        ///< between columns, mm, at least
    double moreGap = 6;    ///< at most this is added where there is room
    bool hasRules = true;  ///< under the head and between rows
    /// A cell says no more letters, so that no row is higher than a page for a name somebody could not stop
    /// typing.
    qsizetype mostLetters = 240;
};

/// Side of a box to tick in a table, mm.
inline constexpr double kTableBox = 3.4;

/// A table as it stands on paper. Lengths in mm.
class LaidTable {
  public:
    LaidTable(const TextTable& table, double width, const PrintFonts& fonts);

    [[nodiscard]] double height() const { return tops_.back(); }
    /// Paints as many rows as stand in a height.
    void paint(QPainter& painter, QPointF corner, double height) const;
    /// A block a row; the head is one, stands with what follows and is repeated.
    [[nodiscard]] static std::vector<SheetBlock> blocks(const TextTable& table, double width,
                                                        const PrintFonts& fonts);

  private:
    void fill(const TextTable& table, const PrintFonts& fonts);
    void fillCell(const TextTable& table, const PrintFonts& fonts, int row, int column, const TextCell& cell);
    void widenGaps(const TextTable& table);
    void measure(const TextTable& table);
    void paintRows(QPainter& painter, QPointF corner, std::size_t from, std::size_t to) const;

    struct Box {
        std::size_t row = 0;
        QPointF middle;
    };
    std::shared_ptr<QTextDocument> text_;  // in hundredths of a mm
    QTextTable* table_ = nullptr;
    double width_;
    std::size_t headRows_;
    bool hasRules_;
    std::vector<double> tops_;  // of the rows, and where the last one ends
    std::vector<Box> boxes_;    // to tick
};

/// A paragraph as wide as the page, broken where it must be.
[[nodiscard]] SheetBlock wordsBlock(const QString& words, PrintType type, double width,
                                    const PrintFonts& fonts);
/// A block that is a heading over a rule; it stands with what follows.
[[nodiscard]] SheetBlock headingBlock(const QString& words, const QString& aside, const PrintFonts& fonts);
/// Sentences in a thick frame.
[[nodiscard]] SheetBlock alertBlock(const QString& title, const QStringList& sentences, double width,
                                    const PrintFonts& fonts);

}  // namespace bolthole
