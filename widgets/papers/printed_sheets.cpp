#include "widgets/papers/printed_sheets.h"

#include <QPagedPaintDevice>
#include <QPainter>

namespace bolthole {

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
