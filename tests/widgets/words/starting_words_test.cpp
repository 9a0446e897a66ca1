// Which curves rest on numbers that nobody measured.
#include "widgets/words/starting_words.h"

#include <gtest/gtest.h>

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
