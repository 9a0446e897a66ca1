// The page "Accuracy" with what a window would do around it: read, typed into, worked by keys.
#include "widgets/pages/accuracy/accuracy_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QComboBox>
#include <QPushButton>
#include <QTest>
#include <algorithm>
#include <cmath>
#include <numeric>

#include "geometry/car/starting_numbers.h"
#include "geometry/units/uncertainty_text.h"
#include "tests/support/sheet_bench.h"
#include "widgets/fields/uncertainty_bar.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/accuracy/accuracy_table.h"

namespace bolthole {
namespace {

using testing::EndsWith;
using testing::HasSubstr;
using testing::StartsWith;

constexpr FieldId kWheelbase{.field = Field::wheelbase};

class AccuracyPageTest : public testing::Test {
  protected:
    static void SetUpTestSuite() { ThemeKeeper::instance().choose(Appearance::light); }

    AccuracyPageTest() {
        QObject::connect(&page_, &WorkPage::edited, &page_, [this](const Edit& edit) {
            edits_.push_back(edit);
            const EditResult result = bolthole::apply(state_.car, edit);
            EXPECT_EQ(result.refusal, "");
            state_.car = result.car;
            solve();
        });
        QObject::connect(&page_, &WorkPage::fieldRequested, &page_,
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
    AccuracyTable& table() { return part<AccuracyTable>("accuracyTable"); }
    NumberField& own() {
        QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        return part<NumberField>("uncertaintyOwn");
    }
    std::string sentence() { return part<QLabel>("accuracySentence").text().toStdString(); }
    std::string cell(int row, AccuracyTable::Column column) {
        return table().item(row, column)->text().toStdString();
    }
    [[nodiscard]] double rowUncertainty(std::size_t row) const {
        return uncertaintyOf(state_.car, page_.reading().rows[row].id).uncertainty;
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
    AccuracyPage page_;
    std::vector<Edit> edits_;
    std::vector<FieldId> wanted_;
};

// The same figures as the bench's, by another road: figure and ± of its trace.
TEST_F(AccuracyPageTest, SaysTheFigureItsUncertaintyAndWhatToMeasureAgain) {
    const TraceUncertainty uncertainty = computeUncertainty(state_.car);
    const long figure = std::lround(state_.trace.ride[Figure::antiSquat]);
    const long half = std::lround(kCoverage95 * uncertainty.atRide(Figure::antiSquat));
    EXPECT_THAT(sentence(), StartsWith("Anti-squat at ride height is " + std::to_string(figure) + " % ± " +
                                       std::to_string(half) + "."));
    const AccuracyRow& first = page_.reading().rows[0];
    EXPECT_THAT(sentence(), HasSubstr(numberWords(state_.car, first.id)));
    EXPECT_THAT(sentence(),
                EndsWith("It makes " + std::to_string(std::lround(100 * first.share)) + " % of that."));
}

TEST_F(AccuracyPageTest, EveryNumberHasARowAndTheSharesMakeTheWhole) {
    const std::vector<AccuracyRow>& rows = page_.reading().rows;
    EXPECT_EQ(rows.size(), uncertainInputs(state_.car).size());
    EXPECT_EQ(table().rowCount(), static_cast<int>(rows.size()));
    const double sum = std::accumulate(rows.begin(), rows.end(), 0.0,
                                       [](double so, const AccuracyRow& row) { return so + row.share; });
    EXPECT_NEAR(sum, 1, 1e-9);
    EXPECT_EQ(cell(0, AccuracyTable::share), std::to_string(std::lround(100 * rows[0].share)) + " %");
}

TEST_F(AccuracyPageTest, FigureAndPlaceAreChosen) {
    choose("accuracyFigure", 3);
    choose("accuracyPosition", 2);
    EXPECT_THAT(sentence(), StartsWith("Swing arm's angle at full droop is "));
    const double angle = state_.trace.stations.front()[Figure::swingArmAngle];
    EXPECT_THAT(sentence(), HasSubstr(figureText(angle, Quantity::angle, Units::inch)));
    choose("accuracyFigure", 1);
    choose("accuracyPosition", 0);
    EXPECT_THAT(sentence(), HasSubstr(" in, "));  // the two ends, as they lie unevenly
    EXPECT_THAT(sentence(), HasSubstr(" to "));
}

TEST_F(AccuracyPageTest, AFigureTheCarDoesNotHaveIsSaidSo) {
    choose("accuracyFigure", 6);
    EXPECT_EQ(sentence(), "Front joint's angle needs a driveline, and none is entered.");
    EXPECT_FALSE(table().isVisible());
    choose("accuracyFigure", 0);
    EXPECT_TRUE(table().isVisible());
}

TEST_F(AccuracyPageTest, ACarThatCannotBeComputedIsSaidSo) {
    Car car = test::inventedCar();
    car.links[0].length = 2.0;
    open(car);
    EXPECT_THAT(sentence(), HasSubstr("can't be computed"));
    EXPECT_FALSE(table().isVisible());
    EXPECT_FALSE(part<UncertaintyBar>("uncertaintyBar").isVisible());
}

TEST_F(AccuracyPageTest, TakenWithCalipersByKeyAndBackToItsTool) {
    choose("accuracyFigure", 1);
    table().setFocus();
    ASSERT_EQ(cell(0, AccuracyTable::tool), "tape");
    const FieldId id = page_.reading().rows[0].id;
    const QString promised = page_.reading().rows[0].withCalipers;
    QTest::keyClick(&table(), Qt::Key_C);
    ASSERT_EQ(edits_.size(), 1U);
    EXPECT_NEAR(uncertaintyOf(state_.car, id).uncertainty, kCaliperUncertainty, 1e-15);
    EXPECT_THAT(sentence(), HasSubstr(promised.toStdString()));
    ASSERT_NE(table().selected(), nullptr);
    EXPECT_EQ(*table().selected(), id) << "the number stays selected where it moved to";
    EXPECT_EQ(cell(table().currentRow(), AccuracyTable::tool), "calipers");
    QTest::keyClick(&table(), Qt::Key_Delete);
    EXPECT_EQ(state_.car, test::inventedCar());
    QTest::keyClick(&table(), Qt::Key_Delete);
    EXPECT_EQ(edits_.size(), 2U) << "nothing left to take away";
}

TEST_F(AccuracyPageTest, ALengthThatWasWorkedOutWasTakenWithNoTool) {
    Car car = test::inventedCar();
    const FieldId length{.field = Field::linkLength, .link = 0};
    car.links[0].length = holeDistance(car.links[0]);
    setOrigin(car, length, Origin::workedOut);
    open(car);
    const auto& rows = page_.reading().rows;
    const auto row = std::ranges::find(rows, length, &AccuracyRow::id);
    ASSERT_NE(row, rows.end());
    EXPECT_EQ(row->tool, QStringLiteral("worked out"));
    EXPECT_THAT(numberUncertaintyWords(car, length, Units::inch).toStdString(), HasSubstr("(worked out)"));
}

TEST_F(AccuracyPageTest, WhatWasWorkedOutIsToBeMeasuredNotMeasuredAgain) {
    Car car = test::inventedCar();
    open(car);
    EXPECT_THAT(sentence(), HasSubstr("Measure this again"));
    for (const FieldId& id : measurableNumbers(car)) {
        setOrigin(car, id, Origin::workedOut);
    }
    open(car);
    EXPECT_THAT(sentence(), HasSubstr("Measure this, it was worked out"));
}

TEST_F(AccuracyPageTest, ButtonsDoTheSame) {
    choose("accuracyFigure", 1);
    const FieldId id = page_.reading().rows[0].id;
    part<QPushButton>("uncertaintyCalipers").click();
    EXPECT_TRUE(uncertaintyOf(state_.car, id).own);
    EXPECT_FALSE(part<QPushButton>("uncertaintyCalipers").isEnabled());
    part<QPushButton>("uncertaintyTool").click();
    EXPECT_FALSE(uncertaintyOf(state_.car, id).own);
    part<QPushButton>("uncertaintyGo").click();
    EXPECT_THAT(wanted_, testing::ElementsAre(id));
}

// ± is the 95 % half-width on screen, the standard uncertainty in the car.
TEST_F(AccuracyPageTest, ItsOwnPlusMinusIsTypedInPlace) {
    table().selectNumber(kWheelbase);
    type(own(), "1/4");
    FieldId uncertainty = kWheelbase;
    uncertainty.uncertainty = true;
    ASSERT_TRUE(numberAt(state_.car, uncertainty).has_value());
    EXPECT_NEAR(*numberAt(state_.car, uncertainty), 0.25 * kMetresPerInch / 1.959964, 1e-9);
    EXPECT_EQ(own().text().toStdString(), "1/4");
    EXPECT_EQ(cell(table().currentRow(), AccuracyTable::plusMinus), "± 0.25 in");
    EXPECT_EQ(cell(table().currentRow(), AccuracyTable::tool), "own ±");
    type(own(), "");
    EXPECT_FALSE(numberAt(state_.car, uncertainty).has_value());
}

TEST_F(AccuracyPageTest, WhatCannotBeIsRefusedInPlace) {
    type(own(), "-1");
    EXPECT_TRUE(edits_.empty());
    EXPECT_TRUE(own().hasProblem());
    QTest::keyClick(&own(), Qt::Key_Escape);
    EXPECT_FALSE(own().hasProblem());
}

TEST_F(AccuracyPageTest, ToolsAreEnteredAtTheLeftAndEverythingFollows) {
    const double before = computeUncertainty(state_.car).atRide(Figure::antiSquat);
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
    EXPECT_GT(computeUncertainty(state_.car).atRide(Figure::antiSquat), 1.5 * before);
    table().selectNumber(kWheelbase);
    EXPECT_EQ(cell(table().currentRow(), AccuracyTable::plusMinus), "± 0.25 in");
    EXPECT_EQ(own().placeholderText().toStdString(), "0.25");
}

TEST_F(AccuracyPageTest, EnterGoesToTheNumber) {
    table().setFocus();
    QTest::keyClick(&table(), Qt::Key_Down);
    QTest::keyClick(&table(), Qt::Key_Return);
    EXPECT_THAT(wanted_, testing::ElementsAre(page_.reading().rows[1].id));
}

TEST_F(AccuracyPageTest, IsEnteredAtANumbersOwnPlusMinus) {
    FieldId id = kWheelbase;
    id.uncertainty = true;
    EXPECT_TRUE(page_.hasField(id));
    page_.focusField(id);
    ASSERT_NE(table().selected(), nullptr);
    EXPECT_EQ(*table().selected(), kWheelbase);
    EXPECT_TRUE(own().hasFocus());
    // One that no figure here rests on has its ± all the same.
    FieldId rear{.field = Field::rearTrack, .uncertainty = true};
    EXPECT_FALSE(page_.hasField(rear)) << "not measured";
    state_.car.rearTrack = 1.5;
    solve();
    ASSERT_TRUE(page_.hasField(rear));
    page_.focusField(rear);
    type(own(), "1/2");
    EXPECT_NEAR(*numberAt(state_.car, rear), 0.5 * kMetresPerInch / 1.959964, 1e-9);
    EXPECT_THAT(part<QLabel>("uncertaintyBarName").text().toStdString(), HasSubstr("track"));
}

TEST_F(AccuracyPageTest, SpeaksMetric) {
    state_.style.units = Units::metric;
    page_.showState(state_);
    table().selectNumber(kWheelbase);
    EXPECT_EQ(cell(table().currentRow(), AccuracyTable::value), "2794 mm");
    EXPECT_EQ(cell(table().currentRow(), AccuracyTable::plusMinus), "± 1.3 mm");
}

TEST_F(AccuracyPageTest, ComputesNothingWhileHidden) {
    page_.hide();
    const AccuracyReading before = page_.reading();
    state_.car.wheelbase *= 1.1;
    solve();
    EXPECT_EQ(page_.reading().sentence, before.sentence);
    page_.show();
    EXPECT_NE(page_.reading().sentence, before.sentence);
}

TEST_F(AccuracyPageTest, DarkAndNarrowNothingIsCutOff) {
    ThemeKeeper::instance().choose(Appearance::dark);
    page_.resize(1280, 720);
    QApplication::processEvents();
    EXPECT_FALSE(page_.grab().isNull());
    const auto& calipers = part<QPushButton>("uncertaintyCalipers");
    EXPECT_GE(calipers.width(), calipers.sizeHint().width());
    EXPECT_LE(part<QPushButton>("uncertaintyGo").mapTo(&page_, QPoint(0, 0)).x() +
                  part<QPushButton>("uncertaintyGo").width(),
              page_.width());
    ThemeKeeper::instance().choose(Appearance::light);
}

}  // namespace
}  // namespace bolthole
