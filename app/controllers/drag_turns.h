// Who follows a drag when: what is not under the hand takes turns, so that a step stays short.
#pragma once

#include <QObject>
#include <QTimer>
#include <functional>
#include <vector>

namespace bolthole {

/// Turns of the followers of a drag. Each step shows one of them; whoever was passed over is shown once the
/// hand has rested for a moment, so that none stays behind.
class DragTurns : public QObject {
    Q_OBJECT
  public:
    using Follower = std::function<void()>;

    /// In the order of their turns, at least one. What they use must outlive this.
    DragTurns(std::vector<Follower> followers, QObject* parent);

    /// The car was dragged on a step: the follower whose turn it is shows it.
    void step();
    /// Shows all of them now: the drag is over, or there is no need for turns.
    void showAll();

  private:
    std::vector<Follower> followers_;
    std::size_t next_ = 0;
    QTimer rest_;
};

}  // namespace bolthole
