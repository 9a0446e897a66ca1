// The controller behind "what to try next" with its panel and map in a window of their own.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <QVBoxLayout>

#include "app/carfile/car_file.h"
#include "app/controllers/trial_controller.h"
#include "widgets/kit/theme.h"
#include "widgets/trials/power_map_view.h"
#include "widgets/trials/trial_card.h"
#include "widgets/trials/trials_panel.h"

namespace bolthole {
namespace {

constexpr int kPatience = 60'000;  // ms

class TrialControllerTest : public testing::Test {
  protected:
    TrialControllerTest() {
        ThemeKeeper::instance().choose(Appearance::light);
        auto* column = new QVBoxLayout(&window_);
        column->addWidget(panel_);
        column->addWidget(map_);
        map_->hide();
        const ReadResult read = readCarFile(std::string(BOLTHOLE_DEMO_DIR "/gully-roadster.bolt.json"));
        bench_.car = read.loaded ? read.loaded->car : Car{};
        bench_.traceIsCurrent = true;
        bench_.style.units = bench_.car.units;
        QObject::connect(&controller_, &TrialController::edited, &controller_,
                         [this](const Edit& edit) { edits_.push_back(edit); });
    }
    bool waitForAnswers() {
        return QTest::qWaitFor([this] { return controller_.trials() != nullptr; }, kPatience);
    }

    BenchState bench_;
    QWidget window_;
    TrialsPanel* panel_ = new TrialsPanel(&window_);
    PowerMapView* map_ = new PowerMapView(&window_);
    TrialController controller_{bench_, *panel_, *map_, nullptr};
    std::vector<Edit> edits_;
};

}  // namespace

TEST_F(TrialControllerTest, ComputesWhatIsSeenAndNothingElse) {
    controller_.carChanged(false);
    QTest::qWait(400);
    EXPECT_FALSE(controller_.isRunning());
    window_.show();
    ASSERT_TRUE(waitForAnswers());
    EXPECT_TRUE(controller_.trials()->complete);
    EXPECT_TRUE(panel_->card().isVisible());
    EXPECT_FALSE(controller_.powers());
    map_->show();
    ASSERT_TRUE(QTest::qWaitFor([this] { return controller_.powers() != nullptr; }, kPatience));
    EXPECT_FALSE(map_->bands().isEmpty());
    QTest::mouseClick(panel_->card().setButton(), Qt::LeftButton);
    EXPECT_EQ(edits_.size(), 1U);
}

TEST_F(TrialControllerTest, NeverInADragAndTheLatestCarWins) {
    window_.show();
    bench_.car.launch.front.droop = 0.06;
    controller_.carChanged(true);
    QTest::qWait(500);
    EXPECT_FALSE(controller_.isRunning());
    controller_.carChanged(false);
    ASSERT_TRUE(QTest::qWaitFor([this] { return controller_.isRunning(); }, kPatience));
    bench_.car.launch.front.droop = 0.07;
    controller_.carChanged(false);
    EXPECT_FALSE(controller_.isRunning());  // what was under way is dropped
    ASSERT_TRUE(waitForAnswers());
    const LaunchRun now = simulateLaunch(*launchInputsOf(bench_.car).inputs);
    EXPECT_EQ(controller_.trials()->present.figures.toppedOut, now.figures.toppedOut);
    // Other units, the same answers.
    const auto before = controller_.trials();
    bench_.car.units = bench_.style.units = Units::metric;
    controller_.carChanged(false);
    EXPECT_EQ(controller_.trials(), before);
}

TEST_F(TrialControllerTest, IsCancelledAndTriesAgain) {
    window_.show();
    controller_.carChanged(false);
    ASSERT_TRUE(QTest::qWaitFor([this] { return controller_.isRunning(); }, kPatience));
    QTest::mouseClick(panel_->cancelButton(), Qt::LeftButton);
    EXPECT_FALSE(controller_.isRunning());
    EXPECT_THAT(panel_->message().toStdString(), testing::HasSubstr("Stopped"));
    QTest::mouseClick(panel_->cancelButton(), Qt::LeftButton);
    EXPECT_TRUE(waitForAnswers());
}

TEST_F(TrialControllerTest, SaysWhatIsWrongOrMissing) {
    window_.show();
    bench_.traceIsCurrent = false;
    bench_.problem = "links[0]: too short";
    controller_.carChanged(false);
    EXPECT_EQ(panel_->message(), QStringLiteral("links[0]: too short"));
    bench_.traceIsCurrent = true;
    bench_.car.launch.pitchInertia.reset();
    controller_.carChanged(false);
    ASSERT_TRUE(waitForAnswers());
    EXPECT_THAT(panel_->message().toStdString(), testing::HasSubstr("moment of inertia in pitch"));
}

}  // namespace bolthole
