#include "geometry/checks/warnings_entered.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>

#include "geometry/car/fields.h"
#include "geometry/car/tire_rate.h"
#include "geometry/statics/braking.h"
#include "geometry/statics/entered_setup.h"
#include "geometry/statics/launch_case.h"
#include "geometry/statics/springs.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"
#include "geometry/weights/entered_figures.h"

namespace bolthole {

namespace {

constexpr double kSamePlace = 1e-6;  // m

class EnteredWarningFinder {
  public:
    EnteredWarningFinder(const Car& car, const Trace& trace, std::vector<Warning>& warnings)
        : car_(car),
          trace_(trace),
          warnings_(warnings),
          balance_(balanceOf(car)),
          stance_(fullStanceOf(car)) {}

    void find();

  private:
    void add(const FieldId& id, std::string path, Finding finding) {
        warnings_.push_back({std::move(path), id, std::move(finding)});
    }
    void add(const FieldId& id, Finding finding) { add(id, jsonPath(id), std::move(finding)); }

    void checkWeights();
    [[nodiscard]] FieldId placeOf(const WeightWarning& warning) const;
    [[nodiscard]] FieldId cornerPlace(const WeightWarning& warning) const;
    void checkDriverSeat();
    void checkHeight();
    void checkBallast();
    void checkGroups();
    void checkPoint(Field field, const EnteredPoint& point, std::string_view cause);
    void checkFour(const WheelFields& fields, const EnteredCorners& four, std::string_view cause);
    void checkPressure(const EnteredRates& rates, Field field);
    void checkDamping();
    void checkSprings();
    void checkSpringLoad(std::span<const SuspensionPart> parts);
    void checkTravel(bool bump, const TravelRoom& room, std::span<const SuspensionPart> parts);
    void checkBrakes();
    void checkLaunch();
    void checkRatings(const LaunchCase& launch);
    [[nodiscard]] std::string force(double value) const {
        return withUnit(figureText(value, Quantity::force, car_.units), Quantity::force, car_.units);
    }

    const Car& car_;
    const Trace& trace_;
    std::vector<Warning>& warnings_;
    CarBalance balance_;
    FullStance stance_;
};

/// The field of a corner in the reading the warning is about: the corner weights or the other four.
FieldId EnteredWarningFinder::cornerPlace(const WeightWarning& warning) const {
    const bool isBench = warning.withDriver == (car_.cornersAre == DriverSeat::aboard);
    const WheelFields& fields = isBench ? kCornerFields : kOtherCornerFields;
    switch (warning.part) {
        case WeightPart::rightFront:
            return {.field = fields[1]};
        case WeightPart::leftRear:
            return {.field = fields[2]};
        case WeightPart::rightRear:
            return {.field = fields[3]};
        default:
            return {.field = fields[0]};
    }
}

FieldId EnteredWarningFinder::placeOf(const WeightWarning& warning) const {
    switch (warning.part) {
        case WeightPart::driver:
            return {.field = Field::driverMass};
        case WeightPart::ticket:
            return {.field = car_.weighing.ticket.front  ? Field::ticketFront
                             : car_.weighing.ticket.rear ? Field::ticketRear
                                                         : Field::ticketTotal};
        case WeightPart::pads:
            return {.field = Field::padLeftFront};
        case WeightPart::load:
            break;
        default:
            return cornerPlace(warning);
    }
    // Ballast that is not whole is not among those the warning counts.
    int counted = -1;
    for (std::size_t item = 0; item < car_.ballast.size(); ++item) {
        counted += missingOf(car_.ballast[item]).empty() ? 1 : 0;
        if (counted == warning.load) {
            return {.field = Field::ballastAt, .axis = 0, .item = static_cast<int>(item)};
        }
    }
    return {.field = Field::ballastAt, .axis = 0, .item = 0};
}

void EnteredWarningFinder::checkWeights() {
    for (WeightWarning& warning :
         findWeightWarnings(weighingOf(car_), balance_.height, stance_.stance, car_.units)) {
        add(placeOf(warning), std::move(warning.finding));
    }
    checkDriverSeat();
}

void EnteredWarningFinder::checkDriverSeat() {
    const EnteredDriver& driver = car_.weighing.driver;
    if (car_.cornersAre == DriverSeat::out && !(driver.mass && driver.at.whole())) {
        add({.field = Field::driverMass}, "corner_weights_are",
            {Severity::wrong,
             say("the corner weights are without driver, whose weight and seat are not entered"),
             say("every figure is for an empty car")});
    }
}

void EnteredWarningFinder::checkHeight() {
    if (!balance_.refusal.empty()) {
        add({.field = Field::liftHeight}, "cg_height_from",
            {Severity::wrong, say("the CG height chosen can't be had, the one entered is in use"),
             balance_.refusal});
    } else if (!balance_.from.remark.empty()) {
        add({.field = Field::liftHeight}, {Severity::check, balance_.from.remark, ""});
    }
    if (car_.cgHeightFrom == CgHeightSource::estimate) {
        add({.field = Field::cgHeight}, "cg_height_from",
            {Severity::check, say("the CG height is an estimate from other cars"),
             say("anti-squat is no surer than it; lift the car, or enter a height")});
    }
}

void EnteredWarningFinder::checkBallast() {
    for (std::size_t item = 0; item < car_.ballast.size(); ++item) {
        const std::string_view missing = missingOf(car_.ballast[item]);
        const int index = static_cast<int>(item);
        if (!missing.empty()) {
            const bool place = missing == kNoPlace;
            add({.field = place ? Field::ballastAt : Field::ballastMass,
                 .axis = place ? 0 : -1,
                 .item = index},
                {Severity::check, say("%1 is not counted", ballastWords(car_, index)),
                 place ? say("no place is entered") : say("no weight is entered")});
        }
    }
    if (!balance_.ballastRefusal.empty()) {
        add({.field = Field::ballastAboard, .item = 0},
            {Severity::wrong, say("what came and went since the car was weighed is left out"),
             balance_.ballastRefusal});
    }
}

void EnteredWarningFinder::checkPoint(Field field, const EnteredPoint& point, std::string_view cause) {
    for (std::size_t axis = 0; axis < 3; ++axis) {
        if (!point.at[axis] && !point.whole() && point != EnteredPoint{}) {
            add({.field = field, .axis = static_cast<int>(axis)},
                {Severity::check, say(cause), say("a coordinate is missing")});
            return;
        }
    }
}

void EnteredWarningFinder::checkFour(const WheelFields& fields, const EnteredCorners& four,
                                     std::string_view cause) {
    if (four.count() > 0 && four.count() < 4) {
        const std::size_t missing = !four.leftFront ? 0 : !four.rightFront ? 1 : !four.leftRear ? 2 : 3;
        add({.field = fields[missing]},
            {Severity::check, say(cause), say("%1 of 4 are entered", four.count())});
    }
}

void EnteredWarningFinder::checkGroups() {
    checkPoint(Field::driverAt, car_.weighing.driver.at, phrase("the driver's seat is not counted"));
    checkFour(kOtherCornerFields, car_.weighing.other, phrase("the truck-scale readings are not counted"));
    checkFour(kPadFields, car_.weighing.pads, phrase("the pads' heights are not counted"));
    if (car_.driveline) {
        const EnteredShaft& shaft = car_.driveline->shaft;
        checkPoint(Field::carrierJoint, shaft.carrierJoint, phrase("the carrier joint is not counted"));
        const EnteredSlip& slip = shaft.slip;
        const bool some = slip.engagement || slip.leastEngagement || slip.inward;
        if (some && !(slip.engagement && slip.leastEngagement && slip.inward)) {
            const Field missing = !slip.engagement        ? Field::slipEngagement
                                  : !slip.leastEngagement ? Field::slipLeast
                                                          : Field::slipInward;
            add({.field = missing}, {Severity::check, say("the slip yoke is not checked"),
                                     say("engagement, least engagement and room inward are needed")});
        }
    }
}

void EnteredWarningFinder::checkTravel(bool bump, const TravelRoom& room,
                                       std::span<const SuspensionPart> parts) {
    const TravelEnd& end = bump ? room.bump : room.droop;
    const double entered = bump ? car_.travel.bump : car_.travel.droop;
    if (end.stop == TravelStop::range || end.stop == TravelStop::links || !(end.travel < entered)) {
        return;
    }
    add({.field = bump ? Field::bump : Field::droop},
        {Severity::wrong, say("%1, before the travel entered", describe(end, bump, room, parts, car_.units)),
         say("cut it, or check the part's lengths")});
}

// Where no spring carries, or nothing was weighed, there is nothing to hold against the other.
void EnteredWarningFinder::checkSpringLoad(std::span<const SuspensionPart> parts) {
    const SpringBalance balance = springBalance(car_, pushOf(lineFiguresAt(car_, parts, 0)));
    if (!(balance.carried > 0) || balance.weighed == 0 || !balance.hasWarning()) {
        return;
    }
    const bool isMore = balance.carried > balance.weighed - balance.axle.value_or(0);
    add({.field = Field::springRate, .item = 0},
        {Severity::wrong,
         say(isMore ? phrase("the springs carry %1 at ride, more than the scales leave them, %2")
                    : phrase("the springs carry %1 at ride, less than the scales leave them, %2"),
             force(balance.carried), force(balance.weighed - balance.axle.value_or(0))),
         say("a free length, rate, mount or weight is wrong")});
}

// Forces of no shock: a launch computed with them compares nothing that is bolted on.
// A rate from two readings holds between them, and about as far beyond as they are apart.
void EnteredWarningFinder::checkPressure(const EnteredRates& rates, Field field) {
    const bool isRear = field == Field::rearPressure;
    if (!rates.pressure) {
        return;
    }
    if (!isReadAtTwoPressures(rates)) {
        add({.field = field}, {Severity::check,
                               isRear ? say("the pressure of the rear tires changes nothing")
                                      : say("the pressure of the front tires changes nothing"),
                               say("their rate is needed at two pressures that differ")});
        return;
    }
    const auto [low, high] = std::minmax(*rates.tirePressure, *rates.otherPressure);
    if (*rates.pressure < low - (high - low) || *rates.pressure > high + (high - low)) {
        add({.field = field},
            {Severity::check,
             isRear ? say("the rear tires have a pressure far from those their rate was read at")
                    : say("the front tires have a pressure far from those their rate was read at"),
             say("their rate there is a guess")});
    }
}

void EnteredWarningFinder::checkDamping() {
    const auto check = [this](const std::optional<Damping>& damping, const FieldId& id, std::string cause) {
        if (damping && damping->isEstimate) {
            add(id, {Severity::check, std::move(cause),
                     say("clicks and separation in the launch are no surer than it; measure a shock")});
        }
    };
    check(car_.launch.front.damping, {.field = Field::frontReboundClick},
          say("the forces of the front shocks are an estimate"));
    for (std::size_t item = 0; item < car_.springs.size(); ++item) {
        check(car_.springs[item].damping, {.field = Field::reboundClick, .item = static_cast<int>(item)},
              say("the forces of %1 are an estimate", springWords(car_, static_cast<int>(item))));
    }
}

void EnteredWarningFinder::checkSprings() {
    for (std::size_t item = 0; item < car_.springs.size(); ++item) {
        const int index = static_cast<int>(item);
        if (const std::string reason = refusal(car_.springs[item]); !reason.empty()) {
            add({.field = Field::mountAt, .end = End::axle, .hole = 0, .axis = 0, .item = index},
                "springs[" + std::to_string(item) + "]",
                {Severity::wrong, say("%1 is not computed", springWords(car_, index)), reason});
        }
    }
    const std::vector<SuspensionPart> parts = usableSprings(car_);
    if (parts.empty() || !trace_.assembly.usable()) {
        return;
    }
    checkSpringLoad(parts);
    const TravelRoom room = travelRoom(car_, parts);
    if (room.assembled) {
        checkTravel(true, room, parts);
        checkTravel(false, room, parts);
    }
}

void EnteredWarningFinder::checkBrakes() {
    if (!car_.brakes.rearShare || !trace_.ride.usable) {
        return;
    }
    const double slope = std::tan(trace_.ride[Figure::swingArmAngle]);
    const double height = standingCar(car_, trace_.ride.ground).cgHeight;
    std::optional<Finding> finding = antiLiftWarning(
        rearAntiLift(slope, height, trace_.ride.ground.wheelbase, *car_.brakes.rearShare / 100));
    if (finding) {
        add({.field = Field::brakeRearShare}, *std::move(finding));
    }
}

void EnteredWarningFinder::checkRatings(const LaunchCase& launch) {
    const JointLoads* worst = launch.links ? mostUsedOf(launch.links->joints) : nullptr;
    if (worst == nullptr || !(*worst->use > 1)) {
        return;
    }
    const double factor = launch.linkCase->factor;
    const bool determinate = worst->worst.determinate;
    add({.field = Field::linkRating, .link = worst->link},
        {Severity::danger,
         say(determinate ? phrase("%1 carries %2 in this launch; with the factor %3 that is %4 of its rating")
                         : phrase("%1 carries %2, as one possible share, in this launch; with the factor %3 "
                                  "that is %4 of its rating"),
             linkWords(car_, worst->link), force(worst->worst.largest()), plainDecimal(factor),
             withUnit(figureText(100 * *worst->use, Quantity::percent, car_.units), Quantity::percent,
                      car_.units)),
         say("do not launch it so, and ask a qualified person")});
}

void EnteredWarningFinder::checkLaunch() {
    if (car_.launch == EnteredLaunch{}) {
        return;
    }
    const LaunchCase launch = launchCaseOf(car_, trace_, stance_);
    if (!launch.problem.empty()) {
        return;
    }
    const bool timed = car_.launch.from == LaunchFrom::sixtyFoot;
    const FieldId id{.field = timed ? Field::sixtyFoot : Field::launchAcceleration};
    if (launch.thrust && launch.thrust->isBeyondGrip()) {
        add(id, {Severity::wrong,
                 say("this launch takes %1 of thrust, but the rear tires hold %2 at the friction entered",
                     force(launch.thrust->force), force(*launch.thrust->byGrip)),
                 say("check both")});
    }
    if (launch.loads && launch.loads->wheelsUp) {
        add(id, {Severity::danger, say("the front wheels would leave the ground in this launch"),
                 say("nothing past that is steady, and the car can turn over")});
    }
    checkRatings(launch);
}

void EnteredWarningFinder::find() {
    checkWeights();
    checkHeight();
    checkBallast();
    checkGroups();
    checkPressure(car_.wheelRates.rear, Field::rearPressure);
    checkPressure(car_.wheelRates.front, Field::frontPressure);
    checkDamping();
    checkSprings();
    checkBrakes();
    checkLaunch();
}

Field fieldOf(DrivelinePart part, const EnteredShaft& shaft) {
    switch (part) {
        case DrivelinePart::pinionAngle:
            return Field::pinionAngle;
        case DrivelinePart::yokeOffset:
            return shaft.rearYokeOffset && !shaft.frontYokeOffset ? Field::rearYokeOffset
                                                                  : Field::frontYokeOffset;
        case DrivelinePart::jointLimit:
            return Field::jointLimit;
        case DrivelinePart::speed:
            return Field::engineSpeed;
        case DrivelinePart::slip:
            break;
    }
    return Field::slipEngagement;
}

/// Limits that only the housing's wind-up under power passes.
void addWoundUp(const Driveline& driveline, const ShaftSetup& setup, const DrivelineReader& reader,
                const Trace& trace, Units units, std::vector<DrivelineWarning>& warnings) {
    if (!(setup.windUp > 0)) {
        return;
    }
    const DrivelineSweep sweep = sweepDriveline(reader, trace, setup.windUp);
    const DrivelineFigures ride = reader.read(trace.ride.pose, setup.windUp);
    for (DrivelineWarning& warning : findDrivelineWarnings(driveline, setup, ride, sweep, units)) {
        const bool isLimit = warning.part == DrivelinePart::jointLimit ||
                             warning.part == DrivelinePart::slip || warning.part == DrivelinePart::speed;
        const bool isKnown = std::ranges::any_of(
            warnings, [&](const DrivelineWarning& known) { return known.part == warning.part; });
        if (isLimit && !isKnown) {
            warning.finding.cause = say("wound up under power: %1", warning.finding.cause);
            warnings.push_back(std::move(warning));
        }
    }
}

}  // namespace

void addEnteredWarnings(const Car& car, const Trace& trace, std::vector<Warning>& warnings) {
    EnteredWarningFinder(car, trace, warnings).find();
}

void addDrivelineWarnings(const Car& car, const Trace& trace, std::vector<Warning>& warnings) {
    if (!car.driveline || !trace.ride.usable) {
        return;
    }
    const Driveline& driveline = *car.driveline;
    const Eigen::Vector3d center(0, 0, car.rearTireRadius);
    const Eigen::Vector3d pinion = trace.ride.pose.carry(driveline.pinionJoint - center);
    if ((driveline.outputJoint - pinion).norm() < kSamePlace) {
        warnings.push_back({"driveline",
                            {.field = Field::pinionAngle},
                            {Severity::wrong, say("both driveshaft joints stand at the same place"),
                             say("no driveshaft angles")}});
        return;
    }
    const ShaftSetup setup = shaftSetupOf(driveline);
    if (std::string reason = refusal(setup, driveline); !reason.empty()) {
        warnings.push_back({"driveline",
                            {.field = Field::carrierJoint, .axis = 0},
                            {Severity::wrong, std::move(reason), ""}});
        return;
    }
    DrivelineReader reader(driveline, setup, car.rearTireRadius);
    reader.setRide(trace.ride.pose);
    const DrivelineSweep sweep = sweepDriveline(reader, trace, 0);
    std::vector<DrivelineWarning> found =
        findDrivelineWarnings(driveline, setup, reader.read(trace.ride.pose), sweep, car.units);
    addWoundUp(driveline, setup, reader, trace, car.units, found);
    for (DrivelineWarning& warning : found) {
        const FieldId id{.field = fieldOf(warning.part, driveline.shaft)};
        warnings.push_back({jsonPath(id), id, std::move(warning.finding)});
    }
}

}  // namespace bolthole
