#include "widgets/side_drawing.h"

#include <QFontMetricsF>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <optional>

#include "geometry/entered_figures.h"
#include "widgets/pens.h"

namespace bolthole {

namespace {

constexpr double kLinkWidth = 7.0;  // pixels

}  // namespace

SideDrawing::SideDrawing(QPainter& painter, const BenchState& state, const SidePoints& points,
                         const SideCamera& camera, QRectF picture, const SideMarks& marks)
    : painter_(painter),
      state_(state),
      points_(points),
      camera_(camera),
      picture_(picture),
      marks_(marks),
      theme_(theme()),
      station_(drawnStation(state)),
      labels_(picture.adjusted(4, 4, -4, -4)),
      // Holes of one bracket stand apart as long as they can still be told from dots.
      holeRadius_(std::clamp(0.36 * points.closestHoles * camera.scale, 2.6, 4.2)) {}

void SideDrawing::draw() {
    painter_.save();
    painter_.setRenderHint(QPainter::Antialiasing);
    painter_.setFont(textFont(TextSize::small));
    painter_.fillRect(picture_, theme_.canvas);
    drawGrid();
    if (station_ != nullptr) {
        drawGround();
        drawTire(picture(station_->ground.frontCenterX, station_->ground.frontCenterZ),
                 state_.solvedCar.frontTireRadius);
        drawTire(picture(station_->pose.x, station_->pose.z), state_.solvedCar.rearTireRadius);
        drawShaft();
        drawHousing();
        drawReferenceLine();
        drawLinkLines();
        drawInstantCenterPath(state_.trace, dashedPen(theme_.instantCenter, 1.6, {1.0, 1.5}));
        drawSwingArm();
    }
    if (state_.before) {
        drawGhost(*state_.before, theme_.before, {1.6, 1.6});
    }
    if (state_.pointed) {
        drawGhost(*state_.pointed, theme_.ink, {4.0, 2.0});
    }
    drawLinks();
    drawPoints();
    if (station_ != nullptr) {
        drawCenterOfGravity();
        drawInstantCenter();
    }
    drawLinkNames();
    if (state_.before) {
        drawGhostCenter(*state_.before, theme_.before);
    }
    if (state_.pointed) {
        drawGhostCenter(*state_.pointed, theme_.ink);
    }
    drawPointLabel(marks_.hovered);
    if (!(marks_.selected == marks_.hovered)) {
        drawPointLabel(marks_.selected);
    }
    drawScaleBar();
    painter_.restore();
}

QColor SideDrawing::colorOf(Role role) const {
    return role == Role::lower ? theme_.lower : role == Role::upper ? theme_.upper : theme_.crosswise;
}

void SideDrawing::drawClipped(QPointF from, QPointF to) {
    if (const std::optional<QLineF> seen = clipped(QLineF(from, to), picture_)) {
        painter_.drawLine(*seen);
    }
}

bool SideDrawing::inPicture(QPointF point, double margin) const {
    return picture_.adjusted(margin, margin, -margin, -margin).contains(point);
}

QString SideDrawing::distanceText(double metres) const {
    return QString::fromStdString(figureText(metres, Quantity::length, state_.style.units));
}

void SideDrawing::drawGrid() {
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

void SideDrawing::drawGround() {
    const GroundLine& ground = station_->ground;
    const QPointF patch = picture(ground.patchX, ground.patchZ);
    const QPointF along(ground.alongX, -ground.alongZ);
    const double slope = along.y() / along.x();
    const QPointF left(picture_.left(), patch.y() + (picture_.left() - patch.x()) * slope);
    const QPointF right(picture_.right(), patch.y() + (picture_.right() - patch.x()) * slope);
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

void SideDrawing::drawLinks() {
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

void SideDrawing::drawPoints() {
    for (const bool used : {false, true}) {
        for (const DrawnPoint& point : points_.points) {
            if (point.inUse == used) {
                drawPoint(point);
            }
        }
    }
}

// A free hole is an empty ring; a bolted one is a filled bolt head with a bright center.
void SideDrawing::drawPoint(const DrawnPoint& point) {
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

}  // namespace bolthole
