// Draws a bracket at true size on a drilling template, and the rulers that prove the printer's scale.
#pragma once

#include <QPainter>

#include "widgets/kit/label_placer.h"
#include "widgets/papers/kit/print_type.h"
#include "widgets/papers/template_scene.h"

namespace bolthole {

/// Type of everything small on a template.
inline constexpr PrintType kTemplateText{digit_height::kText, false};
inline constexpr PrintType kTemplateStrong{digit_height::kText, true};

/// One face of a bracket with its dimensions. The painter's unit must be 1 mm, its origin where the scene's
/// points have theirs.
class TemplateDrawing {
  public:
    TemplateDrawing(QPainter& painter, const TemplateScene& scene, const PrintFonts& fonts);

    void paint();

  private:
    void paintOutline();
    void paintHole(const TemplateHole& hole);
    void paintEdgeDistance(const TemplateHole& hole);
    void paintDistances(const TemplateHole& hole, int order);
    void paintExtent();
    void paintAcross(double y, double from, double to, const QString& words);
    void paintUpright(double x, double from, double to, const QString& words);
    void paintNumber(const TemplateHole& hole);
    void line(QPointF from, QPointF to) { painter_.drawLine(from, to); }
    [[nodiscard]] double reach() const;
    [[nodiscard]] double armOf(const TemplateHole& hole) const;
    void keepOff(const QLineF& taken);
    void keepOffLines();
    [[nodiscard]] QRectF placeBeside(const QLineF& taken, QSizeF size);

    QPainter& painter_;
    const TemplateScene& scene_;
    const PrintFonts& fonts_;
    LabelPlacer labels_;
    QRectF bracket_;  // the outline, or the holes where there is none
};

/// A ruler of 100 mm from `start` to the right; its ticks stand above the line, a number at every 10.
void paintMetricRuler(QPainter& painter, QPointF start, const PrintFonts& fonts);
/// A ruler of 4 in from `start` upward; its ticks point to the right, a number at every inch.
void paintInchRuler(QPainter& painter, QPointF start, const PrintFonts& fonts);
/// Arrows to the front and up, in a box of 30 by 24 mm with its upper left corner at `at`.
void paintDirections(QPainter& painter, QPointF at, TemplateFace face, const PrintFonts& fonts);

/// What rulers are long, mm.
inline constexpr double kMetricRuler = 100;
inline constexpr double kInchRuler = 101.6;

}  // namespace bolthole
