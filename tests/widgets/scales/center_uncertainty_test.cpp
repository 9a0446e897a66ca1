// The uncertainty of the instant center: against the car's uncertainty, and against samples drawn at random.
#include "widgets/scales/center_uncertainty.h"

#include <gmock/gmock.h>

#include <QPolygonF>
#include <cmath>

#include "tests/support/plain_car.h"
#include "widgets/scales/distance_scale.h"

namespace bolthole {
namespace {

// What the plain car's links are, with the lower link's front hole moved up so that the lines are near
// parallel.
Car flatCar() {
    Car car = plainCar();
    car.links[0].chassis.holes[0].at.z() = 7.6 * kMetresPerInch;
    car.links[1].chassis.holes[0].at.z() = 18.6 * kMetresPerInch;
    return car;
}

// The same car with every reading's error normal, as the outline has it; a tape's own is triangular, and of
// its draws a percent or two more lie within.
Car withNormalErrors(Car car) {
    for (const CarInput& input : uncertainInputs(car)) {
        FieldId id = input.id;
        id.uncertainty = true;
        const EditResult edited = apply(car, SetNumber{id, input.numberUncertainty.uncertainty});
        EXPECT_EQ(edited.refusal, "");
        car = edited.car;
    }
    return car;
}

class CenterUncertaintyOf : public ::testing::TestWithParam<bool> {
  protected:
    [[nodiscard]] static Car car() { return withNormalErrors(GetParam() ? flatCar() : plainCar()); }
};

// Two roads to the same first-order figure: the model's own differences of distance and height, and what
// follows from 1/distance and angle.
TEST(CenterUncertainty, GivesDistanceAndHeightAsTheCarsOwnUncertaintyHasThem) {
    const Car car = plainCar();
    const TraceUncertainty uncertainty = computeUncertainty(car);
    const Station ride = solveStation(car, 0.0);
    const auto center = centerUncertaintyAt(uncertainty, 0.0);
    ASSERT_TRUE(center.has_value());
    const double inverse = inverseDistance(ride);
    EXPECT_NEAR(center->ofInverse() / (inverse * inverse), uncertainty.atRide(Figure::icX),
                0.01 * uncertainty.atRide(Figure::icX));
    EXPECT_NEAR(center->ofHeight(inverse, ride[Figure::swingArmAngle]), uncertainty.atRide(Figure::icZ),
                0.01 * uncertainty.atRide(Figure::icZ));
}

TEST(CenterUncertainty, BetweenTheComputedTravelsLiesBetweenThem) {
    const Car car = plainCar();
    const TraceUncertainty uncertainty = computeUncertainty(car);
    for (std::size_t place = 1; place + 1 < uncertainty.travels.size(); ++place) {
        const double first = uncertainty.of(place, kInverseDistance);
        const double second = uncertainty.of(place + 1, kInverseDistance);
        const auto middle = centerUncertaintyAt(
            uncertainty, 0.5 * (uncertainty.travels[place] + uncertainty.travels[place + 1]));
        ASSERT_TRUE(middle.has_value());
        EXPECT_GE(middle->ofInverse(), std::min(first, second));
        EXPECT_LE(middle->ofInverse(), std::max(first, second));
    }
    EXPECT_FALSE(centerUncertaintyAt(uncertainty, 1.0).has_value()) << "a meter of bump is out of the range";
    EXPECT_FALSE(centerUncertaintyAt(TraceUncertainty{}, 0.0).has_value());
}

// JCGM 101:2008 by way of drawCloud() against first order, where both hold and where only the space of
// 1/distance is straight: 95 in 100 drawn centers lie in the outline.
TEST_P(CenterUncertaintyOf, OutlineHoldsNinetyFiveInAHundredOfTheDrawnCenters) {
    const TraceUncertainty uncertainty = computeUncertainty(car());
    const Station ride = solveStation(car(), 0.0);
    const auto center = centerUncertaintyAt(uncertainty, 0.0);
    ASSERT_TRUE(center.has_value());
    const auto pieces = centerRegion(*center, ride);
    ASSERT_EQ(pieces.size(), 1U) << "neither car's center may be infinitely far";
    QPolygonF outline;
    for (const QPointF& point : pieces.front()) {
        outline << point;
    }
    const IcCloud cloud = drawCloud(car(), {.samples = 4'000, .seed = 7});
    ASSERT_EQ(cloud.points.size(), kCloudPoints);
    const auto inside = std::ranges::count_if(cloud.points, [&](const std::array<float, 2>& point) {
        return outline.containsPoint(QPointF(static_cast<double>(point[0]), static_cast<double>(point[1])),
                                     Qt::OddEvenFill);
    });
    // Of 2,000 draws with 95 % the count's own standard deviation is a half percent.
    EXPECT_NEAR(static_cast<double>(inside) / static_cast<double>(cloud.points.size()), 0.95, 0.015);
}

INSTANTIATE_TEST_SUITE_P(NearAndFar, CenterUncertaintyOf, ::testing::Bool());

TEST(CenterUncertainty, SeesWhereTheCenterMayBeInfinitelyFar) {
    const CenterUncertainty uncertainty{.inverse = 0.01, .angle = 0.0001, .both = 0};
    EXPECT_TRUE(inverseEnds(uncertainty, 0.19).throughInfinity());
    EXPECT_FALSE(inverseEnds(uncertainty, 0.2).throughInfinity());
    EXPECT_NEAR(inverseEnds(uncertainty, 0.5).low, 0.5 - 0.196, 1e-3);
}

TEST(DifferenceUncertainty, OfACarWithItselfIsNothingAndOfAnotherHoleItIsNot) {
    const Car car = plainCar();
    Car other = car;
    other.links[0].axle.use = 1;
    const TraceUncertainty one = computeUncertainty(car);
    const TraceUncertainty two = computeUncertainty(other);
    const auto antiSquat = static_cast<std::size_t>(Figure::antiSquat);
    for (const double travel : {0.0, 0.01}) {
        EXPECT_NEAR(differenceUncertaintyAt(one, one, antiSquat, travel), 0, 1e-6);
        EXPECT_GT(differenceUncertaintyAt(one, two, antiSquat, travel), 0.1);
    }
    EXPECT_NEAR(differenceUncertaintyAt(one, two, antiSquat, 0.0),
                uncertaintyOfDifference(one, two, 0, antiSquat), 1e-12);
    other.travel.bump += 0.01;
    EXPECT_TRUE(std::isnan(differenceUncertaintyAt(one, computeUncertainty(other), antiSquat, 0.01)))
        << "other travels are not compared in between";
    EXPECT_GT(differenceUncertaintyAt(one, computeUncertainty(other), antiSquat, 0.0), 0.1);
}

}  // namespace
}  // namespace bolthole
