// findFaults() of geometry/edit.h: what keeps a car from being computed. Holds for any Car whatever.
#include <cmath>

#include "geometry/edit.h"
#include "geometry/fields.h"
#include "geometry/text.h"

namespace bolthole {

namespace {

/// The value as the car file writes it: "-5 mm", "not a number".
std::string fileWords(double value, Quantity quantity) {
    if (!std::isfinite(value)) {
        return std::isnan(value) ? "not a number" : "infinity";
    }
    const std::string number = plainDecimal(value / fileUnit(quantity));
    if (quantity == Quantity::angle) {
        return number + " deg";
    }
    return withUnit(number, quantity, Units::metric);
}

class FaultFinder {
  public:
    explicit FaultFinder(const Car& car) : car_(car) {}

    std::vector<Fault> find();

  private:
    void add(const FieldId& id, std::string path, std::string reason) {
        faults_.push_back({id, std::move(path), std::move(reason)});
    }
    void check(const FieldId& id);
    void checkPoint(FieldId id);
    void checkLink(int index);
    bool checkBracket(int index, End end);
    void checkReach(int index);

    const Car& car_;
    std::vector<Fault> faults_;
};

/// A number that is absent is no fault.
void FaultFinder::check(const FieldId& id) {
    const std::optional<double> value = numberAt(car_, id);
    if (!value) {
        return;
    }
    if (const std::string expected = refusal(id, *value); !expected.empty()) {
        add(id, jsonPath(id), "expected " + expected + ", found " + fileWords(*value, quantityOf(id.field)));
    }
}

void FaultFinder::checkPoint(FieldId id) {
    for (id.axis = 0; id.axis < 3; ++id.axis) {
        check(id);
    }
}

/// Whether the hole in use exists.
bool FaultFinder::checkBracket(int index, End end) {
    const Bracket& bracket = car_.links[static_cast<std::size_t>(index)].bracket(end);
    const FieldId id{.field = Field::holeAt, .link = index, .end = end};
    const std::size_t count = bracket.holes.size();
    if (count == 0 || count > kMaxHoles) {
        add(id, jsonPath(id),
            "expected 1 to " + std::to_string(kMaxHoles) + " holes, found " + std::to_string(count));
    }
    for (std::size_t hole = 0; hole < count && hole < kMaxHoles; ++hole) {
        checkPoint({.field = Field::holeAt, .link = index, .end = end, .hole = static_cast<int>(hole)});
    }
    const bool exists = bracket.use >= 0 && static_cast<std::size_t>(bracket.use) < count;
    if (!exists && count > 0) {
        add(id, bracketPath(index, end) + ".use",
            "expected the index of a hole, 0 to " + std::to_string(count - 1) + ", found " +
                std::to_string(bracket.use));
    }
    return exists;
}

/// A rod without a written length needs its holes apart, or it has neither length nor direction.
void FaultFinder::checkReach(int index) {
    const Link& link = car_.links[static_cast<std::size_t>(index)];
    if (link.kind == LinkKind::rod && !link.length && holeDistance(link) == 0) {
        add({.field = Field::linkLength, .link = index}, linkPath(index),
            "expected a rod's holes in use apart, found both at the same place");
    }
}

void FaultFinder::checkLink(int index) {
    for (int field = static_cast<int>(Field::linkLength); field <= static_cast<int>(Field::rodEndLimit);
         ++field) {
        check({.field = static_cast<Field>(field), .link = index});
    }
    const bool chassis = checkBracket(index, End::chassis);
    const bool axle = checkBracket(index, End::axle);
    if (chassis && axle) {
        checkReach(index);
    }
}

std::vector<Fault> FaultFinder::find() {
    for (int field = 0; field <= static_cast<int>(Field::frontRatio); ++field) {
        check({.field = static_cast<Field>(field)});
    }
    if (car_.links.size() > kMaxLinks) {
        add({}, "links",
            "expected at most " + std::to_string(kMaxLinks) + " links, found " +
                std::to_string(car_.links.size()));
    }
    for (std::size_t link = 0; link < car_.links.size() && link < kMaxLinks; ++link) {
        checkLink(static_cast<int>(link));
    }
    check({.field = Field::pinionAngle});
    checkPoint({.field = Field::pinionJoint});
    check({.field = Field::outputAngle});
    checkPoint({.field = Field::outputJoint});
    for (int field = static_cast<int>(Field::jointLimit); field <= static_cast<int>(Field::wantedHigh);
         ++field) {
        check({.field = static_cast<Field>(field)});
    }
    return std::move(faults_);
}

}  // namespace

std::vector<Fault> findFaults(const Car& car) {
    return FaultFinder(car).find();
}

}  // namespace bolthole
