#include "widgets/pages/driveline/driveline_picture.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "widgets/kit/pens.h"
#include "widgets/kit/unit_text.h"
#include "widgets/scales/travel_steps.h"
#include "widgets/scene/scene_painter.h"

namespace bolthole {

namespace {

// What is drawn around the measured points, m: no car's own size, only so much that the parts are known
// again.
constexpr double kTail = 0.20;  // of transmission ahead of its joint
constexpr double kTailHalf = 0.055;
constexpr double kTube = 0.045;  // radius of an axle tube
constexpr double kShaftHalf = 0.03;
constexpr double kNeckHalf = 0.013;  // between joint and tube
constexpr double kYoke = 0.035;      // half the length of a joint
constexpr double kAxisReach = 0.22;  // how far an axis is drawn past its joint
constexpr double kMargin = 0.08;

QPointF inclined(double angle) {
    return {std::cos(angle), std::sin(angle)};
}

constexpr SceneStroke kAxis{&Theme::ink, SceneWeight::thin, SceneDash::dashDot};
constexpr SceneStroke kWoundAxis{&Theme::muted, SceneWeight::thin, SceneDash::dashDot};

SceneTube tube(QPointF from, QPointF to, double radius, double strength = 0.2) {
    return {.from = from, .to = to, .radius = radius, .strength = strength};
}

}  // namespace

DrivelinePicture::DrivelinePicture(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Driveline from the side, to scale"));
    setToolTip(
        tr("From the side and to scale, front of the car to the right. The angles are those in space."));
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

void DrivelinePicture::showDriveline(const DrivelineReading& reading, const Station& station,
                                     double rearTireRadius, Units units) {
    reading_ = reading;
    station_ = station;
    rearTireRadius_ = rearTireRadius;
    units_ = units;
    row_ = reading.rowAt(station);
    describeInWords();
    update();
}

void DrivelinePicture::describeInWords() {
    QStringList parts;
    for (std::size_t joint = 0; joint < row_.coasting.joints; ++joint) {
        parts << jointWords(joint, row_.coasting.joints) + QLatin1Char(' ') +
                     angleText(row_.coasting.angle[joint]);
    }
    setAccessibleDescription(
        tr("At %1: %2").arg(travelInWords(row_.travel, units_), parts.join(QStringLiteral(", "))));
}

std::vector<QPointF> DrivelinePicture::joints(const AxlePose& pose) const {
    const Eigen::Vector3d pinion =
        pose.carry(reading_.line.pinionJoint - Eigen::Vector3d(0, 0, rearTireRadius_));
    std::vector<QPointF> at{{reading_.line.outputJoint.x(), reading_.line.outputJoint.z()}};
    if (reading_.setup.carrierJoint) {
        at.emplace_back(reading_.setup.carrierJoint->x(), reading_.setup.carrierJoint->z());
    }
    at.emplace_back(pinion.x(), pinion.z());
    return at;
}

QPointF DrivelinePicture::alongPinion(const AxlePose& pose) const {
    return inclined(reading_.reader->pinionInclination(pose, 0));
}

QRectF DrivelinePicture::box() const {
    const std::vector<QPointF> at = joints(station_.pose);
    const QPointF front = at.front() + inclined(reading_.line.outputAngle) * kTail;
    double low = std::min(station_.pose.z, front.y());
    double high = std::max(station_.pose.z, front.y());
    for (const QPointF& joint : at) {
        low = std::min(low, joint.y());
        high = std::max(high, joint.y());
    }
    const double left = station_.pose.x - 2 * kTube - kMargin;
    return {QPointF(left, low - kMargin - kTube), QPointF(front.x() + kMargin, high + kMargin + kTube)};
}

SideCamera DrivelinePicture::camera() const {
    SideCamera camera;
    const QRectF shown = box();
    camera.fit(shown, QRectF(rect()));
    // Centered in height too: there is no ground to stand on.
    camera.origin.ry() += rect().center().y() - camera.toPicture(shown.center()).y();
    return camera;
}

QPointF DrivelinePicture::positionOfJoint(std::size_t joint) const {
    return camera().toPicture(joints(station_.pose)[joint]);
}

QSize DrivelinePicture::sizeHint() const {
    return {700, 190};
}

QSize DrivelinePicture::minimumSizeHint() const {
    return {320, 190};
}

void DrivelinePicture::paintEvent(QPaintEvent*) {
    if (!reading_.isThere() || !row_.usable) {
        return;
    }
    QPainter painter(this);
    const SceneView view{camera(), QRectF(rect())};
    const SceneStyle style = SceneStyle::screen();
    scene_.clear();
    addParts();
    addWords();
    paintSceneGround(painter, view, style);
    paintScene(painter, scene_, view, style);
}

// Wound up lies under coasting, as axes alone.
void DrivelinePicture::addParts() {
    const std::vector<QPointF> at = joints(station_.pose);
    const QPointF output = inclined(reading_.line.outputAngle);
    const QPointF pinion = alongPinion(station_.pose);
    scene_.add(tube(at.front(), at.front() + output * kYoke, kNeckHalf));
    scene_.add(tube(at.front() + output * kYoke, at.front() + output * kTail, kTailHalf, 0.35));
    scene_.add(SceneHousing{.center = {station_.pose.x, station_.pose.z},
                            .radius = 1.6 * kTube,
                            .nose = at.back() - pinion * kYoke});
    for (std::size_t piece = 0; piece + 1 < at.size(); ++piece) {
        const QPointF along = unit(at[piece] - at[piece + 1]);
        scene_.add(tube(at[piece + 1], at[piece], kNeckHalf));
        scene_.add(tube(at[piece + 1] + along * kYoke, at[piece] - along * kYoke, kShaftHalf));
        if (piece + 2 < at.size()) {  // the bearing holds the front piece just ahead of its rear joint
            const QPointF bearing = at[piece + 1] + along * 2.2 * kYoke;
            const QPointF half = along * 0.85 * kShaftHalf;
            scene_.add(tube(bearing - half, bearing + half, 1.7 * kShaftHalf, 0.45));
        }
    }
    if (reading_.windUp) {
        const AxlePose wound = woundUp(station_.pose, *reading_.windUp);
        const QPointF nose = joints(wound).back();
        const QPointF reach = alongPinion(wound) * kAxisReach;
        scene_.add(SceneLine{.from = nose - reach, .to = nose + reach, .stroke = kWoundAxis});
        scene_.add(SceneLine{.from = nose, .to = at[at.size() - 2], .stroke = kWoundAxis});
    }
    scene_.add(SceneLine{
        .from = at.back() - pinion * kAxisReach, .to = at.back() + pinion * kAxisReach, .stroke = kAxis});
    scene_.add(SceneLine{
        .from = at.front() - output * kAxisReach, .to = at.front() + output * kTail, .stroke = kAxis});
    for (const QPointF& joint : at) {
        scene_.add(SceneJoint{.at = joint, .radius = 0.6 * kYoke});
    }
}

// At each joint its angle coasting and what winding up makes of it; at each shaft how it lies against the
// ground.
void DrivelinePicture::addWords() {
    scene_.write({.at = {PictureCorner::topLeft, {10, 6}},
                  .lie = Qt::AlignLeft | Qt::AlignTop,
                  .text = tr("at %1, to scale, front to the right").arg(travelInWords(row_.travel, units_))});
    const std::vector<QPointF> at = joints(station_.pose);
    const double clear = kTailHalf * camera().scale + 8;
    for (std::size_t joint = 0; joint < at.size(); ++joint) {
        scene_.write({.at = {at[joint], {0, -clear}},
                      .lie = Qt::AlignHCenter | Qt::AlignBottom,
                      .text = angleText(row_.coasting.angle[joint]),
                      .below = reading_.windUp ? tr("wound up %1").arg(angleText(row_.woundUp.angle[joint]))
                                               : QString(),
                      .font = SceneFont::strong,
                      .ink = &Theme::ink});
    }
    const double ground = station_[Figure::ground];
    const auto lies = [&](const QString& what, QPointF place, QPointF along) {
        scene_.write({.at = {place, {0, clear + 8}},
                      .lie = Qt::AlignHCenter | Qt::AlignTop,
                      .text = lieWords(what, std::atan2(along.y(), along.x()) - ground)});
    };
    const QPointF output = inclined(reading_.line.outputAngle);
    lies(tr("output"), at.front() + output * 0.6 * kTail, output);
    for (std::size_t piece = 0; piece + 1 < at.size(); ++piece) {
        const QString name = at.size() == 2 ? tr("shaft") : piece == 0 ? tr("front piece") : tr("rear piece");
        lies(name, (at[piece] + at[piece + 1]) / 2, at[piece] - at[piece + 1]);
    }
    lies(tr("pinion"), QPointF(station_.pose.x + kTube, station_.pose.z), alongPinion(station_.pose));
}

// "pinion 1.50 deg up"
QString DrivelinePicture::lieWords(const QString& what, double angle) {
    const QString size = angleText(std::abs(angle));
    return size == angleText(0) ? tr("%1 level").arg(what)
           : angle > 0          ? tr("%1 %2 up").arg(what, size)
                                : tr("%1 %2 down").arg(what, size);
}

}  // namespace bolthole
