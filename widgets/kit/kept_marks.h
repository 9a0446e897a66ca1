// Small marks drawn through pictures of them that are kept: smoothing a ring takes ten times as long as
// putting its pixels.
#pragma once

#include <QColor>
#include <QPointF>
#include <array>
#include <functional>

class QPainter;

namespace bolthole {

/// All that a mark's picture depends on: which one, its size and its colors.
struct MarkLook {
    int kind = 0;       ///< told apart from all other kinds by whoever draws it
    double radius = 0;  ///< px
    std::array<QRgb, 3> inks{};

    bool operator==(const MarkLook&) const = default;
};

/// Draws a mark about `at`, nowhere farther out than `reach` px, to an eighth of a pixel where it was drawn
/// before. `draw` draws it about a point; called where the painter takes no pixels or is turned, and for the
/// picture.
void drawMarkAt(QPainter& painter, QPointF at, double reach, const MarkLook& look,
                const std::function<void(QPainter& painter, QPointF at)>& draw);

}  // namespace bolthole
