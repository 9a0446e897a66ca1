// How each thing of a scene is drawn.
#pragma once

#include "widgets/scene/scene_style.h"

namespace bolthole {

/// The use of the theme that a role's links have.
[[nodiscard]] SceneInk roleInk(Role role);

/// Draws things one by one; leaves pen and brush as the last one had them. Keeps references.
class ThingPainter {
  public:
    ThingPainter(QPainter& painter, const Scene& scene, const SceneView& view, const SceneStyle& style)
        : painter_(painter), scene_(scene), view_(view), style_(style) {}

    void draw(const SceneItem& item);

  private:
    void draw(const SceneGround& ground, const SceneMarks& marks);
    void draw(const SceneWheel& wheel, const SceneMarks& marks);
    void draw(const SceneTire& tire, const SceneMarks& marks);
    void draw(const SceneTube& tube, const SceneMarks& marks);
    void draw(const SceneHousing& housing, const SceneMarks& marks);
    void draw(const SceneJoint& shape, const SceneMarks& marks);
    void draw(const SceneLink& link, const SceneMarks& marks);
    void draw(const SceneHole& hole, const SceneMarks& marks);
    void draw(const SceneHandle& handle, const SceneMarks& marks);
    void draw(const SceneMount& mount, const SceneMarks& marks);
    void draw(const SceneSpring& spring, const SceneMarks& marks);
    void draw(const SceneCenter& center, const SceneMarks& marks);
    void draw(const SceneCross& cross, const SceneMarks& marks);
    void draw(const SceneArrow& arrow, const SceneMarks& marks);
    void draw(const SceneLine& line, const SceneMarks& marks);
    void draw(const ScenePath& path, const SceneMarks& marks);
    void draw(const SceneDimension& dimension, const SceneMarks& marks);
    void draw(const SceneScaleBar& bar, const SceneMarks& marks);
    void spokes(const SceneWheel& wheel);
    void gravity(QPointF at, double radius);
    void instantCenter(QPointF at, double radius);
    void rollCenter(QPointF at, double size, const SceneMarks& marks);
    void ghostLink(const SceneLink& link, SceneInk ink);
    void eyes(const SceneLink& link, const QPen& pen);
    void band(const ScenePath& path, const QPolygonF& outline);
    void halo(QPointF at, double radius, const SceneMarks& marks);
    void plannedHole(QPointF at, double radius, SceneInk ink);
    void cross(QPointF at, double reach);
    void tick(QPointF at, QPointF way);
    void clippedLine(QPointF from, QPointF to);
    [[nodiscard]] QPolygonF outlineOf(const ScenePath& path) const;
    [[nodiscard]] static SceneInk inkOf(const SceneMarks& marks, SceneInk plain);

    QPainter& painter_;
    const Scene& scene_;
    const SceneView& view_;
    const SceneStyle& style_;
};

/// What another car's links are drawn with, for a key.
[[nodiscard]] QPen ghostLinkPen(SceneInk ink, const SceneStyle& style);
/// The second ring around a hole where something was bolted before, in radii of the hole.
inline constexpr double kFormerRing = 1.6;
/// Radius of a hole in the picture.
[[nodiscard]] double radiusOf(const SceneHole& hole, const SceneView& view, const SceneStyle& style);
/// The line a dimension is written on, in the picture.
[[nodiscard]] QLineF lineOf(const SceneDimension& dimension, const SceneView& view);
/// A scale bar's line, in the picture.
[[nodiscard]] QLineF lineOf(const SceneScaleBar& bar, const SceneView& view, const SceneStyle& style);

}  // namespace bolthole
