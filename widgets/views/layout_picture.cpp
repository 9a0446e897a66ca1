#include "widgets/views/layout_picture.h"

#include <QPainter>
#include <algorithm>

#include "widgets/kit/pens.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

// What is seen of the car, in tire radii.
constexpr double kBehind = 1.15;
constexpr double kAhead = 4.1;
constexpr double kAbove = 2.1;
constexpr double kTrackHalf = 2.15;  // middle of a tire from the center plane
constexpr double kTireHalf = 0.3;    // half its width

class LayoutPainter {
  public:
    LayoutPainter(QPainter& painter, const QRectF& box, const Car& car, LayoutSight sight)
        : painter_(painter), car_(car), sight_(sight), radius_(car.rearTireRadius) {
        const bool side = sight == LayoutSight::side;
        const double wide = (kBehind + kAhead) * radius_;
        const double high = (side ? kAbove : 2 * (kTrackHalf + kTireHalf)) * radius_;
        scale_ = std::min(box.width() / wide, (box.height() - 4) / high);
        origin_ = {box.center().x() - scale_ * (kAhead - kBehind) / 2 * radius_,
                   side ? box.center().y() + scale_ * high / 2 : box.center().y()};
    }

    void draw() {
        sight_ == LayoutSight::side ? drawSideCar() : drawPlanCar();
        for (const Link& link : car_.links) {
            drawLink(link, false);
            if (link.side == Side::both && sight_ == LayoutSight::plan) {
                drawLink(link, true);
            }
        }
    }

  private:
    [[nodiscard]] QPointF at(const Eigen::Vector3d& point) const {
        return origin_ + scale_ * QPointF(point.x(), sight_ == LayoutSight::side ? -point.z() : -point.y());
    }

    void drawSideCar() {
        const Theme& colors = theme();
        painter_.setPen(roundPen(colors.border, 1.2));
        const QPointF ground = at({-kBehind * radius_, 0, 0});
        painter_.drawLine(ground, at({kAhead * radius_, 0, 0}));
        painter_.setPen(roundPen(colors.metal, 1.4));
        painter_.setBrush(colors.metalFill);
        painter_.drawEllipse(at({0, 0, radius_}), scale_ * radius_, scale_ * radius_);
        painter_.setBrush(colors.card);
        painter_.drawEllipse(at({0, 0, radius_}), 0.22 * scale_ * radius_, 0.22 * scale_ * radius_);
    }

    void drawPlanCar() {
        const Theme& colors = theme();
        painter_.setPen(dashedPen(colors.border, 1, {5, 3, 1, 3}));
        painter_.drawLine(at({-kBehind * radius_, 0, 0}), at({kAhead * radius_, 0, 0}));
        painter_.setPen(roundPen(colors.metal, 1.4));
        painter_.setBrush(colors.metalFill);
        for (const double out : {kTrackHalf, -kTrackHalf}) {
            painter_.drawRoundedRect(QRectF(at({-radius_, (out + kTireHalf) * radius_, 0}),
                                            at({radius_, (out - kTireHalf) * radius_, 0})),
                                     3, 3);
        }
        painter_.setPen(QPen(colors.metal, 4));
        painter_.drawLine(at({0, (kTrackHalf - kTireHalf) * radius_, 0}),
                          at({0, (kTireHalf - kTrackHalf) * radius_, 0}));
        painter_.setPen(roundPen(colors.metal, 1.4));
        painter_.drawEllipse(at({0, 0, 0}), 0.32 * scale_ * radius_, 0.32 * scale_ * radius_);
    }

    void drawLink(const Link& link, bool otherSide) {
        Eigen::Vector3d chassis = link.chassis.inUse().at;
        Eigen::Vector3d axle = link.axle.inUse().at;
        if (otherSide) {
            chassis = mirrored(chassis);
            axle = mirrored(axle);
        }
        color_ = roleColor(roleOf(link, radius_));
        switch (link.kind) {
            case LinkKind::rod:
                return drawRod(at(chassis), at(axle));
            case LinkKind::pivot:
            case LinkKind::slider:
                return drawArm(link.kind, chassis);
            case LinkKind::guide:
                return drawGuide(at(axle));
        }
    }

    void drawRod(QPointF chassis, QPointF axle) {
        painter_.setPen(roundPen(color_, 2.6));
        painter_.drawLine(chassis, axle);
        painter_.setPen(roundPen(color_, 1.4));
        painter_.setBrush(theme().card);
        painter_.drawRect(QRectF(chassis - QPointF(2.6, 2.6), QSizeF(5.2, 5.2)));
        painter_.drawEllipse(axle, 2.8, 2.8);
    }

    // From the axle tube beside the arm's front; the axle end is part of the housing.
    void drawArm(LinkKind kind, const Eigen::Vector3d& front) {
        const QPointF tip = at(front);
        for (const double rise : {0.35, -0.35}) {
            const bool side = sight_ == LayoutSight::side;
            const Eigen::Vector3d root(0, front.y() + (side ? 0 : 0.3 * rise * radius_),
                                       radius_ + (side ? rise * radius_ : 0));
            painter_.setPen(roundPen(color_, 2.6));
            painter_.drawLine(at(root), tip);
        }
        painter_.setPen(roundPen(color_, 1.4));
        painter_.setBrush(theme().card);
        painter_.drawEllipse(tip, 3, 3);
        if (kind == LinkKind::slider) {
            painter_.setPen(roundPen(theme().ink, 1.4));
            for (const double off : {-5.0, 5.0}) {
                painter_.drawLine(tip + QPointF(-8, off), tip + QPointF(8, off));
            }
        } else {
            painter_.setPen(roundPen(theme().ink, 1.4));
            painter_.setBrush(Qt::NoBrush);
            painter_.drawPolyline(
                QPolygonF({tip + QPointF(-5, -8), tip + QPointF(0, -3.5), tip + QPointF(5, -8)}));
        }
    }

    void drawGuide(QPointF middle) {
        painter_.setPen(roundPen(color_, 2.2));
        const double reach = 1.5 * scale_ * radius_;
        if (sight_ == LayoutSight::plan) {
            painter_.drawLine(middle + QPointF(-3, 5), middle + QPointF(3, -5));
            painter_.drawLine(middle + QPointF(-3, 5), middle + QPointF(-3, reach));
            painter_.drawLine(middle + QPointF(3, -5), middle + QPointF(3, -reach));
        }
        painter_.setBrush(theme().card);
        painter_.setPen(roundPen(color_, 1.6));
        painter_.drawPolygon(QPolygonF({middle + QPointF(0, -4), middle + QPointF(4, 0),
                                        middle + QPointF(0, 4), middle + QPointF(-4, 0)}));
    }

    QPainter& painter_;
    const Car& car_;
    LayoutSight sight_;
    double radius_;
    double scale_ = 1;  // px/m
    QPointF origin_;
    QColor color_;
};

}  // namespace

void drawLayout(QPainter& painter, const QRectF& box, const Car& car, LayoutSight sight) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    LayoutPainter(painter, box, car, sight).draw();
    painter.restore();
}

}  // namespace bolthole
