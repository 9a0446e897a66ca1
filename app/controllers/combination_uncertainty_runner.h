// Computes the uncertainty of hole combinations, on other threads than the window's.
#pragma once

#include <memory>
#include <vector>

#include "geometry/uncertainty/combination_uncertainty.h"
#include "widgets/kit/job_runner.h"

namespace bolthole {

/// One job at a time. Starting another, or cancel(), drops the one under way: nothing of it arrives any more.
class CombinationUncertaintyRunner : public QObject {
    Q_OBJECT
  public:
    explicit CombinationUncertaintyRunner(QObject* parent = nullptr);

    /// Computes every combination of the space. The car must have passed findFaults() and, for `uppers`, have
    /// an upper rod.
    void start(std::shared_ptr<const Car> car, LengthTreatment lengths, const CombinationScope& scope);
    void cancel() { jobs_.cancel(); }
    [[nodiscard]] bool isRunning() const { return jobs_.isRunning(); }

  signals:
    /// Those of the combinations from index `first` on are there; portions come in any order. `last`: none
    /// follow.
    void arrived(quint64 first, const std::vector<bolthole::CombinationUncertainty>& uncertainties,
                 bool last);

  private:
    struct Running;
    void work(Running& running, const Job& job);

    JobRunner jobs_;
};

}  // namespace bolthole
