// apply() of geometry/edits/edit.h; describe() stands in describe.cpp, faults and warnings in files of their
// own.
#include "geometry/edits/edit.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <limits>

#include "geometry/car/fields.h"
#include "geometry/car/numbers.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/combinations/combination_figures.h"
#include "geometry/edits/edit_correction.h"
#include "geometry/edits/edit_entered.h"
#include "geometry/edits/edit_kept.h"
#include "geometry/edits/edit_links.h"
#include "geometry/edits/edit_passes.h"
#include "geometry/edits/planned_hole.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

constexpr std::string_view kNoDriveline = phrase("this car has no driveline yet");
constexpr std::string_view kOnlyRods = phrase("only a rod has a length of its own");

/// Why `value` cannot stand at `id`, as a sentence; empty if it can.
std::string refusalSentence(const FieldId& id, double value) {
    const std::string expected = refusal(id, value);
    if (expected.empty()) {
        return {};
    }
    const std::string whose = say(ruleOf(id.field).words);
    return id.uncertainty ? say("%1, ±: expected %2", whose, expected)
                          : say("%1: expected %2", whose, expected);
}

std::string refusePoint(FieldId id, const Eigen::Vector3d& at) {
    for (id.axis = 0; id.axis < 3; ++id.axis) {
        if (std::string reason = refusalSentence(id, at[id.axis]); !reason.empty()) {
            return reason;
        }
    }
    return {};
}

std::string missingLink(int link) {
    return say("there is no link %1", link + 1);
}

std::string missingHole(const Car& car, int link, End end, int hole) {
    return findLink(car, link) == nullptr ? missingLink(link)
                                          : say("there is no %1", holeWords(car, link, end, hole));
}

/// Why the car has no number of that id.
std::string missingNumber(const Car& car, const FieldId& id) {
    const FieldRule& rule = ruleOf(id.field);
    if (rule.hasAxis && (id.axis < 0 || id.axis > 2)) {
        return say("a point has three coordinates, 0 to 2");
    }
    // What holds the number within its part: "adjuster" of "adjuster.pitch".
    const std::string holder(rule.path.substr(0, rule.path.find('.')));
    switch (rule.scope) {
        case Scope::driveline:
            return say(kNoDriveline);
        case Scope::target:
            return say("no target is set for this car yet");
        case Scope::ballast:
            return say("there is no load %1", id.item + 1);
        case Scope::spring:
            return id.uncertainty || findSpring(car, id.item) == nullptr
                       ? say("there is no such spring, shock or mount")
                       : say("%1 has no %2 yet", springWords(car, id.item), holder);
        case Scope::mount:
            return say("there is no such spring, shock or mount");
        case Scope::hole:
            return missingHole(car, id.link, id.end, id.hole);
        case Scope::link:
            return id.uncertainty || findLink(car, id.link) == nullptr
                       ? missingLink(id.link)
                       : say("%1 has no %2 yet", linkWords(car, id.link), holder);
        case Scope::car:
        case Scope::tool:
            break;
    }
    return say("this car has no %1 yet", say(rule.words));
}

/// The shock's forces that the number belongs to; null: it belongs to none.
const Damping* dampingOf(const Car& car, const FieldId& id) {
    if (ruleOf(id.field).path.find("damping.") == std::string_view::npos) {
        return nullptr;
    }
    const SuspensionPart* part = findSpring(car, id.item);
    const std::optional<Damping>& damping = part == nullptr ? car.launch.front.damping : part->damping;
    return damping ? &*damping : nullptr;
}

// A sixteenth of an inch times 0.0254 misses the car file's decimal millimeters by a rounding, and the file
// would show 4.762499999999999: a length that close to a whole nanometer is meant to be it.
double asWritten(double metres) {
    const double tidy = fromMillimetres(std::round(metres * 1e9) / 1e6);
    const double rounding = 4 * std::numeric_limits<double>::epsilon() * std::abs(metres);
    return std::abs(tidy - metres) <= rounding ? tidy : metres;
}

/// Changes the car, or gives the reason why not and leaves it alone.
class Applier {
  public:
    explicit Applier(Car& car) : car_(car) {}

    std::string operator()(const SetNumber& edit) const;
    std::string operator()(const SetNumbers& edit) const;
    std::string operator()(const SetTorque& edit) const { return applyTo(car_, edit); }
    std::string operator()(const SetDamping& edit) const { return applyTo(car_, edit); }
    std::string operator()(const ClearNumber& edit) const;
    std::string operator()(const MoveHole& edit) const;
    std::string operator()(const UseHole& edit) const;
    std::string operator()(const MoveJoint& edit) const;
    std::string operator()(const SetUnits& edit) const;
    std::string operator()(const SetTitle& edit) const;
    std::string operator()(const SetNotes& edit) const;
    std::string operator()(const SetAdjuster& edit) const;
    std::string operator()(const SetDriveline& edit) const;
    std::string operator()(const RenameLink& edit) const;
    std::string operator()(const RenameHole& edit) const;
    std::string operator()(const AddHole& edit) const;
    std::string operator()(const RemoveHole& edit) const;
    std::string operator()(const SetTarget& edit) const;
    std::string operator()(const ChooseHoles& edit) const;
    std::string operator()(const ChangeRide& edit) const;
    std::string operator()(const KeepSetup& edit) const { return applyTo(car_, edit); }
    std::string operator()(const DescribeKept& edit) const { return applyTo(car_, edit); }
    std::string operator()(const SetBaseline& edit) const { return applyTo(car_, edit); }
    std::string operator()(const RemoveKept& edit) const { return applyTo(car_, edit); }
    std::string operator()(const RestoreKept& edit) const { return applyTo(car_, edit); }
    std::string operator()(const SwapBaseline& edit) const { return applyTo(car_, edit); }
    std::string operator()(const AddPass& edit) const { return applyTo(car_, edit); }
    std::string operator()(const ChangePass& edit) const { return applyTo(car_, edit); }
    std::string operator()(const RemovePass& edit) const { return applyTo(car_, edit); }
    std::string operator()(const StrikePass& edit) const { return applyTo(car_, edit); }
    std::string operator()(const CorrectLaunch& edit) const { return applyTo(car_, edit); }
    std::string operator()(const SetChoice& edit) const { return applyTo(car_, edit); }
    std::string operator()(const AddBallast& edit) const { return applyTo(car_, edit); }
    std::string operator()(const RemoveBallast& edit) const { return applyTo(car_, edit); }
    std::string operator()(const RenameBallast& edit) const { return applyTo(car_, edit); }
    std::string operator()(const AddSpring& edit) const { return applyTo(car_, edit); }
    std::string operator()(const RemoveSpring& edit) const { return applyTo(car_, edit); }
    std::string operator()(const ChangeSpring& edit) const { return applyTo(car_, edit); }
    std::string operator()(const AddLink& edit) const { return applyTo(car_, edit); }
    std::string operator()(const RemoveLink& edit) const { return applyTo(car_, edit); }
    std::string operator()(const ChangeLink& edit) const { return applyTo(car_, edit); }
    std::string operator()(const SplitLink& edit) const { return applyTo(car_, edit); }
    std::string operator()(const JoinLinks& edit) const { return applyTo(car_, edit); }
    std::string operator()(const SetPlate& edit) const;
    std::string operator()(const SetPlanned& edit) const;
    std::string operator()(const PlanHole& edit) const;

  private:
    /// Takes the car with lengths that were worked out, or says why there is none.
    [[nodiscard]] std::string takeRefit(CarResult refit) const;
    [[nodiscard]] std::string refuseTable(const FieldId& id) const;
    [[nodiscard]] std::string setUncertainty(const FieldId& id, std::optional<double> value) const;
    [[nodiscard]] Link& link(int index) const { return car_.links[static_cast<std::size_t>(index)]; }
    [[nodiscard]] bool isRod(int index) const { return link(index).kind == LinkKind::rod; }
    /// Before a link is bolted elsewhere: one without a written length is set to fit, and so changes.
    void pinIfFitted(int index) const {
        if (!link(index).length) {
            pinEngagement(link(index), false);
        }
    }

    Car& car_;
};

/// The uncertainty of a number, or that it has the uncertainty of its tool again.
std::string Applier::setUncertainty(const FieldId& id, std::optional<double> value) const {
    const FieldRule& rule = ruleOf(id.field);
    Uncertainties* uncertainties = uncertaintiesAt(car_, id);
    if (uncertainties == nullptr) {
        return mayHaveUncertainty(id.field) ? missingNumber(car_, id)
                                            : say("the %1 is not measured", say(rule.words));
    }
    if (rule.hasAxis != (id.axis >= 0 && id.axis < 3)) {
        return say("a point has three coordinates, 0 to 2");
    }
    std::string reason = value ? refusalSentence(id, *value) : std::string();
    if (reason.empty()) {
        const bool length = value && rule.quantity == Quantity::length;
        uncertainties->set(id.field, id.axis, length ? asWritten(*value) : value);
    }
    return reason;
}

std::string Applier::operator()(const SetNumber& edit) const {
    if (edit.id.uncertainty) {
        return setUncertainty(edit.id, edit.value);
    }
    struct Writer {
        double value;
        void operator()(std::monostate) const {}
        void operator()(double* number) const { *number = value; }
        void operator()(int* number) const { *number = static_cast<int>(value); }
        void operator()(std::optional<double>* number) const { *number = value; }
    };
    const Slot<Car> slot = slotOf(car_, edit.id);
    if (std::holds_alternative<std::monostate>(slot)) {
        return missingNumber(car_, edit.id);
    }
    if (edit.id.field == Field::linkLength && !isRod(edit.id.link)) {
        return say(kOnlyRods);
    }
    std::string reason = refusalSentence(edit.id, edit.value);
    if (reason.empty()) {
        if (edit.id.field == Field::linkLength || edit.id.field == Field::adjusterEngagement) {
            pinEngagement(link(edit.id.link), edit.id.field == Field::adjusterEngagement);
        }
        const std::optional<double> old = numberAt(car_, edit.id);
        const bool length = quantityOf(edit.id.field) == Quantity::length;
        std::visit(Writer{length ? asWritten(edit.value) : edit.value}, slot);
        reason = refuseTable(edit.id);
        if (auto* const* number = std::get_if<OptionalNumber*>(&slot); !reason.empty() && number != nullptr) {
            **number = old;
        }
        if (reason.empty() && edit.by == SetNumber::By::typed) {
            setOrigin(car_, edit.id, Origin::measured);
        } else if (reason.empty() && edit.by == SetNumber::By::workedOut) {
            markWorkedOut(car_, edit.id);
        }
    }
    return reason;
}

/// Why a number does not fit the table it belongs to, a click that of its shock; empty: it does, or belongs
/// to none.
std::string Applier::refuseTable(const FieldId& id) const {
    const Damping* damping = dampingOf(car_, id);
    const TableFault fault = damping == nullptr ? TableFault{} : refusal(*damping);
    return fault.reason.empty() ? std::string() : std::string(ruleOf(id.field).words) + ": " + fault.reason;
}

std::string Applier::operator()(const SetNumbers& edit) const {
    if (edit.numbers.empty()) {
        return say("there is no number to set");
    }
    const Car before = car_;
    for (const SetNumber& number : edit.numbers) {
        if (std::string reason = (*this)(number); !reason.empty()) {
            car_ = before;
            return reason;
        }
    }
    return {};
}

std::string Applier::operator()(const ClearNumber& edit) const {
    if (edit.id.uncertainty) {
        return setUncertainty(edit.id, std::nullopt);
    }
    const Slot<Car> slot = slotOf(car_, edit.id);
    if (std::holds_alternative<std::monostate>(slot)) {
        return missingNumber(car_, edit.id);
    }
    auto* const* optional = std::get_if<std::optional<double>*>(&slot);
    if (optional == nullptr) {
        return say("the %1 cannot be left out", say(ruleOf(edit.id.field).words));
    }
    if (edit.id.field == Field::linkLength) {
        pinEngagement(link(edit.id.link), false);
    }
    (*optional)->reset();
    setOrigin(car_, edit.id, Origin::measured);
    return {};
}

std::string Applier::operator()(const MoveHole& edit) const {
    if (findHole(car_, edit.link, edit.end, edit.hole) == nullptr) {
        return missingHole(car_, edit.link, edit.end, edit.hole);
    }
    std::string reason = refusePoint({.field = Field::holeAt}, edit.at);
    if (reason.empty()) {
        link(edit.link).bracket(edit.end).holes[static_cast<std::size_t>(edit.hole)].at =
            edit.at.unaryExpr(&asWritten);
    }
    return reason;
}

std::string Applier::operator()(const UseHole& edit) const {
    if (findHole(car_, edit.link, edit.end, edit.hole) == nullptr) {
        return missingHole(car_, edit.link, edit.end, edit.hole);
    }
    pinIfFitted(edit.link);
    link(edit.link).bracket(edit.end).use = edit.hole;
    return {};
}

std::string Applier::operator()(const MoveJoint& edit) const {
    if (!car_.driveline) {
        return say(kNoDriveline);
    }
    const bool onAxle = edit.end == End::axle;
    std::string reason = refusePoint({.field = onAxle ? Field::pinionJoint : Field::outputJoint}, edit.at);
    if (reason.empty()) {
        (onAxle ? car_.driveline->pinionJoint : car_.driveline->outputJoint) = edit.at.unaryExpr(&asWritten);
    }
    return reason;
}

std::string Applier::operator()(const SetUnits& edit) const {
    car_.units = edit.units;
    return {};
}

std::string Applier::operator()(const SetTitle& edit) const {
    car_.title = edit.title;
    return {};
}

std::string Applier::operator()(const SetNotes& edit) const {
    car_.notes = edit.notes;
    return {};
}

std::string Applier::operator()(const SetAdjuster& edit) const {
    if (findLink(car_, edit.link) == nullptr) {
        return missingLink(edit.link);
    }
    if (edit.adjuster && !isRod(edit.link)) {
        return say(kOnlyRods);
    }
    Link adjusted;
    adjusted.adjuster = edit.adjuster;
    std::string reason = refuseNumbers(&adjusted, Scope::link);
    if (reason.empty()) {
        link(edit.link).adjuster = edit.adjuster;
    }
    return reason;
}

std::string Applier::operator()(const SetDriveline& edit) const {
    std::string reason = edit.driveline ? refuseNumbers(&*edit.driveline, Scope::driveline) : std::string();
    if (reason.empty()) {
        car_.driveline = edit.driveline;
    }
    return reason;
}

std::string Applier::operator()(const RenameLink& edit) const {
    if (findLink(car_, edit.link) == nullptr) {
        return missingLink(edit.link);
    }
    if (isBlank(edit.name)) {
        return say("a link needs a name");
    }
    link(edit.link).name = edit.name;
    return {};
}

std::string Applier::operator()(const RenameHole& edit) const {
    if (findHole(car_, edit.link, edit.end, edit.hole) == nullptr) {
        return missingHole(car_, edit.link, edit.end, edit.hole);
    }
    if (isBlank(edit.name)) {
        return say("a hole needs a name");
    }
    link(edit.link).bracket(edit.end).holes[static_cast<std::size_t>(edit.hole)].name = edit.name;
    return {};
}

std::string Applier::operator()(const AddHole& edit) const {
    if (findLink(car_, edit.link) == nullptr) {
        return missingLink(edit.link);
    }
    std::vector<Hole>& holes = link(edit.link).bracket(edit.end).holes;
    if (holes.size() >= kMaxHoles) {
        return say("a bracket takes at most %1 holes", kMaxHoles);
    }
    std::string reason = refusePoint({.field = Field::holeAt}, edit.hole.at);
    if (reason.empty()) {
        holes.push_back(edit.hole);
    }
    return reason;
}

std::string Applier::operator()(const SetTarget& edit) const {
    std::string reason = edit.target ? refuseNumbers(&*edit.target, Scope::target) : std::string();
    if (reason.empty()) {
        car_.target = edit.target;
    }
    return reason;
}

std::string Applier::operator()(const SetPlate& edit) const {
    if (findLink(car_, edit.link) == nullptr) {
        return missingLink(edit.link);
    }
    std::string reason = edit.plate ? refusal(*edit.plate).reason : std::string();
    if (reason.empty()) {
        link(edit.link).bracket(edit.end).plate = edit.plate;
    }
    return reason;
}

std::string Applier::operator()(const SetPlanned& edit) const {
    if (findHole(car_, edit.link, edit.end, edit.hole) == nullptr) {
        return missingHole(car_, edit.link, edit.end, edit.hole);
    }
    link(edit.link).bracket(edit.end).holes[static_cast<std::size_t>(edit.hole)].planned = edit.planned;
    return {};
}

// A length that somebody measured gives way to one that was worked out only where a tape tells the two apart:
// else a good number would be lost to where the holes were read a hair differently.
void keepMeasuredLengths(Car& refit, const Car& before) {
    for (std::size_t index = 0; index < refit.links.size(); ++index) {
        Link& link = refit.links[index];
        const Link& was = before.links[index];
        const FieldId length{.field = Field::linkLength, .link = static_cast<int>(index)};
        if (was.length && isMeasured(before, length) &&
            !tapeTells(before, link.length.value_or(holeDistance(link)), *was.length)) {
            link.length = was.length;
            link.adjuster = was.adjuster;
        }
    }
}

std::string Applier::takeRefit(CarResult refit) const {
    if (refit.car) {
        keepMeasuredLengths(*refit.car, car_);
        markWorkedOutLengths(*refit.car, car_);
        car_ = std::move(*refit.car);
    }
    return std::move(refit.refusal);
}

std::string Applier::operator()(const PlanHole& edit) const {
    return takeRefit(planHole(car_, edit));
}

std::string Applier::operator()(const ChooseHoles& edit) const {
    return takeRefit(carWithCombination(car_, edit.use, edit.lengths));
}

std::string Applier::operator()(const ChangeRide& edit) const {
    return takeRefit(changeRide(car_, edit.change));
}

std::string Applier::operator()(const RemoveHole& edit) const {
    if (findHole(car_, edit.link, edit.end, edit.hole) == nullptr) {
        return missingHole(car_, edit.link, edit.end, edit.hole);
    }
    Bracket& bracket = link(edit.link).bracket(edit.end);
    if (bracket.holes.size() == 1) {
        return say("a bracket keeps at least one hole");
    }
    if (edit.hole == bracket.use) {
        pinIfFitted(edit.link);
    }
    bracket.holes.erase(std::next(bracket.holes.begin(), edit.hole));
    const bool isBefore = edit.hole < bracket.use;
    bracket.use = std::min(bracket.use - (isBefore ? 1 : 0), static_cast<int>(bracket.holes.size()) - 1);
    return {};
}

}  // namespace

EditResult apply(const Car& car, const Edit& edit) {
    EditResult result{car, {}};
    result.refusal = std::visit(Applier(result.car), edit.kind());
    // What is known better of the car and of what was kept makes it no other state.
    const bool isSameState = edit.as<RestoreKept>() != nullptr || edit.as<SwapBaseline>() != nullptr ||
                             edit.as<CorrectLaunch>() != nullptr;
    if (!isSameState) {
        forgetChangedState(result.car, car);
    }
    return result;
}

}  // namespace bolthole
