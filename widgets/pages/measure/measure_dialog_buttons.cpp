// The buttons under the readings, and the hole that one of them adds.
#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include "geometry/car/fields.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/edits/next_hole.h"
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
    anotherHole_ = makeButton(tr("Another hole on this bracket"), QStringLiteral("Ctrl+H"),
                              tr("Adds a hole with starting numbers and asks for them"));
    anotherHole_->setObjectName(QStringLiteral("measureAnotherHole"));
    connect(anotherHole_, &QPushButton::clicked, this, &MeasureDialog::addHole);
    row->addWidget(anotherHole_);
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

void MeasureDialog::showHoleButton() {
    anotherHole_->setVisible(stop().id.field == Field::holeAt);
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
