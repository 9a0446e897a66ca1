// apply() for the words, ballast and springs of geometry/edits/edit.h.
#include "geometry/edits/edit_entered.h"

#include <algorithm>
#include <iterator>
#include <utility>
#include <variant>
#include <vector>

#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

/// The word a choice stands for, in a car or a const one.
template <class CarT>
using ChoiceSlot =
    std::variant<PartOf<CarT, DriverSeat>*, PartOf<CarT, CgHeightSource>*, PartOf<CarT, CarEnd>*,
                 PartOf<CarT, LaunchFrom>*, PartOf<CarT, std::optional<Differential>>*,
                 PartOf<CarT, std::optional<CouplingKind>>*, PartOf<CarT, std::optional<Body>>*>;

template <class CarT>
ChoiceSlot<CarT> slotOf(CarT& car, Choice choice) {
    switch (choice) {
        case Choice::cornersAre:
            return &car.cornersAre;
        case Choice::cgHeightFrom:
            return &car.cgHeightFrom;
        case Choice::liftRaised:
            return &car.lift.raised;
        case Choice::liftRead:
            return &car.lift.read;
        case Choice::liftDriver:
            return &car.lift.driver;
        case Choice::ticketDriver:
            return &car.weighing.ticket.driver;
        case Choice::launchFrom:
            return &car.launch.from;
        case Choice::coupling:
            return &car.launch.coupling.kind;
        case Choice::body:
            return &car.body;
        case Choice::differential:
            break;
    }
    return &car.launch.differential;
}

/// The number of a word's enumerator, and the word of a number; a word that may be absent counts from 1, and
/// 0 is none.
template <class T>
int numberOf(T word) {
    return static_cast<int>(word);
}
template <class T>
int numberOf(const std::optional<T>& word) {
    return word ? 1 + static_cast<int>(*word) : 0;
}
template <class T>
void choose(T& word, int option) {
    word = static_cast<T>(option);
}
template <class T>
void choose(std::optional<T>& word, int option) {
    word = option == 0 ? std::nullopt : std::optional(static_cast<T>(option - 1));
}

/// Whether the list has no such item.
template <class T>
bool isMissing(const std::vector<T>& list, int item) {
    return item < 0 || static_cast<std::size_t>(item) >= list.size();
}

std::string missingLoad(int item) {
    return say("there is no load %1", item + 1);
}

std::string missingSpring(int item) {
    return say("there is no spring %1", item + 1);
}

std::string refuseMount(const Bracket& bracket) {
    if (bracket.holes.empty() || bracket.holes.size() > kMaxHoles) {
        return say("a mount has 1 to %1 holes", kMaxHoles);
    }
    if (isMissing(bracket.holes, bracket.use)) {
        return say("the hole in use is not there");
    }
    for (const Hole& hole : bracket.holes) {
        for (const double coordinate : hole.at) {
            const std::string expected = refusal({.field = Field::mountAt}, coordinate);
            if (!expected.empty()) {
                return say("hole: expected %1", expected);
            }
        }
    }
    return {};
}

/// Puts `part` at `item` of the car's springs, which exists, unless it is refused.
std::string putSpring(Car& car, int item, const SuspensionPart& part) {
    if (isBlank(part.name)) {
        return say("a spring or shock needs a name");
    }
    for (const End end : {End::chassis, End::axle}) {
        if (std::string reason = refuseMount(part.bracket(end)); !reason.empty()) {
            return reason;
        }
    }
    std::string reason = refuseNumbers(&part, Scope::spring);
    if (const TableFault fault = part.damping ? refusal(*part.damping) : TableFault{}; reason.empty()) {
        reason = fault.reason.empty() ? fault.reason : say("damping, %1: %2", fault.path, fault.reason);
    }
    if (reason.empty()) {
        car.springs[static_cast<std::size_t>(item)] = part;
    }
    return reason;
}

}  // namespace

std::string refuseNumbers(const Part<const Car>& part, Scope scope) {
    for (const FieldRule* rule : rulesOf(scope)) {
        for (int axis = rule->hasAxis ? 0 : -1; axis < (rule->hasAxis ? 3 : 0); ++axis) {
            const std::optional<double> value = numberIn(rule->access.constSlot(part, axis));
            const std::string expected = value ? refusal({.field = rule->field}, *value) : std::string();
            if (!expected.empty()) {
                return say("%1: expected %2", say(rule->words), expected);
            }
        }
    }
    return {};
}

int optionsOf(Choice choice) {
    if (choice == Choice::differential) {
        return 4;
    }
    if (choice == Choice::body) {
        return 6;
    }
    const bool isOfThree =
        choice == Choice::cgHeightFrom || choice == Choice::launchFrom || choice == Choice::coupling;
    return isOfThree ? 3 : 2;
}

int chosen(const Car& car, Choice choice) {
    return std::visit([](const auto* word) { return numberOf(*word); }, slotOf(car, choice));
}

std::string applyTo(Car& car, const SetChoice& edit) {
    if (edit.option < 0 || edit.option >= optionsOf(edit.choice)) {
        return say("there is no such choice");
    }
    std::visit([&edit](auto* word) { choose(*word, edit.option); }, slotOf(car, edit.choice));
    return {};
}

std::string applyTo(Car& car, const SetTorque& edit) {
    const TableFault fault = refusal(edit.torque);
    if (fault.reason.empty()) {
        car.launch.engine.torque = edit.torque;
    }
    return fault.reason.empty() ? fault.reason : say("%1: %2", fault.path, fault.reason);
}

namespace {

/// The click that was set, where the new table reaches it.
void keepClick(const std::optional<Damping>& was, DampingWay Damping::*way, Damping& damping) {
    if (was && ((*was).*way).at) {
        DampingWay& now = damping.*way;
        now.at = std::clamp(*((*was).*way).at, static_cast<double>(now.clicks.front()),
                            static_cast<double>(now.clicks.back()));
    }
}

}  // namespace

std::string applyTo(Car& car, const SetDamping& edit) {
    if (edit.item >= 0 && isMissing(car.springs, edit.item)) {
        return missingSpring(edit.item);
    }
    std::optional<Damping>& slot =
        edit.item < 0 ? car.launch.front.damping : car.springs[static_cast<std::size_t>(edit.item)].damping;
    if (edit.damping) {
        const TableFault fault = refusal(*edit.damping);
        if (!fault.reason.empty()) {
            return say("%1: %2", fault.path, fault.reason);
        }
    }
    std::optional<Damping> damping = edit.damping;
    if (damping) {
        keepClick(slot, &Damping::bump, *damping);
        keepClick(slot, &Damping::rebound, *damping);
    }
    slot = std::move(damping);
    return {};
}

std::string applyTo(Car& car, const AddBallast& edit) {
    if (isBlank(edit.ballast.name)) {
        return say("a load needs a name");
    }
    if (car.ballast.size() >= kMaxBallast) {
        return say("a car takes at most %1 loads", kMaxBallast);
    }
    std::string reason = refuseNumbers(&edit.ballast, Scope::ballast);
    if (reason.empty()) {
        car.ballast.push_back(edit.ballast);
    }
    return reason;
}

std::string applyTo(Car& car, const RemoveBallast& edit) {
    if (isMissing(car.ballast, edit.item)) {
        return missingLoad(edit.item);
    }
    car.ballast.erase(std::next(car.ballast.begin(), edit.item));
    return {};
}

std::string applyTo(Car& car, const RenameBallast& edit) {
    if (isMissing(car.ballast, edit.item)) {
        return missingLoad(edit.item);
    }
    if (isBlank(edit.name)) {
        return say("a load needs a name");
    }
    car.ballast[static_cast<std::size_t>(edit.item)].name = edit.name;
    return {};
}

std::string applyTo(Car& car, const AddSpring& edit) {
    if (car.springs.size() >= kMaxSprings) {
        return say("a car takes at most %1 springs and shocks", kMaxSprings);
    }
    car.springs.emplace_back();
    std::string reason = putSpring(car, static_cast<int>(car.springs.size()) - 1, edit.part);
    if (!reason.empty()) {
        car.springs.pop_back();
    }
    return reason;
}

std::string applyTo(Car& car, const RemoveSpring& edit) {
    if (isMissing(car.springs, edit.item)) {
        return missingSpring(edit.item);
    }
    car.springs.erase(std::next(car.springs.begin(), edit.item));
    return {};
}

std::string applyTo(Car& car, const ChangeSpring& edit) {
    return isMissing(car.springs, edit.item) ? missingSpring(edit.item)
                                             : putSpring(car, edit.item, edit.part);
}

}  // namespace bolthole
