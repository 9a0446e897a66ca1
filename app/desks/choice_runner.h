// Computes every hole choice off the window's thread, on all cores, shown as they come.
#pragma once

#include <QObject>
#include <QThreadPool>
#include <atomic>
#include <cstdint>
#include <memory>
#include <vector>

#include "geometry/choices/choice_figures.h"

namespace bolthole {

struct ChoicePortion;

/// One job at a time. Starting another, or cancel(), drops the one under way: none of its choices arrive any
/// more.
class ChoiceRunner : public QObject {
    Q_OBJECT
  public:
    explicit ChoiceRunner(QObject* parent = nullptr);
    /// Waits for the threads, which stop at their next choice.
    ~ChoiceRunner() override;

    /// What to compute. The car must have passed findFaults() and, for `uppers`, have an upper rod.
    struct Job {
        std::shared_ptr<const Car> car;
        LengthTreatment lengths = LengthTreatment::keep;
        ChoiceScope scope;
    };
    /// Starts computing. `aside`: a drag is under way, so the threads take only what time nobody else wants.
    void start(const Job& job, bool aside);
    void cancel();
    [[nodiscard]] bool isRunning() const { return running_ != nullptr; }

  signals:
    /// Some choices are there; in no particular order. `last`: none follow.
    void arrived(const std::vector<bolthole::HoleChoice>& choices, bool last);
    /// From a thread of the pool to the window's.
    void solved(const std::shared_ptr<bolthole::ChoicePortion>& portion, QPrivateSignal);

  private:
    struct Running;
    friend struct ChoicePortion;
    void work(const std::shared_ptr<Running>& running);
    void take(const std::shared_ptr<ChoicePortion>& portion);

    std::shared_ptr<Running> running_;
    QThreadPool pool_;
    QThreadPool asidePool_;
};

}  // namespace bolthole
