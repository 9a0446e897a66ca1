// Draws how sure a launch's figures are, off the window's thread, once the car has settled.
#pragma once

#include <QObject>
#include <QThreadPool>
#include <QTimer>
#include <memory>

#include "geometry/trials/launch_spread.h"
#include "widgets/pages/launch/launch_film.h"

namespace bolthole {

/// One job at a time. Starting another, or cancel(), drops the one under way: it never arrives.
class SpreadRunner : public QObject {
    Q_OBJECT
  public:
    static constexpr std::size_t kDraws = 60;
    explicit SpreadRunner(QObject* parent = nullptr);
    /// Waits for the thread, which stops at its next launch.
    ~SpreadRunner() override;

    /// Draws after a moment in which nothing else was started. `before` may be null.
    void start(std::shared_ptr<const LaunchFilm> film, std::shared_ptr<const LaunchFilm> before);
    void cancel();
    [[nodiscard]] bool isRunning() const { return running_ != nullptr; }

  signals:
    void arrived(const bolthole::LaunchSpreads& spreads);
    /// From the pool's thread to the window's.
    void drawn(const std::shared_ptr<bolthole::LaunchSpreads>& spreads, quint64 job, QPrivateSignal);

  private:
    struct Running;
    void draw();
    void take(const std::shared_ptr<LaunchSpreads>& spreads, quint64 job);

    std::shared_ptr<Running> running_;
    quint64 lastJob_ = 0;
    QTimer wait_;
    QThreadPool pool_;
};

}  // namespace bolthole
