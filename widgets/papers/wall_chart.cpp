#include "widgets/papers/wall_chart.h"

#include "widgets/papers/wall_chart_cells.h"
#include "widgets/papers/wall_chart_sheet.h"

namespace bolthole {

std::uint64_t chartCombinationCount(const Car& car) {
    const ChartAxes axes = chartAxes(car);
    std::uint64_t count = 1;
    for (const HoleAxis* axis : {&axes.down, &axes.across}) {
        for (const ChartBracket& bracket : axis->brackets) {
            const auto holes = static_cast<std::uint64_t>(bracket.holes);
            count =
                count > CombinationSpace::kCountLimit / holes ? CombinationSpace::kCountLimit : count * holes;
        }
    }
    return count;
}

namespace {

struct LaidChart : public LaidOutPaper {
    LaidChart(const ChartRequest& asked, const QPageLayout& page)
        : request(asked),
          combinations(computeChart(request.car, request.lengths)),
          words(request.car, combinations, request.lengths, request.style, request.powers),
          frame(frameOf(paintable(page), fonts, words, request.style.units)),
          layout(layOut(frame, fonts, combinations, words)) {}

    [[nodiscard]] int count() const override { return static_cast<int>(layout.sheets.size()); }
    void paint(QPainter& painter, int index) const override {
        const ChartSheet& sheet = layout.sheets[static_cast<std::size_t>(index)];
        SheetPainter around(painter, frame, fonts, combinations, words, layout);
        around.paintFrame(request.car, request.date, index);
        if (sheet.hasKey) {
            around.paintKey(request.car);
        }
        CellPainter(painter, fonts, combinations, words, layout).paint(sheet);
    }

    ChartRequest request;
    ChartCombinations combinations;
    ChartWords words;
    PrintFonts fonts;
    SheetFrame frame;
    ChartLayout layout;
};

}  // namespace

WallChart::WallChart(const ChartRequest& request, const QPageLayout& page)
    : PrintedSheets(std::make_unique<const LaidChart>(request, page)) {}

bool WallChart::anyAssembled() const {
    return static_cast<const LaidChart&>(paper()).combinations.any() != nullptr;
}

}  // namespace bolthole
