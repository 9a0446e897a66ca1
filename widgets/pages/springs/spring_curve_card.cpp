#include "widgets/pages/springs/spring_curve_card.h"

#include <QCoreApplication>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

constexpr double kCorner = 6.0;
constexpr double kSample = 18.0;  // the piece of line in a key
constexpr double kKeyGap = 4.0;

QPen curvePen(std::size_t curve) {
    return curve == 0 ? roundPen(theme().instantCenter, 2.2)
                      : dashedPen(theme().instantCenter, 1.7, {4.0, 1.8, 1.0, 1.8});
}

}  // namespace

void SpringCurveCard::show(SpringCardData data, Units units, bool afresh) {
    if (afresh || units != units_) {
        range_ = StableRange(data.minimumSpan);
        ticks_.clear();
    }
    data_ = std::move(data);
    units_ = units;
    double least = std::numeric_limits<double>::infinity();
    double most = -least;
    const auto take = [&](double value) {
        if (!std::isnan(value)) {
            least = std::min(least, value);
            most = std::max(most, value);
        }
    };
    for (const SpringCurve& curve : data_.curves) {
        std::ranges::for_each(curve.values, take);
    }
    if (least <= most) {
        for (const SpringLimit& limit : data_.limits) {
            take(limit.at);
        }
    }
    range_.follow(least, most, shownUnit(data_.quantity, units), -std::numeric_limits<double>::infinity());
}

void SpringCurveCard::place(const QRectF& card, const QRectF& plot, const CardType& type) {
    card_ = card;
    plot_ = plot;
    const AxisOnScreen axis{range_.low(), range_.high(),     plot.left(),
                            plot.right(), card.left() + 5.0, card.right() - 5.0};
    ticks_ = linearTicks(axis, shownUnit(data_.quantity, units_), type.quietMetrics);
}

bool SpringCurveCard::hasPoints() const {
    return std::ranges::any_of(data_.curves, [](const SpringCurve& curve) {
        return std::ranges::any_of(curve.values, [](double value) { return !std::isnan(value); });
    });
}

double SpringCurveCard::across(double value) const {
    return plot_.left() + (value - range_.low()) / (range_.high() - range_.low()) * plot_.width();
}

QString SpringCurveCard::valueText(double value) const {
    const std::string text = data_.quantity == Quantity::rate ? figureText(value, data_.quantity, units_)
                                                              : fineFigureText(value, data_.quantity, units_);
    return QString::fromStdString(text);
}

QStringList SpringCurveCard::spokenValues() const {
    QStringList parts;
    for (const SpringCurve& curve : data_.curves) {
        if (!std::isnan(curve.atCursor)) {
            parts << QStringLiteral("%1 %2 %3")
                         .arg(curve.name, valueText(curve.atCursor),
                              bolthole::unitText(data_.quantity, units_));
        }
    }
    return parts;
}

void SpringCurveCard::paint(QPainter& painter, const CardType& type, const TravelOnScreen& axis,
                            const std::vector<double>& travel, const std::vector<OutOfReach>& past,
                            double cursor) const {
    painter.setPen(QPen(theme().border, 1));
    painter.setBrush(theme().card);
    painter.drawRoundedRect(card_.adjusted(0.5, 0.5, -0.5, -0.5), kCorner, kCorner);
    painter.setBrush(Qt::NoBrush);
    paintHead(painter, type);
    if (!hasPoints()) {
        painter.setFont(type.quiet);
        painter.setPen(theme().muted);
        painter.drawText(plot_, Qt::AlignHCenter | Qt::AlignTop | Qt::TextWordWrap, data_.absent);
        return;
    }
    paintGrid(painter, type, axis);
    paintPast(painter, type, axis, past);
    painter.save();
    painter.setClipRect(plot_.adjusted(-3, -3, 3, 3));
    for (std::size_t curve = 0; curve < data_.curves.size(); ++curve) {
        paintCurve(painter, axis, travel, curve);
    }
    painter.restore();
    paintLimits(painter, type);
    const double y = std::floor(axis.position(cursor)) + 0.5;
    for (std::size_t curve = 0; curve < data_.curves.size(); ++curve) {
        if (!std::isnan(data_.curves[curve].atCursor)) {
            painter.setBrush(theme().card);
            painter.setPen(QPen(theme().instantCenter, 2));
            const double radius = curve == 0 ? 4.4 : 3.4;
            painter.drawEllipse(QPointF(across(data_.curves[curve].atCursor), y), radius, radius);
        }
    }
    painter.setBrush(Qt::NoBrush);
}

void SpringCurveCard::paintHead(QPainter& painter, const CardType& type) const {
    const QRectF row(card_.left() + CardType::kPad, card_.top() + CardType::kTopPad,
                     card_.width() - 2 * CardType::kPad, type.titleMetrics.height());
    const QString unit = bolthole::unitText(data_.quantity, units_);
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    painter.drawText(row, Qt::AlignRight | Qt::AlignVCenter, unit);
    painter.setFont(type.title);
    painter.setPen(theme().ink);
    const double room = row.width() - type.quietMetrics.horizontalAdvance(unit) - 6;
    painter.drawText(row, Qt::AlignLeft | Qt::AlignVCenter,
                     type.titleMetrics.elidedText(data_.title, Qt::ElideRight, room));
    double top = row.bottom() + CardType::kRowGap;
    for (std::size_t curve = 0; curve < data_.curves.size(); ++curve) {
        paintKey(painter, type, curve, top);
        top += type.bodyMetrics.height();
    }
}

void SpringCurveCard::paintKey(QPainter& painter, const CardType& type, std::size_t curve, double top) const {
    const QRectF row(card_.left() + CardType::kPad, top, card_.width() - 2 * CardType::kPad,
                     type.bodyMetrics.height());
    const double middle = std::round(row.center().y()) + 0.5;
    painter.setPen(curvePen(curve));
    painter.drawLine(QPointF(row.left(), middle), QPointF(row.left() + kSample, middle));
    const QString value = valueText(data_.curves[curve].atCursor);
    painter.setFont(type.body);
    painter.setPen(theme().ink);
    painter.drawText(row, Qt::AlignRight | Qt::AlignVCenter, value);
    const QRectF name =
        row.adjusted(kSample + kKeyGap, 0, -type.bodyMetrics.horizontalAdvance(value) - kKeyGap, 0);
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    painter.drawText(name, Qt::AlignLeft | Qt::AlignVCenter,
                     type.quietMetrics.elidedText(data_.curves[curve].name, Qt::ElideRight, name.width()));
}

void SpringCurveCard::paintGrid(QPainter& painter, const CardType& type, const TravelOnScreen& axis) const {
    painter.setRenderHint(QPainter::Antialiasing, false);
    for (const TravelTick& tick : travelTicks(axis, units_, travelTickSpacing(type.quietMetrics.height()))) {
        const double y = std::round(axis.position(tick.travel));
        painter.setPen(QPen(tick.travel == 0 ? theme().border : theme().grid, 1));
        painter.drawLine(QPointF(plot_.left(), y), QPointF(plot_.right(), y));
    }
    painter.setPen(QPen(theme().grid, 1));
    for (const AxisTick& tick : ticks_) {
        const double x = std::round(tick.position);
        painter.drawLine(QPointF(x, plot_.top()), QPointF(x, plot_.bottom()));
    }
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    const double baseline = plot_.bottom() + CardType::kTickLabelGap + type.quietMetrics.ascent();
    for (const AxisTick& tick : ticks_) {
        painter.drawText(QPointF(tick.labelLeft, baseline), tick.label);
    }
}

void SpringCurveCard::paintPast(QPainter& painter, const CardType& type, const TravelOnScreen& axis,
                                const std::vector<OutOfReach>& past) const {
    for (const OutOfReach& stretch : past) {
        const double top = axis.position(stretch.to);
        const QRectF zone(plot_.left(), top, plot_.width(), axis.position(stretch.from) - top);
        painter.setPen(Qt::NoPen);
        painter.setBrush(
            QBrush(theme().dark ? theme().border.lighter(130) : theme().border, Qt::BDiagPattern));
        painter.drawRect(zone);
        painter.setBrush(Qt::NoBrush);
        const QString words = QCoreApplication::translate("SpringCurves", "past the end");
        const QSizeF size(type.quietMetrics.horizontalAdvance(words) + 8, type.quietMetrics.height() + 2);
        if (size.height() > zone.height() || !data_.limits.empty()) {
            continue;  // the limits have their words there; the neighbors say it
        }
        // At the outer corner, where neither curves nor limits' words usually are.
        const bool bump = stretch.from >= 0;
        const QRectF box(
            QPointF(zone.right() - size.width(), bump ? zone.bottom() - size.height() : zone.top()), size);
        painter.fillRect(box, theme().card);
        painter.setFont(type.quiet);
        painter.setPen(theme().muted);
        painter.drawText(box, Qt::AlignCenter, words);
    }
}

// Lengths are short at the top and long at the bottom: words of a limit at the left stand at the bottom, of
// one at the right at the top, clear of the curve; each on its own line.
void SpringCurveCard::paintLimits(QPainter& painter, const CardType& type) const {
    const double line = type.quietMetrics.height() + 2;
    double top = plot_.top() + 2;
    double bottom = plot_.bottom() - line;
    for (const SpringLimit& limit : data_.limits) {
        const double x = std::round(across(limit.at)) + 0.5;
        const QColor color = limit.isStop ? theme().problem : theme().muted;
        painter.setPen(limit.isStop ? dashedPen(color, 1.6, {4, 2.5}) : dashedPen(color, 1.2, {1.2, 2.6}));
        painter.drawLine(QPointF(x, plot_.top()), QPointF(x, plot_.bottom()));
        const bool atLeft = x < plot_.center().x();
        const double width = type.quietMetrics.horizontalAdvance(limit.words) + 6;
        const QRectF box(atLeft ? x + 3 : x - width - 3, atLeft ? bottom : top, width, line - 2);
        painter.fillRect(box, theme().card);
        painter.setFont(type.quiet);
        painter.setPen(color);
        painter.drawText(box, Qt::AlignCenter, limit.words);
        (atLeft ? bottom : top) += atLeft ? -line : line;
    }
}

void SpringCurveCard::paintCurve(QPainter& painter, const TravelOnScreen& axis,
                                 const std::vector<double>& travel, std::size_t curve) const {
    QPainterPath path;
    bool open = false;
    const std::vector<double>& values = data_.curves[curve].values;
    for (std::size_t row = 0; row < values.size(); ++row) {
        if (std::isnan(values[row])) {
            open = false;
            continue;
        }
        const QPointF point(across(values[row]), axis.position(travel[row]));
        open ? path.lineTo(point) : path.moveTo(point);
        open = true;
    }
    painter.setPen(curvePen(curve));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(path);
}

}  // namespace bolthole
