// What a person can change between two passes, one change at a time.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/edits/edit.h"

namespace bolthole {

/// What is laid hands on.
enum class ChangeKind {
    click,        ///< an adjuster of a shock
    holes,        ///< bolts that go to other holes
    ballast,      ///< something that stands on the car is moved
    level,        ///< more or less of what fills a load: fuel
    launchSpeed,  ///< the two-step
    frontDroop,   ///< a limiter of the front's droop
    pressure      ///< both tires of an end, of which only the rate is computed
};

/// One change, with the work it takes.
struct PaddockChange {
    Edit edit;
    std::string words{};  ///< what to do
    int bolts = 0;        ///< that get other holes, both sides of a pair counted
    ChangeKind kind = ChangeKind::holes;
    std::optional<double> from = std::nullopt;  ///< what the number that is set was, SI; holes: absent
    bool isFirmer = false;                      ///< of a click: it resists more than before
    double minutes = 0;  ///< how long it takes; an estimate, common practice, no source
};

/// Hole combinations that move more bolts than this are no quick change; common practice, no source.
inline constexpr int kMostBolts = 2;
inline constexpr double kLaunchSpeedStep = 200;  ///< rpm
inline constexpr double kPressureStep = 2;       ///< psi
inline constexpr double kDroopLeft = 0.8;        ///< of the front's droop where it is limited
inline constexpr double kBallastStep = 0.30;     ///< m a load is moved forward or back
inline constexpr double kLevelStep = 25;         ///< percent of what fills a load

// Minutes, by one person with the car on its wheels or on stands as it needs; common practice, no source.
inline constexpr double kClickMinutes = 2;     ///< both shocks of an end
inline constexpr double kBoltMinutes = 10;     ///< a bolt, with the car going up and down
inline constexpr double kRodMinutes = 10;      ///< to set the rods and check the pinion's angle
inline constexpr double kBallastMinutes = 10;  ///< something taken loose and tied down again
inline constexpr double kLevelMinutes = 5;     ///< fuel in or out
inline constexpr double kSpeedMinutes = 1;     ///< the two-step
inline constexpr double kPressureMinutes = 3;  ///< both tires of an end, gauge on and off
inline constexpr double kLimiterMinutes = 15;  ///< limiters of both sides

/// Every single change that `car` has the numbers for: each shock's bump and rebound by one and two clicks
/// each way within its table, the front's too; every other hole combination of at most kMostBolts bolts,
/// lengths by `lengths`; what stands on the car and was not on the scales by kBallastStep forward
/// and back, and what fills a load by kLevelStep up and down; launch speed up and down by kLaunchSpeedStep;
/// the front's droop limited to kDroopLeft; the tires' pressure by kPressureStep up and down at an end whose
/// tire rate was read at two pressures and that has a pressure now. The car must have passed findFaults().
[[nodiscard]] std::vector<PaddockChange> paddockChanges(const Car& car, LengthTreatment lengths);

}  // namespace bolthole
