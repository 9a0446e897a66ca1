#include "widgets/papers/sheets/measuring_blocks.h"

#include <algorithm>

#include "geometry/car/fields.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/papers/kit/paper_marks.h"
#include "widgets/papers/kit/paper_text.h"

namespace bolthole {

namespace {

using kit_type::kHead;
using kit_type::kSmall;
using kit_type::kStrong;
using kit_type::kText;

constexpr double kNames = 60;        // mm, of a table's row
constexpr double kGroupGap = 2.6;    // between two numbers of a row
constexpr double kNumberNames = 46;  // of a single number, half a page wide
constexpr double kColumnGap = 5;     // between two single numbers
constexpr double kLimitNames = 34;

/// The two boxes of a table's column, in a row that begins at `top`.
QRectF boxOf(double width, int column, int reading, double top) {
    const double group = (width - kNames - 2 * kGroupGap) / 3;
    const double each = (group - kBoxGap) / 2;
    const double left = kNames + column * (group + kGroupGap) + reading * (each + kBoxGap);
    return {left, top, each, kWritingBox};
}

// One or two lines, upright in the middle of a row that begins at `top`.
void drawName(QPainter& painter, const PrintFonts& fonts, QPointF corner, const QString& name, double width) {
    QStringList lines = fonts.wrapped(name, kText, width);
    if (lines.size() > 3) {
        lines = lines.mid(0, 3);
        lines.back() = fonts.elided(lines.back() + QStringLiteral(" …"), kText, width);
    }
    const double block = static_cast<double>(lines.size() - 1) * kText.leading() + kText.digits;
    painter.setPen(Qt::black);
    fonts.draw(painter, {corner.x(), corner.y() + (kWritingBox - block) / 2 + kText.digits}, lines, kText);
}

}  // namespace

QString MeasuringBlocks::withUnitOf(const QString& words, const FieldId& id) const {
    const QString unit = unitText(quantityOf(id.field), units_);
    // Kept together where the line is broken.
    return unit.isEmpty() ? words : QStringLiteral("%1,\u00A0%2").arg(words, unit);
}

SheetBlock MeasuringBlocks::tableHead(const PlanTable& table) const {
    std::array<QString, 3> heads = table.heads;
    for (std::size_t column = 0; column < heads.size(); ++column) {
        const auto& field = table.rows.front().fields[column];
        heads[column] = field ? withUnitOf(heads[column], *field) : heads[column];
    }
    SheetBlock block;
    block.above = 2;
    block.height = 9.2;
    block.keepNext = true;
    block.paint = [heads, width = width_, &fonts = fonts_](QPainter& painter, const QRectF& box) {
        painter.setPen(Qt::black);
        for (int column = 0; column < 3; ++column) {
            const QRectF first = boxOf(width, column, 0, box.top());
            const QRectF second = boxOf(width, column, 1, box.top());
            const QString& head = heads[static_cast<std::size_t>(column)];
            fonts.draw(painter, {(first.left() + second.right()) / 2, box.top() + 4}, head,
                       fonts.fitted(head, kHead, second.right() - first.left(), 2), Qt::AlignHCenter);
            fonts.draw(painter, {first.center().x(), box.bottom() - 1}, tr("1st"), kSmall, Qt::AlignHCenter);
            fonts.draw(painter, {second.center().x(), box.bottom() - 1}, tr("2nd"), kSmall, Qt::AlignHCenter);
        }
    };
    return block;
}

SheetBlock MeasuringBlocks::tableRow(const PlanRow& row) const {
    SheetBlock block;
    block.above = kBoxGap;
    block.height = kWritingBox;
    block.paint = [row, width = width_, &fonts = fonts_](QPainter& painter, const QRectF& box) {
        const double middle = box.top() + kWritingBox / 2;
        drawBubble(painter, {kBubble + 0.3, middle}, QString::number(row.number), fonts);
        const double left = 2 * kBubble + 2.2;
        const double tick = row.hasTick ? 15 : 0;
        drawName(painter, fonts, {left, box.top()}, row.name, kNames - left - tick - 1.5);
        if (row.hasTick) {
            drawTick(painter, {kNames - tick, middle + kSmall.digits / 2}, tr("bolted"), fonts, kSmall);
        }
        for (int column = 0; column < 3; ++column) {
            for (const int reading : {0, 1}) {
                if (row.fields[static_cast<std::size_t>(column)]) {
                    drawWritingBox(painter, boxOf(width, column, reading, box.top()));
                }
            }
        }
    };
    return block;
}

SheetBlock MeasuringBlocks::numberLine(const std::vector<PlanNumber>& numbers) const {
    std::vector<QString> names;
    std::ranges::transform(numbers, std::back_inserter(names),
                           [&](const PlanNumber& number) { return withUnitOf(number.label, number.id); });
    SheetBlock block;
    block.above = kBoxGap;
    block.height = kWritingBox;
    block.paint = [numbers, names, width = width_, &fonts = fonts_](QPainter& painter, const QRectF& box) {
        const double half = (width - kColumnGap) / 2;
        for (std::size_t at = 0; at < numbers.size(); ++at) {
            const double left = static_cast<double>(at) * (half + kColumnGap);
            double words = left;
            if (!numbers[at].letter.isEmpty()) {
                drawLetter(painter, {left + kBubble, box.top() + kWritingBox / 2}, numbers[at].letter, fonts);
                words += 2 * kBubble + 1.6;
            }
            drawName(painter, fonts, {words, box.top()}, names[at], left + kNumberNames - words - 1);
            const double each = (half - kNumberNames - kBoxGap) / 2;
            for (const int reading : {0, 1}) {
                drawWritingBox(painter, {left + kNumberNames + reading * (each + kBoxGap), box.top(), each,
                                         kWritingBox});
            }
        }
    };
    return block;
}

SheetBlock MeasuringBlocks::limitLine(const PlanLimits& limits) const {
    std::vector<QString> names;
    std::ranges::transform(limits.numbers, std::back_inserter(names),
                           [&](const PlanNumber& number) { return withUnitOf(number.label, number.id); });
    constexpr std::size_t kColumns = 5;
    SheetBlock block;
    block.above = kBoxGap;
    block.height = kWritingBox;
    block.paint = [name = limits.name, names, width = width_, &fonts = fonts_](QPainter& painter,
                                                                               const QRectF& box) {
        drawName(painter, fonts, {0, box.top()}, name, kLimitNames - 2);
        const double each = (width - kLimitNames - (kColumns - 1) * kBoxGap) / kColumns;
        for (std::size_t at = 0; at < names.size(); ++at) {
            const QRectF one(kLimitNames + static_cast<double>(at) * (each + kBoxGap), box.top(), each,
                             kWritingBox);
            drawWritingBox(painter, one);
            fonts.draw(painter, one.topLeft() + QPointF(1.2, 1.5 * kSmall.digits),
                       fonts.elided(names[at], kSmall, each - 2), kSmall);
        }
    };
    return block;
}

int MeasuredBlocks::numberOf(const SheetBlock* block) const {
    for (std::size_t at = 0; at < blocks.size(); ++at) {
        if (&blocks[at] == block) {
            return numbers[at];
        }
    }
    return 0;
}

void MeasuringBlocks::addTable(const PlanTable& table, MeasuredBlocks& made) const {
    const auto head = std::make_shared<const SheetBlock>(tableHead(table));
    made.blocks.push_back(*head);
    for (const PlanRow& row : table.rows) {
        made.blocks.push_back(tableRow(row));
        made.blocks.back().head = head;
        made.numbers.resize(made.blocks.size(), 0);
        made.numbers.back() = row.number;
    }
}

MeasuredBlocks MeasuringBlocks::of(const PlanArea& area) const {
    MeasuredBlocks made;
    std::vector<SheetBlock>& blocks = made.blocks;
    blocks.push_back(wordsBlock(area.hint, kText, width_, fonts_));
    if (!area.caution.isEmpty()) {
        blocks.push_back(wordsBlock(area.caution, kStrong, width_, fonts_));
    }
    for (const PlanTable& table : area.tables) {
        addTable(table, made);
    }
    for (std::size_t at = 0; at < area.numbers.size(); at += 2) {
        const std::size_t end = std::min(at + 2, area.numbers.size());
        blocks.push_back(numberLine({area.numbers.begin() + static_cast<std::ptrdiff_t>(at),
                                     area.numbers.begin() + static_cast<std::ptrdiff_t>(end)}));
        blocks.back().above = at == 0 ? 3 : kBoxGap;
    }
    for (const PlanLimits& limits : area.limits) {
        if (&limits == &area.limits.front()) {
            blocks.push_back(headingBlock(tr("Limits of each rod"),
                                          tr("as its maker or the rule book says; may stay empty"), fonts_));
        }
        blocks.push_back(limitLine(limits));
    }
    made.numbers.resize(blocks.size(), 0);
    return made;
}

MeasuredBlocks MeasuringBlocks::ofMoreHoles(const PlanArea& area) const {
    MeasuredBlocks made;
    made.blocks.push_back(wordsBlock(
        tr("Only where these brackets have more holes; the number is the bracket\u2019s first hole. "
           "Enter measurements has \u201cAnother hole on this bracket\u201d for them."),
        kText, width_, fonts_));
    addTable(*area.spareHoles, made);
    made.numbers.resize(made.blocks.size(), 0);
    return made;
}

}  // namespace bolthole
