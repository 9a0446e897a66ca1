// The whole car for the measuring sheet: from its side and from above, and on its scales.
#include <algorithm>
#include <array>

#include "widgets/kit/translation.h"
#include "widgets/papers/kit/paper_marks.h"
#include "widgets/papers/sheets/measuring_views.h"

namespace bolthole {

namespace {

using kit_type::kSmall;
using kit_type::kStrong;

constexpr double kTire = 0.24;  // m wide; for drawing only

/// Draws and remembers lettered and numbered marks.
class CarSketch {
  public:
    CarSketch(QPainter& painter, const QRectF& box, const PrintFonts& fonts, const Car& car)
        : painter_(painter),
          box_(box),
          fonts_(fonts),
          car_(car),
          rearTrack_(drawnTrack(car.rearTrack, car)),
          frontTrack_(drawnTrack(car.frontTrack, car)) {}

    MeasuringMarks wheels() {
        QRectF side = box_;
        side.setRight(box_.right() - 0.36 * box_.width());
        QRectF above = box_;
        above.setLeft(side.right());
        painter_.setPen(kitPen(kThinnestLine));
        painter_.drawLine(above.topLeft() - QPointF(0, 2.5), above.bottomLeft() + QPointF(0, 2.5));
        fromTheSide(side.adjusted(0, 0, -3, 0));
        tracks(above.adjusted(3, 0, 0, 0));
        return marks_;
    }

    MeasuringMarks scales(const PlanArea& area) {
        say({box_.right(), box_.top() + 1.3 * kStrong.digits}, tr("front of the car →"), kStrong,
            Qt::AlignRight);
        const double half = std::max(rearTrack_, frontTrack_) / 2 + kTire;
        double rear = -car_.rearTireRadius;
        double front = car_.wheelbase + car_.frontTireRadius;
        for (const PlanPoint& point : area.points) {
            rear = std::min(rear, point.at.x() - 0.1);
            front = std::max(front, point.at.x() + 0.1);
        }
        scale_ = std::min((box_.width() - 30) / (front - rear), (box_.height() - 16) / (2 * half));
        const double spare = box_.width() - scale_ * (front - rear);
        origin_ = {box_.left() + spare / 2 - scale_ * rear, box_.center().y() + 1};
        pads();
        centerPlane(rear, front);
        for (const PlanPoint& point : area.points) {
            place(point);
        }
        return marks_;
    }

  private:
    void say(QPointF at, const QString& words, PrintType type, Qt::AlignmentFlag alignment = Qt::AlignLeft) {
        painter_.setPen(Qt::black);
        fonts_.draw(painter_, at, words, type, alignment);
    }
    void mark(QPointF at, QPointF of, const QString& sign) {
        const QPointF reach(kBubble, kBubble);
        marks_.bubbles.emplace_back(at - reach, at + reach);
        marks_.points.push_back(of);
        marks_.signs.push_back(sign);
    }
    void letter(QPointF at, const QString& sign) {
        drawLetter(painter_, at, sign, fonts_);
        mark(at, at, sign);
    }

    // Wheelbase, both radii, and what the front can move.
    void fromTheSide(const QRectF& box) {
        say({box.right(), box.top() + 1.3 * kStrong.digits}, tr("front of the car →"), kStrong,
            Qt::AlignRight);
        const double tall = 2 * std::max(car_.rearTireRadius, car_.frontTireRadius);
        const double wide = car_.wheelbase + car_.rearTireRadius + car_.frontTireRadius;
        scale_ = std::min((box.width() - 26) / wide, (box.height() - 24) / tall);
        const double spare = box.width() - scale_ * wide;
        const double ground = box.bottom() - 12;
        origin_ = {box.left() + spare / 2 + scale_ * car_.rearTireRadius, ground};
        const QPointF rear = origin_ - QPointF(0, scale_ * car_.rearTireRadius);
        const QPointF front = origin_ + QPointF(scale_ * car_.wheelbase, -scale_ * car_.frontTireRadius);
        wheel(rear, scale_ * car_.rearTireRadius);
        wheel(front, scale_ * car_.frontTireRadius);
        painter_.setPen(kitPen(0.7));
        painter_.drawLine(QPointF(box.left(), ground), QPointF(box.right(), ground));
        base(rear, front, ground);
        radius(rear, ground, rear.x() - scale_ * car_.rearTireRadius - 5, QStringLiteral("B"));
        radius(front, ground, front.x() + scale_ * car_.frontTireRadius + 5, QStringLiteral("C"));
        travel(front - QPointF(scale_ * car_.frontTireRadius + 7, 0));
    }
    void wheel(QPointF center, double radius) {
        painter_.setBrush(Qt::NoBrush);
        painter_.setPen(kitPen(0.5));
        painter_.drawEllipse(center, radius, radius);
        painter_.setPen(kitPen(kThinnestLine));
        painter_.drawEllipse(center, 0.55 * radius, 0.55 * radius);
        painter_.drawLine(center - QPointF(2, 0), center + QPointF(2, 0));
        painter_.drawLine(center - QPointF(0, 2), center + QPointF(0, 2));
    }
    void base(QPointF rear, QPointF front, double ground) {
        const double under = ground + 5.5;
        painter_.setPen(kitDashes());
        painter_.drawLine(rear, {rear.x(), under + 1.6});
        painter_.drawLine(front, {front.x(), under + 1.6});
        drawArrow(painter_, {rear.x(), under}, {front.x(), under});
        letter({(rear.x() + front.x()) / 2, under}, QStringLiteral("A"));
    }
    void radius(QPointF center, double ground, double x, const QString& sign) {
        painter_.setPen(kitDashes());
        painter_.drawLine(center, {x + (x < center.x() ? -1.6 : 1.6), center.y()});
        drawArrow(painter_, {x, ground}, {x, center.y()});
        letter({x, (ground + center.y()) / 2}, sign);
    }
    void travel(QPointF at) {
        constexpr double kReach = 11;
        painter_.setPen(kitPen(kThinnestLine));
        painter_.drawLine(at - QPointF(2.5, 0), at + QPointF(2.5, 0));
        drawArrow(painter_, at, at - QPointF(0, kReach), false);
        drawArrow(painter_, at, at + QPointF(0, kReach), false);
        letter(at - QPointF(5, 0.5 * kReach), QStringLiteral("F"));
        letter(at - QPointF(5, -0.5 * kReach), QStringLiteral("G"));
        say({at.x() - 9, at.y() - 0.5 * kReach + 0.5 * kSmall.digits}, tr("bump"), kSmall, Qt::AlignRight);
        say({at.x() - 9, at.y() + 0.5 * kReach + 0.5 * kSmall.digits}, tr("droop"), kSmall, Qt::AlignRight);
    }

    // From above, the front upward.
    void tracks(const QRectF& box) {
        say({box.center().x(), box.top() + 1.3 * kStrong.digits}, tr("from above, front ↑"), kStrong,
            Qt::AlignHCenter);
        const double tall = car_.wheelbase + car_.rearTireRadius + car_.frontTireRadius;
        const double wide = std::max(rearTrack_, frontTrack_) + kTire;
        const double scale = std::min((box.width() - 4) / wide, (box.height() - 22) / tall);
        const double middle = box.center().x();
        const double front = box.top() + 11 + scale * car_.frontTireRadius;
        const double rear = front + scale * car_.wheelbase;
        painter_.setPen(kitDashes());
        painter_.drawLine(QPointF(middle, front - 4), QPointF(middle, rear + 4));
        treads(middle, front, scale * frontTrack_, scale * car_.frontTireRadius, scale * kTire,
               QStringLiteral("E"));
        treads(middle, rear, scale * rearTrack_, scale * car_.rearTireRadius, scale * kTire,
               QStringLiteral("D"));
    }
    void treads(double middle, double y, double track, double radius, double width, const QString& sign) {
        painter_.setPen(kitPen(0.5));
        painter_.setBrush(Qt::NoBrush);
        for (const double side : {-0.5, 0.5}) {
            const QPointF at(middle + side * track, y);
            painter_.drawRoundedRect(QRectF(at - QPointF(width / 2, radius), at + QPointF(width / 2, radius)),
                                     1, 1);
        }
        painter_.setPen(kitPen(kThinnestLine));
        drawArrow(painter_, {middle - track / 2, y}, {middle + track / 2, y});
        letter({middle, y}, sign);
    }

    // From above on four scales: the front to the right, the left side upward.
    [[nodiscard]] QPointF onPlan(double x, double y) const { return origin_ + scale_ * QPointF(x, -y); }
    void pads() {
        const std::array<QPointF, 4> wheels{onPlan(car_.wheelbase, frontTrack_ / 2),
                                            onPlan(car_.wheelbase, -frontTrack_ / 2),
                                            onPlan(0, rearTrack_ / 2), onPlan(0, -rearTrack_ / 2)};
        for (std::size_t at = 0; at < wheels.size(); ++at) {
            const double radius = scale_ * (at < 2 ? car_.frontTireRadius : car_.rearTireRadius);
            const double pad = std::max(6.0, 0.8 * radius);
            painter_.setBrush(Qt::NoBrush);
            painter_.setPen(kitPen(kThinnestLine));
            painter_.drawRect(QRectF(wheels[at] - QPointF(pad, pad), QSizeF(2 * pad, 2 * pad)));
            painter_.setPen(kitPen(0.5));
            const QPointF tire(radius, scale_ * kTire / 2);
            painter_.drawRoundedRect(QRectF(wheels[at] - tire, wheels[at] + tire), 1, 1);
            const bool isFront = at < 2;
            const QPointF bubble = wheels[at] + QPointF((isFront ? 1 : -1) * (pad + kBubble + 1), 0);
            drawBubble(painter_, bubble, QString::number(at + 1), fonts_);
            mark(bubble, wheels[at], QString::number(at + 1));
        }
    }
    void centerPlane(double rear, double front) {
        painter_.setPen(kitDashes());
        painter_.drawLine(onPlan(rear, 0), onPlan(front, 0));
        painter_.drawLine(onPlan(0, rearTrack_ / 2), onPlan(0, -rearTrack_ / 2));
        say({box_.left(), box_.bottom() - 0.4},
            tr("dashed: chalked center plane and the line under the rear axle"), kSmall);
    }
    void place(const PlanPoint& point) {
        const QPointF at = onPlan(point.at.x(), point.at.y());
        painter_.setPen(kitPen(0.4));
        painter_.setBrush(Qt::white);
        painter_.drawEllipse(at, 1.1, 1.1);
        painter_.setBrush(Qt::NoBrush);
        if (!point.isNumbered) {
            return;
        }
        QPointF bubble = at + QPointF(5.5, -5);
        const auto isTaken = [&](QPointF center) {
            const QRectF own(center - QPointF(kBubble, kBubble), QSizeF(2 * kBubble, 2 * kBubble));
            return std::ranges::any_of(marks_.bubbles,
                                       [&](const QRectF& box) { return box.intersects(own); });
        };
        for (const QPointF& off : {QPointF(5.5, -5), QPointF(-5.5, -5), QPointF(5.5, 5), QPointF(-5.5, 5)}) {
            bubble = at + off;
            if (!isTaken(bubble)) {
                break;
            }
        }
        painter_.setPen(kitPen(kThinnestLine));
        const QPointF way = bubble - at;
        painter_.drawLine(at + 0.16 * way, bubble);
        drawBubble(painter_, bubble, QString::number(point.number), fonts_);
        mark(bubble, at, QString::number(point.number));
    }

    QPainter& painter_;
    QRectF box_;
    const PrintFonts& fonts_;
    const Car& car_;
    double rearTrack_;
    double frontTrack_;
    double scale_ = 1;
    QPointF origin_;
    MeasuringMarks marks_;
};

}  // namespace

MeasuringMarks drawMeasuringWheels(QPainter& painter, const QRectF& box, const PrintFonts& fonts,
                                   const Car& car) {
    return CarSketch(painter, box, fonts, car).wheels();
}

MeasuringMarks drawMeasuringScales(QPainter& painter, const QRectF& box, const PrintFonts& fonts,
                                   const Car& car, const PlanArea& area) {
    return CarSketch(painter, box, fonts, car).scales(area);
}

}  // namespace bolthole
