#include "widgets/papers/change_sheet_curves.h"

#include <QFontMetricsF>
#include <algorithm>
#include <cmath>

#include "widgets/curves/curve_data.h"
#include "widgets/kit/unit_text.h"
#include "widgets/papers/change_sheet_blocks.h"
#include "widgets/scales/distance_scale.h"
#include "widgets/scales/travel_steps.h"

namespace bolthole {

namespace {

using sheet_type::kStrong;
using sheet_type::kText;

// Ticks are chosen in px; so many mm are one.
constexpr double kPixel = 25.4 / 96;
constexpr double kTitleHeight = 6.5;
constexpr double kTickHeight = 5.5;
constexpr double kBeforePen = 0.45;  // pens, mm
constexpr double kAfterPen = 0.7;
const QColor kGrid(165, 165, 165);

CurveCardSpec specOf(Figure figure) {
    for (const CurveCardSpec& spec : curveCardSpecs()) {
        for (const CurveLine& line : spec.lines) {
            if (line.figure == figure) {
                CurveCardSpec one = spec;
                one.lines = {line};
                return one;
            }
        }
    }
    return {};
}

class CurveDrawer {
  public:
    CurveDrawer(QPainter& painter, const QRectF& area, const PrintFonts& fonts, const Comparison& comparison,
                Units units)
        : painter_(painter), area_(area), fonts_(fonts), comparison_(comparison), units_(units) {
        const TravelRange& before = comparison.beforeCar.travel;
        const TravelRange& after = comparison.afterCar.travel;
        axis_.span.bump = std::max(before.bump, after.bump);
        axis_.span.droop = -std::max(before.droop, after.droop);
        axis_.top = area.top() + kTitleHeight;
        axis_.bottom = area.bottom() - kTickHeight;
        ticks_ = travelTicks(axis_, units, 2.6 * kText.digits);
        for (const TravelTick& tick : ticks_) {
            labels_ = std::max(labels_, fonts.width(tick.label, kText));
        }
    }

    void draw() {
        const bool hasDriveline = comparison_.beforeCar.driveline || comparison_.afterCar.driveline;
        const std::array figures{Figure::antiSquat, Figure::icX,
                                 hasDriveline ? Figure::pinionToDriveshaft : Figure::icZ};
        constexpr double kGap = 6;
        const double left = area_.left() + labels_ + 2;
        const double each = (area_.right() - 0.2 - left - 2 * kGap) / 3;
        painter_.setPen(Qt::black);
        fonts_.draw(painter_, {left - 2, area_.top() + kText.digits + 0.6},
                    unitText(Quantity::length, units_), kText, Qt::AlignRight);
        for (const TravelTick& tick : ticks_) {
            fonts_.draw(painter_, {left - 2, axis_.position(tick.travel) + kText.digits / 2}, tick.label,
                        kText, Qt::AlignRight);
        }
        for (std::size_t at = 0; at < figures.size(); ++at) {
            plot_ = QRectF(left + static_cast<double>(at) * (each + kGap), axis_.top, each,
                           axis_.bottom - axis_.top);
            drawPlot(specOf(figures[at]));
        }
    }

  private:
    void drawPlot(const CurveCardSpec& spec) {
        setRange(spec);
        drawTitle(spec);
        drawGrid(spec);
        painter_.save();
        painter_.setClipRect(plot_);
        drawCurve(comparison_.before, spec, dashedPrintPen(kBeforePen));
        drawCurve(comparison_.after, spec, printPen(kAfterPen));
        painter_.restore();
        drawRide(comparison_.before.ride, spec, Qt::white);
        drawRide(comparison_.after.ride, spec, Qt::black);
    }

    // A little more than both curves need, never so little that noise fills the plot.
    void setRange(const CurveCardSpec& spec) {
        Extent extent = curveExtent(comparison_.before, spec);
        const Extent other = curveExtent(comparison_.after, spec);
        extent.take(other.least);
        extent.take(other.most);
        if (!(extent.least <= extent.most)) {
            extent = Extent{0, spec.minimumSpan};
        }
        const double middle = (extent.least + extent.most) / 2;
        const double span = std::max(1.12 * (extent.most - extent.least), spec.minimumSpan);
        low_ = middle - span / 2;
        high_ = middle + span / 2;
        if (spec.neverBelowLeast && low_ < spec.least) {
            high_ += spec.least - low_;
            low_ = spec.least;
        }
    }

    [[nodiscard]] double across(double value) const {
        return plot_.left() + (value - low_) / (high_ - low_) * plot_.width();
    }

    void drawTitle(const CurveCardSpec& spec) {
        QString title = spec.lines.front().spokenName;
        title = (title.startsWith(QLatin1String("IC")) ? title : capitalized(title)) + QStringLiteral(", ") +
                unitText(spec.quantity, units_);
        painter_.setPen(Qt::black);
        fonts_.draw(painter_, {plot_.left(), area_.top() + kText.digits + 0.6},
                    fonts_.elided(title, kStrong, plot_.width() + 4), kStrong);
    }

    [[nodiscard]] std::vector<AxisTick> ticksOf(const CurveCardSpec& spec) const {
        const AxisOnScreen axis{low_,
                                high_,
                                plot_.left() / kPixel,
                                plot_.right() / kPixel,
                                (plot_.left() - 2) / kPixel,
                                std::min(plot_.right() + 2, area_.right()) / kPixel};
        // PrintFonts' sizes are hundredths of a mm; ticks are placed in px.
        QFont font = fonts_.font(kText, QStringLiteral("0"));
        font.setPixelSize(static_cast<int>(std::ceil(font.pixelSize() / 100.0 / kPixel)));
        const QFontMetricsF metrics(font);
        const double unit = shownUnit(spec.quantity, units_);
        return spec.scale == CurveScale::inverseDistance ? distanceTicks(axis, unit, metrics)
                                                         : linearTicks(axis, unit, metrics);
    }

    void drawGrid(const CurveCardSpec& spec) {
        QPen grid(kGrid, kThinnestLine, Qt::SolidLine, Qt::FlatCap);
        for (const AxisTick& tick : ticksOf(spec)) {
            const double x = across(tick.at);
            painter_.setPen(grid);
            painter_.drawLine(QPointF(x, plot_.top()), QPointF(x, plot_.bottom()));
            painter_.setPen(Qt::black);
            fonts_.draw(
                painter_,
                {(tick.labelLeft + tick.labelRight) / 2 * kPixel, plot_.bottom() + 1.5 * kText.digits + 0.4},
                tick.label, kText, Qt::AlignHCenter);
        }
        for (const TravelTick& tick : ticks_) {
            const double y = axis_.position(tick.travel);
            painter_.setPen(tick.travel == 0 ? printPen(0.3) : grid);
            painter_.drawLine(QPointF(plot_.left(), y), QPointF(plot_.right(), y));
        }
        if (spec.reference && *spec.reference > low_ && *spec.reference < high_) {
            QPen pen = printPen(0.35);
            pen.setDashPattern({9, 3, 2, 3});
            painter_.setPen(pen);
            const double x = across(*spec.reference);
            painter_.drawLine(QPointF(x, plot_.top()), QPointF(x, plot_.bottom()));
        }
        painter_.setPen(QPen(Qt::black, 0.35, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
        painter_.setBrush(Qt::NoBrush);
        painter_.drawRect(plot_);
    }

    void drawCurve(const Trace& trace, const CurveCardSpec& spec, const QPen& pen) {
        if (!trace.assembly.usable()) {
            return;
        }
        std::vector<CurvePoint> points;
        curvePoints(trace, spec.lines.front().figure, spec.scale, points);
        // A tenth of a mm on paper is thinned no further than a hundredth.
        const double travel = std::max(axis_.span.bump - axis_.span.droop, 1e-9);
        thinPoints(points, 10 * plot_.height() / travel, 10 * plot_.width() / (high_ - low_));
        painter_.setPen(pen);
        painter_.setBrush(Qt::NoBrush);
        QPolygonF line;
        const auto stroke = [&] {
            if (line.size() > 1) {
                painter_.drawPolyline(line);
            }
            line.clear();
        };
        for (const CurvePoint& point : points) {
            if (std::isnan(point.value)) {
                stroke();
            } else {
                // Far outside there is nothing to see, and numbers a file can't hold.
                const double value =
                    std::clamp(point.value, low_ - 5 * (high_ - low_), high_ + 5 * (high_ - low_));
                line << QPointF(across(value), axis_.position(point.travel));
            }
        }
        stroke();
    }

    void drawRide(const Station& ride, const CurveCardSpec& spec, const QColor& fill) {
        const double value = axisValue(ride, spec.lines.front().figure, spec.scale);
        if (std::isnan(value) || value < low_ || value > high_) {
            return;
        }
        painter_.setPen(printPen(0.4));
        painter_.setBrush(fill);
        painter_.drawEllipse(QPointF(across(value), axis_.position(0)), 0.9, 0.9);
    }

    QPainter& painter_;
    QRectF area_;
    const PrintFonts& fonts_;
    const Comparison& comparison_;
    Units units_;
    TravelOnScreen axis_;
    std::vector<TravelTick> ticks_;
    double labels_ = 0;
    QRectF plot_;
    double low_ = 0;
    double high_ = 1;
};

}  // namespace

void drawSheetCurves(QPainter& painter, const QRectF& area, const PrintFonts& fonts,
                     const Comparison& comparison, Units units) {
    painter.save();
    CurveDrawer(painter, area, fonts, comparison, units).draw();
    painter.restore();
}

}  // namespace bolthole
