// Draws the side view with any QPainter.
#pragma once

#include <QLineF>
#include <QPixmap>

#include "widgets/views/picture_drawing.h"
#include "widgets/views/side_points.h"

namespace bolthole {

/// What keeps its place while links are dragged (canvas, grid, ground, front tire), as a picture that is
/// drawn anew only where what it shows changed. Belongs to one view.
struct StillPicture {
    /// All that it depends on. Places are in 64ths of a pixel: what moves less, as by the solver's last
    /// digit, is not seen.
    struct Key {
        QRectF picture;    ///< logical pixels
        double ratio = 0;  ///< device pixels a logical one
        double scale = 0;  ///< pixels a metre
        double grid = 0;   ///< spacing of its lines, m
        QPoint origin;
        QPoint frontCenter;
        QPoint groundAtLeft;  ///< where the ground leaves the picture
        QPoint groundAtRight;
        double frontRadius = 0;  ///< m
        std::optional<Body> body;
        double bodyRadius = 0;  ///< m, and the length: what the body's shape follows from
        double bodyLength = 0;
        QRgb canvas = 0;
        bool operator==(const Key&) const = default;
    };
    Key key;
    QPixmap pixels;
};

/// One picture from the side. Make, draw(), read edgeMarkers(): those of the instant center and the CG.
class SideDrawing : public PictureDrawing {
  public:
    /// `picture`: the area to fill, in the painter's logical pixels. All references must outlive draw().
    SideDrawing(QPainter& painter, const BenchState& state, const DrawnPoints& points,
                const SideCamera& camera, QRectF picture, const PictureMarks& marks)
        : PictureDrawing(painter, state, points, camera, picture, marks, ViewPlane::side) {}

    /// With `still` what stands still is taken from there.
    void draw(StillPicture* still = nullptr);

  private:
    QLineF rollAxis_;  // what is seen of it, rear end first; null where there is none

    [[nodiscard]] StillPicture::Key stillKey() const;
    void drawStill();
    void drawBody();
    void showStill(StillPicture& still);
    void drawCar();
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
