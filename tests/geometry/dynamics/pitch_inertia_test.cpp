// The estimate of the pitch inertia, against the mechanics it stands for.
#include "geometry/dynamics/pitch_inertia.h"

#include <gtest/gtest.h>

#include "geometry/weights/entered_figures.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

// Its sprung center is each axle's center of percussion for the other (D. T. Greenwood, "Principles of
// Dynamics"; from memory): a blow at one axle leaves the body's point over the other where it is.
TEST(PitchInertia, ABlowAtOneAxleDoesNotMoveTheOther) {
    Car car = plainCar();
    car.launch.unsprungMass = 110;
    car.launch.frontUnsprungMass = 70;
    const std::optional<double> inertia = estimatedPitchInertia(car);
    ASSERT_TRUE(inertia);
    const CarBalance balance = balanceOf(car);
    const double sprung = balance.total - 180;
    const double ahead = (balance.total * balance.cgX(car.wheelbase) - 70 * car.wheelbase) / sprung;
    const double behindFront = car.wheelbase - ahead;
    EXPECT_NEAR(1 / sprung - behindFront * ahead / *inertia, 0, 1e-12 / sprung);
}

TEST(PitchInertia, NothingIsGuessedOfUnsprungWeights) {
    Car car = plainCar();
    car.launch.unsprungMass = 110;
    car.launch.frontUnsprungMass.reset();
    EXPECT_FALSE(estimatedPitchInertia(car));
    car.launch.frontUnsprungMass = 1e5;
    EXPECT_FALSE(estimatedPitchInertia(car)) << "no sprung mass is left";
}

}  // namespace
}  // namespace bolthole
