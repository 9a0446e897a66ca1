#include "app/desks/trial_desk.h"

#include <QThread>
#include <algorithm>
#include <atomic>
#include <exception>
#include <utility>

#include "widgets/trials/power_map_view.h"
#include "widgets/trials/trials_panel.h"

namespace bolthole {

namespace {

constexpr int kTrialSettling = 250;  // ms

int trialThreads() {
    return std::max(1, QThread::idealThreadCount());
}

}  // namespace

struct TrialDesk::Running {
    std::atomic<bool> cancelled = false;
};

TrialDesk::TrialDesk(const BenchState& bench, TrialsPanel& panel, PowerMapView& powers, QObject* parent)
    : QObject(parent), bench_(bench), panel_(panel), map_(powers) {
    wait_.setSingleShot(true);
    wait_.setInterval(kTrialSettling);
    pool_.setMaxThreadCount(1);  // a question shares itself out among threads
    connect(&wait_, &QTimer::timeout, this, &TrialDesk::start);
    connect(
        this, &TrialDesk::reported, this, [](const std::function<void()>& what) { what(); },
        Qt::QueuedConnection);
    connect(&panel, &TrialsPanel::seen, this, [this](bool now) { see(trials_.isSeen, now); });
    connect(&powers, &PowerMapView::seen, this, [this](bool now) { see(powers_.isSeen, now); });
    connect(&panel, &TrialsPanel::wanted, this, &TrialDesk::start);
    connect(&powers, &PowerMapView::wanted, this, &TrialDesk::start);
    connect(&panel, &TrialsPanel::cancelled, this, [this] { stop(trials_, panel_); });
    connect(&powers, &PowerMapView::cancelled, this, [this] { stop(powers_, map_); });
    connect(&panel, &TrialsPanel::launchWanted, this, &TrialDesk::launchWanted);
    const auto change = [this](const Edit& edit) { emit edited(edit, EditPhase::whole); };
    connect(&panel, &TrialsPanel::edited, this, change);
    connect(&powers, &PowerMapView::boltWanted, this, change);
}

TrialDesk::~TrialDesk() {
    cancel();
    pool_.waitForDone();
}

void TrialDesk::carChanged(bool isDragging) {
    isDragging_ = isDragging;
    if (!isDragging && isSameCar()) {
        showAnswers();  // in other units, perhaps
        return;
    }
    cancel();
    car_.reset();
    trials_.answer.reset();
    powers_.answer.reset();
    ask();
}

void TrialDesk::see(bool& isSeen, bool now) {
    isSeen = now;
    if (now) {
        ask();
    }
}

// Whether the car differs from the one asked about in nothing that the answers depend on.
bool TrialDesk::isSameCar() const {
    if (!car_ || !bench_.traceIsCurrent) {
        return false;
    }
    Car now = withoutKept(bench_.car);
    now.title = car_->title;
    now.notes = car_->notes;
    now.units = car_->units;
    return now == *car_;
}

void TrialDesk::ask() {
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
    }
    showAnswers();
    wait_.start();
}

void TrialDesk::showAnswers() {
    const Units units = bench_.style.units;
    if (trials_.answer) {
        panel_.showTrials(trials_.answer, car_, units);
    }
    if (powers_.answer) {
        map_.showMap(powers_.answer, car_, units);
    }
}

void TrialDesk::start() {
    if (!car_) {
        return;
    }
    run(trials_, panel_, [car = car_](const TrialOptions& how) { return tryChanges(*car, how); });
    run(powers_, map_, [car = car_](const TrialOptions& how) {
        return mapPower(*car,
                        {.threads = how.threads, .isCancelled = how.isCancelled, .progress = how.progress});
    });
}

// Computes on the pool's thread and shows it here, unless it was cancelled meanwhile.
template <class Answer, class View, class Compute>
void TrialDesk::run(Question<Answer>& question, View& view, const Compute& compute) {
    if (!question.isSeen || question.answer || question.running) {
        return;
    }
    question.running = std::make_shared<Running>();
    view.showProgress(0);
    const auto report = [this, &question, running = question.running](const std::function<void()>& what) {
        emit reported(
            [&question, running, what] {
                if (question.running == running) {
                    what();
                }
            },
            QPrivateSignal());
    };
    pool_.start([this, &question, &view, compute, report, running = question.running] {
        TrialOptions how{.threads = trialThreads()};
        how.isCancelled = [running] { return running->cancelled.load(); };
        how.progress = [&view, report](double share) {
            report([&view, share] { view.showProgress(share); });
        };
        try {
            auto answer = std::make_shared<const Answer>(compute(how));
            report([this, &question, answer] {
                question.running.reset();
                question.answer = answer;
                showAnswers();
            });
        } catch (const std::exception& failure) {
            const QString why = tr("This could not be computed: %1").arg(QString::fromUtf8(failure.what()));
            report([&question, &view, why] {
                question.running.reset();
                view.showMessage(why);
            });
        }
    });
}

template <class Answer, class View>
void TrialDesk::stop(Question<Answer>& question, View& view) {
    if (question.running) {
        question.running->cancelled = true;
        question.running.reset();
    }
    view.showStopped();
}

void TrialDesk::cancel() {
    wait_.stop();
    for (std::shared_ptr<Running>* running : {&trials_.running, &powers_.running}) {
        if (*running) {
            (*running)->cancelled = true;
            running->reset();
        }
    }
}

TrialParts makeTrialParts(const BenchState& bench, QWidget* window) {
    TrialParts parts{.panel = new TrialsPanel(window), .powers = new PowerMapView(window)};
    parts.desk = new TrialDesk(bench, *parts.panel, *parts.powers, window);
    return parts;
}

}  // namespace bolthole
