#include "widgets/fields/link_section.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QTest>
#include <QToolButton>
#include <algorithm>
#include <cmath>

#include "tests/support/sheet_bench.h"
#include "widgets/kit/sheet_parts.h"

namespace bolthole {
namespace {

using test::inches;

class LinkSectionTest : public test::SheetBench {};

TEST_F(LinkSectionTest, AClickOnARingBoltsTheLinkThere) {
    auto* top = named<HoleMark>("lower, axle hole top, bolted here");
    ASSERT_NE(top, nullptr);
    EXPECT_FALSE(top->isChecked());
    QTest::mouseClick(top, Qt::LeftButton);
    ASSERT_EQ(edits_.size(), 1U);
    EXPECT_EQ(lastEdit<UseHole>().hole, 0);
    EXPECT_TRUE(top->isChecked());
    EXPECT_FALSE(named<HoleMark>("lower, axle hole middle, bolted here")->isChecked());
    QTest::mouseClick(top, Qt::LeftButton);
    EXPECT_EQ(edits_.size(), 1U) << "the hole in use stays in use";
    auto* bottom = named<HoleMark>("lower, axle hole bottom, bolted here");
    bottom->setFocus();
    QTest::keyClick(bottom, Qt::Key_Space);
    EXPECT_EQ(lastEdit<UseHole>().hole, 2);
}

TEST_F(LinkSectionTest, AxleHolesFromTheAxlesCenterStayInTheCarFrame) {
    QTest::mouseClick(named<QToolButton>("axle hole heights from the axle's center"), Qt::LeftButton);
    EXPECT_EQ(named<NumberField>("lower, axle hole middle, height")->text(), "-5");
    EXPECT_EQ(named<NumberField>("lower, chassis hole front, height")->text(), "10 1/2");
    type("lower, axle hole middle, height", "-4 1/2");
    EXPECT_NEAR(state_.car.links[0].axle.holes[1].at.z(), 9 * kMetresPerInch, 1e-12);
    type("lower, axle hole middle, forward", "3/4");
    EXPECT_NEAR(state_.car.links[0].axle.holes[1].at.x(), 0.75 * kMetresPerInch, 1e-12);
    QTest::mouseClick(named<QToolButton>("axle hole heights from the ground"), Qt::LeftButton);
    EXPECT_EQ(named<NumberField>("lower, axle hole middle, height")->text(), "9");
}

TEST_F(LinkSectionTest, AnUnwrittenLengthFitsTheHolesAndATypedOneCanBeRemoved) {
    // 21, 2.5 and 2 in apart: no integer, so the distance is worked here from the three figures alone.
    auto* length = named<NumberField>("lower, length center to center");
    EXPECT_TRUE(length->text().isEmpty());
    const double apart = std::sqrt(21.0 * 21.0 + 2.5 * 2.5 + 2.0 * 2.0) * kMetresPerInch;
    EXPECT_TRUE(length->placeholderText().endsWith(
        QString::fromStdString(fieldText(apart, Quantity::length, NumberStyle{Units::inch}))));
    type("lower, length center to center", "21 1/4");
    EXPECT_NEAR(state_.car.links[0].length.value(), 21.25 * kMetresPerInch, 1e-12);
    auto* remove = named<QToolButton>("lower: remove the length, fit the holes");
    ASSERT_TRUE(remove->isVisible());
    QTest::mouseClick(remove, Qt::LeftButton);
    EXPECT_FALSE(state_.car.links[0].length.has_value());
    EXPECT_FALSE(remove->isVisible());
}

TEST_F(LinkSectionTest, ADisagreeingLengthAsksWhichIsRight) {
    state_.car.links[0].length = 22 * kMetresPerInch;
    state_.warnings.push_back({"links[0].length",
                               linkField(Field::linkLength, 0),
                               {Severity::wrong, "The axle would shift 7/8 in back.", ""}});
    sheet_->showState(state_);
    auto* right = named<QPushButton>("lower: the length is right");
    ASSERT_TRUE(right->isVisible());
    const auto labels = right->parentWidget()->findChildren<QLabel*>();
    EXPECT_TRUE(std::any_of(labels.begin(), labels.end(),
                            [](const QLabel* label) { return label->text().contains("shift 7/8 in"); }));
    QTest::mouseClick(right, Qt::LeftButton);
    EXPECT_TRUE(edits_.empty());
    EXPECT_FALSE(right->isVisible());
    sheet_->showState(state_);
    EXPECT_FALSE(right->isVisible()) << "settled until something changes";

    state_.car.links[0].length = 22.5 * kMetresPerInch;
    sheet_->showState(state_);
    auto* holes = named<QPushButton>("lower: the holes are right");
    ASSERT_TRUE(holes->isVisible());
    QTest::mouseClick(holes, Qt::LeftButton);
    EXPECT_EQ(lastEdit<ClearNumber>().id, linkField(Field::linkLength, 0));
    EXPECT_FALSE(state_.car.links[0].length.has_value());
    EXPECT_FALSE(holes->isVisible());
}

TEST_F(LinkSectionTest, NoQuestionWithinASixteenth) {
    state_.car.links[0].length = holeDistance(state_.car.links[0]) + 0.06 * kMetresPerInch;
    state_.warnings.push_back({"links[0].length",
                               linkField(Field::linkLength, 0),
                               {Severity::wrong, "Something else about this link.", ""}});
    sheet_->showState(state_);
    EXPECT_FALSE(named<QPushButton>("lower: the length is right")->isVisible());
}

TEST_F(LinkSectionTest, AForwardFigureComesFromTheTapedLength) {
    // 2, 3, 6 and 7: 4 + 9 + 36 = 49.
    state_.car.links[0].chassis.holes[0].at = inches(20, 19, 11.5);
    state_.car.links[0].axle.holes[1].at = inches(0.5, 21, 8.5);
    sheet_->showState(state_);
    QTest::mouseClick(named<QToolButton>("lower: find forward from length"), Qt::LeftButton);
    type("lower, taped length center to center", "3 1/2");
    auto* apply = sheet_->findChild<ForwardFinder*>()->findChild<QPushButton*>();
    EXPECT_FALSE(apply->isEnabled()) << "2 and 3 in apart already take 3.6";
    type("lower, taped length center to center", "7");
    EXPECT_TRUE(edits_.empty()) << "nothing changes before it is asked for";
    ASSERT_TRUE(apply->isEnabled());
    QTest::mouseClick(apply, Qt::LeftButton);
    ASSERT_EQ(edits_.size(), 1U);
    EXPECT_EQ(lastEdit<MoveHole>().end, End::chassis);
    EXPECT_NEAR(state_.car.links[0].chassis.holes[0].at.x(), 6.5 * kMetresPerInch, 1e-12);
}

TEST_F(LinkSectionTest, WhatIsTypedIntoANewHoleReplacesWhatItBeganWith) {
    QTest::mouseClick(named<QToolButton>("Add a hole: upper, axle holes"), Qt::LeftButton);
    auto* field = qobject_cast<NumberField*>(QApplication::focusWidget());
    ASSERT_NE(field, nullptr);
    EXPECT_EQ(field->selectedText(), field->text());
    QTest::keyClicks(field, "2 1/4");
    QTest::keyClick(field, Qt::Key_Return);
    ASSERT_EQ(state_.car.links[1].axle.holes.size(), 2U);
    EXPECT_NEAR(state_.car.links[1].axle.holes[1].at.x(), 2.25 * kMetresPerInch, 1e-9);
}

TEST_F(LinkSectionTest, HolesComeAndGo) {
    QTest::mouseClick(named<QToolButton>("Add a hole: upper, axle holes"), Qt::LeftButton);
    ASSERT_EQ(state_.car.links[1].axle.holes.size(), 2U);
    auto* field = named<NumberField>("upper, axle hole no. 2, height");
    ASSERT_NE(field, nullptr);
    EXPECT_EQ(field->text(), "20 1/4") << "an inch above the last one, not on it";
    EXPECT_TRUE(named<NumberField>("upper, axle hole no. 2, forward")->hasFocus());

    auto* name = named<NameField>("upper, axle hole no. 2, name");
    name->setFocus();
    name->selectAll();
    QTest::keyClicks(name, "lower ear");
    QTest::keyClick(name, Qt::Key_Return);
    EXPECT_EQ(state_.car.links[1].axle.holes[1].name, "lower ear");
    EXPECT_NE(named<NumberField>("upper, axle hole lower ear, height"), nullptr);

    auto* remove = named<QToolButton>("Remove a hole: upper, axle holes");
    QTest::mouseClick(remove, Qt::LeftButton);
    auto* menu = remove->findChild<QMenu*>();
    ASSERT_EQ(menu->actions().size(), 2);
    menu->actions().at(1)->trigger();
    menu->hide();
    EXPECT_EQ(state_.car.links[1].axle.holes.size(), 1U);
    EXPECT_EQ(named<NumberField>("upper, axle hole lower ear, height"), nullptr);
    EXPECT_FALSE(named<QToolButton>("Remove a hole: upper, axle holes")->isVisible());
}

TEST_F(LinkSectionTest, AnAdjusterIsChosenWithAUsualThread) {
    auto* adjuster = named<CalmCombo>("lower, adjuster");
    adjuster->setFocus();
    QTest::keyClick(adjuster, Qt::Key_Down);
    ASSERT_TRUE(state_.car.links[0].adjuster.has_value());
    EXPECT_EQ(state_.car.links[0].adjuster->threadedEnds, 2);
    // 3/4-16 UNF: 16 threads per inch, pitch 1.5875 mm (physics of the trade; ASME B1.1, from memory).
    EXPECT_NEAR(state_.car.links[0].adjuster->pitch, 0.0015875, 1e-12);
    QTest::keyClick(adjuster, Qt::Key_Down);
    EXPECT_EQ(state_.car.links[0].adjuster->threadedEnds, 1);
    type("lower, thread pitch of the adjuster", "1/18");
    EXPECT_NEAR(state_.car.links[0].adjuster->pitch, 0.0254 / 18, 1e-12);
    adjuster->setFocus();
    QTest::keyClick(adjuster, Qt::Key_Home);
    EXPECT_FALSE(state_.car.links[0].adjuster.has_value());
}

}  // namespace
}  // namespace bolthole
