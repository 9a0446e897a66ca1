// Keeps the card of what the passes taught supplied: fits off the window's thread, once the car has settled.
#pragma once

#include <memory>

#include "geometry/fit/launch_fit.h"
#include "widgets/kit/job_runner.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

class FitCard;

/// Between one window's car and the card. A hidden card is given nothing to wait for; a change that touches
/// the fit cancels what is under way, and only the latest arrives.
class FitController : public QObject {
    Q_OBJECT
  public:
    /// Both must outlive the controller.
    FitController(const BenchState& bench, FitCard& card, QObject* parent);

    /// The car on the bench changed, or another was opened. Nothing is begun while it is dragged.
    void carChanged(bool isDragging = false);
    /// Fits the car as it stands though the card is not seen: another page wants to say what came of it.
    void fitAnyway();
    /// Whether a fit is waited for.
    [[nodiscard]] bool isRunning() const { return jobs_.isRunning(); }
    /// What is shown; null while nothing is.
    [[nodiscard]] const std::shared_ptr<const LaunchFit>& fit() const { return fit_; }

  signals:
    void edited(const bolthole::Edit& edit, bolthole::EditPhase phase);
    /// There is another fit, done or not.
    void fitted();

  private:
    void fitIfSeen();
    void start();
    void giveUp();
    void take(const std::shared_ptr<const LaunchFit>& fit);

    const BenchState& bench_;
    FitCard& card_;
    bool isTarget_ = false;                // although it is not seen
    std::shared_ptr<const Car> askedCar_;  // that the fit is of, or will be
    std::shared_ptr<const LaunchFit> fit_;
    JobRunner jobs_;
};

}  // namespace bolthole
