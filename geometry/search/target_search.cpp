#include "geometry/search/target_search.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <tuple>

#include "geometry/search/target_chance.h"
#include "geometry/units/parallel.h"
#include "geometry/units/say.h"

namespace bolthole {

namespace {

constexpr std::uint64_t kPortion = 64;

/// Sides that belong together are bolted together, unless they are bolted unlike now.
CombinationSpace spaceOf(const Car& car) {
    CombinationSpace tied(car, {.tieSides = true});
    return tied.present() ? tied : CombinationSpace(car, {});
}

class Searcher {
  public:
    Searcher(const Car& car, const TargetSearch& search)
        : car_(car), search_(search), limits_(limitsOf(*car.target)), space_(spaceOf(car)) {}

    TargetAnswers run() {
        answers_.total = space_.count();
        answers_.tooMany = space_.count() > kManyCombinations;
        if (!answers_.tooMany) {
            solveCombinations();
            sortCombinations();
        }
        addPlaces();
        std::vector<std::function<void()>> rest = placeJobs();
        for (TargetAnswer& answer : answers_.meeting) {
            rest.push_back([this, &answer] { judge(answer); });
        }
        share(
            rest.size(), [&rest](std::size_t job) { rest[job](); }, 0.5);
        sortPlaces();
        answers_.complete = !isCancelled();
        return std::move(answers_);
    }

  private:
    [[nodiscard]] bool isCancelled() const { return search_.isCancelled && search_.isCancelled(); }

    /// Does jobs 0 to count - 1 on all threads; they stand for half of the progress.
    void share(std::size_t count, const std::function<void(std::size_t)>& job, double from) {
        std::atomic<std::size_t> next = 0;
        inParallel(search_.threads, [&] {
            for (std::size_t index = next++; index < count && !isCancelled(); index = next++) {
                job(index);
                if (search_.progress) {
                    search_.progress(from +
                                     0.5 * static_cast<double>(index + 1) / static_cast<double>(count));
                }
            }
        });
    }

    void solveCombinations() {
        combinations_.resize(space_.count());
        const std::size_t portions = (space_.count() + kPortion - 1) / kPortion;
        share(
            portions, [this](std::size_t portion) { solvePortion(portion); }, 0);
    }
    void solvePortion(std::uint64_t portion) {
        CombinationSolver solver(car_, search_.lengths);
        const std::uint64_t end = std::min((portion + 1) * kPortion, space_.count());
        for (std::uint64_t index = portion * kPortion; index < end && !isCancelled(); ++index) {
            solver.solve(space_.at(index), combinations_[index]);
            combinations_[index].index = index;
        }
    }
    void sortCombinations() {
        std::vector<TargetAnswer> missing;
        for (const std::size_t at : rankCombinations(combinations_, std::nullopt)) {
            TargetAnswer answer{combinations_[at], missesOf(targetFiguresOf(combinations_[at]), limits_)};
            (answer.misses.empty() ? answers_.meeting : missing).push_back(std::move(answer));
        }
        std::erase_if(missing, [](const TargetAnswer& answer) { return !answer.combination.assembled; });
        answers_.met = answers_.meeting.size();
        std::stable_partition(answers_.meeting.begin(), answers_.meeting.end(),
                              [](const TargetAnswer& answer) { return answer.combination.problems == 0; });
        answers_.meeting.resize(std::min(answers_.meeting.size(), kMostMeeting));
        std::ranges::stable_sort(missing, std::less(), [this](const TargetAnswer& answer) {
            return missSize(targetFiguresOf(answer.combination), limits_);
        });
        missing.resize(std::min(missing.size(), kMostNearest));
        answers_.nearest = std::move(missing);
    }
    void judge(TargetAnswer& answer) const {
        answer.chance =
            ChanceJudge(car_, limits_)
                .chanceOf(car_, search_.lengths, answer.combination.use,
                          targetFiguresOf(answer.combination)[static_cast<std::size_t>(TargetFigure::joint)]);
    }

    /// Room for every plate and adjuster; of two links that are drilled together the first stands for both.
    void addPlaces() {
        for (int link = 0; link < static_cast<int>(car_.links.size()); ++link) {
            const Link& each = car_.links[static_cast<std::size_t>(link)];
            const std::vector<int> drilled = linksToDrill(car_, link);
            const bool isFirst = std::ranges::min(drilled) == link;
            for (const End end : {End::chassis, End::axle}) {
                if (isFirst && each.bracket(end).plate) {
                    answers_.holes.emplace_back();
                    answers_.holes.back().edit.link = link;
                    answers_.holes.back().edit.end = end;
                }
            }
            if (each.kind == LinkKind::rod && each.adjuster) {
                answers_.lengths.emplace_back();
                answers_.lengths.back().link = link;
            }
        }
    }
    std::vector<std::function<void()>> placeJobs() {
        std::vector<std::function<void()>> jobs;
        for (NewHole& hole : answers_.holes) {
            jobs.emplace_back([this, &hole] {
                hole = searchHole(car_, hole.edit.link, hole.edit.end, search_.lengths, limits_);
            });
        }
        for (NewLength& length : answers_.lengths) {
            jobs.emplace_back([this, &length] { length = searchLength(car_, length.link, limits_); });
        }
        return jobs;
    }
    void sortPlaces() {
        const auto bySize = [this](const TargetAnswer& answer) {
            return missSize(targetFiguresOf(answer.combination), limits_);
        };
        std::ranges::stable_sort(answers_.holes, [&](const NewHole& one, const NewHole& other) {
            const auto key = [&](const NewHole& hole) {
                const double miss = bySize(hole.answer);
                return std::tuple(!hole.hasRoom, miss, hole.answer.combination.boltsMoved, hole.moved);
            };
            return key(one) < key(other);
        });
        std::ranges::stable_sort(answers_.lengths, [&](const NewLength& one, const NewLength& other) {
            return std::pair(bySize(one.answer), std::abs(one.change)) <
                   std::pair(bySize(other.answer), std::abs(other.change));
        });
    }

    const Car& car_;
    const TargetSearch& search_;
    TargetLimits limits_;
    CombinationSpace space_;
    std::vector<HoleCombination> combinations_;
    TargetAnswers answers_;
};

std::string refuseSearch(const Car& car, LengthTreatment lengths) {
    if (!car.target) {
        return say("no target is set for this car yet");
    }
    if (lengths == LengthTreatment::uppers && !hasUpperRod(car)) {
        return say("this car has no upper link to refit; expected keep or refit");
    }
    if (!solveStation(car, 0).usable) {
        return say("the links can't be assembled at ride as they are bolted");
    }
    return {};
}

}  // namespace

TargetAnswers searchTarget(const Car& car, const TargetSearch& search) {
    TargetAnswers answers;
    answers.problem = refuseSearch(car, search.lengths);
    return answers.problem.empty() ? Searcher(car, search).run() : answers;
}

}  // namespace bolthole
