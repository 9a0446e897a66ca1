// From a demo car of which little was weighed to a finished weights page in the real window, with the
// keyboard alone; and all the way back.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QLineEdit>
#include <QTemporaryDir>
#include <QtTest/QTest>
#include <cmath>
#include <fstream>
#include <memory>
#include <nlohmann/json.hpp>

#include "app/window/main_window.h"
#include "geometry/units/uncertainty_text.h"
#include "widgets/pages/fact_card.h"
#include "widgets/pages/weights/weights_page.h"

namespace bolthole {
namespace {

constexpr double kGravity = 9.80665;  // m/s^2, standard (NIST SP 811, from memory)

// What is typed below, mm and kg; with driver as the demo has it, without driver as typed.
constexpr double kWheelbase = 2946.4;
constexpr double kFrontTrack = 1520;
constexpr double kRearTrack = 1500;
constexpr double kRadius = 346;
constexpr double kWith[4] = {541.6, 525.3, 392.8, 380.1};  // left and right front, left and right rear
constexpr double kWithout[4] = {510.6, 515.3, 358.8, 375.1};
constexpr double kRise = 900;
constexpr double kLiftReading = 775.2;  // rear axle, front raised, without driver

constexpr double sum(const double (&four)[4]) {
    return four[0] + four[1] + four[2] + four[3];
}
constexpr double kTotal = sum(kWith);
constexpr double kFront = kWith[0] + kWith[1];

class WeightsInTheWindow : public testing::Test {
  protected:
    void SetUp() override {
        ThemeKeeper::instance().choose(Appearance::light);
        window_ = std::make_unique<MainWindow>(Settings{});
        window_->resize(1480, 920);
        window_->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window_.get()));
        openBareCar();
        QCoreApplication::processEvents();
        opened_ = window_->state().car;
        key(Qt::Key_2, Qt::AltModifier);
    }
    void TearDown() override { window_->document().undoStack().setClean(); }

    // The demo wagon with nothing weighed but its corners.
    void openBareCar() {
        std::ifstream demo(BOLTHOLE_DEMO_DIR "/long-roof-wagon.bolt.json");
        nlohmann::json car = nlohmann::json::parse(demo);
        for (const char* key : {"front_track", "weighing", "loads", "wheel_rates", "springs", "lift",
                                "cg_height_from", "corner_weights_are", "launch", "brakes"}) {
            car.erase(key);
        }
        car["rear_track"] = 1498.6;
        car["wheelbase"] = kWheelbase;
        car["corner_weights"] = {{"left_front", kWith[0]},
                                 {"right_front", kWith[1]},
                                 {"left_rear", kWith[2]},
                                 {"right_rear", kWith[3]}};
        const QString file = folder_.filePath(QStringLiteral("bare.bolt.json"));
        std::ofstream(file.toStdString()) << car.dump();
        window_->openFile(file);
        ASSERT_EQ(window_->state().car.title, "Long-roof wagon");
        ASSERT_FALSE(window_->state().car.frontTrack.has_value());
    }
    static QWidget* focus() { return QApplication::focusWidget(); }
    // To whatever has the keyboard, as a keyboard does.
    void key(Qt::Key pressed, Qt::KeyboardModifiers with = Qt::NoModifier) {
        QTest::keyClick(focus() != nullptr ? focus() : window_.get(), pressed, with);
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    }
    // Tabs on until something of this name is entered; fails where it never is.
    void tabTo(const QString& name) {
        for (int step = 0; step < 120; ++step) {
            if (focus() != nullptr && focus()->accessibleName() == name) {
                return;
            }
            key(Qt::Key_Tab);
        }
        FAIL() << "Tab never enters " << name.toStdString();
    }
    void type(const char* name, const QString& text) {
        tabTo(QString::fromUtf8(name));
        if (auto* field = qobject_cast<QLineEdit*>(focus())) {
            field->selectAll();  // as Ctrl+A
        }
        QTest::keyClicks(focus(), text);
        key(Qt::Key_Return);
        auto* field = qobject_cast<NumberField*>(focus());
        EXPECT_TRUE(field == nullptr || !field->hasProblem()) << name << ": " << field->note().toStdString();
    }
    void type(const char* name, double number, const char* unit) {
        type(name, QStringLiteral("%1 %2").arg(QString::number(number, 'g', 8), QLatin1String(unit)));
    }
    void typeFour(const char* before, const char* after, const double (&numbers)[4], const char* unit) {
        const char* const wheels[] = {"left front", "right front", "left rear", "right rear"};
        for (int wheel = 0; wheel < 4; ++wheel) {
            type((std::string(before) + wheels[wheel] + after).c_str(), numbers[wheel], unit);
        }
    }
    void addLoad(int kind, const QString& name) {
        tabTo(QStringLiteral("kind of load to add"));
        for (int step = 0; step < kind; ++step) {
            key(Qt::Key_Down);
        }
        key(Qt::Key_Tab);
        key(Qt::Key_Space);
        ASSERT_NE(qobject_cast<NameField*>(focus()), nullptr) << "the new load's name is not entered";
        QTest::keyClicks(focus(), name);
        key(Qt::Key_Return);
    }

    void typeCar() {
        type("front track", kFrontTrack, "mm");
        type("rear track", kRearTrack, "mm");
        type("front tire radius, loaded", kRadius, "mm");
        type("rear tire radius, loaded", kRadius, "mm");
    }
    void typeScales() {
        typeFour("other reading, ", ", without the driver", kWithout, "kg");
        type("scales, ± of one pad", 0.5 * kCoverage95, "kg");
        type("driver's weight", 80.5, "kg");
        type("driver's seat, forward", 1500, "mm");
        type("driver's seat, height", 550, "mm");
        type("driver's seat, left", 460, "mm");
        typeFour("pad height, ", "", {3, 0, 0, 0}, "mm");
    }
    // Wheel and tire, front and rear: the names are those of the fields in the order one tabs through them.
    void typeRates() {
        tabTo(QStringLiteral("pad height, right rear"));
        for (const char* text : {"20 N/mm", "200 N/mm", "", "18 N/mm", "210 N/mm", ""}) {
            do {
                key(Qt::Key_Tab);
            } while (qobject_cast<NumberField*>(focus()) == nullptr);
            QTest::keyClicks(focus(), QLatin1String(text));
        }
        key(Qt::Key_Tab);
    }
    void typeBallast() {
        addLoad(0, QStringLiteral("Tank"));
        type("Tank, volume when full", 60, "L");
        type("Tank, density", 0.74, "kg/L");
        type("Tank, place, forward", -700, "mm");
        type("Tank, place, height", 400, "mm");
        type("Tank, place, left", 0, "mm");
        type("Tank, part aboard when weighed", QStringLiteral("50"));
        addLoad(2, QStringLiteral("Tool box"));
        type("Tool box, weight of all of it", 20, "kg");
        type("Tool box, place, forward", -500, "mm");
        type("Tool box, place, height", 600, "mm");
        type("Tool box, place, left", -300, "mm");
        type("Tool box, part aboard when weighed", QStringLiteral("100"));
        type("Tool box, part aboard now", QStringLiteral("0"));
    }
    void typeTicketAndLift() {
        type("truck-scale ticket, front axle", 1060, "kg");
        type("truck-scale ticket, rear axle", 775, "kg");
        type("truck-scale ticket, whole car", 1836, "kg");
        type("lift: how far the end was raised", kRise, "mm");
        tabTo(QStringLiteral("Axle read"));
        key(Qt::Key_Down);
        type("lift: reading of that axle with the car raised", kLiftReading, "kg");
        tabTo(QStringLiteral("Lifted, weighed"));
        key(Qt::Key_Down);
        tabTo(QStringLiteral("CG height from"));
        key(Qt::Key_Down);
    }

    // The value beside a label in a card; the remark after it.
    [[nodiscard]] std::string fact(const char* card, const char* label) const {
        for (FactCard* each : window_->findChildren<FactCard*>()) {
            if (each->accessibleName() != QLatin1String(card) || !each->isVisible()) {
                continue;
            }
            QString found;
            for (ToneLabel* text : each->findChildren<ToneLabel*>()) {
                if (text->accessibleName() == QLatin1String(label) && text->isVisibleTo(each)) {
                    found = text->text();
                }
            }
            return found.toStdString();
        }
        return "no card";
    }
    static std::string pounds(double kilograms) {
        return QString::number(kilograms / 0.45359237, 'f', 1).toStdString() + " lb";
    }
    static std::string inches(double millimeters) {
        return QString::number(millimeters / 25.4, 'f', 2).toStdString() + " in";
    }
    static std::string percent(double percents) {
        return QString::number(percents, 'f', 1).toStdString() + " %";
    }

    QTemporaryDir folder_;
    std::unique_ptr<MainWindow> window_;
    Car opened_;
};

// Moments by R. N. Jazar, Vehicle Dynamics, 1st ed., ch. 2.
TEST_F(WeightsInTheWindow, EverythingTypedByKeyboardComesToTheHandFiguresAndUndoesToTheOpenedCar) {
    EXPECT_EQ(focus()->accessibleName(), QStringLiteral("wheelbase"));
    const double antiSquat = window_->state().trace.ride[Figure::antiSquat];
    const double heightBefore = 1000 * window_->state().car.cgHeight;
    typeCar();
    typeScales();
    typeRates();
    typeBallast();
    typeTicketAndLift();
    if (testing::Test::HasFatalFailure()) {
        return;
    }
    ASSERT_EQ(window_->state().car.cgHeightFrom, CgHeightSource::lift);
    ASSERT_TRUE(window_->state().faults.empty());

    EXPECT_EQ(fact("By the corner weights", "Total"), pounds(kTotal));
    EXPECT_EQ(fact("By the corner weights", "Front"), percent(100 * kFront / kTotal));
    EXPECT_EQ(fact("By the corner weights", "Left"), percent(100 * (kWith[0] + kWith[2]) / kTotal));
    EXPECT_EQ(fact("By the corner weights", "Cross weight"), percent(100 * (kWith[1] + kWith[2]) / kTotal));
    EXPECT_EQ(fact("By the corner weights", "CG ahead of rear axle"), inches(kWheelbase * kFront / kTotal));
    const double moment = (kWith[0] - kWith[1]) * kFrontTrack / 2 + (kWith[2] - kWith[3]) * kRearTrack / 2;
    EXPECT_EQ(fact("By the corner weights", "CG lateral"), inches(moment / kTotal) + " left");

    // The driver: 31, 10, 34 and 5 kg more.
    EXPECT_EQ(fact("Driver and other reading", "Driver"), pounds(80));
    EXPECT_EQ(fact("Driver and other reading", "Ahead of rear axle"), inches(kWheelbase * 41 / 80));
    EXPECT_EQ(fact("Driver and other reading", "Lateral"),
              inches((21 * kFrontTrack / 2 + 29 * kRearTrack / 2) / 80) + " left");

    // Half the tank more, the tool box less.
    const double fuel = 30 * 0.74;
    const double total = kTotal + fuel - 20;
    const double front = kFront + (fuel * -700 + 20 * 500) / kWheelbase;
    EXPECT_EQ(fact("With what is aboard now", "Total"), pounds(total));
    EXPECT_EQ(fact("With what is aboard now", "Front"), percent(100 * front / total));
    EXPECT_EQ(fact("With what is aboard now", "CG ahead of rear axle"), inches(kWheelbase * front / total));
    EXPECT_EQ(fact("With what is aboard now", "CG lateral"), inches((moment + 20 * 300) / total) + " left");

    // The lift (R. N. Jazar, Vehicle Dynamics, 1st ed., eqs 2.29-2.32, p. 43): h = r + (b - L F'/W) cot a,
    // tires of one size.
    const double empty = sum(kWithout);
    const double raisedFront = empty - kLiftReading;
    const double angle = std::asin(kRise / kWheelbase);
    const double height =
        kRadius + kWheelbase * (kWithout[0] + kWithout[1] - raisedFront) / empty / std::tan(angle);
    EXPECT_THAT(fact("CG height", "By the lift method"), testing::StartsWith(inches(height) + " ± "));
    // Lifted without the driver, who sits 550 mm up: with him, the mean of the heights by mass.
    const double withDriver = (height * empty + (kTotal - empty) * 550) / kTotal;
    EXPECT_THAT(fact("CG height", "In use"), testing::StartsWith(inches(withDriver) + " ± "));
    const double now = (withDriver * kTotal + fuel * 400 - 20 * 600) / total;
    EXPECT_EQ(fact("CG height", "With what is aboard now"), inches(now));
    // Full anti-squat is e/d = h/L (Barton & Fieldhouse, sec. 3.11): it goes with 1/h. The links are as they
    // were; the tires' radius is the rear's by a hair, which no hole's height follows.
    ASSERT_TRUE(window_->state().traceIsCurrent);
    EXPECT_NEAR(window_->state().trace.ride[Figure::antiSquat], antiSquat * heightBefore / now,
                1e-6 * antiSquat);

    // Pads: the warp's moment, the ends' roll stiffness in series, over each track. k t^2/2 with wheel and
    // tire in series: a spring's work on a leaning body.
    const double frontRoll = 1 / (1 / 20e3 + 1 / 200e3) * std::pow(kFrontTrack / 1000, 2) / 2;
    const double rearRoll = 1 / (1 / 18e3 + 1 / 210e3) * std::pow(kRearTrack / 1000, 2) / 2;
    const double twist = frontRoll * rearRoll / (frontRoll + rearRoll) * 3 / kFrontTrack;
    EXPECT_EQ(fact("Pads", "Changes a corner reading by"), pounds(twist / (kRearTrack / 1000) / kGravity));

    EXPECT_EQ(fact("Truck-scale ticket", "Front axle"), pounds(1060));
    EXPECT_EQ(fact("Truck-scale ticket", "Whole car"), pounds(1836));

    const int steps = window_->document().undoStack().count();
    EXPECT_GT(steps, 40);
    for (int step = 0; step < steps; ++step) {
        key(Qt::Key_Z, Qt::ControlModifier);
    }
    EXPECT_EQ(window_->state().car, opened_);
    EXPECT_FALSE(window_->document().isEdited());
    EXPECT_EQ(fact("By the corner weights", "Total"), pounds(kTotal));
    // Typed without a ± of its own: half an inch of standard uncertainty (common practice, no source), and
    // ± is 1.96 of it.
    EXPECT_EQ(fact("CG height", "In use"), inches(heightBefore) + " ± " + inches(1.96 * 12.7));
}

// The page takes and gives the keyboard by its key alone.
TEST_F(WeightsInTheWindow, TheKeyShowsThePageAndEntersItsFirstField) {
    EXPECT_TRUE(window_->findChild<WeightsPage*>()->isVisible());
    EXPECT_EQ(focus()->accessibleName(), QStringLiteral("wheelbase"));
    key(Qt::Key_1, Qt::AltModifier);
    EXPECT_FALSE(window_->findChild<WeightsPage*>()->isVisible());
}

}  // namespace
}  // namespace bolthole
