#include "widgets/board/hole_board_wanted.h"

#include <QAbstractButton>
#include <QHBoxLayout>
#include <QVBoxLayout>
#include <cmath>

#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

constexpr int kDistanceWidth = 58;  // px
constexpr int kPercentWidth = 50;

double inverseOf(std::optional<double> distance) {
    return distance ? 1.0 / *distance : 0.0;
}

}  // namespace

HoleBoardWanted::HoleBoardWanted(QWidget* parent)
    : QWidget(parent),
      lengthUnit_(new ToneLabel(ToneLabel::Tone::muted, {}, this)),
      clear_(smallButton(tr("Clear"), tr("Take the target window away"),
                         tr("Clear target. On the map: Delete."), this)),
      note_(new NoteLabel(this)) {
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
    auto* row = new QHBoxLayout;
    row->setSpacing(5);
    row->addWidget(label(tr("Target: IC")));
    row->addWidget(fields_[kNear]);
    row->addWidget(label(tr("to")));
    row->addWidget(fields_[kFar]);
    row->addWidget(lengthUnit_);
    row->addSpacing(6);
    row->addWidget(label(tr("anti-squat")));
    row->addWidget(fields_[kLow]);
    row->addWidget(label(tr("to")));
    row->addWidget(fields_[kHigh]);
    row->addWidget(label(QStringLiteral("%")));
    row->addWidget(clear_);
    row->addStretch(1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addLayout(row);
    column->addWidget(note_);
    clear_->setObjectName(QStringLiteral("clearWanted"));
    connect(clear_, &QAbstractButton::clicked, this,
            [this] { emit edited(SetWanted{std::nullopt}, EditPhase::whole); });
}

NumberField* HoleBoardWanted::makeField(Side side, const QString& name, const QString& howTo) {
    const bool isDistance = side == kNear || side == kFar;
    auto* field = new NumberField(isDistance ? Quantity::length : Quantity::percent, this);
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

void HoleBoardWanted::showWanted(const BenchState& bench, const WantedWindow& whole) {
    if (wanted_ != bench.car.wanted) {
        for (NumberField* field : fields_) {
            field->setFault({});
        }
    }
    wanted_ = bench.car.wanted;
    whole_ = whole;
    style_ = bench.style;
    lengthUnit_->showText(unitText(Quantity::length, style_.units));
    const auto shown = [&](auto member) -> std::optional<double> {
        return wanted_ ? std::optional<double>((*wanted_).*member) : std::nullopt;
    };
    fields_[kNear]->showNumber(wanted_ ? wanted_->icNear : std::nullopt, style_);
    fields_[kFar]->showNumber(wanted_ ? wanted_->icFar : std::nullopt, style_);
    fields_[kLow]->showNumber(shown(&WantedWindow::antiSquatLow), style_);
    fields_[kHigh]->showNumber(shown(&WantedWindow::antiSquatHigh), style_);
    for (NumberField* field : {fields_[kNear], fields_[kFar]}) {
        field->setPlaceholderText(wanted_ ? QString(QChar(0x221e)) : QString());
        field->setStepStart(whole_.icNear.value_or(0));
    }
    fields_[kLow]->setStepStart(whole_.antiSquatLow);
    fields_[kHigh]->setStepStart(whole_.antiSquatHigh);
    clear_->setEnabled(wanted_.has_value());
}

WantedWindow HoleBoardWanted::with(Side side, std::optional<double> value) const {
    WantedWindow wanted = wanted_.value_or(whole_);
    switch (side) {
        case kNear:
            wanted.icNear = value;
            break;
        case kFar:
            wanted.icFar = value;
            break;
        case kLow:
            wanted.antiSquatLow = *value;
            break;
        case kHigh:
            wanted.antiSquatHigh = *value;
            break;
    }
    return wanted;
}

// Without a window yet, sides that were not typed give way: they come from the map's edges.
std::string HoleBoardWanted::refuse(Side side, std::optional<double> value) const {
    constexpr std::array kFields{Field::wantedIcNear, Field::wantedIcFar, Field::wantedLow,
                                 Field::wantedHigh};
    if (value) {
        std::string reason = bolthole::refusal({.field = kFields[side]}, *value);
        if (!reason.empty()) {
            return "expected " + reason;
        }
    }
    const bool isDistance = side == kNear || side == kFar;
    if (isDistance && value == 0.0) {
        return "a distance of 0 is the contact patch itself: type one ahead of it, or behind with a minus";
    }
    if (!wanted_) {
        return {};
    }
    const WantedWindow wanted = with(side, value);
    if (isDistance && !(inverseOf(wanted.icNear) > inverseOf(wanted.icFar))) {
        return "the second distance must lie farther out than the first: ahead, then infinity, then behind";
    }
    if (!isDistance && !(wanted.antiSquatLow < wanted.antiSquatHigh)) {
        return "the second percentage must be above the first";
    }
    return {};
}

// A first number opens a window as wide as the map on its other sides, or wider where they would not hold it.
WantedWindow HoleBoardWanted::opened(Side side, double value) const {
    constexpr double kRoom = 50.0;  // percent
    WantedWindow wanted = with(side, value);
    if (!(inverseOf(wanted.icNear) > inverseOf(wanted.icFar))) {
        if (side == kNear) {
            wanted.icFar = value > 0 ? std::nullopt : std::optional(value / 2);
        } else {
            wanted.icNear = value > 0 ? std::optional(value / 2) : std::nullopt;
        }
    }
    if (!(wanted.antiSquatLow < wanted.antiSquatHigh)) {
        (side == kLow ? wanted.antiSquatHigh : wanted.antiSquatLow) = value + (side == kLow ? kRoom : -kRoom);
    }
    return wanted;
}

// An emptied field has no check of its own: what infinity would break is said under the fields.
void HoleBoardWanted::take(Side side, std::optional<double> value) {
    if (!wanted_ && !value) {
        return;
    }
    const std::string reason = refuse(side, value);
    fields_[side]->setFault(QString::fromStdString(reason));
    if (reason.empty()) {
        emit edited(SetWanted{wanted_ ? with(side, value) : opened(side, *value)}, EditPhase::whole);
    }
}

}  // namespace bolthole
