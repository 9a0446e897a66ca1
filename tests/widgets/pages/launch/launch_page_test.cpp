// The launch page, driven by keys and mouse: what it plays, what it says is missing, what it never guesses.
#include "widgets/pages/launch/launch_page.h"

#include <gmock/gmock.h>

#include <QApplication>
#include <QClipboard>
#include <QElapsedTimer>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <algorithm>
#include <memory>

#include "geometry/car/fields.h"
#include "tests/support/bench_points.h"
#include "tests/support/made_launch.h"
#include "tests/support/page_bench.h"
#include "tests/support/sheet_bench.h"
#include "widgets/pages/launch/click_stepper.h"
#include "widgets/pages/launch/dyno_dialog.h"
#include "widgets/pages/launch/figures_card.h"
#include "widgets/pages/launch/film_bar.h"
#include "widgets/pages/launch/launch_curves.h"
#include "widgets/pages/launch/launch_missing.h"
#include "widgets/pages/launch/launch_picture.h"
#include "widgets/pages/launch/torque_section.h"

namespace bolthole::test {
namespace {

using testing::HasSubstr;

// A car with all that a launch takes.
Car launchedCar() {
    Car car = inventedCar();
    car.launch = makeLaunchSetup();
    dressForLaunch(car);
    return car;
}

class LaunchPageBench : public PageBench<LaunchPage> {
  protected:
    LaunchPageBench() : PageBench(launchedCar(), {1280, 760}) {}

    void keepAsBaseline() {
        state_.baseline = Ghost{.car = state_.car, .trace = state_.trace, .cursor = {}, .name = {}};
        page_->showState(state_);
    }
    ClickStepper& frontRebound() { return *page_->findChildren<ClickStepper*>().at(1); }
    [[nodiscard]] LaunchFiguresCard::Shown shown(LaunchFigure figure) {
        return page_->figures().shown(figure);
    }
    bool comesTrue(const std::function<bool()>& what) { return QTest::qWaitFor(what, 20'000); }
};

TEST_F(LaunchPageBench, ShowsTheLaunchOfTheCar) {
    ASSERT_TRUE(page_->film());
    const LaunchRun run = simulateLaunch(*launchInputsOf(state_.car).inputs);
    ASSERT_EQ(run.end, LaunchEnd::done);
    EXPECT_EQ(shown(LaunchFigure::sixtyFoot).value, QString::number(*run.figures.sixtyFoot, 'f', 3) + " s");
    EXPECT_EQ(page_->curves().cards().size(), 7U);
    EXPECT_EQ(page_->curves().axis().high, page_->player().end());
    EXPECT_NEAR(page_->player().end(), std::min(*run.figures.fromRelease + 0.1, page_->film()->end()), 1e-9);
}

TEST_F(LaunchPageBench, PlusTurnsAClickAndTheFiguresFollow) {
    const double before = *page_->film()->reading[LaunchFigure::sixtyFoot];
    for (int press = 0; press < 3; ++press) {
        QTest::mouseClick(&frontRebound().more(), Qt::LeftButton);
    }
    EXPECT_EQ(state_.car.launch.front.damping->rebound.at, 8);
    EXPECT_EQ(edits_.size(), 3U) << "a press, an edit";
    EXPECT_NE(*page_->film()->reading[LaunchFigure::sixtyFoot], before);
    QTest::keyClick(&frontRebound().less(), Qt::Key_Space);
    EXPECT_EQ(state_.car.launch.front.damping->rebound.at, 7);
}

TEST_F(LaunchPageBench, AClickStopsAtTheEndsOfItsTable) {
    for (int press = 0; press < 8; ++press) {
        QTest::mouseClick(&frontRebound().more(), Qt::LeftButton);
    }
    EXPECT_EQ(state_.car.launch.front.damping->rebound.at, 10);
    EXPECT_FALSE(frontRebound().more().isEnabled());
    EXPECT_TRUE(frontRebound().less().isEnabled());
}

TEST_F(LaunchPageBench, TheBaselineStandsBesideItAndTheClickSaysWhatItWas) {
    keepAsBaseline();
    EXPECT_EQ(frontRebound().was(), "");
    QTest::mouseClick(&frontRebound().more(), Qt::LeftButton);
    EXPECT_EQ(frontRebound().was(), "was 5");
    ASSERT_TRUE(page_->baseline());
    EXPECT_EQ(page_->baseline()->car.launch.front.damping->rebound.at, 5);
    EXPECT_EQ(shown(LaunchFigure::sixtyFoot).baseline + " s",
              QString::number(*page_->baseline()->reading[LaunchFigure::sixtyFoot], 'f', 3) + " s");
    const std::vector<ChartSeries>& series = page_->curves().cards()[0].series;
    EXPECT_EQ(std::ranges::count_if(series, &ChartSeries::isGhost), 2);
}

TEST_F(LaunchPageBench, TheSameSetupTwiceCanNotBeToldApart) {
    keepAsBaseline();
    ASSERT_TRUE(comesTrue([this] { return !page_->isDrawing(); }));
    EXPECT_THAT(shown(LaunchFigure::sixtyFoot).plusMinus.toStdString(), HasSubstr("± 0."));
    EXPECT_EQ(shown(LaunchFigure::sixtyFoot).difference, "can’t tell");
}

TEST_F(LaunchPageBench, UncertaintyIsNotDrawnWhereItIsNotToBeSeen) {
    state_.showsUncertainty = false;
    page_->showState(state_);
    EXPECT_FALSE(page_->isDrawing());
    EXPECT_EQ(shown(LaunchFigure::sixtyFoot).plusMinus, "");
}

TEST_F(LaunchPageBench, SpacePlaysAndStops) {
    page_->picture().setFocus();
    QTest::keyClick(&page_->picture(), Qt::Key_Space);
    EXPECT_TRUE(page_->player().isPlaying());
    ASSERT_TRUE(comesTrue([this] { return page_->player().time() > 0.02; }));
    EXPECT_EQ(page_->picture().time(), page_->player().time());
    EXPECT_EQ(page_->curves().cursor(), page_->player().time());
    QTest::keyClick(&page_->picture(), Qt::Key_Space);
    EXPECT_FALSE(page_->player().isPlaying());
}

TEST_F(LaunchPageBench, ThePictureMoves) {
    const QImage still = page_->picture().grab().toImage();
    page_->player().seek(0.4);
    EXPECT_NE(page_->picture().grab().toImage(), still);
}

TEST_F(LaunchPageBench, GoingThroughTheTimeByHandMovesEveryCursor) {
    FilmTrack& track = page_->bar().track();
    QTest::mouseClick(&track, Qt::LeftButton, {},
                      QPoint(static_cast<int>(track.placeOf(0.8)), track.height() / 2));
    EXPECT_NEAR(page_->player().time(), 0.8, 0.01);
    EXPECT_EQ(page_->picture().time(), page_->player().time());
    EXPECT_EQ(page_->curves().cursor(), page_->player().time());
    page_->curves().setFocus();
    QTest::keyClick(&page_->curves(), Qt::Key_Home);
    EXPECT_EQ(page_->player().time(), 0);
    EXPECT_EQ(page_->picture().time(), 0);
    QTest::keyClick(&page_->picture(), Qt::Key_End);
    EXPECT_EQ(page_->player().time(), page_->player().end());
    QTest::keyClick(&track, Qt::Key_PageUp);
    EXPECT_NEAR(page_->player().time(), page_->player().end() - 0.1, 0.002);
}

TEST_F(LaunchPageBench, ThePlayedTimeFollowsTheClockOnTheWall) {
    page_->player().setSpeed(0.25);
    QElapsedTimer wall;
    wall.start();
    page_->player().play();
    ASSERT_TRUE(comesTrue([this] { return page_->player().time() > 0.1; }));
    const double elapsed = static_cast<double>(wall.elapsed()) / 1000;
    EXPECT_LE(page_->player().time(), 0.25 * elapsed + 0.01);
}

TEST_F(LaunchPageBench, NothingPlaysWhereItIsKeptStill) {
    page_->player().play();
    page_->keepStill(true);
    EXPECT_FALSE(page_->player().isPlaying());
    QTest::keyClick(&page_->picture(), Qt::Key_Space);
    EXPECT_FALSE(page_->player().isPlaying());
    EXPECT_FALSE(page_->bar().playButton().isEnabled());
    QTest::keyClick(&page_->picture(), Qt::Key_Right);
    EXPECT_NEAR(page_->player().time(), 0.01, 1e-9) << "by hand it still goes";
}

TEST_F(LaunchPageBench, AHiddenPageStops) {
    page_->player().play();
    page_->hide();
    EXPECT_FALSE(page_->player().isPlaying());
    EXPECT_FALSE(page_->isDrawing());
    page_->show();
    ASSERT_TRUE(comesTrue([this] { return !shown(LaunchFigure::sixtyFoot).plusMinus.isEmpty(); }))
        << "what was given up is taken up again";
}

TEST_F(LaunchPageBench, WhatHappensIsFlaggedWhenItDoes) {
    const std::vector<LaunchEvent>& events = page_->film()->run.events;
    const auto coupled = std::ranges::find(events, LaunchEventKind::sixtyFeet, &LaunchEvent::kind);
    ASSERT_NE(coupled, events.end());
    page_->player().seek(coupled->time + 0.005);
    EXPECT_EQ(page_->picture().flag(), "60 ft");
    page_->player().seek(coupled->time - 0.2);
    EXPECT_NE(page_->picture().flag(), "60 ft");
}

TEST_F(LaunchPageBench, WhatIsMissingLeadsToItsField) {
    Car car = state_.car;
    car.launch.wheelInertia.reset();
    car.launch.engine.launchSpeed.reset();
    show(car);
    EXPECT_FALSE(page_->film());
    auto* missing = page_->findChild<LaunchMissing*>();
    ASSERT_TRUE(missing->isVisible());
    QSignalSpy wanted(page_.get(), &WorkPage::fieldRequested);
    const QList<QPushButton*> buttons = missing->findChildren<QPushButton*>();
    ASSERT_EQ(buttons.size(), 2);
    QTest::mouseClick(buttons[0], Qt::LeftButton);
    ASSERT_EQ(wanted.count(), 1);
    EXPECT_TRUE(page_->hasField(wanted[0][0].value<FieldId>()));
    EXPECT_EQ(wanted[0][0].value<FieldId>().field, Field::wheelInertia);
    page_->focusField({.field = Field::wheelInertia});
    EXPECT_TRUE(QApplication::focusWidget()->isVisible()) << "its folded section is opened";
}

TEST_F(LaunchPageBench, AnEstimateIsTakenWithItsUncertaintyOnlyWhenAskedFor) {
    Car car = state_.car;
    car.launch.pitchInertia.reset();
    show(car);
    EXPECT_FALSE(page_->film()) << "an estimate is offered, not used";
    QPushButton* estimate = nullptr;
    for (QPushButton* button : page_->findChild<LaunchMissing*>()->findChildren<QPushButton*>()) {
        estimate = button->text().contains("± 20 %") ? button : estimate;
    }
    ASSERT_NE(estimate, nullptr);
    QTest::mouseClick(estimate, Qt::LeftButton);
    ASSERT_EQ(edits_.size(), 1U) << "one step";
    ASSERT_TRUE(state_.car.launch.pitchInertia);
    EXPECT_NEAR(*state_.car.uncertainties.of(Field::pitchInertia),
                0.2 * *state_.car.launch.pitchInertia / 1.96, 0.5);
    EXPECT_TRUE(page_->film());
}

TEST_F(LaunchPageBench, ARowOfTheTorqueCurveIsTypedAddedAndTakenAway) {
    const std::size_t rows = state_.car.launch.engine.torque.size();
    auto* section = page_->findChild<TorqueSection*>();
    section->showRows(true);
    const auto named = [section](const QString& name) -> QWidget* {
        for (QWidget* each : section->findChildren<QWidget*>()) {
            if (each->accessibleName() == name && !each->isHidden()) {
                return each;
            }
        }
        return nullptr;
    };
    auto* torque = qobject_cast<NumberField*>(named("torque curve, row 2, torque"));
    ASSERT_NE(torque, nullptr);
    torque->setFocus();
    torque->selectAll();
    QTest::keyClicks(torque, "500 Nm");
    QTest::keyClick(torque, Qt::Key_Return);
    EXPECT_NEAR(state_.car.launch.engine.torque[1].torque, 500, 1e-9);
    auto* speed = qobject_cast<NumberField*>(named("torque curve, row 2, rpm"));
    speed->setFocus();
    speed->selectAll();
    QTest::keyClicks(speed, "900");
    QTest::keyClick(speed, Qt::Key_Return);
    EXPECT_NEAR(state_.car.launch.engine.torque[1].speed, 2000 * kRpm, 1e-9) << "speeds rise";
    QTest::keyClick(speed, Qt::Key_Escape);
    QTest::mouseClick(named("Add a row to the torque curve"), Qt::LeftButton);
    EXPECT_EQ(state_.car.launch.engine.torque.size(), rows + 1);
    QTest::mouseClick(named("remove row 1 of the torque curve"), Qt::LeftButton);
    EXPECT_EQ(state_.car.launch.engine.torque.size(), rows);
    EXPECT_NEAR(state_.car.launch.engine.torque[0].torque, 500, 1e-9);
}

TEST_F(LaunchPageBench, TheTorqueCurveHasAxesAndSaysItsPeak) {
    const std::vector<TorquePoint>& torque = state_.car.launch.engine.torque;
    auto* chart = page_->findChild<TorqueChart*>();
    ASSERT_NE(chart, nullptr);
    const ChartPlot& plot = chart->onScreen().front().plot();
    EXPECT_EQ(plot.from, torque.front().speed);
    EXPECT_EQ(plot.to, torque.back().speed);
    EXPECT_EQ(plot.low, 0);
    EXPECT_EQ(chart->cards().front().series.front().points.size(), torque.size());
    EXPECT_EQ(chart->axis().unitText, "rpm");
    EXPECT_EQ(chart->accessibleName(), "Torque curve");
    EXPECT_THAT(chart->accessibleDescription().toStdString(), HasSubstr(" at the most"));
    chart->showCurve({}, Units::inch);
    EXPECT_EQ(chart->accessibleDescription(), "No torque curve yet");
}

// However far the curves are scrolled, what is seen of them has a time axis.
TEST_F(LaunchPageBench, SomeTimesAreAlwaysSeen) {
    LaunchCurves& curves = *page_->findChild<LaunchCurves*>();
    const std::vector<ChartCardOnScreen>& cards = curves.onScreen();
    ASSERT_GT(cards.size(), 3U);
    const QImage image = curves.grab().toImage();
    for (const ChartCardOnScreen& card : cards) {
        const QRectF& area = card.plot().area;
        const QRect below =
            QRectF(area.left(), area.bottom() + 3, area.width(), card.frame().bottom() - area.bottom() - 6)
                .toRect();
        int inked = 0;
        for (int y = below.top(); y <= below.bottom(); ++y) {
            for (int x = below.left(); x <= below.right(); ++x) {
                inked += image.pixelColor(x, y) == theme().muted ? 1 : 0;
            }
        }
        EXPECT_GT(inked, 5) << card.card().titles.first().toStdString();
    }
}

TEST_F(LaunchPageBench, ADynoSheetIsTakenWholeOrNotAtAll) {
    QApplication::clipboard()->setText("rpm\tTorque lb-ft\n2000\t300\n3000\tx\n");
    DynoDialog bad(Units::inch);
    EXPECT_TRUE(bad.torque().empty());
    QStringList words;
    for (const QLabel* label : bad.findChildren<QLabel*>()) {
        words << label->text();
    }
    EXPECT_THAT(words.join(u' ').toStdString(), HasSubstr("line 3, '3000 x'"));
    bad.findChild<QPlainTextEdit*>()->setPlainText("rpm\tTorque lb-ft\n2000\t300\n3000\t320\n");
    EXPECT_EQ(bad.torque().size(), 2U);
}

TEST_F(LaunchPageBench, ConverterOrClutchIsChosenAndBringsItsFields) {
    EXPECT_TRUE(page_->hasField({.field = Field::stallSpeed}));
    CalmCombo* choice = nullptr;
    for (CalmCombo* box : page_->findChildren<CalmCombo*>()) {
        choice = box->accessibleName() == "Converter or clutch" ? box : choice;
    }
    ASSERT_NE(choice, nullptr);
    choice->setFocus();
    QTest::keyClick(choice, Qt::Key_Down);
    EXPECT_EQ(state_.car.launch.coupling.kind, CouplingKind::clutch);
    EXPECT_TRUE(page_->hasField({.field = Field::clutchCapacity}));
    EXPECT_FALSE(page_->hasField({.field = Field::stallSpeed}));
}

TEST_F(LaunchPageBench, EveryNumberOfALaunchHasAField) {
    for (const FieldRule* rule : rulesOf(Scope::car)) {
        const std::string path(rule->path);
        const bool isInTime = path.starts_with("launch.engine") || path.starts_with("launch.tire") ||
                              path.starts_with("launch.front") || path.ends_with("inertia") ||
                              path == "launch.release" || path == "launch.rollout" || path == "launch.gear" ||
                              path == "launch.axle_ratio" || path == "launch.friction";
        if (isInTime && path != "launch.engine_torque") {
            EXPECT_TRUE(page_->hasField({.field = rule->field})) << path;
        }
    }
}

TEST_F(LaunchPageBench, ACarThatWasNeverLaunchedGetsACalmPage) {
    show(inventedCar());
    EXPECT_FALSE(page_->film());
    auto* missing = page_->findChild<LaunchMissing*>();
    EXPECT_TRUE(missing->isVisible());
    EXPECT_FALSE(page_->picture().isVisible());
    EXPECT_GT(missing->findChildren<QPushButton*>().size(), 10);
    page_->picture().grab();
}

TEST_F(LaunchPageBench, AStallIsSaidWithItsTime) {
    Car car = state_.car;
    car.launch.coupling.kind = CouplingKind::clutch;
    car.launch.coupling.capacity = 5000;
    car.launch.engine.launchSpeed = 500 * kRpm;
    show(car);
    ASSERT_TRUE(page_->film());
    ASSERT_EQ(page_->film()->run.end, LaunchEnd::stalled);
    QStringList words;
    for (const QLabel* label : page_->findChildren<QLabel*>()) {
        words << (label->isVisible() ? label->text() : QString());
    }
    EXPECT_THAT(words.join(u' ').toStdString(), HasSubstr("The engine stalls 0."));
    EXPECT_EQ(shown(LaunchFigure::sixtyFoot).value, "—");
}

TEST_F(LaunchPageBench, BothUnitsAreShown) {
    const QString inches = shown(LaunchFigure::leastLoad).value;
    EXPECT_TRUE(inches.endsWith(" lbf") || inches.endsWith(" lb")) << inches.toStdString();
    Car car = state_.car;
    car.units = Units::metric;
    show(car);
    EXPECT_TRUE(shown(LaunchFigure::leastLoad).value.endsWith(" N"));
    EXPECT_EQ(page_->curves().cards()[6].unitText, "m");
}

TEST_F(LaunchPageBench, AnotherWidgetStandsUnderTheFigures) {
    auto* guest = new QLabel(QStringLiteral("guest"));
    page_->addSide(guest);
    QCoreApplication::processEvents();
    EXPECT_TRUE(page_->isAncestorOf(guest));
    EXPECT_GT(guest->mapTo(page_.get(), QPoint()).y(), page_->figures().mapTo(page_.get(), QPoint()).y());
}

}  // namespace
}  // namespace bolthole::test
