#include "widgets/views/side_drawing.h"

#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <optional>

#include "geometry/weights/entered_figures.h"
#include "widgets/kit/body_outline.h"
#include "widgets/kit/kept_words.h"
#include "widgets/kit/pens.h"
#include "widgets/views/side_cloud.h"

namespace bolthole {

namespace {

constexpr double kOutputRadius = 0.055;  // m, of the drawing alone

}  // namespace

void SideDrawing::draw(StillLayers* layers) {
    painter_.save();
    painter_.setRenderHint(QPainter::Antialiasing);
    painter_.setFont(textFont(TextSize::small));
    drawBehind(layers);
    if (station_ != nullptr) {
        drawLines();
    }
    if (state_.baseline) {
        drawGhost(*state_.baseline, &Theme::baseline);
    }
    if (state_.pointed) {
        drawGhost(*state_.pointed, &Theme::ink);
    }
    drawCenterUncertainty(painter_, state_, camera_, picture_);
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
    if (state_.baseline) {
        drawGhostCenter(*state_.baseline, &Theme::baseline);
    }
    if (state_.pointed) {
        drawGhostCenter(*state_.pointed, &Theme::ink);
    }
    drawMarkedPoints();
    drawScaleBar();
    painter_.restore();
}

std::unique_ptr<PictureDrawing> SideDrawing::on(QPainter& painter) const {
    return std::make_unique<SideDrawing>(painter, state_, points_, camera_, picture_, marks_);
}

void SideDrawing::drawBackdrop() {
    painter_.setRenderHint(QPainter::Antialiasing);
    painter_.fillRect(picture_, theme_.canvas);
    drawGrid();
    if (station_ != nullptr) {
        drawGround();
        drawBody();
        put(SceneWheel{.center = {station_->ground.frontCenterX, station_->ground.frontCenterZ},
                       .radius = state_.solvedCar.frontTireRadius});
    }
}

void SideDrawing::tellBackdrop(StillKey& key) const {
    const GroundLine& ground = station_->ground;
    const Car& car = state_.solvedCar;
    key.tell(picture(ground.frontCenterX, ground.frontCenterZ));
    key.tell(QPointF(picture_.left(), groundAt(picture_.left())));
    key.tell(QPointF(picture_.right(), groundAt(picture_.right())));
    key.tell(car.frontTireRadius);
    key.tell(car.body ? static_cast<double>(*car.body) : -1.0);
    key.tell(car.rearTireRadius);  // and the wheelbase: what the body's shape follows from
    key.tell(car.wheelbase);
}

void SideDrawing::drawAxle() {
    put(SceneWheel{.center = {station_->pose.x, station_->pose.z},
                   .radius = state_.solvedCar.rearTireRadius});
    drawShaft();
    drawHousing();
}

void SideDrawing::tellAxle(StillKey& key) const {
    key.tell(picture(station_->pose.x, station_->pose.z));
    key.tell(state_.solvedCar.driveline ? 1.0 : 0.0);
    if (const std::optional<Driveline>& driveline = state_.solvedCar.driveline) {
        key.tell(camera_.toPicture(carriedToPicture(state_, driveline->pinionJoint)));
        key.tell(picture(driveline->outputJoint.x(), driveline->outputJoint.z()));
        key.tell(driveline->outputAngle);
    }
}

// The chassis does not move in this picture, so neither does its body: faint, as it only says where one is.
void SideDrawing::drawBody() {
    const Car& car = state_.solvedCar;
    if (!car.body) {
        return;
    }
    const BodyShape shape = bodyShape(car.body, car.wheelbase, car.rearTireRadius);
    const SceneStroke faint{&Theme::metal, SceneWeight::medium, SceneDash::solid, 0.3};
    putPath(shape.outline, faint);
    if (!shape.window.isEmpty()) {
        putPath(shape.window, faint);
    }
}

// What stands behind the links and moves with them.
void SideDrawing::drawLines() {
    drawReferenceLine();
    drawLinkLines();
    drawRollAxis();
    drawInstantCenterPath(state_.trace, dashedPen(theme_.instantCenter, 1.6, {1.0, 1.5}));
    drawArm(*station_, {&Theme::instantCenter, SceneWeight::strong});
}

// The ground's height in the picture.
double SideDrawing::groundAt(double across) const {
    const GroundLine& ground = station_->ground;
    const QPointF patch = picture(ground.patchX, ground.patchZ);
    return patch.y() - (across - patch.x()) * ground.alongZ / ground.alongX;
}

void SideDrawing::drawGround() {
    const GroundLine& ground = station_->ground;
    put(SceneGround{.at = {ground.patchX, ground.patchZ}, .along = {ground.alongX, ground.alongZ}});
}

// The axle tube as a circle, and from it a cone to the pinion's joint: it shows the pinion's attitude.
void SideDrawing::drawHousing() {
    const Car& car = state_.solvedCar;
    SceneHousing housing{.center = {station_->pose.x, station_->pose.z}, .radius = 0.24 * car.rearTireRadius};
    if (car.driveline) {
        housing.nose = carriedToPicture(state_, car.driveline->pinionJoint);
    }
    put(housing);
}

void SideDrawing::drawShaft() {
    if (!state_.solvedCar.driveline) {
        return;
    }
    const Driveline& driveline = *state_.solvedCar.driveline;
    const QPointF front(driveline.outputJoint.x(), driveline.outputJoint.z());
    const QPointF axis(std::cos(driveline.outputAngle), std::sin(driveline.outputAngle));
    put(SceneTube{
        .from = carriedToPicture(state_, driveline.pinionJoint), .to = front, .radius = kShaftRadius});
    put(SceneTube{.from = front, .to = front + 0.12 * axis, .radius = kOutputRadius, .strength = 0.35});
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
    putRay({ground.patchX, ground.patchZ}, to - from,
           {&Theme::reference, SceneWeight::thin, SceneDash::dotted, 0.75});
    const QString text = QStringLiteral("100 %");
    QPointF anchor = to;
    if (!inPicture(to, 30)) {  // where the line leaves the picture, on its way
        const double share = std::min((picture_.right() - 40 - from.x()) / (to.x() - from.x()),
                                      (from.y() - picture_.top() - 30) / std::max(1.0, from.y() - to.y()));
        anchor = from + (to - from) * std::clamp(share, 0.0, 1.0);
    }
    const QRectF box = labels_.place(anchor, sizeOfLine(painter_.font(), text), 7, 7);
    painter_.setPen(theme_.muted);
    drawLine(painter_, box, Qt::AlignCenter, text);
}

// From the rear contact patch along the swing arm's angle: to the instant center, or out of the picture.
void SideDrawing::drawArm(const Station& station, const SceneStroke& stroke) {
    const GroundLine& ground = station.ground;
    const double angle = station[Figure::swingArmAngle] + station[Figure::ground];
    QPointF way = picture(station.icCarX, station.icCarZ) - picture(ground.patchX, ground.patchZ);
    if (!(std::abs(way.x()) < kNoLimit && std::abs(way.y()) < kNoLimit)) {
        way = QPointF(std::cos(angle), -std::sin(angle)) * 2 * picture_.width();
    }
    putRay({ground.patchX, ground.patchZ}, way, stroke);
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
            const double projected = QPointF::dotProduct(center - from, along);
            along *= projected < 0 ? -1 : 1;
            reach = std::abs(projected);
        }
        putRay(link.chassis, along * reach, {roleInk(link.role), SceneWeight::thin, SceneDash::dashed, 0.8});
    }
}

}  // namespace bolthole
