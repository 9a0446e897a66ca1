// Ties the car sheet's fields to the numbers of the car: one registry, one way in, one way out.
#pragma once

#include <QObject>
#include <optional>
#include <vector>

#include "geometry/kinematics/tape.h"
#include "widgets/kit/number_field.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

/// Knows every field by its FieldId. Shows the car's numbers in them and turns what is typed into edits.
class SheetHub : public QObject {
    Q_OBJECT
  public:
    using QObject::QObject;

    /// The state the sheet was last shown; only after the first showNumbers().
    [[nodiscard]] const BenchState& state() const { return *state_; }
    [[nodiscard]] bool hasState() const { return state_ != nullptr; }
    /// Reads `state` in place from now on: it must outlive the sheet.
    void setState(const BenchState& state) { state_ = &state; }

    /// A new field for the number `id`, with its words, limits and signals; shown from the next
    /// showNumbers().
    [[nodiscard]] NumberField* makeField(const FieldId& id, QWidget* parent);
    /// Another editor that stands for `id`, so that it can be found.
    void addEditor(const FieldId& id, QWidget* editor);
    /// Forgets all fields, before they are rebuilt.
    void clear();

    /// Brings every field up to date; touches only those whose number, style or fault changed.
    void showNumbers();
    /// Names the parts anew in tool tips and for screen readers.
    void refreshWords();

    /// The editor of `id`; the first axis where a hole or joint is meant as a whole; null where there is
    /// none.
    [[nodiscard]] QWidget* editor(FieldId id) const;
    /// The number whose editor has the keyboard focus.
    [[nodiscard]] std::optional<FieldId> focused() const;
    /// Takes or drops what is still being typed in any number field.
    void commitAll();
    void restoreAll();

    [[nodiscard]] HeightDatum datum() const { return datum_; }
    /// Whether axle holes are entered from the ground or from the axle's center.
    void setDatum(HeightDatum datum);

    /// Emits edited().
    void request(const Edit& edit) { emit edited(edit); }
    /// Emits edited() for a change that brings or removes fields: if they are built anew, `next` is entered.
    void request(const Edit& edit, const FieldId& next);
    /// The field to enter after fields were built anew, where one was asked for.
    [[nodiscard]] const std::optional<FieldId>& targetFocus() const { return targetFocus_; }
    /// Emits selected() for the hole or joint `id` belongs to, unless it is selected already.
    void select(const FieldId& id);

    /// A written length a person said is right though the holes disagree. Holds while neither changes, m.
    struct AcceptedLength {
        int link;
        double length;
        double holeDistance;
        bool operator==(const AcceptedLength&) const = default;
    };
    std::vector<AcceptedLength> acceptedLengths;
    /// Links whose limits are unfolded.
    std::vector<int> openLimits;
    /// A link is about to come or go at this index: what is remembered about those behind it moves along.
    void linkComes(int link);
    void linkGoes(int link);
    /// Forgets what is remembered about one car, before another is shown.
    void forgetCar();

  signals:
    void edited(const Edit& edit);
    void selected(const PointId& point);
    void datumChanged();
    void confirmed(const FieldId& id);  ///< Enter was pressed in the field
    /// The person asks for the uncertainty of a number; `id` is that of its own uncertainty.
    void uncertaintyRequested(const FieldId& id);
    void howToRequested(const FieldId& id);  ///< how to measure it is asked for in its field

  private:
    struct Entry {
        FieldId id;
        NumberField* field;  // null: an editor that is not a number field
        QWidget* editor;
    };
    [[nodiscard]] bool fromCenter(const FieldId& id) const;
    [[nodiscard]] bool asHalfWidth(const FieldId& id) const;
    [[nodiscard]] double toShown(const FieldId& id, double value) const;
    [[nodiscard]] double fromShown(const FieldId& id, double shown) const;
    void showFaults();
    void showWarnings();
    void tieNumberUncertainty(const FieldId& id, NumberField* field);

    const BenchState* state_ = nullptr;
    std::vector<Entry> entries_;
    HeightDatum datum_ = HeightDatum::ground;
    std::vector<Fault> shownFaults_;
    std::optional<FieldId> targetFocus_;
};

/// The hole or joint a number belongs to; kind none where it belongs to neither.
[[nodiscard]] PointId pointOf(const FieldId& id);

/// FieldId of a number of a link.
[[nodiscard]] inline FieldId linkField(Field field, int link) {
    return {field, link, End::chassis, -1, -1};
}

/// FieldId of a number of the whole car, or one coordinate of a joint.
[[nodiscard]] inline FieldId carField(Field field, int axis = -1) {
    return {field, -1, End::chassis, -1, axis};
}

}  // namespace bolthole
