#include "widgets/views/picture_drawing.h"

#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "geometry/kinematics/linkage.h"
#include "widgets/kit/pens.h"

namespace bolthole {

namespace {

constexpr double kGhostLinkWidth =
    2.2;  // pixels: thinner than a link, so that both are seen where they coincide

}  // namespace

PictureDrawing::PictureDrawing(QPainter& painter, const BenchState& state, const DrawnPoints& points,
                               const SideCamera& camera, QRectF picture, const PictureMarks& marks,
                               ViewPlane plane)
    : painter_(painter),
      state_(state),
      points_(points),
      camera_(camera),
      picture_(picture),
      marks_(marks),
      theme_(theme()),
      station_(drawnStation(state)),
      plane_(plane),
      labels_(picture.adjusted(4, 4, -4, -4)),
      // Holes of one bracket stand apart as long as they can still be told from dots.
      holeRadius_(std::clamp(0.36 * points.closestHoles * camera.scale, 2.6, 4.2)) {}

QColor PictureDrawing::colorOf(Role role) const {
    return role == Role::lower ? theme_.lower : role == Role::upper ? theme_.upper : theme_.crosswise;
}

void PictureDrawing::drawClipped(QPointF from, QPointF to) {
    if (const std::optional<QLineF> seen = clipped(QLineF(from, to), picture_)) {
        painter_.drawLine(*seen);
    }
}

bool PictureDrawing::inPicture(QPointF point, double margin) const {
    return picture_.adjusted(margin, margin, -margin, -margin).contains(point);
}

QString PictureDrawing::distanceText(double metres) const {
    return QString::fromStdString(figureText(metres, Quantity::length, state_.style.units));
}

void PictureDrawing::drawGrid() {
    const double spacing = gridSpacing();
    const QPointF low = camera_.toCar(picture_.bottomLeft());
    const QPointF high = camera_.toCar(picture_.topRight());
    painter_.setRenderHint(QPainter::Antialiasing, false);
    painter_.setPen(QPen(theme_.grid, 1.0));
    for (double x = std::ceil(low.x() / spacing) * spacing; x <= high.x(); x += spacing) {
        const double across = picture(x, 0).x();
        painter_.drawLine(QPointF(across, picture_.top()), QPointF(across, picture_.bottom()));
    }
    for (double z = std::ceil(low.y() / spacing) * spacing; z <= high.y(); z += spacing) {
        const double down = picture(0, z).y();
        painter_.drawLine(QPointF(picture_.left(), down), QPointF(picture_.right(), down));
    }
    painter_.setRenderHint(QPainter::Antialiasing, true);
}

void PictureDrawing::drawLinks() {
    const Qt::PenStyle style = state_.traceIsCurrent ? Qt::SolidLine : Qt::DashLine;
    for (const DrawnLink& link : points_.links) {
        const QPointF axle = camera_.toPicture(link.axle);
        const QPointF chassis = camera_.toPicture(link.chassis);
        if (link.farSide && QLineF(axle, chassis).length() > 0) {
            painter_.setPen(roundPen(over(colorOf(link.role), 0.4, theme_.canvas), kLinkWidth));
            painter_.drawLine(axle, chassis);
            continue;
        }
        painter_.setPen(roundPen(theme_.canvas, kLinkWidth + 3));
        painter_.drawLine(axle, chassis);
        painter_.setPen(roundPen(colorOf(link.role), kLinkWidth, style));
        painter_.drawLine(axle, chassis);
    }
}

void PictureDrawing::drawPoints() {
    for (const bool used : {false, true}) {
        for (const DrawnPoint& point : points_.points) {
            if (point.inUse == used) {
                drawPoint(point);
            }
        }
    }
}

// A free hole is an empty ring; a bolted one is a filled bolt head with a bright center.
void PictureDrawing::drawPoint(const DrawnPoint& point) {
    const QPointF at = camera_.toPicture(point.at);
    labels_.take(QRectF(at - QPointF(holeRadius_, holeRadius_), at + QPointF(holeRadius_, holeRadius_)));
    const bool hovered = point.id == marks_.hovered;
    const bool selected = point.id == marks_.selected;
    if (hovered || selected) {
        painter_.setBrush(faded(theme_.focus, hovered ? 0.22 : 0.12));
        painter_.setPen(selected ? roundPen(theme_.focus, marks_.keyboardFocus ? 2.5 : 1.5)
                                 : QPen(Qt::NoPen));
        painter_.drawEllipse(at, holeRadius_ + 6, holeRadius_ + 6);
    }
    if (point.id.kind == PointId::Kind::joint) {
        painter_.setPen(roundPen(theme_.ink, 1.4));
        painter_.setBrush(theme_.metal);
        painter_.drawRect(QRectF(at - QPointF(4, 4), QSizeF(8, 8)));
        return;
    }
    painter_.setPen(roundPen(theme_.ink, point.inUse ? 0.72 * holeRadius_ : 1.4));
    painter_.setBrush(point.inUse ? theme_.card : theme_.canvas);
    const double radius = point.inUse ? holeRadius_ + 0.4 : holeRadius_;
    painter_.drawEllipse(at, radius, radius);
}

// The ground line from one edge of the picture to the other, and the earth below it.
void PictureDrawing::drawEarth(QPointF left, QPointF right) {
    if (std::min(left.y(), right.y()) < picture_.bottom()) {
        QPainterPath earth(left);
        earth.lineTo(right);
        earth.lineTo(QPointF(picture_.right(), std::max(picture_.bottom(), right.y()) + 1));
        earth.lineTo(QPointF(picture_.left(), std::max(picture_.bottom(), left.y()) + 1));
        painter_.save();
        painter_.setClipRect(picture_);
        painter_.fillPath(earth, theme_.earth);
        painter_.restore();
    }
    painter_.setPen(roundPen(theme_.metal, 1.5));
    painter_.drawLine(left, right);
}

void PictureDrawing::drawGhostLinks(const Ghost& ghost, const QColor& color, const QList<double>& dashes) {
    for (const Constraint& constraint : buildLinkage(ghost.car).constraints) {
        if (plane_ == ViewPlane::side && constraint.side == Side::right) {
            continue;
        }
        const QPointF axle = camera_.toPicture(inPlane(plane_, ghost.cursor.pose.carry(constraint.onAxle)));
        const QPointF chassis = camera_.toPicture(inPlane(plane_, constraint.onChassis));
        painter_.setPen(dashedPen(color, kGhostLinkWidth, dashes));
        drawClipped(axle, chassis);
        painter_.setPen(roundPen(color, 1.4));
        painter_.setBrush(Qt::NoBrush);
        for (const QPointF end : {axle, chassis}) {
            painter_.drawEllipse(end, holeRadius_ + 3, holeRadius_ + 3);
        }
    }
}

}  // namespace bolthole
