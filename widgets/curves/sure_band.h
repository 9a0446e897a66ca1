// The band around a travel curve: where the figure may be, measured as the car was.
#pragma once

#include <QPainter>
#include <QRectF>
#include <vector>

#include "geometry/uncertainty/trace_spread.h"
#include "widgets/curves/curve_data.h"

namespace bolthole {

/// A curve's band at one travel, in the axis's unit; NaN breaks it. An end may be infinite: anything goes
/// that way.
struct BandPoint {
    double travel = 0;  ///< m
    double low = 0;
    double high = 0;
};

/// Overwrites `band` with estimate -+ kCoverage95 times the standard uncertainty, about every third row of
/// the trace; its storage is used again. On an `inverseDistance` axis that is the spread of 1/distance; a
/// `throughInfinity` figure can be anything where the instant center may be infinitely far. Empty where the
/// spread is not known.
void bandPoints(const Trace& trace, const TraceSpread& spread, Figure figure, CurveScale scale,
                std::vector<BandPoint>& band);

/// How a plot maps: the value axis to the right, travel up.
struct BandPlot {
    QRectF plot;  ///< px
    double low = 0;
    double high = 1;   ///< the value axis
    double droop = 0;  ///< the lowest travel, m
    double bump = 1;   ///< the highest
};
/// Fills the band in the color, what leaves the plot cut off.
void paintBand(QPainter& painter, const std::vector<BandPoint>& band, const BandPlot& plot,
               const QColor& color);

}  // namespace bolthole
