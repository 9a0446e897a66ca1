// The car, the ground and the forces of the moving picture.
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "widgets/kit/body_outline.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/launch/launch_picture.h"
#include "widgets/pages/launch/launch_words.h"

namespace bolthole {

namespace {

constexpr int kSpokes = 5;
constexpr double kMarkRoom = 26;  // px from the picture's sides
constexpr double kSixtyFeet = 60 * 12 * kMetresPerInch;

bool isNear(QPointF point, const QRectF& box) {
    return std::isfinite(point.x()) && std::isfinite(point.y()) && box.contains(point);
}

}  // namespace

void LaunchPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (!film_ || film_->run.rows.empty()) {
        return;
    }
    place();
    const FilmPose now(*film_, time_);
    const std::optional<FilmPose> then =
        before_ && !before_->run.rows.empty() ? std::optional(FilmPose(*before_, time_)) : std::nullopt;
    paintGround(painter, now);
    paintBody(painter, now, true);
    if (then) {
        paintBody(painter, *then, false);
    }
    const Car& car = film_->car;
    paintWheel(painter, now.rearCenter(), car.rearTireRadius, film_->rearTurnAt(time_));
    paintWheel(painter, now.frontCenter(), car.frontTireRadius, now.row().distance / car.frontTireRadius);
    paintLinks(painter, now);
    paintCenter(painter, now);
    paintForces(painter, now, then ? &*then : nullptr);
    paintHeading(painter, now.row());
    paintFlag(painter);
    if (ring_) {
        painter.setPen(QPen(theme().focus, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(QRectF(rect()).adjusted(2, 2, -2, -2), 5, 5);
    }
}

// Marks on the ground go by as the front wheel runs over them; they count from where it stood.
void LaunchPicture::paintGround(QPainter& painter, const FilmPose& pose) const {
    const double top = camera_.origin.y();
    painter.fillRect(QRectF(0, top, width(), height() - top), over(theme().earth, 0.55, theme().card));
    painter.setPen(QPen(theme().metal, 1.5));
    painter.drawLine(QPointF(0, top), QPointF(width(), top));
    const bool inch = units_ == Units::inch;
    const double spacing = inch ? 12 * kMetresPerInch : 0.5;
    const double start = film_->car.wheelbase - pose.row().forward;  // of the front wheel, in the picture
    const double left = camera_.toCar(QPointF(0, 0)).x() - start;
    const double right = camera_.toCar(QPointF(width(), 0)).x() - start;
    painter.setFont(textFont(TextSize::small));
    for (double mark = std::ceil(left / spacing); mark * spacing <= right; ++mark) {
        const double x = camera_.toPicture(start + mark * spacing, 0).x();
        const bool isLong = std::remainder(mark, inch ? 5 : 4) == 0;
        painter.setPen(QPen(theme().metal, isLong ? 1.5 : 1));
        painter.drawLine(QPointF(x, top), QPointF(x, top + (isLong ? 9 : 5)));
        if (isLong && mark >= 0 && x > kMarkRoom && x < width() - kMarkRoom) {
            paintMark(painter, x, mark * spacing);
        }
    }
    const double finish = camera_.toPicture(start + kSixtyFeet, 0).x();
    if (finish > 0 && finish < width()) {
        painter.setPen(dashedPen(theme().focus, 1.5, {4, 3}));
        painter.drawLine(QPointF(finish, kArrowHead), QPointF(finish, top));
    }
}

void LaunchPicture::paintMark(QPainter& painter, double x, double distance) const {
    const bool inch = units_ == Units::inch;
    const double shown = inch ? distance / (12 * kMetresPerInch) : distance;
    const QString words = QString::number(std::lround(shown)) + (inch ? tr(" ft") : tr(" m"));
    painter.setPen(theme().muted);
    painter.drawText(QRectF(x - 40, height() - 19, 80, 16), Qt::AlignCenter, words);
}

void LaunchPicture::paintBody(QPainter& painter, const FilmPose& pose, bool isNow) const {
    const Car& car = (isNow ? film_ : before_)->car;
    const BodyShape shape = bodyShape(car.body, car.wheelbase, car.rearTireRadius);
    const auto shown = [&](const QPolygonF& of) {
        QPolygonF points;
        for (const QPointF& point : of) {
            points << at(pose.ofBody(point.x(), point.y()));
        }
        return points;
    };
    painter.setBrush(isNow ? QBrush(over(theme().metalFill, 0.35, theme().card)) : QBrush(Qt::NoBrush));
    painter.setPen(isNow ? roundPen(theme().ink, 1.75) : dashedPen(theme().before, 1.25, {4, 3}));
    painter.drawPolygon(shown(shape.outline));
    if (isNow && !shape.window.isEmpty()) {
        painter.setBrush(theme().card);
        painter.setPen(roundPen(theme().metal, 1.25));
        painter.drawPolygon(shown(shape.window));
    }
}

// A tire that is pressed flatter than at rest is flat where it stands.
void LaunchPicture::paintWheel(QPainter& painter, QPointF center, double radius, double turn) const {
    const QPointF middle = at(center);
    const double round = radius * camera_.scale;
    painter.save();
    painter.setClipRect(QRectF(0, 0, width(), camera_.origin.y() + 0.75));
    painter.setPen(roundPen(theme().ink, 2));
    painter.setBrush(over(theme().metalFill, 0.6, theme().card));
    painter.drawEllipse(middle, round - 1, round - 1);
    painter.restore();
    painter.setPen(roundPen(theme().metal, 1.25));
    painter.setBrush(theme().card);
    painter.drawEllipse(middle, 0.56 * round, 0.56 * round);
    for (int spoke = 0; spoke < kSpokes; ++spoke) {
        const double angle = turn + 2 * std::numbers::pi * spoke / kSpokes;  // clockwise, as y is down
        const QPointF way(std::cos(angle), std::sin(angle));
        painter.drawLine(middle + 0.12 * round * way, middle + 0.5 * round * way);
        if (spoke == 0) {  // one mark on the tread, to see it turn by
            painter.drawLine(middle + 0.74 * round * way, middle + 0.9 * round * way);
        }
    }
}

void LaunchPicture::paintLinks(QPainter& painter, const FilmPose& pose) {
    bench_.cursor = pose.station();
    bench_.cursor.usable = true;  // where the links do not reach, as measured
    points_.rebuild(bench_);
    const QRectF near = QRectF(rect()).adjusted(-40, -40, 40, 40);
    for (const DrawnLink& link : points_.links) {
        if (link.mirrored) {
            continue;
        }
        const QPointF axle = at(pose.ofBody(link.axle.x(), link.axle.y()));
        const QPointF chassis = at(pose.ofBody(link.chassis.x(), link.chassis.y()));
        const QColor color = roleColor(link.role);
        if (link.role != Role::crosswise && isNear(at(pose.instantCenter()), near)) {
            painter.setPen(dashedPen(faded(color, 0.7), 1, {4, 3}));
            painter.drawLine(chassis, at(pose.instantCenter()));
        }
        painter.setPen(roundPen(link.farSide ? faded(color, 0.4) : color, 4.5));
        painter.drawLine(axle, chassis);
    }
}

// The instant center with the line from the rear patch; beyond the picture the line alone.
void LaunchPicture::paintCenter(QPainter& painter, const FilmPose& pose) const {
    const QPointF center = pose.instantCenter();
    if (!std::isfinite(center.x()) || !std::isfinite(center.y())) {
        return;
    }
    const QPointF patch = at({pose.rearCenter().x(), 0});
    const QRectF sight(0, kArrowHead, width(), height() - kArrowHead);
    if (const auto line = clipped(QLineF(patch, at(center)), sight)) {
        painter.setPen(roundPen(theme().instantCenter, 1.5));
        painter.drawLine(*line);
    }
    if (isNear(at(center), sight)) {
        painter.setPen(QPen(theme().instantCenter, 2.5));
        painter.setBrush(theme().card);
        painter.drawEllipse(at(center), 6.5, 6.5);
    }
}

void LaunchPicture::paintForces(QPainter& painter, const FilmPose& pose, const FilmPose* before) const {
    const LaunchRow& row = pose.row();
    const auto then = [before](double LaunchRow::*load) {
        return before == nullptr ? std::nullopt : std::optional(before->row().*load);
    };
    paintLoad(painter,
              {at({pose.rearCenter().x(), 0}), row.rearLoad, then(&LaunchRow::rearLoad), tr("rear")});
    paintLoad(painter,
              {at({pose.frontCenter().x(), 0}), row.frontLoad, then(&LaunchRow::frontLoad), tr("front")});
    paintThrust(painter, pose);
}

// The ground's push on both tires of an axle.
void LaunchPicture::paintLoad(QPainter& painter, const Patch& patch) const {
    const double length = patch.load * perNewton_;
    if (length > 1) {
        paintArrow(painter, patch.at + QPointF(0, std::max(length, kArrowHead) + 3), patch.at + QPointF(0, 3),
                   roundPen(theme().ink, 3));
    }
    const QFont strong = textFont(TextSize::body, true);
    const QFont small = textFont(TextSize::small);
    const QPointF words = patch.at + QPointF(14, 14 + QFontMetricsF(strong).ascent());
    painter.setFont(strong);
    painter.setPen(theme().ink);
    painter.drawText(words,
                     patch.name + u' ' + (patch.load > 0 ? forceText(patch.load) : tr("off the ground")));
    if (patch.before) {
        painter.setFont(small);
        painter.setPen(theme().muted);
        const QFontMetricsF metrics(small);
        const QString other = tr("%1, %2").arg(forceText(*patch.before), before_->called);
        painter.drawText(words + QPointF(0, metrics.height() + 1),
                         metrics.elidedText(other, Qt::ElideRight, width() - words.x() - 4));
    }
}

void LaunchPicture::paintThrust(QPainter& painter, const FilmPose& pose) const {
    const double thrust = pose.row().thrust;
    const double reach = 0.9 * film_->car.rearTireRadius;
    const QPointF from = at({pose.rearCenter().x() + reach, 0.03}) - QPointF(0, 4);
    const double length = thrust * perNewton_;
    if (std::abs(length) < 2) {
        return;
    }
    const QPointF to = from + QPointF(std::copysign(std::max(std::abs(length), kArrowHead), length), 0);
    paintArrow(painter, from, to, roundPen(theme().instantCenter, 3));
    painter.setFont(textFont(TextSize::body, true));
    painter.setPen(theme().instantCenter);
    painter.drawText(QPointF(std::max(from.x(), to.x()) + 8, from.y() + 4),
                     tr("thrust %1").arg(forceText(thrust)));
}

}  // namespace bolthole
