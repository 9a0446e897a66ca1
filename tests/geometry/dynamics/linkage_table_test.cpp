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

namespace {

/// How far a solver gets by so many meters at a time, from where it stands.
MoveReport creep(AxleSolver& solver, double from, double to, double by) {
    const int steps = static_cast<int>(std::ceil(std::abs(to - from) / by));
    MoveReport report;
    for (int step = 1; step <= steps; ++step) {
        report = solver.moveTo(from + (to - from) * step / steps);
        if (!report.usable()) {
            break;
        }
    }
    return report;
}

}  // namespace

// It ends where a solver ends that creeps there, names the link, and grows no further; where links bind, too.
// In long steps a solver may pass the place where links that are one too many lock: the path turns sharply
// there, onto one on which they bind.
TEST(LinkageTable, EndsWhereTheLinksRunOut) {
    int ended = 0;
    for (const Layout layout : kTableLayouts) {
        SCOPED_TRACE(static_cast<int>(layout));
        const Linkage linkage =
            buildLinkage(CarGenerator(110 + static_cast<std::uint64_t>(layout)).draw(layout));
        for (const int direction : {-1, +1}) {
            SCOPED_TRACE(direction);
            LinkageTable table;
            ASSERT_TRUE(table.begin(linkage, {}).usable());
            table.cover(-0.05, 0.05);
            int added = 0;
            while (table.extend(direction)) {
                ASSERT_LT(++added, 1600);
            }
            EXPECT_FALSE(table.extend(direction));
            const double reached = direction > 0 ? table.highest() : table.lowest();
            if (table.end(direction).usable()) {
                EXPECT_GE(std::abs(reached), LinkageTable::kFarthest);
                continue;
            }
            ++ended;
            AxleSolver solver(linkage, Drive::travel);
            ASSERT_TRUE(solver.assemble().usable());
            const double near = reached - direction * 2e-3;
            EXPECT_TRUE(creep(solver, 0, near, 1e-4).usable());
            EXPECT_TRUE(creep(solver, near, reached, 1e-6).usable());
            const MoveReport beyond = creep(solver, reached, reached + direction * 1e-4, 1e-6);
            EXPECT_FALSE(beyond.usable()) << reached;
            EXPECT_EQ(table.end(direction).constraint, beyond.constraint);
            EXPECT_GE(table.end(direction).constraint, 0);
        }
    }
    EXPECT_GT(ended, 8);
}

// Asked for again, a linkage is read to the last digit as it was the first time, however far it was solved.
TEST(LinkageTable, IsTheSameTheSecondTime) {
    const Linkage linkage = buildLinkage(CarGenerator(7).draw(Layout::parallelTrackBar));
    const auto readAt = [](LinkageTable& table, double travel) {
        std::array<TableValue, 4> values;
        table.read(travel, values.data());
        return values;
    };
    LinkageTable fresh;
    ASSERT_TRUE(fresh.begin(linkage, kLines).usable());
    fresh.cover(-0.03, 0.04);
    LinkageTable again;
    ASSERT_TRUE(again.begin(linkage, kLines).usable());
    again.cover(-0.2, 0.2);
    ASSERT_TRUE(again.begin(linkage, kLines).usable());
    EXPECT_EQ(again.nodeCount(), 1U);
    again.cover(-0.03, 0.04);
    EXPECT_EQ(again.lowest(), fresh.lowest());
    EXPECT_EQ(again.highest(), fresh.highest());
    for (double travel = -0.05; travel < 0.05; travel += 0.0013) {
        const auto one = readAt(fresh, travel);
        const auto other = readAt(again, travel);
        for (std::size_t index = 0; index < one.size(); ++index) {
            EXPECT_EQ(one[index].value, other[index].value);
            EXPECT_EQ(one[index].second, other[index].second);
        }
    }
    // Another line makes it another table.
    std::array<TableLine, 2> moved = kLines;
    moved[0].onAxle.x() += 0.01;
    ASSERT_TRUE(again.begin(linkage, moved).usable());
    again.cover(-0.03, 0.04);
    EXPECT_NE(readAt(again, 0.01)[2].value, readAt(fresh, 0.01)[2].value);
}

}  // namespace bolthole
