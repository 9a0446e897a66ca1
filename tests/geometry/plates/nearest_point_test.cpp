// The nearest point within some lines.
#include "geometry/plates/nearest_point.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

namespace bolthole {
namespace {

HalfPlane wall(double x, double y, double offset) {
    const double length = std::hypot(x, y);
    return {{x / length, y / length}, offset / length};
}

// Nocedal & Wright, "Numerical Optimization", 2nd ed. 2006, example 16.4: the least of
// (x - 1)^2 + (y - 2.5)^2 with x - 2y + 2 >= 0, -x - 2y + 6 >= 0, -x + 2y + 2 >= 0, x >= 0, y >= 0 is at
// (1.4, 1.7). From memory.
TEST(NearestPoint, SolvesTheTextbooksExample) {
    const std::vector<HalfPlane> walls{wall(1, -2, -2), wall(-1, -2, -6), wall(-1, 2, -2), wall(1, 0, 0),
                                       wall(0, 1, 0)};
    const auto found = nearestWithin({1, 2.5}, walls);
    ASSERT_TRUE(found);
    EXPECT_NEAR(found->x(), 1.4, 1e-12);
    EXPECT_NEAR(found->y(), 1.7, 1e-12);
}

TEST(NearestPoint, IsThePointItselfInsideAndTheCornerBeyondIt) {
    const std::vector<HalfPlane> quarter{wall(1, 0, 0), wall(0, 1, 0)};
    EXPECT_EQ(*nearestWithin({2, 3}, quarter), Eigen::Vector2d(2, 3));
    EXPECT_EQ(*nearestWithin({-2, -3}, quarter), Eigen::Vector2d(0, 0));
}

TEST(NearestPoint, IsNothingWhereTheWallsLeaveNothing) {
    EXPECT_FALSE(nearestWithin({0, 0}, std::vector<HalfPlane>{wall(1, 0, 1), wall(-1, 0, 1)}));
}

// No point of a fine grid within the walls is nearer.
TEST(NearestPoint, NoPointOfAGridIsNearer) {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> draw(-1, 1);
    int found = 0;
    for (int round = 0; round < 60; ++round) {
        std::vector<HalfPlane> walls;
        for (int each = 0; each < 5; ++each) {
            walls.push_back(wall(draw(random), draw(random), draw(random) - 0.3));
        }
        const Eigen::Vector2d from(draw(random), draw(random));
        const auto nearest = nearestWithin(from, walls);
        found += nearest ? 1 : 0;
        for (int x = -40; x <= 40; ++x) {
            for (int y = -40; y <= 40; ++y) {
                const Eigen::Vector2d at(x * 0.05, y * 0.05);
                const bool within =
                    std::ranges::all_of(walls, [&at](const HalfPlane& each) { return each.room(at) >= 0; });
                if (within) {
                    ASSERT_TRUE(nearest);
                    EXPECT_GE((at - from).norm(), (*nearest - from).norm() - 1e-9);
                }
            }
        }
    }
    EXPECT_GT(found, 20);
}

// Two rows, one unknown place: by the normal equations (3, 1) is where both vanish; behind a wall at x = 2
// the least is on the wall.
TEST(LeastMisfit, VanishesWhereItCanAndStaysWithinTheWalls) {
    LinearMisfit misfit;
    misfit.value = Eigen::Vector2d(-3, -1);
    misfit.slope = Eigen::Matrix2d::Identity();
    const Eigen::Vector2d free = leastMisfit(misfit, {});
    EXPECT_NEAR(free.x(), 3, 1e-12);
    EXPECT_NEAR(free.y(), 1, 1e-12);
    const Eigen::Vector2d held = leastMisfit(misfit, std::vector<HalfPlane>{wall(-1, 0, -2)});
    EXPECT_NEAR(held.x(), 2, 1e-12);
    EXPECT_NEAR(held.y(), 1, 1e-12);
}

}  // namespace
}  // namespace bolthole
