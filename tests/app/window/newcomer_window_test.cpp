// What a person meets in the first hour: fields, windows and lists that behave as they look.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAbstractItemView>
#include <QAction>
#include <QApplication>
#include <QTabBar>
#include <QToolButton>
#include <QtTest/QTest>
#include <algorithm>
#include <memory>

#include "app/window/main_window.h"
#include "app/window/window_start.h"
#include "tests/support/window_bench.h"
#include "widgets/fields/bracket_grid.h"
#include "widgets/fields/car_sheet.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/pages/work_page.h"

namespace bolthole {
namespace {

class FirstHour : public test::WindowBench {
  protected:
    void SetUp() override { openWindow(test::kWagonDemo, {1480, 920}); }
    [[nodiscard]] NumberField* field(const QString& name) const {
        return test::namedIn<NumberField>(*window_, name);
    }
    void type(const QString& name, const QString& text) { test::typeIn(*window_, name, text); }
    // Fields in which something is selected though no keys go there.
    [[nodiscard]] int selectedWithoutFocus() const {
        int count = 0;
        for (const NumberField* each : window_->findChildren<NumberField*>()) {
            count += each->hasSelectedText() && !each->hasFocus() ? 1 : 0;
        }
        return count;
    }
};

TEST_F(FirstHour, NoFieldLooksSelectedButTheOneWithTheFocus) {
    type(QStringLiteral("wheelbase"), QStringLiteral("115"));
    undo();
    EXPECT_EQ(selectedWithoutFocus(), 0) << "after undo";
    auto* tabs = window_->findChild<QTabBar*>(QStringLiteral("workPages"));
    for (int page = tabs->count() - 1; page >= 0; --page) {
        tabs->setCurrentIndex(page);
        QCoreApplication::processEvents();
        EXPECT_EQ(selectedWithoutFocus(), 0) << "on " << tabs->tabText(page).toStdString();
    }
}

// Not on what dismisses the offers, which comes after them.
TEST(FirstStart, TheKeyboardIsOnTheFirstOffer) {
    MainWindow window{Settings{}};
    window.openDemo(QString::fromLatin1(test::kWagonDemo));
    window.offerFirstSteps();
    window.show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    auto* strip = window.findChild<QWidget*>(QStringLiteral("startStrip"));
    const QList<QToolButton*> buttons = strip->findChildren<QToolButton*>();
    const auto leftmost =
        *std::ranges::min_element(buttons, {}, [](const QWidget* each) { return each->x(); });
    const auto rightmost =
        *std::ranges::max_element(buttons, {}, [](const QWidget* each) { return each->x(); });
    EXPECT_EQ(QApplication::focusWidget(), leftmost);
    for (qsizetype way = 1; way < buttons.size(); ++way) {
        const int before = QApplication::focusWidget()->x();
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
        ASSERT_TRUE(strip->isAncestorOf(QApplication::focusWidget()));
        EXPECT_GT(QApplication::focusWidget()->x(), before);
    }
    EXPECT_EQ(QApplication::focusWidget(), rightmost);
    EXPECT_EQ(rightmost->text(), QStringLiteral("Dismiss"));
    window.document().undoStack().setClean();
}

// Whoever starts again without a car is shown a demo again, and how to get to a car of their own.
TEST(FirstStart, ADemoAtALaterStartOffersACarOfOnesOwn) {
    Settings used;
    used.windowGeometry = QByteArray("as it was left");
    MainWindow window{used};
    window.openAtStart(QString(), QString::fromLatin1(test::kWagonDemo));
    const auto* strip = window.findChild<QWidget*>(QStringLiteral("startStrip"));
    EXPECT_FALSE(strip->isHidden());
    const QList<QToolButton*> buttons = strip->findChildren<QToolButton*>();
    EXPECT_TRUE(std::ranges::any_of(
        buttons, [](const QToolButton* each) { return each->text() == QStringLiteral("Start my car…"); }));
    window.openDemo(QString::fromLatin1(test::kWagonDemo));
    EXPECT_TRUE(strip->isHidden()) << "opened by a person, who knows";
}

TEST_F(FirstHour, EnterGoesOnToTheNextNumber) {
    type(QStringLiteral("wheelbase"), QStringLiteral("115"));
    EXPECT_FALSE(field(QStringLiteral("wheelbase"))->hasFocus());
    auto* next = qobject_cast<NumberField*>(QApplication::focusWidget());
    ASSERT_NE(next, nullptr);
    EXPECT_EQ(next->selectedText(), next->text());
}

TEST_F(FirstHour, ARadiusNoTireHasIsWarnedOfUnderItsField) {
    type(QStringLiteral("rear tire radius, loaded"), QStringLiteral("1000"));
    const NumberField* radius = field(QStringLiteral("rear tire radius, loaded"));
    ASSERT_NE(radius, nullptr);
    EXPECT_THAT(radius->note().toStdString(), testing::HasSubstr("looks outside what cars have"));
    EXPECT_FALSE(radius->hasProblem());
    undo();
    EXPECT_TRUE(field(QStringLiteral("rear tire radius, loaded"))->note().isEmpty());
}

TEST_F(FirstHour, ALimitIsSaidInTheUnitShown) {
    type(QStringLiteral("wheelbase"), QStringLiteral("5000"));
    EXPECT_THAT(field(QStringLiteral("wheelbase"))->note().toStdString(),
                testing::HasSubstr("a length above 0 and at most 3937 in"));
}

TEST_F(FirstHour, ANewHoleStandsBesideTheOldOneAndTheSignsStayWhereTheyAre) {
    const auto button = [&](const QString& sign) {
        for (BracketGrid* grid : window_->findChildren<BracketGrid*>()) {
            for (QAbstractButton* each : grid->findChildren<QAbstractButton*>()) {
                if (each->text() == sign && grid->isVisible() &&
                    each->accessibleName().contains(QStringLiteral("chassis holes"))) {
                    return each;
                }
            }
        }
        return static_cast<QAbstractButton*>(nullptr);
    };
    QAbstractButton* plus = button(QStringLiteral("+"));
    ASSERT_NE(plus, nullptr);
    const QPoint before = plus->mapToGlobal(plus->rect().center());
    const QRect place(plus->mapToGlobal(QPoint()), plus->size());
    const std::size_t holes = window_->state().car.links[0].chassis.holes.size();
    QTest::mouseClick(plus, Qt::LeftButton);
    QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    QCoreApplication::processEvents();
    const std::vector<Hole>& now = window_->state().car.links[0].chassis.holes;
    ASSERT_EQ(now.size(), holes + 1);
    for (std::size_t hole = 0; hole < holes; ++hole) {
        EXPECT_GT((now[hole].at - now.back().at).norm(), 0.01);
    }
    QAbstractButton* again = button(QStringLiteral("+"));
    ASSERT_NE(again, nullptr);
    EXPECT_EQ(again->mapToGlobal(again->rect().center()).x(), before.x());
    QAbstractButton* minus = button(QStringLiteral("−"));
    ASSERT_NE(minus, nullptr);
    EXPECT_FALSE(QRect(minus->mapToGlobal(QPoint()), minus->size()).intersects(place));
}

TEST_F(FirstHour, NoNumberOfTheSheetIsClipped) {
    auto* sheet = window_->findChild<CarSheet*>();
    type(QStringLiteral("wheelbase"), QStringLiteral("161 15/16"));
    sheet->resize(sheet->minimumWidth(), sheet->height());
    window_->resize(1080, 720);
    QCoreApplication::processEvents();
    for (const NumberField* each : sheet->findChildren<NumberField*>()) {
        if (each->isVisible() && !each->text().isEmpty()) {
            EXPECT_GE(each->width(), each->fontMetrics().horizontalAdvance(each->text()) + 6)
                << each->accessibleName().toStdString() << " " << each->text().toStdString();
        }
    }
}

TEST_F(FirstHour, AListDropsDownAsWideAsItsWords) {
    for (CalmCombo* combo : window_->findChildren<CalmCombo*>()) {
        if (!combo->isVisible()) {
            continue;
        }
        combo->showPopup();
        const int words = combo->view()->sizeHintForColumn(0);
        EXPECT_GE(combo->view()->width(), words) << combo->accessibleName().toStdString();
        EXPECT_GE(combo->view()->viewport()->height(),
                  std::min(combo->count(), combo->maxVisibleItems()) * combo->view()->sizeHintForRow(0) - 2)
            << combo->accessibleName().toStdString();
        combo->hidePopup();
    }
}

TEST(FitOnScreen, AWindowLargerThanTheScreenOrOffItComesBack) {
    QWidget window;
    const QRect available(0, 28, 1280, 772);  // 1280 x 800 under a panel
    window.setGeometry(300, 200, 1480, 920);
    fitOnScreen(window, available);
    EXPECT_TRUE(available.contains(QRect(window.pos(), window.size() + QSize(8, 40))));
    EXPECT_EQ(window.size(), QSize(1272, 732));
    window.setGeometry(-2000, 3000, 800, 600);
    fitOnScreen(window, available);
    EXPECT_TRUE(available.contains(QRect(window.pos(), window.size())));
    EXPECT_EQ(window.size(), QSize(800, 600)) << "what fits keeps its size";
}

}  // namespace
}  // namespace bolthole
