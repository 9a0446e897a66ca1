// Draws how sure a launch's figures are, off the window's thread, once the car has settled.
#pragma once

#include <memory>

#include "geometry/trials/launch_spread.h"
#include "widgets/kit/job_runner.h"
#include "widgets/pages/launch/launch_film.h"

namespace bolthole {

/// One job at a time. Starting another, or cancel(), drops the one under way: it never arrives.
class SpreadRunner : public QObject {
    Q_OBJECT
  public:
    static constexpr std::size_t kDraws = 60;
    explicit SpreadRunner(QObject* parent = nullptr);

    /// Draws after a moment in which nothing else was started. `before` may be null.
    void start(std::shared_ptr<const LaunchFilm> film, std::shared_ptr<const LaunchFilm> before);
    void cancel() { jobs_.cancel(); }
    [[nodiscard]] bool isRunning() const { return jobs_.isRunning(); }

  signals:
    void arrived(const bolthole::LaunchSpreads& spreads);

  private:
    JobRunner jobs_;
};

}  // namespace bolthole
