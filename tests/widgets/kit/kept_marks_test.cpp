// A kept mark looks as the mark drawn there, wherever in a pixel it stands.
#include "widgets/kit/kept_marks.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <QPicture>
#include <cmath>

namespace bolthole {
namespace {

constexpr double kRingRadius = 4.2;

void drawRing(QPainter& painter, QPointF at) {
    painter.setPen(QPen(Qt::black, 1.6));
    painter.setBrush(Qt::yellow);
    painter.drawEllipse(at, kRingRadius, kRingRadius);
}

MarkLook ringLook(int kind = 1) {
    return {kind, kRingRadius, {QColor(Qt::black).rgba(), QColor(Qt::yellow).rgba()}};
}

QImage blankForMarks(double ratio = 1) {
    QImage image(static_cast<int>(40 * ratio), static_cast<int>(40 * ratio), QImage::Format_RGB32);
    image.setDevicePixelRatio(ratio);
    image.fill(Qt::white);
    return image;
}

QImage drawnMark(const std::function<void(QPainter&)>& draw, double ratio = 1) {
    QImage image = blankForMarks(ratio);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    draw(painter);
    painter.end();
    return image;
}

// Center of what is not white, px: weighed, so that a tenth of a pixel shows.
QPointF middleOfInk(const QImage& image) {
    double ink = 0;
    QPointF sum;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            const double dark = 255.0 - qBlue(image.pixel(x, y));
            ink += dark;
            sum += dark * QPointF(x + 0.5, y + 0.5);
        }
    }
    return sum / ink;
}

TEST(KeptMarks, StandWithinAnEighthOfAPixelOfTheirPlace) {
    for (const double ratio : {1.0, 2.0}) {
        for (int step = 0; step < 23; ++step) {
            const QPointF at(15 + 0.173 * step, 22 - 0.11 * step);
            const QImage kept = drawnMark(
                [&](QPainter& painter) { drawMarkAt(painter, at, kRingRadius + 1.6, ringLook(), drawRing); },
                ratio);
            const QPointF away = middleOfInk(kept) - at * ratio;
            EXPECT_LE(std::abs(away.x()), 0.125 + 0.02) << step;
            EXPECT_LE(std::abs(away.y()), 0.125 + 0.02) << step;
        }
    }
}

// On a place that is kept to the digit, it is the mark itself: rounding of colors alone.
TEST(KeptMarks, LookAsTheMarkDrawnThere) {
    for (const QPointF at : {QPointF(20, 20), QPointF(20.25, 19.5), QPointF(3, 37)}) {
        const QImage kept = drawnMark(
            [&](QPainter& painter) { drawMarkAt(painter, at, kRingRadius + 1.6, ringLook(), drawRing); });
        const QImage plain = drawnMark([&](QPainter& painter) { drawRing(painter, at); });
        for (int y = 0; y < plain.height(); ++y) {
            for (int x = 0; x < plain.width(); ++x) {
                EXPECT_LE(std::abs(qGreen(kept.pixel(x, y)) - qGreen(plain.pixel(x, y))), 3) << x << ' ' << y;
                EXPECT_LE(std::abs(qBlue(kept.pixel(x, y)) - qBlue(plain.pixel(x, y))), 3) << x << ' ' << y;
            }
        }
    }
}

TEST(KeptMarks, AreMovedWithThePainterAndDrawnWhereItIsTurned) {
    const QPointF at(8, 9);
    const QImage moved = drawnMark([&](QPainter& painter) {
        painter.translate(10.25, 4.5);
        drawMarkAt(painter, at, kRingRadius + 1.6, ringLook(), drawRing);
    });
    EXPECT_NEAR(middleOfInk(moved).x(), 18.25, 0.05);
    EXPECT_NEAR(middleOfInk(moved).y(), 13.5, 0.05);
    const QImage turned = drawnMark([&](QPainter& painter) {
        painter.rotate(90);
        drawMarkAt(painter, {20, -12}, kRingRadius + 1.6, ringLook(), drawRing);
    });
    EXPECT_NEAR(middleOfInk(turned).x(), 12, 0.05);
    EXPECT_NEAR(middleOfInk(turned).y(), 20, 0.05);
}

// What is kept of one mark is no answer for another; of the same it is not drawn again.
TEST(KeptMarks, AreToldApartByTheirLook) {
    int count = 0;
    const auto draw = [&](QPainter& painter, QPointF at) {
        ++count;
        drawRing(painter, at);
    };
    drawnMark([&](QPainter& painter) {
        MarkLook other = ringLook(2);
        for (int again = 0; again < 3; ++again) {
            drawMarkAt(painter, {20, 20}, kRingRadius + 1.6, other, draw);
        }
        EXPECT_EQ(count, 1);
        other.inks[1] = QColor(Qt::red).rgba();
        drawMarkAt(painter, {20, 20}, kRingRadius + 1.6, other, draw);
        EXPECT_EQ(count, 2);
        other.radius *= 2;
        drawMarkAt(painter, {20, 20}, 2 * kRingRadius + 1.6, other, draw);
        EXPECT_EQ(count, 3);
    });
}

// Onto such a painter the mark itself is drawn, each time.
TEST(KeptMarks, AreLinesInAFileOfLines) {
    QPicture file;
    QPainter painter(&file);
    int count = 0;
    for (int again = 0; again < 2; ++again) {
        drawMarkAt(painter, {20, 20}, kRingRadius + 1.6, ringLook(), [&](QPainter& onto, QPointF at) {
            EXPECT_EQ(&onto, &painter);
            EXPECT_EQ(at, QPointF(20, 20));
            ++count;
        });
    }
    EXPECT_EQ(count, 2);
}

}  // namespace
}  // namespace bolthole
