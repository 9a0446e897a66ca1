#include "widgets/compare/ride_change_dialog.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>
#include <cmath>

#include "geometry/car/numbers.h"
#include "geometry/edits/edit.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

constexpr int kTextWidth = 420;

QString figure(double value, Quantity quantity, Units units) {
    return QString::fromStdString(fineFigureText(value, quantity, units));
}

QString center(const Station& station, Units units) {
    if (!std::isfinite(station[Figure::icX])) {
        return RideChangeDialog::tr("at infinity");
    }
    return QStringLiteral("%1 × %2 %3")
        .arg(figure(station[Figure::icX], Quantity::length, units),
             figure(station[Figure::icZ], Quantity::length, units), unitText(Quantity::length, units));
}

ToneLabel* wrapped(ToneLabel::Tone tone, const QString& text, QWidget* parent) {
    auto* label = new ToneLabel(tone, text, parent);
    label->setWordWrap(true);
    label->setMinimumWidth(kTextWidth);
    return label;
}

}  // namespace

RideChangeDialog::RideChangeDialog(const Car& car, NumberStyle style, const QString& problem, QWidget* parent)
    : QDialog(parent),
      car_(withoutKept(car)),
      style_(style),
      problem_(problem),
      outcome_(wrapped(ToneLabel::Tone::plain, QString(), this)),
      refusal_(wrapped(ToneLabel::Tone::problem, QString(), this)) {
    setWindowTitle(tr("Change tires or ride height"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(16, 16, 16, 12);
    column->setSpacing(6);
    const QString lowering =
        tr("How far the body comes down over this axle; minus raises it. Springs, shims or adjusters do that "
           "at the car; here it moves the axle against the body.");
    const QString radius =
        tr("Loaded radius: from the ground up to the center of the axle, the car's weight on it.");
    fields_ = {
        addField(tr("Rear tire radius"), tr("new rear tire radius, loaded"), radius, car.rearTireRadius),
        addField(tr("Front tire radius"), tr("new front tire radius, loaded"), radius, car.frontTireRadius),
        addField(tr("Rear body lowered by"), tr("rear body lowered by"), lowering, 0),
        addField(tr("Front body lowered by"), tr("front body lowered by"), lowering, 0)};
    for (std::size_t i : {0U, 1U}) {
        const Field field = i == 0 ? Field::rearTireRadius : Field::frontTireRadius;
        fields_[i]->setCheck([field](double value) {
            const std::string expected = refusal({.field = field}, value);
            return expected.empty() ? expected : "expected " + expected;
        });
        fields_[i]->setHowToCall([this, field] { emit howToRequested({.field = field}); });
    }
    outcome_->setObjectName(QStringLiteral("outcome"));
    refusal_->setObjectName(QStringLiteral("refusal"));
    column->addSpacing(4);
    column->addWidget(outcome_);
    column->addWidget(refusal_);
    column->addWidget(wrapped(
        ToneLabel::Tone::muted,
        tr("Drawn over the present car while you type. Every measured point, the wheelbase, the CG and "
           "the pinion and output angles are recalculated to the new ground; the links keep their "
           "lengths, the stops their places. Kept beside the present setup, the car stays as it is."),
        this));
    addButtons();
    if (problem_.isEmpty()) {
        computeTrace(car_, before_);
    }
    refresh();
}

// Three of a kind in a row of their own: a button box would order them after the desktop's custom.
void RideChangeDialog::addButtons() {
    auto* row = new QHBoxLayout;
    row->setContentsMargins(0, 6, 0, 0);
    row->setSpacing(8);
    row->addStretch(1);
    auto* cancel = new QPushButton(tr("Cancel"), this);
    take_ = new QPushButton(tr("Change the car"), this);
    keep_ = new QPushButton(tr("Keep as a setup beside the present one"), this);
    for (QPushButton* button : {cancel, take_, keep_}) {
        button->setAutoDefault(button == keep_);
        row->addWidget(button);
    }
    keep_->setDefault(true);
    connect(cancel, &QAbstractButton::clicked, this, &QDialog::reject);
    for (QPushButton* button : {take_, keep_}) {
        connect(button, &QAbstractButton::clicked, this, [this, button] {
            answer_ = button == keep_ ? Answer::keep : Answer::changeTheCar;
            accept();
        });
    }
    static_cast<QVBoxLayout*>(layout())->addLayout(row);
}

NumberField* RideChangeDialog::addField(const QString& label, const QString& name, const QString& howTo,
                                        double value) {
    auto* field = new NumberField(Quantity::length, this);
    field->setAccessibleName(name);
    field->setHowTo(howTo);
    field->showNumber(value, style_);
    layout()->addWidget(new NumberRow(label, field, this));
    connect(field, &NumberField::committed, field,
            [this, field](double typed) { field->showNumber(typed, style_); });
    connect(field, &QLineEdit::textChanged, this, &RideChangeDialog::refresh);
    connect(field, &NumberField::confirmed, this, [this] { focusNextChild(); });
    field->setEnabled(problem_.isEmpty());
    return field;
}

std::optional<RideChange> RideChangeDialog::change() const {
    std::array<double, 4> values{};
    for (std::size_t i = 0; i < fields_.size(); ++i) {
        const std::optional<double> typed = fields_[i]->typedNumber();
        if (!typed) {
            return std::nullopt;
        }
        values[i] = *typed;
    }
    return RideChange{values[0], values[1], values[2], values[3]};
}

void RideChangeDialog::showRefusal(const QString& reason) {
    refusal_->showText(reason.isEmpty() ? QString() : QStringLiteral("▲ ") + reason);
    refusal_->setVisible(!reason.isEmpty());
    outcome_->setVisible(reason.isEmpty());
    take_->setEnabled(reason.isEmpty());
    keep_->setEnabled(reason.isEmpty());
    if (!reason.isEmpty()) {
        emit previewed(nullptr);
    }
}

void RideChangeDialog::refresh() {
    if (take_ == nullptr) {
        return;  // still being built
    }
    if (!problem_.isEmpty()) {
        showRefusal(problem_);
        return;
    }
    const std::optional<RideChange> asked = change();
    if (!asked) {
        showRefusal(unreadField(fields_));
        return;
    }
    const CarResult result = changeRide(car_, *asked);
    if (!result.car) {
        showRefusal(tr("Can't be: %1.").arg(QString::fromStdString(result.refusal)));
        return;
    }
    showRefusal({});
    showOutcome(*result.car);
    const bool changes = *asked != noChange(car_);
    take_->setEnabled(changes);
    keep_->setEnabled(changes);
    emit previewed(changes ? std::make_shared<const Car>(*result.car) : nullptr);
}

void RideChangeDialog::showOutcome(const Car& after) {
    computeTrace(after, after_);
    if (!before_.assembly.usable() || !after_.assembly.usable()) {
        outcome_->showText(tr("At ride: the links can't be assembled, so there are no figures to show."));
        return;
    }
    const Station& from = before_.ride;
    const Station& to = after_.ride;
    const Units units = style_.units;
    QStringList lines{tr("At ride: anti-squat %1 → %2 %")
                          .arg(figure(from[Figure::antiSquat], Quantity::percent, units),
                               figure(to[Figure::antiSquat], Quantity::percent, units)),
                      tr("Instant center %1 → %2").arg(center(from, units), center(to, units))};
    if (std::isfinite(from[Figure::pinion])) {
        lines << tr("Pinion %1 → %2°")
                     .arg(figure(from[Figure::pinion], Quantity::angle, units),
                          figure(to[Figure::pinion], Quantity::angle, units));
    }
    outcome_->showText(lines.join(QLatin1Char('\n')));
}

}  // namespace bolthole
