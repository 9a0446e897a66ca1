// All that the Springs page shows of a car, computed in one go.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "geometry/statics/entered_setup.h"
#include "geometry/statics/springs.h"
#include "geometry/weights/entered_figures.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

/// What springs, shocks, stops and straps do in one car.
struct SpringFindings {
    std::string problem;                ///< why nothing could be computed; empty: it was
    std::vector<SuspensionPart> parts;  ///< those that can be computed
    std::vector<int> items;             ///< of each of them, its index in Car::springs
    std::vector<std::string> refusals;  ///< of each of Car::springs, why it is not among them; empty: it is
    SpringSweep sweep;
    std::vector<LineFigures> ride;  ///< each line at ride
    TravelRoom room;
    std::optional<WheelRates> made;  ///< the rear rates the springs make at ride
    FullStance stance;               ///< the rates in use elsewhere

    /// Indices of the lines of one of Car::springs, left before right; none where it is refused.
    [[nodiscard]] std::vector<std::size_t> linesOf(int item) const;
    /// What all parts together carry at ride, N upward on the axle.
    [[nodiscard]] double carried() const { return pushOf(ride); }
    /// What one of Car::springs adds to the rate of one wheel, N/m, both moving alike.
    [[nodiscard]] double wheelRateOf(int item, std::span<const LineFigures> figures) const;
};

/// Of the car on the bench.
[[nodiscard]] SpringFindings findSprings(const BenchState& state);

/// What is known of a car that passed findFaults() at ride: lengths, ratios, loads and rates. `room` says of
/// no line where it ends.
[[nodiscard]] SpringFindings findSpringsAtRide(const Car& car);

/// The travel the limit `end` leaves, rounded down to what a person would enter: a sixteenth of an inch, 1
/// mm.
[[nodiscard]] double roundedDown(const TravelEnd& end, Units units);

/// Sides that differ by less, m, are not worth two figures.
inline constexpr double kSidesDiffer = 0.25e-3;

}  // namespace bolthole
