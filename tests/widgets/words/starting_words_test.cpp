// Which curves rest on numbers that nobody measured.
#include "widgets/words/starting_words.h"

#include <gtest/gtest.h>

#include "geometry/car/starting_numbers.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

TEST(RestsOnStarts, CountsTheScopesAskedForAndHolesInUse) {
    Car car = plainCar();
    EXPECT_FALSE(restsOnStarts(car, {Scope::car, Scope::hole, Scope::link}));
    setStarting(car, {.field = Field::cgHeight}, true);
    EXPECT_TRUE(restsOnStarts(car, {Scope::car}));
    EXPECT_FALSE(restsOnStarts(car, {Scope::hole, Scope::link}));
    Car other = plainCar();
    const Bracket& bracket = other.links[0].axle;
    ASSERT_GT(bracket.holes.size(), 1U);
    const int unused = bracket.use == 0 ? 1 : 0;
    setStarting(other, {.field = Field::holeAt, .link = 0, .end = End::axle, .hole = unused, .axis = 2},
                true);
    EXPECT_FALSE(restsOnStarts(other, {Scope::hole}));
    setStarting(other, {.field = Field::holeAt, .link = 0, .end = End::axle, .hole = bracket.use, .axis = 2},
                true);
    EXPECT_TRUE(restsOnStarts(other, {Scope::hole}));
}

}  // namespace
}  // namespace bolthole
