// Draws the rear and the top view with any QPainter.
#pragma once

#include "widgets/scene/scene.h"
#include "widgets/views/picture_drawing.h"

namespace bolthole {

/// One picture from behind or from above. Make, draw(), read edgeMarkers().
class AcrossDrawing final : public PictureDrawing {
  public:
    /// `plane`: rear or top. `picture`: the area to fill, in the painter's logical pixels. All references
    /// must outlive draw().
    AcrossDrawing(QPainter& painter, const BenchState& state, const DrawnPoints& points,
                  const SideCamera& camera, QRectF picture, const PictureMarks& marks, ViewPlane plane)
        : PictureDrawing(painter, state, points, camera, picture, marks, plane) {}

    /// With `layers` what stands still is taken from there; they belong to one view.
    void draw(StillLayers* layers = nullptr);

  protected:
    [[nodiscard]] std::unique_ptr<PictureDrawing> on(QPainter& painter) const override;
    void drawBackdrop() override;
    void tellBackdrop(StillKey& key) const override;
    void drawAxle() override;
    void tellAxle(StillKey& key) const override;

  private:
    void drawCenterPlane();
    void putTire(const Eigen::Vector3d& center, double turn, double radius);
    void drawHousing();
    void drawShaft();
    void drawRollCenter();
    void drawSides();
    void writeQuietly(QPointF beside, const QString& text, int preferred);
    [[nodiscard]] QPointF shown(const Eigen::Vector3d& point) const;  // in the picture
    [[nodiscard]] QPointF onAxle(double left) const;                  // in the plane
    [[nodiscard]] double axleTurn() const;
    [[nodiscard]] double halfAxle() const;
};

/// The roll center at the travel drawn: from behind, in the rear view's plane, m, straight above the axle's
/// center; and its height above the ground, measured square to it. See geometry/kinematics/roll.h.
struct DrawnRollCenter {
    QPointF at;
    double height = 0;
};
/// Nothing where the axle is not held sideways, or nothing was ever solved.
[[nodiscard]] std::optional<DrawnRollCenter> drawnRollCenter(const BenchState& state);

/// Boxes to fit, in the plane (rear or top), m: rear tires, links and driveline; or the whole car.
[[nodiscard]] QRectF acrossLinksBox(const BenchState& state, ViewPlane plane);
[[nodiscard]] QRectF acrossWholeBox(const BenchState& state, ViewPlane plane);

}  // namespace bolthole
