#include "app/controllers/combination_uncertainty_runner.h"

#include <algorithm>
#include <atomic>
#include <cstdint>
#include <utility>

namespace bolthole {

namespace {

constexpr std::uint64_t kPortion = 64;
constexpr std::uint64_t kThreads = 2;

}  // namespace

// What the threads of one job share.
struct CombinationUncertaintyRunner::Running {
    Running(std::shared_ptr<const Car> asked, LengthTreatment treatment, const CombinationScope& scope)
        : car(std::move(asked)), lengths(treatment), space(*car, scope) {}

    std::shared_ptr<const Car> car;
    LengthTreatment lengths;
    CombinationSpace space;
    std::atomic<std::uint64_t> next = 0;  // first combination nobody has taken on yet
    std::uint64_t arrivedCount = 0;       // the window's thread alone
};

CombinationUncertaintyRunner::CombinationUncertaintyRunner(QObject* parent) : QObject(parent) {}

void CombinationUncertaintyRunner::start(std::shared_ptr<const Car> car, LengthTreatment lengths,
                                         const CombinationScope& scope) {
    const auto running = std::make_shared<Running>(std::move(car), lengths, scope);
    const std::uint64_t portions = (running->space.count() + kPortion - 1) / kPortion;
    jobs_.start([this, running](const Job& job) { work(*running, job); },
                {.workers = static_cast<int>(std::min(portions, kThreads))});
}

// On a thread of the pool.
void CombinationUncertaintyRunner::work(Running& running, const Job& job) {
    const CombinationUncertaintySolver uncertaintySolver(*running.car, running.lengths);
    const std::uint64_t count = running.space.count();
    for (std::uint64_t first = running.next.fetch_add(kPortion); first < count;
         first = running.next.fetch_add(kPortion)) {
        std::vector<CombinationUncertainty> uncertainties;
        for (std::uint64_t index = first; index < std::min(count, first + kPortion); ++index) {
            if (job.isCancelled()) {
                return;
            }
            uncertainties.push_back(uncertaintySolver.solve(running.space.at(index)));
        }
        job.answer([this, &running, first, uncertainties = std::move(uncertainties)] {
            running.arrivedCount += uncertainties.size();
            emit arrived(first, uncertainties, running.arrivedCount == running.space.count());
        });
    }
}

}  // namespace bolthole
