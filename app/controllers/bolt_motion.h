// The way of a bolt to another hole, seen: the links and the instant center travel there instead of jumping.
#pragma once

#include <QObject>
#include <QVariantAnimation>
#include <array>
#include <string>
#include <vector>

#include "widgets/state/bench_state.h"

namespace bolthole {

class ViewDeck;

/// Shows the views cars between the one that stood there and the one that does, for kMotion; all else of the
/// window shows the new car at once. A drag, a press in a view and the next change end it. Never runs where
/// pictures are kept still.
class BoltMotion : public QObject {
    Q_OBJECT
  public:
    static constexpr int kMotion = 150;  // ms

    /// `bench` and `views` must outlive it.
    BoltMotion(const BenchState& bench, ViewDeck& views, QObject* parent);

    void keepStill(bool still);
    /// Call before the bench's car changes: remembers where its bolts are.
    void carWillChange(bool isDragging);
    /// Call when the views show the new car: goes there from what was remembered, where bolts alone moved.
    void carChanged();
    [[nodiscard]] bool isRunning() const { return clock_.state() == QAbstractAnimation::Running; }

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    /// Where a link's bolts are, chassis first, m, and how long it is.
    struct Bolted {
        std::string name;
        std::array<std::size_t, 2> holes{};  // in its brackets
        std::array<int, 2> use{};
        std::array<Eigen::Vector3d, 2> at{};
        double length = 0;
    };
    [[nodiscard]] static std::vector<Bolted> boltsOf(const Car& car);
    [[nodiscard]] bool isAnotherHole(const std::vector<Bolted>& now) const;
    void show(double share);
    void end();

    const BenchState& bench_;
    ViewDeck& views_;
    std::vector<Bolted> from_;  // empty: nothing to come from
    std::vector<Bolted> to_;
    BenchState between_;
    QVariantAnimation clock_;
    bool still_ = false;
};

}  // namespace bolthole
