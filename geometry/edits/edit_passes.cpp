#include "geometry/edits/edit_passes.h"

#include <algorithm>
#include <iterator>
#include <vector>

#include "geometry/car/pass_fields.h"
#include "geometry/compare/setup_changes.h"
#include "geometry/edits/edit_kept.h"
#include "geometry/units/say.h"

namespace bolthole {

namespace {

bool isThere(const Car& car, int index) {
    return index >= 0 && static_cast<std::size_t>(index) < car.passes.size();
}

std::string missingPass(int index) {
    return say("there is no pass in row %1", index + 1);
}

std::string refusePass(const Car& car, const Pass& pass) {
    const PassFault fault = findFault(pass, car.kept.size());
    return fault.reason.empty() ? std::string() : say("%1: %2", fault.path, fault.reason);
}

/// Whether the pass at `index` was run before the one above it or after the one below it.
bool isOutOfPlace(const std::vector<Pass>& passes, std::size_t index) {
    return (index > 0 && isLater(passes[index - 1], passes[index])) ||
           (index + 1 < passes.size() && isLater(passes[index], passes[index + 1]));
}

/// Keeps the car as it stands for a pass of that date; KeepSetup would make it the baseline, which it need
/// not be.
std::string keepForPass(Car& car, const std::string& date) {
    const std::optional<int> before = car.baseline;
    std::string reason = applyTo(car, KeepSetup{nameForSetup(car), date, "", nullptr});
    car.baseline = before;
    return reason;
}

std::string wordsAt(const Car& car, int index) {
    return isThere(car, index) ? passWords(car.passes[static_cast<std::size_t>(index)])
                               : say("pass in row %1", index + 1);
}

}  // namespace

std::string applyTo(Car& car, const AddPass& edit) {
    if (car.passes.size() >= kMaxPasses) {
        return say("a car file holds at most %1 passes", kMaxPasses);
    }
    Pass pass = edit.pass;
    if (std::string reason = refusePass(car, pass); !reason.empty()) {
        return reason;
    }
    if (!pass.setup) {
        pass.setup = keptSetup(car);
    }
    if (!pass.setup) {
        if (std::string reason = keepForPass(car, pass.date); !reason.empty()) {
            return reason;
        }
        pass.setup = static_cast<int>(car.kept.size()) - 1;
    }
    pass.id = -1;
    insertInOrder(car.passes, pass);
    return {};
}

std::string applyTo(Car& car, const ChangePass& edit) {
    if (!isThere(car, edit.index)) {
        return missingPass(edit.index);
    }
    if (std::string reason = refusePass(car, edit.pass); !reason.empty()) {
        return reason;
    }
    const auto index = static_cast<std::size_t>(edit.index);
    Pass pass = edit.pass;
    pass.id = car.passes[index].id;
    car.passes[index] = pass;
    if (isOutOfPlace(car.passes, index)) {
        car.passes.erase(std::next(car.passes.begin(), edit.index));
        insertInOrder(car.passes, pass);
    }
    return {};
}

std::string applyTo(Car& car, const RemovePass& edit) {
    if (!isThere(car, edit.index)) {
        return missingPass(edit.index);
    }
    car.passes.erase(std::next(car.passes.begin(), edit.index));
    return {};
}

std::string applyTo(Car& car, const StrikePass& edit) {
    if (!isThere(car, edit.index)) {
        return missingPass(edit.index);
    }
    car.passes[static_cast<std::size_t>(edit.index)].struck = edit.struck;
    return {};
}

std::string describePassEdit(const AddPass& edit) {
    return say("Enter %1", passWords(edit.pass));
}

std::string describePassEdit(const ChangePass& edit, const Car& before) {
    return say("Change %1", wordsAt(before, edit.index));
}

std::string describePassEdit(const RemovePass& edit, const Car& before) {
    return say("Remove %1", wordsAt(before, edit.index));
}

std::string describePassEdit(const StrikePass& edit, const Car& before) {
    const std::string pass = wordsAt(before, edit.index);
    return edit.struck ? say("Strike %1", pass) : say("Count %1", pass);
}

}  // namespace bolthole
