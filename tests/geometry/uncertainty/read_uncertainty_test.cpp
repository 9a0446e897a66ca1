// The uncertainty of numbers read off a car: against what the law of propagation gives by hand, and against
// the uncertainties that the trace has of the same figures.
#include "geometry/uncertainty/read_uncertainty.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "geometry/edits/edit.h"
#include "geometry/kinematics/trace.h"
#include "geometry/uncertainty/trace_uncertainty.h"
#include "tests/support/car_generator.h"

namespace bolthole {
namespace {

bool readWeights(const Car& car, std::span<double> numbers) {
    const CornerWeights& corners = car.cornerWeights;
    numbers[0] = corners.total();
    numbers[1] = 100 * corners.front() / corners.total();
    return true;
}

// JCGM 100:2008, 5.1.2 and 5.1.6: a sum of four independent readings, and a quotient whose parts share two.
TEST(ReadUncertainty, OfWeightsIsThatOfSumAndShareByHand) {
    const Car car = CarGenerator(3).draw(Layout::triangulated);
    const double u = uncertaintyOf(car, MeasuringTool::scales);
    const std::vector<double> uncertainty = readUncertainty(car, 2, readWeights);
    EXPECT_NEAR(uncertainty[0], 2 * u, 1e-9);
    const double total = car.cornerWeights.total();
    const double front = car.cornerWeights.front() / total;
    const double byFront = (1 - front) / total * u;
    const double byRear = front / total * u;
    EXPECT_NEAR(uncertainty[1], 100 * std::sqrt(2 * byFront * byFront + 2 * byRear * byRear), 1e-6);
}

// What the links make: two ways through the program that share the model of the inputs alone.
TEST(ReadUncertainty, OfTheTracesFiguresIsTheTracesOwn) {
    for (const Layout layout : {Layout::triangulated, Layout::threeLink, Layout::torqueArm}) {
        const Car car = CarGenerator(11).draw(layout);
        const std::vector<double> uncertainty =
            readUncertainty(car, 2, [](const Car& varied, std::span<double> numbers) {
                Car brief = varied;
                brief.travel.steps = kMinSteps;
                const Trace trace = computeTrace(brief);
                numbers[0] = trace.ride[Figure::antiSquat];
                numbers[1] = trace.ride[Figure::pinion];
                return trace.ride.usable;
            });
        const TraceUncertainty trace = computeUncertainty(car);
        EXPECT_NEAR(uncertainty[0], trace.atRide(Figure::antiSquat), 1e-3 * uncertainty[0]);
        EXPECT_NEAR(uncertainty[1], trace.atRide(Figure::pinion), 1e-3 * uncertainty[1]);
    }
}

// The size of two normal errors is Rayleigh's: P(r) = 1 - exp(-r^2/2u^2) (NIST/SEMATECH e-Handbook has it as
// the Weibull distribution of shape 2, sec. 1.3.6.6.8, from memory), so 2.5 and 97.5 of 100 lie below 0.225
// and 2.716 u.
TEST(ReadRanges, OfASizeNearNothingAreTheDistributionsOwn) {
    const Car car = CarGenerator(3).draw(Layout::triangulated);
    const CornerWeights measured = car.cornerWeights;
    const double u = uncertaintyOf(car, MeasuringTool::scales);
    const auto size = [measured](const Car& varied, std::span<double> numbers) {
        numbers[0] = std::hypot(varied.cornerWeights.leftFront - measured.leftFront,
                                varied.cornerWeights.rightRear - measured.rightRear);
        return true;
    };
    const std::vector<Coverage> ranges = readRanges(car, 1, size);
    EXPECT_EQ(ranges[0].used, kRangeDraws);
    EXPECT_NEAR(ranges[0].low, std::sqrt(-2 * std::log(0.975)) * u, 0.08 * u);
    EXPECT_NEAR(ranges[0].high, std::sqrt(-2 * std::log(0.025)) * u, 0.25 * u);
    EXPECT_EQ(readRanges(car, 1, size)[0].high, ranges[0].high) << "the same draws every time";
}

TEST(ReadUncertainty, IsNotKnownOfANumberThatDoesNotExist) {
    const Car car = CarGenerator(3).draw(Layout::triangulated);
    const std::vector<double> uncertainty =
        readUncertainty(car, 2, [](const Car&, std::span<double> numbers) {
            numbers[0] = std::nan("");
            numbers[1] = 1;
            return true;
        });
    EXPECT_TRUE(std::isnan(uncertainty[0]));
    EXPECT_EQ(uncertainty[1], 0);
    const auto none = [](const Car&, std::span<double>) { return false; };
    EXPECT_TRUE(std::isnan(readUncertainty(car, 1, none)[0]));
}

TEST(MeasuredInputs, HoldEveryNumberOnce) {
    Car car = CarGenerator(3).draw(Layout::triangulated);
    car.rearTrack = 1.5;
    car.weighing.pads.leftFront = 0.01;
    const std::vector<CarInput> inputs = measuredInputs(car);
    const auto count = [&](Field field) {
        return std::ranges::count_if(inputs, [&](const CarInput& input) { return input.id.field == field; });
    };
    EXPECT_EQ(count(Field::rearTrack), 1);
    EXPECT_EQ(count(Field::wheelbase), 1);
    EXPECT_EQ(count(Field::leftFrontWeight), 1);
    EXPECT_EQ(count(Field::bump), 0);  // chosen, not measured
    for (const CarInput& input : uncertainInputs(car)) {
        EXPECT_EQ(std::ranges::count(inputs, input.id, &CarInput::id), 1);
    }
}

}  // namespace
}  // namespace bolthole
