#include "widgets/pages/springs/spring_curves.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <algorithm>
#include <cmath>

#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr double kGap = 8;      // between cards
constexpr double kSidePad = 9;  // between card and plot

}  // namespace

SpringCurves::SpringCurves(QWidget* parent) : QWidget(parent), type_(std::make_unique<CardType>()) {
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::SizeVerCursor);
    setMinimumHeight(300);
    setAccessibleName(tr("Curves of the springs through travel"));
    setStatusTip(tr("Drag to move the axle; Up, Down, Page Up, Page Down, Home, End; R for ride height"));
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, [this] {
        *type_ = CardType();
        update();
    });
}

void SpringCurves::show(SpringCurveData wanted) {
    const bool afresh = wanted.part != data_.part || wanted.units != data_.units;
    for (std::size_t card = 0; card < cards_.size(); ++card) {
        cards_[card].show(wanted.cards[card], wanted.units, afresh);
    }
    data_ = std::move(wanted);
    describeInWords();
    update();
}

void SpringCurves::describeInWords() {
    QStringList parts;
    for (const SpringCurveCard& card : cards_) {
        parts << card.spokenValues();
    }
    setAccessibleDescription(tr("At %1: %2")
                                 .arg(travelInWords(data_.cursor, data_.units),
                                      parts.isEmpty() ? tr("no figures") : parts.join(QStringLiteral(", "))));
}

double SpringCurves::gutter() const {
    return type_->quietMetrics.horizontalAdvance(QStringLiteral("−100")) + 8;
}

// Room for as many keys as the card with the most curves has.
int SpringCurves::header() const {
    std::size_t most = 1;
    for (const SpringCardData& card : data_.cards) {
        most = std::max(most, card.curves.size());
    }
    return static_cast<int>(std::ceil(CardType::kTopPad + type_->titleMetrics.height() + CardType::kRowGap +
                                      static_cast<double>(most) * type_->bodyMetrics.height() + 9));
}

QRectF SpringCurves::plotArea() const {
    return QRectF(rect()).adjusted(gutter() + kSidePad, header(), -kSidePad, -type_->footer());
}

TravelOnScreen SpringCurves::onScreen() const {
    const QRectF at = plotArea();
    return {data_.span, at.top(), at.bottom()};
}

void SpringCurves::placeCards() {
    const auto count = static_cast<double>(cards_.size());
    const double width = (this->width() - gutter() - kGap * (count - 1)) / count;
    const QRectF plots = plotArea();
    double left = gutter();
    for (SpringCurveCard& card : cards_) {
        card.place(QRectF(left, 0, width, height()),
                   QRectF(left + kSidePad, plots.top(), width - 2 * kSidePad, plots.height()), *type_);
        left += width + kGap;
    }
}

void SpringCurves::paintTravelLabels(QPainter& painter) const {
    painter.setFont(type_->quiet);
    painter.setPen(theme().muted);
    const double height = type_->quietMetrics.height();
    for (const TravelTick& tick : travelTicks(onScreen(), data_.units, travelTickSpacing(height))) {
        const double y = onScreen().position(tick.travel);
        painter.drawText(QRectF(0, y - height / 2, gutter() - 5, height), Qt::AlignRight | Qt::AlignVCenter,
                         tick.label);
    }
}

void SpringCurves::paintEvent(QPaintEvent*) {
    placeCards();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintTravelLabels(painter);
    for (const SpringCurveCard& card : cards_) {
        card.paint(painter, *type_, onScreen(), data_.travel, data_.past, data_.cursor);
    }
    QPen dots(theme().ink, 1.2);
    dots.setDashPattern({1.2, 2.6});
    dots.setCapStyle(Qt::FlatCap);
    painter.setPen(dots);
    const double y = std::floor(onScreen().position(data_.cursor)) + 0.5;
    painter.drawLine(QPointF(gutter(), y), QPointF(width(), y));
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(theme().focus, 2));
        painter.drawRoundedRect(QRectF(rect()).adjusted(gutter() + 1, 1, -1, -1), 6, 6);
    }
}

void SpringCurves::ask(double travel) {
    const double within = data_.span.clamp(travel);
    if (within != data_.cursor) {
        emit cursorMoved(within);
    }
}

void SpringCurves::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) {
        event->ignore();
        return;
    }
    ask(onScreen().travelAt(event->position().y()));
}

void SpringCurves::mouseMoveEvent(QMouseEvent* event) {
    if ((event->buttons() & Qt::LeftButton) != 0) {
        ask(onScreen().travelAt(event->position().y()));
    }
}

void SpringCurves::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        ask(0.0);
    }
}

void SpringCurves::keyPressEvent(QKeyEvent* event) {
    const bool plain = (event->modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier;
    const std::optional<double> travel =
        plain ? travelAfterKey(event->key(), data_.cursor, data_.span) : std::nullopt;
    if (!travel) {
        QWidget::keyPressEvent(event);
        return;
    }
    ask(*travel);
}

}  // namespace bolthole
