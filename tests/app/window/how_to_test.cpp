// F1 in a field: every number of every demo car has a picture of how it is measured, or says why it has none.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QPushButton>
#include <QScreen>
#include <QTimer>
#include <string_view>

#include "tests/support/demo_car.h"
#include "tests/support/plain_car.h"
#include "tests/support/watched.h"
#include "tests/support/window_bench.h"
#include "widgets/compare/baseline_panel.h"
#include "widgets/compare/ride_change_dialog.h"
#include "widgets/fields/new_car_dialog.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/pages/brackets/bracket_page.h"
#include "widgets/pages/days/days_page.h"
#include "widgets/pages/days/pass_dialog.h"
#include "widgets/pages/days/pass_entry.h"
#include "widgets/pages/measure/how_to_panel.h"
#include "widgets/pages/measure/point_picture.h"
#include "widgets/words/field_words.h"

namespace bolthole {
namespace {

TEST(HowTo, EveryNumberOfEveryDemoCarIsPicturedOrSaysWhyNot) {
    HowToPanel panel;
    auto* picture = panel.findChild<PointPicture*>();
    auto* words = panel.findChild<ToneLabel*>(QStringLiteral("howToWords"));
    for (const char* name :
         {"long-roof-wagon", "light-coupe", "notch-sedan", "short-pickup", "gully-roadster"}) {
        if (isWatched() && name != std::string_view("long-roof-wagon")) {
            continue;  // the same pictures again, which take long there
        }
        BenchState state;
        state.car = demoCar(name);
        state.solvedCar = state.car;
        std::vector<FieldId> ids = allIds(state.car);
        addIds(Scope::tool, {}, ids);
        std::size_t pictured = 0;
        for (const FieldId& id : ids) {
            if (!state.car.driveline && ruleOf(id.field).scope == Scope::driveline) {
                continue;
            }
            panel.showNumber(state, id, nullptr);
            const std::string where = std::string(name) + " " + jsonPath(id);
            if (whyNoHowTo(id.field).isEmpty()) {
                EXPECT_TRUE(picture->isVisible()) << where;
                EXPECT_FALSE(picture->litAt().empty()) << where;
                ++pictured;
            } else {
                EXPECT_FALSE(picture->isVisible()) << where;
                EXPECT_TRUE(words->text().contains(QStringLiteral("No picture: "))) << where;
            }
            EXPECT_TRUE(words->text().startsWith(wordsFor(state.car, id).howTo)) << where;
        }
        EXPECT_GT(pictured, 150U) << name;
    }
}

class HowToInTheWindow : public test::WindowBench {
  protected:
    void SetUp() override { openWindow(test::kCoupeDemo, {1280, 800}); }
    /// F1 in a field; gives the panel that shows how it is measured.
    static HowToPanel* asked(QWidget& field, QWidget& window) {
        field.setFocus();
        QTest::keyClick(&field, Qt::Key_F1);
        return window.findChild<HowToPanel*>(QString(), Qt::FindDirectChildrenOnly);
    }
    static void expectPicture(HowToPanel* panel, const QString& words) {
        ASSERT_NE(panel, nullptr);
        EXPECT_TRUE(panel->isVisible());
        EXPECT_FALSE(panel->findChild<PointPicture*>()->litAt().empty());
        EXPECT_TRUE(panel->findChild<ToneLabel*>(QStringLiteral("howToWords"))->text().contains(words));
    }
};

TEST_F(HowToInTheWindow, ANumberOfTheNextPass) {
    openPage(Qt::Key_Minus);
    auto& page = *window_->findChild<TestDaysPage*>();
    PassNumberField& time = *page.entry().field(PassField::sixtyFoot);
    expectPicture(asked(time, *window_), QStringLiteral("As the clock has it"));
    window_->findChild<HowToPanel*>()->close();
}

TEST_F(HowToInTheWindow, ANumberOfAPassInItsForm) {
    openPage(Qt::Key_Minus);
    auto& page = *window_->findChild<TestDaysPage*>();
    bool isAsked = false;
    QTimer::singleShot(0, [&] {
        auto* form = qobject_cast<PassDialog*>(QApplication::activeModalWidget());
        ASSERT_NE(form, nullptr);
        expectPicture(asked(*form->field(PassField::humidity), *form), QStringLiteral("Relative"));
        isAsked = true;
        form->reject();
    });
    emit page.entry().detailsRequested(page.entry().pass());
    EXPECT_TRUE(isAsked);
}

TEST_F(HowToInTheWindow, ATireOfAnotherRideHeight) {
    window_->findChild<BaselinePanel*>()->askRideChange();
    auto* form = window_->findChild<RideChangeDialog*>();
    ASSERT_NE(form, nullptr);
    for (NumberField* field : form->findChildren<NumberField*>()) {
        if (field->accessibleName().contains(QStringLiteral("radius"))) {
            expectPicture(asked(*field, *form), QStringLiteral("adius"));
        }
    }
    form->reject();
}

TEST_F(HowToInTheWindow, ANumberOfANewCar) {
    bool isAsked = false;
    QTimer::singleShot(0, [&] {
        auto* form = qobject_cast<NewCarDialog*>(QApplication::activeModalWidget());
        ASSERT_NE(form, nullptr);
        for (NumberField* field : form->findChildren<NumberField*>()) {
            expectPicture(asked(*field, *form), QString());
            isAsked = true;
        }
        form->reject();
    });
    QTest::keyClick(window_.get(), Qt::Key_N, Qt::ControlModifier);
    EXPECT_TRUE(isAsked);
}

TEST_F(HowToInTheWindow, ANumberOfAPlate) {
    openPage(Qt::Key_5);
    auto* page = window_->findChild<BracketPage*>();
    for (QPushButton* button : page->findChildren<QPushButton*>()) {
        if (button->text() == QStringLiteral("Rectangle around the holes")) {
            button->click();
            break;
        }
    }
    QCoreApplication::processEvents();
    NumberField* edge = nullptr;
    for (NumberField* field : page->findChildren<NumberField*>()) {
        edge = field->accessibleName() == QStringLiteral("Least edge distance") ? field : edge;
    }
    ASSERT_NE(edge, nullptr);
    expectPicture(asked(*edge, *window_), QStringLiteral("plate's edge"));
}

// Wherever the field stands: all of the panel on the screen, and the field in sight.
TEST(HowTo, ThePanelCoversNoFieldAndStaysOnTheScreen) {
    BenchState state;
    state.car = demoCar("long-roof-wagon");
    state.solvedCar = state.car;
    QWidget field;
    field.resize(100, 28);
    const QRect screen = field.screen()->availableGeometry();
    HowToPanel panel;
    for (const int share : {2, 30, 50, 70, 95}) {
        field.move(screen.left() + 20, screen.top() + share * screen.height() / 100);
        field.show();
        panel.showNumber(state, {.field = Field::sixtyFoot}, &field);
        EXPECT_TRUE(screen.contains(panel.geometry())) << share;
        EXPECT_FALSE(panel.geometry().intersects(field.geometry())) << share;
        EXPECT_GE(panel.geometry().top(), screen.top()) << share;
    }
}

}  // namespace
}  // namespace bolthole
