// What is refused of a bracket's plate, and where it says the fault is; see refusal() in
// geometry/car/bracket.h.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>
#include <limits>

#include "geometry/car/bracket.h"

namespace bolthole {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

Plate goodPlate() {
    return {.corners = {{0, 0}, {0.1, 0}, {0.1, 0.05}, {0, 0.05}},
            .holeDiameter = 0.0127,
            .edgeDistance = 0.019,
            .holeSpacing = 2};
}

PlateFault faultAfter(const std::function<void(Plate&)>& change) {
    Plate plate = goodPlate();
    change(plate);
    return refusal(plate);
}

PlateFault faultOf(std::vector<Eigen::Vector2d> corners) {
    return faultAfter([&](Plate& plate) { plate.corners = std::move(corners); });
}

}  // namespace

TEST(Plate, OfSaneNumbersIsAccepted) {
    EXPECT_EQ(refusal(goodPlate()).path, "");
    EXPECT_EQ(refusal(goodPlate()).reason, "");
    EXPECT_EQ(faultOf({{0, 0}, {0.1, 0}, {0.05, 0.1}}).reason, "") << "a triangle";
    EXPECT_EQ(faultOf({{0, 0}, {0, 0.05}, {0.1, 0.05}, {0.1, 0}}).reason, "") << "the other way around";
    // An angle: no plate has to be convex.
    EXPECT_EQ(faultOf({{0, 0}, {0.1, 0}, {0.1, 0.02}, {0.02, 0.02}, {0.02, 0.1}, {0, 0.1}}).reason, "");
}

TEST(Plate, NeedsThreeToTwentyFourCorners) {
    for (const std::size_t count : {std::size_t{0}, std::size_t{2}, kMaxPlateCorners + 1}) {
        std::vector<Eigen::Vector2d> corners;
        for (std::size_t corner = 0; corner < count; ++corner) {
            const double x = 0.01 * static_cast<double>(corner);
            corners.emplace_back(x, x * x);
        }
        const PlateFault fault = faultOf(corners);
        EXPECT_EQ(fault.path, "corners");
        EXPECT_EQ(fault.reason, "expected 3 to 24 corners");
    }
}

TEST(Plate, OutlinesThatCrossOrHaveNoRoomAreRefused) {
    // A bow tie: its halves' areas cancel, which makes it no line.
    EXPECT_THAT(faultOf({{0, 0}, {0.1, 0.1}, {0.1, 0}, {0, 0.1}}).reason, HasSubstr("crosses itself"));
    EXPECT_THAT(faultOf({{0, 0}, {0.2, 0.1}, {0.2, 0}, {0, 0.05}}).reason, HasSubstr("crosses itself"));
    EXPECT_THAT(faultOf({{0, 0}, {0.1, 0.1}, {0.2, 0.2}}).reason, HasSubstr("on one line"));
    EXPECT_THAT(faultOf({{0.1, 0.1}, {0.1, 0.1}, {0.1, 0.1}}).reason, HasSubstr("on one line"));
}

TEST(Plate, CornersOutOfThisWorldAreRefused) {
    for (const double far :
         {100.1, -1e300, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::quiet_NaN()}) {
        EXPECT_THAT(faultOf({{0, 0}, {far, 0}, {0, 0.1}}).reason, HasSubstr("within 100 m"));
        EXPECT_THAT(faultOf({{0, 0}, {0.1, 0}, {0, far}}).reason, HasSubstr("within 100 m"));
    }
}

TEST(Plate, NumbersKeepTheirLimits) {
    const double none = std::numeric_limits<double>::quiet_NaN();
    for (const double diameter : {0.0, -0.01, 0.2001, none}) {
        EXPECT_EQ(faultAfter([&](Plate& plate) { plate.holeDiameter = diameter; }).path, "hole_diameter");
    }
    for (const double edge : {-0.001, 1.001, none}) {
        EXPECT_EQ(faultAfter([&](Plate& plate) { plate.edgeDistance = edge; }).path, "edge_distance");
    }
    for (const double spacing : {0.99, 20.1, none}) {
        EXPECT_EQ(faultAfter([&](Plate& plate) { plate.holeSpacing = spacing; }).path, "hole_spacing");
    }
    EXPECT_EQ(faultAfter([](Plate& plate) { plate.holeDiameter = 0.2; }).reason, "");
    EXPECT_EQ(faultAfter([](Plate& plate) { plate.edgeDistance = 0; }).reason, "");
    EXPECT_EQ(faultAfter([](Plate& plate) { plate.holeSpacing = 1; }).reason, "");
    EXPECT_EQ(faultAfter([](Plate& plate) { plate.holeSpacing = 20; }).reason, "");
    EXPECT_THAT(faultAfter([](Plate& plate) { plate.holeSpacing = 0; }).reason, StartsWith("expected"));
}

}  // namespace bolthole
