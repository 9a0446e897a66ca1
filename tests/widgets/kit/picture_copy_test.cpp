// Pictures taken along: what lies on the clipboard, and what stands in the file.
#include "widgets/kit/picture_copy.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QClipboard>
#include <QFile>
#include <QGuiApplication>
#include <QImage>
#include <QMimeData>
#include <QPainter>
#include <QTemporaryDir>
#include <QTest>
#include <QWidget>

#include "widgets/kit/pens.h"

namespace bolthole {
namespace {

/// Red on the left, blue on the right.
class TwoColors : public QWidget {
  public:
    TwoColors() {
        setAccessibleName("Flag");
        setAccessibleDescription("red, then blue");
        resize(40, 20);
    }

  protected:
    void paintEvent(QPaintEvent* /*event*/) override {
        QPainter painter(this);
        painter.fillRect(rect(), Qt::blue);
        painter.fillRect(QRect(0, 0, width() / 2, height()), Qt::red);
    }
};

void expectTwoColors(const QImage& image) {
    ASSERT_EQ(image.size(), QSize(80, 40)) << "two pixels for each on the screen";
    EXPECT_EQ(image.pixelColor(2, 2), QColor(Qt::red));
    EXPECT_EQ(image.pixelColor(77, 37), QColor(Qt::blue));
}

TEST(PictureCopy, TakesThePictureAndWhatItSays) {
    TwoColors picture;
    const std::unique_ptr<QMimeData> taken = copyOf(picture);
    expectTwoColors(taken->imageData().value<QImage>());
    EXPECT_EQ(taken->text(), "Flag\nred, then blue");
}

TEST(PictureCopy, ControlCPutsItOnTheClipboard) {
    TwoColors picture;
    offerPicture(picture);
    picture.setFocusPolicy(Qt::StrongFocus);
    picture.show();
    picture.activateWindow();
    picture.setFocus();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&picture));
    QGuiApplication::clipboard()->clear();
    QTest::keyClick(&picture, Qt::Key_C, Qt::ControlModifier);
    expectTwoColors(QGuiApplication::clipboard()->image());
    EXPECT_EQ(QGuiApplication::clipboard()->text(), "Flag\nred, then blue");
    EXPECT_EQ(picture.actions().size(), 2) << "copy and save";
}

TEST(PictureCopy, SavesAPng) {
    const QTemporaryDir folder;
    TwoColors picture;
    const QString file = folder.filePath("flag.png");
    ASSERT_TRUE(savePicture(picture, file));
    expectTwoColors(QImage(file));
    EXPECT_FALSE(savePicture(picture, folder.filePath("none/flag.png")));
}

/// One line and a word, and beside them what a picture kept as pixels would bring.
class LineAndWord : public QWidget {
  public:
    LineAndWord() {
        setAccessibleName("Line");
        resize(100, 40);
    }

  protected:
    void paintEvent(QPaintEvent* /*event*/) override {
        QPainter painter(this);
        if (takesPixels(painter)) {
            painter.drawPixmap(0, 0, QPixmap(10, 10));
        }
        painter.drawLine(QPointF(10, 20), QPointF(90, 20));
        painter.drawText(QPointF(10, 35), "word");
    }
};

TEST(PictureCopy, SavesADrawingOfLinesAndWords) {
    const QTemporaryDir folder;
    LineAndWord picture;
    const QString name = folder.filePath("line.svg");
    ASSERT_TRUE(savePicture(picture, name));
    QFile file(name);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray text = file.readAll();
    EXPECT_TRUE(text.contains("<title>Line</title>"));
    EXPECT_TRUE(text.contains(">word</text>"));
    EXPECT_TRUE(text.contains("<polyline") || text.contains("<path"));
    EXPECT_FALSE(text.contains("<image")) << "no pixels";
}

}  // namespace
}  // namespace bolthole
