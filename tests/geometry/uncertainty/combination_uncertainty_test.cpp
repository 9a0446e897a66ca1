// The uncertainty of hole combinations, against the slow way and against drawing cars at random.
#include "geometry/uncertainty/combination_uncertainty.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <memory>

#include "geometry/uncertainty/propagation.h"
#include "tests/support/car_generator.h"

namespace bolthole {
namespace {

// A second hole beside the one in use, so far above it.
void addHole(Bracket& bracket, double up) {
    bracket.holes.push_back({-1, "other", bracket.holes[0].at + Eigen::Vector3d(0, 0, up)});
}

// Two or three holes in three brackets: 12 combinations.
Car carWithHoles(Layout layout) {
    Car car = CarGenerator(3).draw(layout);
    addHole(car.links[0].axle, 0.03);
    addHole(car.links[0].axle, -0.03);
    addHole(car.links[0].chassis, 0.025);
    addHole(car.links[1].chassis, 0.025);
    return car;
}

Car wagonCar() {
    return carWithHoles(Layout::triangulated);
}

Car coupeCar() {
    return carWithHoles(Layout::parallelTrackBar);
}

class EachTreatment : public testing::TestWithParam<LengthTreatment> {};

// computeUncertainty() varies the same car at more travels.
TEST_P(EachTreatment, AgreesWithTheUncertaintyThroughTravel) {
    for (const Car& car : {wagonCar(), coupeCar()}) {
        const CombinationUncertaintySolver uncertaintySolver(car, GetParam());
        const HoleUse inUse = holesInUse(car);
        const TraceUncertainty present = computeUncertainty(car, LengthTreatment::keep, inUse);
        const CombinationSpace space(car, {});
        for (std::uint64_t index = 0; index < space.count(); ++index) {
            const TraceUncertainty slow =
                space.at(index) == inUse ? present : computeUncertainty(car, GetParam(), space.at(index));
            const CombinationUncertainty quick = uncertaintySolver.solve(space.at(index));
            if (!slow.known) {
                EXPECT_TRUE(std::isnan(quick.antiSquat));
                continue;
            }
            EXPECT_NEAR(quick.antiSquat, slow.atRide(Figure::antiSquat), 1e-6 * quick.antiSquat);
            EXPECT_NEAR(quick.inverse, slow.inverseAtRide(), 1e-6 * quick.inverse);
            const double apart =
                uncertaintyOfDifference(slow, present, 0, static_cast<std::size_t>(Figure::antiSquat));
            EXPECT_NEAR(quick.antiSquatDifference, apart, 1e-6 * (1 + apart));
        }
    }
}

TEST_P(EachTreatment, TheCombinationInUseDiffersFromItselfByNothing) {
    const Car car = coupeCar();
    const CombinationUncertainty same = CombinationUncertaintySolver(car, GetParam()).solve(holesInUse(car));
    EXPECT_GT(same.antiSquat, 1);
    EXPECT_NEAR(same.antiSquatDifference, 0, 1e-6);
    EXPECT_NEAR(same.inverseDifference, 0, 1e-9);
}

INSTANTIATE_TEST_SUITE_P(Treatments, EachTreatment,
                         testing::Values(LengthTreatment::keep, LengthTreatment::refit,
                                         LengthTreatment::uppers));

// Both combinations of one car whose numbers are off alike (JCGM 101:2008, 7, by sampling): what they share
// cancels in the difference. 4,000 draws know a standard deviation to about 1.1 %, 1 / sqrt(2 n) for normal
// inputs (handbook formula, from memory); five of these, for the tape's errors are not normal and the model
// bends a little.
TEST(CombinationUncertainty, TheDifferenceIsThatOfCarsDrawnAtRandom) {
    const Car car = wagonCar();
    const HoleUse now = holesInUse(car);
    HoleUse other = now;
    other.set(0, End::axle, 1);
    const std::vector<CarInput> inputs = uncertainInputs(car, other);
    // Every number either combination rests on: the holes of the one in use that the other leaves, too.
    std::vector<CarInput> all = uncertainInputs(car, now);
    for (const CarInput& input : inputs) {
        if (std::ranges::none_of(all, [&](const CarInput& known) { return known.id == input.id; })) {
            all.push_back(input);
        }
    }
    class Pair final : public MeasurementModel {
      public:
        Pair(const Car& of, const HoleUse& one, const HoleUse& two, std::span<const CarInput> numbers)
            : first_(of, LengthTreatment::refit, one, numbers, {0.0}),
              second_(of, LengthTreatment::refit, two, numbers, {0.0}) {}
        [[nodiscard]] std::size_t outputs() const override { return 1; }
        bool evaluate(std::span<const double> x, std::span<double> y) override {
            std::vector<double> a(kModelFigures);
            std::vector<double> b(kModelFigures);
            if (!first_.evaluate(x, a) || !second_.evaluate(x, b)) {
                return false;
            }
            constexpr auto kAntiSquat = static_cast<std::size_t>(Figure::antiSquat);
            y[0] = b[kAntiSquat] - a[kAntiSquat];
            return true;
        }

      private:
        CarModel first_;
        CarModel second_;
    };
    SamplePlan plan;
    plan.samples = 4000;
    plan.threads = 1;
    const Samples drawn =
        drawSamples([&] { return std::make_unique<Pair>(car, now, other, all); }, asInputs(all), plan);
    std::vector<double> differences(static_cast<std::size_t>(drawn.rows()));
    for (Eigen::Index row = 0; row < drawn.rows(); ++row) {
        differences[static_cast<std::size_t>(row)] = drawn(row, 0);
    }
    const double expected = coverageOf(differences).uncertainty;
    const CombinationUncertainty uncertainty =
        CombinationUncertaintySolver(car, LengthTreatment::refit).solve(other);
    EXPECT_NEAR(uncertainty.antiSquatDifference, expected, 0.055 * expected);
    EXPECT_LT(uncertainty.antiSquatDifference, 1.2 * uncertainty.antiSquat);
}

TEST(CombinationUncertainty, IsNotKnownWhereTheLinksCannotBeAssembled) {
    Car car = wagonCar();
    car.links[0].chassis.holes.push_back({-1, "far", {2.9, 0.45, 0.27}});
    HoleUse far = holesInUse(car);
    far.set(0, End::chassis, static_cast<int>(car.links[0].chassis.holes.size()) - 1);
    const CombinationUncertainty uncertainty =
        CombinationUncertaintySolver(car, LengthTreatment::keep).solve(far);
    EXPECT_TRUE(std::isnan(uncertainty.antiSquat));
    EXPECT_TRUE(std::isnan(uncertainty.antiSquatDifference));
}

}  // namespace
}  // namespace bolthole
