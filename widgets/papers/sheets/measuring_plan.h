// What there is to measure on a car, in the order one walks around it: areas, points numbered once for
// picture and table, and the numbers to write down. Follows from the car's own links, springs and driveline.
#pragma once

#include <QString>
#include <array>
#include <optional>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/car/field_id.h"

namespace bolthole {

/// The parts of a car that a sheet is made of.
enum class AreaKind { leftLinks, rightLinks, wheels, driveline, springs, weights };

/// A point of an area's picture.
struct PlanPoint {
    int number = 1;        ///< as picture and table call it; from 1 in each area
    Eigen::Vector3d at;    ///< m, car frame, where the car at hand has it
    int group = 0;         ///< points of one bracket stand together
    bool isEndOn = false;  ///< belongs to a part that runs across the car: numbered in the view from behind
    bool isChassis = true;
    bool isNumbered = true;  ///< else it is drawn alone
};

/// A part drawn as a line between two of the car's points.
struct PlanLine {
    Eigen::Vector3d from;
    Eigen::Vector3d to;
    bool isThick = true;  ///< a link or spring; else a shaft or strap
    bool isEndOn = false;
};

/// A row of a table: a point, or a wheel.
struct PlanRow {
    int number = 1;
    QString name;
    bool hasTick = false;                            ///< one hole of several: which one is bolted is ticked
    std::array<std::optional<FieldId>, 3> fields{};  ///< by the table's columns; nothing: not measured
};

/// Up to three numbers a row, each measured twice.
struct PlanTable {
    std::array<QString, 3> heads;
    std::vector<PlanRow> rows;
};

/// A single number, measured twice.
struct PlanNumber {
    QString letter;  ///< of its place in the picture; empty: it is not drawn
    QString label;
    FieldId id;
    std::array<int, 2> between{};  ///< the points of the picture that it is taken between; 0: none
};

/// How the picture has the place of a number: its letter, or "3–7" between two points. Empty: not at all.
[[nodiscard]] QString signOf(const PlanNumber& number);

/// Numbers that are known or read once: what a rod may be set to.
struct PlanLimits {
    QString name;  ///< of the part
    std::vector<PlanNumber> numbers;
};

/// One area.
struct PlanArea {
    AreaKind kind = AreaKind::leftLinks;
    QString title;
    std::vector<PlanLine> lines;
    std::vector<PlanPoint> points;
    std::vector<PlanTable> tables;
    /// Boxes for holes that the car does not have: two more of every bracket of a link that has one hole
    /// alone. A row has the number of that hole's point, and its fields, for their units.
    std::optional<PlanTable> spareHoles;
    std::vector<PlanNumber> numbers;
    std::vector<PlanLimits> limits;
    QString hint;     ///< how the table's numbers are taken
    QString caution;  ///< beyond the one that stands on every sheet; may be empty
};

/// The areas of a car, those with nothing to measure left out. Holes that are planned and not drilled are
/// left out, too, and so is the eye of an arm that stands in the hole it is bolted to.
[[nodiscard]] std::vector<PlanArea> measuringPlan(const Car& car);

}  // namespace bolthole
