// What the picture beside a number lights: a point, the way between two, or a letter of how it is measured.
#include "widgets/pages/measure/point_picture.h"

#include <gtest/gtest.h>

#include <QImage>
#include <algorithm>

#include "tests/support/plain_car.h"
#include "widgets/pages/measure/measuring_walk.h"

namespace bolthole {
namespace {

bool isPale(QColor color) {
    return color.red() - color.blue() > 90;
}

TEST(PointPicture, ALinksLengthIsLitBetweenItsTwoBolts) {
    const Car car = plainCar();
    const MeasuringWalk walk = measuringWalk(car);
    int lengths = 0;
    for (const WalkStop& stop : walk.stops) {
        if (stop.id.field != Field::linkLength) {
            continue;
        }
        ++lengths;
        PointPicture picture;
        picture.resize(900, 360);
        picture.showPoint(car, walk.areas[stop.area], stop.sign);
        const std::vector<QPointF> lit = picture.litAt();
        ASSERT_EQ(lit.size(), 4U) << stop.name.toStdString() << ": number and bolt of both ends";
        const QImage drawn = picture.grab().toImage();
        const QPointF along = lit[3] - lit[1];
        const double length = std::hypot(along.x(), along.y());
        const QPointF beside = 9 / length * QPointF(-along.y(), along.x());
        int pale = 0;
        for (const double part : {0.3, 0.5, 0.7}) {
            const QPointF at = lit[1] + part * along;
            pale += isPale(drawn.pixelColor((at + beside).toPoint())) ||
                            isPale(drawn.pixelColor((at - beside).toPoint()))
                        ? 1
                        : 0;
        }
        EXPECT_GE(pale, 2) << stop.name.toStdString() << ": lit along the way";
    }
    EXPECT_EQ(lengths, 2);
}

TEST(PointPicture, TheLengthOfALinkInAPlannedHoleIsNotDrawn) {
    Car car = plainCar();
    Hole planned = car.links[0].axle.holes[0];
    planned.planned = true;
    car.links[0].axle.holes.push_back(planned);
    car.links[0].axle.use = 2;
    const MeasuringWalk walk = measuringWalk(car);
    const FieldId length{.field = Field::linkLength, .link = 0};
    const auto stop = std::ranges::find(walk.stops, length, &WalkStop::id);
    ASSERT_NE(stop, walk.stops.end());
    EXPECT_TRUE(stop->sign.isEmpty());
}

TEST(PointPicture, HowItIsMeasuredTakesThePlaceOfTheCarAndBack) {
    const Car car = plainCar();
    const MeasuringWalk walk = measuringWalk(car);
    PointPicture picture;
    picture.resize(800, 320);
    const FieldId rate{.field = Field::springRate, .item = 0};
    picture.showHowTo(*howToPicture(car, rate));
    EXPECT_EQ(picture.litAt().size(), 2U);
    EXPECT_TRUE(picture.accessibleDescription().contains(QStringLiteral("Letter A")));
    const QImage how = picture.grab().toImage();
    picture.showPoint(car, walk.areas.front(), QStringLiteral("1"));
    EXPECT_NE(picture.grab().toImage(), how);
    EXPECT_FALSE(picture.litAt().empty());
}

}  // namespace
}  // namespace bolthole
