#include "widgets/papers/sheets/measuring_picture.h"

#include <algorithm>
#include <iterator>
#include <optional>

#include "widgets/papers/kit/paper_marks.h"
#include "widgets/papers/sheets/measuring_views.h"

namespace bolthole {

namespace {

constexpr double kRearShare = 0.33;  // of the picture's width, for the view from behind
constexpr double kPad = 2.5;

void append(MeasuringMarks& marks, MeasuringMarks more) {
    std::ranges::move(more.bubbles, std::back_inserter(marks.bubbles));
    std::ranges::move(more.points, std::back_inserter(marks.points));
    std::ranges::move(more.signs, std::back_inserter(marks.signs));
}

// Rear from the side, and from behind where the way out has to be shown.
MeasuringMarks drawRear(QPainter& painter, const QRectF& inner, const PrintFonts& fonts, const Car& car,
                        const PlanArea& area) {
    if (area.kind == AreaKind::driveline) {
        return drawMeasuringSide(painter, inner, fonts, car, area);
    }
    QRectF side = inner;
    side.setRight(inner.right() - kRearShare * inner.width());
    QRectF rear = inner;
    rear.setLeft(side.right());
    painter.setPen(kitPen(kThinnestLine));
    painter.drawLine(rear.topLeft() - QPointF(0, kPad), rear.bottomLeft() + QPointF(0, kPad));
    MeasuringMarks marks = drawMeasuringSide(painter, side.adjusted(0, 0, -kPad, 0), fonts, car, area);
    append(marks, drawMeasuringRear(painter, rear.adjusted(kPad, 0, 0, 0), fonts, car, area));
    return marks;
}

}  // namespace

namespace {

// The mark of a point; nothing where it is not numbered.
std::optional<QPointF> pointCalled(const MeasuringMarks& marks, const QString& sign) {
    const auto found = std::ranges::find(marks.signs, sign);
    return found == marks.signs.end()
               ? std::nullopt
               : std::optional(marks.points[static_cast<std::size_t>(found - marks.signs.begin())]);
}

// A way between two points: a dark line on a pale one, and both its ends.
void lightWay(QPainter& painter, const MeasuringMarks& marks, const QStringList& ends) {
    const std::optional<QPointF> from = pointCalled(marks, ends[0]);
    const std::optional<QPointF> to = pointCalled(marks, ends[1]);
    if (!from || !to) {
        return;
    }
    painter.setCompositionMode(QPainter::CompositionMode_Multiply);
    painter.setPen(QPen(QColor(255, 214, 92), 4.6));
    painter.drawLine(*from, *to);
    painter.setCompositionMode(QPainter::CompositionMode_SourceOver);
    for (const QString& end : ends) {
        lightMarks(painter, marks, end);
    }
}

// Numbers that stand close by are read over the rings.
void redrawUnlit(QPainter& painter, const PrintFonts& fonts, const MeasuringMarks& marks,
                 const QStringList& lit) {
    for (std::size_t at = 0; at < marks.signs.size(); ++at) {
        const QString& sign = marks.signs[at];
        if (!lit.contains(sign)) {
            (sign.front().isDigit() ? drawBubble : drawLetter)(painter, marks.bubbles[at].center(), sign,
                                                               fonts);
        }
    }
}

}  // namespace

// A dark ring on a pale one: seen by its weight, not by color alone.
void lightMarks(QPainter& painter, const MeasuringMarks& marks, const QString& sign) {
    const auto ring = [&](QPointF center, double radius) {
        painter.setCompositionMode(QPainter::CompositionMode_Multiply);  // what is black there stays black
        painter.setPen(QPen(QColor(255, 214, 92), 2.6));
        painter.drawEllipse(center, radius, radius);
        painter.setCompositionMode(QPainter::CompositionMode_SourceOver);
        painter.setPen(kitPen(0.7));
        painter.drawEllipse(center, radius + 1.3, radius + 1.3);
    };
    painter.setBrush(Qt::NoBrush);
    for (std::size_t at = 0; at < marks.signs.size(); ++at) {
        if (marks.signs[at] == sign) {
            ring(marks.bubbles[at].center(), kBubble + 1.4);
            if (!marks.bubbles[at].contains(marks.points[at])) {
                ring(marks.points[at], 2.6);
            }
        }
    }
}

MeasuringMarks drawMeasuringPicture(QPainter& painter, const QRectF& box, const PrintFonts& fonts,
                                    const Car& car, const PlanArea& whole, const std::vector<int>& numbers,
                                    const QString& lit) {
    PlanArea area = whole;
    for (PlanPoint& point : area.points) {
        point.isNumbered = numbers.empty() || std::ranges::find(numbers, point.number) != numbers.end();
    }
    painter.save();
    painter.setPen(kitPen(0.35));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(box.adjusted(0.2, 0.2, -0.2, -0.2));
    const QRectF inner = box.adjusted(kPad, kPad, -kPad, -kPad);
    MeasuringMarks marks;
    switch (area.kind) {
        case AreaKind::wheels:
            marks = drawMeasuringWheels(painter, inner, fonts, car);
            break;
        case AreaKind::weights:
            marks = drawMeasuringScales(painter, inner, fonts, car, area);
            break;
        default:
            marks = drawRear(painter, inner, fonts, car, area);
    }
    const QStringList ends = lit.split(u'–');
    if (ends.size() == 2) {
        lightWay(painter, marks, ends);
    } else if (!lit.isEmpty()) {
        lightMarks(painter, marks, lit);
    }
    if (!lit.isEmpty()) {
        redrawUnlit(painter, fonts, marks, ends);
    }
    painter.restore();
    return marks;
}

}  // namespace bolthole
