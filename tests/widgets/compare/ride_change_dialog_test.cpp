// "What if" by real mouse and keys.
#include "widgets/compare/ride_change_dialog.h"

#include <gmock/gmock.h>

#include "tests/support/before_bench.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

class RideChangeTest : public test::BeforeBench {
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
    QPushButton* take() {
        for (auto* each : dialog()->findChildren<QPushButton*>()) {
            if (each->text() == "Change the car") {
                return each;
            }
        }
        return nullptr;
    }
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
