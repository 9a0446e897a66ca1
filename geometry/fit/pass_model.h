// The sixty-foot times of a season by the launch model, as a fit asks for them.
#pragma once

#include <atomic>
#include <functional>
#include <optional>
#include <vector>

#include "geometry/fit/robust_fit.h"
#include "geometry/fit/season.h"

namespace bolthole {

/// Launches a season's passes with any numbers, each launch once for all passes that share it.
class PassModel : public FitModel {
  public:
    /// `season` must outlive it. `isCancelled` is asked from any thread, `launched` told after each bunch how
    /// many launches it was.
    PassModel(const Season& season, int threads, std::function<bool()> isCancelled,
              std::function<void(long)> launched);

    [[nodiscard]] Eigen::Index unknowns() const override;
    /// s, a pass each. A launch that does not get there takes kMostTime.
    bool predict(const Eigen::VectorXd& unknowns, Eigen::VectorXd& predicted) override;
    /// Central differences kStep to either side; to one side where the other does not get there, 0 where
    /// neither does.
    bool slopes(const Eigen::VectorXd& unknowns, Eigen::MatrixXd& slopes) override;
    /// The same with steps of `reach`, kStep at least.
    bool slopesOver(const Eigen::VectorXd& unknowns, const Eigen::VectorXd& reach,
                    Eigen::MatrixXd& slopes) override;

    /// Of each of the season's launches, its time with unknowns of its own, absent where it does not get
    /// there. False: given up.
    [[nodiscard]] bool launchEach(const std::vector<std::size_t>& launches,
                                  const std::vector<Eigen::VectorXd>& unknowns,
                                  std::vector<std::optional<double>>& times);

  private:
    /// Step of a difference in prior uncertainties. A launch repeats to about 1e-6 s: a smaller step would
    /// let that show in numbers that hardly matter, a larger one the curvature.
    static constexpr double kStep = 0.1;

    [[nodiscard]] LaunchInputs inputsAt(std::size_t launch, const Eigen::VectorXd& unknowns) const;

    const Season& season_;
    int threads_;
    std::function<bool()> isCancelled_;
    std::function<void(long)> launched_;
    Eigen::VectorXd last_;                          // where times_ are for
    std::vector<std::optional<double>> lastTimes_;  // a launch each
};

}  // namespace bolthole
