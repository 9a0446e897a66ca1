// Keeps the page for a target and the mark in the side view supplied with answers.
#pragma once

#include <QObject>
#include <memory>

#include "geometry/search/target_search.h"
#include "widgets/kit/job_runner.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

struct BoardState;
class TargetMark;
class TargetPage;

/// Between one window's car, the page and the mark. Searches off the window's thread, once the car has
/// settled; a change cancels what is under way.
class TargetController : public QObject {
    Q_OBJECT
  public:
    /// All must outlive the controller. `board`: the hole combinations already computed, for the line beside
    /// the mark.
    TargetController(BenchState& bench, const BoardState& board, TargetPage& page, TargetMark& mark,
                     QObject* parent);

    /// The car on the bench changed, or another was opened.
    void carChanged();
    /// Whether answers are waited for.
    [[nodiscard]] bool isRunning() const { return jobs_.isRunning(); }
    [[nodiscard]] const std::shared_ptr<const TargetAnswers>& answers() const { return answers_; }

  signals:
    void edited(const bolthole::Edit& edit, bolthole::EditPhase phase);

  private:
    void showMark(bool on);
    void placeMark();
    void moveMark(const Eigen::Vector2d& at, bool done);
    [[nodiscard]] TargetWindow windowAt(const Eigen::Vector2d& onGround) const;
    [[nodiscard]] QString nearestInWords(const Eigen::Vector2d& onGround) const;
    void search();
    void start();
    void take(const std::shared_ptr<const TargetAnswers>& answers);

    BenchState& bench_;
    const BoardState& board_;
    TargetPage& page_;
    TargetMark& mark_;
    std::shared_ptr<const Car> askedCar_;  // that the answers are of, or will be
    LengthTreatment askedLengths_ = LengthTreatment::keep;
    std::shared_ptr<const TargetAnswers> answers_;
    JobRunner jobs_;
};

}  // namespace bolthole
