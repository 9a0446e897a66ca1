// What points are called on screen: as their fields are.
#include <gmock/gmock.h>

#include "geometry/car/starting_numbers.h"
#include "tests/support/plain_car.h"
#include "widgets/state/drawn_points.h"
#include "widgets/words/field_words.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

TEST(PointWords, AUJointHasTheNameOfItsField) {
    const Car car = plainCar();
    for (const auto& [end, field] :
         {std::pair(End::axle, Field::pinionJoint), std::pair(End::chassis, Field::outputJoint)}) {
        const QString name = pointName(car, {.kind = PointId::Kind::joint, .end = end});
        EXPECT_EQ(wordsFor(car, {.field = field, .axis = 0}).name, name + QStringLiteral(", forward"));
    }
    EXPECT_EQ(pointName(car, {.kind = PointId::Kind::joint, .end = End::axle}), "rear U-joint");
}

TEST(PointWords, AHoleNobodyMeasuredSaysSo) {
    Car car = plainCar();
    const PointId hole{PointId::Kind::hole, 0, End::chassis, 0};
    EXPECT_THAT(pointName(car, hole).toStdString(), testing::Not(HasSubstr("not measured")));
    startFrom(car.links[0].chassis.holes[0]);
    EXPECT_THAT(pointName(car, hole).toStdString(), testing::EndsWith(", not measured"));
}

// The plain car's lower stands on both sides, its joints in the middle.
TEST(PointWords, CoordinatesAreForwardHeightAndOutOrLeft) {
    const Car car = plainCar();
    const NumberStyle inch{};
    const PointId hole{PointId::Kind::hole, 0, End::chassis, 0};
    EXPECT_EQ(pointPlace(car, hole, inch), "forward 20, height 10 1/2, out 18 in");
    EXPECT_THAT(pointPlace(car, {.kind = PointId::Kind::joint, .end = End::axle}, inch).toStdString(),
                HasSubstr(", left "));
    for (const int axis : {0, 1, 2}) {
        EXPECT_TRUE(pointPlace(car, hole, inch).contains(axisWord(axis, Side::both)));
    }
}

}  // namespace
}  // namespace bolthole
