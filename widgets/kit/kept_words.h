// Words whose shape is kept from one painting to the next: finding the glyphs of a line and their places
// takes several times as long as drawing them, and in a drag most words stay as they are.
#pragma once

#include <QFont>
#include <QSizeF>
#include <QString>

class QPainter;
class QPointF;
class QRectF;

namespace bolthole {

/// Of one line, px: its advance, and the height of a line of that font.
[[nodiscard]] QSizeF sizeOfLine(const QFont& font, const QString& text);
/// Its advance alone, px.
[[nodiscard]] inline double widthOfLine(const QFont& font, const QString& text) {
    return sizeOfLine(font, text).width();
}

/// Draws one line in the painter's font and pen, lying in the box as `lie` has it; it may stand over the
/// box's edge.
void drawLine(QPainter& painter, const QRectF& box, Qt::Alignment lie, const QString& text);
/// The same from a point of its base line on.
void drawLine(QPainter& painter, QPointF from, const QString& text);

}  // namespace bolthole
