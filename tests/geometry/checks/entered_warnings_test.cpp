// Warnings about what was entered beside the links, each at the field it concerns.
#include <gmock/gmock.h>

#include <algorithm>
#include <string>
#include <vector>

#include "geometry/car/faults.h"
#include "geometry/car/numbers.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/checks/warnings.h"
#include "geometry/edits/edit.h"
#include "geometry/kinematics/trace.h"
#include "geometry/units/units.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

// The warnings of the car that it does not have without the change.
std::vector<std::string> newWarnings(const Car& before, const Car& after) {
    std::vector<std::string> old;
    for (const Warning& warning : findWarnings(before)) {
        old.push_back(warning.path + ": " + sentence(warning.finding));
    }
    std::vector<std::string> result;
    for (const Warning& warning : findWarnings(after)) {
        const std::string line = warning.path + ": " + sentence(warning.finding);
        // Every warning leads to a number the car has, or could have.
        EXPECT_FALSE(jsonPath(warning.id).empty()) << line;
        if (std::ranges::find(old, line) == old.end()) {
            result.push_back(line);
        }
    }
    return result;
}

class EnteredWarnings : public testing::Test {
  protected:
    [[nodiscard]] std::vector<std::string> found() const { return newWarnings(plainCar(), car); }
    Car car = plainCar();
};

TEST_F(EnteredWarnings, ACornerThatDisagreesWithTheDriver) {
    // With 90 kg aboard the left front cannot have become lighter.
    car.weighing.other = {490, 440, 340, 330};
    EXPECT_THAT(found(), Contains(HasSubstr("left_front: ")));
    car.weighing.other = {450, 440, 330, 325};
    car.weighing.driver.mass = 85;
    EXPECT_THAT(found(), IsEmpty());
    car.weighing.driver.mass = 60;
    EXPECT_THAT(found(), Contains(HasSubstr("weighing.driver.mass: ")));
}

TEST_F(EnteredWarnings, APressureThatChangesNothingOrIsFarFromItsReadings) {
    EnteredRates& rear = car.wheelRates.rear;
    rear.tire = 200e3;
    rear.pressure = 120e3;
    EXPECT_THAT(found(), Contains(HasSubstr("wheel_rates.rear.pressure: the pressure of the rear tires")));
    rear.tirePressure = 120e3;
    rear.otherPressure = 120e3;
    rear.otherTire = 210e3;
    EXPECT_THAT(found(), Contains(HasSubstr("two pressures that differ")));
    rear.otherPressure = 140e3;
    EXPECT_THAT(found(), IsEmpty());
    rear.pressure = 165e3;
    EXPECT_THAT(found(), Contains(HasSubstr("their rate there is a guess")));
}

TEST_F(EnteredWarnings, ReadingsThatLieFarApart) {
    const FieldId uncertainty{.field = Field::wheelbase, .uncertainty = true};
    car = bolthole::apply(car, SetNumber{uncertainty, 0.004}).car;
    EXPECT_THAT(found(), IsEmpty());
    car = bolthole::apply(car, SetNumber{uncertainty, 0.0127}).car;  // 1.96 of it: 0.98 in
    EXPECT_THAT(found(), Contains(HasSubstr("wheelbase: wheelbase is known only to ± 1.0 in")));
}

TEST_F(EnteredWarnings, AHoleWhereNoCarHasOne) {
    const Eigen::Vector3d at = car.links[0].chassis.holes[0].at;
    const auto moved = [&](int axis, double value) {
        car.links[0].chassis.holes[0].at = at;
        car.links[0].chassis.holes[0].at[axis] = value;
        return found();
    };
    EXPECT_THAT(moved(0, 1.1 * std::max(car.wheelbase, 2.0)),
                Contains(HasSubstr("ahead of the axle, outside what cars have")));
    EXPECT_THAT(moved(0, -1.3), Contains(HasSubstr("behind the axle, outside what cars have")));
    EXPECT_THAT(moved(1, 10 * at.y()), Contains(HasSubstr("out, outside what cars have")));
    EXPECT_THAT(moved(2, 10 * at.z()), Contains(HasSubstr("up, outside what cars have")));
    EXPECT_THAT(moved(0, 0.9 * car.wheelbase), Not(Contains(HasSubstr("outside what cars have"))));
}

TEST_F(EnteredWarnings, StartingNumbersAreAWarningOfTheWholeCar) {
    setOrigin(car, {.field = Field::wheelbase}, Origin::starting);
    const std::vector<Warning> warnings = findWarnings(car);
    const auto whole = std::ranges::find_if(warnings, &Warning::isOfWhole);
    ASSERT_NE(whole, warnings.end());
    EXPECT_THAT(sentence(whole->finding), HasSubstr("not measured"));
    EXPECT_EQ(std::ranges::count_if(warnings, &Warning::isOfWhole), 1);
}

TEST_F(EnteredWarnings, WithoutDriverAndNobodyKnowsHim) {
    car.cornersAre = DriverSeat::out;
    EXPECT_THAT(found(), Contains(HasSubstr("corner_weights_are: the corner weights are without driver")));
    car.weighing.driver = {85, {{1.4, 0.4, 0.6}}};
    EXPECT_THAT(found(), Not(Contains(HasSubstr("corner_weights_are"))));
}

TEST_F(EnteredWarnings, AHeightThatCantBeHad) {
    car.cgHeightFrom = CgHeightSource::lift;
    EXPECT_THAT(found(), Contains(HasSubstr("cg_height_from: the CG height chosen can't be had")));
    car.lift.height = 0.2;
    car.lift.reading = 914;
    EXPECT_THAT(found(), IsEmpty()) << "lifted by 4 deg only, which the height's own uncertainty says";
    // Two kg more in front than level, which tan 4 deg makes 2 in under the wheels' centers.
    car.lift.reading = 922;
    EXPECT_THAT(found(), Contains(HasSubstr("lift.height: these readings put the CG under the wheels'")));
    car.cgHeightFrom = CgHeightSource::estimate;
    EXPECT_THAT(found(), Contains(HasSubstr("cg_height_from: the CG height is an estimate")));
}

TEST_F(EnteredWarnings, GroupsThatAreNotWhole) {
    car.ballast[0].at.at[1].reset();
    EXPECT_THAT(found(), Contains("loads[0].at[0]: fuel is not counted: no place is entered"));
    car = plainCar();
    car.ballast[0].mass.reset();
    EXPECT_THAT(found(), Contains("loads[0].mass: fuel is not counted: no weight is entered"));
    car = plainCar();
    car.weighing.pads.leftFront = 0;
    car.weighing.pads.leftRear = 0;
    EXPECT_THAT(found(), Contains("weighing.pads.right_front: the pads' heights are not counted: 2 of 4 are "
                                  "entered"));
    car = plainCar();
    car.weighing.driver.at.at[0] = 1;
    EXPECT_THAT(found(),
                Contains("weighing.driver.at[1]: the driver's seat is not counted: a coordinate is missing"));
    car = plainCar();
    car.driveline->shaft.carrierJoint.at[2] = 0.4;
    EXPECT_THAT(found(), Contains(HasSubstr("driveline.carrier_joint[0]: the carrier joint is not counted")));
    car = plainCar();
    car.driveline->shaft.slip.engagement = 0.07;
    EXPECT_THAT(found(), Contains(HasSubstr("driveline.slip_yoke.least_engagement: the slip yoke is not")));
}

TEST_F(EnteredWarnings, APadThatIsLow) {
    car.weighing.pads = {0, 0.006, 0, 0};
    EXPECT_THAT(found(), Contains(HasSubstr("weighing.pads.left_front: ")));
}

TEST_F(EnteredWarnings, ASpringThatCantBe) {
    car.springs[0].rate = 30e3;  // without a free length
    EXPECT_THAT(found(), Contains(HasSubstr("springs[0]: coil is not computed: expected a free length")));
}

// Two coils at the motion ratio of their measured lengths push what the scales say, less the axle.
TEST_F(EnteredWarnings, SpringsThatCarryAnotherLoadThanTheScales) {
    const double rear = car.cornerWeights.leftRear + car.cornerWeights.rightRear;
    car.launch.unsprungMass = 100;
    SuspensionPart& coil = car.springs[0];
    coil.rate = 30e3;
    const auto lengthAt = [&](double travel) {
        const Eigen::Vector3d arm = coil.axle.inUse().at - Eigen::Vector3d(0, 0, car.rearTireRadius);
        return (coil.chassis.inUse().at - solveStation(car, travel).pose.carry(arm)).norm();
    };
    const double ratio = (lengthAt(-1e-4) - lengthAt(1e-4)) / 2e-4;
    const double squeezed = (rear - 100) * kStandardGravity / (2 * ratio * *coil.rate);
    coil.freeLength = lengthAt(0) + squeezed;
    EXPECT_THAT(found(), Not(Contains(HasSubstr("than the scales leave them"))));
    *coil.freeLength += 0.1 * squeezed;
    EXPECT_THAT(found(), Contains(HasSubstr("more than the scales leave them")));
    *coil.freeLength -= 0.2 * squeezed;
    EXPECT_THAT(found(), Contains(HasSubstr("less than the scales leave them")));
}

TEST_F(EnteredWarnings, TravelThatAShockDoesNotHave) {
    // The mounts of the coil stand 11 in apart at ride; closed at 10 in it takes about 1 in of bump, not 4.
    car.springs[0].kind = PartKind::shock;
    car.springs[0].closedLength = 10 * kMetresPerInch;
    const std::vector<std::string> warnings = found();
    EXPECT_THAT(warnings, Contains(testing::AllOf(HasSubstr("travel.bump: "), HasSubstr("'coil'"),
                                                  HasSubstr("is closed at 1.0"))));
    EXPECT_THAT(warnings, Not(Contains(HasSubstr("travel.droop"))));
}

TEST_F(EnteredWarnings, ASlipYokeTooShort) {
    car.driveline->shaft.slip = {0.0505, 0.05, 0.0001};
    EXPECT_THAT(found(), Contains(HasSubstr("driveline.slip_yoke.engagement: ")));
}

TEST_F(EnteredWarnings, AShaftThatTurnsTooFastForItsJoints) {
    car.driveline->pinionAngle = 0.057;  // as the output, so that the joints cancel
    car.driveline->shaft.engineSpeed = 3000 * kRpm;
    car.driveline->shaft.gear = 1;
    EXPECT_THAT(found(), Not(Contains(HasSubstr("engine_speed"))));
    car.driveline->outputAngle = car.driveline->pinionAngle = 7 * kRadiansPerDegree;
    // About 5 deg at each joint: 6000 rpm allow less than 3.2 deg, the last row of the table.
    car.driveline->shaft.engineSpeed = 6000 * kRpm;
    EXPECT_THAT(found(), Contains(HasSubstr("driveline.engine_speed: ")));
}

TEST_F(EnteredWarnings, AJointThatOnlyWindUpTakesPastItsLimit) {
    car.driveline->pinionAngle = 0.057;
    const Trace trace = computeTrace(car);
    double most = 0;
    for (const Station& station : trace.stations) {
        most = std::max({most, station[Figure::frontJoint], station[Figure::rearJoint]});
    }
    car.driveline->jointLimit = most + 0.5 * kRadiansPerDegree;
    EXPECT_THAT(found(), Not(Contains(HasSubstr("joint_limit"))));
    car.driveline->shaft.windUp = 3 * kRadiansPerDegree;
    EXPECT_THAT(found(), Contains(HasSubstr("driveline.joint_limit: wound up under power: ")));
}

TEST_F(EnteredWarnings, BrakingWithMuchAntiSquat) {
    // Anti-lift is the brakes' rear share of anti-squat: all of it brakes at the rear axle here.
    car.brakes.rearShare = 100;
    const double antiSquat = computeTrace(car).ride[Figure::antiSquat];
    ASSERT_GT(antiSquat, 100);
    EXPECT_THAT(found(), Contains(HasSubstr("brakes.rear_share: ")));
    car.brakes.rearShare = 30;
    EXPECT_THAT(found(), IsEmpty());
}

TEST_F(EnteredWarnings, ALaunchTheTiresDoNotHold) {
    car.launch.acceleration = 1.4;
    car.launch.friction = 0.6;
    EXPECT_THAT(found(), Contains(HasSubstr("launch.acceleration_g: this launch takes")));
    car.launch.friction = 2.5;
    EXPECT_THAT(found(), Not(Contains(HasSubstr("this launch takes"))));
    car.launch.acceleration = 3.5;
    EXPECT_THAT(found(), Contains(HasSubstr("the front wheels would leave the ground")));
}

TEST_F(EnteredWarnings, ALinkOverItsRating) {
    car.rearTrack = 1.5;
    car.launch.acceleration = 0.8;
    car.launch.axleRatio = 3.7;
    car.launch.unsprungMass = 110;
    car.links[0].rating = 1e6;
    EXPECT_THAT(found(), Not(Contains(HasSubstr("rating"))));
    car.links[0].rating = 1000;
    EXPECT_THAT(found(), Contains(testing::AllOf(HasSubstr("links[0].rating: lower carries"),
                                                 HasSubstr("of its rating"))));
}

}  // namespace
}  // namespace bolthole
