// Draws the instant center's cloud off the window's thread, once the car has settled.
#pragma once

#include <memory>

#include "geometry/uncertainty/ic_cloud.h"
#include "widgets/kit/job_runner.h"

namespace bolthole {

/// One cloud at a time. Starting another, or cancel(), drops the one under way: it never arrives.
class CloudRunner : public QObject {
    Q_OBJECT
  public:
    explicit CloudRunner(QObject* parent = nullptr);

    /// Draws the car's cloud after a moment in which nothing else was started: keys held down change a car
    /// faster than clouds are drawn. The same car gives the same cloud. It must have passed findFaults().
    void start(std::shared_ptr<const Car> car);
    void cancel() { jobs_.cancel(); }
    /// Whether a cloud is waited for.
    [[nodiscard]] bool isRunning() const { return jobs_.isRunning(); }

  signals:
    /// The cloud is there. Not emitted where the car can't be assembled.
    void arrived(const std::shared_ptr<const bolthole::IcCloud>& cloud);

  private:
    JobRunner jobs_;
};

}  // namespace bolthole
