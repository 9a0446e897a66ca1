#include "widgets/pages/brackets/plate_section.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QPushButton>
#include <algorithm>

#include "geometry/plates/plate_room.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/words/field_words.h"

namespace bolthole {

PlateSection::PlateSection(const Bracket& bracket, int from, QWidget* parent)
    : Section(tr("Plate"), parent), bracket_(bracket), from_(from) {
    addRules();
    addFrom();
    addCorners();
    addButtons();
}

double PlateSection::originAt(int axis) const {
    return from_ < 0 ? 0.0 : inSideView(bracket_.holes[static_cast<std::size_t>(from_)].at)[axis];
}

// Typed, a number counts as measured; stepped, as what it was.
NumberField* PlateSection::ruleField(const Rule& rule, Quantity quantity, const QString& name,
                                     const QString& howTo) {
    auto* field = new NumberField(quantity, this);
    field->setAccessibleName(name);
    offerHowTo(*field, rule.picture, howTo);
    field->setCheck([this, rule](double value) {
        Plate changed = *bracket_.plate;
        changed.*rule.number = value;
        return refusal(changed).reason;
    });
    connect(field, &NumberField::committed, this, [this, field, rule](double value) {
        Plate changed = *bracket_.plate;
        changed.*rule.number = value;
        changed.starts.*rule.isStarting = field->isStepping() && changed.starts.*rule.isStarting;
        emit plateRequested(changed);
    });
    return field;
}

void PlateSection::offerHowTo(NumberField& field, PlateNumber number, const QString& howTo) {
    field.setHowTo(howTo);
    field.setHowToCall(
        [this, &field, number, howTo] { emit howToRequested(number, field.accessibleName(), howTo); });
}

void PlateSection::addRules() {
    diameter_ =
        ruleField({&Plate::holeDiameter, &PlateStarts::holeDiameter, PlateNumber::holeDiameter},
                  Quantity::length, tr("Hole diameter"), tr("Of every hole of this bracket, by calipers."));
    edge_ = ruleField({&Plate::edgeDistance, &PlateStarts::edgeDistance, PlateNumber::edgeDistance},
                      Quantity::length, tr("Least edge distance"),
                      tr("From a hole's center to the plate's edge, the least you allow. Ask whoever answers "
                         "for the bracket."));
    spacing_ = ruleField({&Plate::holeSpacing, &PlateStarts::holeSpacing, PlateNumber::holeSpacing},
                         Quantity::ratio, tr("Least hole spacing, diameters"),
                         tr("Between the centers of two holes, in hole diameters, the least you allow. Ask "
                            "whoever answers for the bracket."));
    body()->addWidget(new NumberRow(tr("Hole diameter"), diameter_, this));
    body()->addWidget(new NumberRow(tr("Least edge distance, from center"), edge_, this));
    body()->addWidget(new NumberRow(tr("Least hole spacing, in diameters"), spacing_, this));
}

void PlateSection::addFrom() {
    auto* choice = new CalmCombo(this);
    for (int hole = 0; hole < static_cast<int>(bracket_.holes.size()); ++hole) {
        choice->addItem(tr("hole '%1'").arg(holeName(bracket_, hole)));
    }
    choice->addItem(tr("axle line and ground"));
    choice->setCurrentIndex(from_ < 0 ? choice->count() - 1 : from_);
    choice->setAccessibleName(tr("Corners measured from"));
    choice->setToolTip(
        wrappedToolTip(tr("Where your tape or calipers begin. Only what is shown and typed "
                          "changes, not the plate.")));
    connect(choice, &QComboBox::activated, this,
            [this, choice](int index) { emit fromChosen(index == choice->count() - 1 ? -1 : index); });
    body()->addWidget(new BoxRow(tr("Corners measured from"), choice, this));
}

void PlateSection::addCorners() {
    auto* box = new QWidget(this);
    auto* grid = new QGridLayout(box);
    grid->setContentsMargins(0, 2, 0, 0);
    grid->setHorizontalSpacing(3);
    grid->setVerticalSpacing(3);
    grid->setColumnStretch(1, 1);
    grid->setColumnStretch(2, 1);
    const QString titles[] = {tr("corner"), tr("forward"), tr("up")};
    for (int column = 0; column < 3; ++column) {
        auto* title = new ToneLabel(ToneLabel::Tone::muted, titles[column], box);
        title->setAlignment(column == 0 ? Qt::AlignLeft : Qt::AlignRight);
        title->setContentsMargins(column == 0 ? 4 : 0, 0, 5, 0);
        grid->addWidget(title, 0, column);
    }
    for (int corner = 0; corner < static_cast<int>(bracket_.plate->corners.size()); ++corner) {
        addCorner(grid, corner);
    }
    body()->addWidget(box);
}

Plate PlateSection::withCorner(int corner, int axis, double shown) const {
    Plate changed = *bracket_.plate;
    changed.corners[static_cast<std::size_t>(corner)][axis] = shown + originAt(axis);
    return changed;
}

NumberField* PlateSection::cornerField(int corner, int axis) {
    auto* field = new NumberField(Quantity::length, this);
    field->setProperty("compact", true);
    field->setFont(textFont(TextSize::small));
    field->setMinimumWidth(64);
    field->setAccessibleName(axis == 0 ? tr("Corner %1, forward").arg(corner + 1)
                                       : tr("Corner %1, up").arg(corner + 1));
    offerHowTo(*field, axis == 0 ? PlateNumber::cornerForward : PlateNumber::cornerUp,
               axis == 0 ? tr("How far toward the front of the car; toward the rear is minus.")
                         : tr("How far up; down is minus."));
    field->setCheck(
        [this, corner, axis](double shown) { return refusal(withCorner(corner, axis, shown)).reason; });
    connect(field, &NumberField::committed, this, [this, field, corner, axis](double shown) {
        Plate changed = withCorner(corner, axis, shown);
        if (!field->isStepping()) {
            changed.starts.corners.erase({static_cast<std::size_t>(corner), axis});
        }
        emit plateRequested(changed);
    });
    return field;
}

void PlateSection::addCorner(QGridLayout* grid, int corner) {
    const int row = 1 + 2 * corner;
    auto* number = new ToneLabel(ToneLabel::Tone::plain, QString::number(corner + 1), this);
    number->setContentsMargins(4, 0, 0, 0);
    grid->addWidget(number, row, 0);
    const CornerRow fields{cornerField(corner, 0), cornerField(corner, 1)};
    grid->addWidget(fields.forward, row, 1);
    grid->addWidget(fields.up, row, 2);
    auto* note = new NoteLabel(this);
    note->watch(fields.forward, tr("forward"));
    note->watch(fields.up, tr("up"));
    grid->addWidget(note, row + 1, 0, 1, 7);
    addTools(grid, corner);
    corners_.push_back(fields);
}

void PlateSection::addTools(QGridLayout* grid, int corner) {
    const int count = static_cast<int>(bracket_.plate->corners.size());
    const int row = 1 + 2 * corner;
    const auto add = [&](int column, const QString& text, const QString& name, const QString& tip,
                         bool enabled, auto act) {
        QAbstractButton* button = smallButton(text, name.arg(corner + 1), tip, this);
        button->setEnabled(enabled);
        connect(button, &QAbstractButton::clicked, this, act);
        grid->addWidget(button, row, column);
    };
    add(3, QStringLiteral("↑"), tr("Move corner %1 up the list"),
        tr("Earlier in the order around the plate."), corner > 0,
        [this, corner] { swap(corner, corner - 1); });
    add(4, QStringLiteral("↓"), tr("Move corner %1 down the list"),
        tr("Later in the order around the plate."), corner < count - 1,
        [this, corner] { swap(corner, corner + 1); });
    add(5, QStringLiteral("+"), tr("Add a corner after corner %1"),
        tr("A new corner halfway to the next one; then measure it."),
        count < static_cast<int>(kMaxPlateCorners), [this, corner] { insertAfter(corner); });
    add(6, QStringLiteral("−"), tr("Remove corner %1"), tr("Takes this corner out of the outline."),
        count > static_cast<int>(kMinPlateCorners), [this, corner] { remove(corner); });
}

void PlateSection::addButtons() {
    auto* row = new QHBoxLayout;
    QAbstractButton* rectangle = smallButton(
        tr("Rectangle around the holes"), tr("Rectangle around the holes"),
        tr("Puts a rectangle around the holes in place of these corners, to be measured over."), this);
    QAbstractButton* away = smallButton(tr("Take the plate away"), tr("Take the plate away"),
                                        tr("The bracket's holes stay."), this);
    connect(rectangle, &QAbstractButton::clicked, this, &PlateSection::rectangleRequested);
    connect(away, &QAbstractButton::clicked, this, &PlateSection::removalRequested);
    row->addWidget(rectangle);
    row->addWidget(away);
    row->addStretch(1);
    body()->addLayout(row);
}

void PlateSection::insertAfter(int corner) {
    Plate changed = *bracket_.plate;
    const auto at = static_cast<std::size_t>(corner);
    const Eigen::Vector2d middle =
        (changed.corners[at] + changed.corners[(at + 1) % changed.corners.size()]) / 2;
    insertCorner(changed, at + 1, middle);
    emit cornersRequested(changed, corner + 1);
}

void PlateSection::remove(int corner) {
    Plate changed = *bracket_.plate;
    removeCorner(changed, static_cast<std::size_t>(corner));
    emit cornersRequested(changed, std::min(corner, static_cast<int>(changed.corners.size()) - 1));
}

void PlateSection::swap(int corner, int other) {
    Plate changed = *bracket_.plate;
    swapCorners(changed, static_cast<std::size_t>(corner), static_cast<std::size_t>(other));
    emit plateRequested(changed);
}

void PlateSection::showPlate(const Bracket& bracket, NumberStyle style) {
    bracket_ = bracket;
    const Plate& plate = *bracket_.plate;
    diameter_->showNumber(plate.holeDiameter, style);
    edge_->showNumber(plate.edgeDistance, style);
    spacing_->showNumber(plate.holeSpacing, style);
    for (std::size_t corner = 0; corner < corners_.size(); ++corner) {
        corners_[corner].forward->showNumber(plate.corners[corner].x() - originAt(0), style);
        corners_[corner].up->showNumber(plate.corners[corner].y() - originAt(1), style);
    }
    showOrigins();
}

void PlateSection::showOrigins() {
    const PlateStarts& starts = bracket_.plate->starts;
    const auto show = [](NumberField* field, bool isStarting) {
        field->setOrigin(isStarting ? Origin::starting : Origin::measured);
    };
    show(diameter_, starts.holeDiameter);
    show(edge_, starts.edgeDistance);
    show(spacing_, starts.holeSpacing);
    for (std::size_t corner = 0; corner < corners_.size(); ++corner) {
        show(corners_[corner].forward, starts.corners.contains({corner, 0}));
        show(corners_[corner].up, starts.corners.contains({corner, 1}));
    }
}

// The section may not be on the screen yet.
void PlateSection::enterCorner(int corner) {
    if (corner >= 0 && corner < static_cast<int>(corners_.size())) {
        NumberField* field = corners_[static_cast<std::size_t>(corner)].forward;
        QMetaObject::invokeMethod(field, "setFocus", Qt::QueuedConnection);
        QMetaObject::invokeMethod(field, "selectAll", Qt::QueuedConnection);
    }
}

}  // namespace bolthole
