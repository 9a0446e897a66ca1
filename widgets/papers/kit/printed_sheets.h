// What the papers of the program are: sheets laid out in mm for one page, painted one by one on PDF, printer
// and preview alike.
#pragma once

#include <QPageLayout>
#include <QRectF>
#include <QSizeF>
#include <memory>

#include "geometry/units/text.h"

class QPagedPaintDevice;
class QPainter;

namespace bolthole {

/// Left free around every sheet, mm; within what printers for these papers reach.
inline constexpr double kPaperMargin = 10;

/// Papers there are; the sheets that are carried to the car are made for letter and A4 alone.
enum class PaperSize { letter, tabloid, a4, a3 };
/// A page of one within the margins.
[[nodiscard]] QPageLayout pageOf(PaperSize paper, QPageLayout::Orientation orientation);
/// Letter where inches are used, A4 elsewhere.
[[nodiscard]] PaperSize usualPaper(Units units);

/// What of a page can be painted on, mm.
[[nodiscard]] inline QSizeF paintable(const QPageLayout& page) {
    return page.paintRect(QPageLayout::Millimeter).size();
}

/// What a paper makes for its page: as many sheets as it takes.
class LaidOutPaper {
  public:
    LaidOutPaper() = default;
    LaidOutPaper(const LaidOutPaper&) = delete;
    LaidOutPaper& operator=(const LaidOutPaper&) = delete;
    virtual ~LaidOutPaper() = default;

    [[nodiscard]] virtual int count() const = 0;
    /// Paints sheet `index`, 0 to count() - 1; lengths in mm from the paintable area's corner. Whatever is
    /// left set in the painter does no harm.
    virtual void paint(QPainter& painter, int index) const = 0;
};

/// A paper of one or more sheets, laid out for the page it was made with.
class PrintedSheets {
  public:
    [[nodiscard]] int sheetCount() const { return paper_->count(); }
    /// Paints sheet `index`, 0 to sheetCount() - 1. The painter's unit must be set to 1 mm with the origin at
    /// the paintable area's corner.
    void paintSheet(QPainter& painter, int index) const;

  protected:
    explicit PrintedSheets(std::unique_ptr<const LaidOutPaper> paper) : paper_(std::move(paper)) {}
    [[nodiscard]] const LaidOutPaper& paper() const { return *paper_; }

  private:
    std::unique_ptr<const LaidOutPaper> paper_;
};

/// Paints all sheets on a PDF writer or printer whose page layout is set. False: the device could not be
/// painted on.
[[nodiscard]] bool printSheets(const PrintedSheets& sheets, QPagedPaintDevice& device);

}  // namespace bolthole
