// findWarnings() of geometry/edits/edit.h: what can be computed but looks wrong or risky.
#include "geometry/checks/warnings.h"

#include <array>
#include <cmath>
#include <utility>

#include "geometry/car/faults.h"
#include "geometry/car/fields.h"
#include "geometry/car/numbers.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/checks/warnings_entered.h"
#include "geometry/checks/warnings_held.h"
#include "geometry/checks/warnings_unmeasured.h"
#include "geometry/combinations/combination_figures.h"
#include "geometry/edits/edit.h"
#include "geometry/kinematics/trace.h"
#include "geometry/plates/plate_room.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"
#include "geometry/units/uncertainty_text.h"

namespace bolthole {

namespace {

constexpr double kHair = 2.5e-4;  // m; lengths kept through a hole change fit their old holes that closely
constexpr double kTapeFraction = kMetresPerInch / 16;  // a written length may differ from the holes by this
constexpr double kRounding = 1e-9;                     // m; keeps a sixteenth exactly from being a warning
constexpr int kWarningSteps = 41;                      // of the travel; its ends say how far the links reach

/// What numbers cars have; outside, a slip of the tape or of the unit is likely. Common practice, no source.
struct UsualRange {
    Field field;
    double low;
    double high;
};
constexpr std::array kUsualRanges{
    UsualRange{Field::wheelbase, 1.2, 6.0},
    UsualRange{Field::rearTireRadius, 0.15, 0.8},
    UsualRange{Field::frontTireRadius, 0.15, 0.8},
    UsualRange{Field::rearTrack, 0.6, 2.6},
    UsualRange{Field::frontTrack, 0.6, 2.6},
    UsualRange{Field::cgHeight, 0.25, 1.2},
    UsualRange{Field::bump, 0.0, 0.5},
    UsualRange{Field::droop, 0.0, 0.5},
    UsualRange{Field::frontRatio, -3.0, 3.0},
    UsualRange{Field::pinionAngle, -15 * kRadiansPerDegree, 15 * kRadiansPerDegree},
    UsualRange{Field::outputAngle, -15 * kRadiansPerDegree, 15 * kRadiansPerDegree},
};
constexpr double kFarthestAhead = 2.0;     // m, of a link's hole, where the wheelbase is less
constexpr double kFarthestBehind = 1.2;    // m, of a link's hole behind the axle
constexpr double kFarthestOut = 1.3;       // m, from the center plane
constexpr double kHighest = 1.2;           // m
constexpr double kLeastTotal = 200;        // kg
constexpr double kLargestTotal = 6000;     // kg
constexpr double kLeastFrontShare = 0.30;  // of the total
constexpr double kLargestFrontShare = 0.75;

class WarningFinder {
  public:
    explicit WarningFinder(const Car& car) : car_(car), units_(car.units) {}

    std::vector<Warning> find();

  private:
    void add(const FieldId& id, std::string path, Finding finding) {
        warnings_.push_back({std::move(path), id, std::move(finding)});
    }
    void add(const FieldId& id, Finding finding) { add(id, jsonPath(id), std::move(finding)); }
    /// Of many numbers at once, none of them measured; leads to the first.
    void addOfWhole(const FieldId& first, std::string cause, std::string follows);

    void checkUsualRanges();
    void checkMeasured();
    void checkReadings();
    [[nodiscard]] std::string numberName(const FieldId& id) const;
    void checkWeights();
    void checkCgHeight();
    void checkLink(int index);
    void checkLength(int index);
    [[nodiscard]] bool boltWasMoved() const;
    void checkAdjuster(int index);
    void checkThread(int index);
    void checkSide(int index);
    void checkGround(int index, End end);
    void checkRequested();
    void checkTrace();
    void checkAssembly(const MoveReport& report);
    void checkTravel(Field field, const MoveReport& report);
    void checkSymmetry(Freedom freedom);

    [[nodiscard]] const Link& link(int index) const { return car_.links[static_cast<std::size_t>(index)]; }
    [[nodiscard]] std::string measured(double value, Quantity quantity) const;
    [[nodiscard]] std::string figure(double value, Quantity quantity) const;
    [[nodiscard]] std::string shift(double value, Quantity quantity, std::string_view plus,
                                    std::string_view minus) const;
    [[nodiscard]] std::string axleShift(const AxlePose& pose) const;
    [[nodiscard]] std::string consequence(int index) const;
    [[nodiscard]] std::string faultPath(const MoveReport& report, const FieldId& otherwise) const;

    const Car& car_;
    Units units_;
    std::vector<Warning> warnings_;
};

std::string WarningFinder::measured(double value, Quantity quantity) const {
    return withUnit(fieldText(value, quantity, {units_, InchStyle::sixteenths}), quantity, units_);
}

std::string WarningFinder::figure(double value, Quantity quantity) const {
    return withUnit(figureText(value, quantity, units_), quantity, units_);
}

void WarningFinder::checkUsualRanges() {
    for (const UsualRange& range : kUsualRanges) {
        const FieldId id{.field = range.field};
        const double value = numberAt(car_, id).value_or(range.low);
        if (value < range.low || value > range.high) {
            const FieldRule& rule = ruleOf(range.field);
            add(id,
                {Severity::wrong,
                 say("%1 %2 looks outside what cars have", say(rule.words), measured(value, rule.quantity)),
                 say("check")});
        }
    }
}

void WarningFinder::addOfWhole(const FieldId& first, std::string cause, std::string follows) {
    add(first, {Severity::unmeasured, std::move(cause), std::move(follows)});
    warnings_.back().isOfWhole = true;
}

void WarningFinder::checkMeasured() {
    const std::vector<FieldId> starting = startingNumbers(car_);
    if (starting.size() == 1) {
        addOfWhole(starting.front(), say("1 number is a starting number, not measured"),
                   say("measure it before you trust a figure"));
    } else if (!starting.empty()) {
        addOfWhole(starting.front(),
                   say("%n numbers are starting numbers, not measured", Count(starting.size())),
                   say("measure each one before you trust a figure"));
    }
    std::vector<FieldId> workedOut = measurableNumbers(car_);
    std::erase_if(workedOut, [this](const FieldId& id) { return originOf(car_, id) != Origin::workedOut; });
    if (workedOut.size() == 1) {
        addOfWhole(workedOut.front(), say("1 number of the car was worked out from others, not measured"),
                   say("measure it once it is set"));
    } else if (!workedOut.empty()) {
        addOfWhole(
            workedOut.front(),
            say("%n numbers of the car were worked out from others, not measured", Count(workedOut.size())),
            say("measure each one once it is set"));
    }
}

// Two readings that lie inches apart are a slip of one of them, whatever their mean.
void WarningFinder::checkReadings() {
    for (FieldId id : measurableNumbers(car_)) {
        const FieldRule& rule = ruleOf(id.field);
        const bool isTaped =
            rule.quantity == Quantity::length && id.field != Field::cgHeight && rule.scope != Scope::ballast;
        FieldId uncertainty = id;
        uncertainty.uncertainty = true;
        const std::optional<double> own = isTaped ? numberAt(car_, uncertainty) : std::nullopt;
        if (own && kCoverage95 * *own > kReadingsFarApart) {
            add(id, {Severity::wrong,
                     say("%1 is known only to %2", numberName(id),
                         withUnit(uncertaintyText(*own, Quantity::length, car_.units), Quantity::length,
                                  car_.units)),
                     say("its readings lie far apart; measure it again")});
        }
    }
}

std::string WarningFinder::numberName(const FieldId& id) const {
    const FieldRule& rule = ruleOf(id.field);
    return rule.scope == Scope::hole   ? holeWords(car_, id.link, id.end, id.hole)
           : rule.scope == Scope::link ? say("%1 %2", linkWords(car_, id.link), say(rule.words))
                                       : say(rule.words);
}

void WarningFinder::checkWeights() {
    const double total = car_.cornerWeights.total();
    const double frontShare = car_.cornerWeights.front() / total;
    const FieldId id{.field = Field::leftFrontWeight};
    if (total < kLeastTotal || total > kLargestTotal) {
        add(id, "corner_weights",
            {Severity::wrong,
             say("total weight %1 looks outside what cars have", figure(total, Quantity::mass)),
             say("check")});
    }
    if (frontShare < kLeastFrontShare || frontShare > kLargestFrontShare) {
        add(id, "corner_weights",
            {Severity::wrong,
             say("%1 of the weight in front looks outside what cars have",
                 figure(100 * frontShare, Quantity::percent)),
             say("check which corner is which")});
    }
}

void WarningFinder::checkCgHeight() {
    if (car_.cgHeight > 2 * car_.rearTireRadius) {
        add({.field = Field::cgHeight}, {Severity::wrong,
                                         say("CG height %1 stands above the top of the rear tire",
                                             measured(car_.cgHeight, Quantity::length)),
                                         say("check")});
    }
}

/// Whether a link given for one side stands on the other. A crosswise link may cross over.
void WarningFinder::checkSide(int index) {
    const Link& one = link(index);
    if (one.side == Side::center || roleOf(one, car_.rearTireRadius) == Role::crosswise) {
        return;
    }
    const double y = one.chassis.inUse().at.y() + one.axle.inUse().at.y();
    const bool wrong = one.side == Side::right ? y > 0 : y < 0;
    if (wrong) {
        add({.field = Field::holeAt, .link = index, .end = End::axle, .hole = one.axle.use, .axis = 1},
            linkPath(index),
            {Severity::wrong, say("%1 stands on the other side of the car", linkWords(car_, index)),
             say("left is plus, right is minus")});
    }
}

// Where no hole of a car is: a slip of the tape, of its sign or of a decimal point.
void WarningFinder::checkGround(int index, End end) {
    const std::vector<Hole>& holes = link(index).bracket(end).holes;
    for (std::size_t hole = 0; hole < holes.size(); ++hole) {
        const int number = static_cast<int>(hole);
        const Eigen::Vector3d& at = holes[hole].at;
        FieldId id{.field = Field::holeAt, .link = index, .end = end, .hole = number, .axis = 2};
        if (at.z() < 0) {
            add(id, {Severity::wrong, say("%1 stands below the ground", holeWords(car_, index, end, number)),
                     say("check its height")});
            continue;
        }
        const std::array isOut{at.x() > std::max(car_.wheelbase, kFarthestAhead) || at.x() < -kFarthestBehind,
                               std::abs(at.y()) > kFarthestOut, at.z() > kHighest};
        const auto* out = std::ranges::find(isOut, true);
        if (out != isOut.end()) {
            id.axis = static_cast<int>(out - isOut.begin());
            constexpr std::array<std::string_view, 3> kWays{
                phrase("%1 stands %2 ahead of the axle, outside what cars have"),
                phrase("%1 stands %2 out, outside what cars have"),
                phrase("%1 stands %2 up, outside what cars have")};
            const bool isBehind = id.axis == 0 && at.x() < 0;
            add(id,
                {Severity::wrong,
                 say(isBehind ? phrase("%1 stands %2 behind the axle, outside what cars have")
                              : kWays[static_cast<std::size_t>(id.axis)],
                     holeWords(car_, index, end, number), measured(std::abs(at[id.axis]), Quantity::length)),
                 say("check it")});
        }
    }
}

std::string WarningFinder::shift(double value, Quantity quantity, std::string_view plus,
                                 std::string_view minus) const {
    const std::string size = figureText(std::abs(value), quantity, units_);
    if (size.find_first_not_of("0.") == std::string::npos) {
        return {};
    }
    return say(value < 0 ? minus : plus, withUnit(size, quantity, units_));
}

std::string WarningFinder::axleShift(const AxlePose& pose) const {
    std::string along = shift(pose.x, Quantity::length, phrase("%1 forward"), phrase("%1 back"));
    std::string across = shift(pose.y, Quantity::length, phrase("%1 to the left"), phrase("%1 to the right"));
    return along.empty() ? across : across.empty() ? along : say("%1, %2", along, across);
}

/// Where the axle sits at ride if this link alone has its written length and all others fit their holes.
std::string WarningFinder::consequence(int index) const {
    Car alone = car_;
    for (std::size_t other = 0; other < alone.links.size(); ++other) {
        if (other != static_cast<std::size_t>(index)) {
            alone.links[other].length.reset();
        }
    }
    AxleSolver solver(buildLinkage(alone), Drive::travel);
    if (!solver.assemble().usable()) {
        return say("as written the axle cannot be assembled");
    }
    const AxlePose& pose = solver.pose();
    const std::string axle = axleShift(pose);
    const std::string pinion =
        shift(-pose.pitch, Quantity::angle, phrase("%1 nose up"), phrase("%1 nose down"));
    if (axle.empty()) {
        return pinion.empty() ? say("as written the axle hardly moves")
                              : say("as written the pinion %1", pinion);
    }
    return pinion.empty() ? say("as written the axle sits %1", axle)
                          : say("as written the axle sits %1 and the pinion %2", axle, pinion);
}

// A rod that fits other holes of its brackets and not those in use was bolted elsewhere since it was
// measured. Then the axle does not stand where it did, and what the lengths make of that is a figure, not a
// mistake.
bool WarningFinder::boltWasMoved() const {
    return std::ranges::any_of(car_.links, [](const Link& rod) {
        const auto fits = [&rod](const Hole& chassis, const Hole& axle) {
            return std::abs(*rod.length - (axle.at - chassis.at).norm()) <= kHair;
        };
        if (rod.kind != LinkKind::rod || !rod.length ||
            std::abs(*rod.length - holeDistance(rod)) <= kTapeFraction + kRounding) {
            return false;
        }
        return std::ranges::any_of(rod.chassis.holes, [&](const Hole& chassis) {
            return std::ranges::any_of(rod.axle.holes, [&](const Hole& axle) { return fits(chassis, axle); });
        });
    });
}

void WarningFinder::checkLength(int index) {
    const Link& one = link(index);
    const FieldId id{.field = Field::linkLength, .link = index};
    if (!one.length) {
        return;
    }
    if (one.kind != LinkKind::rod) {
        add(id, {Severity::check, say("a length is used for links with two ends only"),
                 say("this one has no effect")});
        return;
    }
    const double apart = holeDistance(one);
    if (std::abs(*one.length - apart) <= kTapeFraction + kRounding || boltWasMoved()) {
        return;
    }
    add(id, {Severity::wrong,
             say("written length %1, but the current holes are %2 apart",
                 measured(*one.length, Quantity::length), measured(apart, Quantity::length)),
             say("%1; re-measure, or clear the length to fit the holes", consequence(index))});
}

void WarningFinder::checkAdjuster(int index) {
    const std::optional<Adjuster>& adjuster = link(index).adjuster;
    if (!adjuster || link(index).kind != LinkKind::rod) {
        return;
    }
    const double built = builtLength(link(index));
    const double shortest = adjuster->shortest.value_or(built);
    const double longest = adjuster->longest.value_or(built);
    const FieldId leastId{.field = Field::adjusterShortest, .link = index};
    const FieldId mostId{.field = Field::adjusterLongest, .link = index};
    const std::string now = measured(built, Quantity::length);
    const std::string least = measured(shortest, Quantity::length);
    const std::string most = measured(longest, Quantity::length);
    if (adjuster->shortest && adjuster->longest && shortest > longest) {
        add(leastId, {Severity::wrong, say("shortest length %1 is above the longest, %2", least, most),
                      say("check which is which")});
    } else if (built < shortest - kNoAdjustment) {
        add(leastId,
            {Severity::wrong, say("the link is %1 long now, but its shortest length is %2", now, least),
             say("check both")});
    } else if (built > longest + kNoAdjustment) {
        add(mostId, {Severity::wrong, say("the link is %1 long now, but its longest length is %2", now, most),
                     say("check both")});
    }
    checkThread(index);
}

void WarningFinder::checkThread(int index) {
    const std::optional<double>& least = link(index).adjuster->leastEngagement;
    const double built = builtLength(link(index));
    const std::optional<double> held = engagementAt(link(index), built);
    if (least && !held) {
        add({.field = Field::adjusterLeastEngagement, .link = index},
            {Severity::check, say("the thread engagement is not entered, so the least can't be checked"),
             say("measure it")});
    } else if (least && *held < *least - kNoAdjustment) {
        add({.field = Field::adjusterEngagement, .link = index},
            {Severity::danger,
             say("at %1 long each end holds %2 of thread, less than the %3 entered as the least",
                 measured(built, Quantity::length), measured(*held, Quantity::length),
                 measured(*least, Quantity::length)),
             say("a rod end can pull out; do not drive it so")});
    }
}

void WarningFinder::checkRequested() {
    if (!car_.target) {
        return;
    }
    const TargetWindow& target = *car_.target;
    constexpr std::string_view kNobody = phrase("no hole combination can be inside");
    if (target.inverseFar() > target.inverseNear()) {
        add({.field = Field::targetIcNear},
            {Severity::check, say("the near side of the target window lies past its far side"),
             say(kNobody)});
    }
    if (target.antiSquatLow > target.antiSquatHigh) {
        add({.field = Field::targetLow}, {Severity::check,
                                          say("lowest target anti-squat %1 is above the most, %2",
                                              measured(target.antiSquatLow, Quantity::percent),
                                              measured(target.antiSquatHigh, Quantity::percent)),
                                          say(kNobody)});
    }
}

void WarningFinder::checkLink(int index) {
    checkLength(index);
    checkAdjuster(index);
    checkSide(index);
    checkGround(index, End::chassis);
    checkGround(index, End::axle);
}

/// The link a move stopped at, or the place of `otherwise`.
std::string WarningFinder::faultPath(const MoveReport& report, const FieldId& otherwise) const {
    if (report.constraint < 0) {
        return jsonPath(otherwise);
    }
    return linkPath(buildLinkage(car_).constraints[static_cast<std::size_t>(report.constraint)].link);
}

void WarningFinder::checkAssembly(const MoveReport& report) {
    if (report.constraint < 0) {
        add(fieldOfLink(car_, linkFor(car_, report.freedom)), "links",
            {Severity::wrong, describe(report, car_, units_), ""});
        return;
    }
    const int link = buildLinkage(car_).constraints[static_cast<std::size_t>(report.constraint)].link;
    add(fieldOfLink(car_, link), linkPath(link), {Severity::wrong, describe(report, car_, units_), ""});
}

void WarningFinder::checkTravel(Field field, const MoveReport& report) {
    if (!report.usable()) {
        const FieldId id{.field = field};
        add(id, faultPath(report, id), {Severity::wrong, describe(report, car_, units_), ""});
    }
}

void WarningFinder::checkSymmetry(Freedom freedom) {
    if (freedom == Freedom::none) {
        return;
    }
    const bool sideways = freedom == Freedom::sideways;
    add(fieldOfLink(car_, linkFor(car_, freedom)), "links",
        {Severity::wrong, describe(freedom),
         sideways ? say("a track bar or Watts linkage is missing; figures assume it stays centered")
                  : say("figures assume it stays straight")});
}

void WarningFinder::checkTrace() {
    Car coarse = car_;
    coarse.travel.steps = kWarningSteps;
    const Trace trace = computeTrace(coarse);
    addEnteredWarnings(car_, trace, warnings_);
    if (!trace.assembly.usable()) {
        checkAssembly(trace.assembly);
        return;
    }
    checkTravel(Field::bump, trace.bumpEnd);
    checkTravel(Field::droop, trace.droopEnd);
    checkSymmetry(trace.heldBySymmetry);
    addBindWarning(car_, trace, warnings_);
    addDrivelineWarnings(car_, trace, warnings_);
}

std::vector<Warning> WarningFinder::find() {
    checkMeasured();
    checkReadings();
    checkUsualRanges();
    checkWeights();
    checkCgHeight();
    for (std::size_t index = 0; index < car_.links.size(); ++index) {
        checkLink(static_cast<int>(index));
    }
    addPlateWarnings(car_, warnings_);
    checkRequested();
    checkTrace();
    return std::move(warnings_);
}

}  // namespace

std::vector<Warning> findWarnings(const Car& car) {
    if (!findFaults(car).empty()) {
        return {};
    }
    std::vector<Warning> warnings = WarningFinder(car).find();
    softenUnmeasured(car, warnings);
    return warnings;
}

}  // namespace bolthole
