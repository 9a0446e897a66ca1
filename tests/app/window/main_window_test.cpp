// The real window, driven by mouse and keys as a person would.
#include "app/window/main_window.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAction>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QTemporaryDir>
#include <QtTest/QTest>
#include <fstream>
#include <memory>

#include "tests/support/bench_points.h"
#include "widgets/curves/travel_curves.h"
#include "widgets/kit/notice_bar.h"
#include "widgets/readouts/figure_table.h"
#include "widgets/scales/travel_slider.h"
#include "widgets/views/side_view.h"

namespace bolthole {
namespace {

class Bench : public testing::Test {
  protected:
    void SetUp() override {
        QCoreApplication::setOrganizationName(QStringLiteral("bolthole-tests"));
        ThemeKeeper::instance().choose(Appearance::light);
        window_ = std::make_unique<MainWindow>(Settings{});
        window_->openDemo(QStringLiteral("long-roof-wagon.bolt.json"));
        window_->resize(1480, 920);
        window_->show();
        ASSERT_TRUE(QTest::qWaitForWindowExposed(window_.get()));
        window_->sideView().showLinks();
        QCoreApplication::processEvents();
    }
    void TearDown() override {
        window_->document().undoStack().setClean();  // no question about unsaved changes
        window_.reset();
    }

    [[nodiscard]] QString text(const char* label) const {
        return window_->findChild<QLabel*>(QLatin1String(label))->text();
    }
    [[nodiscard]] QPoint place(const PointId& id) const { return window_->sideView().placeOf(id).toPoint(); }
    // A hole of the lowers' axle bracket that is free.
    [[nodiscard]] PointId freeAxleHole() const {
        const int used = window_->state().car.links[0].axle.use;
        return {PointId::Kind::hole, 0, End::axle, used == 0 ? 1 : 0};
    }
    void dragBy(const PointId& id, QPoint way, bool release = true) {
        SideView& view = window_->sideView();
        const QPoint from = place(id);
        QTest::mousePress(&view, Qt::LeftButton, Qt::NoModifier, from);
        for (int step = 1; step <= 5; ++step) {
            const QPoint at = from + way * step / 5;
            QMouseEvent move(QEvent::MouseMove, at, view.mapToGlobal(at), Qt::NoButton, Qt::LeftButton,
                             Qt::NoModifier);
            QCoreApplication::sendEvent(&view, &move);
        }
        if (release) {
            QTest::mouseRelease(&view, Qt::LeftButton, Qt::NoModifier, from + way);
        }
    }
    void trigger(const QString& words) {
        for (QAction* action : window_->findChildren<QAction*>()) {
            if (action->text().remove(QLatin1Char('&')) == words) {
                action->trigger();
                return;
            }
        }
        FAIL() << "no action " << words.toStdString();
    }

    std::unique_ptr<MainWindow> window_;
};

TEST_F(Bench, ShowsTheDemoCar) {
    EXPECT_TRUE(window_->state().traceIsCurrent);
    EXPECT_TRUE(window_->state().problem.empty());
    EXPECT_TRUE(text("instantCenterFigure").contains(QStringLiteral(" in")));
    EXPECT_EQ(text("figureNote"), QStringLiteral("at ride height · CG height 23 in ± 0.98, as entered"));
    EXPECT_FALSE(window_->isWindowModified());
}

TEST_F(Bench, DraggingAHoleMovesTheInstantCenterAndIsOneStep) {
    const QString before = text("instantCenterFigure");
    const Car car = window_->state().car;
    dragBy(kLowerFront, {0, 12}, false);
    const QString during = text("instantCenterFigure");
    EXPECT_NE(during, before);
    EXPECT_EQ(window_->document().undoStack().count(), 0);
    QTest::mouseRelease(&window_->sideView(), Qt::LeftButton, Qt::NoModifier, place(kLowerFront));
    EXPECT_EQ(text("instantCenterFigure"), during);
    EXPECT_EQ(window_->document().undoStack().count(), 1);
    EXPECT_TRUE(window_->isWindowModified());
    // Snapped to the tape's sixteenths.
    const double sixteenths = window_->state().car.links[0].chassis.holes[0].at.z() / (0.0254 / 16);
    EXPECT_NEAR(sixteenths, std::round(sixteenths), 1e-6);
    trigger(QStringLiteral("Undo"));
    EXPECT_EQ(window_->state().car, car);
    EXPECT_EQ(text("instantCenterFigure"), before);
    EXPECT_FALSE(window_->isWindowModified());
}

TEST_F(Bench, EscapeGivesADragUp) {
    const Car car = window_->state().car;
    dragBy(kLowerFront, {15, -9}, false);
    EXPECT_NE(window_->state().car, car);
    QTest::keyClick(&window_->sideView(), Qt::Key_Escape);
    EXPECT_EQ(window_->state().car, car);
    EXPECT_EQ(window_->document().undoStack().count(), 0);
}

TEST_F(Bench, UndoDuringADragGivesItUpFirst) {
    dragBy(kLowerFront, {0, 12});
    const Car moved = window_->state().car;
    dragBy(kLowerFront, {20, 0}, false);
    trigger(QStringLiteral("Undo"));
    EXPECT_FALSE(window_->sideView().isDragging());
    trigger(QStringLiteral("Redo"));
    EXPECT_EQ(window_->state().car, moved);
}

TEST_F(Bench, ClickingAFreeHoleBoltsTheLinkThere) {
    const QString before = text("instantCenterFigure");
    const PointId hole = freeAxleHole();
    QTest::mouseClick(&window_->sideView(), Qt::LeftButton, Qt::NoModifier, place(hole));
    EXPECT_EQ(window_->state().car.links[0].axle.use, hole.hole);
    EXPECT_NE(text("instantCenterFigure"), before);
    EXPECT_EQ(window_->document().undoStack().count(), 1);
}

TEST_F(Bench, ArrowKeysNudgeTheSelectedHole) {
    SideView& view = window_->sideView();
    QTest::mouseClick(&view, Qt::LeftButton, Qt::NoModifier, place(kLowerFront));
    const double before = window_->state().car.links[0].chassis.holes[0].at.z();
    QTest::keyClick(&view, Qt::Key_Up);
    EXPECT_NEAR(window_->state().car.links[0].chassis.holes[0].at.z() - before, 0.0254 / 16, 1e-12);
    QTest::keyClick(&view, Qt::Key_Down, Qt::ShiftModifier);
    EXPECT_NEAR(window_->state().car.links[0].chassis.holes[0].at.z() - before, -3 * 0.0254 / 16, 1e-12);
}

TEST_F(Bench, KeysAloneWalkToAHoleAndBoltIt) {
    SideView& view = window_->sideView();
    view.setFocus();
    const PointId wanted = freeAxleHole();
    for (int tries = 0; tries < 20 && !(window_->state().selection == wanted); ++tries) {
        QTest::keyClick(&view, Qt::Key_Period);
    }
    ASSERT_EQ(window_->state().selection, wanted);
    QTest::keyClick(&view, Qt::Key_Return);
    EXPECT_EQ(window_->state().car.links[0].axle.use, wanted.hole);
}

TEST_F(Bench, TheCursorIsTiedBothWays) {
    auto* slider = window_->findChild<TravelSlider*>(QStringLiteral("benchSlider"));
    auto* curves = window_->findChild<TravelCurves*>();
    const QPointF ride = window_->sideView().placeOf({PointId::Kind::hole, 0, End::axle, 0});
    QTest::keyClick(slider, Qt::Key_Home);
    EXPECT_NEAR(window_->state().cursorTravel, window_->state().car.travel.bump, 1e-12);
    const QPointF bump = window_->sideView().placeOf({PointId::Kind::hole, 0, End::axle, 0});
    EXPECT_NEAR(ride.y() - bump.y(), window_->state().car.travel.bump * window_->sideView().camera().scale,
                3.0);
    EXPECT_TRUE(text("figureNote").contains(QStringLiteral("bump")));
    // A press in the curves, at their lower end, brings the axle and the slider down.
    const QRect plots = curves->plotArea();
    QTest::mouseClick(curves, Qt::LeftButton, Qt::NoModifier, QPoint(plots.center().x(), plots.bottom() - 2));
    EXPECT_LT(window_->state().cursorTravel, -0.9 * window_->state().car.travel.droop);
    EXPECT_NEAR(slider->travel(), window_->state().cursorTravel, 1e-12);
}

TEST_F(Bench, UnitsSwitchEveryFigure) {
    auto* choice = window_->findChild<QComboBox*>(QStringLiteral("styleChoice"));
    const Car before = window_->state().car;
    choice->setCurrentIndex(3);
    emit choice->activated(3);
    EXPECT_EQ(window_->state().car.units, Units::metric);
    EXPECT_TRUE(text("instantCenterFigure").contains(QStringLiteral(" mm")));
    EXPECT_EQ(window_->document().undoStack().count(), 0) << "units are no change of the car";
    EXPECT_FALSE(window_->document().isEdited());
    choice->setCurrentIndex(0);
    emit choice->activated(0);
    EXPECT_EQ(window_->state().car, before);
}

// Also at a later start, when nothing else says so.
TEST_F(Bench, ADemoIsCalledOneUntilItIsSaved) {
    const auto* said = window_->findChild<QLabel*>(QStringLiteral("fileState"));
    ASSERT_NE(said, nullptr);
    EXPECT_EQ(said->text().toStdString(), "a demo: an invented car");
    EXPECT_EQ(window_->document().apply(SetNumber{{.field = Field::wheelbase}, 2.9}, EditPhase::whole, {}),
              QString());
    EXPECT_EQ(said->text().toStdString(), "a demo, edited");
}

// Also while another page is in front: then the bench is dressed anew when it is shown.
TEST_F(Bench, TheFiguresNamesFollowTheTheme) {
    for (const Appearance appearance : {Appearance::dark, Appearance::light}) {
        QTest::keyClick(window_.get(), Qt::Key_2, Qt::AltModifier);
        QCoreApplication::processEvents();
        ThemeKeeper::instance().choose(appearance);
        QTest::keyClick(window_.get(), Qt::Key_1, Qt::AltModifier);
        QCoreApplication::processEvents();
        for (const char* name : {"antiSquatFigureUncertainty", "pinionFigureUncertainty", "figureNote"}) {
            const auto* label = window_->findChild<QLabel*>(QString::fromLatin1(name));
            ASSERT_NE(label, nullptr);
            EXPECT_EQ(label->palette().color(QPalette::WindowText), theme().muted) << name;
        }
    }
}

// No figure of another car stands in for those it does not have, and one sentence says why, whole.
TEST_F(Bench, ACarThatCannotBeAssembledShowsNoFigures) {
    const QString before = text("instantCenterFigure");
    Document& document = window_->document();
    EXPECT_EQ(document.apply(SetNumber{{.field = Field::linkLength, .link = 0}, 2.0}, EditPhase::whole, {}),
              QString());
    EXPECT_FALSE(window_->state().traceIsCurrent);
    EXPECT_EQ(text("instantCenterFigure"), QStringLiteral("\u2014"));
    EXPECT_EQ(text("antiSquatFigure"), QStringLiteral("\u2014"));
    for (const Station& station : window_->state().trace.stations) {
        EXPECT_FALSE(station.usable);
    }
    auto* note = window_->findChild<QLabel*>(QStringLiteral("figureNote"));
    EXPECT_TRUE(note->text().contains(QString::fromStdString(window_->state().problem)));
    QCoreApplication::processEvents();
    EXPECT_GE(note->height(), note->heightForWidth(note->width())) << "the reason is cut";
    trigger(QStringLiteral("Undo"));
    EXPECT_TRUE(window_->state().traceIsCurrent);
    EXPECT_EQ(text("instantCenterFigure"), before);
}

TEST_F(Bench, SavesAndReopensTheSameCar) {
    QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("mine.bolt.json"));
    dragBy(kLowerFront, {0, 12});
    const Car car = window_->state().car;
    ASSERT_TRUE(window_->document().save(file).saved());
    EXPECT_FALSE(window_->isWindowModified());
    dragBy(kLowerFront, {10, 0});
    trigger(QStringLiteral("Undo"));
    ASSERT_FALSE(window_->isWindowModified()) << window_->document().undoStack().undoText().toStdString();
    window_->openFile(file);
    Car reread = window_->state().car;
    EXPECT_EQ(reread.links[0].chassis.holes[0].at, car.links[0].chassis.holes[0].at);
    EXPECT_EQ(window_->document().fileName(), file);
}

TEST_F(Bench, AFaultyFileLoadsNothing) {
    QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("bad.bolt.json"));
    std::ofstream(file.toStdString()) << R"({"format": "bolthole-car", "version": 1, "wheelbase": "long"})";
    const Car before = window_->state().car;
    window_->openFile(file);
    EXPECT_EQ(window_->state().car, before);
    EXPECT_TRUE(window_->findChild<NoticeBar*>()->text().contains(QStringLiteral("wheelbase")));
}

// What was asked for at start and can't be opened must not pass for the demo: the notice stays over it.
TEST(WindowStart, AFileThatCanNotBeOpenedIsSaidOverTheDemo) {
    QTemporaryDir folder;
    const QString broken = folder.filePath(QStringLiteral("broken.bolt.json"));
    std::ofstream(broken.toStdString()) << R"({"format": "bolthole-car", "version": )";
    const QString picture = folder.filePath(QStringLiteral("picture.png"));
    std::ofstream(picture.toStdString()) << "\x89PNG\r\n";
    const QString demo = QStringLiteral("long-roof-wagon.bolt.json");
    for (const QString& file :
         {broken, picture, folder.filePath(QStringLiteral("missing.bolt.json")), folder.path()}) {
        MainWindow window(Settings{});
        const QString said = window.openAtStart(file, demo);
        window.show();
        EXPECT_THAT(said.toStdString(), testing::HasSubstr("was not opened: ")) << file.toStdString();
        const auto* notice = window.findChild<NoticeBar*>();
        EXPECT_EQ(notice->text(), said);
        EXPECT_TRUE(notice->isVisible());
        EXPECT_FALSE(window.state().car.links.empty()) << "the demo is on the bench";
    }
    MainWindow window(Settings{});
    EXPECT_EQ(window.openAtStart(QString(), demo), QString());
    EXPECT_FALSE(window.state().car.links.empty());
}

TEST_F(Bench, FigureTableAgreesWithTheTrace) {
    auto* table = window_->findChild<FigureTable*>();
    const double ride = window_->state().trace.ride[Figure::antiSquat];
    EXPECT_EQ(table->item(0, 1)->text().toStdString(), fineFigureText(ride, Quantity::percent, Units::inch));
}

// Every widget that takes the focus says what it is.
TEST_F(Bench, FocusableWidgetsHaveAccessibleNames) {
    for (QWidget* widget : window_->findChildren<QWidget*>()) {
        const bool wanted = widget->isVisible() && (widget->focusPolicy() & Qt::TabFocus) != 0 &&
                            !widget->objectName().startsWith(QStringLiteral("qt_"));
        const bool isButton = widget->inherits("QAbstractButton");
        if (wanted && !isButton && !widget->inherits("QScrollArea") && !widget->inherits("QMenuBar")) {
            EXPECT_FALSE(widget->accessibleName().isEmpty())
                << widget->metaObject()->className() << " " << widget->objectName().toStdString();
        }
    }
}

}  // namespace
}  // namespace bolthole
