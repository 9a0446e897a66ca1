// The fields of springs, shocks, stops and straps: real keys and clicks.
#include "widgets/pages/springs/spring_section.h"

#include <gmock/gmock.h>

#include "geometry/car/starting_numbers.h"
#include "tests/support/springs_bench.h"

namespace bolthole::test {
namespace {

class SpringFields : public SpringsBench {
  protected:
    // Those of the page's fields that are marked as starting numbers, by name.
    QStringList starting() {
        QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        QStringList names;
        for (const NumberField* field : page_.findChildren<NumberField*>()) {
            if (field->origin() == Origin::starting) {
                names << field->accessibleName();
            }
        }
        EXPECT_EQ(static_cast<std::size_t>(names.size()), startingNumbers(state_.car).size());
        return names;
    }
    static QStringList mounts(const QString& part) {
        return {part + ", chassis mount top, forward", part + ", chassis mount top, out",
                part + ", chassis mount top, height",  part + ", axle mount bottom, forward",
                part + ", axle mount bottom, out",     part + ", axle mount bottom, height"};
    }
};

TEST_F(SpringFields, AnEmptyPageSaysWhatToDo) {
    EXPECT_TRUE(says(QStringLiteral("Nothing here yet")));
    EXPECT_EQ(named<CurveChart>(QStringLiteral("Curves of the springs through travel")), nullptr);
}

// What is added is marked as not measured, number by number, until it is typed.
TEST_F(SpringFields, AnAddedShockIsNotMeasuredUntilTouched) {
    addByKey(Qt::Key_H);
    ASSERT_EQ(edits_.size(), 1U);
    const SuspensionPart& added = edits_[0].as<AddSpring>()->part;
    EXPECT_EQ(added.kind, PartKind::shock);
    EXPECT_FALSE(added.rate || added.freeLength || added.closedLength || added.openLength)
        << "nobody can guess those";
    EXPECT_LT(added.chassis.inUse().at.y(), *state_.car.rearTrack / 2);
    EXPECT_GT(added.chassis.inUse().at.z(), added.axle.inUse().at.z());
    QStringList left = mounts("rear shock");
    EXPECT_THAT(starting(), testing::UnorderedElementsAreArray(left));
    EXPECT_EQ(QApplication::focusWidget(),
              named<NumberField>(QStringLiteral("rear shock, chassis mount top, forward")));

    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_THAT(starting(), testing::UnorderedElementsAreArray(left)) << "nothing was typed";
    EXPECT_EQ(edits_.size(), 1U);
    type(QStringLiteral("rear shock, axle mount bottom, height"), QStringLiteral("280"));
    left.removeOne("rear shock, axle mount bottom, height");
    EXPECT_THAT(starting(), testing::UnorderedElementsAreArray(left));
    EXPECT_EQ(edits_.size(), 2U);
    auto* forward = named<NumberField>(QStringLiteral("rear shock, chassis mount top, forward"));
    type(forward->accessibleName(), forward->text());
    left.removeOne("rear shock, chassis mount top, forward");
    EXPECT_THAT(starting(), testing::UnorderedElementsAreArray(left)) << "the number it had, typed";
}

TEST_F(SpringFields, WhatIsNotMeasuredMovesUpWithItsPart) {
    addByKey(Qt::Key_S);
    addByKey(Qt::Key_T);
    for (const char* axis : {"forward", "out", "height"}) {
        for (const char* mount : {"chassis mount top", "axle mount bottom"}) {
            const QString name = QStringLiteral("rear spring, %1, %2").arg(mount, axis);
            type(name, named<NumberField>(name)->text());
        }
    }
    EXPECT_THAT(starting(), testing::UnorderedElementsAreArray(mounts("rear strap")));
    QTest::mouseClick(named<QAbstractButton>(QStringLiteral("Remove rear spring")), Qt::LeftButton);
    ASSERT_EQ(state_.car.springs.size(), 1U);
    EXPECT_THAT(starting(), testing::UnorderedElementsAreArray(mounts("rear strap")));
}

TEST_F(SpringFields, ARefusedPartSaysWhyInPlaceAndTheRestIsComputed) {
    SuspensionPart spring = upright("coil", PartKind::spring, 0.5, 0.3);
    spring.rate = 30e3;
    showParts({spring, upright("shock", PartKind::shock, 0.4, 0.35)});
    EXPECT_EQ(fact(QStringLiteral("Coil: spring, both sides"), QStringLiteral("Not computed")), "—");
    EXPECT_TRUE(says(QStringLiteral("Not computed: expected a free length beside the rate")));
    EXPECT_EQ(fact(QStringLiteral("Shock, both sides"), QStringLiteral("Length at ride")), "350.0 mm");
    type(QStringLiteral("coil, free length"), QStringLiteral("400"));
    EXPECT_FALSE(says(QStringLiteral("Not computed")));
    EXPECT_EQ(fact(QStringLiteral("Coil: spring, both sides"), QStringLiteral("Wheel rate it makes")),
              "30.0 N/mm");
}

// By hand: bolted 50 mm lower the shock is 50 mm shorter. One edit.
TEST_F(SpringFields, AnotherHoleOfAMountIsOneEdit) {
    SuspensionPart shock = upright("shock", PartKind::shock, 0.45, 0.35);
    shock.chassis.holes.push_back({-1, "low", shock.chassis.holes[0].at - Eigen::Vector3d(0, 0, 0.05)});
    showParts({shock});
    auto* mark = named<HoleMark>(QStringLiteral("shock, chassis mount low, bolted here"));
    ASSERT_NE(mark, nullptr);
    EXPECT_FALSE(mark->isChecked());
    QTest::mouseClick(mark, Qt::LeftButton);
    ASSERT_EQ(edits_.size(), 1U);
    EXPECT_EQ(edits_[0].as<ChangeSpring>()->part.chassis.use, 1);
    EXPECT_EQ(fact(QStringLiteral("Shock, both sides"), QStringLiteral("Length at ride")), "300.0 mm");
    EXPECT_TRUE(mark->isChecked());
}

TEST_F(SpringFields, AnAddedHoleStaysUnmeasuredUntilItsNumbersAreTyped) {
    showParts({upright("shock", PartKind::shock, 0.45, 0.35)});
    QTest::mouseClick(named<QAbstractButton>(QStringLiteral("Add a hole: shock, axle mount")),
                      Qt::LeftButton);
    const QString hole = QStringLiteral("shock, axle mount no. 2, ");
    EXPECT_EQ(starting(), QStringList({hole + "forward", hole + "height", hole + "out"}));
    QWidget* field = QApplication::focusWidget();
    QTest::keyClicks(field, "1");
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_EQ(starting(), QStringList({hole + "height", hole + "out"}));
}

TEST_F(SpringFields, HolesAreAddedAndRemovedInOneEditEach) {
    showParts({upright("shock", PartKind::shock, 0.45, 0.35)});
    QTest::mouseClick(named<QAbstractButton>(QStringLiteral("Add a hole: shock, axle mount")),
                      Qt::LeftButton);
    ASSERT_EQ(state_.car.springs[0].axle.holes.size(), 2U);
    EXPECT_EQ(state_.car.springs[0].axle.use, 0);
    EXPECT_EQ(QApplication::focusWidget(),
              named<NumberField>(QStringLiteral("shock, axle mount no. 2, forward")));
    auto* remove = named<QAbstractButton>(QStringLiteral("Remove a hole: shock, axle mount"));
    ASSERT_NE(remove, nullptr);
    QTest::mouseClick(remove, Qt::LeftButton);
    QWidget* menu = QApplication::activePopupWidget();
    ASSERT_NE(menu, nullptr);
    QTest::keyClick(menu, Qt::Key_Down);
    QTest::keyClick(menu, Qt::Key_Return);
    EXPECT_EQ(edits_.size(), 2U);
    ASSERT_EQ(state_.car.springs[0].axle.holes.size(), 1U);
    EXPECT_EQ(state_.car.springs[0].axle.holes[0].name, "no. 2");
}

// Numbers the new kind does not have are not left behind where nobody sees them.
TEST_F(SpringFields, AnotherKindIsOneEditAndDropsWhatItDoesNotHave) {
    SuspensionPart over = upright("front one", PartKind::coilOver, 0.45, 0.35);
    over.rate = 20e3;
    over.freeLength = 0.4;
    over.openLength = 0.5;
    over.push = 100;
    showParts({over});
    EXPECT_NE(named<NumberField>(QStringLiteral("front one, rate")), nullptr);
    auto* kind = named<CalmCombo>(QStringLiteral("front one, kind"));
    ASSERT_NE(kind, nullptr);
    kind->setFocus();
    QTest::keyClick(kind, Qt::Key_End);
    ASSERT_EQ(edits_.size(), 1U);
    const SuspensionPart& strap = state_.car.springs[0];
    EXPECT_EQ(strap.kind, PartKind::strap);
    EXPECT_FALSE(strap.rate || strap.freeLength);
    EXPECT_EQ(strap.push, 0);
    EXPECT_EQ(strap.openLength, 0.5);
    EXPECT_EQ(named<NumberField>(QStringLiteral("front one, rate")), nullptr);
    EXPECT_NE(named<NumberField>(QStringLiteral("front one, length when taut")), nullptr);
}

TEST_F(SpringFields, ANameTypedRenamesThePartEverywhere) {
    showParts({upright("shock", PartKind::shock, 0.45, 0.35)});
    auto* name = named<NameField>(QStringLiteral("shock, name of the part"));
    ASSERT_NE(name, nullptr);
    name->setFocus();
    name->selectAll();
    QTest::keyClicks(name, QStringLiteral("long one"));
    QTest::keyClick(name, Qt::Key_Return);
    EXPECT_EQ(edits_.size(), 1U);
    EXPECT_EQ(fact(QStringLiteral("Long one: shock, both sides"), QStringLiteral("Length at ride")),
              "350.0 mm");
    EXPECT_NE(named<NumberField>(QStringLiteral("long one, compressed length")), nullptr);
}

}  // namespace
}  // namespace bolthole::test
