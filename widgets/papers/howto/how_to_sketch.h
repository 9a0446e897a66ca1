// The pen of the pictures that say how one number is measured: what they are all made of. Lengths in mm, y
// down.
#pragma once

#include <QPainter>
#include <QPolygonF>
#include <QRectF>
#include <QTransform>
#include <utility>
#include <vector>

#include "widgets/papers/kit/print_type.h"
#include "widgets/papers/sheets/measuring_picture.h"

namespace bolthole {

/// What came of a picture, in the painter's mm.
struct HowToMarks {
    MeasuringMarks marks;       ///< the letters and where they stand
    std::vector<QRectF> words;  ///< every line of words
};

/// Strokes of a picture of parts, mm.
namespace how_to_line {
inline constexpr double kThin = 0.3;
inline constexpr double kPart = 0.5;
inline constexpr double kHeavy = 1.1;
}  // namespace how_to_line

/// A row of a paper that is not the one to be read.
inline constexpr char kNoLetter = 0;

/// Draws black on white on a canvas of kCanvas, which is fitted into a box. Remembers letters and words.
class HowToSketch {
  public:
    /// mm; what all pictures are laid out on.
    static constexpr QSizeF kCanvas{160, 58};

    /// The fonts must outlive the sketch. The painter is as it was once the sketch is gone.
    HowToSketch(QPainter& painter, const QRectF& box, const PrintFonts& fonts);
    ~HowToSketch();
    HowToSketch(const HowToSketch&) = delete;
    HowToSketch& operator=(const HowToSketch&) = delete;

    void line(QPointF from, QPointF to, double width = how_to_line::kPart);
    void dashed(QPointF from, QPointF to);
    void lines(const QPolygonF& points, double width = how_to_line::kPart);
    /// A closed outline, white inside.
    void shape(const QPolygonF& points, double width = how_to_line::kPart);
    void box(const QRectF& box, double width = how_to_line::kPart, double round = 0);
    void circle(QPointF center, double radius, double width = how_to_line::kPart);
    /// The center of a bolt or shaft: a cross.
    void cross(QPointF center, double reach = 1.6);
    /// Level ground or a bench top.
    void ground(double left, double right, double y);
    /// One way, its head at `to`.
    void arrow(QPointF from, QPointF to);

    /// A length asked for: a line with two heads and its letter at the middle, moved by `off`.
    void measure(QPointF from, QPointF to, char sign, QPointF off = {});
    /// An arc with a head at its end, from one direction to the other, degrees counterclockwise from the
    /// right.
    void turn(QPointF center, double radius, double from, double to);
    /// An angle asked for: an arc from one direction to the other, degrees counterclockwise from the right,
    /// and its letter beside its middle.
    void angle(QPointF center, double radius, double from, double to, char sign);
    /// A letter at the place where a number is read.
    void letter(QPointF at, char sign);
    /// A line of words over whatever stands there. `at`: its baseline.
    void say(QPointF at, const QString& words, Qt::AlignmentFlag alignment = Qt::AlignLeft,
             bool strong = false);

    /// A tire on its wheel, from the side.
    void tire(QPointF center, double radius);
    /// A tire from behind.
    void tread(QPointF center, double width, double height);
    /// A coil spring, `half` mm to either side of its middle line.
    void coil(QPointF from, QPointF to, double half, int turns = 6);
    /// A shock with an eye at both ends, its body at `from`.
    void shock(QPointF from, QPointF to);
    /// A weighing platform and, at `display`, its reading with the letter.
    void scale(const QRectF& pad, QPointF display, char sign);
    /// A sheet of paper with a title and rows; the rows that have a letter have it at their end.
    void paper(const QRectF& sheet, const QString& title, const std::vector<std::pair<QString, char>>& rows);
    /// A plot's two axes and what they count.
    void axes(const QRectF& plot, const QString& across, const QString& up);
    /// A round gauge with a hand.
    void dial(QPointF center, double radius, double hand);

    /// Rings around the letter `lit` and gives what was drawn. Empty: none.
    HowToMarks finish(const QString& lit);

  private:
    QPainter& painter_;
    const PrintFonts& fonts_;
    HowToMarks marks_;
    QTransform toBox_;
};

}  // namespace bolthole
