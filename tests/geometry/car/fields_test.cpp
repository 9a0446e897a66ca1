// Addresses, quantities and limits of numbers: geometry/edits/edit.h, built on the table in
// geometry/car/fields.h.
#include <gmock/gmock.h>

#include <limits>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "geometry/car/numbers.h"
#include "geometry/edits/edit.h"
#include "geometry/units/units.h"
#include "tests/support/made_units.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

TEST(Fields, NumbersStandWhereTheCarKeepsThem) {
    Car car = plainCar();
    car.links[0].length = 0.51;
    EXPECT_EQ(numberAt(car, {.field = Field::wheelbase}), 116 * kInch);
    EXPECT_EQ(numberAt(car, {.field = Field::leftFrontWeight}), 470);
    EXPECT_EQ(numberAt(car, {.field = Field::rightFrontWeight}), 450);
    EXPECT_EQ(numberAt(car, {.field = Field::leftRearWeight}), 360);
    EXPECT_EQ(numberAt(car, {.field = Field::rightRearWeight}), 350);
    EXPECT_EQ(numberAt(car, {.field = Field::steps}), 81);
    EXPECT_EQ(numberAt(car, holeField(0, End::axle, 1, 2)), 9.75 * kInch);
    EXPECT_EQ(numberAt(car, lengthOf(0)), 0.51);
    EXPECT_EQ(numberAt(car, {.field = Field::adjusterPitch, .link = 1}), 0.0015875);
    EXPECT_EQ(numberAt(car, {.field = Field::adjusterEnds, .link = 1}), 2);
    EXPECT_EQ(numberAt(car, {.field = Field::pinionAngle}), 0.026);
    EXPECT_EQ(numberAt(car, {.field = Field::outputJoint, .axis = 0}), 1.5);
    EXPECT_EQ(numberAt(car, {.field = Field::pinionJoint, .axis = 2}), 0.343);
}

TEST(Fields, LimitsAndWishesStandWhereTheCarKeepsThem) {
    Car car = plainCar();
    car.links[1].adjuster = Adjuster{.pitch = 0.0015875,
                                     .shortest = 0.25,
                                     .longest = 0.35,
                                     .engagement = 0.03,
                                     .engagementAt = 0.3,
                                     .leastEngagement = 0.02};
    car.links[0].rodEndLimit = 0.2;
    car.driveline->jointLimit = 0.1;
    car.target = TargetWindow{.icNear = 1.0, .icFar = -3.0, .antiSquatLow = 90, .antiSquatHigh = 120};
    EXPECT_EQ(numberAt(car, {.field = Field::adjusterShortest, .link = 1}), 0.25);
    EXPECT_EQ(numberAt(car, {.field = Field::adjusterLongest, .link = 1}), 0.35);
    EXPECT_EQ(numberAt(car, {.field = Field::adjusterEngagement, .link = 1}), 0.03);
    EXPECT_EQ(numberAt(car, {.field = Field::adjusterEngagementAt, .link = 1}), 0.3);
    EXPECT_EQ(numberAt(car, {.field = Field::adjusterLeastEngagement, .link = 1}), 0.02);
    EXPECT_EQ(numberAt(car, {.field = Field::rodEndLimit, .link = 0}), 0.2);
    EXPECT_EQ(numberAt(car, {.field = Field::jointLimit}), 0.1);
    EXPECT_EQ(numberAt(car, {.field = Field::targetIcNear}), 1.0);
    EXPECT_EQ(numberAt(car, {.field = Field::targetIcFar}), -3.0);
    EXPECT_EQ(numberAt(car, {.field = Field::targetLow}), 90);
    EXPECT_EQ(numberAt(car, {.field = Field::targetHigh}), 120);
    car = plainCar();
    EXPECT_EQ(numberAt(car, {.field = Field::targetLow}), std::nullopt);
    EXPECT_EQ(numberAt(car, {.field = Field::adjusterShortest, .link = 0}), std::nullopt);
}

TEST(Fields, AbsentNumbersAreNothing) {
    Car car = plainCar();
    EXPECT_EQ(numberAt(car, {.field = Field::rearTrack}), std::nullopt);
    EXPECT_EQ(numberAt(car, lengthOf(0)), std::nullopt);
    EXPECT_EQ(numberAt(car, {.field = Field::adjusterPitch, .link = 0}), std::nullopt);
    EXPECT_EQ(numberAt(car, lengthOf(-1)), std::nullopt);
    EXPECT_EQ(numberAt(car, lengthOf(3)), std::nullopt);
    EXPECT_EQ(numberAt(car, holeField(0, End::axle, 2, 0)), std::nullopt);
    EXPECT_EQ(numberAt(car, holeField(0, End::axle, -1, 0)), std::nullopt);
    EXPECT_EQ(numberAt(car, holeField(0, End::axle, 0, 3)), std::nullopt);
    EXPECT_EQ(numberAt(car, holeField(0, End::axle, 0, -1)), std::nullopt);
    EXPECT_EQ(numberAt(car, {.field = Field::pinionJoint}), std::nullopt);
    car.driveline.reset();
    EXPECT_EQ(numberAt(car, {.field = Field::pinionAngle}), std::nullopt);
    EXPECT_EQ(numberAt(car, {.field = Field::outputJoint, .axis = 1}), std::nullopt);
}

TEST(Fields, PathsFollowTheCarFile) {
    const std::vector<std::pair<FieldId, std::string>> table{
        {{.field = Field::wheelbase}, "wheelbase"},
        {{.field = Field::rearTireRadius}, "rear_tire_radius"},
        {{.field = Field::frontTireRadius}, "front_tire_radius"},
        {{.field = Field::rearTrack}, "rear_track"},
        {{.field = Field::leftFrontWeight}, "corner_weights.left_front"},
        {{.field = Field::rightFrontWeight}, "corner_weights.right_front"},
        {{.field = Field::leftRearWeight}, "corner_weights.left_rear"},
        {{.field = Field::rightRearWeight}, "corner_weights.right_rear"},
        {{.field = Field::cgHeight}, "cg_height"},
        {{.field = Field::bump}, "travel.bump"},
        {{.field = Field::droop}, "travel.droop"},
        {{.field = Field::steps}, "travel.steps"},
        {{.field = Field::frontRatio}, "travel.front_ratio"},
        {holeField(0, End::axle, 2, 1), "links[0].axle.holes[2].at[1]"},
        {holeField(11, End::chassis, 0, -1), "links[11].chassis.holes[0].at"},
        {holeField(1, End::chassis, -1, -1), "links[1].chassis.holes"},
        {lengthOf(3), "links[3].length"},
        {{.field = Field::adjusterPitch, .link = 1}, "links[1].adjuster.pitch"},
        {{.field = Field::adjusterEnds, .link = 1}, "links[1].adjuster.ends"},
        {{.field = Field::adjusterShortest, .link = 1}, "links[1].adjuster.shortest"},
        {{.field = Field::adjusterLongest, .link = 1}, "links[1].adjuster.longest"},
        {{.field = Field::adjusterEngagement, .link = 1}, "links[1].adjuster.engagement"},
        {{.field = Field::adjusterEngagementAt, .link = 1}, "links[1].adjuster.engagement_at"},
        {{.field = Field::adjusterLeastEngagement, .link = 1}, "links[1].adjuster.least_engagement"},
        {{.field = Field::rodEndLimit, .link = 2}, "links[2].rod_end_limit"},
        {{.field = Field::pinionAngle}, "driveline.pinion_angle"},
        {{.field = Field::pinionJoint, .axis = 0}, "driveline.pinion_joint[0]"},
        {{.field = Field::outputAngle}, "driveline.output_angle"},
        {{.field = Field::outputJoint, .axis = 2}, "driveline.output_joint[2]"},
        {{.field = Field::jointLimit}, "driveline.joint_limit"},
        {{.field = Field::targetIcNear}, "wanted.ic_near"},
        {{.field = Field::targetIcFar}, "wanted.ic_far"},
        {{.field = Field::targetLow}, "wanted.anti_squat_low"},
        {{.field = Field::targetHigh}, "wanted.anti_squat_high"},
    };
    for (const auto& [id, path] : table) {
        EXPECT_EQ(jsonPath(id), path);
    }
}

TEST(Fields, EveryNumberHasAPathOfItsOwn) {
    std::set<std::string> paths;
    const std::vector<FieldId> ids = allIds(plainCar());
    for (const FieldId& id : ids) {
        paths.insert(jsonPath(id));
    }
    EXPECT_EQ(paths.size(), ids.size());
}

TEST(Fields, QuantitiesAreWhatTheNumbersAre) {
    EXPECT_EQ(quantityOf(Field::wheelbase), Quantity::length);
    EXPECT_EQ(quantityOf(Field::leftRearWeight), Quantity::mass);
    EXPECT_EQ(quantityOf(Field::steps), Quantity::count);
    EXPECT_EQ(quantityOf(Field::frontRatio), Quantity::ratio);
    EXPECT_EQ(quantityOf(Field::adjusterPitch), Quantity::length);
    EXPECT_EQ(quantityOf(Field::adjusterEnds), Quantity::count);
    EXPECT_EQ(quantityOf(Field::pinionAngle), Quantity::angle);
    EXPECT_EQ(quantityOf(Field::outputJoint), Quantity::length);
    EXPECT_EQ(quantityOf(Field::adjusterLeastEngagement), Quantity::length);
    EXPECT_EQ(quantityOf(Field::rodEndLimit), Quantity::angle);
    EXPECT_EQ(quantityOf(Field::jointLimit), Quantity::angle);
    EXPECT_EQ(quantityOf(Field::targetIcFar), Quantity::length);
    EXPECT_EQ(quantityOf(Field::targetLow), Quantity::percent);
}

TEST(Refusal, KeepsToTheLimitsOfTheCarFile) {
    const double right = 90 * kRadiansPerDegree;
    struct Row {
        Field field;
        std::vector<double> allowed;
        std::vector<double> refused;
    };
    const std::vector<Row> table{
        {Field::wheelbase, {1e-6, 2.9, 100}, {0, -1, 100.001}},
        {Field::rearTireRadius, {0.34, 100}, {0, -0.34}},
        {Field::frontTireRadius, {0.34}, {0, -0.34, 101}},
        {Field::rearTrack, {1.5}, {0, -1.5, 101}},
        {Field::leftFrontWeight, {0.1, 1e6}, {0, -1, 1.1e6}},
        {Field::rightRearWeight, {0.1, 1e6}, {0, -1, 1.1e6}},
        {Field::cgHeight, {0.5}, {0, -0.5, 101}},
        {Field::bump, {0, 0.1, 100}, {-0.001, 101}},
        {Field::droop, {0, 0.1, 100}, {-0.001, 101}},
        {Field::steps, {2, 81, 100'000}, {1, 0, -5, 100'001, 81.5, 1e300}},
        {Field::frontRatio, {-1, 0, 1, 10}, {-101, 101}},
        {Field::holeAt, {-100, 0, 100}, {-100.001, 100.001}},
        {Field::linkLength, {0.001, 100}, {0, -0.5, 100.001}},
        {Field::adjusterPitch, {0.0015875}, {0, -0.001, 0.2}},
        {Field::adjusterEnds, {1, 2}, {0, 3, 1.5}},
        {Field::pinionAngle, {-1.5, 0, 1.5}, {right, -right, 4}},
        {Field::pinionJoint, {-1, 0, 100}, {101}},
        {Field::outputAngle, {-1.5, 0, 1.5}, {right, -right, 4}},
        {Field::outputJoint, {-1, 0, 100}, {101}},
        {Field::adjusterShortest, {0.1, 100}, {0, -1, 101}},
        {Field::adjusterLongest, {0.1, 100}, {0, -1, 101}},
        {Field::adjusterEngagement, {0, 0.02, 1}, {-0.001, 1.1}},
        {Field::adjusterEngagementAt, {0.1, 100}, {0, -1, 101}},
        {Field::adjusterLeastEngagement, {0, 0.02, 1}, {-0.001, 1.1}},
        {Field::rodEndLimit, {0.01, 1.5}, {0, -0.1, right}},
        {Field::jointLimit, {0.01, 1.5}, {0, -0.1, right}},
        {Field::targetIcNear, {-100, -1, 1, 100}, {101, -101}},
        {Field::targetIcFar, {-100, -1, 1, 100}, {101, -101}},
        {Field::targetLow, {-10'000, 0, 10'000}, {10'001, -10'001}},
        {Field::targetHigh, {-10'000, 0, 10'000}, {10'001, -10'001}},
    };
    for (const Row& row : table) {
        for (const double value : row.allowed) {
            EXPECT_EQ(refusal({.field = row.field}, value), "") << jsonPath({.field = row.field}) << value;
        }
        for (const double value : row.refused) {
            EXPECT_NE(refusal({.field = row.field}, value), "") << jsonPath({.field = row.field}) << value;
        }
    }
    EXPECT_EQ(refusal({.field = Field::wheelbase}, 0), "a length above 0 and at most 100 m");
    EXPECT_EQ(refusal({.field = Field::adjusterEnds}, 3), "1 or 2");
}

TEST(Refusal, NeverAllowsWhatIsNoNumber) {
    for (const Field field : allFields()) {
        for (const double value : {kNaN, kEndless, -kEndless}) {
            EXPECT_NE(refusal({.field = field}, value), "") << jsonPath({.field = field});
        }
    }
}

}  // namespace
}  // namespace bolthole
