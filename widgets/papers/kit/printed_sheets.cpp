#include "widgets/papers/kit/printed_sheets.h"

#include <QPagedPaintDevice>
#include <QPainter>

namespace bolthole {

QPageLayout pageOf(PaperSize paper, QPageLayout::Orientation orientation) {
    QPageSize::PageSizeId size = QPageSize::Letter;
    switch (paper) {
        case PaperSize::letter:
            break;
        case PaperSize::tabloid:
            size = QPageSize::Tabloid;
            break;
        case PaperSize::a4:
            size = QPageSize::A4;
            break;
        case PaperSize::a3:
            size = QPageSize::A3;
            break;
    }
    return {QPageSize(size), orientation, QMarginsF(kPaperMargin, kPaperMargin, kPaperMargin, kPaperMargin),
            QPageLayout::Millimeter};
}

PaperSize usualPaper(Units units) {
    return units == Units::inch ? PaperSize::letter : PaperSize::a4;
}

void PrintedSheets::paintSheet(QPainter& painter, int index) const {
    painter.save();
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    paper_->paint(painter, index);
    painter.restore();
}

bool printSheets(const PrintedSheets& sheets, QPagedPaintDevice& device) {
    QPainter painter;
    if (!painter.begin(&device)) {
        return false;
    }
    constexpr double kMillimetresPerInch = 25.4;
    painter.scale(device.logicalDpiX() / kMillimetresPerInch, device.logicalDpiY() / kMillimetresPerInch);
    for (int index = 0; index < sheets.sheetCount(); ++index) {
        if (index > 0 && !device.newPage()) {
            return false;
        }
        sheets.paintSheet(painter, index);
    }
    return painter.end();
}

}  // namespace bolthole
