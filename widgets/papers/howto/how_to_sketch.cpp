#include "widgets/papers/howto/how_to_sketch.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "widgets/papers/kit/paper_marks.h"

namespace bolthole {

namespace {

using how_to_line::kHeavy;
using how_to_line::kPart;
using how_to_line::kThin;

constexpr double kLetterReach = 0.88 * kBubble;

QPointF toward(double degrees, double reach) {
    const double radians = degrees * std::numbers::pi / 180;
    return {reach * std::cos(radians), -reach * std::sin(radians)};
}

}  // namespace

HowToSketch::HowToSketch(QPainter& painter, const QRectF& box, const PrintFonts& fonts)
    : painter_(painter), fonts_(fonts) {
    const double scale = std::min(box.width() / kCanvas.width(), box.height() / kCanvas.height());
    const QPointF corner = box.center() - scale / 2 * QPointF(kCanvas.width(), kCanvas.height());
    toBox_ = QTransform::fromTranslate(corner.x(), corner.y()).scale(scale, scale);
    painter_.save();
    painter_.setBrush(Qt::NoBrush);
    painter_.setTransform(toBox_, true);
}

HowToSketch::~HowToSketch() {
    painter_.restore();
}

void HowToSketch::line(QPointF from, QPointF to, double width) {
    painter_.setPen(kitPen(width));
    painter_.drawLine(from, to);
}

void HowToSketch::dashed(QPointF from, QPointF to) {
    painter_.setPen(kitDashes());
    painter_.drawLine(from, to);
}

void HowToSketch::lines(const QPolygonF& points, double width) {
    painter_.setPen(kitPen(width));
    painter_.drawPolyline(points);
}

void HowToSketch::shape(const QPolygonF& points, double width) {
    painter_.setPen(kitPen(width));
    painter_.setBrush(Qt::white);
    painter_.drawPolygon(points);
    painter_.setBrush(Qt::NoBrush);
}

void HowToSketch::box(const QRectF& box, double width, double round) {
    painter_.setPen(kitPen(width));
    painter_.setBrush(Qt::white);
    painter_.drawRoundedRect(box, round, round);
    painter_.setBrush(Qt::NoBrush);
}

void HowToSketch::circle(QPointF center, double radius, double width) {
    painter_.setPen(kitPen(width));
    painter_.setBrush(Qt::white);
    painter_.drawEllipse(center, radius, radius);
    painter_.setBrush(Qt::NoBrush);
}

void HowToSketch::cross(QPointF center, double reach) {
    line(center - QPointF(reach, 0), center + QPointF(reach, 0), kThin);
    line(center - QPointF(0, reach), center + QPointF(0, reach), kThin);
}

void HowToSketch::ground(double left, double right, double y) {
    line({left, y}, {right, y}, 0.7);
}

void HowToSketch::arrow(QPointF from, QPointF to) {
    drawArrow(painter_, from, to, false);
}

void HowToSketch::measure(QPointF from, QPointF to, char sign, QPointF off) {
    drawArrow(painter_, from, to);
    letter((from + to) / 2 + off, sign);
}

void HowToSketch::turn(QPointF center, double radius, double from, double to) {
    QPolygonF arc;
    constexpr int kSteps = 32;
    for (int step = 0; step <= kSteps; ++step) {
        arc << center + toward(from + (to - from) * step / kSteps, radius);
    }
    lines(arc, 0.35);
    const double back = (to > from ? -1 : 1) * std::min(std::abs(to - from) / 2, 100 / radius);
    drawArrow(painter_, center + toward(to + back, radius), center + toward(to, radius), false);
}

void HowToSketch::angle(QPointF center, double radius, double from, double to, char sign) {
    turn(center, radius, from, to);
    letter(center + toward((from + to) / 2, radius + kLetterReach + 1.6), sign);
}

void HowToSketch::letter(QPointF at, char sign) {
    const QString shown(QLatin1Char{sign});
    drawLetter(painter_, at, shown, fonts_);
    const QPointF reach(kLetterReach, kLetterReach);
    marks_.marks.bubbles.emplace_back(at - reach, at + reach);
    marks_.marks.points.push_back(at);
    marks_.marks.signs.push_back(shown);
}

void HowToSketch::say(QPointF at, const QString& words, Qt::AlignmentFlag alignment, bool strong) {
    const PrintType type = strong ? kit_type::kStrong : kit_type::kSmall;
    const double wide = fonts_.width(words, type);
    const double left = alignment == Qt::AlignLeft      ? at.x()
                        : alignment == Qt::AlignHCenter ? at.x() - wide / 2
                                                        : at.x() - wide;
    const QRectF taken(left, at.y() - 1.25 * type.digits, wide, 1.25 * type.digits + type.descent());
    painter_.fillRect(taken.adjusted(-0.4, 0, 0.4, 0), Qt::white);
    painter_.setPen(Qt::black);
    fonts_.draw(painter_, at, words, type, alignment);
    marks_.words.push_back(taken);
}

void HowToSketch::tire(QPointF center, double radius) {
    circle(center, radius, kPart);
    circle(center, 0.58 * radius, kThin);
    cross(center);
}

void HowToSketch::tread(QPointF center, double width, double height) {
    box(QRectF(center - QPointF(width, height) / 2, QSizeF(width, height)), kPart, 1.2);
}

void HowToSketch::coil(QPointF from, QPointF to, double half, int turns) {
    const QPointF along = to - from;
    const double length = std::hypot(along.x(), along.y());
    const QPointF across = half / length * QPointF(-along.y(), along.x());
    lines({from - across, from + across}, kPart);
    lines({to - across, to + across}, kPart);
    QPolygonF wire{from - across};
    for (int turn = 0; turn < turns; ++turn) {
        wire << from + (turn + 0.5) / turns * along + across;
        wire << from + (turn + 1.0) / turns * along - across;
    }
    lines(wire, 0.7);
}

void HowToSketch::shock(QPointF from, QPointF to) {
    const QPointF along = to - from;
    const double length = std::hypot(along.x(), along.y());
    const QPointF unit = along / length;
    const QPointF across = 3.2 * QPointF(-unit.y(), unit.x());
    const double body = std::min(26.0, 0.6 * length);
    line(from + body * unit, to - 2 * unit, kHeavy);
    const QPointF start = from + 2.4 * unit;
    const QPointF end = from + body * unit;
    shape({start - across, start + across, end + across, end - across});
    for (const QPointF& eye : {from, to}) {
        circle(eye, 2.2);
        circle(eye, 0.8, kThin);
    }
}

void HowToSketch::scale(const QRectF& pad, QPointF display, char sign) {
    box(pad, kPart, 0.6);
    constexpr QSizeF kDisplay{13, 7.6};
    const QRectF shown(display - QPointF(kDisplay.width(), kDisplay.height()) / 2, kDisplay);
    const double side = display.x() > pad.center().x() ? pad.right() : pad.left();
    const double edge = display.x() > pad.center().x() ? shown.left() : shown.right();
    lines({{side, pad.center().y()},
           {(side + edge) / 2, pad.center().y()},
           {(side + edge) / 2, display.y()},
           {edge, display.y()}},
          kThin);
    box(shown, kPart, 1);
    letter(display, sign);
}

void HowToSketch::paper(const QRectF& sheet, const QString& title,
                        const std::vector<std::pair<QString, char>>& rows) {
    box(sheet, kPart);
    say({sheet.left() + 3, sheet.top() + 5.6}, title, Qt::AlignLeft, true);
    line({sheet.left() + 3, sheet.top() + 7.6}, {sheet.right() - 3, sheet.top() + 7.6}, kThin);
    const double step = (sheet.height() - 9) / static_cast<double>(rows.size());
    for (std::size_t at = 0; at < rows.size(); ++at) {
        const double y = sheet.top() + 8 + (static_cast<double>(at) + 0.5) * step;
        say({sheet.left() + 3, y + kit_type::kSmall.digits / 2}, rows[at].first);
        const QPointF end(sheet.right() - 8, y);
        if (rows[at].second == kNoLetter) {
            line(end - QPointF(4, -1), end + QPointF(3, 1), kThin);
        } else {
            letter(end, rows[at].second);
        }
    }
}

void HowToSketch::axes(const QRectF& plot, const QString& across, const QString& up) {
    lines({plot.topLeft(), plot.bottomLeft(), plot.bottomRight()}, kPart);
    say({plot.right(), plot.bottom() + 4.2}, across, Qt::AlignRight);
    say({plot.left(), plot.top() - 1.6}, up);
}

void HowToSketch::dial(QPointF center, double radius, double hand) {
    circle(center, radius);
    for (int mark = -30; mark <= 210; mark += 30) {
        line(center + toward(mark, 0.8 * radius), center + toward(mark, 0.95 * radius), kThin);
    }
    line(center, center + toward(hand, 0.7 * radius), kHeavy);
    circle(center, 0.9, kThin);
}

HowToMarks HowToSketch::finish(const QString& lit) {
    if (!lit.isEmpty()) {
        lightMarks(painter_, marks_.marks, lit);
    }
    HowToMarks placed = marks_;
    for (QRectF& bubble : placed.marks.bubbles) {
        bubble = toBox_.mapRect(bubble);
    }
    for (QPointF& point : placed.marks.points) {
        point = toBox_.map(point);
    }
    for (QRectF& words : placed.words) {
        words = toBox_.mapRect(words);
    }
    return placed;
}

}  // namespace bolthole
