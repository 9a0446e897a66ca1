#include "widgets/papers/wall_chart.h"

#include <QPainter>

#include "widgets/papers/printed_sheets.h"
#include "widgets/papers/wall_chart_cells.h"
#include "widgets/papers/wall_chart_sheet.h"

namespace bolthole {

namespace {}  // namespace

QPageLayout pageLayoutOf(ChartPaper paper) {
    QPageSize::PageSizeId size = QPageSize::Letter;
    switch (paper) {
        case ChartPaper::letter:
            break;
        case ChartPaper::tabloid:
            size = QPageSize::Tabloid;
            break;
        case ChartPaper::a4:
            size = QPageSize::A4;
            break;
        case ChartPaper::a3:
            size = QPageSize::A3;
            break;
    }
    return {QPageSize(size), QPageLayout::Landscape,
            QMarginsF(kPaperMargin, kPaperMargin, kPaperMargin, kPaperMargin), QPageLayout::Millimeter};
}

ChartPaper usualPaper(Units units) {
    return units == Units::inch ? ChartPaper::letter : ChartPaper::a4;
}

std::uint64_t chartChoiceCount(const Car& car) {
    const ChartAxes axes = chartAxes(car);
    std::uint64_t count = 1;
    for (const HoleAxis* axis : {&axes.down, &axes.across}) {
        for (const ChartBracket& bracket : axis->brackets) {
            const auto holes = static_cast<std::uint64_t>(bracket.holes);
            count = count > ChoiceSpace::kCountLimit / holes ? ChoiceSpace::kCountLimit : count * holes;
        }
    }
    return count;
}

struct WallChart::Parts {
    Parts(const ChartRequest& asked, const QPageLayout& page)
        : request(asked),
          choices(computeChart(request.car, request.lengths)),
          words(request.car, choices, request.lengths, request.style, request.powers),
          frame(frameOf(paintable(page), fonts, words, request.style.units)),
          layout(layOut(frame, fonts, choices, words)) {}

    ChartRequest request;
    ChartChoices choices;
    ChartWords words;
    PrintFonts fonts;
    SheetFrame frame;
    ChartLayout layout;
};

WallChart::WallChart(const ChartRequest& request, const QPageLayout& page)
    : parts_(std::make_unique<Parts>(request, page)) {}

WallChart::~WallChart() = default;
WallChart::WallChart(WallChart&&) noexcept = default;

bool WallChart::anyAssembled() const {
    return parts_->choices.any() != nullptr;
}

int WallChart::sheetCount() const {
    return static_cast<int>(parts_->layout.sheets.size());
}

void WallChart::paintSheet(QPainter& painter, int index) const {
    const Parts& parts = *parts_;
    const ChartSheet& sheet = parts.layout.sheets[static_cast<std::size_t>(index)];
    painter.save();
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    SheetPainter frame(painter, parts.frame, parts.fonts, parts.choices, parts.words, parts.layout);
    frame.paintFrame(parts.request.car, parts.request.date, index);
    if (sheet.hasKey) {
        frame.paintKey(parts.request.car);
    }
    CellPainter(painter, parts.fonts, parts.choices, parts.words, parts.layout).paint(sheet);
    painter.restore();
}

}  // namespace bolthole
