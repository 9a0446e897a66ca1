// The weighed car from above: to scale, and labels that can be read.
#include "widgets/pages/weights/weights_picture.h"

#include <gtest/gtest.h>

#include <vector>

#include "tests/support/sheet_bench.h"
#include "tests/support/text_notes.h"

namespace bolthole::test {
namespace {

// Whatever the car's proportions and the window's size: labels stay in the picture and off each other.
TEST(PlanPicture, LabelsOfThePictureNeverCollide) {
    PlanPicture picture;
    for (const double wheelbase : {1.8, 2.8, 3.6}) {
        for (const double ahead : {0.08, 0.5, 0.92}) {
            for (const int width : {430, 860, 1300}) {
                Car car = inventedCar();
                car.wheelbase = wheelbase;
                if (width != 860) {
                    car.frontTrack = 1.5;
                    car.rearTrack = 1.6;
                }
                car.cornerWeights = {750 * ahead, 820 * ahead, 750 * (1 - ahead), 700 * (1 - ahead)};
                picture.setFixedSize(width, 330);
                picture.showCar(car, true);
                picture.grab();
                const std::vector<QRectF>& labels = picture.labels();
                EXPECT_GE(labels.size(), 6U) << wheelbase << ' ' << ahead << ' ' << width;
                for (std::size_t one = 0; one < labels.size(); ++one) {
                    EXPECT_TRUE(QRectF(picture.rect()).contains(labels[one])) << wheelbase << ' ' << width;
                    for (std::size_t two = one + 1; two < labels.size(); ++two) {
                        EXPECT_FALSE(labels[one].intersects(labels[two]))
                            << wheelbase << ' ' << ahead << ' ' << width << ": " << one << " on " << two;
                    }
                }
            }
        }
    }
}

// A corner as it was read off its scale, and the arcs of the outline by name.
TEST(PlanPicture, SaysTheCornersAsEntered) {
    PlanPicture picture;
    picture.resize(860, 330);
    Car car = inventedCar();
    car.units = Units::inch;
    car.cornerWeights = {701 * kKilogramsPerPound, 698.5 * kKilogramsPerPound, 640 * kKilogramsPerPound,
                         633 * kKilogramsPerPound};
    picture.showCar(car, true);
    TextNotes notes(picture.size());
    picture.render(&notes);
    QStringList said;
    for (const TextNotes::Note& note : notes.notes()) {
        said << note.text;
    }
    for (const char* words : {"701 lb", "698.5 lb", "640 lb", "633 lb", "windshield", "rear window"}) {
        EXPECT_TRUE(said.contains(QString::fromLatin1(words))) << words;
    }
    EXPECT_TRUE(picture.accessibleDescription().contains(QStringLiteral("left front 701 lb")));
}

// Front to the right, left up, to scale both ways.
TEST(PlanPicture, ThePictureIsToScale) {
    PlanPicture picture;
    picture.resize(860, 330);
    picture.showCar(inventedCar(), true);
    picture.grab();
    const QPointF rear = picture.placeOf(0, 0);
    const QPointF front = picture.placeOf(1, 0);
    const QPointF left = picture.placeOf(0, 1);
    EXPECT_GT(front.x(), rear.x());
    EXPECT_LT(left.y(), rear.y());
    EXPECT_NEAR(front.x() - rear.x(), rear.y() - left.y(), 1e-9);
}

}  // namespace
}  // namespace bolthole::test
