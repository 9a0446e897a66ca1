// What each hole combination comes to: its figures at ride and through travel, the work it takes, and its
// problems.
#pragma once

#include <array>
#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "geometry/combinations/hole_combination.h"
#include "geometry/kinematics/trace.h"

namespace bolthole {

inline constexpr double kAbsent = std::numeric_limits<double>::quiet_NaN();

/// What can be wrong with a combination.
enum class CombinationProblem : std::uint8_t {
    notAssembled,  ///< the links can't be assembled at ride
    droopRunsOut,  ///< the links do not reach full droop
    bumpRunsOut,   ///< the links do not reach full bump
    frontJoint,    ///< the driveshaft's front joint passes its entered limit in travel
    rearJoint,     ///< the rear joint does
    rodEnd,        ///< a rod end leans past its entered limit in travel
    tooShort,      ///< a rod's length is below what its adjuster can be set to
    tooLong,       ///< above
    thread,        ///< too little thread stays held
    crossing,      ///< two rods pass through each other, or nearly, in travel
    count
};
inline constexpr std::size_t kCombinationProblems = static_cast<std::size_t>(CombinationProblem::count);

/// Two rods whose centerlines come closer than this between their ends are said to cross, m. About a tube's
/// thickness; a judgement, common practice, no source.
inline constexpr double kCrossingDistance = 0.025;

/// A length change below this is no adjustment, m.
inline constexpr double kNoAdjustment = 5e-5;
/// Whether a tape tells two lengths of a rod apart, m: they differ by more than kCoverage95 times the tape's
/// standard uncertainty, the car's own or the default. Nobody sets a rod closer.
[[nodiscard]] bool tapeTells(const Car& car, double one, double other);

/// One combination, computed. SI: m, rad; percent for anti-squat. NaN: does not exist. "Now" is the car as it
/// stands, with the lengths it has.
struct HoleCombination {
    HoleUse use;
    std::uint64_t index = 0;  ///< in its CombinationSpace
    bool assembled = false;   ///< false: only the use and the lengths stand

    FigureRow ride = emptyRow();  ///< every figure at ride
    double antiSquatDroop = kAbsent;
    double antiSquatBump = kAbsent;
    double pinionDroop = kAbsent;
    double pinionBump = kAbsent;
    double pinionChange =
        kAbsent;  ///< housing's attitude at ride against now, nose up +; without a driveline too
    double axleShift = kAbsent;        ///< axle center's fore-aft place at ride against now, forward +
    double worstFrontJoint = kAbsent;  ///< largest in travel
    double worstRearJoint = kAbsent;
    double worstRodEnd = kAbsent;  ///< largest lean of any rod end in travel; see rodEndLean()
    int worstRodEndLink = -1;

    std::array<double, kMaxLinks> length{};        ///< each rod's; NaN for what is no rod
    std::array<double, kMaxLinks> lengthChange{};  ///< against what it is built to now

    int boltsMoved = 0;       ///< every bolt that changes its hole, both sides counted
    int adjustersTurned = 0;  ///< every rod whose adjuster is turned, both sides counted
    int newRods = 0;          ///< every rod that needs another length and has no adjuster, both sides counted

    std::uint16_t problems = 0;  ///< a bit each CombinationProblem
    /// To each problem the link at fault, or -1, for a crossing the other one, and what was reached: the
    /// travel it ran out at (m), the angle (rad), the length or thread (m), the distance (m).
    struct Detail {
        std::int8_t link = -1;
        std::int8_t other = -1;
        float value = std::numeric_limits<float>::quiet_NaN();
    };
    std::array<Detail, kCombinationProblems> details{};

    [[nodiscard]] double operator[](Figure figure) const { return ride[static_cast<std::size_t>(figure)]; }
    [[nodiscard]] bool has(CombinationProblem problem) const {
        return (problems >> static_cast<unsigned>(problem) & 1U) != 0;
    }
};

/// Where the car stands now: what changes are measured against.
struct CombinationBase {
    bool known = false;  ///< false: the car as it stands can't be assembled; then changes are NaN
    AxlePose pose;
    double pinion = kAbsent;
    double ground = kAbsent;
    HoleUse use;
};

/// Computes combinations one after another. Each thread has one of its own. Allocates nothing after the first
/// combination.
class CombinationSolver {
  public:
    /// The car must have passed findFaults() and, for `uppers`, have an upper rod.
    CombinationSolver(const Car& car, LengthTreatment treatment);

    /// Computes the combination of those holes over the car's whole travel.
    void solve(const HoleUse& use, HoleCombination& combination);

    /// The trace of the last combination solved, meaningful where it could be assembled, and the car bolted
    /// to it (every rod's length written).
    [[nodiscard]] const Trace& trace() const { return trace_; }
    [[nodiscard]] const Car& car() const { return bolted_.car(); }

  private:
    void countWork(HoleCombination& combination) const;
    void checkAdjuster(std::size_t link, HoleCombination& combination) const;
    void readRide(HoleCombination& combination) const;
    void readTravel(HoleCombination& combination) const;
    void checkLimits(HoleCombination& combination) const;
    void sweepRods(HoleCombination& combination) const;
    void placeBolts();

    BoltedCar bolted_;
    CombinationBase base_;
    Trace trace_;
    std::vector<Eigen::Vector3d> bolts_;  // unit, along the bolt; one a constraint, in the linkage's order
};

/// How far a rod leans out of the plane square to its bolt, rad, 0 to pi/2. `along`: the rod's direction, any
/// length; `bolt`: unit. A bolt is taken to lie level and, in plan, square to the line between the middles of
/// the link's two brackets; common practice, no source.
[[nodiscard]] double rodEndLean(const Eigen::Vector3d& along, const Eigen::Vector3d& bolt);

/// Where two lines come closest: the distance, and whether both points lie between the ends.
struct Approach {
    double distance = std::numeric_limits<double>::infinity();
    bool betweenEnds = false;
};
/// Of the lines a0-a1 and b0-b1, m. Parallel ones have no such point.
[[nodiscard]] Approach approachOf(const Eigen::Vector3d& a0, const Eigen::Vector3d& a1,
                                  const Eigen::Vector3d& b0, const Eigen::Vector3d& b1);

/// Turns of the adjuster for a change of length, + longer: change / (pitch x threaded ends). With one
/// threaded end the end is taken off and turned in halves, so the turns are rounded to halves.
[[nodiscard]] double adjusterTurns(double lengthChange, const Adjuster& adjuster);
/// The thread held in each end at `length`, m; nothing if no engagement is entered.
[[nodiscard]] std::optional<double> engagementAt(const Link& rod, double length);

/// The problems in words, joined by "; ", lengths in `units`; empty if there are none.
[[nodiscard]] std::string describeProblems(const HoleCombination& combination, const Car& car, Units units);

/// "top / high": the names of the holes in use of those brackets that have more than one, chassis before
/// axle, links in order.
[[nodiscard]] std::string holeNames(const HoleUse& use, const Car& car);

/// Whether a combination lies in the window of distance and anti-squat, edges included. Without an instant
/// center at finite distance 1/distance is 0; without either distance in the window any will do.
[[nodiscard]] bool meetsTarget(const HoleCombination& combination, const TargetWindow& target);

/// 1/distance of a combination's instant center, 1/m: 0 at infinity, negative behind the rear contact patch.
[[nodiscard]] double inverseDistance(const HoleCombination& combination);

/// The order combinations are offered in, as indices into `combinations`: what lies in the target window
/// first, then the least change of pinion angle (to a tenth of a degree), the fewest bolts moved, the fewest
/// adjusters turned, the table's own order. What can't be assembled comes last.
[[nodiscard]] std::vector<std::size_t> rankCombinations(std::span<const HoleCombination> combinations,
                                                        const std::optional<TargetWindow>& target);

}  // namespace bolthole
