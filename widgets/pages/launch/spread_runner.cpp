#include "widgets/pages/launch/spread_runner.h"

#include <atomic>
#include <optional>
#include <utility>

namespace bolthole {

namespace {

constexpr int kSettling = 120;  // ms

}  // namespace

struct SpreadRunner::Running {
    std::shared_ptr<const LaunchFilm> film;
    std::shared_ptr<const LaunchFilm> before;
    quint64 job = 0;
    std::atomic<bool> cancelled = false;
};

SpreadRunner::SpreadRunner(QObject* parent) : QObject(parent) {
    wait_.setSingleShot(true);
    wait_.setInterval(kSettling);
    pool_.setMaxThreadCount(1);
    connect(&wait_, &QTimer::timeout, this, &SpreadRunner::draw);
    connect(this, &SpreadRunner::drawn, this, &SpreadRunner::take, Qt::QueuedConnection);
}

SpreadRunner::~SpreadRunner() {
    cancel();
    pool_.waitForDone();
}

void SpreadRunner::start(std::shared_ptr<const LaunchFilm> film, std::shared_ptr<const LaunchFilm> before) {
    cancel();
    running_ = std::make_shared<Running>();
    running_->film = std::move(film);
    running_->before = std::move(before);
    running_->job = ++lastJob_;
    wait_.start();
}

void SpreadRunner::cancel() {
    wait_.stop();
    if (running_) {
        running_->cancelled = true;
        running_.reset();
    }
}

void SpreadRunner::draw() {
    pool_.start([this, running = running_] {
        const LaunchFilm& film = *running->film;
        const std::vector<LaunchError> errors = drawLaunchErrors(kDraws, cgHeightUncertainty(film.car));
        const std::optional<LaunchSpreads> spreads =
            drawLaunchSpreads(film.inputs, running->before ? &running->before->inputs : nullptr, errors,
                              [running] { return running->cancelled.load(); });
        if (spreads) {
            emit drawn(std::make_shared<LaunchSpreads>(*spreads), running->job, QPrivateSignal());
        }
    });
}

void SpreadRunner::take(const std::shared_ptr<LaunchSpreads>& spreads, quint64 job) {
    if (running_ && running_->job == job) {
        running_.reset();
        emit arrived(*spreads);
    }
}

}  // namespace bolthole
