#include "widgets/pages/roll/roll_picture.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "widgets/kit/label_placer.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

// Of the drawing alone, m: no car's own size.
constexpr double kTireWidth = 0.22;
constexpr double kTube = 0.042;    // radius of an axle tube
constexpr double kHousing = 0.13;  // of the housing
constexpr double kMargin = 0.12;
constexpr double kBelow = 0.10;    // below the ground
constexpr double kMark = 6;        // px
constexpr double kTextInset = 10;  // px

void paintSky(QPainter& painter, const QRect& rect) {
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme().canvas);
    painter.drawRoundedRect(rect, 5, 5);
}

void paintCaption(QPainter& painter, const QRect& rect, const QString& text) {
    painter.setFont(textFont(TextSize::small));
    painter.setPen(theme().muted);
    painter.drawText(QRectF(rect).adjusted(kTextInset, 6, -kTextInset, -6),
                     Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, text);
}

// A ring with a dot: told from bolts and joints by shape.
void paintCenterMark(QPainter& painter, QPointF at) {
    painter.setPen(roundPen(theme().instantCenter, 2.2));
    painter.setBrush(theme().card);
    painter.drawEllipse(at, kMark, kMark);
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme().instantCenter);
    painter.drawEllipse(at, 2.2, 2.2);
    painter.setBrush(Qt::NoBrush);
}

// A label on the sky beside a point, where it covers no other.
void paintLabel(QPainter& painter, LabelPlacer& placer, QPointF at, const QString& text, bool bold,
                int side) {
    const QFont font = textFont(bold ? TextSize::body : TextSize::small, bold);
    const QFontMetricsF metrics(font);
    const QSizeF size(metrics.horizontalAdvance(text) + 6, metrics.height());
    QRectF place = placer.place(at, size, kMark + 4, side);
    if (place.isNull()) {
        if (!bold) {
            return;
        }
        place = QRectF(at + QPointF(kMark + 4, -size.height() / 2), size);  // must be read all the same
    }
    painter.fillRect(place, faded(theme().canvas, 0.8));
    painter.setFont(font);
    painter.setPen(bold ? theme().ink : theme().muted);
    painter.drawText(place, Qt::AlignCenter, text);
}

}  // namespace

QString axisWords(double angle) {
    const QString size = angleText(std::abs(angle));
    if (size == angleText(0)) {
        return RollAxisPicture::tr("level");
    }
    return angle > 0 ? RollAxisPicture::tr("rises %1 toward the front").arg(size)
                     : RollAxisPicture::tr("falls %1 toward the front").arg(size);
}

RollPicture::RollPicture(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Rear axle from behind, to scale"));
    setToolTip(
        tr("From behind and to scale, the car's left at the left. The body stands still and the axle "
           "rolls with the ground under it: the same as a body that rolls the other way."));
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

void RollPicture::showRoll(const RollReading& reading, const RollFigures& at, Units units) {
    reading_ = &reading;
    at_ = at;
    units_ = units;
    setAccessibleDescription(at.usable ? tr("At %1: roll center %2 above the ground")
                                             .arg(rollWords(at.roll), lengthText(at.center, units))
                                       : tr("At %1: out of reach").arg(rollWords(at.roll)));
    update();
}

QSize RollPicture::sizeHint() const {
    return {420, 250};
}

QSize RollPicture::minimumSizeHint() const {
    return {300, 250};
}

SideCamera RollPicture::camera() const {
    const Car& car = reading_->car;
    double half = car.rearTrack ? *car.rearTrack / 2 + kTireWidth / 2 : 0.4;
    double top = 2 * car.rearTireRadius;
    for (const Constraint& link : reading_->linkage.constraints) {
        const double onAxle = link.onAxle.z() + car.rearTireRadius;
        half = std::max({half, std::abs(link.onAxle.y()), std::abs(link.onChassis.y())});
        top = std::max({top, onAxle, link.onChassis.z()});
    }
    SideCamera camera;
    camera.fit(QRectF(QPointF(-half - kMargin, -kBelow), QPointF(half + kMargin, top + 1.2 * kMargin)),
               QRectF(rect()));
    return camera;
}

std::optional<QPointF> RollPicture::placeOfCenter() const {
    if (reading_ == nullptr || !at_.usable) {
        return std::nullopt;
    }
    return place(at_.pose.y, at_.pose.z + at_.center - reading_->car.rearTireRadius);
}

void RollPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintSky(painter, rect());
    if (reading_ == nullptr || !reading_->isThere()) {
        return;
    }
    painter.setClipRect(rect());
    if (!at_.usable) {
        paintCaption(painter, rect(), tr("At %1 the links don't reach.").arg(rollWords(at_.roll)));
        return;
    }
    paintGround(painter);
    paintTires(painter);
    paintAxle(painter);
    paintLinks(painter);
    paintCenter(painter);
    paintCaption(painter, rect(),
                 tr("from behind, to scale, at %1%2")
                     .arg(rollWords(at_.roll),
                          reading_->car.rearTrack ? QString() : tr("; no tires: track not entered")));
}

// Tangent below both tires: it rolls with them.
void RollPicture::paintGround(QPainter& painter) const {
    const double radius = reading_->car.rearTireRadius;
    const double far = 3.0;
    const QPointF left = place(at_.pose.carry({0, far, -radius}));
    const QPointF right = place(at_.pose.carry({0, -far, -radius}));
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme().earth);
    const QPointF down(0, 2.0 * height());
    painter.drawPolygon(QPolygonF({left, right, right + down, left + down}));
    painter.setPen(roundPen(theme().metal, 1.4));
    painter.drawLine(left, right);
}

void RollPicture::paintTires(QPainter& painter) const {
    if (!reading_->car.rearTrack) {
        return;
    }
    const double radius = reading_->car.rearTireRadius;
    painter.setPen(roundPen(theme().metal, 1.4));
    painter.setBrush(theme().metalFill);
    for (const double side : {1.0, -1.0}) {
        const double middle = side * *reading_->car.rearTrack / 2;
        QPolygonF tire;
        for (const auto& [across, up] : {std::pair{-0.5, -1.0}, {0.5, -1.0}, {0.5, 1.0}, {-0.5, 1.0}}) {
            tire << place(at_.pose.carry({0, middle + across * kTireWidth, up * radius}));
        }
        painter.drawPolygon(tire);
    }
}

void RollPicture::paintAxle(QPainter& painter) const {
    const double half = reading_->car.rearTrack ? (*reading_->car.rearTrack - kTireWidth) / 2 : 0.6;
    QPolygonF tube;
    for (const auto& [across, up] :
         {std::pair{-half, -kTube}, {half, -kTube}, {half, kTube}, {-half, kTube}}) {
        tube << place(at_.pose.carry({0, across, up}));
    }
    painter.setPen(roundPen(theme().metal, 1.2));
    painter.setBrush(over(theme().metal, 0.2, theme().canvas));
    painter.drawPolygon(tube);
    painter.drawEllipse(place(at_.pose.carry(Eigen::Vector3d::Zero())), kHousing * camera().scale,
                        kHousing * camera().scale);
}

// From the chassis end, a square, to the axle end, a circle.
void RollPicture::paintLinks(QPainter& painter) const {
    const Car& car = reading_->car;
    for (const Constraint& link : reading_->linkage.constraints) {
        const QColor color =
            roleColor(roleOf(car.links[static_cast<std::size_t>(link.link)], car.rearTireRadius));
        const QPointF front = place(link.onChassis);
        const QPointF rear = place(at_.pose.carry(link.onAxle));
        painter.setPen(roundPen(color, 2.4));
        painter.drawLine(front, rear);
        painter.setPen(roundPen(color, 1.6));
        painter.setBrush(theme().card);
        painter.drawRect(QRectF(front - QPointF(3.5, 3.5), QSizeF(7, 7)));
        painter.drawEllipse(rear, 3.8, 3.8);
    }
    painter.setBrush(Qt::NoBrush);
}

// With the body's own middle, which stays upright.
void RollPicture::paintCenter(QPainter& painter) const {
    const QPointF foot = place(0, 0);
    painter.setPen(dashedPen(theme().muted, 1.0, {9.0, 3.0, 2.0, 3.0}));
    painter.drawLine(QPointF(foot.x(), 26), foot);
    const QPointF at = placeOfCenter().value_or(foot);
    paintCenterMark(painter, at);
    LabelPlacer placer(QRectF(rect()).adjusted(4, 24, -4, -4));
    placer.take(QRectF(at - QPointF(kMark, kMark), QSizeF(2 * kMark, 2 * kMark)));
    for (const Constraint& link : reading_->linkage.constraints) {
        const QRectF along(place(link.onChassis), place(at_.pose.carry(link.onAxle)));
        placer.take(along.normalized().adjusted(-5, -5, 5, 5));
    }
    paintLabel(painter, placer, at, tr("roll center %1").arg(lengthText(at_.center, units_)), true, 2);
}

RollAxisPicture::RollAxisPicture(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Roll axis from the side, to scale"));
    setToolTip(
        tr("From the side and to scale, front of the car to the right. Body and rear axle roll about "
           "this line, as far as the rear links have it; where the front end has its own roll center "
           "the car's axis runs between the two."));
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

void RollAxisPicture::showRoll(const RollReading& reading, Units units) {
    reading_ = &reading;
    units_ = units;
    if (reading.isThere()) {
        const RollFigures& ride = reading.roll.ride;
        setAccessibleDescription(tr("At ride: roll center %1 above the ground, roll axis %2")
                                     .arg(lengthText(ride.center, units), axisWords(ride.axisAngle)));
    }
    update();
}

QSize RollAxisPicture::sizeHint() const {
    return {460, 250};
}

QSize RollAxisPicture::minimumSizeHint() const {
    return {300, 250};
}

SideCamera RollAxisPicture::camera() const {
    const Car& car = reading_->car;
    const double rear = car.rearTireRadius;
    const double top = std::max({2 * rear, 2 * car.frontTireRadius, reading_->roll.ride.center});
    SideCamera camera;
    camera.fit(QRectF(QPointF(-rear - kMargin, -kBelow),
                      QPointF(car.wheelbase + car.frontTireRadius + kMargin, top + kMargin)),
               QRectF(rect()));
    return camera;
}

// The point of the axis ahead of the axle, car frame side view, m.
QPointF RollAxisPicture::onAxis(double ahead) const {
    const RollFigures& ride = reading_->roll.ride;
    const GroundLine& ground = reading_->rideGround;
    const double height = ride.squareCenter + std::tan(ride.axisAngle) * ahead;
    return {ground.patchX + ahead * ground.alongX - height * ground.alongZ,
            ground.patchZ + ahead * ground.alongZ + height * ground.alongX};
}

void RollAxisPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintSky(painter, rect());
    if (reading_ == nullptr || !reading_->isThere()) {
        return;
    }
    painter.setClipRect(rect());
    const SideCamera view = camera();
    paintWheels(painter, view);
    paintAxis(painter, view);
    paintCaption(painter, rect(), tr("from the side, to scale, at ride, front to the right"));
}

void RollAxisPicture::paintWheels(QPainter& painter, const SideCamera& view) const {
    const GroundLine& ground = reading_->rideGround;
    const auto onGround = [&](double ahead) {
        return view.toPicture(ground.patchX + ahead * ground.alongX, ground.patchZ + ahead * ground.alongZ);
    };
    const double far = 5.0;
    const QPointF down(0, 2.0 * height());
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme().earth);
    painter.drawPolygon(
        QPolygonF({onGround(-far), onGround(far), onGround(far) + down, onGround(-far) + down}));
    painter.setPen(roundPen(theme().metal, 1.4));
    painter.drawLine(onGround(-far), onGround(far));
    painter.setBrush(theme().metalFill);
    const AxlePose& pose = reading_->roll.ride.pose;
    const double rear = reading_->car.rearTireRadius * view.scale;
    const double front = reading_->car.frontTireRadius * view.scale;
    painter.drawEllipse(view.toPicture(pose.x, pose.z), rear, rear);
    painter.drawEllipse(view.toPicture(ground.frontCenterX, ground.frontCenterZ), front, front);
    painter.setBrush(Qt::NoBrush);
}

void RollAxisPicture::paintAxis(QPainter& painter, const SideCamera& view) const {
    LabelPlacer placer(QRectF(rect()).adjusted(4, 24, -4, -4));
    const double far = reading_->car.wheelbase + 2 * reading_->car.frontTireRadius;
    painter.setPen(dashedPen(theme().instantCenter, 2.0, {8.0, 2.5, 1.5, 2.5}));
    if (const auto line = clipped(QLineF(view.toPicture(onAxis(-1)), view.toPicture(onAxis(far))), rect())) {
        painter.drawLine(*line);
    }
    const QPointF center = view.toPicture(onAxis(0));
    paintCenterMark(painter, center);
    placer.take(QRectF(center - QPointF(kMark, kMark), QSizeF(2 * kMark, 2 * kMark)));
    for (const LinkCrossing& met : reading_->crossings) {
        const QPointF at = view.toPicture(met.x, met.z);
        if (!QRectF(rect()).adjusted(6, 24, -6, -6).contains(at)) {
            continue;
        }
        painter.setPen(roundPen(theme().ink, 1.6));
        painter.drawLine(at - QPointF(4, 4), at + QPointF(4, 4));
        painter.drawLine(at - QPointF(4, -4), at + QPointF(4, -4));
        placer.take(QRectF(at - QPointF(5, 5), QSizeF(10, 10)));
        paintLabel(painter, placer, at, tr("lines of %1 meet").arg(met.name), false, 2);
    }
    const QPointF middle = view.toPicture(onAxis(0.62 * reading_->car.wheelbase));
    if (QRectF(rect()).contains(middle)) {
        paintLabel(painter, placer, middle, axisWords(reading_->roll.ride.axisAngle), false, 2);
    }
    paintLabel(painter, placer, center, lengthText(reading_->roll.ride.center, units_), true, 0);
}

}  // namespace bolthole
