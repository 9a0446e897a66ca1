// Every layout built from nothing in the real window, by mouse and keys: started, edited, saved, opened
// again.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFileDialog>
#include <QLineEdit>
#include <QListWidget>
#include <QMenu>
#include <QMessageBox>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTimer>
#include <QtTest/QTest>
#include <cmath>
#include <functional>
#include <memory>
#include <stdexcept>
#include <vector>

#include "app/window/main_window.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/edits/starting_car.h"
#include "geometry/kinematics/roll.h"
#include "tests/support/typing.h"
#include "widgets/fields/link_tools.h"
#include "widgets/fields/new_car_dialog.h"
#include "widgets/kit/number_field.h"
#include "widgets/readouts/figure_strip.h"
#include "widgets/views/across_view.h"
#include "widgets/views/side_view.h"
#include "widgets/views/view_deck.h"

namespace bolthole {
namespace {

class NewCarWindow : public testing::Test {
  protected:
    void SetUp() override {
        QCoreApplication::setOrganizationName(QStringLiteral("bolthole-tests"));
        ThemeKeeper::instance().choose(Appearance::light);
        window_ = std::make_unique<MainWindow>(Settings{});
        window_->openDemo(QStringLiteral("long-roof-wagon.bolt.json"));
        window_->resize(1480, 920);
        window_->show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(window_.get()));
    }
    void TearDown() override { window_->document().undoStack().setClean(); }

    static QAction* actionOf(const QList<QAction*>& actions, const QString& words) {
        for (QAction* action : actions) {
            if (action->text().remove(QLatin1Char('&')) == words) {
                return action;
            }
        }
        return nullptr;
    }
    void trigger(const QString& words) {
        QAction* action = actionOf(window_->findChildren<QAction*>(), words);
        ASSERT_NE(action, nullptr) << words.toStdString();
        action->trigger();
    }
    // Opens the dialog and does `work` in it.
    void inDialog(const std::function<void(NewCarDialog&)>& work) {
        bool came = false;
        QTimer::singleShot(0, window_.get(), [&] {
            auto* dialog = qobject_cast<NewCarDialog*>(QApplication::activeModalWidget());
            ASSERT_NE(dialog, nullptr);
            came = true;
            work(*dialog);
        });
        trigger(QStringLiteral("New car…"));
        EXPECT_TRUE(came);
    }
    template <class Kind>
    Kind* named(const QString& name) {
        QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        for (Kind* each : window_->findChildren<Kind*>()) {
            if (each->accessibleName() == name && each->isVisible()) {
                return each;
            }
        }
        return nullptr;
    }
    void click(const QString& name) {
        auto* button = named<QAbstractButton>(name);
        ASSERT_NE(button, nullptr) << name.toStdString();
        QTest::mouseClick(button, Qt::LeftButton);
    }
    void type(const QString& name, const QString& text) {
        auto* field = named<NumberField>(name);
        ASSERT_NE(field, nullptr) << name.toStdString();
        test::typeInto(*field, text);
    }
    void addLink(const QString& entry) {
        click(QStringLiteral("Add a link"));
        auto* menu = named<QAbstractButton>(QStringLiteral("Add a link"))->findChild<QMenu*>();
        QAction* action = actionOf(menu->actions(), entry);
        ASSERT_NE(action, nullptr) << entry.toStdString();
        menu->hide();
        action->trigger();
    }
    [[nodiscard]] const Car& car() const { return window_->state().car; }
    // Moves a link's first axle hole by an inch in height, typed into its field.
    void moveHole() {
        const Link& link = car().links.front();
        const double up = link.axle.holes[0].at.z() + (link.kind == LinkKind::rod ? kMetresPerInch : 0);
        const QString name =
            QStringLiteral("%1, axle hole %2, height")
                .arg(QString::fromStdString(link.name), QString::fromStdString(link.axle.holes[0].name));
        type(name, QStringLiteral("%1 mm").arg(up * 1000));
        EXPECT_NEAR(car().links.front().axle.holes[0].at.z(), up, 1e-9);
    }

    std::unique_ptr<MainWindow> window_;
    QTemporaryDir folder_;
};

// Types a path into the file dialog that the keys `shortcut` bring up in `window`, and takes it.
void typeFile(MainWindow& window, Qt::Key shortcut, const QString& file) {
    bool came = false;
    QTimer waiting;
    QObject::connect(&waiting, &QTimer::timeout, &window, [&] {
        auto* dialog = qobject_cast<QFileDialog*>(QApplication::activeModalWidget());
        auto* name = dialog == nullptr ? nullptr : dialog->findChild<QLineEdit*>();
        if (name == nullptr) {
            return;
        }
        waiting.stop();
        came = true;
        name->setText(file);
        QTest::keyClick(name, Qt::Key_Return);
    });
    waiting.start(20);
    QApplication::setActiveWindow(&window);
    QTest::keyClick(&window, shortcut, Qt::ControlModifier);
    EXPECT_TRUE(came);
}

void expectSameFigures(const Station& one, const Station& other) {
    for (std::size_t figure = 0; figure < kFigureCount; ++figure) {
        if (std::isnan(one.figures[figure])) {
            EXPECT_TRUE(std::isnan(other.figures[figure])) << figure;
        } else {
            EXPECT_EQ(one.figures[figure], other.figures[figure]) << figure;
        }
    }
}

TEST_F(NewCarWindow, EveryLayoutIsStartedEditedSavedAndOpenedAgain) {
    int row = 0;
    for (const LinkLayout layout : kLinkLayouts) {
        SCOPED_TRACE(row);
        inDialog([&](NewCarDialog& dialog) {
            auto* list = dialog.findChild<QListWidget*>("layouts");
            for (int down = 0; down < row; ++down) {
                QTest::keyClick(list, Qt::Key_Down);
            }
            QTest::keyClick(list, Qt::Key_Return);
        });
        ++row;
        EXPECT_EQ(car(), startingCar({.layout = layout}));
        EXPECT_TRUE(window_->document().fileName().isEmpty());
        EXPECT_TRUE(window_->state().trace.ride.usable);
        EXPECT_FALSE(window_->document().undoStack().canUndo());

        const std::size_t links = car().links.size();
        addLink(QStringLiteral("Torque arm"));
        ASSERT_EQ(car().links.size(), links + 1);
        const QString added = QString::fromStdString(car().links.back().name);
        click(added + QStringLiteral(": remove the link"));
        ASSERT_EQ(car().links.size(), links);
        EXPECT_EQ(car(), startingCar({.layout = layout}));

        moveHole();
        click(QString::fromStdString(car().links.front().name) +
              QStringLiteral(": set left and right apart"));
        ASSERT_EQ(car().links.size(), links + 1);
        const Car built = car();
        const Station ride = window_->state().trace.ride;
        const Station bump = window_->state().trace.stations.back();
        ASSERT_TRUE(ride.usable);

        const QString file = folder_.filePath(QStringLiteral("car%1.bolt.json").arg(row));
        ASSERT_TRUE(window_->document().save(file).saved());
        window_->openDemo(QStringLiteral("light-coupe.bolt.json"));
        ASSERT_NE(car().title, built.title);
        window_->openFile(file);
        EXPECT_EQ(car().links.size(), built.links.size());
        EXPECT_EQ(car().notes, built.notes);
        expectSameFigures(window_->state().trace.ride, ride);
        expectSameFigures(window_->state().trace.stations.back(), bump);
    }
}

// The nine cars there are to start from: the triangulated four-link holds itself sideways.
std::vector<StartingCar> everyStart() {
    std::vector<StartingCar> starts;
    for (const LinkLayout layout : kLinkLayouts) {
        for (const SidewaysHold hold : {SidewaysHold::trackBar, SidewaysHold::watts}) {
            if (hold == SidewaysHold::trackBar || needsSidewaysHold(layout)) {
                starts.push_back({.layout = layout,
                                  .sideways = hold,
                                  .wheelbase = 102.5 * kMetresPerInch,
                                  .rearTireRadius = fromMillimetres(336.55),
                                  .typed = {Field::wheelbase, Field::rearTireRadius}});
            }
        }
    }
    return starts;
}

template <class Kind>
Kind& childNamed(const QWidget& parent, const char* name) {
    for (Kind* each : parent.findChildren<Kind*>()) {
        if (each->accessibleName() == QLatin1String(name)) {
            return *each;
        }
    }
    throw std::runtime_error(name);
}

void typeInto(QLineEdit& field, const char* text) {
    field.setFocus();
    field.selectAll();
    QTest::keyClicks(&field, QString::fromLatin1(text));
    QTest::keyClick(&field, Qt::Key_Tab);
}

// Chooses, types what everyStart() has and starts the car; with the mouse, or with keys alone.
void startIn(NewCarDialog& dialog, const StartingCar& asked, bool byMouse) {
    auto* list = dialog.findChild<QListWidget*>("layouts");
    const int row = static_cast<int>(asked.layout);
    if (byMouse) {
        QTest::mouseClick(list->viewport(), Qt::LeftButton, Qt::NoModifier,
                          list->visualItemRect(list->item(row)).center());
    }
    for (int down = 0; !byMouse && down < row; ++down) {
        QTest::keyClick(list, Qt::Key_Down);
    }
    if (asked.sideways == SidewaysHold::watts) {
        QTest::keyClick(&childNamed<QComboBox>(dialog, "Held laterally by"), Qt::Key_Down);
    }
    typeInto(childNamed<NumberField>(dialog, "wheelbase of the new car"), "102 1/2");
    typeInto(childNamed<NumberField>(dialog, "rear tire radius of the new car, loaded"), "13.25");
    if (byMouse) {
        // By its role: whichever button the focus passed last is the default one.
        auto* buttons = dialog.findChild<QDialogButtonBox*>();
        for (QAbstractButton* button : buttons->buttons()) {
            if (buttons->buttonRole(button) == QDialogButtonBox::AcceptRole) {
                QTest::mouseClick(button, Qt::LeftButton);
                return;
            }
        }
    }
    QTest::keyClick(list, Qt::Key_Return);
}

// Moves the front hole of the first link: dragged up in the side view, or chosen in the rear view and nudged.
void moveFrontHole(MainWindow& window, bool byMouse) {
    constexpr PointId kFront{PointId::Kind::hole, 0, End::chassis, 0};
    window.views().choose(byMouse ? ViewDeck::Shown::side : ViewDeck::Shown::rear);
    QCoreApplication::processEvents();
    BenchPicture& view = byMouse ? static_cast<BenchPicture&>(window.sideView()) : window.views().rearView();
    const QPoint from = view.placeOf(kFront).toPoint();
    const QPoint to = from - QPoint(0, 15);
    if (!byMouse) {
        QTest::mouseClick(&view, Qt::LeftButton, Qt::NoModifier, from);
        QTest::keyClick(&view, Qt::Key_Up);
        return;
    }
    QTest::mousePress(&view, Qt::LeftButton, Qt::NoModifier, from);
    QMouseEvent move(QEvent::MouseMove, to, view.mapToGlobal(to), Qt::NoButton, Qt::LeftButton,
                     Qt::NoModifier);
    QCoreApplication::sendEvent(&view, &move);
    QTest::mouseRelease(&view, Qt::LeftButton, Qt::NoModifier, to);
}

void expectSame(double one, double other) {
    EXPECT_TRUE(one == other || (std::isnan(one) && std::isnan(other))) << one << " and " << other;
}

void expectSameRoll(const std::vector<RollFigures>& one, const std::vector<RollFigures>& other) {
    ASSERT_EQ(one.size(), other.size());
    for (std::size_t row = 0; row < one.size(); ++row) {
        EXPECT_EQ(one[row].usable, other[row].usable);
        for (const auto figure : {&RollFigures::bind, &RollFigures::center, &RollFigures::squareCenter,
                                  &RollFigures::steer, &RollFigures::heading, &RollFigures::axisAngle}) {
            expectSame(one[row].*figure, other[row].*figure);
        }
    }
}

void expectSameFiguresThroughout(const BenchState& one, const BenchState& other) {
    ASSERT_EQ(one.trace.stations.size(), other.trace.stations.size());
    for (std::size_t row = 0; row < one.trace.stations.size(); ++row) {
        expectSameFigures(one.trace.stations[row], other.trace.stations[row]);
    }
    const RollTrace roll = computeRollTrace(one.car);
    const RollTrace again = computeRollTrace(other.car);
    EXPECT_TRUE(roll.ride.usable);
    EXPECT_TRUE(std::isfinite(roll.ride.squareCenter));
    expectSameRoll(roll.rows, again.rows);
    expectSameRoll(roll.travel, again.travel);
}

// The first by mouse, the second by keys, and so on; saved and opened through the file dialogs.
TEST_F(NewCarWindow, EachOfTheNineStartsHasTheSameFiguresInAnotherWindow) {
    const std::vector<StartingCar> starts = everyStart();
    ASSERT_EQ(starts.size(), 9U);
    for (std::size_t start = 0; start < starts.size(); ++start) {
        SCOPED_TRACE(start);
        const bool byMouse = start % 2 == 0;
        inDialog([&](NewCarDialog& dialog) { startIn(dialog, starts[start], byMouse); });
        ASSERT_EQ(car(), startingCar(starts[start]));
        const Car started = car();
        const double before = window_->state().trace.ride[Figure::icZ];
        moveFrontHole(*window_, byMouse);
        EXPECT_GT(car().links[0].chassis.holes[0].at.z(), started.links[0].chassis.holes[0].at.z());
        EXPECT_NE(window_->state().trace.ride[Figure::icZ], before);
        EXPECT_EQ(window_->document().undoStack().count(), 1);

        const QString file = folder_.filePath(QStringLiteral("start%1.bolt.json").arg(start));
        typeFile(*window_, Qt::Key_S, file);
        ASSERT_FALSE(window_->document().isEdited());
        const BenchState built = window_->state();
        window_->openDemo(
            QStringLiteral("light-coupe.bolt.json"));  // else the second window asks about the first
        ASSERT_NE(car(), built.car);
        MainWindow other{Settings{}};
        other.show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(&other));
        typeFile(other, Qt::Key_O, file);
        ASSERT_EQ(other.state().car.links.size(), started.links.size());
        expectSameFiguresThroughout(built, other.state());
    }
}

TEST_F(NewCarWindow, ChangesThatAreNotSavedAreAskedAbout) {
    window_->document().apply(SetTitle{"Edited"}, EditPhase::whole, {});
    const auto answer = [&](QMessageBox::StandardButton button) {
        QTimer::singleShot(0, window_.get(), [this, button] {
            auto* dialog = qobject_cast<NewCarDialog*>(QApplication::activeModalWidget());
            ASSERT_NE(dialog, nullptr);
            QTimer::singleShot(0, window_.get(), [button] {
                auto* question = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
                ASSERT_NE(question, nullptr);
                question->button(button)->click();
            });
            QTest::keyClick(dialog->findChild<QListWidget*>("layouts"), Qt::Key_Return);
        });
        trigger(QStringLiteral("New car…"));
    };
    answer(QMessageBox::Cancel);
    EXPECT_EQ(car().title, "Edited");
    answer(QMessageBox::Discard);
    EXPECT_EQ(car().title, "");
    EXPECT_EQ(car().links.size(), 2U);
}

TEST_F(NewCarWindow, CanceledNothingChanges) {
    const Car before = car();
    inDialog([](NewCarDialog& dialog) { dialog.reject(); });
    EXPECT_EQ(car(), before);
}

// Its numbers are marked where they stand and counted, and the warnings say it.
TEST_F(NewCarWindow, SaysThatNothingWasMeasured) {
    inDialog([](NewCarDialog& dialog) { dialog.accept(); });
    const std::size_t all = measurableNumbers(car()).size();
    const auto* count = window_->findChild<QLabel*>(QStringLiteral("measuredCount"));
    const auto counts = [&](std::size_t measured) {
        return count->isVisible() &&
               count->text() == QStringLiteral("%1 of %2 numbers measured").arg(measured).arg(all);
    };
    EXPECT_TRUE(counts(0)) << count->text().toStdString();
    EXPECT_EQ(named<NumberField>(QStringLiteral("height of the center of gravity"))->origin(),
              Origin::starting);
    ASSERT_EQ(window_->state().warnings.size(), 1U);
    EXPECT_THAT(window_->state().warnings[0].finding.cause, testing::HasSubstr("not measured"));
    const auto* note = window_->findChild<QLabel*>(QStringLiteral("figureNote"));
    EXPECT_THAT(note->text().toStdString(), testing::HasSubstr("in, a starting number"));
    EXPECT_THAT(note->text().toStdString(), testing::HasSubstr("starting numbers: wheelbase"));
}

// However narrow the window, the line under the figures says so in whole words.
TEST_F(NewCarWindow, TheLineUnderTheFiguresIsNeverCut) {
    inDialog([](NewCarDialog& dialog) { dialog.accept(); });
    const auto* strip = window_->findChild<FigureStrip*>();
    for (const int width : {1100, 1280, 1480, 1900}) {
        window_->resize(width, 800);
        QCoreApplication::processEvents();
        EXPECT_TRUE(strip->noteShown().contains(QStringLiteral("starting numbers")))
            << width << ": " << strip->noteShown().toStdString();
        EXPECT_FALSE(strip->noteShown().contains(QChar(0x2026))) << width;
    }
}

// The same number typed and left with Tab is measured; undo takes that back; a file keeps it.
TEST_F(NewCarWindow, CountsUpAsNumbersAreTyped) {
    inDialog([](NewCarDialog& dialog) { dialog.accept(); });
    const std::size_t all = startingNumbers(car()).size();
    QApplication::setActiveWindow(window_.get());
    trigger(QStringLiteral("Next starting number"));
    auto* field = qobject_cast<NumberField*>(QApplication::focusWidget());
    ASSERT_NE(field, nullptr);
    EXPECT_EQ(field->accessibleName(), QStringLiteral("wheelbase"));
    const double before = car().wheelbase;
    QTest::keyClicks(field, field->text());
    QTest::keyClick(field, Qt::Key_Tab);
    EXPECT_EQ(field->origin(), Origin::measured);
    EXPECT_EQ(car().wheelbase, before);
    EXPECT_EQ(startingNumbers(car()).size(), all - 1);
    type(QStringLiteral("height of the center of gravity"), QStringLiteral("21 1/2"));
    EXPECT_EQ(startingNumbers(car()).size(), all - 2);
    EXPECT_FALSE(isStarting(car(), {.field = Field::cgHeight}));
    trigger(QStringLiteral("Undo"));
    EXPECT_TRUE(isStarting(car(), {.field = Field::cgHeight}));
    trigger(QStringLiteral("Redo"));
    const QTemporaryDir dir;
    const QString file = dir.filePath(QStringLiteral("started.bolt.json"));
    ASSERT_TRUE(window_->document().save(file).saved());
    const ReadResult read = readCarFile(file.toStdString());
    ASSERT_TRUE(read.loaded);
    EXPECT_EQ(startingNumbers(read.loaded->car), startingNumbers(car()));
}

// A removed link comes back by undo, with everything it had.
TEST_F(NewCarWindow, UndoBringsARemovedLinkBack) {
    const Car before = car();
    click(QStringLiteral("upper: remove the link"));
    ASSERT_EQ(car().links.size(), 1U);
    EXPECT_FALSE(window_->state().problem.empty());
    trigger(QStringLiteral("Undo"));
    EXPECT_EQ(car(), before);
}

TEST_F(NewCarWindow, EveryDemoOpens) {
    for (const char* demo : {"short-pickup", "gully-roadster", "notch-sedan"}) {
        window_->openDemo(QString::fromLatin1(demo) + QStringLiteral(".bolt.json"));
        EXPECT_TRUE(window_->state().warnings.empty()) << demo;
        EXPECT_TRUE(window_->state().trace.ride.usable) << demo;
    }
}

}  // namespace
}  // namespace bolthole
