// Links that come, go, change and are set apart left from right.
#include <gmock/gmock.h>

#include "geometry/car/numbers.h"
#include "geometry/edits/edit.h"
#include "geometry/kinematics/trace.h"
#include "tests/support/car_generator.h"
#include "tests/support/edit_tools.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

TEST(EditLinks, ComeAndGo) {
    const Car car = plainCar();
    Link third = car.links[1];
    third.name = "third link";
    third.side = Side::center;
    const Car more = applied(car, AddLink{third});
    ASSERT_EQ(more.links.size(), 4U);
    EXPECT_EQ(more.links[3].name, "third link");
    EXPECT_EQ(describe(AddLink{third}, car), "Add link 'third link'");
    EXPECT_TRUE(applied(more, RemoveLink{3}) == car);
    EXPECT_EQ(describe(RemoveLink{0}, car), "Remove lower");
    EXPECT_THAT(apply(car, RemoveLink{3}).refusal, HasSubstr("there is no link 4"));
}

TEST(EditLinks, WhatAFileWouldNotTakeIsRefused) {
    const Car car = plainCar();
    Link link = car.links[0];
    link.name = " ";
    EXPECT_THAT(apply(car, AddLink{link}).refusal, HasSubstr("needs a name"));
    link = car.links[0];
    link.axle.use = 5;
    EXPECT_THAT(apply(car, AddLink{link}).refusal, HasSubstr("index of a hole"));
    link = car.links[0];
    link.length = -1;
    EXPECT_THAT(apply(car, ChangeLink{1, link}).refusal, HasSubstr("a length above 0"));
    EXPECT_TRUE(apply(car, ChangeLink{1, link}).car == car);
    Car full = car;
    while (full.links.size() < kMaxLinks) {
        full.links.push_back(car.links[0]);
    }
    EXPECT_THAT(apply(full, AddLink{car.links[0]}).refusal, HasSubstr("at most 16 links"));
    EXPECT_THAT(apply(full, SplitLink{0}).refusal, HasSubstr("at most 16 links"));
}

TEST(EditLinks, ChangeKind) {
    const Car car = plainCar();
    Link arm = car.links[0];
    arm.kind = LinkKind::pivot;
    EXPECT_EQ(describe(ChangeLink{0, arm}, car), "Make lower a pivoted arm");
    EXPECT_EQ(applied(car, ChangeLink{0, arm}).links[0].kind, LinkKind::pivot);
}

// A pair that is split is the same linkage: every figure stays. Joined again it is the same car.
TEST(EditLinks, SplitAndJoinedIsTheSame) {
    CarGenerator generator(71);
    for (int round = 0; round < 40; ++round) {
        const Car car = generator.draw(Layout::triangulated);
        const Trace before = computeTrace(car);
        const Car apart = applied(car, SplitLink{0});
        ASSERT_EQ(apart.links.size(), car.links.size() + 1);
        EXPECT_TRUE(isHalfOfPair(apart, 0));
        EXPECT_TRUE(isHalfOfPair(apart, 1));
        EXPECT_EQ(apart.links[1].axle.holes[0].at, mirrored(car.links[0].axle.holes[0].at));
        const Trace after = computeTrace(apart);
        ASSERT_TRUE(after.assembly.usable());
        EXPECT_NEAR(after.ride[Figure::antiSquat], before.ride[Figure::antiSquat], 1e-7);
        for (const int half : {0, 1}) {
            Car joined = applied(apart, JoinLinks{half});
            joined.links[0].id = car.links[0].id;
            for (const End end : {End::chassis, End::axle}) {
                for (std::size_t hole = 0; hole < joined.links[0].bracket(end).holes.size(); ++hole) {
                    joined.links[0].bracket(end).holes[hole].id = car.links[0].bracket(end).holes[hole].id;
                }
            }
            EXPECT_TRUE(joined == car) << half;
        }
    }
}

TEST(EditLinks, JoinedTakesThePointsOfTheOneThatIsNamed) {
    Car car = applied(plainCar(), SplitLink{0});
    car.links[1].axle.holes[0].at.z() = 0.21;
    car.links[1].length = 0.6;
    EXPECT_EQ(applied(car, JoinLinks{0}).links[0].axle.holes[0].at, plainCar().links[0].axle.holes[0].at);
    const Car right = applied(car, JoinLinks{1});
    EXPECT_EQ(right.links[0].side, Side::both);
    EXPECT_EQ(right.links[0].axle.holes[0].at.z(), 0.21);
    EXPECT_GT(right.links[0].axle.holes[0].at.y(), 0);  // given for the left again
    EXPECT_EQ(right.links[0].length, 0.6);
    EXPECT_EQ(right.links.size(), 3U);
}

TEST(EditLinks, NothingToSplitOrJoinIsSaid) {
    const Car car = plainCar();
    EXPECT_THAT(apply(car, SplitLink{2}).refusal, HasSubstr("one link, not a mirrored pair"));
    EXPECT_THAT(apply(car, JoinLinks{0}).refusal, HasSubstr("no partner on the other side"));
    EXPECT_FALSE(isHalfOfPair(car, 0));
    EXPECT_FALSE(isHalfOfPair(car, 9));
    Car apart = applied(car, SplitLink{0});
    apart.links[1].name = "other";
    EXPECT_THAT(apply(apart, JoinLinks{1}).refusal, HasSubstr("no partner"));
}

}  // namespace
}  // namespace bolthole
