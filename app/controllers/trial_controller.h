// Keeps "what to try next" and "for how much power" supplied with answers.
#pragma once

#include <QTimer>
#include <memory>

#include "geometry/trials/launch_trials.h"
#include "geometry/trials/power_map.h"
#include "widgets/kit/job_runner.h"
#include "widgets/state/bench_state.h"

class QWidget;

namespace bolthole {

class PowerMapView;
class TrialsPanel;

/// Between one window's car, the panel and the map. Computes off the window's thread once the car has
/// settled, never in a drag, and only for what is seen; a change of the car cancels what is under way, and
/// the latest car wins. What goes wrong on the other thread becomes a message.
class TrialController : public QObject {
    Q_OBJECT
  public:
    /// All must outlive the controller.
    TrialController(const BenchState& bench, TrialsPanel& panel, PowerMapView& powers, QObject* parent);

    /// The car on the bench changed, or what happens to its lengths, or another was opened.
    void carChanged(bool isDragging);
    /// Whether answers are waited for.
    [[nodiscard]] bool isRunning() const { return trials_.jobs.isRunning() || powers_.jobs.isRunning(); }
    /// What came of it, of the car as it stands; null while it is not there.
    [[nodiscard]] const std::shared_ptr<const LaunchTrials>& trials() const { return trials_.answer; }
    [[nodiscard]] const std::shared_ptr<const PowerMap>& powers() const { return powers_.answer; }

  signals:
    void edited(const bolthole::Edit& edit, bolthole::EditPhase phase);
    /// Every change was tried.
    void tried();
    /// A changed car's launch is to be seen beside the car's own.
    void launchRequested(const std::shared_ptr<const bolthole::Car>& car, const QString& name);

  private:
    /// One of the two questions: what is seen of it, what is under way and what came of it.
    template <class Answer>
    struct Question {
        bool isSeen = false;
        bool isStopped = false;  // by the person, until the car changes or it is asked for again
        std::shared_ptr<const Answer> answer{};
        JobRunner jobs{};

        [[nodiscard]] bool isDue() const { return isSeen && !isStopped && !answer && !jobs.isRunning(); }
    };

    void ask();
    void start();
    void see(bool& isSeen, bool now);
    [[nodiscard]] bool isSameCar() const;
    void showAnswers();
    template <class Answer, class View>
    void join(Question<Answer>& question, View& view);
    template <class Answer, class Compute>
    void run(Question<Answer>& question, const Compute& compute);
    template <class Answer>
    static void forget(Question<Answer>& question);

    const BenchState& bench_;
    TrialsPanel& panel_;
    PowerMapView& map_;
    std::shared_ptr<const Car> car_;                   // the answers are of, or will be
    LengthTreatment lengths_ = LengthTreatment::keep;  // and with these lengths in other holes
    Question<LaunchTrials> trials_;
    Question<PowerMap> powers_;
    bool isDragging_ = false;
    QTimer wait_;
};

/// What a window joins in: both views, which whoever shows them takes over, and the controller between them
/// and `bench`, owned by `window`. The window connects edited() and launchRequested() and says carChanged().
struct TrialParts {
    TrialsPanel* panel = nullptr;
    PowerMapView* powers = nullptr;
    TrialController* controller = nullptr;
};
[[nodiscard]] TrialParts makeTrialParts(const BenchState& bench, QWidget* window);

}  // namespace bolthole
