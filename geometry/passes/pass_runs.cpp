#include "geometry/passes/pass_runs.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "geometry/units/say.h"

namespace bolthole {

namespace {

auto orderOf(const RunWith& run) {
    const EnteredCorners& tires = run.pressures;
    return std::tuple(run.setup, run.launchRpm, tires.leftFront, tires.rightFront, tires.leftRear,
                      tires.rightRear);
}

/// How many counted passes each of two runs has somewhere.
struct Shares {
    int first = 0;
    int second = 0;

    [[nodiscard]] int fewer() const { return std::min(first, second); }
};

/// Mean moment of a run's counted passes on a ground.
double meanMoment(const Car& car, const RunWith& run, const Ground& ground, bool byHour) {
    double sum = 0;
    int count = 0;
    for (std::size_t row = 0; row < car.passes.size(); ++row) {
        const Pass& pass = car.passes[row];
        if (isCounted(pass) && runWith(pass) == run && ground.holds(pass)) {
            sum += momentOf(car, row, byHour);
            ++count;
        }
    }
    return count == 0 ? 0 : sum / count;
}

}  // namespace

RunWith runWith(const Pass& pass) {
    return {pass.setup.value_or(-1), pass.pressures, pass.launchRpm};
}

RunList runsOf(const Car& car) {
    RunList list;
    std::map<decltype(orderOf(RunWith{})), std::size_t> places;
    for (std::size_t row = 0; row < car.passes.size(); ++row) {
        const RunWith run = runWith(car.passes[row]);
        const auto [place, isNew] = places.try_emplace(orderOf(run), list.runs.size());
        if (isNew) {
            list.runs.push_back(run);
            list.firstOf.push_back(row);
        }
        list.ofPass.push_back(place->second);
    }
    return list;
}

std::string letterOf(std::size_t run) {
    constexpr std::size_t kLetters = 26;
    const std::string last(1, static_cast<char>('A' + run % kLetters));
    return run < kLetters ? last : letterOf(run / kLetters - 1) + last;
}

bool Ground::holds(const Pass& pass) const {
    return pass.surface.kind == kind && pass.surface.name == name && (!date || pass.date == *date);
}

Answer<Ground> sharedGround(const Car& car, const RunWith& first, const RunWith& second) {
    using SurfaceAndPlace = std::tuple<std::optional<SurfaceKind>, std::string, std::string>;
    std::map<SurfaceAndPlace, Shares> days;
    std::map<SurfaceAndPlace, Shares> surfaces;
    for (const Pass& pass : car.passes) {
        const RunWith run = runWith(pass);
        if (!isCounted(pass) || !(run == first || run == second)) {
            continue;
        }
        for (Shares* shares : {&days[{pass.surface.kind, pass.surface.name, pass.date}],
                               &surfaces[{pass.surface.kind, pass.surface.name, std::string()}]}) {
            shares->first += run == first ? 1 : 0;
            shares->second += run == second ? 1 : 0;
        }
    }
    for (const auto* places : {&days, &surfaces}) {
        const auto best =
            std::ranges::max_element(*places, {}, [](const auto& place) { return place.second.fewer(); });
        if (best != places->end() && best->second.fewer() > 0) {
            const auto& [kind, name, date] = best->first;
            return Ground{kind, name, date.empty() ? std::nullopt : std::optional(date)};
        }
    }
    return Answer<Ground>::none(say("they were never run on one surface"));
}

Sample sampleOn(const Car& car, const RunWith& run, const Ground& ground) {
    std::vector<double> times;
    for (const Pass& pass : car.passes) {
        if (isCounted(pass) && runWith(pass) == run && ground.holds(pass)) {
            times.push_back(*pass.sixtyFoot);
        }
    }
    return sampleOf(times);
}

Answer<RunComparison> compareRuns(const Car& car, const RunWith& first, const RunWith& second) {
    const Answer<Ground> ground = sharedGround(car, first, second);
    if (!ground) {
        return Answer<RunComparison>::none(ground.reason);
    }
    const Answer<Scatter> scatter = scatterOf(car);
    RunComparison comparison{
        *ground, compareSamples(sampleOn(car, first, *ground), sampleOn(car, second, *ground), scatter),
        scatter};
    if (ground->date) {
        comparison.drift = driftOf(car, *ground->date);
        const Answer<Drift>& drift = comparison.drift->drift;
        if (drift && drift->isTold()) {
            const bool byHour = comparison.drift->isByHour;
            comparison.byDrift = drift->slope * (meanMoment(car, second, *ground, byHour) -
                                                 meanMoment(car, first, *ground, byHour));
        }
    }
    return comparison;
}

}  // namespace bolthole
