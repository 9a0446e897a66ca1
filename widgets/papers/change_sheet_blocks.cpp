#include "widgets/papers/change_sheet_blocks.h"

#include <algorithm>

#include "widgets/kit/translation.h"
#include "widgets/papers/kit/paper_marks.h"

namespace bolthole {

namespace {

using kit_type::kStrong;
using kit_type::kText;

constexpr double kSectionGap = 4.5;  // mm, above a heading
constexpr double kParagraphGap = 1.8;
constexpr double kTightPad = 0.55;  // above and below the lines of a long list
constexpr double kWhat = 40;        // of a row to write in
constexpr double kWritingRow = 10.5;
constexpr double kLeastNotes = 16.5;
constexpr double kWritingLine = 9;
constexpr double kWritingBase = 4.5;  // first baseline of such a row

// Before a row of a table that has such boxes: one a side, or one for both.
TextRow ticksOf(Ticks ticks, bool hasSides) {
    if (!hasSides) {
        return {boxCell(ticks == Ticks::one)};
    }
    if (ticks == Ticks::one) {
        TextCell box = boxCell();
        box.span = 2;
        return {box};
    }
    return {boxCell(ticks == Ticks::left || ticks == Ticks::both),
            boxCell(ticks == Ticks::right || ticks == Ticks::both)};
}

bool holds(const std::vector<int>& columns, int column) {
    return std::ranges::find(columns, column) != columns.end();
}

}  // namespace

SheetBlock ChangeBlocks::heading(const QString& words, const QString& aside) const {
    SheetBlock block = headingBlock(words, aside, fonts_);
    block.above = kSectionGap;
    return block;
}

SheetBlock ChangeBlocks::paragraph(const QString& words) const {
    SheetBlock block = wordsBlock(words, kText, width_, fonts_);
    block.above = kParagraphGap;
    return block;
}

std::vector<SheetBlock> ChangeBlocks::table(const SheetTable& table) const {
    if (table.rows.empty()) {
        return {};
    }
    const bool hasTicks = table.hasTicks();
    const bool hasSides =
        std::ranges::any_of(table.rows, [](const SheetRow& row) { return row.ticks > Ticks::one; });
    TextTable text;
    TextRow head;
    if (hasTicks) {
        text.columns.assign(hasSides ? 2 : 1, {.align = Qt::AlignHCenter});
        head = hasSides ? TextRow{tr("left"), tr("right")} : TextRow{QString()};
    }
    for (int column = 0; column < static_cast<int>(table.columns.size()); ++column) {
        text.columns.push_back({.align = holds(table.rightColumns, column) ? Qt::AlignRight : Qt::AlignLeft,
                                .isBold = holds(table.boldColumns, column)});
        head.emplace_back(table.columns[column]);
    }
    text.head = {head};
    for (const SheetRow& row : table.rows) {
        TextRow cells = hasTicks ? ticksOf(row.ticks, hasSides) : TextRow{};
        cells.insert(cells.end(), row.cells.begin(), row.cells.end());
        text.rows.push_back(std::move(cells));
    }
    std::vector<SheetBlock> blocks = LaidTable::blocks(text, width_, fonts_);
    blocks.insert(blocks.begin(), heading(table.title, table.aside));
    return blocks;
}

std::vector<SheetBlock> ChangeBlocks::checks(const std::vector<SheetCheck>& checks) const {
    TextTable text;
    text.columns = {{}, {.isBold = true}, {}};
    text.pad = kTightPad;
    text.mostLetters = 1200;
    for (const SheetCheck& check : checks) {
        text.rows.push_back({boxCell(), check.what, check.expected});
    }
    return LaidTable::blocks(text, width_, fonts_);
}

std::vector<SheetBlock> ChangeBlocks::figures(const std::vector<FigureLine>& lines) const {
    TextTable text;
    text.pad = kTightPad;
    text.gap = 2;
    text.moreGap = 3.5;
    text.columns = {{}};
    TextRow places{QString()};
    TextRow heads{QString()};
    for (const QString& place : {tr("at ride"), tr("at full bump"), tr("at full droop")}) {
        places.push_back({place, true, 3});
        for (const QString& head : {tr("before"), tr("after"), tr("change")}) {
            text.columns.push_back({.align = Qt::AlignRight});
            heads.emplace_back(head);
        }
        text.columns[text.columns.size() - 3].before = 3;
    }
    text.head = {places, heads};
    for (const FigureLine& line : lines) {
        TextRow row{line.name};
        for (std::size_t place = 0; place < line.cells.size(); ++place) {
            const auto& cells = line.cells[place];
            row.insert(row.end(), {cells[0], cells[1], {cells[2], line.isSure[place]}});
        }
        text.rows.push_back(std::move(row));
    }
    return LaidTable::blocks(text, width_, fonts_);
}

SheetBlock ChangeBlocks::writingRow(const QString& what, const QStringList& captions) const {
    SheetBlock block;
    block.height = kWritingRow;
    block.keepNext = true;
    block.paint = [=, &fonts = fonts_, names = fonts_.wrapped(what, kStrong, kWhat - 3)](QPainter& painter,
                                                                                         const QRectF& box) {
        painter.setPen(Qt::black);
        fonts.draw(painter, {0, box.top() + kWritingBase}, names, kStrong);
        const double each = (box.width() - kWhat) / static_cast<double>(captions.size());
        double left = kWhat;
        for (const QString& caption : captions) {
            painter.setPen(kitPen(kThinnestLine));
            painter.drawLine(QPointF(left, box.top()), QPointF(left, box.bottom()));
            painter.setPen(Qt::black);
            fonts.draw(painter, {left + 1.5, box.top() + kWritingBase},
                       fonts.elided(caption, kText, each - 2), kText);
            left += each;
        }
        drawRule(painter, kitPen(kThinnestLine), box.bottom(), 0, box.width());
    };
    return block;
}

SheetBlock ChangeBlocks::notes(const QString& what) const {
    SheetBlock block;
    block.height = kLeastNotes;
    block.takesRest = true;
    block.paint = [what, &fonts = fonts_](QPainter& painter, const QRectF& box) {
        painter.setPen(Qt::black);
        fonts.draw(painter, {0, box.top() + kWritingBase}, what, kStrong);
        drawRule(painter, kitPen(kThinnestLine), box.bottom(), 0, box.width());
        painter.drawLine(QPointF(kWhat, box.top()), QPointF(kWhat, box.bottom()));
        for (double y = box.top() + kWritingLine; y < box.bottom() - kWritingLine + 1; y += kWritingLine) {
            drawRule(painter, kitHairline(), y, kWhat, box.width());
        }
    };
    return block;
}

}  // namespace bolthole
