// The wall chart as a PDF file.
#pragma once

#include <QByteArray>
#include <string>

#include "widgets/wall_chart.h"

namespace bolthole {

/// A chart as PDF, every font embedded. `page` and `title` as the chart was made for. Empty: it could not be
/// painted.
[[nodiscard]] QByteArray chartPdf(const WallChart& chart, const QPageLayout& page, const std::string& title);

/// Writes a chart, whole or not at all. Gives what went wrong, in words; empty: written. The request's car as
/// for WallChart.
[[nodiscard]] std::string writeChartFile(const ChartRequest& request, ChartPaper paper,
                                         const std::string& fileName);

}  // namespace bolthole
