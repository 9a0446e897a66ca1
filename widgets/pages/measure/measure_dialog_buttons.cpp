// The buttons under the readings, and the hole that one of them adds.
#include <QCheckBox>
#include <QHBoxLayout>
#include <QPushButton>
#include <QShortcut>
#include <QVBoxLayout>

#include "geometry/car/fields.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/edits/next_hole.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/pages/measure/measure_dialog.h"

namespace bolthole {

QVBoxLayout* MeasureDialog::buildButtons(QWidget* face) {
    auto* all = new QVBoxLayout;
    auto* row = new QHBoxLayout;
    QPushButton* back = makeButton(tr("Previous"), QStringLiteral("PgUp"), tr("The number before"));
    QPushButton* next = makeButton(tr("Next"), QStringLiteral("PgDown"), tr("Take it and go on"));
    QPushButton* skipped = makeButton(tr("Skip"), QStringLiteral("Ctrl+PgDown"),
                                      tr("Leave it as it is and go to the next that is left"));
    connect(back, &QPushButton::clicked, this, [this] { goBy(-1); });
    connect(next, &QPushButton::clicked, this, [this] { goBy(1); });
    connect(skipped, &QPushButton::clicked, this, &MeasureDialog::skip);
    row->addWidget(back);
    row->addWidget(next);
    row->addWidget(skipped);
    anotherHole_ =
        makeButton(tr("Another hole on this bracket"), QStringLiteral("Ctrl+H"),
                   tr("Adds a hole with starting numbers and asks for them; its name is on the car sheet"));
    anotherHole_->setObjectName(QStringLiteral("measureAnotherHole"));
    connect(anotherHole_, &QPushButton::clicked, this, &MeasureDialog::addHole);
    row->addWidget(anotherHole_);
    boltedHere_ = new QCheckBox(tr("Bolted here"), this);
    boltedHere_->setObjectName(QStringLiteral("measureBoltedHere"));
    auto* bolt = new QShortcut(QKeySequence(QStringLiteral("Ctrl+B")), this);
    boltedHere_->setToolTip(wrappedToolTip(
        tr("The link is bolted in this hole, as ticked on the sheet. %1").arg(bolt->key().toString())));
    connect(bolt, &QShortcut::activated, this, &MeasureDialog::boltHere);
    connect(boltedHere_, &QCheckBox::clicked, this, &MeasureDialog::boltHere);
    row->addWidget(boltedHere_);
    auto* close = new QPushButton(tr("Close"), this);
    close->setAutoDefault(false);
    close->setToolTip(tr("What is typed is taken. Escape"));
    connect(close, &QPushButton::clicked, this, &QDialog::close);
    row->addWidget(close);
    row->addStretch(1);
    all->addLayout(row);
    all->addWidget(
        new ToneLabel(ToneLabel::Tone::muted,
                      tr("Enter: to the second reading, Enter again: on. Nothing typed: left alone."), face));
    return all;
}

void MeasureDialog::showHoleButtons() {
    const FieldId& at = stop().id;
    const bool isHole = at.field == Field::holeAt;
    anotherHole_->setVisible(isHole);
    const Bracket* bracket = isHole ? &findLink(car_, at.link)->bracket(at.end) : nullptr;
    const bool isInUse = bracket != nullptr && bracket->use == at.hole;
    boltedHere_->setVisible(bracket != nullptr && bracket->holes.size() > 1);
    boltedHere_->setChecked(isInUse);
    boltedHere_->setEnabled(!isInUse);  // it is bolted out of here by bolting it elsewhere
}

// What is typed stays: the tick has nothing to do with the number.
void MeasureDialog::boltHere() {
    const FieldId at = stop().id;
    if (!done_ && boltedHere_->isVisible() && findLink(car_, at.link)->bracket(at.end).use != at.hole) {
        if (boltedHere_->hasFocus()) {  // it is disabled next; one goes on typing
            field_[readings_[0] ? 1 : 0]->setFocus(Qt::OtherFocusReason);
        }
        emit edited(UseHole{at.link, at.end, at.hole});
        showHoleButtons();  // refused, it is not ticked
    }
}

void MeasureDialog::addHole() {
    const FieldId at = stop().id;
    if (at.field != Field::holeAt || !commitPending()) {
        return;
    }
    const auto holes = [this, at]() -> const std::vector<Hole>& {
        return findLink(car_, at.link)->bracket(at.end).holes;
    };
    const std::size_t place = holes().size();
    Hole added = nextHole(findLink(car_, at.link)->bracket(at.end), state_->style.units);
    startFrom(added);
    emit edited(AddHole{at.link, at.end, added});
    if (holes().size() > place) {  // else it was refused, which the window says
        begin(holeField(at.link, at.end, static_cast<int>(place), 0));
    }
}

}  // namespace bolthole
