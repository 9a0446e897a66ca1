#include "widgets/kit/number_field.h"

#include <gmock/gmock.h>

#include <QHelpEvent>
#include <QSignalSpy>
#include <QTest>
#include <QVBoxLayout>
#include <QWheelEvent>
#include <memory>

#include "widgets/kit/dressing.h"
#include "widgets/kit/theme.h"

namespace bolthole {
namespace {

constexpr NumberStyle kInch{Units::inch, InchStyle::sixteenths};
constexpr NumberStyle kMetric{Units::metric, InchStyle::sixteenths};

double inches(double value) {
    return value * kMetresPerInch;
}

/// A field and a neighbor to tab to, in a window of their own. What is committed is shown again, as the sheet
/// does.
class NumberFieldTest : public testing::Test {
  protected:
    NumberFieldTest() : window_(std::make_unique<QWidget>()) {
        auto* column = new QVBoxLayout(window_.get());
        field_ = new NumberField(Quantity::length, window_.get());
        other_ = new NumberField(Quantity::length, window_.get());
        column->addWidget(field_);
        column->addWidget(other_);
        other_->showNumber(1.0, kInch);
        field_->showNumber(inches(10), kInch);
        QObject::connect(field_, &NumberField::committed, field_, [this](double value) {
            committed_.push_back(value);
            field_->showNumber(value, kInch);
        });
        window_->show();
        QApplication::setActiveWindow(window_.get());
        field_->setFocus();
        field_->selectAll();
    }

    void type(const QString& text) {
        field_->selectAll();
        QTest::keyClicks(field_, text);
    }

    std::unique_ptr<QWidget> window_;
    NumberField* field_;
    NumberField* other_;
    std::vector<double> committed_;
};

struct Typed {
    const char* text;
    double inch;
};

TEST_F(NumberFieldTest, EnterCommitsWhatAPersonTypes) {
    const Typed cases[] = {{"12 3/8", 12.375},       {"12-3/8", 12.375}, {"12.375", 12.375},
                           {"314 mm", 314.0 / 25.4}, {"3/8", 0.375},     {"-3/8", -0.375}};
    for (const Typed& typed : cases) {
        committed_.clear();
        field_->showNumber(inches(1), kInch);
        type(typed.text);
        QTest::keyClick(field_, Qt::Key_Return);
        ASSERT_EQ(committed_.size(), 1U) << typed.text;
        EXPECT_NEAR(committed_[0], inches(typed.inch), 1e-12) << typed.text;
        EXPECT_TRUE(field_->note().isEmpty());
    }
}

TEST_F(NumberFieldTest, TabCommitsAndTheTextIsShownInTheStyle) {
    type("12.375");
    QTest::keyClick(field_, Qt::Key_Tab);
    EXPECT_TRUE(other_->hasFocus());
    ASSERT_EQ(committed_.size(), 1U);
    EXPECT_EQ(field_->text(), "12 3/8");
}

TEST_F(NumberFieldTest, EnterTakesTheNumberAndGoesOnToTheNext) {
    type("12.375");
    QTest::keyClick(field_, Qt::Key_Return);
    ASSERT_EQ(committed_.size(), 1U);
    EXPECT_TRUE(other_->hasFocus());
    EXPECT_EQ(other_->selectedText(), other_->text());
    EXPECT_FALSE(field_->hasSelectedText());
    QTest::keyClick(other_, Qt::Key_Return);
    EXPECT_TRUE(other_->hasFocus()) << "the last one stays";
}

TEST_F(NumberFieldTest, EnterStaysWhereTheTextIsRefused) {
    type("twelve");
    QTest::keyClick(field_, Qt::Key_Return);
    EXPECT_TRUE(field_->hasFocus());
}

TEST_F(NumberFieldTest, AClickSelectsTheNumberAndTheNextSetsTheCursor) {
    QTest::mouseClick(other_, Qt::LeftButton);
    ASSERT_TRUE(other_->hasFocus());
    EXPECT_EQ(other_->selectedText(), other_->text());
    EXPECT_FALSE(field_->hasSelectedText());
    QTest::qWait(QApplication::doubleClickInterval() + 50);  // not a double click
    QTest::mouseClick(other_, Qt::LeftButton);
    EXPECT_FALSE(other_->hasSelectedText());
}

TEST_F(NumberFieldTest, NothingIsSelectedWithoutTheFocus) {
    other_->restore();
    EXPECT_FALSE(other_->hasSelectedText());
    field_->restore();
    EXPECT_TRUE(field_->hasSelectedText());
}

TEST_F(NumberFieldTest, AWarningIsSaidAndNoProblem) {
    field_->setWarning("looks outside what cars have");
    EXPECT_EQ(field_->note(), "looks outside what cars have");
    EXPECT_FALSE(field_->hasProblem());
    field_->setFault("expected more");
    EXPECT_EQ(field_->note(), "expected more");
}

TEST_F(NumberFieldTest, UntouchedTextIsNeverCommitted) {
    field_->showNumber(inches(10.123456789), kInch);
    QTest::keyClick(field_, Qt::Key_Return);
    QTest::keyClick(field_, Qt::Key_Tab);
    EXPECT_TRUE(committed_.empty());
}

TEST_F(NumberFieldTest, NonsenseStaysWithItsReasonUntilMended) {
    type("12 3/");
    QTest::keyClick(field_, Qt::Key_Tab);
    EXPECT_TRUE(committed_.empty());
    EXPECT_EQ(field_->text(), "12 3/");
    EXPECT_FALSE(field_->note().isEmpty());
    EXPECT_EQ(field_->accessibleDescription(), field_->note());
    EXPECT_TRUE(field_->property("problem").toBool());
    field_->showNumber(inches(11), kInch);
    EXPECT_EQ(field_->text(), "12 3/") << "a change from elsewhere must not wipe what was typed";

    field_->setFocus();
    field_->end(false);
    QTest::keyClicks(field_, "8");
    QTest::keyClick(field_, Qt::Key_Return);
    ASSERT_EQ(committed_.size(), 1U);
    EXPECT_NEAR(committed_[0], inches(12.375), 1e-12);
    EXPECT_FALSE(field_->property("problem").toBool());
}

TEST_F(NumberFieldTest, ACommaIsRefusedNotGuessed) {
    for (const char* text : {"12,375", "1,200", "12,5"}) {
        type(text);
        QTest::keyClick(field_, Qt::Key_Return);
        EXPECT_TRUE(committed_.empty()) << text;
        EXPECT_EQ(field_->text(), text);
        EXPECT_FALSE(field_->note().isEmpty());
    }
}

TEST_F(NumberFieldTest, EscapeRestoresAlsoAfterARefusal) {
    type("twelve");
    QTest::keyClick(field_, Qt::Key_Return);
    ASSERT_TRUE(field_->hasProblem());
    QTest::keyClick(field_, Qt::Key_Escape);
    EXPECT_EQ(field_->text(), "10");
    EXPECT_TRUE(field_->note().isEmpty());
    EXPECT_TRUE(committed_.empty());
}

TEST_F(NumberFieldTest, TheCheckRefusesWithItsOwnWords) {
    field_->setCheck(
        [](double value) { return value > 0 ? std::string() : std::string("a length above 0"); });
    type("-1");
    QTest::keyClick(field_, Qt::Key_Return);
    EXPECT_TRUE(committed_.empty());
    EXPECT_EQ(field_->note(), "a length above 0");
}

TEST_F(NumberFieldTest, TheWheelPassesThrough) {
    for (const int turn : {120, -120}) {
        QWheelEvent wheel(QPointF(5, 5), field_->mapToGlobal(QPointF(5, 5)), QPoint(), QPoint(0, turn),
                          Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase, false);
        wheel.accept();
        QApplication::sendEvent(field_, &wheel);
        EXPECT_EQ(field_->text(), "10");
    }
    EXPECT_TRUE(committed_.empty());
}

TEST_F(NumberFieldTest, ArrowKeysStepToTheNextFraction) {
    field_->showNumber(inches(10.01), kInch);
    QTest::keyClick(field_, Qt::Key_Up);
    ASSERT_EQ(committed_.size(), 1U);
    EXPECT_NEAR(committed_.back(), inches(10.0625), 1e-12);
    QTest::keyClick(field_, Qt::Key_Down);
    EXPECT_NEAR(committed_.back(), inches(10), 1e-12);
    QTest::keyClick(field_, Qt::Key_Up, Qt::ShiftModifier);
    EXPECT_NEAR(committed_.back(), inches(11), 1e-12);
}

TEST_F(NumberFieldTest, StepsFollowQuantityAndUnits) {
    EXPECT_DOUBLE_EQ(arrowStep(Quantity::length, kMetric, false), 0.001);
    EXPECT_DOUBLE_EQ(arrowStep(Quantity::length, {Units::inch, InchStyle::thirtySeconds}, false),
                     inches(1) / 32);
    EXPECT_DOUBLE_EQ(arrowStep(Quantity::angle, kInch, false), 0.1 * kRadiansPerDegree);
    EXPECT_DOUBLE_EQ(arrowStep(Quantity::mass, kInch, true), 10 * kKilogramsPerPound);
}

TEST_F(NumberFieldTest, TextBegunBeforeAUnitSwitchIsReadInItsOwnUnits) {
    type("12");
    field_->showNumber(inches(10), kMetric);
    EXPECT_EQ(field_->text(), "12");
    EXPECT_EQ(field_->unitText(), "in");
    EXPECT_TRUE(field_->note().contains("inch"));
    EXPECT_FALSE(field_->hasProblem());
    QTest::keyClick(field_, Qt::Key_Return);
    ASSERT_EQ(committed_.size(), 1U);
    EXPECT_NEAR(committed_[0], inches(12), 1e-12);
}

TEST_F(NumberFieldTest, AUnitSwitchShowsTheSameValueAnew) {
    field_->showNumber(inches(10), kMetric);
    EXPECT_EQ(field_->text(), "254");
    EXPECT_EQ(field_->unitText(), "mm");
}

TEST_F(NumberFieldTest, EmptyingRemovesOnlyWhereAllowed) {
    QSignalSpy cleared(field_, &NumberField::cleared);
    field_->clear();
    QTest::keyClicks(field_, " ");
    QTest::keyClick(field_, Qt::Key_Return);
    EXPECT_EQ(cleared.count(), 0);
    EXPECT_TRUE(field_->hasProblem());
    field_->setMayBeEmpty(true);
    QTest::keyClick(field_, Qt::Key_Return);
    EXPECT_EQ(cleared.count(), 1);
    EXPECT_FALSE(field_->hasProblem());
}

TEST_F(NumberFieldTest, ARefusedEditFallsBackToTheNumber) {
    QObject::disconnect(field_, &NumberField::committed, nullptr, nullptr);
    type("11");
    QTest::keyClick(field_, Qt::Key_Return);
    EXPECT_EQ(field_->text(), "10") << "the owner showed nothing new";
}

TEST_F(NumberFieldTest, UndoBelongsToTheWindowWhileNothingIsTyped) {
    QKeyEvent undo(QEvent::ShortcutOverride, Qt::Key_Z, Qt::ControlModifier);
    undo.ignore();
    QApplication::sendEvent(field_, &undo);
    EXPECT_FALSE(undo.isAccepted());
    type("11");
    QKeyEvent again(QEvent::ShortcutOverride, Qt::Key_Z, Qt::ControlModifier);
    again.ignore();
    QApplication::sendEvent(field_, &again);
    EXPECT_TRUE(again.isAccepted());
}

TEST_F(NumberFieldTest, AFaultOfTheCarIsSaidAtTheField) {
    field_->setFault("a length above 0 is expected");
    EXPECT_EQ(field_->note(), "a length above 0 is expected");
    EXPECT_TRUE(field_->property("problem").toBool());
    field_->setFault(QString());
    EXPECT_TRUE(field_->note().isEmpty());
}

// A length that is no fraction: the tape's nearest, itself once it is entered, and never changed by that.
TEST_F(NumberFieldTest, ShowsWhatATapeShowsUntilItIsEntered) {
    field_->showNumber(inches(21.3436), kInch);
    EXPECT_EQ(field_->text(), QStringLiteral("21.3436")) << "it is entered";
    other_->setFocus();
    EXPECT_EQ(field_->text(), QStringLiteral("≈ 21 11/32"));
    field_->setFocus();
    EXPECT_EQ(field_->text(), QStringLiteral("21.3436"));
    QTest::keyClick(field_, Qt::Key_Tab);
    EXPECT_EQ(field_->text(), QStringLiteral("≈ 21 11/32"));
    EXPECT_TRUE(committed_.empty());
    EXPECT_EQ(field_->number(), inches(21.3436));
}

TEST_F(NumberFieldTest, WhatNobodyMeasuredStandsOnAGroundOfItsOwn) {
    ThemeKeeper::instance().choose(Appearance::light);
    Dressing::instance().wear(window_.get());
    const auto ground = [this] { return other_->grab().toImage().pixelColor(4, other_->height() / 2).rgb(); };
    const QRgb measured = ground();
    for (const Origin origin : {Origin::starting, Origin::workedOut}) {
        other_->setOrigin(origin);
        EXPECT_EQ(ground(), theme().starting.rgb());
    }
    other_->setOrigin(Origin::measured);
    EXPECT_EQ(ground(), measured);
    EXPECT_NE(measured, theme().starting.rgb());
}

TEST_F(NumberFieldTest, SaysThatNobodyMeasuredTheNumber) {
    field_->setHowTo(QStringLiteral("By the tape."));
    field_->setOrigin(Origin::starting);
    EXPECT_TRUE(field_->property("unmeasured").toBool());
    EXPECT_EQ(field_->accessibleDescription(), QStringLiteral("Starting number, not measured. By the tape."));
    field_->setOrigin(Origin::workedOut);
    EXPECT_TRUE(field_->property("unmeasured").toBool());
    EXPECT_EQ(field_->accessibleDescription(), QStringLiteral("Worked out, not measured. By the tape."));
    // Not every such number is a length between holes: the springs' bump is one, too.
    QHelpEvent pointed(QEvent::ToolTip, QPoint(1, 1), QPoint(1, 1));
    QApplication::sendEvent(field_, &pointed);
    EXPECT_THAT(field_->toolTip().toStdString(), testing::HasSubstr("Worked out from other numbers"));
    field_->setOrigin(Origin::measured);
    EXPECT_FALSE(field_->property("unmeasured").toBool());
    EXPECT_EQ(field_->accessibleDescription(), QStringLiteral("By the tape."));
}

}  // namespace
}  // namespace bolthole
