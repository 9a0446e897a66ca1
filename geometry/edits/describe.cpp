// describe(Edit) of geometry/edits/edit.h: edits in a person's words.
#include <array>
#include <cmath>

#include "geometry/car/fields.h"
#include "geometry/combinations/combination_figures.h"
#include "geometry/edits/edit.h"
#include "geometry/edits/edit_correction.h"
#include "geometry/edits/edit_passes.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

/// A length along an axis, to either side.
struct AxisWords {
    std::string_view plus;
    std::string_view minus;
};
constexpr std::array<AxisWords, 3> kAxisWords{{{phrase("%1 forward"), phrase("%1 back")},
                                               {phrase("%1 left"), phrase("%1 right")},
                                               {phrase("%1 up"), phrase("%1 down")}}};

/// The word of an option; one past the last counts from the first again.
template <std::size_t size>
std::string optionOf(const std::array<std::string_view, size>& words, int option) {
    return say(words[static_cast<std::size_t>(option) % size]);
}

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
    std::string operator()(const AddBallast& edit) const { return say("Add load '%1'", edit.ballast.name); }
    std::string operator()(const RemoveBallast& edit) const {
        return say("Remove %1", ballastWords(car_, edit.item));
    }
    std::string operator()(const RenameBallast& edit) const {
        return say("Rename %1 to '%2'", ballastWords(car_, edit.item), edit.name);
    }
    std::string operator()(const AddSpring& edit) const {
        return say("Add %1 '%2'", say(nameOf(edit.part.kind)), edit.part.name);
    }
    std::string operator()(const RemoveSpring& edit) const {
        return say("Remove %1", springWords(car_, edit.item));
    }
    std::string operator()(const ChangeSpring& edit) const;
    std::string operator()(const AddLink& edit) const { return say("Add link '%1'", edit.link.name); }
    std::string operator()(const RemoveLink& edit) const {
        return say("Remove %1", linkWords(car_, edit.link));
    }
    std::string operator()(const ChangeLink& edit) const;
    std::string operator()(const SplitLink& edit) const {
        return say("Set left and right %1 apart", linkWords(car_, edit.link));
    }
    std::string operator()(const SetPlanned& edit) const {
        const std::string hole = holeWords(car_, edit.link, edit.end, edit.hole);
        return edit.planned ? say("Plan %1", hole) : say("Drilled %1", hole);
    }
    std::string operator()(const SetPlate& edit) const {
        const std::string link = linkWords(car_, edit.link);
        const std::string end = say(endWords(edit.end));
        return edit.plate ? say("Enter the plate of the %1's %2 bracket", link, end)
                          : say("Take away the plate of the %1's %2 bracket", link, end);
    }
    std::string operator()(const AddPass& edit) const { return describePassEdit(edit); }
    std::string operator()(const ChangePass& edit) const { return describePassEdit(edit, car_); }
    std::string operator()(const RemovePass& edit) const { return describePassEdit(edit, car_); }
    std::string operator()(const StrikePass& edit) const { return describePassEdit(edit, car_); }
    std::string operator()(const CorrectLaunch& edit) const { return describeCorrection(edit); }
    std::string operator()(const JoinLinks& edit) const {
        return say("Join left and right %1", linkWords(car_, edit.link));
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
    return say(value < 0 ? words.minus : words.plus, size);
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
    const std::string words = say(rule.words);
    if (rule.scope == Scope::ballast) {
        const std::string load = ballastWords(car_, id.item);
        return rule.hasAxis ? load : say("%1, %2", load, words);
    }
    if (rule.scope == Scope::spring) {
        return say("%1 %2", springWords(car_, id.item), words);
    }
    if (rule.scope == Scope::mount) {
        return mountWords(car_, id.item, id.end);
    }
    return rule.scope == Scope::link ? say("%1 %2", linkWords(car_, id.link), words) : words;
}

std::string Describer::operator()(const SetNumber& edit) const {
    const FieldRule& rule = ruleOf(edit.id.field);
    if (edit.id.uncertainty) {
        return say("Take %1 to be sure to %2", fieldWords(edit.id), measure(edit.value, rule.quantity));
    }
    if (rule.hasAxis) {
        return say("Move %1 to %2", fieldWords(edit.id), coordinate(edit.value, edit.id.axis));
    }
    return say("Set %1 to %2", fieldWords(edit.id), measure(edit.value, rule.quantity));
}

/// "Set pitch inertia to 2,100 kg m², with its ±".
std::string Describer::operator()(const SetNumbers& edit) const {
    std::string words;
    for (const SetNumber& number : edit.numbers) {
        const bool isItsOwn = number.id.uncertainty && !words.empty();
        words = isItsOwn        ? say("%1, with its ±", words)
                : words.empty() ? (*this)(number)
                                : say("%1, %2", words, (*this)(number));
    }
    return words;
}

std::string Describer::operator()(const SetDamping& edit) const {
    const std::string whose = edit.item < 0 ? say("the front shocks") : springWords(car_, edit.item);
    return edit.damping ? say("Enter the forces of %1", whose) : say("Take away the forces of %1", whose);
}

std::string Describer::operator()(const SetTorque& edit) const {
    if (edit.torque.empty()) {
        return say("Take away the torque curve");
    }
    const bool isNew = car_.launch.engine.torque.empty();
    if (edit.torque.size() == 1) {
        return isNew ? say("Enter a torque curve of 1 row") : say("Change the torque curve to 1 row");
    }
    const Count rows(edit.torque.size());
    return isNew ? say("Enter a torque curve of %n rows", rows)
                 : say("Change the torque curve to %n rows", rows);
}

std::string Describer::operator()(const ClearNumber& edit) const {
    if (edit.id.uncertainty) {
        return say("Take %1 to be as sure as its tool", fieldWords(edit.id));
    }
    if (edit.id.field == Field::linkLength) {
        return say("Fit %1 to its holes", linkWords(car_, edit.id.link));
    }
    return say("Clear %1", fieldWords(edit.id));
}

std::string Describer::operator()(const MoveHole& edit) const {
    const Hole* hole = findHole(car_, edit.link, edit.end, edit.hole);
    return say("Move %1 to %2", holeWords(car_, edit.link, edit.end, edit.hole),
               target(hole == nullptr ? nullptr : &hole->at, edit.at));
}

std::string Describer::operator()(const UseHole& edit) const {
    const Hole* hole = findHole(car_, edit.link, edit.end, edit.hole);
    const bool isNamed = hole != nullptr && !hole->name.empty();
    const std::string link = linkWords(car_, edit.link);
    const std::string end = say(endWords(edit.end));
    return isNamed ? say("Bolt %1 %2 to '%3'", link, end, hole->name)
                   : say("Bolt %1 %2 to hole %3", link, end, edit.hole + 1);
}

std::string Describer::operator()(const MoveJoint& edit) const {
    const bool onAxle = edit.end == End::axle;
    const Eigen::Vector3d* before = nullptr;
    if (car_.driveline) {
        before = onAxle ? &car_.driveline->pinionJoint : &car_.driveline->outputJoint;
    }
    return onAxle ? say("Move rear U-joint to %1", target(before, edit.at))
                  : say("Move front U-joint to %1", target(before, edit.at));
}

std::string Describer::operator()(const SetUnits& edit) const {
    return edit.units == Units::inch ? say("Set units to inch") : say("Set units to metric");
}

std::string Describer::operator()(const SetTitle& edit) const {
    return edit.title.empty() ? say("Clear title") : say("Set title to '%1'", edit.title);
}

std::string Describer::operator()(const SetNotes& edit) const {
    return edit.notes.empty() ? say("Clear notes") : say("Edit notes");
}

std::string Describer::operator()(const SetAdjuster& edit) const {
    const std::string link = linkWords(car_, edit.link);
    if (!edit.adjuster) {
        return say("Remove adjuster of %1", link);
    }
    const std::string pitch = measure(edit.adjuster->pitch, Quantity::length);
    return edit.adjuster->threadedEnds == 1
               ? say("Set adjuster of %1 to pitch %2, 1 threaded end", link, pitch)
               : say("Set adjuster of %1 to pitch %2, %n threaded ends", Count(edit.adjuster->threadedEnds),
                     link, pitch);
}

std::string Describer::operator()(const SetDriveline& edit) const {
    if (!edit.driveline) {
        return say("Remove driveline");
    }
    return car_.driveline ? say("Change driveline") : say("Add driveline");
}

std::string Describer::operator()(const RenameLink& edit) const {
    return say("Rename %1 to '%2'", linkWords(car_, edit.link), edit.name);
}

std::string Describer::operator()(const RenameHole& edit) const {
    return say("Rename %1 to '%2'", holeWords(car_, edit.link, edit.end, edit.hole), edit.name);
}

std::string Describer::operator()(const AddHole& edit) const {
    const std::string link = linkWords(car_, edit.link);
    const std::string end = say(endWords(edit.end));
    const std::string at = target(nullptr, edit.hole.at);
    return edit.hole.name.empty() ? say("Add %1 %2 hole at %3", link, end, at)
                                  : say("Add %1 %2 hole '%3' at %4", link, end, edit.hole.name, at);
}

std::string Describer::operator()(const PlanHole& edit) const {
    return say("Plan %1 %2 hole '%3' at %4 and bolt to it", linkWords(car_, edit.link),
               say(endWords(edit.end)), edit.hole.name, target(nullptr, edit.hole.at));
}

std::string Describer::operator()(const SetTarget& edit) const {
    if (!edit.target) {
        return say("Clear target");
    }
    const auto percent = [](double value) { return figureText(value, Quantity::percent, Units::inch); };
    return say("Set target: anti-squat %1 to %2 %", percent(edit.target->antiSquatLow),
               percent(edit.target->antiSquatHigh));
}

std::string Describer::operator()(const ChooseHoles& edit) const {
    const std::string names = holeNames(edit.use, car_);
    const std::string lengths = say(nameOf(edit.lengths));
    return names.empty() ? say("Set lengths: %1", lengths) : say("Bolt to %1, lengths: %2", names, lengths);
}

std::string Describer::stateWords(int state) const {
    const bool exists = state >= 0 && static_cast<std::size_t>(state) < car_.kept.size();
    return exists ? "'" + car_.kept[static_cast<std::size_t>(state)].name + "'"
                  : say("kept setup %1", state + 1);
}

std::string Describer::operator()(const KeepSetup& edit) const {
    return edit.other ? say("Take in '%1'", edit.name) : say("Keep as '%1'", edit.name);
}

std::string Describer::operator()(const DescribeKept& edit) const {
    return say("Describe %1", stateWords(edit.state));
}

std::string Describer::operator()(const SetBaseline& edit) const {
    return edit.state ? say("Compare with %1", stateWords(*edit.state)) : say("Compare with nothing");
}

std::string Describer::operator()(const RemoveKept& edit) const {
    return say("Delete %1", stateWords(edit.state));
}

std::string Describer::operator()(const RestoreKept& edit) const {
    return say("Recover %1", stateWords(edit.state));
}

std::string Describer::operator()(const SwapBaseline&) const {
    return say("Swap before and after");
}

std::string Describer::operator()(const ChangeRide& edit) const {
    std::string words;
    const auto add = [&](std::string_view what, double value, double now) {
        if (value != now) {
            const std::string change = say(what, measure(value, Quantity::length));
            words = words.empty() ? change : say("%1, %2", words, change);
        }
    };
    add(phrase("rear tires to radius %1"), edit.change.rearTireRadius, car_.rearTireRadius);
    add(phrase("front tires to radius %1"), edit.change.frontTireRadius, car_.frontTireRadius);
    add(phrase("rear lower by %1"), edit.change.rearLower, 0);
    add(phrase("front lower by %1"), edit.change.frontLower, 0);
    return words.empty() ? say("Change ride: nothing") : say("Change ride: %1", words);
}

std::string Describer::operator()(const SetChoice& edit) const {
    switch (edit.choice) {
        case Choice::cornersAre:
            return edit.option == 0 ? say("Corner weights are with driver")
                                    : say("Corner weights are without driver");
        case Choice::cgHeightFrom: {
            constexpr std::array<std::string_view, 3> kSources{phrase("Take CG height as entered"),
                                                               phrase("Take CG height from the lift"),
                                                               phrase("Take CG height estimated")};
            return optionOf(kSources, edit.option);
        }
        case Choice::liftRaised:
            return edit.option == 0 ? say("Lift: front end raised") : say("Lift: rear end raised");
        case Choice::liftRead:
            return edit.option == 0 ? say("Lift: front axle weighed") : say("Lift: rear axle weighed");
        case Choice::liftDriver:
            return edit.option == 0 ? say("Lift with driver") : say("Lift without driver");
        case Choice::ticketDriver:
            return edit.option == 0 ? say("Truck-scale ticket with driver")
                                    : say("Truck-scale ticket without driver");
        case Choice::differential: {
            constexpr std::array<std::string_view, 4> kWords{
                phrase("Differential: not entered"), phrase("Differential: open"),
                phrase("Differential: limited slip"), phrase("Differential: locked")};
            return optionOf(kWords, edit.option);
        }
        case Choice::coupling: {
            constexpr std::array<std::string_view, 3> kWords{phrase("Engine drives through: not entered"),
                                                             phrase("Engine drives through: converter"),
                                                             phrase("Engine drives through: clutch")};
            return optionOf(kWords, edit.option);
        }
        case Choice::body: {
            constexpr std::array<std::string_view, 6> kWords{
                phrase("Body: not chosen"), phrase("Body: sedan"),  phrase("Body: coupe"),
                phrase("Body: wagon"),      phrase("Body: pickup"), phrase("Body: roadster")};
            return optionOf(kWords, edit.option);
        }
        case Choice::launchFrom:
            break;
    }
    constexpr std::array<std::string_view, 3> kLaunches{phrase("Compute launch from acceleration"),
                                                        phrase("Compute launch from 60-ft time"),
                                                        phrase("Compute launch from engine torque")};
    return optionOf(kLaunches, edit.option);
}

std::string Describer::operator()(const ChangeLink& edit) const {
    const Link* old = findLink(car_, edit.index);
    const std::string name = linkWords(car_, edit.index);
    if (old == nullptr || old->kind == edit.link.kind) {
        return say("Change %1", name);
    }
    constexpr std::array<std::string_view, 4> kKinds{phrase("Make %1 a rod"), phrase("Make %1 a pivoted arm"),
                                                     phrase("Make %1 a sliding arm"),
                                                     phrase("Make %1 a guide")};
    return say(kKinds[static_cast<std::size_t>(edit.link.kind)], name);
}

/// What of it changes, the one thing if it is one.
std::string Describer::operator()(const ChangeSpring& edit) const {
    const std::string name = springWords(car_, edit.item);
    const SuspensionPart* old = findSpring(car_, edit.item);
    if (old == nullptr) {
        return say("Change %1", name);
    }
    if (old->name != edit.part.name) {
        return say("Rename %1 to '%2'", name, edit.part.name);
    }
    for (const End end : {End::chassis, End::axle}) {
        const Bracket& mount = edit.part.bracket(end);
        const std::size_t was = old->bracket(end).holes.size();
        if (was != mount.holes.size()) {
            const std::string whose = mountWords(car_, edit.item, end);
            return was < mount.holes.size() ? say("Add a hole to %1", whose)
                                            : say("Remove a hole of %1", whose);
        }
        const bool exists = mount.use >= 0 && static_cast<std::size_t>(mount.use) < mount.holes.size();
        if (old->bracket(end).use != mount.use && exists) {
            return say("Bolt %1 %2 to '%3'", name, say(endWords(end)), mount.inUse().name);
        }
    }
    return say("Change %1", name);
}

std::string Describer::operator()(const RemoveHole& edit) const {
    return say("Remove %1", holeWords(car_, edit.link, edit.end, edit.hole));
}

}  // namespace

std::string describe(const Edit& edit, const Car& before) {
    return std::visit(Describer(before), edit.kind());
}

}  // namespace bolthole
