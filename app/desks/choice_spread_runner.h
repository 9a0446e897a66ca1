// Computes how sure hole choices are, on other threads than the window's.
#pragma once

#include <memory>
#include <vector>

#include "geometry/uncertainty/choice_spread.h"
#include "widgets/kit/job_runner.h"

namespace bolthole {

/// One job at a time. Starting another, or cancel(), drops the one under way: nothing of it arrives any more.
class ChoiceSpreadRunner : public QObject {
    Q_OBJECT
  public:
    explicit ChoiceSpreadRunner(QObject* parent = nullptr);

    /// Computes every choice of the space. The car must have passed findFaults() and, for `uppers`, have an
    /// upper rod.
    void start(std::shared_ptr<const Car> car, LengthTreatment lengths, const ChoiceScope& scope);
    void cancel() { jobs_.cancel(); }
    [[nodiscard]] bool isRunning() const { return jobs_.isRunning(); }

  signals:
    /// Those of the choices from index `first` on are there; portions come in any order. `last`: none follow.
    void arrived(quint64 first, const std::vector<bolthole::ChoiceSpread>& spreads, bool last);

  private:
    struct Running;
    void work(Running& running, const Job& job);

    JobRunner jobs_;
};

}  // namespace bolthole
