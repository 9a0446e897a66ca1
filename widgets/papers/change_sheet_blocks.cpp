#include "widgets/papers/change_sheet_blocks.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace bolthole {

namespace {

using sheet_type::kHeading;
using sheet_type::kStrong;
using sheet_type::kText;

constexpr double kSectionGap = 4.5;  // mm, above a heading
constexpr double kRowPad = 1.1;      // above and below a row's lines
constexpr double kTightPad = 0.75;   // the same in long lists
constexpr double kColumnGap = 4.0;
constexpr double kBox = 3.4;        // a box to tick
constexpr double kTickColumn = 11;  // a box a side
constexpr int kMostLines = 3;       // in a cell
constexpr double kWhat = 40;        // of a row to write in
constexpr double kWritingLine = 9;

// Where the first baseline of a row's lines is, from its top; and the height of so many lines.
double baseline(double pad = kRowPad) {
    return pad + 1.35 * kText.digits;
}
double rowHeight(qsizetype lines, double pad = kRowPad) {
    return baseline(pad) + static_cast<double>(lines - 1) * kText.leading() + kText.descent() + pad;
}

void rule(QPainter& painter, double y, double left, double right, double width) {
    painter.setPen(printPen(width));
    painter.drawLine(QPointF(left, y), QPointF(right, y));
}

// Between rows: lighter than what frames them.
void rowRule(QPainter& painter, const QRectF& box) {
    painter.setPen(QPen(QColor(125, 125, 125), kThinnestLine, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(box.bottomLeft(), box.bottomRight());
}

void drawBox(QPainter& painter, double middle, double base) {
    painter.setPen(QPen(Qt::black, 0.35, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(middle - kBox / 2, base - kText.digits / 2 - kBox / 2, kBox, kBox));
}

QStringList cellLines(const PrintFonts& fonts, const QString& text, PrintType type, double width) {
    QStringList lines = fonts.wrapped(text, type, width);
    if (lines.size() > kMostLines) {
        lines = lines.mid(0, kMostLines);
        lines.back() = fonts.elided(lines.back() + QStringLiteral(" …"), type, width);
    }
    return lines.isEmpty() ? QStringList{QString()} : lines;
}

/// The columns of a table on paper.
struct Columns {
    std::vector<double> left;
    std::vector<double> width;
    std::vector<bool> isRight;
    std::vector<bool> isBold;
    double ticks = 0;  // width of the boxes' columns
    bool twoTicks = false;

    [[nodiscard]] PrintType type(std::size_t column) const { return isBold[column] ? kStrong : kText; }
};

bool holds(const std::vector<int>& columns, std::size_t column) {
    return std::ranges::find(columns, static_cast<int>(column)) != columns.end();
}

// As wide as their cells; where that is too much the widest give way.
Columns columnsOf(const SheetTable& table, const PrintFonts& fonts, double room) {
    Columns columns;
    columns.twoTicks =
        std::ranges::any_of(table.rows, [](const SheetRow& row) { return row.ticks > Ticks::one; });
    columns.ticks = !table.hasTicks() ? 0 : columns.twoTicks ? 2 * kTickColumn + 2 : kBox + kColumnGap;
    const auto count = static_cast<std::size_t>(table.columns.size());
    for (std::size_t column = 0; column < count; ++column) {
        columns.isRight.push_back(holds(table.rightColumns, column));
        columns.isBold.push_back(holds(table.boldColumns, column));
        double width = fonts.width(table.columns[static_cast<qsizetype>(column)], kText);
        for (const SheetRow& row : table.rows) {
            width =
                std::max(width, fonts.width(row.cells[static_cast<qsizetype>(column)], columns.type(column)));
        }
        columns.width.push_back(width + 0.1);
    }
    double free = room - columns.ticks - static_cast<double>(count - 1) * kColumnGap -
                  std::accumulate(columns.width.begin(), columns.width.end(), 0.0);
    for (; free < 0; free += 1) {
        *std::ranges::max_element(columns.width) -= 1;
    }
    const double gap = kColumnGap + std::min(6.0, free / static_cast<double>(count));
    double x = columns.ticks;
    for (const double width : columns.width) {
        columns.left.push_back(x);
        x += width + gap;
    }
    return columns;
}

void drawTicks(QPainter& painter, const Columns& columns, Ticks ticks, double base) {
    const double left = kTickColumn / 2;
    const double right = 1.5 * kTickColumn;
    if (ticks == Ticks::one) {
        drawBox(painter, columns.twoTicks ? kTickColumn : kBox / 2 + 0.2, base);
    }
    if (ticks == Ticks::left || ticks == Ticks::both) {
        drawBox(painter, left, base);
    }
    if (ticks == Ticks::right || ticks == Ticks::both) {
        drawBox(painter, right, base);
    }
}

void drawCell(QPainter& painter, const PrintFonts& fonts, const Columns& columns, std::size_t column,
              double base, const QStringList& lines, PrintType type) {
    const bool isRight = columns.isRight[column];
    const double x = columns.left[column] + (isRight ? columns.width[column] : 0);
    painter.setPen(Qt::black);
    fonts.draw(painter, {x, base}, lines, type, isRight ? Qt::AlignRight : Qt::AlignLeft);
}

SheetBlock tableHead(const SheetTable& table, const Columns& columns, const PrintFonts& fonts) {
    SheetBlock head;
    head.height = baseline() + kText.descent() + 1.0;
    head.keepNext = true;
    head.paint = [columns, names = table.columns, &fonts](QPainter& painter, const QRectF& box) {
        const double base = box.top() + baseline() - 0.4;
        for (std::size_t column = 0; column < columns.left.size(); ++column) {
            const QString& name = names[static_cast<qsizetype>(column)];
            drawCell(painter, fonts, columns, column, base,
                     {fonts.elided(name, kText, columns.width[column])}, kText);
        }
        if (columns.twoTicks) {
            fonts.draw(painter, {kTickColumn / 2, base}, QStringLiteral("left"), kText, Qt::AlignHCenter);
            fonts.draw(painter, {1.5 * kTickColumn, base}, QStringLiteral("right"), kText, Qt::AlignHCenter);
        }
        rule(painter, box.bottom(), 0, box.width(), 0.25);
    };
    return head;
}

SheetBlock tableRow(const SheetRow& row, const Columns& columns, const PrintFonts& fonts) {
    std::vector<QStringList> cells;
    qsizetype most = 1;
    for (std::size_t column = 0; column < columns.left.size(); ++column) {
        cells.push_back(cellLines(fonts, row.cells[static_cast<qsizetype>(column)], columns.type(column),
                                  columns.width[column]));
        most = std::max(most, cells.back().size());
    }
    SheetBlock block;
    block.height = rowHeight(most);
    block.paint = [columns, cells, ticks = row.ticks, &fonts](QPainter& painter, const QRectF& box) {
        const double base = box.top() + baseline();
        for (std::size_t column = 0; column < cells.size(); ++column) {
            drawCell(painter, fonts, columns, column, base, cells[column], columns.type(column));
        }
        drawTicks(painter, columns, ticks, base);
        rowRule(painter, box);
    };
    return block;
}

/// Columns of the figures: the name, then three times before, after, change.
struct FigureColumns {
    double name = 0;
    std::array<std::array<double, 3>, 3> right{};  // edges
    std::array<double, 3> left{};                  // of each place
};

FigureColumns figureColumns(const std::vector<FigureLine>& lines, const PrintFonts& fonts, double width) {
    FigureColumns columns;
    constexpr std::array<const char*, 3> kHeads{"before", "after", "change"};
    std::array<std::array<double, 3>, 3> widths{};
    double all = 0;
    for (std::size_t place = 0; place < 3; ++place) {
        for (std::size_t cell = 0; cell < 3; ++cell) {
            double& widest = widths[place][cell];
            widest = fonts.width(QString::fromLatin1(kHeads[cell]), kText);
            for (const FigureLine& line : lines) {
                widest = std::max(widest, fonts.width(line.cells[place][cell], kStrong));
            }
            all += widest;
        }
    }
    double name = 0;
    for (const FigureLine& line : lines) {
        name = std::max(name, fonts.width(line.name, kText));
    }
    // Names give way where numbers are long; between places there is twice the room there is between cells.
    columns.name = std::min(name + 0.1, width - all - 9 * 2.0);
    const double gap = std::min(5.0, (width - columns.name - all) / 12);
    double x = columns.name;
    for (std::size_t place = 0; place < 3; ++place) {
        x += gap;
        columns.left[place] = x + gap;
        for (std::size_t cell = 0; cell < 3; ++cell) {
            x += gap + widths[place][cell];
            columns.right[place][cell] = x;
        }
    }
    return columns;
}

}  // namespace

QPen printPen(double width) {
    return {Qt::black, std::max(width, kThinnestLine), Qt::SolidLine, Qt::FlatCap};
}

QPen dashedPrintPen(double width) {
    QPen pen = printPen(width);
    pen.setDashPattern({1.8 / pen.widthF(), 1.1 / pen.widthF()});
    return pen;
}

SheetBlock BlockMaker::line(double height, const std::function<void(QPainter&, const QRectF&)>& paint) const {
    SheetBlock block;
    block.height = height;
    block.paint = paint;
    return block;
}

SheetBlock BlockMaker::heading(const QString& title, const QString& aside) const {
    const double used = fonts_.width(title, kHeading) + 4;
    const QString beside = fonts_.elided(aside, kText, width_ - used);
    SheetBlock block =
        line(1.9 * kHeading.digits, [=, &fonts = fonts_](QPainter& painter, const QRectF& box) {
            const double base = box.bottom() - 0.65 * kHeading.digits;
            painter.setPen(Qt::black);
            fonts.draw(painter, {0, base}, title, kHeading);
            fonts.draw(painter, {used, base}, beside, kText);
            rule(painter, box.bottom(), 0, box.width(), 0.5);
        });
    block.above = kSectionGap;
    block.keepNext = true;
    return block;
}

SheetBlock BlockMaker::paragraph(const QString& text, PrintType type) const {
    const QStringList lines = fonts_.wrapped(text, type, width_);
    const double height = static_cast<double>(lines.size() - 1) * type.leading() + 2.2 * type.digits;
    SheetBlock block = line(height, [=, &fonts = fonts_](QPainter& painter, const QRectF& box) {
        painter.setPen(Qt::black);
        fonts.draw(painter, {0, box.top() + 1.4 * type.digits}, lines, type);
    });
    block.above = 0.8;
    return block;
}

SheetBlock BlockMaker::alert(const QString& title, const QStringList& sentences) const {
    constexpr double kPad = 2.6;
    constexpr qsizetype kMost = 12;
    const double left = kPad + fonts_.width(title, kStrong) + 3;
    QStringList lines;
    for (const QString& sentence : sentences) {
        lines << fonts_.wrapped(sentence, kText, width_ - left - kPad);
    }
    if (lines.size() > kMost) {
        lines = lines.mid(0, kMost);
        lines.back() = fonts_.elided(lines.back() + QStringLiteral(" …"), kText, width_ - left - kPad);
    }
    const double height = static_cast<double>(lines.size() - 1) * kText.leading() + kText.digits + 2 * kPad;
    SheetBlock block = line(height, [=, &fonts = fonts_](QPainter& painter, const QRectF& box) {
        painter.setPen(QPen(Qt::black, 0.8, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(box.adjusted(0.4, 0.4, -0.4, -0.4));
        const double base = box.top() + kPad + kText.digits;
        painter.setPen(Qt::black);
        fonts.draw(painter, {kPad, base}, title, kStrong);
        fonts.draw(painter, {left, base}, lines, kText);
    });
    block.above = 3;
    return block;
}

std::vector<SheetBlock> BlockMaker::table(const SheetTable& table) const {
    if (table.rows.empty()) {
        return {};
    }
    const Columns columns = columnsOf(table, fonts_, width_);
    const auto head = std::make_shared<SheetBlock>(tableHead(table, columns, fonts_));
    std::vector<SheetBlock> blocks{heading(table.title, table.aside), *head};
    for (const SheetRow& row : table.rows) {
        blocks.push_back(tableRow(row, columns, fonts_));
        blocks.back().head = head;
    }
    return blocks;
}

std::vector<SheetBlock> BlockMaker::checks(const std::vector<SheetCheck>& checks) const {
    double names = 0;
    for (const SheetCheck& check : checks) {
        names = std::max(names, fonts_.width(check.what, kStrong));
    }
    const double left = kBox + kColumnGap;
    const double text = left + names + kColumnGap;
    std::vector<SheetBlock> blocks;
    for (const SheetCheck& check : checks) {
        const QStringList lines = fonts_.wrapped(check.expected, kText, width_ - text);
        const QString what = check.what;
        blocks.push_back(line(rowHeight(lines.size(), kTightPad),
                              [=, &fonts = fonts_](QPainter& painter, const QRectF& box) {
                                  const double base = box.top() + baseline(kTightPad);
                                  drawBox(painter, kBox / 2 + 0.2, base);
                                  painter.setPen(Qt::black);
                                  fonts.draw(painter, {left, base}, what, kStrong);
                                  fonts.draw(painter, {text, base}, lines, kText);
                                  rowRule(painter, box);
                              }));
    }
    return blocks;
}

std::vector<SheetBlock> BlockMaker::figures(const std::vector<FigureLine>& lines) const {
    const FigureColumns columns = figureColumns(lines, fonts_, width_);
    const double headHeight = baseline() + kText.leading() + kText.descent() + 1.0;
    auto head = std::make_shared<SheetBlock>(
        line(headHeight, [=, &fonts = fonts_](QPainter& painter, const QRectF& box) {
            constexpr std::array<const char*, 3> kPlaceHeads{"at ride", "at full bump", "at full droop"};
            constexpr std::array<const char*, 3> kHeads{"before", "after", "change"};
            const double base = box.top() + baseline();
            for (std::size_t place = 0; place < 3; ++place) {
                painter.setPen(Qt::black);
                const double right = columns.right[place][2];
                fonts.draw(painter, {(columns.left[place] + right) / 2, base},
                           QString::fromLatin1(kPlaceHeads[place]), kStrong, Qt::AlignHCenter);
                for (std::size_t cell = 0; cell < 3; ++cell) {
                    fonts.draw(painter, {columns.right[place][cell], base + kText.leading()},
                               QString::fromLatin1(kHeads[cell]), kText, Qt::AlignRight);
                }
            }
            rule(painter, box.bottom(), 0, box.width(), 0.25);
        }));
    head->keepNext = true;
    std::vector<SheetBlock> blocks{*head};
    for (const FigureLine& figure : lines) {
        const QStringList name = cellLines(fonts_, figure.name, kText, columns.name);
        blocks.push_back(line(
            rowHeight(name.size(), kTightPad), [=, &fonts = fonts_](QPainter& painter, const QRectF& box) {
                const double base = box.top() + baseline(kTightPad);
                painter.setPen(Qt::black);
                fonts.draw(painter, {0, base}, name, kText);
                for (std::size_t place = 0; place < 3; ++place) {
                    for (std::size_t cell = 0; cell < 3; ++cell) {
                        const bool isBold = cell == 2 && figure.tells[place];
                        fonts.draw(painter, {columns.right[place][cell], base}, figure.cells[place][cell],
                                   isBold ? kStrong : kText, Qt::AlignRight);
                    }
                }
                rowRule(painter, box);
            }));
        blocks.back().head = head;
    }
    return blocks;
}

SheetBlock BlockMaker::writingRow(const QString& what, const QStringList& captions, double height) const {
    const QStringList names = fonts_.wrapped(what, kStrong, kWhat - 3);
    SheetBlock block = line(height, [=, &fonts = fonts_](QPainter& painter, const QRectF& box) {
        painter.setPen(Qt::black);
        fonts.draw(painter, {0, box.top() + baseline()}, names, kStrong);
        const double each = (box.width() - kWhat) / static_cast<double>(captions.size());
        for (qsizetype at = 0; at < captions.size(); ++at) {
            const double left = kWhat + static_cast<double>(at) * each;
            painter.setPen(printPen(0.25));
            painter.drawLine(QPointF(left, box.top()), QPointF(left, box.bottom()));
            painter.setPen(Qt::black);
            fonts.draw(painter, {left + 1.5, box.top() + baseline()},
                       fonts.elided(captions[at], kText, each - 2), kText);
        }
        rule(painter, box.bottom(), 0, box.width(), 0.25);
    });
    block.keepNext = true;
    return block;
}

SheetBlock BlockMaker::notes(const QString& what, double height) const {
    SheetBlock block = line(height, [=, &fonts = fonts_](QPainter& painter, const QRectF& box) {
        painter.setPen(Qt::black);
        fonts.draw(painter, {0, box.top() + baseline()}, what, kStrong);
        rule(painter, box.bottom(), 0, box.width(), 0.25);
        QRectF ruled = box.adjusted(kWhat, 0, 0, 0);
        painter.setPen(printPen(0.25));
        painter.drawLine(ruled.topLeft(), ruled.bottomLeft());
        while (ruled.height() > 2 * kWritingLine - 1) {
            ruled.setTop(ruled.top() + kWritingLine);
            rowRule(painter, QRectF(ruled.left(), ruled.top(), ruled.width(), 0));
        }
    });
    block.takesRest = true;
    return block;
}

}  // namespace bolthole
