#include "widgets/pages/weights/weights_picture.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <array>
#include <cmath>

#include "widgets/pages/weights/weights_facts.h"
#include "widgets/scene/scene_painter.h"

namespace bolthole {

namespace {

// Of the drawing alone: nothing is computed from these. Lengths in m, or in wheelbases.
constexpr double kUsualTrack = 1.5;
constexpr double kBodyBeyondTrack = 0.3;
constexpr double kTail = 0.33;
constexpr double kNose = 0.28;
constexpr double kHousing = 0.14;
constexpr double kTube = 0.03;

constexpr double kSideRoom = 104;  // px left and right of the car for the ends' shares
constexpr double kLabelGap = 5;

// Room above and below the car for a tire's two lines.
double edgeRoom() {
    const SceneType& type = sceneScreenType();
    const QString any = QStringLiteral("0");
    return type.sizeOf(any, SceneFont::strong).height() + type.sizeOf(any, SceneFont::small).height() +
           2 * kLabelGap;
}

// m as points of a picture, finely.
QPolygonF flattened(const QPainterPath& path) {
    constexpr double kFine = 1000;  // Qt's curves are true to a fraction of a unit
    const QList<QPolygonF> polygons = path.toSubpathPolygons(QTransform::fromScale(kFine, kFine));
    QPolygonF points = polygons.isEmpty() ? QPolygonF() : polygons.constFirst();
    for (QPointF& point : points) {
        point /= kFine;
    }
    return points;
}

}  // namespace

PlanPicture::PlanPicture(QWidget* parent) : QWidget(parent) {
    setAccessibleName(tr("The car from above with its corner weights"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

PlanPicture::Plan PlanPicture::planOf(const Car& car, bool usable) {
    Plan plan;
    plan.wheelbase = car.wheelbase;
    plan.frontTrack = car.frontTrack.value_or(car.rearTrack.value_or(kUsualTrack));
    plan.rearTrack = car.rearTrack.value_or(plan.frontTrack);
    plan.frontRadius = car.frontTireRadius;
    plan.rearRadius = car.rearTireRadius;
    plan.corners = car.cornerWeights;
    plan.units = car.units;
    if (usable) {
        plan.figures = weightFigures(
            car.cornerWeights,
            {.wheelbase = car.wheelbase, .frontTrack = car.frontTrack, .rearTrack = car.rearTrack});
    }
    return plan;
}

void PlanPicture::showCar(const Car& car, bool usable) {
    plan_ = planOf(car, usable);
    setAccessibleDescription(spokenWords());
    update();
}

QString PlanPicture::spokenWords() const {
    if (!plan_.figures) {
        return {};
    }
    const CardNumbers numbers(plan_.units);
    const CornerWeights& corners = plan_.corners;
    return tr("left front %1, right front %2, left rear %3, right rear %4; CG %5 ahead of the rear axle")
        .arg(numbers.entered(corners.leftFront), numbers.entered(corners.rightFront),
             numbers.entered(corners.leftRear), numbers.entered(corners.rightRear),
             numbers.length(plan_.figures->cgAhead));
}

SideCamera PlanPicture::camera() const {
    const double length = (1 + kTail + kNose) * plan_.wheelbase;
    const double roomAlong = std::max(width() - 2 * kSideRoom, 40.0);
    const double roomAcross = std::max(height() - 2 * edgeRoom(), 40.0);
    const double scale = std::min(roomAlong / length, roomAcross / (2 * halfBody()));
    const double middle = (1 + kNose - kTail) / 2 * plan_.wheelbase;
    return {scale, {width() / 2.0 - middle * scale, height() / 2.0}};
}

double PlanPicture::halfBody() const {
    return (std::max(plan_.frontTrack, plan_.rearTrack) + kBodyBeyondTrack) / 2;
}

void PlanPicture::compose() {
    scene_.clear();
    if (!(plan_.wheelbase > 0) || !(plan_.rearTrack > 0) || !(plan_.frontTrack > 0)) {
        return;
    }
    addBody();
    addAxles();
    if (plan_.figures) {
        scene_.add(SceneLine{.from = QPointF(plan_.wheelbase, -plan_.frontTrack / 2),
                             .to = QPointF(0, plan_.rearTrack / 2),
                             .stroke = {&Theme::muted, SceneWeight::thin, SceneDash::dashed}});
    }
    const CornerWeights& corners = plan_.corners;
    const double front = plan_.frontTrack / 2;
    const double rear = plan_.rearTrack / 2;
    addTire({plan_.wheelbase, front}, plan_.frontRadius, tr("left front"), corners.leftFront);
    addTire({plan_.wheelbase, -front}, plan_.frontRadius, tr("right front"), corners.rightFront);
    addTire({0, rear}, plan_.rearRadius, tr("left rear"), corners.leftRear);
    addTire({0, -rear}, plan_.rearRadius, tr("right rear"), corners.rightRear);
    if (plan_.figures) {
        addEnds(*plan_.figures);
        addCenterOfGravity(*plan_.figures);
        nameGlass();
    }
}

// What the arcs in the outline are; left out where there is no room.
void PlanPicture::nameGlass() {
    const auto name = [this](double along, const QString& words) {
        scene_.label({.at = QPointF(along * plan_.wheelbase, -0.36 * halfBody()),
                      .text = words,
                      .ink = &Theme::muted,
                      .side = 0,
                      .gap = 4});
    };
    name(0.78, tr("windshield"));
    name(0.03, tr("rear window"));
}

// A tub with a rounder nose than tail, and the glass, so that front and rear are told apart.
void PlanPicture::addBody() {
    const double half = halfBody();
    const double base = plan_.wheelbase;
    const auto edge = [&](double along, double share) { return QPointF(along * base, share * half); };
    QPainterPath body(edge(-kTail, 0));
    body.lineTo(edge(-kTail, 0.78));
    body.quadTo(edge(-kTail, 1), edge(-kTail + 0.06, 1));
    body.lineTo(edge(1.02, 1));
    body.cubicTo(edge(1.16, 1), edge(1 + kNose, 0.85), edge(1 + kNose, 0));
    body.cubicTo(edge(1 + kNose, -0.85), edge(1.16, -1), edge(1.02, -1));
    body.lineTo(edge(-kTail + 0.06, -1));
    body.quadTo(edge(-kTail, -1), edge(-kTail, -0.78));
    body.closeSubpath();
    ScenePath& outline = scene_.addPath(flattened(body), true);
    outline.stroke = {&Theme::metal, SceneWeight::thin};
    outline.fill = {&Theme::canvas};
    for (const auto& [end, middle, share] : {std::array{0.70, 0.80, 0.72}, std::array{0.04, 0.0, 0.68}}) {
        QPainterPath glass(edge(end, share));
        glass.quadTo(edge(middle, 0), edge(end, -share));
        scene_.addPath(flattened(glass), false).stroke = {&Theme::metal, SceneWeight::thin, SceneDash::solid,
                                                          0.4};
    }
    scene_.add(SceneLine{.from = edge(-kTail - 0.02, 0),
                         .to = edge(1 + kNose + 0.02, 0),
                         .stroke = {&Theme::muted, SceneWeight::hair, SceneDash::dashDot}});
}

void PlanPicture::addAxles() {
    scene_.add(SceneLine{.from = QPointF(plan_.wheelbase, plan_.frontTrack / 2),
                         .to = QPointF(plan_.wheelbase, -plan_.frontTrack / 2),
                         .stroke = {&Theme::metal, SceneWeight::medium}});
    scene_.add(SceneTube{.from = {0, plan_.rearTrack / 2}, .to = {0, -plan_.rearTrack / 2}, .radius = kTube});
    scene_.add(SceneHousing{.center = {0, 0}, .radius = kHousing});
}

// Its words outside the body, over the left tires and under the right ones.
void PlanPicture::addTire(QPointF center, double radius, const QString& name, double weight) {
    scene_.add(SceneTire{.center = center, .size = {2 * radius, kDrawnTireWidth}});
    if (!plan_.figures) {
        return;
    }
    const CardNumbers numbers(plan_.units);
    const bool isLeft = center.y() > 0;
    scene_.write(
        {.at = {{center.x(), isLeft ? halfBody() : -halfBody()}, {0, isLeft ? -kLabelGap : kLabelGap}},
         .lie = Qt::AlignHCenter | (isLeft ? Qt::AlignBottom : Qt::AlignTop),
         .text = numbers.entered(weight),
         .below = QStringLiteral("%1 %2").arg(name, numbers.percent(100 * weight / plan_.figures->total)),
         .font = SceneFont::strong,
         .ink = &Theme::ink});
}

// What the ends carry before and behind the car; the sides' shares between the tires' words, where there is
// room.
void PlanPicture::addEnds(const WeightFigures& figures) {
    const CardNumbers numbers(plan_.units);
    const auto share = [&](const QString& name, double percent) {
        return QStringLiteral("%1 %2").arg(name, numbers.percent(percent));
    };
    scene_.write({.at = {{-kTail * plan_.wheelbase, 0}, {-10, -4}},
                  .lie = Qt::AlignRight | Qt::AlignBottom,
                  .text = share(tr("rear"), 100 - figures.frontPercent),
                  .below = numbers.mass(figures.rear),
                  .font = SceneFont::strong,
                  .ink = &Theme::ink});
    scene_.write({.at = {{(1 + kNose) * plan_.wheelbase, 0}, {10, -4}},
                  .lie = Qt::AlignLeft | Qt::AlignBottom,
                  .text = share(tr("front"), figures.frontPercent),
                  .below = numbers.mass(figures.front),
                  .font = SceneFont::strong,
                  .ink = &Theme::ink});
    for (const bool isLeft : {true, false}) {
        scene_.write({.at = {{plan_.wheelbase / 2, isLeft ? halfBody() : -halfBody()},
                             {0, isLeft ? -kLabelGap : kLabelGap}},
                      .lie = Qt::AlignHCenter | (isLeft ? Qt::AlignBottom : Qt::AlignTop),
                      .text = isLeft ? share(tr("left"), figures.leftPercent)
                                     : share(tr("right"), 100 - figures.leftPercent),
                      .font = SceneFont::strong,
                      .ink = &Theme::ink,
                      .isOptional = true});
    }
}

QString PlanPicture::centerWords(const WeightFigures& figures) const {
    const CardNumbers numbers(plan_.units);
    const QString ahead = tr("CG %1 ahead of the rear axle").arg(numbers.length(figures.cgAhead));
    return figures.cgLeft ? QStringLiteral("%1, %2").arg(ahead, numbers.sideways(*figures.cgLeft))
                          : tr("%1, lateral place not known").arg(ahead);
}

void PlanPicture::addCenterOfGravity(const WeightFigures& figures) {
    const QPointF center(figures.cgAhead, figures.cgLeft.value_or(0));
    scene_.add(SceneCenter{.at = center, .kind = CenterKind::gravity});
    scene_.label({.at = center, .text = centerWords(figures), .side = 2, .gap = 12});
    scene_.label(
        {.at = QPointF(0.8 * plan_.wheelbase, -0.3 * plan_.frontTrack),
         .text = tr("cross weight %1").arg(CardNumbers(plan_.units).percent(figures.diagonalPercent)),
         .side = 5,
         .gap = 4});
}

void PlanPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    compose();
    paintScene(painter, scene_, {camera(), QRectF(rect())}, SceneStyle::screen(), &labels_);
}

}  // namespace bolthole
