#include "widgets/pages/roll/roll_card.h"

#include <QPainterPath>
#include <cmath>
#include <limits>

#include "widgets/curves/curve_data.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr double kCorner = 6.0;
constexpr double kSidePad = 8.0;
constexpr double kValueLabels = 40.0;  // px at left of a card of roll
constexpr double kMostTicksUp = 4.0;
constexpr double kCurveWidth = 2.2;
constexpr double kBeforeWidth = 1.4;

// Round ticks on an upright value axis.
std::vector<AxisTick> uprightTicks(const StableRange& range, double unit, const QRectF& plot) {
    std::vector<AxisTick> ticks;
    const double step = niceStep((range.high() - range.low()) / unit / kMostTicksUp);
    for (double index = std::ceil(range.low() / unit / step - 1e-9);
         index * step * unit <= range.high() * (1 + 1e-9) + 1e-12; index += 1.0) {
        const double at = index * step * unit;
        const double share = (at - range.low()) / (range.high() - range.low());
        ticks.push_back({at, plot.bottom() - share * plot.height(), 0, 0, tickText(index * step, step)});
    }
    return ticks;
}

}  // namespace

QRectF plotIn(const QRectF& card, ImposedAxis axis, const CardType& type) {
    const double header =
        CardType::kTopPad + type.titleMetrics.height() + CardType::kRowGap + type.bodyMetrics.height() + 8;
    const double left = axis == ImposedAxis::rollAcross ? kValueLabels : kSidePad;
    return card.adjusted(left, header, -kSidePad - 2, -type.footer());
}

void RollCard::show(RollCurve curve) {
    if (curve.unit != curve_.unit || curve.minimumSpan != curve_.minimumSpan) {
        range_ = StableRange(curve.minimumSpan);
    }
    curve_ = std::move(curve);
    Extent extent;
    for (const RollCurve::Point& point : curve_.points) {
        extent.take(point.value);
    }
    for (const RollCurve::Point& point : curve_.before) {
        extent.take(point.value);
    }
    const double floor = curve_.neverNegative ? 0.0 : -std::numeric_limits<double>::infinity();
    range_.follow(extent.least, extent.most, curve_.unit, floor);
}

void RollCard::place(const QRectF& card, const QRectF& plot, const CardType& type) {
    card_ = card;
    plot_ = plot;
    const AxisOnScreen across{range_.low(), range_.high(),   plot.left(),
                              plot.right(), card.left() + 4, card.right() - 4};
    ticks_ = axis_ == ImposedAxis::travelUp ? linearTicks(across, curve_.unit, type.quietMetrics)
                                            : uprightTicks(range_, curve_.unit, plot);
}

double RollCard::valuePosition(double value) const {
    const double share = (value - range_.low()) / (range_.high() - range_.low());
    return axis_ == ImposedAxis::travelUp ? plot_.left() + share * plot_.width()
                                          : plot_.bottom() - share * plot_.height();
}

QPointF RollCard::place(const ImposedOnScreen& imposed, double at, double value) const {
    const double along = imposed.position(at);
    return axis_ == ImposedAxis::travelUp ? QPointF(valuePosition(value), along)
                                          : QPointF(along, valuePosition(value));
}

QString RollCard::valueText(double value) const {
    return std::isfinite(value) ? tickText(value / curve_.unit, std::pow(10.0, -curve_.decimals))
                                : QStringLiteral("—");
}

QString RollCard::spokenValue() const {
    const QString unit = std::isfinite(cursorValue_) ? QLatin1Char(' ') + curve_.unitText : QString();
    return curve_.title.toLower() + QLatin1Char(' ') + valueText(cursorValue_) + unit;
}

void RollCard::paint(QPainter& painter, const CardType& type, const std::vector<ImposedTick>& ticks,
                     const ImposedOnScreen& imposed, double cursor, bool focused) const {
    paintFace(painter, type, focused);
    painter.setRenderHint(QPainter::Antialiasing, false);
    paintImposedTicks(painter, type, ticks, imposed);
    paintValueTicks(painter, type);
    painter.setRenderHint(QPainter::Antialiasing);
    paintCurves(painter, imposed);
    paintCursor(painter, imposed, cursor);
}

// Card, title with its unit, and the value at the cursor.
void RollCard::paintFace(QPainter& painter, const CardType& type, bool focused) const {
    painter.setPen(focused ? QPen(theme().focus, 2) : QPen(theme().border, 1));
    painter.setBrush(theme().card);
    painter.drawRoundedRect(card_.adjusted(0.5, 0.5, -0.5, -0.5), kCorner, kCorner);
    painter.setBrush(Qt::NoBrush);
    QRectF title = card_.adjusted(CardType::kPad, CardType::kTopPad, -CardType::kPad, 0);
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    painter.drawText(title, Qt::AlignRight | Qt::AlignTop, curve_.unitText);
    const double room = title.width() - type.quietMetrics.horizontalAdvance(curve_.unitText) - 6;
    painter.setFont(type.title);
    painter.setPen(theme().ink);
    painter.drawText(title, Qt::AlignLeft | Qt::AlignTop,
                     type.titleMetrics.elidedText(curve_.title, Qt::ElideRight, room));
    title.adjust(0, type.titleMetrics.height() + CardType::kRowGap, 0, 0);
    painter.setFont(type.body);
    painter.drawText(title, Qt::AlignRight | Qt::AlignTop, valueText(cursorValue_));
}

void RollCard::paintImposedTicks(QPainter& painter, const CardType& type,
                                 const std::vector<ImposedTick>& ticks,
                                 const ImposedOnScreen& imposed) const {
    painter.setFont(type.quiet);
    for (const ImposedTick& tick : ticks) {
        const double at = std::round(imposed.position(tick.at));
        painter.setPen(QPen(tick.at == 0 ? theme().border : theme().grid, 1));
        if (axis_ == ImposedAxis::travelUp) {
            painter.drawLine(QPointF(plot_.left(), at), QPointF(plot_.right(), at));
            continue;
        }
        painter.drawLine(QPointF(at, plot_.top()), QPointF(at, plot_.bottom()));
        painter.setPen(theme().muted);
        const double wide = type.quietMetrics.horizontalAdvance(tick.label);
        painter.drawText(
            QPointF(at - wide / 2, plot_.bottom() + CardType::kTickLabelGap + type.quietMetrics.ascent()),
            tick.label);
    }
}

void RollCard::paintValueTicks(QPainter& painter, const CardType& type) const {
    painter.setFont(type.quiet);
    for (const AxisTick& tick : ticks_) {
        const double at = std::round(tick.position);
        painter.setPen(QPen(tick.at == 0 && !curve_.neverNegative ? theme().border : theme().grid, 1));
        if (axis_ == ImposedAxis::travelUp) {
            painter.drawLine(QPointF(at, plot_.top()), QPointF(at, plot_.bottom()));
            painter.setPen(theme().muted);
            painter.drawText(QPointF(tick.labelLeft,
                                     plot_.bottom() + CardType::kTickLabelGap + type.quietMetrics.ascent()),
                             tick.label);
        } else {
            painter.drawLine(QPointF(plot_.left(), at), QPointF(plot_.right(), at));
            painter.setPen(theme().muted);
            const double high = type.quietMetrics.height();
            painter.drawText(QRectF(card_.left() + 2, at - high / 2, plot_.left() - card_.left() - 6, high),
                             Qt::AlignRight | Qt::AlignVCenter, tick.label);
        }
    }
}

QPainterPath RollCard::pathOf(const std::vector<RollCurve::Point>& points,
                              const ImposedOnScreen& imposed) const {
    QPainterPath path;
    bool isDown = false;  // the pen
    for (const RollCurve::Point& point : points) {
        if (!std::isfinite(point.value)) {
            isDown = false;
            continue;
        }
        const QPointF at = place(imposed, point.imposed, point.value);
        isDown ? path.lineTo(at) : path.moveTo(at);
        isDown = true;
    }
    return path;
}

// The before is dashed and thin, and lies under what is on the bench.
void RollCard::paintCurves(QPainter& painter, const ImposedOnScreen& imposed) const {
    painter.save();
    painter.setClipRect(plot_.adjusted(-2, -2, 2, 2));
    painter.setPen(dashedPen(theme().before, kBeforeWidth, {4.0, 3.0}));
    painter.drawPath(pathOf(curve_.before, imposed));
    painter.setPen(roundPen(theme().instantCenter, kCurveWidth));
    painter.drawPath(pathOf(curve_.points, imposed));
    painter.restore();
}

void RollCard::paintCursor(QPainter& painter, const ImposedOnScreen& imposed, double cursor) const {
    const double at = std::floor(imposed.position(cursor)) + 0.5;
    painter.setPen(dashedPen(std::isfinite(cursorValue_) ? theme().ink : theme().muted, 1.2, {1.2, 2.6}));
    if (axis_ == ImposedAxis::travelUp) {
        painter.drawLine(QPointF(card_.left() + 1, at), QPointF(card_.right() - 1, at));
    } else {
        painter.drawLine(QPointF(at, plot_.top()), QPointF(at, plot_.bottom()));
    }
    if (cursorValue_ >= range_.low() && cursorValue_ <= range_.high()) {
        painter.setPen(QPen(theme().instantCenter, 2));
        painter.setBrush(theme().card);
        painter.drawEllipse(place(imposed, cursor, cursorValue_), 3.8, 3.8);
        painter.setBrush(Qt::NoBrush);
    }
}

}  // namespace bolthole
