// What is drawn on papers by hand: pens, boxes for a thick pen, boxes to tick, numbers in black circles,
// arrows. Lengths in mm; black on white.
#pragma once

#include <QPainter>
#include <QRectF>
#include <QString>

#include "widgets/papers/kit/print_type.h"

namespace bolthole {

/// Height of a box to write in, mm: half an inch, for a thick pen in a cold hand. Common practice, no source.
inline constexpr double kWritingBox = 12.7;
/// White between boxes that stand one above the other, and between the two of one number, mm.
inline constexpr double kBoxGap = 1.0;
/// Radius of the black circle around a point's number, mm.
inline constexpr double kBubble = 2.8;

/// A black pen with flat ends, never thinner than kThinnestLine.
[[nodiscard]] QPen kitPen(double width);
/// The same in dashes.
[[nodiscard]] QPen kitDashes(double width = kThinnestLine);
/// Between rows, and to write on: lighter than what frames them.
[[nodiscard]] QPen kitHairline();

/// A level line with `pen`.
void drawRule(QPainter& painter, const QPen& pen, double y, double left, double right);
/// An empty box to write in.
void drawWritingBox(QPainter& painter, const QRectF& box);
/// A box to tick around a point, its side so long.
void drawTickBox(QPainter& painter, QPointF center, double side);
/// A box to tick and what it means after it, its left edge and baseline at `at`. Gives where the words end.
double drawTick(QPainter& painter, QPointF at, const QString& words, const PrintFonts& fonts,
                PrintType type = kit_type::kText);
/// Words with a line to write on after them, `length` mm long. Gives where the line ends.
double drawBlank(QPainter& painter, QPointF at, const QString& words, double length, const PrintFonts& fonts);
/// A number in a black circle around `center`.
void drawBubble(QPainter& painter, QPointF center, const QString& number, const PrintFonts& fonts);
/// A letter in a black square around `center`, so that it is not taken for a point.
void drawLetter(QPainter& painter, QPointF center, const QString& letter, const PrintFonts& fonts);
/// A line with an arrowhead at both ends, or at `to` alone.
void drawArrow(QPainter& painter, QPointF from, QPointF to, bool bothEnds = true);

}  // namespace bolthole
