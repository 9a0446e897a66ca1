#include "widgets/pages/driveline/driveline_curves.h"

#include <QFocusEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <algorithm>
#include <cmath>

#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr int kCardGap = 8;
constexpr int kSidePad = 8;  // between card and plot

}  // namespace

DrivelineCurves::DrivelineCurves(QWidget* parent) : QWidget(parent), type_(std::make_unique<CardType>()) {
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::SizeVerCursor);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Driveline through travel"));
    setToolTip(tr("Drag to move the axle; Up, Down, Page Up, Page Down, Home, End; R for ride height"));
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, [this] {
        *type_ = CardType();
        layOut();
    });
}

void DrivelineCurves::showReading(const DrivelineReading& reading, const BenchState& state) {
    reading_ = &reading;
    span_ = travelSpan(state);
    units_ = state.style.units;
    outOfReach_ = outOfReach(state.trace);
    std::vector<DrivelineCardSpec> specs = drivelineCardSpecs(reading, units_);
    for (std::size_t card = 0; card < specs.size(); ++card) {
        if (card < cards_.size()) {
            cards_[card].setSpec(std::move(specs[card]));
        } else {
            cards_.emplace_back(std::move(specs[card]));
        }
        cards_[card].showReading(reading);
    }
    layOut();
    updateGeometry();
    showCursor(state);
}

void DrivelineCurves::showCursor(const BenchState& state) {
    travel_ = state.cursorTravel;
    if (reading_ != nullptr && reading_->isThere()) {
        cursor_ = reading_->rowAt(state.cursor);
        cursor_.travel = travel_;
        describeInWords();
    }
    update();
}

void DrivelineCurves::describeInWords() {
    QStringList parts;
    for (const DrivelineCurveCard& card : cards_) {
        parts << card.spokenValues(cursor_);
    }
    const QString values = cursor_.usable ? parts.join(QStringLiteral(", ")) : tr("out of reach");
    setAccessibleDescription(tr("At %1: %2").arg(travelInWords(travel_, units_), values));
}

// As many rows in every card as the one with most curves needs, so that all plots line up.
int DrivelineCurves::header() const {
    std::size_t rows = 2;
    for (const DrivelineCurveCard& card : cards_) {
        rows = std::max(rows, card.spec().curves.size());
    }
    return static_cast<int>(std::ceil(CardType::kTopPad + type_->titleMetrics.height() +
                                      2 * CardType::kRowGap +
                                      static_cast<double>(rows) * type_->bodyMetrics.height() + 6));
}

QRect DrivelineCurves::plotArea() const {
    return rect().adjusted(kSidePad, header(), -kSidePad, -type_->footer());
}

TravelOnScreen DrivelineCurves::onScreen() const {
    const QRect at = plotArea();
    return {span_, static_cast<double>(at.top()), static_cast<double>(at.top() + at.height())};
}

void DrivelineCurves::layOut() {
    double shares = 0;
    for (const DrivelineCurveCard& card : cards_) {
        shares += card.spec().share;
    }
    const QRectF plots = QRectF(plotArea());
    const double room = width() - kCardGap * (static_cast<double>(cards_.size()) - 1);
    double left = 0;
    for (DrivelineCurveCard& card : cards_) {
        const double wide = std::floor(room * card.spec().share / shares);
        card.place(QRectF(left, 0, wide, height()),
                   QRectF(left + kSidePad, plots.top(), wide - 2 * kSidePad, plots.height()), *type_);
        left += wide + kCardGap;
    }
    travelTicks_ = travelTicks(onScreen(), units_, travelTickSpacing(type_->quietMetrics.height()));
    update();
    emit plotAreaChanged(plotArea());
}

QSize DrivelineCurves::sizeHint() const {
    return {640, 330};
}

QSize DrivelineCurves::minimumSizeHint() const {
    return {460, 330};
}

void DrivelineCurves::paintEvent(QPaintEvent*) {
    if (reading_ == nullptr || !reading_->isThere()) {
        return;
    }
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const TravelOnScreen travel = onScreen();
    for (const DrivelineCurveCard& card : cards_) {
        card.paintFace(painter, *type_, travelTicks_, travel, outOfReach_, ring_);
        card.paintCurves(painter, *type_, travel);
    }
    painter.setPen(dashedPen(cursor_.usable ? theme().ink : theme().muted, 1.2, {1.2, 2.6}));
    const double y = std::floor(travel.position(travel_)) + 0.5;
    painter.drawLine(QPointF(0, y), QPointF(width(), y));
    for (const DrivelineCurveCard& card : cards_) {
        card.paintValues(painter, *type_, travel, cursor_);
    }
}

void DrivelineCurves::resizeEvent(QResizeEvent*) {
    layOut();
}

void DrivelineCurves::ask(double travel) {
    const double within = span_.clamp(travel);
    if (reading_ != nullptr && reading_->isThere() && within != travel_) {
        emit cursorMoved(within);
    }
}

void DrivelineCurves::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        ask(onScreen().travelAt(event->position().y()));
    } else {
        event->ignore();
    }
}

void DrivelineCurves::mouseMoveEvent(QMouseEvent* event) {
    if ((event->buttons() & Qt::LeftButton) != 0) {
        ask(onScreen().travelAt(event->position().y()));
    }
}

void DrivelineCurves::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        ask(0.0);
    }
}

void DrivelineCurves::keyPressEvent(QKeyEvent* event) {
    const bool plain = (event->modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier;
    const std::optional<double> travel = plain ? travelAfterKey(event->key(), travel_, span_) : std::nullopt;
    if (!travel) {
        QWidget::keyPressEvent(event);
        return;
    }
    setRing(true);
    ask(*travel);
}

// The ring is for the keyboard alone.
void DrivelineCurves::focusInEvent(QFocusEvent* event) {
    setRing(event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason ||
            event->reason() == Qt::ShortcutFocusReason);
}

void DrivelineCurves::focusOutEvent(QFocusEvent*) {
    setRing(false);
}

void DrivelineCurves::setRing(bool shown) {
    if (ring_ != shown) {
        ring_ = shown;
        update();
    }
}

}  // namespace bolthole
