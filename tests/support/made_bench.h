// A bench state with smooth made-up curves, so that views are tested without the solver.
#pragma once

#include "widgets/state/bench_state.h"

namespace bolthole::test {

/// What the made-up curves look like. Lengths in m, angles in rad; slopes per m of travel.
struct MadeCurves {
    double bump = 4 * kMetresPerInch;
    double droop = 4 * kMetresPerInch;
    int rows = 81;
    double inverseAtRide = 1 / (58 * kMetresPerInch);  ///< 1/distance of the instant center, 1/m
    double inverseSlope = 3.2;                         ///< 0.33 1/m from ride to full bump
    double tangent = 0.24;                             ///< of the swing arm at ride
    double tangentSlope = 0.25;
    int unusableInBump = 0;   ///< rows the links do not reach
    int unusableInDroop = 0;  ///< rows the links do not reach
    bool driveline = true;
};

/// The station at `travel`; unusable where asked for.
[[nodiscard]] Station madeStation(const MadeCurves& curves, double travel);

/// A whole trace with the cursor at ride, current and without problem.
[[nodiscard]] BenchState madeBench(const MadeCurves& curves);

/// Moves the cursor of a made state.
void moveCursor(BenchState& state, const MadeCurves& curves, double travel);

}  // namespace bolthole::test
