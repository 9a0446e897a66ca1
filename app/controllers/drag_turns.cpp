#include "app/controllers/drag_turns.h"

namespace bolthole {

namespace {

constexpr int kRest = 40;  // ms; longer than a step of a hand that moves on, too short to be seen waiting

}  // namespace

DragTurns::DragTurns(std::vector<Follower> followers, QObject* parent)
    : QObject(parent), followers_(std::move(followers)) {
    rest_.setSingleShot(true);
    rest_.setInterval(kRest);
    connect(&rest_, &QTimer::timeout, this, &DragTurns::showAll);
}

void DragTurns::step() {
    followers_[next_]();
    next_ = (next_ + 1) % followers_.size();
    rest_.start();
}

void DragTurns::showAll() {
    rest_.stop();
    for (const Follower& follower : followers_) {
        follower();
    }
}

}  // namespace bolthole
