#include "geometry/edits/edit.h"

#include <gmock/gmock.h>

#include <cmath>
#include <limits>
#include <random>
#include <set>
#include <string>
#include <vector>

#include "geometry/car/numbers.h"
#include "geometry/units/units.h"
#include "tests/support/edit_tools.h"
#include "tests/support/made_units.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

/// Everything of a car that is no number, as one text.
std::string wordsOf(const Car& car) {
    std::string words = car.title + "|" + car.notes + "|" + (car.units == Units::inch ? "inch" : "metric");
    for (const Link& link : car.links) {
        words += "|" + link.name + std::to_string(static_cast<int>(link.kind)) +
                 std::to_string(static_cast<int>(link.side));
        for (const End end : {End::chassis, End::axle}) {
            words += "/" + std::to_string(link.bracket(end).use);
            for (const Hole& one : link.bracket(end).holes) {
                words += "," + one.name + std::to_string(one.id);
            }
        }
    }
    return words;
}

/// Numbers that differ between two cars of the same parts.
std::vector<std::string> changedNumbers(const Car& before, const Car& after) {
    std::vector<std::string> changed;
    for (const FieldId& id : allIds(before)) {
        if (numberAt(before, id) != numberAt(after, id)) {
            changed.push_back(jsonPath(id));
        }
    }
    return changed;
}

TEST(Apply, SettingAnyNumberChangesThatOneOnly) {
    std::mt19937_64 random(21);
    std::uniform_real_distribution<double> size(-120, 120);
    const Car car = plainCar();
    const std::vector<FieldId> ids = allIds(car);
    int appliedCount = 0;
    for (int round = 0; round < 20'000; ++round) {
        const FieldId& id = ids[random() % ids.size()];
        const bool whole = quantityOf(id.field) == Quantity::count;
        const double value =
            whole ? std::floor(size(random) / 20) : size(random) / static_cast<double>(random() % 100 + 1);
        const EditResult result = apply(car, SetNumber{id, value});
        ASSERT_EQ(wordsOf(result.car), wordsOf(car));
        ASSERT_NE(describe(SetNumber{id, value}, car), "");
        if (!result.refusal.empty()) {
            ASSERT_THAT(changedNumbers(car, result.car), IsEmpty()) << result.refusal;
            continue;
        }
        ++appliedCount;
        ASSERT_EQ(refusal(id, value), "");
        // Lengths may be cured of a rounding.
        const double rounding = quantityOf(id.field) == Quantity::length ? 1e-15 * std::abs(value) : 0.0;
        ASSERT_NEAR(numberAt(result.car, id).value(), value, rounding);
        // A thread engagement takes the length it was measured at along.
        if (numberAt(car, id) != value && id.field != Field::adjusterEngagement) {
            ASSERT_THAT(changedNumbers(car, result.car), ElementsAre(jsonPath(id)));
        }
    }
    EXPECT_GT(appliedCount, 2000);
}

// Every sixteenth up to ten feet stands in the file as the decimal millimeters it is: 1.5875 times a whole
// number.
TEST(Apply, SixteenthsAreDecimalMillimeters) {
    const Car car = plainCar();
    for (int sixteenths = 1; sixteenths <= 16 * 120; ++sixteenths) {
        const double typed = sixteenths / 16.0 * kMetresPerInch;
        const EditResult result = apply(car, SetNumber{{.field = Field::cgHeight}, typed});
        ASSERT_EQ(result.car.cgHeight, fromMillimetres(sixteenths * 15875 / 10000.0)) << sixteenths;
    }
}

TEST(Apply, RefusesNumbersOutsideTheLimits) {
    const Car car = plainCar();
    for (const FieldId& id : allIds(car)) {
        for (const double value : {kNaN, kEndless, -kEndless, 1e300}) {
            expectRefused(car, SetNumber{id, value}, "");
        }
    }
    expectRefused(car, SetNumber{{.field = Field::wheelbase}, -1},
                  "wheelbase: expected a length above 0 and at most 100 m");
    expectRefused(car, SetNumber{{.field = Field::steps}, 81.5}, "a whole number from 2 to 100000");
}

TEST(Apply, RefusesNumbersOfPartsThatAreNotThere) {
    Car car = plainCar();
    expectRefused(car, SetNumber{lengthOf(3), 0.5}, "there is no link 4");
    expectRefused(car, SetNumber{lengthOf(-1), 0.5}, "there is no link 0");
    expectRefused(car, SetNumber{lengthOf(2), 0.5}, "only a rod");
    expectRefused(car, SetNumber{{.field = Field::adjusterPitch, .link = 0}, 0.001},
                  "lower has no adjuster yet");
    expectRefused(car, SetNumber{holeField(0, End::axle, 2, 0), 0.5}, "there is no lower axle hole 3");
    expectRefused(car, SetNumber{holeField(9, End::axle, 0, 0), 0.5}, "there is no link 10");
    expectRefused(car, SetNumber{holeField(0, End::axle, 0, 3), 0.5}, "three coordinates");
    car.driveline.reset();
    expectRefused(car, SetNumber{{.field = Field::pinionAngle}, 0.02}, "this car has no driveline yet");
    expectRefused(car, SetNumber{{.field = Field::outputJoint, .axis = 0}, 1}, "no driveline yet");
    expectRefused(car, MoveJoint{End::axle, {0.3, 0, 0.3}}, "no driveline yet");
}

TEST(Apply, OptionalNumbersComeAndGo) {
    Car car = applied(plainCar(), SetNumber{lengthOf(0), 0.5});
    EXPECT_EQ(car.links[0].length, 0.5);
    EXPECT_EQ(applied(car, ClearNumber{lengthOf(0)}).links[0].length, std::nullopt);
    car = applied(car, SetNumber{{.field = Field::rearTrack}, 1.5});
    EXPECT_EQ(car.rearTrack, 1.5);
    EXPECT_EQ(applied(car, ClearNumber{{.field = Field::rearTrack}}).rearTrack, std::nullopt);
    car.links[2].length = 1.0;  // a file may carry one where it means nothing
    EXPECT_EQ(applied(car, ClearNumber{lengthOf(2)}).links[2].length, std::nullopt);
}

TEST(Apply, OnlyOptionalNumbersCanBeCleared) {
    Car car = plainCar();
    const DampingWay way{.clicks = {0}, .force = {{100}}, .at = 0};
    car.launch.front.damping = Damping{.speeds = {0.1}, .bump = way, .rebound = way};
    for (SuspensionPart& part : car.springs) {
        part.damping = car.launch.front.damping;
    }
    const std::set<Field> adjusterLimits{Field::adjusterShortest, Field::adjusterLongest,
                                         Field::adjusterEngagement, Field::adjusterEngagementAt,
                                         Field::adjusterLeastEngagement};
    const std::set<Field> always{Field::ballastWeighed, Field::ballastAboard, Field::springPush};
    const std::set<Field> bench{Field::wheelbase,      Field::rearTireRadius,  Field::frontTireRadius,
                                Field::rearTrack,      Field::leftFrontWeight, Field::rightFrontWeight,
                                Field::leftRearWeight, Field::rightRearWeight, Field::cgHeight,
                                Field::bump,           Field::droop,           Field::steps,
                                Field::frontRatio,     Field::pinionAngle,     Field::pinionJoint,
                                Field::outputAngle,    Field::outputJoint};
    for (const FieldId& id : allIds(car)) {
        const bool isLimit =
            (adjusterLimits.contains(id.field) && car.links[static_cast<std::size_t>(id.link)].adjuster) ||
            id.field == Field::rodEndLimit || id.field == Field::linkRating;
        const Scope scope = ruleOf(id.field).scope;
        const bool isEntered =
            scope == Scope::ballast || scope == Scope::spring
                ? !always.contains(id.field)
                : (scope == Scope::car || scope == Scope::driveline) && !bench.contains(id.field);
        const bool optional =
            isEntered || isLimit || id.field == Field::linkLength || id.field == Field::rearTrack;
        EXPECT_EQ(apply(car, ClearNumber{id}).refusal.empty(), optional) << jsonPath(id);
    }
    expectRefused(car, ClearNumber{{.field = Field::wheelbase}}, "the wheelbase cannot be left out");
    expectRefused(car, ClearNumber{lengthOf(7)}, "there is no link 8");
}

TEST(Apply, MovesHolesAndJoints) {
    const Car car = plainCar();
    const Eigen::Vector3d at(0.1, 0.2, 0.3);
    Car moved = applied(car, MoveHole{0, End::axle, 1, at});
    EXPECT_EQ(moved.links[0].axle.holes[1].at, at);
    EXPECT_EQ(wordsOf(moved), wordsOf(car));
    EXPECT_THAT(changedNumbers(car, moved), SizeIs(3));
    moved = applied(car, MoveJoint{End::axle, at});
    EXPECT_EQ(moved.driveline->pinionJoint, at);
    EXPECT_THAT(changedNumbers(car, moved), SizeIs(3));
    moved = applied(car, MoveJoint{End::chassis, at});
    EXPECT_EQ(moved.driveline->outputJoint, at);
    expectRefused(car, MoveHole{0, End::axle, 2, at}, "there is no lower axle hole 3");
    expectRefused(car, MoveHole{5, End::axle, 0, at}, "there is no link 6");
    expectRefused(car, MoveHole{0, End::axle, 0, {0, 101, 0}}, "hole: expected a position within 100 m");
    expectRefused(car, MoveHole{0, End::axle, 0, {0, 0, kNaN}}, "within 100 m");
    expectRefused(car, MoveJoint{End::chassis, {-101, 0, 0}}, "front U-joint: expected a position");
}

TEST(Apply, BoltsToAnotherHole) {
    const Car car = plainCar();
    const Car bolted = applied(car, UseHole{0, End::axle, 1});
    EXPECT_EQ(bolted.links[0].axle.use, 1);
    EXPECT_THAT(changedNumbers(car, bolted), IsEmpty());
    expectRefused(car, UseHole{0, End::axle, 2}, "there is no lower axle hole 3");
    expectRefused(car, UseHole{0, End::axle, -1}, "there is no lower axle hole 0");
    expectRefused(car, UseHole{3, End::axle, 0}, "there is no link 4");
}

TEST(Apply, SetsUnitsTitleAndNotes) {
    const Car car = plainCar();
    EXPECT_EQ(applied(car, SetUnits{Units::metric}).units, Units::metric);
    EXPECT_EQ(applied(car, SetTitle{"Other"}).title, "Other");
    EXPECT_EQ(applied(car, SetNotes{"Cold day"}).notes, "Cold day");
    EXPECT_THAT(changedNumbers(car, applied(car, SetUnits{Units::metric})), IsEmpty());
}

TEST(Apply, GivesAndTakesAdjustersAndDriveline) {
    const Car car = plainCar();
    EXPECT_EQ(applied(car, SetAdjuster{0, Adjuster{0.001, 1}}).links[0].adjuster->threadedEnds, 1);
    EXPECT_FALSE(applied(car, SetAdjuster{1, std::nullopt}).links[1].adjuster.has_value());
    expectRefused(car, SetAdjuster{0, Adjuster{0, 2}}, "thread pitch: expected");
    expectRefused(car, SetAdjuster{0, Adjuster{0.001, 3}}, "threaded ends: expected 1 or 2");
    expectRefused(car, SetAdjuster{2, Adjuster{0.001, 2}}, "only a rod");
    expectRefused(car, SetAdjuster{4, Adjuster{0.001, 2}}, "there is no link 5");
    Car without = applied(car, SetDriveline{std::nullopt});
    EXPECT_FALSE(without.driveline.has_value());
    without = applied(without, SetDriveline{Driveline{0.01, {0.3, 0, 0.3}, 0.02, {1.5, 0, 0.4}}});
    EXPECT_EQ(without.driveline->outputAngle, 0.02);
    expectRefused(car, SetDriveline{Driveline{2, {0, 0, 0}, 0, {1, 0, 0}}}, "pinion angle: expected");
    expectRefused(car, SetDriveline{Driveline{0, {0, 0, 0}, 0, {kNaN, 0, 0}}}, "front U-joint: expected");
}

TEST(Apply, RenamesLinksAndHoles) {
    const Car car = plainCar();
    EXPECT_EQ(applied(car, RenameLink{1, "top link"}).links[1].name, "top link");
    EXPECT_EQ(applied(car, RenameHole{0, End::axle, 1, "third"}).links[0].axle.holes[1].name, "third");
    expectRefused(car, RenameLink{1, " "}, "a link needs a name");
    expectRefused(car, RenameLink{9, "x"}, "there is no link 10");
    expectRefused(car, RenameHole{0, End::axle, 1, ""}, "a hole needs a name");
    expectRefused(car, RenameHole{0, End::axle, 5, "x"}, "there is no lower axle hole 6");
}

TEST(Apply, AddsHolesAtTheEnd) {
    const Car car = plainCar();
    const Car added = applied(car, AddHole{0, End::axle, hole("third", 0.5, 21, 11)});
    ASSERT_EQ(added.links[0].axle.holes.size(), 3U);
    EXPECT_EQ(added.links[0].axle.holes[2].name, "third");
    EXPECT_EQ(added.links[0].axle.use, 0);
    expectRefused(car, AddHole{0, End::axle, hole("far", 0, 0, 4000)}, "hole: expected a position");
    expectRefused(car, AddHole{-2, End::axle, hole("x", 0, 0, 0)}, "there is no link -1");
    Car full = car;
    full.links[0].axle.holes.resize(kMaxHoles);
    expectRefused(full, AddHole{0, End::axle, hole("x", 0, 0, 0)}, "at most 64 holes");
}

TEST(Apply, RemovesHolesAndTheBoltFollows) {
    Car car = plainCar();
    car.links[0].axle.holes.push_back(hole("third", 0.5, 21, 11));
    struct Row {
        int use;
        int removed;
        std::string bolted;
    };
    for (const Row& row : {Row{0, 0, "top"}, Row{0, 1, "bottom"}, Row{1, 0, "top"}, Row{1, 1, "third"},
                           Row{2, 0, "third"}, Row{2, 2, "top"}}) {
        car.links[0].axle.use = row.use;
        const Car after = applied(car, RemoveHole{0, End::axle, row.removed});
        EXPECT_EQ(after.links[0].axle.holes.size(), 2U);
        EXPECT_EQ(after.links[0].axle.inUse().name, row.bolted) << row.use << ", " << row.removed;
    }
    expectRefused(car, RemoveHole{0, End::chassis, 0}, "at least one hole");
    expectRefused(car, RemoveHole{0, End::axle, 3}, "there is no lower axle hole 4");
}

}  // namespace
}  // namespace bolthole
