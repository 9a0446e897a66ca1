#include "widgets/scene/scene_hit.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "widgets/scene/scene_things.h"

namespace bolthole {

namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();
constexpr double kFreeHole = 0.5;  // picture's units: a free hole hidden under a bolted one loses to it

double distanceTo(QPointF place, QPointF at) {
    return std::hypot(place.x() - at.x(), place.y() - at.y());
}

double distanceTo(QPointF place, QPointF from, QPointF to) {
    const QPointF along = to - from;
    const double square = QPointF::dotProduct(along, along);
    const double share =
        square > 0 ? std::clamp(QPointF::dotProduct(place - from, along) / square, 0.0, 1.0) : 0.0;
    return distanceTo(place, from + share * along);
}

/// How far a thing is from a place, infinite where it is out of reach.
class Distances {
  public:
    Distances(const SceneView& view, const SceneStyle& style, QPointF place, double reach)
        : view_(view), style_(style), place_(place), reach_(reach) {}

    [[nodiscard]] double of(const SceneHole& hole) const {
        const double away = distanceTo(place_, view_.place(hole.at));
        const double most = std::max(reach_, radiusOf(hole, view_, style_));
        return away <= most ? away + (hole.look == HoleLook::bolted ? 0 : kFreeHole) : kNever;
    }
    [[nodiscard]] double of(const SceneHandle& handle) const { return near(view_.place(handle.at)); }
    [[nodiscard]] double of(const SceneMount& mount) const { return near(view_.place(mount.at)); }
    [[nodiscard]] double of(const SceneJoint& joint) const { return near(view_.place(joint.at)); }
    [[nodiscard]] double of(const SceneCenter& center) const { return near(view_.place(center.at)); }
    [[nodiscard]] double of(const SceneSpring& spring) const { return near(spring.chassis, spring.axle); }
    [[nodiscard]] double of(const SceneLink& link) const { return near(link.chassis, link.axle); }
    template <class Other>
    [[nodiscard]] double of(const Other&) const {
        return kNever;
    }

  private:
    [[nodiscard]] double near(QPointF at) const {
        const double away = distanceTo(place_, at);
        return away <= reach_ ? away : kNever;
    }
    [[nodiscard]] double near(QPointF from, QPointF to) const {
        const double away = distanceTo(place_, view_.place(from), view_.place(to));
        return away <= reach_ ? away : kNever;
    }

    const SceneView& view_;
    const SceneStyle& style_;
    QPointF place_;
    double reach_;
};

}  // namespace

int hitScene(const Scene& scene, const SceneView& view, const SceneStyle& style, QPointF place, double reach,
             int first, int last) {
    const Distances distances(view, style, place, reach);
    int found = -1;
    double least = kNever;
    for (const SceneItem& item : scene.items) {
        if (item.id < std::max(first, 0) || item.id > last) {
            continue;
        }
        const double away = std::visit([&](const auto& shape) { return distances.of(shape); }, item.shape);
        if (away <= least && away < kNever) {
            least = away;
            found = item.id;
        }
    }
    return found;
}

}  // namespace bolthole
