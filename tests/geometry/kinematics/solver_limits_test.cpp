// What the solver says where the links give out, and where they hold too little.
#include <gmock/gmock.h>

#include <Eigen/LU>
#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/kinematics/axle_solver.h"
#include "geometry/kinematics/trace.h"
#include "tests/support/car_generator.h"

namespace bolthole {

namespace {

std::size_t indexOf(const Car& car, const std::string& name) {
    const auto found = std::ranges::find(car.links, name, &Link::name);
    EXPECT_NE(found, car.links.end()) << name;
    return static_cast<std::size_t>(found - car.links.begin());
}

Car without(Car car, const std::string& name) {
    car.links.erase(car.links.begin() + static_cast<std::ptrdiff_t>(indexOf(car, name)));
    return car;
}

MoveReport assemble(const Car& car, Drive drive) {
    AxleSolver solver(buildLinkage(car), drive);
    return solver.assemble();
}

// Determinant of the four rods' lengths against x, y, pitch and yaw, by central differences: zero where the
// linkage is about to turn over.
double determinantAt(const Linkage& linkage, const AxlePose& pose) {
    constexpr double kStep = 1e-6;
    constexpr std::array kParts{&AxlePose::x, &AxlePose::y, &AxlePose::pitch, &AxlePose::yaw};
    Eigen::Matrix4d slopes;
    for (Eigen::Index row = 0; row < 4; ++row) {
        const Constraint& rod = linkage.constraints[static_cast<std::size_t>(row)];
        for (Eigen::Index column = 0; column < 4; ++column) {
            AxlePose ahead = pose;
            AxlePose back = pose;
            ahead.*kParts[static_cast<std::size_t>(column)] += kStep;
            back.*kParts[static_cast<std::size_t>(column)] -= kStep;
            slopes(row, column) = ((ahead.carry(rod.onAxle) - rod.onChassis).norm() -
                                   (back.carry(rod.onAxle) - rod.onChassis).norm()) /
                                  (2 * kStep);
        }
    }
    return slopes.determinant();
}

// A three-link car whose track bar is so short and steep that the axle can't drop far.
Car shortTrackBarCar(CarGenerator& generator) {
    Car car = generator.draw(Layout::wattsThreeLink);
    car.links.back() =
        makeLink("track bar", LinkKind::rod, Side::center,
                 {{-0.14, 0.10, car.rearTireRadius + 0.05}, {-0.14, 0.06, car.rearTireRadius}});
    return car;
}

const std::string& linkAtFault(const Car& car, const MoveReport& report) {
    const Linkage linkage = buildLinkage(car);
    return car
        .links[static_cast<std::size_t>(
            linkage.constraints[static_cast<std::size_t>(report.constraint)].link)]
        .name;
}

}  // namespace

// The bar, 64 mm long, hangs straight down about 14 mm below ride: there it ends, short of 90 mm of droop.
TEST(SolverLimits, TraceEndsWhereALinkRunsOutAndNamesIt) {
    CarGenerator generator(21);
    for (int number = 0; number < 200; ++number) {
        SCOPED_TRACE(testing::Message() << "car " << number);
        const Car car = shortTrackBarCar(generator);
        const double length = builtLength(car.links.back());
        const Trace trace = computeTrace(car);
        ASSERT_TRUE(trace.assembly.usable());
        EXPECT_EQ(trace.droopEnd.stop, Stop::outOfReach);
        ASSERT_GE(trace.droopEnd.constraint, 0);
        EXPECT_EQ(linkAtFault(car, trace.droopEnd), "track bar");
        // Pitch moves the bar's end, 140 mm behind the axle's center, by a few millimetres more.
        EXPECT_NEAR(trace.droopEnd.travel, 0.05 - length, 0.015);
        EXPECT_THAT(describe(trace.droopEnd, car, Units::metric), testing::HasSubstr("track bar"));
        for (const Station& station : trace.stations) {
            const bool within = station[Figure::travel] >= trace.droopEnd.travel &&
                                (trace.bumpEnd.usable() || station[Figure::travel] <= trace.bumpEnd.travel);
            EXPECT_EQ(station.usable, within) << "travel " << station[Figure::travel];
            EXPECT_EQ(std::isnan(station[Figure::antiSquat]), !within);
        }
    }
}

// What the solver calls the end is one: there the linkage is singular, and no pose lies beyond.
TEST(SolverLimits, TheEndOfTheTravelIsWhereTheLinkageTurnsOver) {
    CarGenerator generator(28);
    for (int number = 0; number < 200; ++number) {
        const Linkage linkage = buildLinkage(shortTrackBarCar(generator));
        AxleSolver solver(linkage, Drive::travel);
        ASSERT_TRUE(solver.assemble().usable());
        const double atRide = determinantAt(linkage, solver.pose());
        ASSERT_EQ(solver.moveTo(-0.09).stop, Stop::outOfReach);
        const double atEnd = determinantAt(linkage, solver.pose());
        EXPECT_GT(atEnd / atRide, 0) << "car " << number;
        EXPECT_LT(atEnd / atRide, 0.05) << "car " << number;
    }
}

// After a failed move the solver stands at the last pose that can be assembled, and can move back from it.
TEST(SolverLimits, FailedMoveLeavesALastGoodPose) {
    CarGenerator generator(22);
    for (int number = 0; number < 200; ++number) {
        const Car car = shortTrackBarCar(generator);
        AxleSolver solver(buildLinkage(car), Drive::roll);
        ASSERT_TRUE(solver.assemble().usable());
        const AxlePose ride = solver.pose();
        const MoveReport report = solver.moveTo(-0.09);
        ASSERT_EQ(report.stop, Stop::outOfReach);
        EXPECT_LE(solver.bind(), 1e-10);
        EXPECT_NEAR(solver.pose().z - car.rearTireRadius, report.travel, 1e-15);
        ASSERT_TRUE(solver.moveTo(0).usable());
        EXPECT_NEAR(solver.pose().x, ride.x, 1e-11);
        EXPECT_NEAR(solver.pose().y, ride.y, 1e-11);
        EXPECT_NEAR(solver.pose().pitch, ride.pitch, 1e-11);
        EXPECT_NEAR(solver.pose().yaw, ride.yaw, 1e-11);
    }
}

// The axle would have to stand nearly a metre to the side, further than the lowers are long.
TEST(SolverLimits, ALengthFarOffCannotBeAssembled) {
    CarGenerator generator(23);
    for (int number = 0; number < 200; ++number) {
        Car car = generator.draw(Layout::threeLink);
        Link& bar = car.links[indexOf(car, "track bar")];
        bar.length = 0.1 * holeDistance(bar);
        const Trace trace = computeTrace(car);
        EXPECT_EQ(trace.assembly.stop, Stop::outOfReach) << "car " << number;
        EXPECT_FALSE(trace.ride.usable);
        EXPECT_TRUE(std::ranges::none_of(trace.stations, &Station::usable));
    }
}

TEST(SolverLimits, AMissingLinkLeavesItsFreedom) {
    CarGenerator generator(24);
    for (int number = 0; number < 200; ++number) {
        SCOPED_TRACE(testing::Message() << "car " << number);
        const Car threeLink = generator.draw(Layout::threeLink);
        const MoveReport noBar = assemble(without(threeLink, "track bar"), Drive::roll);
        EXPECT_EQ(noBar.stop, Stop::underHeld);
        EXPECT_EQ(noBar.freedom, Freedom::sideways);
        const MoveReport noThird = assemble(without(threeLink, "third link"), Drive::travel);
        EXPECT_EQ(noThird.stop, Stop::underHeld);
        EXPECT_EQ(noThird.freedom, Freedom::pitch);
        Car oneLower = threeLink;
        splitPairs(oneLower);
        const MoveReport noLeft = assemble(without(oneLower, "lower left"), Drive::travel);
        EXPECT_EQ(noLeft.stop, Stop::underHeld);
        // The axle then yaws about the other lower and, held by the third link, turns over as it does.
        EXPECT_THAT(noLeft.freedom, testing::AnyOf(Freedom::yaw, Freedom::pitch));
    }
}

TEST(SolverLimits, NoFourLinkStandsOnThreeOfItsLinks) {
    CarGenerator generator(25);
    for (int number = 0; number < 200; ++number) {
        Car car = generator.draw(Layout::triangulated);
        splitPairs(car);
        for (const Link& link : car.links) {
            const MoveReport report = assemble(without(car, link.name), Drive::travel);
            EXPECT_EQ(report.stop, Stop::underHeld) << "car " << number << " without " << link.name;
            EXPECT_NE(report.freedom, Freedom::none);
            EXPECT_FALSE(computeTrace(without(car, link.name)).ride.usable);
        }
    }
}

// Nothing at all, and only a guide: there is no rod to strain, and still an answer.
TEST(SolverLimits, AnAxleWithoutRodsIsUnderHeld) {
    EXPECT_EQ(assemble(Car{}, Drive::travel).stop, Stop::underHeld);
    Car guided;
    guided.links = {makeLink("guide", LinkKind::guide, Side::center, {{0, 0, 0.3}, {0, 0, 0.3}})};
    EXPECT_EQ(assemble(guided, Drive::travel).stop, Stop::underHeld);
}

TEST(SolverLimits, SymmetryHoldsAFourLinkWithoutLocatorInTravelOnly) {
    CarGenerator generator(26);
    for (int number = 0; number < 200; ++number) {
        SCOPED_TRACE(testing::Message() << "car " << number);
        const Car car = generator.draw(Layout::parallel);
        AxleSolver solver(buildLinkage(car), Drive::travel);
        ASSERT_TRUE(solver.assemble().usable());
        EXPECT_EQ(solver.heldBySymmetry(), Freedom::sideways);
        ASSERT_TRUE(solver.moveTo(0.08).usable());
        EXPECT_NEAR(solver.pose().y, 0.0, 1e-12);
        EXPECT_NEAR(solver.pose().yaw, 0.0, 1e-12);
        EXPECT_LE(solver.bind(), 1e-12);
        const MoveReport roll = assemble(car, Drive::roll);
        EXPECT_EQ(roll.stop, Stop::underHeld);
        EXPECT_EQ(roll.freedom, Freedom::sideways);
    }
}

TEST(SolverLimits, ACarHeldByItsLinksDoesNotLeanOnSymmetry) {
    CarGenerator generator(27);
    for (const Layout layout : {Layout::triangulated, Layout::threeLink, Layout::torqueArm,
                                Layout::wattsThreeLink, Layout::parallelGuide}) {
        for (int number = 0; number < 40; ++number) {
            AxleSolver solver(buildLinkage(generator.draw(layout)), Drive::travel);
            ASSERT_TRUE(solver.assemble().usable());
            EXPECT_EQ(solver.heldBySymmetry(), Freedom::none);
        }
    }
}

}  // namespace bolthole
