// describe(Edit) of geometry/edits/edit.h: edits in a person's words.
#include <array>
#include <cmath>

#include "geometry/car/fields.h"
#include "geometry/combinations/combination_figures.h"
#include "geometry/edits/edit.h"
#include "geometry/edits/edit_correction.h"
#include "geometry/edits/edit_passes.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

struct AxisWords {
    std::string_view plus;
    std::string_view minus;
};
constexpr std::array<AxisWords, 3> kAxisWords{{{"forward", "back"}, {"left", "right"}, {"up", "down"}}};

class Describer {
  public:
    explicit Describer(const Car& before) : car_(before), style_{before.units, InchStyle::sixteenths} {}

    std::string operator()(const SetNumber& edit) const;
    std::string operator()(const SetNumbers& edit) const;
    std::string operator()(const SetTorque& edit) const;
    std::string operator()(const SetDamping& edit) const;
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
    std::string operator()(const PlanHole& edit) const;
    std::string operator()(const KeepSetup& edit) const;
    std::string operator()(const DescribeKept& edit) const;
    std::string operator()(const SetBaseline& edit) const;
    std::string operator()(const RemoveKept& edit) const;
    std::string operator()(const RestoreKept& edit) const;
    std::string operator()(const SwapBaseline& edit) const;
    std::string operator()(const ChangeRide& edit) const;
    std::string operator()(const SetChoice& edit) const;
    std::string operator()(const AddBallast& edit) const { return "Add load '" + edit.ballast.name + "'"; }
    std::string operator()(const RemoveBallast& edit) const {
        return "Remove " + ballastWords(car_, edit.item);
    }
    std::string operator()(const RenameBallast& edit) const {
        return "Rename " + ballastWords(car_, edit.item) + " to '" + edit.name + "'";
    }
    std::string operator()(const AddSpring& edit) const {
        return "Add " + std::string(nameOf(edit.part.kind)) + " '" + edit.part.name + "'";
    }
    std::string operator()(const RemoveSpring& edit) const {
        return "Remove " + springWords(car_, edit.item);
    }
    std::string operator()(const ChangeSpring& edit) const;
    std::string operator()(const AddLink& edit) const { return "Add link '" + edit.link.name + "'"; }
    std::string operator()(const RemoveLink& edit) const { return "Remove " + linkWords(car_, edit.link); }
    std::string operator()(const ChangeLink& edit) const;
    std::string operator()(const SplitLink& edit) const {
        return "Set left and right " + linkWords(car_, edit.link) + " apart";
    }
    std::string operator()(const SetPlanned& edit) const {
        return (edit.planned ? "Plan " : "Drilled ") + holeWords(car_, edit.link, edit.end, edit.hole);
    }
    std::string operator()(const SetPlate& edit) const {
        return (edit.plate ? "Enter the plate of the " : "Take away the plate of the ") +
               linkWords(car_, edit.link) + "'s " + std::string(endWords(edit.end)) + " bracket";
    }
    std::string operator()(const AddPass& edit) const { return describePassEdit(edit); }
    std::string operator()(const ChangePass& edit) const { return describePassEdit(edit, car_); }
    std::string operator()(const RemovePass& edit) const { return describePassEdit(edit, car_); }
    std::string operator()(const StrikePass& edit) const { return describePassEdit(edit, car_); }
    std::string operator()(const CorrectLaunch& edit) const { return describeCorrection(edit); }
    std::string operator()(const JoinLinks& edit) const {
        return "Join left and right " + linkWords(car_, edit.link);
    }

  private:
    [[nodiscard]] std::string measure(double value, Quantity quantity) const;
    [[nodiscard]] std::string coordinate(double value, int axis) const;
    [[nodiscard]] std::string target(const Eigen::Vector3d* before, const Eigen::Vector3d& at) const;
    [[nodiscard]] std::string fieldWords(const FieldId& id) const;
    [[nodiscard]] std::string stateWords(int state) const;

    const Car& car_;
    NumberStyle style_;
};

std::string Describer::measure(double value, Quantity quantity) const {
    return withUnit(fieldText(value, quantity, style_), quantity, style_.units);
}

/// "12 3/8 in forward", "2 in back".
std::string Describer::coordinate(double value, int axis) const {
    std::string size = measure(std::abs(value), Quantity::length);
    if (axis < 0 || axis > 2) {
        return size;
    }
    const AxisWords& words = kAxisWords[static_cast<std::size_t>(axis)];
    return size + " " + std::string(value < 0 ? words.minus : words.plus);
}

/// The coordinates that change as shown, or all three if none does or there was no point before.
std::string Describer::target(const Eigen::Vector3d* before, const Eigen::Vector3d& at) const {
    std::string changed;
    std::string all;
    for (int axis = 0; axis < 3; ++axis) {
        const std::string words = coordinate(at[axis], axis);
        all += (all.empty() ? "" : ", ") + words;
        if (before != nullptr && coordinate((*before)[axis], axis) != words) {
            changed += (changed.empty() ? "" : ", ") + words;
        }
    }
    return changed.empty() ? all : changed;
}

std::string Describer::fieldWords(const FieldId& id) const {
    const FieldRule& rule = ruleOf(id.field);
    if (rule.scope == Scope::hole) {
        return holeWords(car_, id.link, id.end, id.hole);
    }
    const std::string words(rule.words);
    if (rule.scope == Scope::ballast) {
        return ballastWords(car_, id.item) + (rule.hasAxis ? "" : ", " + words);
    }
    if (rule.scope == Scope::spring) {
        return springWords(car_, id.item) + " " + words;
    }
    if (rule.scope == Scope::mount) {
        return springWords(car_, id.item) + " " + std::string(endWords(id.end)) + " mount";
    }
    return rule.scope == Scope::link ? linkWords(car_, id.link) + " " + words : words;
}

std::string Describer::operator()(const SetNumber& edit) const {
    const FieldRule& rule = ruleOf(edit.id.field);
    if (edit.id.uncertainty) {
        return "Take " + fieldWords(edit.id) + " to be sure to " + measure(edit.value, rule.quantity);
    }
    if (rule.hasAxis) {
        return "Move " + fieldWords(edit.id) + " to " + coordinate(edit.value, edit.id.axis);
    }
    return "Set " + fieldWords(edit.id) + " to " + measure(edit.value, rule.quantity);
}

/// "Set pitch inertia to 2,100 kg m², with its ±".
std::string Describer::operator()(const SetNumbers& edit) const {
    std::string words;
    for (const SetNumber& number : edit.numbers) {
        const bool isItsOwn = number.id.uncertainty && !words.empty();
        words += isItsOwn ? ", with its ±" : (words.empty() ? "" : ", ") + (*this)(number);
    }
    return words;
}

std::string Describer::operator()(const SetDamping& edit) const {
    const std::string whose = edit.item < 0 ? "the front shocks" : springWords(car_, edit.item);
    return (edit.damping ? "Enter the forces of " : "Take away the forces of ") + whose;
}

std::string Describer::operator()(const SetTorque& edit) const {
    if (edit.torque.empty()) {
        return "Take away the torque curve";
    }
    const std::size_t was = car_.launch.engine.torque.size();
    const std::string rows =
        std::to_string(edit.torque.size()) + (edit.torque.size() == 1 ? " row" : " rows");
    return was == 0 ? "Enter a torque curve of " + rows : "Change the torque curve to " + rows;
}

std::string Describer::operator()(const ClearNumber& edit) const {
    if (edit.id.uncertainty) {
        return "Take " + fieldWords(edit.id) + " to be as sure as its tool";
    }
    if (edit.id.field == Field::linkLength) {
        return "Fit " + linkWords(car_, edit.id.link) + " to its holes";
    }
    return "Clear " + fieldWords(edit.id);
}

std::string Describer::operator()(const MoveHole& edit) const {
    const Hole* hole = findHole(car_, edit.link, edit.end, edit.hole);
    return "Move " + holeWords(car_, edit.link, edit.end, edit.hole) + " to " +
           target(hole == nullptr ? nullptr : &hole->at, edit.at);
}

std::string Describer::operator()(const UseHole& edit) const {
    const Hole* hole = findHole(car_, edit.link, edit.end, edit.hole);
    const bool isNamed = hole != nullptr && !hole->name.empty();
    return "Bolt " + linkWords(car_, edit.link) + " " + std::string(endWords(edit.end)) + " to " +
           (isNamed ? "'" + hole->name + "'" : "hole " + std::to_string(edit.hole + 1));
}

std::string Describer::operator()(const MoveJoint& edit) const {
    const bool onAxle = edit.end == End::axle;
    const Eigen::Vector3d* before = nullptr;
    if (car_.driveline) {
        before = onAxle ? &car_.driveline->pinionJoint : &car_.driveline->outputJoint;
    }
    return std::string(onAxle ? "Move rear U-joint to " : "Move front U-joint to ") + target(before, edit.at);
}

std::string Describer::operator()(const SetUnits& edit) const {
    return edit.units == Units::inch ? "Set units to inch" : "Set units to metric";
}

std::string Describer::operator()(const SetTitle& edit) const {
    return edit.title.empty() ? "Clear title" : "Set title to '" + edit.title + "'";
}

std::string Describer::operator()(const SetNotes& edit) const {
    return edit.notes.empty() ? "Clear notes" : "Edit notes";
}

std::string Describer::operator()(const SetAdjuster& edit) const {
    const std::string link = linkWords(car_, edit.link);
    if (!edit.adjuster) {
        return "Remove adjuster of " + link;
    }
    return "Set adjuster of " + link + " to pitch " + measure(edit.adjuster->pitch, Quantity::length) + ", " +
           std::to_string(edit.adjuster->threadedEnds) +
           (edit.adjuster->threadedEnds == 1 ? " threaded end" : " threaded ends");
}

std::string Describer::operator()(const SetDriveline& edit) const {
    if (!edit.driveline) {
        return "Remove driveline";
    }
    return car_.driveline ? "Change driveline" : "Add driveline";
}

std::string Describer::operator()(const RenameLink& edit) const {
    return "Rename " + linkWords(car_, edit.link) + " to '" + edit.name + "'";
}

std::string Describer::operator()(const RenameHole& edit) const {
    return "Rename " + holeWords(car_, edit.link, edit.end, edit.hole) + " to '" + edit.name + "'";
}

std::string Describer::operator()(const AddHole& edit) const {
    const std::string name = edit.hole.name.empty() ? "" : " '" + edit.hole.name + "'";
    return "Add " + linkWords(car_, edit.link) + " " + std::string(endWords(edit.end)) + " hole" + name +
           " at " + target(nullptr, edit.hole.at);
}

std::string Describer::operator()(const PlanHole& edit) const {
    return "Plan " + linkWords(car_, edit.link) + " " + std::string(endWords(edit.end)) + " hole '" +
           edit.hole.name + "' at " + target(nullptr, edit.hole.at) + " and bolt to it";
}

std::string Describer::operator()(const SetTarget& edit) const {
    if (!edit.target) {
        return "Clear target";
    }
    const auto percent = [](double value) { return figureText(value, Quantity::percent, Units::inch); };
    return "Set target: anti-squat " + percent(edit.target->antiSquatLow) + " to " +
           percent(edit.target->antiSquatHigh) + " %";
}

std::string Describer::operator()(const ChooseHoles& edit) const {
    const std::string names = holeNames(edit.use, car_);
    return (names.empty() ? "Set " : "Bolt to " + names + ", ") +
           "lengths: " + std::string(nameOf(edit.lengths));
}

std::string Describer::stateWords(int state) const {
    const bool exists = state >= 0 && static_cast<std::size_t>(state) < car_.kept.size();
    return exists ? "'" + car_.kept[static_cast<std::size_t>(state)].name + "'"
                  : "kept setup " + std::to_string(state + 1);
}

std::string Describer::operator()(const KeepSetup& edit) const {
    return (edit.other ? "Take in '" : "Keep as '") + edit.name + "'";
}

std::string Describer::operator()(const DescribeKept& edit) const {
    return "Describe " + stateWords(edit.state);
}

std::string Describer::operator()(const SetBaseline& edit) const {
    return edit.state ? "Compare with " + stateWords(*edit.state) : "Compare with nothing";
}

std::string Describer::operator()(const RemoveKept& edit) const {
    return "Delete " + stateWords(edit.state);
}

std::string Describer::operator()(const RestoreKept& edit) const {
    return "Recover " + stateWords(edit.state);
}

std::string Describer::operator()(const SwapBaseline&) const {
    return "Swap before and after";
}

std::string Describer::operator()(const ChangeRide& edit) const {
    std::string words;
    const auto add = [&](std::string_view what, double value, double now) {
        if (value != now) {
            words += (words.empty() ? "" : ", ") + std::string(what) + " " + measure(value, Quantity::length);
        }
    };
    add("rear tires to radius", edit.change.rearTireRadius, car_.rearTireRadius);
    add("front tires to radius", edit.change.frontTireRadius, car_.frontTireRadius);
    add("rear lower by", edit.change.rearLower, 0);
    add("front lower by", edit.change.frontLower, 0);
    return "Change ride: " + (words.empty() ? "nothing" : words);
}

std::string Describer::operator()(const SetChoice& edit) const {
    switch (edit.choice) {
        case Choice::cornersAre:
            return edit.option == 0 ? "Corner weights are with driver" : "Corner weights are without driver";
        case Choice::cgHeightFrom: {
            constexpr std::array<std::string_view, 3> kSources{"as entered", "from the lift", "estimated"};
            return "Take CG height " + std::string(kSources[static_cast<std::size_t>(edit.option % 3)]);
        }
        case Choice::liftRaised:
            return edit.option == 0 ? "Lift: front end raised" : "Lift: rear end raised";
        case Choice::liftRead:
            return edit.option == 0 ? "Lift: front axle weighed" : "Lift: rear axle weighed";
        case Choice::liftDriver:
            return edit.option == 0 ? "Lift with driver" : "Lift without driver";
        case Choice::ticketDriver:
            return edit.option == 0 ? "Truck-scale ticket with driver" : "Truck-scale ticket without driver";
        case Choice::differential: {
            constexpr std::array<std::string_view, 4> kWords{"not entered", "open", "limited slip", "locked"};
            return "Differential: " + std::string(kWords[static_cast<std::size_t>(edit.option % 4)]);
        }
        case Choice::coupling: {
            constexpr std::array<std::string_view, 3> kWords{"not entered", "converter", "clutch"};
            return "Engine drives through: " + std::string(kWords[static_cast<std::size_t>(edit.option % 3)]);
        }
        case Choice::body: {
            constexpr std::array<std::string_view, 6> kWords{"not chosen", "sedan",  "coupe",
                                                             "wagon",      "pickup", "roadster"};
            return "Body: " + std::string(kWords[static_cast<std::size_t>(edit.option % 6)]);
        }
        case Choice::launchFrom:
            break;
    }
    constexpr std::array<std::string_view, 3> kLaunches{"acceleration", "60-ft time", "engine torque"};
    return "Compute launch from " + std::string(kLaunches[static_cast<std::size_t>(edit.option % 3)]);
}

std::string Describer::operator()(const ChangeLink& edit) const {
    const Link* old = findLink(car_, edit.index);
    const std::string name = linkWords(car_, edit.index);
    if (old == nullptr || old->kind == edit.link.kind) {
        return "Change " + name;
    }
    constexpr std::array<std::string_view, 4> kKinds{"a rod", "a pivoted arm", "a sliding arm", "a guide"};
    return "Make " + name + " " + std::string(kKinds[static_cast<std::size_t>(edit.link.kind)]);
}

/// What of it changes, the one thing if it is one.
std::string Describer::operator()(const ChangeSpring& edit) const {
    const std::string name = springWords(car_, edit.item);
    const SuspensionPart* old = findSpring(car_, edit.item);
    if (old == nullptr) {
        return "Change " + name;
    }
    if (old->name != edit.part.name) {
        return "Rename " + name + " to '" + edit.part.name + "'";
    }
    for (const End end : {End::chassis, End::axle}) {
        const Bracket& mount = edit.part.bracket(end);
        const std::size_t was = old->bracket(end).holes.size();
        if (was != mount.holes.size()) {
            return (was < mount.holes.size() ? "Add a hole to " : "Remove a hole of ") + name + " " +
                   std::string(endWords(end)) + " mount";
        }
        const bool exists = mount.use >= 0 && static_cast<std::size_t>(mount.use) < mount.holes.size();
        if (old->bracket(end).use != mount.use && exists) {
            return "Bolt " + name + " " + std::string(endWords(end)) + " to '" + mount.inUse().name + "'";
        }
    }
    return "Change " + name;
}

std::string Describer::operator()(const RemoveHole& edit) const {
    return "Remove " + holeWords(car_, edit.link, edit.end, edit.hole);
}

}  // namespace

std::string describe(const Edit& edit, const Car& before) {
    return std::visit(Describer(before), edit.kind());
}

}  // namespace bolthole
