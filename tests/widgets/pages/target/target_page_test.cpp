// The page for a target, with what a window would do around it.
#include "widgets/pages/target/target_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QPushButton>
#include <QTest>
#include <cmath>
#include <memory>

#include "tests/support/sheet_bench.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/target/answer_card.h"

namespace bolthole {
namespace {

using test::inches;
using testing::HasSubstr;
using testing::StartsWith;

Plate plateAt(double x, double z) {
    Plate plate;
    for (const auto& [across, up] :
         {std::pair(-3, -4), std::pair(3, -4), std::pair(3, 4), std::pair(-3, 4)}) {
        plate.corners.push_back(Eigen::Vector2d(x + across, z + up) * kMetresPerInch);
    }
    plate.holeDiameter = 0.5 * kMetresPerInch;
    plate.edgeDistance = 0.75 * kMetresPerInch;
    plate.holeSpacing = 2;
    return plate;
}

class TargetPageTest : public testing::Test {
  protected:
    static void SetUpTestSuite() { ThemeKeeper::instance().choose(Appearance::light); }

    TargetPageTest() {
        QObject::connect(&page_, &WorkPage::edited, &page_, [this](const Edit& edit) {
            edits_.push_back(edit);
            open(bolthole::apply(state_.car, edit).car);
        });
        QObject::connect(&page_, &TargetPage::searchRequested, &page_, [this] { ++searches_; });
        page_.resize(1200, 900);
        page_.show();
        QApplication::setActiveWindow(&page_);
        open(test::inventedCar());
    }
    void open(const Car& car) {
        state_.car = state_.solvedCar = car;
        state_.trace = computeTrace(car);
        state_.traceIsCurrent = true;
        page_.showState(state_);
        QApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
        QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    }
    // A car with a plate at the lower axle bracket, and a window around the anti-squat of now.
    void want(double low, double high) {
        Car car = test::inventedCar();
        const Eigen::Vector3d& at = car.links[0].axle.inUse().at;
        car.links[0].axle.plate = plateAt(at.x() / kMetresPerInch, at.z() / kMetresPerInch);
        const double now = computeTrace(car).ride[Figure::antiSquat];
        car.target = TargetWindow{.antiSquatLow = now + low, .antiSquatHigh = now + high};
        open(car);
    }
    void answer() {
        const auto car = std::make_shared<const Car>(state_.car);
        page_.showAnswers(
            std::make_shared<const TargetAnswers>(searchTarget(*car, {.lengths = page_.lengths()})), car);
    }
    static std::string said(const AnswerCard& card) {
        QStringList all;
        for (const ToneLabel* label : card.findChildren<ToneLabel*>()) {
            if (label->isVisible()) {
                all << label->text();
            }
        }
        return all.join(QLatin1Char('|')).toStdString();
    }
    static std::vector<QPushButton*> buttons(const AnswerCard& card) {
        std::vector<QPushButton*> found;
        for (QPushButton* button : card.findChildren<QPushButton*>()) {
            if (button->isVisible() && button->isEnabled()) {
                found.push_back(button);
            }
        }
        return found;
    }

    BenchState state_;
    TargetPage page_;
    std::vector<Edit> edits_;
    int searches_ = 0;
};

}  // namespace

TEST_F(TargetPageTest, BeginsWithAButtonThatWantsWhatThereIs) {
    ASSERT_FALSE(page_.hasField({.field = Field::targetLow}));
    EXPECT_FALSE(page_.meeting().isVisible());
    QTest::mouseClick(page_.findChild<QPushButton*>(QStringLiteral("wantSomething")), Qt::LeftButton);
    ASSERT_TRUE(state_.car.target);
    EXPECT_TRUE(page_.hasField({.field = Field::targetLow}));
    const double now = state_.trace.ride[Figure::antiSquat];
    EXPECT_LT(state_.car.target->antiSquatLow, now);
    EXPECT_GT(state_.car.target->antiSquatHigh, now);
    answer();
    EXPECT_THAT(said(page_.meeting()), HasSubstr("As it is bolted now"));
}

TEST_F(TargetPageTest, ANumberTypedAndOneLeftEmpty) {
    want(-10, 10);
    page_.focusField({.field = Field::targetIcHigh});
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("18 1/2"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    ASSERT_TRUE(state_.car.target->icHigh);
    EXPECT_NEAR(*state_.car.target->icHigh, 18.5 * kMetresPerInch, 1e-12);
    page_.focusField({.field = Field::targetIcHigh});
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Delete);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
    EXPECT_FALSE(state_.car.target->icHigh);
    EXPECT_GE(searches_, 3);
}

TEST_F(TargetPageTest, SaysWhatMissesAndWhatToDrill) {
    want(18, 22);
    answer();
    EXPECT_THAT(said(page_.nearest()), HasSubstr("Misses: anti-squat"));
    ASSERT_EQ(page_.holes().rows().size(), 1U);
    EXPECT_THAT(page_.holes().rows()[0].what.toStdString(), StartsWith("Drill the lower axle bracket "));
    EXPECT_THAT(said(page_.holes()), HasSubstr("qualified person"));
}

TEST_F(TargetPageTest, TakesANewHoleInOneEditThatMeetsTheTarget) {
    want(18, 22);
    answer();
    ASSERT_FALSE(page_.holes().rows()[0].isMiss) << page_.holes().rows()[0].remark.toStdString();
    const TargetWindow target = *state_.car.target;
    ASSERT_EQ(buttons(page_.holes()).size(), 1U);
    QPushButton* button = buttons(page_.holes()).front();
    button->setFocus();
    QTest::keyClick(button, Qt::Key_Space);
    ASSERT_EQ(edits_.size(), 1U);
    const Bracket& bracket = state_.car.links[0].axle;
    EXPECT_EQ(bracket.holes.size(), 4U);
    EXPECT_TRUE(bracket.inUse().planned);
    EXPECT_GE(state_.trace.ride[Figure::antiSquat], target.antiSquatLow - 1e-4);
    EXPECT_LE(state_.trace.ride[Figure::antiSquat], target.antiSquatHigh + 1e-4);
}

TEST_F(TargetPageTest, BoltsACombinationInOneEdit) {
    want(-1000, 1000);
    answer();
    const std::vector<QPushButton*> found = buttons(page_.meeting());
    ASSERT_FALSE(found.empty());
    QTest::mouseClick(found.front(), Qt::LeftButton);
    ASSERT_EQ(edits_.size(), 1U);
    EXPECT_NE(edits_.front().as<ChooseHoles>(), nullptr);
}

TEST_F(TargetPageTest, AHoleThatIsNotDrilledYetIsCalledSo) {
    Car car = test::inventedCar();
    const int other = car.links[0].axle.use == 0 ? 1 : 0;
    ASSERT_GT(car.links[0].axle.holes.size(), 1U);
    const double now = computeTrace(car).ride[Figure::antiSquat];
    car.target = TargetWindow{.antiSquatLow = now - 100, .antiSquatHigh = now + 100};
    open(car);
    answer();
    EXPECT_THAT(said(page_.meeting()), testing::Not(HasSubstr("not drilled yet")));
    car.links[0].axle.holes[static_cast<std::size_t>(other)].planned = true;
    open(car);
    answer();
    EXPECT_THAT(said(page_.meeting()), HasSubstr("not drilled yet"));
}

TEST_F(TargetPageTest, SaysWhereNothingCanLie) {
    want(10, -10);
    answer();
    bool found = false;
    for (const ToneLabel* label : page_.findChildren<ToneLabel*>()) {
        found =
            found || (label->isVisible() && label->text().contains(QStringLiteral("nothing can lie there")));
    }
    EXPECT_TRUE(found);
    EXPECT_TRUE(page_.meeting().rows().empty());
}

TEST_F(TargetPageTest, HasAPlaceForPlatesNotEnteredYet) {
    want(-10, 10);
    Car car = state_.car;
    car.links[0].axle.plate.reset();
    open(car);
    answer();
    EXPECT_THAT(said(page_.holes()), HasSubstr("No plate is entered yet"));
}

TEST(TargetWords, SayAChanceInTenthsAndInPercent) {
    EXPECT_EQ(chanceWords(0.93), QStringLiteral("9 in 10 (93 %)"));
    EXPECT_EQ(chanceWords(0.999), QStringLiteral("more than 99 in 100"));
    EXPECT_EQ(chanceWords(0.002), QStringLiteral("less than 1 in 100"));
    EXPECT_EQ(chanceWords(0.03), QStringLiteral("3 in 100"));
    EXPECT_EQ(chanceWords(std::nan("")), QString(QChar(0x2014)));
}

TEST(TargetWords, SayWhereAHoleGoesToAThirtySecond) {
    const Eigen::Vector3d from = inches(1, 20, 8);
    EXPECT_EQ(offsetWords(from, inches(1, 20, 9.376), QStringLiteral("'bottom'"), Units::inch),
              QStringLiteral("1 3/8 in above 'bottom'"));
    EXPECT_EQ(offsetWords(from, inches(1.25, 20, 7.5), QStringLiteral("'top'"), Units::inch),
              QStringLiteral("1/2 in below and 1/4 in ahead of 'top'"));
    EXPECT_EQ(offsetWords({0, 0, 0}, {-0.0102, 0, 0}, QStringLiteral("'ear'"), Units::metric),
              QStringLiteral("10 mm behind 'ear'"));
}

}  // namespace bolthole
