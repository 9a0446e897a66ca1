#include "widgets/fields/uncertainty_bar.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include "geometry/uncertainty/uncertain_inputs.h"
#include "geometry/units/uncertainty_text.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/accuracy_reading.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

constexpr int kFieldWidth = 110;

QPushButton* button(const QString& text, const char* name, QWidget* parent) {
    auto* made = new QPushButton(text, parent);
    made->setObjectName(QLatin1String(name));
    made->setAutoDefault(false);
    return made;
}

}  // namespace

UncertaintyBar::UncertaintyBar(QWidget* parent)
    : QWidget(parent),
      name_(new ToneLabel(ToneLabel::Tone::plain, {}, this)),
      unit_(new ToneLabel(ToneLabel::Tone::muted, {}, this)),
      calipers_(button(tr("Taken with calipers"), "uncertaintyCalipers", this)),
      tool_(button(tr("As its tool"), "uncertaintyTool", this)),
      go_(button(tr("Go to the number"), "uncertaintyGo", this)),
      note_(new ToneLabel(ToneLabel::Tone::problem, {}, this)) {
    setObjectName(QStringLiteral("uncertaintyBar"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    line_ = new QHBoxLayout;
    line_->setSpacing(8);
    column->addLayout(line_);
    column->addWidget(note_);
    note_->hide();
    name_->setTextFormat(Qt::PlainText);
    name_->setObjectName(QStringLiteral("uncertaintyBarName"));
    name_->setMinimumWidth(120);
    line_->addWidget(name_);
    line_->addWidget(unit_);
    line_->addSpacing(8);
    for (QAbstractButton* each : {calipers_, tool_, go_}) {
        line_->addWidget(each);
    }
    line_->addStretch(1);
    calipers_->setToolTip(wrappedToolTip(
        tr("Gives this one number the calipers' ±. Key C in the table. Measure it with them first.")));
    tool_->setToolTip(wrappedToolTip(tr("Takes the number's own ± away. Delete in the table.")));
    go_->setToolTip(wrappedToolTip(tr("To the field the number itself is entered in. Enter in the table.")));
    connect(calipers_, &QAbstractButton::clicked, this, &UncertaintyBar::takeCalipers);
    connect(tool_, &QAbstractButton::clicked, this, &UncertaintyBar::takeTool);
    connect(go_, &QAbstractButton::clicked, this, [this] { emit numberRequested(*id_); });
}

FieldId UncertaintyBar::uncertaintyId() const {
    FieldId id = *id_;
    id.uncertainty = true;
    return id;
}

void UncertaintyBar::showNumber(const Car& car, const std::optional<FieldId>& id, NumberStyle style) {
    car_ = &car;
    if (id != id_) {
        id_ = id;
        makeField();
    }
    setVisible(id_.has_value());
    if (!id_) {
        return;
    }
    name_->showText(capitalized(QString::fromStdString(numberWords(car, *id_))) + QStringLiteral("  ±"));
    const std::optional<double> own = numberAt(car, uncertaintyId());
    field_->showNumber(own ? std::optional(*own * kCoverage95) : std::nullopt, style);
    Car plain = car;
    if (own) {
        plain = apply(car, ClearNumber{uncertaintyId()}).car;
    }
    field_->setPlaceholderText(QString::fromStdString(halfWidthText(
        uncertaintyOf(plain, *id_).uncertainty, quantityOf(id_->field), style.units, Fineness::fine)));
    unit_->showText(field_->unitText());
    const double calipers = uncertaintyOf(car, MeasuringTool::calipers);
    calipers_->setEnabled(isForCalipers(*id_) && own != calipers);
    tool_->setEnabled(own.has_value());
}

// A field's quantity is for good: another number gets another field.
void UncertaintyBar::makeField() {
    if (field_ != nullptr) {
        field_->blockSignals(true);
        field_->hide();
        field_->deleteLater();
        field_ = nullptr;
    }
    note_->hide();
    if (!id_) {
        return;
    }
    const FieldId id = uncertaintyId();
    const FieldWords words = wordsFor(*car_, id);
    field_ = new NumberField(quantityOf(id.field), this);
    field_->setObjectName(QStringLiteral("uncertaintyOwn"));
    field_->setFixedWidth(kFieldWidth);
    field_->setAccessibleName(words.name);
    field_->setHowTo(words.howTo);
    field_->setMayBeEmpty(true);
    field_->setStepStart(kCoverage95 * uncertaintyOf(*car_, *id_).uncertainty);
    field_->setCheck([id](double shown) { return refusal(id, shown / kCoverage95); });
    connect(field_, &NumberField::committed, this, [this, id](double shown) {
        emit edited(SetNumber{id, shown / kCoverage95});
    });
    connect(field_, &NumberField::cleared, this, [this, id] { emit edited(ClearNumber{id}); });
    connect(field_, &NumberField::noteChanged, this, [this] {
        note_->showText(field_->note());
        note_->setVisible(!field_->note().isEmpty());
    });
    line_->insertWidget(1, field_);
    field_->show();  // at once, so that it can be entered
    setTabOrder(calipers_->previousInFocusChain(), field_);
}

void UncertaintyBar::enter() {
    if (field_ != nullptr) {
        field_->setFocus(Qt::OtherFocusReason);
        field_->selectAll();
    }
}

void UncertaintyBar::takeCalipers() {
    if (id_ && calipers_->isEnabled()) {
        emit edited(SetNumber{uncertaintyId(), uncertaintyOf(*car_, MeasuringTool::calipers)});
    }
}

void UncertaintyBar::takeTool() {
    if (id_ && tool_->isEnabled()) {
        emit edited(ClearNumber{uncertaintyId()});
    }
}

}  // namespace bolthole
