#include "app/papers/sheet_dialogs.h"

#include "app/papers/paper_dialogs.h"

namespace bolthole {

void previewSheet(QWidget* parent, SheetKind kind, const Car& car, NumberStyle style) {
    PaperJob job;
    job.what = nameOf(kind);
    job.title = QString::fromStdString(car.title);
    job.papers = {{QString::fromUtf8("Letter, 8 1/2 × 11 in"), pageOf(kind, PaperSize::letter)},
                  {QString::fromUtf8("A4, 210 × 297 mm"), pageOf(kind, PaperSize::a4)}};
    job.paper = usualPaper(style.units) == PaperSize::letter ? 0 : 1;
    job.layOut = [=](const QPageLayout& page) {
        return makeSheet(kind, car, style, QDate::currentDate(), page);
    };
    previewPaper(parent, job);
}

}  // namespace bolthole
