// The style sheet on the parts of a window: at once where they are seen, later where they are not.
#include "widgets/kit/dressing.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QDialog>
#include <QHBoxLayout>
#include <QMainWindow>
#include <QPushButton>
#include <QTest>
#include <QToolButton>
#include <vector>

#include "widgets/kit/theme.h"

namespace bolthole::test {
namespace {

class DressingTest : public testing::Test {
  protected:
    void SetUp() override {
        ThemeKeeper::instance().choose(Appearance::light);
        auto* whole = new QWidget;
        auto* row = new QHBoxLayout(whole);
        for (QWidget* part : {seen_, hidden_}) {
            row->addWidget(part);
            Dressing::instance().wear(part);
        }
        hidden_->hide();
        window_.setCentralWidget(whole);
        window_.show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(&window_));
    }
    void TearDown() override { ThemeKeeper::instance().choose(Appearance::light); }

    QMainWindow window_;
    QWidget* seen_ = new QWidget;
    QWidget* hidden_ = new QWidget;
};

TEST_F(DressingTest, WhatIsHiddenChangesWhenItIsShown) {
    const QString before = seen_->styleSheet();
    ASSERT_FALSE(before.isEmpty());
    ThemeKeeper::instance().choose(Appearance::dark);
    EXPECT_NE(seen_->styleSheet(), before);
    EXPECT_EQ(hidden_->styleSheet(), before);
    hidden_->show();
    EXPECT_EQ(hidden_->styleSheet(), seen_->styleSheet());
    EXPECT_TRUE(window_.styleSheet().isEmpty()) << "else all in it would be styled with it";
}

// One frame says where the keyboard is: inside it there is nothing but the button's ground.
TEST_F(DressingTest, AFocusedButtonHasOneFrame) {
    window_.setAttribute(
        Qt::WA_KeyboardFocusChange);  // as after a first Tab: the toolkit's own frame waits for it
    std::vector<QAbstractButton*> buttons{new QPushButton(seen_), new QToolButton(seen_)};
    for (QAbstractButton* button : buttons) {
        button->setGeometry(10, 10, 90, 30);
        button->setFocusPolicy(Qt::StrongFocus);
        button->show();
        button->setFocus(Qt::TabFocusReason);
        ASSERT_TRUE(QTest::qWaitFor([button] { return button->hasFocus(); }));
        const QImage picture = button->grab().toImage();
        EXPECT_EQ(picture.pixelColor(45, 1), theme().focus);
        for (int y = 3; y < picture.height() - 3; ++y) {
            for (int x = 3; x < picture.width() - 3; ++x) {
                ASSERT_EQ(picture.pixelColor(x, y), theme().card)
                    << button->metaObject()->className() << " at " << x << ", " << y;
            }
        }
        button->hide();
    }
}

TEST_F(DressingTest, ADialogWearsItByItself) {
    QDialog dialog(&window_);
    dialog.show();
    EXPECT_EQ(dialog.styleSheet(), seen_->styleSheet());
    dialog.hide();
    ThemeKeeper::instance().choose(Appearance::dark);
    dialog.show();
    EXPECT_EQ(dialog.styleSheet(), seen_->styleSheet());
}

TEST_F(DressingTest, APartThatIsGoneIsForgotten) {
    delete hidden_;
    ThemeKeeper::instance().choose(Appearance::dark);
    EXPECT_FALSE(seen_->styleSheet().isEmpty());
}

// What opens out of a part, a list that drops down, wears the part's.
TEST_F(DressingTest, AWindowOutOfAPartHasNoneOfItsOwn) {
    QWidget list(seen_, Qt::Popup);
    list.show();
    EXPECT_TRUE(list.styleSheet().isEmpty());
}

}  // namespace
}  // namespace bolthole::test
