#include "app/desks/choice_spread_runner.h"

#include <QThread>
#include <algorithm>
#include <atomic>
#include <utility>

namespace bolthole {

namespace {

constexpr std::uint64_t kPortion = 64;
constexpr int kThreads = 2;

}  // namespace

struct ChoiceSpreadRunner::Running {
    Running(std::shared_ptr<const Car> asked, LengthTreatment treatment, const ChoiceScope& scope)
        : car(std::move(asked)), lengths(treatment), space(*car, scope) {}

    std::shared_ptr<const Car> car;
    LengthTreatment lengths;
    ChoiceSpace space;
    std::atomic<bool> cancelled = false;
    std::atomic<std::uint64_t> next = 0;  // first choice nobody has taken on yet
    std::uint64_t arrivedCount = 0;       // the window's thread alone
};

/// Some choices of a job.
struct SpreadPortion {
    std::shared_ptr<ChoiceSpreadRunner::Running> running;
    std::uint64_t first = 0;
    std::vector<ChoiceSpread> spreads;
};

ChoiceSpreadRunner::ChoiceSpreadRunner(QObject* parent) : QObject(parent) {
    connect(this, &ChoiceSpreadRunner::solved, this, &ChoiceSpreadRunner::take, Qt::QueuedConnection);
    pool_.setMaxThreadCount(kThreads);
}

ChoiceSpreadRunner::~ChoiceSpreadRunner() {
    cancel();
    pool_.waitForDone();
}

void ChoiceSpreadRunner::start(std::shared_ptr<const Car> car, LengthTreatment lengths,
                               const ChoiceScope& scope) {
    cancel();
    running_ = std::make_shared<Running>(std::move(car), lengths, scope);
    const std::uint64_t portions = (running_->space.count() + kPortion - 1) / kPortion;
    const int threads = static_cast<int>(std::min<std::uint64_t>(portions, kThreads));
    for (int thread = 0; thread < threads; ++thread) {
        pool_.start([this, running = running_] { work(running); });
    }
}

void ChoiceSpreadRunner::cancel() {
    if (running_) {
        running_->cancelled = true;
        running_.reset();
        pool_.clear();
    }
}

// On a thread of the pool.
void ChoiceSpreadRunner::work(const std::shared_ptr<Running>& running) {
    if (running->cancelled) {
        return;
    }
    const ChoiceSpreader spreader(*running->car, running->lengths);
    const std::uint64_t count = running->space.count();
    while (true) {
        const std::uint64_t first = running->next.fetch_add(kPortion);
        if (first >= count) {
            return;
        }
        auto portion = std::make_shared<SpreadPortion>(SpreadPortion{running, first, {}});
        for (std::uint64_t index = first; index < std::min(count, first + kPortion); ++index) {
            if (running->cancelled) {
                return;
            }
            portion->spreads.push_back(spreader.solve(running->space.at(index)));
        }
        emit solved(portion, QPrivateSignal());
    }
}

void ChoiceSpreadRunner::take(const std::shared_ptr<SpreadPortion>& portion) {
    if (portion->running != running_) {
        return;  // of a job dropped since
    }
    running_->arrivedCount += portion->spreads.size();
    const bool last = running_->arrivedCount == running_->space.count();
    if (last) {
        running_.reset();
    }
    emit arrived(portion->first, portion->spreads, last);
}

}  // namespace bolthole
