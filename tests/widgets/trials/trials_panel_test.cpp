// What to try next, on made-up answers.
#include "widgets/trials/trials_panel.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

#include "tests/support/launch_car.h"
#include "widgets/kit/theme.h"
#include "widgets/trials/power_map_view.h"
#include "widgets/trials/trial_card.h"
#include "widgets/trials/trial_list.h"
#include "widgets/words/trial_words.h"

namespace bolthole {
namespace {

using testing::HasSubstr;

LaunchTrial clickTrial(double to, double change, double chance, int group) {
    LaunchTrial trial;
    trial.change = {.edit = SetNumber{{.field = Field::frontReboundClick}, to},
                    .words = "Set rebound to " + std::to_string(to),
                    .kind = ChangeKind::click,
                    .from = 5,
                    .isFirmer = to > 5,
                    .minutes = 2};
    trial.end = LaunchEnd::done;
    trial.sixtyFoot = 2 + change;
    trial.sixtyFootChange = {change, 0.005};
    trial.leastRearLoad = {180 * kNewtonsPerPoundForce, 20 * kNewtonsPerPoundForce};
    trial.toppedOut = {0.09, 0.01};
    trial.chance = chance;
    trial.differs = std::abs(change) > 0.01;
    trial.group = group;
    trial.reasons = {{ReasonPart::Kind::noseStops, 0.20, 0.29, 18},
                     {ReasonPart::Kind::leastRearLoad, 6000, 6000 + 180 * kNewtonsPerPoundForce, 8}};
    return trial;
}

std::shared_ptr<LaunchTrials> madeTrials() {
    auto trials = std::make_shared<LaunchTrials>();
    trials->complete = true;
    trials->present.figures.sixtyFoot = 2;
    trials->trials = {clickTrial(7, -0.012, 0.88, 0), clickTrial(6, -0.006, 0.75, 0),
                      clickTrial(4, 0.021, 0.04, 1)};
    return trials;
}

class TrialsPanelTest : public testing::Test {
  protected:
    TrialsPanelTest() : car_(std::make_shared<const Car>(launchCar(Layout::triangulated, 3))) {
        ThemeKeeper::instance().choose(Appearance::light);
        QObject::connect(&panel_, &TrialsPanel::edited, &panel_,
                         [this](const Edit& edit) { edits_.push_back(edit); });
        panel_.resize(420, 900);
        panel_.show();
    }
    double settingOf(std::size_t edit) const { return edits_.at(edit).as<SetNumber>()->value; }

    std::shared_ptr<const Car> car_;
    TrialsPanel panel_;
    std::vector<Edit> edits_;
};

}  // namespace

TEST_F(TrialsPanelTest, TheCardSaysWhatWhyAndTheUncertainty) {
    panel_.showTrials(madeTrials(), car_, Units::inch);
    const std::string said = panel_.card().said().toStdString();
    EXPECT_THAT(said, HasSubstr("Next thing to try"));
    EXPECT_THAT(said, HasSubstr("Front rebound two clicks firmer, 5 → 7"));
    EXPECT_THAT(said, HasSubstr("The nose stops 0.09 s later, and the rear tires keep 180 lb more."));
    EXPECT_THAT(said, HasSubstr("Expect 60 ft −0.012 ± 0.010 s; at the least 180 ± 39 lb more"));
    EXPECT_THAT(said, HasSubstr("helps in 88 of 100"));
    EXPECT_THAT(said, HasSubstr("no bolts, about 2 minutes"));
    EXPECT_THAT(said, HasSubstr("nose stopping before 0.24 s"));
    EXPECT_THAT(said, HasSubstr("The way back: front rebound to click 5."));
}

TEST_F(TrialsPanelTest, SetItIsOneEditAndShowItsLaunchTheChangedCar) {
    panel_.showTrials(madeTrials(), car_, Units::inch);
    const QSignalSpy launches(&panel_, &TrialsPanel::launchRequested);
    QTest::mouseClick(panel_.card().setButton(), Qt::LeftButton);
    ASSERT_EQ(edits_.size(), 1U);
    EXPECT_EQ(settingOf(0), 7);
    QTest::mouseClick(panel_.card().launchButton(), Qt::LeftButton);
    ASSERT_EQ(launches.count(), 1);
    const auto changed = launches[0][0].value<std::shared_ptr<const Car>>();
    EXPECT_EQ(changed->launch.front.damping->rebound.at, 7);
    EXPECT_EQ(car_->launch.front.damping->rebound.at, 5);
    EXPECT_EQ(edits_.size(), 1U);
}

TEST_F(TrialsPanelTest, ARowIsChosenSortedAndTakenByKeyboard) {
    panel_.showTrials(madeTrials(), car_, Units::inch);
    TrialList& list = panel_.list();
    ASSERT_EQ(list.rowCount(), 3);
    EXPECT_EQ(list.item(1, TrialList::kRank)->text(), QStringLiteral("2 ≈ 1"));
    EXPECT_EQ(list.item(2, TrialList::kRank)->text(), QStringLiteral("3"));
    EXPECT_THAT(list.item(1, TrialList::kChange)->data(Qt::AccessibleTextRole).toString().toStdString(),
                HasSubstr("can't be told apart from leaving the car as it is"));
    list.setFocus();
    list.selectRow(0);
    QTest::keyClick(&list, Qt::Key_Down);
    QTest::keyClick(&list, Qt::Key_Down);
    EXPECT_THAT(panel_.card().said().toStdString(), HasSubstr("one click softer, 5 → 4"));
    EXPECT_THAT(panel_.card().said().toStdString(), HasSubstr("Another single change"));
    list.sortBy(TrialList::kGain);
    EXPECT_EQ(list.item(0, TrialList::kRank)->text(), QStringLiteral("1"));
    list.sortBy(TrialList::kGain);
    EXPECT_EQ(list.item(0, TrialList::kRank)->text(), QStringLiteral("3"));
    EXPECT_EQ(list.chosen(), 2);
    QTest::keyClick(&list, Qt::Key_Return);
    ASSERT_EQ(edits_.size(), 1U);
    EXPECT_EQ(settingOf(0), 4);
}

// As wide as beside the launch in a window of 1280 px.
TEST_F(TrialsPanelTest, AClickToTurnIsSaidInOneLine) {
    panel_.resize(344, 900);
    panel_.showTrials(madeTrials(), car_, Units::inch);
    QCoreApplication::processEvents();
    TrialList& list = panel_.list();
    const QFontMetrics metrics(list.font());
    for (int row = 0; row < list.rowCount(); ++row) {
        EXPECT_LT(list.rowHeight(row), 2 * metrics.height())
            << list.item(row, TrialList::kChange)->text().toStdString();
        for (int column = 0; column < list.columnCount(); ++column) {
            EXPECT_GE(list.columnWidth(column),
                      metrics.horizontalAdvance(list.item(row, column)->text()) + 4);
        }
    }
}

TEST_F(TrialsPanelTest, SaysWhatIsMissingAndHowFarItIs) {
    auto trials = std::make_shared<LaunchTrials>();
    trials->missing = {{"launch.wheel_inertia", "expected the moment of inertia of both rear wheels"}};
    panel_.showTrials(trials, car_, Units::inch);
    EXPECT_THAT(panel_.message().toStdString(), HasSubstr("the moment of inertia of both rear wheels"));
    EXPECT_FALSE(panel_.card().isVisible());
    const QSignalSpy cancelled(&panel_, &TrialsPanel::cancelled);
    const QSignalSpy wanted(&panel_, &TrialsPanel::requested);
    panel_.showProgress(0.4);
    EXPECT_TRUE(panel_.cancelButton()->isVisible());
    QTest::mouseClick(panel_.cancelButton(), Qt::LeftButton);
    EXPECT_EQ(cancelled.count(), 1);
    panel_.showStopped();
    QTest::mouseClick(panel_.cancelButton(), Qt::LeftButton);
    EXPECT_EQ(cancelled.count(), 1);
    EXPECT_EQ(wanted.count(), 1);
    panel_.showTrials(madeTrials(), car_, Units::metric);
    EXPECT_TRUE(panel_.card().isVisible());
    EXPECT_FALSE(panel_.cancelButton()->isVisible());
}

TEST_F(TrialsPanelTest, OnPaperThreeSentences) {
    const QStringList lines = nextToTry(*madeTrials(), *car_, Units::inch);
    ASSERT_EQ(lines.size(), 3);
    EXPECT_THAT(lines[0].toStdString(),
                HasSubstr("Front rebound two clicks firmer, 5 → 7: helps in 88 of 100"));
    EXPECT_TRUE(nextToTry(LaunchTrials{}, *car_, Units::inch).isEmpty());
}

namespace {

std::shared_ptr<PowerMap> madeMap(const Car& car) {
    auto map = std::make_shared<PowerMap>();
    map->complete = true;
    map->shares = {0.6, 1, 1.4};
    map->peakTorque = 600;
    HoleUse other = holesInUse(car);
    other.set(0, End::axle, (other.of(0, End::axle) + 1) % static_cast<int>(car.links[0].axle.holes.size()));
    map->combinations = {{holesInUse(car), 0}, {other, 2}};
    for (const double time : {2.1, 2.0, 1.95, 2.2, 2.0, 1.9}) {
        map->cells.push_back({.end = LaunchEnd::done, .sixtyFoot = time, .leastRearLoad = 6000});
    }
    map->cells[0].isBest = map->cells[0].isLike = true;
    map->cells[1].isBest = map->cells[1].isLike = map->cells[4].isLike = true;
    map->cells[5].isBest = map->cells[5].isLike = true;
    map->bands = {{0, 1, 0}, {2, 2, 1}};
    return map;
}

// Two holes at the first link's axle end.
Car twoHoles() {
    Car car = launchCar(Layout::triangulated, 3);
    Bracket& bracket = car.links[0].axle;
    const Hole hole = bracket.inUse();
    bracket.holes = {hole, hole};
    bracket.holes[0].name = "top";
    bracket.holes[1].name = "low";
    bracket.holes[1].id = 900;
    bracket.use = 0;
    return car;
}

}  // namespace

TEST(PowerMapViewTest, MarksTheBestAndWhatIsLikeItInWords) {
    PowerMapView view;
    const auto car = std::make_shared<const Car>(twoHoles());
    view.show();
    view.showMap(madeMap(*car), car, Units::metric);
    EXPECT_THAT(view.bands().toStdString(), HasSubstr("p to 720 N·m: top; above: low"));
    ReadTable& table = view.table();
    ASSERT_EQ(table.rowCount(), 2);
    EXPECT_EQ(table.item(0, 0)->text(), QStringLiteral("top (now)"));
    EXPECT_EQ(table.item(0, 2)->text(), QStringLiteral("● 2.000"));
    EXPECT_EQ(table.item(1, 2)->text(), QStringLiteral("≈ 2.000"));
    EXPECT_EQ(table.item(1, 1)->text(), QStringLiteral("2.200"));
    EXPECT_THAT(table.item(1, 2)->data(Qt::AccessibleTextRole).toString().toStdString(),
                HasSubstr("Low with 600 N·m: 60 ft 2.000 s, can't be told apart from the quickest"));
    std::vector<Edit> edits;
    QObject::connect(&view, &PowerMapView::boltRequested, &view,
                     [&](const Edit& edit) { edits.push_back(edit); });
    table.setCurrentCell(0, 1);
    QTest::keyClick(&table, Qt::Key_Return);
    EXPECT_TRUE(edits.empty());  // bolted so already
    table.setCurrentCell(1, 1);
    QTest::keyClick(&table, Qt::Key_Return);
    ASSERT_EQ(edits.size(), 1U);
    EXPECT_EQ(edits[0].as<ChooseHoles>()->use, madeMap(*car)->combinations[1].use);
}

// A column that is cut in the middle of its numbers can be misread.
TEST(PowerMapViewTest, ShowsWholeColumnsOnly) {
    const auto car = std::make_shared<const Car>(twoHoles());
    auto map = madeMap(*car);
    map->shares = {0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.3, 1.4};
    map->cells.assign(18, {.end = LaunchEnd::done, .sixtyFoot = 2.1, .leastRearLoad = 6000});
    PowerMapView view;
    view.resize(354, 400);  // what the window of 1280 pixels leaves it
    view.show();
    view.showMap(map, car, Units::inch);
    for (const int wide : {354, 330, 420, 700}) {
        view.resize(wide, 400);
        QCoreApplication::processEvents();
        ReadTable& table = view.table();
        const int room = table.viewport()->width();
        int whole = 0;
        for (int column = 0; column < table.columnCount(); ++column) {
            const int left = table.columnViewportPosition(column);
            const int right = left + table.columnWidth(column);
            EXPECT_TRUE(right <= room || left >= room) << wide << ", column " << column << " is cut";
            EXPECT_GE(table.columnWidth(column), column == 0 ? 40 : 50) << wide;
            whole += right <= room ? 1 : 0;
        }
        EXPECT_GE(whole, 3) << wide;
    }
}

TEST(PowerMapViewTest, SaysWhatIsMissing) {
    PowerMapView view;
    view.show();
    auto map = std::make_shared<PowerMap>();
    map->missing = {{"launch.engine.torque", "expected rows of rpm and torque"}};
    view.showMap(map, std::make_shared<const Car>(), Units::inch);
    EXPECT_THAT(view.message().toStdString(), HasSubstr("rows of rpm and torque"));
    EXPECT_FALSE(view.table().isVisible());
}

}  // namespace bolthole
