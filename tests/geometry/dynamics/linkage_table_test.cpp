// The linkage over travel against the solver it stands on.
#include "geometry/dynamics/linkage_table.h"

#include <gmock/gmock.h>

#include <array>
#include <cmath>

#include "geometry/statics/suspension_part.h"
#include "tests/support/car_generator.h"

namespace bolthole {

namespace {

constexpr std::array kTableLayouts{
    Layout::triangulated, Layout::apart,         Layout::threeLink,        Layout::torqueArm,
    Layout::parallel,     Layout::parallelGuide, Layout::parallelTrackBar, Layout::triangulatedTrackBar,
    Layout::ladderGuide};

const std::array<TableLine, 2> kLines{TableLine{{-0.06, 0.43, -0.1}, {0.12, 0.38, 0.69}, false},
                                      TableLine{{0.013, 0.48, 0.06}, {0.013, 0.48, 0.54}, true}};

}  // namespace

// Second derivatives against differences of the exact first ones.
TEST(TravelCurvature, IsTheSlopeOfTheRates) {
    for (const Layout layout : kTableLayouts) {
        CarGenerator generator(70 + static_cast<std::uint64_t>(layout));
        Car car = generator.draw(layout);
        AxleSolver solver(buildLinkage(car), Drive::travel);
        ASSERT_TRUE(solver.assemble().usable());
        for (const double travel : {-0.07, 0.0, 0.05}) {
            ASSERT_TRUE(solver.moveTo(travel).usable());
            const AxleRates curvature = solver.travelCurvature();
            const double step = 2e-5;
            AxleSolver above = solver;
            AxleSolver below = solver;
            ASSERT_TRUE(above.moveTo(travel + step).usable() && below.moveTo(travel - step).usable());
            const AxleRates& high = above.travelRates();
            const AxleRates& low = below.travelRates();
            const double close = 2e-6;
            EXPECT_NEAR(curvature.x, (high.x - low.x) / (2 * step), close);
            EXPECT_NEAR(curvature.y, (high.y - low.y) / (2 * step), close);
            EXPECT_NEAR(curvature.pitch, (high.pitch - low.pitch) / (2 * step), close);
            EXPECT_NEAR(curvature.yaw, (high.yaw - low.yaw) / (2 * step), close);
        }
    }
}

TEST(LinkageTable, GivesWhatTheSolverGives) {
    for (const Layout layout : kTableLayouts) {
        SCOPED_TRACE(static_cast<int>(layout));
        const Linkage linkage =
            buildLinkage(CarGenerator(90 + static_cast<std::uint64_t>(layout)).draw(layout));
        LinkageTable table;
        ASSERT_TRUE(table.begin(linkage, kLines).usable());
        table.cover(-0.1, 0.1);
        ASSERT_LE(table.lowest(), -0.1);
        ASSERT_GE(table.highest(), 0.1);
        AxleSolver solver(linkage, Drive::travel);
        ASSERT_TRUE(solver.assemble().usable());
        ASSERT_TRUE(solver.moveTo(-0.1).usable());
        for (double travel = -0.1; travel < 0.1; travel += 0.0037) {
            ASSERT_TRUE(solver.moveTo(travel).usable());
            std::array<TableValue, 4> values;
            table.read(travel, values.data());
            EXPECT_NEAR(values[0].value, solver.pose().x, 1e-11);
            EXPECT_NEAR(values[0].first, solver.travelRates().x, 1e-9);
            EXPECT_NEAR(values[0].second, solver.travelCurvature().x, 2e-6);
            EXPECT_NEAR(values[1].value, solver.pose().pitch, 1e-11);
            EXPECT_NEAR(values[1].first, solver.travelRates().pitch, 1e-9);
            EXPECT_NEAR(values[1].second, solver.travelCurvature().pitch, 2e-6);
            const PartLine line{.onAxle = kLines[0].onAxle, .onChassis = kLines[0].onChassis};
            const LineState state = lineState(line, solver.pose(), solver.pose().rotation());
            EXPECT_NEAR(values[2].value, state.length, 1e-11);
            EXPECT_NEAR(values[2].first, -state.shortening(travelMotion(solver.pose(), solver.travelRates())),
                        1e-9);
            const Eigen::Vector3d axis =
                (kLines[1].onAxle + Eigen::Vector3d(0, 0, linkage.measuredHeight) - kLines[1].onChassis)
                    .normalized();
            EXPECT_NEAR(values[3].value,
                        axis.dot(solver.pose().carry(kLines[1].onAxle) - kLines[1].onChassis), 1e-11);
        }
    }
}

// It ends where the solver ends, names the link, and grows no further. Exactly held cars: where links bind,
// how far the solver gets depends a little on the steps it takes.
TEST(LinkageTable, EndsWhereTheLinksRunOut) {
    int ended = 0;
    for (const Layout layout : kTableLayouts) {
        if (!isExactlyHeld(layout)) {
            continue;
        }
        SCOPED_TRACE(static_cast<int>(layout));
        const Linkage linkage =
            buildLinkage(CarGenerator(110 + static_cast<std::uint64_t>(layout)).draw(layout));
        for (const int direction : {-1, +1}) {
            LinkageTable table;
            ASSERT_TRUE(table.begin(linkage, {}).usable());
            table.cover(-0.05, 0.05);
            int added = 0;
            while (table.extend(direction)) {
                ASSERT_LT(++added, 200);
            }
            EXPECT_FALSE(table.extend(direction));
            const double reached = direction > 0 ? table.highest() : table.lowest();
            AxleSolver solver(linkage, Drive::travel);
            ASSERT_TRUE(solver.assemble().usable());
            const MoveReport beyond = solver.moveTo(reached + direction * 1e-4);
            if (table.end(direction).usable()) {
                EXPECT_GE(std::abs(reached), 0.3);
                continue;
            }
            ++ended;
            EXPECT_FALSE(beyond.usable()) << reached;
            EXPECT_EQ(table.end(direction).constraint, beyond.constraint);
            EXPECT_GE(table.end(direction).constraint, 0);
        }
    }
    EXPECT_GT(ended, 1);
}

}  // namespace bolthole
