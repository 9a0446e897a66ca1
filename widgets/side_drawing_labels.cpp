// The side view's marks and words: instant center, CG, edge markers, names, scale bar.
#include <QFontMetricsF>
#include <QPainterPath>
#include <array>
#include <cmath>

#include "geometry/entered_figures.h"
#include "widgets/pens.h"
#include "widgets/side_drawing.h"
#include "widgets/unit_text.h"

namespace bolthole {

// Grid lines every so much, m: the finest of a 1-2-5 (or inch) series that leaves 36 pixels between lines.
double SideDrawing::gridSpacing() const {
    constexpr std::array kInches{1.0, 2.0, 4.0, 6.0, 12.0, 24.0, 48.0};
    constexpr std::array kMillimetres{20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0};
    for (std::size_t index = 0; index < kInches.size(); ++index) {
        const double spacing = state_.style.units == Units::inch ? kInches[index] * kMetresPerInch
                                                                 : kMillimetres[index] / 1000.0;
        if (spacing * camera_.scale >= 36) {
            return spacing;
        }
    }
    return 2.0;
}

void SideDrawing::drawCenterOfGravity() {
    const Car& car = state_.solvedCar;
    const CarBalance balance = balanceOf(car);
    const double x = balance.cgX(car.wheelbase);
    const QPointF at = picture(x, balance.height);
    const Units units = state_.style.units;
    const QString mark = unitText(Quantity::length, units);
    const QString text =
        QStringLiteral("CG %1 %3 forward, %2 high").arg(distanceText(x), distanceText(balance.height), mark);
    if (!inPicture(at, 10)) {
        drawEdgeMarker(text, {x, balance.height}, theme_.reference);
        return;
    }
    // Quartered circle: the usual mark of a center of mass in engineering drawing.
    constexpr double kSize = 9;
    const QRectF box(at - QPointF(kSize, kSize), QSizeF(2 * kSize, 2 * kSize));
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(theme_.canvas);
    painter_.drawEllipse(box);
    painter_.setBrush(theme_.reference);
    painter_.drawPie(box, 0, 90 * 16);
    painter_.drawPie(box, 180 * 16, 90 * 16);
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(roundPen(theme_.reference, 1.5));
    painter_.drawEllipse(box);
    labels_.take(box);
    const QSizeF size = QFontMetricsF(painter_.font()).size(0, text) + QSizeF(8, 2);
    const QRectF place = labels_.place(at, size, 11, 2);
    drawChip(place, text, faded(theme_.canvas, 0.85));
}

// A line of text on a ground that quiets what lies below it; nothing in a null box.
void SideDrawing::drawChip(const QRectF& box, const QString& text, const QColor& ground) {
    if (box.isNull()) {
        return;
    }
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(ground);
    painter_.drawRoundedRect(box, 3, 3);
    painter_.setPen(theme_.ink);
    painter_.drawText(box, Qt::AlignCenter, text);
}

void SideDrawing::drawInstantCenter() {
    const Station& station = *station_;
    if (!std::isfinite(station.icCarX)) {
        return;
    }
    const QPointF at = picture(station.icCarX, station.icCarZ);
    const QString mark = unitText(Quantity::length, state_.style.units);
    const QString text =
        QStringLiteral("%1 × %2 %3")
            .arg(distanceText(station[Figure::icX]), distanceText(station[Figure::icZ]), mark);
    if (!inPicture(at, 12)) {
        drawEdgeMarker(QStringLiteral("IC %1").arg(text), {station.icCarX, station.icCarZ},
                       theme_.instantCenter);
        return;
    }
    painter_.setPen(roundPen(theme_.instantCenter, 3.0));
    painter_.setBrush(faded(theme_.canvas, 0.7));
    painter_.drawEllipse(at, 11, 11);
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(theme_.instantCenter);
    painter_.drawEllipse(at, 4, 4);
    labels_.take(QRectF(at - QPointF(13, 13), QSizeF(26, 26)));
    const QFontMetricsF small(textFont(TextSize::small));
    const QFontMetricsF bold(textFont(TextSize::body, true));
    const QString title = QStringLiteral("Instant center");
    const double width = std::max(small.horizontalAdvance(title), bold.horizontalAdvance(text)) + 18;
    const QRectF box = labels_.place(at, QSizeF(width, small.height() + bold.height() + 10), 18, 2);
    if (!box.isNull()) {
        drawTag(box, title, text, theme_.border);
    }
}

void SideDrawing::drawTag(const QRectF& box, const QString& title, const QString& text, const QColor& edge) {
    painter_.setPen(roundPen(edge, 1.0));
    painter_.setBrush(faded(theme_.card, 0.94));
    painter_.drawRoundedRect(box, 5, 5);
    const QRectF inside = box.adjusted(9, 5, -9, -5);
    painter_.setPen(theme_.muted);
    painter_.setFont(textFont(TextSize::small));
    painter_.drawText(inside, Qt::AlignLeft | Qt::AlignTop, title);
    painter_.setPen(theme_.ink);
    painter_.setFont(textFont(TextSize::body, true));
    painter_.drawText(inside, Qt::AlignLeft | Qt::AlignBottom, text);
    painter_.setFont(textFont(TextSize::small));
}

void SideDrawing::drawEdgeMarker(const QString& text, QPointF target, const QColor& color) {
    const QPointF center = picture_.center();
    const QPointF aim = camera_.toPicture(target);
    const QPointF way = aim - center;
    const QRectF inner = picture_.adjusted(14, 14, -14, -14);
    const double across = std::abs(way.x()) < 1e-9 ? 1e9 : inner.width() / 2 / std::abs(way.x());
    const double down = std::abs(way.y()) < 1e-9 ? 1e9 : inner.height() / 2 / std::abs(way.y());
    const QPointF tip = center + way * std::min(across, down);
    const QPointF along = unit(way);
    const QPointF side(-along.y(), along.x());
    QPainterPath arrow(tip);
    arrow.lineTo(tip - along * 13 + side * 7);
    arrow.lineTo(tip - along * 13 - side * 7);
    arrow.closeSubpath();
    painter_.fillPath(arrow, color);
    const QFontMetricsF metrics(painter_.font());
    const int preferred =
        std::abs(along.x()) > std::abs(along.y()) ? (along.x() > 0 ? 4 : 0) : (along.y() > 0 ? 2 : 6);
    labels_.take(arrow.boundingRect());
    const QSizeF size = metrics.size(0, text) + QSizeF(12, 6);
    const QRectF box = labels_.place(tip - along * 8, size, 12, preferred);
    edgeMarkers_.push_back({arrow.boundingRect().united(box), target});
    drawChip(box, text, faded(theme_.card, 0.9));
}

// A name beside each link: color is never the only sign.
void SideDrawing::drawLinkNames() {
    const QFontMetricsF metrics(painter_.font());
    for (const DrawnLink& link : points_.links) {
        if (link.farSide) {
            continue;
        }
        const QString name =
            QString::fromStdString(state_.car.links[static_cast<std::size_t>(link.link)].name);
        const QPointF middle = camera_.toPicture((link.axle + link.chassis) / 2);
        const QString shown = metrics.elidedText(name, Qt::ElideRight, 140);
        const QRectF box =
            labels_.place(middle, metrics.size(0, shown) + QSizeF(4, 0), 9, link.role == Role::lower ? 6 : 2);
        painter_.setPen(Qt::NoPen);
        painter_.setBrush(faded(theme_.canvas, 0.75));
        painter_.drawRoundedRect(box, 3, 3);
        painter_.setPen(theme_.dark ? colorOf(link.role) : colorOf(link.role).darker(120));
        painter_.drawText(box, Qt::AlignCenter, shown);
    }
}

void SideDrawing::drawPointLabel(const PointId& id) {
    for (const DrawnPoint& point : points_.points) {
        if (id.kind == PointId::Kind::none || !(point.id == id)) {
            continue;
        }
        const QString name = pointName(state_.car, id);
        const QString place = pointPlace(state_.car, id, state_.style);
        const QFontMetricsF small(textFont(TextSize::small));
        const QFontMetricsF bold(textFont(TextSize::body, true));
        const double width = std::max(small.horizontalAdvance(name), bold.horizontalAdvance(place)) + 18;
        const QRectF box = labels_.place(camera_.toPicture(point.at),
                                         QSizeF(width, small.height() + bold.height() + 10), 16, 3);
        if (!box.isNull()) {
            drawTag(box, name, place, theme_.focus);
        }
        return;
    }
}

void SideDrawing::drawScaleBar() {
    const double spacing = 2 * gridSpacing();
    const double length = spacing * camera_.scale;
    const QString mark = unitText(Quantity::length, state_.style.units);
    const QString text = QStringLiteral("%1 %2")
                             .arg(qRound(spacing / shownUnit(Quantity::length, state_.style.units)))
                             .arg(mark);
    const QPointF right = picture_.bottomRight() - QPointF(14, 14);
    const QPointF left = right - QPointF(length, 0);
    painter_.setPen(QPen(theme_.muted, 1.4));
    painter_.drawLine(left, right);
    painter_.drawLine(left - QPointF(0, 4), left + QPointF(0, 4));
    painter_.drawLine(right - QPointF(0, 4), right + QPointF(0, 4));
    const QFontMetricsF metrics(painter_.font());
    painter_.drawText(QRectF(left - QPointF(metrics.horizontalAdvance(text) + 8, metrics.height() / 2),
                             metrics.size(0, text)),
                      Qt::AlignCenter, text);
}

}  // namespace bolthole
