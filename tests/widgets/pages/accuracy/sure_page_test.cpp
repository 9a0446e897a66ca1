// The page "Accuracy" with what a window would do around it: read, typed into, worked by keys.
#include "widgets/pages/accuracy/sure_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QComboBox>
#include <QPushButton>
#include <QTest>
#include <cmath>
#include <numeric>

#include "geometry/units/sure_text.h"
#include "tests/support/sheet_bench.h"
#include "widgets/fields/sure_bar.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/accuracy/sure_table.h"

namespace bolthole {
namespace {

using testing::EndsWith;
using testing::HasSubstr;
using testing::StartsWith;

constexpr FieldId kWheelbase{.field = Field::wheelbase};

class SurePageTest : public testing::Test {
  protected:
    static void SetUpTestSuite() { ThemeKeeper::instance().choose(Appearance::light); }

    SurePageTest() {
        QObject::connect(&page_, &WorkPage::edited, &page_, [this](const Edit& edit) {
            edits_.push_back(edit);
            const EditResult result = bolthole::apply(state_.car, edit);
            EXPECT_EQ(result.refusal, "");
            state_.car = result.car;
            solve();
        });
        QObject::connect(&page_, &WorkPage::fieldWanted, &page_,
                         [this](const FieldId& id) { wanted_.push_back(id); });
        page_.resize(1200, 900);
        page_.show();
        QApplication::setActiveWindow(&page_);
        open(test::inventedCar());
    }
    void open(const Car& car) {
        state_.car = car;
        solve();
    }
    void solve() {
        state_.solvedCar = state_.car;
        state_.trace = computeTrace(state_.car);
        state_.traceIsCurrent = state_.trace.assembly.usable();
        page_.showState(state_);
    }
    template <class Kind>
    Kind& part(const char* name) {
        auto* found = page_.findChild<Kind*>(QLatin1String(name));
        if (found == nullptr) {
            throw std::runtime_error(name);
        }
        return *found;
    }
    SureTable& table() { return part<SureTable>("sureTable"); }
    NumberField& own() {
        QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        return part<NumberField>("sureOwn");
    }
    std::string sentence() { return part<QLabel>("sureSentence").text().toStdString(); }
    std::string cell(int row, SureTable::Column column) {
        return table().item(row, column)->text().toStdString();
    }
    [[nodiscard]] double uncertaintyOf(std::size_t row) const {
        return surenessOf(state_.car, page_.reading().rows[row].id).uncertainty;
    }
    static void type(QWidget& field, const char* text) {
        field.setFocus();
        QTest::keyClick(&field, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClick(&field, Qt::Key_Delete);
        QTest::keyClicks(&field, QLatin1String(text));
        QTest::keyClick(&field, Qt::Key_Return);
    }
    void choose(const char* box, int index) { part<QComboBox>(box).setCurrentIndex(index); }

    BenchState state_;
    SurePage page_;
    std::vector<Edit> edits_;
    std::vector<FieldId> wanted_;
};

// The same figures as the bench's, by another road: figure and ± of its trace.
TEST_F(SurePageTest, SaysTheFigureItsSpreadAndWhatToMeasureAgain) {
    const TraceSpread spread = computeSpread(state_.car);
    const long figure = std::lround(state_.trace.ride[Figure::antiSquat]);
    const long half = std::lround(kCoverage95 * spread.atRide(Figure::antiSquat));
    EXPECT_THAT(sentence(), StartsWith("Anti-squat at ride height is " + std::to_string(figure) + " % ± " +
                                       std::to_string(half) + "."));
    const SureRow& first = page_.reading().rows[0];
    EXPECT_THAT(sentence(), HasSubstr(numberWords(state_.car, first.id)));
    EXPECT_THAT(sentence(),
                EndsWith("It makes " + std::to_string(std::lround(100 * first.share)) + " % of that."));
}

TEST_F(SurePageTest, EveryNumberHasARowAndTheSharesMakeTheWhole) {
    const std::vector<SureRow>& rows = page_.reading().rows;
    EXPECT_EQ(rows.size(), uncertainInputs(state_.car).size());
    EXPECT_EQ(table().rowCount(), static_cast<int>(rows.size()));
    const double sum = std::accumulate(rows.begin(), rows.end(), 0.0,
                                       [](double so, const SureRow& row) { return so + row.share; });
    EXPECT_NEAR(sum, 1, 1e-9);
    EXPECT_EQ(cell(0, SureTable::share), std::to_string(std::lround(100 * rows[0].share)) + " %");
}

TEST_F(SurePageTest, FigureAndPlaceAreChosen) {
    choose("sureFigure", 3);
    choose("surePlace", 2);
    EXPECT_THAT(sentence(), StartsWith("Swing arm's angle at full droop is "));
    const double angle = state_.trace.stations.front()[Figure::swingArmAngle];
    EXPECT_THAT(sentence(), HasSubstr(figureText(angle, Quantity::angle, Units::inch)));
    choose("sureFigure", 1);
    choose("surePlace", 0);
    EXPECT_THAT(sentence(), HasSubstr(" in, "));  // the two ends, as they lie unevenly
    EXPECT_THAT(sentence(), HasSubstr(" to "));
}

TEST_F(SurePageTest, AFigureTheCarDoesNotHaveIsSaidSo) {
    choose("sureFigure", 6);
    EXPECT_EQ(sentence(), "Front joint's angle needs a driveline, and none is entered.");
    EXPECT_FALSE(table().isVisible());
    choose("sureFigure", 0);
    EXPECT_TRUE(table().isVisible());
}

TEST_F(SurePageTest, ACarThatCannotBeComputedIsSaidSo) {
    Car car = test::inventedCar();
    car.links[0].length = 2.0;
    open(car);
    EXPECT_THAT(sentence(), HasSubstr("can't be computed"));
    EXPECT_FALSE(table().isVisible());
    EXPECT_FALSE(part<SureBar>("sureBar").isVisible());
}

TEST_F(SurePageTest, TakenWithCalipersByKeyAndBackToItsTool) {
    choose("sureFigure", 1);
    table().setFocus();
    ASSERT_EQ(cell(0, SureTable::tool), "tape");
    const FieldId id = page_.reading().rows[0].id;
    const QString promised = page_.reading().rows[0].withCalipers;
    QTest::keyClick(&table(), Qt::Key_C);
    ASSERT_EQ(edits_.size(), 1U);
    EXPECT_NEAR(surenessOf(state_.car, id).uncertainty, kCaliperSpread, 1e-15);
    EXPECT_THAT(sentence(), HasSubstr(promised.toStdString()));
    ASSERT_NE(table().selected(), nullptr);
    EXPECT_EQ(*table().selected(), id) << "the number stays selected where it moved to";
    EXPECT_EQ(cell(table().currentRow(), SureTable::tool), "calipers");
    QTest::keyClick(&table(), Qt::Key_Delete);
    EXPECT_EQ(state_.car, test::inventedCar());
    QTest::keyClick(&table(), Qt::Key_Delete);
    EXPECT_EQ(edits_.size(), 2U) << "nothing left to take away";
}

TEST_F(SurePageTest, ButtonsDoTheSame) {
    choose("sureFigure", 1);
    const FieldId id = page_.reading().rows[0].id;
    part<QPushButton>("sureCalipers").click();
    EXPECT_TRUE(surenessOf(state_.car, id).own);
    EXPECT_FALSE(part<QPushButton>("sureCalipers").isEnabled());
    part<QPushButton>("sureTool").click();
    EXPECT_FALSE(surenessOf(state_.car, id).own);
    part<QPushButton>("sureGo").click();
    EXPECT_THAT(wanted_, testing::ElementsAre(id));
}

// ± is the 95 % half-width on screen, the standard uncertainty in the car.
TEST_F(SurePageTest, ItsOwnPlusMinusIsTypedInPlace) {
    table().selectNumber(kWheelbase);
    type(own(), "1/4");
    FieldId spread = kWheelbase;
    spread.spread = true;
    ASSERT_TRUE(numberAt(state_.car, spread).has_value());
    EXPECT_NEAR(*numberAt(state_.car, spread), 0.25 * kMetresPerInch / 1.959964, 1e-9);
    EXPECT_EQ(own().text().toStdString(), "1/4");
    EXPECT_EQ(cell(table().currentRow(), SureTable::plusMinus), "± 0.25 in");
    EXPECT_EQ(cell(table().currentRow(), SureTable::tool), "own ±");
    type(own(), "");
    EXPECT_FALSE(numberAt(state_.car, spread).has_value());
}

TEST_F(SurePageTest, WhatCannotBeIsRefusedInPlace) {
    type(own(), "-1");
    EXPECT_TRUE(edits_.empty());
    EXPECT_TRUE(own().hasProblem());
    QTest::keyClick(&own(), Qt::Key_Escape);
    EXPECT_FALSE(own().hasProblem());
}

TEST_F(SurePageTest, ToolsAreEnteredAtTheLeftAndEverythingFollows) {
    const double before = computeSpread(state_.car).atRide(Figure::antiSquat);
    NumberField* tape = nullptr;
    for (NumberField* field : page_.findChildren<NumberField*>()) {
        tape = field->accessibleName() == QLatin1String("tape, plus or minus") ? field : tape;
    }
    ASSERT_NE(tape, nullptr);
    EXPECT_EQ(tape->text(), QString());
    EXPECT_EQ(tape->placeholderText().toStdString(), "usual: 0.05");
    type(*tape, "1/4");
    ASSERT_TRUE(state_.car.tools.tape.has_value());
    EXPECT_NEAR(*state_.car.tools.tape, 0.25 * kMetresPerInch / 1.959964, 1e-9);
    EXPECT_GT(computeSpread(state_.car).atRide(Figure::antiSquat), 1.5 * before);
    table().selectNumber(kWheelbase);
    EXPECT_EQ(cell(table().currentRow(), SureTable::plusMinus), "± 0.25 in");
    EXPECT_EQ(own().placeholderText().toStdString(), "0.25");
}

TEST_F(SurePageTest, EnterGoesToTheNumber) {
    table().setFocus();
    QTest::keyClick(&table(), Qt::Key_Down);
    QTest::keyClick(&table(), Qt::Key_Return);
    EXPECT_THAT(wanted_, testing::ElementsAre(page_.reading().rows[1].id));
}

TEST_F(SurePageTest, IsEnteredAtANumbersOwnPlusMinus) {
    FieldId id = kWheelbase;
    id.spread = true;
    EXPECT_TRUE(page_.hasField(id));
    page_.focusField(id);
    ASSERT_NE(table().selected(), nullptr);
    EXPECT_EQ(*table().selected(), kWheelbase);
    EXPECT_TRUE(own().hasFocus());
    // One that no figure here rests on has its ± all the same.
    FieldId rear{.field = Field::rearTrack, .spread = true};
    EXPECT_FALSE(page_.hasField(rear)) << "not measured";
    state_.car.rearTrack = 1.5;
    solve();
    ASSERT_TRUE(page_.hasField(rear));
    page_.focusField(rear);
    type(own(), "1/2");
    EXPECT_NEAR(*numberAt(state_.car, rear), 0.5 * kMetresPerInch / 1.959964, 1e-9);
    EXPECT_THAT(part<QLabel>("sureBarName").text().toStdString(), HasSubstr("track"));
}

TEST_F(SurePageTest, SpeaksMetric) {
    state_.style.units = Units::metric;
    page_.showState(state_);
    table().selectNumber(kWheelbase);
    EXPECT_EQ(cell(table().currentRow(), SureTable::value), "2794 mm");
    EXPECT_EQ(cell(table().currentRow(), SureTable::plusMinus), "± 1.3 mm");
}

TEST_F(SurePageTest, ComputesNothingWhileHidden) {
    page_.hide();
    const SureReading before = page_.reading();
    state_.car.wheelbase *= 1.1;
    solve();
    EXPECT_EQ(page_.reading().sentence, before.sentence);
    page_.show();
    EXPECT_NE(page_.reading().sentence, before.sentence);
}

TEST_F(SurePageTest, DarkAndNarrowNothingIsCutOff) {
    ThemeKeeper::instance().choose(Appearance::dark);
    page_.resize(1280, 720);
    QApplication::processEvents();
    EXPECT_FALSE(page_.grab().isNull());
    const auto& calipers = part<QPushButton>("sureCalipers");
    EXPECT_GE(calipers.width(), calipers.sizeHint().width());
    EXPECT_LE(
        part<QPushButton>("sureGo").mapTo(&page_, QPoint(0, 0)).x() + part<QPushButton>("sureGo").width(),
        page_.width());
    ThemeKeeper::instance().choose(Appearance::light);
}

}  // namespace
}  // namespace bolthole
