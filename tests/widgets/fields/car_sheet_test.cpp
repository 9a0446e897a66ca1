#include "widgets/fields/car_sheet.h"

#include <QtTest/qtestspontaneevent.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QElapsedTimer>
#include <QScrollArea>
#include <QScrollBar>
#include <QStyle>
#include <QStyleOptionFrame>
#include <QTest>
#include <QToolButton>
#include <QWheelEvent>
#include <algorithm>

#include "tests/support/sheet_bench.h"
#include "widgets/fields/car_sheet_groups.h"
#include "widgets/fields/link_section.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"

namespace bolthole {
namespace {

using test::inches;

class CarSheetTest : public test::SheetBench {};

TEST_F(CarSheetTest, EveryNumberOfTheCarHasAFieldWithNameUnitAndHowTo) {
    state_.car.driveline = startingDriveline(state_.car);
    sheet_->showState(state_);
    std::size_t expected = 9 + 4;  // whole car with rear track and travel; weights
    for (const Link& each : state_.car.links) {
        expected +=
            3 * (each.chassis.holes.size() + each.axle.holes.size()) + 2 + 5;  // length, pitch, limits
    }
    expected += 2 + 2 * 3 + 1;
    QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    std::size_t found = 0;
    for (const NumberField* field : sheet_->findChildren<NumberField*>()) {
        found += field->accessibleName().contains("taped length") ? 0U : 1U;
        EXPECT_FALSE(field->accessibleName().isEmpty());
        EXPECT_GT(field->accessibleDescription().size(), 20) << field->accessibleName().toStdString();
        EXPECT_FALSE(field->toolTip().isEmpty());
    }
    EXPECT_EQ(found, expected);
}

TEST_F(CarSheetTest, TypedFractionsReachTheCar) {
    for (const char* text : {"116 3/8", "116-3/8", "116.375"}) {
        state_.car.wheelbase = 1;
        sheet_->showState(state_);
        type("wheelbase", text);
        EXPECT_NEAR(state_.car.wheelbase, 116.375 * kMetresPerInch, 1e-12) << text;
    }
    type("lower, axle hole top, height", "240 mm");
    EXPECT_NEAR(state_.car.links[0].axle.holes[0].at.z(), 0.240, 1e-12);
}

TEST_F(CarSheetTest, NonsenseIsRefusedUnderTheFieldAndNothingChanges) {
    type("wheelbase", "long");
    EXPECT_TRUE(edits_.empty());
    const auto notes = sheet_->findChildren<NoteLabel*>();
    const auto shown = std::count_if(notes.begin(), notes.end(), [](const NoteLabel* note) {
        return note->isVisible() && !note->text().isEmpty();
    });
    EXPECT_EQ(shown, 1);
    type("wheelbase", "-3");
    EXPECT_TRUE(edits_.empty()) << "the car file's limits hold at the field";
    QTest::keyClick(named<NumberField>("wheelbase"), Qt::Key_Escape);
    EXPECT_EQ(named<NumberField>("wheelbase")->text(), "110");
}

TEST_F(CarSheetTest, TheWheelScrollsAndChangesNothing) {
    state_.car.driveline = startingDriveline(state_.car);
    sheet_->showState(state_);
    sheet_->resize(300, 400);
    QApplication::processEvents();
    auto* bar = sheet_->findChild<QScrollArea*>()->verticalScrollBar();
    const Car before = state_.car;
    for (QWidget* widget : {static_cast<QWidget*>(named<NumberField>("wheelbase")),
                            static_cast<QWidget*>(named<CalmCombo>("upper, adjuster"))}) {
        widget->setFocus();
        bar->setValue(0);
        ASSERT_GT(bar->maximum(), 0);
        QWheelEvent wheel(QPointF(3, 3), widget->mapToGlobal(QPointF(3, 3)), QPoint(), QPoint(0, -120),
                          Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase, false);
        QSpontaneKeyEvent::setSpontaneous(&wheel);  // only those from a person pass on to the parent
        qApp->notify(widget, &wheel);
        EXPECT_GT(bar->value(), 0);
    }
    EXPECT_TRUE(edits_.empty());
    EXPECT_EQ(named<CalmCombo>("upper, adjuster")->currentIndex(), 1);
}

// Two brackets a link, chassis before axle; from a link's other numbers to what stands before and after them.
TEST_F(CarSheetTest, TheHolesOfEveryBracketAreOneStepFromTheLast) {
    std::vector<FieldId> asked;
    QObject::connect(sheet_.get(), &CarSheet::fieldRequested, sheet_.get(), [&](const FieldId& id) {
        asked.push_back(id);
        sheet_->focusField(id);
    });
    const auto count = static_cast<int>(state_.car.links.size());
    ASSERT_GE(count, 2);
    named<NumberField>("wheelbase")->setFocus();
    for (int step = 0; step <= 2 * count; ++step) {
        sheet_->goToNextHoles(1);
        const int place = step % (2 * count);
        const End end = place % 2 == 0 ? End::chassis : End::axle;
        const Link& link = state_.car.links[static_cast<std::size_t>(place / 2)];
        EXPECT_EQ(asked.back(), holeField(place / 2, end, link.bracket(end).use, 0)) << step;
    }
    sheet_->goToNextHoles(-1);
    EXPECT_EQ(asked.back().link, count - 1);
    EXPECT_EQ(asked.back().end, End::axle);
    sheet_->focusField({.field = Field::linkLength, .link = 0});
    sheet_->goToNextHoles(1);
    EXPECT_EQ(asked.back().link, 1);
    EXPECT_EQ(asked.back().end, End::chassis);
    sheet_->focusField({.field = Field::linkLength, .link = 0});
    sheet_->goToNextHoles(-1);
    EXPECT_EQ(asked.back().link, 0);
    EXPECT_EQ(asked.back().end, End::axle);
}

// A rod of another length turns the housing: the field keeps what was measured, and says what the figures
// have.
TEST_F(CarSheetTest, APinionThatNoLongerStandsAsMeasuredIsSaidUnderItsField) {
    state_.car.driveline = startingDriveline(state_.car);
    state_.car.links[1].length = holeDistance(state_.car.links[1]);
    const auto show = [this] {
        computeTrace(state_.car, state_.trace);
        state_.traceIsCurrent = state_.trace.assembly.usable();
        sheet_->showState(state_);
        return sheet_->findChild<QLabel*>("pinionNow");
    };
    ASSERT_NE(show(), nullptr);
    EXPECT_FALSE(show()->isVisible());
    *state_.car.links[1].length += 0.01;
    const QLabel* now = show();
    ASSERT_TRUE(state_.traceIsCurrent);
    EXPECT_TRUE(now->isVisible());
    const std::string angle = figureText(state_.trace.ride[Figure::pinion], Quantity::angle, Units::inch);
    EXPECT_EQ(now->text().toStdString(),
              "As measured. In the current holes and lengths, at ride: " + angle + "\u00B0");
    EXPECT_NE(angle, figureText(state_.car.driveline->pinionAngle, Quantity::angle, Units::inch));
}

TEST_F(CarSheetTest, ADrivelineIsAddedMarkedAndRemoved) {
    const auto button = [&](const QString& text) {
        QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        for (QAbstractButton* each : sheet_->findChildren<QAbstractButton*>()) {
            if (each->text() == text) {
                return each;
            }
        }
        return static_cast<QAbstractButton*>(nullptr);
    };
    const auto isMarked = [&](const QString& field) {
        return named<NumberField>(field)->origin() == Origin::starting;
    };
    const QString pinion = QStringLiteral("pinion angle, nose up");
    const QString output = QStringLiteral("transmission output angle, rising forward");
    button("Add driveline")->click();
    ASSERT_TRUE(state_.car.driveline.has_value());
    EXPECT_EQ(button("Add driveline"), nullptr);
    EXPECT_TRUE(isMarked(pinion));
    type(pinion, "2");
    EXPECT_NEAR(state_.car.driveline->pinionAngle, 2 * kRadiansPerDegree, 1e-15);
    EXPECT_FALSE(isMarked(pinion));
    EXPECT_TRUE(isMarked(output));
    type(output, named<NumberField>(output)->text());
    EXPECT_FALSE(isMarked(output)) << "the same number typed is measured too";
    button("Remove driveline")->click();
    EXPECT_FALSE(state_.car.driveline.has_value());
    EXPECT_NE(button("Add driveline"), nullptr);
}

TEST_F(CarSheetTest, UnitsSwitchEveryFieldButTheOneBeingTyped) {
    auto* radius = named<NumberField>("rear tire radius, loaded");
    radius->setFocus();
    radius->selectAll();
    QTest::keyClicks(radius, "14");
    state_.style.units = Units::metric;
    sheet_->showState(state_);
    EXPECT_EQ(radius->text(), "14");
    EXPECT_EQ(named<NumberField>("wheelbase")->text(), "2794");
    EXPECT_EQ(named<NumberField>("lower, axle hole top, forward")->text(), "12.7");
    QTest::keyClick(radius, Qt::Key_Tab);
    EXPECT_NEAR(state_.car.rearTireRadius, 14 * kMetresPerInch, 1e-12);
    EXPECT_EQ(radius->text(), "355.6");
}

TEST_F(CarSheetTest, FaultsStandAtTheirField) {
    state_.car.cgHeight = -1;
    state_.faults.push_back({carField(Field::cgHeight), "cg_height", "a length above 0 is expected"});
    sheet_->showState(state_);
    auto* field = named<NumberField>("height of the center of gravity");
    EXPECT_EQ(field->note(), "a length above 0 is expected");
    type("height of the center of gravity", "22");
    state_.faults.clear();
    sheet_->showState(state_);
    EXPECT_TRUE(field->note().isEmpty());
}

TEST_F(CarSheetTest, TitleLinkNamesAndNotesAreEdited) {
    auto* title = named<NameField>("title of the car");
    title->setFocus();
    title->selectAll();
    QTest::keyClicks(title, "Test pass");
    QTest::keyClick(title, Qt::Key_Tab);
    EXPECT_EQ(state_.car.title, "Test pass");
    auto* name = named<NameField>("lower, name of the link");
    name->setFocus();
    name->selectAll();
    QTest::keyClicks(name, "bottom bar");
    QTest::keyClick(name, Qt::Key_Return);
    EXPECT_EQ(state_.car.links[0].name, "bottom bar");
    EXPECT_NE(named<NumberField>("bottom bar, axle hole top, height"), nullptr);
    name->selectAll();
    QTest::keyClick(name, Qt::Key_Delete);
    QTest::keyClick(name, Qt::Key_Return);
    EXPECT_EQ(name->text(), "bottom bar") << "a link keeps a name";
    auto* notes = sheet_->findChild<NotesField*>();
    notes->setFocus();
    QTest::keyClicks(notes, "taped twice");
    title->setFocus();
    EXPECT_EQ(state_.car.notes, "taped twice");
}

TEST_F(CarSheetTest, AFieldOfAHoleSelectsIt) {
    named<NumberField>("upper, chassis hole low, height")->setFocus();
    const PointId expected{PointId::Kind::hole, 1, End::chassis, 1};
    EXPECT_TRUE(state_.selection == expected);
    sheet_->focusField(holeField(1, End::chassis, 1, -1));
    EXPECT_TRUE(named<NumberField>("upper, chassis hole low, height")->hasFocus())
        << "a selection that came from a field leaves the focus there";
}

TEST_F(CarSheetTest, FocusFieldUnfoldsScrollsAndEnters) {
    const auto sections = sheet_->findChildren<LinkSection*>();
    QTest::keyClick(sections.at(2)->header(), Qt::Key_Left);
    auto* field = named<NumberField>("track bar, axle hole housing, forward");
    EXPECT_FALSE(field->isVisible());
    EXPECT_TRUE(sections.at(2)->header()->accessibleDescription().contains("frame / housing"));
    sheet_->resize(300, 300);
    sheet_->focusField(holeField(2, End::axle, 0, -1));
    EXPECT_TRUE(field->hasFocus());
    EXPECT_TRUE(field->isVisible());
    EXPECT_FALSE(field->visibleRegion().isEmpty());
}

TEST_F(CarSheetTest, TabFollowsTheReadingOrder) {
    auto* first = named<NameField>("title of the car");
    first->setFocus();
    QPoint last(-1, -1);
    for (int i = 0; i < 30; ++i) {
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
        const QWidget* now = QApplication::focusWidget();
        const QPoint at = now->mapTo(sheet_->findChild<QScrollArea*>()->widget(), now->rect().center());
        const bool sameLine = std::abs(at.y() - last.y()) < 6;
        EXPECT_TRUE(sameLine ? at.x() > last.x() : at.y() > last.y())
            << i << ": " << now->accessibleName().toStdString();
        last = at;
    }
}

TEST_F(CarSheetTest, CornerWeightsAreSummedUp) {
    const auto labels = sheet_->findChildren<ToneLabel*>();
    // 1550 kg is 3417.2 lb by the pound of 0.45359237 kg; 880 of 1550 is 56.77 %.
    EXPECT_TRUE(std::any_of(labels.begin(), labels.end(), [](const ToneLabel* label) {
        return label->text().contains("3417 lb") && label->text().contains("56.8 %");
    }));
}

/// Room for text inside a line edit: its contents less the two pixels it keeps clear at either side.
int textRoom(const QLineEdit& edit) {
    QStyleOptionFrame option;
    option.initFrom(&edit);
    option.lineWidth = 1;
    return edit.style()->subElementRect(QStyle::SE_LineEditContents, &option, &edit).width() - 4;
}

/// Numbers as wide as they get on a car, in every place; also what pictures are taken of.
void fillWide(Car& car) {
    car.links[0].chassis.holes[0].at = inches(21 + 13.0 / 16, 18 + 11.0 / 16, 10 + 13.0 / 16);
    car.links[0].length = (21 + 15.0 / 16) * kMetresPerInch;
    car.rearTrack = 1.4986;
    car.links[0].rodEndLimit = 12.5 * kRadiansPerDegree;
    car.links[1].adjuster = Adjuster{.pitch = kUsualPitch,
                                     .shortest = (11 + 13.0 / 16) * kMetresPerInch,
                                     .longest = (14 + 15.0 / 16) * kMetresPerInch,
                                     .engagement = (1 + 3.0 / 16) * kMetresPerInch,
                                     .engagementAt = (14 + 11.0 / 16) * kMetresPerInch,
                                     .leastEngagement = 15.0 / 16 * kMetresPerInch};
    car.driveline = startingDriveline(car);
    car.driveline->outputJoint = inches(60 + 11.0 / 16, 0, 15 + 13.0 / 16);
}

TEST_F(CarSheetTest, NumbersAndLabelsFitAtEveryWidth) {
    fillWide(state_.car);
    state_.warnings.push_back(
        {"links[0].length",
         linkField(Field::linkLength, 0),
         {Severity::wrong,
          "The written length is 5/8 in longer than the holes are apart: built so, the axle would "
          "stand 5/8 in further back and the pinion 0.9\u00b0 nose down.",
          ""}});
    sheet_->showState(state_);
    type("wheelbase", "110 1/");
    type("lower, axle hole middle, height", "8,5");
    for (const QString& link :
         {QStringLiteral("lower"), QStringLiteral("upper"), QStringLiteral("track bar")}) {
        QTest::mouseClick(named<QToolButton>(link + ": limits"), Qt::LeftButton);
    }
    QTest::mouseClick(named<QToolButton>("upper: find forward from length"), Qt::LeftButton);
    type("upper, taped length center to center", "14 1/4");
    sheet_->findChildren<LinkSection*>().at(2)->setUnfolded(false);
    named<NumberField>("upper, chassis hole low, height")->setFocus();
    const QString pictures = qEnvironmentVariable("BOLTHOLE_PICTURES");
    for (const Appearance appearance : {Appearance::light, Appearance::dark}) {
        ThemeKeeper::instance().choose(appearance);
        for (const Units units : {Units::inch, Units::metric}) {
            for (const int width : {270, 300, 420}) {
                state_.style.units = units;
                sheet_->showState(state_);
                sheet_->resize(width, pictures.isEmpty() ? 900 : 2200);
                QApplication::processEvents();
                const auto* scroll = sheet_->findChild<QScrollArea*>();
                EXPECT_LE(scroll->widget()->width(), scroll->viewport()->width()) << "cut off at " << width;
                for (const NumberField* field : sheet_->findChildren<NumberField*>()) {
                    const int wide = field->fontMetrics().horizontalAdvance(field->text());
                    EXPECT_TRUE(!field->isVisible() || wide <= textRoom(*field))
                        << field->accessibleName().toStdString() << " at " << width << ": '"
                        << field->text().toStdString() << "' takes " << wide << " of " << textRoom(*field);
                }
                for (const QLabel* label : sheet_->findChildren<QLabel*>()) {
                    EXPECT_TRUE(!label->isVisible() || label->wordWrap() ||
                                label->width() >= label->sizeHint().width())
                        << label->text().toStdString() << " at " << width;
                }
                if (!pictures.isEmpty()) {
                    sheet_->grab().save(QStringLiteral("%1/sheet_%2_%3_%4.png")
                                            .arg(pictures, appearance == Appearance::dark ? "dark" : "light",
                                                 units == Units::inch ? "inch" : "metric")
                                            .arg(width));
                }
            }
        }
    }
    ThemeKeeper::instance().choose(Appearance::light);
}

TEST_F(CarSheetTest, DraggingAHoleBuildsNothingAndIsCheap) {
    const auto before = sheet_->findChildren<QWidget*>();
    constexpr int kMoves = 200;
    QElapsedTimer timer;
    timer.start();
    for (int i = 0; i < kMoves; ++i) {
        state_.car.links[0].axle.holes[1].at += inches(0.0625, 0, 0.0625) * (i % 2 == 0 ? 1 : -1);
        sheet_->showState(state_);
    }
    const double each = static_cast<double>(timer.nsecsElapsed()) / 1e6 / kMoves;
    RecordProperty("milliseconds_per_show", std::to_string(each));
    std::printf("showState while dragging: %.3f ms\n", each);
    EXPECT_EQ(sheet_->findChildren<QWidget*>(), before);
}

}  // namespace
}  // namespace bolthole
