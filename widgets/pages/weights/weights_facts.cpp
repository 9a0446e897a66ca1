#include "widgets/pages/weights/weights_facts.h"

#include <QStringList>
#include <cmath>

#include "geometry/car/fields.h"
#include "geometry/kinematics/trace.h"
#include "geometry/units/uncertainty_text.h"
#include "widgets/kit/said.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

QString seatWords(DriverSeat seat) {
    return seat == DriverSeat::aboard ? tr("driver aboard") : tr("driver out");
}

Fact sidewaysFact(const std::string& id, const std::optional<double>& left, const Car& car,
                  const CardNumbers& numbers) {
    if (left) {
        return {tr("CG lateral"), numbers.sideways(*left), tr("of the middle"), false,
                fineNumber(id, *left, Quantity::length)};
    }
    const bool both = !car.frontTrack && !car.rearTrack;
    return {tr("CG lateral"), kDash,
            both             ? tr("needs both tracks")
            : car.frontTrack ? tr("needs the rear track")
                             : tr("needs the front track")};
}

FactNumber massNumber(std::string id, double kilograms) {
    return fineNumber(std::move(id), kilograms, Quantity::mass);
}

// Shares of four readings, in the order of the cards. `prefix`: of the figures' ids.
void addShares(const std::string& prefix, std::vector<Fact>& facts, const WeightFigures& figures,
               const CardNumbers& numbers) {
    facts.push_back(
        {tr("Front"),
         numbers.percent(figures.frontPercent),
         tr("%1 front, %2 rear").arg(numbers.mass(figures.front), numbers.mass(figures.rear)),
         false,
         fineNumber(prefix + "front_share", figures.frontPercent, Quantity::percent),
         {},
         {massNumber(prefix + "front", figures.front), massNumber(prefix + "rear", figures.rear)}});
    facts.push_back(
        {tr("Left"),
         numbers.percent(figures.leftPercent),
         tr("%1 left, %2 right").arg(numbers.mass(figures.left), numbers.mass(figures.right)),
         false,
         fineNumber(prefix + "left_share", figures.leftPercent, Quantity::percent),
         {},
         {massNumber(prefix + "left", figures.left), massNumber(prefix + "right", figures.right)}});
    facts.push_back({tr("Cross weight"),
                     numbers.percent(figures.diagonalPercent),
                     tr("right front and left rear: %1").arg(numbers.mass(figures.diagonal)),
                     false,
                     fineNumber(prefix + "cross_weight_share", figures.diagonalPercent, Quantity::percent),
                     {},
                     {massNumber(prefix + "cross_weight", figures.diagonal)}});
}

// What came and went, load by load, and what is left out.
QString loadsNote(const Car& car, const CardNumbers& numbers) {
    QStringList lines;
    for (const Ballast& load : ballastOf(car)) {
        if (load.aboard != load.weighed) {
            lines << QStringLiteral("%1 %2").arg(
                QString::fromStdString(load.name),
                numbers.massShift((load.aboard - load.weighed) * load.full()));
        }
    }
    for (int item = 0; item < static_cast<int>(car.ballast.size()); ++item) {
        const std::string_view missing = missingOf(car.ballast[static_cast<std::size_t>(item)]);
        if (!missing.empty()) {
            lines << tr("%1 not counted: %2")
                         .arg(QString::fromStdString(ballastWords(car, item)), said(missing));
        }
    }
    const EnteredDriver& driver = car.weighing.driver;
    if (car.cornersAre == DriverSeat::out && !(driver.mass && driver.at.whole())) {
        lines << tr("the driver is not in these figures: enter weight and seat");
    }
    return lines.isEmpty() ? QString() : capitalized(lines.join(QStringLiteral("; "))) + u'.';
}

Fact leftFact(const BallastedCar& loaded, const Car& car, const CardNumbers& numbers) {
    if (!loaded.leftPercent) {
        return {tr("Left"), kDash, sidewaysFact({}, std::nullopt, car, numbers).remark};
    }
    const QString low = numbers.percent(loaded.leftPercent->low);
    const QString high = numbers.percent(loaded.leftPercent->high);
    if (low == high) {
        return {tr("Left"), low, QString(), false,
                fineNumber("now_left_share", loaded.leftPercent->low, Quantity::percent)};
    }
    return {tr("Left"),
            QStringLiteral("%1 – %2").arg(low, high),
            tr("no closer without both wheel rates: they decide which axle takes it"),
            false,
            FactNumber{},
            {},
            {fineNumber("now_left_share_least", loaded.leftPercent->low, Quantity::percent),
             fineNumber("now_left_share_most", loaded.leftPercent->high, Quantity::percent)}};
}

void addLoadedCorners(std::vector<Fact>& facts, const BallastedCar& loaded, const Car& car,
                      const Stance& stance, const CardNumbers& numbers) {
    if (!loaded.corners) {
        facts.push_back({tr("Corners"), kDash, tr("needs %1").arg(missingForRoll(car, stance))});
        return;
    }
    const CornerWeights& corners = *loaded.corners;
    const double diagonal = 100 * (corners.rightFront + corners.leftRear) / corners.total();
    facts.push_back({tr("Cross weight"), numbers.percent(diagonal),
                     tr("shared by the axles as stiff as they are in roll"), false,
                     fineNumber("now_cross_weight_share", diagonal, Quantity::percent)});
    facts.push_back({tr("Front corners"),
                     tr("%1 / %2").arg(numbers.mass(corners.leftFront), numbers.mass(corners.rightFront)),
                     tr("left / right"),
                     false,
                     FactNumber{},
                     {},
                     {massNumber("now_left_front", corners.leftFront),
                      massNumber("now_right_front", corners.rightFront)}});
    facts.push_back(
        {tr("Rear corners"),
         tr("%1 / %2").arg(numbers.mass(corners.leftRear), numbers.mass(corners.rightRear)),
         tr("left / right"),
         false,
         FactNumber{},
         {},
         {massNumber("now_left_rear", corners.leftRear), massNumber("now_right_rear", corners.rightRear)}});
}

// The reading with the driver so; nothing where it is not whole.
std::optional<CornerWeights> readingWith(const Car& car, DriverSeat seat) {
    const Weighing weighing = weighingOf(car);
    return seat == DriverSeat::aboard ? weighing.withDriver : weighing.withoutDriver;
}

void addDriver(std::vector<Fact>& facts, const DriverFigures& driver, const Car& car,
               const CardNumbers& numbers) {
    const std::optional<double>& alone = car.weighing.driver.mass;
    facts.push_back({tr("Driver"), numbers.mass(driver.mass),
                     alone ? tr("by difference; on a truck scale %1").arg(numbers.mass(*alone))
                           : tr("by difference of the readings"),
                     false, massNumber("driver", driver.mass)});
    if (alone) {
        facts.back().others.push_back(massNumber("driver_other_scale", *alone));
    }
    facts.push_back({tr("Ahead of rear axle"), numbers.length(driver.ahead), QString(), false,
                     fineNumber("driver_ahead", driver.ahead, Quantity::length)});
    Fact sideways = sidewaysFact("driver_left", driver.left, car, numbers);
    sideways.label = tr("Lateral");
    facts.push_back(sideways);
    facts.push_back({tr("On the front corners"),
                     numbers.massPair(driver.corners.leftFront, driver.corners.rightFront),
                     tr("left / right"),
                     false,
                     FactNumber{},
                     {},
                     {massNumber("driver_left_front", driver.corners.leftFront),
                      massNumber("driver_right_front", driver.corners.rightFront)}});
    facts.push_back({tr("On the rear corners"),
                     numbers.massPair(driver.corners.leftRear, driver.corners.rightRear),
                     tr("left / right"),
                     false,
                     FactNumber{},
                     {},
                     {massNumber("driver_left_rear", driver.corners.leftRear),
                      massNumber("driver_right_rear", driver.corners.rightRear)}});
}

}  // namespace

QString CardNumbers::text(double value, Quantity quantity) const {
    return QString::fromStdString(withUnit(fineFigureText(value, quantity, units_), quantity, units_));
}

QString CardNumbers::entered(double kilograms) const {
    const NumberStyle style{.units = units_};
    return QString::fromStdString(
        withUnit(fieldText(kilograms, Quantity::mass, style), Quantity::mass, units_));
}

QString CardNumbers::massShift(double kilograms) const {
    return signedText(mass(kilograms));
}

QString CardNumbers::sideways(double left) const {
    return QStringLiteral("%1 %2").arg(length(std::abs(left)), left < 0 ? tr("right") : tr("left"));
}

QString CardNumbers::height(const CgHeight& height) const {
    const std::string half =
        halfWidthText(height.uncertainty.value_or(0), Quantity::length, units_, Fineness::fine);
    const QString size = length(height.height);
    return half.empty() ? size
                        : QStringLiteral("%1 ± %2").arg(
                              size, QString::fromStdString(withUnit(half, Quantity::length, units_)));
}

QString CardNumbers::massPair(double left, double right) const {
    const auto number = [this](double value) {
        return signedText(QString::fromStdString(fineFigureText(value, Quantity::mass, units_)));
    };
    return QStringLiteral("%1 / %2 %3").arg(number(left), number(right), unitText(Quantity::mass, units_));
}

QString enteredOf(const EnteredCorners& corners) {
    return tr("%1 of 4 entered").arg(corners.count());
}

QString missingForRoll(const Car& car, const Stance& stance) {
    QStringList missing;
    if (!car.frontTrack) {
        missing << tr("front track");
    }
    if (!car.rearTrack) {
        missing << tr("rear track");
    }
    if (!stance.front) {
        missing << tr("front wheel rate");
    }
    if (!stance.rear) {
        missing << tr("rear wheel rate");
    }
    return missing.join(QStringLiteral(", "));
}

CardWords weighedCard(const Car& car) {
    const CardNumbers numbers(car.units);
    const WeightFigures figures = weightFigures(car.cornerWeights, stanceOf(car));
    CardWords card;
    card.facts.push_back({tr("Total"), numbers.mass(figures.total),
                          tr("four corners, %1").arg(seatWords(car.cornersAre)), false,
                          massNumber("total", figures.total)});
    addShares("", card.facts, figures, numbers);
    card.facts.push_back({tr("CG ahead of rear axle"), numbers.length(figures.cgAhead),
                          tr("wheelbase × front / total"), false,
                          fineNumber("cg_ahead", figures.cgAhead, Quantity::length)});
    card.facts.push_back(sidewaysFact("cg_left", figures.cgLeft, car, numbers));
    if (!figures.cgLeft) {
        card.note = tr("Laterally the picture is not to scale: a track is missing.");
    }
    return card;
}

CardWords ballastCard(const Car& car, const Stance& stance) {
    const CardNumbers numbers(car.units);
    CardWords card;
    card.note = loadsNote(car, numbers);
    const std::vector<MassAt> changes = changesSinceWeighed(ballastOf(car));
    if (changes.empty()) {
        card.facts.push_back({tr("No change"), kDash, tr("nothing that counts came or went since")});
        return card;
    }
    const BallastResult result = withBallast(car.cornerWeights, stance, changes);
    if (!result.car) {
        card.facts.push_back({tr("Total"), kDash, capitalized(QString::fromStdString(result.refusal)), true});
        return card;
    }
    const BallastedCar& loaded = *result.car;
    card.facts.push_back(
        {tr("Total"),
         numbers.mass(loaded.total),
         tr("%1 since weighed").arg(numbers.massShift(loaded.total - car.cornerWeights.total())),
         false,
         massNumber("now_total", loaded.total),
         {},
         {massNumber("total_change", loaded.total - car.cornerWeights.total())}});
    card.facts.push_back({tr("Front"),
                          numbers.percent(loaded.frontPercent),
                          tr("%1 front, %2 rear").arg(numbers.mass(loaded.front), numbers.mass(loaded.rear)),
                          false,
                          fineNumber("now_front_share", loaded.frontPercent, Quantity::percent),
                          {},
                          {massNumber("now_front", loaded.front), massNumber("now_rear", loaded.rear)}});
    card.facts.push_back(leftFact(loaded, car, numbers));
    addLoadedCorners(card.facts, loaded, car, stance, numbers);
    card.facts.push_back({tr("CG ahead of rear axle"), numbers.length(loaded.cgAhead), QString(), false,
                          fineNumber("now_cg_ahead", loaded.cgAhead, Quantity::length)});
    card.facts.push_back(sidewaysFact("now_cg_left", loaded.cgLeft, car, numbers));
    return card;
}

CardWords driverCard(const Car& car) {
    const CardNumbers numbers(car.units);
    CardWords card;
    const std::optional<CornerWeights> other = car.weighing.other.whole();
    if (!other) {
        card.facts.push_back({tr("Driver"), kDash,
                              car.weighing.other.count() == 0
                                  ? tr("by difference, once the other reading is entered")
                                  : tr("other reading: %1").arg(enteredOf(car.weighing.other))});
        return card;
    }
    const WeightFigures figures = weightFigures(*other, stanceOf(car));
    const DriverSeat seat = car.cornersAre == DriverSeat::aboard ? DriverSeat::out : DriverSeat::aboard;
    card.facts.push_back({tr("Other reading"), numbers.mass(figures.total), seatWords(seat), false,
                          massNumber("other_total", figures.total)});
    addShares("other_", card.facts, figures, numbers);
    if (const std::optional<DriverFigures> driver = driverFigures(weighingOf(car), stanceOf(car))) {
        addDriver(card.facts, *driver, car, numbers);
    } else {
        card.facts.push_back({tr("Driver"), kDash,
                              tr("the car reads no heavier with the driver in: swap the readings?"), true});
    }
    return card;
}

CardWords ticketCard(const Car& car) {
    const CardNumbers numbers(car.units);
    const EnteredTicket& ticket = car.weighing.ticket;
    const std::optional<CornerWeights> corners = readingWith(car, ticket.driver);
    CardWords card;
    const auto add = [&](const std::string& id, const QString& label, const OptionalNumber& read,
                         double sum) {
        if (read) {
            card.facts.push_back(
                {label, numbers.mass(*read),
                 corners ? tr("corners %1: %2").arg(numbers.mass(sum), numbers.massShift(sum - *read))
                         : tr("no corner reading, %1, to hold it against").arg(seatWords(ticket.driver)),
                 false, massNumber(id, *read)});
            if (corners) {
                card.facts.back().others = {massNumber(id + "_by_corners", sum),
                                            massNumber(id + "_difference", sum - *read)};
            }
        }
    };
    add("ticket_front", tr("Front axle"), ticket.front, corners ? corners->front() : 0);
    add("ticket_rear", tr("Rear axle"), ticket.rear, corners ? corners->total() - corners->front() : 0);
    add("ticket_total", tr("Whole car"), ticket.total, corners ? corners->total() : 0);
    if (card.facts.empty()) {
        card.facts.push_back({tr("Truck-scale ticket"), kDash, tr("nothing entered")});
    }
    return card;
}

std::vector<CardWords> weightCards(const Car& car, const FullStance& stance,
                                   std::optional<double> antiSquat) {
    return {weighedCard(car), ballastCard(car, stance.stance), heightCard(car, antiSquat),
            driverCard(car),  padsCard(car, stance),           ticketCard(car)};
}

CardFacts factsOf(const std::vector<CardWords>& cards) {
    CardFacts facts;
    for (const CardWords& card : cards) {
        facts.push_back(card.facts);
    }
    return facts;
}

CardFacts variedWeightFacts(const Car& varied) {
    const Station ride = solveStation(varied, 0);
    const double squat = ride.usable ? ride[Figure::antiSquat] : kNaN;
    return factsOf(weightCards(varied, fullStanceOf(varied),
                               std::isfinite(squat) ? std::optional(squat) : std::nullopt));
}

}  // namespace bolthole
