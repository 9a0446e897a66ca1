// The cloud of the instant center: the same everywhere, beside what first order says, and through infinity.
#include "geometry/uncertainty/ic_cloud.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "geometry/edits/edit.h"
#include "geometry/uncertainty/trace_uncertainty.h"
#include "tests/support/car_generator.h"
#include "tests/support/level_car.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

constexpr std::size_t kSamples = 8'000;

bool areSame(const Coverage& one, const Coverage& other) {
    return one.used == other.used && one.mean == other.mean && one.uncertainty == other.uncertainty &&
           one.low == other.low && one.high == other.high;
}

void expectSame(const IcCloud& one, const IcCloud& other) {
    EXPECT_EQ(one.drawn, other.drawn);
    EXPECT_EQ(one.points, other.points);
    for (std::size_t figure = 0; figure < kModelFigures; ++figure) {
        EXPECT_TRUE(areSame(one.figures[figure], other.figures[figure])) << figure;
    }
    EXPECT_EQ(one.nearEnd, other.nearEnd);
    EXPECT_EQ(one.farEnd, other.farEnd);
}

}  // namespace

TEST(IcCloud, IsTheSameOnAnyNumberOfThreads) {
    CarGenerator generator(3);
    for (const Layout layout : {Layout::triangulated, Layout::triangulatedTrackBar, Layout::torqueArm}) {
        const Car car = generator.draw(layout);
        const IcCloud one = drawCloud(car, {.samples = kSamples, .seed = 4, .threads = 1});
        ASSERT_GT(one.drawn, 0U);
        expectSame(one, drawCloud(car, {.samples = kSamples, .seed = 4, .threads = 2}));
        expectSame(one, drawCloud(car, {.samples = kSamples, .seed = 4, .threads = 5}));
        EXPECT_NE(one.points, drawCloud(car, {.samples = kSamples, .seed = 5}).points);
    }
}

TEST(IcCloud, PointsLieWhereTheCenterMayBe) {
    const Car car = plainCar();
    const IcCloud cloud = drawCloud(car, {.samples = kSamples});
    const Station ride = computeTrace(car).ride;
    ASSERT_EQ(cloud.points.size(), kCloudPoints);
    EXPECT_EQ(cloud.drawn, kSamples);
    double sum = 0;
    for (const auto& [x, z] : cloud.points) {
        sum += static_cast<double>(x);
    }
    EXPECT_NEAR(sum / static_cast<double>(kCloudPoints), ride.icCarX, 0.2 * std::abs(ride.icCarX));
    EXPECT_LT(cloud.nearEnd, ride[Figure::icX]);
    EXPECT_GT(cloud.farEnd, ride[Figure::icX]);
    EXPECT_NEAR(cloud.of(Figure::antiSquat).mean, ride[Figure::antiSquat], 0.02 * ride[Figure::antiSquat]);
}

// Level links: half the samples have the center ahead, half behind, and the interval runs through infinity.
TEST(IcCloud, RunsThroughInfinityToBehindTheAxle) {
    const IcCloud cloud = drawCloud(levelCar(), {.samples = kSamples});
    EXPECT_EQ(cloud.drawn, kSamples);
    EXPECT_GT(cloud.nearEnd, 0);
    EXPECT_LT(cloud.farEnd, 0);
    EXPECT_FALSE(cloud.holds(Figure::icX));
    std::size_t ahead = 0;
    for (const auto& [x, z] : cloud.points) {
        ahead += x > 0 ? 1U : 0U;
    }
    EXPECT_NEAR(static_cast<double>(ahead) / static_cast<double>(cloud.points.size()), 0.5, 0.05);
}

TEST(IcCloud, OfAnExactCarIsOnePoint) {
    Car car = plainCar();
    for (const CarInput& input : uncertainInputs(car)) {
        FieldId id = input.id;
        id.uncertainty = true;
        car = apply(car, SetNumber{id, 0.0}).car;
    }
    const IcCloud cloud = drawCloud(car, {.samples = 100});
    EXPECT_EQ(cloud.drawn, 100U);
    EXPECT_NEAR(cloud.of(Figure::antiSquat).uncertainty, 0, 1e-9);
    EXPECT_NEAR(cloud.nearEnd, computeTrace(car).ride[Figure::icX], 1e-9);
    EXPECT_EQ(cloud.nearEnd, cloud.farEnd);
}

TEST(IcCloud, OfACarWithoutADrivelineLeavesItsFiguresOut) {
    Car car = plainCar();
    car.driveline.reset();
    const IcCloud cloud = drawCloud(car, {.samples = 500});
    EXPECT_EQ(cloud.of(Figure::pinion).used, 0U);
    EXPECT_FALSE(cloud.holds(Figure::pinion));
    EXPECT_EQ(cloud.of(Figure::antiSquat).used, 500U);
}

TEST(IcCloud, IsEmptyWhereNothingHoldsTheAxleOrWhereCancelled) {
    Car loose = plainCar();
    loose.links.resize(1);
    EXPECT_EQ(drawCloud(loose, {.samples = 100}).drawn, 0U);
    const IcCloud cancelled = drawCloud(plainCar(), {.samples = 100, .isCancelled = [] { return true; }});
    EXPECT_EQ(cancelled.drawn, 0U);
    EXPECT_TRUE(cancelled.points.empty());
}

// A car held by its symmetry alone: its sides were measured apart, and it is drawn nevertheless.
TEST(IcCloud, OfACarHeldBySymmetryIsWhatFirstOrderSays) {
    Car car = CarGenerator(8).draw(Layout::parallel);
    splitPairs(car);
    ASSERT_NE(computeTrace(car).heldBySymmetry, Freedom::none);
    const IcCloud cloud = drawCloud(car, {.samples = 20'000});
    EXPECT_EQ(cloud.drawn, 20'000U);
    EXPECT_NEAR(cloud.figures[kInverseDistance].uncertainty / computeUncertainty(car).inverseAtRide(), 1,
                0.03);
}

}  // namespace bolthole
