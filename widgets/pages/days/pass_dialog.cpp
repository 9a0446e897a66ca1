#include "widgets/pages/days/pass_dialog.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include "widgets/kit/said.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/days/pass_number_field.h"
#include "widgets/pages/days/pass_words.h"

namespace bolthole {

namespace {

constexpr int kNumberWidth = 96;
constexpr int kLabelWidth = 148;

void addHeading(QVBoxLayout* column, const QString& title, QWidget* parent) {
    auto* heading = new ToneLabel(ToneLabel::Tone::heading, title, parent);
    heading->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    column->addWidget(heading);
}

QLabel* rowLabel(const QString& words, QWidget* buddy, QWidget* parent) {
    auto* label = new QLabel(words, parent);
    label->setMinimumWidth(kLabelWidth);
    label->setBuddy(buddy);
    return label;
}

QFormLayout* addGroup(QVBoxLayout* column, const QString& title, QWidget* parent) {
    addHeading(column, title, parent);
    auto* form = new QFormLayout;
    form->setContentsMargins(0, 0, 0, 0);
    form->setHorizontalSpacing(12);
    form->setVerticalSpacing(6);
    form->setFieldGrowthPolicy(QFormLayout::ExpandingFieldsGrow);
    form->setLabelAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    column->addLayout(form);
    column->addSpacing(8);
    return form;
}

QLineEdit* addText(QFormLayout* form, const QString& label, const std::string& text, const QString& tip,
                   QWidget* parent) {
    auto* field = new QLineEdit(QString::fromStdString(text), parent);
    field->setAccessibleName(label);
    field->setToolTip(tip);
    form->addRow(rowLabel(label, field, parent), field);
    return field;
}

}  // namespace

PassDialog::PassDialog(const PassBook& book, const Pass& pass, bool isNew, QWidget* parent)
    : QDialog(parent), book_(book), pass_(pass) {
    setObjectName(QStringLiteral("passDialog"));
    setWindowTitle(isNew ? tr("Next pass") : tr("Pass %1 of %2").arg(pass.number).arg(dayText(pass.date)));
    auto* left = new QVBoxLayout;
    auto* right = new QVBoxLayout;
    left->setSpacing(4);
    right->setSpacing(4);
    buildWhen(left);
    buildSetup(left, isNew);
    buildGround(left);
    buildNumbers(left, tr("Air, at the place itself"),
                 {PassField::airTemperature, PassField::airPressure, PassField::humidity});
    buildNumbers(right, tr("Tire pressures and launch"),
                 {PassField::leftFrontPressure, PassField::rightFrontPressure, PassField::leftRearPressure,
                  PassField::rightRearPressure, PassField::launchRpm});
    buildNumbers(right, tr("What the clocks said"),
                 {PassField::sixtyFoot, PassField::threeThirty, PassField::eighth, PassField::eighthSpeed,
                  PassField::quarter, PassField::quarterSpeed});
    buildSeen(right);
    left->addStretch(1);
    right->addStretch(1);
    auto* columns = new QHBoxLayout;
    columns->setSpacing(32);
    columns->addLayout(left, 1);
    columns->addLayout(right, 1);
    problem_ = new ToneLabel(ToneLabel::Tone::problem, {}, this);
    problem_->setWordWrap(true);
    problem_->hide();
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
    buttons->button(QDialogButtonBox::Ok)->setText(isNew ? tr("Enter the pass") : tr("Take it over"));
    connect(buttons, &QDialogButtonBox::accepted, this, &PassDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(20, 16, 20, 16);
    whole->setSpacing(10);
    whole->addLayout(columns);
    whole->addStretch(1);
    whole->addWidget(problem_);
    whole->addWidget(buttons);
    field(PassField::sixtyFoot)->setFocus();
}

void PassDialog::buildWhen(QVBoxLayout* column) {
    QFormLayout* form = addGroup(column, tr("When and where"), this);
    number_ = addText(form, tr("Number"), std::to_string(pass_.number), tr("Of its day, from 1"), this);
    date_ = addText(form, tr("Date"), pass_.date, tr("Year, month, day: 2026-11-20"), this);
    time_ = addText(form, tr("Time"), pass_.time, tr("Of day: 14:05 or 14:05:30"), this);
    place_ =
        addText(form, tr("Place"), pass_.place, tr("In your own words; passes there get one heading"), this);
}

void PassDialog::buildSetup(QVBoxLayout* column, bool isNew) {
    QFormLayout* form = addGroup(column, tr("The car"), this);
    setup_ = new CalmCombo(this);
    setup_->setAccessibleName(tr("Setup"));
    setup_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    setup_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setup_->setMinimumContentsLength(16);
    setup_->setToolTip(tr("The kept setup it was run with"));
    setup_->addItem(isNew ? tr("the car as it stands") : tr("none"));
    for (const KeptSetup& state : book_.car().kept) {
        setup_->addItem(QString::fromStdString(state.name));
    }
    setup_->setCurrentIndex(pass_.setup.value_or(-1) + 1);
    form->addRow(rowLabel(tr("Setup"), setup_, this), setup_);
    struck_ = new QCheckBox(tr("Struck: kept, counted nowhere"), this);
    struck_->setChecked(pass_.struck);
    form->addRow(QString(), struck_);
}

void PassDialog::buildGround(QVBoxLayout* column) {
    QFormLayout* form = addGroup(column, tr("Surface"), this);
    kind_ = new CalmCombo(this);
    kind_->setAccessibleName(tr("Kind of surface"));
    kind_->addItem(tr("not said"));
    for (std::size_t at = 0; at < kSurfaceKinds; ++at) {
        kind_->addItem(said(nameOf(static_cast<SurfaceKind>(at))));
    }
    kind_->setCurrentIndex(pass_.surface.kind ? static_cast<int>(*pass_.surface.kind) + 1 : 0);
    form->addRow(rowLabel(tr("Kind"), kind_, this), kind_);
    surface_ =
        addText(form, tr("Name"), pass_.surface.name,
                tr("In your own words: \"north lane\". Passes are compared on one surface alone."), this);
    addNumber(form, PassField::surfaceTemperature);
}

void PassDialog::addNumber(QFormLayout* form, PassField field) {
    auto* line = new QWidget(this);
    auto* row = new QHBoxLayout(line);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(8);
    auto* number = new PassNumberField(field, line);
    connect(number, &PassNumberField::howToRequested, this, &PassDialog::howToRequested);
    number->setFixedWidth(kNumberWidth);
    number->showNumber(numberOf(pass_, field), book_.units());
    row->addWidget(number);
    row->addWidget(new ToneLabel(ToneLabel::Tone::muted, passUnitText(field, book_.units()), line));
    row->addStretch(1);
    QLabel* label = rowLabel(labelOf(field), number, this);
    label->setToolTip(number->toolTip());
    form->addRow(label, line);
    fields_[static_cast<std::size_t>(field)] = number;
}

void PassDialog::buildNumbers(QVBoxLayout* column, const QString& title,
                              std::initializer_list<PassField> fields) {
    QFormLayout* form = addGroup(column, title, this);
    for (const PassField field : fields) {
        addNumber(form, field);
    }
}

void PassDialog::buildSeen(QVBoxLayout* column) {
    addHeading(column, tr("What was seen"), this);
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(16);
    grid->setVerticalSpacing(4);
    for (std::size_t at = 0; at < kSeenCount; ++at) {
        seen_[at] = new QCheckBox(capitalized(seenWords(static_cast<Seen>(at))), this);
        seen_[at]->setChecked(pass_.seen[at]);
        grid->addWidget(seen_[at], static_cast<int>(at) / 2, static_cast<int>(at) % 2);
    }
    column->addLayout(grid);
    column->addSpacing(8);
    QFormLayout* form = addGroup(column, tr("In your own words"), this);
    note_ = addText(form, tr("Note"), pass_.note, tr("Anything else worth knowing in a week"), this);
}

PassNumberField* PassDialog::field(PassField field) const {
    return fields_[static_cast<std::size_t>(field)];
}

Pass PassDialog::pass() const {
    Pass pass = pass_;
    pass.number = number_->text().trimmed().toInt();
    pass.date = date_->text().trimmed().toStdString();
    pass.time = time_->text().trimmed().toStdString();
    pass.place = place_->text().trimmed().toStdString();
    const int setup = setup_->currentIndex() - 1;
    pass.setup = setup < 0 ? std::nullopt : std::optional(setup);
    pass.struck = struck_->isChecked();
    const int kind = kind_->currentIndex() - 1;
    pass.surface.kind = kind < 0 ? std::nullopt : std::optional(static_cast<SurfaceKind>(kind));
    pass.surface.name = surface_->text().trimmed().toStdString();
    for (const PassNumberField* field : fields_) {
        numberOf(pass, field->field()) = field->typed().value;
    }
    for (std::size_t at = 0; at < kSeenCount; ++at) {
        pass.seen[at] = seen_[at]->isChecked();
    }
    pass.note = note_->text().trimmed().toStdString();
    return pass;
}

QString PassDialog::problem() {
    for (PassNumberField* field : fields_) {
        const QString reason = field->check().problem;
        if (!reason.isEmpty()) {
            field->setFocus();
            return labelOf(field->field()) + QStringLiteral(": ") + reason;
        }
    }
    const PassFault fault = findFault(pass(), book_.car().kept.size());
    if (fault.reason.empty()) {
        return {};
    }
    for (QLineEdit* field : {number_, date_, time_}) {
        if (field->accessibleName().toLower().toStdString() == fault.path) {
            field->setFocus();
            field->selectAll();
        }
    }
    return capitalized(QString::fromStdString(fault.path + ": " + fault.reason));
}

void PassDialog::accept() {
    const QString found = problem();
    problem_->setText(found.isEmpty() ? QString() : QStringLiteral("▲ ") + found);
    problem_->setVisible(!found.isEmpty());
    if (found.isEmpty()) {
        QDialog::accept();
    }
}

}  // namespace bolthole
