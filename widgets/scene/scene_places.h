// What words and labels of a scene keep off.
#pragma once

#include <QLineF>

#include "widgets/scene/scene_style.h"

namespace bolthole {

/// Takes note of what is not to be covered. The pictures' placer is fed by it, and so are the papers' own,
/// which ties a column of names to its holes by leaders: that weighs hundreds of places against each other,
/// too long for a picture that is dragged, while the pictures' placer leaves out what finds no place, which
/// paper can't.
class PlaceTaker {
  public:
    virtual ~PlaceTaker() = default;

    virtual void take(const QRectF& box) = 0;
    virtual void take(const QLineF& line, double width) = 0;
    /// A circle's outline: better not covered.
    virtual void takeOutline(QPointF center, double radius) = 0;
    /// A round thing with little in it.
    virtual void takeDisk(QPointF center, double radius) = 0;
};

/// Takes the places of all things of a scene.
void takePlaces(const Scene& scene, const SceneView& view, const SceneStyle& style, PlaceTaker& taker);

}  // namespace bolthole
