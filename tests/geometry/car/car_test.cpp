#include "geometry/car/car.h"

#include <gtest/gtest.h>

#include "tests/support/car_generator.h"

namespace bolthole {
namespace {

constexpr double kRadius = 0.34;  // m, height of the axle's center

Link rod(const Eigen::Vector3d& chassis, const Eigen::Vector3d& axle) {
    return makeLink("link", LinkKind::rod, Side::both, {chassis, axle});
}

TEST(Link, LengthIsTheWrittenOneOrFitsTheHolesInUse) {
    Link link = rod({0.6, 0.4, 0.3}, {0.0, 0.4, 0.3});
    EXPECT_DOUBLE_EQ(holeDistance(link), 0.6);
    EXPECT_DOUBLE_EQ(builtLength(link), 0.6);
    link.length = 0.61;
    EXPECT_DOUBLE_EQ(holeDistance(link), 0.6);
    EXPECT_DOUBLE_EQ(builtLength(link), 0.61);
    link.length.reset();
    link.axle.holes.push_back({-1, "low", {0.0, 0.4, 0.3 - 0.25}});
    link.axle.use = 1;
    EXPECT_DOUBLE_EQ(builtLength(link), 0.65);  // 5-12-13 triangle
}

TEST(Link, BracketIsTheOneOfItsEnd) {
    Link link = rod({0.6, 0.4, 0.3}, {0.0, 0.4, 0.3});
    EXPECT_EQ(&link.bracket(End::chassis), &link.chassis);
    EXPECT_EQ(&link.bracket(End::axle), &link.axle);
    const Link& fixed = link;
    EXPECT_EQ(&fixed.bracket(End::chassis), &link.chassis);
    EXPECT_EQ(&fixed.bracket(End::axle), &link.axle);
}

TEST(RoleOf, ForeAndAftRodsGoByTheirAxleHole) {
    EXPECT_EQ(roleOf(rod({0.6, 0.4, 0.3}, {0.0, 0.5, kRadius - 0.1}), kRadius), Role::lower);
    EXPECT_EQ(roleOf(rod({0.4, 0.4, 0.5}, {0.0, 0.1, kRadius + 0.1}), kRadius), Role::upper);
    // The chassis end does not count, nor does which end stands ahead.
    EXPECT_EQ(roleOf(rod({0.6, 0.4, 0.5}, {0.0, 0.5, kRadius - 0.1}), kRadius), Role::lower);
    EXPECT_EQ(roleOf(rod({-0.6, 0.4, 0.5}, {0.0, 0.4, kRadius + 0.1}), kRadius), Role::upper);
}

TEST(RoleOf, TheHoleInUseDecides) {
    Link link = rod({0.6, 0.4, 0.3}, {0.0, 0.5, kRadius - 0.1});
    link.axle.holes.push_back({-1, "high", {0.0, 0.5, kRadius + 0.1}});
    EXPECT_EQ(roleOf(link, kRadius), Role::lower);
    link.axle.use = 1;
    EXPECT_EQ(roleOf(link, kRadius), Role::upper);
}

TEST(RoleOf, RodsUnderAThirdForeAndAftAreCrosswise) {
    // 0.3 of 0.3 x 0.4 x 1.2, a box of diagonal 1.3: less than a third; 0.5 of it would be more.
    EXPECT_EQ(roleOf(rod({0.3, 0.6, 0.2}, {0.0, -0.6, 0.6}), kRadius), Role::crosswise);
    EXPECT_EQ(roleOf(rod({-0.3, 0.6, 0.2}, {0.0, -0.6, 0.6}), kRadius), Role::crosswise);
    EXPECT_EQ(roleOf(rod({0.5, 0.6, 0.2}, {0.0, -0.6, 0.6}), kRadius), Role::upper);
    // Just to either side of a third: 1 against sqrt(8) sideways makes 3.
    EXPECT_EQ(roleOf(rod({0.999, 2.8284271247, 0.2}, {0, 0, 0.2}), kRadius), Role::crosswise);
    EXPECT_EQ(roleOf(rod({1.001, 2.8284271247, 0.2}, {0, 0, 0.2}), kRadius), Role::lower);
}

TEST(RoleOf, GuidesAreCrosswiseArmsAreNot) {
    Link link = rod({0.9, 0, 0.3}, {0.9, 0, 0.3});
    link.kind = LinkKind::guide;
    EXPECT_EQ(roleOf(link, kRadius), Role::crosswise);
    link.kind = LinkKind::pivot;
    EXPECT_EQ(roleOf(link, kRadius), Role::lower);
    link.kind = LinkKind::slider;
    link.axle.holes[0].at.z() = kRadius + 0.01;
    EXPECT_EQ(roleOf(link, kRadius), Role::upper);
}

TEST(RoleOf, TheWrittenRoleWins) {
    Link link = rod({0.6, 0.4, 0.3}, {0.0, 0.5, kRadius - 0.1});
    for (const Role role : {Role::upper, Role::crosswise, Role::lower}) {
        link.role = role;
        EXPECT_EQ(roleOf(link, kRadius), role);
    }
}

TEST(CornerWeights, AddUp) {
    const CornerWeights weights{471.2, 448.9, 357.4, 349.0};
    EXPECT_DOUBLE_EQ(weights.total(), 1626.5);
    EXPECT_DOUBLE_EQ(weights.front(), 920.1);
}

}  // namespace
}  // namespace bolthole
