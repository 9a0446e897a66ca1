// Tables of a shock's forces: what is refused, and its clicks as numbers of the car like any other.
#include "geometry/car/damping.h"

#include <gmock/gmock.h>

#include <limits>

#include "geometry/car/faults.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

Damping plainDamping() {
    return {.speeds = {0.05, 0.25},
            .bump = {.clicks = {0, 12}, .force = {{100, 300}, {400, 1200}}, .at = 4},
            .rebound = {.clicks = {0, 1, 2}, .force = {{100, 300}, {150, 400}, {200, 500}}, .at = 2}};
}

Car carWithShock() {
    Car car = plainCar();
    car.springs[0].kind = PartKind::shock;
    car.springs[0].damping = plainDamping();
    return car;
}

TEST(Damping, ARowStandsForAClick) {
    Damping damping = plainDamping();
    EXPECT_EQ(damping.bump.clickOf(1), 12);
    EXPECT_EQ(damping.rebound.clickOf(2), 2);
    damping.bump.force.assign(13, {100, 300});
    EXPECT_EQ(refusal(damping).reason, "");
    EXPECT_EQ(damping.bump.clickOf(5), 5);
}

TEST(Damping, TablesThatFitBadlyAreRefusedAtTheirPlace) {
    struct Spoiled {
        void (*spoil)(Damping&);
        const char* path;
    };
    const Spoiled table[] = {
        {[](Damping& d) { d.speeds = {}; }, "speeds"},
        {[](Damping& d) { d.speeds.assign(33, 1.0); }, "speeds"},
        {[](Damping& d) {
             d.speeds = {0.0, 0.25};
         },
         "speeds[0]"},
        {[](Damping& d) {
             d.speeds = {0.25, 0.25};
         },
         "speeds[1]"},
        {[](Damping& d) { d.speeds[1] = std::numeric_limits<double>::quiet_NaN(); }, "speeds[1]"},
        {[](Damping& d) {
             d.bump.clicks = {12, 0};
         },
         "bump.clicks"},
        {[](Damping& d) { d.bump.clicks = {}; }, "bump.clicks"},
        {[](Damping& d) { d.bump.force.pop_back(); }, "bump.force"},
        {[](Damping& d) { d.bump.force[1].pop_back(); }, "bump.force[1]"},
        {[](Damping& d) { d.bump.force[1][0] = -1; }, "bump.force[1][0]"},
        {[](Damping& d) { d.rebound.force[2][1] = std::numeric_limits<double>::infinity(); },
         "rebound.force[2][1]"},
    };
    EXPECT_EQ(refusal(plainDamping()).reason, "");
    for (const Spoiled& row : table) {
        Car car = carWithShock();
        row.spoil(*car.springs[0].damping);
        EXPECT_EQ(refusal(*car.springs[0].damping).path, row.path);
        const std::vector<Fault> faults = findFaults(car);
        ASSERT_FALSE(faults.empty()) << row.path;
        EXPECT_EQ(faults.back().path, std::string("springs[0].damping.") + row.path);
    }
}

TEST(Damping, AClickIsANumberLikeAnyOther) {
    const Car car = carWithShock();
    const FieldId bump{.field = Field::bumpClick, .item = 0};
    EXPECT_EQ(jsonPath(bump), "springs[0].damping.bump.at");
    EXPECT_EQ(numberAt(car, bump), 4);
    EXPECT_EQ(numberAt(car, {.field = Field::reboundClick, .item = 0}), 2);
    const EditResult set = apply(car, SetNumber{bump, 9});
    EXPECT_EQ(set.refusal, "");
    EXPECT_EQ(set.car.springs[0].damping->bump.at, 9);
    EXPECT_EQ(describe(SetNumber{bump, 9}, car), "Set coil bump click to 9");
    EXPECT_EQ(apply(car, ClearNumber{bump}).car.springs[0].damping->bump.at, std::nullopt);
    EXPECT_FALSE(mayHaveUncertainty(Field::bumpClick));
}

// It acts as the end click does; a shop may count further than it had the shock tested.
TEST(Damping, AClickPastItsTableIsKeptAndAWrongOneRefused) {
    const Car car = carWithShock();
    const FieldId bump{.field = Field::bumpClick, .item = 0};
    EXPECT_EQ(apply(car, SetNumber{bump, 13}).car.springs[0].damping->bump.at, 13);
    EXPECT_EQ(apply(car, SetNumber{bump, 1001}).car, car);
    EXPECT_THAT(apply(car, SetNumber{bump, 4.5}).refusal, HasSubstr("a whole number"));
    EXPECT_EQ(apply(plainCar(), SetNumber{bump, 4}).refusal, "coil has no damping yet");
    EXPECT_EQ(apply(plainCar(), SetNumber{{.field = Field::frontBumpClick}, 4}).refusal,
              "this car has no bump click of the front shocks yet");
}

TEST(TorqueTable, RisesInSpeedAndIsBounded) {
    EXPECT_EQ(refusal(std::vector<TorquePoint>{}).reason, "");
    EXPECT_EQ(refusal(std::vector<TorquePoint>{{100, 400}, {200, 450}}).reason, "");
    EXPECT_EQ(refusal(std::vector<TorquePoint>{{100, 400}, {100, 450}}).path, "torque[1][0]");
    EXPECT_EQ(refusal(std::vector<TorquePoint>{{100, 400}, {200, 1e6}}).path, "torque[1][1]");
    EXPECT_EQ(refusal(std::vector<TorquePoint>(201)).path, "torque");
}

}  // namespace
}  // namespace bolthole
