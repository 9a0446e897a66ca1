// Small means of drawing that the pictures share.
#pragma once

#include <QLineF>
#include <QPen>
#include <QRectF>
#include <optional>

class QPainter;

namespace bolthole {

/// A pen with round caps and joins; `width` in logical pixels.
[[nodiscard]] QPen roundPen(const QColor& color, double width, Qt::PenStyle style = Qt::SolidLine);
/// A flat-capped pen; `pattern` in pen widths, dash and gap in turn.
[[nodiscard]] QPen dashedPen(const QColor& color, double width, const QList<double>& pattern);
[[nodiscard]] QColor faded(QColor color, double alpha);
/// As `color` would look over `ground`, opaque: large translucent fills cost more than all lines together.
[[nodiscard]] QColor over(const QColor& color, double alpha, const QColor& ground);
/// Unit vector along `vector`; (1, 0) for none.
[[nodiscard]] QPointF unit(QPointF vector);
/// An arrow with an open head at `to`, kArrowHead px long; the head's lines are solid whatever the shaft's.
void paintArrow(QPainter& painter, QPointF from, QPointF to, const QPen& pen);
inline constexpr double kArrowHead = 8;
/// Whether a picture kept as pixels may be put onto the painter's device: not where it draws lines and words
/// as such, as into a file or onto paper.
[[nodiscard]] bool takesPixels(const QPainter& painter);
/// The part of a line inside a rectangle; nothing if it misses. Dashing a line that runs far outside would
/// cost more than the whole picture. Liang & Barsky's method, from memory, no page.
[[nodiscard]] std::optional<QLineF> clipped(const QLineF& line, const QRectF& box);
}  // namespace bolthole
