// The bench in a small window: what is largest, and that no menu leaves the screen.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QHeaderView>
#include <QLabel>
#include <QListWidget>
#include <QMenu>
#include <QMenuBar>
#include <QPushButton>
#include <QScrollBar>
#include <QTabBar>
#include <QTabWidget>
#include <algorithm>
#include <string>

#include "tests/support/window_bench.h"
#include "widgets/board/combination_map.h"
#include "widgets/board/combination_table.h"
#include "widgets/board/hole_board.h"
#include "widgets/compare/baseline_panel.h"
#include "widgets/compare/difference_table.h"
#include "widgets/curves/travel_curves.h"
#include "widgets/fields/car_sheet.h"
#include "widgets/kit/group_header.h"
#include "widgets/kit/notice_bar.h"
#include "widgets/views/side_view.h"

namespace bolthole {
namespace {

class BenchRoom : public test::WindowBench, public testing::WithParamInterface<QSize> {
  protected:
    void SetUp() override { openWindow(test::kWagonDemo, GetParam()); }
    [[nodiscard]] static int area(const QWidget& of) { return of.width() * of.height(); }
};

// With car sheet, curves and panel open.
TEST_P(BenchRoom, TheSideViewIsTheLargestThing) {
    const SideView& side = window_->sideView();
    ASSERT_TRUE(window_->findChild<CarSheet*>()->isVisible());
    const auto* curves = window_->findChild<TravelCurves*>();
    ASSERT_TRUE(curves->isVisible());
    ASSERT_TRUE(window_->holeBoard().isVisible());
    EXPECT_GT(area(side), area(*curves));
    const auto* map = window_->holeBoard().findChild<CombinationMap*>();
    ASSERT_TRUE(QTest::qWaitFor([map] { return map->isVisible(); })) << "the combinations are computed";
    QCoreApplication::processEvents();
    EXPECT_GT(area(side), area(*map));
    EXPECT_GT(area(side), area(window_->holeBoard()));
    EXPECT_TRUE(window_->holeBoard().findChild<QPushButton*>(QStringLiteral("boltCombination"))->isVisible());
    EXPECT_GT(map->height(), 60) << "and the map can still be read";
}

// A second click on one spot must not land on another page, or in the car sheet.
TEST_P(BenchRoom, TheTabsStandInOnePlaceOnEveryPage) {
    auto* tabs = window_->findChild<QTabBar*>(QStringLiteral("workPages"));
    const QPoint place = tabs->mapTo(window_.get(), QPoint());
    for (int page = 1; page < tabs->count(); ++page) {
        QTest::mouseClick(tabs, Qt::LeftButton, {}, tabs->tabRect(page).center());
        QCoreApplication::processEvents();
        EXPECT_EQ(tabs->currentIndex(), page);
        EXPECT_EQ(tabs->mapTo(window_.get(), QPoint()), place) << tabs->tabText(page).toStdString();
    }
}

// Not to the panel's tabs, from which one would have to come back for the next combination.
TEST_P(BenchRoom, AfterBoltingTheKeyboardIsStillInTheTable) {
    auto* table = window_->holeBoard().findChild<CombinationTable*>();
    auto* bolt = window_->holeBoard().findChild<QPushButton*>(QStringLiteral("boltCombination"));
    for (const bool byButton : {false, true}) {
        ASSERT_TRUE(
            QTest::qWaitFor([table] { return table->isVisible() && table->model()->rowCount() == 6; }));
        table->selectRow(byButton ? 4 : 3);
        ASSERT_TRUE(bolt->isEnabled());
        QWidget* const from = byButton ? static_cast<QWidget*>(bolt) : table;
        from->setFocus(Qt::TabFocusReason);
        QTest::keyClick(from, byButton ? Qt::Key_Space : Qt::Key_Return);
        ASSERT_TRUE(
            QTest::qWaitFor([table] { return table->isVisible() && table->model()->rowCount() == 6; }));
        QCoreApplication::processEvents();
        EXPECT_TRUE(table->hasFocus()) << (byButton ? "by the button, now at " : "by Enter, now at ")
                                       << QApplication::focusWidget()->objectName().toStdString();
    }
}

TEST_P(BenchRoom, AfterDeletingTheLastSetupTheKeyboardIsStillInThePanel) {
    auto* panel = window_->findChild<BaselinePanel*>();
    qobject_cast<QTabWidget*>(panel->parentWidget()->parentWidget())->setCurrentWidget(panel);
    const auto button = [panel](const QString& words) {
        const QList<QPushButton*> all = panel->findChildren<QPushButton*>();
        return *std::ranges::find_if(
            all, [&](const QPushButton* each) { return each->text().remove(u'&') == words; });
    };
    for (const bool byButton : {false, true}) {
        window_->document().apply(KeepSetup{"Monday", "2026-03-09", "", nullptr}, EditPhase::whole, {});
        auto* list = panel->findChild<QListWidget*>(QStringLiteral("keptSetups"));
        ASSERT_TRUE(list->isVisible());
        QWidget* const from = byButton ? static_cast<QWidget*>(button(QStringLiteral("Delete"))) : list;
        from->setFocus(Qt::TabFocusReason);
        QTest::keyClick(from, byButton ? Qt::Key_Space : Qt::Key_Delete);
        ASSERT_TRUE(window_->document().car().kept.empty());
        EXPECT_TRUE(button(QStringLiteral("Keep this setup…"))->hasFocus()) << "what one can do next";
    }
}

// Neither is asked about: what went with it has to be said, and how it comes back.
TEST_P(BenchRoom, RecoverAndDeleteOfASetupAreToldAndComeBack) {
    auto* panel = window_->findChild<BaselinePanel*>();
    qobject_cast<QTabWidget*>(panel->parentWidget()->parentWidget())->setCurrentWidget(panel);
    window_->document().apply(KeepSetup{"Monday", "2026-03-09", "", nullptr}, EditPhase::whole, {});
    const double kept = window_->document().car().wheelbase;
    const double measuredSince = kept + 0.01;
    window_->document().apply(SetNumber{{.field = Field::wheelbase}, measuredSince}, EditPhase::whole, {});
    const auto* notice = window_->findChild<NoticeBar*>();
    const auto press = [panel](const QString& words) {
        for (QPushButton* each : panel->findChildren<QPushButton*>()) {
            if (each->text().remove(u'&') == words) {
                each->click();
            }
        }
    };
    panel->findChild<QListWidget*>(QStringLiteral("keptSetups"))->setCurrentRow(0);
    press(QStringLiteral("Recover"));
    ASSERT_EQ(window_->document().car().wheelbase, kept);
    EXPECT_THAT(notice->text().toStdString(), testing::HasSubstr("measured or changed since"));
    window_->document().undoStack().undo();
    EXPECT_EQ(window_->document().car().wheelbase, measuredSince);
    press(QStringLiteral("Delete"));
    ASSERT_TRUE(window_->document().car().kept.empty());
    EXPECT_THAT(notice->text().toStdString(), testing::HasSubstr("Undo brings it back"));
    window_->document().undoStack().undo();
    EXPECT_EQ(window_->document().car().kept.size(), 1U);
}

// Under the head and above the bar along the lower edge.
TEST_P(BenchRoom, FiveHoleCombinationsAreSeenWhole) {
    auto* table = window_->holeBoard().findChild<CombinationTable*>();
    ASSERT_TRUE(QTest::qWaitFor([table] { return table->isVisible() && table->model()->rowCount() == 6; }));
    QCoreApplication::processEvents();
    EXPECT_LE(table->rowViewportPosition(4) + table->rowHeight(4), table->viewport()->height());
}

// And the figure one looks for is seen without scrolling: half of 121 % is another figure.
TEST_P(BenchRoom, NoHeadOfTheHoleCombinationsIsCut) {
    auto* table = window_->holeBoard().findChild<CombinationTable*>();
    for (const char* car : {test::kWagonDemo, "light-coupe.bolt.json", "short-pickup.bolt.json"}) {
        window_->document().undoStack().setClean();
        window_->openDemo(QString::fromLatin1(car));
        ASSERT_TRUE(
            QTest::qWaitFor([table] { return table->isVisible() && table->model()->rowCount() > 1; }));
        QCoreApplication::processEvents();
        const QHeaderView& head = *table->horizontalHeader();
        for (int column = 0; column < head.count(); ++column) {
            EXPECT_GE(head.sectionSize(column), head.sectionSizeHint(column))
                << car << ": " << table->model()->headerData(column, Qt::Horizontal).toString().toStdString();
        }
        const auto& columns = table->combinations().columns();
        const auto antiSquat =
            std::ranges::find(columns, CombinationColumn::Kind::antiSquat, &CombinationColumn::kind);
        ASSERT_NE(antiSquat, columns.end());
        const auto at = static_cast<int>(antiSquat - columns.begin());
        EXPECT_LE(table->columnViewportPosition(at) + table->columnWidth(at), table->viewport()->width())
            << car;
    }
}

// What a person reads without opening a submenu ends above the screen's edge; all keys work from the
// submenus.
TEST_P(BenchRoom, NoMenuLeavesTheScreen) {
    for (QAction* top : window_->menuBar()->actions()) {
        QList<QMenu*> menus{top->menu()};
        while (!menus.isEmpty()) {
            QMenu* menu = menus.takeFirst();
            EXPECT_LE(menu->sizeHint().height(), 800 - window_->menuBar()->height())
                << menu->title().toStdString();
            for (QAction* entry : menu->actions()) {
                if (entry->menu() != nullptr) {
                    menus << entry->menu();
                }
            }
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Sizes, BenchRoom, testing::Values(QSize(1280, 800), QSize(1680, 1050)),
                         [](const auto& size) { return "Wide" + std::to_string(size.param.width()); });

// With a kept setup to compare with, as the demo brings some.
class BeforeAndAfterRoom : public test::WindowBench {
  protected:
    void SetUp() override {
        openWindow(test::kCoupeDemo, {1280, 800});
        boardHeight_ = window_->holeBoard().height();
        QTest::keyClick(window_.get(), Qt::Key_F7);
        auto* kept = window_->findChild<QListWidget*>(QStringLiteral("keptSetups"));
        kept->setFocus();
        QTest::keyClick(kept, Qt::Key_Return);
        table_ = window_->findChild<DifferenceTable*>();
        ASSERT_TRUE(QTest::qWaitFor([this] { return table_->isVisible(); }));
        QTest::qWait(200);  // laid out
    }
    [[nodiscard]] int wholeRows() const {
        int whole = 0;
        for (int row = 0; row < table_->rowCount(); ++row) {
            const int bottom = table_->rowViewportPosition(row) + table_->rowHeight(row);
            whole += !table_->isRowHidden(row) && bottom <= table_->viewport()->height() ? 1 : 0;
        }
        return whole;
    }

    DifferenceTable* table_ = nullptr;
    int boardHeight_ = 0;
};

TEST_F(BeforeAndAfterRoom, EightRowsStandUnderWholeHeadingsWithoutScrollingSideways) {
    EXPECT_GE(wholeRows(), 8);
    EXPECT_EQ(table_->horizontalScrollBar()->maximum(), 0);
    const auto* header = static_cast<const GroupHeader*>(table_->horizontalHeader());
    ASSERT_EQ(header->groups().size(), 4);
    for (int group = 0; group < 3; ++group) {
        int width = 0;
        for (int column = 3 * group; column < 3 * group + 3; ++column) {
            width += table_->columnWidth(column);
        }
        EXPECT_LE(header->nameWidth(group), width) << header->groups()[group].toStdString();
        EXPECT_FALSE(table_->isColumnHidden(3 * group + 2)) << "every change is seen";
    }
    EXPECT_FALSE(table_->isColumnHidden(0)) << "and at ride what it changes from";
    EXPECT_THAT(table_->item(0, 5)->toolTip().toStdString(),
                testing::HasSubstr("Before " + table_->item(0, 3)->text().toStdString()));
    EXPECT_EQ(window_->findChild<QListWidget*>(QStringLiteral("changes"))->verticalScrollBar()->maximum(), 0);
}

TEST_F(BeforeAndAfterRoom, WordsUnderTheTableAreWhole) {
    bool found = false;
    for (const auto* label : window_->findChildren<QLabel*>()) {
        if (label->isVisible() && label->text().contains(QStringLiteral("At ride "))) {
            found = true;
            EXPECT_TRUE(label->wordWrap());
            EXPECT_LE(label->heightForWidth(label->width()), label->height());
        }
    }
    EXPECT_EQ(found, window_->state().showsUncertainty);
}

TEST_F(BeforeAndAfterRoom, TheOtherTabsKeepTheirHeight) {
    EXPECT_LT(boardHeight_, window_->findChild<BaselinePanel*>()->height());
    QTest::keyClick(window_.get(), Qt::Key_F6);
    QCoreApplication::processEvents();
    EXPECT_EQ(window_->holeBoard().height(), boardHeight_);
}

}  // namespace
}  // namespace bolthole
