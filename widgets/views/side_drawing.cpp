#include "widgets/views/side_drawing.h"

#include <QFontMetricsF>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <optional>

#include "geometry/weights/entered_figures.h"
#include "widgets/kit/body_outline.h"
#include "widgets/kit/pens.h"
#include "widgets/views/side_cloud.h"

namespace bolthole {

void SideDrawing::draw(StillPicture* still) {
    painter_.save();
    painter_.setRenderHint(QPainter::Antialiasing);
    painter_.setFont(textFont(TextSize::small));
    if (still != nullptr && station_ != nullptr && takesPixels(painter_)) {
        showStill(*still);
    } else {
        drawStill();
    }
    if (station_ != nullptr) {
        drawCar();
    }
    if (state_.before) {
        drawGhost(*state_.before, theme_.before, {1.6, 1.6});
    }
    if (state_.pointed) {
        drawGhost(*state_.pointed, theme_.ink, {4.0, 2.0});
    }
    drawCenterSpread(painter_, state_, camera_, picture_);
    drawLinks();
    if (station_ != nullptr) {
        markInstantCenter();  // under the holes: a ladder bar's lie in it
    }
    drawPoints();
    if (station_ != nullptr) {
        drawCenterOfGravity();
        drawInstantCenter();
    }
    drawLinkNames();
    nameRollAxis();
    if (state_.before) {
        drawGhostCenter(*state_.before, theme_.before);
    }
    if (state_.pointed) {
        drawGhostCenter(*state_.pointed, theme_.ink);
    }
    drawMarkedPoints();
    drawScaleBar();
    painter_.restore();
}

void SideDrawing::drawStill() {
    painter_.setRenderHint(QPainter::Antialiasing);
    painter_.fillRect(picture_, theme_.canvas);
    drawGrid();
    if (station_ != nullptr) {
        drawGround();
        drawBody();
        drawTire(picture(station_->ground.frontCenterX, station_->ground.frontCenterZ),
                 state_.solvedCar.frontTireRadius);
    }
}

StillPicture::Key SideDrawing::stillKey() const {
    const auto fine = [](QPointF place) { return (place * 64).toPoint(); };
    const GroundLine& ground = station_->ground;
    return {.picture = picture_,
            .ratio = painter_.device()->devicePixelRatioF(),
            .scale = camera_.scale,
            .grid = gridSpacing(),
            .origin = fine(camera_.origin),
            .frontCenter = fine(picture(ground.frontCenterX, ground.frontCenterZ)),
            .groundAtLeft = fine({picture_.left(), groundAt(picture_.left())}),
            .groundAtRight = fine({picture_.right(), groundAt(picture_.right())}),
            .frontRadius = state_.solvedCar.frontTireRadius,
            .body = state_.solvedCar.body,
            .bodyRadius = state_.solvedCar.rearTireRadius,
            .bodyLength = state_.solvedCar.wheelbase,
            .canvas = theme_.canvas.rgba()};
}

void SideDrawing::showStill(StillPicture& still) {
    const StillPicture::Key key = stillKey();
    if (still.pixels.isNull() || key != still.key) {
        still.key = key;
        still.pixels = QPixmap((picture_.size() * key.ratio).toSize());
        still.pixels.setDevicePixelRatio(key.ratio);
        QPainter painter(&still.pixels);
        painter.translate(-picture_.topLeft());
        SideDrawing(painter, state_, points_, camera_, picture_, marks_).drawStill();
    }
    painter_.drawPixmap(picture_.topLeft(), still.pixels);
}

// The chassis does not move in this picture, so neither does its body: faint, as it only says where one is.
void SideDrawing::drawBody() {
    const Car& car = state_.solvedCar;
    if (!car.body) {
        return;
    }
    const BodyShape shape = bodyShape(car.body, car.wheelbase, car.rearTireRadius);
    const auto shown = [&](const QPolygonF& of) {
        QPolygonF points;
        for (const QPointF& point : of) {
            points << picture(point.x(), point.y());
        }
        return points;
    };
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(roundPen(over(theme_.metal, 0.3, theme_.canvas), 1.5));
    painter_.drawPolygon(shown(shape.outline));
    if (!shape.window.isEmpty()) {
        painter_.drawPolygon(shown(shape.window));
    }
}

// What stands behind the links and moves with them.
void SideDrawing::drawCar() {
    drawTire(picture(station_->pose.x, station_->pose.z), state_.solvedCar.rearTireRadius);
    drawShaft();
    drawHousing();
    drawReferenceLine();
    drawLinkLines();
    drawRollAxis();
    drawInstantCenterPath(state_.trace, dashedPen(theme_.instantCenter, 1.6, {1.0, 1.5}));
    drawSwingArm();
}

// The ground's height in the picture.
double SideDrawing::groundAt(double across) const {
    const GroundLine& ground = station_->ground;
    const QPointF patch = picture(ground.patchX, ground.patchZ);
    return patch.y() - (across - patch.x()) * ground.alongZ / ground.alongX;
}

void SideDrawing::drawGround() {
    drawEarth({picture_.left(), groundAt(picture_.left())}, {picture_.right(), groundAt(picture_.right())});
}

void SideDrawing::drawTire(QPointF center, double radius) {
    const double size = radius * camera_.scale;
    if (!picture_.intersects(QRectF(center - QPointF(size, size), center + QPointF(size, size)))) {
        return;
    }
    painter_.setPen(roundPen(theme_.metal, 1.5));
    painter_.setBrush(over(theme_.metalFill, 0.75, theme_.canvas));
    painter_.drawEllipse(center, size, size);
    painter_.setBrush(over(theme_.canvas, 0.85, theme_.metalFill));
    painter_.setPen(roundPen(over(theme_.metal, 0.6, theme_.canvas), 1.0));
    painter_.drawEllipse(center, 0.6 * size, 0.6 * size);
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(roundPen(theme_.metal, 1.0));
    painter_.drawLine(center - QPointF(4, 0), center + QPointF(4, 0));
    painter_.drawLine(center - QPointF(0, 4), center + QPointF(0, 4));
}

// The axle tube as a circle, and from it a cone to the pinion's joint: it shows the pinion's attitude.
void SideDrawing::drawHousing() {
    const QPointF center = picture(station_->pose.x, station_->pose.z);
    const double tube = 0.24 * state_.solvedCar.rearTireRadius * camera_.scale;
    painter_.setPen(roundPen(theme_.metal, 1.3));
    painter_.setBrush(over(theme_.metal, 0.25, theme_.canvas));
    painter_.drawEllipse(center, tube, tube);
    if (!state_.solvedCar.driveline) {
        return;
    }
    const QPointF nose = camera_.toPicture(carriedToPicture(state_, state_.solvedCar.driveline->pinionJoint));
    const QPointF along = unit(nose - center);
    const QPointF across(-along.y(), along.x());
    QPainterPath cone(center + across * (0.8 * tube));
    cone.lineTo(nose + across * (0.22 * tube));
    cone.lineTo(nose - across * (0.22 * tube));
    cone.lineTo(center - across * (0.8 * tube));
    painter_.drawPath(cone);
    painter_.setBrush(Qt::NoBrush);
}

void SideDrawing::drawShaft() {
    if (!state_.solvedCar.driveline) {
        return;
    }
    const Driveline& driveline = *state_.solvedCar.driveline;
    const QPointF rear = camera_.toPicture(carriedToPicture(state_, driveline.pinionJoint));
    const QPointF front = picture(driveline.outputJoint.x(), driveline.outputJoint.z());
    painter_.setPen(roundPen(over(theme_.metal, 0.55, theme_.canvas), 5.0));
    painter_.drawLine(rear, front);
    const QPointF axis(std::cos(driveline.outputAngle), -std::sin(driveline.outputAngle));
    painter_.setPen(roundPen(over(theme_.metal, 0.8, theme_.canvas), 9.0));
    painter_.drawLine(front, front + axis * (0.12 * camera_.scale));
}

// Drawn only while it stays within a plausible distance: through infinity it breaks and comes back on the
// other side.
void SideDrawing::drawInstantCenterPath(const Trace& trace, const QPen& pen) {
    QPainterPath path;
    const Station* last = nullptr;
    for (const Station& station : trace.stations) {
        if (last != nullptr && std::isfinite(last->icCarX) && std::isfinite(station.icCarX)) {
            const QLineF piece(picture(last->icCarX, last->icCarZ), picture(station.icCarX, station.icCarZ));
            const std::optional<QLineF> seen = clipped(piece, picture_);
            // From far ahead to far behind in one step: that piece runs through infinity, not through the
            // picture.
            if (seen && piece.length() < 3 * picture_.width()) {
                if (path.currentPosition() != seen->p1() || path.isEmpty()) {
                    path.moveTo(seen->p1());
                }
                path.lineTo(seen->p2());
            }
        }
        last = &station;
    }
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(pen);
    painter_.drawPath(path);
}

// Through the rear patch and the CG's height above the front patch: a swing arm on it is 100 % anti-squat.
void SideDrawing::drawReferenceLine() {
    const GroundLine& ground = station_->ground;
    const Car& car = state_.solvedCar;
    const CarBalance balance = balanceOf(car);
    const double cgX = balance.cgX(car.wheelbase);
    const double height = ground.above(cgX, balance.height);
    const double endX = ground.patchX + ground.wheelbase * ground.alongX - height * ground.alongZ;
    const double endZ = ground.patchZ + ground.wheelbase * ground.alongZ + height * ground.alongX;
    const QPointF from = picture(ground.patchX, ground.patchZ);
    const QPointF to = picture(endX, endZ);
    painter_.setPen(dashedPen(over(theme_.reference, 0.75, theme_.canvas), 1.3, {2.0, 3.0}));
    drawClipped(from, to);
    const QString text = QStringLiteral("100 %");
    const QFontMetricsF metrics(painter_.font());
    QPointF anchor = to;
    if (!inPicture(to, 30)) {  // where the line leaves the picture, on its way
        const double share = std::min((picture_.right() - 40 - from.x()) / (to.x() - from.x()),
                                      (from.y() - picture_.top() - 30) / std::max(1.0, from.y() - to.y()));
        anchor = from + (to - from) * std::clamp(share, 0.0, 1.0);
    }
    const QRectF box = labels_.place(anchor, metrics.size(0, text), 7, 7);
    painter_.setPen(theme_.muted);
    painter_.drawText(box, Qt::AlignCenter, text);
}

// From the rear contact patch along the swing arm's angle: to the instant center, or out of the picture.
void SideDrawing::drawSwingArm() {
    const GroundLine& ground = station_->ground;
    const QPointF from = picture(ground.patchX, ground.patchZ);
    const double angle = (*station_)[Figure::swingArmAngle] + (*station_)[Figure::ground];
    QPointF to = picture(station_->icCarX, station_->icCarZ);
    if (!(std::abs(to.x()) < kNoLimit && std::abs(to.y()) < kNoLimit)) {
        to = from + QPointF(std::cos(angle), -std::sin(angle)) * 2 * picture_.width();
    }
    painter_.setPen(roundPen(theme_.instantCenter, 2.2));
    drawClipped(from, to);
}

// The links' lines prolonged to the instant center: only where they meet there, in a mirror-symmetric car.
void SideDrawing::drawLinkLines() {
    for (const DrawnLink& link : points_.links) {
        if (link.farSide || link.role == Role::crosswise ||
            state_.car.links[static_cast<std::size_t>(link.link)].kind != LinkKind::rod) {
            continue;
        }
        const QPointF from = camera_.toPicture(link.chassis);
        QPointF along = unit(from - camera_.toPicture(link.axle));
        const QPointF center = picture(station_->icCarX, station_->icCarZ);
        double reach = 2 * picture_.width();
        if (std::abs(center.x()) < kNoLimit && std::abs(center.y()) < kNoLimit) {
            const QPointF way = center - from;
            const double projected = way.x() * along.x() + way.y() * along.y();
            along *= projected < 0 ? -1 : 1;
            reach = std::abs(projected);
        }
        painter_.setPen(dashedPen(over(colorOf(link.role), 0.8, theme_.canvas), 1.2, {6.0, 4.0}));
        drawClipped(from, from + along * reach);
    }
}

}  // namespace bolthole
