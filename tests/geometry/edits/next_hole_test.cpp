#include "geometry/edits/next_hole.h"

#include <gtest/gtest.h>

namespace bolthole {
namespace {

TEST(NextHole, GoesOnWhereTheRowOfHolesGoes) {
    Bracket bracket{.holes = {Hole{.name = "1", .at = {0.1, 0.4, 0.2}}}};
    const auto apart = [&](const Hole& hole) { return Eigen::Vector3d(hole.at - bracket.holes.back().at); };
    EXPECT_NEAR((apart(nextHole(bracket, Units::inch)) - Eigen::Vector3d(0, 0, 0.0254)).norm(), 0, 1e-15);
    EXPECT_NEAR((apart(nextHole(bracket, Units::metric)) - Eigen::Vector3d(0, 0, 0.025)).norm(), 0, 1e-15);
    bracket.holes.push_back(Hole{.name = "new", .at = {0.11, 0.4, 0.17}});
    const Hole third = nextHole(bracket, Units::inch);
    EXPECT_NEAR((apart(third) - Eigen::Vector3d(0.01, 0, -0.03)).norm(), 0, 1e-15);
    EXPECT_EQ(third.name, "no. 3");
    EXPECT_EQ(third.id, -1);
    bracket.holes[0].name = "no. 3";
    EXPECT_EQ(nextHole(bracket, Units::inch).name, "no. 4") << "one name a hole";
}

TEST(NextHole, NeverLiesOnAnother) {
    Bracket bracket{.holes = {Hole{.name = "1", .at = {0, 0.4, 0.2254}},
                              Hole{.name = "2", .at = {0, 0.4, 0.2}},
                              Hole{.name = "3", .at = {0, 0.4, 0.2}}}};
    const Hole added = nextHole(bracket, Units::inch);
    for (const Hole& hole : bracket.holes) {
        EXPECT_GT((hole.at - added.at).norm(), 0.02) << hole.name;
    }
}

}  // namespace
}  // namespace bolthole
