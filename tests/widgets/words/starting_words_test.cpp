// Which curves rest on numbers that nobody measured.
#include "widgets/words/starting_words.h"

#include <gmock/gmock.h>

#include "geometry/car/starting_numbers.h"
#include "geometry/uncertainty/uncertain_inputs.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

TEST(RestsOnStarts, CountsTheScopesAskedForAndHolesInUse) {
    Car car = plainCar();
    EXPECT_FALSE(restsOnStarts(car, {Scope::car, Scope::hole, Scope::link}));
    setOrigin(car, {.field = Field::cgHeight}, Origin::starting);
    EXPECT_TRUE(restsOnStarts(car, {Scope::car}));
    EXPECT_FALSE(restsOnStarts(car, {Scope::hole, Scope::link}));
    Car other = plainCar();
    const Bracket& bracket = other.links[0].axle;
    ASSERT_GT(bracket.holes.size(), 1U);
    const int unused = bracket.use == 0 ? 1 : 0;
    setOrigin(other, {.field = Field::holeAt, .link = 0, .end = End::axle, .hole = unused, .axis = 2},
              Origin::starting);
    EXPECT_FALSE(restsOnStarts(other, {Scope::hole}));
    setOrigin(other, {.field = Field::holeAt, .link = 0, .end = End::axle, .hole = bracket.use, .axis = 2},
              Origin::starting);
    EXPECT_TRUE(restsOnStarts(other, {Scope::hole}));
}

TEST(StartingHeading, OfAPageNamesWhatThePageRestsOn) {
    Car car = plainCar();
    car.springs.emplace_back();
    car.springs[0].chassis.holes.resize(1);
    car.springs[0].axle.holes.resize(1);
    car.links[1].length = 0.4;
    setOrigin(car, {.field = Field::linkLength, .link = 1}, Origin::workedOut);
    const FieldId mount{.field = Field::mountAt, .end = End::axle, .hole = 0, .axis = 2, .item = 0};
    setOrigin(car, mount, Origin::starting);
    const auto only = [&](Scope scope) {
        return startingHeading(car, [scope](Scope each) { return each == scope; }).toStdString();
    };
    EXPECT_EQ(only(Scope::car), "") << "corner weights rest on neither";
    EXPECT_THAT(only(Scope::link), testing::StartsWith("Worked out, not measured: "));
    EXPECT_THAT(only(Scope::mount), testing::StartsWith("Starting numbers, not measured: "));
    car.springs[0].axle.use = 1;
    car.springs[0].axle.holes.emplace_back();
    EXPECT_EQ(only(Scope::mount), "") << "that hole is not in use";
}

TEST(CalculatedWords, CallWhatWasWorkedOutWhatItIs) {
    Car car = plainCar();
    EXPECT_THAT(calculatedWords(car).toStdString(),
                testing::StartsWith("Calculated from your measurements;"));
    car.links[1].length = 0.4;
    setOrigin(car, {.field = Field::linkLength, .link = 1}, Origin::workedOut);
    EXPECT_THAT(calculatedWords(car).toStdString(),
                testing::HasSubstr("and from numbers that were worked out; no strength"));
    setOrigin(car, {.field = Field::mountAt, .end = End::axle, .hole = 0, .axis = 2, .item = 0},
              Origin::starting);
    EXPECT_THAT(calculatedWords(car).toStdString(), testing::HasSubstr("were worked out; no strength"))
        << "no spring stands on a wall chart";
    EXPECT_THAT(allCalculatedWords(car).toStdString(),
                testing::HasSubstr("which nobody measured; no strength"));
    setOrigin(car, {.field = Field::cgHeight}, Origin::starting);
    EXPECT_THAT(calculatedWords(car).toStdString(), testing::HasSubstr("which nobody measured; no strength"));
}

TEST(StartingHeading, NamesAWorkedOutLengthBesideTheStartingNumbers) {
    Car car = plainCar();
    EXPECT_TRUE(startingHeading(car).isEmpty());
    car.links[0].length = 0.6;
    setOrigin(car, {.field = Field::linkLength, .link = 0}, Origin::workedOut);
    const QString name = QString::fromStdString(car.links[0].name);
    EXPECT_EQ(startingHeading(car), QStringLiteral("Worked out, not measured: %1 length").arg(name));
    setOrigin(car, {.field = Field::cgHeight}, Origin::starting);
    EXPECT_EQ(startingHeading(car),
              QStringLiteral("Starting numbers, not measured: CG height; worked out, not measured: %1 length")
                  .arg(name));
    EXPECT_TRUE(startsUsed(car) == std::vector<FieldId>{{.field = Field::cgHeight}});
}

}  // namespace
}  // namespace bolthole
