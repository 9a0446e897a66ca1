#include "widgets/pages/launch/click_stepper.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "geometry/car/fields.h"
#include "geometry/car/numbers.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

constexpr int kClickWidth = 34;  // px
constexpr int kStepWidth = 26;
constexpr int kRepeatAfter = 400;  // ms

}  // namespace

std::optional<ClickRange> clickRange(const DampingWay& way) {
    return way.force.empty() ? std::nullopt
                             : std::optional(ClickRange{way.clickOf(0), way.clickOf(way.force.size() - 1)});
}

const DampingWay* wayOf(const Car& car, const FieldId& click) {
    const bool isFront = click.field == Field::frontBumpClick || click.field == Field::frontReboundClick;
    const SuspensionPart* part = findSpring(car, click.item);
    if (!isFront && part == nullptr) {
        return nullptr;
    }
    const std::optional<Damping>& damping = isFront ? car.launch.front.damping : part->damping;
    if (!damping) {
        return nullptr;
    }
    const bool isBump = click.field == Field::frontBumpClick || click.field == Field::bumpClick;
    return isBump ? &damping->bump : &damping->rebound;
}

ClickStepper::ClickStepper(SheetHub& hub, const FieldId& click, const QString& label, QWidget* parent)
    : QWidget(parent),
      hub_(hub),
      click_(click),
      field_(hub.makeField(click, this)),
      was_(new ToneLabel(ToneLabel::Tone::muted, QString(), this)),
      less_(stepButton(QString(kMinus), tr("%1, one click less").arg(label), -1)),
      more_(stepButton(QStringLiteral("+"), tr("%1, one click more").arg(label), 1)) {
    auto* line = new QHBoxLayout(this);
    line->setContentsMargins(10, 3, 6, 3);
    line->setSpacing(4);
    auto* words = new QLabel(label, this);
    words->setBuddy(field_);
    field_->setProperty("quiet", true);
    field_->setAlignment(Qt::AlignCenter);
    field_->setFont(textFont(TextSize::body, true));
    field_->setFixedWidth(kClickWidth);
    field_->installEventFilter(this);
    line->addWidget(words);
    line->addStretch(1);
    line->addWidget(was_);
    line->addSpacing(4);
    line->addWidget(less_);
    line->addWidget(field_);
    line->addWidget(more_);
    setMinimumHeight(32);
}

QAbstractButton* ClickStepper::stepButton(const QString& sign, const QString& name, int by) {
    QAbstractButton* button = smallButton(sign, name, name, this);
    button->setProperty("small", false);
    button->setFixedSize(kStepWidth, kStepWidth - 2);
    button->setStyleSheet(QStringLiteral("padding: 0px;"));
    button->setFont(textFont(TextSize::body, true));
    button->setAutoRepeat(true);
    button->setAutoRepeatDelay(kRepeatAfter);
    connect(button, &QAbstractButton::clicked, this, [this, by] { step(by); });
    return button;
}

void ClickStepper::step(int by) {
    const DampingWay* way = wayOf(hub_.state().car, click_);
    const std::optional<ClickRange> range = way == nullptr ? std::nullopt : clickRange(*way);
    if (!range) {
        return;
    }
    const double now = way->at.value_or(by > 0 ? range->least - 1 : range->most + 1);
    const double next = std::clamp<double>(std::round(now) + by, range->least, range->most);
    if (next != way->at) {
        hub_.request(SetNumber{click_, next});
    }
}

void ClickStepper::refresh(const Car& car, const Car* baseline) {
    const DampingWay* way = wayOf(car, click_);
    const std::optional<ClickRange> range = way == nullptr ? std::nullopt : clickRange(*way);
    less_->setEnabled(range && way->at.value_or(range->most + 1) > range->least);
    more_->setEnabled(range && way->at.value_or(range->least - 1) < range->most);
    const DampingWay* then = baseline == nullptr ? nullptr : wayOf(*baseline, click_);
    const bool differs = way != nullptr && then != nullptr && then->at && way->at != then->at;
    was_->showText(differs ? tr("was %1").arg(std::lround(*then->at)) : QString());
    if (range) {
        setToolTip(tr("%1 to %2 clicks have forces in the table").arg(range->least).arg(range->most));
    }
    update();
}

bool ClickStepper::eventFilter(QObject* watched, QEvent* event) {
    const QEvent::Type type = event->type();
    if (type == QEvent::FocusIn || type == QEvent::FocusOut || type == QEvent::DynamicPropertyChange) {
        update();
    }
    return QWidget::eventFilter(watched, event);
}

void ClickStepper::paintEvent(QPaintEvent*) {
    const bool bad = field_->property("problem").toBool();
    const bool isStrong = bad || field_->hasFocus() || !was_->text().isEmpty();
    const double width = isStrong ? 2.0 : 1.0;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(bad ? theme().problem : isStrong ? theme().focus : theme().border, width));
    painter.setBrush(theme().card);
    painter.drawRoundedRect(QRectF(rect()).adjusted(width / 2, width / 2, -width / 2, -width / 2), 4, 4);
}

}  // namespace bolthole
