// What stands around the body of every sheet of a paper: title, what of its figures nobody measured, caution,
// scale bar. Lengths in mm from the paintable area's corner; black on white.
#pragma once

#include <QPainter>
#include <QRectF>
#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "geometry/units/text.h"
#include "widgets/papers/kit/print_type.h"

namespace bolthole {

/// A part of a line.
struct PaperRun {
    QString text;
    bool isBold = false;
};

/// What a paper's frame is like.
struct FrameStyle {
    double title = 4.2;          ///< height of the title's digits
    double factor = 1;           ///< how much larger than the least all other text is
    bool hasSecondLine = false;  ///< under the title
    std::optional<Units>
        scaleBar{};        ///< a bar of 2 in or 50 mm that proves the printer's scale; nothing: none
    double leastFoot = 0;  ///< what the paper itself puts into the foot needs that much
    QStringList
        neverCut{};  ///< each alone the second line of a sheet: it runs on to more lines before it is cut
};

/// What is said atop one sheet.
struct SheetTitle {
    QString name;                  ///< whose paper it is; set smaller, then cut short where it is too long
    QString kind;                  ///< what paper it is, right after the name; never cut
    std::vector<PaperRun> asides;  ///< at the right end, one below the other
    std::vector<PaperRun> under;   ///< the second line; its bold parts are cut short where it is too long
    double clear = 0;              ///< room left free at the right end
};

/// Lays the frame out for a page and paints it sheet by sheet.
class PaperFrame {
  public:
    /// `starting`: which numbers nobody measured, empty for none, between title and rule of every sheet.
    /// `caution`: said at the foot of every sheet. The fonts must outlive the frame.
    PaperFrame(const PrintFonts& fonts, QSizeF page, const FrameStyle& style, const QString& starting,
               const QString& caution);

    /// Where everything else goes, between the title's rule and the foot's.
    [[nodiscard]] const QRectF& body() const { return body_; }
    [[nodiscard]] QRectF foot() const { return {body_.bottomLeft(), QPointF(page_.width(), page_.height())}; }
    /// The common text of the paper, and what stands out of it.
    [[nodiscard]] PrintType text() const { return text_; }
    [[nodiscard]] PrintType strong() const { return {text_.digits, true}; }
    void paint(QPainter& painter, const SheetTitle& title) const;

  private:
    void paintTitle(QPainter& painter, const SheetTitle& title) const;
    void paintUnder(QPainter& painter, const std::vector<PaperRun>& runs, double room) const;
    [[nodiscard]] QStringList underLines(const QString& words) const;
    [[nodiscard]] int moreUnder() const;
    void paintScaleBar(QPainter& painter) const;

    const PrintFonts& fonts_;
    QSizeF page_;
    FrameStyle style_;
    PrintType text_;
    double lastLine_;   // baseline of the title's last line
    double lastUnder_;  // the same, or of the last line that what stands there runs on to
    QStringList starting_;
    QStringList caution_;
    QRectF body_;
};

/// "sheet 1 of 3" of the sheet `index`, counted from 0.
[[nodiscard]] QString sheetWords(int index, int count);
/// "Long-roof wagon" and ": change sheet"; for a car without a title "Change sheet" alone.
[[nodiscard]] SheetTitle titleOf(const std::string& carTitle, const QString& kind);

}  // namespace bolthole
