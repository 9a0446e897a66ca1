#include "widgets/curves/sure_band.h"

#include <QPolygonF>
#include <algorithm>
#include <cmath>

#include "geometry/units/sure_text.h"
#include "geometry/units/units.h"
#include "widgets/scales/center_spread.h"
#include "widgets/scales/distance_scale.h"

namespace bolthole {

namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr std::size_t kBandPoints = 27;  // about so many along the travel
// From 96 rows on Qt's raster engine shares a blending out among threads, whose waking costs more than the
// band.
constexpr double kRowsAtOnce = 90;

BandPoint heightBand(const Station& station, const TraceSpread& spread) {
    const double travel = station[Figure::travel];
    const std::optional<CenterSpread> center = centerSpreadAt(spread, travel);
    const double inverse = inverseDistance(station);
    if (!center || std::isnan(inverse)) {
        return {travel, kNaN, kNaN};
    }
    if (inverseEnds(*center, inverse).throughInfinity()) {
        return {travel, -kInfinity, kInfinity};
    }
    const double half = kCoverage95 * center->ofHeight(inverse, station[Figure::swingArmAngle]);
    return {travel, station[Figure::icZ] - half, station[Figure::icZ] + half};
}

BandPoint bandAt(const Station& station, const TraceSpread& spread, Figure figure, CurveScale scale) {
    if (station.usable && scale == CurveScale::throughInfinity) {
        return heightBand(station, spread);
    }
    const double travel = station[Figure::travel];
    const std::size_t index =
        scale == CurveScale::inverseDistance ? kInverseDistance : static_cast<std::size_t>(figure);
    const double value = axisValue(station, figure, scale);
    const double half = kCoverage95 * spreadAt(spread, index, travel);
    return {travel, value - half, value + half};
}

bool exists(const BandPoint& point) {
    return !std::isnan(point.low) && !std::isnan(point.high);
}

/// A stretch of a band on the screen, filled.
void fillPiece(QPainter& painter, const std::vector<QPointF>& low, const std::vector<QPointF>& high) {
    QPolygonF outline(low.begin(), low.end());
    std::copy(high.rbegin(), high.rend(), std::back_inserter(outline));
    painter.drawPolygon(outline);
}

void fillRun(QPainter& painter, const BandPoint* from, const BandPoint* to, const BandPlot& plot) {
    const double perValue = plot.plot.width() / (plot.high - plot.low);
    const double perTravel = plot.plot.height() / (plot.bump - plot.droop);
    // Beyond the plot by its own width is as good as infinitely far, and the slope at its edge stays.
    const double room = plot.high - plot.low;
    const auto place = [&](double value, double travel) {
        const double within = std::clamp(value, plot.low - room, plot.high + room);
        return QPointF(plot.plot.left() + (within - plot.low) * perValue,
                       plot.plot.bottom() - (travel - plot.droop) * perTravel);
    };
    const double tallest = kRowsAtOnce / painter.device()->devicePixelRatioF();
    std::vector<QPointF> low;
    std::vector<QPointF> high;
    for (const BandPoint* point = from; point != to; ++point) {
        const QPointF at = place(point->low, point->travel);
        if (low.size() > 1 && std::abs(at.y() - low.front().y()) > tallest) {
            fillPiece(painter, low, high);
            low.erase(low.begin(), low.end() - 1);
            high.erase(high.begin(), high.end() - 1);
        }
        low.push_back(at);
        high.push_back(place(point->high, point->travel));
    }
    fillPiece(painter, low, high);
}

}  // namespace

void bandPoints(const Trace& trace, const TraceSpread& spread, Figure figure, CurveScale scale,
                std::vector<BandPoint>& band) {
    band.clear();
    if (!spread.known || trace.stations.empty()) {
        return;
    }
    const std::size_t count = trace.stations.size();
    const std::size_t stride = std::max<std::size_t>(1, count / kBandPoints);
    for (std::size_t row = 0; row < count; row += stride) {
        band.push_back(bandAt(trace.stations[row], spread, figure, scale));
    }
    if ((count - 1) % stride != 0) {
        band.push_back(bandAt(trace.stations.back(), spread, figure, scale));
    }
}

void paintBand(QPainter& painter, const std::vector<BandPoint>& band, const BandPlot& plot,
               const QColor& color) {
    if (!(plot.high > plot.low && plot.bump > plot.droop)) {
        return;
    }
    painter.save();
    painter.setClipRect(plot.plot);
    painter.setRenderHint(QPainter::Antialiasing, false);  // smoothed it costs three times as much in a drag
    painter.setPen(Qt::NoPen);
    painter.setBrush(color);
    const BandPoint* end = band.data() + band.size();
    for (const BandPoint* from = band.data(); from != end;) {
        const BandPoint* start = std::find_if(from, end, exists);
        const BandPoint* stop = std::find_if_not(start, end, exists);
        fillRun(painter, start, stop, plot);
        from = stop;
    }
    painter.restore();
}

}  // namespace bolthole
