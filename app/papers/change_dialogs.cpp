#include "app/papers/change_dialogs.h"

#include "app/papers/paper_dialogs.h"
#include "widgets/kit/translation.h"

namespace bolthole {

namespace {

PaperJob jobOf(const ChangeRequest& request) {
    PaperJob job;
    job.what = tr("change sheet");
    job.title = QString::fromStdString(request.after.title);
    job.papers = {{QString::fromUtf8("Letter, 8 1/2 × 11 in"), changePageOf(PaperSize::letter)},
                  {QString::fromUtf8("A4, 210 × 297 mm"), changePageOf(PaperSize::a4)}};
    job.paper = usualPaper(request.style.units) == PaperSize::letter ? 0 : 1;
    job.layOut = [request](const QPageLayout& page) { return std::make_unique<ChangeSheet>(request, page); };
    return job;
}

}  // namespace

void previewChangeSheet(QWidget* parent, const ChangeRequest& request) {
    previewPaper(parent, jobOf(request));
}

bool saveChangeSheet(QWidget* parent, const ChangeRequest& request, QString fileName) {
    return savePaper(parent, jobOf(request), changePageOf(usualPaper(request.style.units)),
                     std::move(fileName));
}

}  // namespace bolthole
