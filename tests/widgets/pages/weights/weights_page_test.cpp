// The weights page, typed and clicked as a person would. Figures are worked out in each test from the
// formulas of the books named there, never from the program's own.
#include "widgets/pages/weights/weights_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QPushButton>
#include <QtTest/QTest>
#include <cmath>
#include <memory>
#include <numbers>

#include "geometry/car/fields.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/kinematics/trace.h"
#include "tests/support/await_jobs.h"
#include "tests/support/sheet_bench.h"
#include "tests/support/typing.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/pages/fact_card.h"
#include "widgets/pages/weights/weights_facts.h"
#include "widgets/pages/weights/weights_picture.h"
#include "widgets/words/field_words.h"

namespace bolthole::test {
namespace {
// The page with what a window would do around it.
class Weights : public testing::Test {
  protected:
    static void SetUpTestSuite() { ThemeKeeper::instance().choose(Appearance::light); }

    Weights() : page_(std::make_unique<WeightsPage>()) {
        state_.car = inventedCar();
        state_.car.units = Units::metric;
        QObject::connect(page_.get(), &WeightsPage::edited, page_.get(), [this](const Edit& edit) {
            edits_.push_back(edit);
            state_.car = bolthole::apply(state_.car, edit).car;
            show();
        });
        show();
        page_->resize(1100, 900);
        page_->show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(page_.get()));
        QApplication::setActiveWindow(page_.get());
    }

    void show() {
        state_.style.units = state_.car.units;
        state_.faults = findFaults(state_.car);
        state_.traceIsCurrent = state_.faults.empty();
        state_.problem = state_.faults.empty() ? "" : state_.faults.front().reason;
        if (state_.traceIsCurrent) {
            state_.trace = computeTrace(state_.car);
        }
        page_->showState(state_);
    }

    template <class Kind>
    Kind* named(const QString& name) {
        return test::namedIn<Kind>(*page_, name);
    }
    void type(const QString& name, const QString& text) { test::typeIn(*page_, name, text); }

    // The text of the row that stands in a card under this label: "value | remark"; empty where there is
    // none.
    QString fact(const QString& card, const QString& label) {
        for (FactCard* each : page_->findChildren<FactCard*>()) {
            if (each->accessibleName() != card) {
                continue;
            }
            const QList<ToneLabel*> labels = each->findChildren<ToneLabel*>();
            for (qsizetype index = 0; index + 4 < labels.size(); ++index) {
                if (labels[index]->text() == label && labels[index]->isVisibleTo(each) &&
                    labels[index + 1]->accessibleName() == label) {
                    const qsizetype bad = labels[index + 2]->isVisibleTo(each) ? 1 : 0;
                    return labels[index + 1 + bad]->text() + QStringLiteral(" | ") +
                           labels[index + 3 + bad]->text();
                }
            }
        }
        return {};
    }
    // The value alone.
    QString value(const QString& card, const QString& label) {
        return fact(card, label).section(QStringLiteral(" | "), 0, 0);
    }
    static QString fixed(double number, int decimals, const char* unit) {
        return QString::number(number, 'f', decimals) + u' ' + QLatin1String(unit);
    }

    void typeFour(const QString& before, const QString& after, const QStringList& numbers) {
        const QStringList wheels{QStringLiteral("left front"), QStringLiteral("right front"),
                                 QStringLiteral("left rear"), QStringLiteral("right rear")};
        for (qsizetype wheel = 0; wheel < numbers.size(); ++wheel) {
            type(before + wheels[wheel] + after, numbers[wheel]);
        }
    }
    void typeRates() {
        type(QStringLiteral("front track"), QStringLiteral("1500"));
        type(QStringLiteral("rear track"), QStringLiteral("1500"));
        state_.car.wheelRates.front = {20'000, 200'000, std::nullopt};
        state_.car.wheelRates.rear = {25'000, 250'000, std::nullopt};
        show();
    }

    BenchState state_;
    std::unique_ptr<WeightsPage> page_;
    std::vector<Edit> edits_;
};

const QString kWeighed = QStringLiteral("By the corner weights");
const QString kLoaded = QStringLiteral("With what is aboard now");
const QString kHeight = QStringLiteral("CG height");
const QString kDriver = QStringLiteral("Driver and other reading");
const QString kPads = QStringLiteral("Pads");
const QString kTicket = QStringLiteral("Truck-scale ticket");

// 450 + 430 front, 340 + 330 rear, wheelbase 2794 mm: moments about the rear axle, R. N. Jazar, Vehicle
// Dynamics, 1st ed., ch. 2.
TEST_F(Weights, TotalsSharesAndCenterOfGravityAreTheHandFigures) {
    EXPECT_EQ(value(kWeighed, QStringLiteral("Total")), QStringLiteral("1550.0 kg"));
    EXPECT_EQ(value(kWeighed, QStringLiteral("Front")), fixed(100.0 * 880 / 1550, 1, "%"));
    EXPECT_EQ(value(kWeighed, QStringLiteral("Left")), fixed(100.0 * 790 / 1550, 1, "%"));
    EXPECT_EQ(value(kWeighed, QStringLiteral("Cross weight")), fixed(100.0 * (430 + 340) / 1550, 1, "%"));
    EXPECT_EQ(value(kWeighed, QStringLiteral("CG ahead of rear axle")), fixed(2794.0 * 880 / 1550, 1, "mm"));
    EXPECT_THAT(fact(kWeighed, QStringLiteral("CG lateral")).toStdString(),
                testing::HasSubstr("needs both tracks"));
}

// Jazar, Vehicle Dynamics, 1st ed., Ex. 40 p. 41: wheelbase 2.34 m, 2000 N on each front and 1800 N on each
// rear wheel put the CG 1.2316 m ahead of the rear axle; only the ratio of the weights counts.
TEST_F(Weights, ABooksExampleComesOut) {
    state_.car.wheelbase = 2.34;
    state_.car.cornerWeights = {200, 200, 180, 180};
    show();
    EXPECT_EQ(value(kWeighed, QStringLiteral("CG ahead of rear axle")), QStringLiteral("1231.6 mm"));
}

TEST_F(Weights, SidewaysNeedsBothTracksAndSaysWhichIsMissing) {
    type(QStringLiteral("front track"), QStringLiteral("1600"));
    EXPECT_THAT(fact(kWeighed, QStringLiteral("CG lateral")).toStdString(),
                testing::HasSubstr("needs the rear track"));
    type(QStringLiteral("rear track"), QStringLiteral("1500"));
    const double left = (20 * 1600 / 2.0 + 10 * 1500 / 2.0) / 1550;  // moments about the middle
    EXPECT_EQ(value(kWeighed, QStringLiteral("CG lateral")), fixed(left, 1, "mm") + QStringLiteral(" left"));
}

TEST_F(Weights, ThreeOfFourReadingsGiveNothingAndSaySo) {
    typeFour(QStringLiteral("other reading, "), QStringLiteral(", without the driver"),
             {QStringLiteral("420"), QStringLiteral("415"), QStringLiteral("312")});
    EXPECT_EQ(fact(kDriver, QStringLiteral("Driver")), QStringLiteral("— | other reading: 3 of 4 entered"));
    EXPECT_EQ(fact(kDriver, QStringLiteral("Other reading")), QString());
    typeFour(QStringLiteral("other reading, "), QStringLiteral(", without the driver"),
             {QStringLiteral("420"), QStringLiteral("415"), QStringLiteral("312"), QStringLiteral("323")});
    EXPECT_EQ(value(kDriver, QStringLiteral("Other reading")), QStringLiteral("1470.0 kg"));
    // 30 + 15 kg of 80 on the front axle: moments about the rear one.
    EXPECT_EQ(value(kDriver, QStringLiteral("Driver")), QStringLiteral("80.0 kg"));
    EXPECT_EQ(value(kDriver, QStringLiteral("Ahead of rear axle")), fixed(2794.0 * 45 / 80, 1, "mm"));
    EXPECT_EQ(value(kDriver, QStringLiteral("On the front corners")), QStringLiteral("+30.0 / +15.0 kg"));
}

TEST_F(Weights, ADriverWhoWeighsNothingIsAComplaint) {
    typeFour(QStringLiteral("other reading, "), QStringLiteral(", without the driver"),
             {QStringLiteral("460"), QStringLiteral("440"), QStringLiteral("350"), QStringLiteral("340")});
    EXPECT_THAT(fact(kDriver, QStringLiteral("Driver")).toStdString(), testing::HasSubstr("no heavier"));
}

TEST_F(Weights, TheChoiceWhetherTheDriverSatInTakesTheArrowKeys) {
    auto* box = named<CalmCombo>(QStringLiteral("Corners weighed"));
    ASSERT_NE(box, nullptr);
    box->setFocus();
    QTest::keyClick(box, Qt::Key_Down);
    EXPECT_EQ(state_.car.cornersAre, DriverSeat::out);
    EXPECT_NE(named<NumberField>(QStringLiteral("other reading, left front, with the driver")), nullptr);
    EXPECT_EQ(QApplication::focusWidget(), box);
    EXPECT_THAT(page_->findChildren<FactCard*>().size(), testing::Eq(6));
    QTest::keyClick(box, Qt::Key_Up);
    EXPECT_EQ(state_.car.cornersAre, DriverSeat::aboard);
}

// A car read without its driver stands without him until weight and seat are there.
TEST_F(Weights, ACarReadWithoutTheDriverSaysTheDriverIsMissing) {
    state_.car.cornersAre = DriverSeat::out;
    show();
    const auto notes = [this] {
        QStringList texts;
        for (ToneLabel* label : page_->findChildren<ToneLabel*>()) {
            if (label->isVisibleTo(page_.get())) {
                texts << label->text();
            }
        }
        return texts.join(u'\n').toStdString();
    };
    EXPECT_THAT(notes(), testing::HasSubstr("The driver is not in these figures"));
    type(QStringLiteral("driver's weight"), QStringLiteral("80"));
    type(QStringLiteral("driver's seat, forward"), QStringLiteral("1300"));
    type(QStringLiteral("driver's seat, left"), QStringLiteral("380"));
    EXPECT_THAT(notes(), testing::HasSubstr("The driver is not in these figures"));
    type(QStringLiteral("driver's seat, height"), QStringLiteral("500"));
    EXPECT_THAT(notes(), testing::Not(testing::HasSubstr("The driver is not in these figures")));
    EXPECT_EQ(value(kLoaded, QStringLiteral("Total")), QStringLiteral("1630.0 kg"));
    EXPECT_EQ(value(kLoaded, QStringLiteral("CG ahead of rear axle")),
              fixed((2794.0 * 880 + 80 * 1300) / 1630, 1, "mm"));
}

TEST_F(Weights, UnlevelPadsWithoutRatesAreNotKnownAndSaySo) {
    EXPECT_THAT(fact(kPads, QStringLiteral("Pads")).toStdString(), testing::HasSubstr("no heights entered"));
    typeFour(QStringLiteral("pad height, "), QString(), {QStringLiteral("6"), QStringLiteral("0")});
    EXPECT_EQ(fact(kPads, QStringLiteral("Pads")), QStringLiteral("— | heights: 2 of 4 entered"));
    typeFour(QStringLiteral("pad height, "), QString(),
             {QStringLiteral("6"), QStringLiteral("0"), QStringLiteral("0"), QStringLiteral("0")});
    EXPECT_EQ(fact(kPads, QStringLiteral("Changes a corner reading by")),
              QStringLiteral("— | not known: needs front track, rear track, front wheel rate, rear wheel "
                             "rate"));
}

// Four springs in a ring on a stiff body: the warp w over the sum of 1/k, k of each corner its wheel and tire
// in series. An independent derivation: the four corners' shifts are +F, -F, -F, +F (force and moment
// balance), so that the work of the ring gives w = F (1/k1 + 1/k2 + 1/k3 + 1/k4).
TEST_F(Weights, ThrowOfTheCornersIsTheWarpOverTheSumOfTheCompliances) {
    typeRates();
    typeFour(QStringLiteral("pad height, "), QString(),
             {QStringLiteral("6"), QStringLiteral("0"), QStringLiteral("0"), QStringLiteral("0")});
    const double compliance = 2 * (1 / 20e3 + 1 / 200e3) + 2 * (1 / 25e3 + 1 / 250e3);
    const double shift = 0.006 / compliance / kStandardGravity;
    EXPECT_EQ(value(kPads, QStringLiteral("Changes a corner reading by")), fixed(shift, 1, "kg"));
    const QString shown = QString::number(shift, 'f', 1);
    EXPECT_EQ(value(kPads, QStringLiteral("Front corners read")), QStringLiteral("+%1 / −%1 kg").arg(shown));
    EXPECT_EQ(value(kPads, QStringLiteral("Warp")), QStringLiteral("6.0 mm"));
}

// A reading made up from a height by moments about the rear wheels, tires of one size: with the front raised
// by the angle a, F' = F - W (h - r) tan a / L (R. N. Jazar, Vehicle Dynamics, 1st ed., eqs
// 2.29-2.32, p. 43).
TEST_F(Weights, TheLiftShowsItsHeightItsUncertaintyAndWhatMakesIt) {
    type(QStringLiteral("front tire radius, loaded"), QStringLiteral("342.9"));
    EXPECT_THAT(fact(kHeight, QStringLiteral("By the lift method")).toStdString(),
                testing::HasSubstr("needs how far it was raised, the reading"));
    const double angle = std::asin(800.0 / 2794);
    const double reading = 880 - 1550 * (560 - 342.9) * std::tan(angle) / 2794;
    type(QStringLiteral("lift: how far the end was raised"), QStringLiteral("800"));
    type(QStringLiteral("lift: reading of that axle with the car raised"), QString::number(reading, 'f', 2));
    EXPECT_THAT(value(kHeight, QStringLiteral("By the lift method")).toStdString(),
                testing::StartsWith("560.0 mm ± "));
    EXPECT_THAT(fact(kHeight, QStringLiteral("By the lift method")).toStdString(),
                testing::HasSubstr(
                    ("turned by " + QString::number(angle * 180 / std::numbers::pi, 'f', 2)).toStdString()));
    // What a scale's ± 0.98 kg does, by the formula's slope in F': cot a L/W for sqrt(2) times it.
    const double least = std::sqrt(2.0) * 0.98 * 2794 / 1550 / std::tan(angle);
    const double shown =
        value(kHeight, QStringLiteral("its ± from the scales")).section(u' ', 1, 1).toDouble();
    EXPECT_GT(shown, least);
    EXPECT_LT(shown, 2 * least);
    EXPECT_THAT(value(kHeight, QStringLiteral("In use")).toStdString(), testing::StartsWith("558.8 mm ± "));
    auto* box = named<CalmCombo>(QStringLiteral("CG height from"));
    ASSERT_NE(box, nullptr);
    box->setFocus();
    QTest::keyClick(box, Qt::Key_Down);
    EXPECT_EQ(state_.car.cgHeightFrom, CgHeightSource::lift);
    EXPECT_THAT(value(kHeight, QStringLiteral("In use")).toStdString(), testing::StartsWith("560.0 mm ± "));
}

// First order of the same formula, h - r = L cot a (F - F') / W with W = F + R, each axle's sum of two tires
// off by sqrt(2) times a scale's ± 0.98 kg: what a small lift is worth its ± says, without advice to lift
// higher.
TEST_F(Weights, ASmallLiftIsToldByItsUncertainty) {
    type(QStringLiteral("front tire radius, loaded"), QStringLiteral("342.9"));
    for (const double raised : {300.0, 800.0}) {
        const double angle = std::asin(raised / 2794);
        const double shift = 1550 * (560 - 342.9) * std::tan(angle) / 2794 / 1550;  // (F - F') / W
        type(QStringLiteral("lift: how far the end was raised"), QString::number(raised));
        type(QStringLiteral("lift: reading of that axle with the car raised"),
             QString::number(880 - 1550 * shift, 'f', 2));
        EXPECT_THAT(fact(kHeight, QStringLiteral("By the lift method")).toStdString(),
                    testing::AllOf(testing::StartsWith("560.0 mm ± "), testing::HasSubstr("| turned by "),
                                   testing::Not(testing::HasSubstr("▲"))));
        const double byHand =
            0.98 * std::sqrt(2.0) * 2794 / std::tan(angle) / 1550 * std::hypot(1.0, 1 - shift, shift);
        const QString shown = value(kHeight, QStringLiteral("its ± from the scales"));
        EXPECT_NEAR(shown.section(u' ', 1, 1).toDouble(), byHand, 0.051) << "shown to 0.1 mm";
    }
}

TEST_F(Weights, ALiftThatIsChosenButNotEnteredIsAComplaintAndTheEnteredHeightStays) {
    state_.car.cgHeightFrom = CgHeightSource::lift;
    show();
    EXPECT_THAT(fact(kHeight, QStringLiteral("Chosen, not used")).toStdString(),
                testing::HasSubstr("No lift is entered"));
    EXPECT_THAT(fact(kHeight, QStringLiteral("In use")).toStdString(),
                testing::MatchesRegex("558.8 mm ± .* mm \\| as entered"));
}

// Nobody knows how far a starting number is off: it has no ±, and what rests on it has none.
TEST_F(Weights, AStartingCgHeightHasNoUncertainty) {
    setOrigin(state_.car, {.field = Field::cgHeight}, Origin::starting);
    show();
    EXPECT_EQ(fact(kHeight, QStringLiteral("In use")),
              QStringLiteral("558.8 mm | a starting number, not measured"));
    EXPECT_THAT(fact(kHeight, QStringLiteral("Anti-squat at ride")).toStdString(),
                testing::EndsWith("goes with 1 / CG height, which nobody measured"));
    setOrigin(state_.car, {.field = Field::cgHeight}, Origin::measured);
    show();
    EXPECT_THAT(value(kHeight, QStringLiteral("In use")).toStdString(), testing::StartsWith("558.8 mm ± "));
}

// Full anti-squat is e/d = h/L (Barton & Fieldhouse, Automotive Chassis Engineering, 2018, sec. 3.11), so
// that with e/d and L fixed its percentage goes with 1/h.
TEST_F(Weights, AntiSquatIsGivenAtBothEndsOfTheHeightsUncertainty) {
    state_.car.cgHeightFrom = CgHeightSource::estimate;
    show();
    const double antiSquat = state_.trace.ride[Figure::antiSquat];
    ASSERT_TRUE(std::isfinite(antiSquat));
    // 95 of 100 lie within 1.96 standard uncertainties of 50 mm.
    const double low = antiSquat * 545 / (545 + 97.9982);
    const double high = antiSquat * 545 / (545 - 97.9982);
    EXPECT_EQ(fact(kHeight, QStringLiteral("Anti-squat at ride")),
              QStringLiteral("%1 | %2 to %3 within the ± of the CG height")
                  .arg(fixed(antiSquat, 1, "%"), fixed(low, 1, "%"), fixed(high, 1, "%")));
}

TEST_F(Weights, AddingBallastEntersItsNameAndRemovingItTheNextPlace) {
    auto* kinds = named<CalmCombo>(QStringLiteral("kind of load to add"));
    ASSERT_NE(kinds, nullptr);
    kinds->setFocus();
    QTest::keyClick(kinds, Qt::Key_Down);
    QTest::keyClick(kinds, Qt::Key_Tab);
    ASSERT_EQ(qobject_cast<QPushButton*>(QApplication::focusWidget())->text(), QStringLiteral("Add load"));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
    ASSERT_EQ(state_.car.ballast.size(), 1U);
    EXPECT_EQ(state_.car.ballast[0].name, "Bottle");
    EXPECT_FALSE(state_.car.ballast[0].mass.has_value()) << "a number nobody entered";
    auto* name = qobject_cast<NameField*>(QApplication::focusWidget());
    ASSERT_NE(name, nullptr);
    QTest::keyClicks(name, QStringLiteral("Blue bottle"));
    QTest::keyClick(name, Qt::Key_Return);
    EXPECT_EQ(state_.car.ballast[0].name, "Blue bottle");
    EXPECT_NE(named<NumberField>(QStringLiteral("Blue bottle, weight of all of it")), nullptr);
    auto* remove = named<QAbstractButton>(QStringLiteral("Remove Blue bottle"));
    ASSERT_NE(remove, nullptr);
    remove->setFocus();
    QTest::keyClick(remove, Qt::Key_Space);
    EXPECT_TRUE(state_.car.ballast.empty());
    EXPECT_EQ(QApplication::focusWidget()->accessibleName(), QStringLiteral("kind of load to add"));
}

// Fuel by volume and density: 60 L of 0.74 kg/L, half of it aboard when weighed. Moments about the rear axle
// and the middle, by hand.
TEST_F(Weights, FuelByVolumeAndDensityMovesTotalsAndCenterOfGravity) {
    typeRates();
    state_.car.ballast.push_back({.name = "Fuel", .at = {}});
    show();
    EXPECT_THAT(fact(kLoaded, QStringLiteral("No change")).toStdString(), testing::HasSubstr("nothing"));
    type(QStringLiteral("Fuel, volume when full"), QStringLiteral("60"));
    type(QStringLiteral("Fuel, density"), QStringLiteral("0.74"));
    type(QStringLiteral("Fuel, place, forward"), QStringLiteral("-700"));
    type(QStringLiteral("Fuel, place, left"), QStringLiteral("-300"));
    EXPECT_THAT(fact(kLoaded, QStringLiteral("No change")).toStdString(), testing::HasSubstr("nothing"));
    type(QStringLiteral("Fuel, place, height"), QStringLiteral("400"));
    type(QStringLiteral("Fuel, part aboard when weighed"), QStringLiteral("50"));
    const double added = 30 * 0.74;
    const double total = 1550 + added;
    EXPECT_EQ(value(kLoaded, QStringLiteral("Total")), fixed(total, 1, "kg"));
    const double front = 880 - added * 700 / 2794;
    EXPECT_EQ(value(kLoaded, QStringLiteral("Front")), fixed(100 * front / total, 1, "%"));
    EXPECT_EQ(value(kLoaded, QStringLiteral("CG ahead of rear axle")), fixed(2794 * front / total, 1, "mm"));
    const double left = (30 * 750.0 - added * 300) / total;
    EXPECT_EQ(value(kLoaded, QStringLiteral("CG lateral")), fixed(left, 1, "mm") + QStringLiteral(" left"));
    EXPECT_EQ(value(kHeight, QStringLiteral("With what is aboard now")),
              fixed((1550 * 558.8 + added * 400) / total, 1, "mm"));
}

// Of a truck scale 95 of 100 readings lie within 1.96 times its standard uncertainty of 10 kg, which is ± 20
// kg.
TEST_F(Weights, TheOtherScaleIsHeldAgainstTheCornersReadWithTheDriverAsThere) {
    type(QStringLiteral("truck-scale ticket, front axle"), QStringLiteral("870"));
    ASSERT_TRUE(awaitJobs());
    EXPECT_EQ(fact(kTicket, QStringLiteral("Front axle")),
              QStringLiteral("870.0 kg | ± 20 kg; corners 880.0 kg: +10.0 kg"));
    state_.car.weighing.ticket.driver = DriverSeat::out;
    show();
    EXPECT_THAT(fact(kTicket, QStringLiteral("Front axle")).toStdString(),
                testing::HasSubstr("no corner reading, driver out"));
}

TEST_F(Weights, ACarThatCannotBeComputedShowsNoFigures) {
    state_.car.cornerWeights.leftFront = -1;
    show();
    ASSERT_FALSE(state_.faults.empty());
    for (const QString& card : {kWeighed, kLoaded, kHeight, kDriver, kPads, kTicket}) {
        EXPECT_EQ(value(card, QStringLiteral("Total")), QString());
    }
    int said = 0;
    for (ToneLabel* label : page_->findChildren<ToneLabel*>()) {
        said += label->isVisibleTo(page_.get()) && label->text().startsWith(QStringLiteral("Not computed. "));
    }
    EXPECT_EQ(said, 6);
    page_->grab();  // the outline alone is painted
    EXPECT_TRUE(page_->findChild<PlanPicture*>()->labels().empty());
}

TEST_F(Weights, AClickInARowEntersItsField) {
    auto* field = named<NumberField>(QStringLiteral("front track"));
    ASSERT_NE(field, nullptr);
    QWidget* box = field->parentWidget();
    QTest::mouseClick(box, Qt::LeftButton, Qt::NoModifier, {12, box->height() / 2});
    EXPECT_EQ(QApplication::focusWidget(), field);
}

TEST_F(Weights, TabGoesFromTopToBottom) {
    page_->enter();
    const QWidget* content = QApplication::focusWidget()->window();
    int fields = 0;
    int last = -1;
    for (int step = 0; step < 80; ++step) {
        const QWidget* focus = QApplication::focusWidget();
        const int y = focus->mapTo(content, QPoint(0, focus->height() / 2)).y();
        // Scrolled to as it is entered: reckoned in the scrolled content.
        const QWidget* scrolled = focus;
        while (scrolled->parentWidget() != nullptr &&
               scrolled->parentWidget()->objectName() != QStringLiteral("qt_scrollarea_viewport")) {
            scrolled = scrolled->parentWidget();
        }
        const int place = y - scrolled->mapTo(content, QPoint(0, 0)).y();
        if (fields > 0 && place + 4 < last) {
            break;
        }
        last = place;
        fields += qobject_cast<const NumberField*>(focus) != nullptr ? 1 : 0;
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    }
    // 5 of the car, 4 + 4 + 1 of scales, 1 + 3 driver, 4 pads, 6 rates, 4 ticket, 3 height and lift.
    EXPECT_EQ(fields, 35);
}

TEST_F(Weights, EveryNumberOfThePageSaysHowItIsMeasured) {
    state_.car.ballast.push_back({.name = "Fuel", .at = {}});
    show();
    const auto isOnThePage = [](const FieldRule& rule) {
        return rule.scope == Scope::ballast || rule.field == Field::frontTrack ||
               rule.path.starts_with("weighing.") || rule.path.starts_with("lift.");
    };
    int seen = 0;
    for (const FieldRule& rule : fieldRules()) {
        FieldId id{.field = rule.field, .item = rule.scope == Scope::ballast ? 0 : -1};
        if (!isOnThePage(rule)) {
            continue;
        }
        for (id.axis = rule.hasAxis ? 0 : -1; id.axis < (rule.hasAxis ? 3 : 0); ++id.axis) {
            EXPECT_TRUE(page_->hasField(id)) << rule.path;
            EXPECT_GT(wordsFor(state_.car, id).howTo.size(), 100) << rule.path;
            ++seen;
        }
    }
    EXPECT_EQ(seen, 28);
    const QString lift = wordsFor(state_.car, {.field = Field::liftHeight}).howTo;
    for (const char* caution :
         {"held so that it can't run off or tip", "backup supports just clear", "nobody under"}) {
        EXPECT_TRUE(lift.contains(QLatin1String(caution))) << caution;
    }
}

// Four readings of 0.5 kg each: their sum to 1.96 times twice that (JCGM 100, 5.1.2 and table G.1).
TEST_F(Weights, TheTotalIsAsAccurateAsItsFourReadings) {
    state_.car.weighing.scaleUncertainty = 0.5;
    show();
    const auto total = [this] {
        return fact(QStringLiteral("By the corner weights"), QStringLiteral("Total"));
    };
    ASSERT_TRUE(awaitJobs());
    EXPECT_THAT(total().toStdString(), testing::HasSubstr("| ± 2.0 kg; four corners"));
    state_.showsUncertainty = false;
    show();
    EXPECT_FALSE(total().contains(u'±'));
}

}  // namespace
}  // namespace bolthole::test
