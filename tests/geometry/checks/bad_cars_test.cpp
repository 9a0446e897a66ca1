// Cars no shop would build: each is refused at its place, or solved, or said why not; never nonsense in
// silence.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <functional>

#include "geometry/car/faults.h"
#include "geometry/checks/warnings.h"
#include "geometry/edits/edit.h"
#include "geometry/kinematics/trace.h"
#include "tests/support/car_generator.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

constexpr std::array kLayouts{
    Layout::triangulated,         Layout::apart,      Layout::threeLink,     Layout::torqueArm,
    Layout::wattsThreeLink,       Layout::parallel,   Layout::parallelGuide, Layout::parallelTrackBar,
    Layout::triangulatedTrackBar, Layout::ladderGuide};

// One thing wrong with a car, often badly.
void spoil(Car& car, CarGenerator& random, int how) {
    Link& link =
        car.links[static_cast<std::size_t>(random.between(0, static_cast<double>(car.links.size())))];
    Hole& axleHole = link.axle.holes.front();
    Hole& chassisHole = link.chassis.holes.front();
    switch (how) {
        case 0:
            axleHole.at = chassisHole.at;
            break;
        case 1:
            for (Link& each : car.links) {
                each.axle.holes.front().at = each.chassis.holes.front().at = Eigen::Vector3d(0.1, 0.2, 0.3);
            }
            break;
        case 2:
            link.length = random.between(0.0, 3.0);
            break;
        case 3:
            car.travel.bump = car.travel.droop = random.between(0.3, 5.0);
            break;
        case 4:
            car.cgHeight = random.between(-0.1, 0.01);
            break;
        case 5:
            car.wheelbase = random.between(-1.0, 0.2);
            break;
        case 6:
            axleHole.at *= random.between(-50, 50);
            break;
        case 7:
            chassisHole.at.setConstant(std::nan(""));
            break;
        case 8:
            car.links.erase(car.links.begin());
            break;
        case 9:
            car.rearTireRadius = random.between(0.0, 20.0);
            break;
        case 10:
            link.axle.use = 3;
            break;
        default:
            random.misbuild(car, 0.4);
            break;
    }
}

void expectSense(const Car& car) {
    const std::vector<Fault> faults = findFaults(car);
    for (const Fault& fault : faults) {
        EXPECT_FALSE(fault.reason.empty());
    }
    if (!faults.empty()) {
        return;
    }
    const Trace trace = computeTrace(car);
    if (!trace.assembly.usable()) {
        EXPECT_FALSE(describe(trace.assembly, car, Units::inch).empty());
        return;
    }
    bool droopShort = false;
    bool bumpShort = false;
    for (const Station& station : trace.stations) {
        const double travel = station[Figure::travel];
        droopShort = droopShort || (!station.usable && travel < 0);
        bumpShort = bumpShort || (!station.usable && travel > 0);
        // What is always there of a pose the links reach.
        for (const Figure figure : {Figure::axleX, Figure::antiSquat, Figure::swingArmAngle}) {
            EXPECT_EQ(std::isfinite(station[figure]), station.usable) << travel;
        }
    }
    EXPECT_TRUE(!droopShort || !describe(trace.droopEnd, car, Units::inch).empty());
    EXPECT_TRUE(!bumpShort || !describe(trace.bumpEnd, car, Units::inch).empty());
    for (const Warning& warning : findWarnings(car)) {
        EXPECT_FALSE(sentence(warning.finding).empty());
        EXPECT_THAT(sentence(warning.finding), testing::Not(HasSubstr("nan")));
    }
}

TEST(AnyCar, SolvesOrSaysWhyNot) {
    CarGenerator random(20);
    for (int run = 0; run < 1200; ++run) {
        Car car = random.draw(kLayouts[static_cast<std::size_t>(run) % kLayouts.size()]);
        car.travel.steps = 9;
        const int how = run / static_cast<int>(kLayouts.size()) % 12;
        spoil(car, random, how);
        SCOPED_TRACE(testing::Message() << "run " << run << ", spoiled " << how);
        expectSense(car);
    }
}

// What each bad car of the shop is told, and at which place of the car file.
TEST(BadCar, IsToldAtItsPlace) {
    struct Case {
        std::function<void(Car&)> spoil;
        const char* path;
    };
    const std::array<Case, 4> cases{{
        {[](Car& car) { car.links[1].axle.holes[0].at = car.links[1].chassis.holes[0].at; }, "links[1]"},
        {[](Car& car) { car.cgHeight = 0; }, "cg_height"},
        {[](Car& car) { car.wheelbase = 0; }, "wheelbase"},
        {[](Car& car) { car.links[0].axle.use = 9; }, "links[0].axle.use"},
    }};
    for (const Case& each : cases) {
        Car car = CarGenerator(3).draw(Layout::triangulated);
        each.spoil(car);
        const std::vector<Fault> faults = findFaults(car);
        ASSERT_FALSE(faults.empty()) << each.path;
        EXPECT_THAT(faults.front().path, HasSubstr(each.path));
    }
}

TEST(BadCar, LinksThatCannotMeetAreNamed) {
    Car car = CarGenerator(3).draw(Layout::triangulated);
    car.links[0].name = "left lower";
    car.links[0].length = 0.05;
    const Trace trace = computeTrace(car);
    ASSERT_FALSE(trace.assembly.usable());
    EXPECT_THAT(describe(trace.assembly, car, Units::inch), HasSubstr("left lower"));
}

TEST(BadCar, TravelPastWhatTheLinksAllowEndsWithAWord) {
    Car car = CarGenerator(3).draw(Layout::triangulated);
    car.travel.bump = car.travel.droop = 2.0;
    const Trace trace = computeTrace(car);
    ASSERT_TRUE(trace.assembly.usable());
    EXPECT_FALSE(trace.stations.front().usable);
    EXPECT_FALSE(trace.stations.back().usable);
    EXPECT_TRUE(trace.ride.usable) << "the rest keeps working";
    EXPECT_FALSE(describe(trace.bumpEnd, car, Units::inch).empty());
    EXPECT_FALSE(describe(trace.droopEnd, car, Units::inch).empty());
}

}  // namespace
}  // namespace bolthole
