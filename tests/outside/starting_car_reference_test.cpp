// Cars to start from against Simbody wherever the axle is exactly held, in travel and roll, to a millionth of
// a millimetre; over-held ones against Ceres.
#include <gmock/gmock.h>

#include "geometry/edits/starting_car.h"
#include "tests/outside/ceres_reference.h"
#include "tests/outside/compare_to_reference.h"
#include "tests/outside/simbody_reference.h"

namespace bolthole {

namespace {

const std::vector<Position> kStartTravels{{0, 0}, {0.05, 0}, {0.1016, 0}, {0, 0}, {-0.05, 0}, {-0.1016, 0}};
const std::vector<Position> kStartRolls{{0, 0.03}, {0.04, 0.03}, {0.04, -0.05}, {-0.05, -0.05}, {0, 0}};

Linkage linkageOf(LinkLayout layout, SidewaysHold sideways) {
    return buildLinkage(startingCar({.layout = layout, .sideways = sideways}));
}

const std::vector<SidewaysHold> kHolds{SidewaysHold::trackBar, SidewaysHold::watts};

}  // namespace

TEST(AgainstSimbody, StartingCarsThatAreExactlyHeld) {
    for (const LinkLayout layout :
         {LinkLayout::triangulatedFourLink, LinkLayout::threeLink, LinkLayout::torqueArm}) {
        for (const SidewaysHold sideways : kHolds) {
            SCOPED_TRACE(testing::Message() << static_cast<int>(layout) << ' ' << static_cast<int>(sideways));
            const Linkage linkage = linkageOf(layout, sideways);
            ASSERT_EQ(referenceAxle(linkage).links.size(), 4U);
            compare<SimbodyReference>(linkage, Drive::travel, kStartTravels);
            compare<SimbodyReference>(linkage, Drive::roll, kStartRolls);
        }
    }
}

TEST(AgainstCeres, StartingCarsThatAreOverHeld) {
    for (const LinkLayout layout : {LinkLayout::parallelFourLink, LinkLayout::ladderBars}) {
        for (const SidewaysHold sideways : kHolds) {
            SCOPED_TRACE(testing::Message() << static_cast<int>(layout) << ' ' << static_cast<int>(sideways));
            const Linkage linkage = linkageOf(layout, sideways);
            ASSERT_EQ(referenceAxle(linkage).links.size(), 5U);
            compare<CeresReference>(linkage, Drive::travel, kStartTravels);
            compare<CeresReference>(linkage, Drive::roll, kStartRolls);
        }
    }
}

}  // namespace bolthole
