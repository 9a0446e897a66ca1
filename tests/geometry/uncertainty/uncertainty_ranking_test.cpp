// Which numbers an uncertainty stems from, against a published budget and against propagating anew.
#include "geometry/uncertainty/uncertainty_ranking.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "geometry/car/numbers.h"
#include "geometry/edits/edit.h"
#include "tests/support/car_generator.h"

namespace bolthole {
namespace {

constexpr auto kAntiSquat = static_cast<std::size_t>(Figure::antiSquat);

// JCGM 100:2008, H.1.2, (H.3), with the comparator's reading as one number: l = l_S + d - l_S (da t + a dt).
// The inputs: l_S (m), d (m), da (1/K), t (K), a (1/K), dt (K).
class EndGauge final : public MeasurementModel {
  public:
    [[nodiscard]] std::size_t outputs() const override { return 1; }
    bool evaluate(std::span<const double> x, std::span<double> y) override {
        y[0] = x[0] + x[1] - x[0] * (x[2] * x[3] + x[4] * x[5]);
        return true;
    }
};

// JCGM 100:2008, H.1.3: estimates and standard uncertainties.
const std::vector<UncertainInput> kGauge{{0.050000623, 25e-9}, {215e-9, 9.7e-9},  {0, 0.58e-6},
                                         {-0.1, 0.41},         {11.5e-6, 1.2e-6}, {0, 0.029}};

// JCGM 100:2008, table H.1, last column: each input's part of the combined standard uncertainty, nm, and
// u_c = 32 nm below it (all from memory).
TEST(UncertaintyRanking, OrdersTheEndGaugesBudgetAsPublished) {
    EndGauge model;
    Sensitivity sensitivity;
    differentiate(model, kGauge, sensitivity);
    EXPECT_NEAR(sensitivity.uncertainty(0) * 1e9, 32, 0.5);
    const std::vector<InputShare> ranked = rankInputs(sensitivity, 0);
    ASSERT_EQ(ranked.size(), 6U);
    EXPECT_EQ(ranked[0].input, 0U);  // the standard
    EXPECT_EQ(ranked[1].input, 5U);  // the difference of temperatures
    EXPECT_EQ(ranked[2].input, 1U);  // the comparator
    EXPECT_EQ(ranked[3].input, 2U);  // the difference of expansion
    EXPECT_NEAR(std::abs(ranked[0].change) * 1e9, 25, 0.5);
    EXPECT_NEAR(std::abs(ranked[1].change) * 1e9, 16.6, 0.1);
    EXPECT_NEAR(std::abs(ranked[2].change) * 1e9, 9.7, 0.05);
    EXPECT_NEAR(std::abs(ranked[3].change) * 1e9, 2.9, 0.05);
    EXPECT_NEAR(ranked[4].share + ranked[5].share, 0, 1e-9);
    EXPECT_NEAR(ranked[0].share, 25.0 * 25.0 / (31.66 * 31.66), 0.002);
}

// The linear form is exact, so nothing but propagating anew with the other uncertainty can be expected.
TEST(UncertaintyRanking, SaysWhatAnotherUncertaintyWouldMake) {
    EndGauge model;
    Sensitivity before;
    differentiate(model, kGauge, before);
    for (const double other : {0.0, 0.01, 0.029, 0.058}) {
        std::vector<UncertainInput> again = kGauge;
        again[5].uncertainty = other;
        Sensitivity after;
        differentiate(model, again, after);
        EXPECT_NEAR(uncertaintyWith(before, 0, 5, 0.029, other), after.uncertainty(0), 1e-15);
    }
    EXPECT_LT(uncertaintyWith(before, 0, 5, 0.029, 0.0), before.uncertainty(0) * 0.9);
}

TEST(UncertaintyRanking, KnowsNothingOfAnInputThatIsExactNow) {
    EndGauge model;
    std::vector<UncertainInput> exact = kGauge;
    exact[5].uncertainty = 0;
    Sensitivity sensitivity;
    differentiate(model, exact, sensitivity);
    EXPECT_EQ(uncertaintyWith(sensitivity, 0, 5, 0.0, 0.0), sensitivity.uncertainty(0));
    EXPECT_TRUE(std::isnan(uncertaintyWith(sensitivity, 0, 5, 0.0, 0.01)));
}

class RankingOfEachLayout : public testing::TestWithParam<Layout> {};

TEST_P(RankingOfEachLayout, SharesSumToOneAndFall) {
    CarGenerator generator(5);
    const Car car = generator.draw(GetParam());
    const TraceUncertainty uncertainty = computeUncertainty(car);
    ASSERT_TRUE(uncertainty.known);
    for (const std::size_t place : {std::size_t{0}, std::size_t{1}, uncertainty.travels.size() - 1}) {
        for (const std::size_t figure : {kAntiSquat, kInverseDistance}) {
            const std::vector<InputShare> ranked = rankInputs(uncertainty, place, figure);
            if (std::isnan(uncertainty.of(place, figure))) {
                EXPECT_TRUE(ranked.empty());
                continue;
            }
            ASSERT_EQ(ranked.size(), uncertainty.inputs.size());
            EXPECT_TRUE(std::ranges::is_sorted(ranked, std::greater<>{}, &InputShare::share));
            const double sum =
                std::accumulate(ranked.begin(), ranked.end(), 0.0,
                                [](double so, const InputShare& each) { return so + each.share; });
            EXPECT_NEAR(sum, 1, 1e-12);
        }
    }
}

// The car with the number's own uncertainty entered, computed anew. To first order, so the steps of the
// differences, which are the uncertainties themselves, leave a trace of the curvature: a hundredth.
TEST_P(RankingOfEachLayout, TheWorstNumberTakenWithCalipersDoesWhatWasSaid) {
    CarGenerator generator(5);
    const Car car = generator.draw(GetParam());
    const TraceUncertainty uncertainty = computeUncertainty(car);
    const std::vector<InputShare> ranked = rankInputs(uncertainty, 0, kInverseDistance);
    ASSERT_FALSE(ranked.empty());
    FieldId id = uncertainty.inputs[ranked[0].input].id;
    ASSERT_EQ(quantityOf(id.field), Quantity::length);
    const double said =
        uncertaintyWith(uncertainty, 0, kInverseDistance, ranked[0].input, kCaliperUncertainty);
    id.uncertainty = true;
    const EditResult changed = apply(car, SetNumber{id, kCaliperUncertainty});
    ASSERT_TRUE(changed.refusal.empty());
    EXPECT_NEAR(computeUncertainty(changed.car).inverseAtRide(), said, 0.01 * said);
    EXPECT_LT(said, uncertainty.inverseAtRide());
}

INSTANTIATE_TEST_SUITE_P(Layouts, RankingOfEachLayout,
                         testing::Values(Layout::triangulated, Layout::apart, Layout::threeLink,
                                         Layout::torqueArm, Layout::parallelTrackBar));

TEST(UncertaintyRanking, IsEmptyForAFigureTheCarDoesNotHave) {
    CarGenerator generator(5);
    Car car = generator.draw(Layout::triangulated);
    car.driveline.reset();
    const TraceUncertainty uncertainty = computeUncertainty(car);
    ASSERT_TRUE(uncertainty.known);
    EXPECT_TRUE(rankInputs(uncertainty, 0, static_cast<std::size_t>(Figure::frontJoint)).empty());
    EXPECT_TRUE(
        std::isnan(uncertaintyWith(uncertainty, 0, static_cast<std::size_t>(Figure::frontJoint), 0, 0)));
}

}  // namespace
}  // namespace bolthole
