#include "widgets/pages/launch/film_player.h"

#include <algorithm>

namespace bolthole {

namespace {

constexpr int kFrame = 16;  // ms: 60 pictures a second
constexpr double kSecondsPerNanosecond = 1e-9;

}  // namespace

FilmPlayer::FilmPlayer(QObject* parent) : QObject(parent) {
    ticks_.setTimerType(Qt::PreciseTimer);
    ticks_.setInterval(kFrame);
    connect(&ticks_, &QTimer::timeout, this, &FilmPlayer::tick);
}

void FilmPlayer::setEnd(double end) {
    end_ = std::max(0.0, end);
    if (time_ > end_) {
        seek(end_);
    }
}

void FilmPlayer::setSpeed(double speed) {
    speed_ = speed;
    restart();
}

void FilmPlayer::seek(double time) {
    const double clamped = std::clamp(time, 0.0, end_);
    restart();
    from_ = clamped;
    if (clamped != time_) {
        time_ = clamped;
        emit timeChanged(time_);
    }
}

void FilmPlayer::play() {
    if (still_ || end_ <= 0 || isPlaying()) {
        return;
    }
    if (time_ >= end_) {
        seek(0);
    }
    ticks_.start();
    restart();
    emit playingChanged(true);
}

void FilmPlayer::pause() {
    if (isPlaying()) {
        ticks_.stop();
        emit playingChanged(false);
    }
}

void FilmPlayer::keepStill(bool still) {
    if (still_ == still) {
        return;
    }
    still_ = still;
    if (still) {
        pause();
    }
    emit stillChanged(still);
}

void FilmPlayer::restart() {
    from_ = time_;
    wall_.start();
}

void FilmPlayer::tick() {
    const double time = from_ + speed_ * kSecondsPerNanosecond * static_cast<double>(wall_.nsecsElapsed());
    time_ = std::min(time, end_);
    emit timeChanged(time_);
    if (time >= end_) {
        pause();
    }
}

}  // namespace bolthole
