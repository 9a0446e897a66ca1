// Springs, shocks, bump stops and straps through the travel: lengths, motion ratios, wheel rates, and what
// runs out first.
#pragma once

#include <cstddef>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "geometry/kinematics/trace.h"
#include "geometry/statics/suspension_part.h"
#include "geometry/weights/wheel_rates.h"

namespace bolthole {

/// One line at one travel. NaN where the links do not reach.
struct LineFigures {
    double length = std::numeric_limits<double>::quiet_NaN();  ///< m
    /// m it gets shorter for each m of travel, both wheels moving alike; + where bump shortens it. From the
    /// axle's rates, exact.
    double motionRatio = std::numeric_limits<double>::quiet_NaN();
    double force = std::numeric_limits<double>::quiet_NaN();  ///< N, + pushes the mounts apart
    /// What it adds to the axle's rate, N/m: d(force motionRatio)/d travel = k MR^2 + F dMR/dtravel, the
    /// second term from how the line leans over as it moves (from memory: W. F. Milliken, D. L. Milliken,
    /// Race Car Vehicle Dynamics, SAE 1995, ch. 16); a bump stop, whose axis stays, leans by nothing, so that
    /// its MR changes with the pad's path alone. Where it is loose k is 0 and F its push alone.
    double rate = std::numeric_limits<double>::quiet_NaN();
};

/// All parts through the travel.
struct SpringSweep {
    std::vector<PartLine> lines;
    std::vector<double> travel;        ///< m, a row a step, full droop first
    std::vector<LineFigures> figures;  ///< row by row, each in the order of `lines`

    [[nodiscard]] std::span<const LineFigures> row(std::size_t step) const {
        return std::span(figures).subspan(step * lines.size(), lines.size());
    }
    /// Rate of one wheel at a step, N/m, both wheels moving alike and rolling freely, tire left out: half of
    /// what all lines add to the axle's.
    [[nodiscard]] double wheelRate(std::size_t step) const;
};

/// Solves the car's whole travel, its parts with no refusal. The car must have passed findFaults(). Uses the
/// storage of `sweep` again: allocates nothing for each pose.
///
/// The slope of the motion ratio is the central difference of two exact motion ratios 0.1 mm to either side;
/// at the end of the links' reach one of them is the pose's own.
void computeSprings(const Car& car, std::span<const SuspensionPart> parts, SpringSweep& sweep);
[[nodiscard]] SpringSweep computeSprings(const Car& car, std::span<const SuspensionPart> parts);

/// The rear rates the parts make at `travel` (m), with the springs' geometric terms; `roll` from the axle
/// rolling against the chassis, its center kept at its height; absent where the links do not hold the axle in
/// roll. No bar, no tire. Nothing where the links do not reach or no spring pushes.
[[nodiscard]] std::optional<WheelRates> springRates(const Car& car, std::span<const SuspensionPart> parts,
                                                    double travel);

/// Each line at `travel` (m), in the order of buildPartLines(); NaN where the links do not reach.
[[nodiscard]] std::vector<LineFigures> lineFiguresAt(const Car& car, std::span<const SuspensionPart> parts,
                                                     double travel);

/// What lines push together at one travel, N on the axle, + lifts the body: the sum of force times motion
/// ratio, by virtual work in a motion of both wheels alike.
[[nodiscard]] double pushOf(std::span<const LineFigures> lines);

/// What the springs carry at ride against what the scales leave them.
struct SpringBalance {
    double carried = 0;  ///< N, pushOf() at ride
    double weighed = 0;  ///< N on the rear tires, by the corner weights
    std::optional<double> axle =
        std::nullopt;  ///< N that weigh on the tires alone, where the unsprung mass is entered

    /// What the springs have too much (+) or too little, N. Links do no work as both wheels move alike, so
    /// that the springs carry all but the axle: the two are equal on a car measured without error.
    [[nodiscard]] std::optional<double> excess() const {
        return axle ? std::optional(carried - (weighed - *axle)) : std::nullopt;
    }
    /// Whether something is entered wrong: more than the tires carry, or kWarningShare from what is left to
    /// them.
    [[nodiscard]] bool hasWarning() const;
};
/// Of the springs' load; rates and corner weights are seldom known better. A judgement, common practice, no
/// source.
inline constexpr double kWarningShare = 0.05;
[[nodiscard]] SpringBalance springBalance(const Car& car, double carried);

/// What ends a travel.
enum class TravelStop {
    range,   ///< nothing before the travel entered
    links,   ///< the links reach no further
    closed,  ///< a part is at its closed length
    open     ///< a part is at its open length
};
/// Where travel ends one way.
struct TravelEnd {
    double travel = 0;  ///< m above ride in bump, below it in droop, 0 or more
    TravelStop stop = TravelStop::range;
    int line = -1;  ///< index into TravelRoom::lines of the part that stops it

    [[nodiscard]] bool before(const TravelEnd& other) const { return travel < other.travel; }
};
/// One line's own room, m of travel from ride, 0 or more: until it is closed or open; nothing where it is
/// neither within kFarthestTravel and the links' reach. Past its limit already at ride: 0.
struct LineRoom {
    PartLine line;
    double length = std::numeric_limits<double>::quiet_NaN();  ///< at ride, m
    std::optional<TravelEnd> bump = std::nullopt;
    std::optional<TravelEnd> droop = std::nullopt;
    /// Travel (m, bump +) nearest to ride where it stands at its free length: a bump stop meets, a spring
    /// comes loose.
    std::optional<double> free = std::nullopt;
};
/// What is left both ways, and what runs out first.
struct TravelRoom {
    bool assembled = false;  ///< false: the car can't be assembled at ride; nothing else holds
    TravelEnd bump;          ///< the first that ends bump, the range entered included
    TravelEnd droop;
    std::vector<LineRoom> lines;
};
/// How far out limits are looked for, m either way.
inline constexpr double kFarthestTravel = 0.3;
/// Finds every limit to a micrometer. The car must have passed findFaults(), its parts have no refusal.
[[nodiscard]] TravelRoom travelRoom(const Car& car, std::span<const SuspensionPart> parts);

/// The travel cut to what the parts and links allow.
[[nodiscard]] TravelRange cutTo(const TravelRoom& room, TravelRange range);

/// What ends bump or droop, in words: "the shock 'rear' (left) is closed at 3.1 in of bump".
[[nodiscard]] std::string describe(const TravelEnd& end, bool bump, const TravelRoom& room,
                                   std::span<const SuspensionPart> parts, Units units);

}  // namespace bolthole
