#include "widgets/pages/roll/roll_facts.h"

#include <algorithm>
#include <cmath>

#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/roll/roll_picture.h"
#include "widgets/scales/axis_ticks.h"

namespace bolthole {

namespace {

const QString kNone = QStringLiteral("—");
constexpr double kPitchToMention = 0.05 * kRadiansPerDegree;
constexpr double kBindToMention = 1e-6;  // m: less is nothing to anybody

// Mismatches and shifts are small: thousandths of an inch, hundredths of a millimeter.
QString smallLengthText(double length, Units units) {
    if (!std::isfinite(length)) {
        return kNone;
    }
    const double unit = shownUnit(Quantity::length, units);
    return QStringLiteral("%1 %2").arg(tickText(length / unit, units == Units::inch ? 0.001 : 0.01),
                                       unitText(Quantity::length, units));
}

QString steerRemark(const RollFigures& ride) {
    const double turned = std::abs(ride.heading) * 3 * kRadiansPerDegree;
    const QString word = fromView(steerWord(ride.heading));
    if (std::abs(ride.heading) < kNeutralSteer) {
        return tr("%1: the axle keeps its heading as the body rolls").arg(word);
    }
    const QString side = ride.heading > 0 ? tr("left") : tr("right");
    return tr("%1: the body rolls left and the rear axle steers %2, by %3 at 3° of roll")
        .arg(word, side, angleText(turned));
}

// A housing that stands pitched at ride counts in yaw as ISO 8855 has it, which the roll table gives.
QString pitchRemark(const RollFigures& ride) {
    if (std::abs(ride.pose.pitch) < kPitchToMention) {
        return {};
    }
    return tr("; as yaw of a housing that stands %1 from where it was measured, the roll table's, it is %2")
        .arg(angleText(std::abs(ride.pose.pitch)), steerText(ride.steer));
}

// What steerRemark() and pitchRemark() say in numbers.
std::vector<FactNumber> steerNumbers(const RollFigures& ride) {
    return {{.id = "roll_steer_iso_ride",
             .value = ride.steer,
             .quantity = Quantity::ratio,
             .fineness = Fineness::fine,
             .unit = QStringLiteral("°/°")},
            fineNumber("housing_pitch_ride", ride.pose.pitch, Quantity::angle)};
}

Fact centerAt(const std::string& id, const QString& label, const RollFigures& row, const RollFigures& ride,
              Units units) {
    if (!row.usable) {
        return {label, kNone, tr("the links don't reach there"), false};
    }
    const double moved = row.squareCenter - ride.squareCenter;
    const QString size = smallLengthText(std::abs(moved), units);
    return {label,
            lengthText(row.squareCenter, units),
            moved >= 0 ? tr("%1 higher than at ride, square to the ground there").arg(size)
                       : tr("%1 lower than at ride, square to the ground there").arg(size),
            false,
            fineNumber(id, row.squareCenter, Quantity::length),
            {},
            {fineNumber(id + "_rise", moved, Quantity::length)}};
}

Fact shiftAt(const std::string& id, const QString& label, const RollFigures& row, const RollFigures& ride,
             Units units) {
    if (!row.usable) {
        return {label, kNone, tr("the links don't reach there"), false};
    }
    const double shift = row.pose.y - ride.pose.y;
    const QString size = smallLengthText(std::abs(shift), units);
    const bool none = std::abs(shift) < kBindToMention;
    return {label, size,
            none        ? tr("the axle stays where it is")
            : shift > 0 ? tr("to the left of where it is at ride")
                        : tr("to the right of where it is at ride"),
            false, fineNumber(id, shift, Quantity::length)};
}

// The worse of both directions at a roll, NaN where one is out of reach.
double bindAt(const RollReading& reading, double roll) {
    const auto at = [&](double where) {
        const RollFigures figures = reading.atRoll(where);
        return figures.usable ? figures.bind : std::nan("");
    };
    const double left = at(roll);
    const double right = at(-roll);
    return std::isnan(left) || std::isnan(right) ? std::nan("") : std::max(left, right);
}

// The rows worth naming: the farthest reached to either side.
const RollFigures* worstRow(const RollReading& reading) {
    const RollFigures* worst = nullptr;
    for (const RollFigures& row : reading.roll.rows) {
        if (row.usable && (worst == nullptr || row.bind > worst->bind)) {
            worst = &row;
        }
    }
    return worst;
}

QString named(const std::vector<LinkMismatch>& links, const RollReading& reading) {
    QStringList names;
    for (const LinkMismatch& link : links) {
        const Constraint& constraint = reading.linkage.constraints[static_cast<std::size_t>(link.constraint)];
        names << QString::fromStdString(constraintWords(constraint, reading.car));
    }
    if (names.size() < 2) {
        return names.join(QString());
    }
    const QString last = names.takeLast();
    return tr("%1 and %2").arg(names.join(QStringLiteral(", ")), last);
}

Fact centerFact(const std::string& id, const QString& label, const SideCenter& center, Units units) {
    if (center.state != SideCenterState::there) {
        return {label, kNone, fromView(describe(center.state)), false};
    }
    const QString ahead = lengthText(std::abs(center.ahead), units);
    return {label,
            ahead,
            (center.ahead >= 0 ? tr("ahead of the rear tire's patch, %1 above the ground")
                               : tr("behind the rear tire's patch, %1 above the ground"))
                .arg(lengthText(center.above, units)),
            false,
            fineNumber(id + "_ahead", center.ahead, Quantity::length),
            {},
            {fineNumber(id + "_above", center.above, Quantity::length)}};
}

}  // namespace

QString steerText(double steer) {
    return std::isfinite(steer) ? signedText(tickText(steer, 0.001)) + QStringLiteral(" °/°") : kNone;
}

namespace {

// What each of the facts was before, in their order.
void addBaseline(std::vector<Fact>& facts, const QStringList& values) {
    for (std::size_t fact = 0; fact < facts.size(); ++fact) {
        facts[fact].remark += tr("; before: %1").arg(values[static_cast<qsizetype>(fact)]);
    }
}

QStringList centersOfBaseline(const RollTrace& baseline, Units units) {
    const QString slope =
        tr("%1 in 100").arg(signedText(tickText(100 * std::tan(baseline.ride.axisAngle), 0.1)));
    return {lengthText(baseline.ride.center, units), lengthText(baseline.travel.back().squareCenter, units),
            lengthText(baseline.travel.front().squareCenter, units), slope, steerText(baseline.ride.heading)};
}

// With the side in words, as the facts have it.
QString shiftOfBaseline(const RollFigures& row, const RollFigures& ride, Units units) {
    const double shift = row.usable ? row.pose.y - ride.pose.y : std::nan("");
    const QString size = smallLengthText(std::abs(shift), units);
    return !(std::abs(shift) >= kBindToMention) ? size
           : shift > 0                          ? tr("%1 to the left").arg(size)
                                                : tr("%1 to the right").arg(size);
}

// Of the trace's rows at that roll to both sides the worse.
double bindOfBaseline(const RollTrace& baseline, int degrees) {
    double worst = 0;
    int found = 0;
    for (const RollFigures& row : baseline.rows) {
        if (row.usable && std::abs(std::abs(row.roll) - degrees * kRadiansPerDegree) < 1e-9) {
            worst = std::max(worst, row.bind);
            ++found;
        }
    }
    return found == 2 ? worst : std::nan("");
}

}  // namespace

std::vector<Fact> rollCenterFacts(const RollReading& reading, Units units) {
    const RollFigures& ride = reading.roll.ride;
    const double slope = std::tan(ride.axisAngle);
    std::vector<Fact> facts{
        {tr("Roll center at ride"), lengthText(ride.center, units),
         tr("above the ground: where the links pass side force between axle and body"), false,
         fineNumber("roll_center_ride", ride.center, Quantity::length)},
        centerAt("roll_center_bump", tr("At full bump"), reading.roll.travel.back(), ride, units),
        centerAt("roll_center_droop", tr("At full droop"), reading.roll.travel.front(), ride, units),
        {tr("Roll axis"),
         angleText(std::abs(ride.axisAngle)),
         std::abs(ride.axisAngle) < 0.005 * kRadiansPerDegree
             ? tr("level: as high ahead of the axle as above it")
             : (slope > 0 ? tr("rises toward the front, %1 in 100") : tr("falls toward the front, %1 in 100"))
                   .arg(tickText(100 * std::abs(slope), 0.1)),
         false,
         fineNumber("roll_axis_ride", ride.axisAngle, Quantity::angle),
         {},
         {fineNumber("roll_axis_slope_ride", 100 * slope, Quantity::percent)}},
        {tr("Roll steer"),
         steerText(ride.heading),
         steerRemark(ride) + pitchRemark(ride),
         false,
         {.id = "roll_steer_ride",
          .value = ride.heading,
          .quantity = Quantity::ratio,
          .fineness = Fineness::fine,
          .unit = QStringLiteral("°/°")},
         {},
         steerNumbers(ride)},
    };
    if (reading.baseline) {
        addBaseline(facts, centersOfBaseline(*reading.baseline, units));
    }
    return facts;
}

std::vector<Fact> shiftFacts(const RollReading& reading, Units units) {
    const RollFigures& ride = reading.roll.ride;
    std::vector<Fact> facts{
        shiftAt("axle_shift_bump", tr("At full bump"), reading.roll.travel.back(), ride, units),
        shiftAt("axle_shift_droop", tr("At full droop"), reading.roll.travel.front(), ride, units)};
    if (reading.baseline) {
        const RollTrace& baseline = *reading.baseline;
        addBaseline(facts, {shiftOfBaseline(baseline.travel.back(), baseline.ride, units),
                            shiftOfBaseline(baseline.travel.front(), baseline.ride, units)});
    }
    return facts;
}

QString shiftWords(const RollReading& reading) {
    bool hasBar = false;
    bool hasGuide = false;
    for (const Link& link : reading.car.links) {
        hasGuide = hasGuide || link.kind == LinkKind::guide;
        hasBar = hasBar ||
                 (link.kind == LinkKind::rod && roleOf(link, reading.car.rearTireRadius) == Role::crosswise);
    }
    return hasBar
               ? tr("A track bar swings the axle laterally along its arc: the longer and the more level it "
                    "is at ride, the less.")
           : hasGuide ? tr("A guide holds its own point of the axle in the middle at every height.")
                      : tr("The links locate the axle by themselves; where left and right are alike it stays "
                           "where it is.");
}

std::vector<Fact> bindFacts(const RollReading& reading, Units units) {
    std::vector<Fact> facts;
    for (const int degrees : {1, 2, 3}) {
        const double bind = bindAt(reading, degrees * kRadiansPerDegree);
        const QString label = tr("At %1° of roll").arg(degrees);
        if (std::isnan(bind)) {
            facts.push_back({label, kNone, tr("the links don't reach that far"), false});
            continue;
        }
        facts.push_back({label, smallLengthText(bind, units),
                         bind < kBindToMention ? tr("every link fits")
                                               : tr("how far the worst link misses fitting, either way"),
                         false,
                         fineNumber("bind_" + std::to_string(degrees) + "_deg", bind, Quantity::length)});
    }
    if (reading.baseline) {
        addBaseline(facts, {smallLengthText(bindOfBaseline(*reading.baseline, 1), units),
                            smallLengthText(bindOfBaseline(*reading.baseline, 2), units),
                            smallLengthText(bindOfBaseline(*reading.baseline, 3), units)});
    }
    return facts;
}

QString bindWords(const RollReading& reading, Units units) {
    const RollFigures* worst = worstRow(reading);
    if (worst == nullptr || worst->bind < kBindToMention) {
        return tr("Nothing binds: the links hold the axle exactly and let it roll freely.");
    }
    const std::vector<LinkMismatch> fight = fightingLinks(reading.linkage, worst->pose);
    return tr("More links hold the axle than need to: in roll %1 fight each other, by up to %2 at %3, and "
              "soft "
              "bushings take that up; where rod ends can't, the links, brackets and housing bend and the "
              "axle "
              "resists roll. What they stand is for a qualified person.")
        .arg(named(fight, reading), smallLengthText(worst->bind, units), rollWords(worst->roll));
}

std::vector<Fact> sideCenterFacts(const SideCenters& centers, Units units) {
    return {centerFact("left_center", tr("Left side"), centers.left, units),
            centerFact("right_center", tr("Right side"), centers.right, units),
            centerFact("axle_center", tr("The axle's own"), centers.axle, units)};
}

CardFacts rollCards(const RollReading& reading, Units units) {
    CardFacts facts{sideCenterFacts(reading.centers, units)};
    if (reading.isThere()) {
        facts.push_back(rollCenterFacts(reading, units));
        facts.push_back(shiftFacts(reading, units));
        facts.push_back(bindFacts(reading, units));
    }
    return facts;
}

QString sideCenterWords(const SideCenters& centers) {
    return centers.apart ? tr("Left and right are set apart. Of a side: where its own links' lines cross in "
                              "side view, links "
                              "in the middle counted for both. The axle's own follows from all links "
                              "together, the track "
                              "bar included.")
                         : tr("Left and right are alike. Of a side: where its own links' lines cross in side "
                              "view. A track "
                              "bar shifts the axle's own.");
}

}  // namespace bolthole
