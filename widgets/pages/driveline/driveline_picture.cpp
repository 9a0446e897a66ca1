#include "widgets/pages/driveline/driveline_picture.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/scales/travel_steps.h"

namespace bolthole {

namespace {

// What is drawn around the measured points, m: no car's own size, only so much that the parts are known
// again.
constexpr double kTail = 0.20;  // of transmission ahead of its joint
constexpr double kTailHalf = 0.055;
constexpr double kTube = 0.045;  // radius of an axle tube
constexpr double kShaftHalf = 0.03;
constexpr double kNeckHalf = 0.013;  // between joint and tube
constexpr double kYoke = 0.035;      // half the length of a joint
constexpr double kAxisReach = 0.22;  // how far an axis is drawn past its joint
constexpr double kMargin = 0.08;

QPointF inclined(double angle) {
    return {std::cos(angle), std::sin(angle)};
}

// Draws the parts of one driveline; works in picture coordinates.
class DrivelineDrawing {
  public:
    DrivelineDrawing(QPainter& painter, const SideCamera& camera) : painter_(painter), camera_(camera) {}

    void tube(QPointF from, QPointF to, double half, const QColor& fill) {
        const QPointF a = camera_.toPicture(from);
        const QPointF b = camera_.toPicture(to);
        const QPointF along = unit(b - a);
        const QPointF across = QPointF(-along.y(), along.x()) * half * camera_.scale;
        QPainterPath path(a + across);
        path.lineTo(b + across);
        path.lineTo(b - across);
        path.lineTo(a - across);
        path.closeSubpath();
        painter_.setBrush(fill);
        painter_.setPen(roundPen(theme().metal, 1.2));
        painter_.drawPath(path);
    }
    void axis(QPointF from, QPointF to, const QColor& color) {
        painter_.setPen(dashedPen(color, 1.2, {7.0, 2.5, 1.5, 2.5}));
        painter_.drawLine(camera_.toPicture(from), camera_.toPicture(to));
    }
    void housing(QPointF center, QPointF nose) {
        const QPointF middle = camera_.toPicture(center);
        const QPointF tip = camera_.toPicture(nose);
        const QPointF along = unit(tip - middle);
        const double radius = kTube * camera_.scale;
        const QPointF across(-along.y() * radius, along.x() * radius);
        painter_.setPen(roundPen(theme().metal, 1.3));
        painter_.setBrush(over(theme().metal, 0.25, theme().canvas));
        QPainterPath cone(middle + across * 1.5);
        cone.lineTo(tip + across * 0.7);
        cone.lineTo(tip - across * 0.7);
        cone.lineTo(middle - across * 1.5);
        cone.closeSubpath();
        painter_.drawPath(cone);
        painter_.drawEllipse(middle, 1.6 * radius, 1.6 * radius);
        painter_.setBrush(theme().canvas);
        painter_.drawEllipse(middle, radius, radius);
    }
    void joint(QPointF at) {
        const QPointF center = camera_.toPicture(at);
        const double radius = std::max(4.0, 0.6 * kYoke * camera_.scale);
        painter_.setPen(roundPen(theme().ink, 1.6));
        painter_.setBrush(theme().card);
        painter_.drawEllipse(center, radius, radius);
        painter_.drawLine(center - QPointF(radius, 0), center + QPointF(radius, 0));
        painter_.drawLine(center - QPointF(0, radius), center + QPointF(0, radius));
    }
    // The bearing holds the front piece just ahead of its rear joint.
    void carrier(QPointF joint, QPointF along) {
        const QPointF at = camera_.toPicture(joint + along * 2.2 * kYoke);
        const double half = 1.7 * kShaftHalf * camera_.scale;
        painter_.setPen(roundPen(theme().metal, 1.3));
        painter_.setBrush(over(theme().metal, 0.45, theme().canvas));
        painter_.drawRect(QRectF(at - QPointF(half / 2, half), at + QPointF(half / 2, half)));
    }

  private:
    QPainter& painter_;
    const SideCamera& camera_;
};

}  // namespace

DrivelinePicture::DrivelinePicture(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Driveline from the side, to scale"));
    setToolTip(
        tr("From the side and to scale, front of the car to the right. The angles are those in space."));
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

void DrivelinePicture::showDriveline(const DrivelineReading& reading, const Station& station,
                                     double rearTireRadius, Units units) {
    reading_ = reading;
    station_ = station;
    rearTireRadius_ = rearTireRadius;
    units_ = units;
    row_ = reading.rowAt(station);
    describeInWords();
    update();
}

void DrivelinePicture::describeInWords() {
    QStringList parts;
    for (std::size_t joint = 0; joint < row_.coasting.joints; ++joint) {
        parts << jointWords(joint, row_.coasting.joints) + QLatin1Char(' ') +
                     angleText(row_.coasting.angle[joint]);
    }
    setAccessibleDescription(
        tr("At %1: %2").arg(travelInWords(row_.travel, units_), parts.join(QStringLiteral(", "))));
}

std::vector<QPointF> DrivelinePicture::joints(const AxlePose& pose) const {
    const Eigen::Vector3d pinion =
        pose.carry(reading_.line.pinionJoint - Eigen::Vector3d(0, 0, rearTireRadius_));
    std::vector<QPointF> at{{reading_.line.outputJoint.x(), reading_.line.outputJoint.z()}};
    if (reading_.setup.carrierJoint) {
        at.emplace_back(reading_.setup.carrierJoint->x(), reading_.setup.carrierJoint->z());
    }
    at.emplace_back(pinion.x(), pinion.z());
    return at;
}

QPointF DrivelinePicture::alongPinion(const AxlePose& pose) const {
    return inclined(reading_.reader->pinionInclination(pose, 0));
}

QRectF DrivelinePicture::box() const {
    const std::vector<QPointF> at = joints(station_.pose);
    const QPointF front = at.front() + inclined(reading_.line.outputAngle) * kTail;
    double low = std::min(station_.pose.z, front.y());
    double high = std::max(station_.pose.z, front.y());
    for (const QPointF& joint : at) {
        low = std::min(low, joint.y());
        high = std::max(high, joint.y());
    }
    const double left = station_.pose.x - 2 * kTube - kMargin;
    return {QPointF(left, low - kMargin - kTube), QPointF(front.x() + kMargin, high + kMargin + kTube)};
}

SideCamera DrivelinePicture::camera() const {
    SideCamera camera;
    const QRectF shown = box();
    camera.fit(shown, QRectF(rect()));
    // Centered in height too: there is no ground to stand on.
    camera.origin.ry() += rect().center().y() - camera.toPicture(shown.center()).y();
    return camera;
}

QPointF DrivelinePicture::placeOfJoint(std::size_t joint) const {
    return camera().toPicture(joints(station_.pose)[joint]);
}

QSize DrivelinePicture::sizeHint() const {
    return {700, 190};
}

QSize DrivelinePicture::minimumSizeHint() const {
    return {320, 190};
}

void DrivelinePicture::paintEvent(QPaintEvent*) {
    if (!reading_.isThere() || !row_.usable) {
        return;
    }
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme().canvas);
    painter.drawRoundedRect(rect(), 5, 5);
    paintParts(painter);
    paintLabels(painter);
}

// Wound up lies under coasting, as axes alone.
void DrivelinePicture::paintParts(QPainter& painter) const {
    const SideCamera view = camera();
    DrivelineDrawing drawing(painter, view);
    const std::vector<QPointF> at = joints(station_.pose);
    const QPointF output = inclined(reading_.line.outputAngle);
    const QPointF pinion = alongPinion(station_.pose);
    const QColor shaft = over(theme().metal, 0.2, theme().canvas);
    drawing.tube(at.front(), at.front() + output * kYoke, kNeckHalf, shaft);
    drawing.tube(at.front() + output * kYoke, at.front() + output * kTail, kTailHalf,
                 over(theme().metal, 0.35, theme().canvas));
    drawing.housing(QPointF(station_.pose.x, station_.pose.z), at.back() - pinion * kYoke);
    for (std::size_t piece = 0; piece + 1 < at.size(); ++piece) {
        const QPointF along = unit(at[piece] - at[piece + 1]);
        drawing.tube(at[piece + 1], at[piece], kNeckHalf, shaft);
        drawing.tube(at[piece + 1] + along * kYoke, at[piece] - along * kYoke, kShaftHalf, shaft);
        if (piece + 2 < at.size()) {
            drawing.carrier(at[piece + 1], along);
        }
    }
    if (reading_.windUp) {
        const AxlePose wound = woundUp(station_.pose, *reading_.windUp);
        const QPointF nose = joints(wound).back();
        drawing.axis(nose - alongPinion(wound) * kAxisReach, nose + alongPinion(wound) * kAxisReach,
                     theme().muted);
        drawing.axis(nose, at[at.size() - 2], theme().muted);
    }
    drawing.axis(at.back() - pinion * kAxisReach, at.back() + pinion * kAxisReach, theme().ink);
    drawing.axis(at.front() - output * kAxisReach, at.front() + output * kTail, theme().ink);
    for (const QPointF& joint : at) {
        drawing.joint(joint);
    }
}

// At each joint its angle; at each shaft how it lies against the ground.
void DrivelinePicture::paintLabels(QPainter& painter) const {
    const SideCamera view = camera();
    const std::vector<QPointF> at = joints(station_.pose);
    painter.setFont(textFont(TextSize::small));
    painter.setPen(theme().muted);
    painter.drawText(QRectF(rect()).adjusted(10, 6, -10, -6), Qt::AlignLeft | Qt::AlignTop,
                     tr("at %1, to scale, front to the right").arg(travelInWords(row_.travel, units_)));
    for (std::size_t joint = 0; joint < at.size(); ++joint) {
        paintJointLabel(painter, view.toPicture(at[joint]), joint);
    }
    const double ground = station_[Figure::ground];
    const auto lies = [&](const QString& what, QPointF place, QPointF along) {
        const double angle = std::atan2(along.y(), along.x()) - ground;
        paintLie(painter, view.toPicture(place), what, angle);
    };
    lies(tr("output"), at.front() + inclined(reading_.line.outputAngle) * 0.6 * kTail,
         inclined(reading_.line.outputAngle));
    for (std::size_t piece = 0; piece + 1 < at.size(); ++piece) {
        const QString name = at.size() == 2 ? tr("shaft") : piece == 0 ? tr("front piece") : tr("rear piece");
        lies(name, (at[piece] + at[piece + 1]) / 2, at[piece] - at[piece + 1]);
    }
    lies(tr("pinion"), QPointF(station_.pose.x + kTube, station_.pose.z), alongPinion(station_.pose));
}

// Above the joint: the angle coasting, and what winding up makes of it.
void DrivelinePicture::paintJointLabel(QPainter& painter, QPointF at, std::size_t joint) const {
    const QFont bold = textFont(TextSize::body, true);
    const QFont quiet = textFont(TextSize::small);
    const QString wound =
        reading_.windUp ? tr("wound up %1").arg(angleText(row_.woundUp.angle[joint])) : QString();
    const double height = QFontMetricsF(bold).height();
    const double below = wound.isEmpty() ? 0 : QFontMetricsF(quiet).height();
    const double clear = kTailHalf * camera().scale + 8;
    const QRectF line(at.x() - 90, at.y() - clear - below - height, 180, height);
    painter.setFont(bold);
    painter.setPen(theme().ink);
    painter.drawText(line, Qt::AlignCenter, angleText(row_.coasting.angle[joint]));
    painter.setFont(quiet);
    painter.setPen(theme().muted);
    painter.drawText(line.translated(0, height), Qt::AlignHCenter | Qt::AlignTop, wound);
}

// Under a shaft: "pinion 1.50 deg up".
void DrivelinePicture::paintLie(QPainter& painter, QPointF at, const QString& what, double angle) const {
    const QString size = angleText(std::abs(angle));
    const QString text = size == angleText(0) ? tr("%1 level").arg(what)
                         : angle > 0          ? tr("%1 %2 up").arg(what, size)
                                              : tr("%1 %2 down").arg(what, size);
    painter.setFont(textFont(TextSize::small));
    painter.setPen(theme().muted);
    const double clear = kTailHalf * camera().scale + 16;
    const double width = QFontMetricsF(painter.font()).horizontalAdvance(text) + 4;
    const double left = std::clamp(at.x() - width / 2, 6.0, std::max(6.0, this->width() - width - 6));
    painter.drawText(QRectF(left, at.y() + clear, width, 20), Qt::AlignHCenter | Qt::AlignTop, text);
}

}  // namespace bolthole
