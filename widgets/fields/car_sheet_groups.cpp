#include "widgets/fields/car_sheet_groups.h"

#include <QCoreApplication>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "widgets/fields/hole_grid.h"
#include "widgets/fields/wheel_grid.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

/// A row for one number of the whole car.
NumberRow* carRow(SheetHub& hub, Field field, QWidget* parent) {
    const FieldId id = carField(field);
    NumberField* number = hub.makeField(id, parent);
    number->setMayBeEmpty(field == Field::rearTrack || field == Field::jointLimit);
    if (field == Field::rearTrack) {
        number->setPlaceholderText(QCoreApplication::translate("CarSection", "not measured"));
    } else if (field == Field::jointLimit) {
        number->setPlaceholderText(QCoreApplication::translate("CarSection", "no limit"));
    }
    return new NumberRow(wordsFor(hub.state().car, id).label, number, parent);
}

}  // namespace

CarSection::CarSection(SheetHub& hub, QWidget* parent) : Section(tr("Car"), parent), hub_(hub) {
    title_ = new NameField(this);
    title_->setMayBeBlank(true);
    title_->setAlignment(Qt::AlignRight);
    title_->setAccessibleName(tr("title of the car"));
    title_->setToolTip(wrappedToolTip(tr("What the car is called on screen and on paper.")));
    connect(title_, &NameField::renamed, this,
            [this](const std::string& typed) { hub_.request(SetTitle{typed}); });
    body()->addWidget(new BoxRow(tr("Title"), title_, this));
    body_ = new CalmCombo(this);
    body_->addItems({tr("not chosen"), tr("sedan"), tr("coupe"), tr("wagon"), tr("pickup"), tr("roadster")});
    body_->setAccessibleName(tr("body of the car"));
    body_->setToolTip(wrappedToolTip(tr("What its outline is drawn as. Nothing is computed of it.")));
    connect(body_, &QComboBox::activated, this, [this](int option) {
        hub_.request(SetChoice{Choice::body, option});
    });
    body()->addWidget(new BoxRow(tr("Body"), body_, this));
    for (const Field field : {Field::wheelbase, Field::rearTireRadius, Field::frontTireRadius,
                              Field::rearTrack, Field::cgHeight}) {
        body()->addWidget(carRow(hub, field, this));
    }
    weights_ = new WheelGrid(hub, tr("Corner weights"), kCornerFields, this);
    body()->addWidget(weights_);
}

void CarSection::refresh() {
    const Car& car = hub_.state().car;
    title_->showName(car.title);
    body_->setCurrentIndex(chosen(car, Choice::body));
    const double total = car.cornerWeights.total();
    const double front = car.cornerWeights.front();
    const Units units = hub_.state().style.units;
    if (total == shownTotal_ && front == shownFront_ && units == shownUnits_) {
        return;
    }
    shownTotal_ = total;
    shownFront_ = front;
    shownUnits_ = units;
    QString sum;
    if (total > 0) {
        sum = tr("total %1 %2, front %3 %")
                  .arg(QString::fromStdString(figureText(total, Quantity::mass, units)),
                       unitText(Quantity::mass, units), QString::number(100.0 * front / total, 'f', 1));
    }
    weights_->refresh(sum);
}

DrivelineSection::DrivelineSection(SheetHub& hub, QWidget* parent)
    : Section(tr("Driveline"), parent), hub_(hub) {
    if (hub.state().car.driveline) {
        build();
    } else {
        offer();
    }
    refresh();
}

void DrivelineSection::offer() {
    auto* words = new ToneLabel(ToneLabel::Tone::muted,
                                tr("Without a driveline, pinion and joint angles stay empty."), this);
    words->setWordWrap(true);
    body()->addWidget(words);
    auto* add = new QPushButton(tr("Add driveline"), this);
    add->setToolTip(
        wrappedToolTip(tr("Puts in starting numbers. They are not your car's: measure each one.")));
    body()->addWidget(add);
    connect(add, &QPushButton::clicked, this, [this] {
        hub_.request(SetDriveline{startingDriveline(hub_.state().car)}, carField(Field::pinionAngle));
    });
}

void DrivelineSection::build() {
    body()->addWidget(carRow(hub_, Field::pinionAngle, this));
    pinionNow_ = new ToneLabel(ToneLabel::Tone::muted, QString(), this);
    pinionNow_->setObjectName(QStringLiteral("pinionNow"));
    pinionNow_->setWordWrap(true);
    pinionNow_->setContentsMargins(10, 0, 4, 2);
    body()->addWidget(pinionNow_);
    body()->addWidget(carRow(hub_, Field::outputAngle, this));
    addJoints();
    body()->addWidget(carRow(hub_, Field::jointLimit, this));
    QAbstractButton* remove = smallButton(tr("Remove driveline"), tr("Remove driveline"),
                                          tr("Takes the driveline's numbers out of the car."), this);
    body()->addWidget(remove, 0, Qt::AlignLeft);
    connect(remove, &QAbstractButton::clicked, this, [this] { hub_.request(SetDriveline{std::nullopt}); });
}

void DrivelineSection::addJoints() {
    auto* grid = new QGridLayout;
    grid->setContentsMargins(0, 2, 0, 0);
    grid->setHorizontalSpacing(3);
    grid->setVerticalSpacing(3);
    jointsTitle_ = new ToneLabel(ToneLabel::Tone::muted, QString(), this);
    jointsTitle_->setContentsMargins(4, 0, 0, 0);
    grid->addWidget(jointsTitle_, 0, 0, 1, 4);
    addPointHeadings(grid, 1, 1, Side::center, this);
    const std::pair<Field, QString> joints[] = {{Field::pinionJoint, tr("rear")},
                                                {Field::outputJoint, tr("front")}};
    int row = 2;
    for (const auto& joint : joints) {
        auto* label = new QLabel(joint.second, this);
        label->setContentsMargins(10, 0, 0, 0);
        grid->addWidget(label, row, 0);
        addPointFields(hub_, grid, row, 1, carField(joint.first), this);
        row += 2;
    }
    for (int column = 0; column < 4; ++column) {
        grid->setColumnStretch(column, 4);
    }
    body()->addLayout(grid);
}

void DrivelineSection::refresh() {
    const BenchState& state = hub_.state();
    if (jointsTitle_ != nullptr && state.car.driveline) {
        jointsTitle_->showText(tr("U-joint centers, %1").arg(unitText(Quantity::length, state.style.units)));
        showPinionNow();
    }
}

// The field has the angle as it was measured; bolts and lengths changed since turn the housing away from it.
void DrivelineSection::showPinionNow() {
    const BenchState& state = hub_.state();
    const double measured = state.car.driveline->pinionAngle;
    const double now = state.traceIsCurrent ? state.trace.ride[Figure::pinion] : measured;
    const auto shown = [&](double angle) { return figureText(angle, Quantity::angle, state.style.units); };
    const bool differs = std::isfinite(now) && shown(now) != shown(measured);
    pinionNow_->showText(
        differs ? tr("As measured. In the current holes and lengths, at ride: %1")
                      .arg(QString::fromStdString(withUnit(shown(now), Quantity::angle, state.style.units)))
                : QString());
    pinionNow_->setVisible(differs);
}

TravelSection::TravelSection(SheetHub& hub, QWidget* parent) : Section(tr("Travel"), parent) {
    for (const Field field : {Field::bump, Field::droop, Field::frontRatio, Field::steps}) {
        body()->addWidget(carRow(hub, field, this));
    }
}

NotesField::NotesField(QWidget* parent) : QPlainTextEdit(parent) {
    setTabChangesFocus(true);
    setMinimumHeight(90);
    setAccessibleName(tr("notes"));
    setPlaceholderText(tr("What was changed, where the numbers came from, what to measure again."));
}

void NotesField::showText(const std::string& text) {
    if (text == text_) {
        return;
    }
    const bool typing = document()->isModified();
    text_ = text;
    if (!typing) {
        restore();
    }
}

void NotesField::restore() {
    setPlainText(QString::fromStdString(text_));
    document()->setModified(false);
}

void NotesField::commit() {
    const std::string typed = toPlainText().toStdString();
    document()->setModified(false);
    if (typed != text_) {
        emit rewritten(typed);
    }
}

// Nothing typed: undo and redo are the window's own, as in the other fields.
bool NotesField::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && !document()->isModified()) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
            event->ignore();
            return false;
        }
    }
    return QPlainTextEdit::event(event);
}

void NotesField::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && document()->isModified()) {
        restore();
        return;
    }
    QPlainTextEdit::keyPressEvent(event);
}

void NotesField::focusOutEvent(QFocusEvent* event) {
    QPlainTextEdit::focusOutEvent(event);
    if (event->reason() != Qt::PopupFocusReason && event->reason() != Qt::ActiveWindowFocusReason) {
        commit();
    }
}

NotesSection::NotesSection(SheetHub& hub, QWidget* parent) : Section(tr("Notes"), parent), hub_(hub) {
    notes_ = new NotesField(this);
    body()->addWidget(notes_);
    connect(notes_, &NotesField::rewritten, this,
            [this](const std::string& text) { hub_.request(SetNotes{text}); });
}

void NotesSection::refresh() {
    notes_->showText(hub_.state().car.notes);
}

DatumChoice::DatumChoice(SheetHub& hub, QWidget* parent) : QWidget(parent), hub_(hub) {
    auto* line = new QHBoxLayout(this);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(3);
    auto* words = new ToneLabel(ToneLabel::Tone::muted, tr("Axle holes from"), this);
    words->setContentsMargins(4, 0, 0, 0);
    line->addWidget(words, 1);
    const QString how =
        tr("What heights of axle holes are read from on this sheet. The car keeps heights above "
           "the ground: changing the rear tire radius later leaves those as they are.");
    ground_ = smallButton(tr("ground"), tr("axle hole heights from the ground"), how, this);
    center_ = smallButton(tr("axle center"), tr("axle hole heights from the axle's center"), how, this);
    for (QAbstractButton* button : {ground_, center_}) {
        button->setCheckable(true);
        line->addWidget(button);
    }
    const auto choose = [this](HeightDatum datum) {
        hub_.setDatum(datum);
        showDatum();
    };
    connect(ground_, &QAbstractButton::clicked, this, [choose] { choose(HeightDatum::ground); });
    connect(center_, &QAbstractButton::clicked, this, [choose] { choose(HeightDatum::axleCenter); });
    showDatum();
}

void DatumChoice::showDatum() {
    ground_->setChecked(hub_.datum() == HeightDatum::ground);
    center_->setChecked(hub_.datum() == HeightDatum::axleCenter);
}

}  // namespace bolthole
