// Entering a filled measuring sheet, and "how to measure this" in a field, by keys and mouse.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QCheckBox>
#include <QLineEdit>
#include <QPushButton>
#include <QTabBar>
#include <QTextBrowser>
#include <QtTest/QTest>
#include <memory>

#include "app/window/main_window.h"
#include "geometry/car/fields.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/units/uncertainty_text.h"
#include "tests/support/warning_lines.h"
#include "tests/support/window_bench.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/measure/help_window.h"
#include "widgets/pages/measure/how_to_panel.h"
#include "widgets/pages/measure/measure_dialog.h"
#include "widgets/pages/measure/point_picture.h"

namespace bolthole {
namespace {

constexpr FieldId kWheelbase{.field = Field::wheelbase};

class Measuring : public test::WindowBench {
  protected:
    void SetUp() override { openWindow(test::kWagonDemo, {1280, 800}); }
    // Opens it by its key, at a number of the sheet.
    void open(const FieldId& at = kWheelbase) {
        QTest::keyClick(window_.get(), Qt::Key_M, Qt::ControlModifier | Qt::ShiftModifier);
        dialog_ = window_->findChild<MeasureDialog*>();
        ASSERT_NE(dialog_, nullptr);
        ASSERT_TRUE(QTest::qWaitForWindowExposed(dialog_));
        QApplication::setActiveWindow(dialog_);
        dialog_->begin(at);
        ASSERT_EQ(dialog_->asked(), at);
    }
    [[nodiscard]] static NumberField* focused() {
        return qobject_cast<NumberField*>(QApplication::focusWidget());
    }
    static void answer(const QString& text) {
        ASSERT_NE(focused(), nullptr);
        QTest::keyClicks(focused(), text);
        QTest::keyClick(focused(), Qt::Key_Return);
    }
    [[nodiscard]] QString words(const char* name) const {
        return dialog_->findChild<ToneLabel*>(QString::fromLatin1(name))->text();
    }
    [[nodiscard]] NumberField* third() const {
        for (auto* field : dialog_->findChildren<NumberField*>()) {
            if (field->accessibleName().endsWith(QStringLiteral("Measure once more")) &&
                field->parentWidget()->parentWidget()->isVisible()) {
                return field;
            }
        }
        return nullptr;
    }
    [[nodiscard]] const Car& car() const { return window_->document().car(); }
    [[nodiscard]] static FieldId uncertaintiesOf(FieldId id) {
        id.uncertainty = true;
        return id;
    }

    MeasureDialog* dialog_ = nullptr;
};

TEST_F(Measuring, TwoReadingsBecomeTheirMeanAndTheirDifferenceItsHalfWidthInOneStep) {
    const double before = car().wheelbase;
    open();
    const int steps = window_->document().undoStack().index();
    answer(QStringLiteral("115 1/4"));
    answer(QStringLiteral("115 3/4"));
    EXPECT_NEAR(car().wheelbase, 115.5 * 0.0254, 1e-9);
    const std::optional<double> own = numberAt(car(), uncertaintiesOf(kWheelbase));
    ASSERT_TRUE(own);
    EXPECT_NEAR(kCoverage95 * *own, 0.5 * 0.0254, 1e-9);
    EXPECT_EQ(window_->document().undoStack().index(), steps + 1);
    EXPECT_NE(dialog_->asked(), kWheelbase) << "Enter goes on";
    QTest::keyClick(dialog_, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_DOUBLE_EQ(car().wheelbase, before);
    EXPECT_EQ(dialog_->asked(), kWheelbase) << "undo leads to the number it changed";
}

TEST_F(Measuring, ReadingsInchesApartAskForAThirdAndTheTwoThatLieClosestAreTaken) {
    open();
    answer(QStringLiteral("115"));
    ASSERT_FALSE(third()->isVisible());
    answer(QStringLiteral("117"));
    EXPECT_EQ(dialog_->asked(), kWheelbase) << "said before they are taken";
    EXPECT_THAT(words("measureMean").toStdString(), testing::HasSubstr("The readings lie 2 in apart"));
    ASSERT_TRUE(third()->isVisible());
    EXPECT_TRUE(third()->hasFocus());
    answer(QStringLiteral("116 3/4"));
    EXPECT_NE(dialog_->asked(), kWheelbase);
    EXPECT_NEAR(car().wheelbase, 116.875 * 0.0254, 1e-9);
    EXPECT_NEAR(kCoverage95 * numberAt(car(), uncertaintiesOf(kWheelbase)).value_or(0), 0.25 * 0.0254, 1e-9);
    EXPECT_THAT(warningLines(car()), testing::Not(testing::Contains(testing::HasSubstr("known only to"))));
    EXPECT_FALSE(third()->isVisible()) << "the next number begins with two";
}

TEST_F(Measuring, ReadingsInchesApartWithoutAThirdAreTakenAndWarnedOf) {
    open();
    answer(QStringLiteral("115"));
    answer(QStringLiteral("117"));
    QTest::keyClick(focused(), Qt::Key_Return);
    EXPECT_NE(dialog_->asked(), kWheelbase) << "taken when Enter says so again";
    EXPECT_THAT(warningLines(car()), testing::Contains(testing::HasSubstr("wheelbase is known only to ±")));
    dialog_->begin(kWheelbase);
    answer(QStringLiteral("115"));
    QTest::keyClick(focused(), Qt::Key_Return);
    EXPECT_THAT(warningLines(car()), testing::Not(testing::Contains(testing::HasSubstr("known only to"))))
        << "one reading takes the place of two";
}

TEST_F(Measuring, OneReadingIsEnoughAndNothingTypedLeavesTheNumberAlone) {
    open();
    const std::optional<double> own = numberAt(car(), uncertaintiesOf(kWheelbase));
    answer(QStringLiteral("2900 mm"));
    QTest::keyClick(focused(), Qt::Key_Return);
    EXPECT_NEAR(car().wheelbase, 2.9, 1e-9);
    EXPECT_EQ(numberAt(car(), uncertaintiesOf(kWheelbase)), own);
    const int steps = window_->document().undoStack().index();
    const std::optional<FieldId> asked = dialog_->asked();
    QTest::keyClick(focused(), Qt::Key_Return);
    EXPECT_NE(dialog_->asked(), asked);
    EXPECT_EQ(window_->document().undoStack().index(), steps);
}

TEST_F(Measuring, WhatCannotBeReadStaysWithItsReason) {
    open();
    const double before = car().wheelbase;
    answer(QStringLiteral("long"));
    EXPECT_EQ(dialog_->asked(), kWheelbase);
    EXPECT_FALSE(words("measureWarning").isEmpty());
    QTest::keyClick(focused(), Qt::Key_PageDown);
    EXPECT_EQ(dialog_->asked(), kWheelbase);
    EXPECT_DOUBLE_EQ(car().wheelbase, before);
}

TEST_F(Measuring, BackAndForthByKeyAndButton) {
    open();
    QTest::keyClick(focused(), Qt::Key_PageDown);
    const std::optional<FieldId> second = dialog_->asked();
    EXPECT_NE(second, kWheelbase);
    QTest::keyClick(focused(), Qt::Key_PageUp);
    EXPECT_EQ(dialog_->asked(), kWheelbase);
    QTest::keyClick(focused(), Qt::Key_PageDown, Qt::ControlModifier);
    ASSERT_TRUE(dialog_->asked());
    EXPECT_FALSE(isMeasured(car(), *dialog_->asked())) << "skipping leads to one that is left";
    dialog_->begin(kWheelbase);
    QPushButton* next = nullptr;
    for (auto* button : dialog_->findChildren<QPushButton*>()) {
        next = button->text() == QStringLiteral("Next") ? button : next;
    }
    ASSERT_NE(next, nullptr);
    QTest::keyClicks(focused(), QStringLiteral("116"));
    QTest::mouseClick(next, Qt::LeftButton);
    EXPECT_NEAR(car().wheelbase, 116 * 0.0254, 1e-9) << "next takes what is typed";
    EXPECT_NE(dialog_->asked(), kWheelbase);
}

TEST_F(Measuring, ItBeginsAtTheFirstBoxLeftAndCountsThem) {
    Car fresh = car();
    for (const WalkStop& stop : measuringWalk(fresh).stops) {
        if (stop.id == kWheelbase) {
            break;
        }
        if (!numberAt(fresh, stop.id)) {
            fresh =
                bolthole::apply(fresh, SetNumber{stop.id, builtLength(*findLink(fresh, stop.id.link))}).car;
        }
    }
    setOrigin(fresh, kWheelbase, Origin::starting);
    BenchState state = window_->state();
    state.car = fresh;
    MeasureDialog dialog;
    dialog.showState(state);
    dialog.begin();
    EXPECT_EQ(dialog.asked(), kWheelbase);
    const MeasuringWalk walk = measuringWalk(fresh);
    const std::size_t left = countLeft(fresh, walk);
    EXPECT_EQ(dialog.findChild<ToneLabel*>(QStringLiteral("measureCount"))->text(),
              QStringLiteral("Box %1 of %2, letter A, %3 boxes left to fill, 1 of them a starting number")
                  .arg(*firstLeft(fresh, walk) + 1)
                  .arg(walk.stops.size())
                  .arg(left));
    setOrigin(fresh, kWheelbase, Origin::measured);
    EXPECT_EQ(countLeft(fresh, walk), left - 1);
}

// The sheet of the car counts numbers, the walk counts boxes; what both have is said with the same number.
TEST_F(Measuring, WhatTheSheetCountsIsToldFromTheBoxesLeft) {
    const Car fresh = startingCar({});
    const MeasuringWalk walk = measuringWalk(fresh);
    std::size_t starting = 0;
    for (const FieldId& id : startingNumbers(fresh)) {
        const bool hasBox = std::ranges::find(walk.stops, id, &WalkStop::id) != walk.stops.end();
        EXPECT_TRUE(hasBox) << jsonPath(id);
        ++starting;
    }
    EXPECT_GT(countLeft(fresh, walk), starting) << "boxes for what the car has no number of yet";
    EXPECT_EQ(leftWords(fresh, walk), QStringLiteral(", %1 boxes left to fill, %2 of them starting numbers")
                                          .arg(countLeft(fresh, walk))
                                          .arg(starting));
}

TEST_F(Measuring, WhereAllIsMeasuredItSaysSoAndGoesThroughThemAgainWhenAsked) {
    BenchState state = window_->state();
    const MeasuringWalk walk = measuringWalk(state.car);
    for (const WalkStop& stop : walk.stops) {
        for (const double value : {0.05, 0.5, 50.0}) {
            if (!isMeasured(state.car, stop.id)) {
                state.car = bolthole::apply(state.car, SetNumber{stop.id, value}).car;
            }
        }
    }
    ASSERT_EQ(countLeft(state.car, walk), 0U);
    MeasureDialog dialog;
    dialog.showState(state);
    dialog.begin();
    dialog.show();
    EXPECT_FALSE(dialog.asked());
    EXPECT_TRUE(dialog.findChild<ToneLabel*>(QStringLiteral("measureDone"))->isVisible());
    QTest::mouseClick(dialog.findChild<QPushButton*>(QStringLiteral("measureAgain")), Qt::LeftButton);
    EXPECT_EQ(dialog.asked(), walk.stops.front().id);
}

TEST_F(Measuring, AnotherHoleIsAddedWhereItsPlaceIsAskedForAndAskedForNext) {
    const std::size_t holes = car().links[0].chassis.holes.size();
    open(holeField(0, End::chassis, 0, 2));
    auto* add = dialog_->findChild<QPushButton*>(QStringLiteral("measureAnotherHole"));
    ASSERT_NE(add, nullptr);
    EXPECT_TRUE(add->isVisible());
    QTest::keyClicks(focused(), QStringLiteral("14"));
    QTest::keyClick(focused(), Qt::Key_H, Qt::ControlModifier);
    EXPECT_NEAR(car().links[0].chassis.holes[0].at.z(), 14 * 0.0254, 1e-9) << "what was typed is taken";
    ASSERT_EQ(car().links[0].chassis.holes.size(), holes + 1);
    const FieldId added = holeField(0, End::chassis, static_cast<int>(holes), 0);
    EXPECT_EQ(dialog_->asked(), added);
    EXPECT_TRUE(isStarting(car(), added));
    EXPECT_NE(focused(), nullptr) << "it can be typed at once";
    dialog_->begin(kWheelbase);
    EXPECT_FALSE(add->isVisible()) << "a wheelbase has no holes";
}

TEST_F(Measuring, AHoleThatIsRefusedLeavesTheWalkWhereItIs) {
    open(holeField(0, End::chassis, 0, 2));
    while (car().links[0].chassis.holes.size() < kMaxHoles) {
        const std::size_t before = car().links[0].chassis.holes.size();
        QTest::keyClick(focused(), Qt::Key_H, Qt::ControlModifier);
        ASSERT_EQ(car().links[0].chassis.holes.size(), before + 1);
    }
    const auto asked = dialog_->asked();
    QTest::keyClick(focused(), Qt::Key_H, Qt::ControlModifier);
    EXPECT_EQ(car().links[0].chassis.holes.size(), kMaxHoles);
    EXPECT_EQ(dialog_->asked(), asked);
}

TEST_F(Measuring, AnArrowKeyInAnEmptyReadingMeasuresNothing) {
    open();
    const Car before = car();
    QTest::keyClick(focused(), Qt::Key_Up);
    QTest::keyClick(focused(), Qt::Key_PageUp, Qt::ShiftModifier);
    EXPECT_TRUE(focused()->text().isEmpty());
    QTest::keyClick(focused(), Qt::Key_Return);
    EXPECT_EQ(car(), before) << "nothing typed: left alone";
    open();
    QTest::keyClicks(focused(), QStringLiteral("110"));
    QTest::keyClick(focused(), Qt::Key_Up);
    EXPECT_EQ(focused()->text(), QStringLiteral("110 1/16")) << "what is typed can be stepped";
}

TEST_F(Measuring, TheHoleItIsBoltedInIsSaidHere) {
    open(holeField(0, End::axle, 0, 0));
    const Bracket& bracket = car().links[0].axle;
    ASSERT_GT(bracket.holes.size(), 1U);
    auto* box = dialog_->findChild<QCheckBox*>(QStringLiteral("measureBoltedHere"));
    const auto expectShown = [&](int hole) {
        dialog_->begin(holeField(0, End::axle, hole, 0));
        EXPECT_TRUE(box->isVisible());
        EXPECT_EQ(box->isChecked(), car().links[0].axle.use == hole);
        EXPECT_EQ(box->isEnabled(), car().links[0].axle.use != hole) << "out of here by bolting it elsewhere";
    };
    for (const int other : {bracket.use == 0 ? 1 : 0, bracket.use}) {
        expectShown(other);
        QTest::keyClicks(focused(), QStringLiteral("2"));
        QTest::keyClick(focused(), Qt::Key_B, Qt::ControlModifier);
        EXPECT_EQ(car().links[0].axle.use, other);
        EXPECT_EQ(focused()->text(), QStringLiteral("2")) << "what is typed stays";
        dialog_->discardTyping();
        expectShown(other);
        const int back = car().links[0].axle.use == 0 ? 1 : 0;
        expectShown(back);
        box->setFocus(Qt::TabFocusReason);
        QTest::keyClick(box, Qt::Key_Space);
        EXPECT_EQ(car().links[0].axle.use, back);
        EXPECT_NE(focused(), nullptr) << "one goes on typing, not on a button";
        window_->document().undoStack().undo();
    }
    dialog_->begin(kWheelbase);
    EXPECT_FALSE(box->isVisible());
}

TEST_F(Measuring, PastTheLastBoxItSaysThatItIsBackAtWhatIsLeft) {
    const MeasuringWalk walk = measuringWalk(car());
    open();
    dialog_->begin(walk.stops.back().id);
    EXPECT_THAT(words("measureCount").toStdString(), testing::StartsWith("Box "));
    QTest::keyClick(focused(), Qt::Key_PageDown);
    EXPECT_THAT(words("measureCount").toStdString(), testing::StartsWith("Back to what is left: box "));
    QTest::keyClick(focused(), Qt::Key_PageDown);
    EXPECT_THAT(words("measureCount").toStdString(), testing::StartsWith("Box "));
}

TEST_F(Measuring, ThePointAskedForIsLitInThePicture) {
    open();
    const std::vector<QPointF> lit = dialog_->findChild<PointPicture*>()->litAt();
    ASSERT_FALSE(lit.empty());
    for (const QPointF& at : lit) {
        EXPECT_TRUE(QRectF(dialog_->findChild<PointPicture*>()->rect()).contains(at));
    }
}

TEST_F(Measuring, StepsAreNumberedAsTheSheetHasThem) {
    open(holeField(0, End::axle, 0, 0));
    EXPECT_THAT(words("measureCount").toStdString(),
                testing::ContainsRegex("^Box [0-9]+ of [0-9]+, point [0-9]+, "));
    const FieldId height = holeField(0, End::axle, 0, 2);
    dialog_->begin(height);
    EXPECT_THAT(words("measureName").toStdString(),
                testing::EndsWith(": " + wordsFor(window_->state().car, height).label.toStdString()))
        << "one word a coordinate, here and at the field";
    dialog_->begin(FieldId{.field = Field::linkLength, .link = 0});
    EXPECT_THAT(words("measureCount").toStdString(),
                testing::ContainsRegex("^Box [0-9]+ of [0-9]+, from point [0-9]+ to point [0-9]+, "));
    dialog_->begin(FieldId{.field = Field::bump});
    EXPECT_THAT(words("measureCount").toStdString(),
                testing::ContainsRegex("^Box [0-9]+ of [0-9]+, [0-9]+ boxes left to fill"));
    EXPECT_FALSE(dialog_->findChild<PointPicture*>()->litAt().empty()) << "how it is measured";
}

TEST_F(Measuring, AFieldsF1ShowsHowItIsMeasuredAndEscapeClosesIt) {
    NumberField* wheelbase = nullptr;
    for (NumberField* each : window_->findChildren<NumberField*>()) {
        wheelbase =
            each->isVisible() && each->accessibleName() == QStringLiteral("wheelbase") ? each : wheelbase;
    }
    ASSERT_NE(wheelbase, nullptr);
    wheelbase->setFocus();
    QTest::keyClick(wheelbase, Qt::Key_F1);
    auto* panel = window_->findChild<HowToPanel*>();
    ASSERT_NE(panel, nullptr);
    EXPECT_TRUE(panel->isVisible());
    EXPECT_FALSE(panel->isModal());
    EXPECT_TRUE(panel->findChild<PointPicture*>()->isVisible());
    EXPECT_FALSE(panel->findChild<PointPicture*>()->litAt().empty());
    EXPECT_FALSE(panel->findChild<ToneLabel*>(QStringLiteral("howToWords"))->text().isEmpty());
    QTest::keyClick(panel, Qt::Key_Escape);
    EXPECT_FALSE(panel->isVisible());
}

TEST_F(Measuring, HelpIsReadAndSearchedInTheProgram) {
    QTest::keyClick(window_.get(), Qt::Key_F1, Qt::ShiftModifier);
    auto* help = window_->findChild<HelpWindow*>();
    ASSERT_NE(help, nullptr);
    ASSERT_TRUE(QTest::qWaitForWindowExposed(help));
    QApplication::setActiveWindow(help);
    auto* text = help->findChild<QTextBrowser*>();
    auto* topics = help->findChild<QTabBar*>();
    EXPECT_THAT(text->toPlainText().toStdString(), testing::HasSubstr("Loaded tire radius"));
    EXPECT_GE(text->toPlainText().count(QChar::ObjectReplacementCharacter),
              static_cast<int>(measuringPlan(car()).size()))
        << "a picture an area";
    for (int topic = 0; topic < topics->count(); ++topic) {
        topics->setCurrentIndex(topic);
        EXPECT_GT(text->toPlainText().size(), 800) << topic;
    }
    topics->setCurrentIndex(0);
    QTest::keyClick(help, Qt::Key_F, Qt::ControlModifier);
    auto* search = help->findChild<QLineEdit*>();
    ASSERT_TRUE(search->hasFocus());
    QTest::keyClicks(search, QStringLiteral("Ctrl+Shift+M"));
    QTest::keyClick(search, Qt::Key_Return);
    EXPECT_EQ(topics->currentIndex(), static_cast<int>(HelpTopic::keys));
    EXPECT_EQ(text->textCursor().selectedText(), QStringLiteral("Ctrl+Shift+M"));
    search->clear();
    QTest::keyClicks(search, QStringLiteral("no such words"));
    QTest::keyClick(search, Qt::Key_Return);
    EXPECT_FALSE(help->find());
}

TEST_F(Measuring, TheKeysNameEveryPage) {
    QTest::keyClick(window_.get(), Qt::Key_F1);
    auto* help = window_->findChild<HelpWindow*>();
    ASSERT_NE(help, nullptr);
    const QString keys = help->findChild<QTextBrowser*>()->toPlainText();
    auto* pages = window_->findChild<QTabBar*>(QStringLiteral("workPages"));
    for (int page = 0; page < pages->count(); ++page) {
        EXPECT_TRUE(keys.contains(pages->tabText(page))) << pages->tabText(page).toStdString();
    }
    EXPECT_FALSE(keys.contains(QStringLiteral("PAGES")));
}

}  // namespace
}  // namespace bolthole
