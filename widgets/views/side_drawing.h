// Draws the side view with any QPainter.
#pragma once

#include <QLineF>

#include "widgets/views/picture_drawing.h"
#include "widgets/views/side_points.h"

namespace bolthole {

/// One picture from the side. Make, draw(), read edgeMarkers(): those of the instant center and the CG.
class SideDrawing final : public PictureDrawing {
  public:
    /// `picture`: the area to fill, in the painter's logical pixels. All references must outlive draw().
    SideDrawing(QPainter& painter, const BenchState& state, const DrawnPoints& points,
                const SideCamera& camera, QRectF picture, const PictureMarks& marks)
        : PictureDrawing(painter, state, points, camera, picture, marks, ViewPlane::side) {}

    /// With `layers` what stands still is taken from there; they belong to one view.
    void draw(StillLayers* layers = nullptr);

  protected:
    [[nodiscard]] std::unique_ptr<PictureDrawing> on(QPainter& painter) const override;
    void drawBackdrop() override;
    void tellBackdrop(StillKey& key) const override;
    void drawAxle() override;
    void tellAxle(StillKey& key) const override;

  private:
    QLineF rollAxis_;  // what is seen of it, rear end first; null where there is none

    void drawBody();
    void drawLines();
    [[nodiscard]] double groundAt(double across) const;
    void drawGround();
    void drawHousing();
    void drawShaft();
    void drawGhost(const Ghost& ghost, SceneInk ink);
    void drawGhostCenter(const Ghost& ghost, SceneInk ink);
    void drawArm(const Station& station, const SceneStroke& stroke);
    void drawInstantCenterPath(const Trace& trace, const QPen& pen);
    void drawReferenceLine();
    void drawLinkLines();
    void drawRollAxis();
    void nameRollAxis();
    void drawCenterOfGravity();
    void markInstantCenter();
    void drawInstantCenter();

    static constexpr double kNoLimit = 1e7;  // pixels; a point farther out is as good as at infinity
};

}  // namespace bolthole
