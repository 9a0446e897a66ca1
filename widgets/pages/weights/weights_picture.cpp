#include "widgets/pages/weights/weights_picture.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <array>
#include <cmath>

#include "widgets/kit/label_placer.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/weights/weights_facts.h"

namespace bolthole {

namespace {

// Of the drawing alone: nothing is computed from these. Lengths in m, or in wheelbases.
constexpr double kUsualTrack = 1.5;
constexpr double kTireWidth = 0.22;
constexpr double kBodyBeyondTrack = 0.3;
constexpr double kTail = 0.33;
constexpr double kNose = 0.28;
constexpr double kHousing = 0.14;

constexpr double kSideRoom = 104;  // px left and right of the car for the ends' shares
constexpr double kMarkSize = 9;
constexpr double kLabelGap = 5;

double lineHeight() {
    return QFontMetricsF(textFont(TextSize::body, true)).height();
}

double smallLineHeight() {
    return QFontMetricsF(textFont(TextSize::small)).height();
}

// Room above and below the car for a tire's two lines.
double edgeRoom() {
    return lineHeight() + smallLineHeight() + 2 * kLabelGap;
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
        .arg(numbers.mass(corners.leftFront), numbers.mass(corners.rightFront),
             numbers.mass(corners.leftRear), numbers.mass(corners.rightRear),
             numbers.length(plan_.figures->cgAhead));
}

double PlanPicture::scale() const {
    const double length = (1 + kTail + kNose) * plan_.wheelbase;
    const double across = std::max(plan_.frontTrack, plan_.rearTrack) + kBodyBeyondTrack;
    const double roomAlong = std::max(width() - 2 * kSideRoom, 40.0);
    const double roomAcross = std::max(height() - 2 * edgeRoom(), 40.0);
    return std::min(roomAlong / length, roomAcross / across);
}

QPointF PlanPicture::placeOf(double forward, double left) const {
    const double middle = (1 + kNose - kTail) / 2 * plan_.wheelbase;
    return {width() / 2.0 + (forward - middle) * scale(), height() / 2.0 - left * scale()};
}

/// One painting of the picture.
class PlanPicture::Drawing {
  public:
    explicit Drawing(PlanPicture& picture)
        : picture_(picture),
          plan_(picture.plan_),
          painter_(&picture),
          numbers_(plan_.units),
          placer_(QRectF(picture.rect())) {
        painter_.setRenderHint(QPainter::Antialiasing);
    }

    void draw();

  private:
    struct Tire {
        QString name;
        double forward;
        double left;
        double radius;
        double weight;
    };
    [[nodiscard]] std::array<Tire, 4> tires() const;
    [[nodiscard]] QPointF at(double forward, double left) const { return picture_.placeOf(forward, left); }
    void drawBody();
    void drawAxles();
    void drawTire(const Tire& tire);
    void labelTire(const Tire& tire);
    void labelEnd(const QString& name, double percent, double weight, double forward, bool toRight);
    void labelSide(const QString& name, double percent, bool above);
    void drawDiagonal();
    void drawCenterOfGravity();
    void writeTwoLines(const QRectF& box, const QString& bold, const QString& small);
    void chip(const QRectF& box, const QString& text);
    [[nodiscard]] QString centerWords() const;

    PlanPicture& picture_;
    const Plan& plan_;
    QPainter painter_;
    CardNumbers numbers_;
    LabelPlacer placer_;
};

void PlanPicture::Drawing::draw() {
    picture_.labels_.clear();
    if (!(plan_.wheelbase > 0) || !(plan_.rearTrack > 0) || !(plan_.frontTrack > 0)) {
        return;
    }
    drawBody();
    drawAxles();
    if (plan_.figures) {
        drawDiagonal();
    }
    for (const Tire& tire : tires()) {
        drawTire(tire);
    }
    if (plan_.figures) {
        for (const Tire& tire : tires()) {
            labelTire(tire);
        }
        const WeightFigures& figures = *plan_.figures;
        labelEnd(tr("rear"), 100 - figures.frontPercent, figures.rear, -kTail * plan_.wheelbase, false);
        labelEnd(tr("front"), figures.frontPercent, figures.front, (1 + kNose) * plan_.wheelbase, true);
        labelSide(tr("left"), figures.leftPercent, true);
        labelSide(tr("right"), 100 - figures.leftPercent, false);
        drawCenterOfGravity();
    }
}

std::array<PlanPicture::Drawing::Tire, 4> PlanPicture::Drawing::tires() const {
    const double front = plan_.frontTrack / 2;
    const double rear = plan_.rearTrack / 2;
    const CornerWeights& corners = plan_.corners;
    return {{{tr("left front"), plan_.wheelbase, front, plan_.frontRadius, corners.leftFront},
             {tr("right front"), plan_.wheelbase, -front, plan_.frontRadius, corners.rightFront},
             {tr("left rear"), 0, rear, plan_.rearRadius, corners.leftRear},
             {tr("right rear"), 0, -rear, plan_.rearRadius, corners.rightRear}}};
}

// A tub with a rounder nose than tail, and the glass, so that front and rear are told apart.
void PlanPicture::Drawing::drawBody() {
    const double half = (std::max(plan_.frontTrack, plan_.rearTrack) + kBodyBeyondTrack) / 2;
    const double base = plan_.wheelbase;
    const auto edge = [&](double along, double share) { return at(along * base, share * half); };
    QPainterPath body(edge(-kTail, 0));
    body.lineTo(edge(-kTail, 0.78));
    body.quadTo(edge(-kTail, 1), edge(-kTail + 0.06, 1));
    body.lineTo(edge(1.02, 1));
    body.cubicTo(edge(1.16, 1), edge(1 + kNose, 0.85), edge(1 + kNose, 0));
    body.cubicTo(edge(1 + kNose, -0.85), edge(1.16, -1), edge(1.02, -1));
    body.lineTo(edge(-kTail + 0.06, -1));
    body.quadTo(edge(-kTail, -1), edge(-kTail, -0.78));
    body.closeSubpath();
    painter_.setPen(roundPen(theme().metal, 1.4));
    painter_.setBrush(theme().canvas);
    painter_.drawPath(body);
    painter_.setPen(roundPen(theme().grid.darker(theme().dark ? 70 : 115), 1.2));
    painter_.setBrush(Qt::NoBrush);
    QPainterPath glass(edge(0.70, 0.72));
    glass.quadTo(edge(0.80, 0), edge(0.70, -0.72));
    glass.moveTo(edge(0.04, 0.68));
    glass.quadTo(edge(0.00, 0), edge(0.04, -0.68));
    painter_.drawPath(glass);
    painter_.setPen(dashedPen(theme().muted, 1, {10, 4, 2, 4}));
    painter_.drawLine(edge(-kTail - 0.02, 0), edge(1 + kNose + 0.02, 0));
}

void PlanPicture::Drawing::drawAxles() {
    painter_.setPen(roundPen(theme().metal, 1.6));
    painter_.drawLine(at(plan_.wheelbase, plan_.frontTrack / 2), at(plan_.wheelbase, -plan_.frontTrack / 2));
    painter_.setPen(roundPen(theme().metal, 4));
    painter_.drawLine(at(0, plan_.rearTrack / 2), at(0, -plan_.rearTrack / 2));
    const double radius = kHousing * picture_.scale();
    painter_.setPen(roundPen(theme().metal, 1.4));
    painter_.setBrush(theme().metalFill);
    painter_.drawEllipse(at(0, 0), 1.2 * radius, radius);
}

void PlanPicture::Drawing::drawTire(const Tire& tire) {
    const QPointF center = at(tire.forward, tire.left);
    const double length = tire.radius * picture_.scale();
    const double half = kTireWidth / 2 * picture_.scale();
    const QRectF box(center - QPointF(length, half), center + QPointF(length, half));
    painter_.setPen(roundPen(theme().metal, 1.4));
    painter_.setBrush(theme().metalFill);
    painter_.drawRoundedRect(box, half / 2, half / 2);
    placer_.take(box);
}

void PlanPicture::Drawing::writeTwoLines(const QRectF& box, const QString& bold, const QString& small) {
    painter_.setPen(theme().ink);
    painter_.setFont(textFont(TextSize::body, true));
    painter_.drawText(box, Qt::AlignHCenter | Qt::AlignTop, bold);
    painter_.setPen(theme().muted);
    painter_.setFont(textFont(TextSize::small));
    painter_.drawText(box, Qt::AlignHCenter | Qt::AlignBottom, small);
    placer_.take(box);
    picture_.labels_.push_back(box);
}

// Outside the body, over the left tires and under the right ones.
void PlanPicture::Drawing::labelTire(const Tire& tire) {
    const QString bold = numbers_.mass(tire.weight);
    const QString small =
        QStringLiteral("%1 %2").arg(tire.name, numbers_.percent(100 * tire.weight / plan_.figures->total));
    const double width = std::max(QFontMetricsF(textFont(TextSize::body, true)).horizontalAdvance(bold),
                                  QFontMetricsF(textFont(TextSize::small)).horizontalAdvance(small)) +
                         8;
    const double tall = lineHeight() + smallLineHeight();
    const double half = (std::max(plan_.frontTrack, plan_.rearTrack) + kBodyBeyondTrack) / 2;
    const QPointF edge = at(tire.forward, tire.left > 0 ? half : -half);
    const double top = tire.left > 0 ? edge.y() - kLabelGap - tall : edge.y() + kLabelGap;
    writeTwoLines({edge.x() - width / 2, top, width, tall}, bold, small);
}

void PlanPicture::Drawing::labelEnd(const QString& name, double percent, double weight, double forward,
                                    bool toRight) {
    const double tall = lineHeight() + smallLineHeight();
    const double width = kSideRoom - 12;
    const QPointF edge = at(forward, 0) + QPointF(toRight ? 10 : -10 - width, -tall - 4);
    writeTwoLines({edge, QSizeF(width, tall)}, QStringLiteral("%1 %2").arg(name, numbers_.percent(percent)),
                  numbers_.mass(weight));
}

// Between the tires' labels, where there is room.
void PlanPicture::Drawing::labelSide(const QString& name, double percent, bool above) {
    const QString text = QStringLiteral("%1 %2").arg(name, numbers_.percent(percent));
    const double width = QFontMetricsF(textFont(TextSize::body, true)).horizontalAdvance(text) + 8;
    const double half = (std::max(plan_.frontTrack, plan_.rearTrack) + kBodyBeyondTrack) / 2;
    const QPointF edge = at(plan_.wheelbase / 2, above ? half : -half);
    const QRectF box(edge.x() - width / 2, above ? edge.y() - kLabelGap - lineHeight() : edge.y() + kLabelGap,
                     width, lineHeight());
    const auto covers = [&box](const QRectF& other) { return other.intersects(box); };
    if (std::ranges::any_of(picture_.labels_, covers)) {
        return;
    }
    painter_.setPen(theme().ink);
    painter_.setFont(textFont(TextSize::body, true));
    painter_.drawText(box, Qt::AlignCenter, text);
    placer_.take(box);
    picture_.labels_.push_back(box);
}

void PlanPicture::Drawing::drawDiagonal() {
    painter_.setPen(dashedPen(theme().muted, 1.2, {4, 4}));
    painter_.drawLine(at(plan_.wheelbase, -plan_.frontTrack / 2), at(0, plan_.rearTrack / 2));
}

void PlanPicture::Drawing::chip(const QRectF& box, const QString& text) {
    if (box.isNull()) {
        return;
    }
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(faded(theme().canvas, 0.9));
    painter_.drawRoundedRect(box, 3, 3);
    painter_.setPen(theme().ink);
    painter_.drawText(box, Qt::AlignCenter, text);
    picture_.labels_.push_back(box);
}

QString PlanPicture::Drawing::centerWords() const {
    const WeightFigures& figures = *plan_.figures;
    const QString ahead = tr("CG %1 ahead of the rear axle").arg(numbers_.length(figures.cgAhead));
    return figures.cgLeft ? QStringLiteral("%1, %2").arg(ahead, numbers_.sideways(*figures.cgLeft))
                          : tr("%1, lateral place not known").arg(ahead);
}

// Quartered circle: the usual mark of a center of mass in engineering drawing.
void PlanPicture::Drawing::drawCenterOfGravity() {
    const WeightFigures& figures = *plan_.figures;
    const QPointF center = at(figures.cgAhead, figures.cgLeft.value_or(0));
    const QRectF box(center - QPointF(kMarkSize, kMarkSize), QSizeF(2 * kMarkSize, 2 * kMarkSize));
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(theme().canvas);
    painter_.drawEllipse(box);
    painter_.setBrush(theme().reference);
    painter_.drawPie(box, 0, 90 * 16);
    painter_.drawPie(box, 180 * 16, 90 * 16);
    painter_.setBrush(Qt::NoBrush);
    painter_.setPen(roundPen(theme().reference, 1.5));
    painter_.drawEllipse(box);
    placer_.take(box);
    painter_.setFont(textFont(TextSize::small));
    const QFontMetricsF metrics(painter_.font());
    const QString words = centerWords();
    chip(placer_.place(center, metrics.size(0, words) + QSizeF(8, 2), kMarkSize + 3, 2), words);
    const QString diagonal = tr("cross weight %1").arg(numbers_.percent(figures.diagonalPercent));
    chip(placer_.place(at(0.8 * plan_.wheelbase, -0.3 * plan_.frontTrack),
                       metrics.size(0, diagonal) + QSizeF(8, 2), 4, 5),
         diagonal);
}

void PlanPicture::paintEvent(QPaintEvent*) {
    Drawing(*this).draw();
}

}  // namespace bolthole
