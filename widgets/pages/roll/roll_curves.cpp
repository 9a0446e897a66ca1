#include "widgets/pages/roll/roll_curves.h"

#include <QFocusEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <algorithm>
#include <cmath>

#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr double kCardGap = 8;
constexpr double kKeyStep = 0.25 * kRadiansPerDegree;
constexpr double kPageStep = 1.0 * kRadiansPerDegree;
constexpr double kSnap = 0.03 * kRadiansPerDegree;  // nearer to no roll is none

}  // namespace

RollCurves::RollCurves(ImposedAxis axis, const QString& name, int cards, QWidget* parent)
    : QWidget(parent), axis_(axis), type_(std::make_unique<CardType>()) {
    for (int card = 0; card < cards; ++card) {
        cards_.emplace_back(axis);
    }
    setFocusPolicy(Qt::StrongFocus);
    setCursor(isRoll() ? Qt::SizeHorCursor : Qt::SizeVerCursor);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(name);
    setToolTip(isRoll()
                   ? tr("Drag to roll the axle; Left, Right, Page Up, Page Down, Home, End; 0 for none")
                   : tr("Drag to move the axle; Up, Down, Page Up, Page Down, Home, End; R for ride height"));
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, [this] {
        *type_ = CardType();
        layOut();
    });
}

void RollCurves::showCurves(std::vector<RollCurve> curves, const TravelSpan& span, double most, Units units) {
    for (std::size_t card = 0; card < cards_.size(); ++card) {
        cards_[card].show(std::move(curves[card]));
    }
    span_ = span;
    most_ = most;
    units_ = units;
    layOut();
}

void RollCurves::showCursor(double imposed, const QString& words, const std::vector<double>& values) {
    cursor_ = imposed;
    QStringList spoken;
    for (std::size_t card = 0; card < cards_.size(); ++card) {
        cards_[card].showCursor(values[card]);
        spoken << cards_[card].spokenValue();
    }
    setAccessibleDescription(tr("At %1: %2").arg(words, spoken.join(QStringLiteral(", "))));
    update();
}

QRect RollCurves::plotArea() const {
    return plotIn(QRectF(rect()), axis_, *type_).toRect();
}

void RollCurves::layOut() {
    const double count = static_cast<double>(cards_.size());
    const double wide = std::floor((width() - kCardGap * (count - 1)) / count);
    places_.clear();
    double left = 0;
    for (RollCard& card : cards_) {
        const QRectF place(left, 0, wide, height());
        QRectF plot = plotIn(place, axis_, *type_);
        plot.setTop(plotArea().top());
        plot.setBottom(plotArea().top() + plotArea().height());
        card.place(place, plot, *type_);
        places_.push_back(place);
        left += wide + kCardGap;
    }
    update();
    emit plotAreaChanged(plotArea());
}

ImposedOnScreen RollCurves::onScreen(const RollCard& card) const {
    const QRectF& plot = card.plot();
    if (isRoll()) {
        return {-most_, most_, plot.left(), plot.right()};
    }
    const TravelOnScreen travel{span_, plot.top(), plot.bottom()};
    return span_.bump > span_.droop
               ? ImposedOnScreen{span_.droop, span_.bump, travel.bottom, travel.top}
               : ImposedOnScreen{span_.droop - 1, span_.droop + 1, travel.bottom, travel.top};
}

// Whole degrees; or travel's own ticks, whose labels stand at the slider.
std::vector<ImposedTick> RollCurves::ticks() const {
    std::vector<ImposedTick> ticks;
    if (isRoll()) {
        const int most = static_cast<int>(std::floor(most_ / kRadiansPerDegree + 1e-9));
        for (int degree = -most; degree <= most; ++degree) {
            ticks.push_back({degree * kRadiansPerDegree, tickText(degree, 1) + (degree == most ? "°" : "")});
        }
        return ticks;
    }
    const QRect plots = plotArea();
    const TravelOnScreen travel{span_, static_cast<double>(plots.top()),
                                static_cast<double>(plots.top() + plots.height())};
    for (const TravelTick& tick :
         travelTicks(travel, units_, travelTickSpacing(type_->quietMetrics.height()))) {
        ticks.push_back({tick.travel, {}});
    }
    return ticks;
}

void RollCurves::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const std::vector<ImposedTick> marks = ticks();
    for (const RollCard& card : cards_) {
        card.paint(painter, *type_, marks, onScreen(card), cursor_, ring_);
    }
}

QSize RollCurves::sizeHint() const {
    return {640, isRoll() ? 216 : 300};
}

QSize RollCurves::minimumSizeHint() const {
    return {isRoll() ? 460 : 260, sizeHint().height()};
}

void RollCurves::resizeEvent(QResizeEvent*) {
    layOut();
}

void RollCurves::ask(double imposed) {
    const double within = isRoll() ? std::clamp(imposed, -most_, most_) : span_.clamp(imposed);
    const double asked = isRoll() && std::abs(within) < kSnap ? 0.0 : within;
    if (asked != cursor_) {
        emit cursorMoved(asked);
    }
}

// In the card under the pointer, or the last one left of it.
void RollCurves::askAt(QPointF position) {
    if (!isRoll()) {
        const QRectF& plot = cards_.front().plot();
        ask(TravelOnScreen{span_, plot.top(), plot.bottom()}.travelAt(position.y()));
        return;
    }
    std::size_t card = 0;
    while (card + 1 < cards_.size() && position.x() >= places_[card + 1].left()) {
        ++card;
    }
    ask(onScreen(cards_[card]).imposedAt(position.x()));
}

void RollCurves::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        askAt(event->position());
    } else {
        event->ignore();
    }
}

void RollCurves::mouseMoveEvent(QMouseEvent* event) {
    if ((event->buttons() & Qt::LeftButton) != 0) {
        askAt(event->position());
    }
}

void RollCurves::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        ask(0.0);
    }
}

std::optional<double> RollCurves::afterKey(int key) const {
    if (!isRoll()) {
        return travelAfterKey(key, cursor_, span_);
    }
    switch (key) {
        case Qt::Key_Left:
            return (std::ceil(cursor_ / kKeyStep - 1e-6) - 1) * kKeyStep;
        case Qt::Key_Right:
            return (std::floor(cursor_ / kKeyStep + 1e-6) + 1) * kKeyStep;
        case Qt::Key_PageDown:
            return cursor_ - kPageStep;
        case Qt::Key_PageUp:
            return cursor_ + kPageStep;
        case Qt::Key_Home:
            return -most_;
        case Qt::Key_End:
            return most_;
        case Qt::Key_0:
            return 0.0;
        default:
            return std::nullopt;
    }
}

void RollCurves::keyPressEvent(QKeyEvent* event) {
    const bool plain = (event->modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier;
    const std::optional<double> imposed = plain ? afterKey(event->key()) : std::nullopt;
    if (!imposed) {
        QWidget::keyPressEvent(event);
        return;
    }
    setRing(true);
    ask(*imposed);
}

// The ring is for the keyboard alone.
void RollCurves::focusInEvent(QFocusEvent* event) {
    setRing(event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason ||
            event->reason() == Qt::ShortcutFocusReason);
}

void RollCurves::focusOutEvent(QFocusEvent*) {
    setRing(false);
}

void RollCurves::setRing(bool shown) {
    if (ring_ != shown) {
        ring_ = shown;
        update();
    }
}

}  // namespace bolthole
