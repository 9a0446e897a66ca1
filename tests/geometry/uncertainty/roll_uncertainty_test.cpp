// The uncertainty of the figures in roll: against numbers changed by hand, and where there are none.
#include "geometry/uncertainty/roll_uncertainty.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "geometry/edits/edit.h"
#include "tests/support/car_generator.h"
#include "tests/support/exact_car.h"

namespace bolthole {
namespace {

double valueOf(const RollFigures& row, RollFigure figure) {
    switch (figure) {
        case RollFigure::yaw:
            return row.pose.yaw;
        case RollFigure::axleY:
            return row.pose.y;
        case RollFigure::center:
            return row.center;
        default:
            return row.steer;
    }
}

constexpr std::array kAll{RollFigure::yaw, RollFigure::axleY, RollFigure::center, RollFigure::steer};

}  // namespace

// One number uncertain alone: half the difference of the car with it larger and with it smaller.
TEST(RollUncertainty, IsWhatTheChangedCarShows) {
    for (const Layout layout : {Layout::triangulated, Layout::threeLink, Layout::torqueArm}) {
        const Car car = CarGenerator(17).draw(layout);
        for (const CarInput& input : uncertainInputs(car)) {
            if (input.id.link < 0 || input.id.end == End::chassis) {
                continue;
            }
            FieldId own = input.id;
            own.uncertainty = true;
            const double u = 5e-4;
            const RollUncertainty uncertainty =
                computeRollUncertainty(apply(exactCar(car), SetNumber{own, u}).car);
            const RollTrace up = computeRollTrace(apply(car, SetNumber{input.id, input.value + u}).car);
            const RollTrace down = computeRollTrace(apply(car, SetNumber{input.id, input.value - u}).car);
            for (const int row : {0, 6, 9}) {
                for (const RollFigure figure : kAll) {
                    const auto at = static_cast<std::size_t>(row);
                    const double expected =
                        std::abs(valueOf(up.rows[at], figure) - valueOf(down.rows[at], figure)) / 2;
                    EXPECT_NEAR(uncertainty.of(row, figure), expected, 1e-7 + 1e-4 * expected) << row;
                }
            }
        }
    }
}

TEST(RollUncertainty, OfACarMeasuredExactlyIsNothing) {
    const RollUncertainty uncertainty =
        computeRollUncertainty(exactCar(CarGenerator(17).draw(Layout::triangulated)));
    for (int row = 0; row < RollRange{}.rows; ++row) {
        for (const RollFigure figure : kAll) {
            EXPECT_EQ(uncertainty.of(row, figure), 0);
        }
    }
}

TEST(RollUncertainty, IsNotKnownWhereNothingHoldsTheAxleSideways) {
    const RollUncertainty uncertainty = computeRollUncertainty(CarGenerator(17).draw(Layout::parallel));
    EXPECT_FALSE(uncertainty.known);
    EXPECT_TRUE(std::isnan(uncertainty.of(6, RollFigure::center)));
}

}  // namespace bolthole
