// The marks of hole combinations, the same on the map, in its key and in the table.
#pragma once

#include <QPainter>
#include <QPixmap>

namespace bolthole {

/// How a choice is marked. The two kinds differ in shape, not in color alone.
enum class DotKind {
    plain,   ///< a ring, or a disc where it is small
    problem  ///< a ring struck through, or a cross where it is small
};

/// Below this radius (px) rings fill up: discs and crosses take their place.
inline constexpr double kSmallDot = 3.2;

/// Paints one mark. The painter should be antialiased.
void paintDot(QPainter& painter, QPointF center, double radius, DotKind kind);
/// The mark at the edge of the map for a choice that lies beyond: a triangle with its tip along `outward`, a
/// unit vector; hollow for a problem.
void paintEdgeMark(QPainter& painter, QPointF tip, QPointF outward, DotKind kind);
/// The mark of the choice the car is bolted to: a disc in a ring, or a struck ring in a ring.
void paintPresent(QPainter& painter, QPointF center, double radius, DotKind kind);
/// A ring around a mark that is selected or pointed at.
void paintHalo(QPainter& painter, QPointF center, double radius, bool selected);

/// A mark in a square for the table, `size` px wide at that device pixel ratio.
[[nodiscard]] QPixmap dotIcon(DotKind kind, bool present, int size, double ratio);

/// Side of a mark in the table, px.
inline constexpr int kCombinationIcon = 15;

}  // namespace bolthole
