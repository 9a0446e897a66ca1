// Whole links in the car sheet: they come, go, change and are set apart, by mouse and keys.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QMenu>
#include <QScrollArea>
#include <QToolButton>
#include <algorithm>

#include "geometry/car/starting_numbers.h"
#include "geometry/checks/warnings.h"
#include "tests/support/sheet_bench.h"
#include "widgets/fields/link_section.h"
#include "widgets/fields/link_tools.h"
#include "widgets/words/field_words.h"

namespace bolthole {
namespace {

using test::inches;
using testing::HasSubstr;
using testing::Not;

class LinkEditing : public test::SheetBench {
  protected:
    void click(const QString& name) {
        auto* button = named<QToolButton>(name);
        ASSERT_NE(button, nullptr) << name.toStdString();
        ASSERT_TRUE(button->isVisible()) << name.toStdString();
        QTest::mouseClick(button, Qt::LeftButton);
    }
    // Opens the menu of a button by the keyboard and takes an entry, of a submenu where one is named.
    void takeFrom(QAbstractButton* button, const QString& submenu, const QString& entry) {
        ASSERT_NE(button, nullptr);
        button->setFocus();
        QTest::keyClick(button, Qt::Key_Space);
        auto* menu = button->findChild<QMenu*>(QString(), Qt::FindDirectChildrenOnly);
        ASSERT_NE(menu, nullptr);
        QAction* wanted = actionOf(menu, submenu.isEmpty() ? entry : submenu);
        if (!submenu.isEmpty()) {
            ASSERT_NE(wanted, nullptr) << submenu.toStdString();
            wanted = actionOf(wanted->menu(), entry);
        }
        ASSERT_NE(wanted, nullptr) << entry.toStdString();
        menu->hide();
        wanted->trigger();
    }
    static QAction* actionOf(QMenu* menu, const QString& words) {
        for (QAction* action : menu->actions()) {
            if (action->text().remove(u'&') == words) {
                return action;
            }
        }
        return nullptr;
    }
    void add(const QString& entry) { takeFrom(named<AddLinkButton>("Add a link"), {}, entry); }
    void change(const QString& link, const QString& submenu, const QString& entry) {
        takeFrom(named<QToolButton>(link + ": change kind, side or role"), submenu, entry);
    }
    std::string headingNote(const QString& title) {
        auto* header = named<SectionHeader>(title);
        return header == nullptr ? "no such heading" : header->warning().toStdString();
    }
    // How many numbers the sheet marks, which are those of the car.
    std::string count() {
        QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        const auto fields = sheet_->findChildren<NumberField*>();
        const auto marked = std::ranges::count(fields, Origin::starting, &NumberField::origin);
        EXPECT_EQ(static_cast<std::size_t>(marked), startingNumbers(state_.car).size());
        return "starting " + std::to_string(marked);
    }
    bool says(const QString& words) {
        QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        const auto labels = sheet_->findChildren<ToneLabel*>();
        return std::ranges::any_of(labels, [&](const ToneLabel* label) {
            return label->isVisible() && label->text().contains(words);
        });
    }
    // What the window does after an edit.
    void findWrong() {
        state_.faults = findFaults(state_.car);
        state_.warnings = findWarnings(state_.car);
        sheet_->showState(state_);
    }
};

TEST_F(LinkEditing, ALinkIsAddedWithStartingNumbersAndRemoved) {
    add("Torque arm");
    ASSERT_EQ(state_.car.links.size(), 4U);
    EXPECT_EQ(state_.car.links[3].kind, LinkKind::slider);
    EXPECT_TRUE(named<NumberField>("torque arm, chassis hole front, forward")->hasFocus());
    EXPECT_EQ(named<NumberField>("torque arm, chassis hole front, forward")->origin(), Origin::starting);
    EXPECT_EQ(count(), "starting 6");
    click("torque arm: remove the link");
    EXPECT_EQ(state_.car, test::inventedCar()) << "no question is asked: undo brings it back";
    EXPECT_EQ(count(), "starting 0");
}

TEST_F(LinkEditing, WhatIsTypedIsMeasuredTheSameNumberToo) {
    add("Watts guide");
    EXPECT_EQ(count(), "starting 6");
    type("Watts guide, chassis hole center, height", "13");
    EXPECT_EQ(count(), "starting 5");
    auto* field = named<NumberField>("Watts guide, chassis hole center, forward");
    field->setFocus();
    const QString shown = field->text();
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_EQ(field->origin(), Origin::starting) << "nothing was typed";
    field->setFocus();  // Enter went on to the next
    field->selectAll();
    QTest::keyClicks(field, shown);
    QTest::keyClick(field, Qt::Key_Tab);
    EXPECT_EQ(field->origin(), Origin::measured);
    EXPECT_EQ(count(), "starting 4");
}

// The marks of a link stay its own when one before it goes.
TEST_F(LinkEditing, MarksMoveAlongWithTheirLink) {
    add("Track bar");
    ASSERT_EQ(state_.car.links[3].name, "track bar 2");
    click("lower: remove the link");
    ASSERT_EQ(state_.car.links.size(), 3U);
    EXPECT_EQ(count(), "starting 6");
    EXPECT_TRUE(isStarting(state_.car, holeField(2, End::axle, 0, 1)));
}

TEST_F(LinkEditing, LeftAndRightAreSetApartAndJoined) {
    click("lower: set left and right apart");
    ASSERT_EQ(state_.car.links.size(), 4U);
    EXPECT_EQ(state_.car.links[0].side, Side::left);
    EXPECT_EQ(state_.car.links[1].side, Side::right);
    EXPECT_NE(named<SectionHeader>("Lower link, left side"), nullptr);
    EXPECT_NE(named<SectionHeader>("Lower link, right side"), nullptr);
    EXPECT_EQ(named<QToolButton>("upper: join left and right")->isVisible(), false);
    state_.car.links[1].axle.holes[1].at.z() = 8 * kMetresPerInch;
    sheet_->showState(state_);
    click("right lower: join left and right");
    ASSERT_EQ(state_.car.links.size(), 3U);
    EXPECT_EQ(state_.car.links[0].side, Side::both);
    EXPECT_EQ(state_.car.links[0].axle.holes[1].at, inches(0.5, 21, 8)) << "the right one's points";
}

TEST_F(LinkEditing, SetApartBothAreAsUnmeasuredAsThePair) {
    add("Ladder bars, a pair");
    type("ladder bar, chassis hole front, height", "9");
    click("ladder bar: set left and right apart");
    ASSERT_EQ(state_.car.links.size(), 5U);
    EXPECT_EQ(state_.car.links[4].side, Side::right);
    const auto starts = [this](int link) {
        const std::vector<FieldId> all = startingNumbers(state_.car);
        return std::ranges::count(all, link, &FieldId::link);
    };
    const auto ofThePair = starts(3);
    EXPECT_GT(ofThePair, 0);
    EXPECT_EQ(starts(4), ofThePair);
    click("left ladder bar: remove the link");
    EXPECT_EQ(starts(3), ofThePair) << "the right one keeps its own";
}

TEST_F(LinkEditing, KindSideAndRoleAreChanged) {
    change("lower", "Kind", "ladder bar");
    EXPECT_EQ(lastEdit<ChangeLink>().index, 0);
    EXPECT_EQ(state_.car.links[0].kind, LinkKind::pivot);
    EXPECT_EQ(state_.car.links[0].axle.holes[0].at, inches(21.5, 18.5, 10.5));
    EXPECT_TRUE(says("ladder bar"));
    EXPECT_EQ(named<NumberField>("lower, length center to center"), nullptr);
    change("lower", "Kind", "link");
    EXPECT_EQ(state_.car.links[0].kind, LinkKind::rod);
    EXPECT_NE(named<NumberField>("lower, length center to center"), nullptr);
    change("upper", "Side", "right");
    EXPECT_EQ(state_.car.links[1].side, Side::right);
    EXPECT_EQ(state_.car.links[1].axle.holes[0].at, inches(1.75, -7, 19.25));
    change("right upper", "Role", "lower");
    EXPECT_EQ(state_.car.links[1].role, Role::lower);
    change("right upper", "Role", "found from its holes");
    EXPECT_EQ(state_.car.links[1].role, std::nullopt);
    const std::size_t edits = edits_.size();
    change("right upper", "Side", "right");
    EXPECT_EQ(edits_.size(), edits) << "what it is already is no change";
}

TEST_F(LinkEditing, EveryToolIsReachedByTabAndNamed) {
    QWidget* first = named<NumberField>("wheelbase");
    first->setFocus();
    QStringList reached;
    for (int steps = 0; steps < 150; ++steps) {
        reached << QApplication::focusWidget()->accessibleName();
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    }
    for (const char* name : {"lower: set left and right apart", "lower: change kind, side or role",
                             "track bar: remove the link", "Add a link"}) {
        EXPECT_TRUE(reached.contains(QLatin1String(name))) << name;
    }
}

TEST_F(LinkEditing, AnUnderHeldCarSaysSoAndMarksALink) {
    findWrong();
    EXPECT_EQ(headingNote("Lower link, both sides"), "");
    state_.car.links.erase(state_.car.links.begin() + 1);
    findWrong();
    EXPECT_THAT(headingNote("Lower link, both sides"), HasSubstr("turning over"));
    EXPECT_THAT(named<SectionHeader>("Lower link, both sides")->accessibleDescription().toStdString(),
                HasSubstr("turning over"));
    EXPECT_TRUE(says("▲ Nothing keeps the axle housing from turning over."));
    EXPECT_EQ(headingNote("Track bar"), "");
    EXPECT_TRUE(sheet_->hasField(state_.warnings.front().id));
    EXPECT_GE(state_.warnings.front().id.link, 0);
}

TEST_F(LinkEditing, AnOverHeldCarSaysSoAndMarksTheLinkThatMisfits) {
    add("Torque arm");
    findWrong();
    const auto found = std::ranges::find_if(state_.warnings, [](const Warning& warning) {
        return warning.finding.cause.find("hold the axle more than once") != std::string::npos;
    });
    ASSERT_NE(found, state_.warnings.end());
    EXPECT_TRUE(sheet_->hasField(found->id));
    EXPECT_THAT(headingNote(linkTitle(state_.car, found->id.link)), HasSubstr("more than once"));
}

TEST_F(LinkEditing, TheNoteOfAFoldedLinkStaysAtItsHeading) {
    state_.car.links.erase(state_.car.links.begin() + 1);
    findWrong();
    auto* section = sheet_->findChildren<LinkSection*>().front();
    section->setUnfolded(false);
    EXPECT_THAT(section->header()->warning().toStdString(), HasSubstr("turning over"));
    EXPECT_THAT(section->header()->accessibleDescription().toStdString(), HasSubstr("folded"));
    section->header()->showWarning({});
    EXPECT_THAT(section->header()->toolTip().toStdString(), HasSubstr("link with a joint"));
}

// Folded groups stay folded where other links come and go.
TEST_F(LinkEditing, FoldedStaysFolded) {
    named<SectionHeader>("Upper link, both sides")->setChecked(false);
    add("Third link, one upper in the middle");
    EXPECT_FALSE(named<SectionHeader>("Upper link, both sides")->isChecked());
    EXPECT_TRUE(named<SectionHeader>("Third link")->isChecked());
}

TEST_F(LinkEditing, AFullCarTakesNoMoreLinks) {
    while (state_.car.links.size() < kMaxLinks) {
        state_.car.links.push_back(state_.car.links[2]);
    }
    sheet_->showState(state_);
    EXPECT_FALSE(named<AddLinkButton>("Add a link")->isEnabled());
}

// The numbers in the order of their fields, and from the last on to the first.
TEST_F(LinkEditing, NextGoesThroughTheStartingNumbers) {
    add("Watts guide");
    setOrigin(state_.car, {.field = Field::cgHeight}, Origin::starting);
    findWrong();
    std::vector<FieldId> asked;
    QObject::connect(sheet_.get(), &CarSheet::fieldRequested, sheet_.get(), [&](const FieldId& id) {
        asked.push_back(id);
        sheet_->focusField(id);
    });
    auto* next = named<QAbstractButton>("Go to the next starting number");
    ASSERT_NE(next, nullptr);
    EXPECT_EQ(sheet_->findChild<QLabel*>("measuredCount")->text(),
              QStringLiteral("%1 of %2 numbers measured")
                  .arg(measurableNumbers(state_.car).size() - 7)
                  .arg(measurableNumbers(state_.car).size()));
    named<NumberField>("wheelbase")->setFocus();
    for (int press = 0; press < 8; ++press) {
        QTest::mouseClick(next, Qt::LeftButton);
    }
    ASSERT_EQ(asked.size(), 8U);
    EXPECT_EQ(asked[0], FieldId{.field = Field::cgHeight});
    EXPECT_EQ(asked[1], holeField(3, End::chassis, 0, 0));
    EXPECT_EQ(asked[6], holeField(3, End::axle, 0, 1));
    EXPECT_EQ(asked[7], asked[0]);
}

}  // namespace
}  // namespace bolthole
