// What the sheets to write on are made of: a frame with title and cautions, boxes for a thick pen, boxes to
// tick, numbers in black circles. Lengths in mm; black on white.
#pragma once

#include <QPageLayout>
#include <QPainter>
#include <QRectF>
#include <QString>
#include <QStringList>
#include <vector>

#include "widgets/papers/change_sheet_flow.h"
#include "widgets/papers/wall_chart_type.h"

namespace bolthole {

/// Types of these sheets.
namespace kit_type {
inline constexpr PrintType kTitle{4.2, true};
inline constexpr PrintType kText{digit_height::kText, false};
inline constexpr PrintType kStrong{digit_height::kText, true};
inline constexpr PrintType kHead{2.9, true};
inline constexpr PrintType kSmall{2.1, false};
}  // namespace kit_type

/// Height of a box to write in, mm: half an inch, for a thick pen in a cold hand. Common practice, no source.
inline constexpr double kWritingBox = 12.7;
/// White between boxes that stand one above the other, and between the two of one number, mm.
inline constexpr double kBoxGap = 1.0;
/// Radius of the black circle around a point's number, mm.
inline constexpr double kBubble = 2.8;

/// Papers these sheets are made for.
enum class SheetPaper { letter, a4 };
/// A page of one with the margins of the program's papers.
[[nodiscard]] QPageLayout sheetPageOf(SheetPaper paper, QPageLayout::Orientation orientation);

/// What stands around the body of every sheet of a paper.
class PaperFrame {
  public:
    /// `caution`: said at the foot of every sheet, broken into lines. The fonts must outlive the frame.
    PaperFrame(const PrintFonts& fonts, QSizeF page, const QString& caution);

    /// Where everything else goes, mm from the paintable corner.
    [[nodiscard]] const QRectF& body() const { return body_; }
    /// Title on a rule, `aside` at its right end, cautions below the body. A long title is set smaller, then
    /// cut short.
    void paint(QPainter& painter, const QString& title, const QString& aside) const;

  private:
    const PrintFonts& fonts_;
    QSizeF page_;
    QStringList caution_;
    QRectF body_;
};

/// A black pen with flat ends, never thinner than kThinnestLine.
[[nodiscard]] QPen kitPen(double width);
/// The same in dashes.
[[nodiscard]] QPen kitDashes(double width = kThinnestLine);

/// An empty box to write in.
void drawWritingBox(QPainter& painter, const QRectF& box);
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

/// A block that is a line of words as wide as the page, broken where it must be.
[[nodiscard]] SheetBlock wordsBlock(const QString& words, PrintType type, double width,
                                    const PrintFonts& fonts);
/// A block that is a heading over a thin rule; it stands with what follows.
[[nodiscard]] SheetBlock headingBlock(const QString& words, const QString& aside, const PrintFonts& fonts);

}  // namespace bolthole
