// The wall chart from the window: preview, paper, PDF file.
#pragma once

#include <QString>

#include "widgets/papers/wall_chart.h"

class QWidget;

namespace bolthole {

/// Why no chart can be made of the request's car, in words; empty: it can. For all functions below the car
/// must have passed findFaults(); they say this reason in a message box and go no further.
[[nodiscard]] QString chartRefusal(const ChartRequest& request);

/// Shows the chart sheet by sheet, with a choice of papers and buttons to print and to save it. Returns when
/// the person closes it.
void previewChart(QWidget* parent, const ChartRequest& request);

/// Writes the chart as PDF, whole or not at all; asks where to if `fileName` is empty. False: given up, or
/// failed, which a message box then said.
bool exportChart(QWidget* parent, const ChartRequest& request, PaperSize paper, QString fileName = {});

}  // namespace bolthole
