#include "widgets/scales/travel_slider.h"

#include <QAccessible>
#include <QAccessibleWidget>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "widgets/kit/kept_words.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr int kTrackWidth = 5;
constexpr int kHandleWidth = 20;
constexpr int kHandleHeight = 10;
constexpr int kTickLength = 6;
constexpr int kRightMargin = 3;
constexpr int kLabelGap = 3;
constexpr int kWheelStep = 120;  // eighths of a degree: one notch

/// Speaks the slider to a screen reader: role, words and value.
class SliderVoice : public QAccessibleWidget, public QAccessibleValueInterface {
  public:
    explicit SliderVoice(TravelSlider* slider) : QAccessibleWidget(slider, QAccessible::Slider) {}

    void* interface_cast(QAccessible::InterfaceType type) override {
        if (type == QAccessible::ValueInterface) {
            return static_cast<QAccessibleValueInterface*>(this);
        }
        return QAccessibleWidget::interface_cast(type);
    }
    [[nodiscard]] QString text(QAccessible::Text kind) const override {
        return kind == QAccessible::Value ? slider()->valueText() : QAccessibleWidget::text(kind);
    }
    [[nodiscard]] QVariant currentValue() const override { return slider()->travel(); }
    void setCurrentValue(const QVariant& value) override { slider()->ask(value.toDouble()); }
    [[nodiscard]] QVariant maximumValue() const override { return slider()->span().bump; }
    [[nodiscard]] QVariant minimumValue() const override { return slider()->span().droop; }
    [[nodiscard]] QVariant minimumStepSize() const override { return slider()->span().rowStep(); }

  private:
    [[nodiscard]] TravelSlider* slider() const { return static_cast<TravelSlider*>(object()); }
};

QAccessibleInterface* giveVoice(const QString&, QObject* object) {
    auto* slider = qobject_cast<TravelSlider*>(object);
    return slider == nullptr ? nullptr : new SliderVoice(slider);
}

}  // namespace

TravelSlider::TravelSlider(QWidget* parent) : QWidget(parent) {
    [[maybe_unused]] static const bool installed = [] {
        QAccessible::installFactory(giveVoice);
        return true;
    }();
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Expanding);
    setAccessibleName(tr("Travel"));
    setAccessibleDescription(tr("Height of the axle in its travel, full bump at the top"));
    setToolTip(
        tr("Drag to move the axle through its travel.\n"
           "Up and Down: one step; Page Up and Page Down: ten; Home: full bump; End: full droop.\n"
           "R or a double click: ride height."));
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

void TravelSlider::showTrace(const BenchState& state) {
    span_ = travelSpan(state);
    outOfReach_ = outOfReach(state.trace);
    units_ = state.style.units;
    showCursor(state);
    update();
}

void TravelSlider::showCursor(const BenchState& state) {
    const bool moved = travel_ != state.cursorTravel;
    travel_ = state.cursorTravel;
    reachable_ = state.cursor.usable;
    if (moved) {
        announce();
    }
    update();
}

void TravelSlider::announce() {
    if (QAccessible::isActive()) {
        QAccessibleValueChangeEvent event(this, travel_);
        QAccessible::updateAccessibility(&event);
    }
}

QString TravelSlider::valueText() const {
    const QString words = travelInWords(travel_, units_);
    return reachable_ ? words : tr("%1, out of reach").arg(words);
}

void TravelSlider::ask(double travel) {
    const double within = span_.clamp(travel);
    if (within != travel_) {
        emit cursorMoved(within);
    }
}

void TravelSlider::alignTrack(const QRect& plots) {
    if (plots_ != plots) {
        plots_ = plots;
        update();
    }
}

QSize TravelSlider::sizeHint() const {
    const auto widthOf = [font = textFont(TextSize::small)](const QString& text) {
        return static_cast<int>(std::ceil(widthOfLine(font, text)));
    };
    const int words = std::max(widthOf(tr("droop")), widthOf(tr("bump")));
    const int labels = widthOf(QStringLiteral("+100")) + kLabelGap + kTickLength + 5;
    return {std::max(labels + kHandleWidth / 2 + kTrackWidth / 2, words + 2) + kRightMargin, 320};
}

QSize TravelSlider::minimumSizeHint() const {
    return {sizeHint().width(), 120};
}

QRect TravelSlider::track() const {
    const int margin = QFontMetrics(textFont(TextSize::small)).height() + kHandleHeight;
    const int top = plots_.isEmpty() ? margin : plots_.top();
    const int bottom = plots_.isEmpty() ? height() - margin : plots_.top() + plots_.height();
    const int center = width() - kRightMargin - kHandleWidth / 2;
    return {center - kTrackWidth / 2, top, kTrackWidth, std::max(bottom - top, 1)};
}

TravelOnScreen TravelSlider::onScreen() const {
    const QRect at = track();
    return {span_, static_cast<double>(at.top()), static_cast<double>(at.top() + at.height())};
}

void TravelSlider::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(textFont(TextSize::small));
    paintTrack(painter);
    paintTicks(painter);
    paintEndWords(painter);
    paintHandle(painter);
}

void TravelSlider::paintTrack(QPainter& painter) const {
    const TravelOnScreen axis = onScreen();
    const QRectF at = track();
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme().dark ? theme().border.lighter(125) : theme().border.darker(108));
    painter.drawRoundedRect(at, 2.5, 2.5);
    for (const OutOfReach& stretch : outOfReach_) {
        const double top = axis.position(stretch.to);
        const double bottom = axis.position(stretch.from);
        painter.fillRect(QRectF(at.left() - 1, top, at.width() + 2, bottom - top), theme().window);
        QPen dashes(theme().muted, 1.6);
        dashes.setDashPattern({2.0, 2.0});
        dashes.setCapStyle(Qt::FlatCap);
        painter.setPen(dashes);
        painter.drawLine(QPointF(at.center().x(), top), QPointF(at.center().x(), bottom));
        painter.setPen(Qt::NoPen);
    }
}

void TravelSlider::paintTicks(QPainter& painter) const {
    const TravelOnScreen axis = onScreen();
    const QFontMetricsF metrics(painter.font());
    const double tickEnd = track().left() - 1.0;
    painter.setPen(QPen(theme().muted, 1));
    for (const TravelTick& tick : travelTicks(axis, units_, travelTickSpacing(metrics.height()))) {
        const double y = std::round(axis.position(tick.travel)) + 0.5;
        painter.drawLine(QPointF(tickEnd - kTickLength, y), QPointF(tickEnd, y));
        const QRectF box(0, y - metrics.height() / 2, tickEnd - kTickLength - kLabelGap, metrics.height());
        drawLine(painter, box, Qt::AlignRight | Qt::AlignVCenter, tick.label);
    }
}

void TravelSlider::paintEndWords(QPainter& painter) const {
    const QFontMetricsF metrics(painter.font());
    const QRectF at = track();
    const double gap = kHandleHeight / 2.0 + 3;
    const double right = width() - 2.0;
    painter.setPen(theme().muted);
    drawLine(painter, QRectF(0, at.top() - gap - metrics.height(), right, metrics.height()),
             Qt::AlignRight | Qt::AlignVCenter, tr("bump"));
    drawLine(painter, QRectF(0, at.bottom() + gap, right, metrics.height()),
             Qt::AlignRight | Qt::AlignVCenter, tr("droop"));
}

void TravelSlider::paintHandle(QPainter& painter) const {
    const double y = onScreen().position(travel_);
    const QRectF handle(track().center().x() + 0.5 - kHandleWidth / 2.0, y - kHandleHeight / 2.0,
                        kHandleWidth, kHandleHeight);
    if (hasFocus()) {
        painter.setPen(QPen(theme().focus, 2));
        painter.setBrush(theme().window);
        painter.drawRoundedRect(handle.adjusted(-2, -2, 2, 2), 5.5, 5.5);
    }
    painter.setPen(reachable_ ? QPen(Qt::NoPen) : QPen(theme().ink, 1.5));
    painter.setBrush(reachable_ ? theme().ink : theme().window);
    painter.drawRoundedRect(handle, 4, 4);
}

void TravelSlider::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) {
        event->ignore();
        return;
    }
    ask(onScreen().travelAt(event->position().y()));
}

void TravelSlider::mouseMoveEvent(QMouseEvent* event) {
    if ((event->buttons() & Qt::LeftButton) != 0) {
        ask(onScreen().travelAt(event->position().y()));
    }
}

void TravelSlider::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton) {
        ask(0.0);
    }
}

void TravelSlider::keyPressEvent(QKeyEvent* event) {
    const bool plain = (event->modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier;
    const std::optional<double> travel = plain ? travelAfterKey(event->key(), travel_, span_) : std::nullopt;
    if (!travel) {
        QWidget::keyPressEvent(event);
        return;
    }
    ask(*travel);
}

// Only a focused slider takes the wheel: a hand that scrolls the page must not move the axle.
void TravelSlider::wheelEvent(QWheelEvent* event) {
    if (!hasFocus()) {
        event->ignore();
        return;
    }
    wheelRest_ += event->angleDelta().y();
    const int notches = wheelRest_ / kWheelStep;
    wheelRest_ -= notches * kWheelStep;
    if (notches != 0) {
        ask(*travelAfterKey(notches > 0 ? Qt::Key_Up : Qt::Key_Down, travel_, span_));
    }
    event->accept();
}

void TravelSlider::changeEvent(QEvent* event) {
    if (event->type() == QEvent::FontChange) {
        updateGeometry();
    }
    QWidget::changeEvent(event);
}

}  // namespace bolthole
