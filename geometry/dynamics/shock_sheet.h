// A shock's forces from what a person has: a shock dyno's sheet, a hung weight and a stopwatch, or neither.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/dynamics/dyno_sheet.h"

namespace bolthole {

/// One way of a shock as it was read: all of it, or none and why.
struct ShockWay {
    std::vector<double> speeds{};  ///< m/s of the shaft, rising
    DampingWay way{};              ///< a row of forces a click, N
    std::vector<RefusedRow> refused{};

    [[nodiscard]] bool isThere() const { return refused.empty() && !speeds.empty(); }
};

/// Reads rows of shaft speed and force, a column a click: "in/s 0 2 4" names the clicks in the first row,
/// which may be left out for one column. Inch: in/s and lb, metric: mm/s and N. Between the numbers tabs,
/// semicolons or spaces; commas too, where none of the others is there, else a comma is the decimal point.
/// Speeds rise.
[[nodiscard]] ShockWay readShockTable(std::string_view text, Units units);
/// The same table as text, for editing it; empty for one without forces.
[[nodiscard]] std::string shockTableText(const Damping& damping, bool isBump, Units units);

/// Reads what a weight did that hung on the shock, or stood on it: rows of click, weight (lb, kg), stroke
/// (in, mm) and seconds. Force and speed of a reading are weight times gravity and stroke over time, once the
/// shaft moves steadily; a click's line goes through 0 and its readings by least squares (F = c v, c = sum F
/// v / sum v^2). All clicks have their force at the fastest speed of any reading.
[[nodiscard]] ShockWay readShockReadings(std::string_view text, Units units);

/// Both ways in one table: speeds of both, forces between those read along straight lines through 0 and past
/// the last on with its slope, as dampingLine() takes them. Nothing where one is not there.
[[nodiscard]] std::optional<Damping> joined(const ShockWay& bump, const ShockWay& rebound);

/// Part of critical damping that the estimate takes: ride damping of road cars lies about 0.2 to 0.4 (T. D.
/// Gillespie, Fundamentals of Vehicle Dynamics, SAE 1992, ch. 5, from memory), rebound twice bump by common
/// practice, no source. Nobody's shock: it may be off by half.
inline constexpr double kEstimatedBump = 0.2;
inline constexpr double kEstimatedRebound = 0.4;
/// A straight line each way: c = 2 z sqrt(k m) at the wheel, over the motion ratio squared at the shaft.
/// `rate`: of one wheel without its tire, N/m; `mass`: sprung, on that wheel, kg; `motionRatio`: shaft over
/// wheel. All above 0.
[[nodiscard]] Damping estimatedDamping(double rate, double mass, double motionRatio);
/// The same for the front shocks (`item` below 0) or a shock of the list, from the car's own numbers: wheel
/// rate as entered or, at the rear, of its springs; half the axle's weight less half the unsprung one, where
/// that is known; the motion ratio of the mounts. Nothing where one is missing.
[[nodiscard]] std::optional<Damping> estimatedDamping(const Car& car, int item);

}  // namespace bolthole
