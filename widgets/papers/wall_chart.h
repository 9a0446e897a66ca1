// The wall chart: which holes give what, printed large for the shop wall. One layout for PDF, paper and
// preview.
#pragma once

#include <QDate>
#include <QPageLayout>
#include <QString>
#include <cstdint>

#include "geometry/combinations/combination_figures.h"
#include "widgets/papers/kit/printed_sheets.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

/// The chart's page: across.
[[nodiscard]] inline QPageLayout pageLayoutOf(PaperSize paper) {
    return pageOf(paper, QPageLayout::Landscape);
}

/// What a chart is made of.
struct ChartRequest {
    Car car;
    LengthTreatment lengths = LengthTreatment::keep;
    NumberStyle style;  ///< units; papers show inches as decimals or fractions as the style says
    QDate date;
    QString powers{};  ///< which holes for how much power, see bandWords(); empty: not said
};

/// How many combinations a chart of the car shows, and the most it is made for: beyond, nobody would paper
/// that wall.
[[nodiscard]] std::uint64_t chartCombinationCount(const Car& car);
inline constexpr std::uint64_t kMostChartCombinations = 4096;

/// The chart, laid out for a page. Needs a QGuiApplication; no widgets.
class WallChart : public PrintedSheets {
  public:
    /// Computes every combination the chart shows. The car must have passed findFaults(), for `uppers` have
    /// an upper rod, and have at most kMostChartCombinations.
    WallChart(const ChartRequest& request, const QPageLayout& page);

    /// Whether any combination can be assembled; else the chart holds dashes only.
    [[nodiscard]] bool anyAssembled() const;
};

}  // namespace bolthole
