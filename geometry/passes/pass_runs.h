// What each pass was run with, and two of these against each other on ground that both were run on.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "geometry/passes/pass_statistics.h"

namespace bolthole {

/// What a person sets before a pass: the car, the tires' pressures, the launch rpm. What was not entered is a
/// setting of its own.
struct RunWith {
    int setup = -1;            ///< index into Car::kept; -1: none
    EnteredCorners pressures;  ///< kPa
    OptionalNumber launchRpm = std::nullopt;

    bool operator==(const RunWith&) const = default;
};
[[nodiscard]] RunWith runWith(const Pass& pass);

/// Every different RunWith of a car's passes, struck ones included.
struct RunList {
    std::vector<RunWith> runs;         ///< in the order of their first pass
    std::vector<std::size_t> ofPass;   ///< for each row of Car::passes the place in `runs`
    std::vector<std::size_t> firstOf;  ///< row of the first pass of each
};
[[nodiscard]] RunList runsOf(const Car& car);

/// "A" for 0, "Z" for 25, "AA" for 26.
[[nodiscard]] std::string letterOf(std::size_t run);

/// A surface, by kind and name, and where it is said a day.
struct Ground {
    std::optional<SurfaceKind> kind = std::nullopt;
    std::string name{};
    std::optional<std::string> date = std::nullopt;

    [[nodiscard]] bool holds(const Pass& pass) const;
};
/// Where both were run, counted passes alone: of surfaces and days they share the one with most passes of the
/// one that has fewer there; of a surface they share on different days only, the surface alone. No answer
/// where they share none: what the surface did can't be told from what the setup did.
[[nodiscard]] Answer<Ground> sharedGround(const Car& car, const RunWith& first, const RunWith& second);

/// The counted sixty-foot times of a run on a ground, in short.
[[nodiscard]] Sample sampleOn(const Car& car, const RunWith& run, const Ground& ground);

/// Two runs against each other.
struct RunComparison {
    Ground ground{};
    SetupComparison times;
    Answer<Scatter> scatter;  ///< of a single pass, from all repeats of the car
    /// Trend of the day, where they were run on one.
    std::optional<DayDrift> drift = std::nullopt;
    /// What that trend alone would make of the difference, s: its slope times how much later the second was
    /// run in the mean. Absent without a trend that can be told from none.
    std::optional<double> byDrift = std::nullopt;
};
[[nodiscard]] Answer<RunComparison> compareRuns(const Car& car, const RunWith& first, const RunWith& second);

}  // namespace bolthole
