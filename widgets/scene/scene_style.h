// How scenes look: in the theme's colors on the screen, in black lines of some mm on paper.
#pragma once

#include <QBrush>
#include <QPainter>
#include <QPen>
#include <QRectF>

#include "widgets/scene/scene.h"
#include "widgets/state/side_camera.h"

namespace bolthole {

/// The thinnest line of a printed scene, mm: what survives a tired printer.
inline constexpr double kThinnestPrintedLine = 0.25;

/// Type of a picture, in its units. The screen's is sceneScreenType(); papers bring their own.
class SceneType {
  public:
    virtual ~SceneType() = default;

    /// Of a text in one line, or broken into lines no wider than `wrap` where that is not 0.
    [[nodiscard]] virtual QSizeF sizeOf(const QString& text, SceneFont font, double wrap = 0) const = 0;
    /// Writes into a box of that size, in the painter's pen color.
    virtual void write(QPainter& painter, const QRectF& box, Qt::Alignment lie, const QString& text,
                       SceneFont font) const = 0;
    /// Cut short with an ellipsis where it is wider than `widest`.
    [[nodiscard]] virtual QString elided(const QString& text, SceneFont font, double widest) const = 0;
};

/// The application's type, px.
[[nodiscard]] const SceneType& sceneScreenType();

/// What a picture may set of its look. Sizes in the picture's units.
struct SceneStyle {
    const SceneType* type = nullptr;  ///< outlives the painting
    bool isPrint = false;
    SceneInk ground = &Theme::canvas;  ///< what the scene lies on
    double earth = 1;                  ///< strength of the earth's color
    double link = 7;                   ///< width of a link
    double hole = 4;                   ///< radius of a hole, joint and link's eye
    double center = 8;                 ///< radius of a center's mark
    double arrowHead = 8;
    double reach = 8;  ///< labels keep so far off the line of a spring

    /// For the screen, on a ground.
    [[nodiscard]] static SceneStyle screen(SceneInk ground = &Theme::canvas);
    /// For paper: black and white, no line thinner than kThinnestPrintedLine. `type` must outlive it.
    [[nodiscard]] static SceneStyle print(const SceneType& type);

    /// Width of a line.
    [[nodiscard]] double width(SceneWeight weight) const;
    [[nodiscard]] QPen pen(const SceneStroke& stroke) const;
    /// A solid pen of a width in the picture's units; on paper never under the thinnest.
    [[nodiscard]] QPen pen(SceneInk ink, double width, double strength = 1) const;
    /// Of something filled; null ink: nothing. On paper black where it is a line's color in full strength,
    /// else white.
    [[nodiscard]] QBrush fill(SceneInk ink, double strength = 1) const;
    [[nodiscard]] QColor color(SceneInk ink, double strength = 1) const;
    /// Behind words, so that what runs there stays quiet.
    [[nodiscard]] QColor patch() const;
};

/// Where the plane stands in the picture, and the picture's edge, in its units.
struct SceneView {
    SideCamera camera;
    QRectF picture;

    [[nodiscard]] QPointF place(QPointF point) const { return camera.toPicture(point); }
    [[nodiscard]] QPointF place(const ScenePlace& place) const;
    [[nodiscard]] double length(double metres) const { return metres * camera.scale; }
};

}  // namespace bolthole
