#include "widgets/pages/loads/loads_facts.h"

#include <cmath>

#include "geometry/statics/rollout.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

namespace {

QString force(double newtons, Units units) {
    return figureWithUnit(newtons, Quantity::force, units);
}

QString percent(double value) {
    return figureWithUnit(value, Quantity::percent, Units::inch);
}

QString fine(double value, Quantity quantity, Units units) {
    return std::isfinite(value)
               ? QString::fromStdString(withUnit(fineFigureText(value, quantity, units), quantity, units))
               : QString(QChar(0x2014));
}

FactNumber gravities(std::string id, double acceleration) {
    return {.id = std::move(id),
            .value = acceleration / kStandardGravity,
            .quantity = Quantity::ratio,
            .fineness = Fineness::plain,
            .unit = QStringLiteral("g")};
}

Fact unknown(const QString& label, const std::string& refusal) {
    return {label, QString(QChar(0x2014)), whyNotKnown(refusal), false};
}

QString rolloutWords(const Rollout& rollout, Units units) {
    const QString distance = fine(rollout.distance, Quantity::length, units);
    return rollout.isEntered
               ? tr("after a rollout of %1 as entered").arg(distance)
               : tr("after a rollout of %1, not entered: the front tire's chord at a beam %2 up (common "
                    "practice, no source)")
                     .arg(distance, fine(kUsualBeamHeight, Quantity::length, units));
}

/// What the tires' hold is computed with: the differential, and of an open one the lighter tire.
QString gripWords(const LaunchThrust& thrust, const Car& car) {
    if (!car.launch.differential) {
        return tr("differential not entered, taken as locked");
    }
    switch (*car.launch.differential) {
        case Differential::locked:
            return tr("locked differential");
        case Differential::limited:
            return tr("limited slip, taken to bring both tires to their limit");
        case Differential::open:
            break;
    }
    return thrust.lighterFrom == ShiftSource::even
               ? tr("open differential; both rear tires are taken to carry the same, as the load shift is "
                    "not known")
               : tr("open differential: twice the lighter tire's");
}

QString sourceWords(const LaunchThrust& thrust, const Car& car, Units units) {
    switch (thrust.from) {
        case LaunchFrom::acceleration:
            return tr("as entered");
        case LaunchFrom::sixtyFoot:
            return tr("estimate: even acceleration over 60 ft in %1 s, %2")
                .arg(QString::fromStdString(
                         fieldText(*car.launch.sixtyFoot, Quantity::time, NumberStyle{units})),
                     rolloutWords(*thrust.rollout, units));
        case LaunchFrom::torque:
            break;
    }
    const QString engine = force(thrust.byEngine.value_or(0), units);
    switch (thrust.cap) {
        case ThrustCap::none:
            return tr("engine torque times ratios over the loaded radius; the tires would hold %1")
                .arg(force(thrust.byGrip.value_or(0), units));
        case ThrustCap::grip:
            return tr("capped by what the tires hold; the engine alone would push %1").arg(engine);
        case ThrustCap::lift:
            break;
    }
    return tr("capped where the front wheels leave the ground; the engine alone would push %1").arg(engine);
}

Fact thrustFact(const LaunchThrust& thrust, const Car& car, Units units) {
    Fact fact{tr("Thrust, both rear tires"), force(thrust.force, units), QString(), thrust.isBeyondGrip(),
              plainNumber("thrust", thrust.force, Quantity::force)};
    if (thrust.byGrip) {
        fact.others.push_back(plainNumber("thrust_by_grip", *thrust.byGrip, Quantity::force));
    }
    if (thrust.byEngine) {
        fact.others.push_back(plainNumber("thrust_by_engine", *thrust.byEngine, Quantity::force));
    }
    if (fact.isProblem) {
        fact.remark =
            tr("more than the tires hold at the entered friction: %1").arg(force(*thrust.byGrip, units));
    } else if (thrust.byGrip && thrust.from != LaunchFrom::torque) {
        fact.remark = tr("the tires would hold %1").arg(force(*thrust.byGrip, units));
    }
    if (thrust.byGrip) {
        fact.remark += (fact.remark.isEmpty() ? QString() : QStringLiteral("; ")) + gripWords(thrust, car);
    }
    return fact;
}

Fact liftFact(const LaunchLoads& loads) {
    Fact fact{tr("Front wheels lift at"), inGravities(loads.liftAcceleration), QString(), loads.wheelsUp,
              gravities("front_lift_acceleration", loads.liftAcceleration)};
    if (loads.wheelsUp) {
        fact.remark =
            tr("wheels up: the rear axle carries all, and the body turns over it. Nothing past "
               "that is at rest");
    }
    return fact;
}

Fact heightFact(const LaunchCase& launch, Units units) {
    const CarBalance& balance = launch.balance;
    Fact fact{tr("Current CG height"), fine(balance.height, Quantity::length, units), QString(), false,
              fineNumber("cg_height", balance.height, Quantity::length)};
    fact.remark = QString::fromStdString(describe(balance.from, units));
    if (balance.height != balance.from.height) {
        fact.remark += tr(", moved by the loads that came and went");
    }
    for (const std::string& why : {balance.refusal, balance.ballastRefusal}) {
        if (!why.empty()) {
            fact.isProblem = true;
            fact.remark += QStringLiteral("; ") + QString::fromStdString(why);
        }
    }
    return fact;
}

/// "2.1 in up" or "0.4 in down".
QString rise(double metres, Units units) {
    const QString amount = fine(std::abs(metres), Quantity::length, units);
    return metres < 0 ? tr("%1 down").arg(amount) : tr("%1 up").arg(amount);
}

QString wheelWords(double travel, Units units) {
    const QString amount = fine(std::abs(travel), Quantity::length, units);
    return travel < 0 ? tr("the axle drops %1 from the body").arg(amount)
                      : tr("the axle comes %1 nearer the body").arg(amount);
}

QString rateWords(const FullStance& stance) {
    if (!stance.stance.rear) {
        return tr("not known: enter the rear wheel rate, or springs with mounts, rates and free lengths");
    }
    return stance.rear == RearRateSource::springs ? tr("computed at ride from the springs' mounts and rates")
                                                  : tr("as entered");
}

Fact rateFact(const LaunchCase& launch, Units units) {
    const auto& rear = launch.stance.stance.rear;
    return {tr("Rear wheel rate"), rear ? fine(rear->wheel, Quantity::rate, units) : QString(QChar(0x2014)),
            rateWords(launch.stance), false,
            rear ? fineNumber("rear_wheel_rate", rear->wheel, Quantity::rate) : FactNumber{}};
}

Fact tireFact(const std::string& id, const QString& label, double now, double standing, Units units) {
    Fact fact{label,
              force(now, units),
              tr("standing %1").arg(force(standing, units)),
              now <= 0,
              plainNumber(id, now, Quantity::force),
              {},
              {plainNumber(id + "_standing", standing, Quantity::force)}};
    if (fact.isProblem) {
        fact.remark += tr("; off the ground");
    }
    return fact;
}

void addTires(const LaunchCase& launch, Units units, std::vector<Fact>& facts) {
    const LaunchSides& sides = *launch.sides;
    const double g = launch.standing.gravity;
    facts.push_back(tireFact("left_front_tire", tr("Left front tire"), sides.leftFront,
                             launch.corners.leftFront * g, units));
    facts.push_back(tireFact("right_front_tire", tr("Right front tire"), sides.rightFront,
                             launch.corners.rightFront * g, units));
    facts.push_back(
        tireFact("left_rear_tire", tr("Left rear tire"), sides.leftRear, launch.corners.leftRear * g, units));
    facts.push_back(tireFact("right_rear_tire", tr("Right rear tire"), sides.rightRear,
                             launch.corners.rightRear * g, units));
}

void addPreload(const LaunchCase& launch, Units units, std::vector<Fact>& facts) {
    const Preload& preload = *launch.preload;
    facts.push_back(
        {tr("Preload that cancels it"),
         figureWithUnit(preload.moment, Quantity::torque, units),
         tr("of the rear springs, right side pressed harder; standing it puts %1 on the right rear tire and "
            "takes it from the left, and leans the body %2 left side down")
             .arg(force(preload.rearShift, units), fine(std::abs(preload.lean), Quantity::angle, units)),
         false,
         plainNumber("preload_moment", preload.moment, Quantity::torque),
         {},
         {plainNumber("preload_rear_shift", preload.rearShift, Quantity::force),
          fineNumber("preload_lean", preload.lean, Quantity::angle)}});
}

void addBrakeLoads(const LaunchCase& launch, Units units, std::vector<Fact>& facts) {
    const BrakeFigures& brakes = *launch.braking;
    const BrakeLoads& loads = brakes.loads;
    facts.push_back({tr("Load transfer"),
                     force(loads.transfer, units),
                     tr("from the rear to the front axle at %1").arg(inGravities(brakes.deceleration)),
                     false,
                     plainNumber("brake_load_transfer", loads.transfer, Quantity::force),
                     {},
                     {gravities("brake_deceleration", brakes.deceleration)}});
    facts.push_back({tr("Front axle"), force(loads.front, units), QString(), false,
                     plainNumber("brake_front_axle", loads.front, Quantity::force)});
    facts.push_back(
        {tr("Rear axle"), force(loads.rear, units),
         loads.rearUp ? tr("the rear wheels leave the ground: nothing past that is at rest") : QString(),
         loads.rearUp, plainNumber("brake_rear_axle", loads.rear, Quantity::force)});
    facts.push_back({tr("Locks first"), loads.rearLocksFirst ? tr("rear") : tr("front"),
                     loads.rearLocksFirst ? tr("the rear tires need more grip than the front ones: the car "
                                               "can swap ends")
                                          : tr("the front tires need more grip than the rear ones"),
                     loads.rearLocksFirst});
    const QString label = tr("Rear of the body");
    facts.push_back(brakes.travel
                        ? Fact{label, rise(-*brakes.travel, units), wheelWords(*brakes.travel, units), false,
                               fineNumber("brake_rear_travel", *brakes.travel, Quantity::length)}
                        : unknown(label, brakes.travel.refusal));
}

QString shiftWords(const LinkCase& with) {
    switch (with.shift) {
        case ShiftSource::entered:
            return tr("as entered");
        case ShiftSource::computed:
            return tr("computed from the driveshaft's torque, tracks and wheel rates");
        case ShiftSource::even:
            break;
    }
    return tr(
        "not known, so both rear tires are taken to carry the same: enter it, or tracks and wheel "
        "rates");
}

// Above 100 % axle and body separate at the springs. The body rises over the ground only where that is more
// than the tires give: above 100 (1 + wheel rate/tire rate) percent (derived from launchAttitude()).
QString separationWords(double antiSquat, const LaunchCase& launch) {
    if (antiSquat <= 100) {
        return tr("below 100 %: the rear springs are pressed in under power");
    }
    const auto& rear = launch.stance.stance.rear;
    const double rises = rear ? risingAntiSquat(*rear) : 100;
    const QString separates = tr("above 100 %: axle and body separate under power");
    if (!rear || !rear->tire) {
        return tr("%1; whether the body rises, too, needs wheel and tire rate").arg(separates);
    }
    return antiSquat > rises ? tr("%1, and the body rises: above %2 that is more than the tires give")
                                   .arg(separates, percent(rises))
                             : tr("%1; the body does not rise: up to %2 the tires give more")
                                   .arg(separates, percent(rises));
}

}  // namespace

QString figureWithUnit(double value, Quantity quantity, Units units) {
    return std::isfinite(value)
               ? QString::fromStdString(withUnit(figureText(value, quantity, units), quantity, units))
               : QString(QChar(0x2014));
}

QString inGravities(double acceleration) {
    return QString::fromStdString(figureText(acceleration / kStandardGravity, Quantity::ratio, Units::inch)) +
           QStringLiteral(" g");
}

QString travelWords(double travel, Units units) {
    constexpr double kRide = 5e-5;  // m
    if (std::isnan(travel)) {
        return QString(QChar(0x2014));
    }
    if (std::abs(travel) < kRide) {
        return tr("ride");
    }
    const QString amount = figureWithUnit(std::abs(travel), Quantity::length, units);
    return travel > 0 ? tr("%1 bump").arg(amount) : tr("%1 droop").arg(amount);
}

QString whyNotKnown(const std::string& refusal) {
    return tr("not known: %1").arg(QString::fromStdString(refusal));
}

std::vector<Fact> launchFacts(const Car& car, const LaunchCase& launch, Units units) {
    std::vector<Fact> facts;
    if (!launch.thrust) {
        facts.push_back(unknown(tr("Acceleration"), launch.thrust.refusal));
        facts.push_back(liftFact({.liftAcceleration = launchLoads(launch.standing, 0).liftAcceleration}));
        facts.push_back(heightFact(launch, units));
        return facts;
    }
    const LaunchLoads& loads = *launch.loads;
    const StandingCar& standing = launch.standing;
    const double share = 100 * loads.rear / (loads.front + loads.rear);
    facts.push_back({tr("Acceleration"), inGravities(launch.thrust->acceleration),
                     sourceWords(*launch.thrust, car, units), false,
                     gravities("acceleration", launch.thrust->acceleration)});
    facts.push_back(thrustFact(*launch.thrust, car, units));
    facts.push_back({tr("Load transfer"), force(loads.transfer, units), tr("from the front to the rear axle"),
                     false, plainNumber("load_transfer", loads.transfer, Quantity::force)});
    facts.push_back({tr("Front axle"),
                     force(loads.front, units),
                     tr("standing %1").arg(force(standing.front(), units)),
                     false,
                     plainNumber("front_axle", loads.front, Quantity::force),
                     {},
                     {plainNumber("front_axle_standing", standing.front(), Quantity::force)}});
    facts.push_back({tr("Rear axle"),
                     force(loads.rear, units),
                     tr("standing %1; now %2 of the car").arg(force(standing.rear(), units), percent(share)),
                     false,
                     plainNumber("rear_axle", loads.rear, Quantity::force),
                     {},
                     {plainNumber("rear_axle_standing", standing.rear(), Quantity::force),
                      plainNumber("rear_axle_share", share, Quantity::percent)}});
    facts.push_back(liftFact(loads));
    facts.push_back(heightFact(launch, units));
    return facts;
}

std::vector<Fact> attitudeFacts(const LaunchCase& launch, Units units) {
    std::vector<Fact> facts;
    if (launch.attitude) {
        const LaunchAttitude& at = *launch.attitude;
        facts.push_back({tr("Rear of the body"),
                         rise(at.rearRise, units),
                         wheelWords(at.rearTravel, units),
                         false,
                         fineNumber("rear_body_rise", at.rearRise, Quantity::length),
                         {},
                         {fineNumber("rear_axle_travel", at.rearTravel, Quantity::length)}});
        facts.push_back({tr("Front of the body"),
                         rise(at.frontRise, units),
                         at.frontToppedOut ? tr("topped out: %1").arg(wheelWords(at.frontTravel, units))
                                           : wheelWords(at.frontTravel, units),
                         false,
                         fineNumber("front_body_rise", at.frontRise, Quantity::length),
                         {},
                         {fineNumber("front_axle_travel", at.frontTravel, Quantity::length)}});
        facts.push_back({tr("Pitch"), fine(std::abs(at.pitch), Quantity::angle, units),
                         at.pitch < 0 ? tr("nose up") : tr("nose down"), false,
                         fineNumber("pitch", at.pitch, Quantity::angle)});
    } else {
        facts.push_back(unknown(tr("Rise or squat, pitch"), launch.attitude.refusal));
    }
    const double antiSquat =
        100 * launch.swingArmSlope * launch.standing.wheelbase / launch.standing.cgHeight;
    facts.push_back({tr("Anti-squat at ride"), percent(antiSquat), separationWords(antiSquat, launch), false,
                     plainNumber("anti_squat_ride", antiSquat, Quantity::percent)});
    facts.push_back(rateFact(launch, units));
    return facts;
}

std::vector<Fact> rollFacts(const LaunchCase& launch, Units units) {
    std::vector<Fact> facts;
    if (!launch.shaftTorque) {
        facts.push_back(unknown(tr("Driveshaft torque"), launch.shaftTorque.refusal));
        return facts;
    }
    facts.push_back({tr("Driveshaft torque"), figureWithUnit(*launch.shaftTorque, Quantity::torque, units),
                     tr("thrust times loaded radius over the axle ratio"), false,
                     plainNumber("driveshaft_torque", *launch.shaftTorque, Quantity::torque)});
    if (launch.sides) {
        const double roll = launch.sides->bodyRoll;
        facts.push_back({tr("Body roll"), fine(std::abs(roll), Quantity::angle, units),
                         roll < 0 ? tr("right side up") : tr("left side up"), false,
                         fineNumber("body_roll", roll, Quantity::angle)});
        addTires(launch, units, facts);
        if (launch.sides->frontTireUp) {
            facts.push_back({tr("Front tires"), tr("up"),
                             tr("a front tire is off the ground: the rear springs alone hold the rest"),
                             true});
        }
        addPreload(launch, units, facts);
    } else {
        facts.push_back(unknown(tr("Body roll, four tires, preload"), launch.sides.refusal));
    }
    const QString label = tr("Right spring over left");
    facts.push_back(launch.springDifference
                        ? Fact{label, force(*launch.springDifference, units),
                               tr("the springs' difference that makes this preload"), false,
                               plainNumber("spring_difference", *launch.springDifference, Quantity::force)}
                        : unknown(label, launch.springDifference.refusal));
    return facts;
}

std::vector<Fact> brakeFacts(const LaunchCase& launch, Units units) {
    std::vector<Fact> facts;
    const QString label = tr("Rear anti-lift");
    if (launch.antiLift) {
        const std::optional<Finding> warning = antiLiftWarning(*launch.antiLift);
        facts.push_back({label, percent(*launch.antiLift),
                         !warning ? tr("what the links take in place of the springs, brakes on the axle")
                                  : capitalized(QString::fromStdString(sentence(*warning))),
                         warning.has_value(), plainNumber("anti_lift", *launch.antiLift, Quantity::percent)});
    } else {
        facts.push_back(unknown(label, launch.antiLift.refusal));
    }
    if (launch.braking) {
        addBrakeLoads(launch, units, facts);
    } else {
        facts.push_back(unknown(tr("Axle loads"), launch.braking.refusal));
    }
    return facts;
}

CardFacts launchCards(const Car& car, const LaunchCase& launch, Units units) {
    return {launchFacts(car, launch, units), attitudeFacts(launch, units), rollFacts(launch, units),
            brakeFacts(launch, units)};
}

CardFacts readLaunchCards(const Car& car, Units units) {
    Car brief = car;
    brief.travel.steps = kMinSteps;
    return launchCards(brief, launchCaseOf(brief, computeTrace(brief), fullStanceOf(brief)), units);
}

std::vector<Fact> linkCaseFacts(const Car& car, const LaunchCase& launch, Units units) {
    if (!launch.linkCase) {
        return {unknown(tr("Link loads"), launch.linkCase.refusal)};
    }
    const LinkCase& with = *launch.linkCase;
    std::vector<Fact> facts;
    facts.push_back(
        {tr("Extra load on left rear"),
         with.shift == ShiftSource::even ? QString(QChar(0x2014)) : force(with.load.leftShift, units),
         shiftWords(with),
         false,
         FactNumber{},
         {},
         {plainNumber("left_tire_over_half", with.load.leftShift, Quantity::force)}});
    if (with.standIn) {
        facts.push_back({tr("Springs"),
                         tr("not measured"),
                         tr("taken upright over the axle, %1 apart%2")
                             .arg(fine(*with.standIn, Quantity::length, units),
                                  with.baseIsEntered ? tr(" as entered") : tr(" (0.8 of the rear track)")),
                         false,
                         FactNumber{},
                         {},
                         {fineNumber("springs_apart", *with.standIn, Quantity::length)}});
    } else {
        const bool isStart = restsOnStarts(car, {Scope::mount});
        facts.push_back({tr("Springs"), isStart ? tr("starting numbers") : tr("as entered"),
                         isStart ? tr("along their lines, from mounts that nobody measured")
                                 : tr("along their lines, from their mounts"),
                         false});
    }
    facts.push_back({tr("Load factor"),
                     QString::fromStdString(fieldText(with.factor, Quantity::ratio, NumberStyle{units})),
                     with.factorIsEntered
                         ? tr("as entered, against ratings only; the loads above are without it")
                         : tr("none entered: ratings are held against static loads alone"),
                     false,
                     FactNumber{},
                     {},
                     {plainNumber("load_factor", with.factor, Quantity::ratio)}});
    return facts;
}

}  // namespace bolthole
