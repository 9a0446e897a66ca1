// The spread of a car's figures: what it must be by hand, at the edges of what a car can be, and of
// differences.
#include "geometry/uncertainty/trace_spread.h"

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

Car withSpread(const Car& car, FieldId id, double value) {
    id.spread = true;
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
TEST(TraceSpread, OfAntiSquatByTheCgHeightAlone) {
    const Car exact = exactCar(plainCar());
    const Car car = withSpread(exact, {.field = Field::cgHeight}, 0.002);
    const TraceSpread spread = computeSpread(car);
    const double antiSquat = computeTrace(car).ride[Figure::antiSquat];
    EXPECT_NEAR(spread.atRide(Figure::antiSquat) / antiSquat, 0.002 / car.cgHeight, 1e-5);
    EXPECT_EQ(spread.atRide(Figure::icX), 0);
    EXPECT_EQ(spread.inverseAtRide(), 0);
}

// A pinion measured to u is known to u, in the housing's own attitude: at ride and through travel alike.
TEST(TraceSpread, OfThePinionByItsOwnAngleAlone) {
    const Car car = withSpread(exactCar(plainCar()), {.field = Field::pinionAngle}, 0.003);
    const TraceSpread spread = computeSpread(car);
    const auto pinion = static_cast<std::size_t>(Figure::pinion);
    EXPECT_NEAR(spread.atRide(Figure::pinion), 0.003, 1e-6);
    EXPECT_NEAR(spread.at(pinion, 0.5 * car.travel.bump), 0.003, 1e-6);
    EXPECT_NEAR(spread.at(pinion, -0.9 * car.travel.droop), 0.003, 1e-6);
}

TEST(TraceSpread, OfACarMeasuredExactlyIsNothing) {
    const TraceSpread spread = computeSpread(exactCar(plainCar()));
    ASSERT_TRUE(spread.known);
    for (std::size_t figure = 0; figure < kModelFigures; ++figure) {
        EXPECT_EQ(spread.of(0, figure), 0);
        EXPECT_EQ(spread.at(figure, 0.01), 0);
    }
    EXPECT_FALSE(spread.bendsAtRide(Figure::icX));
}

TEST(TraceSpread, BetweenItsTravelsIsWhatIsComputedThere) {
    CarGenerator generator(21);
    for (const Layout layout : {Layout::triangulated, Layout::torqueArm, Layout::triangulatedTrackBar}) {
        const Car car = generator.draw(layout);
        const TraceSpread spread = computeSpread(car);
        for (const double travel : {-0.071, -0.013, 0.0, 0.004, 0.055}) {
            TraceSpread here;
            here.inputs = spread.inputs;
            here.travels = {travel};
            CarModel model(car, LengthTreatment::keep, holesInUse(car), here.inputs, here.travels);
            differentiate(model, asInputs(here.inputs), here.sensitivity);
            here.known = here.sensitivity.known;
            for (const std::size_t figure : {kAntiSquatRow, kPlunge, kInverseDistance}) {
                const double exact = here.of(0, figure);
                EXPECT_NEAR(spread.at(figure, travel), exact, 0.01 * exact + 1e-7) << figure << " " << travel;
            }
        }
    }
}

// Plunge is measured from ride, so there it is exact, also where ride is none of the computed travels.
TEST(TraceSpread, OfPlungeIsNothingAtRide) {
    Car car = plainCar();
    car.travel.bump = 0.09;
    car.travel.droop = 0.05;
    const TraceSpread spread = computeSpread(car);
    EXPECT_EQ(spread.atRide(Figure::plunge), 0);
    EXPECT_LT(spread.at(kPlunge, 0), 0.01 * spread.at(kPlunge, 0.09));
    EXPECT_GT(spread.at(kPlunge, 0.09), 0);
}

TEST(TraceSpread, OfACarThatOnlyBumpsOrOnlyDroopsOrDoesNeither) {
    for (const auto& [bump, droop] : {std::pair(0.08, 0.0), std::pair(0.0, 0.08), std::pair(0.0, 0.0)}) {
        Car car = plainCar();
        car.travel.bump = bump;
        car.travel.droop = droop;
        const TraceSpread spread = computeSpread(car);
        ASSERT_TRUE(spread.known);
        const double atRide = spread.atRide(Figure::antiSquat);
        EXPECT_GT(atRide, 0);
        EXPECT_NEAR(spread.at(kAntiSquatRow, 0), atRide, 1e-9 * atRide) << bump << " " << droop;
        EXPECT_NEAR(spread.at(kAntiSquatRow, bump), spread.of(kSpreadStations, kAntiSquatRow), 1e-9 * atRide);
        EXPECT_NEAR(spread.at(kAntiSquatRow, -droop), spread.of(1, kAntiSquatRow), 1e-9 * atRide);
        EXPECT_TRUE(std::isnan(spread.at(kAntiSquatRow, bump + 0.001)));
        EXPECT_TRUE(std::isnan(spread.at(kAntiSquatRow, -droop - 0.001)));
    }
}

TEST(TraceSpread, WithoutADrivelineHasNoneOfItsFigures) {
    Car car = plainCar();
    car.driveline.reset();
    const TraceSpread spread = computeSpread(car);
    EXPECT_TRUE(std::isnan(spread.atRide(Figure::pinion)));
    EXPECT_TRUE(std::isnan(spread.at(kPlunge, 0.01)));
    EXPECT_FALSE(spread.bendsAtRide(Figure::pinion));
    EXPECT_GT(spread.atRide(Figure::antiSquat), 0);
}

// Level links: the center is infinitely far, its distance does not exist; 1/distance is 0 and has a spread,
// and neither has anti-squat lost its own.
TEST(TraceSpread, OfACenterInfinitelyFarIsThatOfOneOverDistance) {
    const TraceSpread spread = computeSpread(levelCar());
    ASSERT_TRUE(spread.known);
    EXPECT_EQ(spread.sensitivity.value[static_cast<Eigen::Index>(kInverseDistance)], 0);
    EXPECT_TRUE(std::isnan(spread.atRide(Figure::icX)));
    EXPECT_GT(spread.inverseAtRide(), 0.001);
    EXPECT_GT(spread.atRide(Figure::antiSquat), 0);
}

// By hand: with both pairs level and 12 in apart, lower rods 20 in and upper ones 15 in long, raising one end
// of one pair by e turns the housing by e / (length * 12 in) for each unit of travel: so 1/distance changes
// by that much.
TEST(TraceSpread, OfLevelLinksByHand) {
    const double sixteenth = 1e-4;
    Car car = exactCar(levelCar());
    car = withSpread(car, holeField(0, End::chassis, 0, 2), sixteenth);
    EXPECT_NEAR(computeSpread(car).inverseAtRide(), sixteenth / (20 * 12 * kInch * kInch), 1e-6);
    car = withSpread(car, holeField(1, End::axle, 0, 2), 2 * sixteenth);
    EXPECT_NEAR(computeSpread(car).inverseAtRide(),
                std::hypot(sixteenth / (20 * 12 * kInch * kInch), 2 * sixteenth / (15 * 12 * kInch * kInch)),
                1e-6);
}

TEST(TraceSpread, OfACarNothingHoldsIsNotKnown) {
    Car car = plainCar();
    car.links.resize(1);  // two lowers alone
    const TraceSpread spread = computeSpread(car);
    EXPECT_FALSE(spread.known);
    EXPECT_TRUE(std::isnan(spread.atRide(Figure::antiSquat)));
    EXPECT_TRUE(std::isnan(spread.at(kAntiSquatRow, 0)));
    EXPECT_FALSE(spread.bendsAtRide(Figure::antiSquat));
    EXPECT_TRUE(std::isnan(spreadOfDifference(spread, computeSpread(plainCar()), 0, kAntiSquatRow)));
}

TEST(TraceSpread, OutOfReachIsNotKnownAndNearRideStillIs) {
    Car car = levelCar();
    car.travel.bump = 0.6;  // more than the uppers reach
    const TraceSpread spread = computeSpread(car);
    EXPECT_GT(spread.atRide(Figure::antiSquat), 0);
    EXPECT_TRUE(std::isnan(spread.at(kAntiSquatRow, 0.6)));
    EXPECT_GT(spread.at(kAntiSquatRow, -0.02), 0);
}

// A left and a right link measured apart are two measurements: for a figure that takes both alike the spread
// is that of the pair over sqrt 2.
TEST(TraceSpread, OfSidesMeasuredApartIsThePairsOverTheRootOfTwo) {
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
                    *car = withSpread(*car, input.id, 0.0);
                }
            }
        }
        const TraceSpread one = computeSpread(pairs);
        const TraceSpread two = computeSpread(split);
        for (const std::size_t figure : {kAntiSquatRow, kInverseDistance}) {
            EXPECT_NEAR(two.of(0, figure) / one.of(0, figure), std::sqrt(0.5), 2e-3);
            EXPECT_NEAR(two.of(kSpreadStations, figure) / one.of(kSpreadStations, figure), std::sqrt(0.5),
                        5e-3);
        }
    }
}

// Nothing but its symmetry holds this car sideways. All its numbers can be varied nevertheless.
TEST(TraceSpread, OfACarHeldBySymmetryIsKnown) {
    const Car car = splitCar(Layout::parallel, 8);
    ASSERT_NE(computeTrace(car).heldBySymmetry, Freedom::none);
    const TraceSpread spread = computeSpread(car);
    ASSERT_TRUE(spread.known);
    EXPECT_GT(spread.atRide(Figure::antiSquat), 0);
    EXPECT_TRUE(std::isfinite(spread.atRide(Figure::antiSquat)));
    EXPECT_GT(spread.at(kAntiSquatRow, 0.02), 0);
}

// What is the same in both was measured once: between a car and itself nothing is left, between cars that
// share but one number's value everything but that.
TEST(SpreadOfDifference, CommonMeasurementsCancel) {
    const Car car = plainCar();
    const TraceSpread one = computeSpread(car);
    EXPECT_EQ(spreadOfDifference(one, one, 0, kAntiSquatRow), 0);
    Car moved = car;
    moved.links[0].axle.use = 1;
    moved.links[0].length.reset();
    const TraceSpread other = computeSpread(moved);
    const double difference = spreadOfDifference(one, other, 0, kAntiSquatRow);
    EXPECT_GT(difference, 0);
    EXPECT_LT(difference, std::hypot(one.atRide(Figure::antiSquat), other.atRide(Figure::antiSquat)));
    EXPECT_NEAR(spreadOfDifference(other, one, 0, kAntiSquatRow), difference, 1e-9);
    Car apart = car;
    for (const CarInput& input : uncertainInputs(car)) {
        apart = apply(apart, SetNumber{input.id, input.value * 1.0001 + 1e-5}).car;
    }
    const TraceSpread independent = computeSpread(apart);
    EXPECT_NEAR(spreadOfDifference(one, independent, 0, kAntiSquatRow),
                std::hypot(one.atRide(Figure::antiSquat), independent.atRide(Figure::antiSquat)), 1e-6);
}

TEST(SpreadOfDifference, IsNotKnownWhereAFigureDoesNotExist) {
    Car car = plainCar();
    const TraceSpread one = computeSpread(car);
    car.driveline.reset();
    EXPECT_TRUE(
        std::isnan(spreadOfDifference(one, computeSpread(car), 0, static_cast<std::size_t>(Figure::pinion))));
}

TEST(CannotTellApart, BelowTheReachOfTheirUncertainty) {
    EXPECT_TRUE(cannotTellApart(1.9, 1));
    EXPECT_TRUE(cannotTellApart(-1.9, 1));
    EXPECT_FALSE(cannotTellApart(2.0, 1));
    EXPECT_TRUE(cannotTellApart(0, 0)) << "the same exactly";
    EXPECT_FALSE(cannotTellApart(1, std::nan("")));
}

}  // namespace bolthole
