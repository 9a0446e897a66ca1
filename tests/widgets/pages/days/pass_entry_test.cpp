// The row in which the next pass is entered: each of its fields says what it is.
#include "widgets/pages/days/pass_entry.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QLabel>

#include "tests/support/season_car.h"
#include "widgets/pages/days/days_page.h"

namespace bolthole {
namespace {

// The table's heads may be a long log away.
TEST(PassEntryRow, EveryFieldStandsUnderItsWords) {
    BenchState state;
    state.car = seasonCar({2.335, 2.340, 2.330}, {2.302, 2.308, 2.298, 2.304});
    state.style = {Units::inch};
    TestDaysPage page;
    page.resize(1280, 680);
    page.showState(state);
    page.show();
    QCoreApplication::processEvents();
    qsizetype told = 0;
    for (const QLabel* caption : page.entry().findChildren<QLabel*>()) {
        const QWidget* field = caption->buddy();
        if (field == nullptr) {
            continue;
        }
        ++told;
        EXPECT_FALSE(caption->text().isEmpty());
        EXPECT_GE(caption->width(), caption->fontMetrics().horizontalAdvance(caption->text()))
            << caption->text().toStdString();
        EXPECT_LE(caption->geometry().bottom(), field->geometry().top());
        EXPECT_TRUE(page.entry().rect().contains(field->geometry()));
    }
    EXPECT_GT(told, 0);
    EXPECT_EQ(told, page.entry().findChildren<PassNumberField*>().size());
}

}  // namespace
}  // namespace bolthole
