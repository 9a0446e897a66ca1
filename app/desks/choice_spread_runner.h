// Computes how sure hole choices are, on other threads than the window's.
#pragma once

#include <QObject>
#include <QThreadPool>
#include <memory>
#include <vector>

#include "geometry/uncertainty/choice_spread.h"

namespace bolthole {

struct SpreadPortion;

/// One job at a time. Starting another, or cancel(), drops the one under way: nothing of it arrives any more.
class ChoiceSpreadRunner : public QObject {
    Q_OBJECT
  public:
    explicit ChoiceSpreadRunner(QObject* parent = nullptr);
    /// Waits for the threads, which stop at their next choice.
    ~ChoiceSpreadRunner() override;

    /// Computes every choice of the space. The car must have passed findFaults() and, for `uppers`, have an
    /// upper rod.
    void start(std::shared_ptr<const Car> car, LengthTreatment lengths, const ChoiceScope& scope);
    void cancel();
    [[nodiscard]] bool isRunning() const { return running_ != nullptr; }

  signals:
    /// Those of the choices from index `first` on are there; portions come in any order. `last`: none follow.
    void arrived(quint64 first, const std::vector<bolthole::ChoiceSpread>& spreads, bool last);
    /// From a thread of the pool to the window's.
    void solved(const std::shared_ptr<bolthole::SpreadPortion>& portion, QPrivateSignal);

  private:
    struct Running;
    friend struct SpreadPortion;
    void work(const std::shared_ptr<Running>& running);
    void take(const std::shared_ptr<SpreadPortion>& portion);

    std::shared_ptr<Running> running_;
    QThreadPool pool_;
};

}  // namespace bolthole
