#include "widgets/papers/sheets/paper_kit.h"

#include <algorithm>
#include <cmath>

#include "widgets/papers/printed_sheets.h"

namespace bolthole {

namespace {

using kit_type::kHead;
using kit_type::kSmall;
using kit_type::kStrong;
using kit_type::kText;
using kit_type::kTitle;

constexpr double kTitleBase = 5.4;  // mm, down from the top
constexpr double kTitleRule = 8.6;
constexpr double kLeastTitle = 2.8;  // height of its digits, before it is cut short
constexpr double kTickBox = 1.15;    // in heights of the digits
constexpr double kHeadArrow = 2.2;   // length of an arrow's head

QPointF unitOf(QPointF vector) {
    const double length = std::hypot(vector.x(), vector.y());
    return length > 0 ? vector / length : QPointF(1, 0);
}

void drawArrowHead(QPainter& painter, QPointF tip, QPointF along) {
    const QPointF across(-along.y(), along.x());
    const QPointF back = tip - kHeadArrow * along;
    painter.drawPolyline(
        QPolygonF{back + 0.35 * kHeadArrow * across, tip, back - 0.35 * kHeadArrow * across});
}

void drawInside(QPainter& painter, QPointF center, const QString& sign, const PrintFonts& fonts) {
    PrintType type{2.5, true};
    while (type.digits > 1.6 && fonts.width(sign, type) > 1.5 * kBubble) {
        type.digits -= 0.1;
    }
    painter.setPen(Qt::white);
    fonts.draw(painter, center + QPointF(0, type.digits / 2), sign, type, Qt::AlignHCenter);
    painter.setPen(Qt::black);
}

}  // namespace

QPageLayout sheetPageOf(SheetPaper paper, QPageLayout::Orientation orientation) {
    const QPageSize::PageSizeId size = paper == SheetPaper::letter ? QPageSize::Letter : QPageSize::A4;
    return {QPageSize(size), orientation, QMarginsF(kPaperMargin, kPaperMargin, kPaperMargin, kPaperMargin),
            QPageLayout::Millimeter};
}

PaperFrame::PaperFrame(const PrintFonts& fonts, QSizeF page, const QString& caution)
    : fonts_(fonts), page_(page), caution_(fonts.wrapped(caution, kText, page.width())) {
    const double foot = static_cast<double>(caution_.size()) * kText.leading() + 2.2;
    body_ = QRectF(QPointF(0, kTitleRule + 2), QPointF(page.width(), page.height() - foot));
}

void PaperFrame::paint(QPainter& painter, const QString& title, const QString& aside) const {
    const double right = page_.width();
    const double room = right - fonts_.width(aside, kText) - 6;
    PrintType type = kTitle;
    while (type.digits > kLeastTitle && fonts_.width(title, type) > room) {
        type.digits -= 0.1;
    }
    painter.setPen(Qt::black);
    fonts_.draw(painter, {0, kTitleBase}, fonts_.elided(title, type, room), type);
    fonts_.draw(painter, {right, kTitleBase}, aside, kText, Qt::AlignRight);
    painter.setPen(kitPen(0.6));
    painter.drawLine(QPointF(0, kTitleRule), QPointF(right, kTitleRule));
    painter.setPen(kitPen(0.3));
    painter.drawLine(QPointF(0, body_.bottom()), QPointF(right, body_.bottom()));
    painter.setPen(Qt::black);
    fonts_.draw(painter, {0, body_.bottom() + 1.75 * kText.digits}, caution_, kText);
}

QPen kitPen(double width) {
    return {Qt::black, std::max(width, kThinnestLine), Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin};
}

QPen kitDashes(double width) {
    QPen pen = kitPen(width);
    pen.setDashPattern({1.5 / pen.widthF(), 1.1 / pen.widthF()});
    return pen;
}

void drawWritingBox(QPainter& painter, const QRectF& box) {
    painter.setPen(kitPen(0.4));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(box.adjusted(0.2, 0.2, -0.2, -0.2));
}

double drawTick(QPainter& painter, QPointF at, const QString& words, const PrintFonts& fonts,
                PrintType type) {
    painter.setPen(kitPen(0.35));
    painter.setBrush(Qt::NoBrush);
    const double box = kTickBox * type.digits;
    painter.drawRect(QRectF(at.x() + 0.2, at.y() - type.digits / 2 - box / 2, box, box));
    painter.setPen(Qt::black);
    const double left = at.x() + box + 1.4;
    fonts.draw(painter, {left, at.y()}, words, type);
    return left + fonts.width(words, type);
}

double drawBlank(QPainter& painter, QPointF at, const QString& words, double length,
                 const PrintFonts& fonts) {
    painter.setPen(Qt::black);
    fonts.draw(painter, at, words, kText);
    const double from = at.x() + (words.isEmpty() ? 0 : fonts.width(words, kText) + 1.6);
    painter.setPen(kitPen(0.3));
    painter.drawLine(QPointF(from, at.y() + 0.6), QPointF(from + length, at.y() + 0.6));
    painter.setPen(Qt::black);
    return from + length;
}

void drawBubble(QPainter& painter, QPointF center, const QString& number, const PrintFonts& fonts) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(Qt::black);
    painter.drawEllipse(center, kBubble, kBubble);
    painter.setBrush(Qt::NoBrush);
    drawInside(painter, center, number, fonts);
}

void drawLetter(QPainter& painter, QPointF center, const QString& letter, const PrintFonts& fonts) {
    const QPointF corner(0.88 * kBubble, 0.88 * kBubble);
    painter.fillRect(QRectF(center - corner, center + corner), Qt::black);
    drawInside(painter, center, letter, fonts);
}

void drawArrow(QPainter& painter, QPointF from, QPointF to, bool bothEnds) {
    painter.setPen(kitPen(0.35));
    painter.setBrush(Qt::NoBrush);
    painter.drawLine(from, to);
    drawArrowHead(painter, to, unitOf(to - from));
    if (bothEnds) {
        drawArrowHead(painter, from, unitOf(from - to));
    }
}

SheetBlock wordsBlock(const QString& words, PrintType type, double width, const PrintFonts& fonts) {
    const QStringList lines = fonts.wrapped(words, type, width);
    SheetBlock block;
    block.above = 1.2;
    block.height =
        static_cast<double>(std::max<qsizetype>(lines.size(), 1) - 1) * type.leading() + 1.7 * type.digits;
    block.paint = [lines, type, &fonts](QPainter& painter, const QRectF& box) {
        painter.setPen(Qt::black);
        fonts.draw(painter, {box.left(), box.top() + 1.35 * type.digits}, lines, type);
    };
    return block;
}

SheetBlock headingBlock(const QString& words, const QString& aside, const PrintFonts& fonts) {
    SheetBlock block;
    block.above = 3;
    block.height = 2 * kHead.digits;
    block.keepNext = true;
    block.paint = [words, aside, &fonts](QPainter& painter, const QRectF& box) {
        const double base = box.bottom() - 0.6 * kHead.digits;
        painter.setPen(Qt::black);
        fonts.draw(painter, {box.left(), base}, words, kHead);
        const double used = fonts.width(words, kHead) + 3;
        fonts.draw(painter, {box.left() + used, base}, fonts.elided(aside, kText, box.width() - used), kText);
        painter.setPen(kitPen(0.4));
        painter.drawLine(box.bottomLeft(), box.bottomRight());
    };
    return block;
}

}  // namespace bolthole
