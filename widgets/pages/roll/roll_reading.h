// The axle in roll of what is on the bench, computed once for the pictures, the curves and the cards.
#pragma once

#include <QString>
#include <optional>
#include <string>
#include <vector>

#include "geometry/kinematics/roll.h"
#include "geometry/kinematics/side_centers.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

/// A point of the center plane at ride, in side view, car frame, m: where the lines of a pair meet.
struct LinkCrossing {
    QString name;
    double x = 0;
    double z = 0;
};

/// Everything the roll page shows. Of the solved car, so that it belongs to the trace.
struct RollReading {
    std::string problem;  ///< why nothing of roll can be computed, one sentence; empty: it can
    Car car;
    Linkage linkage;
    RollTrace roll;
    std::optional<RollTrace> baseline;  ///< of the setup kept as the baseline, where it can be computed
    GroundLine rideGround;
    SideCenters centers;  ///< there wherever the car can be assembled in travel
    std::vector<LinkCrossing> crossings;

    [[nodiscard]] bool isThere() const { return roll.assembly.usable(); }
    /// The figures at any roll at ride, rad, or at any travel without roll, m; not usable out of reach.
    [[nodiscard]] RollFigures atRoll(double angle) const { return solveRoll(car, 0.0, angle); }
    [[nodiscard]] RollFigures atTravel(double travel) const { return solveRoll(car, travel, 0.0); }
};

/// More rows of travel than this are not computed: a screen has no more lines.
inline constexpr int kMostRollTravelRows = 201;

/// Reads roll off `state`.
[[nodiscard]] RollReading readRoll(const BenchState& state);

/// What the page's cards say of a car, and no more: ride, both ends of travel, the instant centers. For a car
/// that passed findFaults(); `roll` is not there where the axle is not held.
[[nodiscard]] RollReading readRollBriefly(const Car& car);

/// "2.0° body roll left", "no body roll".
[[nodiscard]] QString rollWords(double roll);

}  // namespace bolthole
