// Whole cars to start from: a layout of rear links with plausible numbers that are then measured over.
//
// Every number is common practice, no source: nobody measured them on any car.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/car/car.h"

namespace bolthole {

/// How the rear axle is linked to the body.
enum class LinkLayout {
    triangulatedFourLink,  ///< two lowers, two uppers that run together at the axle
    parallelFourLink,      ///< two lowers and two uppers along the car
    threeLink,             ///< two lowers and one upper in the middle
    ladderBars,            ///< two arms rigid with the axle, pinned at their fronts
    torqueArm              ///< two lowers and an arm rigid with the axle, its front free fore and aft
};
inline constexpr std::array kLinkLayouts{LinkLayout::triangulatedFourLink, LinkLayout::parallelFourLink,
                                         LinkLayout::threeLink, LinkLayout::ladderBars,
                                         LinkLayout::torqueArm};

/// What holds the axle sideways where the layout itself does not.
enum class SidewaysHold { trackBar, watts };

/// Whether the layout needs something that holds the axle sideways.
[[nodiscard]] bool needsSidewaysHold(LinkLayout layout);

/// What is known of a car before it is measured.
struct StartingCar {
    LinkLayout layout = LinkLayout::triangulatedFourLink;
    SidewaysHold sideways = SidewaysHold::trackBar;  ///< not heeded where the layout needs none
    std::string title{};
    Units units = Units::inch;
    double wheelbase = 108 * kMetresPerInch;         ///< m
    double rearTireRadius = 13.5 * kMetresPerInch;   ///< m, loaded
    double frontTireRadius = 12.5 * kMetresPerInch;  ///< m, loaded
    std::vector<Field> typed{};  ///< which of these three were typed, and so are no starting numbers
};

/// Why no starting numbers can be fitted to that wheelbase and those radii, in one sentence; empty: they can.
[[nodiscard]] std::string refusal(const StartingCar& asked);

/// A car of that layout with every number a computation needs: it passes findFaults() where nothing was
/// refused. All its numbers but the typed ones are starting numbers.
[[nodiscard]] Car startingCar(const StartingCar& asked);

/// Plausible numbers to start a driveline from, fitted to the car's wheelbase and tires; starting numbers
/// all.
[[nodiscard]] Driveline startingDriveline(const Car& car);

}  // namespace bolthole
