#include "app/papers/chart_dialogs.h"

#include <array>

#include "app/papers/paper_dialogs.h"
#include "app/papers/paper_names.h"
#include "widgets/kit/translation.h"

namespace bolthole {

namespace {

PaperJob jobOf(const ChartRequest& request) {
    PaperJob job;
    job.what = tr("wall chart");
    job.title = QString::fromStdString(request.car.title);
    for (const PaperName& entry : kPapers) {
        if (entry.paper == usualPaper(request.style.units)) {
            job.paper = static_cast<int>(job.papers.size());
        }
        job.papers.push_back({QString::fromUtf8(entry.name), pageLayoutOf(entry.paper)});
    }
    job.layOut = [request](const QPageLayout& page) { return std::make_unique<WallChart>(request, page); };
    return job;
}

// Says why there is no chart; true where there is.
bool canChart(QWidget* parent, const ChartRequest& request) {
    const QString refusal = chartRefusal(request);
    if (!refusal.isEmpty()) {
        sayOfPaper(parent, tr("wall chart"), refusal);
    }
    return refusal.isEmpty();
}

}  // namespace

QString chartRefusal(const ChartRequest& request) {
    if (request.lengths == LengthTreatment::uppers && !hasUpperRod(request.car)) {
        return tr("The car has no upper links to refit: choose another treatment of the lengths.");
    }
    if (const std::uint64_t count = chartCombinationCount(request.car); count > kMostChartCombinations) {
        return tr("The holes make %1 combinations; a wall chart is made for %2 at most.")
            .arg(count)
            .arg(kMostChartCombinations);
    }
    return {};
}

void previewChart(QWidget* parent, const ChartRequest& request) {
    if (canChart(parent, request)) {
        previewPaper(parent, jobOf(request));
    }
}

bool exportChart(QWidget* parent, const ChartRequest& request, PaperSize paper, QString fileName) {
    return canChart(parent, request) &&
           savePaper(parent, jobOf(request), pageLayoutOf(paper), std::move(fileName));
}

}  // namespace bolthole
