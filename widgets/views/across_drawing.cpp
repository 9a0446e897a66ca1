#include "widgets/views/across_drawing.h"

#include <QFontMetricsF>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "geometry/kinematics/roll.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

constexpr double kCore = 1.8;  // pixels: the line inside a link that tells its role without color

void include(QRectF& box, QPointF point) {
    if (std::isfinite(point.x()) && std::isfinite(point.y())) {
        box.setLeft(std::min(box.left(), point.x()));
        box.setRight(std::max(box.right(), point.x()));
        box.setTop(std::min(box.top(), point.y()));
        box.setBottom(std::max(box.bottom(), point.y()));
    }
}

void includeBothSides(QRectF& box, ViewPlane plane, const Eigen::Vector3d& point) {
    include(box, inPlane(plane, point));
    include(box, inPlane(plane, mirrored(point)));
}

// Half of what the wheels of an axle take up across the car.
double halfWidth(const std::optional<double>& track) {
    return track ? (*track + kDrawnTireWidth) / 2 : 0.0;
}

}  // namespace

std::optional<DrawnRollCenter> drawnRollCenter(const BenchState& state) {
    const Station* station = drawnStation(state);
    if (station == nullptr) {
        return std::nullopt;
    }
    const double height = solveRoll(state.solvedCar, (*station)[Figure::travel], 0).squareCenter;
    if (!std::isfinite(height)) {
        return std::nullopt;
    }
    const GroundLine& ground = station->ground;
    return DrawnRollCenter{{-station->pose.y, ground.patchZ + height * ground.alongX}, height};
}

QRectF acrossLinksBox(const BenchState& state, ViewPlane plane) {
    const Car& car = state.car;
    const double radius = car.rearTireRadius;
    QRectF box(inPlane(plane, {0, 0, 0}), QSizeF(0, 0));
    includeBothSides(box, plane, {radius, halfWidth(car.rearTrack), 2 * radius});
    includeBothSides(box, plane, {-radius, halfWidth(car.rearTrack), 0});
    for (const Link& link : car.links) {
        for (const Bracket* bracket : {&link.axle, &link.chassis}) {
            for (const Hole& hole : bracket->holes) {
                includeBothSides(box, plane, hole.at);
            }
        }
    }
    return box;
}

QRectF acrossWholeBox(const BenchState& state, ViewPlane plane) {
    const Car& car = state.car;
    QRectF box = acrossLinksBox(state, plane);
    includeBothSides(box, plane, {car.wheelbase + car.frontTireRadius, halfWidth(car.frontTrack), 0});
    if (car.driveline) {
        include(box, inPlane(plane, car.driveline->outputJoint));
    }
    constexpr double kFarOff = 3.0;  // m: beyond, it is left to the edge marker
    if (plane == ViewPlane::rear) {
        if (const auto center = drawnRollCenter(state); center && std::abs(center->height) < kFarOff) {
            include(box, center->at);
        }
    }
    return box;
}

void AcrossDrawing::draw() {
    painter_.save();
    painter_.setRenderHint(QPainter::Antialiasing);
    painter_.setFont(textFont(TextSize::small));
    painter_.fillRect(picture_, theme_.canvas);
    drawGrid();
    if (station_ != nullptr) {
        drawCar();
    }
    if (state_.before) {
        drawGhost(*state_.before, theme_.before, {1.6, 1.6});
    }
    if (state_.pointed) {
        drawGhost(*state_.pointed, theme_.ink, {4.0, 2.0});
    }
    drawLinks();
    drawRoleLines();
    drawPoints();
    drawRollCenter();
    drawLinkNames();
    if (station_ != nullptr) {
        drawSides();
    }
    drawMarkedPoints();
    drawScaleBar();
    painter_.restore();
}

// All that stands behind the links.
void AcrossDrawing::drawCar() {
    if (plane_ == ViewPlane::rear) {
        const double ground = picture(0, station_->ground.patchZ).y();
        drawEarth({picture_.left(), ground}, {picture_.right(), ground});
    }
    drawCenterPlane();
    drawTires();
    drawShaft();
    drawHousing();
}

QPointF AcrossDrawing::shown(const Eigen::Vector3d& point) const {
    return camera_.toPicture(inPlane(plane_, point));
}

// The point of the axle's line that is `left` of its center.
QPointF AcrossDrawing::onAxle(double left) const {
    return shown(station_->pose.carry({0, left, 0}));
}

// How far the axle is turned in the picture, degrees clockwise.
double AcrossDrawing::axleTurn() const {
    const QPointF along = onAxle(1) - onAxle(-1);
    const double square = plane_ == ViewPlane::rear ? 180.0 : -90.0;
    return std::remainder(std::atan2(along.y(), along.x()) / kRadiansPerDegree - square, 360.0);
}

// The axle reaches to its wheels; where the track is not known, to its outermost holes.
double AcrossDrawing::halfAxle() const {
    const Car& car = state_.solvedCar;
    double reach = car.rearTrack.value_or(0) / 2;
    for (const Link& link : car.links) {
        reach = car.rearTrack ? reach : std::max(reach, std::abs(link.axle.inUse().at.y()) + 0.05);
    }
    return reach;
}

// The usual dash-dot of a center line in engineering drawing.
void AcrossDrawing::drawCenterPlane() {
    painter_.setPen(dashedPen(over(theme_.metal, 0.6, theme_.canvas), 1.0, {12.0, 4.0, 2.0, 4.0}));
    if (plane_ == ViewPlane::rear) {
        const double across = picture(0, 0).x();
        drawClipped({across, picture_.top()}, {across, picture_.bottom()});
    } else {
        const double down = picture(0, 0).y();
        drawClipped({picture_.left(), down}, {picture_.right(), down});
    }
}

void AcrossDrawing::drawTires() {
    const Car& car = state_.solvedCar;
    for (const double side : {1.0, -1.0}) {
        if (car.frontTrack && plane_ == ViewPlane::top) {
            drawTire({station_->ground.frontCenterX, side * *car.frontTrack / 2, 0}, 0, car.frontTireRadius);
        }
        if (car.rearTrack) {
            drawTire(station_->pose.carry({0, side * *car.rearTrack / 2, 0}), axleTurn(), car.rearTireRadius);
        }
    }
}

void AcrossDrawing::drawTire(const Eigen::Vector3d& center, double turn, double radius) {
    const QPointF at = shown(center);
    const double width = kDrawnTireWidth * camera_.scale;
    const double round = 2 * radius * camera_.scale;
    const QSizeF size = plane_ == ViewPlane::rear ? QSizeF(width, round) : QSizeF(round, width);
    if (!picture_.intersects(QRectF(at - QPointF(round, round), QSizeF(2 * round, 2 * round)))) {
        return;
    }
    const QRectF body(QPointF(-size.width() / 2, -size.height() / 2), size);
    painter_.save();
    painter_.translate(at);
    painter_.rotate(turn);
    painter_.setPen(dashedPen(theme_.metal, 1.3, {1.0, 2.0}));
    painter_.setBrush(over(theme_.metalFill, 0.75, theme_.canvas));
    painter_.drawRoundedRect(body, width / 4, width / 4);
    // The wheel's middle plane: what the track is measured between.
    painter_.setPen(dashedPen(over(theme_.metal, 0.8, theme_.canvas), 1.0, {8.0, 3.0, 2.0, 3.0}));
    painter_.drawLine(plane_ == ViewPlane::rear ? QLineF(0, body.top(), 0, body.bottom())
                                                : QLineF(body.left(), 0, body.right(), 0));
    painter_.restore();
}

// The tube from wheel to wheel, round in the middle, and from above the cone to the pinion's joint.
void AcrossDrawing::drawHousing() {
    const double radius = state_.solvedCar.rearTireRadius * camera_.scale;
    const QPointF center = onAxle(0);
    const QColor fill = over(theme_.metal, 0.25, theme_.canvas);
    const double reach = halfAxle();
    for (const bool inside : {false, true}) {
        const double thick = 0.2 * radius - (inside ? 2.6 : 0.0);
        painter_.setPen(QPen(inside ? fill : theme_.metal, std::max(1.0, thick), Qt::SolidLine, Qt::FlatCap));
        drawClipped(onAxle(reach), onAxle(-reach));
    }
    painter_.setPen(roundPen(theme_.metal, 1.3));
    painter_.setBrush(fill);
    const double middle = 0.24 * radius;
    if (state_.solvedCar.driveline && plane_ == ViewPlane::top) {
        const QPointF nose =
            camera_.toPicture(carriedInto(plane_, station_->pose, state_.solvedCar.rearTireRadius,
                                          state_.solvedCar.driveline->pinionJoint));
        const QPointF along = unit(nose - center);
        const QPointF across(-along.y(), along.x());
        QPainterPath cone(center + across * (0.8 * middle));
        cone.lineTo(nose + across * (0.22 * middle));
        cone.lineTo(nose - across * (0.22 * middle));
        cone.lineTo(center - across * (0.8 * middle));
        painter_.drawPath(cone);
    }
    painter_.drawEllipse(center, middle, middle);
    painter_.setBrush(Qt::NoBrush);
}

void AcrossDrawing::drawShaft() {
    if (!state_.solvedCar.driveline) {
        return;
    }
    const Driveline& driveline = *state_.solvedCar.driveline;
    const QPointF rear = camera_.toPicture(
        carriedInto(plane_, station_->pose, state_.solvedCar.rearTireRadius, driveline.pinionJoint));
    painter_.setPen(roundPen(over(theme_.metal, 0.55, theme_.canvas), 5.0));
    painter_.drawLine(rear, shown(driveline.outputJoint));
}

// A ghost stands at the same travel as the car on the bench; out of its reach there is nothing to draw.
void AcrossDrawing::drawGhost(const Ghost& ghost, const QColor& color, const QList<double>& dashes) {
    if (ghost.cursor.usable) {
        drawGhostLinks(ghost, over(color, 0.75, theme_.canvas), dashes);
    }
}

// Color is never the only sign: lowers are plain, uppers have a light line inside, crosswise rods a dashed
// one.
void AcrossDrawing::drawRoleLines() {
    for (const DrawnLink& link : points_.links) {
        if (link.role == Role::lower) {
            continue;
        }
        painter_.setPen(link.role == Role::upper ? QPen(theme_.canvas, kCore, Qt::SolidLine, Qt::FlatCap)
                                                 : dashedPen(theme_.canvas, kCore, {5.0, 3.0}));
        drawClipped(camera_.toPicture(link.axle), camera_.toPicture(link.chassis));
    }
}

// A diamond, where the side view's instant center is a ring.
void AcrossDrawing::drawRollCenter() {
    if (plane_ != ViewPlane::rear) {
        return;
    }
    const std::optional<DrawnRollCenter> center = drawnRollCenter(state_);
    if (!center) {
        return;
    }
    const QString text =
        QStringLiteral("Roll center %1 %2 high")
            .arg(distanceText(center->height), unitText(Quantity::length, state_.style.units));
    const QPointF at = camera_.toPicture(center->at);
    if (!inPicture(at, 12)) {
        drawEdgeMarker(text, center->at, theme_.instantCenter);
        return;
    }
    constexpr double kSize = 8;
    QPainterPath diamond(at + QPointF(0, -kSize));
    for (const QPointF corner : {QPointF(kSize, 0), QPointF(0, kSize), QPointF(-kSize, 0)}) {
        diamond.lineTo(at + corner);
    }
    diamond.closeSubpath();
    painter_.setPen(roundPen(theme_.instantCenter, 2.4));
    painter_.setBrush(faded(theme_.canvas, 0.7));
    painter_.drawPath(diamond);
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(theme_.instantCenter);
    painter_.drawEllipse(at, 2.5, 2.5);
    labels_.take(diamond.boundingRect());
    const QSizeF size = QFontMetricsF(painter_.font()).size(0, text) + QSizeF(8, 2);
    drawChip(labels_.place(at, size, 12, 2), text, faded(theme_.canvas, 0.85));
}

// Which side is which, and where the front is.
void AcrossDrawing::drawSides() {
    const bool rear = plane_ == ViewPlane::rear;
    const double wheel = state_.solvedCar.rearTrack ? *state_.solvedCar.rearTrack / 2 : halfAxle();
    const double out = rear ? wheel : wheel + kDrawnTireWidth / 2;
    const double ground = station_->ground.patchZ;
    writeQuietly(shown({station_->pose.x, out, ground}), QStringLiteral("left"), rear ? 6 : 2);
    writeQuietly(shown({station_->pose.x, -out, ground}), QStringLiteral("right"), 6);
    if (!rear) {
        writeQuietly({picture_.right() - 60, picture(0, 0).y()}, QStringLiteral("front \u2192"), 2);
    }
    if (!state_.solvedCar.rearTrack) {
        writeQuietly({picture_.center().x(), picture_.top() + 8},
                     QStringLiteral("Rear track not entered: no tires drawn"), 6);
    }
}

void AcrossDrawing::writeQuietly(QPointF beside, const QString& text, int preferred) {
    const QRectF box = labels_.place(beside, QFontMetricsF(painter_.font()).size(0, text), 5, preferred);
    if (!box.isNull()) {
        painter_.setPen(theme_.muted);
        painter_.drawText(box, Qt::AlignCenter, text);
    }
}

}  // namespace bolthole
