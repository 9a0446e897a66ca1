#include "widgets/pages/roll/roll_picture.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "widgets/kit/unit_text.h"
#include "widgets/scene/scene_painter.h"
#include "widgets/state/view_plane.h"

namespace bolthole {

namespace {

// Of the drawing alone, m: no car's own size.
constexpr double kTube = 0.042;    // radius of an axle tube
constexpr double kHousing = 0.13;  // of the housing
constexpr double kMargin = 0.12;
constexpr double kBelow = 0.10;     // below the ground
constexpr double kSeenFrom = 24.0;  // px from the top, under the caption

SceneStyle rollStyle() {
    SceneStyle style = SceneStyle::screen();
    style.link = 4.5;
    style.center = 7;
    return style;
}

SceneWords caption(const QString& text, double width) {
    constexpr double kInset = 10;  // px
    return {.at = {PictureCorner::topLeft, {kInset, 6}},
            .lie = Qt::AlignLeft | Qt::AlignTop,
            .text = text,
            .wrap = width - 2 * kInset};
}

SceneLabel named(QPointF at, const QString& text, int side) {
    return {.at = at, .text = text, .ink = &Theme::muted, .side = side, .gap = 10};
}

// Must be read even where there is no room for it.
SceneLabel centerLabel(QPointF at, const QString& text, int side) {
    return {.at = at, .text = text, .font = SceneFont::strong, .side = side, .gap = 11, .mustStand = true};
}

}  // namespace

QString axisWords(double angle) {
    const QString size = angleText(std::abs(angle));
    if (size == angleText(0)) {
        return RollAxisPicture::tr("level");
    }
    return angle > 0 ? RollAxisPicture::tr("rises %1 toward the front").arg(size)
                     : RollAxisPicture::tr("falls %1 toward the front").arg(size);
}

RollPicture::RollPicture(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Rear axle from behind, to scale"));
    setToolTip(
        tr("From behind and to scale, the car's left at the left. The body stands still and the axle "
           "rolls with the ground under it: the same as a body that rolls the other way."));
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

void RollPicture::showRoll(const RollReading& reading, const RollFigures& at, Units units) {
    reading_ = &reading;
    at_ = at;
    units_ = units;
    setAccessibleDescription(at.usable ? tr("At %1: roll center %2 above the ground")
                                             .arg(rollWords(at.roll), lengthText(at.center, units))
                                       : tr("At %1: out of reach").arg(rollWords(at.roll)));
    update();
}

QSize RollPicture::sizeHint() const {
    return {420, 250};
}

QSize RollPicture::minimumSizeHint() const {
    return {300, 250};
}

SideCamera RollPicture::camera() const {
    const Car& car = reading_->car;
    double half = car.rearTrack ? *car.rearTrack / 2 + kDrawnTireWidth / 2 : 0.4;
    double top = 2 * car.rearTireRadius;
    for (const Constraint& link : reading_->linkage.constraints) {
        const double onAxle = link.onAxle.z() + car.rearTireRadius;
        half = std::max({half, std::abs(link.onAxle.y()), std::abs(link.onChassis.y())});
        top = std::max({top, onAxle, link.onChassis.z()});
    }
    SideCamera camera;
    camera.fit(QRectF(QPointF(-half - kMargin, -kBelow), QPointF(half + kMargin, top + 1.2 * kMargin)),
               QRectF(rect()));
    return camera;
}

std::optional<QPointF> RollPicture::placeOfCenter() const {
    if (reading_ == nullptr || !at_.usable) {
        return std::nullopt;
    }
    return place(at_.pose.y, at_.pose.z + at_.center - reading_->car.rearTireRadius);
}

void RollPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const SceneStyle style = rollStyle();
    scene_.clear();
    SceneView view{{}, QRectF(rect())};
    if (reading_ != nullptr && reading_->isThere()) {
        view.camera = camera();
        compose();
    }
    paintSceneGround(painter, view, style);
    paintScene(painter, scene_, view, style);
}

void RollPicture::compose() {
    if (!at_.usable) {
        scene_.write(caption(tr("At %1 the links don't reach.").arg(rollWords(at_.roll)), width()));
        return;
    }
    addAxle();
    const Car& car = reading_->car;
    for (const Constraint& link : reading_->linkage.constraints) {
        scene_.add(
            SceneLink{.chassis = inPlane(ViewPlane::rear, link.onChassis),
                      .axle = onAxle(link.onAxle),
                      .role = roleOf(car.links[static_cast<std::size_t>(link.link)], car.rearTireRadius)});
    }
    addCenter();
    scene_.write(caption(
        tr("from behind, to scale, at %1%2")
            .arg(rollWords(at_.roll), car.rearTrack ? QString() : tr("; no tires: track not entered")),
        width()));
}

QPointF RollPicture::onAxle(const Eigen::Vector3d& point) const {
    return inPlane(ViewPlane::rear, at_.pose.carry(point));
}

// The ground is the tangent below both tires: it rolls with them.
void RollPicture::addAxle() {
    const double radius = reading_->car.rearTireRadius;
    const QPointF across = onAxle({0, -1, 0}) - onAxle({0, 1, 0});
    scene_.add(SceneGround{.at = onAxle({0, 0, -radius}), .along = across});
    const std::optional<double>& track = reading_->car.rearTrack;
    if (track) {
        for (const double side : {0.5, -0.5}) {
            scene_.add(SceneTire{.center = onAxle({0, side * *track, 0}),
                                 .size = {kDrawnTireWidth, 2 * radius},
                                 .turn = std::atan2(across.y(), across.x())});
        }
    }
    const double half = track ? (*track - kDrawnTireWidth) / 2 : 0.6;
    scene_.add(SceneTube{.from = onAxle({0, half, 0}), .to = onAxle({0, -half, 0}), .radius = kTube});
    scene_.add(SceneHousing{.center = onAxle(Eigen::Vector3d::Zero()), .radius = kHousing});
}

// With the body's own middle, which stays upright.
void RollPicture::addCenter() {
    scene_.add(SceneLine{.from = QPointF(0, 0),
                         .to = camera().toCar({place(0, 0).x(), kSeenFrom}),
                         .stroke = {&Theme::muted, SceneWeight::hair, SceneDash::dashDot}});
    scene_.label(named(camera().toCar({place(0, 0).x(), kSeenFrom + 12}), tr("body's middle"), 0));
    const QPointF center(-at_.pose.y, at_.pose.z + at_.center - reading_->car.rearTireRadius);
    scene_.add(SceneCenter{.at = center, .kind = CenterKind::roll});
    scene_.label(centerLabel(center, tr("roll center %1").arg(lengthText(at_.center, units_)), 2));
}

RollAxisPicture::RollAxisPicture(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Roll axis from the side, to scale"));
    setToolTip(
        tr("From the side and to scale, front of the car to the right. Body and rear axle roll about "
           "this line, as far as the rear links have it; where the front end has its own roll center "
           "the car's axis runs between the two."));
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

void RollAxisPicture::showRoll(const RollReading& reading, Units units) {
    reading_ = &reading;
    units_ = units;
    if (reading.isThere()) {
        const RollFigures& ride = reading.roll.ride;
        setAccessibleDescription(tr("At ride: roll center %1 above the ground, roll axis %2")
                                     .arg(lengthText(ride.center, units), axisWords(ride.axisAngle)));
    }
    update();
}

QSize RollAxisPicture::sizeHint() const {
    return {460, 250};
}

QSize RollAxisPicture::minimumSizeHint() const {
    return {300, 250};
}

SideCamera RollAxisPicture::camera() const {
    const Car& car = reading_->car;
    const double rear = car.rearTireRadius;
    const double top = std::max({2 * rear, 2 * car.frontTireRadius, reading_->roll.ride.center});
    SideCamera camera;
    camera.fit(QRectF(QPointF(-rear - kMargin, -kBelow),
                      QPointF(car.wheelbase + car.frontTireRadius + kMargin, top + kMargin)),
               QRectF(rect()));
    return camera;
}

// The point of the axis ahead of the axle, car frame side view, m.
QPointF RollAxisPicture::onAxis(double ahead) const {
    const RollFigures& ride = reading_->roll.ride;
    const GroundLine& ground = reading_->rideGround;
    const double height = ride.squareCenter + std::tan(ride.axisAngle) * ahead;
    return {ground.patchX + ahead * ground.alongX - height * ground.alongZ,
            ground.patchZ + ahead * ground.alongZ + height * ground.alongX};
}

void RollAxisPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const SceneStyle style = rollStyle();
    scene_.clear();
    SceneView view{{}, QRectF(rect())};
    if (reading_ != nullptr && reading_->isThere()) {
        view.camera = camera();
        addWheels();
        addAxis(view);
        scene_.write(caption(tr("from the side, to scale, at ride, front to the right"), width()));
    }
    paintSceneGround(painter, view, style);
    paintScene(painter, scene_, view, style);
}

void RollAxisPicture::addWheels() {
    const GroundLine& ground = reading_->rideGround;
    const AxlePose& pose = reading_->roll.ride.pose;
    scene_.add(SceneGround{.at = {ground.patchX, ground.patchZ}, .along = {ground.alongX, ground.alongZ}});
    scene_.add(SceneWheel{.center = {pose.x, pose.z}, .radius = reading_->car.rearTireRadius});
    scene_.add(SceneWheel{.center = {ground.frontCenterX, ground.frontCenterZ},
                          .radius = reading_->car.frontTireRadius});
}

void RollAxisPicture::addAxis(const SceneView& view) {
    const RollFigures& ride = reading_->roll.ride;
    const double far = reading_->car.wheelbase + 2 * reading_->car.frontTireRadius;
    scene_.add(SceneLine{.from = onAxis(-1),
                         .to = onAxis(far),
                         .stroke = {&Theme::instantCenter, SceneWeight::strong, SceneDash::dashDot}});
    const QPointF center = onAxis(0);
    scene_.add(SceneCenter{.at = center, .kind = CenterKind::roll});
    scene_.label(centerLabel(center, lengthText(ride.center, units_), 0));
    const QRectF seen = view.picture.adjusted(6, kSeenFrom, -6, -6);
    for (const LinkCrossing& met : reading_->crossings) {
        const QPointF at(met.x, met.z);
        if (seen.contains(view.place(at))) {
            scene_.add(SceneCross{.at = at});
            scene_.label(named(at, tr("lines of %1 meet").arg(met.name), 2));
        }
    }
    const QPointF middle = onAxis(0.62 * reading_->car.wheelbase);
    if (seen.contains(view.place(middle))) {
        scene_.label(named(middle, tr("roll axis: %1").arg(axisWords(ride.axisAngle)), 2));
    }
}

}  // namespace bolthole
