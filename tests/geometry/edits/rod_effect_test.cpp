// What one rod's length does to the axle.
#include "geometry/edits/rod_effect.h"

#include <gmock/gmock.h>

#include "geometry/car/numbers.h"
#include "geometry/edits/edit.h"
#include "geometry/kinematics/axle_solver.h"
#include "tests/support/car_generator.h"
#include "tests/support/made_units.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::ElementsAre;

// Level lowers 18 in out and 6 in under the axle's center, a level third link 6 in over it, a guide.
Car levelCar() {
    Car car = plainCar();
    car.ballast.clear();
    car.springs.clear();
    car.rearTireRadius = car.frontTireRadius = 13 * kMetresPerInch;
    Link lower;
    lower.name = "lower";
    lower.chassis.holes = {hole("front", 20, 18, 7)};
    lower.axle.holes = {hole("rear", 0, 18, 7)};
    Link third;
    third.name = "third link";
    third.side = Side::center;
    third.chassis.holes = {hole("front", 15, 0, 19)};
    third.axle.holes = {hole("rear", 0, 0, 19)};
    car.links = {lower, third, car.links[2]};
    return car;
}

// By hand: with the left lower d longer, x - 6 p - 18 w = -d, x - 6 p + 18 w = 0, x + 6 p = 0 (inch; p pitch,
// w yaw), so x = -d/4, p = d/24 and w = d/36.
TEST(RodEffect, IsWhatThreeLevelLinksMakeOfIt) {
    const Car car = levelCar();
    EXPECT_THAT(rodSides(car),
                ElementsAre(RodSide{0, Side::left}, RodSide{0, Side::right}, RodSide{1, Side::center}));
    const double change = 1e-5;
    const RodEffect left = *rodEffect(car, {0, Side::left}, change, Units::inch).effect;
    EXPECT_NEAR(left.forward, -change / 4, 1e-9);
    EXPECT_NEAR(left.pinion, -change / (24 * kInch), 1e-8);
    EXPECT_NEAR(left.yaw, change / (36 * kInch), 1e-8);
    EXPECT_NEAR(left.bind, 0, 1e-10);  // exactly held: no more than where the solver stops
    const RodEffect right = *rodEffect(car, {0, Side::right}, change, Units::inch).effect;
    EXPECT_NEAR(right.yaw, -left.yaw, 1e-9);
    EXPECT_NEAR(right.pinion, left.pinion, 1e-9);
    // The third link longer tips the head back: x + 6 p = -d, x - 6 p = 0, so p = -d/12.
    const RodEffect third = *rodEffect(car, {1, Side::center}, change, Units::inch).effect;
    EXPECT_NEAR(third.pinion, change / (12 * kInch), 1e-8);
    EXPECT_NEAR(third.yaw, 0, 1e-12);
}

// The rods that were not touched keep their lengths, the one that was is as long as it was made.
TEST(RodEffect, LeavesEveryOtherRodAlone) {
    CarGenerator generator(404);
    int exactly = 0;
    for (int round = 0; round < 40; ++round) {
        const Car car = generator.draw(Layout::triangulated);
        for (const RodSide& rod : rodSides(car)) {
            const RodEffectResult result = rodEffect(car, rod, 0.002, Units::metric);
            if (!result.effect) {
                EXPECT_NE(result.refusal, "");
                continue;
            }
            // Its mirror image is what the other side's rod does.
            if (rod.side == Side::left) {
                const RodEffectResult other = rodEffect(car, {rod.link, Side::right}, 0.002, Units::metric);
                ASSERT_TRUE(other.effect);
                EXPECT_NEAR(other.effect->yaw, -result.effect->yaw, 1e-9);
                EXPECT_NEAR(other.effect->left, -result.effect->left, 1e-9);
                EXPECT_NEAR(other.effect->pinion, result.effect->pinion, 1e-9);
            }
            // There and back again is nothing: the longer rod made shorter by as much.
            Car longer = apply(car, SplitLink{rod.link}).car;
            const bool isPair = longer.links.size() > car.links.size();
            for (Link& link : longer.links) {
                link.length = builtLength(link);
            }
            const int index = rod.link + (isPair && rod.side == Side::right ? 1 : 0);
            *longer.links[static_cast<std::size_t>(index)].length += 0.002;
            const Side side = isPair ? rod.side : longer.links[static_cast<std::size_t>(index)].side;
            const RodEffectResult back = rodEffect(longer, {index, side}, -0.002, Units::metric);
            ASSERT_TRUE(back.effect) << back.refusal;
            EXPECT_NEAR(back.effect->pinion, -result.effect->pinion, 1e-9);
            EXPECT_NEAR(back.effect->yaw, -result.effect->yaw, 1e-9);
            ++exactly;
        }
    }
    EXPECT_GT(exactly, 50);
}

TEST(RodEffect, APairThatIsSetApartSaysWhichIsLonger) {
    Car car = apply(levelCar(), SplitLink{0}).car;
    EXPECT_EQ(lengthDifference(car, 0), 0);
    car.links[0].length = 20.125 * kMetresPerInch;
    EXPECT_NEAR(*lengthDifference(car, 0), 0.125 * kMetresPerInch, 1e-12);
    EXPECT_NEAR(*lengthDifference(car, 1), 0.125 * kMetresPerInch, 1e-12);
    EXPECT_FALSE(lengthDifference(car, 2));
    EXPECT_FALSE(lengthDifference(levelCar(), 0));
}

TEST(RodEffect, ARodThatCantBeIsRefused) {
    EXPECT_EQ(rodEffect(levelCar(), {0, Side::left}, -2, Units::inch).refusal, "a rod can't be that short");
    EXPECT_NE(rodEffect(levelCar(), {1, Side::center}, 0.3, Units::inch).refusal, "");
}

}  // namespace
}  // namespace bolthole
