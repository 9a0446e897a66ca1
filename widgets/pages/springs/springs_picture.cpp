#include "widgets/pages/springs/springs_picture.h"

#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "widgets/kit/unit_text.h"
#include "widgets/scene/scene_hit.h"
#include "widgets/scene/scene_painter.h"
#include "widgets/state/view_plane.h"

namespace bolthole {

namespace {

constexpr double kPickReach = 12;     // px
constexpr double kTravelRoom = 0.12;  // m kept free above and below for the travel
constexpr double kLegend = 24;        // px, at the foot

}  // namespace

SpringsPicture::SpringsPicture(QWidget* parent) : QWidget(parent) {
    setMinimumHeight(300);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    setAccessibleName(tr("Picture of springs and shocks"));
    setToolTip(tr("Click a part to see its curves"));
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

void SpringsPicture::showScene(SpringsScene scene) {
    scene_ = std::move(scene);
    QStringList parts;
    for (const DrawnSpring& part : scene_.parts) {
        if (!part.label.isEmpty()) {
            parts << part.label;
        }
    }
    setAccessibleDescription(QStringLiteral("%1. %2").arg(scene_.words, parts.join(QStringLiteral(", "))));
    update();
}

void SpringsPicture::setSight(SpringsSight sight) {
    sight_ = sight;
    update();
}

// From behind, the car's left is at left; from the side its front is at right.
QPointF SpringsPicture::flat(const Eigen::Vector3d& car) const {
    return inPlane(sight_ == SpringsSight::behind ? ViewPlane::rear : ViewPlane::side, car);
}

QPointF SpringsPicture::toPicture(const Eigen::Vector3d& car) const {
    return camera_.toPicture(flat(car));
}

// The frame holds what stands still and the tires at ride, so that the scale does not follow the travel.
void SpringsPicture::fitCamera() {
    const double radius = scene_.tireRadius;
    const bool behind = sight_ == SpringsSight::behind;
    const double reach = behind && scene_.track ? (*scene_.track + kDrawnTireWidth) / 2 : 1.05 * radius;
    double low = -reach;
    double high = reach;
    double top = radius + kTravelRoom;
    for (const DrawnSpring& part : scene_.parts) {
        const QPointF chassis = flat(part.chassis);
        const double axleAcross = flat(part.axle).x();
        low = std::min({low, chassis.x(), axleAcross});
        high = std::max({high, chassis.x(), axleAcross});
        top = std::max(top, chassis.y());
        for (const Eigen::Vector3d& hole : part.freeChassis) {
            top = std::max(top, hole.z());
        }
    }
    const QRectF picture = QRectF(rect()).adjusted(14, 34, -14, -kLegend - 6);
    camera_.fit(QRectF(low, -0.02, high - low, top + 0.04), picture);
}

void SpringsPicture::compose() {
    fitCamera();
    drawing_.clear();
    drawing_.add(SceneGround{});
    drawing_.write({.at = {PictureCorner::topLeft, {12, 8}},
                    .lie = Qt::AlignLeft | Qt::AlignTop,
                    .text = scene_.words,
                    .font = SceneFont::strong,
                    .ink = &Theme::ink});
    if (!scene_.usable) {
        return;
    }
    addAxle();
    for (const DrawnSpring& part : scene_.parts) {
        addPart(part);
    }
    for (const bool chosen : {true, false}) {
        for (const DrawnSpring& part : scene_.parts) {
            if ((part.item == scene_.chosen) == chosen && !part.label.isEmpty()) {
                addLabel(part);
            }
        }
    }
    addLegend();
}

// Nobody entered the sizes of tube and housing.
void SpringsPicture::addAxle() {
    const double radius = scene_.tireRadius;
    const AxlePose& pose = scene_.pose;
    if (sight_ == SpringsSight::side) {
        drawing_.add(SceneWheel{.center = flat({pose.x, pose.y, pose.z}), .radius = radius});
    } else if (scene_.track) {
        for (const double side : {0.5, -0.5}) {
            drawing_.add(SceneTire{.center = flat(pose.carry({0, side * *scene_.track, 0})),
                                   .size = {kDrawnTireWidth, 2 * radius}});
        }
    }
    if (sight_ == SpringsSight::behind) {
        const double half = scene_.track.value_or(4 * radius) / 2;
        drawing_.add(SceneTube{.from = flat(pose.carry({0, half, 0})),
                               .to = flat(pose.carry({0, -half, 0})),
                               .radius = 0.11 * radius});
    }
    drawing_.add(SceneHousing{.center = flat(pose.carry(Eigen::Vector3d::Zero())),
                              .radius = (sight_ == SpringsSight::behind ? 0.34 : 0.24) * radius});
}

void SpringsPicture::addPart(const DrawnSpring& part) {
    const SceneMarks marks{.selected = part.item == scene_.chosen, .pastLimit = part.isPast};
    const QPointF chassis = flat(part.chassis);
    const QPointF axle = flat(part.axle);
    // Their own sizes, so that a part seen askew has its stop where it is.
    const double length = (part.axle - part.chassis).norm();
    const double seen = std::hypot((axle - chassis).x(), (axle - chassis).y());
    std::optional<double> stop = part.stopLength;
    if (stop && length > 0) {
        *stop *= seen / length;
    }
    drawing_.add(
        SceneSpring{
            .kind = part.kind, .chassis = chassis, .axle = axle, .slack = part.slack, .stopLength = stop},
        part.item, marks);
    for (const Eigen::Vector3d& hole : part.freeChassis) {
        drawing_.add(SceneMount{.at = flat(hole), .onChassis = true, .inUse = false}, -1, marks);
    }
    for (const Eigen::Vector3d& hole : part.freeAxle) {
        drawing_.add(SceneMount{.at = flat(hole), .onChassis = false, .inUse = false}, -1, marks);
    }
    drawing_.add(SceneMount{.at = chassis, .onChassis = true}, -1, marks);
    drawing_.add(SceneMount{.at = axle, .onChassis = false}, -1, marks);
}

// Beside its chassis end there is most air; failing that farther down the line.
void SpringsPicture::addLabel(const DrawnSpring& part) {
    const bool leftHalf = toPicture(part.chassis).x() + toPicture(part.axle).x() < width();
    const bool chosen = part.item == scene_.chosen;
    drawing_.label({.at = flat(part.chassis),
                    .along = flat(part.axle),
                    .text = part.label,
                    .ink = part.isPast ? &Theme::problem : &Theme::ink,
                    .edge = part.isPast ? &Theme::problem
                            : chosen    ? &Theme::focus
                                        : &Theme::ink,
                    .side = leftHalf ? 4 : 0,
                    .gap = 11});
}

void SpringsPicture::addLegend() {
    double x = 16;
    for (const bool chassis : {true, false}) {
        const QString text = chassis ? tr("on the chassis") : tr("on the axle");
        const auto at = [](double left) {
            return ScenePlace(PictureCorner::bottomLeft, QPointF(left, -kLegend / 2));
        };
        drawing_.add(SceneMount{.at = at(x), .onChassis = chassis, .inUse = true, .ink = &Theme::muted});
        drawing_.write({.at = at(x + 9), .lie = Qt::AlignLeft | Qt::AlignVCenter, .text = text});
        x += 9 + sceneScreenType().sizeOf(text, SceneFont::small).width() + 18;
    }
    const bool inch = scene_.units == Units::inch;
    drawing_.add(SceneScaleBar{.length = inch ? 10 * kMetresPerInch : 0.2,
                               .words = inch ? tr("10 in") : tr("200 mm")});
}

void SpringsPicture::paintEvent(QPaintEvent*) {
    compose();
    QPainter painter(this);
    painter.fillRect(rect(), theme().canvas);
    paintScene(painter, drawing_, view(), SceneStyle::screen());
}

void SpringsPicture::mousePressEvent(QMouseEvent* event) {
    const int item = hitScene(drawing_, view(), SceneStyle::screen(), event->position(), kPickReach);
    if (item >= 0 && event->button() == Qt::LeftButton) {
        emit picked(item);
    }
}

}  // namespace bolthole
