#include "app/desks/choice_runner.h"

#include <QThread>
#include <algorithm>
#include <utility>

#include "geometry/choices/present_choice.h"

namespace bolthole {

namespace {

// The first portions are small, so that something shows soon; later ones spare messages between threads.
constexpr std::uint64_t kFirstPortion = 16;
constexpr std::uint64_t kLargestPortion = 512;

}  // namespace

struct ChoiceRunner::Running {
    Running(const Job& asked, const ChoiceSpace& whole) : job(asked), space(whole) {}

    Job job;
    ChoiceSpace space;
    std::atomic<bool> cancelled = false;
    std::atomic<std::uint64_t> next = 0;  // first choice nobody has taken on yet
    std::uint64_t arrivedCount = 0;       // the window's thread alone

    // Takes on the next portion: its first choice and how many; none are left at 0.
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

/// Some choices of a job.
struct ChoicePortion {
    std::shared_ptr<ChoiceRunner::Running> running;
    std::vector<HoleChoice> choices;
};

ChoiceRunner::ChoiceRunner(QObject* parent) : QObject(parent) {
    connect(this, &ChoiceRunner::solved, this, &ChoiceRunner::take, Qt::QueuedConnection);
    asidePool_.setThreadPriority(QThread::IdlePriority);
    asidePool_.setMaxThreadCount(std::max(1, QThread::idealThreadCount() - 1));  // one core is the drag's own
}

ChoiceRunner::~ChoiceRunner() {
    cancel();
    pool_.waitForDone();
    asidePool_.waitForDone();
}

void ChoiceRunner::start(const Job& job, bool aside) {
    cancel();
    running_ = std::make_shared<Running>(job, ChoiceSpace(*job.car, job.scope));
    QThreadPool& pool = aside ? asidePool_ : pool_;
    const std::uint64_t portions = (running_->space.count() + kFirstPortion - 1) / kFirstPortion;
    const int threads = static_cast<int>(
        std::min<std::uint64_t>(portions, static_cast<std::uint64_t>(pool.maxThreadCount())));
    for (int thread = 0; thread < threads; ++thread) {
        pool.start([this, running = running_] { work(running); });
    }
}

void ChoiceRunner::cancel() {
    if (running_) {
        running_->cancelled = true;
        running_.reset();
        pool_.clear();
        asidePool_.clear();
    }
}

// On a thread of the pool.
void ChoiceRunner::work(const std::shared_ptr<Running>& running) {
    if (running->cancelled) {
        return;
    }
    ChoiceSolver solver(*running->job.car, running->job.lengths);
    while (true) {
        const auto [first, size] = running->takePortion();
        if (size == 0) {
            return;
        }
        auto portion = std::make_shared<ChoicePortion>(ChoicePortion{running, std::vector<HoleChoice>(size)});
        for (std::uint64_t offset = 0; offset < size; ++offset) {
            if (running->cancelled) {
                return;
            }
            HoleChoice& choice = portion->choices[offset];
            const std::uint64_t index = first + offset;
            if (running->space.present() == index) {
                choice = choiceAsItStands(*running->job.car);  // no treatment: nothing is done to get there
            } else {
                solver.solve(running->space.at(index), choice);
            }
            choice.index = index;
        }
        emit solved(portion, QPrivateSignal());
    }
}

void ChoiceRunner::take(const std::shared_ptr<ChoicePortion>& portion) {
    if (portion->running != running_) {
        return;  // of a job dropped since
    }
    running_->arrivedCount += portion->choices.size();
    const bool last = running_->arrivedCount == running_->space.count();
    if (last) {
        running_.reset();
    }
    emit arrived(portion->choices, last);
}

}  // namespace bolthole
