#include "widgets/views/across_drawing.h"

#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "geometry/kinematics/roll.h"
#include "widgets/kit/kept_words.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

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

void AcrossDrawing::draw(StillLayers* layers) {
    painter_.save();
    painter_.setRenderHint(QPainter::Antialiasing);
    painter_.setFont(textFont(TextSize::small));
    drawBehind(layers);
    // A ghost stands at the same travel as the car on the bench; out of its reach there is nothing to draw.
    if (state_.baseline && state_.baseline->cursor.usable) {
        drawGhostLinks(*state_.baseline, &Theme::baseline);
    }
    if (state_.pointed && state_.pointed->cursor.usable) {
        drawGhostLinks(*state_.pointed, &Theme::ink);
    }
    drawLinks();
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

std::unique_ptr<PictureDrawing> AcrossDrawing::on(QPainter& painter) const {
    return std::make_unique<AcrossDrawing>(painter, state_, points_, camera_, picture_, marks_, plane_);
}

void AcrossDrawing::drawBackdrop() {
    painter_.setRenderHint(QPainter::Antialiasing);
    painter_.fillRect(picture_, theme_.canvas);
    drawGrid();
    if (station_ == nullptr) {
        return;
    }
    if (plane_ == ViewPlane::rear) {
        put(SceneGround{.at = {0, station_->ground.patchZ}});
    }
    drawCenterPlane();
    const Car& car = state_.solvedCar;
    if (car.frontTrack && plane_ == ViewPlane::top) {
        for (const double side : {1.0, -1.0}) {
            putTire({station_->ground.frontCenterX, side * *car.frontTrack / 2, 0}, 0, car.frontTireRadius);
        }
    }
}

void AcrossDrawing::tellBackdrop(StillKey& key) const {
    const Car& car = state_.solvedCar;
    const bool rear = plane_ == ViewPlane::rear;
    key.tell(picture(rear ? 0 : station_->ground.frontCenterX, rear ? station_->ground.patchZ : 0));
    key.tell(car.frontTrack.value_or(-1));
    key.tell(car.frontTireRadius);
}

void AcrossDrawing::drawAxle() {
    const Car& car = state_.solvedCar;
    if (car.rearTrack) {
        for (const double side : {1.0, -1.0}) {
            putTire(station_->pose.carry({0, side * *car.rearTrack / 2, 0}), axleTurn(), car.rearTireRadius);
        }
    }
    drawShaft();
    drawHousing();
}

void AcrossDrawing::tellAxle(StillKey& key) const {
    const Car& car = state_.solvedCar;
    key.tell(camera_.toPicture(onAxle(halfAxle())));
    key.tell(camera_.toPicture(onAxle(-halfAxle())));
    key.tell(car.rearTrack ? 1.0 : 0.0);
    key.tell(car.rearTireRadius);
    key.tell(car.driveline ? 1.0 : 0.0);
    if (car.driveline) {
        key.tell(camera_.toPicture(
            carriedInto(plane_, station_->pose, car.rearTireRadius, car.driveline->pinionJoint)));
        key.tell(camera_.toPicture(inPlane(plane_, car.driveline->outputJoint)));
    }
}

QPointF AcrossDrawing::shown(const Eigen::Vector3d& point) const {
    return camera_.toPicture(inPlane(plane_, point));
}

// The point of the axle's line that is `left` of its center.
QPointF AcrossDrawing::onAxle(double left) const {
    return inPlane(plane_, station_->pose.carry({0, left, 0}));
}

// How far the axle is turned in the picture, rad counterclockwise.
double AcrossDrawing::axleTurn() const {
    const QPointF along = onAxle(1) - onAxle(-1);
    const double square = (plane_ == ViewPlane::rear ? 180.0 : 90.0) * kRadiansPerDegree;
    return std::remainder(std::atan2(along.y(), along.x()) - square, 360.0 * kRadiansPerDegree);
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
    const QPointF low = camera_.toCar(picture_.bottomLeft());
    const QPointF high = camera_.toCar(picture_.topRight());
    const bool rear = plane_ == ViewPlane::rear;
    put(SceneLine{.from = rear ? QPointF(0, high.y()) : QPointF(low.x(), 0),
                  .to = rear ? QPointF(0, low.y()) : QPointF(high.x(), 0),
                  .stroke = {&Theme::metal, SceneWeight::hair, SceneDash::dashDot, 0.6}});
}

void AcrossDrawing::putTire(const Eigen::Vector3d& center, double turn, double radius) {
    const QSizeF size(kDrawnTireWidth, 2 * radius);
    put(SceneTire{.center = inPlane(plane_, center),
                  .size = plane_ == ViewPlane::rear ? size : size.transposed(),
                  .turn = turn});
}

// The tube from wheel to wheel, round in the middle, and from above the cone to the pinion's joint.
void AcrossDrawing::drawHousing() {
    const Car& car = state_.solvedCar;
    const double reach = halfAxle();
    put(SceneTube{.from = onAxle(reach), .to = onAxle(-reach), .radius = 0.1 * car.rearTireRadius});
    SceneHousing housing{.center = onAxle(0), .radius = 0.24 * car.rearTireRadius};
    if (car.driveline && plane_ == ViewPlane::top) {
        housing.nose = carriedInto(plane_, station_->pose, car.rearTireRadius, car.driveline->pinionJoint);
    }
    put(housing);
}

void AcrossDrawing::drawShaft() {
    const Car& car = state_.solvedCar;
    if (car.driveline) {
        put(SceneTube{
            .from = carriedInto(plane_, station_->pose, car.rearTireRadius, car.driveline->pinionJoint),
            .to = inPlane(plane_, car.driveline->outputJoint),
            .radius = kShaftRadius});
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
        tr("Roll center %1 %2 high")
            .arg(distanceText(center->height), unitText(Quantity::length, state_.style.units));
    const QPointF at = camera_.toPicture(center->at);
    if (!inPicture(at, 12)) {
        drawEdgeMarker(text, center->at, theme_.instantCenter);
        return;
    }
    put(SceneCenter{.at = center->at, .kind = CenterKind::roll});
    const QPointF reach(style_.center, style_.center);
    labels_.take(QRectF(at - reach, at + reach));
    const QSizeF size = sizeOfLine(painter_.font(), text) + QSizeF(8, 2);
    drawChip(labels_.place(at, size, 12, 2), text, faded(theme_.canvas, 0.85));
}

// Which side is which, and where the front is.
void AcrossDrawing::drawSides() {
    const bool rear = plane_ == ViewPlane::rear;
    const double wheel = state_.solvedCar.rearTrack ? *state_.solvedCar.rearTrack / 2 : halfAxle();
    const double out = rear ? wheel : wheel + kDrawnTireWidth / 2;
    const double ground = station_->ground.patchZ;
    writeQuietly(shown({station_->pose.x, out, ground}), tr("left"), rear ? 6 : 2);
    writeQuietly(shown({station_->pose.x, -out, ground}), tr("right"), 6);
    if (!rear) {
        writeQuietly({picture_.right() - 60, picture(0, 0).y()}, tr("front \u2192"), 2);
    }
    if (!state_.solvedCar.rearTrack) {
        writeQuietly({picture_.center().x(), picture_.top() + 8},
                     tr("Rear track not entered: no tires drawn"), 6);
    }
}

void AcrossDrawing::writeQuietly(QPointF beside, const QString& text, int preferred) {
    const QRectF box = labels_.place(beside, sizeOfLine(painter_.font(), text), 5, preferred);
    if (!box.isNull()) {
        painter_.setPen(theme_.muted);
        drawLine(painter_, box, Qt::AlignCenter, text);
    }
}

}  // namespace bolthole
