// How warnings are graded that come of numbers nobody measured.
#include <gmock/gmock.h>

#include <algorithm>
#include <optional>

#include "geometry/car/starting_numbers.h"
#include "geometry/checks/warnings.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

std::optional<Finding> findingAt(const Car& car, const FieldId& id) {
    const std::vector<Warning> warnings = findWarnings(car);
    const auto found = std::ranges::find_if(
        warnings, [&](const Warning& warning) { return warning.id == id && !warning.isOfWhole; });
    return found == warnings.end() ? std::nullopt : std::optional(found->finding);
}

constexpr FieldId kRadius{.field = Field::rearTireRadius};
const FieldId kLength{.field = Field::linkLength, .link = 0};

TEST(UnmeasuredWarnings, ThatNothingWasMeasuredIsNoMistake) {
    Car car = plainCar();
    startFrom(car);
    const std::vector<Warning> warnings = findWarnings(car);
    const auto whole = std::ranges::find_if(warnings, &Warning::isOfWhole);
    ASSERT_NE(whole, warnings.end());
    EXPECT_EQ(whole->finding.severity, Severity::unmeasured);
}

TEST(UnmeasuredWarnings, NumbersThatWereWorkedOutAreToldOnceForAll) {
    const auto told = [](const Car& car) {
        return std::ranges::count_if(findWarnings(car), [](const Warning& warning) {
            return warning.isOfWhole &&
                   warning.finding.cause.find("worked out from others") != std::string::npos;
        });
    };
    Car car = plainCar();
    EXPECT_EQ(told(car), 0);
    for (const FieldId& id : measurableNumbers(car)) {
        setOrigin(car, id, Origin::workedOut);
    }
    EXPECT_EQ(told(car), 1);
}

TEST(UnmeasuredWarnings, ANumberIsWrongOnlyOnceItIsMeasured) {
    Car car = plainCar();
    car.rearTireRadius = 1;
    ASSERT_TRUE(findingAt(car, kRadius));
    EXPECT_EQ(findingAt(car, kRadius)->severity, Severity::wrong);
    setOrigin(car, kRadius, Origin::starting);
    EXPECT_EQ(findingAt(car, kRadius)->severity, Severity::unmeasured);
    EXPECT_THAT(findingAt(car, kRadius)->follows, HasSubstr("it comes of starting numbers"));
}

// A length is held against the holes in use: one of them is enough, one that is not bolted to is none.
TEST(UnmeasuredWarnings, ALinkThatConflictsRestsOnItsHolesInUse) {
    Car car = plainCar();
    Link& link = car.links[0];
    link.length = (link.axle.inUse().at - link.chassis.inUse().at).norm() + 0.02;
    ASSERT_TRUE(findingAt(car, kLength));
    EXPECT_EQ(findingAt(car, kLength)->severity, Severity::wrong);
    FieldId hole{.field = Field::holeAt, .link = 0, .end = End::axle, .hole = 0, .axis = 2};
    ASSERT_EQ(link.axle.holes.size(), 2U);
    hole.hole = link.axle.use == 0 ? 1 : 0;
    setOrigin(car, hole, Origin::starting);
    EXPECT_EQ(findingAt(car, kLength)->severity, Severity::wrong);
    hole.hole = link.axle.use;
    setOrigin(car, hole, Origin::starting);
    EXPECT_EQ(findingAt(car, kLength)->severity, Severity::unmeasured);
    setOrigin(car, hole, Origin::measured);
    hole.link = 1;
    hole.hole = car.links[1].axle.use;
    setOrigin(car, hole, Origin::starting);
    EXPECT_EQ(findingAt(car, kLength)->severity, Severity::wrong) << "another link's";
}

TEST(UnmeasuredWarnings, ADangerStaysOne) {
    Car car = plainCar();
    Link& link = car.links[0];
    link.adjuster = Adjuster{.pitch = 1.5e-3};
    link.adjuster->engagement = 0.01;
    link.adjuster->leastEngagement = 0.02;
    const FieldId id{.field = Field::adjusterEngagement, .link = 0};
    setOrigin(car, id, Origin::starting);
    ASSERT_TRUE(findingAt(car, id));
    EXPECT_EQ(findingAt(car, id)->severity, Severity::danger);
}

}  // namespace
}  // namespace bolthole
