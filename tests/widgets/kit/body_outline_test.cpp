// The bodies that pictures draw: each closed around both axles, above the ground, and unlike the others.
#include "widgets/kit/body_outline.h"

#include <gtest/gtest.h>

#include <array>
#include <vector>

namespace bolthole {
namespace {

constexpr double kLength = 2.7;
constexpr double kRadius = 0.33;
constexpr std::array<std::optional<Body>, 6> kAll{std::nullopt, Body::sedan,  Body::coupe,
                                                  Body::wagon,  Body::pickup, Body::roadster};

TEST(BodyShape, StandsOverBothAxlesAndAboveTheGround) {
    for (const std::optional<Body> body : kAll) {
        const BodyShape shape = bodyShape(body, kLength, kRadius);
        const QRectF box = shape.outline.boundingRect();
        EXPECT_LT(box.left(), -kRadius);
        EXPECT_GT(box.right(), kLength + kRadius);
        EXPECT_GT(box.top(), 0.3 * kRadius);
        EXPECT_LT(box.bottom(), 1.8);
        EXPECT_EQ(roomOf(shape).top(), 0);
        for (const QPointF& corner : shape.window) {
            EXPECT_TRUE(shape.outline.containsPoint(corner, Qt::OddEvenFill))
                << corner.x() << ' ' << corner.y();
        }
    }
}

TEST(BodyShape, IsAnotherForEachBody) {
    std::vector<QPolygonF> seen;
    for (const std::optional<Body> body : kAll) {
        const QPolygonF outline = bodyShape(body, kLength, kRadius).outline;
        for (const QPolygonF& other : seen) {
            EXPECT_NE(outline, other);
        }
        seen.push_back(outline);
    }
}

}  // namespace
}  // namespace bolthole
