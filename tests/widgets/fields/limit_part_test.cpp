#include "widgets/fields/limit_part.h"

#include <gtest/gtest.h>

#include <QTest>
#include <QToolButton>

#include "tests/support/sheet_bench.h"
#include "widgets/fields/car_sheet_groups.h"

namespace bolthole {
namespace {

class LimitPartTest : public test::SheetBench {
  protected:
    QToolButton* limits(const QString& link) { return named<QToolButton>(link + ": limits"); }
    const Adjuster& adjuster(std::size_t link) { return state_.car.links[link].adjuster.value(); }
};

TEST_F(LimitPartTest, IsFoldedUntilAskedFor) {
    auto* misalignment = named<NumberField>("lower, largest rod-end misalignment");
    ASSERT_NE(misalignment, nullptr);
    EXPECT_FALSE(misalignment->isVisible());
    EXPECT_EQ(limits("lower")->text(), "Limits…");
    limits("lower")->setFocus();
    QTest::keyClick(limits("lower"), Qt::Key_Space);
    EXPECT_TRUE(misalignment->isVisible());
    EXPECT_FALSE(named<NumberField>("lower, shortest length")->isVisible()) << "has no adjuster";
    EXPECT_FALSE(named<NumberField>("upper, largest rod-end misalignment")->isVisible()) << "another link's";
    QTest::keyClick(limits("lower"), Qt::Key_Space);
    EXPECT_FALSE(misalignment->isVisible());
}

TEST_F(LimitPartTest, LimitsAreTypedCountedAndCleared) {
    QTest::mouseClick(limits("upper"), Qt::LeftButton);
    type("upper, largest rod-end misalignment", "12");
    EXPECT_NEAR(state_.car.links[1].rodEndLimit.value(), 12 * kRadiansPerDegree, 1e-12);
    type("upper, shortest length", "11 1/2");
    type("upper, longest length", "13 in");
    type("upper, least thread engagement in each end", "25 mm");
    EXPECT_NEAR(adjuster(1).shortest.value(), 11.5 * kMetresPerInch, 1e-12);
    EXPECT_NEAR(adjuster(1).longest.value(), 13 * kMetresPerInch, 1e-12);
    EXPECT_NEAR(adjuster(1).leastEngagement.value(), 0.025, 1e-12);
    EXPECT_EQ(limits("upper")->text(), "Limits (4)…");
    EXPECT_EQ(limits("lower")->text(), "Limits…");

    auto* longest = named<NumberField>("upper, longest length");
    longest->setFocus();
    longest->selectAll();
    QTest::keyClick(longest, Qt::Key_Delete);
    QTest::keyClick(longest, Qt::Key_Return);
    EXPECT_EQ(lastEdit<ClearNumber>().id, linkField(Field::adjusterLongest, 1));
    EXPECT_FALSE(adjuster(1).longest.has_value());
    EXPECT_EQ(longest->placeholderText(), "no limit");
    EXPECT_EQ(limits("upper")->text(), "Limits (3)…");
}

TEST_F(LimitPartTest, ThreadHeldKeepsTheLengthItWasMeasuredAt) {
    QTest::mouseClick(limits("upper"), Qt::LeftButton);
    const auto isTold = [&](const QString& words) {
        for (const ToneLabel* label : sheet_->findChildren<ToneLabel*>()) {
            if (label->isVisible() && label->text() == words) {
                return true;
            }
        }
        return false;
    };
    type("upper, length center to center", "14 1/2");
    type("upper, thread engagement in each end", "1 1/4");
    EXPECT_NEAR(adjuster(1).engagement.value(), 1.25 * kMetresPerInch, 1e-12);
    EXPECT_NEAR(adjuster(1).engagementAt.value(), 14.5 * kMetresPerInch, 1e-12);
    EXPECT_TRUE(isTold("in each end, at 14 1/2 in long"));
    type("upper, length center to center", "14 3/4");
    EXPECT_NEAR(adjuster(1).engagementAt.value(), 14.5 * kMetresPerInch, 1e-12);
    EXPECT_TRUE(isTold("in each end, at 14 1/2 in long"));
    auto* ends = named<CalmCombo>("upper, adjuster");
    ends->setFocus();
    QTest::keyClick(ends, Qt::Key_Down);
    EXPECT_TRUE(isTold("at 14 1/2 in long"));
    EXPECT_NEAR(adjuster(1).engagement.value(), 1.25 * kMetresPerInch, 1e-12) << "limits stay";
}

TEST_F(LimitPartTest, NonsenseIsRefusedInPlace) {
    QTest::mouseClick(limits("upper"), Qt::LeftButton);
    for (const auto& [field, text] : {std::pair{"upper, largest rod-end misalignment", "95"},
                                      {"upper, largest rod-end misalignment", "0"},
                                      {"upper, shortest length", "-3"},
                                      {"upper, thread engagement in each end", "half"},
                                      {"upper, least thread engagement in each end", "1,5"}}) {
        type(field, text);
        EXPECT_TRUE(edits_.empty()) << field;
        EXPECT_FALSE(named<NumberField>(field)->note().isEmpty()) << field;
        QTest::keyClick(named<NumberField>(field), Qt::Key_Escape);
    }
}

TEST_F(LimitPartTest, StaysUnfoldedWhileTheSheetIsBuiltAnew) {
    QTest::mouseClick(limits("upper"), Qt::LeftButton);
    QTest::mouseClick(named<QToolButton>("Add a hole: upper, axle holes"), Qt::LeftButton);
    EXPECT_TRUE(named<NumberField>("upper, shortest length")->isVisible());
    EXPECT_FALSE(named<NumberField>("lower, largest rod-end misalignment")->isVisible());
}

TEST_F(LimitPartTest, AWarningUnfoldsIt) {
    auto* shortest = named<NumberField>("upper, shortest length");
    ASSERT_FALSE(shortest->isVisible());
    sheet_->focusField(linkField(Field::adjusterShortest, 1));
    EXPECT_TRUE(shortest->isVisible());
    EXPECT_TRUE(shortest->hasFocus());
}

TEST_F(LimitPartTest, StepsBeginAtTheBuiltLength) {
    QTest::mouseClick(limits("upper"), Qt::LeftButton);
    type("upper, length center to center", "14 1/2");
    auto* longest = named<NumberField>("upper, longest length");
    longest->setFocus();
    QTest::keyClick(longest, Qt::Key_Up);
    EXPECT_NEAR(adjuster(1).longest.value(), (14.5 + 1.0 / 16) * kMetresPerInch, 1e-12);
}

TEST_F(LimitPartTest, TheDrivelineHasALimitOfItsOwn) {
    state_.car.driveline = startingDriveline(state_.car);
    sheet_->showState(state_);
    const QString name = "driveshaft joints, largest operating angle";
    EXPECT_EQ(named<NumberField>(name)->placeholderText(), "no limit");
    type(name, "7.5");
    EXPECT_NEAR(state_.car.driveline->jointLimit.value(), 7.5 * kRadiansPerDegree, 1e-12);
    auto* field = named<NumberField>(name);
    field->setFocus();
    field->selectAll();
    QTest::keyClick(field, Qt::Key_Delete);
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_FALSE(state_.car.driveline->jointLimit.has_value());
}

}  // namespace
}  // namespace bolthole
