// What the weights page says of the CG height and of the pads.
#include <QStringList>
#include <cmath>
#include <tuple>
#include <utility>

#include "geometry/car/starting_numbers.h"
#include "geometry/uncertainty/uncertain_inputs.h"
#include "geometry/units/uncertainty_text.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/weights/weights_facts.h"

namespace bolthole {

namespace {

QString sourceWords(const Car& car, const CgHeight& height) {
    switch (height.source) {
        case CgHeightSource::entered:
            return isStarting(car, {.field = Field::cgHeight}) ? tr("a starting number, not measured")
                                                               : tr("as entered");
        case CgHeightSource::lift:
            return tr("by the lift method");
        case CgHeightSource::estimate:
            break;
    }
    return tr("estimated from other cars, not measured");
}

// What the lift still needs; empty: nothing.
QString missingForLift(const Car& car) {
    QStringList missing;
    if (!car.lift.height) {
        missing << tr("how far it was raised");
    }
    if (!car.lift.reading) {
        missing << tr("the reading");
    }
    if (car.lift.driver != car.cornersAre && !car.weighing.other.whole()) {
        missing << tr("corner weights %1 (%2)")
                       .arg(car.lift.driver == DriverSeat::aboard ? tr("with the driver")
                                                                  : tr("without the driver"),
                            enteredOf(car.weighing.other));
    }
    return missing.join(QStringLiteral(", "));
}

void addLiftParts(std::vector<Fact>& facts, const LiftParts& parts, const CardNumbers& numbers) {
    const std::tuple<std::string, QString, double> rows[] = {
        {"lift_height_u_scales", tr("its ± from the scales"), parts.scales},
        {"lift_height_u_lift", tr("its ± from how far it was raised"), parts.lift},
        {"lift_height_u_wheelbase", tr("its ± from the wheelbase"), parts.wheelbase},
        {"lift_height_u_radii", tr("its ± from the tire radii"), parts.radii}};
    for (const auto& [id, label, value] : rows) {
        facts.push_back({label,
                         QStringLiteral("± %1").arg(numbers.length(kCoverage95 * value)),
                         QString(),
                         false,
                         FactNumber{},
                         {},
                         {fineNumber(id, value, Quantity::length)}});
    }
}

// The lift's own result, whether it is in use or not.
void addLift(std::vector<Fact>& facts, const Car& car, const CardNumbers& numbers) {
    const std::optional<LiftTest> test = liftOf(car);
    if (!test) {
        facts.push_back({tr("By the lift method"), kDash, tr("needs %1").arg(missingForLift(car))});
        return;
    }
    const LiftUncertainty uncertainty = liftUncertaintyOf(car);
    const CgHeightResult result = cgHeightByLift(*test, liftCar(car), uncertainty, car.units);
    if (!result.value) {
        facts.push_back(
            {tr("By the lift method"), kDash, capitalized(QString::fromStdString(result.refusal)), true});
        return;
    }
    const QString remark = capitalized(QString::fromStdString(result.value->remark));
    const QString turned = tr("turned by %1").arg(numbers.angle(std::abs(liftAngle(*test, liftCar(car)))));
    facts.push_back({tr("By the lift method"),
                     numbers.height(*result.value),
                     remark.isEmpty() ? turned : remark,
                     !remark.isEmpty(),
                     FactNumber{},
                     {},
                     {fineNumber("lift_height", result.value->height, Quantity::length),
                      fineNumber("lift_angle", liftAngle(*test, liftCar(car)), Quantity::angle)}});
    addLiftParts(facts, liftParts(*test, liftCar(car), uncertainty), numbers);
}

// Anti-squat, and within the ± of the CG height where that leaves one.
std::vector<FactNumber> antiSquatNumbers(const CarBalance& balance, double weighed,
                                         std::optional<double> antiSquat) {
    if (!antiSquat) {
        return {};
    }
    std::vector<FactNumber> numbers{fineNumber("anti_squat_ride", *antiSquat, Quantity::percent)};
    const double uncertainty = balance.from.uncertainty.value_or(0) * weighed / balance.total;
    if (uncertainty > 0 && uncertainty < balance.height) {
        numbers.push_back(fineNumber(
            "anti_squat_cg_higher", antiSquatAt(*antiSquat, balance.height, uncertainty), Quantity::percent));
        numbers.push_back(fineNumber(
            "anti_squat_cg_lower", antiSquatAt(*antiSquat, balance.height, -uncertainty), Quantity::percent));
    }
    return numbers;
}

Fact antiSquatFact(const CarBalance& balance, double weighed, std::optional<double> antiSquat,
                   const CardNumbers& numbers) {
    const QString label = tr("Anti-squat at ride");
    const std::vector<FactNumber> number = antiSquatNumbers(balance, weighed, antiSquat);
    if (!antiSquat) {
        return {label, kDash, tr("not computed: the links do not solve as they stand")};
    }
    if (!balance.from.uncertainty) {
        return {label,
                numbers.percent(*antiSquat),
                tr("goes with 1 / CG height, which nobody measured"),
                false,
                FactNumber{},
                {},
                number};
    }
    // What came or went since dilutes the weighed car's height, and with it what is not known of it.
    const double uncertainty = kCoverage95 * *balance.from.uncertainty * weighed / balance.total;
    if (!(uncertainty < balance.height)) {
        return {label,
                numbers.percent(*antiSquat),
                tr("the CG height is not known well enough to say"),
                false,
                FactNumber{},
                {},
                number};
    }
    return {label,
            numbers.percent(*antiSquat),
            tr("%1 to %2 within the ± of the CG height")
                .arg(numbers.percent(antiSquatAt(*antiSquat, balance.height, uncertainty)),
                     numbers.percent(antiSquatAt(*antiSquat, balance.height, -uncertainty))),
            false,
            FactNumber{},
            {},
            number};
}

void addThrows(std::vector<Fact>& facts, const PadFigures& pads, const Car& car, const Stance& stance,
               const CardNumbers& numbers) {
    const QString label = tr("Changes a corner reading by");
    if (!pads.byWarp) {
        facts.push_back({label, kDash, tr("not known: needs %1").arg(missingForRoll(car, stance))});
        return;
    }
    const CornerWeights& shift = *pads.byWarp;
    facts.push_back({label, numbers.mass(*pads.worst()), tr("at most, with the current rates"), false,
                     fineNumber("pads_worst", *pads.worst(), Quantity::mass)});
    facts.push_back({tr("Front corners read"),
                     numbers.massPair(shift.leftFront, shift.rightFront),
                     tr("left / right, more than on level pads"),
                     false,
                     FactNumber{},
                     {},
                     {fineNumber("pads_left_front", shift.leftFront, Quantity::mass),
                      fineNumber("pads_right_front", shift.rightFront, Quantity::mass)}});
    facts.push_back({tr("Rear corners read"),
                     numbers.massPair(shift.leftRear, shift.rightRear),
                     tr("left / right, more than on level pads"),
                     false,
                     FactNumber{},
                     {},
                     {fineNumber("pads_left_rear", shift.leftRear, Quantity::mass),
                      fineNumber("pads_right_rear", shift.rightRear, Quantity::mass)}});
}

// Which pads stand high and what that does: "front pads high: the front axle reads -0.2 kg".
QString tiltWords(double angle, const QString& high, const QString& low, const QString& half,
                  const QString& shift) {
    return angle == 0 ? tr("level")
                      : tr("%1 pads high: %2 reads %3").arg(angle > 0 ? high : low, half, shift);
}

QString padsNote(const FullStance& stance) {
    QString note = tr("An unlevel floor leaves the total right and the corners wrong.");
    if (stance.rear == RearRateSource::springs) {
        note += tr(" The rear wheel rate is the one the springs make.");
    }
    return note;
}

}  // namespace

double antiSquatAt(double antiSquat, double height, double shift) {
    return antiSquat * height / (height + shift);
}

CardWords heightCard(const Car& car, std::optional<double> antiSquat) {
    const CardNumbers numbers(car.units);
    CarBalance balance = balanceOf(car);
    if (isUncertainStart(car, {.field = Field::cgHeight})) {
        balance.from.uncertainty.reset();  // nobody knows how far a starting number is off
    }
    CardWords card;
    card.facts.push_back({tr("In use"),
                          numbers.height(balance.from),
                          sourceWords(car, balance.from),
                          false,
                          FactNumber{},
                          {},
                          {fineNumber("cg_height", balance.from.height, Quantity::length)}});
    if (!balance.refusal.empty()) {
        card.facts.push_back(
            {tr("Chosen, not used"), kDash, capitalized(QString::fromStdString(balance.refusal)), true});
    }
    if (balance.height != balance.from.height) {
        card.facts.push_back({tr("With what is aboard now"), numbers.length(balance.height),
                              tr("what anti-squat stands on"), false,
                              fineNumber("now_cg_height", balance.height, Quantity::length)});
    }
    card.facts.push_back(antiSquatFact(balance, car.cornerWeights.total(), antiSquat, numbers));
    addLift(card.facts, car, numbers);
    if (balance.from.source != CgHeightSource::estimate) {
        const CgHeight others = estimatedCgHeight();
        FactNumber number = fineNumber("cg_height_of_others", others.height, Quantity::length);
        number.ownUncertainty = others.uncertainty;
        card.facts.push_back({tr("Of other cars"),
                              numbers.height(others),
                              tr("what published measurements of cars as built spread over"),
                              false,
                              FactNumber{},
                              {},
                              {std::move(number)}});
    } else {
        card.note = capitalized(QString::fromStdString(balance.from.remark)) + u'.';
    }
    if (balance.from.source == CgHeightSource::lift && car.lift.driver != car.cornersAre) {
        const bool seatKnown = car.weighing.driver.at.at[2].has_value();
        card.note = !seatKnown ? capitalized(QString::fromStdString(balance.from.remark)) + u'.'
                    : car.lift.driver == DriverSeat::out
                        ? tr("Lifted without the driver, who is put in by weight and height of the seat.")
                        : tr("Lifted with the driver, who is taken out by weight and height of the seat.");
    }
    return card;
}

CardWords padsCard(const Car& car, const FullStance& stance) {
    const CardNumbers numbers(car.units);
    CardWords card;
    card.note = padsNote(stance);
    const EnteredCorners& entered = car.weighing.pads;
    const std::optional<PadHeights> pads = weighingOf(car).pads;
    if (!pads) {
        card.facts.push_back({tr("Pads"), kDash,
                              entered.count() == 0
                                  ? tr("no heights entered: not known whether they are level")
                                  : tr("heights: %1").arg(enteredOf(entered))});
        return card;
    }
    const PadFigures figures =
        padFigures(*pads, car.cornerWeights, balanceOf(car).from.height, stance.stance);
    card.facts.push_back({tr("Warp"), numbers.length(figures.warp),
                          tr("left front over the plane of the other three"), false,
                          fineNumber("pads_warp", figures.warp, Quantity::length)});
    addThrows(card.facts, figures, car, stance.stance, numbers);
    card.facts.push_back({tr("Slope fore and aft"),
                          numbers.angle(figures.slope),
                          tiltWords(figures.slope, tr("front"), tr("rear"), tr("the front axle"),
                                    numbers.massShift(figures.frontBySlope)),
                          false,
                          fineNumber("pads_slope", figures.slope, Quantity::angle),
                          {},
                          {fineNumber("pads_front_by_slope", figures.frontBySlope, Quantity::mass)}});
    if (figures.lean) {
        card.facts.push_back({tr("Lateral lean"),
                              numbers.angle(*figures.lean),
                              tiltWords(*figures.lean, tr("left"), tr("right"), tr("the left side"),
                                        numbers.massShift(*figures.leftByLean)),
                              false,
                              fineNumber("pads_lean", *figures.lean, Quantity::angle),
                              {},
                              {fineNumber("pads_left_by_lean", *figures.leftByLean, Quantity::mass)}});
    }
    return card;
}

}  // namespace bolthole
