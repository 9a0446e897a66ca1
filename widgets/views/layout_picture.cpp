#include "widgets/views/layout_picture.h"

#include <algorithm>
#include <array>

#include "widgets/scene/scene_painter.h"
#include "widgets/scene/scene_things.h"
#include "widgets/state/view_plane.h"

namespace bolthole {

namespace {

// What is seen of the car, in tire radii.
constexpr double kBehind = 1.15;
constexpr double kAhead = 4.1;
constexpr double kAbove = 2.1;
constexpr double kTrackHalf = 2.15;  // middle of a tire from the center plane
constexpr double kTireHalf = 0.3;    // half its width

SceneStyle layoutStyle() {
    SceneStyle style = SceneStyle::screen(&Theme::card);
    style.link = 2.6;
    style.hole = 3;
    return style;
}

class LayoutScene {
  public:
    LayoutScene(const QRectF& box, const Car& car, LayoutSight sight)
        : car_(car),
          plane_(sight == LayoutSight::side ? ViewPlane::side : ViewPlane::top),
          radius_(car.rearTireRadius) {
        const bool side = sight == LayoutSight::side;
        const double wide = (kBehind + kAhead) * radius_;
        const double high = (side ? kAbove : 2 * (kTrackHalf + kTireHalf)) * radius_;
        view_.picture = box;
        view_.camera.scale = std::min(box.width() / wide, (box.height() - 4) / high);
        view_.camera.origin = {box.center().x() - view_.length((kAhead - kBehind) / 2 * radius_),
                               side ? box.center().y() + view_.length(high / 2) : box.center().y()};
    }

    void draw(QPainter& painter) {
        plane_ == ViewPlane::side ? addSideCar() : addPlanCar();
        for (const Link& link : car_.links) {
            addLink(link, false);
            if (link.side == Side::both && plane_ == ViewPlane::top) {
                addLink(link, true);
            }
        }
        paintThings(painter, scene_, view_, layoutStyle());
    }

  private:
    void addSideCar() {
        scene_.add(SceneLine{.from = QPointF(-kBehind * radius_, 0),
                             .to = QPointF(kAhead * radius_, 0),
                             .stroke = {&Theme::border, SceneWeight::thin}});
        scene_.add(SceneWheel{.center = {0, radius_}, .radius = radius_});
    }

    void addPlanCar() {
        scene_.add(SceneLine{.from = QPointF(-kBehind * radius_, 0),
                             .to = QPointF(kAhead * radius_, 0),
                             .stroke = {&Theme::border, SceneWeight::hair, SceneDash::dashDot}});
        for (const double out : {kTrackHalf, -kTrackHalf}) {
            scene_.add(
                SceneTire{.center = {0, out * radius_}, .size = {2 * radius_, 2 * kTireHalf * radius_}});
        }
        const double half = (kTrackHalf - kTireHalf) * radius_;
        scene_.add(SceneTube{.from = {0, half}, .to = {0, -half}, .radius = 0.08 * radius_});
        scene_.add(SceneHousing{.center = {0, 0}, .radius = 0.32 * radius_});
    }

    void addLink(const Link& link, bool otherSide) {
        Eigen::Vector3d chassis = link.chassis.inUse().at;
        Eigen::Vector3d axle = link.axle.inUse().at;
        if (otherSide) {
            chassis = mirrored(chassis);
            axle = mirrored(axle);
        }
        const Role role = roleOf(link, radius_);
        switch (link.kind) {
            case LinkKind::rod:
                return scene_.add(SceneLink{
                    .chassis = inPlane(plane_, chassis), .axle = inPlane(plane_, axle), .role = role});
            case LinkKind::pivot:
            case LinkKind::slider:
                return addArm(link.kind, chassis, role);
            case LinkKind::guide:
                return addGuide(inPlane(plane_, axle), role);
        }
    }

    // From the axle tube beside the arm's front; the axle end is part of the housing.
    void addArm(LinkKind kind, const Eigen::Vector3d& front, Role role) {
        const QPointF tip = inPlane(plane_, front);
        for (const double rise : {0.35, -0.35}) {
            const bool side = plane_ == ViewPlane::side;
            const Eigen::Vector3d root(0, front.y() + (side ? 0 : 0.3 * rise * radius_),
                                       radius_ + (side ? rise * radius_ : 0));
            scene_.add(SceneLink{.chassis = tip, .axle = inPlane(plane_, root), .role = role, .eyes = false});
        }
        scene_.add(SceneMount{.at = tip, .onChassis = false, .inUse = false, .ink = roleInk(role)});
        const auto line = [&](QPointF from, QPointF to) {
            scene_.add(
                SceneLine{.from = {tip, from}, .to = {tip, to}, .stroke = {&Theme::ink, SceneWeight::thin}});
        };
        if (kind == LinkKind::slider) {
            line({-8, -5}, {8, -5});
            line({-8, 5}, {8, 5});
        } else {
            line({-5, -8}, {0, -3.5});
            line({0, -3.5}, {5, -8});
        }
    }

    void addGuide(QPointF middle, Role role) {
        const SceneStroke bar{roleInk(role), SceneWeight::strong};
        const double reach = view_.length(1.5 * radius_);
        if (plane_ == ViewPlane::top) {
            const auto line = [&](QPointF from, QPointF to) {
                scene_.add(SceneLine{.from = {middle, from}, .to = {middle, to}, .stroke = bar});
            };
            line({-3, 5}, {3, -5});
            line({-3, 5}, {-3, reach});
            line({3, -5}, {3, -reach});
        }
        const double half = 4 / view_.camera.scale;
        const std::array corners{middle + QPointF(0, half), middle + QPointF(half, 0),
                                 middle - QPointF(0, half), middle - QPointF(half, 0)};
        ScenePath& pin = scene_.addPath(corners, true);
        pin.stroke = {roleInk(role), SceneWeight::medium};
        pin.fill = {&Theme::card};
    }

    const Car& car_;
    ViewPlane plane_;
    double radius_;
    SceneView view_;
    Scene scene_;
};

}  // namespace

void drawLayout(QPainter& painter, const QRectF& box, const Car& car, LayoutSight sight) {
    LayoutScene(box, car, sight).draw(painter);
}

}  // namespace bolthole
