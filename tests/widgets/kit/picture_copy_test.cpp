// Pictures taken along: what lies on the clipboard, and what stands in the file.
#include "widgets/kit/picture_copy.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QClipboard>
#include <QGuiApplication>
#include <QImage>
#include <QMimeData>
#include <QPainter>
#include <QTemporaryDir>
#include <QTest>
#include <QWidget>

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

}  // namespace
}  // namespace bolthole
