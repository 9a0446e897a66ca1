// The solver's inner loop allocates nothing. This program counts every call of malloc, to which operator new
// and Eigen's own storage both come down in glibc.
#include <gmock/gmock.h>

#include <atomic>
#include <cstdlib>
#include <memory>

#include "geometry/axle_solver.h"
#include "geometry/choice_figures.h"
#include "geometry/trace.h"
#include "tests/support/car_generator.h"

// g++ says so by a macro of its own, clang by __has_feature, which headers define for g++ as well.
#if defined(__SANITIZE_ADDRESS__)
#define BOLTHOLE_FOREIGN_MALLOC 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define BOLTHOLE_FOREIGN_MALLOC 1
#endif
#endif

namespace {

std::atomic<long> allocations{0};

}  // namespace

#ifndef BOLTHOLE_FOREIGN_MALLOC
extern "C" {
void* __libc_malloc(std::size_t size);  // NOLINT(readability-identifier-naming): glibc's name
void* malloc(std::size_t size);

void* malloc(std::size_t size) {
    ++allocations;
    return __libc_malloc(size);
}
}
#endif

namespace bolthole {

namespace {

constexpr Layout kLayouts[] = {Layout::triangulated,         Layout::torqueArm,     Layout::parallelTrackBar,
                               Layout::triangulatedTrackBar, Layout::parallelGuide, Layout::ladderGuide};

// Under AddressSanitizer malloc is its own and can't be counted.
class Allocation : public testing::Test {
  protected:
    void SetUp() override {
#ifdef BOLTHOLE_FOREIGN_MALLOC
        GTEST_SKIP() << "malloc belongs to AddressSanitizer";
#endif
    }
};

}  // namespace

TEST_F(Allocation, TheCounterCounts) {
    const long before = allocations;
    const auto one = std::make_unique<double>(1.0);
    const Eigen::VectorXd two = Eigen::VectorXd::Constant(2, *one);
    EXPECT_EQ(allocations - before, 2) << two.sum();
}

TEST_F(Allocation, MovingAllocatesNothing) {
    CarGenerator generator(31);
    for (const Layout layout : kLayouts) {
        AxleSolver solver(buildLinkage(generator.draw(layout)), Drive::roll);
        ASSERT_TRUE(solver.assemble().usable());
        const long before = allocations;
        bool reached = true;
        for (int step = -40; step <= 40; ++step) {
            reached = solver.moveTo(0.002 * step, 0.001 * step).usable() && reached;
        }
        const long after = allocations;
        EXPECT_TRUE(reached);
        EXPECT_EQ(after - before, 0) << "layout " << static_cast<int>(layout);
    }
}

// A second trace into the same storage allocates a fixed handful for the linkage, none for its poses.
TEST_F(Allocation, TraceAllocatesNothingPerPose) {
    CarGenerator generator(32);
    for (const Layout layout : kLayouts) {
        Car car = generator.draw(layout);
        const auto allocationsOf = [&car](int steps) {
            car.travel.steps = steps;
            Trace trace;
            computeTrace(car, trace);
            const long before = allocations;
            computeTrace(car, trace);
            return allocations - before;
        };
        EXPECT_EQ(allocationsOf(81), allocationsOf(2001)) << "layout " << static_cast<int>(layout);
    }
}

// A table of choices costs nothing but its rows. Reset moves the points of pivots and sliders too.
TEST_F(Allocation, ChoicesAllocateNothingAfterTheFirst) {
    CarGenerator generator(33);
    for (const Layout layout : kLayouts) {
        Car car = generator.draw(layout);
        drillHoles(car, 2, 0.02);
        const ChoiceSpace space(car, {});
        ASSERT_GE(space.count(), 4U);
        for (const LengthTreatment treatment :
             {LengthTreatment::keep, LengthTreatment::reset, LengthTreatment::uppers}) {
            if (treatment == LengthTreatment::uppers && !hasUpperRod(car)) {
                continue;
            }
            ChoiceSolver solver(car, treatment);
            HoleChoice choice;
            solver.solve(space.at(0), choice);
            const long before = allocations;
            for (std::uint64_t index = 0; index < space.count(); ++index) {
                solver.solve(space.at(index), choice);
            }
            EXPECT_EQ(allocations - before, 0) << "layout " << static_cast<int>(layout);
        }
    }
}

}  // namespace bolthole
