#include "widgets/papers/kit/paper_text.h"

#include <QAbstractTextDocumentLayout>
#include <QTextBlock>
#include <QTextCursor>
#include <QTextTable>
#include <algorithm>
#include <cmath>

#include "widgets/papers/kit/paper_marks.h"

namespace bolthole {

namespace {

using kit_type::kHead;
using kit_type::kStrong;
using kit_type::kText;

// QTextDocument stands a line on four fifths of a height that is given.
double middleOfDigits(PrintType type) {
    return 0.8 * type.leading() - type.digits / 2;
}

bool hasShares(const TextTable& table) {
    return std::ranges::any_of(table.columns, [](const TextColumn& column) { return column.share > 0; });
}

QTextTableFormat formatOf(const TextTable& table) {
    QTextTableFormat format;
    format.setBorder(0);
    format.setCellSpacing(0);
    format.setCellPadding(0);
    QList<QTextLength> widths;
    for (const TextColumn& column : table.columns) {
        widths << (column.share > 0 ? QTextLength(QTextLength::PercentageLength, 100 * column.share)
                                    : QTextLength());
    }
    format.setColumnWidthConstraints(widths);
    if (hasShares(table)) {
        format.setWidth(QTextLength(QTextLength::PercentageLength, 100));
    }
    return format;
}

TextTable listOf(std::vector<TextRow> rows, std::vector<TextColumn> columns, PrintType type) {
    TextTable list;
    list.columns = std::move(columns);
    list.rows = std::move(rows);
    list.type = type;
    list.pad = 0;
    list.hasRules = false;
    list.mostLetters = 1200;
    return list;
}

}  // namespace

TextCell boxCell(bool hasBox) {
    TextCell cell{QString()};
    cell.hasBox = hasBox;
    return cell;
}

LaidTable::LaidTable(const TextTable& table, double width, const PrintFonts& fonts)
    : text_(std::make_shared<QTextDocument>()),
      width_(width),
      headRows_(table.head.size()),
      hasRules_(table.hasRules) {
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    text_->setUndoRedoEnabled(false);
    text_->setDocumentMargin(0);
    text_->setDefaultTextOption(option);
    text_->setTextWidth(width * kPixelsPerMillimetre);
    QTextCursor editor(text_.get());
    editor.beginEditBlock();  // laid out once, not after every cell
    table_ = editor.insertTable(static_cast<int>(table.head.size() + table.rows.size()),
                                static_cast<int>(table.columns.size()), formatOf(table));
    fill(table, fonts);
    editor.endEditBlock();
    editor.beginEditBlock();
    widenGaps(table);
    editor.endEditBlock();
    measure(table);
}

void LaidTable::fill(const TextTable& table, const PrintFonts& fonts) {
    int row = 0;
    for (const std::vector<TextRow>* part : {&table.head, &table.rows}) {
        for (const TextRow& cells : *part) {
            int column = 0;
            for (const TextCell& cell : cells) {
                fillCell(table, fonts, row, column, cell);
                column += cell.span;
            }
            ++row;
        }
    }
}

void LaidTable::fillCell(const TextTable& table, const PrintFonts& fonts, int row, int column,
                         const TextCell& cell) {
    if (cell.span > 1) {
        table_->mergeCells(row, column, 1, cell.span);
    }
    const TextColumn& of = table.columns[static_cast<std::size_t>(column)];
    const bool isHead = row < static_cast<int>(headRows_);
    PrintType type = isHead ? table.headType : table.type;
    type.bold = type.bold || cell.isBold || (of.isBold && !isHead);
    QTextTableCell place = table_->cellAt(row, column);
    QTextTableCellFormat room;
    const double box = cell.hasBox ? kTableBox / 2 : 0;
    room.setTopPadding(table.pad * kPixelsPerMillimetre);
    room.setBottomPadding(table.pad * kPixelsPerMillimetre);
    room.setLeftPadding(((column > 0 ? table.gap : 0) + of.before + box) * kPixelsPerMillimetre);
    room.setRightPadding(box * kPixelsPerMillimetre);
    place.setFormat(room);
    QTextBlockFormat line;
    line.setLineHeight(type.leading() * kPixelsPerMillimetre, QTextBlockFormat::FixedHeight);
    // What spans columns of numbers stands in their middle.
    line.setAlignment(cell.span > 1 && of.align == Qt::AlignRight ? Qt::AlignHCenter : of.align);
    const bool isTooLong = cell.words.size() > table.mostLetters;
    const QString words = isTooLong ? cell.words.left(table.mostLetters) + QStringLiteral(" …") : cell.words;
    QTextCharFormat letters;
    letters.setFont(fonts.font(type, words));
    QTextCursor cursor = place.firstCursorPosition();
    cursor.setBlockFormat(line);
    cursor.insertText(words, letters);
}

// Shares what the cells leave of the width among the gaps.
void LaidTable::widenGaps(const TextTable& table) {
    const double used = text_->documentLayout()->frameBoundingRect(table_).width();
    const double free = width_ * kPixelsPerMillimetre - used;
    const double gaps = std::max(static_cast<double>(table.columns.size()) - 1, 1.0);
    const double more = std::min(table.moreGap * kPixelsPerMillimetre, std::floor(free / gaps));
    if (hasShares(table) || more < 1) {
        return;
    }
    for (int row = 0; row < table_->rows(); ++row) {
        for (int column = 1; column < table_->columns(); ++column) {
            QTextTableCell cell = table_->cellAt(row, column);
            if (cell.column() == column) {
                QTextTableCellFormat room = cell.format().toTableCellFormat();
                room.setLeftPadding(room.leftPadding() + more);
                cell.setFormat(room);
            }
        }
    }
}

// Where the rows came to stand, and in them the boxes.
void LaidTable::measure(const TextTable& table) {
    const auto rectOf = [&](int row, int column) {
        const QTextBlock block = table_->cellAt(row, column).firstCursorPosition().block();
        const QRectF rect = text_->documentLayout()->blockBoundingRect(block);
        return QRectF(rect.topLeft() / kPixelsPerMillimetre, rect.size() / kPixelsPerMillimetre);
    };
    for (int row = 0; row < table_->rows(); ++row) {
        tops_.push_back(rectOf(row, 0).top() - table.pad);
        const auto index = static_cast<std::size_t>(row);
        if (index < headRows_) {
            continue;
        }
        int column = 0;
        for (const TextCell& cell : table.rows[index - headRows_]) {
            if (cell.hasBox) {
                const QRectF rect = rectOf(row, column);
                boxes_.push_back({index, {rect.center().x(), rect.top() + middleOfDigits(table.type)}});
            }
            column += cell.span;
        }
    }
    tops_.push_back(text_->documentLayout()->frameBoundingRect(table_).height() / kPixelsPerMillimetre);
}

void LaidTable::paintRows(QPainter& painter, QPointF corner, std::size_t from, std::size_t to) const {
    painter.save();
    painter.translate(corner.x(), corner.y() - tops_[from]);
    for (const Box& box : boxes_) {
        if (box.row >= from && box.row < to) {
            drawTickBox(painter, box.middle, kTableBox);
        }
    }
    for (std::size_t row = from; row < to && hasRules_; ++row) {
        if (row + 1 >= headRows_) {
            drawRule(painter, row < headRows_ ? kitPen(kThinnestLine) : kitHairline(), tops_[row + 1], 0,
                     width_);
        }
    }
    painter.scale(1 / kPixelsPerMillimetre, 1 / kPixelsPerMillimetre);
    // A hair less than the rows, so that those above and below are not drawn with them.
    QAbstractTextDocumentLayout::PaintContext context;
    context.clip = QRectF(QPointF(0, tops_[from] * kPixelsPerMillimetre + 1),
                          QPointF(width_ * kPixelsPerMillimetre, tops_[to] * kPixelsPerMillimetre - 1));
    context.palette.setColor(QPalette::Text, Qt::black);  // whatever the desktop's
    text_->documentLayout()->draw(&painter, context);
    painter.restore();
}

void LaidTable::paint(QPainter& painter, QPointF corner, double height) const {
    constexpr double kRounding = 1e-3;
    const auto after = std::ranges::upper_bound(tops_, height + kRounding);
    const auto rows = static_cast<std::size_t>(after - tops_.begin()) - 1;
    if (rows > 0) {
        paintRows(painter, corner, 0, rows);
    }
}

std::vector<SheetBlock> LaidTable::blocks(const TextTable& table, double width, const PrintFonts& fonts) {
    const auto laid = std::make_shared<const LaidTable>(table, width, fonts);
    const auto block = [&](std::size_t from, std::size_t to) {
        SheetBlock rows;
        rows.height = laid->tops_[to] - laid->tops_[from];
        rows.paint = [laid, from, to](QPainter& painter, const QRectF& box) {
            laid->paintRows(painter, box.topLeft(), from, to);
        };
        return rows;
    };
    std::vector<SheetBlock> blocks;
    std::shared_ptr<SheetBlock> head;
    if (laid->headRows_ > 0) {
        blocks.push_back(block(0, laid->headRows_));
        blocks.back().keepNext = true;
        head = std::make_shared<SheetBlock>(blocks.back());
    }
    for (std::size_t row = laid->headRows_; row + 1 < laid->tops_.size(); ++row) {
        blocks.push_back(block(row, row + 1));
        blocks.back().head = head;
    }
    return blocks;
}

SheetBlock wordsBlock(const QString& words, PrintType type, double width, const PrintFonts& fonts) {
    SheetBlock block = LaidTable::blocks(listOf({{words}}, {{.share = 1}}, type), width, fonts).front();
    block.above = 1.2;
    return block;
}

SheetBlock headingBlock(const QString& words, const QString& aside, const PrintFonts& fonts) {
    SheetBlock block;
    block.above = 3.5;
    block.height = 1.95 * kHead.digits;
    block.keepNext = true;
    block.paint = [words, aside, &fonts](QPainter& painter, const QRectF& box) {
        const double base = box.bottom() - 0.62 * kHead.digits;
        painter.setPen(Qt::black);
        fonts.draw(painter, {box.left(), base}, words, kHead);
        const double used = fonts.width(words, kHead) + 3.5;
        fonts.draw(painter, {box.left() + used, base}, fonts.elided(aside, kText, box.width() - used), kText);
        drawRule(painter, kitPen(0.45), box.bottom(), box.left(), box.right());
    };
    return block;
}

SheetBlock alertBlock(const QString& title, const QStringList& sentences, double width,
                      const PrintFonts& fonts) {
    constexpr double kInside = 2.4;
    std::vector<TextRow> rows;
    for (const QString& sentence : sentences) {
        rows.push_back({{rows.empty() ? title : QString(), true}, sentence});
    }
    const LaidTable laid(listOf(std::move(rows), {{}, {}}, kText), width - 2 * kInside, fonts);
    SheetBlock block;
    block.above = 3;
    block.height = laid.height() + 2 * kInside;
    block.paint = [laid](QPainter& painter, const QRectF& box) {
        painter.setPen(kitPen(0.8));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(box.adjusted(0.4, 0.4, -0.4, -0.4));
        laid.paint(painter, box.topLeft() + QPointF(kInside, kInside), laid.height());
    };
    return block;
}

}  // namespace bolthole
