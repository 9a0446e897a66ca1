// The one painter of scenes.
#pragma once

#include <vector>

#include "widgets/scene/scene_style.h"

namespace bolthole {

/// Paints the ground's color over the picture, rounded as a card is.
void paintSceneGround(QPainter& painter, const SceneView& view, const SceneStyle& style);

/// Paints things, words and labels of a scene, clipped to the picture. `written`, if given, becomes where
/// words and labels came to stand, in the picture's units: all of them inside the picture, no label on
/// another or on words.
void paintScene(QPainter& painter, const Scene& scene, const SceneView& view, const SceneStyle& style,
                std::vector<QRectF>* written = nullptr);

/// The things alone, for a picture that places its names itself.
void paintThings(QPainter& painter, const Scene& scene, const SceneView& view, const SceneStyle& style);

}  // namespace bolthole
