// Keeps "what to try next" and "for how much power" supplied with answers.
#pragma once

#include <QObject>
#include <QThreadPool>
#include <QTimer>
#include <functional>
#include <memory>

#include "geometry/trials/launch_trials.h"
#include "geometry/trials/power_map.h"
#include "widgets/state/bench_state.h"

class QWidget;

namespace bolthole {

class PowerMapView;
class TrialsPanel;

/// Between one window's car, the panel and the map. Computes off the window's thread once the car has
/// settled, never in a drag, and only for what is seen; a change of the car cancels what is under way, and
/// the latest car wins. What goes wrong on the other thread becomes a message.
class TrialDesk : public QObject {
    Q_OBJECT
  public:
    /// All must outlive the desk.
    TrialDesk(const BenchState& bench, TrialsPanel& panel, PowerMapView& powers, QObject* parent);
    /// Waits for the thread, which stops at its next launch.
    ~TrialDesk() override;

    /// The car on the bench changed, or another was opened.
    void carChanged(bool isDragging);
    /// Whether answers are waited for.
    [[nodiscard]] bool isRunning() const { return trials_.running != nullptr || powers_.running != nullptr; }
    /// What came of it, of the car as it stands; null while it is not there.
    [[nodiscard]] const std::shared_ptr<const LaunchTrials>& trials() const { return trials_.answer; }
    [[nodiscard]] const std::shared_ptr<const PowerMap>& powers() const { return powers_.answer; }

  signals:
    void edited(const bolthole::Edit& edit, bolthole::EditPhase phase);
    /// A changed car's launch is to be seen beside the car's own.
    void launchWanted(const std::shared_ptr<const bolthole::Car>& car, const QString& name);
    /// From the pool's thread to the window's: something to be done there.
    void reported(const std::function<void()>& what, QPrivateSignal);

  private:
    struct Running;
    /// One of the two questions: what is seen of it, what is under way and what came of it.
    template <class Answer>
    struct Question {
        bool isSeen = false;
        std::shared_ptr<Running> running;
        std::shared_ptr<const Answer> answer;
    };

    void ask();
    void start();
    void see(bool& isSeen, bool now);
    void cancel();
    [[nodiscard]] bool isSameCar() const;
    void showAnswers();
    template <class Answer, class View, class Compute>
    void run(Question<Answer>& question, View& view, const Compute& compute);
    template <class Answer, class View>
    void stop(Question<Answer>& question, View& view);

    const BenchState& bench_;
    TrialsPanel& panel_;
    PowerMapView& map_;
    std::shared_ptr<const Car> car_;  // the answers are of, or will be
    Question<LaunchTrials> trials_;
    Question<PowerMap> powers_;
    bool isDragging_ = false;
    QTimer wait_;
    QThreadPool pool_;
};

/// What a window joins in: both views, which whoever shows them takes over, and the desk between them and
/// `bench`, owned by `window`. The window connects edited() and launchWanted() and says carChanged().
struct TrialParts {
    TrialsPanel* panel = nullptr;
    PowerMapView* powers = nullptr;
    TrialDesk* desk = nullptr;
};
[[nodiscard]] TrialParts makeTrialParts(const BenchState& bench, QWidget* window);

}  // namespace bolthole
