#include "app/controllers/fit_controller.h"

#include "widgets/fit/fit_card.h"

namespace bolthole {

namespace {

constexpr int kFitDelay = 250;  // ms

// Whether two cars differ in nothing that a fit depends on.
bool isSameSeason(const Car& one, const Car& other) {
    return one.passes == other.passes && one.kept == other.kept && one.launch == other.launch &&
           one.wheelRates == other.wheelRates && one.springs == other.springs &&
           one.uncertainties == other.uncertainties && one.cornerWeights == other.cornerWeights;
}

}  // namespace

FitController::FitController(const BenchState& bench, FitCard& card, QObject* parent)
    : QObject(parent), bench_(bench), card_(card) {
    connect(&jobs_, &JobRunner::progressed, &card, &FitCard::showProgress);
    connect(&jobs_, &JobRunner::failed, this, [this](const QString& reason) {
        fit_.reset();
        card_.showNothing(reason);
        emit fitted();
    });
    connect(&card, &FitCard::seen, this, &FitController::fitIfSeen);
    connect(&card, &FitCard::cancelRequested, this, &FitController::giveUp);
    connect(&card, &FitCard::fitRequested, this, [this] {
        askedCar_.reset();
        fitIfSeen();
    });
    connect(&card, &FitCard::edited, this, [this](const Edit& edit) { emit edited(edit, EditPhase::whole); });
}

void FitController::fitAnyway() {
    isTarget_ = true;
    fitIfSeen();
}

void FitController::carChanged(bool isDragging) {
    isTarget_ = false;
    if (!isDragging) {
        fitIfSeen();
    }
}

void FitController::fitIfSeen() {
    if ((!card_.isVisible() && !isTarget_) || (askedCar_ && isSameSeason(*askedCar_, bench_.car))) {
        return;
    }
    jobs_.cancel();
    askedCar_ = std::make_shared<const Car>(bench_.car);
    if (!bench_.faults.empty()) {
        fit_.reset();
        card_.showNothing(tr("The car has a fault that is to be mended first."));
        return;
    }
    card_.showProgress(0);
    start();
}

void FitController::start() {
    jobs_.start(
        [this, car = askedCar_](const Job& job) {
            LaunchFitOptions options{.threads = jobThreads()};
            options.isCancelled = [job] { return job.isCancelled(); };
            options.progress = [job](double share) { job.report(share); };
            const auto fit = std::make_shared<const LaunchFit>(fitLaunch(*car, options));
            job.answer([this, fit] { take(fit); });
        },
        {.delay = kFitDelay});
}

void FitController::giveUp() {
    jobs_.cancel();
    card_.showCancelled();
}

void FitController::take(const std::shared_ptr<const LaunchFit>& fit) {
    fit_ = fit;
    card_.showFit(fit_, *askedCar_);
    emit fitted();
}

}  // namespace bolthole
