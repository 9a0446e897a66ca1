// A car's driveline at its poses: one piece and two, wound up, and set to cancel.
#include "geometry/statics/driveline_figures.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "tests/support/car_generator.h"
#include "tests/support/made_units.h"

namespace bolthole {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr double kRadius = 0.33;  // m, of the tire

// All in the center plane: pinion joint at the axle's height, shaft level, 1.2 m long.
Driveline levelShaft(double pinionDegrees, double outputDegrees) {
    Driveline line;
    line.pinionAngle = pinionDegrees * kDegree;
    line.pinionJoint = {0.3, 0, kRadius};
    line.outputAngle = outputDegrees * kDegree;
    line.outputJoint = {1.5, 0, kRadius};
    return line;
}

AxlePose measuredPose() {
    return {.z = kRadius};
}

DrivelineReader readerOf(const Driveline& line, const ShaftSetup& setup = {}) {
    DrivelineReader reader(line, setup, kRadius);
    reader.setRide(measuredPose());
    return reader;
}

Station rideStation() {
    Station ride;
    ride.usable = true;
    ride.pose = measuredPose();
    ride.figures[static_cast<std::size_t>(Figure::ground)] = 0;
    return ride;
}

std::vector<DrivelineWarning> warningsOf(const Driveline& line, const ShaftSetup& setup, double travel = 0) {
    const DrivelineReader reader = readerOf(line, setup);
    Trace trace;
    for (const double at : {-travel, 0.0, travel}) {
        Station station = rideStation();
        station.pose.z += at;
        station.figures[static_cast<std::size_t>(Figure::travel)] = at;
        trace.stations.push_back(station);
    }
    return findDrivelineWarnings(line, setup, reader.read(measuredPose()), sweepDriveline(reader, trace, 0),
                                 Units::inch);
}

auto warning(DrivelinePart part, const std::string& words) {
    return AllOf(testing::Field(&DrivelineWarning::part, part),
                 testing::Field(&DrivelineWarning::finding, testing::ResultOf(sentence, HasSubstr(words))));
}

}  // namespace

// The trace computes both joints, and plunge, by formulas of its own.
TEST(DrivelineFigures, AgreeWithTheTrace) {
    CarGenerator generator(71);
    for (const Layout layout : {Layout::triangulated, Layout::apart, Layout::threeLink}) {
        for (int number = 0; number < 20; ++number) {
            const Car car = generator.draw(layout);
            const Trace trace = computeTrace(car);
            DrivelineReader reader(*car.driveline, {}, car.rearTireRadius);
            reader.setRide(trace.ride.pose);
            for (const Station& station : trace.stations) {
                const DrivelineFigures figures = reader.read(station.pose);
                ASSERT_EQ(figures.joints, 2U);
                EXPECT_NEAR(figures.angle[0], station[Figure::frontJoint], 1e-13);
                EXPECT_NEAR(figures.rearJoint(), station[Figure::rearJoint], 1e-13);
                EXPECT_NEAR(figures.plunge, station[Figure::plunge], 1e-13);
            }
        }
    }
}

// By hand: front joint 3 deg, rear joint 1.5 deg, in one plane.
TEST(DrivelineFigures, OnePieceByHand) {
    const DrivelineFigures figures = readerOf(levelShaft(1.5, 3)).read(measuredPose());
    EXPECT_NEAR(figures.angle[0] / kDegree, 3, 1e-9);
    EXPECT_NEAR(figures.rearJoint() / kDegree, 1.5, 1e-9);
    EXPECT_NEAR(figures.equivalent / kDegree, std::sqrt(9 - 2.25), 1e-9);
    EXPECT_NEAR(figures.swing, figures.equivalent * figures.equivalent, 1e-5);
    EXPECT_NEAR(figures.shaftLength, 1.2, 1e-12);
    EXPECT_NEAR(figures.plunge, 0, 1e-15);
}

// By hand: the front piece rises forward by 1 deg under an output of 3, the rear one is level, the pinion 4
// deg up: joints of 2, 1 and 4 deg, in phase: 4 - 1 + 16. Turned a quarter, the rear piece's yokes make its
// last joint count against: |4 - 1 - 16|.
TEST(DrivelineFigures, TwoPiecesByHand) {
    Driveline line = levelShaft(4, 3);
    ShaftSetup setup;
    setup.carrierJoint = Eigen::Vector3d(1.0, 0, kRadius);
    line.outputJoint.z() += 0.5 * std::tan(1 * kDegree);
    const DrivelineFigures figures = readerOf(line, setup).read(measuredPose());
    ASSERT_EQ(figures.joints, 3U);
    EXPECT_NEAR(figures.angle[0] / kDegree, 2, 1e-9);
    EXPECT_NEAR(figures.angle[1] / kDegree, 1, 1e-9);
    EXPECT_NEAR(figures.rearJoint() / kDegree, 4, 1e-9);
    EXPECT_NEAR(figures.equivalent / kDegree, std::sqrt(4.0 - 1 + 16), 1e-9);
    EXPECT_NEAR(figures.shaftLength, 0.7, 1e-12);
    setup.yokeOffset[1] = std::numbers::pi / 2;
    EXPECT_NEAR(readerOf(line, setup).read(measuredPose()).equivalent / kDegree, std::sqrt(13.0), 1e-9);
}

// Wound up by 2 deg about the axle's center, the pinion joint 0.3 m ahead of it rises by 0.3 sin 2 deg.
TEST(DrivelineFigures, WindUpTurnsTheNoseUp) {
    const DrivelineReader reader = readerOf(levelShaft(-1, 1));
    const DrivelineFigures figures = reader.read(woundUp(measuredPose(), 2 * kDegree));
    const double dx = 1.5 - 0.3 * std::cos(2 * kDegree);
    const double dz = -0.3 * std::sin(2 * kDegree);
    EXPECT_NEAR(figures.shaftLength, std::hypot(dx, dz), 1e-12);
    EXPECT_NEAR(figures.rearJoint(), 1 * kDegree - std::atan2(dz, dx), 1e-12);
    EXPECT_NEAR(figures.angle[0], 1 * kDegree - std::atan2(dz, dx), 1e-12);
}

// By hand: the pinion joint at the axle's center, so that turning the housing moves no joint. Output 3 deg
// up on a level shaft: parallel at +3, broken back at -3.
TEST(PinionSettings, ByHand) {
    Driveline line = levelShaft(1, 3);
    line.pinionJoint.x() = 0;
    const PinionSettings settings = pinionSettings(readerOf(line), rideStation(), measuredPose());
    ASSERT_TRUE(settings.parallel && settings.brokenBack);
    EXPECT_NEAR(settings.parallel->turn / kDegree, 2, 1e-9);
    EXPECT_NEAR(settings.parallel->pinion / kDegree, 3, 1e-9);
    EXPECT_NEAR(settings.brokenBack->turn / kDegree, -4, 1e-9);
    EXPECT_NEAR(settings.brokenBack->pinion / kDegree, -3, 1e-9);
    EXPECT_NEAR(settings.parallel->left, 0, 1e-7);
    EXPECT_NEAR(settings.brokenBack->left, 0, 1e-7);
    EXPECT_TRUE(settings.parallelIsMeant);
    line.pinionAngle = -2 * kDegree;
    EXPECT_FALSE(pinionSettings(readerOf(line), rideStation(), measuredPose()).parallelIsMeant);
}

// Set as the solution says, cars anywhere in travel and wound up have equal joints, in space. A parallel
// pinion cancels wherever the axle does not yaw. Broken back, a shaft that runs askew in plan bends the same
// way there and opposite ways in side view; past some skew its joints add, and there is no such setting.
TEST(PinionSettings, MakeTheJointsEqualInSpace) {
    CarGenerator generator(72);
    int found = 0;
    for (const Layout layout : {Layout::triangulated, Layout::apart, Layout::threeLink}) {
        for (int number = 0; number < 30; ++number) {
            SCOPED_TRACE(testing::Message() << "layout " << static_cast<int>(layout) << ", car " << number);
            const Car car = generator.draw(layout);
            const Trace trace = computeTrace(car);
            DrivelineReader reader(*car.driveline, {}, car.rearTireRadius);
            reader.setRide(trace.ride.pose);
            const Station& station = trace.stations[static_cast<std::size_t>(number) * 2];
            const AxlePose attitude = woundUp(station.pose, generator.between(0, 0.05));
            const PinionSettings settings = pinionSettings(reader, trace.ride, attitude);
            for (const auto& setting : {settings.parallel, settings.brokenBack}) {
                if (!setting) {
                    continue;
                }
                ++found;
                const DrivelineFigures figures = reader.read(attitude, setting->turn);
                EXPECT_NEAR(figures.rearJoint(), figures.angle[0], 1e-9);
                EXPECT_NEAR(setting->left, figures.equivalent, 1e-12);
                EXPECT_LE(setting->left, figures.rearJoint() + 1e-9);
                EXPECT_NEAR(setting->pinion, trace.ride[Figure::pinion] + setting->turn, 1e-3);
            }
            if (layout == Layout::triangulated) {
                ASSERT_TRUE(settings.parallel.has_value());
                EXPECT_NEAR(settings.parallel->left, 0, 1e-6);
            }
        }
    }
    EXPECT_GT(found, 120) << "of 180";
}

// What the housing's own turn means: a car measured with its pinion so turned reads the same.
TEST(PinionSettings, TheTurnIsTheHousings) {
    const Driveline line = levelShaft(1, 3);
    const double turn = 0.03;
    Driveline turned = line;
    turned.pinionAngle += turn;
    turned.pinionJoint = {0.3 * std::cos(turn), 0, kRadius + 0.3 * std::sin(turn)};
    const AxlePose pose{.x = 0.004, .y = 0.002, .z = 0.35, .pitch = 0.02, .yaw = -0.01};
    const DrivelineFigures one = readerOf(line).read(pose, turn);
    const DrivelineFigures other = readerOf(turned).read(pose);
    EXPECT_NEAR(one.rearJoint(), other.rearJoint(), 1e-13);
    EXPECT_NEAR(one.angle[0], other.angle[0], 1e-13);
    EXPECT_NEAR(one.shaftLength, other.shaftLength, 1e-13);
}

// With a front piece the last joint takes what the two before leave: 2.5^2 - 1.5^2 = 2^2. Where the front
// joint bends more than the middle one, or yokes are out of phase, the last one only adds.
TEST(PinionSettings, TwoPiecesCancelOnlyWhatTheyCan) {
    Driveline line = levelShaft(0, 0);
    ShaftSetup setup;
    setup.carrierJoint = Eigen::Vector3d(1.0, 0, kRadius);
    line.pinionJoint.x() = 0;
    line.outputJoint.z() += 0.5 * std::tan(2.5 * kDegree);
    line.outputAngle = 4 * kDegree;
    const PinionSettings settings = pinionSettings(readerOf(line, setup), rideStation(), measuredPose());
    ASSERT_TRUE(settings.parallel && settings.brokenBack);
    EXPECT_NEAR(settings.parallel->pinion / kDegree, 2, 1e-7);
    EXPECT_NEAR(settings.brokenBack->pinion / kDegree, -2, 1e-7);
    EXPECT_NEAR(settings.parallel->left, 0, 1e-6);
    line.outputAngle = 6 * kDegree;
    const PinionSettings adding = pinionSettings(readerOf(line, setup), rideStation(), measuredPose());
    EXPECT_FALSE(adding.parallel || adding.brokenBack);
    setup = {};
    setup.yokeOffset[0] = std::numbers::pi / 2;
    const PinionSettings crossed = pinionSettings(readerOf(line, setup), rideStation(), measuredPose());
    EXPECT_FALSE(crossed.parallel || crossed.brokenBack);
}

TEST(DrivelineSweepTest, FindsTheWorstOfTheTrace) {
    const Car car = CarGenerator(73).draw(Layout::apart);
    Trace trace = computeTrace(car);
    trace.stations.front().usable = false;
    DrivelineReader reader(*car.driveline, {}, car.rearTireRadius);
    reader.setRide(trace.ride.pose);
    const DrivelineSweep sweep = sweepDriveline(reader, trace, 0.02);
    double front = 0;
    double least = 1;
    double equivalent = 0;
    for (std::size_t row = 1; row < trace.stations.size(); ++row) {
        const DrivelineFigures figures = reader.read(woundUp(trace.stations[row].pose, 0.02));
        front = std::max(front, figures.angle[0]);
        least = std::min(least, figures.plunge);
        equivalent = std::max(equivalent, figures.equivalent);
    }
    EXPECT_EQ(sweep.largest[0].value, front);
    EXPECT_EQ(sweep.leastPlunge.value, least);
    EXPECT_EQ(sweep.equivalent.value, equivalent);
    for (const AtTravel& at : {sweep.largest[0], sweep.leastPlunge, sweep.equivalent}) {
        EXPECT_GE(at.travel, trace.stations[1][Figure::travel]);
    }
    EXPECT_TRUE(std::isnan(sweepDriveline(reader, Trace{}, 0).mostPlunge.value));
}

TEST(DrivelineWarnings, AGoodShaftHasNone) {
    ShaftSetup setup;
    setup.engineSpeed = 6000 * kRpm;
    setup.gear = 1.5;
    setup.slip = SlipYoke{.engagement = 0.09, .leastEngagement = 0.06, .inward = 0.02};
    EXPECT_THAT(warningsOf(levelShaft(2, 2), setup, 0.05), IsEmpty());
}

TEST(DrivelineWarnings, EachHasItsReason) {
    ShaftSetup setup;
    setup.yokeOffset[0] = std::numbers::pi / 2;
    EXPECT_THAT(warningsOf(levelShaft(3, 3), setup),
                ElementsAre(warning(DrivelinePart::yokeOffset, "add instead of canceling")));
    EXPECT_THAT(warningsOf(levelShaft(1, 5), {}),
                ElementsAre(warning(DrivelinePart::pinionAngle, "as unevenly as with one joint at 4.9")));
    EXPECT_THAT(warningsOf(levelShaft(0.2, 0.6), {}),
                ElementsAre(warning(DrivelinePart::pinionAngle, "rear joint 0.20° at ride: its needles")));
    Driveline limited = levelShaft(2, 2);
    limited.jointLimit = 4 * kDegree;
    EXPECT_THAT(
        warningsOf(limited, {}, 0.06),
        Contains(warning(DrivelinePart::jointLimit, "front joint bends to 4.86° at 2.36 in of bump")));
}

TEST(DrivelineWarnings, SpeedAndSlip) {
    ShaftSetup setup;
    setup.engineSpeed = 6000 * kRpm;
    EXPECT_FALSE(setup.speed().has_value()) << "no gear";
    setup.gear = 1.0;
    EXPECT_THAT(warningsOf(levelShaft(4, 4), setup),
                Contains(warning(DrivelinePart::speed, "at 6000 rpm of the shaft less than 3.20°")));
    setup.gear = 2.0;
    EXPECT_THAT(warningsOf(levelShaft(6.5, 6.5), setup),
                Contains(warning(DrivelinePart::speed, "at 3000 rpm of the shaft 5.80°")));
    setup = {};
    setup.slip = SlipYoke{.engagement = 0.05, .leastEngagement = 0.05, .inward = 0};
    EXPECT_THAT(warningsOf(levelShaft(2, 2), setup, 0.05),
                ElementsAre(warning(DrivelinePart::slip, "it can come out")));
}

TEST(ShaftSetupTest, RefusesWhatCanNotBe) {
    const Driveline line = levelShaft(1, 1);
    EXPECT_EQ(refusal(ShaftSetup{}, line), "");
    ShaftSetup setup;
    setup.carrierJoint = Eigen::Vector3d(1.6, 0, kRadius);
    EXPECT_THAT(refusal(setup, line), HasSubstr("behind the transmission's"));
    setup.carrierJoint = Eigen::Vector3d(0.2, 0, kRadius);
    EXPECT_THAT(refusal(setup, line), HasSubstr("ahead of the pinion's"));
    setup = {};
    setup.gear = 0;
    EXPECT_THAT(refusal(setup, line), HasSubstr("gear ratio above 0"));
    setup = {};
    setup.slip = SlipYoke{.engagement = std::nan("")};
    EXPECT_THAT(refusal(setup, line), HasSubstr("slip yoke"));
    Driveline reversed = line;
    reversed.outputJoint.x() = 0.1;
    EXPECT_THAT(refusal({}, reversed), HasSubstr("ahead of the pinion's"));
}

}  // namespace bolthole
