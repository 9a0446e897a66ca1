#include "widgets/pages/loads/loads_picture.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "widgets/kit/body_outline.h"
#include "widgets/kit/picture_copy.h"
#include "widgets/pages/loads/loads_facts.h"
#include "widgets/scene/scene_painter.h"

namespace bolthole {

namespace {

constexpr double kBelow = 98;        // px under the ground, for the tires' loads
constexpr double kLongestLoad = 66;  // px
constexpr double kTop = 46;          // px, for the words and a body that rises
constexpr double kNumberDown = 40;   // px from the ground to a load's number

SceneStyle loadsStyle() {
    SceneStyle style = SceneStyle::screen(&Theme::card);
    style.earth = 0.5;
    return style;
}

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
    const double scale = std::min((width() - 2 * kSides) / body.width(), tall / body.height());
    const double left = (width() - body.width() * scale) / 2 - body.left() * scale;
    camera_ = {scale, {left, height() - kBelow}};
    const double most = std::max(
        {rear_.standing, front_.standing, isLaunching_ ? rear_.launching : 0, isLaunching_ ? thrust_ : 0});
    perNewton_ = most > 0 ? kLongestLoad / most : 0;
}

void LoadsPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    place();
    scene_.clear();
    scene_.add(SceneGround{});
    if (!isEmpty_) {
        compose();
    }
    paintScene(painter, scene_, {camera_, QRectF(rect())}, loadsStyle());
}

void LoadsPicture::compose() {
    const bool hasMoved = isLaunching_ && attitude_;
    addBody(LaunchAttitude{}, !hasMoved);
    if (hasMoved) {
        addBody(*attitude_, true);
    }
    for (const Axle* axle : {&rear_, &front_}) {
        scene_.add(SceneWheel{.center = {axle->x, axle->radius}, .radius = axle->radius});
        addLoad(axle->x, axle->standing, false);
        if (isLaunching_) {
            addLoad(axle->x, axle->launching, true);
        }
    }
    if (isLaunching_) {
        addThrust();
    }
    const QPointF center(cgAhead_, cgHeight_);
    scene_.add(SceneCenter{.at = center, .kind = CenterKind::gravity});
    scene_.label(
        {.at = center,
         .text = tr("CG, %1 high")
                     .arg(QString::fromStdString(withUnit(fineFigureText(cgHeight_, Quantity::length, units_),
                                                          Quantity::length, units_))),
         .font = SceneFont::body,
         .side = 2,
         .gap = 13,
         .mustStand = true});
    scene_.write({.at = {PictureCorner::topLeft, {8, 4}},
                  .lie = Qt::AlignLeft | Qt::AlignTop,
                  .text = whatIsDrawn(),
                  .wrap = width() - 16.0});
}

void LoadsPicture::addBody(const LaunchAttitude& attitude, bool isNow) {
    const double length = front_.x;
    BodyShape shape = bodyShape(body_, length, rear_.radius);
    for (QPolygonF* part : {&shape.outline, &shape.window}) {
        for (QPointF& point : *part) {
            point.ry() += kRiseDrawn * std::lerp(attitude.rearRise, attitude.frontRise, point.x() / length);
        }
    }
    ScenePath& outline = scene_.addPath(shape.outline, true);
    if (!isNow) {
        outline.stroke = {&Theme::muted, SceneWeight::hair, SceneDash::dashed};
        return;
    }
    outline.stroke = {&Theme::metal, SceneWeight::medium};
    outline.fill = {&Theme::metalFill, 0.35};
    if (!shape.window.isEmpty()) {
        ScenePath& window = scene_.addPath(shape.window, true);
        window.stroke = {&Theme::metal, SceneWeight::hair};
        window.fill = {&Theme::card};
    }
}

// The ground's push on both tires of an axle; its number beside it, standing at left, launching at right.
void LoadsPicture::addLoad(double x, double force, bool isNow) {
    const double apart = !isLaunching_ ? 0 : isNow ? 7 : -7;
    const double length = lengthOf(force);
    if (length > 1) {
        const SceneStroke stroke = isNow ? SceneStroke{&Theme::ink, SceneWeight::heavy}
                                         : SceneStroke{&Theme::muted, SceneWeight::strong, SceneDash::dashed};
        scene_.add(SceneArrow{.from = {{x, 0}, {apart, length + 2}}, .way = {0, -length}, .stroke = stroke});
    }
    scene_.write({.at = {{x, 0}, {apart + (isNow ? 10 : -10), kNumberDown}},
                  .lie = (isNow ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignTop,
                  .text = figureWithUnit(force, Quantity::force, units_),
                  .below = isNow ? tr("launching") : tr("standing"),
                  .font = isNow ? SceneFont::strong : SceneFont::body,
                  .ink = isNow ? &Theme::ink : &Theme::muted});
}

void LoadsPicture::addThrust() {
    const double radius = rear_.radius * camera_.scale;
    const double head = loadsStyle().arrowHead;
    const QPointF start(0.6 * radius, -0.13 * radius - 4);
    const double length = std::max(lengthOf(thrust_), 2 * head);
    scene_.add(SceneArrow{
        .from = {{0, 0}, start}, .way = {length, 0}, .stroke = {&Theme::instantCenter, SceneWeight::heavy}});
    scene_.write({.at = {{0, 0}, start + QPointF(length + 8, 0)},
                  .lie = Qt::AlignLeft | Qt::AlignVCenter,
                  .text = tr("thrust %1").arg(figureWithUnit(thrust_, Quantity::force, units_)),
                  .font = SceneFont::strong,
                  .ink = &Theme::ink});
}

QString LoadsPicture::whatIsDrawn() const {
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
    return words;
}

}  // namespace bolthole
