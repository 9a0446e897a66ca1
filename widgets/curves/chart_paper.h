// The cards of a chart on paper: black on white, in mm, on any painter.
#pragma once

#include <QFontMetricsF>
#include <QPainter>
#include <QRectF>
#include <functional>
#include <vector>

#include "widgets/curves/chart_axis.h"
#include "widgets/curves/chart_data.h"

namespace bolthole {

/// A px of the ticks' layout on paper, mm.
inline constexpr double kPaperPixel = 25.4 / 96;

/// How the paper's own type is measured and put, in mm.
struct PaperLettering {
    double digits = 2.5;    ///< height of the labels' digits
    QFontMetricsF metrics;  ///< of the labels, in kPaperPixel
    std::function<double(const QString&)> width;
    /// Cut to a width, as a title is set.
    std::function<QString(const QString&, double)> cutTitle;
    /// `at`: the baseline, where the alignment says.
    std::function<void(QPointF at, const QString& text, bool isTitle, Qt::Alignment align)> draw;
};

/// Paints the cards side by side into `area`, with the labels of an upright imposed axis at left, or those of
/// one across below each. Colors are black; line styles, marks and widths are the series', 1 px as 0.32 mm.
/// Ranges show a little more than the data, never so little that noise fills a plot. Series that mark their
/// points show them. Events, gaps, stretches and limits are drawn as on the screen, with their words where
/// there is room. Sections, notes, groups of places and marks of single points are the screen's alone.
void paintChartOnPaper(QPainter& painter, const QRectF& area, const ChartAxis& axis,
                       const std::vector<ChartCard>& cards, const PaperLettering& lettering);

}  // namespace bolthole
