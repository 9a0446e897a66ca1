// The clock of a played launch.
#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <QTimer>

namespace bolthole {

/// Runs a time from 0 to an end, as fast as asked for, and stops there. The time follows the clock on the
/// wall, not the number of pictures: a slow machine shows fewer of them.
class FilmPlayer : public QObject {
    Q_OBJECT
  public:
    explicit FilmPlayer(QObject* parent = nullptr);

    /// How long it plays, s. The time stays where it is, or at the new end.
    void setEnd(double end);
    [[nodiscard]] double end() const { return end_; }
    [[nodiscard]] double time() const { return time_; }
    [[nodiscard]] bool isPlaying() const { return ticks_.isActive(); }
    /// Seconds of film a second.
    [[nodiscard]] double speed() const { return speed_; }
    void setSpeed(double speed);
    /// Goes to a time, clamped; while it plays it goes on from there.
    void seek(double time);
    /// From the time it stands at, from 0 where that is the end. Nothing where it is kept still.
    void play();
    void pause();
    void toggle() { isPlaying() ? pause() : play(); }
    /// Whether nothing may move by itself: then it is gone through by hand.
    void keepStill(bool still);
    [[nodiscard]] bool isKeptStill() const { return still_; }

  signals:
    void timeChanged(double time);
    void playingChanged(bool playing);
    void stillChanged(bool still);

  private:
    void tick();
    void restart();

    QTimer ticks_;
    QElapsedTimer wall_;
    double from_ = 0;  // the time at which wall_ was started
    double time_ = 0;
    double end_ = 0;
    double speed_ = 0.25;
    bool still_ = false;
};

}  // namespace bolthole
