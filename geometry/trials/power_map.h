// Which holes for how much power: every hole combination launched with less and more torque than entered.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "geometry/combinations/hole_combination.h"
#include "geometry/trials/paired_runs.h"

namespace bolthole {

/// One hole combination.
struct PowerCombination {
    HoleUse use{};
    int bolts = 0;  ///< that get other holes, both sides of a pair counted; 0: as the car is bolted
};

/// What comes of one combination with one torque. Absent figures: the launch has none.
struct PowerCell {
    LaunchEnd end = LaunchEnd::notRun;
    std::optional<double> sixtyFoot = std::nullopt;      ///< s
    std::optional<double> leastRearLoad = std::nullopt;  ///< N
    std::optional<double> toppedOut = std::nullopt;      ///< s
    bool isBest = false;                                 ///< shortest 60 ft of its torque
    bool isLike = false;  ///< it can't be told apart from the best by paired draws; the best itself too
    bool isGood = false;  ///< that, or within kWorthABolt of the best
};
/// s of 60 ft that nobody moves a bolt for. Common practice, no source.
inline constexpr double kWorthABolt = 0.005;

/// Torques from one to another for which one combination will do.
struct PowerBand {
    std::size_t first = 0;  ///< index into PowerMap::shares
    std::size_t last = 0;
    /// Of all that are good throughout the band: the car's own, else the one that moves the fewest bolts.
    std::size_t combination = 0;
};

struct PowerMap {
    bool complete = false;  ///< false: cancelled, or something is missing
    std::vector<MissingInput> missing{};
    LengthTreatment lengths = LengthTreatment::keep;  ///< what happens to them in each combination
    bool isAll = true;             ///< every combination of the links seen from the side is there
    std::vector<double> shares{};  ///< of the entered torque, rising
    double peakTorque = 0;         ///< N m, the largest of the curve as entered
    std::vector<PowerCombination> combinations{};  ///< the car's own first, then the fewest bolts
    std::vector<PowerCell> cells{};                ///< combination by combination, a row of torques each
    std::vector<PowerBand> bands{};  ///< in order, as few as there can be; torques at which nothing gets to
                                     ///< 60 ft are in none

    [[nodiscard]] const PowerCell& cell(std::size_t combination, std::size_t power) const {
        return cells[combination * shares.size() + power];
    }
};

struct PowerOptions {
    /// What happens to the lengths, as far as the car has the rods for it; see treatmentFor().
    std::optional<LengthTreatment> lengths{};
    int powers = 9;  ///< from 60 to 140 percent, at least 2
    std::size_t mostCombinations = 400;
    std::size_t draws = 16;
    int threads = 2;
    /// Asked now and then from any thread; true: give up.
    std::function<bool()> isCancelled{};
    /// Told now and then from any thread: 0 to 1.
    std::function<void(double)> progress{};
};
inline constexpr double kLeastPower = 0.6;
inline constexpr double kMostPower = 1.4;
/// Of each torque so many of the quickest are launched with draws; the rest is slower than they by more than
/// those differ. A judgement.
inline constexpr std::size_t kDrawnCombinations = 12;

/// Launches them all. Left and right go alike, and crosswise links stay as bolted: seen from the side they do
/// next to nothing. The same on any number of threads. The car must have passed findFaults().
[[nodiscard]] PowerMap mapPower(const Car& car, const PowerOptions& options = {});

/// Names of the holes in which combinations of `map` differ at all, of one of them: "top", "upper, middle";
/// "as bolted" where they differ in none.
[[nodiscard]] std::string combinationNames(const PowerMap& map, std::size_t combination, const Car& car);

/// The bands as one line: "up to 480 lb-ft: middle; above: top"; torques are the curve's peak, midway between
/// two that were launched. Empty without bands.
[[nodiscard]] std::string bandWords(const PowerMap& map, const Car& car, Units units);

}  // namespace bolthole
