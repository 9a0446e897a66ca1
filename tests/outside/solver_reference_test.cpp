// The solver against Simbody and Ceres: the same linkages, every point to a millionth of a millimetre.
#include <gmock/gmock.h>

#include "tests/outside/ceres_reference.h"
#include "tests/outside/compare_to_reference.h"
#include "tests/outside/simbody_reference.h"
#include "tests/support/car_generator.h"

namespace bolthole {

namespace {

const std::vector<Position> kTravels{{0, 0}, {0.045, 0}, {0.09, 0}, {0, 0}, {-0.045, 0}, {-0.09, 0}};
const std::vector<Position> kRolls{{0, 0.03}, {0.04, 0.03}, {0.04, -0.05}, {-0.05, -0.05}, {0, 0}};

template <typename Reference>
void compareCars(Layout layout, int count, Drive drive, const std::vector<Position>& positions) {
    CarGenerator generator(1000 + static_cast<std::uint64_t>(layout));
    for (int number = 0; number < count; ++number) {
        SCOPED_TRACE(testing::Message() << "car " << number);
        Car car = generator.draw(layout);
        if (number % 2 == 1) {
            generator.misbuild(car, 0.01);
        }
        compare<Reference>(buildLinkage(car), drive, positions);
        if (testing::Test::HasFailure()) {
            return;
        }
    }
}

}  // namespace

TEST(AgainstSimbody, SymmetricFourLinksThroughTravel) {
    compareCars<SimbodyReference>(Layout::triangulated, 120, Drive::travel, kTravels);
}

TEST(AgainstSimbody, FourLinksSetApartThroughTravel) {
    compareCars<SimbodyReference>(Layout::apart, 100, Drive::travel, kTravels);
}

TEST(AgainstSimbody, FourLinksInTravelAndRoll) {
    compareCars<SimbodyReference>(Layout::triangulated, 30, Drive::roll, kRolls);
    compareCars<SimbodyReference>(Layout::apart, 30, Drive::roll, kRolls);
}

TEST(AgainstSimbody, ThreeLinksWithTrackBar) {
    compareCars<SimbodyReference>(Layout::threeLink, 30, Drive::travel, kTravels);
    compareCars<SimbodyReference>(Layout::threeLink, 20, Drive::roll, kRolls);
}

TEST(AgainstSimbody, GuidesAndSliders) {
    compareCars<SimbodyReference>(Layout::wattsThreeLink, 20, Drive::roll, kRolls);
    compareCars<SimbodyReference>(Layout::torqueArm, 20, Drive::travel, kTravels);
    compareCars<SimbodyReference>(Layout::torqueArm, 20, Drive::roll, kRolls);
}

TEST(AgainstCeres, ExactlyHeldFourLinks) {
    compareCars<CeresReference>(Layout::apart, 40, Drive::roll, kRolls);
}

// Some of these bind by more than kLargestTravelBind at the ends; Drive::roll solves them all the same.
TEST(AgainstCeres, TriangulatedFourLinkWithTrackBar) {
    compareCars<CeresReference>(Layout::triangulatedTrackBar, 200, Drive::roll, kTravels);
    compareCars<CeresReference>(Layout::triangulatedTrackBar, 50, Drive::roll, kRolls);
}

TEST(AgainstCeres, ParallelFourLinkInRoll) {
    compareCars<CeresReference>(Layout::parallelGuide, 60, Drive::roll, kRolls);
    compareCars<CeresReference>(Layout::parallelTrackBar, 60, Drive::roll, kRolls);
}

TEST(AgainstCeres, LadderBarsInRoll) {
    compareCars<CeresReference>(Layout::ladderGuide, 60, Drive::roll, kRolls);
}

}  // namespace bolthole
