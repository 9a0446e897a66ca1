// How series become strokes, bands and marks on any painter: px on the screen, mm on paper.
#pragma once

#include <QPainter>
#include <QPen>
#include <QRectF>
#include <vector>

#include "widgets/curves/chart_data.h"

namespace bolthole {

/// Where a card's plot lies and which ranges it shows.
struct ChartPlot {
    QRectF area;
    bool isUpright = false;  ///< the imposed runs up and values across; else the imposed across and values up
    double low = 0;          ///< of the values
    double high = 1;
    double from = 0;  ///< of the imposed
    double to = 1;

    [[nodiscard]] double valuePosition(double value) const;
    [[nodiscard]] double imposedPosition(double imposed) const;
    [[nodiscard]] QPointF at(double imposed, double value) const;
    /// The line across the plot at a value, or at an imposed one.
    [[nodiscard]] QLineF valueLine(double value) const;
    [[nodiscard]] QLineF imposedLine(double imposed) const;
    [[nodiscard]] bool shows(double value) const { return value >= low && value <= high; }
    bool operator==(const ChartPlot&) const = default;
};

/// A line as drawn: points on the medium, NaN between two pieces.
using Stroke = std::vector<QPointF>;

/// Overwrites `stroke` with the series' line. What leaves the plot is cut a little outside of it, as dashing
/// a line that runs far away costs more than the picture; points that the line through what is left passes
/// within `invisible` of are taken out, at most six in a row, as drawing a bend costs more than finding that
/// there is none to see.
void traceStroke(const std::vector<ChartPoint>& points, const ChartPlot& plot, double invisible,
                 Stroke& stroke);
/// Strokes the pieces with the painter's pen.
void drawStroke(QPainter& painter, const Stroke& stroke);

/// A color of the theme, more or less seen through.
[[nodiscard]] QColor inkOf(ThemeColor color, double alpha = 1);
/// A pen for the series in `color`, `scale` times as wide; dashes are in pen widths and stay.
[[nodiscard]] QPen linePen(ChartLine line, double width, const QColor& color);

/// Fills between `low` and `high` of each point in `color`, what leaves the plot cut off.
void fillBand(QPainter& painter, const std::vector<ChartPoint>& points, const ChartPlot& plot,
              const QColor& color);
/// Fills between two series that share their imposed values.
void fillGap(QPainter& painter, const ChartSeries& first, const ChartSeries& second, const ChartPlot& plot,
             const QColor& color);
/// A bar from `low` to `high` of each point, with feet of 2 * `foot`, in the painter's pen.
void drawBars(QPainter& painter, const std::vector<ChartPoint>& points, const ChartPlot& plot, double foot);
/// A mark in the painter's pen and brush.
void drawMark(QPainter& painter, ChartMark mark, QPointF at, double radius);
/// A point's own mark in the theme's colors.
void drawPointMark(QPainter& painter, const PointMark& mark, QPointF at, double radius);

/// Puts words that stand in a row along a line so that no two overlap, in rows one behind the other: the row
/// of each, or -1 where it has no room. `middles`: where each would be centered; `lengths`: of each, with the
/// gap to its neighbor; words keep within `least` and `most`, to where `middles` are moved.
[[nodiscard]] std::vector<int> rowsOfWords(std::vector<double>& middles, const std::vector<double>& lengths,
                                           double least, double most, int rows);

}  // namespace bolthole
