#include "widgets/pages/springs/springs_picture.h"

#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <array>
#include <cmath>

#include "widgets/kit/label_placer.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/views/spring_symbols.h"

namespace bolthole {

namespace {

constexpr double kTireWidth = 0.62;   // of the loaded radius; nobody entered it
constexpr double kPickReach = 12;     // px
constexpr double kTravelRoom = 0.12;  // m kept free above and below for the travel

double distanceTo(QPointF point, QPointF from, QPointF to) {
    const QPointF along = to - from;
    const double square = QPointF::dotProduct(along, along);
    const double share =
        square > 0 ? std::clamp(QPointF::dotProduct(point - from, along) / square, 0.0, 1.0) : 0.0;
    const QPointF off = point - (from + share * along);
    return std::hypot(off.x(), off.y());
}

QRectF around(QPointF at, double reach) {
    return {at.x() - reach, at.y() - reach, 2 * reach, 2 * reach};
}

SymbolLook lookOf(const DrawnSpring& part, bool chosen) {
    SymbolLook look;
    look.ink = part.isPast ? theme().problem : chosen ? theme().focus : theme().ink;
    look.fill = theme().card;
    look.width = chosen ? 2.2 : 1.5;
    look.slack = part.slack;
    look.stopIsMeasured = part.stopLength.has_value();
    const double length = (part.axle - part.chassis).norm();
    if (part.stopLength && length > 0) {
        look.stopShare = *part.stopLength / length;
    }
    return look;
}

}  // namespace

SpringsPicture::SpringsPicture(QWidget* parent) : QWidget(parent) {
    setMinimumHeight(300);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    setAccessibleName(tr("Picture of springs and shocks"));
    setToolTip(tr("Click a part to see its curves"));
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

void SpringsPicture::showScene(SpringsScene scene) {
    scene_ = std::move(scene);
    QStringList parts;
    for (const DrawnSpring& part : scene_.parts) {
        if (!part.label.isEmpty()) {
            parts << part.label;
        }
    }
    setAccessibleDescription(QStringLiteral("%1. %2").arg(scene_.words, parts.join(QStringLiteral(", "))));
    update();
}

void SpringsPicture::setSight(SpringsSight sight) {
    sight_ = sight;
    update();
}

// From behind, the car's left is at left; from the side its front is at right.
QPointF SpringsPicture::flat(const Eigen::Vector3d& car) const {
    return sight_ == SpringsSight::behind ? QPointF(-car.y(), car.z()) : QPointF(car.x(), car.z());
}

QPointF SpringsPicture::toPicture(const Eigen::Vector3d& car) const {
    return camera_.toPicture(flat(car));
}

QRectF SpringsPicture::legendBand() const {
    return QRectF(0, height() - 24, width(), 24);
}

// The frame holds what stands still and the tires at ride, so that the scale does not follow the travel.
void SpringsPicture::fitCamera() {
    const double radius = scene_.tireRadius;
    const bool behind = sight_ == SpringsSight::behind;
    const double reach = behind && scene_.track ? *scene_.track / 2 + kTireWidth * radius / 2 : 1.05 * radius;
    double low = -reach;
    double high = reach;
    double top = radius + kTravelRoom;
    for (const DrawnSpring& part : scene_.parts) {
        const QPointF chassis = flat(part.chassis);
        const double axleAcross = flat(part.axle).x();
        low = std::min({low, chassis.x(), axleAcross});
        high = std::max({high, chassis.x(), axleAcross});
        top = std::max(top, chassis.y());
        for (const Eigen::Vector3d& hole : part.freeChassis) {
            top = std::max(top, hole.z());
        }
    }
    const QRectF picture = QRectF(rect()).adjusted(14, 34, -14, -legendBand().height() - 6);
    camera_.fit(QRectF(low, -0.02, high - low, top + 0.04), picture);
}

void SpringsPicture::paintEvent(QPaintEvent*) {
    fitCamera();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), theme().canvas);
    const double ground = camera_.toPicture(0, 0).y();
    painter.fillRect(QRectF(0, ground, width(), height() - ground), theme().earth);
    painter.setPen(QPen(theme().border, 1));
    painter.drawLine(QPointF(0, ground), QPointF(width(), ground));
    painter.setFont(textFont(TextSize::body, true));
    painter.setPen(theme().ink);
    painter.drawText(QRectF(12, 8, width() - 24, 20), Qt::AlignLeft | Qt::AlignVCenter, scene_.words);
    if (!scene_.usable) {
        return;
    }
    paintTires(painter);
    paintAxle(painter);
    for (const DrawnSpring& part : scene_.parts) {
        paintPart(painter, part);
    }
    paintLabels(painter);
}

void SpringsPicture::paintTires(QPainter& painter) const {
    const double radius = scene_.tireRadius;
    painter.setPen(roundPen(theme().metal, 1.4));
    painter.setBrush(over(theme().metalFill, 0.6, theme().canvas));
    if (sight_ == SpringsSight::side) {
        const QPointF center = toPicture({scene_.pose.x, scene_.pose.y, scene_.pose.z});
        painter.drawEllipse(center, radius * camera_.scale, radius * camera_.scale);
        return;
    }
    if (!scene_.track) {
        return;
    }
    for (const double side : {1.0, -1.0}) {
        const QPointF center = toPicture(scene_.pose.carry({0, side * *scene_.track / 2, 0}));
        const QSizeF size = QSizeF(kTireWidth * radius, 2 * radius) * camera_.scale;
        painter.drawRoundedRect(QRectF(center - QPointF(size.width() / 2, size.height() / 2), size), 7, 7);
    }
}

// Nobody entered its size.
double SpringsPicture::housing() const {
    return (sight_ == SpringsSight::behind ? 0.34 : 0.24) * scene_.tireRadius * camera_.scale;
}

void SpringsPicture::paintAxle(QPainter& painter) const {
    const double tube = 0.11 * scene_.tireRadius;
    painter.setPen(roundPen(theme().metal, 1.2));
    painter.setBrush(over(theme().metal, 0.25, theme().canvas));
    const QPointF center = toPicture(scene_.pose.carry(Eigen::Vector3d::Zero()));
    if (sight_ == SpringsSight::behind) {
        const double half = scene_.track.value_or(4 * scene_.tireRadius) / 2;
        const QPointF left = toPicture(scene_.pose.carry({0, half, 0}));
        const QPointF right = toPicture(scene_.pose.carry({0, -half, 0}));
        const double thick = tube * camera_.scale;
        const QPointF across = QPointF(-unit(right - left).y(), unit(right - left).x()) * thick;
        const QPointF corners[] = {left + across, right + across, right - across, left - across};
        painter.drawConvexPolygon(corners, 4);
    }
    painter.drawEllipse(center, housing(), housing());
}

void SpringsPicture::paintPart(QPainter& painter, const DrawnSpring& part) const {
    const SymbolLook look = lookOf(part, part.item == scene_.chosen);
    drawPartSymbol(painter, part.kind, toPicture(part.chassis), toPicture(part.axle), look);
    for (const Eigen::Vector3d& hole : part.freeChassis) {
        drawMount(painter, toPicture(hole), true, false, look);
    }
    for (const Eigen::Vector3d& hole : part.freeAxle) {
        drawMount(painter, toPicture(hole), false, false, look);
    }
    drawMount(painter, toPicture(part.chassis), true, true, look);
    drawMount(painter, toPicture(part.axle), false, true, look);
}

// Labels keep off every symbol: each is taken as a row of boxes along its line.
void SpringsPicture::paintLabels(QPainter& painter) const {
    painter.setFont(textFont(TextSize::small));
    LabelPlacer placer(QRectF(rect()).adjusted(4, 30, -4, -legendBand().height() - 2));
    for (const DrawnSpring& part : scene_.parts) {
        const QPointF from = toPicture(part.chassis);
        const QPointF to = toPicture(part.axle);
        constexpr int kBoxes = 8;
        for (int box = 0; box <= kBoxes; ++box) {
            placer.take(around(from + (to - from) * (static_cast<double>(box) / kBoxes), 8));
        }
        for (const auto* holes : {&part.freeChassis, &part.freeAxle}) {
            for (const Eigen::Vector3d& hole : *holes) {
                placer.take(around(toPicture(hole), 4));
            }
        }
    }
    placer.take(around(toPicture(scene_.pose.carry(Eigen::Vector3d::Zero())), housing()));
    for (const bool chosen : {true, false}) {
        for (const DrawnSpring& part : scene_.parts) {
            if ((part.item == scene_.chosen) == chosen && !part.label.isEmpty()) {
                placeLabel(painter, placer, part);
            }
        }
    }
    paintLegend(painter);
}

void SpringsPicture::placeLabel(QPainter& painter, LabelPlacer& placer, const DrawnSpring& part) const {
    const QFontMetricsF metrics(painter.font());
    const QSizeF size(metrics.horizontalAdvance(part.label) + 8, metrics.height() + 2);
    const QPointF from = toPicture(part.chassis);
    const QPointF to = toPicture(part.axle);
    const bool leftHalf = (from.x() + to.x()) / 2 < width() / 2.0;
    // Beside its chassis end there is most air; failing that farther down the line.
    for (const double share : {0.1, 0.35, 0.6, 0.9}) {
        const QRectF box = placer.place(from + (to - from) * share, size, 11, leftHalf ? 4 : 0);
        if (box.isNull()) {
            continue;
        }
        const SymbolLook look = lookOf(part, part.item == scene_.chosen);
        painter.setPen(QPen(look.ink, 1));
        painter.setBrush(theme().card);
        painter.drawRoundedRect(box, 3, 3);
        painter.setPen(part.isPast ? theme().problem : theme().ink);
        painter.drawText(box, Qt::AlignCenter, part.label);
        return;
    }
}

void SpringsPicture::paintLegend(QPainter& painter) const {
    const QRectF band = legendBand().adjusted(12, 0, -14, 0);
    SymbolLook look;
    look.ink = theme().muted;
    const double middle = band.center().y();
    const QFontMetricsF metrics(painter.font());
    double x = band.left() + 4;
    for (const bool chassis : {true, false}) {
        const QString text = chassis ? tr("on the chassis") : tr("on the axle");
        drawMount(painter, {x, middle}, chassis, true, look);
        painter.setPen(theme().muted);
        painter.drawText(QPointF(x + 9, middle + metrics.ascent() / 2 - 1), text);
        x += 9 + metrics.horizontalAdvance(text) + 18;
    }
    const double unit = scene_.units == Units::inch ? 10 * kMetresPerInch : 0.2;
    const QString text = scene_.units == Units::inch ? tr("10 in") : tr("200 mm");
    const double length = unit * camera_.scale;
    const QPointF right(band.right(), middle);
    const QPointF left = right - QPointF(length, 0);
    painter.setPen(QPen(theme().muted, 1.4));
    painter.drawLine(left, right);
    painter.drawLine(left - QPointF(0, 4), left + QPointF(0, 4));
    painter.drawLine(right - QPointF(0, 4), right + QPointF(0, 4));
    painter.drawText(
        QPointF(left.x() - metrics.horizontalAdvance(text) - 7, middle + metrics.ascent() / 2 - 1), text);
}

void SpringsPicture::mousePressEvent(QMouseEvent* event) {
    const DrawnSpring* nearest = nullptr;
    double least = kPickReach;
    for (const DrawnSpring& part : scene_.parts) {
        const double off = distanceTo(event->position(), toPicture(part.chassis), toPicture(part.axle));
        if (off < least) {
            least = off;
            nearest = &part;
        }
    }
    if (nearest != nullptr && event->button() == Qt::LeftButton) {
        emit picked(nearest->item);
    }
}

}  // namespace bolthole
