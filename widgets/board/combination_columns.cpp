#include "widgets/board/combination_columns.h"

#include <algorithm>
#include <bit>
#include <cmath>

#include "widgets/board/combination_problem.h"
#include "widgets/board/combination_uncertainty.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"
#include "widgets/words/figure_words.h"

namespace bolthole {

namespace {

using Kind = CombinationColumn::Kind;

QString figure(double value, Quantity quantity, Units units) {
    return QString::fromStdString(figureText(value, quantity, units));
}

QString fineFigure(double value, Quantity quantity, Units units) {
    return QString::fromStdString(fineFigureText(value, quantity, units));
}

QString angle(double value) {
    return figure(value, Quantity::angle, Units::metric) + (std::isnan(value) ? "" : "°");
}

QString percent(double value) {
    return figure(value, Quantity::percent, Units::metric);
}

// A distance or height of an instant center; far out, to three digits: nobody measures better.
QString placeText(double value, double distance, Units units) {
    constexpr double kFar = 10.0;  // m
    if (std::abs(distance) < kFar || value == 0) {
        return figure(value, Quantity::length, units);
    }
    const double unit = shownUnit(Quantity::length, units);
    const double digit = std::pow(10.0, std::floor(std::log10(std::abs(value / unit))) - 2);
    return figure(std::round(value / unit / digit) * digit * unit, Quantity::length, units);
}

QString joint(double ride, double worst) {
    return QStringLiteral("%1 / %2").arg(angle(ride), angle(worst));
}

QString bracketName(const Car& car, const CombinationColumn& column) {
    const QString end = column.end == End::axle ? tr("axle") : tr("chassis");
    return QStringLiteral("%1 %2").arg(linkName(car, column.link), end);
}

QString adjusters(const HoleCombination& combination) {
    if (combination.newRods == 0) {
        return QString::number(combination.adjustersTurned);
    }
    const QString fresh = tr("%1 new links").arg(combination.newRods);
    return combination.adjustersTurned == 0
               ? fresh
               : QStringLiteral("%1 + %2").arg(combination.adjustersTurned).arg(fresh);
}

QString rod(const CombinationColumn& column, const HoleCombination& combination,
            const CombinationList& list) {
    const auto link = static_cast<std::size_t>(column.link);
    const QString length = tapeLengthText(combination.length[link], list.style());
    const QString work = rodWorkText(*list.car(), list.car()->links[link], combination.lengthChange[link]);
    return work.isEmpty() ? length : length + QStringLiteral(", ") + work;
}

QString bolts(const HoleCombination& combination, const CombinationList& list, std::size_t at) {
    return list.present() == at ? tr("current") : QString::number(combination.boltsMoved);
}

}  // namespace

std::vector<CombinationColumn> combinationColumns(const Car& car) {
    constexpr std::size_t kFewHoles = 2;  // with more brackets to choose, their names stand in one column
    const int links = static_cast<int>(car.links.size());
    std::vector<CombinationColumn> holes;
    for (int link = 0; link < links; ++link) {
        for (const End end : {End::chassis, End::axle}) {
            if (car.links[static_cast<std::size_t>(link)].bracket(end).holes.size() > 1) {
                holes.push_back({Kind::hole, link, end});
            }
        }
    }
    const bool few = holes.size() <= kFewHoles;
    std::vector<CombinationColumn> columns{{Kind::rank}};
    if (few) {
        columns.insert(columns.end(), holes.begin(), holes.end());
    } else {
        columns.push_back({Kind::names});
    }
    columns.insert(columns.end(), {{Kind::problem},
                                   {Kind::instantCenter},
                                   {Kind::antiSquat},
                                   {Kind::uncertainty},
                                   {Kind::toldApart},
                                   {Kind::antiSquatTravel}});
    if (car.driveline) {
        columns.push_back({Kind::pinion});
    }
    columns.insert(columns.end(), {{Kind::pinionChange}, {Kind::axleShift}});
    if (car.driveline) {
        columns.insert(columns.end(), {{Kind::frontJoint}, {Kind::rearJoint}});
    }
    for (int link = 0; link < links; ++link) {
        if (car.links[static_cast<std::size_t>(link)].kind == LinkKind::rod) {
            columns.push_back({Kind::rod, link});
        }
    }
    columns.insert(columns.end(), {{Kind::bolts}, {Kind::adjusters}});
    if (!few) {
        columns.insert(columns.end(), holes.begin(), holes.end());
    }
    return columns;
}

QString bracketNames(const Car& car) {
    QStringList names;
    for (const CombinationColumn& column : combinationColumns(car)) {
        if (column.kind == Kind::hole) {
            names << bracketName(car, column);
        }
    }
    return names.join(QStringLiteral(" / "));
}

int frozenCount(const std::vector<CombinationColumn>& columns) {
    const auto problem = std::ranges::find(columns, Kind::problem, &CombinationColumn::kind);
    return problem == columns.end() ? 0 : static_cast<int>(problem - columns.begin()) + 1;
}

QString columnTitle(const CombinationColumn& column, const Car& car, Units units) {
    const QString length = unitText(Quantity::length, units);
    switch (column.kind) {
        case Kind::rank:
            return tr("Rank");  // no number of the combination: it follows what is bolted
        case Kind::names:
            return tr("Holes");
        case Kind::hole:
            return capitalized(bracketName(car, column));
        case Kind::instantCenter:
            return tr("IC × height, %1").arg(length);
        case Kind::antiSquat:
            return tr("Anti-squat");
        case Kind::uncertainty:
            return QStringLiteral("±");
        case Kind::toldApart:
            return tr("Clearly different?");
        case Kind::antiSquatTravel:
            return tr("droop … bump, %");
        case Kind::pinion:
            return tr("Pinion");
        case Kind::pinionChange:
            return car.driveline ? tr("Pinion change") : tr("Housing rotation");
        case Kind::axleShift:
            return tr("Axle shift, %1").arg(length);
        case Kind::frontJoint:
            return tr("Front joint");
        case Kind::rearJoint:
            return tr("Rear joint");
        case Kind::rod:
            return QStringLiteral("%1, %2").arg(capitalized(linkName(car, column.link)), length);
        case Kind::bolts:
            return tr("Bolts moved");
        case Kind::adjusters:
            return tr("Adjusters turned");
        case Kind::problem:
            break;
    }
    return tr("Problem");
}

namespace {

QString centerHelp() {
    return tr(
        "Instant center at ride height: how far ahead of the rear contact patch, by how high "
        "above the ground. Minus: behind it. ∞: the links are parallel. Sorts from near to "
        "far, through infinity, to behind the axle.");
}

}  // namespace

QString columnHelp(const CombinationColumn& column, const Car& car) {
    switch (column.kind) {
        case Kind::rank:
            return tr(
                "Place in the order written under the table. Click to go back to it. A "
                "struck ring: the combination has a problem; a disc in a ring: current.");
        case Kind::names:
            return tr("The hole of each bracket that has several, in the order of the car sheet.");
        case Kind::hole:
            return tr("Hole of the %1 bracket. Sorts as the holes are "
                      "listed in the car sheet.")
                .arg(bracketName(car, column));
        case Kind::instantCenter:
            return centerHelp();
        case Kind::antiSquat:
            return tr("Anti-squat at ride height.");
        case Kind::uncertainty:
        case Kind::toldApart:
            return uncertaintyHelp(column);
        case Kind::antiSquatTravel:
            return tr(
                "Anti-squat at full droop and at full bump, percent. Sorts "
                "by how far the two are apart.");
        case Kind::pinion:
            return tr("Pinion angle to the ground at ride height, nose up +.");
        case Kind::pinionChange:
            return tr(
                "How far the axle housing turns against now, at ride "
                "height, pinion nose up +. Sorts by size, whichever way.");
        case Kind::axleShift:
            return tr(
                "How far the axle moves fore and aft against now, at ride "
                "height, forward +. Sorts by size, whichever way.");
        case Kind::frontJoint:
            return tr(
                "Angle of the driveshaft's front joint at ride height, and "
                "the largest in travel. Sorts by the largest.");
        case Kind::rearJoint:
            return tr(
                "Angle of the driveshaft's rear joint at ride height, and "
                "the largest in travel. Sorts by the largest.");
        case Kind::rod:
            return tr(
                "Length center to center, and how far the adjuster is turned to get there "
                "from what the link is now. Without an adjuster: a new link.");
        case Kind::bolts:
            return tr("Bolts that go to another hole, both sides counted.");
        case Kind::adjusters:
            return tr(
                "Links whose adjuster is turned, and links without one that "
                "need another length, both sides counted.");
        case Kind::problem:
            break;
    }
    return tr("What is wrong with the combination at ride height or in travel.");
}

QString columnText(const CombinationColumn& column, const CombinationList& list, std::size_t at) {
    if (column.kind == Kind::rank) {
        return QString::number(list.items()[at].rank + 1);
    }
    const HoleCombination* found = list.combination(at);
    if (found == nullptr) {
        return {};
    }
    const HoleCombination& combination = *found;
    const Units units = list.style().units;
    switch (column.kind) {
        case Kind::names:
            return list.nameOf(at);
        case Kind::hole: {
            const Bracket& bracket =
                list.car()->links[static_cast<std::size_t>(column.link)].bracket(column.end);
            const int hole = combination.use.of(column.link, column.end);
            const QString name = holeName(bracket, hole);
            return bracket.holes[static_cast<std::size_t>(hole)].planned ? tr("%1, planned").arg(name) : name;
        }
        case Kind::instantCenter:
            return instantCenterText(combination, units);
        case Kind::antiSquat: {
            const double value = combination[Figure::antiSquat];
            return percent(value) + (std::isnan(value) ? "" : " %");
        }
        case Kind::uncertainty:
        case Kind::toldApart:
            return uncertaintyCell(column, list, at);
        case Kind::antiSquatTravel:
            return QStringLiteral("%1 … %2").arg(percent(combination.antiSquatDroop),
                                                 percent(combination.antiSquatBump));
        case Kind::pinion:
            return angle(combination[Figure::pinion]);
        case Kind::pinionChange:
            return signedText(angle(combination.pinionChange));
        case Kind::axleShift:
            return signedText(fineFigure(combination.axleShift, Quantity::length, units));
        case Kind::frontJoint:
            return joint(combination[Figure::frontJoint], combination.worstFrontJoint);
        case Kind::rearJoint:
            return joint(combination[Figure::rearJoint], combination.worstRearJoint);
        case Kind::rod:
            return rod(column, combination, list);
        case Kind::bolts:
            return bolts(combination, list, at);
        case Kind::adjusters:
            return adjusters(combination);
        default:
            return problemText(combination, *list.car(), units);
    }
}

double columnKey(const CombinationColumn& column, const CombinationList& list, std::size_t at) {
    const CombinationList::Item& item = list.items()[at];
    const HoleCombination* found = list.combination(at);
    if (column.kind == Kind::rank) {
        return item.rank;
    }
    if (column.kind == Kind::instantCenter) {
        return -item.inverse;
    }
    if (found == nullptr) {
        return kAbsent;
    }
    const HoleCombination& combination = *found;
    switch (column.kind) {
        case Kind::names:
            return static_cast<double>(item.index);
        case Kind::hole:
            return combination.use.of(column.link, column.end);
        case Kind::antiSquat:
            return combination[Figure::antiSquat];
        case Kind::uncertainty:
        case Kind::toldApart:
            return uncertaintyKey(column, list, at);
        case Kind::antiSquatTravel:
            return std::abs(combination.antiSquatBump - combination.antiSquatDroop);
        case Kind::pinion:
            return combination[Figure::pinion];
        case Kind::pinionChange:
            return std::abs(combination.pinionChange);
        case Kind::axleShift:
            return std::abs(combination.axleShift);
        case Kind::frontJoint:
            return combination.worstFrontJoint;
        case Kind::rearJoint:
            return combination.worstRearJoint;
        case Kind::rod:
            return combination.length[static_cast<std::size_t>(column.link)];
        case Kind::bolts:
            return combination.boltsMoved;
        case Kind::adjusters:
            return combination.adjustersTurned + combination.newRods;
        default:
            return combination.problems;  // the gravest is the lowest bit: what is one problem stays together
    }
}

std::optional<CombinationList::Basis> basisOf(const CombinationColumn& column) {
    using Basis = CombinationList::Basis;
    switch (column.kind) {
        case Kind::antiSquat:
        case Kind::antiSquatTravel:
            return Basis::weights;
        case Kind::pinion:
        case Kind::frontJoint:
        case Kind::rearJoint:
            return Basis::driveline;
        case Kind::instantCenter:
        case Kind::pinionChange:
        case Kind::axleShift:
        case Kind::rod:
            return Basis::links;
        default:
            return std::nullopt;
    }
}

bool isNumeric(const CombinationColumn& column) {
    return column.kind != Kind::names && column.kind != Kind::hole && column.kind != Kind::problem &&
           column.kind != Kind::rod && column.kind != Kind::toldApart;
}

namespace {

QString longestName(const Bracket& bracket) {
    QString longest;
    for (int hole = 0; hole < static_cast<int>(bracket.holes.size()); ++hole) {
        const QString name = holeName(bracket, hole);
        longest = name.size() > longest.size() ? name : longest;
    }
    return longest;
}

// Of the brackets that leave a combination, the track bar's left out: most look without it.
QString longestNames(const Car& car) {
    QStringList names;
    for (const Link& link : car.links) {
        for (const Bracket* bracket : {&link.chassis, &link.axle}) {
            if (bracket->holes.size() > 1) {
                names.push_back(longestName(*bracket));
            }
        }
    }
    return names.isEmpty() ? QStringLiteral("1 / 1") : names.join(QStringLiteral(" / "));
}

}  // namespace

QString widestText(const CombinationColumn& column, const CombinationList& list) {
    switch (column.kind) {
        case Kind::rank:
            return QStringLiteral("00 ") + QString::number(list.items().size());
        case Kind::hole:
            return longestName(list.car()->links[static_cast<std::size_t>(column.link)].bracket(column.end));
        case Kind::instantCenter:
            return QStringLiteral("−0000 × 000.0");
        case Kind::antiSquat:
            return QStringLiteral("−000 %");
        case Kind::uncertainty:
            return QStringLiteral("± 000");
        case Kind::toldApart:
            return cannotTellCell();
        case Kind::antiSquatTravel:
            return QStringLiteral("−000 … −000");
        case Kind::frontJoint:
        case Kind::rearJoint:
            return QStringLiteral("00.0° / 00.0°");
        case Kind::rod:
            return list.lengths() == LengthTreatment::keep ? QStringLiteral("00 00/00")
                                                           : tr("00 00/00, 0.0 turns shorter");
        case Kind::names:
            return longestNames(*list.car());
        case Kind::problem:
            return tr("lower stops travel at");
        default:
            return QStringLiteral("−00.00");
    }
}

QString rodWorkText(const Car& car, const Link& rod, double lengthChange) {
    if (std::isnan(lengthChange) || std::abs(lengthChange) <= kNoAdjustment) {
        return {};
    }
    if (!rod.adjuster) {
        return tapeTells(car, lengthChange, 0) ? tr("new link") : QString();
    }
    const double turns = std::abs(adjusterTurns(lengthChange, *rod.adjuster));
    const bool halves = rod.adjuster->threadedEnds == 1;
    if (turns < 0.05) {
        return halves ? tr("within half a turn") : tr("under 0.1 turn");
    }
    const QString count = QString::number(turns, 'f', halves && turns == std::floor(turns) ? 0 : 1);
    const QString pattern = lengthChange > 0 ? tr("%1 turns longer") : tr("%1 turns shorter");
    return pattern.arg(count);
}

QString instantCenterText(const HoleCombination& combination, Units units) {
    if (!combination.assembled) {
        return QString(QChar(0x2014));
    }
    if (std::isnan(combination[Figure::icX])) {
        return QString(QChar(0x221e));
    }
    return QStringLiteral("%1 × %2").arg(
        placeText(combination[Figure::icX], combination[Figure::icX], units),
        placeText(combination[Figure::icZ], combination[Figure::icX], units));
}

QString combinationInWords(const CombinationList& list, std::size_t at) {
    const HoleCombination* combination = list.combination(at);
    if (combination == nullptr) {
        return list.nameOf(at);
    }
    const Units units = list.style().units;
    QString text = list.nameOf(at) + (list.present() == at ? tr(", current") : QString());
    if (combination->assembled) {
        const bool infinite = std::isnan((*combination)[Figure::icX]);
        const QString unit = infinite ? QString() : QLatin1Char(' ') + unitText(Quantity::length, units);
        text += tr(": IC %1%2, anti-squat %3 %")
                    .arg(instantCenterText(*combination, units), unit,
                         percent((*combination)[Figure::antiSquat]));
    }
    if (const QString starts = list.startingWords(at, CombinationList::Basis::weights); !starts.isEmpty()) {
        text += tr("; rests on %1").arg(starts);
    }
    const QString problems = problemText(*combination, *list.car(), units);
    return problems.isEmpty() ? text : text + tr(". Problem: ") + problems;
}

}  // namespace bolthole
