// What the papers of the program have in common: sheets laid out in mm for one page, painted one by one.
#pragma once

#include <QPageLayout>
#include <QRectF>
#include <QSizeF>

class QPagedPaintDevice;
class QPainter;

namespace bolthole {

/// Left free around every sheet, mm; within what printers for these papers reach.
inline constexpr double kPaperMargin = 10;

/// What of a page can be painted on, mm.
[[nodiscard]] inline QSizeF paintable(const QPageLayout& page) {
    return page.paintRect(QPageLayout::Millimeter).size();
}

/// A paper of one or more sheets, laid out for the page it was made with.
class PrintedSheets {
  public:
    PrintedSheets() = default;
    PrintedSheets(PrintedSheets&&) noexcept = default;
    PrintedSheets& operator=(PrintedSheets&&) noexcept = default;
    virtual ~PrintedSheets() = default;

    [[nodiscard]] virtual int sheetCount() const = 0;
    /// Paints sheet `index`, 0 to sheetCount() - 1. The painter's unit must be set to 1 mm with the origin at
    /// the paintable area's corner.
    virtual void paintSheet(QPainter& painter, int index) const = 0;
};

/// Paints all sheets on a PDF writer or printer whose page layout is set. False: the device could not be
/// painted on.
[[nodiscard]] bool printSheets(const PrintedSheets& sheets, QPagedPaintDevice& device);

}  // namespace bolthole
