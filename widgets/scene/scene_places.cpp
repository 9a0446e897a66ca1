#include "widgets/scene/scene_places.h"

#include "widgets/scene/scene_things.h"

namespace bolthole {

namespace {

constexpr double kClear = 0.3;  // mm on paper, where words are small and black

QRectF around(QPointF at, double reach) {
    return {at.x() - reach, at.y() - reach, 2 * reach, 2 * reach};
}

/// One overload a shape; what has none is covered by whatever comes.
class Places {
  public:
    Places(const SceneView& view, const SceneStyle& style, PlaceTaker& taker)
        : view_(view), style_(style), taker_(taker) {}

    void of(const SceneWheel& wheel) {
        taker_.takeOutline(view_.place(wheel.center), view_.length(wheel.radius));
        if (style_.isPrint) {  // its cross, and nothing else is in it
            taker_.take(around(view_.place(wheel.center), style_.hole + kClear));
        }
    }
    void of(const SceneHousing& housing) {
        taker_.takeDisk(view_.place(housing.center), view_.length(housing.radius));
    }
    void of(const SceneJoint& joint) { taker_.take(around(view_.place(joint.at), style_.hole)); }
    void of(const SceneLink& link) {
        if (!link.farSide) {
            taker_.take(QLineF(view_.place(link.axle), view_.place(link.chassis)), 1.5 * style_.link);
        }
    }
    void of(const SceneHole& hole) {
        const double clear = style_.isPrint ? kClear : 0;
        const double ring = hole.look == HoleLook::former ? kFormerRing : 1;
        taker_.take(around(view_.place(hole.at), ring * radiusOf(hole, view_, style_) + clear));
    }
    void of(const SceneHandle& handle) { taker_.take(around(view_.place(handle.at), 1.4 * style_.hole)); }
    void of(const SceneMount& mount) { taker_.take(around(view_.place(mount.at), style_.hole)); }
    void of(const SceneSpring& spring) {
        taker_.take(QLineF(view_.place(spring.chassis), view_.place(spring.axle)), 2 * style_.reach);
    }
    void of(const SceneCenter& center) { taker_.take(around(view_.place(center.at), 1.4 * style_.center)); }
    void of(const SceneCross& cross) { taker_.take(around(view_.place(cross.at), 1.2 * style_.hole)); }
    void of(const SceneArrow& arrow) {
        const QPointF from = view_.place(arrow.from);
        taker_.take(QLineF(from, from + arrow.way), style_.arrowHead);
    }
    void of(const SceneDimension& dimension) {
        taker_.take(lineOf(dimension, view_), 0.5 * style_.arrowHead);
    }
    void of(const SceneScaleBar& bar) { taker_.take(lineOf(bar, view_, style_), style_.arrowHead); }
    void of(const SceneGround&) {}
    void of(const SceneTire&) {}

    void of(const SceneTube&) {}
    void of(const SceneLine& line) {
        if (style_.isPrint) {  // small black words are not to be read across a line
            taker_.take(QLineF(view_.place(line.from), view_.place(line.to)), 4 * kClear);
        }
    }
    void of(const ScenePath&) {}

  private:
    const SceneView& view_;
    const SceneStyle& style_;
    PlaceTaker& taker_;
};

}  // namespace

void takePlaces(const Scene& scene, const SceneView& view, const SceneStyle& style, PlaceTaker& taker) {
    Places places(view, style, taker);
    for (const SceneItem& item : scene.items) {
        std::visit([&](const auto& shape) { places.of(shape); }, item.shape);
    }
}

}  // namespace bolthole
