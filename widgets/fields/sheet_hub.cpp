#include "widgets/fields/sheet_hub.h"

#include <QApplication>
#include <algorithm>

#include "geometry/car/fields.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/uncertainty/propagation.h"
#include "geometry/units/uncertainty_text.h"
#include "widgets/words/accuracy_reading.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

bool sameFaults(const std::vector<Fault>& a, const std::vector<Fault>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](const Fault& x, const Fault& y) { return x.id == y.id && x.reason == y.reason; });
}

}  // namespace

PointId pointOf(const FieldId& id) {
    switch (id.field) {
        case Field::holeAt:
            return {PointId::Kind::hole, id.link, id.end, id.hole};
        case Field::pinionJoint:
            return {PointId::Kind::joint, -1, End::axle, -1};
        case Field::outputJoint:
            return {PointId::Kind::joint, -1, End::chassis, -1};
        default:
            return {};
    }
}

void SheetHub::request(const Edit& edit, const FieldId& next) {
    targetFocus_ = next;
    emit edited(edit);
    targetFocus_.reset();
}

NumberField* SheetHub::makeField(const FieldId& id, QWidget* parent) {
    auto* field = new NumberField(quantityOf(id.field), parent);
    const FieldWords words = wordsFor(state_->car, id);
    field->setAccessibleName(words.name);
    field->setHowTo(words.howTo);
    field->setMayBeEmpty(mayBeAbsent(state_->car, id));
    field->setCheck(
        [this, id](double shown) { return refusalIn(id, fromShown(id, shown), state_->style.units); });
    connect(field, &NumberField::committed, this, [this, id, field](double shown) {
        request(SetNumber{id, fromShown(id, shown),
                          field->isStepping() ? SetNumber::By::stepped : SetNumber::By::typed});
    });
    connect(field, &NumberField::cleared, this, [this, id] { request(ClearNumber{id}); });
    connect(field, &NumberField::confirmed, this, [this, id, field] {
        emit confirmed(id);
        auto* now = qobject_cast<NumberField*>(editor(id));
        if (now != nullptr && now != field) {
            now->goOn();  // the number brought other fields: the one it was typed into is gone
        }
    });
    connect(field, &NumberField::entered, this, [this, id] { select(id); });
    field->setHowToCall([this, id] { emit howToRequested(id); });
    tieNumberUncertainty(id, field);
    entries_.push_back({id, field, field});
    return field;
}

void SheetHub::tieNumberUncertainty(const FieldId& id, NumberField* field) {
    if (id.uncertainty || !mayHaveUncertainty(id.field)) {
        return;
    }
    field->setUncertaintyWords([this, id] {
        return numberAt(state_->car, id) ? numberUncertaintyWords(state_->car, id, state_->style.units)
                                         : QString();
    });
    connect(field, &NumberField::uncertaintyRequested, this, [this, id] {
        FieldId uncertainty = id;
        uncertainty.uncertainty = true;
        if (numberAt(state_->car, id)) {
            emit uncertaintyRequested(uncertainty);
        }
    });
}

void SheetHub::addEditor(const FieldId& id, QWidget* editor) {
    entries_.push_back({id, nullptr, editor});
}

void SheetHub::clear() {
    for (const Entry& entry : entries_) {
        entry.editor->disconnect(this);
    }
    entries_.clear();
    shownFaults_.clear();
}

bool SheetHub::fromCenter(const FieldId& id) const {
    return id.field == Field::holeAt && id.end == End::axle && id.axis == 2 && !id.uncertainty;
}

bool SheetHub::asHalfWidth(const FieldId& id) const {
    const bool isTool = ruleOf(id.field).scope == Scope::tool || id.field == Field::scaleUncertainty ||
                        id.field == Field::ticketUncertainty;
    return id.uncertainty || isTool;
}

double SheetHub::toShown(const FieldId& id, double value) const {
    if (asHalfWidth(id)) {
        return kCoverage95 * value;
    }
    return fromCenter(id) ? shownHeight(value, datum_, state_->car.rearTireRadius) : value;
}

double SheetHub::fromShown(const FieldId& id, double shown) const {
    if (asHalfWidth(id)) {
        return shown / kCoverage95;
    }
    return fromCenter(id) ? heightFromShown(shown, datum_, state_->car.rearTireRadius) : shown;
}

void SheetHub::showNumbers() {
    for (const Entry& entry : entries_) {
        if (entry.field == nullptr) {
            continue;
        }
        std::optional<double> number = numberAt(state_->car, entry.id);
        if (number) {
            number = toShown(entry.id, *number);
        }
        entry.field->showNumber(number, state_->style);
        entry.field->setOrigin(originOf(state_->car, entry.id));
    }
    showFaults();
    showWarnings();
}

// Of the car's own numbers; what is doubtful about a link or a spring its section says.
void SheetHub::showWarnings() {
    for (const Entry& entry : entries_) {
        if (entry.field == nullptr || entry.id.link >= 0 || entry.id.item >= 0) {
            continue;
        }
        const auto found = std::ranges::find_if(state_->warnings, [&](const Warning& warning) {
            return warning.id == entry.id && !warning.isOfWhole;
        });
        entry.field->setWarning(
            found == state_->warnings.end() ? QString() : QString::fromStdString(sentence(found->finding)));
    }
}

void SheetHub::showFaults() {
    if (sameFaults(shownFaults_, state_->faults)) {
        return;
    }
    shownFaults_ = state_->faults;
    for (const Entry& entry : entries_) {
        const auto found = std::find_if(shownFaults_.begin(), shownFaults_.end(),
                                        [&](const Fault& fault) { return fault.id == entry.id; });
        if (entry.field != nullptr) {
            entry.field->setFault(found == shownFaults_.end() ? QString()
                                                              : QString::fromStdString(found->reason));
        }
    }
}

void SheetHub::linkComes(int link) {
    for (int& open : openLimits) {
        open += open >= link ? 1 : 0;
    }
}

void SheetHub::linkGoes(int link) {
    std::erase(openLimits, link);
    for (int& open : openLimits) {
        open -= open > link ? 1 : 0;
    }
}

void SheetHub::forgetCar() {
    acceptedLengths.clear();
    openLimits.clear();
}

void SheetHub::refreshWords() {
    for (const Entry& entry : entries_) {
        entry.editor->setAccessibleName(wordsFor(state_->car, entry.id).name);
    }
}

QWidget* SheetHub::editor(FieldId id) const {
    if (ruleOf(id.field).hasAxis && id.axis < 0) {
        id.axis = 0;
    }
    const auto found =
        std::find_if(entries_.begin(), entries_.end(), [&](const Entry& entry) { return entry.id == id; });
    return found == entries_.end() ? nullptr : found->editor;
}

std::optional<FieldId> SheetHub::focused() const {
    const QWidget* focus = QApplication::focusWidget();
    const auto found = std::find_if(entries_.begin(), entries_.end(),
                                    [&](const Entry& entry) { return entry.editor == focus; });
    return focus == nullptr || found == entries_.end() ? std::nullopt : std::optional(found->id);
}

void SheetHub::commitAll() {
    const std::vector<Entry> entries = entries_;  // an edit may rebuild the sheet
    for (const Entry& entry : entries) {
        if (entry.field != nullptr) {
            entry.field->commit();
        }
    }
}

void SheetHub::restoreAll() {
    for (const Entry& entry : entries_) {
        if (entry.field != nullptr && entry.field->isEdited()) {
            entry.field->restore();
        }
    }
}

void SheetHub::setDatum(HeightDatum datum) {
    if (datum_ == datum) {
        return;
    }
    commitAll();
    datum_ = datum;
    if (state_ != nullptr) {
        showNumbers();
    }
    emit datumChanged();
}

void SheetHub::select(const FieldId& id) {
    const PointId point = pointOf(id);
    if (point.kind != PointId::Kind::none && !(point == state_->selection)) {
        emit selected(point);
    }
}

}  // namespace bolthole
