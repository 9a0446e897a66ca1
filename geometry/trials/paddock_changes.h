// What a person can change between two passes, one change at a time.
#pragma once

#include <string>
#include <vector>

#include "geometry/edits/edit.h"

namespace bolthole {

/// One change, with the work it takes.
struct PaddockChange {
    Edit edit;
    std::string words{};  ///< what to do
    int bolts = 0;        ///< that get other holes, both sides of a pair counted
};

/// Hole choices that move more bolts than this are no quick change; common practice, no source.
inline constexpr int kMostBolts = 2;
inline constexpr double kLaunchSpeedStep = 200;  ///< rpm
inline constexpr double kDroopLeft = 0.8;        ///< of the front's droop where it is limited

/// Every single change that `car` has the numbers for: each shock's bump and rebound by one and two clicks
/// each way within its table, the front's too; every other hole choice of at most kMostBolts bolts, lengths
/// by defaultTreatment(); launch speed up and down by kLaunchSpeedStep; the front's droop limited to
/// kDroopLeft. The car must have passed findFaults().
[[nodiscard]] std::vector<PaddockChange> paddockChanges(const Car& car);

}  // namespace bolthole
