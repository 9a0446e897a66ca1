#include "widgets/pages/loads/loads_picture.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "widgets/kit/body_outline.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/picture_copy.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/loads/loads_facts.h"

namespace bolthole {

namespace {

constexpr double kBelow = 98;        // px under the ground, for the tires' loads
constexpr double kLongestLoad = 66;  // px
constexpr double kTop = 46;          // px, for the words and a body that rises

}  // namespace

LoadsPicture::LoadsPicture(QWidget* parent) : QWidget(parent) {
    setAccessibleName(tr("The car under launch, side view"));
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setSizePolicy(policy);
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
    offerPicture(*this);
}

void LoadsPicture::showCase(const Car& car, const LaunchCase& launch, Units units) {
    units_ = units;
    isEmpty_ = !launch.problem.empty();
    body_ = car.body;
    isLaunching_ = !isEmpty_ && launch.loads;
    if (!isEmpty_) {
        const StandingCar& standing = launch.standing;
        rear_ = {0, car.rearTireRadius, standing.rear(), 0};
        front_ = {standing.wheelbase, car.frontTireRadius, standing.front(), 0};
        cgAhead_ = standing.cgAhead;
        cgHeight_ = standing.cgHeight;
        attitude_ = launch.attitude.value;
    }
    if (isLaunching_) {
        rear_.launching = launch.loads->rear;
        front_.launching = launch.loads->front;
        thrust_ = launch.thrust->force;
        wheelsUp_ = launch.loads->wheelsUp;
    }
    speak();
    update();
}

void LoadsPicture::speak() {
    QString words = tr("no figures");
    if (!isEmpty_) {
        const auto force = [this](double value) { return figureWithUnit(value, Quantity::force, units_); };
        words =
            tr("standing: front axle %1, rear axle %2").arg(force(front_.standing), force(rear_.standing));
        if (isLaunching_) {
            words += tr("; launching: front axle %1, rear axle %2, thrust %3")
                         .arg(force(front_.launching), force(rear_.launching), force(thrust_));
        }
    }
    setAccessibleDescription(words);
}

void LoadsPicture::place() {
    const QRectF body = roomOf(bodyShape(body_, front_.x, rear_.radius));
    const double tall = height() - kBelow - kTop;
    constexpr double kSides = 110;  // px, for numbers beside the arrows
    scale_ = std::min((width() - 2 * kSides) / body.width(), tall / body.height());
    const double left = (width() - body.width() * scale_) / 2 - body.left() * scale_;
    origin_ = {left, height() - kBelow};
    const double most = std::max(
        {rear_.standing, front_.standing, isLaunching_ ? rear_.launching : 0, isLaunching_ ? thrust_ : 0});
    perNewton_ = most > 0 ? kLongestLoad / most : 0;
}

QPointF LoadsPicture::toPicture(double x, double z) const {
    return {origin_.x() + x * scale_, origin_.y() - z * scale_};
}

void LoadsPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    place();
    const QRectF earth(0, origin_.y(), width(), height() - origin_.y());
    painter.fillRect(earth, over(theme().earth, 0.5, theme().card));
    painter.setPen(QPen(theme().metal, 1.5));
    painter.drawLine(earth.topLeft(), earth.topRight());
    if (isEmpty_) {
        return;
    }
    const bool hasMoved = isLaunching_ && attitude_;
    paintBody(painter, LaunchAttitude{}, !hasMoved);
    if (hasMoved) {
        paintBody(painter, *attitude_, true);
    }
    for (const Axle* axle : {&rear_, &front_}) {
        paintWheel(painter, *axle);
        paintLoads(painter, *axle);
    }
    if (isLaunching_) {
        paintThrust(painter);
    }
    paintCenter(painter);
    paintWords(painter);
}

void LoadsPicture::paintBody(QPainter& painter, const LaunchAttitude& attitude, bool isNow) const {
    const double length = front_.x;
    const BodyShape shape = bodyShape(body_, length, rear_.radius);
    const auto shown = [&](const QPolygonF& of) {
        QPolygonF points;
        for (const QPointF& point : of) {
            const double rise = std::lerp(attitude.rearRise, attitude.frontRise, point.x() / length);
            points << toPicture(point.x(), point.y() + kRiseDrawn * rise);
        }
        return points;
    };
    painter.setBrush(isNow ? QBrush(over(theme().metalFill, 0.35, theme().card)) : QBrush(Qt::NoBrush));
    painter.setPen(isNow ? roundPen(theme().metal, 1.5) : dashedPen(theme().muted, 1.0, {4, 4}));
    painter.drawPolygon(shown(shape.outline));
    if (isNow && !shape.window.isEmpty()) {
        painter.setBrush(theme().card);
        painter.setPen(roundPen(theme().metal, 1.0));
        painter.drawPolygon(shown(shape.window));
    }
}

void LoadsPicture::paintWheel(QPainter& painter, const Axle& axle) const {
    const QPointF center = toPicture(axle.x, axle.radius);
    const double radius = axle.radius * scale_;
    painter.setPen(roundPen(theme().ink, 2));
    painter.setBrush(theme().card);
    painter.drawEllipse(center, radius - 1, radius - 1);
    painter.setPen(roundPen(theme().metal, 1));
    painter.setBrush(theme().metalFill);
    painter.drawEllipse(center, 0.52 * radius, 0.52 * radius);
}

void LoadsPicture::paintLoads(QPainter& painter, const Axle& axle) const {
    const QPointF patch = toPicture(axle.x, 0);
    const double apart = isLaunching_ ? 7 : 0;
    paintLoad(painter, patch - QPointF(apart, 0), axle.standing, false);
    if (isLaunching_) {
        paintLoad(painter, patch + QPointF(apart, 0), axle.launching, true);
    }
}

// The ground's push on both tires of an axle; its number beside it, standing at left, launching at right.
void LoadsPicture::paintLoad(QPainter& painter, QPointF at, double force, bool isNow) const {
    const double length = lengthOf(force);
    if (length > 1) {
        paintArrow(painter, at + QPointF(0, length + 2), at + QPointF(0, 2),
                   isNow ? roundPen(theme().ink, 3) : dashedPen(theme().muted, 2, {2, 2}));
    }
    painter.setFont(textFont(TextSize::body, isNow));
    painter.setPen(isNow ? theme().ink : theme().muted);
    constexpr double kWide = 160;
    constexpr double kTall = 34;
    const QRectF box(isNow ? at.x() + 10 : at.x() - 10 - kWide, at.y() + 40, kWide, kTall);
    const QString words =
        (isNow ? tr("launching") : tr("standing")) + u'\n' + figureWithUnit(force, Quantity::force, units_);
    painter.drawText(box, static_cast<int>((isNow ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignTop), words);
}

void LoadsPicture::paintThrust(QPainter& painter) const {
    const double rise = 0.13 * rear_.radius * scale_ + 4;
    const QPointF from = toPicture(0, 0) + QPointF(rear_.radius * scale_ * 0.6, -rise);
    const QPointF to = from + QPointF(std::max(lengthOf(thrust_), 2 * kArrowHead), 0);
    paintArrow(painter, from, to, roundPen(theme().instantCenter, 3));
    painter.setFont(textFont(TextSize::body, true));
    painter.setPen(theme().ink);
    const QString words = tr("thrust %1").arg(figureWithUnit(thrust_, Quantity::force, units_));
    painter.drawText(to + QPointF(8, 5), words);
}

// The usual mark of a center of gravity: a circle in quarters.
void LoadsPicture::paintCenter(QPainter& painter) const {
    const QPointF at = toPicture(cgAhead_, cgHeight_);
    constexpr double kRadius = 7;
    painter.setPen(roundPen(theme().ink, 1.5));
    painter.setBrush(theme().card);
    painter.drawEllipse(at, kRadius, kRadius);
    const QRectF box(at.x() - kRadius, at.y() - kRadius, 2 * kRadius, 2 * kRadius);
    painter.setBrush(theme().ink);
    constexpr int kQuarter = 90 * 16;
    painter.drawPie(box, 0, kQuarter);
    painter.drawPie(box, 2 * kQuarter, kQuarter);
    painter.setFont(textFont(TextSize::body));
    painter.setPen(theme().ink);
    const QString words =
        tr("CG, %1 high")
            .arg(QString::fromStdString(
                withUnit(fineFigureText(cgHeight_, Quantity::length, units_), Quantity::length, units_)));
    constexpr double kHalf = 90;
    painter.drawText(QRectF(at.x() - kHalf, at.y() - kRadius - 24, 2 * kHalf, 20),
                     static_cast<int>(Qt::AlignHCenter | Qt::AlignBottom), words);
}

void LoadsPicture::paintWords(QPainter& painter) const {
    QString words = tr("Lengths to scale, arrows to a scale of forces; the body a plain shape.");
    if (wheelsUp_ && isLaunching_) {
        words = tr("The front wheels leave the ground: no attitude to draw.");
    } else if (isLaunching_ && attitude_) {
        words = tr("Lengths to scale, arrows to a scale of forces; the body a plain shape, dashed: standing. "
                   "Rise and pitch drawn %1 times what they are.")
                    .arg(kRiseDrawn);
    } else if (isLaunching_) {
        words += tr(" Rise and pitch are not known, so none are drawn.");
    }
    painter.setFont(textFont(TextSize::small));
    painter.setPen(theme().muted);
    painter.drawText(QRectF(8, 4, width() - 16, kTop),
                     static_cast<int>(Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap), words);
}

}  // namespace bolthole
