// Computes every hole choice off the window's thread, on all cores, shown as they come.
#pragma once

#include <memory>
#include <vector>

#include "geometry/choices/choice_figures.h"
#include "widgets/kit/job_runner.h"

namespace bolthole {

/// One job at a time. Starting another, or cancel(), drops the one under way: none of its choices arrive any
/// more.
class ChoiceRunner : public QObject {
    Q_OBJECT
  public:
    explicit ChoiceRunner(QObject* parent = nullptr);

    /// What to compute. The car must have passed findFaults() and, for `uppers`, have an upper rod.
    struct Question {
        std::shared_ptr<const Car> car;
        LengthTreatment lengths = LengthTreatment::keep;
        ChoiceScope scope;
    };
    /// Starts computing. `aside`: a drag is under way, so the threads take only what time nobody else wants.
    void start(const Question& question, bool aside);
    void cancel() { jobs_.cancel(); }
    [[nodiscard]] bool isRunning() const { return jobs_.isRunning(); }

  signals:
    /// Some choices are there; in no particular order. `last`: none follow.
    void arrived(const std::vector<bolthole::HoleChoice>& choices, bool last);

  private:
    struct Running;
    void work(Running& running, const Job& job);

    JobRunner jobs_;
};

}  // namespace bolthole
