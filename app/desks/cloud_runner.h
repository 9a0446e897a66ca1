// Draws the instant center's cloud off the window's thread, once the car has settled.
#pragma once

#include <QObject>
#include <QThreadPool>
#include <QTimer>
#include <memory>

#include "geometry/uncertainty/ic_cloud.h"

namespace bolthole {

/// One cloud at a time. Starting another, or cancel(), drops the one under way: it never arrives.
class CloudRunner : public QObject {
    Q_OBJECT
  public:
    explicit CloudRunner(QObject* parent = nullptr);
    /// Waits for the thread, which stops at its next samples.
    ~CloudRunner() override;

    /// Draws the car's cloud after a moment in which nothing else was started: keys held down change a car
    /// faster than clouds are drawn. The same car gives the same cloud. It must have passed findFaults().
    void start(std::shared_ptr<const Car> car);
    void cancel();
    /// Whether a cloud is waited for.
    [[nodiscard]] bool isRunning() const { return running_ != nullptr; }

  signals:
    /// The cloud is there. Not emitted where the car can't be assembled.
    void arrived(const std::shared_ptr<const bolthole::IcCloud>& cloud);
    /// From the pool's thread to the window's.
    void drawn(const std::shared_ptr<bolthole::IcCloud>& cloud, quint64 job, QPrivateSignal);

  private:
    struct Running;
    void draw();
    void take(const std::shared_ptr<IcCloud>& cloud, quint64 job);

    std::shared_ptr<Running> running_;
    quint64 lastJob_ = 0;
    QTimer wait_;
    QThreadPool pool_;
};

}  // namespace bolthole
