// Computes every hole combination off the window's thread, on all cores, shown as they come.
#pragma once

#include <memory>
#include <vector>

#include "geometry/combinations/combination_figures.h"
#include "widgets/kit/job_runner.h"

namespace bolthole {

/// One job at a time. Starting another, or cancel(), drops the one under way: none of its combinations arrive
/// any more.
class CombinationRunner : public QObject {
    Q_OBJECT
  public:
    explicit CombinationRunner(QObject* parent = nullptr);

    /// What to compute. The car must have passed findFaults() and, for `uppers`, have an upper rod.
    struct Question {
        std::shared_ptr<const Car> car;
        LengthTreatment lengths = LengthTreatment::keep;
        CombinationScope scope;
    };
    /// Starts computing. `aside`: a drag is under way, so the threads take only what time nobody else wants.
    void start(const Question& question, bool aside);
    void cancel() { jobs_.cancel(); }
    [[nodiscard]] bool isRunning() const { return jobs_.isRunning(); }

  signals:
    /// Some combinations are there; in no particular order. `last`: none follow.
    void arrived(const std::vector<bolthole::HoleCombination>& combinations, bool last);

  private:
    struct Running;
    void work(Running& running, const Job& job);

    JobRunner jobs_;
};

}  // namespace bolthole
