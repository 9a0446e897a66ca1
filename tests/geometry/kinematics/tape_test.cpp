#include "geometry/kinematics/tape.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>

namespace bolthole {
namespace {

/// Integers with a^2 + b^2 + c^2 = d^2: whoever doubts it squares them by hand.
struct Quadruple {
    int foreAft;
    int sideways;
    int up;
    int length;
};
constexpr std::array<Quadruple, 5> kQuadruples{
    {{6, 2, 3, 7}, {8, 1, 4, 9}, {7, 4, 4, 9}, {9, 2, 6, 11}, {12, 3, 4, 13}}};

TEST(Tape, IntegersMakeTheForwardFigureExact) {
    for (const Quadruple& q : kQuadruples) {
        ASSERT_EQ(q.foreAft * q.foreAft + q.sideways * q.sideways + q.up * q.up, q.length * q.length);
        const Eigen::Vector3d axle(0.5, 20, 8);
        const Eigen::Vector3d chassis(3, 20 - q.sideways, 8 + q.up);
        const ForwardFigure found = forwardFromLength(axle, chassis, q.length);
        ASSERT_TRUE(found.forward.has_value());
        EXPECT_NEAR(*found.forward, 0.5 + q.foreAft, 1e-13) << "length " << q.length;
        EXPECT_NEAR(found.shortest, std::hypot(q.sideways, q.up), 1e-13);
    }
}

TEST(Tape, TheSideStaysWhereTheHoleStandsNow) {
    const Eigen::Vector3d chassis(20, 15, 10);
    const Eigen::Vector3d axle(2, 17, 7);
    EXPECT_NEAR(*forwardFromLength(chassis, axle, 7).forward, 20 - 6, 1e-13);
    EXPECT_NEAR(*forwardFromLength(axle, chassis, 7).forward, 2 + 6, 1e-13);
    const Eigen::Vector3d abreast(20, 17, 7);
    EXPECT_NEAR(*forwardFromLength(chassis, abreast, 7).forward, 20 + 6, 1e-13);
}

TEST(Tape, TooShortALengthGivesNoFigureAndSaysTheShortest) {
    const Eigen::Vector3d known(0, 0, 0);
    const Eigen::Vector3d sought(10, 3, 4);
    const ForwardFigure found = forwardFromLength(known, sought, 4.999);
    EXPECT_FALSE(found.forward.has_value());
    EXPECT_DOUBLE_EQ(found.shortest, 5);
    EXPECT_DOUBLE_EQ(forwardFromLength(known, sought, 5).forward.value(), 0);
}

TEST(Tape, UnusableLengthsGiveNoFigure) {
    const Eigen::Vector3d here(0, 0, 0);
    for (const double length :
         {0.0, -1.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::quiet_NaN()}) {
        EXPECT_FALSE(forwardFromLength(here, here, length).forward.has_value()) << length;
    }
}

TEST(Tape, HeightsFromTheAxlesCenterConvertBothWays) {
    EXPECT_DOUBLE_EQ(shownHeight(8, HeightDatum::axleCenter, 13), -5);
    EXPECT_DOUBLE_EQ(shownHeight(8, HeightDatum::ground, 13), 8);
    EXPECT_DOUBLE_EQ(heightFromShown(-5, HeightDatum::axleCenter, 13), 8);
    EXPECT_DOUBLE_EQ(heightFromShown(8, HeightDatum::ground, 13), 8);
}

}  // namespace
}  // namespace bolthole
