// The fields of a bracket's plate: its rules, and its corners one by one.
#pragma once

#include <vector>

#include "geometry/car/car.h"
#include "geometry/units/text.h"
#include "widgets/kit/section.h"
#include "widgets/papers/howto/how_to_picture.h"

class QGridLayout;

namespace bolthole {

class CalmCombo;
class NumberField;

/// Fields for one plate. The number of corners is fixed; a plate with another number gets another section.
/// Corners are shown from a point the person measures from: a hole of the bracket, or the car's own origin.
class PlateSection : public Section {
    Q_OBJECT
  public:
    /// `bracket` must have a plate. `from`: index of the hole corners are measured from, -1: the car's
    /// origin.
    PlateSection(const Bracket& bracket, int from, QWidget* parent = nullptr);

    /// Shows the numbers of the same plate, changed.
    void showPlate(const Bracket& bracket, NumberStyle style);
    /// Enters a corner's first field.
    void enterCorner(int corner);

  signals:
    void plateRequested(const bolthole::Plate& plate);
    /// The same, and a corner to be entered then, as one came or went.
    void cornersRequested(const bolthole::Plate& plate, int corner);
    void fromChosen(int hole);
    void rectangleRequested();
    void removalRequested();
    /// How a number is measured is asked for in its field.
    void howToRequested(bolthole::PlateNumber number, const QString& name, const QString& howTo);

  private:
    struct CornerRow {
        NumberField* forward;
        NumberField* up;
    };
    /// One of the numbers a hole must keep to.
    struct Rule {
        double Plate::*number;
        bool PlateStarts::*isStarting;
        PlateNumber picture;
    };
    void addRules();
    void addFrom();
    void addCorners();
    void addCorner(QGridLayout* grid, int corner);
    void addTools(QGridLayout* grid, int corner);
    void addButtons();
    [[nodiscard]] NumberField* cornerField(int corner, int axis);
    [[nodiscard]] NumberField* ruleField(const Rule& rule, Quantity quantity, const QString& name,
                                         const QString& howTo);
    void showOrigins();
    void offerHowTo(NumberField& field, PlateNumber number, const QString& howTo);
    [[nodiscard]] Plate withCorner(int corner, int axis, double shown) const;
    [[nodiscard]] double originAt(int axis) const;
    void insertAfter(int corner);
    void swap(int corner, int other);
    void remove(int corner);

    Bracket bracket_;
    int from_;
    NumberField* diameter_ = nullptr;
    NumberField* edge_ = nullptr;
    NumberField* spacing_ = nullptr;
    std::vector<CornerRow> corners_;
};

}  // namespace bolthole
