#include "app/controllers/combination_runner.h"

#include <algorithm>
#include <atomic>
#include <cstdint>
#include <tuple>
#include <utility>

#include "geometry/combinations/present_combination.h"

namespace bolthole {

namespace {

// The first portions are small, so that something shows soon; later ones spare messages between threads.
constexpr std::uint64_t kFirstPortion = 16;
constexpr std::uint64_t kLargestPortion = 512;

}  // namespace

// What the threads of one job share.
struct CombinationRunner::Running {
    explicit Running(const Question& asked) : question(asked), space(*asked.car, asked.scope) {}

    Question question;
    CombinationSpace space;
    std::atomic<std::uint64_t> next = 0;  // first combination nobody has taken on yet
    std::uint64_t arrivedCount = 0;       // the window's thread alone

    // Takes on the next portion: its first combination and how many; none are left at 0.
    std::pair<std::uint64_t, std::uint64_t> takePortion() {
        std::uint64_t first = next.load();
        while (first < space.count()) {
            const std::uint64_t size =
                std::min({space.count() - first, std::max(kFirstPortion, first / 2), kLargestPortion});
            if (next.compare_exchange_weak(first, first + size)) {
                return {first, size};
            }
        }
        return {first, 0};
    }
};

CombinationRunner::CombinationRunner(QObject* parent) : QObject(parent) {}

void CombinationRunner::start(const Question& question, bool aside) {
    const auto running = std::make_shared<Running>(question);
    const std::uint64_t portions = (running->space.count() + kFirstPortion - 1) / kFirstPortion;
    const auto cores = static_cast<std::uint64_t>(jobThreads());
    jobs_.start([this, running](const Job& job) { work(*running, job); },
                {.workers = static_cast<int>(std::min(portions, cores)), .aside = aside});
}

// On a thread of the pool.
void CombinationRunner::work(Running& running, const Job& job) {
    CombinationSolver solver(*running.question.car, running.question.lengths);
    for (auto [first, size] = running.takePortion(); size > 0;
         std::tie(first, size) = running.takePortion()) {
        std::vector<HoleCombination> combinations(size);
        for (std::uint64_t offset = 0; offset < size; ++offset) {
            if (job.isCancelled()) {
                return;
            }
            HoleCombination& combination = combinations[offset];
            const std::uint64_t index = first + offset;
            if (running.space.present() == index) {
                combination = combinationAsItStands(
                    *running.question.car);  // no treatment: nothing is done to get there
            } else {
                solver.solve(running.space.at(index), combination);
            }
            combination.index = index;
        }
        job.answer([this, &running, combinations = std::move(combinations)] {
            running.arrivedCount += combinations.size();
            emit arrived(combinations, running.arrivedCount == running.space.count());
        });
    }
}

}  // namespace bolthole
