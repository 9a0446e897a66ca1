#include "app/desks/fit_desk.h"

#include <QThread>
#include <algorithm>
#include <atomic>
#include <exception>
#include <utility>

#include "widgets/fit/fit_card.h"

namespace bolthole {

/// What a fit on the pool's thread came to.
struct FitOutcome {
    LaunchFit fit;
    QString problem;  ///< what was thrown; empty: nothing
};

struct FitDesk::Running {
    quint64 job = 0;
    std::shared_ptr<const Car> car;
    std::atomic<bool> cancelled = false;
};

namespace {

constexpr int kFitSettling = 250;  // ms

// Whether two cars differ in nothing that a fit depends on.
bool isSameSeason(const Car& one, const Car& other) {
    return one.passes == other.passes && one.kept == other.kept && one.launch == other.launch &&
           one.wheelRates == other.wheelRates && one.springs == other.springs &&
           one.spreads == other.spreads && one.cornerWeights == other.cornerWeights;
}

}  // namespace

FitDesk::FitDesk(const BenchState& bench, FitCard& card, QObject* parent)
    : QObject(parent), bench_(bench), card_(card) {
    wait_.setSingleShot(true);
    wait_.setInterval(kFitSettling);
    pool_.setMaxThreadCount(1);
    connect(&wait_, &QTimer::timeout, this, &FitDesk::start);
    connect(this, &FitDesk::found, this, &FitDesk::take, Qt::QueuedConnection);
    connect(
        this, &FitDesk::went, this,
        [this](double share, quint64 job) {
            if (running_ && running_->job == job) {
                card_.showProgress(share);
            }
        },
        Qt::QueuedConnection);
    connect(&card, &FitCard::seen, this, &FitDesk::fitIfSeen);
    connect(&card, &FitCard::cancelWanted, this, &FitDesk::giveUp);
    connect(&card, &FitCard::fitWanted, this, [this] {
        askedCar_.reset();
        fitIfSeen();
    });
    connect(&card, &FitCard::edited, this, [this](const Edit& edit) { emit edited(edit, EditPhase::whole); });
}

FitDesk::~FitDesk() {
    cancel();
    pool_.waitForDone();
}

void FitDesk::carChanged(bool isDragging) {
    if (!isDragging) {
        fitIfSeen();
    }
}

void FitDesk::fitIfSeen() {
    if (!card_.isVisible() || (askedCar_ && isSameSeason(*askedCar_, bench_.car))) {
        return;
    }
    cancel();
    askedCar_ = std::make_shared<const Car>(bench_.car);
    if (!bench_.faults.empty()) {
        fit_.reset();
        card_.showNothing(tr("The car has a fault that is to be mended first."));
        return;
    }
    running_ = std::make_shared<Running>();
    running_->job = ++lastJob_;
    running_->car = askedCar_;
    card_.showProgress(0);
    wait_.start();
}

void FitDesk::start() {
    pool_.start([this, running = running_] {
        auto outcome = std::make_shared<FitOutcome>();
        try {
            LaunchFitOptions options{.threads = std::max(1, QThread::idealThreadCount())};
            options.isCancelled = [running] { return running->cancelled.load(); };
            options.progress = [this, running](double share) {
                emit went(share, running->job, QPrivateSignal());
            };
            outcome->fit = fitLaunch(*running->car, options);
        } catch (const std::exception& thrown) {
            outcome->problem = QString::fromUtf8(thrown.what());
        }
        emit found(outcome, running->job, QPrivateSignal());
    });
}

void FitDesk::cancel() {
    wait_.stop();
    if (running_) {
        running_->cancelled = true;
        running_.reset();
    }
}

void FitDesk::giveUp() {
    cancel();
    card_.showCancelled();
}

void FitDesk::take(const std::shared_ptr<FitOutcome>& outcome, quint64 job) {
    if (!running_ || running_->job != job) {
        return;  // of a car changed since
    }
    running_.reset();
    if (outcome->problem.isEmpty()) {
        fit_ = std::make_shared<const LaunchFit>(std::move(outcome->fit));
        card_.showFit(fit_, *askedCar_);
    } else {
        fit_.reset();
        card_.showNothing(tr("The fit failed: %1").arg(outcome->problem));
    }
    emit fitted();
}

}  // namespace bolthole
