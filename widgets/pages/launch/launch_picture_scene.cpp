// The car, the ground and the forces of the moving picture.
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "widgets/kit/body_outline.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/launch/launch_picture.h"
#include "widgets/pages/launch/launch_words.h"
#include "widgets/scene/scene_painter.h"
#include "widgets/scene/scene_things.h"

namespace bolthole {

namespace {

constexpr double kMarkRoom = 26;  // px from the picture's sides
constexpr double kMarkDown = 65;  // px from the ground to a mark's words
constexpr double kSixtyFeet = 60 * 12 * kMetresPerInch;
constexpr double kFar = 40;  // px outside the picture, where lines still run to

SceneStyle launchStyle() {
    SceneStyle style = SceneStyle::screen(&Theme::card);
    style.earth = 0.55;
    style.link = 4.5;
    style.center = 6;
    return style;
}

bool isNear(QPointF point, const QRectF& box) {
    return std::isfinite(point.x()) && std::isfinite(point.y()) && box.contains(point);
}

}  // namespace

void LaunchPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    if (!film_ || film_->run.rows.empty()) {
        return;
    }
    place();
    compose(FilmPose(*film_, time_));
    paintScene(painter, scene_, view(), launchStyle());
    if (ring_) {
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(QPen(theme().focus, 2));
        painter.drawRoundedRect(QRectF(rect()).adjusted(2, 2, -2, -2), 5, 5);
    }
}

void LaunchPicture::compose(const FilmPose& now) {
    scene_.clear();
    const std::optional<FilmPose> then =
        baseline_ && !baseline_->run.rows.empty() ? std::optional(FilmPose(*baseline_, time_)) : std::nullopt;
    addGround(now);
    addBody(now, true);
    if (then) {
        addBody(*then, false);
    }
    const Car& car = film_->car;
    scene_.add(SceneWheel{.center = now.rearCenter(),
                          .radius = car.rearTireRadius,
                          .turn = film_->rearTurnAt(time_),
                          .flat = 0});
    scene_.add(SceneWheel{.center = now.frontCenter(),
                          .radius = car.frontTireRadius,
                          .turn = now.row().distance / car.frontTireRadius,
                          .flat = 0});
    addLinks(now);
    addCenter(now);
    addForces(now, then ? &*then : nullptr);
    addHeading(now.row());
    addFlag();
}

// Marks on the ground go by as the front wheel runs over them; they count from where it stood.
void LaunchPicture::addGround(const FilmPose& pose) {
    scene_.add(SceneGround{});
    const bool inch = units_ == Units::inch;
    const double spacing = inch ? 12 * kMetresPerInch : 0.5;
    const double start = film_->car.wheelbase - pose.row().forward;  // of the front wheel, in the picture
    const double left = camera_.toCar(QPointF(0, 0)).x() - start;
    const double right = camera_.toCar(QPointF(width(), 0)).x() - start;
    for (double mark = std::ceil(left / spacing); mark * spacing <= right; ++mark) {
        const QPointF at(start + mark * spacing, 0);
        const bool isLong = std::remainder(mark, inch ? 5 : 4) == 0;
        scene_.add(SceneLine{.from = at,
                             .to = {at, {0, isLong ? 9.0 : 5.0}},
                             .stroke = {&Theme::metal, isLong ? SceneWeight::medium : SceneWeight::hair}});
        const double x = camera_.toPicture(at).x();
        if (isLong && mark >= 0 && x > kMarkRoom && x < width() - kMarkRoom) {
            addMark(at.x(), mark * spacing);
        }
    }
    const QPointF finish(start + kSixtyFeet, 0);
    scene_.add(SceneLine{.from = finish,
                         .to = {finish, {0, 8 - camera_.origin.y()}},
                         .stroke = {&Theme::focus, SceneWeight::medium, SceneDash::dashed}});
}

void LaunchPicture::addMark(double x, double distance) {
    const bool inch = units_ == Units::inch;
    const double shown = inch ? distance / (12 * kMetresPerInch) : distance;
    scene_.write({.at = {{x, 0}, {0, kMarkDown}},
                  .text = QString::number(std::lround(shown)) + (inch ? tr(" ft") : tr(" m"))});
}

void LaunchPicture::addBody(const FilmPose& pose, bool isNow) {
    const Car& car = (isNow ? film_ : baseline_)->car;
    BodyShape shape = bodyShape(car.body, car.wheelbase, car.rearTireRadius);
    for (QPolygonF* part : {&shape.outline, &shape.window}) {
        for (QPointF& point : *part) {
            point = pose.ofBody(point.x(), point.y());
        }
    }
    ScenePath& outline = scene_.addPath(shape.outline, true);
    if (!isNow) {
        outline.stroke = {&Theme::baseline, SceneWeight::thin, SceneDash::dashed};
        return;
    }
    outline.fill = {&Theme::metalFill, 0.35};
    if (!shape.window.isEmpty()) {
        ScenePath& window = scene_.addPath(shape.window, true);
        window.stroke = {&Theme::metal, SceneWeight::thin};
        window.fill = {&Theme::card};
    }
}

void LaunchPicture::addLinks(const FilmPose& pose) {
    bench_.cursor = pose.station();
    bench_.cursor.usable = true;  // where the links do not reach, as measured
    points_.rebuild(bench_);
    const QPointF center = pose.instantCenter();
    const bool isSeen = isNear(camera_.toPicture(center), view().picture.adjusted(-kFar, -kFar, kFar, kFar));
    for (const DrawnLink& link : points_.links) {
        if (link.mirrored) {
            continue;
        }
        const QPointF chassis = pose.ofBody(link.chassis.x(), link.chassis.y());
        if (link.role != Role::crosswise && isSeen) {
            scene_.add(SceneLine{.from = chassis,
                                 .to = center,
                                 .stroke = {roleInk(link.role), SceneWeight::hair, SceneDash::dashed, 0.7}});
        }
        scene_.add(SceneLink{.chassis = chassis,
                             .axle = pose.ofBody(link.axle.x(), link.axle.y()),
                             .role = link.role,
                             .farSide = link.farSide,
                             .eyes = false});
    }
}

// The instant center with the line from the rear patch; beyond the picture the line alone.
void LaunchPicture::addCenter(const FilmPose& pose) {
    const QPointF center = pose.instantCenter();
    if (std::isfinite(center.x()) && std::isfinite(center.y())) {
        scene_.add(SceneLine{.from = QPointF(pose.rearCenter().x(), 0),
                             .to = center,
                             .stroke = {&Theme::instantCenter, SceneWeight::medium}});
        scene_.add(SceneCenter{.at = center, .kind = CenterKind::instant});
    }
}

void LaunchPicture::addForces(const FilmPose& pose, const FilmPose* baseline) {
    const LaunchRow& row = pose.row();
    const auto then = [baseline](double LaunchRow::*load) {
        return baseline == nullptr ? std::nullopt : std::optional(baseline->row().*load);
    };
    addLoad({pose.rearCenter().x(), row.rearLoad, then(&LaunchRow::rearLoad), tr("rear")});
    addLoad({pose.frontCenter().x(), row.frontLoad, then(&LaunchRow::frontLoad), tr("front")});
    addThrust(pose);
}

// The ground's push on both tires of an axle.
void LaunchPicture::addLoad(const Patch& patch) {
    constexpr QPointF kBeside(14, 14);  // px
    const double length = patch.load * perNewton_;
    const QPointF at(patch.x, 0);
    if (length > 1) {
        const double shown = std::max(length, launchStyle().arrowHead);
        scene_.add(SceneArrow{
            .from = {at, {0, shown + 3}}, .way = {0, -shown}, .stroke = {&Theme::ink, SceneWeight::heavy}});
    }
    QString other;
    if (patch.baseline) {
        const double room = width() - camera_.toPicture(at).x() - kBeside.x() - 4;
        other = sceneScreenType().elided(tr("%1, %2").arg(forceText(*patch.baseline), baseline_->called),
                                         SceneFont::small, room);
    }
    scene_.write({.at = {at, kBeside},
                  .lie = Qt::AlignLeft | Qt::AlignTop,
                  .text = patch.name + u' ' + (patch.load > 0 ? forceText(patch.load) : tr("off the ground")),
                  .below = other,
                  .font = SceneFont::strong,
                  .ink = &Theme::ink});
}

void LaunchPicture::addThrust(const FilmPose& pose) {
    const double thrust = pose.row().thrust;
    const double length = thrust * perNewton_;
    if (std::abs(length) < 2) {
        return;
    }
    const QPointF at(pose.rearCenter().x() + 0.9 * film_->car.rearTireRadius, 0.03);
    const QPointF way(std::copysign(std::max(std::abs(length), launchStyle().arrowHead), length), 0);
    scene_.add(
        SceneArrow{.from = {at, {0, -4}}, .way = way, .stroke = {&Theme::instantCenter, SceneWeight::heavy}});
    scene_.write({.at = {at, {std::max(0.0, way.x()) + 8, -4}},
                  .lie = Qt::AlignLeft | Qt::AlignVCenter,
                  .text = tr("thrust %1").arg(forceText(thrust)),
                  .font = SceneFont::strong,
                  .ink = &Theme::instantCenter});
}

}  // namespace bolthole
