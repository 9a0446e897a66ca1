// The search for a target: what to bolt, drill or turn so that a car comes to it.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "geometry/edits/planned_hole.h"
#include "geometry/search/target_figures.h"

namespace bolthole {

/// What keeps a new hole or length from going farther.
struct TargetStop {
    enum class Kind { lowLimit, highLimit, edge, hole, shortest, longest };
    Kind kind = Kind::edge;
    TargetFigure figure = TargetFigure::count;  ///< of a limit
    int hole = -1;                              ///< the hole that is too near
};

/// A hole combination there is, or one there might be, against the target.
struct TargetAnswer {
    HoleCombination combination;     ///< its pinion and axle change against the car as it stands
    std::vector<TargetMiss> misses;  ///< empty: it meets everything
    double chance = kAbsent;         ///< that it really does, 0 to 1; NaN: not known, or it misses
};

/// One new hole in a plate that was entered; all other links stay as bolted.
struct NewHole {
    PlanHole edit;         ///< what makes it
    bool hasRoom = false;  ///< false: the plate takes no further hole, and the rest stands for nothing
    double moved = 0;      ///< m, from the hole in use, side view
    int nearest = -1;      ///< the hole of the bracket nearest to it
    TargetAnswer answer;
    std::vector<TargetStop> stops;  ///< all that binds there
};

/// A rod's adjuster turned; all holes stay as bolted and the other rods keep their lengths.
struct NewLength {
    int link = -1;
    double length = 0;  ///< m
    double change = 0;  ///< m, against what it is built to
    TargetAnswer answer;
    std::vector<TargetStop> stops;
};

/// All there is to say, least change first within each group.
struct TargetAnswers {
    bool complete = false;              ///< false: cancelled, or `problem` says why there is nothing
    std::string problem;                ///< in words
    std::uint64_t total = 0;            ///< hole combinations there are
    bool tooMany = false;               ///< more than kManyCombinations: none was computed
    std::uint64_t met = 0;              ///< how many of them meet everything
    std::vector<TargetAnswer> meeting;  ///< at most kMostMeeting, those without problems first
    std::vector<TargetAnswer> nearest;  ///< what misses least, at most kMostNearest
    std::vector<NewHole> holes;         ///< one for each plate, those that meet it first
    std::vector<NewLength> lengths;     ///< one for each adjuster, those that meet it first
};
inline constexpr std::size_t kMostMeeting = 24;
inline constexpr std::size_t kMostNearest = 5;

struct TargetSearch {
    LengthTreatment lengths = LengthTreatment::keep;  ///< `uppers` needs an upper rod
    int threads = 2;
    /// Asked now and then from any thread; true: give up.
    std::function<bool()> isCancelled{};
    /// Told now and then from any thread: 0 to 1.
    std::function<void(double)> progress{};
};

/// Searches. The car must have passed findFaults(). The same answers on any number of threads.
[[nodiscard]] TargetAnswers searchTarget(const Car& car, const TargetSearch& search);

/// The holes with which everything stays as bolted but one bracket's new hole; see PlanHole.
[[nodiscard]] NewHole searchHole(const Car& car, int link, End end, LengthTreatment lengths,
                                 const TargetLimits& limits);
/// The same for one rod's adjuster.
[[nodiscard]] NewLength searchLength(const Car& car, int link, const TargetLimits& limits);

}  // namespace bolthole
