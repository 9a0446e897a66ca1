// What a card of the driveline's curves paints.
#include <QCoreApplication>
#include <QPainterPath>
#include <cmath>
#include <limits>

#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/driveline/driveline_cards.h"

namespace bolthole {

namespace {

constexpr double kCorner = 6.0;
constexpr double kSample = 22.0;  // the piece of line in a key
constexpr double kGap = 4.0;
constexpr double kNothing = std::numeric_limits<double>::quiet_NaN();

QColor colorOf(CurveMark mark) {
    const Theme& colors = theme();
    return mark == CurveMark::circle    ? colors.instantCenter
           : mark == CurveMark::diamond ? colors.crosswise
                                        : colors.ink;
}

QPen curvePen(CurveMark mark, bool woundUp) {
    const double width = mark == CurveMark::circle ? 2.2 : 1.6;
    return woundUp ? dashedPen(colorOf(mark), width * 0.8, {4.0, 2.5}) : roundPen(colorOf(mark), width);
}

void drawMark(QPainter& painter, CurveMark mark, QPointF at, double radius) {
    if (mark == CurveMark::circle) {
        painter.drawEllipse(at, radius, radius);
    } else if (mark == CurveMark::square) {
        painter.drawRect(QRectF(at - QPointF(radius, radius), QSizeF(2 * radius, 2 * radius)));
    } else {
        const double reach = 1.25 * radius;
        painter.drawPolygon(QPolygonF({at + QPointF(reach, 0), at + QPointF(0, reach), at - QPointF(reach, 0),
                                       at - QPointF(0, reach)}));
    }
}

}  // namespace

void DrivelineCurveCard::paintFace(QPainter& painter, const CardType& type,
                                   const std::vector<TravelTick>& travelTicks, const TravelOnScreen& travel,
                                   const std::vector<OutOfReach>& outOfReach, bool focused) const {
    const QRectF frame = card_.adjusted(0.5, 0.5, -0.5, -0.5);
    painter.setPen(focused ? QPen(theme().focus, 2) : QPen(theme().border, 1));
    painter.setBrush(theme().card);
    painter.drawRoundedRect(frame, kCorner, kCorner);
    painter.setBrush(Qt::NoBrush);
    paintTitle(painter, type);
    painter.setRenderHint(QPainter::Antialiasing, false);
    paintGrid(painter, travelTicks, travel);
    for (const OutOfReach& stretch : outOfReach) {
        const double top = travel.position(stretch.to);
        painter.fillRect(QRectF(plot_.left(), top, plot_.width(), travel.position(stretch.from) - top),
                         QBrush(theme().border, Qt::BDiagPattern));
    }
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    const double baseline = plot_.bottom() + CardType::kTickLabelGap + type.quietMetrics.ascent();
    for (const AxisTick& tick : ticks_) {
        painter.drawText(QPointF(tick.labelLeft, baseline), tick.label);
    }
}

void DrivelineCurveCard::paintTitle(QPainter& painter, const CardType& type) const {
    const QRectF title = card_.adjusted(CardType::kPad, CardType::kTopPad, -CardType::kPad, 0);
    const double room = title.width() - type.quietMetrics.horizontalAdvance(spec_.unitText) - 2 * kGap;
    painter.setFont(type.title);
    painter.setPen(theme().ink);
    painter.drawText(title, Qt::AlignLeft | Qt::AlignTop,
                     type.titleMetrics.elidedText(spec_.title, Qt::ElideRight, room));
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    painter.drawText(title, Qt::AlignRight | Qt::AlignTop, spec_.unitText);
}

void DrivelineCurveCard::paintGrid(QPainter& painter, const std::vector<TravelTick>& travelTicks,
                                   const TravelOnScreen& travel) const {
    for (const TravelTick& tick : travelTicks) {
        const double y = std::round(travel.position(tick.travel));
        painter.setPen(QPen(tick.travel == 0 ? theme().border : theme().grid, 1));
        painter.drawLine(QPointF(plot_.left(), y), QPointF(plot_.right(), y));
    }
    for (const AxisTick& tick : ticks_) {
        const double x = std::round(tick.position);
        painter.setPen(QPen(tick.at == 0 && !spec_.neverNegative ? theme().border : theme().grid, 1));
        painter.drawLine(QPointF(x, plot_.top()), QPointF(x, plot_.bottom()));
    }
}

// How many of the curves' points lie under a place.
int DrivelineCurveCard::pointsUnder(const QRectF& place, const TravelOnScreen& travel) const {
    int count = 0;
    for (const DrivelineRow& row : reading_->rows) {
        for (const DrivelineCurve& curve : spec_.curves) {
            for (const DrivelineFigures* figures : {&row.coasting, &row.woundUp}) {
                const QPointF at(across(curve.value(*figures)), travel.position(row.travel));
                count += row.usable && place.contains(at) ? 1 : 0;
            }
        }
    }
    return count;
}

// Along the line at `x`, on the side and at the end where it hides least of the curves.
QRectF DrivelineCurveCard::boundPlace(double x, QSizeF size, const TravelOnScreen& travel) const {
    QRectF best;
    int fewest = std::numeric_limits<int>::max();
    for (const double left : {x - size.width() - 2, x + 2}) {
        for (const double top : {plot_.bottom() - size.height() - 4, plot_.top() + 4}) {
            const QRectF place(QPointF(left, top), size);
            const bool inside = place.left() >= plot_.left() && place.right() <= plot_.right();
            const int hidden = inside ? pointsUnder(place, travel) : fewest;
            if (hidden < fewest) {
                fewest = hidden;
                best = place;
            }
        }
    }
    return best;
}

// An upright line with its words along it.
void DrivelineCurveCard::paintBounds(QPainter& painter, const CardType& type,
                                     const TravelOnScreen& travel) const {
    painter.setFont(type.quiet);
    for (const DrivelineBound& bound : spec_.bounds) {
        if (!showsBound(bound)) {
            continue;
        }
        const double x = std::floor(across(bound.at)) + 0.5;
        painter.setPen(dashedPen(theme().problem, 1.4, {7.0, 3.0, 1.5, 3.0}));
        painter.drawLine(QPointF(x, plot_.top()), QPointF(x, plot_.bottom()));
        const QSizeF size(type.quietMetrics.height(), type.quietMetrics.horizontalAdvance(bound.words));
        const QRectF place = boundPlace(x, size, travel);
        if (place.isEmpty()) {
            continue;
        }
        painter.save();
        painter.translate(place.bottomLeft());
        painter.rotate(-90);
        const QRectF label(QPointF(), size.transposed());
        painter.fillRect(label.adjusted(-2, 1, 2, -1), theme().card);
        painter.drawText(label, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextDontClip, bound.words);
        painter.restore();
    }
}

void DrivelineCurveCard::paintCurves(QPainter& painter, const CardType& type,
                                     const TravelOnScreen& travel) const {
    painter.save();
    painter.setClipRect(plot_.adjusted(-2, -2, 2, 2));
    painter.setBrush(Qt::NoBrush);
    for (std::size_t curve = 0; curve < spec_.curves.size(); ++curve) {
        if (reading_->windUp) {
            paintCurve(painter, travel, curve, true);
        }
        paintCurve(painter, travel, curve, false);
    }
    painter.restore();
    paintBounds(painter, type, travel);
}

void DrivelineCurveCard::paintCurve(QPainter& painter, const TravelOnScreen& travel, std::size_t curve,
                                    bool woundUp) const {
    const DrivelineCurve& spec = spec_.curves[curve];
    QPainterPath path;
    bool isDown = false;  // the pen
    for (const DrivelineRow& row : reading_->rows) {
        const double value = row.usable ? spec.value(woundUp ? row.woundUp : row.coasting) : kNothing;
        if (!std::isfinite(value)) {
            isDown = false;
            continue;
        }
        const QPointF at(across(value), travel.position(row.travel));
        isDown ? path.lineTo(at) : path.moveTo(at);
        isDown = true;
    }
    painter.setPen(curvePen(spec.mark, woundUp));
    painter.drawPath(path);
}

void DrivelineCurveCard::paintValues(QPainter& painter, const CardType& type, const TravelOnScreen& travel,
                                     const DrivelineRow& cursor) const {
    double top = card_.top() + CardType::kTopPad + type.titleMetrics.height() + CardType::kRowGap;
    const double y = std::floor(travel.position(cursor.travel)) + 0.5;
    for (std::size_t curve = 0; curve < spec_.curves.size(); ++curve) {
        paintKey(painter, type, curve, cursor, top);
        top += type.bodyMetrics.height();
        const double value = cursor.usable ? spec_.curves[curve].value(cursor.coasting) : kNothing;
        if (value >= range_.low() && value <= range_.high()) {
            painter.setPen(QPen(colorOf(spec_.curves[curve].mark), 2));
            painter.setBrush(theme().card);
            drawMark(painter, spec_.curves[curve].mark, QPointF(across(value), y), 3.8);
            painter.setBrush(Qt::NoBrush);
        }
    }
}

// Mark and name at left, the value coasting in bold, what winding up makes of it beside it.
void DrivelineCurveCard::paintKey(QPainter& painter, const CardType& type, std::size_t curve,
                                  const DrivelineRow& cursor, double top) const {
    const DrivelineCurve& spec = spec_.curves[curve];
    QRectF row(card_.left() + CardType::kPad, top, card_.width() - 2 * CardType::kPad,
               type.bodyMetrics.height());
    const QPointF middle(row.left() + kSample / 2, std::round(row.center().y()) + 0.5);
    painter.setPen(curvePen(spec.mark, false));
    painter.drawLine(middle - QPointF(kSample / 2, 0), middle + QPointF(kSample / 2, 0));
    painter.setPen(QPen(colorOf(spec.mark), 1.6));
    painter.setBrush(theme().card);
    drawMark(painter, spec.mark, middle, 3.2);
    painter.setBrush(Qt::NoBrush);
    const auto text = [&](const DrivelineFigures& figures) {
        return cursor.usable ? valueText(spec.value(figures)) : QStringLiteral("—");
    };
    painter.setFont(type.quiet);
    painter.setPen(theme().muted);
    if (reading_->windUp) {
        const QString wound = QStringLiteral("┊ ") + text(cursor.woundUp);
        painter.drawText(row, Qt::AlignRight | Qt::AlignVCenter, wound);
        row.adjust(0, 0, -type.quietMetrics.horizontalAdvance(wound) - kGap, 0);
    }
    const QString coasting = text(cursor.coasting);
    const double room = row.width() - kSample - 2 * kGap - type.bodyMetrics.horizontalAdvance(coasting);
    painter.drawText(row.adjusted(kSample + kGap, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter,
                     type.quietMetrics.elidedText(spec.name, Qt::ElideRight, room));
    painter.setFont(type.body);
    painter.setPen(theme().ink);
    painter.drawText(row, Qt::AlignRight | Qt::AlignVCenter, coasting);
}

}  // namespace bolthole
