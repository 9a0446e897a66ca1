// "What if" by real mouse and keys.
#include "widgets/compare/ride_change_dialog.h"

#include <gmock/gmock.h>

#include "tests/support/baseline_bench.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

class RideChangeTest : public test::BaselineBench {
  protected:
    void open() {
        click("Change tires or ride height…");
        ASSERT_NE(dialog(), nullptr);
        QApplication::setActiveWindow(dialog());
    }
    void type(const QString& name, const QString& text) {
        for (auto* field : dialog()->findChildren<NumberField*>()) {
            if (field->accessibleName() == name) {
                field->setFocus();
                field->selectAll();
                QTest::keyClicks(field, text);
                return;
            }
        }
        FAIL() << "no field " << name.toStdString();
    }
    std::string words(const char* label) {
        return dialog()->findChild<QLabel*>(QString::fromLatin1(label))->text().toStdString();
    }
    QPushButton* button(const QString& text) {
        for (auto* each : dialog()->findChildren<QPushButton*>()) {
            if (each->text() == text) {
                return each;
            }
        }
        return nullptr;
    }
    QPushButton* take() { return button("Change the car"); }
};

TEST_F(RideChangeTest, ShowsBeforehandWhatItDoes) {
    open();
    EXPECT_FALSE(take()->isEnabled()) << "nothing is asked for yet";
    type("new rear tire radius, loaded", "14 1/4");
    type("front body lowered by", "-1/2");
    const RideChange change{14.25 * kMetresPerInch, state_.car.frontTireRadius, 0, -0.5 * kMetresPerInch};
    const CarResult after = changeRide(state_.car, change);
    ASSERT_TRUE(after.car.has_value());
    const Trace trace = computeTrace(*after.car);
    const auto text = [](double value, Quantity quantity) {
        return fineFigureText(value, quantity, Units::inch);
    };
    EXPECT_THAT(
        words("outcome"),
        testing::AllOf(HasSubstr("→ " + text(trace.ride[Figure::antiSquat], Quantity::percent) + " %"),
                       HasSubstr("→ " + text(trace.ride[Figure::icX], Quantity::length)),
                       HasSubstr("→ " + text(trace.ride[Figure::pinion], Quantity::angle) + "°")));
    QTest::mouseClick(take(), Qt::LeftButton);
    ASSERT_EQ(edits_.size(), 1U);
    EXPECT_NEAR(lastEdit<ChangeRide>().change.rearTireRadius, 14.25 * kMetresPerInch, 1e-12);
    EXPECT_NEAR(lastEdit<ChangeRide>().change.frontLower, -0.5 * kMetresPerInch, 1e-12);
    EXPECT_EQ(lastEdit<ChangeRide>().change.rearLower, 0);
    EXPECT_EQ(dialog(), nullptr);
}

// A comparison first: Enter keeps it beside the present setup, and the car stays as it is.
TEST_F(RideChangeTest, ItsDefaultKeepsASetupBeside) {
    open();
    type("new rear tire radius, loaded", "14 1/4");
    QPushButton* keepButton = button("Keep as a setup beside the present one");
    ASSERT_NE(keepButton, nullptr);
    EXPECT_TRUE(keepButton->isDefault());
    EXPECT_FALSE(take()->isDefault());
    QTest::mouseClick(keepButton, Qt::LeftButton);
    ASSERT_EQ(edits_.size(), 1U);
    const KeepSetup& kept = lastEdit<KeepSetup>();
    ASSERT_NE(kept.other, nullptr);
    EXPECT_NEAR(kept.other->rearTireRadius, 14.25 * kMetresPerInch, 1e-12);
    EXPECT_FALSE(kept.asBaseline) << "the baseline stays";
    EXPECT_THAT(kept.name, HasSubstr("14 1/4"));
    EXPECT_EQ(dialog(), nullptr);
}

// Drawn over the present car while it is asked for, and no longer.
TEST_F(RideChangeTest, IsDrawnWhileItIsAskedFor) {
    std::vector<std::shared_ptr<const Car>> shown;
    QObject::connect(&panel_, &BaselinePanel::ridePreviewed, &panel_,
                     [&shown](const std::shared_ptr<const Car>& car) { shown.push_back(car); });
    open();
    type("new rear tire radius, loaded", "14 1/4");
    ASSERT_FALSE(shown.empty());
    ASSERT_NE(shown.back(), nullptr);
    EXPECT_NEAR(shown.back()->rearTireRadius, 14.25 * kMetresPerInch, 1e-12);
    dialog()->reject();
    EXPECT_EQ(shown.back(), nullptr);
    EXPECT_TRUE(edits_.empty());
}

TEST_F(RideChangeTest, RefusesInPlace) {
    open();
    type("rear body lowered by", "9");
    EXPECT_THAT(words("refusal"), HasSubstr("past the end of its travel"));
    EXPECT_FALSE(take()->isEnabled());
    type("rear body lowered by", "one");
    EXPECT_FALSE(take()->isEnabled());
    type("rear body lowered by", "1");
    EXPECT_TRUE(take()->isEnabled());
    type("new front tire radius, loaded", "0");
    EXPECT_FALSE(take()->isEnabled());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    ASSERT_NE(dialog(), nullptr) << "the first Esc gives up the typing";
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    EXPECT_EQ(dialog(), nullptr);
    EXPECT_TRUE(edits_.empty());
}

TEST_F(RideChangeTest, ACarThatCannotBeComputedIsNotAskedAbout) {
    state_.car.cgHeight = -1;
    show();
    open();
    EXPECT_THAT(words("refusal"), HasSubstr("cg_height"));
    EXPECT_FALSE(take()->isEnabled());
}

TEST_F(RideChangeTest, WhatIsReBasedComesAsOneLine) {
    keep("Monday");
    RideChange change = noChange(state_.car);
    change.rearTireRadius += 0.5 * kMetresPerInch;
    make(ChangeRide{change});
    const std::vector<std::string> said = lines();
    EXPECT_THAT(said, testing::Contains(HasSubstr("Rear tire radius, loaded: from 13 1/2 to 14 in")));
    EXPECT_THAT(said.back(), "6 current holes stand elsewhere: moved, measured anew or recalculated");
    EXPECT_THAT(said, testing::Not(testing::Contains(HasSubstr("bolt from"))));
    EXPECT_THAT(said, testing::Not(testing::Contains(HasSubstr("turns")))) << "the links keep their lengths";
}

}  // namespace
}  // namespace bolthole
