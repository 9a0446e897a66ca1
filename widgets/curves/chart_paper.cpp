#include "widgets/curves/chart_paper.h"

#include <algorithm>
#include <cmath>

#include "widgets/curves/chart_drawing.h"
#include "widgets/scales/axis_ticks.h"
#include "widgets/scales/distance_scale.h"

namespace bolthole {

namespace {

constexpr double kPaperTitle = 6.5;  // heights and gaps, mm
constexpr double kPaperTicks = 5.5;
constexpr double kPaperGap = 6;
constexpr double kPaperWidth = 0.32;  // of a px of a series' width
constexpr double kPaperThinnest = 0.25;
constexpr double kPaperUnseen = 0.01;
constexpr double kPaperMark = 0.9;
constexpr double kPaperRoom = 1.12;  // of the data's span
const QColor kPaperGrid(165, 165, 165);
const QColor kPaperTint(215, 215, 215);

QPen paperPen(double width, const QColor& color = Qt::black) {
    return {color, width, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin};
}

class PaperCard {
  public:
    PaperCard(QPainter& painter, const PaperLettering& lettering, const ChartAxis& axis,
              const ChartCard& card, const QRectF& area, double rightmost)
        : painter_(painter), lettering_(lettering), card_(card), rightmost_(rightmost) {
        plot_.area = area;
        plot_.isUpright = axis.isUpright;
        plot_.from = axis.low;
        plot_.to = axis.high;
        setRange();
    }

    void draw(const std::vector<ImposedLabel>& imposed) {
        drawTitle();
        drawStretches();
        drawGrid(imposed);
        painter_.save();
        painter_.setClipRect(plot_.area);
        for (const ChartGap& gap : card_.gaps) {
            fillGap(painter_, card_.series[gap.first], card_.series[gap.second], plot_, kPaperTint);
        }
        for (const ChartSeries& series : card_.series) {
            drawLine(series);
        }
        painter_.restore();
        for (const ChartSeries& series : card_.series) {
            drawPoints(series);
        }
        drawRules();
        drawEvents();
    }

  private:
    void setRange() {
        Extent extent = extentOf(card_);
        if (!extent.holdsAny()) {
            extent = Extent{0, card_.minimumSpan};
        }
        const double middle = (extent.least + extent.most) / 2;
        const double span = std::max(kPaperRoom * (extent.most - extent.least), card_.minimumSpan);
        plot_.low = middle - span / 2;
        plot_.high = middle + span / 2;
        if (card_.neverBelowLeast && plot_.low < card_.least) {
            plot_.high += card_.least - plot_.low;
            plot_.low = card_.least;
        }
    }

    void drawTitle() {
        const QString unit = card_.unitText.isEmpty() ? QString() : QStringLiteral(", ") + card_.unitText;
        painter_.setPen(Qt::black);
        lettering_.draw({plot_.area.left(), plot_.area.top() - kPaperTitle + lettering_.digits + 0.6},
                        lettering_.cutTitle(card_.titles.first() + unit, plot_.area.width() + 4), true,
                        Qt::AlignLeft);
    }

    void drawStretches() {
        for (const ChartStretch& stretch : card_.stretches) {
            const QRectF zone =
                QRectF(plot_.imposedLine(stretch.from).p1(), plot_.imposedLine(stretch.to).p2()).normalized();
            if (!stretch.isHatched) {
                painter_.fillRect(zone & plot_.area, kPaperTint);
                continue;
            }
            // A brush's hatching is in the device's px and would vanish on paper.
            painter_.save();
            painter_.setClipRect(zone & plot_.area);
            painter_.setPen(paperPen(kPaperThinnest, kPaperGrid));
            for (double at = zone.left() - zone.height(); at < zone.right(); at += 1.5) {
                painter_.drawLine(QPointF(at, zone.bottom()), QPointF(at + zone.height(), zone.top()));
            }
            painter_.restore();
        }
    }

    [[nodiscard]] std::vector<AxisTick> valueTicks() const {
        const QRectF& area = plot_.area;
        const double from = plot_.isUpright ? area.left() : area.top();
        const double to = plot_.isUpright ? area.right() : area.bottom();
        const AxisOnScreen axis{plot_.low,
                                plot_.high,
                                from / kPaperPixel,
                                to / kPaperPixel,
                                (from - 2) / kPaperPixel,
                                std::min(to + 2, plot_.isUpright ? rightmost_ : to + 2) / kPaperPixel};
        return card_.scale == ChartScale::inverseDistance
                   ? distanceTicks(axis, card_.unit, lettering_.metrics)
                   : linearTicks(axis, card_.unit, lettering_.metrics);
    }

    void label(const QLineF& line, const QString& text, double middle) {
        painter_.setPen(Qt::black);
        if (line.dx() == 0) {  // upright lines have theirs below
            lettering_.draw({middle, plot_.area.bottom() + 1.5 * lettering_.digits + 0.4}, text, false,
                            Qt::AlignHCenter);
        } else {
            lettering_.draw({plot_.area.left() - 2, line.y1() + lettering_.digits / 2}, text, false,
                            Qt::AlignRight);
        }
    }

    void drawGrid(const std::vector<ImposedLabel>& imposed) {
        for (const AxisTick& tick : valueTicks()) {
            const QLineF line = plot_.valueLine(tick.at);
            painter_.setPen(paperPen(kPaperThinnest, kPaperGrid));
            painter_.drawLine(line);
            label(line, tick.label, (tick.labelLeft + tick.labelRight) / 2 * kPaperPixel);
        }
        for (const ImposedLabel& tick : imposed) {
            const QLineF line = plot_.imposedLine(tick.at);
            painter_.setPen(tick.at == 0 ? paperPen(0.3) : paperPen(kPaperThinnest, kPaperGrid));
            painter_.drawLine(line);
            if (!plot_.isUpright) {
                label(line, tick.text, line.x1());
            }
        }
        painter_.setPen(paperPen(0.35));
        painter_.setBrush(Qt::NoBrush);
        painter_.drawRect(plot_.area);
    }

    void drawLine(const ChartSeries& series) {
        if (!series.marksPoints) {
            fillBand(painter_, series.points, plot_, kPaperTint);
        }
        if (series.line != ChartLine::none) {
            traceStroke(series.points, plot_, kPaperUnseen, stroke_);
            painter_.setRenderHint(QPainter::Antialiasing);
            painter_.setPen(linePen(series.line, kPaperWidth * series.width, Qt::black));
            drawStroke(painter_, stroke_);
        }
    }

    void drawPoints(const ChartSeries& series) {
        if (!series.marksPoints) {
            return;
        }
        painter_.setPen(paperPen(0.4));
        drawBars(painter_, series.points, plot_, 0.8);
        painter_.setBrush(series.isMarkFilled ? Qt::black : Qt::white);
        for (const ChartPoint& point : series.points) {
            if (plot_.shows(point.value)) {
                drawMark(painter_, series.mark, plot_.at(point.imposed, point.value), kPaperMark);
            }
        }
        painter_.setBrush(Qt::NoBrush);
    }

    void drawRules() {
        for (const ChartRule& rule : card_.rules) {
            if (rule.at > plot_.low && rule.at < plot_.high) {
                QPen pen = paperPen(0.35);
                pen.setDashPattern({9, 3, 2, 3});
                painter_.setPen(pen);
                const QLineF line = plot_.valueLine(rule.at);
                painter_.drawLine(line);
                const QPointF at = plot_.isUpright ? line.p1() + QPointF(1, lettering_.digits + 1)
                                                   : line.p1() + QPointF(1, -1);
                lettering_.draw(at, rule.words, false, Qt::AlignLeft);
            }
        }
    }

    void drawEvents() {
        std::vector<double> middles;
        std::vector<double> lengths;
        for (const ChartEvent& event : card_.events) {
            const double width = lettering_.width(event.word) + 2;
            const double at = plot_.imposedPosition(event.at);
            middles.push_back(plot_.isUpright ? at : at + width / 2);
            lengths.push_back(plot_.isUpright ? 1.6 * lettering_.digits : width);
        }
        const QRectF& area = plot_.area;
        const std::vector<int> rows =
            rowsOfWords(middles, lengths, plot_.isUpright ? area.top() : area.left(),
                        plot_.isUpright ? area.bottom() : area.right(), plot_.isUpright ? 1 : 3);
        for (std::size_t i = 0; i < rows.size(); ++i) {
            painter_.setPen(linePen(ChartLine::dotted, kPaperThinnest, Qt::black));
            painter_.drawLine(plot_.imposedLine(card_.events[i].at));
            if (rows[i] >= 0) {
                const double down = area.top() + (1.6 * rows[i] + 1.4) * lettering_.digits;
                lettering_.draw(
                    plot_.isUpright ? QPointF(area.right() - 1, middles[i] + lettering_.digits / 2)
                                    : QPointF(middles[i], down),
                    card_.events[i].word, false, plot_.isUpright ? Qt::AlignRight : Qt::AlignHCenter);
            }
        }
    }

    QPainter& painter_;
    const PaperLettering& lettering_;
    const ChartCard& card_;
    double rightmost_;  // where no word goes past, mm
    ChartPlot plot_;
    Stroke stroke_;
};

}  // namespace

void paintChartOnPaper(QPainter& painter, const QRectF& area, const ChartAxis& axis,
                       const std::vector<ChartCard>& cards, const PaperLettering& lettering) {
    const double top = area.top() + kPaperTitle;
    const double bottom = area.bottom() - kPaperTicks;
    const double count = static_cast<double>(cards.size());
    double left = area.left();
    std::vector<ImposedLabel> ticks;
    if (axis.isUpright) {
        ticks = imposedTicks(axis, {axis.low, axis.high, bottom / kPaperPixel, top / kPaperPixel},
                             lettering.metrics);
        double widest = 0;
        for (const ImposedLabel& tick : ticks) {
            widest = std::max(widest, lettering.width(tick.text));
        }
        left += widest + 2;
        painter.setPen(Qt::black);
        lettering.draw({left - 2, area.top() + lettering.digits + 0.6}, axis.unitText, false, Qt::AlignRight);
        for (const ImposedLabel& tick : ticks) {
            const double share = (tick.at - axis.low) / (axis.high - axis.low);
            lettering.draw({left - 2, bottom - share * (bottom - top) + lettering.digits / 2}, tick.text,
                           false, Qt::AlignRight);
        }
    }
    const double values = axis.isUpright ? 0 : 5 * lettering.digits;  // left of each plot
    const double each = (area.right() - 0.2 - left - (count - 1) * kPaperGap) / count;
    if (!axis.isUpright) {
        ticks =
            imposedTicks(axis, {axis.low, axis.high, 0, (each - values) / kPaperPixel}, lettering.metrics);
    }
    for (const ChartCard& card : cards) {
        const QRectF plot(left + values, top, each - values, bottom - top);
        PaperCard(painter, lettering, axis, card, plot, area.right()).draw(ticks);
        left += each + kPaperGap;
    }
}

}  // namespace bolthole
