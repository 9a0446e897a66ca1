// Launches of setups under the same draws of what is not known, and how two setups differ by them.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "geometry/dynamics/launch_run.h"
#include "geometry/trials/launch_errors.h"

namespace bolthole {

/// Half the last digit of a time slip, s: nobody can tell times that close apart. Common practice, no source.
inline constexpr double kSameTimes = 0.0005;

/// The figures of one setup: as entered, then of every draw. Those of a launch that did not end as it should
/// are absent.
struct SetupRuns {
    LaunchEnd end = LaunchEnd::notRun;  ///< of the launch as entered
    LaunchFigures entered{};
    std::vector<LaunchFigures> drawn{};
};

/// How a figure differs between two setups, + more. Absent: one of the two has none.
struct TrialFigure {
    std::optional<double> change = std::nullopt;
    /// Standard, from paired draws; absent where fewer than two draws have the figure both ways.
    std::optional<double> uncertainty = std::nullopt;
    /// Between which 95 of 100 draws lie; they need not lie alike to either side of the change as entered.
    std::optional<double> low = std::nullopt;
    std::optional<double> high = std::nullopt;
};

using FigureOf = std::optional<double> LaunchFigures::*;

/// `after` minus `before`, as entered, and its standard uncertainty from the draws both have.
[[nodiscard]] TrialFigure compared(const SetupRuns& before, const SetupRuns& after, FigureOf figure);

/// That `after` has the shorter 60 ft, 0 to 1: the part of the draws in which it does, times that nobody can
/// tell apart half (JCGM 101:2008, cl. 7). A draw in which only one of the two gets there counts for that
/// one.
[[nodiscard]] double chanceOfGain(const SetupRuns& before, const SetupRuns& after);

/// Whether the two 60 ft can be told apart: their difference as entered is more than kSameTimes, and 95 of
/// 100 draws lie on its side of none; or some of them at none, where it is more than what stands after its ±,
/// too; or only one of the two gets there.
[[nodiscard]] bool canTellApart(const SetupRuns& one, const SetupRuns& other);

/// Launches one setup after the other with a simulator of its own: one a thread.
class PairedLauncher {
  public:
    /// Rows are kept `every` s of the launch as entered; `errors` must outlive the launcher.
    PairedLauncher(const std::vector<LaunchError>& errors, double every) : errors_(errors), every_(every) {}

    /// The launch as entered; its rows and events are in present() until the next call.
    void launchEntered(const LaunchInputs& inputs, SetupRuns& runs);
    /// Every draw; gives up, with fewer draws than errors, once `isCancelled` says so.
    void launchDrawn(const LaunchInputs& inputs, const std::function<bool()>& isCancelled, SetupRuns& runs);
    [[nodiscard]] const LaunchRun& present() const { return run_; }

  private:
    const std::vector<LaunchError>& errors_;
    double every_;
    LaunchSimulator simulator_;
    LaunchRun run_;
};

}  // namespace bolthole
