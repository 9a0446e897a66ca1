#include "geometry/compare/comparison.h"

#include <algorithm>
#include <cmath>

#include "geometry/car/fields.h"
#include "geometry/combinations/combination_figures.h"

namespace bolthole {

namespace {

constexpr double kSamePlace = 1e-5;  // m

const Link& linkAt(const Car& car, int index) {
    return car.links[static_cast<std::size_t>(index)];
}

bool isSameLink(const Link& one, const Link& other) {
    return one.name == other.name && one.side == other.side && one.kind == other.kind;
}

void matchLinks(Comparison& comparison) {
    const std::vector<Link>& after = comparison.afterCar.links;
    std::vector<bool> taken(after.size(), false);
    for (std::size_t one = 0; one < comparison.beforeCar.links.size(); ++one) {
        const Link& link = comparison.beforeCar.links[one];
        std::size_t other = 0;
        while (other < after.size() && (taken[other] || !isSameLink(link, after[other]))) {
            ++other;
        }
        if (other == after.size()) {
            comparison.unshared.push_back({link.name, true});
            continue;
        }
        taken[other] = true;
        comparison.shared.push_back({static_cast<int>(one), static_cast<int>(other)});
    }
    for (std::size_t other = 0; other < after.size(); ++other) {
        if (!taken[other]) {
            comparison.unshared.push_back({after[other].name, false});
        }
    }
}

void compareLink(Comparison& comparison, const SharedLink& pair) {
    const Link& before = linkAt(comparison.beforeCar, pair.before);
    const Link& after = linkAt(comparison.afterCar, pair.after);
    for (const End end : {End::chassis, End::axle}) {
        const Bracket& from = before.bracket(end);
        const Bracket& to = after.bracket(end);
        const Eigen::Vector3d by = to.inUse().at - from.inUse().at;
        if (by.lpNorm<Eigen::Infinity>() > kSamePlace) {
            comparison.bolts.push_back(
                {pair, end, nameOfHoleInUse(from), nameOfHoleInUse(to), by, sidesOf(after)});
        }
    }
    if (after.kind != LinkKind::rod) {
        return;
    }
    const double change = builtLength(after) - builtLength(before);
    if (std::abs(change) > kNoAdjustment) {
        const auto& adjuster = after.adjuster ? after.adjuster : before.adjuster;
        comparison.lengths.push_back(
            {pair, builtLength(before), builtLength(after),
             adjuster ? std::optional(adjusterTurns(change, *adjuster)) : std::nullopt, sidesOf(after)});
    }
}

// What stays of rounding where a number went there and back.
double sameNumber(Quantity quantity) {
    switch (quantity) {
        case Quantity::length:
            return kSamePlace;
        case Quantity::angle:
            return 1e-3 * kRadiansPerDegree;
        case Quantity::mass:
            return 1e-3;
        default:
            return 1e-9;
    }
}

void compareNumber(Comparison& comparison, const FieldId& id) {
    const std::optional<double> before = numberAt(comparison.beforeCar, id);
    const std::optional<double> after = numberAt(comparison.afterCar, id);
    const bool same =
        before && after ? std::abs(*after - *before) <= sameNumber(quantityOf(id.field)) : before == after;
    // What only one of the cars has entered beside the links was measured or not, which turns nothing on the
    // car.
    const bool isEntered = ruleOf(id.field).compared == Compared::ifEntered;
    if (!same && (!isEntered || (before && after))) {
        comparison.numbers.push_back({id, before, after});
    }
}

void listNumber(const FieldRule& rule, std::vector<FieldId>& numbers) {
    for (int axis = rule.hasAxis ? 0 : -1; axis < (rule.hasAxis ? 3 : 0); ++axis) {
        numbers.push_back({.field = rule.field, .axis = axis});
    }
}

/// What is always compared comes first; there the driveline's angles before its joints.
std::vector<FieldId> listNumbers() {
    std::vector<FieldId> numbers;
    for (const Compared compared : {Compared::always, Compared::ifEntered}) {
        for (const Scope scope : {Scope::car, Scope::driveline}) {
            const bool joinsLast = scope == Scope::driveline && compared == Compared::always;
            for (const bool points : joinsLast ? std::vector{false, true} : std::vector{false}) {
                for (const FieldRule* rule : rulesOf(scope)) {
                    if (rule->compared == compared && (!joinsLast || rule->hasAxis == points)) {
                        listNumber(*rule, numbers);
                    }
                }
            }
        }
    }
    return numbers;
}

}  // namespace

std::string_view nameOf(TravelPosition place) {
    switch (place) {
        case TravelPosition::ride:
            return "ride";
        case TravelPosition::bump:
            return "bump";
        case TravelPosition::droop:
            break;
    }
    return "droop";
}

std::string nameOfHoleInUse(const Bracket& bracket) {
    return bracket.inUse().name.empty() ? std::to_string(bracket.use + 1) : bracket.inUse().name;
}

const Station* stationAt(const Trace& trace, TravelPosition place) {
    if (!trace.assembly.usable() || trace.stations.empty()) {
        return nullptr;
    }
    switch (place) {
        case TravelPosition::ride:
            return &trace.ride;
        case TravelPosition::bump:
            return &trace.stations.back();
        case TravelPosition::droop:
            break;
    }
    return &trace.stations.front();
}

const std::vector<FieldId>& comparedNumbers() {
    static const std::vector<FieldId> numbers = listNumbers();
    return numbers;
}

Comparison compareEntries(const Car& before, const Car& after) {
    Comparison comparison{withoutKept(before), withoutKept(after), {}, {}, {}, {}, {}, {}, {}};
    matchLinks(comparison);
    for (const SharedLink& pair : comparison.shared) {
        compareLink(comparison, pair);
    }
    for (const FieldId& id : comparedNumbers()) {
        compareNumber(comparison, id);
    }
    return comparison;
}

Comparison compareCars(const Car& before, const Car& after) {
    Comparison comparison = compareEntries(before, after);
    comparison.before = computeTrace(before);
    comparison.after = computeTrace(after);
    return comparison;
}

double tellingChange(Quantity quantity) {
    switch (quantity) {
        case Quantity::length:
            return kMetresPerInch / 16;
        case Quantity::angle:
            return 0.1 * kRadiansPerDegree;
        default:
            return 1.0;
    }
}

double FigureChange::weight() const {
    const double size = std::abs(change());
    return std::isnan(size) ? 0.0
                            : size / tellingChange(figureTable()[static_cast<std::size_t>(figure)].quantity);
}

bool FigureChange::tells() const {
    return weight() >= 1.0 || std::isnan(before) != std::isnan(after);
}

FigureChange changeAt(Figure figure, const Station* before, const Station* after) {
    static const Station kNothing;
    const Station& from = before == nullptr ? kNothing : *before;
    const Station& to = after == nullptr ? kNothing : *after;
    const bool isOfCenter = figure == Figure::icX || figure == Figure::icZ;
    return {figure, from[figure], to[figure], isOfCenter && from[Figure::icX] * to[Figure::icX] < 0};
}

std::vector<FigureChange> changesAt(const Station* before, const Station* after) {
    std::vector<FigureChange> changes;
    for (const FigureInfo& info : figureTable()) {
        if (info.figure != Figure::travel && info.figure != Figure::frontTravel) {
            changes.push_back(changeAt(info.figure, before, after));
        }
    }
    std::ranges::stable_sort(changes, [](const FigureChange& one, const FigureChange& other) {
        const auto rank = [](const FigureChange& change) {
            return change.tells() ? change.weight() + 1 : 0.0;
        };
        return rank(one) > rank(other);
    });
    return changes;
}

}  // namespace bolthole
