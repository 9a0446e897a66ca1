#include "widgets/papers/kit/paper_marks.h"

#include <algorithm>

#include "widgets/kit/pens.h"

namespace bolthole {

namespace {

using kit_type::kText;

constexpr double kHeadArrow = 2.2;  // length of an arrow's head

void drawArrowHead(QPainter& painter, QPointF tip, QPointF along) {
    const QPointF across(-along.y(), along.x());
    const QPointF back = tip - kHeadArrow * along;
    painter.drawPolyline(
        QPolygonF{back + 0.35 * kHeadArrow * across, tip, back - 0.35 * kHeadArrow * across});
}

void drawInside(QPainter& painter, QPointF center, const QString& sign, const PrintFonts& fonts) {
    const PrintType type = fonts.fitted(sign, {2.5, true}, 1.5 * kBubble, 1.6);
    painter.setPen(Qt::white);
    fonts.draw(painter, center + QPointF(0, type.digits / 2), sign, type, Qt::AlignHCenter);
    painter.setPen(Qt::black);
}

}  // namespace

QPen kitPen(double width) {
    return {Qt::black, std::max(width, kThinnestLine), Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin};
}

QPen kitDashes(double width) {
    QPen pen = kitPen(width);
    pen.setDashPattern({1.5 / pen.widthF(), 1.1 / pen.widthF()});
    return pen;
}

QPen kitHairline() {
    return {QColor(125, 125, 125), kThinnestLine, Qt::SolidLine, Qt::FlatCap};
}

void drawRule(QPainter& painter, const QPen& pen, double y, double left, double right) {
    painter.setPen(pen);
    painter.drawLine(QPointF(left, y), QPointF(right, y));
}

void drawWritingBox(QPainter& painter, const QRectF& box) {
    painter.setPen(kitPen(0.4));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(box.adjusted(0.2, 0.2, -0.2, -0.2));
}

void drawTickBox(QPainter& painter, QPointF center, double side) {
    const QPointF corner(side / 2, side / 2);
    painter.setPen(kitPen(0.35));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(center - corner, center + corner));
}

double drawTick(QPainter& painter, QPointF at, const QString& words, const PrintFonts& fonts,
                PrintType type) {
    const double box = 1.15 * type.digits;
    drawTickBox(painter, at + QPointF(0.2 + box / 2, -type.digits / 2), box);
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
    drawRule(painter, kitPen(0.3), at.y() + 0.6, from, from + length);
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
    drawArrowHead(painter, to, unit(to - from));
    if (bothEnds) {
        drawArrowHead(painter, from, unit(from - to));
    }
}

}  // namespace bolthole
