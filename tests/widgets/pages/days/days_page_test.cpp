// The page of the test days without its window: what it shows of a season, and what it asks for.
#include "widgets/pages/days/days_page.h"

#include <gmock/gmock.h>

#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QLabel>
#include <QSignalSpy>
#include <QTest>
#include <QTimer>
#include <QToolTip>
#include <ctime>

#include "geometry/compare/setup_changes.h"
#include "tests/support/season_car.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/days/compare_card.h"
#include "widgets/pages/days/pass_dialog.h"
#include "widgets/pages/days/pass_entry.h"
#include "widgets/pages/days/pass_plot.h"
#include "widgets/pages/days/pass_table.h"
#include "widgets/pages/days/seen_card.h"

namespace bolthole {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

const std::vector<double> kSlow{2.335, 2.340, 2.330};
const std::vector<double> kQuick{2.302, 2.308, 2.298, 2.304};

/// The page over a state of its own, whose edits are applied as the window would.
class DaysPage : public testing::Test {
  protected:
    DaysPage() {
        ThemeKeeper::instance().choose(Appearance::light);
        QObject::connect(&page_, &TestDaysPage::edited, [this](const Edit& edit) {
            edits_.push_back(edit);
            const EditResult result = bolthole::apply(state_.car, edit);
            refusal_ = result.refusal;
            show(result.car);
        });
        page_.setClock([this] { return now_; });
        page_.resize(1280, 680);
    }
    void show(const Car& car) {
        state_.car = car;
        state_.style = {car.units};
        page_.showState(state_);
    }
    void open(const Car& car) {
        show(car);
        page_.show();
        page_.activateWindow();
        QApplication::setActiveWindow(&page_);
    }
    [[nodiscard]] std::string cell(int row, PassColumn column) {
        const PassTableModel& model = page_.table().passes();
        return model.index(row, static_cast<int>(column)).data().toString().toStdString();
    }
    void type(PassField field, const QString& text) {
        PassNumberField* at = page_.entry().field(field);
        at->setFocus();
        at->selectAll();
        QTest::keyClicks(at, text);
    }
    [[nodiscard]] std::string verdict() {
        return page_.findChild<QLabel*>(QStringLiteral("compareVerdict"))->text().toStdString();
    }

    QDateTime now_{QDate(2026, 11, 20), QTime(15, 4)};
    BenchState state_;
    TestDaysPage page_;
    std::vector<Edit> edits_;
    std::string refusal_;
};

TEST_F(DaysPage, ShowsADayAsAHeadingOverItsPasses) {
    Car car = seasonCar(kSlow, kQuick);
    car.passes[3].seen[static_cast<std::size_t>(Seen::spunAtHit)] = true;
    car.units = Units::inch;
    open(car);
    const PassTableModel& model = page_.table().passes();
    EXPECT_EQ(model.rowCount(), 8);
    const std::string heading = model.headingAt(0).toStdString();
    EXPECT_THAT(heading, HasSubstr("Nov 20, 2026"));
    EXPECT_THAT(heading, HasSubstr("street, north lane 51.8 °F"));
    EXPECT_THAT(heading, HasSubstr("air 44.6 °F, 1002 hPa, 71 %"));
    EXPECT_THAT(heading, HasSubstr("density altitude −"));
    EXPECT_EQ(cell(1, PassColumn::number), "1");
    EXPECT_EQ(cell(1, PassColumn::time), "12:10");
    EXPECT_EQ(cell(1, PassColumn::setup), "A");
    EXPECT_EQ(cell(1, PassColumn::changes), "first setup");
    EXPECT_EQ(cell(1, PassColumn::rearPressure), "17");
    EXPECT_EQ(cell(1, PassColumn::launchRpm), "2500");
    EXPECT_EQ(cell(1, PassColumn::sixtyFoot), "2.335");
    EXPECT_EQ(cell(2, PassColumn::changes), "·");
    EXPECT_EQ(cell(4, PassColumn::setup), "B");
    EXPECT_EQ(cell(4, PassColumn::changes), "lower axle hole 'top'");
    EXPECT_EQ(cell(4, PassColumn::seen), "spun at the hit");
}

TEST_F(DaysPage, ANewPassCopiesTheLastAndTakesFourNumbersAndEnter) {
    open(seasonCar(kSlow, kQuick));
    page_.enter();
    EXPECT_EQ(QApplication::focusWidget(), page_.entry().field(PassField::sixtyFoot)) << "what repeats stays";
    page_.entry().field(PassField::leftRearPressure)->setFocus(Qt::TabFocusReason);
    for (const PassField field :
         {PassField::leftRearPressure, PassField::launchRpm, PassField::sixtyFoot, PassField::threeThirty}) {
        EXPECT_EQ(QApplication::focusWidget(), page_.entry().field(field));
        const char* number = field == PassField::leftRearPressure ? "18 1/2"
                             : field == PassField::launchRpm      ? "2600"
                             : field == PassField::sixtyFoot      ? "2.221"
                                                                  : "5.75";
        QTest::keyClicks(QApplication::focusWidget(), QString::fromLatin1(number));
        if (field != PassField::threeThirty) {
            QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
        }
    }
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    ASSERT_EQ(edits_.size(), 1U) << refusal_;
    ASSERT_EQ(state_.car.passes.size(), 8U);
    const Pass& pass = state_.car.passes.back();
    EXPECT_EQ(pass.number, 8);
    EXPECT_EQ(pass.date, "2026-11-20");
    EXPECT_EQ(pass.time, "15:04");
    EXPECT_EQ(pass.setup, 1) << "the bench stands as the second kept setup";
    EXPECT_EQ(pass.surface, state_.car.passes[6].surface);
    EXPECT_EQ(pass.air, state_.car.passes[6].air);
    EXPECT_EQ(pass.pressures.leftFront, 220);
    EXPECT_NEAR(*pass.pressures.leftRear, 18.5 * 6.894757293168361, 1e-3);
    EXPECT_EQ(pass.pressures.leftRear, pass.pressures.rightRear);
    EXPECT_EQ(pass.launchRpm, 2600);
    EXPECT_EQ(pass.sixtyFoot, 2.221);
    EXPECT_EQ(pass.times.threeThirty, 5.75);
    EXPECT_EQ(cell(8, PassColumn::setup), "C");
    EXPECT_THAT(cell(8, PassColumn::changes), HasSubstr("rear tire pressures +1.5 psi, launch +100 rpm"));
    EXPECT_EQ(page_.entry().pass().number, 9) << "ready for the next";
    EXPECT_EQ(QApplication::focusWidget(), page_.entry().field(PassField::sixtyFoot));
    EXPECT_TRUE(page_.entry().field(PassField::sixtyFoot)->text().isEmpty());
    EXPECT_EQ(page_.entry().field(PassField::leftRearPressure)->text(), QStringLiteral("18.5"));
    EXPECT_EQ(page_.entry().field(PassField::launchRpm)->text(), QStringLiteral("2600"));
}

// However the log was scrolled, and while the plot above takes its room.
TEST_F(DaysPage, APassThatIsEnteredIsInSight) {
    const auto isInSight = [this] {
        PassTable& table = page_.table();
        const int row = table.passes().rowOf(state_.car.passes.size() - 1).value_or(-1);
        return table.viewport()->rect().contains(table.visualRect(table.passes().index(row, 0)));
    };
    open(seasonCar({2.3, 2.31, 2.32, 2.33, 2.34, 2.35, 2.36, 2.37}, {2.2, 2.21, 2.22, 2.23, 2.24, 2.25}));
    page_.resize(1280, 560);
    QCoreApplication::processEvents();
    for (const char* time : {"2.301", "2.302", "2.303"}) {
        page_.table().scrollToTop();
        ASSERT_FALSE(isInSight());
        type(PassField::sixtyFoot, QString::fromLatin1(time));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
        QCoreApplication::processEvents();
        EXPECT_EQ(state_.car.passes.back().sixtyFoot, QString::fromLatin1(time).toDouble());
        EXPECT_TRUE(isInSight()) << time;
    }
}

TEST_F(DaysPage, TheFirstPassesStayInSightWhileThePlotTakesItsRoom) {
    open(plainCar());
    page_.resize(1280, 560);
    for (int pass = 0; pass < 12; ++pass) {
        now_ = now_.addSecs(900);
        type(PassField::sixtyFoot, QStringLiteral("2.3%1").arg(pass));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
        QCoreApplication::processEvents();
        PassTable& table = page_.table();
        const int row = table.passes().rowOf(state_.car.passes.size() - 1).value_or(-1);
        EXPECT_TRUE(table.viewport()->rect().contains(table.visualRect(table.passes().index(row, 0))))
            << pass;
    }
}

TEST_F(DaysPage, ANewDayForgetsTheAirAndCountsAnew) {
    const Car car = seasonCar(kSlow, {});
    const Pass next = nextPass(car.passes, QDateTime(QDate(2026, 12, 1), QTime(9, 30)));
    EXPECT_EQ(next.number, 1);
    EXPECT_EQ(next.date, "2026-12-01");
    EXPECT_EQ(next.time, "09:30");
    EXPECT_EQ(next.place, "airstrip");
    EXPECT_EQ(next.surface.name, "north lane");
    EXPECT_FALSE(next.surface.temperature);
    EXPECT_EQ(next.air, PassAir{});
    EXPECT_EQ(next.pressures, car.passes[0].pressures);
    EXPECT_FALSE(next.sixtyFoot);
}

TEST_F(DaysPage, NothingIsEnteredByEnterAloneOrWhatCantBeRead) {
    open(seasonCar(kSlow, kQuick));
    page_.enter();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_TRUE(edits_.empty()) << "a copy of the last is a pass nobody ran";
    type(PassField::sixtyFoot, QStringLiteral("2,3"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_TRUE(edits_.empty());
    EXPECT_EQ(page_.entry().field(PassField::sixtyFoot)->text(), QStringLiteral("2,3"));
    EXPECT_TRUE(page_.entry().field(PassField::sixtyFoot)->property("problem").toBool());
    type(PassField::sixtyFoot, QStringLiteral("-1"));
    EXPECT_THAT(page_.entry().field(PassField::sixtyFoot)->check().problem.toStdString(),
                HasSubstr("above 0 and up to 1000 s"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    EXPECT_TRUE(page_.entry().field(PassField::sixtyFoot)->text().isEmpty());
    EXPECT_TRUE(page_.table().hasFocus()) << "Esc leaves";
    EXPECT_EQ(page_.selected(), 6U);
    QTest::keyClick(&page_.table(), Qt::Key_N);
    EXPECT_TRUE(page_.entry().isAncestorOf(QApplication::focusWidget()));
}

TEST_F(DaysPage, WhatIsRefusedStaysTyped) {
    Car car = seasonCar(kSlow, kQuick);
    car.wheelbase = -1;  // the bench can't be kept
    open(car);
    type(PassField::sixtyFoot, QStringLiteral("2.3"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_THAT(refusal_, HasSubstr("can't be computed"));
    EXPECT_EQ(page_.entry().field(PassField::sixtyFoot)->text(), QStringLiteral("2.3"));
}

// However narrow the window: what is wrong is said at the field.
TEST_F(DaysPage, WhatIsNoTimeIsSaidAtItsField) {
    open(seasonCar(kSlow, kQuick));
    page_.resize(1000, 600);
    type(PassField::sixtyFoot, QStringLiteral("abc"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_TRUE(edits_.empty());
    EXPECT_EQ(QApplication::focusWidget(), page_.entry().field(PassField::sixtyFoot));
    EXPECT_THAT(QToolTip::text().toStdString(), HasSubstr("'abc' is not a number"));
}

TEST_F(DaysPage, ATypedTimeIsTakenWhenAllTypingIs) {
    open(seasonCar(kSlow, kQuick));
    type(PassField::threeThirty, QStringLiteral("5.9"));
    page_.commitPending();
    EXPECT_TRUE(edits_.empty()) << "a pass is entered by its 60 ft, or by Enter";
    type(PassField::sixtyFoot, QStringLiteral("2.3"));
    page_.commitPending();
    EXPECT_EQ(state_.car.passes.size(), 8U);
    page_.hide();
    type(PassField::sixtyFoot, QStringLiteral("2.31"));
    page_.commitPending();
    page_.commitPending();
    EXPECT_EQ(state_.car.passes.size(), 9U) << "once, seen or not";
    page_.show();
    type(PassField::sixtyFoot, QStringLiteral("2.4"));
    page_.discardTyping();
    page_.commitPending();
    EXPECT_EQ(state_.car.passes.size(), 9U);
}

TEST_F(DaysPage, KeysOfTheLogStrikeRemoveAndGoBack) {
    open(seasonCar(kSlow, kQuick));
    page_.select(0);
    page_.table().setFocus();
    QTest::keyClick(&page_.table(), Qt::Key_S);
    EXPECT_TRUE(state_.car.passes[0].struck);
    EXPECT_EQ(page_.selected(), 0U);
    QTest::keyClick(&page_.table(), Qt::Key_S);
    EXPECT_FALSE(state_.car.passes[0].struck);
    QTest::keyClick(&page_.table(), Qt::Key_B);
    EXPECT_TRUE(isSameSetup(state_.car, *state_.car.kept[0].car));
    EXPECT_EQ(state_.car.passes.size(), 7U);
    QTest::keyClick(&page_.table(), Qt::Key_Down);
    EXPECT_EQ(page_.selected(), 1U);
    QTest::keyClick(&page_.table(), Qt::Key_Delete);
    EXPECT_EQ(state_.car.passes.size(), 6U);
    EXPECT_EQ(state_.car.passes[1].sixtyFoot, 2.330);
    EXPECT_FALSE(page_.selected()) << "what was picked is gone";
    page_.select(4);
    QTest::keyClick(&page_.table(), Qt::Key_C, Qt::ControlModifier);
    EXPECT_THAT(QApplication::clipboard()->text().toStdString(), HasSubstr("\t2.298"));
    QTest::keyClick(&page_.table(), Qt::Key_Escape);
    EXPECT_FALSE(page_.selected());
}

TEST_F(DaysPage, APickedPassPointsAtItsSetup) {
    open(seasonCar(kSlow, kQuick));
    std::vector<std::optional<int>> pointed;
    QObject::connect(&page_, &TestDaysPage::setupPointed,
                     [&](const std::optional<int>& state) { pointed.push_back(state); });
    PassPlot& plot = page_.plot();
    const std::optional<QPointF> mark = plot.placeOf(1);
    ASSERT_TRUE(mark);
    QTest::mouseClick(&plot, Qt::LeftButton, Qt::NoModifier, mark->toPoint());
    EXPECT_EQ(page_.selected(), 1U);
    plot.setFocus();
    QTest::keyClick(&plot, Qt::Key_Right);
    QTest::keyClick(&plot, Qt::Key_Right);
    EXPECT_EQ(page_.selected(), 3U);
    QTest::keyClick(&plot, Qt::Key_Escape);
    EXPECT_THAT(pointed, ElementsAre(std::optional(0), std::optional(1), std::nullopt));
}

TEST_F(DaysPage, ThePlotPutsTheQuickBelowTheSlowAndNumbersAlong) {
    Car car = seasonCar(kSlow, kQuick);
    car.passes[2].air.temperature.reset();
    open(car);
    PassPlot& plot = page_.plot();
    EXPECT_GT(plot.placeOf(3)->y(), plot.placeOf(0)->y());
    EXPECT_LT(plot.placeOf(0)->x(), plot.placeOf(1)->x());
    auto* against = page_.findChild<QComboBox*>(QStringLiteral("plotAgainst"));
    against->setCurrentIndex(1 + static_cast<int>(PassMeasure::antiSquat));
    EXPECT_EQ(plot.placeOf(0)->x(), plot.placeOf(1)->x()) << "one setup, one anti-squat";
    EXPECT_NE(plot.placeOf(0)->x(), plot.placeOf(3)->x());
    EXPECT_EQ(plot.missing(), 0);
    against->setCurrentIndex(1 + static_cast<int>(PassMeasure::airTemperature));
    EXPECT_EQ(plot.missing(), 1);
    EXPECT_FALSE(plot.placeOf(2));
}

TEST_F(DaysPage, OfALongLogThePlotDrawsTheLastOrThoseAroundThePicked) {
    open(longSeason(300));
    PassPlot& plot = page_.plot();
    EXPECT_EQ(plot.span(), (std::pair<std::size_t, std::size_t>{240, 299}));
    page_.select(100);
    EXPECT_EQ(plot.span(), (std::pair<std::size_t, std::size_t>{70, 129}));
    EXPECT_TRUE(plot.placeOf(100));
    EXPECT_FALSE(plot.placeOf(299));
}

TEST_F(DaysPage, TellsTheLastSetupFromTheOneBefore) {
    open(seasonCar(kSlow, kQuick));
    EXPECT_EQ(verdict(), "clearly quicker");
    // Means 2.303 and 2.335: by hand.
    EXPECT_THAT(page_.comparison().words().figure.toStdString(), HasSubstr("−0.032 s ± "));
    const std::string lines = page_.comparison().words().lines.join(QLatin1Char('\n')).toStdString();
    EXPECT_THAT(lines, HasSubstr("Lower axle hole 'top'"));
    EXPECT_THAT(lines, HasSubstr("4 passes against 3; one pass alone tells ± "));
    EXPECT_THAT(lines, HasSubstr("(from 5 repeats)"));
    EXPECT_THAT(lines, HasSubstr("Both on street, north lane, Nov 20, 2026"));
}

TEST_F(DaysPage, OnePassProvesNothing) {
    open(seasonCar(kSlow, {2.1}));
    EXPECT_EQ(verdict(), "One pass proves nothing");
    EXPECT_TRUE(page_.comparison().words().figure.isEmpty());
}

TEST_F(DaysPage, SaysHowManyMoreWouldTell) {
    open(seasonCar({2.335, 2.320, 2.350}, {2.330, 2.310, 2.345}));
    EXPECT_THAT(verdict(), testing::MatchesRegex("Can't tell these apart, [0-9]+ more passes each would"));
    EXPECT_FALSE(page_.comparison().words().isClear);
}

TEST_F(DaysPage, RefusesToCompareTwoSurfaces) {
    Car car = seasonCar(kSlow, kQuick);
    for (Pass& pass : car.passes) {
        if (pass.setup == 1) {
            pass.surface = {SurfaceKind::preppedTrack, "", std::nullopt};
        }
    }
    open(car);
    EXPECT_EQ(verdict(),
              "Not compared: A ran on street, north lane, B on prepped track. Only the model can "
              "compare them.");
    EXPECT_TRUE(page_.comparison().words().figure.isEmpty());
}

TEST_F(DaysPage, ReadsWhatWasSeenAsTheTradeDoes) {
    Pass pass = madePass(1, 0, 2.3);
    EXPECT_TRUE(readingsOf(pass).isEmpty());
    for (std::size_t at = 0; at < kSeenCount; ++at) {
        pass.seen[at] = true;
    }
    const QStringList readings = readingsOf(pass);
    EXPECT_EQ(readings.size(), static_cast<int>(kSeenCount));
    for (const QString& reading : readings) {
        EXPECT_THAT(reading.toStdString(), HasSubstr("(Common practice, no source.)"));
    }
    EXPECT_THAT(readings.join(QString()).toStdString(),
                HasSubstr("Paddle marks → pressure low for this grip"));
}

TEST_F(DaysPage, WithoutAPassItSaysHowToBegin) {
    open(plainCar());
    EXPECT_EQ(page_.table().passes().rowCount(), 0);
    EXPECT_FALSE(page_.plot().isVisible());
    EXPECT_TRUE(page_.entry().isVisible());
    page_.enter();
    EXPECT_EQ(QApplication::focusWidget(), page_.entry().field(PassField::leftRearPressure))
        << "there is nothing yet that repeats";
    type(PassField::sixtyFoot, QStringLiteral("2.35"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Enter);
    ASSERT_EQ(state_.car.passes.size(), 1U);
    EXPECT_EQ(state_.car.kept.size(), 1U);
    EXPECT_TRUE(page_.plot().isVisible());
    EXPECT_EQ(cell(1, PassColumn::setup), "A");
}

TEST_F(DaysPage, TheFormChangesAPassAndGivesBackWhatWasNotTouched) {
    Car car = seasonCar(kSlow, kQuick);
    car.passes[0].air.temperature = 7.123456789;
    open(car);
    QTimer::singleShot(0, [] {
        auto* form = qobject_cast<PassDialog*>(QApplication::activeModalWidget());
        ASSERT_NE(form, nullptr);
        PassNumberField* quarter = form->field(PassField::quarterSpeed);
        quarter->setText(QStringLiteral("9999"));
        form->accept();
        EXPECT_TRUE(form->isVisible()) << "can't be taken over while something in it is refused";
        quarter->setText(QStringLiteral("100 mph"));
        form->accept();
    });
    page_.table().setFocus();
    page_.select(0);
    QTest::keyClick(&page_.table(), Qt::Key_Return);
    ASSERT_EQ(edits_.size(), 1U);
    Pass expected = car.passes[0];
    expected.times.quarterSpeed = 160.9344;
    EXPECT_NEAR(*state_.car.passes[0].times.quarterSpeed, 160.9344, 1e-3);
    expected.times.quarterSpeed = state_.car.passes[0].times.quarterSpeed;
    EXPECT_EQ(state_.car.passes[0], expected);
}

TEST_F(DaysPage, UnitsAreThePersons) {
    Car car = seasonCar(kSlow, kQuick);
    car.units = Units::metric;
    open(car);
    EXPECT_EQ(cell(1, PassColumn::rearPressure), "117");
    EXPECT_THAT(page_.table().passes().headingAt(0).toStdString(), HasSubstr("air 7 °C"));
    type(PassField::leftRearPressure, QStringLiteral("120 kPa"));
    type(PassField::sixtyFoot, QStringLiteral("2.3"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_EQ(state_.car.passes.back().pressures.rightRear, 120);
}

/// Processor seconds of the quickest of some runs, which other work on the machine slows least.
double processorSecondsOf(const auto& work) {
    double best = 1e9;
    for (int run = 0; run < 5; ++run) {
        const std::clock_t start = std::clock();
        work();
        best = std::min(best, static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
    }
    return best;
}

/// Processor seconds of the page of a season: shown and painted, and a step of its table's scroll.
struct SeasonCost {
    double opening = 0;
    double step = 0;
};

// Ten times the passes take at most ten times as long to open, as nothing is looked for again for each, and
// scroll as fast, as only what is in sight is painted.
TEST_F(DaysPage, TwoThousandPassesOpenInStepWithTwoHundredAndScrollAlike) {
    const Car small = seasonCar(kSlow, kQuick);
    open(small);
    const auto costOf = [&](int passes) {
        const Car car = longSeason(passes);
        SeasonCost cost{.opening = 1e9};
        for (int run = 0; run < 3; ++run) {
            show(small);
            QApplication::processEvents();
            const std::clock_t start = std::clock();
            show(car);
            page_.grab();
            cost.opening = std::min(cost.opening, static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
        }
        cost.step = processorSecondsOf([&] {
                        for (int at = 1; at <= 20; ++at) {
                            const QModelIndex row = page_.table().passes().index(at * passes / 25, 0);
                            page_.table().scrollTo(row, QAbstractItemView::PositionAtTop);
                            page_.table().viewport()->grab();
                        }
                    }) /
                    20;
        return cost;
    };
    const SeasonCost few = costOf(200);
    const SeasonCost many = costOf(2000);
    EXPECT_EQ(page_.table().passes().rowCount(), 2000 + 80);
    std::printf("2,000 passes: open %.3f s (200: %.3f), a step of the scroll %.4f s (%.4f)\n", many.opening,
                few.opening, many.step, few.step);
    EXPECT_LT(many.opening, 10 * few.opening);
    EXPECT_LT(many.step, 2 * few.step);
}

}  // namespace
}  // namespace bolthole
