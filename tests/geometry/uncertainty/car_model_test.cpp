// The model that measurements are varied in, against the same car with its numbers changed and solved anew.
#include "geometry/uncertainty/car_model.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "geometry/car/numbers.h"
#include "geometry/edits/edit.h"
#include "tests/support/car_generator.h"

namespace bolthole {
namespace {

constexpr double kShift = 0.7e-3;  // m or rad: what a tape misses

std::vector<double> estimatesOf(const std::vector<CarInput>& inputs) {
    std::vector<double> x;
    for (const CarInput& input : inputs) {
        x.push_back(input.value);
    }
    return x;
}

/// Every figure of `car` at `travel`, solved from its measured pose on.
void expectRow(const Car& car, double travel, std::span<const double> row, const std::string& what) {
    const Station station = solveStation(car, travel);
    for (std::size_t figure = 0; figure < kFigureCount; ++figure) {
        const double expected = station.figures[figure];
        if (std::isnan(expected)) {
            EXPECT_TRUE(std::isnan(row[figure])) << what << figureTable()[figure].column;
            continue;
        }
        EXPECT_NEAR(row[figure], expected, 1e-6 * std::max(1.0, std::abs(expected)))
            << what << figureTable()[figure].column << " at " << travel;
    }
}

class CarModelOfEachLayout : public testing::TestWithParam<Layout> {};

TEST_P(CarModelOfEachLayout, GivesWhatTheChangedCarGives) {
    CarGenerator generator(11);
    for (int round = 0; round < 4; ++round) {
        const Car car = generator.draw(GetParam());
        if (!computeTrace(car).assembly.usable()) {
            continue;
        }
        const std::vector<CarInput> inputs = uncertainInputs(car);
        const std::vector<double> travels{0.0, -0.02, 0.03};
        CarModel model(car, LengthTreatment::keep, holesInUse(car), inputs, travels);
        std::vector<double> x = estimatesOf(inputs);
        std::vector<double> y(model.outputs());
        ASSERT_TRUE(model.evaluate(x, y));
        for (std::size_t input = 0; input < inputs.size(); ++input) {
            const FieldId& id = inputs[input].id;
            const bool isArm = id.field == Field::holeAt && id.end == End::chassis &&
                               car.links[static_cast<std::size_t>(id.link)].kind != LinkKind::rod;
            if (isArm || id.field == Field::cgHeight) {
                continue;  // moves the arm's own point along; may be an estimate that the car does not hold
            }
            const double shifted = inputs[input].value + kShift;
            const EditResult changed = apply(car, SetNumber{id, shifted});
            ASSERT_EQ(changed.refusal, "");
            x[input] = *numberAt(changed.car, id);
            if (computeTrace(changed.car).assembly.usable()) {
                ASSERT_TRUE(model.evaluate(x, y)) << numberWords(car, id);
                for (std::size_t place = 0; place < travels.size(); ++place) {
                    expectRow(changed.car, travels[place],
                              std::span(y).subspan(place * kModelFigures, kModelFigures),
                              numberWords(car, id) + ": ");
                }
            }
            x[input] = inputs[input].value;
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Layouts, CarModelOfEachLayout,
                         testing::Values(Layout::triangulated, Layout::apart, Layout::threeLink,
                                         Layout::torqueArm, Layout::wattsThreeLink, Layout::parallel,
                                         Layout::parallelGuide, Layout::parallelTrackBar,
                                         Layout::triangulatedTrackBar, Layout::ladderGuide));

}  // namespace
}  // namespace bolthole
