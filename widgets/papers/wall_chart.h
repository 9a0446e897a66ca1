// The wall chart: which holes give what, printed large for the shop wall. One layout for PDF, paper and
// preview.
#pragma once

#include <QDate>
#include <QPageLayout>
#include <QString>
#include <cstdint>
#include <memory>
#include <vector>

#include "geometry/choices/choice_figures.h"
#include "widgets/papers/printed_sheets.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

/// Papers the chart is made for.
enum class ChartPaper { letter, tabloid, a4, a3 };
/// Landscape page of a paper with the chart's margins.
[[nodiscard]] QPageLayout pageLayoutOf(ChartPaper paper);
/// Letter where inches are used, A4 elsewhere.
[[nodiscard]] ChartPaper usualPaper(Units units);

/// What a chart is made of.
struct ChartRequest {
    Car car;
    LengthTreatment lengths = LengthTreatment::keep;
    NumberStyle style;  ///< units; papers show inches as decimals or fractions as the style says
    QDate date;
    QString powers{};  ///< which holes for how much power, see bandWords(); empty: not said
};

/// How many choices a chart of the car shows, and the most it is made for: beyond, nobody would paper that
/// wall.
[[nodiscard]] std::uint64_t chartChoiceCount(const Car& car);
inline constexpr std::uint64_t kMostChartChoices = 4096;

/// Lays the chart out for a page and paints it sheet by sheet. Lengths on paper in mm, so that sizes hold on
/// every device. Needs a QGuiApplication; no widgets.
class WallChart : public PrintedSheets {
  public:
    /// Computes every choice the chart shows. The car must have passed findFaults(), for `uppers` have an
    /// upper rod, and have at most kMostChartChoices.
    WallChart(const ChartRequest& request, const QPageLayout& page);
    ~WallChart() override;
    WallChart(WallChart&&) noexcept;

    /// Whether any choice can be assembled; else the chart holds dashes only.
    [[nodiscard]] bool anyAssembled() const;
    [[nodiscard]] int sheetCount() const override;
    void paintSheet(QPainter& painter, int index) const override;

  private:
    struct Parts;
    std::unique_ptr<Parts> parts_;
};

}  // namespace bolthole
