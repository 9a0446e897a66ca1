#include "widgets/curves/chart_drawing.h"

#include <QPolygonF>
#include <algorithm>
#include <cmath>
#include <numeric>

#include "widgets/kit/pens.h"

namespace bolthole {

namespace {

constexpr std::size_t kMostPointsOut = 14;  // points in a row
// From 96 rows on Qt's raster engine shares a blending out among threads, whose waking costs more than the
// band.
constexpr double kTallest = 90;

const QPointF kBreak(kNaN, kNaN);

bool isBreak(const QPointF& point) {
    return std::isnan(point.x());
}

/// Whether all points strictly between `from` and `to` lie on the line through those two.
bool isStraight(const Stroke& points, std::size_t from, std::size_t to, double invisible) {
    const QPointF along = points[to] - points[from];
    const double reach = invisible * std::hypot(along.x(), along.y());
    for (std::size_t i = from + 1; i < to; ++i) {
        const QPointF way = points[i] - points[from];
        if (!(std::abs(way.x() * along.y() - way.y() * along.x()) <= reach)) {  // farther, or a break
            return false;
        }
    }
    return true;
}

void thin(Stroke& points, double invisible) {
    std::size_t kept = std::min<std::size_t>(points.size(), 1);
    std::size_t last = 0;  // index of the last kept point, as it came
    for (std::size_t i = 1; i < points.size(); ++i) {
        const bool canGo =
            i + 1 < points.size() && i - last < kMostPointsOut && isStraight(points, last, i + 1, invisible);
        if (!canGo) {
            points[kept++] = points[i];
            last = i;
        }
    }
    points.resize(kept);
}

/// Adds the piece of a line that is inside the box.
void addPiece(const QPointF& from, const QPointF& to, const QRectF& box, Stroke& stroke) {
    const std::optional<QLineF> piece = clipped({from, to}, box);
    if (!piece) {
        return;
    }
    if (stroke.empty() || stroke.back() != piece->p1()) {
        if (!stroke.empty() && !isBreak(stroke.back())) {
            stroke.push_back(kBreak);
        }
        stroke.push_back(piece->p1());
    }
    stroke.push_back(piece->p2());
}

/// A stretch of a band: two lines that run beside each other.
void fillOutline(QPainter& painter, const Stroke& one, const Stroke& other) {
    QPolygonF outline(one.begin(), one.end());
    std::copy(other.rbegin(), other.rend(), std::back_inserter(outline));
    painter.drawPolygon(outline);
}

/// Fills between pairs of values; a NaN breaks the band.
class BandFiller {
  public:
    BandFiller(QPainter& painter, const ChartPlot& plot, const QColor& color)
        : painter_(painter), plot_(plot), tallest_(kTallest / painter.device()->devicePixelRatioF()) {
        painter.save();
        painter.setClipRect(plot.area);
        painter.setRenderHint(QPainter::Antialiasing,
                              false);  // smoothed it costs three times as much in a drag
        painter.setPen(Qt::NoPen);
        painter.setBrush(color);
    }
    ~BandFiller() {
        fill();
        painter_.restore();
    }
    BandFiller(const BandFiller&) = delete;
    BandFiller& operator=(const BandFiller&) = delete;

    void add(double imposed, double low, double high) {
        if (std::isnan(low) || std::isnan(high)) {
            fill();
            one_.clear();
            other_.clear();
            return;
        }
        const QPointF at = place(imposed, low);
        if (plot_.isUpright && one_.size() > 1 && std::abs(at.y() - one_.front().y()) > tallest_) {
            fill();
            one_.erase(one_.begin(), one_.end() - 1);
            other_.erase(other_.begin(), other_.end() - 1);
        }
        one_.push_back(at);
        other_.push_back(place(imposed, high));
    }

  private:
    // Beyond the plot by its own extent is as good as infinitely far, and the slope at its edge stays.
    [[nodiscard]] QPointF place(double imposed, double value) const {
        const double room = plot_.high - plot_.low;
        return plot_.at(imposed, std::clamp(value, plot_.low - room, plot_.high + room));
    }
    void fill() {
        if (one_.size() > 1) {
            fillOutline(painter_, one_, other_);
        }
    }

    QPainter& painter_;
    const ChartPlot& plot_;
    double tallest_;
    Stroke one_;
    Stroke other_;
};

}  // namespace

double ChartPlot::valuePosition(double value) const {
    const double share = (value - low) / (high - low);
    return isUpright ? area.left() + share * area.width() : area.bottom() - share * area.height();
}

double ChartPlot::imposedPosition(double imposed) const {
    const double share = (imposed - from) / (to - from);
    return isUpright ? area.bottom() - share * area.height() : area.left() + share * area.width();
}

QPointF ChartPlot::at(double imposed, double value) const {
    return isUpright ? QPointF(valuePosition(value), imposedPosition(imposed))
                     : QPointF(imposedPosition(imposed), valuePosition(value));
}

QLineF ChartPlot::valueLine(double value) const {
    const double at = valuePosition(value);
    return isUpright ? QLineF(at, area.top(), at, area.bottom()) : QLineF(area.left(), at, area.right(), at);
}

QLineF ChartPlot::imposedLine(double imposed) const {
    const double at = imposedPosition(imposed);
    return isUpright ? QLineF(area.left(), at, area.right(), at) : QLineF(at, area.top(), at, area.bottom());
}

void traceStroke(const std::vector<ChartPoint>& points, const ChartPlot& plot, double invisible,
                 Stroke& stroke) {
    stroke.clear();
    const double reach = 40 * invisible;
    const QRectF box = plot.area.adjusted(-reach, -reach, reach, reach);
    QPointF last = kBreak;
    for (const ChartPoint& point : points) {
        const QPointF at = std::isfinite(point.value) ? plot.at(point.imposed, point.value) : kBreak;
        if (isBreak(at)) {
            if (!stroke.empty() && !isBreak(stroke.back())) {
                stroke.push_back(kBreak);
            }
        } else if (!isBreak(last)) {
            addPiece(last, at, box, stroke);
        }
        last = at;
    }
    thin(stroke, invisible);
}

void drawStroke(QPainter& painter, const Stroke& stroke) {
    painter.setBrush(Qt::NoBrush);
    const QPointF* end = stroke.data() + stroke.size();
    for (const QPointF* from = stroke.data(); from != end;) {
        const QPointF* start = std::find_if_not(from, end, isBreak);
        const QPointF* stop = std::find_if(start, end, isBreak);
        if (stop - start > 1) {
            painter.drawPolyline(start, static_cast<int>(stop - start));
        }
        from = stop;
    }
}

QColor inkOf(ThemeColor color, double alpha) {
    QColor ink = theme().*color;
    ink.setAlphaF(ink.alphaF() * static_cast<float>(alpha));
    return ink;
}

QPen linePen(ChartLine line, double width, const QColor& color) {
    switch (line) {
        case ChartLine::none:
            return Qt::NoPen;
        case ChartLine::solid:  // no round joins: a curve turns too little, and they cost a third
            return {color, width, Qt::SolidLine, Qt::RoundCap, Qt::MiterJoin};
        case ChartLine::dashed:
            return dashedPen(color, width, {4.0, 2.5});
        case ChartLine::longDashes:
            return dashedPen(color, width, {5.0, 3.0});
        case ChartLine::fineDashes:
            return dashedPen(color, width, {2.0, 2.0});
        case ChartLine::dashDotted:
            return dashedPen(color, width, {4.0, 1.8, 1.0, 1.8});
        case ChartLine::dotted:
            return dashedPen(color, width, {1.2, 2.6});
    }
    return Qt::NoPen;
}

void fillBand(QPainter& painter, const std::vector<ChartPoint>& points, const ChartPlot& plot,
              const QColor& color) {
    BandFiller band(painter, plot, color);
    for (const ChartPoint& point : points) {
        band.add(point.imposed, point.low, point.high);
    }
}

void fillGap(QPainter& painter, const ChartSeries& first, const ChartSeries& second, const ChartPlot& plot,
             const QColor& color) {
    BandFiller band(painter, plot, color);
    for (std::size_t row = 0; row < std::min(first.points.size(), second.points.size()); ++row) {
        band.add(first.points[row].imposed, first.points[row].value, second.points[row].value);
    }
}

void drawBars(QPainter& painter, const std::vector<ChartPoint>& points, const ChartPlot& plot, double foot) {
    for (const ChartPoint& point : points) {
        const double room = plot.high - plot.low;
        const double low = std::max(point.low, plot.low - room);
        const double high = std::min(point.high, plot.high + room);
        if (!(low < high)) {
            continue;
        }
        const QLineF bar(plot.at(point.imposed, low), plot.at(point.imposed, high));
        const QPointF side = plot.isUpright ? QPointF(0, foot) : QPointF(foot, 0);
        painter.drawLine(bar);
        painter.drawLine(bar.p1() - side, bar.p1() + side);
        painter.drawLine(bar.p2() - side, bar.p2() + side);
    }
}

void drawMark(QPainter& painter, ChartMark mark, QPointF at, double radius) {
    switch (mark) {
        case ChartMark::none:
        case ChartMark::circle:
            painter.drawEllipse(at, radius, radius);
            return;
        case ChartMark::square:
            painter.drawRect(QRectF(at - QPointF(radius, radius), QSizeF(2 * radius, 2 * radius)));
            return;
        case ChartMark::triangle: {
            const double reach = 1.25 * radius;
            painter.drawPolygon(QPolygonF({at + QPointF(0, -reach), at + QPointF(reach, 0.8 * reach),
                                           at + QPointF(-reach, 0.8 * reach)}));
            return;
        }
        case ChartMark::diamond: {
            const double reach = 1.25 * radius;
            painter.drawPolygon(QPolygonF({at + QPointF(reach, 0), at + QPointF(0, reach),
                                           at - QPointF(reach, 0), at - QPointF(0, reach)}));
            return;
        }
    }
}

void drawPointMark(QPainter& painter, const PointMark& mark, QPointF at, double radius) {
    constexpr double kPale = 0.45;
    const QColor ink = mark.isPale ? over(theme().muted, kPale, theme().card) : theme().*mark.color;
    painter.setPen(QPen(ink, 1.8));
    painter.setBrush(mark.isFilled && !mark.isPale ? ink : theme().card);
    drawMark(painter, mark.mark, at, radius);
    painter.setBrush(Qt::NoBrush);
}

std::vector<int> rowsOfWords(std::vector<double>& middles, const std::vector<double>& lengths, double least,
                             double most, int rows) {
    std::vector<std::size_t> order(middles.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::sort(order, {}, [&](std::size_t word) { return middles[word]; });
    std::vector<double> free(static_cast<std::size_t>(rows), -std::numeric_limits<double>::infinity());
    std::vector<int> found(middles.size(), -1);
    for (const std::size_t word : order) {
        const double half = lengths[word] / 2;
        if (2 * half > most - least) {
            continue;
        }
        const double middle = std::clamp(middles[word], least + half, most - half);
        const auto row = std::ranges::find_if(free, [&](double end) { return end <= middle - half; });
        if (row != free.end()) {
            *row = middle + half;
            middles[word] = middle;
            found[word] = static_cast<int>(row - free.begin());
        }
    }
    return found;
}

}  // namespace bolthole
