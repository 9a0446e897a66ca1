#include "geometry/passes/pass_statistics.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

bool standsOnSetup(const Pass& pass, const Car& car) {
    return pass.setup && *pass.setup >= 0 && static_cast<std::size_t>(*pass.setup) < car.kept.size();
}

/// What makes two passes repeats.
auto keyOf(const Pass& pass) {
    const EnteredCorners& tires = pass.pressures;
    return std::tuple(*pass.setup, pass.surface.kind, pass.surface.name, pass.date, pass.launchRpm,
                      tires.leftFront, tires.rightFront, tires.leftRear, tires.rightRear);
}

int digitsAt(const std::string& text, std::size_t at) {
    return 10 * (text[at] - '0') + (text[at + 1] - '0');
}

/// Hours since midnight; the text has passed refuseTime().
double hoursOf(const std::string& time) {
    const int seconds = time.size() > 6 ? digitsAt(time, 6) : 0;
    return digitsAt(time, 0) + digitsAt(time, 3) / 60.0 + seconds / 3600.0;
}

std::string milliseconds(double seconds) {
    return plainDecimal(std::round(seconds * 1000.0) / 1000.0);
}

}  // namespace

bool Where::holds(const Pass& pass) const {
    return (!surfaceName || pass.surface.name == *surfaceName) &&
           (!surfaceKind || pass.surface.kind == surfaceKind) && (!date || pass.date == *date);
}

std::vector<Repeats> repeatsOf(const Car& car, const Where& where) {
    std::vector<Repeats> groups;
    std::map<decltype(keyOf(Pass{})), std::size_t> places;
    for (std::size_t row = 0; row < car.passes.size(); ++row) {
        const Pass& pass = car.passes[row];
        if (!isCounted(pass) || !standsOnSetup(pass, car) || !where.holds(pass)) {
            continue;
        }
        const auto [place, isNew] = places.try_emplace(keyOf(pass), groups.size());
        if (isNew) {
            groups.push_back({*pass.setup, {}, {}});
        }
        groups[place->second].passes.push_back(row);
        groups[place->second].sixtyFoot.push_back(*pass.sixtyFoot);
    }
    return groups;
}

Answer<Scatter> scatterOf(const Car& car, const Where& where) {
    std::vector<std::vector<double>> times;
    for (Repeats& group : repeatsOf(car, where)) {
        times.push_back(std::move(group.sixtyFoot));
    }
    return pooledScatter(times);
}

Sample sampleOf(const Car& car, int setup, const Where& where) {
    std::vector<double> times;
    for (const Pass& pass : car.passes) {
        if (isCounted(pass) && pass.setup == setup && where.holds(pass)) {
            times.push_back(*pass.sixtyFoot);
        }
    }
    return sampleOf(times);
}

int SetupComparison::more() const {
    return needed ? std::max(0, *needed - std::min(first.count, second.count)) : 0;
}

SetupComparison compareSetups(const Car& car, int first, int second, const Where& where) {
    return compareSamples(sampleOf(car, first, where), sampleOf(car, second, where), scatterOf(car, where));
}

SetupComparison compareSamples(const Sample& first, const Sample& second, const Answer<Scatter>& scatter) {
    const bool known = scatter && first.count > 0 && second.count > 0;
    return {first, second, welchDifference(first, second),
            known ? repeatsToTell(scatter->deviation, std::abs(second.mean - first.mean))
                  : Answer<int>::none(scatter ? say("no pass was run") : scatter.reason)};
}

std::string verdict(const SetupComparison& comparison) {
    const Answer<Difference>& difference = comparison.difference;
    if (!difference) {
        return difference.reason;
    }
    if (difference->apart()) {
        return say(difference->change < 0 ? phrase("second is quicker by %1 s, ±%2 s")
                                          : phrase("second is slower by %1 s, ±%2 s"),
                   milliseconds(std::abs(difference->change)),
                   milliseconds((difference->high - difference->low) / 2.0));
    }
    if (!comparison.needed) {
        return say("can't tell these apart: %1", comparison.needed.reason);
    }
    const int more = comparison.more();
    return more == 0   ? say("can't tell these apart")
           : more == 1 ? say("can't tell these apart, 1 more pass each would")
                       : say("can't tell these apart, %n more passes each would", Count(more));
}

DayDrift driftOf(const Car& car, const std::string& date) {
    const std::vector<Repeats> groups = repeatsOf(car, {.date = date});
    const auto hasTime = [&car](std::size_t row) { return !car.passes[row].time.empty(); };
    const bool byHour = std::ranges::all_of(
        groups, [&](const Repeats& group) { return std::ranges::all_of(group.passes, hasTime); });
    std::vector<DriftPoint> points;
    for (std::size_t group = 0; group < groups.size(); ++group) {
        for (std::size_t at = 0; at < groups[group].passes.size(); ++at) {
            const std::size_t row = groups[group].passes[at];
            points.push_back(
                {momentOf(car, row, byHour), groups[group].sixtyFoot[at], static_cast<int>(group)});
        }
    }
    return {driftOf(points), byHour};
}

double momentOf(const Car& car, std::size_t row, bool byHour) {
    return byHour ? hoursOf(car.passes[row].time) : static_cast<double>(row);
}

}  // namespace bolthole
