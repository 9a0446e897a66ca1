// The loads page, driven by keys and mouse: what it shows, what it names as missing, what it never guesses.
#include "widgets/pages/loads/loads_page.h"

#include <gmock/gmock.h>

#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <cmath>
#include <memory>

#include "geometry/car/starting_numbers.h"
#include "tests/support/await_jobs.h"
#include "tests/support/bench_points.h"
#include "tests/support/level_car.h"
#include "tests/support/page_bench.h"
#include "tests/support/sheet_bench.h"
#include "widgets/curves/curve_chart.h"
#include "widgets/fields/missing_list.h"
#include "widgets/pages/fact_card.h"
#include "widgets/pages/loads/combination_load_table.h"
#include "widgets/pages/loads/link_load_curves.h"
#include "widgets/pages/loads/link_load_table.h"
#include "widgets/pages/loads/loads_facts.h"
#include "widgets/pages/loads/loads_picture.h"

namespace bolthole::test {
namespace {

using testing::HasSubstr;
using testing::Not;

class LoadsPageBench : public PageBench<LoadsPage> {
  protected:
    LoadsPageBench() : PageBench(inventedCar(), {1180, 900}) {}

    // The value beside a label in a card; empty where there is no such row.
    std::string value(const QString& card, const QString& label) {
        auto* facts = named<FactCard>(card);
        EXPECT_NE(facts, nullptr) << card.toStdString();
        for (ToneLabel* shown : facts->findChildren<ToneLabel*>()) {
            if (shown->accessibleName() == label && !shown->isHidden()) {
                return shown->text().toStdString();
            }
        }
        return {};
    }
    // Every text a card shows, remarks and notes too.
    std::string words(const QString& card) {
        QStringList all;
        for (ToneLabel* shown : named<FactCard>(card)->findChildren<ToneLabel*>()) {
            if (!shown->isHidden()) {
                all << shown->text();
            }
        }
        return all.join(u' ').toStdString();
    }
    std::vector<std::string> missing() {
        std::vector<std::string> names;
        for (QPushButton* button : page_->findChild<MissingList*>()->findChildren<QPushButton*>()) {
            if (button->isVisibleTo(page_.get())) {
                names.push_back(button->text().toStdString());
            }
        }
        return names;
    }
    LinkLoadTable& table() { return *page_->findChild<LinkLoadTable*>(); }
    bool waitForCombinations() {
        return QTest::qWaitFor([this] { return !page_->combinations().isRunning(); }, kPatience);
    }
    void enterLaunch() {
        type("launch acceleration in g", "0.8");
        type("axle ratio", "3.73");
        type("rear unsprung weight", "250");
        Car car = state_.car;
        car.rearTrack = 59 * kMetresPerInch;
        show(car);
    }
};

TEST_F(LoadsPageBench, ABlankLaunchSaysWhatToEnterAndShowsNoFigure) {
    EXPECT_EQ(value("Launch", "Acceleration"), "—");
    EXPECT_THAT(words("Launch"), HasSubstr("not known: enter the launch acceleration in g"));
    EXPECT_THAT(missing(), testing::Contains("Launch acceleration in g"));
    EXPECT_FALSE(table().isVisible());
    EXPECT_FALSE(page_->combinations().isVisible());
    EXPECT_THAT(words("Link loads"), HasSubstr(std::string(kLinkLoadWarning)));
    EXPECT_THAT(words("Launch"), HasSubstr("CG height 22.00 in"));
}

TEST_F(LoadsPageBench, AMissingNumberLeadsToItsField) {
    QSignalSpy wanted(page_.get(), &WorkPage::fieldRequested);
    auto* button = named<QPushButton>("enter the launch acceleration in g");
    ASSERT_NE(button, nullptr);
    QTest::mouseClick(button, Qt::LeftButton);
    ASSERT_EQ(wanted.count(), 1);
    const FieldId id{.field = Field::launchAcceleration};
    EXPECT_TRUE(page_->hasField(id));
    page_->focusField(id);
    EXPECT_EQ(page_->focusWidget(), named<NumberField>("launch acceleration in g"));
}

TEST_F(LoadsPageBench, WhatIsTypedFillsThePageStepByStep) {
    type("launch acceleration in g", "0.8");
    EXPECT_EQ(value("Launch", "Acceleration"), "0.80 g");
    EXPECT_THAT(missing(), Not(testing::Contains("Launch acceleration in g")));
    EXPECT_THAT(words("Link loads"), HasSubstr("enter the axle ratio"));
    enterLaunch();
    EXPECT_TRUE(table().isVisible());
    EXPECT_EQ(table().rowCount(), 5);
    EXPECT_THAT(words("Link loads"), HasSubstr("not measured"));
    EXPECT_THAT(words("Link loads"), HasSubstr("both rear tires are taken to carry the same"));
    EXPECT_EQ(edits_.size(), 4U);
    EXPECT_NE(dynamic_cast<LoadsPicture*>(page_->findChild<LoadsPicture*>())->accessibleDescription(),
              QString());
}

TEST_F(LoadsPageBench, AnEmptiedFieldIsNotKnownAgain) {
    enterLaunch();
    auto* field = named<NumberField>("axle ratio");
    field->setFocus();
    field->selectAll();
    QTest::keyClick(field, Qt::Key_Delete);
    QTest::keyClick(field, Qt::Key_Return);
    EXPECT_FALSE(state_.car.launch.axleRatio.has_value());
    EXPECT_FALSE(table().isVisible());
    EXPECT_THAT(missing(), testing::Contains("Axle ratio"));
}

TEST_F(LoadsPageBench, TheSourceDecidesTheFieldsAndIsChosenByKeys) {
    EXPECT_EQ(named<NumberField>("60-ft time"), nullptr);
    auto* box = named<QComboBox>("Computed from");
    ASSERT_NE(box, nullptr);
    box->setFocus();
    QTest::keyClick(box, Qt::Key_Down);
    EXPECT_EQ(state_.car.launch.from, LaunchFrom::sixtyFoot);
    ASSERT_NE(named<NumberField>("60-ft time"), nullptr);
    EXPECT_THAT(named<NumberField>("60-ft time")->toolTip().toStdString(), HasSubstr("rollout"));
    type("60-ft time", "2");
    EXPECT_THAT(words("Launch"), HasSubstr("not entered: the front tire's chord at a beam 1.56 in up"));
    type("rollout", "0");
    // 60 ft in 2 s need 30 ft/s^2, s = a t^2/2 (any mechanics text): 0.93 g.
    EXPECT_EQ(value("Launch", "Acceleration"), "0.93 g");
    EXPECT_THAT(words("Launch"), HasSubstr("after a rollout of 0.00 in as entered"));
    // After 0.9 ft at 30 ft/s^2 it passes the beam at sqrt(54) ft/s (v^2 = 2 a s), 60 ft on at sqrt(3654).
    type("rollout", "10.8");
    type("60-ft time", QString::number((std::sqrt(3654.0) - std::sqrt(54.0)) / 30, 'f', 4));
    EXPECT_EQ(value("Launch", "Acceleration"), "0.93 g");
}

// R. C. Hibbeler, Engineering Mechanics: Dynamics, as in tests/outside/launch_case_reference_test.cpp: 6.88
// kN in front, 12.74 kN behind, 1.59 m/s^2 with g 9.81; here g is 9.80665, so 1.59/9.81 = 0.162 g and forces
// a third of a thousandth less, which three digits do not tell.
TEST_F(LoadsPageBench, HibbelerSlippingRearWheelsOnThePage) {
    Car car = levelCar();
    car.units = Units::metric;
    car.wheelbase = 2.0;
    car.cgHeight = 0.3;
    car.cornerWeights = {375, 375, 625, 625};
    car.launch.from = LaunchFrom::torque;
    show(car);
    type("engine torque at the flywheel", "900");
    type("ratio of the gear it launches in", "3");
    type("axle ratio", "4");
    type("tire friction", "0.25");
    EXPECT_EQ(value("Launch", "Acceleration"), "0.16 g");
    EXPECT_NEAR(std::stod(value("Launch", "Front axle")), 6880, 7);
    EXPECT_NEAR(std::stod(value("Launch", "Rear axle")), 12740, 9);
    EXPECT_THAT(words("Launch"), HasSubstr("capped by what the tires hold"));
}

// J. L. Meriam, L. G. Kraige, Engineering Mechanics: Dynamics, as there: 804.4 lb of thrust, 1441.1 in front,
// 1762.9 behind; the grade as level ground.
TEST_F(LoadsPageBench, MeriamUpTheGradeOnThePage) {
    Car car = levelCar();
    car.wheelbase = 120 * kMetresPerInch;
    car.cgHeight = 24 * kMetresPerInch;
    const double corner = 3220 * std::cos(std::atan(0.1)) / 4 * kKilogramsPerPound;
    car.cornerWeights = {corner, corner, corner, corner};
    show(car);
    const double sought = (4.84 / 32.2 + std::sin(std::atan(0.1))) / std::cos(std::atan(0.1));
    type("launch acceleration in g", QString::number(sought, 'f', 8));
    EXPECT_EQ(value("Launch", "Thrust, both rear tires"), "804 lb");
    EXPECT_EQ(value("Launch", "Front axle"), "1441 lb");
    EXPECT_EQ(value("Launch", "Rear axle"), "1763 lb");
}

// R. N. Jazar, Vehicle Dynamics, 1st ed., eqs 2.87-2.88, p. 50 (read): the front wheels leave the ground at
// a2/h.
TEST_F(LoadsPageBench, JazarsLiftLimitOnThePage) {
    const Car& car = state_.car;
    const double ahead = car.wheelbase * car.cornerWeights.front() / car.cornerWeights.total();
    EXPECT_NEAR(std::stod(value("Launch", "Front wheels lift at")), ahead / car.cgHeight, 0.0051);
    type("launch acceleration in g", "4");
    EXPECT_THAT(words("Launch"), HasSubstr("wheels up"));
    EXPECT_THAT(words("Rise, squat and pitch"), HasSubstr("off the ground"));
}

// D. Barton, J. Fieldhouse, Automotive Chassis Engineering (Springer 2018), sec. 3.11, eqs 3.63-3.69 (read):
// with W 3000 lb, L 120 in, h 30 in, 150 and 100 lb/in an axle: no pitch at e/d 0.416667 (computed).
TEST_F(LoadsPageBench, BartonFieldhouseZeroPitchOnThePage) {
    Car car = levelCar();
    car.wheelbase = 120 * kMetresPerInch;
    car.cgHeight = 30 * kMetresPerInch;
    const double corner = 750 * kKilogramsPerPound;
    car.cornerWeights = {corner, corner, corner, corner};
    const Eigen::Vector3d pin(60 * kMetresPerInch, 0.4, 25 * kMetresPerInch);
    const Eigen::Vector3d middle(-0.1, 0, car.rearTireRadius);
    car.links = {bolthole::makeLink("ladder", LinkKind::pivot, Side::both, {pin, pin}),
                 bolthole::makeLink("guide", LinkKind::guide, Side::center, {middle, middle})};
    const double perInch = kNewtonsPerPoundForce / kMetresPerInch;
    car.wheelRates.front.wheel = 75 * perInch;
    car.wheelRates.rear.wheel = 50 * perInch;
    show(car);
    type("launch acceleration in g", "0.02");  // the book's are small movements
    EXPECT_EQ(value("Rise, squat and pitch", "Pitch"), "0.00°");
    // 60 lb x 0.25 over 150 lb/in of front springs.
    EXPECT_EQ(value("Rise, squat and pitch", "Front of the body"), "0.10 in up");
    EXPECT_EQ(value("Rise, squat and pitch", "Anti-squat at ride"), "167 %");
}

TEST_F(LoadsPageBench, ARatingIsHeldAgainstTheWorstLoadWithItsFactor) {
    enterLaunch();
    type("lower, rating", "500");
    type("load factor against ratings", "2");
    EXPECT_THAT(table().horizontalHeaderItem(LinkLoadTable::kOfRating)->text().toStdString(),
                HasSubstr("× 2"));
    double largest = 0;
    std::string shown;
    for (int row = 0; row < table().rowCount(); ++row) {
        if (table().item(row, LinkLoadTable::kJoint)->text() == "Lower (left)") {
            for (const int column : {LinkLoadTable::kTension, LinkLoadTable::kCompression}) {
                largest = std::max(largest, table().item(row, column)->text().toDouble());
            }
            shown = table().item(row, LinkLoadTable::kOfRating)->text().toStdString();
        }
    }
    ASSERT_GT(largest, 250);
    EXPECT_NEAR(std::stod(shown), 100 * 2 * largest / 500, 1);
    EXPECT_THAT(shown, HasSubstr("over")) << "never by color alone";
}

TEST_F(LoadsPageBench, EveryHoleCombinationHasItsWorstLoadSortedAndThePresentIsMarked) {
    enterLaunch();
    ASSERT_TRUE(waitForCombinations());
    CombinationLoadTable& combinations = page_->combinations();
    ASSERT_EQ(combinations.rowCount(), 6);
    double last = 0;
    int marked = 0;
    for (int row = 0; row < combinations.rowCount(); ++row) {
        const QString load = combinations.item(row, CombinationLoadTable::kLoad)->text();
        if (load != "—") {
            EXPECT_GE(load.toDouble(), last);
            last = load.toDouble();
        }
        const bool isPresent =
            combinations.item(row, CombinationLoadTable::kRemark)->text().contains("bolted now");
        marked += isPresent ? 1 : 0;
        if (isPresent) {
            EXPECT_EQ(combinations.item(row, CombinationLoadTable::kHoles)->text(), "middle / high");
        }
    }
    EXPECT_EQ(marked, 1);
    EXPECT_EQ(combinations.horizontalHeaderItem(CombinationLoadTable::kOfRating)->text(),
              QStringLiteral("load × 1 of rating"));
    EXPECT_THAT(combinations.summary().toStdString(), HasSubstr("6 hole combinations"));
    EXPECT_THAT(words("Worst link load of every hole combination"), HasSubstr(std::string(kLinkLoadWarning)));
}

TEST_F(LoadsPageBench, ManyHoleCombinationsAreCappedAndSaidToBe) {
    Car car = inventedCar();
    drillHoles(car, 6, 0.004);
    show(car);
    enterLaunch();
    EXPECT_THAT(page_->combinations().summary().toStdString(),
                HasSubstr("500 hole combinations that move the fewest"));
    ASSERT_TRUE(waitForCombinations());
    EXPECT_EQ(page_->combinations().rowCount(), 500);
}

TEST_F(LoadsPageBench, OverHeldLinksAreOnePossibleShare) {
    enterLaunch();  // splayed uppers and a track bar
    EXPECT_THAT(words("Link loads"), HasSubstr(std::string(kSharedLoadNote)));
    EXPECT_THAT(table().item(0, LinkLoadTable::kCertainty)->text().toStdString() +
                    table().item(4, LinkLoadTable::kCertainty)->text().toStdString(),
                HasSubstr("one possible share"));
}

TEST_F(LoadsPageBench, RollNeedsTracksAndRatesAndThenShowsFourTires) {
    enterLaunch();
    const QString card = QStringLiteral("Roll by the driveshaft's torque");
    EXPECT_THAT(words(card),
                HasSubstr("enter the front track, the front wheel rate and the rear wheel rate"));
    Car car = state_.car;
    car.frontTrack = 60 * kMetresPerInch;
    car.wheelRates.front.wheel = 28e3;
    car.wheelRates.rear.wheel = 25e3;
    show(car);
    EXPECT_THAT(words(card), HasSubstr("left side up"));
    EXPECT_GT(std::stod(value(card, "Left rear tire")), std::stod(value(card, "Right rear tire")));
    EXPECT_THAT(words(card), HasSubstr("enter the spring spacing"));
    type("spring spacing", "40");
    const double torque = std::stod(value(card, "Driveshaft torque"));  // lbf ft
    EXPECT_NEAR(std::stod(value(card, "Right spring over left")), 2 * torque * 12 / 40, 1);
    EXPECT_THAT(words("Link loads"), HasSubstr("computed from the driveshaft's torque"));
}

TEST_F(LoadsPageBench, BrakesNeedTheirShareAndSayWhatLocksFirst) {
    EXPECT_EQ(value("Braking", "Rear anti-lift"), "—");
    type("rear share of the brake force", "45");
    EXPECT_THAT(value("Braking", "Rear anti-lift"), Not(HasSubstr("—")));
    type("deceleration in g", "0.9");
    EXPECT_EQ(value("Braking", "Locks first"), "rear");
    type("rear share of the brake force", "20");
    EXPECT_EQ(value("Braking", "Locks first"), "front");
    EXPECT_THAT(words("Braking"), HasSubstr("enter the rear wheel rate"));
}

TEST_F(LoadsPageBench, ASweepOfManyRowsIsCutForTheCombinationsAndSaidToBe) {
    Car car = inventedCar();
    car.travel.steps = 2001;
    show(car);
    enterLaunch();
    EXPECT_THAT(page_->combinations().summary().toStdString(), HasSubstr("161 rows of travel"));
    ASSERT_TRUE(waitForCombinations());
    EXPECT_EQ(page_->combinations().rowCount(), 6);
}

TEST_F(LoadsPageBench, TheTableIsCopiedWithItsHeadings) {
    enterLaunch();
    table().setFocus();
    table().clearSelection();
    QTest::keyClick(&table(), Qt::Key_C, Qt::ControlModifier);
    const QString copied = QApplication::clipboard()->text();
    EXPECT_EQ(copied.count(u'\n'), 5);
    EXPECT_TRUE(copied.startsWith("joint\ttension, lb"));
}

TEST_F(LoadsPageBench, ACarThatCannotBeComputedShowsWhyAndNoOldFigures) {
    enterLaunch();
    Car broken = state_.car;
    broken.wheelbase = 0;
    state_.problem = "wheelbase: expected a length above 0";
    show(broken);
    EXPECT_FALSE(table().isVisible());
    EXPECT_EQ(value("Launch", "Acceleration"), "");
    bool isSaid = false;
    for (ToneLabel* label : page_->findChildren<ToneLabel*>()) {
        isSaid = isSaid || (label->isVisible() && label->text().contains("wheelbase: expected"));
    }
    EXPECT_TRUE(isSaid);
}

TEST_F(LoadsPageBench, MountsNobodyMeasuredAreCalledSo) {
    Car car = test::inventedCar();
    car.springs.emplace_back();
    for (const End end : {End::chassis, End::axle}) {
        car.springs[0].bracket(end).holes.resize(1);
    }
    LaunchCase launch;
    launch.linkCase = LinkCase{};
    const auto springs = [&] {
        for (const Fact& fact : linkCaseFacts(car, launch, Units::inch)) {
            if (fact.label == QStringLiteral("Springs")) {
                return fact.value;
            }
        }
        return QString();
    };
    EXPECT_EQ(springs(), QStringLiteral("as entered"));
    startFrom(car.springs[0].axle.holes[0], Field::mountAt);
    EXPECT_EQ(springs(), QStringLiteral("starting numbers"));
}

TEST_F(LoadsPageBench, MetricShowsNewtons) {
    enterLaunch();
    Car car = state_.car;
    car.units = Units::metric;
    show(car);
    EXPECT_THAT(value("Launch", "Front axle"), testing::EndsWith(" N"));
    EXPECT_EQ(table().horizontalHeaderItem(LinkLoadTable::kTension)->text(), "tension, N");
}

TEST_F(LoadsPageBench, PictureAndCurvesFollowTheLaunch) {
    enterLaunch();
    auto* picture = page_->findChild<LoadsPicture*>();
    auto* curves = page_->findChild<CurveChart*>();
    const QImage gentle = picture->grab().toImage();
    const QImage gentleCurves = curves->grab().toImage();
    type("launch acceleration in g", "1.1");
    EXPECT_NE(picture->grab().toImage(), gentle);
    EXPECT_THAT(picture->accessibleDescription().toStdString(), HasSubstr("thrust"));
    type("axle ratio", "5");
    EXPECT_NE(curves->grab().toImage(), gentleCurves);
}

TEST_F(LoadsPageBench, EveryFieldHasANameAndSaysHowToMeasureIt) {
    for (const LaunchFrom from : {LaunchFrom::acceleration, LaunchFrom::sixtyFoot, LaunchFrom::torque}) {
        Car car = inventedCar();
        car.launch.from = from;
        show(car);
        QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        const QList<NumberField*> fields = page_->findChildren<NumberField*>();
        EXPECT_GE(fields.size(), 12);
        for (const NumberField* field : fields) {
            EXPECT_FALSE(field->accessibleName().isEmpty());
            EXPECT_GT(field->toolTip().size(), 60) << field->accessibleName().toStdString();
        }
    }
}

// By hand: m a h / L moves by m a / L for each unit of h. What else is measured moves it far less: 1 % of it
// at most.
TEST_F(LoadsPageBench, TheTransferIsAsAccurateAsTheHeightOfTheCg) {
    enterLaunch();
    Car car = state_.car;
    car.units = Units::metric;
    car.cgHeightFrom = CgHeightSource::entered;
    car.uncertainties.set(Field::cgHeight, -1, 0.04);
    show(car);
    const double acceleration = *car.launch.acceleration * kStandardGravity;
    const double half = 1.959964 * 0.04 * car.cornerWeights.total() * acceleration / car.wheelbase;
    const std::string plusMinus = "± " + std::to_string(static_cast<int>(std::round(half / 10)) * 10) + " N";
    ASSERT_TRUE(awaitJobs());
    EXPECT_THAT(words("Launch"), HasSubstr(plusMinus + "; from the front to the rear axle"));
    state_.showsUncertainty = false;
    show(car);
    EXPECT_THAT(words("Launch"), testing::Not(HasSubstr(plusMinus)));
}

}  // namespace
}  // namespace bolthole::test
