// apply() for the kept setups of geometry/edits/edit.h.
#include "geometry/edits/edit_kept.h"

#include <algorithm>
#include <iterator>
#include <string_view>
#include <vector>

#include "geometry/car/faults.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

std::string missingState(const Car& car, int state) {
    const bool exists = state >= 0 && static_cast<std::size_t>(state) < car.kept.size();
    return exists ? std::string() : say("there is no kept setup %1", state + 1);
}

// A file with such a state in it could not be opened again.
std::string refuseFaults(const Car& car) {
    const std::vector<Fault> faults = findFaults(car);
    return faults.empty() ? std::string()
                          : say("a car that can't be computed is not kept: %1: %2", faults.front().path,
                                faults.front().reason);
}

std::string tooManyKept() {
    return say("a car file keeps at most %1 states", kMaxKept);
}

std::ptrdiff_t passesOn(const Car& car, int state) {
    return std::ranges::count_if(car.passes, [state](const Pass& pass) { return pass.setup == state; });
}

// A pass without the car it was run with tells nothing.
std::string refuseRemoval(const Car& car, int state) {
    const auto count = passesOn(car, state);
    if (count == 0) {
        return {};
    }
    const auto last = std::ranges::find(car.passes.rbegin(), car.passes.rend(), state, &Pass::setup);
    const std::string& name = car.kept[static_cast<std::size_t>(state)].name;
    return count == 1 ? say("a pass stands on '%1', %2; remove or move it first", name, passWords(*last))
                      : say("%n passes stand on '%1', the last of them %2; remove or move them first",
                            Count(count), name, passWords(*last));
}

KeptSetup& stateAt(Car& car, int state) {
    return car.kept[static_cast<std::size_t>(state)];
}

/// For each of `parts` the one of `from` that is the same part, each of them once; or null.
template <class Part, class Same>
std::vector<const Part*> partnersOf(const std::vector<Part>& parts, const std::vector<Part>& from,
                                    const Same& same) {
    std::vector<const Part*> partners;
    for (const Part& part : parts) {
        const auto isFree = [&](const Part& other) {
            return same(part, other) && std::ranges::find(partners, &other) == partners.end();
        };
        const auto found = std::ranges::find_if(from, isFree);
        partners.push_back(found == from.end() ? nullptr : &*found);
    }
    return partners;
}

void takeHolePositions(Bracket& bracket, const Bracket* from) {
    static const std::vector<Hole> nothing;
    const auto partners =
        partnersOf(bracket.holes, from == nullptr ? nothing : from->holes,
                   [](const Hole& one, const Hole& other) { return one.name == other.name; });
    for (std::size_t hole = 0; hole < partners.size(); ++hole) {
        bracket.holes[hole].id = partners[hole] == nullptr ? -1 : partners[hole]->id;
    }
}

void takeItemPlaces(Car& car, const Car& other) {
    const auto loads =
        partnersOf(car.ballast, other.ballast,
                   [](const EnteredBallast& one, const EnteredBallast& two) { return one.name == two.name; });
    for (std::size_t load = 0; load < loads.size(); ++load) {
        car.ballast[load].id = loads[load] == nullptr ? -1 : loads[load]->id;
    }
    const auto springs =
        partnersOf(car.springs, other.springs, [](const SuspensionPart& one, const SuspensionPart& two) {
            return one.name == two.name && one.side == two.side;
        });
    for (std::size_t spring = 0; spring < springs.size(); ++spring) {
        const SuspensionPart* from = springs[spring];
        car.springs[spring].id = from == nullptr ? -1 : from->id;
        for (const End end : {End::chassis, End::axle}) {
            takeHolePositions(car.springs[spring].bracket(end),
                              from == nullptr ? nullptr : &from->bracket(end));
        }
    }
}

// The car takes the place of another in the file: parts of the same name stand where the other's stood, so
// that what else the file says of them stays with them.
void takePlaces(Car& car, const Car& other) {
    const auto partners = partnersOf(car.links, other.links, [](const Link& one, const Link& two) {
        return one.name == two.name && one.side == two.side;
    });
    for (std::size_t link = 0; link < partners.size(); ++link) {
        const Link* from = partners[link];
        car.links[link].id = from == nullptr ? -1 : from->id;
        for (const End end : {End::chassis, End::axle}) {
            takeHolePositions(car.links[link].bracket(end), from == nullptr ? nullptr : &from->bracket(end));
        }
    }
    takeItemPlaces(car, other);
}

// What belongs to the bench rather than to a state of the car.
void putOnBench(Car& car, const KeptSetup& state) {
    Car bench = *state.car;
    takePlaces(bench, car);
    bench.units = car.units;
    bench.body = car.body;
    bench.target = car.target;
    bench.kept = std::move(car.kept);
    bench.baseline = car.baseline;
    bench.passes = std::move(car.passes);
    bench.stateName = state.name;
    bench.stateNote = state.note;
    car = std::move(bench);
}

bool isKeptUnder(const Car& car, const std::string& name) {
    return std::ranges::find(car.kept, name, &KeptSetup::name) != car.kept.end();
}

// "after Monday", once however often it was swapped, and numbered where that name means another state: a kept
// one, or the one that goes to the bench.
std::string nameAfter(const Car& car, const std::string& before) {
    const std::string text = say("after %1");
    const std::size_t place = text.find("%1");
    const std::string_view ahead = std::string_view(text).substr(0, place);
    const bool isSwapped = place != std::string::npos && before.starts_with(ahead) &&
                           before.ends_with(std::string_view(text).substr(place + 2));
    const std::string name = isSwapped ? before : say("after %1", before);
    std::string free = name;
    for (int number = 2; free == before || isKeptUnder(car, free); ++number) {
        free = say("%1 (%2)", name, number);
    }
    return free;
}

// What stands on the bench, as it is kept in place of `before`. A name that is kept already would mean two
// states.
void keepInPlaceOf(KeptSetup& before, const Car& car, const std::string& date) {
    const bool known = !car.stateName.empty() && !isKeptUnder(car, car.stateName);
    auto state = std::make_shared<Car>(withoutKept(car));
    takePlaces(*state, *before.car);
    before.name = known ? car.stateName : nameAfter(car, before.name);
    before.note = known ? car.stateNote : std::string();
    before.date = date;
    before.car = std::move(state);
}

}  // namespace

std::string applyTo(Car& car, const KeepSetup& edit) {
    if (isBlank(edit.name)) {
        return say("a kept setup needs a name");
    }
    if (car.kept.size() >= kMaxKept) {
        return tooManyKept();
    }
    auto state = std::make_shared<const Car>(withoutKept(edit.other ? *edit.other : car));
    if (std::string reason = refuseFaults(*state); !reason.empty()) {
        return reason;
    }
    car.kept.push_back({-1, edit.name, edit.date, edit.note, std::move(state)});
    if (edit.asBaseline) {
        car.baseline = static_cast<int>(car.kept.size()) - 1;
    }
    if (!edit.other) {
        car.stateName = edit.name;
        car.stateNote = edit.note;
    }
    return {};
}

std::string applyTo(Car& car, const DescribeKept& edit) {
    std::string reason = missingState(car, edit.state);
    if (reason.empty() && isBlank(edit.name)) {
        reason = say("a kept setup needs a name");
    }
    if (reason.empty()) {
        stateAt(car, edit.state).name = edit.name;
        stateAt(car, edit.state).note = edit.note;
    }
    return reason;
}

std::string applyTo(Car& car, const SetBaseline& edit) {
    std::string reason = edit.state ? missingState(car, *edit.state) : std::string();
    if (reason.empty()) {
        car.baseline = edit.state;
    }
    return reason;
}

std::string applyTo(Car& car, const RemoveKept& edit) {
    std::string reason = missingState(car, edit.state);
    if (reason.empty()) {
        reason = refuseRemoval(car, edit.state);
    }
    if (reason.empty()) {
        car.kept.erase(std::next(car.kept.begin(), edit.state));
        for (Pass& pass : car.passes) {
            pass.setup = pass.setup && *pass.setup > edit.state ? *pass.setup - 1 : pass.setup;
        }
        if (car.baseline == edit.state) {
            car.baseline.reset();
        } else if (car.baseline && *car.baseline > edit.state) {
            car.baseline = *car.baseline - 1;
        }
    }
    return reason;
}

std::string applyTo(Car& car, const RestoreKept& edit) {
    std::string reason = missingState(car, edit.state);
    if (reason.empty()) {
        const KeptSetup state = stateAt(car, edit.state);
        putOnBench(car, state);
    }
    return reason;
}

std::string applyTo(Car& car, const SwapBaseline& edit) {
    if (!car.baseline) {
        return say("no setup is kept as the baseline yet");
    }
    if (std::string reason = refuseFaults(car); !reason.empty()) {
        return reason;
    }
    const KeptSetup before = stateAt(car, *car.baseline);
    if (passesOn(car, *car.baseline) > 0) {
        if (car.kept.size() >= kMaxKept) {
            return tooManyKept();
        }
        car.kept.push_back(before);
        car.kept.back().id = -1;
        car.baseline = static_cast<int>(car.kept.size()) - 1;
    }
    keepInPlaceOf(stateAt(car, *car.baseline), car, edit.date);
    putOnBench(car, before);
    return {};
}

void forgetChangedState(Car& car, const Car& was) {
    if (was.stateName.empty() || car.stateName != was.stateName) {
        return;
    }
    Car before = withoutKept(was);
    before.units = car.units;
    before.body = car.body;
    before.target = car.target;
    if (!(before == withoutKept(car))) {
        car.stateName.clear();
        car.stateNote.clear();
    }
}

}  // namespace bolthole
