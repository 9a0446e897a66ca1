// Kept words stand where the toolkit writes them, and are words where lines and words are asked for.
#include "widgets/kit/kept_words.h"

#include <gtest/gtest.h>

#include <QFontMetricsF>
#include <QImage>
#include <QPainter>

#include "tests/support/text_notes.h"
#include "widgets/kit/theme.h"

namespace bolthole {
namespace {

const QString kKeptWords = QStringLiteral("Lower link, hole 2");

QImage blankForWords(double ratio = 1) {
    QImage image(static_cast<int>(200 * ratio), static_cast<int>(40 * ratio), QImage::Format_RGB32);
    image.setDevicePixelRatio(ratio);
    image.fill(Qt::white);
    return image;
}

// The box of what is not white, px.
QRect inkedBox(const QImage& image) {
    QRect box;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            if (qGray(image.pixel(x, y)) < 200) {
                box |= QRect(x, y, 1, 1);
            }
        }
    }
    return box;
}

TEST(KeptWords, AreAsLongAndAsHighAsTheToolkitSays) {
    for (const QFont& font : {textFont(TextSize::small), textFont(TextSize::figure, true)}) {
        const QFontMetricsF metrics(font);
        for (int again = 0; again < 2; ++again) {
            EXPECT_DOUBLE_EQ(sizeOfLine(font, kKeptWords).width(), metrics.horizontalAdvance(kKeptWords));
            EXPECT_DOUBLE_EQ(sizeOfLine(font, kKeptWords).height(), metrics.height());
            EXPECT_DOUBLE_EQ(widthOfLine(font, kKeptWords), metrics.horizontalAdvance(kKeptWords));
        }
    }
    EXPECT_EQ(sizeOfLine(textFont(TextSize::small), QString()).width(), 0);
}

// QPainter::drawText() as the reference; half a pixel is how it rounds.
TEST(KeptWords, StandWhereTheToolkitWritesThem) {
    const QRectF box(10, 6, 180, 26);
    for (const double ratio : {1.0, 2.0}) {
        for (const int across : {int(Qt::AlignLeft), int(Qt::AlignHCenter), int(Qt::AlignRight)}) {
            for (const int up : {int(Qt::AlignTop), int(Qt::AlignVCenter), int(Qt::AlignBottom)}) {
                QImage ours = blankForWords(ratio);
                QImage theirs = blankForWords(ratio);
                QPainter one(&ours);
                one.setFont(textFont(TextSize::body));
                drawLine(one, box, static_cast<Qt::Alignment>(across | up), kKeptWords);
                QPainter other(&theirs);
                other.setFont(textFont(TextSize::body));
                other.drawText(box, across | up, kKeptWords);
                one.end();
                other.end();
                const QRect here = inkedBox(ours);
                const QRect there = inkedBox(theirs);
                ASSERT_FALSE(there.isEmpty());
                EXPECT_LE(std::abs(here.left() - there.left()), 1) << across << ' ' << up << ' ' << ratio;
                EXPECT_LE(std::abs(here.top() - there.top()), 1) << across << ' ' << up << ' ' << ratio;
                EXPECT_LE(std::abs(here.width() - there.width()), 1);
                EXPECT_LE(std::abs(here.height() - there.height()), 1);
            }
        }
    }
}

TEST(KeptWords, StandOnTheirBaseLine) {
    QImage ours = blankForWords();
    QImage theirs = blankForWords();
    QPainter one(&ours);
    one.setFont(textFont(TextSize::body, true));
    drawLine(one, QPointF(12, 25), kKeptWords);
    QPainter other(&theirs);
    other.setFont(textFont(TextSize::body, true));
    other.drawText(QPointF(12, 25), kKeptWords);
    one.end();
    other.end();
    EXPECT_LE(std::abs(inkedBox(ours).bottom() - inkedBox(theirs).bottom()), 1);
    EXPECT_LE(std::abs(inkedBox(ours).left() - inkedBox(theirs).left()), 1);
}

// What was kept for one font must not answer for another, nor its color for another pen.
TEST(KeptWords, FollowFontAndPen) {
    const auto written = [](const QFont& font, const QColor& color) {
        QImage image = blankForWords();
        QPainter painter(&image);
        painter.setFont(font);
        painter.setPen(color);
        drawLine(painter, QRectF(0, 0, 200, 40), Qt::AlignCenter, kKeptWords);
        painter.end();
        return image;
    };
    const QImage first = written(textFont(TextSize::small), Qt::black);
    EXPECT_NE(written(textFont(TextSize::small, true), Qt::black), first);
    EXPECT_NE(written(textFont(TextSize::figure), Qt::black), first);
    EXPECT_NE(written(textFont(TextSize::small), Qt::red), first);
    EXPECT_EQ(written(textFont(TextSize::small), Qt::black), first);
}

TEST(KeptWords, AreWordsInAFileOfWords) {
    test::TextNotes file({200, 40});
    QPainter painter(&file);
    painter.setFont(textFont(TextSize::body));
    drawLine(painter, QRectF(0, 0, 200, 40), Qt::AlignCenter, kKeptWords);
    drawLine(painter, QPointF(0, 20), QStringLiteral("base line"));
    painter.end();
    ASSERT_EQ(file.notes().size(), 2U);
    EXPECT_EQ(file.notes()[0].text, kKeptWords);
    EXPECT_EQ(file.notes()[1].text, QStringLiteral("base line"));
}

TEST(TextFont, FollowsTheApplicationsFont) {
    const QFont before = QApplication::font();
    const double small = textFont(TextSize::small).pointSizeF();
    QFont larger = before;
    larger.setPointSizeF(2 * before.pointSizeF());
    QApplication::setFont(larger);
    EXPECT_NEAR(textFont(TextSize::small).pointSizeF(), 2 * small, 1e-9);
    EXPECT_EQ(textFont(TextSize::body, true).weight(), QFont::DemiBold);
    EXPECT_EQ(textFont(TextSize::body).weight(), QFont::Normal);
    QApplication::setFont(before);
    EXPECT_NEAR(textFont(TextSize::small).pointSizeF(), small, 1e-9);
}

}  // namespace
}  // namespace bolthole
