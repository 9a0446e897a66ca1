// One car worked out by hand for the tests of edits, and the addresses of all its numbers.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "geometry/car/fields.h"
#include "geometry/edits/edit.h"

namespace bolthole {

/// Every field there is.
inline std::vector<Field> allFields() {
    std::vector<Field> fields;
    for (const FieldRule& rule : fieldRules()) {
        fields.push_back(rule.field);
    }
    return fields;
}

/// A hole at x, y, z inches.
inline Hole hole(std::string name, double x, double y, double z) {
    return {-1, std::move(name), Eigen::Vector3d(x, y, z) * kMetresPerInch};
}

/// A triangulated four-link with two lower axle holes, adjusters on the uppers, a guide, a driveline, a load
/// that was aboard when weighed, and a spring with two axle holes.
inline Car plainCar() {
    Car car;
    car.title = "Plain";
    car.wheelbase = 116 * kMetresPerInch;
    car.rearTireRadius = 13.5 * kMetresPerInch;
    car.frontTireRadius = 13 * kMetresPerInch;
    car.cornerWeights = {470, 450, 360, 350};
    car.cgHeight = 22 * kMetresPerInch;
    Link lower;
    lower.name = "lower";
    lower.chassis.holes = {hole("front", 20, 18, 10.5)};
    lower.axle.holes = {hole("bottom", 0.5, 21, 7.25), hole("top", 0.5, 21, 9.75)};
    Link upper;
    upper.name = "upper";
    upper.chassis.holes = {hole("", 12, 18, 17)};
    upper.axle.holes = {hole("ear", 1, 6, 19)};
    upper.adjuster = Adjuster{0.0015875, 2};
    Link guide;
    guide.name = "guide";
    guide.kind = LinkKind::guide;
    guide.side = Side::center;
    guide.chassis.holes = {hole("middle", -5, 0, 13)};
    guide.axle.holes = {hole("middle", -5, 0, 13)};
    car.links = {lower, upper, guide};
    car.driveline = Driveline{0.026, {0.28, 0, 0.343}, 0.057, {1.5, 0, 0.387}};
    EnteredBallast fuel;
    fuel.name = "fuel";
    fuel.mass = 40;
    fuel.at.at = {-0.4, 0, 0.4};
    fuel.weighed = 100;
    car.ballast = {fuel};
    SuspensionPart coil;
    coil.name = "coil";
    coil.chassis.holes = {hole("perch", 2, 17, 22)};
    coil.axle.holes = {hole("low", 2, 17, 11), hole("high", 2, 17, 12)};
    car.springs = {coil};
    return car;
}

/// Address of a link's written length.
inline FieldId lengthOf(int link) {
    return {.field = Field::linkLength, .link = link};
}

/// The address of every number of that scope, absent ones included; `from` names the part.
inline void addIds(Scope scope, FieldId from, std::vector<FieldId>& ids) {
    for (const Field field : allFields()) {
        if (ruleOf(field).scope != scope) {
            continue;
        }
        FieldId id = from;
        id.field = field;
        if (!ruleOf(field).hasAxis) {
            ids.push_back(id);
            continue;
        }
        for (id.axis = 0; id.axis < 3; ++id.axis) {
            ids.push_back(id);
        }
    }
}

/// The same for the holes of a bracket.
inline void addHoleIds(Scope scope, FieldId from, const Bracket& bracket, std::vector<FieldId>& ids) {
    for (from.hole = 0; from.hole < static_cast<int>(bracket.holes.size()); ++from.hole) {
        addIds(scope, from, ids);
    }
}

/// The address of every number a car can have, absent ones included.
inline std::vector<FieldId> allIds(const Car& car) {
    std::vector<FieldId> ids;
    for (const Scope scope : {Scope::car, Scope::driveline, Scope::target}) {
        addIds(scope, {}, ids);
    }
    for (int link = 0; link < static_cast<int>(car.links.size()); ++link) {
        addIds(Scope::link, {.link = link}, ids);
        for (const End end : {End::chassis, End::axle}) {
            const Bracket& bracket = car.links[static_cast<std::size_t>(link)].bracket(end);
            addHoleIds(Scope::hole, {.link = link, .end = end}, bracket, ids);
        }
    }
    for (int item = 0; item < static_cast<int>(car.ballast.size()); ++item) {
        addIds(Scope::ballast, {.item = item}, ids);
    }
    for (int item = 0; item < static_cast<int>(car.springs.size()); ++item) {
        addIds(Scope::spring, {.item = item}, ids);
        for (const End end : {End::chassis, End::axle}) {
            const Bracket& bracket = car.springs[static_cast<std::size_t>(item)].bracket(end);
            addHoleIds(Scope::mount, {.end = end, .item = item}, bracket, ids);
        }
    }
    return ids;
}

}  // namespace bolthole
