#include "app/controllers/trial_controller.h"

#include "widgets/trials/power_map_view.h"
#include "widgets/trials/trials_panel.h"

namespace bolthole {

namespace {

constexpr int kTrialDelay = 250;  // ms

}  // namespace

TrialController::TrialController(const BenchState& bench, TrialsPanel& panel, PowerMapView& powers,
                                 QObject* parent)
    : QObject(parent), bench_(bench), panel_(panel), map_(powers) {
    wait_.setSingleShot(true);
    wait_.setInterval(kTrialDelay);
    connect(&wait_, &QTimer::timeout, this, &TrialController::start);
    join(trials_, panel);
    join(powers_, powers);
    connect(&panel, &TrialsPanel::launchRequested, this, &TrialController::launchRequested);
    const auto change = [this](const Edit& edit) { emit edited(edit, EditPhase::whole); };
    connect(&panel, &TrialsPanel::edited, this, change);
    connect(&powers, &PowerMapView::boltRequested, this, change);
}

// What both views say, and what comes of their questions.
template <class Answer, class View>
void TrialController::join(Question<Answer>& question, View& view) {
    connect(&view, &View::seen, this, [this, &question](bool now) { see(question.isSeen, now); });
    connect(&view, &View::requested, this, [this, &question] {
        question.isStopped = false;
        start();
    });
    connect(&view, &View::cancelled, this, [this, &question, &view] {
        question.isStopped = true;
        question.jobs.cancel();
        view.showStopped();
        start();
    });
    connect(&question.jobs, &JobRunner::progressed, &view, &View::showProgress);
    connect(&question.jobs, &JobRunner::finished, this, [this] {
        showAnswers();
        start();
    });
    connect(&question.jobs, &JobRunner::failed, this, [this, &question, &view](const QString& reason) {
        question.isStopped = true;
        view.showMessage(reason);
        start();
    });
}

void TrialController::carChanged(bool isDragging) {
    isDragging_ = isDragging;
    if (!isDragging && isSameCar()) {
        showAnswers();  // in other units, perhaps
        return;
    }
    wait_.stop();
    car_.reset();
    forget(trials_);
    forget(powers_);
    ask();
}

void TrialController::see(bool& isSeen, bool now) {
    isSeen = now;
    if (now) {
        ask();
    }
}

// Whether the car differs from the one asked about in nothing that the answers depend on.
bool TrialController::isSameCar() const {
    if (!car_ || !bench_.traceIsCurrent || lengths_ != bench_.lengths()) {
        return false;
    }
    Car now = withoutKept(bench_.car);
    now.title = car_->title;
    now.notes = car_->notes;
    now.units = car_->units;
    return now == *car_;
}

void TrialController::ask() {
    if (isDragging_ || (!trials_.isSeen && !powers_.isSeen)) {
        return;
    }
    if (!bench_.traceIsCurrent) {
        const QString why = QString::fromStdString(bench_.problem);
        panel_.showMessage(why);
        map_.showMessage(why);
        return;
    }
    if (!car_) {
        car_ = std::make_shared<const Car>(withoutKept(bench_.car));
        lengths_ = bench_.lengths();
    }
    showAnswers();
    wait_.start();
}

void TrialController::showAnswers() {
    const Units units = bench_.style.units;
    if (trials_.answer) {
        panel_.showTrials(trials_.answer, car_, units);
        emit tried();
    }
    if (powers_.answer) {
        map_.showMap(powers_.answer, car_, units);
    }
}

// One question after the other: each shares itself out among all threads.
void TrialController::start() {
    if (!car_) {
        return;
    }
    if (trials_.isDue()) {
        panel_.showProgress(0);
    }
    if (powers_.isDue()) {
        map_.showProgress(0);
    }
    if (isRunning()) {
        return;
    }
    if (trials_.isDue()) {
        run(trials_, [car = car_, lengths = lengths_](TrialOptions how) {
            how.lengths = lengths;
            return tryChanges(*car, how);
        });
    } else if (powers_.isDue()) {
        run(powers_, [car = car_, lengths = lengths_](const TrialOptions& how) {
            return mapPower(*car, {.lengths = lengths,
                                   .threads = how.threads,
                                   .isCancelled = how.isCancelled,
                                   .progress = how.progress});
        });
    }
}

template <class Answer, class Compute>
void TrialController::run(Question<Answer>& question, const Compute& compute) {
    question.jobs.start([&question, compute](const Job& job) {
        TrialOptions how{.threads = jobThreads()};
        how.isCancelled = [job] { return job.isCancelled(); };
        how.progress = [job](double share) { job.report(share); };
        const auto answer = std::make_shared<const Answer>(compute(how));
        job.answer([&question, answer] { question.answer = answer; });
    });
}

template <class Answer>
void TrialController::forget(Question<Answer>& question) {
    question.jobs.cancel();
    question.answer.reset();
    question.isStopped = false;
}

TrialParts makeTrialParts(const BenchState& bench, QWidget* window) {
    TrialParts parts{.panel = new TrialsPanel(window), .powers = new PowerMapView(window)};
    parts.controller = new TrialController(bench, *parts.panel, *parts.powers, window);
    return parts;
}

}  // namespace bolthole
