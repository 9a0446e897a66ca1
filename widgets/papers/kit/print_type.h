// Type on paper: sizes by the height of the digits, measured and drawn in mm. Lines are broken by the
// toolkit, as they are in the texts of paper_text.h.
#pragma once

#include <QFont>
#include <QPainter>
#include <QString>
#include <QStringList>

namespace bolthole {

/// Least heights of the digits on the wall chart, mm. 20 minutes of arc, the middle of what is preferred, at
/// 2 m and at 1 m (NUREG-0700 Rev. 2, sec. 1.3.1-4; ISO 9241-3); the two smaller ones are the chart's own.
namespace digit_height {
inline constexpr double kAntiSquat = 11.6;
inline constexpr double kInstantCenter = 5.8;
inline constexpr double kTravelEnds = 4.0;
inline constexpr double kText = 2.5;
}  // namespace digit_height

/// The thinnest line that survives a tired printer, mm.
inline constexpr double kThinnestLine = 0.25;
/// Fonts come in whole pixels; a hundredth of a mm is fine enough for them.
inline constexpr double kPixelsPerMillimetre = 100;

/// One kind of type.
struct PrintType {
    double digits = digit_height::kText;  ///< height of the digits, mm
    bool bold = false;

    [[nodiscard]] PrintType scaled(double factor) const { return {digits * factor, bold}; }
    /// From one baseline to the next, mm.
    [[nodiscard]] double leading() const { return 1.8 * digits; }
    /// How far letters reach below the baseline, mm.
    [[nodiscard]] double descent() const { return 0.3 * digits; }
};

/// What the papers are set in, where a larger page or a thicker pen asks for nothing else.
namespace kit_type {
inline constexpr PrintType kText{digit_height::kText, false};
inline constexpr PrintType kStrong{digit_height::kText, true};
inline constexpr PrintType kHead{3.0, true};
inline constexpr PrintType kSmall{2.1, false};
}  // namespace kit_type

/// The papers' fonts. Needs a QGuiApplication.
class PrintFonts {
  public:
    PrintFonts();

    /// The font for a text: its lowest digit is as high as the type asks for, in hundredths of a mm.
    [[nodiscard]] QFont font(PrintType type, const QString& text) const;
    /// Width of a line, mm.
    [[nodiscard]] double width(const QString& text, PrintType type) const;
    /// The widest of some lines, mm.
    [[nodiscard]] double widest(const QStringList& lines, PrintType type) const;
    /// Breaks a text into lines no wider than `width` (mm), between words where it can; none of no text.
    [[nodiscard]] QStringList wrapped(const QString& text, PrintType type, double width) const;
    /// The line, cut short with an ellipsis where it is wider than `width` (mm).
    [[nodiscard]] QString elided(const QString& text, PrintType type, double width) const;
    /// The type, in steps made smaller where the line is wider than `width` (mm), its digits never below
    /// `least`.
    [[nodiscard]] PrintType fitted(const QString& text, PrintType type, double width, double least) const;
    /// Draws a line, its baseline from `at` (mm; Qt::AlignLeft), around it (AlignHCenter) or up to it
    /// (AlignRight), in the painter's pen color.
    void draw(QPainter& painter, QPointF at, const QString& text, PrintType type,
              Qt::AlignmentFlag alignment = Qt::AlignLeft) const;
    /// Draws lines one below the other, the first one's baseline at `at`.
    void draw(QPainter& painter, QPointF at, const QStringList& lines, PrintType type,
              Qt::AlignmentFlag alignment = Qt::AlignLeft) const;

  private:
    double regularDigit_;  // height of the lowest digit of the font at size 1
    double boldDigit_;
};

}  // namespace bolthole
