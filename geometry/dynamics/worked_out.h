// Numbers of the launch that no scale shows, worked out of a few readings, each with its uncertainty.
#pragma once

#include <optional>

namespace bolthole {

/// To first order, the readings independent (JCGM 100:2008, 5.1.2).
struct WorkedOut {
    double value = 0;
    double uncertainty = 0;  ///< standard, in the value's unit
};

/// What readings are taken with: standard uncertainties of one reading.
struct ReadWith {
    double mass = 0;    ///< kg
    double length = 0;  ///< m
    double time = 0;    ///< s
};
/// Of a stopwatch started and stopped by hand; a judgement, common practice, no source. s.
inline constexpr double kStopwatch = 0.1;

/// One tire on a scale, with two loads on it (kg) and the height of its wheel's center under each (m): load
/// over height, N/m. Nothing where the heavier load does not press it flatter.
[[nodiscard]] std::optional<WorkedOut> tireRateOf(double light, double heavy, double lightHeight,
                                                  double heavyHeight, const ReadWith& with);

/// One wheel hung over an edge inside its rim, `arm` (m) from its center, that takes `tenSwings` (s) to and
/// fro: twice its moment of inertia about its axle, kg m^2, as both wheels of an axle count. A compound
/// pendulum: I + m d^2 = m g d T^2 / 4 pi^2 (J. L. Meriam, L. G. Kraige, Engineering Mechanics: Dynamics, ch.
/// 6, 7th ed., Wiley, 2012, from memory). Nothing where that leaves none.
[[nodiscard]] std::optional<WorkedOut> wheelInertiaOf(double mass, double arm, double tenSwings,
                                                      const ReadWith& with);

}  // namespace bolthole
