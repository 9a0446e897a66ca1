// The uncertainty of a car's figures: what it must be by hand, at the edges of what a car can be, and of
// differences.
#include "geometry/uncertainty/trace_uncertainty.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "geometry/weights/entered_figures.h"
#include "tests/support/car_generator.h"
#include "tests/support/exact_car.h"
#include "tests/support/level_car.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

constexpr std::size_t kAntiSquatRow = static_cast<std::size_t>(Figure::antiSquat);
constexpr std::size_t kPlunge = static_cast<std::size_t>(Figure::plunge);

Car withUncertainty(const Car& car, FieldId id, double value) {
    id.uncertainty = true;
    EditResult result = apply(car, SetNumber{id, value});
    EXPECT_EQ(result.refusal, "");
    return std::move(result.car);
}
Car splitCar(Layout layout, std::uint64_t seed) {
    Car car = CarGenerator(seed).draw(layout);
    splitPairs(car);
    return car;
}

}  // namespace

// Anti-squat goes with 1/h and with nothing else of h: u(AS)/AS = u(h)/h, by hand.
TEST(TraceUncertainty, OfAntiSquatByTheCgHeightAlone) {
    const Car exact = exactCar(plainCar());
    const Car car = withUncertainty(exact, {.field = Field::cgHeight}, 0.002);
    const TraceUncertainty uncertainty = computeUncertainty(car);
    const double antiSquat = computeTrace(car).ride[Figure::antiSquat];
    EXPECT_NEAR(uncertainty.atRide(Figure::antiSquat) / antiSquat, 0.002 / car.cgHeight, 1e-5);
    EXPECT_EQ(uncertainty.atRide(Figure::icX), 0);
    EXPECT_EQ(uncertainty.inverseAtRide(), 0);
}

// A pinion measured to u is known to u, in the housing's own attitude: at ride and through travel alike.
TEST(TraceUncertainty, OfThePinionByItsOwnAngleAlone) {
    const Car car = withUncertainty(exactCar(plainCar()), {.field = Field::pinionAngle}, 0.003);
    const TraceUncertainty uncertainty = computeUncertainty(car);
    const auto pinion = static_cast<std::size_t>(Figure::pinion);
    EXPECT_NEAR(uncertainty.atRide(Figure::pinion), 0.003, 1e-6);
    EXPECT_NEAR(uncertainty.at(pinion, 0.5 * car.travel.bump), 0.003, 1e-6);
    EXPECT_NEAR(uncertainty.at(pinion, -0.9 * car.travel.droop), 0.003, 1e-6);
}

TEST(TraceUncertainty, OfACarMeasuredExactlyIsNothing) {
    const TraceUncertainty uncertainty = computeUncertainty(exactCar(plainCar()));
    ASSERT_TRUE(uncertainty.known);
    for (std::size_t figure = 0; figure < kModelFigures; ++figure) {
        EXPECT_EQ(uncertainty.of(0, figure), 0);
        EXPECT_EQ(uncertainty.at(figure, 0.01), 0);
    }
    EXPECT_FALSE(uncertainty.isNonlinearAtRide(Figure::icX));
}

TEST(TraceUncertainty, BetweenItsTravelsIsWhatIsComputedThere) {
    CarGenerator generator(21);
    for (const Layout layout : {Layout::triangulated, Layout::torqueArm, Layout::triangulatedTrackBar}) {
        const Car car = generator.draw(layout);
        const TraceUncertainty uncertainty = computeUncertainty(car);
        for (const double travel : {-0.071, -0.013, 0.0, 0.004, 0.055}) {
            TraceUncertainty here;
            here.inputs = uncertainty.inputs;
            here.travels = {travel};
            CarModel model(car, LengthTreatment::keep, holesInUse(car), here.inputs, here.travels);
            differentiate(model, asInputs(here.inputs), here.sensitivity);
            here.known = here.sensitivity.known;
            for (const std::size_t figure : {kAntiSquatRow, kPlunge, kInverseDistance}) {
                const double exact = here.of(0, figure);
                EXPECT_NEAR(uncertainty.at(figure, travel), exact, 0.01 * exact + 1e-7)
                    << figure << " " << travel;
            }
        }
    }
}

// Plunge is measured from ride, so there it is exact, also where ride is none of the computed travels.
TEST(TraceUncertainty, OfPlungeIsNothingAtRide) {
    Car car = plainCar();
    car.travel.bump = 0.09;
    car.travel.droop = 0.05;
    const TraceUncertainty uncertainty = computeUncertainty(car);
    EXPECT_EQ(uncertainty.atRide(Figure::plunge), 0);
    EXPECT_LT(uncertainty.at(kPlunge, 0), 0.01 * uncertainty.at(kPlunge, 0.09));
    EXPECT_GT(uncertainty.at(kPlunge, 0.09), 0);
}

TEST(TraceUncertainty, OfACarThatOnlyBumpsOrOnlyDroopsOrDoesNeither) {
    for (const auto& [bump, droop] : {std::pair(0.08, 0.0), std::pair(0.0, 0.08), std::pair(0.0, 0.0)}) {
        Car car = plainCar();
        car.travel.bump = bump;
        car.travel.droop = droop;
        const TraceUncertainty uncertainty = computeUncertainty(car);
        ASSERT_TRUE(uncertainty.known);
        const double atRide = uncertainty.atRide(Figure::antiSquat);
        EXPECT_GT(atRide, 0);
        EXPECT_NEAR(uncertainty.at(kAntiSquatRow, 0), atRide, 1e-9 * atRide) << bump << " " << droop;
        EXPECT_NEAR(uncertainty.at(kAntiSquatRow, bump), uncertainty.of(kUncertaintyStations, kAntiSquatRow),
                    1e-9 * atRide);
        EXPECT_NEAR(uncertainty.at(kAntiSquatRow, -droop), uncertainty.of(1, kAntiSquatRow), 1e-9 * atRide);
        EXPECT_TRUE(std::isnan(uncertainty.at(kAntiSquatRow, bump + 0.001)));
        EXPECT_TRUE(std::isnan(uncertainty.at(kAntiSquatRow, -droop - 0.001)));
    }
}

TEST(TraceUncertainty, WithoutADrivelineHasNoneOfItsFigures) {
    Car car = plainCar();
    car.driveline.reset();
    const TraceUncertainty uncertainty = computeUncertainty(car);
    EXPECT_TRUE(std::isnan(uncertainty.atRide(Figure::pinion)));
    EXPECT_TRUE(std::isnan(uncertainty.at(kPlunge, 0.01)));
    EXPECT_FALSE(uncertainty.isNonlinearAtRide(Figure::pinion));
    EXPECT_GT(uncertainty.atRide(Figure::antiSquat), 0);
}

// Level links: the center is infinitely far, its distance does not exist; 1/distance is 0 and has an
// uncertainty, and neither has anti-squat lost its own.
TEST(TraceUncertainty, OfACenterInfinitelyFarIsThatOfOneOverDistance) {
    const TraceUncertainty uncertainty = computeUncertainty(levelCar());
    ASSERT_TRUE(uncertainty.known);
    EXPECT_EQ(uncertainty.sensitivity.value[static_cast<Eigen::Index>(kInverseDistance)], 0);
    EXPECT_TRUE(std::isnan(uncertainty.atRide(Figure::icX)));
    EXPECT_GT(uncertainty.inverseAtRide(), 0.001);
    EXPECT_GT(uncertainty.atRide(Figure::antiSquat), 0);
}

// By hand: with both pairs level and 12 in apart, lower rods 20 in and upper ones 15 in long, raising one end
// of one pair by e turns the housing by e / (length * 12 in) for each unit of travel: so 1/distance changes
// by that much.
TEST(TraceUncertainty, OfLevelLinksByHand) {
    const double sixteenth = 1e-4;
    Car car = exactCar(levelCar());
    car = withUncertainty(car, holeField(0, End::chassis, 0, 2), sixteenth);
    EXPECT_NEAR(computeUncertainty(car).inverseAtRide(), sixteenth / (20 * 12 * kInch * kInch), 1e-6);
    car = withUncertainty(car, holeField(1, End::axle, 0, 2), 2 * sixteenth);
    EXPECT_NEAR(computeUncertainty(car).inverseAtRide(),
                std::hypot(sixteenth / (20 * 12 * kInch * kInch), 2 * sixteenth / (15 * 12 * kInch * kInch)),
                1e-6);
}

TEST(TraceUncertainty, OfACarNothingHoldsIsNotKnown) {
    Car car = plainCar();
    car.links.resize(1);  // two lowers alone
    const TraceUncertainty uncertainty = computeUncertainty(car);
    EXPECT_FALSE(uncertainty.known);
    EXPECT_TRUE(std::isnan(uncertainty.atRide(Figure::antiSquat)));
    EXPECT_TRUE(std::isnan(uncertainty.at(kAntiSquatRow, 0)));
    EXPECT_FALSE(uncertainty.isNonlinearAtRide(Figure::antiSquat));
    EXPECT_TRUE(
        std::isnan(uncertaintyOfDifference(uncertainty, computeUncertainty(plainCar()), 0, kAntiSquatRow)));
}

TEST(TraceUncertainty, OutOfReachIsNotKnownAndNearRideStillIs) {
    Car car = levelCar();
    car.travel.bump = 0.6;  // more than the uppers reach
    const TraceUncertainty uncertainty = computeUncertainty(car);
    EXPECT_GT(uncertainty.atRide(Figure::antiSquat), 0);
    EXPECT_TRUE(std::isnan(uncertainty.at(kAntiSquatRow, 0.6)));
    EXPECT_GT(uncertainty.at(kAntiSquatRow, -0.02), 0);
}

// A left and a right link measured apart are two measurements: for a figure that takes both alike the
// uncertainty is that of the pair over sqrt 2.
TEST(TraceUncertainty, OfSidesMeasuredApartIsThePairsOverTheRootOfTwo) {
    for (const Layout layout : {Layout::triangulated, Layout::parallel, Layout::parallelGuide}) {
        Car pairs = CarGenerator(33).draw(layout);
        for (Link& link : pairs.links) {
            link.length.reset();
        }
        Car split = pairs;
        splitPairs(split);
        // The links alone, so that nothing but their sides differs.
        for (Car* car : {&pairs, &split}) {
            for (const CarInput& input : uncertainInputs(*car)) {
                const bool isPairs = input.id.link >= 0 && input.id.axis != 1 &&
                                     car->links[static_cast<std::size_t>(input.id.link)].side != Side::center;
                if (!isPairs) {
                    *car = withUncertainty(*car, input.id, 0.0);
                }
            }
        }
        const TraceUncertainty one = computeUncertainty(pairs);
        const TraceUncertainty two = computeUncertainty(split);
        for (const std::size_t figure : {kAntiSquatRow, kInverseDistance}) {
            EXPECT_NEAR(two.of(0, figure) / one.of(0, figure), std::sqrt(0.5), 2e-3);
            EXPECT_NEAR(two.of(kUncertaintyStations, figure) / one.of(kUncertaintyStations, figure),
                        std::sqrt(0.5), 5e-3);
        }
    }
}

// Nothing but its symmetry holds this car sideways. All its numbers can be varied nevertheless.
TEST(TraceUncertainty, OfACarHeldBySymmetryIsKnown) {
    const Car car = splitCar(Layout::parallel, 8);
    ASSERT_NE(computeTrace(car).heldBySymmetry, Freedom::none);
    const TraceUncertainty uncertainty = computeUncertainty(car);
    ASSERT_TRUE(uncertainty.known);
    EXPECT_GT(uncertainty.atRide(Figure::antiSquat), 0);
    EXPECT_TRUE(std::isfinite(uncertainty.atRide(Figure::antiSquat)));
    EXPECT_GT(uncertainty.at(kAntiSquatRow, 0.02), 0);
}

// What is the same in both was measured once: between a car and itself nothing is left, between cars that
// share but one number's value everything but that.
TEST(UncertaintyOfDifference, CommonMeasurementsCancel) {
    const Car car = plainCar();
    const TraceUncertainty one = computeUncertainty(car);
    EXPECT_EQ(uncertaintyOfDifference(one, one, 0, kAntiSquatRow), 0);
    Car moved = car;
    moved.links[0].axle.use = 1;
    moved.links[0].length.reset();
    const TraceUncertainty other = computeUncertainty(moved);
    const double difference = uncertaintyOfDifference(one, other, 0, kAntiSquatRow);
    EXPECT_GT(difference, 0);
    EXPECT_LT(difference, std::hypot(one.atRide(Figure::antiSquat), other.atRide(Figure::antiSquat)));
    EXPECT_NEAR(uncertaintyOfDifference(other, one, 0, kAntiSquatRow), difference, 1e-9);
    Car apart = car;
    for (const CarInput& input : uncertainInputs(car)) {
        apart = apply(apart, SetNumber{input.id, input.value * 1.0001 + 1e-5}).car;
    }
    const TraceUncertainty independent = computeUncertainty(apart);
    EXPECT_NEAR(uncertaintyOfDifference(one, independent, 0, kAntiSquatRow),
                std::hypot(one.atRide(Figure::antiSquat), independent.atRide(Figure::antiSquat)), 1e-6);
}

TEST(UncertaintyOfDifference, IsNotKnownWhereAFigureDoesNotExist) {
    Car car = plainCar();
    const TraceUncertainty one = computeUncertainty(car);
    car.driveline.reset();
    EXPECT_TRUE(std::isnan(
        uncertaintyOfDifference(one, computeUncertainty(car), 0, static_cast<std::size_t>(Figure::pinion))));
}

TEST(CannotTellApart, BelowTheReachOfTheirUncertainty) {
    EXPECT_TRUE(cannotTellApart(1.9, 1));
    EXPECT_TRUE(cannotTellApart(-1.9, 1));
    EXPECT_FALSE(cannotTellApart(2.0, 1));
    EXPECT_TRUE(cannotTellApart(0, 0)) << "the same exactly";
    EXPECT_FALSE(cannotTellApart(1, std::nan("")));
}

}  // namespace bolthole
