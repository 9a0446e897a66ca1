// The Brackets page with what a window would do around it: a plate entered, changed and taken away by fields,
// mouse and keys, every change one edit.
#include "widgets/pages/brackets/bracket_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <Eigen/Geometry>
#include <QAbstractButton>
#include <QApplication>
#include <QImage>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <set>

#include "geometry/plates/plate_room.h"
#include "tests/support/bracket_car.h"
#include "tests/support/made_units.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/pages/brackets/bracket_facts.h"
#include "widgets/pages/brackets/bracket_picture.h"

namespace bolthole {
namespace {

using testing::HasSubstr;
using testing::Not;

class BracketPageTest : public testing::Test {
  protected:
    static void SetUpTestSuite() { ThemeKeeper::instance().choose(Appearance::light); }

    BracketPageTest() {
        QObject::connect(&page_, &WorkPage::edited, &page_, [this](const Edit& edit) {
            edits_.push_back(edit);
            EditResult result = bolthole::apply(state_.car, edit);
            refusal_ = result.refusal;
            state_.car = std::move(result.car);
            page_.showState(state_);
        });
        page_.resize(1180, 720);
        page_.show();
        QApplication::setActiveWindow(&page_);
        open(test::bracketCar(Units::inch));
        page_.choose({0, End::axle});
    }
    void open(const Car& car) {
        state_.car = car;
        state_.style = {car.units};
        page_.showState(state_);
    }
    [[nodiscard]] const Bracket& bracket() const { return state_.car.links[0].axle; }
    [[nodiscard]] const Plate& plate() const { return *bracket().plate; }
    template <class Kind>
    Kind* named(const QString& name) {
        QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        for (Kind* widget : page_.findChildren<Kind*>()) {
            if (widget->accessibleName() == name) {
                return widget;
            }
        }
        ADD_FAILURE() << name.toStdString();
        return nullptr;
    }
    template <class Kind>
    bool has(const QString& name) {
        QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        const QList<Kind*> all = page_.findChildren<Kind*>();
        return std::ranges::any_of(all, [&](Kind* widget) { return widget->accessibleName() == name; });
    }
    void type(const QString& field, const QString& text) {
        auto* number = named<NumberField>(field);
        ASSERT_NE(number, nullptr);
        number->setFocus();
        number->selectAll();
        QTest::keyClicks(number, text);
        QTest::keyClick(number, Qt::Key_Return);
    }
    [[nodiscard]] QString allWords() {
        QString all;
        for (const ToneLabel* label : page_.findChildren<ToneLabel*>()) {
            all += label->isVisible() ? label->text() + '\n' : QString();
        }
        return all;
    }

    BenchState state_;
    BracketPage page_;
    std::vector<Edit> edits_;
    std::string refusal_;
};

}  // namespace

// A re-based plate stands a hair off level. Its no-drill band stays as it is drawn: what such a turn moves is
// the edge's own smoothing, a sixteenth of what the band covers.
TEST_F(BracketPageTest, NoDrillBandStaysOnAPlateTurnedByAHair) {
    const auto pictureTurnedBy = [this](double angle) {
        Car car = test::bracketCar(Units::inch);
        std::vector<Eigen::Vector2d>& corners = car.links[0].axle.plate->corners;
        const Eigen::Vector2d about = corners[0];
        for (Eigen::Vector2d& corner : corners) {
            corner = about + Eigen::Rotation2Dd(angle) * (corner - about);
        }
        open(car);
        return page_.findChild<BracketPicture*>()->grab().toImage();
    };
    const auto differing = [](const QImage& one, const QImage& other) {
        int count = 0;
        for (int y = 0; y < one.height(); ++y) {
            for (int x = 0; x < one.width(); ++x) {
                count += one.pixel(x, y) != other.pixel(x, y) ? 1 : 0;
            }
        }
        return count;
    };
    const QImage level = pictureTurnedBy(0);
    Car bare = test::bracketCar(Units::inch);
    bare.links[0].axle.plate->edgeDistance = 1e-6;
    open(bare);
    const int band = differing(level, page_.findChild<BracketPicture*>()->grab().toImage());
    ASSERT_GT(band, 2000) << "the band is there";
    // A sixteenth of it is how the edges of a plate are smoothed that no longer lies on the pixels' lines.
    for (const double hair : {1e-15, -4e-12, 3e-11, 4e-9, -2e-7, 2.2e-6}) {
        EXPECT_LT(differing(level, pictureTurnedBy(hair)), band / 8) << hair;
    }
}

TEST_F(BracketPageTest, ListsBothBracketsOfEveryLink) {
    const auto* choice = page_.findChild<QComboBox*>(QStringLiteral("bracketChoice"));
    ASSERT_NE(choice, nullptr);
    EXPECT_EQ(choice->count(), 6);
    EXPECT_EQ(choice->currentText(), QStringLiteral("lower, axle bracket"));
    EXPECT_EQ(choice->itemText(4), QStringLiteral("track bar, chassis bracket"));
}

TEST_F(BracketPageTest, BeginsWithABracketThatHasAPlate) {
    BracketPage fresh;
    fresh.showState(state_);
    EXPECT_EQ(fresh.place(), (BracketId{0, End::axle}));
    BenchState bare = state_;
    bare.car.links[0].axle.plate.reset();
    BracketPage other;
    other.showState(bare);
    EXPECT_EQ(other.place(), (BracketId{0, End::chassis}));
}

TEST_F(BracketPageTest, WithoutAPlateOffersARectangleThatIsOneEdit) {
    page_.choose({1, End::chassis});
    EXPECT_THAT(allWords().toStdString(), HasSubstr("No plate entered for this bracket."));
    QPushButton* begin = nullptr;
    for (QPushButton* button : page_.findChildren<QPushButton*>()) {
        begin = button->isVisible() ? button : begin;
    }
    ASSERT_NE(begin, nullptr);
    QTest::mouseClick(begin, Qt::LeftButton);
    ASSERT_EQ(edits_.size(), 1U);
    const auto* edit = edits_[0].as<SetPlate>();
    ASSERT_NE(edit, nullptr);
    EXPECT_EQ(edit->link, 1);
    EXPECT_EQ(edit->end, End::chassis);
    EXPECT_EQ(refusal_, "");
    EXPECT_EQ(state_.car.links[1].chassis.plate->corners.size(), 4U);
    EXPECT_THAT(allWords().toStdString(),
                HasSubstr("Not measured yet: 4 of 4 corners, hole diameter, edge distance, hole spacing."));
    type(QStringLiteral("Corner 1, forward"), QStringLiteral("-1 1/2"));
    EXPECT_THAT(allWords().toStdString(), HasSubstr("Not measured yet: 4 of 4 corners"))
        << "nobody measured how far up it is";
    EXPECT_EQ(named<NumberField>(QStringLiteral("Corner 1, forward"))->origin(), Origin::measured);
    EXPECT_EQ(named<NumberField>(QStringLiteral("Corner 1, up"))->origin(), Origin::starting);
    type(QStringLiteral("Corner 1, up"), QStringLiteral("-1 1/2"));
    EXPECT_THAT(allWords().toStdString(), HasSubstr("Not measured yet: 3 of 4 corners"));
}

// A made-up plate must not pass for a measured one, whatever else is changed.
TEST_F(BracketPageTest, WhatTheRectanglePutStaysUnmeasuredUntilItIsTyped) {
    const Bracket bare{.holes = bracket().holes, .use = bracket().use};
    Car car = state_.car;
    car.links[0].axle.plate = rectangleAround(bare, startingRules(Units::inch), Units::inch);
    const PlateStarts begun = car.links[0].axle.plate->starts;
    open(car);
    const std::string all = "Not measured yet: 4 of 4 corners, hole diameter, edge distance, hole spacing.";
    EXPECT_THAT(allWords().toStdString(), HasSubstr(all));
    state_.style = {Units::metric};
    page_.showState(state_);
    EXPECT_THAT(allWords().toStdString(), HasSubstr(all)) << "other units measure nothing";
    state_.car.links[0].axle.holes[0].at.z() += 0.01;
    page_.showState(state_);
    EXPECT_THAT(allWords().toStdString(), HasSubstr(all)) << "nor does a hole typed elsewhere";
    auto* edge = named<NumberField>(QStringLiteral("Least edge distance"));
    EXPECT_EQ(edge->origin(), Origin::starting);
    edge->setFocus();
    QTest::keyClick(edge, Qt::Key_Up);
    EXPECT_EQ(plate().starts, begun) << "a step is no measure";
    type(QStringLiteral("Least edge distance"), edge->text());
    EXPECT_FALSE(plate().starts.edgeDistance) << "the same number typed is one";
    EXPECT_EQ(edge->origin(), Origin::measured);
    type(QStringLiteral("Hole diameter"), QStringLiteral("13"));
    type(QStringLiteral("Least hole spacing, diameters"), QStringLiteral("2"));
    EXPECT_THAT(allWords().toStdString(), HasSubstr("Not measured yet: 4 of 4 corners."));
}

TEST_F(BracketPageTest, ANewRectangleAroundAMeasuredPlateKeepsItsRules) {
    EXPECT_THAT(allWords().toStdString(), Not(HasSubstr("Not measured yet")));
    QTest::mouseClick(named<QAbstractButton>(QStringLiteral("Rectangle around the holes")), Qt::LeftButton);
    EXPECT_THAT(allWords().toStdString(), HasSubstr("Not measured yet: 4 of 4 corners."));
}

TEST_F(BracketPageTest, MarksGoWithTheirCorners) {
    using Coordinates = std::set<PlateStarts::Coordinate>;
    QTest::mouseClick(named<QAbstractButton>(QStringLiteral("Add a corner after corner 2")), Qt::LeftButton);
    EXPECT_EQ(plate().starts.corners, (Coordinates{{2, 0}, {2, 1}})) << "halfway is put there, not measured";
    EXPECT_THAT(allWords().toStdString(), HasSubstr("Not measured yet: 1 of 6 corners."));
    QTest::mouseClick(named<QAbstractButton>(QStringLiteral("Remove corner 1")), Qt::LeftButton);
    EXPECT_EQ(plate().starts.corners, (Coordinates{{1, 0}, {1, 1}}));
    Plate swapped = plate();
    swapCorners(swapped, 1, 2);
    EXPECT_EQ(swapped.starts.corners, (Coordinates{{2, 0}, {2, 1}}));
    QTest::mouseClick(named<QAbstractButton>(QStringLiteral("Remove corner 2")), Qt::LeftButton);
    EXPECT_FALSE(plate().starts.any());
    EXPECT_THAT(allWords().toStdString(), Not(HasSubstr("Not measured yet")));
}

TEST_F(BracketPageTest, EveryNumberOfThePlateIsOneEdit) {
    type(QStringLiteral("Hole diameter"), QStringLiteral("1/2"));
    EXPECT_NEAR(plate().holeDiameter, 0.5 * kInch, 1e-12);
    type(QStringLiteral("Least edge distance"), QStringLiteral("7/8"));
    EXPECT_NEAR(plate().edgeDistance, 0.875 * kInch, 1e-12);
    type(QStringLiteral("Least hole spacing, diameters"), QStringLiteral("2.5"));
    EXPECT_NEAR(plate().holeSpacing, 2.5, 1e-12);
    EXPECT_EQ(edits_.size(), 3U);
}

// The hole in use, 'middle', is at 0.5 in forward, 8.5 in up.
TEST_F(BracketPageTest, CornersAreMeasuredFromTheHoleInUseUnlessToldOtherwise) {
    type(QStringLiteral("Corner 1, forward"), QStringLiteral("-1 1/4"));
    EXPECT_NEAR(plate().corners[0].x(), -0.75 * kInch, 1e-12);
    type(QStringLiteral("Corner 1, up"), QStringLiteral("-3"));
    EXPECT_NEAR(plate().corners[0].y(), 5.5 * kInch, 1e-12);
    auto* from = named<QComboBox>(QStringLiteral("Corners measured from"));
    ASSERT_NE(from, nullptr);
    emit from->activated(from->count() - 1);
    EXPECT_EQ(named<NumberField>(QStringLiteral("Corner 1, up"))->text(), QStringLiteral("5 1/2"));
    EXPECT_EQ(edits_.size(), 2U) << "where it is measured from changes nothing of the car";
}

TEST_F(BracketPageTest, RefusesInPlaceWhatCantBeAnOutline) {
    const Plate before = plate();
    type(QStringLiteral("Corner 3, forward"), QStringLiteral("-8"));
    auto* field = named<NumberField>(QStringLiteral("Corner 3, forward"));
    EXPECT_TRUE(field->hasProblem());
    EXPECT_THAT(field->note().toStdString(), HasSubstr("crosses itself"));
    EXPECT_EQ(plate(), before);
    EXPECT_TRUE(edits_.empty());
    page_.discardTyping();
    type(QStringLiteral("Hole diameter"), QStringLiteral("0"));
    EXPECT_TRUE(named<NumberField>(QStringLiteral("Hole diameter"))->hasProblem());
    EXPECT_TRUE(edits_.empty());
    page_.discardTyping();
    EXPECT_FALSE(named<NumberField>(QStringLiteral("Hole diameter"))->hasProblem());
}

TEST_F(BracketPageTest, WhatIsStillBeingTypedIsTakenWhenThePageIsLeft) {
    auto* field = named<NumberField>(QStringLiteral("Hole diameter"));
    field->setFocus();
    field->selectAll();
    QTest::keyClicks(field, QStringLiteral("3/4"));
    page_.commitPending();
    EXPECT_NEAR(plate().holeDiameter, 0.75 * kInch, 1e-12);
}

TEST_F(BracketPageTest, CornersComeGoAndChangePlaces) {
    const std::vector<Eigen::Vector2d> before = plate().corners;
    QTest::mouseClick(named<QAbstractButton>(QStringLiteral("Add a corner after corner 2")), Qt::LeftButton);
    ASSERT_EQ(plate().corners.size(), 6U);
    EXPECT_LT((plate().corners[2] - (before[1] + before[2]) / 2).norm(), 1e-12);
    QTest::qWait(10);
    EXPECT_EQ(QApplication::focusWidget(), named<NumberField>(QStringLiteral("Corner 3, forward")));
    QTest::mouseClick(named<QAbstractButton>(QStringLiteral("Remove corner 3")), Qt::LeftButton);
    EXPECT_EQ(plate().corners, before);
    // A quadrilateral of two neighbors swapped would cross itself: refused, and the car stays.
    QTest::mouseClick(named<QAbstractButton>(QStringLiteral("Move corner 2 up the list")), Qt::LeftButton);
    EXPECT_THAT(refusal_, HasSubstr("crosses itself"));
    EXPECT_EQ(plate().corners, before);
    EXPECT_EQ(edits_.size(), 3U);
}

TEST_F(BracketPageTest, ThePlateGoesAndTheHolesStay) {
    QTest::mouseClick(named<QAbstractButton>(QStringLiteral("Take the plate away")), Qt::LeftButton);
    EXPECT_FALSE(bracket().plate.has_value());
    EXPECT_EQ(bracket().holes.size(), 4U);
    EXPECT_THAT(allWords().toStdString(), HasSubstr("No plate entered"));
}

TEST_F(BracketPageTest, APlannedHoleIsDrilledOrRemoved) {
    QTest::mouseClick(named<QAbstractButton>(QStringLiteral("new has been drilled")), Qt::LeftButton);
    EXPECT_FALSE(bracket().holes[3].planned);
    EXPECT_FALSE(has<QAbstractButton>(QStringLiteral("Remove planned hole new")));
    QTest::mouseClick(named<QAbstractButton>(QStringLiteral("Plan a hole")), Qt::LeftButton);
    ASSERT_EQ(bracket().holes.size(), 5U);
    EXPECT_TRUE(bracket().holes[4].planned);
    EXPECT_EQ(bracket().use, 1);
    QTest::mouseClick(named<QAbstractButton>(QStringLiteral("Remove planned hole new 2")), Qt::LeftButton);
    EXPECT_EQ(bracket().holes.size(), 4U);
    EXPECT_EQ(edits_.size(), 3U);
}

TEST_F(BracketPageTest, ACornerIsDraggedAndSnapsInOneEdit) {
    BracketPicture& picture = page_.picture();
    const QPoint from = picture.place(plate().corners[2]).toPoint();
    QTest::mousePress(&picture, Qt::LeftButton, Qt::NoModifier, from);
    QTest::mouseMove(&picture, from + QPoint(12, 4));
    QTest::mouseMove(&picture, from + QPoint(25, 9));
    EXPECT_TRUE(edits_.empty()) << "nothing while it is dragged";
    QTest::mouseRelease(&picture, Qt::LeftButton, Qt::NoModifier, from + QPoint(25, 9));
    ASSERT_EQ(edits_.size(), 1U);
    const double sixteenths = plate().corners[2].x() / (kInch / 16);
    EXPECT_NEAR(sixteenths, std::round(sixteenths), 1e-6);
    EXPECT_GT(plate().corners[2].x(), 1.9 * kInch);
}

TEST_F(BracketPageTest, EscapeGivesADragUpAndWhatCantBeSpringsBack) {
    BracketPicture& picture = page_.picture();
    const Plate before = plate();
    const QPoint from = picture.place(before.corners[2]).toPoint();
    QTest::mousePress(&picture, Qt::LeftButton, Qt::NoModifier, from);
    QTest::mouseMove(&picture, from + QPoint(30, 0));
    QTest::keyClick(&picture, Qt::Key_Escape);
    QTest::mouseRelease(&picture, Qt::LeftButton, Qt::NoModifier, from + QPoint(30, 0));
    EXPECT_TRUE(edits_.empty());
    EXPECT_EQ(*picture.scene().bracket.plate, before);
    const QPoint across = picture.place(before.corners[0]).toPoint() - QPoint(60, 0);
    QTest::mousePress(&picture, Qt::LeftButton, Qt::NoModifier, from);
    QTest::mouseMove(&picture, across);
    EXPECT_THAT(picture.scene().refusal.toStdString(), HasSubstr("crosses itself"));
    QTest::mouseRelease(&picture, Qt::LeftButton, Qt::NoModifier, across);
    EXPECT_TRUE(edits_.empty());
    EXPECT_EQ(plate(), before);
}

TEST_F(BracketPageTest, CornersAreChosenAndNudgedByKeys) {
    BracketPicture& picture = page_.picture();
    const Plate before = plate();
    picture.setFocus(Qt::TabFocusReason);
    EXPECT_EQ(picture.scene().selectedCorner, 0);
    QTest::keyClick(&picture, Qt::Key_Period);
    QTest::keyClick(&picture, Qt::Key_Period);
    QTest::keyClick(&picture, Qt::Key_Comma);
    EXPECT_EQ(picture.scene().selectedCorner, 1);
    QTest::keyClick(&picture, Qt::Key_Right);
    EXPECT_NEAR(plate().corners[1].x() - before.corners[1].x(), kInch / 16, 1e-12);
    QTest::keyClick(&picture, Qt::Key_Down, Qt::ShiftModifier);
    EXPECT_NEAR(plate().corners[1].y() - before.corners[1].y(), -kInch / 4, 1e-12);
    EXPECT_EQ(edits_.size(), 2U);
    EXPECT_EQ(picture.scene().selectedCorner, 1) << "it stays chosen";
    EXPECT_THAT(picture.accessibleDescription().toStdString(), HasSubstr("corner 2 at"));
}

TEST_F(BracketPageTest, TellsWhatAHoleBreaks) {
    const std::vector<Fact> facts = bracketFacts(bracket(), Units::inch);
    ASSERT_EQ(facts.size(), 4U);
    EXPECT_FALSE(facts[1].isProblem);
    // Leaning side from (1.4, 4.9) to (1.9, 8): nothing is nearer to 'new' at (0.13, 6.02) than the rear
    // side, through (-0.9, 4.9) and (-0.7, 10.8). By the two-point line: 0.991 in.
    EXPECT_EQ(facts[3].value, QStringLiteral("0.99 in to the edge"));
    Bracket near = bracket();
    near.plate->edgeDistance = 1.2 * kInch;
    EXPECT_TRUE(bracketFacts(near, Units::inch)[3].isProblem);
    EXPECT_THAT(bracketFacts(near, Units::inch)[3].remark.toStdString(), HasSubstr("1.20 in wanted"));
}

TEST_F(BracketPageTest, RoomInAPlateNobodyMeasuredIsMarked) {
    Bracket made = bracket();
    EXPECT_EQ(bracketFacts(made, Units::inch)[1].starting, QString());
    made.holes[1].uncertainties.setOrigin(Field::holeAt, 0, Origin::starting);
    EXPECT_THAT(bracketFacts(made, Units::inch)[1].starting.toStdString(), HasSubstr("the hole's place"));
    EXPECT_EQ(bracketFacts(made, Units::inch)[2].starting, QString());
    made.plate->starts.holeDiameter = true;
    for (const Fact& fact : bracketFacts(made, Units::inch)) {
        EXPECT_THAT(fact.starting.toStdString(), HasSubstr("starting numbers: ")) << fact.label.toStdString();
    }
}

TEST_F(BracketPageTest, AsksForTheTemplate) {
    const QSignalSpy preview(&page_, &BracketPage::templatePreviewRequested);
    const QSignalSpy file(&page_, &BracketPage::templateFileRequested);
    QTest::mouseClick(named<QAbstractButton>(QStringLiteral("Drilling template preview")), Qt::LeftButton);
    QTest::mouseClick(named<QAbstractButton>(QStringLiteral("Save drilling template as PDF")),
                      Qt::LeftButton);
    EXPECT_EQ(preview.count(), 1);
    EXPECT_EQ(file.count(), 1);
}

TEST_F(BracketPageTest, MetricFieldsShowMillimeters) {
    Car car = test::bracketCar(Units::metric);
    car.links[0].axle.plate->holeDiameter = 0.016;
    open(car);
    EXPECT_EQ(named<NumberField>(QStringLiteral("Hole diameter"))->text(), QStringLiteral("16"));
    EXPECT_EQ(named<NumberField>(QStringLiteral("Hole diameter"))->unitText(), QStringLiteral("mm"));
}

TEST_F(BracketPageTest, ACarWithoutLinksSaysSo) {
    Car car = state_.car;
    car.links.clear();
    open(car);
    EXPECT_FALSE(page_.place().has_value());
    EXPECT_THAT(allWords().toStdString(), HasSubstr("no links"));
    EXPECT_FALSE(page_.picture().isVisible());
}

// The bracket chosen may go with its link.
TEST_F(BracketPageTest, OutlivesTheLinkItShows) {
    page_.choose({2, End::axle});
    Car car = state_.car;
    car.links.pop_back();
    open(car);
    EXPECT_EQ(page_.place(), (BracketId{1, End::axle}));
}

}  // namespace bolthole
