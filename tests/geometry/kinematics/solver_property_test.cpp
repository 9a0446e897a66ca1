// Laws the solver obeys whatever the car: checked on hundreds of generated ones.
#include <gmock/gmock.h>

#include <array>
#include <cmath>
#include <functional>

#include "geometry/kinematics/axle_solver.h"
#include "tests/support/car_generator.h"

namespace bolthole {

namespace {

constexpr double kTravel = 0.09;  // m
constexpr double kRoll = 0.05;    // rad
constexpr std::array kExactlyHeld{Layout::triangulated, Layout::apart, Layout::threeLink, Layout::torqueArm,
                                  Layout::wattsThreeLink};
constexpr std::array kOverHeld{Layout::parallelGuide, Layout::parallelTrackBar, Layout::triangulatedTrackBar,
                               Layout::ladderGuide};

// Draws `count` cars a layout and hands each to `law`; every second one has lengths off from its holes.
template <typename Layouts>
void forEachCar(const Layouts& layouts, int count, const std::function<void(const Car&)>& law) {
    for (const Layout layout : layouts) {
        CarGenerator generator(100 + static_cast<std::uint64_t>(layout));
        for (int number = 0; number < count; ++number) {
            SCOPED_TRACE(testing::Message() << "layout " << static_cast<int>(layout) << ", car " << number);
            Car car = generator.draw(layout);
            if (number % 2 == 1) {
                generator.misbuild(car, 0.01);
            }
            law(car);
            if (testing::Test::HasFailure()) {
                return;
            }
        }
    }
}

double distance(const AxlePose& one, const AxlePose& other) {
    const Eigen::Matrix<double, 6, 1> difference{one.x - other.x,         one.y - other.y,
                                                 one.z - other.z,         one.roll - other.roll,
                                                 one.pitch - other.pitch, one.yaw - other.yaw};
    return difference.lpNorm<Eigen::Infinity>();
}

// The mismatch of one constraint, straight from the table of equations in geometry/kinematics/linkage.h.
double misfit(const Constraint& link, const AxlePose& pose) {
    const Eigen::Vector3d gap = pose.carry(link.onAxle) - link.onChassis;
    switch (link.kind) {
        case LinkKind::rod:
            return std::abs(gap.norm() - link.length);
        case LinkKind::pivot:
            return std::max(std::abs(gap.x()), std::abs(gap.z()));
        case LinkKind::slider:
            return std::abs(gap.z());
        case LinkKind::guide:
            return std::abs(gap.y());
    }
    return 1.0;
}

double largestMisfit(const Linkage& linkage, const AxlePose& pose) {
    double largest = 0;
    for (const Constraint& link : linkage.constraints) {
        largest = std::max(largest, misfit(link, pose));
    }
    return largest;
}

AxleSolver assembled(const Car& car, Drive drive) {
    AxleSolver solver(buildLinkage(car), drive);
    EXPECT_TRUE(solver.assemble().usable());
    return solver;
}

AxlePose poseAt(AxleSolver solver, double travel, double roll) {
    EXPECT_TRUE(solver.moveTo(travel, roll).usable());
    return solver.pose();
}

}  // namespace

TEST(SolverProperty, EveryRodKeepsItsLength) {
    forEachCar(kExactlyHeld, 60, [](const Car& car) {
        const Linkage linkage = buildLinkage(car);
        AxleSolver solver = assembled(car, Drive::roll);
        for (int step = -10; step <= 10; ++step) {
            ASSERT_TRUE(solver.moveTo(kTravel * step / 10.0, kRoll * std::sin(step)).usable());
            EXPECT_LE(largestMisfit(linkage, solver.pose()), 1e-12);
            EXPECT_LE(solver.bind(), 5e-11);  // taken before the last correction, which is under 1e-11
        }
    });
}

TEST(SolverProperty, ImposedTravelAndRollAreMet) {
    forEachCar(kExactlyHeld, 10, [](const Car& car) {
        AxleSolver solver = assembled(car, Drive::roll);
        const MoveReport report = solver.moveTo(0.031, -0.017);
        EXPECT_NEAR(report.travel, 0.031, 1e-15);
        EXPECT_DOUBLE_EQ(report.roll, -0.017);
        EXPECT_DOUBLE_EQ(solver.pose().z, car.rearTireRadius + 0.031);
        EXPECT_DOUBLE_EQ(solver.pose().roll, -0.017);
    });
}

// Where the lengths fit the holes, the pose at ride is the measured one.
TEST(SolverProperty, FittedLengthsLeaveTheMeasuredPose) {
    CarGenerator generator(7);
    for (const Layout layout : kExactlyHeld) {
        for (int number = 0; number < 40; ++number) {
            const Car car = generator.draw(layout);
            const AxleSolver solver = assembled(car, Drive::travel);
            EXPECT_LE(distance(solver.pose(), AxlePose{0, 0, car.rearTireRadius, 0, 0, 0}), 1e-14);
        }
    }
}

TEST(SolverProperty, ReversingTheSweepRetracesIt) {
    const auto law = [](const Car& car) {
        AxleSolver solver = assembled(car, Drive::roll);
        std::array<AxlePose, 41> up;
        for (std::size_t step = 0; step < up.size(); ++step) {
            const double share = static_cast<double>(step) / 20.0 - 1.0;
            ASSERT_TRUE(solver.moveTo(kTravel * share, kRoll * share * share).usable());
            up[step] = solver.pose();
        }
        for (std::size_t step = up.size(); step-- > 0;) {
            const double share = static_cast<double>(step) / 20.0 - 1.0;
            ASSERT_TRUE(solver.moveTo(kTravel * share, kRoll * share * share).usable());
            EXPECT_LE(distance(solver.pose(), up[step]), 1e-11) << "step " << step;
        }
    };
    forEachCar(kExactlyHeld, 50, law);
    forEachCar(kOverHeld, 20, law);
}

// One leap to full travel ends on the branch that two thousand small steps follow.
TEST(SolverProperty, BranchDoesNotDependOnTheStep) {
    const auto law = [](const Car& car) {
        for (const double end : {kTravel, -kTravel}) {
            AxleSolver leaping = assembled(car, Drive::roll);
            AxleSolver creeping = leaping;
            ASSERT_TRUE(leaping.moveTo(end, kRoll).usable());
            for (int step = 1; step <= 2000; ++step) {
                ASSERT_TRUE(creeping.moveTo(end * step / 2000.0, kRoll * step / 2000.0).usable());
            }
            EXPECT_LE(distance(leaping.pose(), creeping.pose()), 1e-11);
        }
    };
    forEachCar(kExactlyHeld, 40, law);
    forEachCar(kOverHeld, 5, law);
}

// A hair's breadth of travel, or roll with next to no travel, must not spoil the next long step.
TEST(SolverProperty, TinyMovesBeforeLongOnesKeepTheBranch) {
    const auto law = [](const Car& car) {
        const AxleSolver start = assembled(car, Drive::roll);
        const AxlePose goal = poseAt(start, -kTravel, 0);
        for (const double nudge : {1e-17, 1e-15, 1e-12, 1e-9, 1e-7, 1e-5}) {
            AxleSolver solver = start;
            ASSERT_TRUE(solver.moveTo(kTravel, 0).usable());
            ASSERT_TRUE(solver.moveTo(kTravel + nudge, 0).usable());
            EXPECT_LE(distance(poseAt(solver, -kTravel, 0), goal), 1e-11) << "nudge " << nudge;
            ASSERT_TRUE(solver.moveTo(kTravel, kRoll).usable());
            ASSERT_TRUE(solver.moveTo(kTravel + nudge, 0).usable());
            EXPECT_LE(distance(poseAt(solver, -kTravel, 0), goal), 1e-11) << "rolled, nudge " << nudge;
        }
    };
    forEachCar(kExactlyHeld, 40, law);
    forEachCar(kOverHeld, 20, law);
}

namespace {

// Sixth-order central difference of the poses, against `rates`.
void expectRates(const AxleRates& rates, const std::function<AxlePose(double)>& poseAtOffset) {
    constexpr double kStep = 5e-4;  // m or rad
    constexpr std::array kWeights{45.0 / 60.0, -9.0 / 60.0, 1.0 / 60.0};
    const auto slope = [&](double AxlePose::*part) {
        double sum = 0;
        for (std::size_t index = 0; index < kWeights.size(); ++index) {
            const double offset = kStep * static_cast<double>(index + 1);
            sum += kWeights[index] * (poseAtOffset(offset).*part - poseAtOffset(-offset).*part);
        }
        return sum / kStep;
    };
    EXPECT_NEAR(rates.x, slope(&AxlePose::x), 1e-8);
    EXPECT_NEAR(rates.y, slope(&AxlePose::y), 1e-8);
    EXPECT_NEAR(rates.pitch, slope(&AxlePose::pitch), 1e-8);
    EXPECT_NEAR(rates.yaw, slope(&AxlePose::yaw), 1e-8);
}

void expectRatesAreDerivatives(const Car& car) {
    AxleSolver solver = assembled(car, Drive::roll);
    for (const double travel : {0.0, 0.05, -0.07}) {
        const double roll = 0.4 * travel;
        ASSERT_TRUE(solver.moveTo(travel, roll).usable());
        SCOPED_TRACE(testing::Message() << "travel " << travel);
        expectRates(solver.travelRates(),
                    [&](double offset) { return poseAt(solver, travel + offset, roll); });
        expectRates(solver.rollRates(), [&](double offset) { return poseAt(solver, travel, roll + offset); });
    }
}

}  // namespace

TEST(SolverProperty, RatesAreTheDerivativesOfThePose) {
    forEachCar(kExactlyHeld, 50, expectRatesAreDerivatives);
}

TEST(SolverProperty, RatesAreDerivativesWhereTheLinksBindToo) {
    forEachCar(kOverHeld, 50, expectRatesAreDerivatives);
}

namespace {

// Half the gradient of the sum of squared misfits against one part of the pose, by central difference.
double misfitSlope(const Linkage& linkage, AxlePose pose, double AxlePose::*part) {
    constexpr double kStep = 1e-6;
    const auto sumAt = [&](double offset) {
        AxlePose moved = pose;
        moved.*part += offset;
        double sum = 0;
        for (const Constraint& link : linkage.constraints) {
            sum += misfit(link, moved) * misfit(link, moved);
        }
        return sum;
    };
    return (sumAt(kStep) - sumAt(-kStep)) / (4 * kStep);
}

}  // namespace

// Over-held by rods and guides: no small move of the axle lowers the sum of squares.
TEST(SolverProperty, OverHeldPoseIsALeastSquares) {
    constexpr std::array kHeldLayouts{Layout::parallelGuide, Layout::parallelTrackBar,
                                      Layout::triangulatedTrackBar};
    forEachCar(kHeldLayouts, 70, [](const Car& car) {
        const Linkage linkage = buildLinkage(car);
        AxleSolver solver = assembled(car, Drive::roll);
        ASSERT_TRUE(solver.moveTo(0.03, 0.04).usable());
        EXPECT_NEAR(solver.bind(), largestMisfit(linkage, solver.pose()), 1e-11);
        for (const auto part : {&AxlePose::x, &AxlePose::y, &AxlePose::pitch, &AxlePose::yaw}) {
            EXPECT_NEAR(misfitSlope(linkage, solver.pose(), part), 0.0, 1e-11);
        }
    });
}

// Bind of a parallel four-link with a guide at a small roll angle: half-spacing a, side-view slopes s and
// cosines u give a phi |s1 - s2| u1 u2 max(u1, u2) / (u1^2 + u2^2). Derived by hand from the equations:
// the pairs' elongations are u a (s phi - yaw), and yaw makes their sum of squares least.
TEST(SolverProperty, ParallelFourLinkBindsInRollAsDerived) {
    CarGenerator generator(11);
    for (int number = 0; number < 200; ++number) {
        Car car = generator.draw(Layout::parallelGuide);
        for (const std::size_t link : {0U, 1U}) {
            car.links[link].chassis.holes[0].at.y() = car.links[link].axle.holes[0].at.y() = 0.4;
        }
        const auto span = [&](std::size_t link) -> Eigen::Vector3d {
            return car.links[link].chassis.holes[0].at - car.links[link].axle.holes[0].at;
        };
        const double s1 = span(0).z() / span(0).x();
        const double s2 = span(1).z() / span(1).x();
        const double u1 = span(0).x() / span(0).norm();
        const double u2 = span(1).x() / span(1).norm();
        constexpr double kPhi = 1e-4;
        const double expected =
            0.4 * kPhi * std::abs(s1 - s2) * u1 * u2 * std::max(u1, u2) / (u1 * u1 + u2 * u2);
        AxleSolver solver = assembled(car, Drive::roll);
        ASSERT_TRUE(solver.moveTo(0, kPhi).usable());
        EXPECT_NEAR(solver.bind(), expected, 1e-3 * expected + 1e-9) << "car " << number;
    }
}

}  // namespace bolthole
