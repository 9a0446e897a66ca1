#include "widgets/pages/launch/work_out_dialog.h"

#include <QDialogButtonBox>
#include <QPushButton>
#include <QVBoxLayout>
#include <utility>

#include "geometry/units/uncertainty_text.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"

namespace bolthole {

WorkOutDialog::WorkOutDialog(WorkOut task, NumberStyle style, QWidget* parent)
    : QDialog(parent),
      task_(std::move(task)),
      style_(style),
      said_(new ToneLabel(ToneLabel::Tone::plain, {}, this)) {
    setObjectName(QStringLiteral("workOutDialog"));
    setWindowTitle(task_.title);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(18, 16, 18, 14);
    column->setSpacing(8);
    auto* words = new ToneLabel(ToneLabel::Tone::muted, task_.procedure, this);
    words->setWordWrap(true);
    words->setMinimumWidth(420);
    column->addWidget(words);
    for (const WorkOut::Reading& reading : task_.readings) {
        auto* field = new NumberField(reading.quantity, this);
        field->setMayBeEmpty(true);
        field->setAccessibleName(reading.label);
        field->showNumber(std::nullopt, style_);
        column->addWidget(new NumberRow(reading.label, field, this));
        connect(field, &QLineEdit::textChanged, this, &WorkOutDialog::refresh);
        connect(field, &NumberField::committed, this,
                [this, field](double value) { field->showNumber(value, style_); });
        connect(field, &NumberField::cleared, this,
                [this, field] { field->showNumber(std::nullopt, style_); });
        fields_.push_back(field);
    }
    said_->setFont(textFont(TextSize::body, true));
    said_->setWordWrap(true);
    column->addWidget(said_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    take_ = buttons->addButton(tr("Take it"), QDialogButtonBox::AcceptRole);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
    refresh();
}

void WorkOutDialog::refresh() {
    std::vector<double> readings;
    for (const NumberField* field : fields_) {
        if (const std::optional<double> number = field->typedNumber()) {
            readings.push_back(*number);
        }
    }
    const bool isWhole = readings.size() == fields_.size();
    worked_ = isWhole ? task_.compute(readings) : std::nullopt;
    take_->setEnabled(worked_.has_value());
    if (worked_) {
        const auto text = [this](const std::string& number) {
            return QString::fromStdString(withUnit(number, task_.quantity, style_.units));
        };
        said_->showText(
            tr("%1: %2 ± %3")
                .arg(
                    task_.result, text(fineFigureText(worked_->value, task_.quantity, style_.units)),
                    text(halfWidthText(worked_->uncertainty, task_.quantity, style_.units, Fineness::fine))));
    } else {
        said_->showText(isWhole ? tr("These readings give none: check them.")
                                : tr("All readings are needed."));
    }
}

}  // namespace bolthole
