// Draws the uncertainty of a launch's figures, off the window's thread, once the car has settled.
#pragma once

#include <memory>

#include "geometry/trials/launch_uncertainty.h"
#include "widgets/kit/job_runner.h"
#include "widgets/pages/launch/launch_film.h"

namespace bolthole {

/// One job at a time. Starting another, or cancel(), drops the one under way: it never arrives.
class LaunchUncertaintyRunner : public QObject {
    Q_OBJECT
  public:
    static constexpr std::size_t kDraws = 60;
    explicit LaunchUncertaintyRunner(QObject* parent = nullptr);

    /// Draws after a moment in which nothing else was started. `baseline` may be null.
    void start(std::shared_ptr<const LaunchFilm> film, std::shared_ptr<const LaunchFilm> baseline);
    void cancel() { jobs_.cancel(); }
    [[nodiscard]] bool isRunning() const { return jobs_.isRunning(); }

  signals:
    void arrived(const bolthole::LaunchUncertainties& uncertainties);

  private:
    JobRunner jobs_;
};

}  // namespace bolthole
