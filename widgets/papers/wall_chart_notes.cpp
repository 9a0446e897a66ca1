// The car's figures, the explanations and the caution of the wall chart: part of
// widgets/papers/wall_chart_words.h.
#include <algorithm>
#include <cmath>

#include "geometry/car/fields.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/uncertainty/trace_uncertainty.h"
#include "widgets/kit/said.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/papers/wall_chart_words.h"
#include "widgets/words/figure_words.h"
#include "widgets/words/starting_words.h"
#include "widgets/words/uncertainty_words.h"

namespace bolthole {

namespace {

QString massText(double mass, Units units) {
    return fromView(figureText(mass, Quantity::mass, units));
}

}  // namespace

std::vector<FactWords> ChartWords::facts() const {
    const QString unit = ' ' + fromView(unitMark(Quantity::length, style_.units));
    const QString massUnit = ' ' + fromView(unitMark(Quantity::mass, style_.units));
    const CornerWeights& weights = car_.cornerWeights;
    QStringList corners;
    for (const double weight : {weights.leftFront, weights.rightFront, weights.leftRear, weights.rightRear}) {
        corners << massText(weight, style_.units);
    }
    const QString share = QString::number(100 * weights.front() / weights.total(), 'f', 1);
    const QString rear = lengthText(car_.rearTireRadius);
    return {{tr("Ride height"), tr("axle center ") + rear + unit},
            {tr("Tires, loaded radius"),
             tr("rear ") + rear + tr(", front ") + lengthText(car_.frontTireRadius) + unit},
            {tr("Weight"), massText(weights.total(), style_.units) + massUnit + QStringLiteral(", ") + share +
                               tr(" % front")},
            {tr("Corners: LF, RF, LR, RR"), corners.join(QStringLiteral(", ")) + massUnit},
            {tr("Wheelbase"), lengthText(car_.wheelbase) + unit},
            {tr("CG height"), cgHeightWords(car_, style_)}};
}

QString ChartWords::roundingWords() const {
    QString to = QStringLiteral("0.1 mm");
    if (style_.units == Units::inch) {
        to = style_.inches == InchStyle::decimal ? QStringLiteral("0.01 in") : QStringLiteral("1/32 in");
    }
    return tr("Printed: link lengths from hole center to hole center, to the nearest %1; turns to the "
              "nearest "
              "quarter, + longer.")
        .arg(to);
}

// "track bar current: middle / middle".
QString ChartWords::heldWords() const {
    QStringList held;
    for (std::size_t index = 0; index < car_.links.size(); ++index) {
        const Link& link = car_.links[index];
        const int number = static_cast<int>(index);
        const bool isVaried = chart_.axes.down.varies(number) || chart_.axes.across.varies(number);
        if (isVaried || roleOf(link, car_.rearTireRadius) != Role::crosswise) {
            continue;
        }
        QStringList names;
        for (const End end : {End::chassis, End::axle}) {
            if (link.bracket(end).holes.size() > 1) {
                names << said(endWords(end)) + ' ' + holeName(number, end, link.bracket(end).use);
            }
        }
        if (!names.isEmpty()) {
            held << linkName(number) + tr(" current: ") + names.join(QStringLiteral(" / "));
        }
    }
    return held.join(QStringLiteral("; "));
}

QStringList ChartWords::treatment() const {
    const QString held = heldWords();
    return {tr("Lengths: ") + fromView(wordsFor(lengths_)) + QStringLiteral(".") +
                (held.isEmpty() ? QString() : QStringLiteral(" ") + capitalized(held) + QStringLiteral(".")),
            roundingWords()};
}

QString ChartWords::accuracy() const {
    const Station ride = solveStation(car_, 0.0);
    const TraceUncertainty uncertainty = computeUncertainty(car_);
    if (!ride.usable || !uncertainty.known) {
        return {};
    }
    const auto words = [&](Figure figure) {
        return stationUncertaintyWords(uncertainty, ride, figure, style_.units);
    };
    if (words(Figure::antiSquat) == noUncertaintyWords()) {
        return tr("Accuracy, current holes: not known, %1.").arg(startingWords(car_));
    }
    const QString unit = ' ' + fromView(unitMark(Quantity::length, style_.units));
    const bool isCenterUnknown = words(Figure::icX) == noUncertaintyWords();
    const QString height =
        isCenterUnknown || words(Figure::icZ).isEmpty() ? QString() : " \u00D7 " + words(Figure::icZ);
    return tr("Accuracy, current holes: anti-squat %1 %, instant center %2. ")
               .arg(words(Figure::antiSquat),
                    words(Figure::icX) + (isCenterUnknown ? QString() : height + unit)) +
           uncertaintyMeaning(car_, style_.units);
}

QStringList ChartWords::legend() const {
    const QString unit = ' ' + fromView(unitMark(Quantity::length, style_.units));
    QStringList lines{
        tr("Big figure: anti-squat at ride height."),
        tr("Below it: instant center, forward of the rear contact patch \u00D7 above the ground."),
        tr("Then anti-squat at full droop (%1) and full bump (%2).")
            .arg(lengthText(car_.travel.droop) + unit, lengthText(car_.travel.bump) + unit)};
    if (chart_.now) {
        lines << tr("NOW, thick frame: the current holes.");
        if (const QString words = accuracy(); !words.isEmpty()) {
            lines << words;
        }
    } else {
        lines << tr("Today left and right are bolted unlike: not on this chart.");
    }
    const auto any = [&](auto test) { return std::ranges::any_of(chart_.combinations, test); };
    if (any([](const HoleCombination& combination) {
            return combination.assembled && !(std::abs(combination[Figure::icX]) <= kFarAway);
        })) {
        lines << farAwayWords(style_.units);
    }
    if (any([](const HoleCombination& combination) { return combination.problems != 0; })) {
        lines << tr("Hatched: the combination has the problem its cell names.");
    }
    if (!powers_.isEmpty()) {
        lines
            << tr("For how much power, by computed launches and the engine's peak torque: %1.").arg(powers_);
    }
    return lines;
}

QStringList ChartWords::rodLines() const {
    QStringList lines;
    const QString unit = ' ' + fromView(unitMark(Quantity::length, style_.units));
    for (const ChartRod& rod : chart_.rods) {
        const Link& link = car_.links[static_cast<std::size_t>(rod.link)];
        // Taped, worked out, or as long as its holes are apart: which of them is said.
        const FieldId length{.field = Field::linkLength, .link = rod.link};
        const QString now = !link.length                                 ? tr(" now, as its holes stand")
                            : originOf(car_, length) == Origin::measured ? tr(" now")
                                                                         : tr(" now, not measured");
        QString line = linkName(rod.link) + ' ' + lengthText(builtLength(link)) + unit + now;
        const HoleCombination* any = chart_.any();
        if (!rod.changes) {
            line += tr(", stays");
        } else if (rod.place == LengthPosition::once && any != nullptr) {
            line += tr("; for every combination ") + lengthOf(*any, rod.link).whole();
        } else if (rod.place != LengthPosition::once) {
            line += rod.place == LengthPosition::row      ? tr("; each row says its length")
                    : rod.place == LengthPosition::column ? tr("; each column says its length")
                                                          : tr("; each cell says its length");
        }
        lines << line;
    }
    return lines;
}

QString cautionWords(const Car& car) {
    return tr("Car on rated stands, wheels chocked; take weight off the link and hold the axle before a bolt "
              "comes "
              "out. Torque every bolt to the manufacturer's spec, then check the full travel for bind, "
              "driveline "
              "and "
              "brake hose before it moves. %1 That is for a qualified person. Test on a closed course; local "
              "rules "
              "and the sanctioning body's come first.")
        .arg(calculatedWords(car));
}

}  // namespace bolthole
