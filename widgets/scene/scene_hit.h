// What of a scene is under the pointer.
#pragma once

#include <limits>

#include "widgets/scene/scene_style.h"

namespace bolthole {

/// The id of the thing nearest to a place of the picture, no farther than `reach` from it or, where it is
/// larger, in it; -1: none. Counted from a link's or spring's line, from the center of all else. Of two as
/// near, a bolted hole goes before a free one and what is painted later before what lies under it. Things
/// without an id, and all but holes, handles, mounts, joints, centers, springs and links, are never picked.
/// `first`, `last`: only ids from the one to the other, where some go before others.
[[nodiscard]] int hitScene(const Scene& scene, const SceneView& view, const SceneStyle& style, QPointF place,
                           double reach, int first = 0, int last = std::numeric_limits<int>::max());

}  // namespace bolthole
