// Distances on a bracket's plate against closed forms, and what a hole breaks of the plate's rules.
#include "geometry/plates/plate_room.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <Eigen/Geometry>
#include <cmath>
#include <numbers>
#include <random>

#include "geometry/checks/warnings.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using Corners = std::vector<Eigen::Vector2d>;

constexpr double kMm = kMetresPerMillimetre;

Corners regular(int sides, double side) {
    Corners corners;
    const double radius = side / (2 * std::sin(std::numbers::pi / sides));
    for (int corner = 0; corner < sides; ++corner) {
        const double angle = 2 * std::numbers::pi * corner / sides;
        corners.emplace_back(radius * std::cos(angle), radius * std::sin(angle));
    }
    return corners;
}

// A plate 80 mm long and 40 mm high whose lower rear corner is the origin.
Bracket plateWith(std::vector<Eigen::Vector2d> holesInMm) {
    Bracket bracket;
    int number = 0;
    for (const Eigen::Vector2d& at : holesInMm) {
        bracket.holes.push_back({-1, std::string(1, static_cast<char>('a' + number++)),
                                 Eigen::Vector3d(at.x(), 0, at.y()) * kMm});
    }
    bracket.plate = Plate{.corners = {{0, 0}, {0.080, 0}, {0.080, 0.040}, {0, 0.040}},
                          .holeDiameter = 0.010,
                          .edgeDistance = 0.015,
                          .holeSpacing = 2};
    return bracket;
}

std::vector<std::string> reasons(const Car& car) {
    std::vector<Warning> warnings;
    addPlateWarnings(car, warnings);
    std::vector<std::string> said;
    for (const Warning& warning : warnings) {
        said.push_back(sentence(warning.finding));
    }
    return said;
}

double lengthOf(const std::vector<Corners>& lines) {
    double sum = 0;
    for (const Corners& line : lines) {
        for (std::size_t point = 1; point < line.size(); ++point) {
            sum += (line[point] - line[point - 1]).norm();
        }
    }
    return sum;
}

Corners turned(Corners corners, double angle) {
    for (Eigen::Vector2d& corner : corners) {
        corner = Eigen::Rotation2Dd(angle) * corner;
    }
    return corners;
}

}  // namespace

// By hand: 15 mm inside a plate of 80 by 40 mm is a rectangle of 50 by 10; an L of two 40 mm bars 120 mm long
// loses nothing at its two ends' far corners and gets a quarter of a circle at the corner that points inward.
// Whichever way it is wound and however it is turned: a plate that stands a hair off level has the same.
TEST(EdgeLimit, ByHandAndTheSameTurnedByAHair) {
    const Corners plate{{0, 0}, {0.080, 0}, {0.080, 0.040}, {0, 0.040}};
    const Corners angle{{0, 0}, {0.120, 0}, {0.120, 0.040}, {0.040, 0.040}, {0.040, 0.120}, {0, 0.120}};
    // 90 + 90 outside, 10 + 10 at the ends, 65 + 65 from the arc's ends to there, and the arc in chords.
    const double chord = 2 * 0.015 * std::sin(std::numbers::pi / 2 / 18 / 2);
    for (const double hair : {0.0, 1e-15, -4e-12, 2e-6, -3.7e-3, 0.06, 1.0, 3.0}) {
        EXPECT_EQ(edgeLimit(turned(plate, hair), 0.015).size(), 4U) << hair;
        EXPECT_NEAR(lengthOf(edgeLimit(turned(plate, hair), 0.015)), 0.120, 1e-8) << hair;
        EXPECT_NEAR(lengthOf(edgeLimit(turned(angle, hair), 0.015)), 0.330 + 18 * chord, 1e-8) << hair;
    }
    const Corners clockwise(angle.rbegin(), angle.rend());
    EXPECT_NEAR(lengthOf(edgeLimit(clockwise, 0.015)), 0.330 + 18 * chord, 1e-8);
    EXPECT_THAT(edgeLimit(plate, 0.021), IsEmpty()) << "no room for any hole";
    for (const Corners& line : edgeLimit(angle, 0.015)) {
        for (const Eigen::Vector2d& point : line) {
            EXPECT_NEAR(edgeRoom(angle, point).distance, 0.015, 1e-9);
        }
    }
}

// The center of the circle inscribed in a triangle is as far from each side as its radius: area over half the
// girth; 1 for the sides 3, 4, 5. Euclid, "Elements", book IV, proposition 4; the radius from memory.
TEST(PlateRoom, TheInscribedCirclesCenterIsItsRadiusFromTheEdge) {
    const EdgeRoom room = edgeRoom({{0, 0}, {4, 0}, {0, 3}}, {1, 1});
    EXPECT_NEAR(room.distance, 1, 1e-15);
    EXPECT_TRUE(room.inside);
}

// The inradius of a regular polygon of side a and n sides is a / (2 tan(pi/n)): Bronshtein & Semendyayev,
// "Handbook of Mathematics", chapter on plane geometry, regular polygons. From memory, no page.
TEST(PlateRoom, ARegularPolygonsCenterIsItsInradiusFromTheEdge) {
    for (const int sides : {3, 4, 5, 6, 8, 12, 24}) {
        const double inradius = 0.05 / (2 * std::tan(std::numbers::pi / sides));
        EXPECT_NEAR(edgeRoom(regular(sides, 0.05), {0, 0}).distance, inradius, 1e-15) << sides;
    }
}

// Past the end of a side the corner itself is nearest: Pythagoras with 3, 4, 5.
TEST(PlateRoom, BeyondACornerTheCornerIsNearest) {
    const Corners square{{0, 0}, {1, 0}, {1, 1}, {0, 1}};
    const EdgeRoom room = edgeRoom(square, {4, 5});
    EXPECT_NEAR(room.distance, 5, 1e-15);
    EXPECT_EQ(room.nearest, Eigen::Vector2d(1, 1));
    EXPECT_FALSE(room.inside);
}

TEST(PlateRoom, ANotchIsOutsideAndItsCornerCounts) {
    const Corners notched{{0, 0}, {4, 0}, {4, 4}, {2, 4}, {2, 2}, {0, 2}};
    EXPECT_FALSE(edgeRoom(notched, {1, 3}).inside);
    EXPECT_TRUE(edgeRoom(notched, {3, 3}).inside);
    EXPECT_NEAR(edgeRoom(notched, {2.6, 1.2}).distance, 1.0, 1e-15);  // 0.6, 0.8, 1 to the inner corner
    EXPECT_FALSE(edgeRoom(notched, {2, 3}).inside);                   // on the edge
}

// Whichever way around and wherever a ray meets corners: compared with the sum of the angles the sides are
// seen under, 2 pi inside and 0 outside. O'Rourke, "Computational Geometry in C", 2nd ed. 1998, ch. 7,
// winding number; from memory.
TEST(PlateRoom, InsideAgreesWithTheSumOfAngles) {
    std::mt19937 random(8);
    std::uniform_int_distribution<int> grid(0, 6);  // so that rays run through corners
    const Corners forward{{0, 0}, {6, 1}, {4, 3}, {6, 6}, {3, 4}, {1, 6}, {2, 3}};
    const Corners back(forward.rbegin(), forward.rend());
    int inside = 0;
    for (int trial = 0; trial < 400; ++trial) {
        const Eigen::Vector2d at(grid(random) + 0.25, grid(random));
        double sum = 0;
        for (std::size_t corner = 0; corner < forward.size(); ++corner) {
            const Eigen::Vector2d one = forward[corner] - at;
            const Eigen::Vector2d next = forward[(corner + 1) % forward.size()] - at;
            sum += std::atan2(one.x() * next.y() - one.y() * next.x(), one.dot(next));
        }
        const bool expected = std::abs(sum) > std::numbers::pi;
        if (edgeRoom(forward, at).distance > 1e-9) {
            EXPECT_EQ(edgeRoom(forward, at).inside, expected) << at.transpose();
            EXPECT_EQ(edgeRoom(back, at).inside, expected) << at.transpose();
            inside += expected ? 1 : 0;
        }
    }
    EXPECT_GT(inside, 50);
}

TEST(PlateRoom, NamesTheNearestOtherHole) {
    const Bracket bracket = plateWith({{20, 20}, {50, 20}, {60, 20}});
    const HoleRoom room = holeRoom(bracket, inSideView(bracket.holes[1].at), 1);
    EXPECT_EQ(room.hole, 2);
    EXPECT_NEAR(room.distance, 0.010, 1e-15);
    EXPECT_EQ(holeRoom(plateWith({{20, 20}}), {0.02, 0.02}, 0).hole, -1);
}

TEST(PlateRoom, SaysWhatAHoleBreaks) {
    const Bracket bracket = plateWith({{20, 20}});
    const auto said = [&](double forward, double up) {
        return plateTroubles(bracket, Eigen::Vector2d(forward, up) * kMm, -1, Units::metric);
    };
    EXPECT_THAT(said(50, 20), IsEmpty());
    EXPECT_THAT(said(40, 20), IsEmpty());  // 2 diameters away exactly
    EXPECT_THAT(said(65, 20), IsEmpty());  // 15 mm to the edge exactly
    EXPECT_THAT(said(68, 20), ElementsAre("12.0 mm to the plate's edge, 15.0 mm wanted"));
    EXPECT_THAT(said(76, 20), ElementsAre("4.0 mm to the plate's edge: the hole would cut it"));
    EXPECT_THAT(said(92, 20),
                ElementsAre("outside the plate's outline by 12.0 mm: check the hole and the corners"));
    EXPECT_THAT(said(35, 20), ElementsAre("1.50 diameters from 'a', center to center, 2.00 wanted"));
    EXPECT_THAT(said(20, 12), ElementsAre("12.0 mm to the plate's edge, 15.0 mm wanted",
                                          "0.80 diameters from 'a', center to center, 2.00 wanted"));
    EXPECT_THAT(said(65.01, 20), ElementsAre("15.0 mm to the plate's edge, a hair under what is wanted"));
}

TEST(PlateRoom, WithoutAPlateNothingIsBroken) {
    Bracket bracket = plateWith({{20, 20}});
    bracket.plate.reset();
    EXPECT_THAT(plateTroubles(bracket, {1, 1}, -1, Units::inch), IsEmpty());
}

TEST(PlateRoom, TheProposedRectangleHoldsItsOwnRules) {
    for (const Units units : {Units::inch, Units::metric}) {
        Bracket bracket = plateWith({{20.3, 20.1}, {57.7, 33.3}});
        bracket.plate = rectangleAround(bracket, startingRules(units), units);
        EXPECT_EQ(refusal(*bracket.plate).reason, "");
        for (int hole = 0; hole < 2; ++hole) {
            EXPECT_THAT(plateTroubles(bracket, inSideView(bracket.holes[static_cast<std::size_t>(hole)].at),
                                      hole, units),
                        IsEmpty());
        }
        const double step = units == Units::inch ? kMetresPerInch / 16 : kMm;
        for (const Eigen::Vector2d& corner : bracket.plate->corners) {
            EXPECT_NEAR(corner.x() / step, std::round(corner.x() / step), 1e-9);
            const EdgeRoom room = edgeRoom(bracket.plate->corners, inSideView(bracket.holes[0].at));
            EXPECT_LT(room.distance, bracket.plate->edgeDistance + step);
        }
    }
}

TEST(PlateWarnings, NameTheHoleAndLeadToIt) {
    Car car = plainCar();
    car.units = Units::metric;
    car.links[0].axle = plateWith({{20, 20}, {68, 20}});
    std::vector<Warning> warnings;
    addPlateWarnings(car, warnings);
    ASSERT_EQ(warnings.size(), 1U);
    EXPECT_EQ(sentence(warnings[0].finding),
              "lower axle hole 'b': 12.0 mm to the plate's edge, 15.0 mm wanted");
    EXPECT_EQ(warnings[0].path, "links[0].axle.holes[1].at[0]");
    EXPECT_EQ(warnings[0].id,
              (FieldId{.field = Field::holeAt, .link = 0, .end = End::axle, .hole = 1, .axis = 0}));
}

TEST(PlateWarnings, APairTooNearIsToldOnceAtTheLaterHole) {
    Car car = plainCar();
    car.links[1].chassis = plateWith({{20, 20}, {35, 20}});
    EXPECT_THAT(reasons(car),
                ElementsAre(AllOf(HasSubstr("hole 'b'"), HasSubstr("1.50 diameters from 'a'"))));
}

TEST(PlateWarnings, APairTooNearIsToldAtThePlannedHole) {
    Car car = plainCar();
    car.links[1].chassis = plateWith({{20, 20}, {35, 20}});
    car.links[1].chassis.holes[0].planned = true;
    EXPECT_THAT(reasons(car),
                ElementsAre(AllOf(HasSubstr("planned upper chassis hole 'a'"), HasSubstr("from 'b'"))));
}

TEST(PlateWarnings, AreAmongTheCarsWarnings) {
    Car car = plainCar();
    const std::size_t before = findWarnings(car).size();
    car.links[0].axle.plate = plateWith({}).plate;  // far from those holes
    const std::vector<Warning> after = findWarnings(car);
    EXPECT_EQ(after.size(), before + 2 + 0) << "both holes stand outside the outline";
}

TEST(PlateWarnings, APlateThatIsKeptToRaisesNone) {
    Car car = plainCar();
    car.links[0].axle = plateWith({{20, 20}, {50, 20}});
    EXPECT_THAT(reasons(car), IsEmpty());
}

}  // namespace bolthole
