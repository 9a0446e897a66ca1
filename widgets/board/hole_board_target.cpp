#include "widgets/board/hole_board_target.h"

#include <QAbstractButton>
#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "geometry/units/say.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

constexpr int kDistanceWidth = 50;  // px
constexpr int kPercentWidth = 40;
constexpr int kBetween = 4;

double inverseOf(std::optional<double> distance) {
    return distance ? 1.0 / *distance : 0.0;
}

}  // namespace

HoleBoardTarget::HoleBoardTarget(QWidget* parent)
    : QWidget(parent),
      lengthUnit_(new ToneLabel(ToneLabel::Tone::muted, {}, this)),
      clear_(smallButton(QStringLiteral("×"), tr("Take the target window away"),
                         tr("Clear target. On the map: Delete."), this)),
      note_(new NoteLabel(this)),
      rows_(new QBoxLayout(QBoxLayout::LeftToRight)) {
    const QString behind = tr("Minus: behind the axle. Empty: infinitely far.");
    fields_[kNear] = makeField(kNear, tr("Target IC distance, nearest"),
                               tr("Nearest target distance of the instant center at ride height. ") + behind);
    fields_[kFar] = makeField(kFar, tr("Target IC distance, farthest"),
                              tr("Farthest target distance of the instant center at ride height. ") + behind);
    fields_[kLow] =
        makeField(kLow, tr("Target anti-squat, min"), tr("Lowest anti-squat of the target at ride height."));
    fields_[kHigh] = makeField(kHigh, tr("Target anti-squat, max"),
                               tr("Highest anti-squat of the target at ride height."));
    const auto label = [this](const QString& text) {
        return new ToneLabel(ToneLabel::Tone::muted, text, this);
    };
    const auto addGroup = [&](const QString& words, Side from, Side to, QWidget* unit) {
        auto* row = new QHBoxLayout;
        row->setSpacing(4);
        for (QWidget* part : std::initializer_list<QWidget*>{label(words), fields_[from], label(tr("to")),
                                                             fields_[to], unit}) {
            row->addWidget(part);
        }
        rows_->addLayout(row);
        return row;
    };
    rows_->setSpacing(kBetween);
    lengthUnit_->setMinimumWidth(lengthUnit_->fontMetrics().horizontalAdvance(QStringLiteral("mm")));
    addGroup(tr("Target: IC"), kNear, kFar, lengthUnit_)->addStretch(1);
    QHBoxLayout* last = addGroup(tr("anti-squat"), kLow, kHigh, label(QStringLiteral("%")));
    last->addWidget(clear_);
    last->addStretch(1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addLayout(rows_);
    column->addWidget(note_);
    clear_->setObjectName(QStringLiteral("clearTarget"));
    connect(clear_, &QAbstractButton::clicked, this,
            [this] { emit edited(SetTarget{std::nullopt}, EditPhase::whole); });
}

int HoleBoardTarget::rowWidth() const {
    return rows_->itemAt(0)->minimumSize().width() + kBetween + rows_->itemAt(1)->minimumSize().width();
}

QSize HoleBoardTarget::minimumSizeHint() const {
    return {std::max(rows_->itemAt(0)->minimumSize().width(), rows_->itemAt(1)->minimumSize().width()),
            QWidget::minimumSizeHint().height()};
}

// In one row where there is room.
void HoleBoardTarget::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const auto direction = rowWidth() <= width() ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom;
    if (rows_->direction() != direction) {
        rows_->setDirection(direction);
        updateGeometry();
    }
}

NumberField* HoleBoardTarget::makeField(Side side, const QString& name, const QString& howTo) {
    const bool isDistance = side == kNear || side == kFar;
    auto* field = new NumberField(isDistance ? Quantity::length : Quantity::percent, this);
    field->setProperty("compact", true);
    field->setFixedWidth(isDistance ? kDistanceWidth : kPercentWidth);
    field->setAccessibleName(name);
    field->setHowTo(howTo);
    field->setMayBeEmpty(isDistance);
    field->setCheck([this, side](double value) { return refuse(side, value); });
    note_->watch(field, name);
    connect(field, &NumberField::committed, this, [this, side](double value) { take(side, value); });
    connect(field, &NumberField::cleared, this, [this, side] { take(side, std::nullopt); });
    return field;
}

void HoleBoardTarget::showTarget(const BenchState& bench, const TargetWindow& whole) {
    if (target_ != bench.car.target) {
        for (NumberField* field : fields_) {
            field->setFault({});
        }
    }
    target_ = bench.car.target;
    whole_ = whole;
    style_ = bench.style;
    lengthUnit_->showText(unitText(Quantity::length, style_.units));
    const auto shown = [&](auto member) -> std::optional<double> {
        return target_ ? std::optional<double>((*target_).*member) : std::nullopt;
    };
    fields_[kNear]->showNumber(target_ ? target_->icNear : std::nullopt, style_);
    fields_[kFar]->showNumber(target_ ? target_->icFar : std::nullopt, style_);
    fields_[kLow]->showNumber(shown(&TargetWindow::antiSquatLow), style_);
    fields_[kHigh]->showNumber(shown(&TargetWindow::antiSquatHigh), style_);
    for (NumberField* field : {fields_[kNear], fields_[kFar]}) {
        field->setPlaceholderText(target_ ? QString(QChar(0x221e)) : QString());
        field->setStepStart(whole_.icNear.value_or(0));
    }
    fields_[kLow]->setStepStart(whole_.antiSquatLow);
    fields_[kHigh]->setStepStart(whole_.antiSquatHigh);
    clear_->setEnabled(target_.has_value());
}

TargetWindow HoleBoardTarget::with(Side side, std::optional<double> value) const {
    TargetWindow target = target_.value_or(whole_);
    switch (side) {
        case kNear:
            target.icNear = value;
            break;
        case kFar:
            target.icFar = value;
            break;
        case kLow:
            target.antiSquatLow = *value;
            break;
        case kHigh:
            target.antiSquatHigh = *value;
            break;
    }
    return target;
}

// Without a window yet, sides that were not typed give way: they come from the map's edges.
std::string HoleBoardTarget::refuse(Side side, std::optional<double> value) const {
    constexpr std::array kFields{Field::targetIcNear, Field::targetIcFar, Field::targetLow,
                                 Field::targetHigh};
    if (value) {
        std::string reason = bolthole::refusal({.field = kFields[side]}, *value);
        if (!reason.empty()) {
            return say("expected %1", reason);
        }
    }
    const bool isDistance = side == kNear || side == kFar;
    if (isDistance && value == 0.0) {
        return say(
            "a distance of 0 is the contact patch itself: type one ahead of it, or behind with a minus");
    }
    if (!target_) {
        return {};
    }
    const TargetWindow target = with(side, value);
    if (isDistance && !(inverseOf(target.icNear) > inverseOf(target.icFar))) {
        return say(
            "the second distance must lie farther out than the first: ahead, then infinity, then behind");
    }
    if (!isDistance && !(target.antiSquatLow < target.antiSquatHigh)) {
        return say("the second percentage must be above the first");
    }
    return {};
}

// A first number opens a window as wide as the map on its other sides, or wider where they would not hold it.
TargetWindow HoleBoardTarget::opened(Side side, double value) const {
    constexpr double kRoom = 50.0;  // percent
    TargetWindow target = with(side, value);
    if (!(inverseOf(target.icNear) > inverseOf(target.icFar))) {
        if (side == kNear) {
            target.icFar = value > 0 ? std::nullopt : std::optional(value / 2);
        } else {
            target.icNear = value > 0 ? std::optional(value / 2) : std::nullopt;
        }
    }
    if (!(target.antiSquatLow < target.antiSquatHigh)) {
        (side == kLow ? target.antiSquatHigh : target.antiSquatLow) = value + (side == kLow ? kRoom : -kRoom);
    }
    return target;
}

// An emptied field has no check of its own: what infinity would break is said under the fields.
void HoleBoardTarget::take(Side side, std::optional<double> value) {
    if (!target_ && !value) {
        return;
    }
    const std::string reason = refuse(side, value);
    fields_[side]->setFault(QString::fromStdString(reason));
    if (reason.empty()) {
        emit edited(SetTarget{target_ ? with(side, value) : opened(side, *value)}, EditPhase::whole);
    }
}

}  // namespace bolthole
