// Hole combinations in the real window: computed off its thread, pointed at, chosen, undone.
#include <gmock/gmock.h>

#include <QComboBox>
#include <QSignalSpy>
#include <QTest>
#include <chrono>

#include "app/controllers/combination_runner.h"
#include "app/window/main_window.h"
#include "tests/support/await_jobs.h"
#include "tests/support/bench_points.h"
#include "widgets/board/hole_board.h"
#include "widgets/kit/number_field.h"
#include "widgets/pages/target/target_page.h"
#include "widgets/views/side_view.h"
#include "widgets/words/length_words.h"

namespace bolthole {
namespace {

class CombinationsInTheWindow : public ::testing::Test {
  protected:
    CombinationsInTheWindow() {
        window_.resize(1480, 920);
        window_.show();
        open("long-roof-wagon.bolt.json");
    }
    ~CombinationsInTheWindow() override { window_.document().undoStack().setClean(); }

    void open(const char* demo) {
        window_.document().undoStack().setClean();
        window_.openDemo(QString::fromLatin1(demo));
        EXPECT_TRUE(waitForBoard());
    }
    bool waitForBoard() {
        return QTest::qWaitFor([this] { return window_.boardState().complete; }, kPatience);
    }
    [[nodiscard]] const HoleCombination& combinationOf(const HoleUse& use) const {
        const auto& combinations = window_.boardState().combinations;
        const auto found = std::ranges::find(combinations, use, &HoleCombination::use);
        EXPECT_NE(found, combinations.end());
        return *found;
    }
    [[nodiscard]] HoleUse otherThanPresent() const {
        for (const HoleCombination& combination : window_.boardState().combinations) {
            if (combination.use != holesInUse(window_.state().car)) {
                return combination.use;
            }
        }
        return {};
    }
    QPoint dotOf(const HoleUse& use) {
        const auto place = window_.holeBoard().placeOf(combinationOf(use).index);
        EXPECT_TRUE(place.has_value());
        return place.value_or(QPointF()).toPoint();
    }

    MainWindow window_{Settings{}};
};

TEST_F(CombinationsInTheWindow, TheBoardHoldsEveryCombinationAndThePresentOneAgreesWithTheBench) {
    EXPECT_EQ(window_.boardState().combinations.size(), 6U);
    const HoleCombination& now = combinationOf(holesInUse(window_.state().car));
    EXPECT_NEAR(now[Figure::antiSquat], window_.state().trace.ride[Figure::antiSquat], 1e-9);
    EXPECT_EQ(now.boltsMoved, 0);
}

// NOW is the car as it stands, also where the board would set its uppers anew.
TEST_F(CombinationsInTheWindow, NowIsTheCarWithItsLengthsAsTheyAre) {
    ASSERT_EQ(window_.boardState().lengths, LengthTreatment::uppers);
    int upper = 0;
    while (roleOf(window_.state().car.links[static_cast<std::size_t>(upper)],
                  window_.state().car.rearTireRadius) != Role::upper) {
        ++upper;
    }
    const double length = builtLength(window_.state().car.links[static_cast<std::size_t>(upper)]);
    ASSERT_EQ(window_.document().apply(SetNumber{{.field = Field::linkLength, .link = upper}, length + 0.012},
                                       EditPhase::whole, {}),
              QString());
    ASSERT_TRUE(waitForBoard());
    const HoleCombination& now = combinationOf(holesInUse(window_.state().car));
    EXPECT_NEAR(now[Figure::antiSquat], window_.state().trace.ride[Figure::antiSquat], 1e-9);
    EXPECT_NEAR(now[Figure::pinion], window_.state().trace.ride[Figure::pinion], 1e-12);
    EXPECT_NEAR(now.pinionChange, 0, 1e-12);
    EXPECT_EQ(now.adjustersTurned + now.newRods, 0);
    EXPECT_NEAR(now.length[static_cast<std::size_t>(upper)], length + 0.012, 1e-12);
}

TEST_F(CombinationsInTheWindow, ADotPickedOnTheMapGhostsThenBoltsAndUndoBringsTheCarBack) {
    const Car before = window_.state().car;
    const HoleUse use = otherThanPresent();
    const double expected = combinationOf(use)[Figure::antiSquat];
    QWidget& map = window_.holeBoard().map();
    const QImage still = window_.sideView().grab().toImage();

    QTest::mouseMove(&map, dotOf(use));
    QTest::mouseClick(&map, Qt::LeftButton, Qt::NoModifier, dotOf(use));
    ASSERT_TRUE(window_.state().pointed.has_value());
    EXPECT_NEAR(window_.state().pointed->trace.ride[Figure::antiSquat], expected, 1e-9);
    EXPECT_EQ(window_.state().car, before) << "pointing changes nothing";
    const QImage ghosted = window_.sideView().grab().toImage();
    EXPECT_NE(ghosted, still);

    QTest::keyClick(&map, Qt::Key_Return);
    EXPECT_EQ(holesInUse(window_.state().car), use);
    EXPECT_NEAR(window_.state().trace.ride[Figure::antiSquat], expected, 1e-9);
    EXPECT_EQ(window_.document().undoStack().count(), 1);
    EXPECT_FALSE(window_.state().pointed.has_value()) << "the choice pointed at is the car itself now";
    EXPECT_NE(window_.sideView().grab().toImage(), ghosted);

    QTest::keyClick(&window_, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(window_.state().car, before);
}

TEST_F(CombinationsInTheWindow, TheGhostTakesTheTreatmentJustChosen) {
    const HoleUse use = otherThanPresent();
    emit window_.holeBoard().pointedAt(use);
    for (const LengthTreatment lengths : {LengthTreatment::refit, LengthTreatment::keep}) {
        emit window_.holeBoard().lengthsChosen(lengths);
        ASSERT_TRUE(window_.state().pointed.has_value());
        const CarResult expected = carWithCombination(window_.state().car, use, lengths);
        EXPECT_EQ(window_.state().pointed->car, *expected.car) << nameOf(lengths);
    }
}

TEST_F(CombinationsInTheWindow, TheLengthsAreOneChoiceOnEveryPage) {
    window_.document().apply(SetTarget{TargetWindow{.antiSquatLow = 10, .antiSquatHigh = 200}},
                             EditPhase::whole, {});
    QTest::keyClick(&window_, Qt::Key_6, Qt::AltModifier);
    const auto box = [this] { return window_.findChild<QComboBox*>(QStringLiteral("targetLengths")); };
    auto* page = window_.findChild<TargetPage*>();
    for (const LengthTreatment lengths : {LengthTreatment::keep, LengthTreatment::refit}) {
        emit window_.holeBoard().lengthsChosen(lengths);
        EXPECT_EQ(box()->currentIndex(), static_cast<int>(lengths));
        EXPECT_EQ(page->lengths(), lengths);
        EXPECT_EQ(box()->toolTip(), wrappedToolTip(lengthsHelp(lengths)));
    }
    QTest::keyClick(box(), Qt::Key_Up);
    EXPECT_EQ(window_.state().lengths(), LengthTreatment::keep);
    EXPECT_EQ(window_.boardState().lengths, LengthTreatment::keep);
    EXPECT_TRUE(waitForBoard());
    EXPECT_EQ(window_.findChild<QComboBox*>(QStringLiteral("lengthTreatment"))->currentText(),
              box()->currentText());
    open("light-coupe.bolt.json");
    EXPECT_FALSE(window_.state().chosenLengths) << "another car has what suits it";
}

TEST_F(CombinationsInTheWindow, KeepingAStateComputesNothingAnew) {
    const auto* const computed = window_.boardState().car.get();
    window_.document().apply(KeepSetup{"Monday", "2026-03-09", "", nullptr}, EditPhase::whole, {});
    EXPECT_TRUE(window_.boardState().complete);
    EXPECT_EQ(window_.boardState().car.get(), computed);
}

TEST_F(CombinationsInTheWindow, AWindowDraggedOnTheMapIsOneUndoableStepAndComputesNothingAnew) {
    QWidget& map = window_.holeBoard().map();
    const auto* const computed = window_.boardState().car.get();
    const std::optional<TargetWindow> before = window_.state().car.target;
    const QPoint from(map.width() / 3, map.height() / 4);
    const QPoint to(2 * map.width() / 3, map.height() / 2);
    QTest::mousePress(&map, Qt::LeftButton, Qt::NoModifier, from);
    QTest::mouseMove(&map, (from + to) / 2);
    QTest::mouseMove(&map, to);
    QTest::mouseRelease(&map, Qt::LeftButton, Qt::NoModifier, to);
    ASSERT_TRUE(window_.state().car.target.has_value());
    EXPECT_NE(window_.state().car.target, before);
    EXPECT_LT(window_.state().car.target->antiSquatLow, window_.state().car.target->antiSquatHigh);
    EXPECT_EQ(window_.document().undoStack().count(), 1);
    EXPECT_EQ(window_.boardState().car.get(), computed);
    QTest::keyClick(&window_, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(window_.state().car.target, before);
}

TEST_F(CombinationsInTheWindow, AnEditOfTheCarComputesTheCombinationsAnew) {
    const double before = combinationOf(holesInUse(window_.state().car))[Figure::antiSquat];
    window_.document().apply(SetNumber{{.field = Field::cgHeight}, 0.7}, EditPhase::whole, {});
    ASSERT_TRUE(QTest::qWaitFor(
        [&] { return window_.boardState().complete && window_.boardState().car->cgHeight == 0.7; },
        kPatience));
    EXPECT_LT(combinationOf(holesInUse(window_.state().car))[Figure::antiSquat], before);
}

TEST_F(CombinationsInTheWindow, ACarThatCannotBeComputedHasNoCombinationsAndSaysWhy) {
    Car broken = window_.state().car;
    broken.links[0].chassis.holes[0].at = broken.links[0].axle.holes[1].at;
    window_.document().apply(MoveHole{0, End::chassis, 0, broken.links[0].axle.holes[1].at}, EditPhase::whole,
                             {});
    window_.document().apply(ClearNumber{{.field = Field::linkLength, .link = 0}}, EditPhase::whole, {});
    EXPECT_EQ(window_.boardState().car, nullptr);
    EXPECT_FALSE(window_.boardState().problem.isEmpty());
    window_.document().undoStack().undo();
    window_.document().undoStack().undo();
    EXPECT_TRUE(waitForBoard());
    EXPECT_EQ(window_.boardState().combinations.size(), 6U);
}

TEST_F(CombinationsInTheWindow, TheCoupesTableIsComplete) {
    open("light-coupe.bolt.json");
    EXPECT_EQ(window_.boardState().total, 144U)
        << "the track bar's holes take part only where they are asked to";
    EXPECT_EQ(window_.boardState().combinations.size(), 144U);
    emit window_.holeBoard().scopeChosen({.tieSides = false, .crosswise = true});
    EXPECT_TRUE(waitForBoard());
    EXPECT_EQ(window_.boardState().combinations.size(), 1296U);
    EXPECT_EQ(window_.boardState().combinations.front().use, holesInUse(window_.state().car));
}

TEST(CombinationRunner, ADroppedJobDeliversNothingMore) {
    MainWindow window{Settings{}};
    window.openDemo(QStringLiteral("light-coupe.bolt.json"));
    const auto car = std::make_shared<const Car>(window.state().car);
    CombinationRunner runner;
    std::size_t arrived = 0;
    int ends = 0;
    QObject::connect(&runner, &CombinationRunner::arrived,
                     [&](const std::vector<HoleCombination>& combinations, bool last) {
                         arrived += combinations.size();
                         ends += last ? 1 : 0;
                     });
    for (int i = 0; i < 20; ++i) {
        runner.start({car, LengthTreatment::refit, {}}, i % 2 == 0);
    }
    runner.start({car, LengthTreatment::keep, {.crosswise = false}}, false);
    EXPECT_TRUE(QTest::qWaitFor([&] { return ends > 0; }, kPatience));
    QTest::qWait(50);
    EXPECT_EQ(arrived, 144U);
    EXPECT_EQ(ends, 1);
    EXPECT_FALSE(runner.isRunning());
}

TEST(CombinationRunner, MayEndWhileItWorks) {
    MainWindow window{Settings{}};
    window.openDemo(QStringLiteral("light-coupe.bolt.json"));
    const auto car = std::make_shared<const Car>(window.state().car);
    bool arrived = false;
    {
        CombinationRunner runner;
        QObject::connect(&runner, &CombinationRunner::arrived, [&] { arrived = true; });
        runner.start({car, LengthTreatment::keep, {}}, false);
    }
    QCoreApplication::processEvents();
    EXPECT_FALSE(arrived);
}

// A hole dragged step by step, and held.
class ADragBeforeTheBoard : public CombinationsInTheWindow {
  protected:
    void drag(double by, EditPhase phase) {
        const Hole& hole = window_.state().car.links[0].chassis.inUse();
        const int use = window_.state().car.links[0].chassis.use;
        EXPECT_EQ(window_.document().apply(
                      MoveHole{0, End::chassis, use, hole.at + Eigen::Vector3d(0, 0, by)}, phase, {}),
                  QString());
    }
    [[nodiscard]] bool showsTheBench() const {
        const BoardState& board = window_.boardState();
        return board.complete && board.car != nullptr && board.car->links == window_.state().car.links;
    }
    [[nodiscard]] bool waitForTheBench() {
        return QTest::qWaitFor([this] { return showsTheBench(); }, kPatience);
    }
};

// The jobs of a drag share the processor with it: one for each table that is shown, not one after the other.
TEST_F(ADragBeforeTheBoard, TheBoardFollowsAndComputesNoMoreThanItShows) {
    drag(0.001, EditPhase::dragging);
    ASSERT_TRUE(waitForTheBench()) << "the first table is there as soon as it is computed";
    EXPECT_TRUE(window_.boardState().inDrag);
    const auto first = window_.boardState().car;
    for (int step = 0; step < 5; ++step) {
        drag(0.001, EditPhase::dragging);
    }
    EXPECT_TRUE(test::awaitJobs());
    EXPECT_EQ(window_.boardState().car, first) << "nothing is computed again before it is to be shown";
    EXPECT_TRUE(waitForTheBench()) << "and then for where the hole is";
    EXPECT_NE(window_.boardState().car, first);
    drag(0, EditPhase::dragged);
}

// Where the hole was held until its table was there, letting go still brings what a drag leaves out.
TEST_F(ADragBeforeTheBoard, LettingGoBringsTheUncertaintiesOfTheTableThatStands) {
    drag(0.002, EditPhase::dragging);
    ASSERT_TRUE(waitForTheBench());
    EXPECT_EQ(window_.boardState().uncertaintyCount, 0U);
    drag(0, EditPhase::dragged);
    EXPECT_TRUE(QTest::qWaitFor(
        [this] { return window_.boardState().uncertaintyCount == window_.boardState().total; }, kPatience));
    EXPECT_FALSE(window_.boardState().inDrag);
    EXPECT_TRUE(showsTheBench());
}

// What can't be assembled is said in the step it happens, and what can be is computed in its own.
TEST_F(ADragBeforeTheBoard, AFaultIsSaidAtOnceAndSoIsItsEnd) {
    open("light-coupe.bolt.json");
    ASSERT_FALSE(window_.state().car.links[0].length.has_value()) << "it fits its holes";
    drag(0.001, EditPhase::dragging);
    ASSERT_TRUE(waitForTheBench());
    const Link& link = window_.state().car.links[0];
    const Hole& axle = link.axle.inUse();  // onto which the other end is dragged: a link without length
    static_cast<void>(window_.document().apply(MoveHole{0, End::chassis, link.chassis.use, axle.at},
                                               EditPhase::dragging, {}));
    ASSERT_FALSE(window_.state().faults.empty());
    EXPECT_EQ(window_.boardState().car, nullptr);
    EXPECT_FALSE(window_.boardState().problem.isEmpty());
    drag(0.01, EditPhase::dragging);
    EXPECT_TRUE(test::awaitJobs());
    EXPECT_TRUE(showsTheBench());
    drag(0, EditPhase::dragged);
}

}  // namespace
}  // namespace bolthole
