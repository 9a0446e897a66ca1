#include "widgets/papers/sheets/sheets.h"

#include "widgets/kit/translation.h"
#include "widgets/papers/sheets/measuring_sheet.h"
#include "widgets/papers/sheets/setup_card.h"
#include "widgets/papers/sheets/test_day_sheet.h"

namespace bolthole {

QString nameOf(SheetKind kind) {
    switch (kind) {
        case SheetKind::measuring:
            return tr("measuring sheet");
        case SheetKind::testDay:
            return tr("test-day sheet");
        case SheetKind::setup:
            break;
    }
    return tr("setup card");
}

QPageLayout pageOf(SheetKind kind, PaperSize paper) {
    return pageOf(paper, kind == SheetKind::testDay ? QPageLayout::Landscape : QPageLayout::Portrait);
}

std::unique_ptr<PrintedSheets> makeSheet(SheetKind kind, const Car& car, NumberStyle style, QDate date,
                                         const QPageLayout& page) {
    switch (kind) {
        case SheetKind::measuring:
            return std::make_unique<MeasuringSheet>(car, style, page);
        case SheetKind::testDay:
            return std::make_unique<TestDaySheet>(car, style, page);
        case SheetKind::setup:
            break;
    }
    return std::make_unique<SetupCard>(car, style, date, page);
}

}  // namespace bolthole
