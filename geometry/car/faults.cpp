// findFaults() of geometry/edits/edit.h: what keeps a car from being computed. Holds for any Car whatever.
#include "geometry/car/faults.h"

#include <cmath>

#include "geometry/car/fields.h"
#include "geometry/car/numbers.h"
#include "geometry/car/pass_fields.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

/// The value as the car file writes it: "-5 mm", "not a number".
std::string fileWords(double value, Quantity quantity) {
    if (!std::isfinite(value)) {
        return std::isnan(value) ? say("not a number") : say("infinity");
    }
    const std::string number = plainDecimal(value / fileUnit(quantity));
    if (quantity == Quantity::angle) {
        return say("%1 deg", number);
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
    void checkPart(Scope scope, FieldId id);
    void checkMount(int item, End end);
    void checkLists();
    void checkPasses();
    void checkDamping(const std::optional<Damping>& damping, FieldId id, const std::string& path);
    void checkUncertainties(const Uncertainties& uncertainties, FieldId id);
    void checkPlate(int index, End end);

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
        add(id, jsonPath(id),
            say("expected %1, found %2", expected, fileWords(*value, quantityOf(id.field))));
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
        add(id, jsonPath(id), say("expected 1 to %1 holes, found %2", kMaxHoles, count));
    }
    for (std::size_t hole = 0; hole < count && hole < kMaxHoles; ++hole) {
        const FieldId at{.field = Field::holeAt, .link = index, .end = end, .hole = static_cast<int>(hole)};
        checkPoint(at);
        checkUncertainties(bracket.holes[hole].uncertainties, at);
    }
    checkPlate(index, end);
    const bool exists = bracket.use >= 0 && static_cast<std::size_t>(bracket.use) < count;
    if (!exists && count > 0) {
        add(id, bracketPath(index, end) + ".use",
            say("expected the index of a hole, 0 to %1, found %2", count - 1, bracket.use));
    }
    return exists;
}

/// The uncertainty of the numbers of one part; `id` addresses the part.
void FaultFinder::checkUncertainties(const Uncertainties& uncertainties, FieldId id) {
    id.uncertainty = true;
    for (const Uncertainties::Own& own : uncertainties.all()) {
        id.field = own.field;
        id.axis = own.axis;
        check(id);
    }
}

void FaultFinder::checkPlate(int index, End end) {
    const std::optional<Plate>& plate = car_.links[static_cast<std::size_t>(index)].bracket(end).plate;
    const PlateFault fault = plate ? refusal(*plate) : PlateFault{};
    if (!fault.reason.empty()) {
        add({.field = Field::holeAt, .link = index, .end = end},
            bracketPath(index, end) + ".outline." + fault.path, fault.reason);
    }
}

/// A rod without a written length needs its holes apart, or it has neither length nor direction.
void FaultFinder::checkReach(int index) {
    const Link& link = car_.links[static_cast<std::size_t>(index)];
    if (link.kind == LinkKind::rod && !link.length && holeDistance(link) == 0) {
        add({.field = Field::linkLength, .link = index}, linkPath(index),
            say("expected a link's current holes apart, found both at the same place"));
    }
}

void FaultFinder::checkLink(int index) {
    checkPart(Scope::link, {.link = index});
    checkUncertainties(car_.links[static_cast<std::size_t>(index)].uncertainties, {.link = index});
    const bool chassis = checkBracket(index, End::chassis);
    const bool axle = checkBracket(index, End::axle);
    if (chassis && axle) {
        checkReach(index);
    }
}

/// Every number of one part; `id` addresses it.
void FaultFinder::checkPart(Scope scope, FieldId id) {
    for (const FieldRule* rule : rulesOf(scope)) {
        id.field = rule->field;
        rule->hasAxis ? checkPoint(id) : check(id);
    }
}

void FaultFinder::checkMount(int item, End end) {
    const Bracket& bracket = car_.springs[static_cast<std::size_t>(item)].bracket(end);
    const std::size_t count = bracket.holes.size();
    const FieldId id{.field = Field::mountAt, .end = end, .item = item};
    if (count == 0 || count > kMaxHoles || bracket.use < 0 ||
        static_cast<std::size_t>(bracket.use) >= count) {
        add(id, mountPath(item, end),
            say("expected 1 to %1 holes, one of them in use, found %2 and hole %3 in use", kMaxHoles, count,
                bracket.use));
    }
    for (std::size_t hole = 0; hole < count && hole < kMaxHoles; ++hole) {
        const FieldId at{.field = Field::mountAt, .end = end, .hole = static_cast<int>(hole), .item = item};
        checkPoint(at);
        checkUncertainties(bracket.holes[hole].uncertainties, at);
    }
}

/// The tables of a shock's forces, its click beside them.
void FaultFinder::checkDamping(const std::optional<Damping>& damping, FieldId id, const std::string& path) {
    if (TableFault fault = damping ? refusal(*damping) : TableFault{}; !fault.reason.empty()) {
        add(id, path + ".damping." + fault.path, std::move(fault.reason));
    }
}

void FaultFinder::checkLists() {
    const auto tooMany = [this](const char* list, std::size_t most, std::size_t count) {
        if (count > most) {
            add({}, list, say("expected at most %1, found %2", most, count));
        }
    };
    tooMany("loads", kMaxBallast, car_.ballast.size());
    tooMany("springs", kMaxSprings, car_.springs.size());
    for (std::size_t item = 0; item < car_.ballast.size() && item < kMaxBallast; ++item) {
        checkPart(Scope::ballast, {.item = static_cast<int>(item)});
        checkUncertainties(car_.ballast[item].uncertainties, {.item = static_cast<int>(item)});
    }
    for (std::size_t item = 0; item < car_.springs.size() && item < kMaxSprings; ++item) {
        checkPart(Scope::spring, {.item = static_cast<int>(item)});
        checkDamping(car_.springs[item].damping, {.field = Field::springRate, .item = static_cast<int>(item)},
                     "springs[" + std::to_string(item) + "]");
        checkUncertainties(car_.springs[item].uncertainties, {.item = static_cast<int>(item)});
        checkMount(static_cast<int>(item), End::chassis);
        checkMount(static_cast<int>(item), End::axle);
    }
}

/// One fault a pass: whoever mends it finds the next.
void FaultFinder::checkPasses() {
    if (car_.passes.size() > kMaxPasses) {
        add({}, "passes", say("expected at most %1 passes, found %2", kMaxPasses, car_.passes.size()));
    }
    for (std::size_t index = 0; index < car_.passes.size() && index < kMaxPasses; ++index) {
        PassFault fault = findFault(car_.passes[index], car_.kept.size());
        if (!fault.reason.empty()) {
            add({}, "passes[" + std::to_string(index) + "]." + fault.path, std::move(fault.reason));
        }
    }
}

std::vector<Fault> FaultFinder::find() {
    checkPart(Scope::car, {});
    if (car_.links.size() > kMaxLinks) {
        add({}, "links", say("expected at most %1 links, found %2", kMaxLinks, car_.links.size()));
    }
    for (std::size_t link = 0; link < car_.links.size() && link < kMaxLinks; ++link) {
        checkLink(static_cast<int>(link));
    }
    for (const Scope scope : {Scope::driveline, Scope::target, Scope::tool}) {
        checkPart(scope, {});
    }
    checkDamping(car_.launch.front.damping, {.field = Field::frontMotionRatio}, "launch.front");
    if (TableFault fault = refusal(car_.launch.engine.torque); !fault.reason.empty()) {
        add({.field = Field::engineTorque}, "launch.engine." + fault.path, std::move(fault.reason));
    }
    checkUncertainties(car_.uncertainties, {});
    if (car_.driveline) {
        checkUncertainties(car_.driveline->uncertainties, {});
    }
    checkLists();
    checkPasses();
    return std::move(faults_);
}

}  // namespace

std::string sentence(const Finding& finding) {
    return finding.follows.empty() ? finding.cause : say("%1: %2", finding.cause, finding.follows);
}

std::vector<Fault> findFaults(const Car& car) {
    return FaultFinder(car).find();
}

}  // namespace bolthole
