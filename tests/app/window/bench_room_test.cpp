// The bench in a small window: what is largest, and that no menu leaves the screen.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QMenu>
#include <QMenuBar>
#include <QPushButton>
#include <string>

#include "tests/support/window_bench.h"
#include "widgets/board/combination_map.h"
#include "widgets/board/hole_board.h"
#include "widgets/curves/travel_curves.h"
#include "widgets/fields/car_sheet.h"
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

}  // namespace
}  // namespace bolthole
