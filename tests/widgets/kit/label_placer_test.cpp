// Labels stay in the picture and never cover each other.
#include "widgets/kit/label_placer.h"

#include <gtest/gtest.h>

#include <QPointF>
#include <random>

namespace bolthole {
namespace {

const QRectF kPicture(0, 0, 400, 300);

TEST(LabelPlacer, PrefersTheDirectionAskedFor) {
    LabelPlacer placer(kPicture);
    const QRectF right = placer.place({100, 100}, {40, 12}, 5, 0);
    EXPECT_EQ(right.left(), 105);
    EXPECT_EQ(right.center().y(), 100);
    LabelPlacer another(kPicture);
    EXPECT_EQ(another.place({100, 100}, {40, 12}, 5, 2).bottom(), 95);
}

TEST(LabelPlacer, GoesElsewhereWhenTaken) {
    LabelPlacer placer(kPicture);
    const QRectF first = placer.place({100, 100}, {40, 12}, 5, 0);
    const QRectF second = placer.place({100, 100}, {40, 12}, 5, 0);
    EXPECT_FALSE(second.isNull());
    EXPECT_FALSE(first.intersects(second));
}

TEST(LabelPlacer, NothingFitsGivesNothing) {
    LabelPlacer placer(kPicture);
    EXPECT_TRUE(placer.place({100, 100}, {500, 12}, 5).isNull());
}

TEST(LabelPlacer, ManyLabelsNeverOverlapNorLeaveThePicture) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> across(0, 400);
    std::uniform_real_distribution<double> down(0, 300);
    LabelPlacer placer(kPicture);
    std::vector<QRectF> placed;
    for (int label = 0; label < 200; ++label) {
        const QRectF box = placer.place({across(random), down(random)}, {50, 14}, 6, label % 8);
        if (box.isNull()) {
            continue;
        }
        EXPECT_TRUE(kPicture.contains(box));
        for (const QRectF& other : placed) {
            EXPECT_FALSE(other.intersects(box));
        }
        placed.push_back(box);
    }
    EXPECT_GT(placed.size(), 30U);
}

}  // namespace
}  // namespace bolthole
