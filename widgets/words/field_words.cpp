#include "widgets/words/field_words.h"

#include "geometry/car/fields.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/entered_words.h"

namespace bolthole {

namespace {

QString steps(Quantity quantity) {
    switch (quantity) {
        case Quantity::length:
            return tr(
                " Up and Down step by the chosen fraction (1 mm in metric), with Shift by 1 in (10 mm).");
        case Quantity::angle:
            return tr(" Up and Down step by 0.1°, with Shift by 1°.");
        case Quantity::ratio:
        case Quantity::density:
        case Quantity::time:
            return tr(" Up and Down step by 0.1, with Shift by 1.");
        default:
            return tr(" Up and Down step by 1, with Shift by 10.");
    }
}

QString scaleWords(const char* corner) {
    return tr("Scale reading under the %1 tire: car level on four scales at ride height, tires at pressure, "
              "fuel aboard as entered on the Weights page, driver in or out as chosen there. Roll it on, "
              "bounce both ends, let it settle. Chock the wheels before anyone works around the car.")
        .arg(tr(corner));
}

const char* underTheCar() {
    return "The car stands on its wheels on level ground, or on stands under the axle and the front "
           "suspension at "
           "the same ride height, wheels chocked: never under a car that a jack alone holds.";
}

QString holeHowTo(const FieldId& id, Side side) {
    if (id.axis == 0) {
        return tr("From the axle's centerline to the center of the bolt hole, along the car; plus is ahead "
                  "of the "
                  "axle. Drop a plumb bob from both, mark the floor, and tape between the marks. ") +
               tr(underTheCar());
    }
    if (id.axis == 2) {
        return (id.end == End::axle ? tr("From the ground, or from the axle's center if so chosen above, up "
                                         "to the center of the "
                                         "bolt hole; below the axle's center is minus. ")
                                    : tr("From level ground straight up to the center of the bolt hole, the "
                                         "car at ride height. ")) +
               tr(underTheCar());
    }
    if (side == Side::both) {
        return tr("From the car's center plane out to the middle of the link's eye: half of what a tape "
                  "reads "
                  "between the left and the right one. ") +
               tr(underTheCar());
    }
    return tr("From the car's center plane to the middle of the link's eye; plus is to the driver's left "
              "when "
              "facing forward. ") +
           tr(underTheCar());
}

QString jointHowTo(const FieldId& id, const char* joint) {
    const char* how = "Sideways from the car's center plane to the center of the %1; plus is left.";
    if (id.axis == 0) {
        how =
            "From the axle's centerline forward to the center of the %1's cross, along the car. Drop a plumb "
            "bob "
            "from both and tape between the marks.";
    } else if (id.axis == 2) {
        how = "From level ground up to the center of the %1's cross, the car at ride height.";
    }
    return tr(how).arg(tr(joint)) + tr(" Transmission in neutral, ignition off. ") + tr(underTheCar());
}

FieldWords carWords(Field field) {
    switch (field) {
        case Field::wheelbase:
            return {tr("Wheelbase"), tr("wheelbase"),
                    tr("Rear to front wheel center along the ground, wheels straight ahead. Plumb both hubs "
                       "to the "
                       "floor on each side and take the mean of left and right.")};
        case Field::rearTireRadius:
            return {
                tr("Rear tire radius"), tr("rear tire radius, loaded"),
                tr("From the ground up to the center of the rear axle with the car's weight on the tires at "
                   "race pressure. The loaded radius, not half the tire's diameter.")};
        case Field::frontTireRadius:
            return {
                tr("Front tire radius"), tr("front tire radius, loaded"),
                tr("From the ground up to the center of the front hub with the car's weight on the tires.")};
        case Field::rearTrack:
            return {tr("Rear track"), tr("rear track"),
                    tr("Between the middles of the rear treads, at the ground. Needed for where the CG lies "
                       "sideways; may be left empty.")};
        case Field::cgHeight:
            return {tr("CG height"), tr("height of the center of gravity"),
                    tr("Height of the whole car's center of gravity above the ground at ride height: from "
                       "weighing "
                       "with one end raised, or an honest estimate. Raising an end for weighing: chock the "
                       "wheels "
                       "on the ground, stands under the raised end, nobody under or beside the car.")};
        case Field::bump:
            return {tr("Bump"), tr("bump travel"),
                    tr("How far the axle can rise from ride height before the stops take over: tape the gap "
                       "between "
                       "stop and pad. ") +
                        tr(underTheCar())};
        case Field::droop:
            return {tr("Droop"), tr("droop travel"),
                    tr("How far the axle can drop from ride height until shocks or straps are at their end. "
                       "Stands "
                       "under the frame, a jack under the axle only to lower it, wheels chocked.")};
        case Field::steps:
            return {
                tr("Rows of the sweep"), tr("rows of the sweep"),
                tr("How many positions are computed from full droop to full bump, both ends included: 2 to "
                   "100,000.")};
        default:
            return {tr("Front per rear travel"), tr("front travel per rear travel"),
                    tr("How far the front axle moves for each inch of the rear: 1 both ends together, 0 rear "
                       "only, "
                       "minus: one end rises while the other drops.")};
    }
}

FieldWords weightWords(Field field) {
    switch (field) {
        case Field::leftFrontWeight:
            return {tr("left"), tr("corner weight, left front"), scaleWords("left front")};
        case Field::rightFrontWeight:
            return {tr("right"), tr("corner weight, right front"), scaleWords("right front")};
        case Field::leftRearWeight:
            return {tr("left"), tr("corner weight, left rear"), scaleWords("left rear")};
        default:
            return {tr("right"), tr("corner weight, right rear"), scaleWords("right rear")};
    }
}

FieldWords drivelineWords(const FieldId& id) {
    switch (id.field) {
        case Field::pinionAngle:
            return {tr("Pinion, nose up"), tr("pinion angle, nose up"),
                    tr("Angle finder on a machined face of the pinion's yoke, at ride height, zeroed on the "
                       "level "
                       "floor; nose up is plus. Transmission in neutral, ignition off. ") +
                        tr(underTheCar())};
        case Field::outputAngle:
            return {tr("Output, rising forward"), tr("transmission output angle, rising forward"),
                    tr("Angle finder on the transmission's output yoke or a face parallel to its shaft, "
                       "zeroed on "
                       "the level floor; rising toward the front is plus. Transmission in neutral, ignition "
                       "off. ") +
                        tr(underTheCar())};
        case Field::pinionJoint:
            return {axisWord(id.axis, Side::center),
                    tr("pinion joint, %1").arg(axisWord(id.axis, Side::center)),
                    jointHowTo(id, "rear U-joint")};
        case Field::jointLimit:
            return {tr("Joints bend at most"), tr("driveshaft joints, largest working angle"),
                    tr("The largest angle either driveshaft joint may work at anywhere in the travel, from "
                       "the maker's table for the speed it turns at, or from where its yokes would touch. "
                       "Left empty, nothing is marked.")};
        default:
            return {axisWord(id.axis, Side::center),
                    tr("output joint, %1").arg(axisWord(id.axis, Side::center)),
                    jointHowTo(id, "front U-joint")};
    }
}

FieldWords linkWords(const Car& car, const FieldId& id) {
    const Link& link = car.links[static_cast<std::size_t>(id.link)];
    const QString name = linkName(car, id.link);
    switch (id.field) {
        case Field::holeAt: {
            const QString end = id.end == End::chassis ? tr("chassis hole") : tr("axle hole");
            const QString axis = axisWord(id.axis, link.side);
            return {
                axis,
                QStringLiteral("%1, %2 %3, %4").arg(name, end, holeName(link.bracket(id.end), id.hole), axis),
                holeHowTo(id, link.side)};
        }
        case Field::linkLength:
            return {tr("Length"), tr("%1, length center to center").arg(name),
                    tr("Center to center of the two bolts as the link is built: a tape over both bolt heads, "
                       "or the "
                       "link on the bench. Left empty, the link is taken to fit the holes in use. ") +
                        tr(underTheCar())};
        case Field::adjusterPitch:
            return {tr("Thread pitch"), tr("%1, thread pitch of the adjuster").arg(name),
                    tr("From thread to thread: 1 in divided by the threads per inch. 3/4-16 has 16 threads "
                       "per inch: "
                       "type 1/16 (1.5875 mm); for 18, type 1/18.")};
        default:
            return {tr("Adjuster"), tr("%1, adjuster").arg(name),
                    tr("Both ends threaded, left and right hand: turning the tube changes the length by two "
                       "pitches a "
                       "turn. One end threaded: the end comes off its bolt and turns in halves. Keep enough "
                       "thread "
                       "engaged and tighten the jam nuts.")};
    }
}

FieldWords limitWords(const Car& car, const FieldId& id) {
    const QString name = linkName(car, id.link);
    switch (id.field) {
        case Field::adjusterShortest:
            return {tr("Shortest"), tr("%1, shortest length").arg(name),
                    tr("Center to center with both ends screwed in as far as they go, on the bench. Left "
                       "empty, nothing is marked.")};
        case Field::adjusterLongest:
            return {
                tr("Longest"), tr("%1, longest length").arg(name),
                tr("Center to center with the ends screwed out as far as they may. Left empty, the thread "
                   "held alone decides.")};
        case Field::adjusterEngagement:
            return {tr("Thread held"), tr("%1, thread held in each end").arg(name),
                    tr("How much thread each threaded end holds as the rod is built now: the thread's whole "
                       "length less what shows past the jam nut, or a wire down the inspection hole. The "
                       "length it was measured at is kept with it.")};
        case Field::adjusterEngagementAt:
            return {tr("Measured at"), tr("%1, length at which the thread was measured").arg(name),
                    tr("The rod's length, center to center, when the thread held was measured.")};
        case Field::adjusterLeastEngagement:
            return {tr("Thread, at least"), tr("%1, least thread held in each end").arg(name),
                    tr("How much thread must stay held in each end: the maker's figure or the rule book's. A "
                       "rod end with too little pulls out under load. Left empty, nothing is marked.")};
        default:
            return {tr("Rod ends lean at most"), tr("%1, largest lean of a rod end").arg(name),
                    tr("How far a rod end may lean to either side before its body touches the bracket or the "
                       "spacers: the maker's figure, or an angle finder on the rod with the end bolted in. "
                       "Bushings: as far as their maker allows. Left empty, nothing is marked.")};
    }
}

}  // namespace

namespace {

// Words of what stands on the pages beside the bench.
FieldWords enteredWords(const Car& car, const FieldId& id) {
    const Scope scope = ruleOf(id.field).scope;
    if (scope == Scope::load || id.field <= Field::liftReading) {
        return weighingWords(car, id);
    }
    if (scope == Scope::driveline) {
        return shaftWords(car, id);
    }
    const bool isRate = id.field >= Field::frontWheelRate && id.field <= Field::rearRollRate;
    return isRate || scope == Scope::spring || scope == Scope::mount ? springFieldWords(car, id)
                                                                     : launchWords(car, id);
}

}  // namespace

FieldWords wordsFor(const Car& car, const FieldId& id) {
    if (isSpread(id)) {
        return spreadWords(car, id);
    }
    FieldWords words;
    if (ruleOf(id.field).scope == Scope::wanted) {
        words = wantedWords(id);
        words.howTo += steps(quantityOf(id.field));
        return words;
    }
    if (id.field >= Field::frontTrack) {
        words = enteredWords(car, id);
        words.howTo += steps(quantityOf(id.field));
        return words;
    }
    switch (id.field) {
        case Field::holeAt:
        case Field::linkLength:
        case Field::adjusterPitch:
        case Field::adjusterEnds:
            words = linkWords(car, id);
            break;
        case Field::adjusterShortest:
        case Field::adjusterLongest:
        case Field::adjusterEngagement:
        case Field::adjusterEngagementAt:
        case Field::adjusterLeastEngagement:
        case Field::rodEndLimit:
            words = limitWords(car, id);
            break;
        case Field::pinionAngle:
        case Field::pinionJoint:
        case Field::outputAngle:
        case Field::outputJoint:
        case Field::jointLimit:
            words = drivelineWords(id);
            break;
        case Field::leftFrontWeight:
        case Field::rightFrontWeight:
        case Field::leftRearWeight:
        case Field::rightRearWeight:
            words = weightWords(id.field);
            break;
        default:
            words = carWords(id.field);
    }
    if (id.field != Field::adjusterEnds) {
        words.howTo += steps(quantityOf(id.field));
    }
    return words;
}

QString linkName(const Car& car, int link) {
    const std::string& name = car.links[static_cast<std::size_t>(link)].name;
    return name.empty() ? tr("link %1").arg(link + 1) : QString::fromStdString(name);
}

QString linkTitle(const Car& car, int link) {
    const Link& part = car.links[static_cast<std::size_t>(link)];
    QString title = capitalized(linkName(car, link));
    const bool oneWord = !title.contains(u' ');
    if (oneWord && part.kind == LinkKind::rod && roleOf(part, car.rearTireRadius) != Role::crosswise) {
        title += tr(" link");
    }
    switch (part.side) {
        case Side::both:
            return tr("%1, both sides").arg(title);
        case Side::left:
            return tr("%1, left side").arg(title);
        case Side::right:
            return tr("%1, right side").arg(title);
        case Side::center:
            break;
    }
    return title;
}

QString holeName(const Bracket& bracket, int hole) {
    const std::string& name = bracket.holes[static_cast<std::size_t>(hole)].name;
    return name.empty() ? tr("hole %1").arg(hole + 1) : QString::fromStdString(name);
}

QString bracketTitle(Role role, End end) {
    if (end == End::axle) {
        return tr("Axle holes");
    }
    return role == Role::crosswise ? tr("Chassis holes") : tr("Front holes");
}

QString sidewaysWord(Side side) {
    return side == Side::both ? tr("out") : tr("left");
}

QString kindWords(LinkKind kind) {
    switch (kind) {
        case LinkKind::rod:
            return tr("A rod with a joint or bushing at each end.");
        case LinkKind::pivot:
            return tr("An arm rigid with the axle, pinned at its front.");
        case LinkKind::slider:
            return tr("An arm rigid with the axle, its front held in height and free fore and aft.");
        case LinkKind::guide:
            break;
    }
    return tr("A guide that holds the axle sideways and nothing else.");
}

QString axisWord(int axis, Side side) {
    if (axis == 0) {
        return tr("forward");
    }
    return axis == 1 ? sidewaysWord(side) : tr("height");
}

}  // namespace bolthole
