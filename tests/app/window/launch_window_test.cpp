// The launch page in the real window: entered by keys, undone, led to fields on other pages.
#include <gmock/gmock.h>

#include <QApplication>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>
#include <fstream>

#include "app/carfile/car_file.h"
#include "app/window/main_window.h"
#include "widgets/kit/number_field.h"
#include "widgets/pages/launch/launch_page.h"
#include "widgets/pages/launch/link_load_table.h"

namespace bolthole {
namespace {

class LaunchInTheWindow : public ::testing::Test {
  protected:
    LaunchInTheWindow() {
        window_.resize(1480, 920);
        window_.show();
        open();
        QApplication::setActiveWindow(&window_);
        QTest::keyClick(&window_, Qt::Key_9, Qt::AltModifier);
    }
    ~LaunchInTheWindow() override { window_.document().undoStack().setClean(); }

    // A demo car of which nothing but links and weights is known.
    void open() {
        window_.openDemo(QStringLiteral("long-roof-wagon.bolt.json"));
        Car car = window_.state().car;
        car.launch = {};
        car.brakes = {};
        car.wheelRates = {};
        car.springs.clear();
        for (Link& link : car.links) {
            link.rating.reset();
        }
        ASSERT_TRUE(folder_.isValid());
        const QString name = folder_.filePath(QStringLiteral("blank.bolt.json"));
        std::ofstream(name.toStdString()) << writeCar(car, {});
        window_.openFile(name);
        EXPECT_FALSE(window_.state().car.launch.axleRatio.has_value());
    }
    LaunchPage& page() { return *window_.findChild<LaunchPage*>(); }
    NumberField* field(const QString& name) {
        QApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        for (NumberField* each : page().findChildren<NumberField*>()) {
            if (each->accessibleName() == name) {
                return each;
            }
        }
        return nullptr;
    }
    void type(const QString& name, const QString& text) {
        NumberField* at = field(name);
        ASSERT_NE(at, nullptr) << name.toStdString();
        at->setFocus();
        at->selectAll();
        QTest::keyClicks(at, text);
        QTest::keyClick(at, Qt::Key_Return);
    }

    QTemporaryDir folder_;
    MainWindow window_{Settings{}};
};

TEST_F(LaunchInTheWindow, KeysAloneReachThePageAndFillIt) {
    ASSERT_TRUE(page().isVisible());
    type("launch acceleration in g", "0.9");
    type("axle ratio", "3.73");
    type("rear unsprung weight", "260");
    EXPECT_TRUE(page().shown().links) << page().shown().links.refusal;
    EXPECT_TRUE(page().findChild<LinkLoadTable*>()->isVisible());
    EXPECT_EQ(window_.document().undoStack().count(), 3);
}

TEST_F(LaunchInTheWindow, UndoTakesBackOneNumberAtATime) {
    const Car before = window_.state().car;
    type("launch acceleration in g", "0.9");
    type("launch acceleration in g", "1.1");
    EXPECT_NEAR(page().shown().thrust->acceleration, 1.1 * kStandardGravity, 1e-12);
    QTest::keyClick(&window_, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_NEAR(page().shown().thrust->acceleration, 0.9 * kStandardGravity, 1e-12);
    EXPECT_EQ(field("launch acceleration in g")->text(), "0.9");
    QTest::keyClick(&window_, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_FALSE(page().shown().thrust);
    EXPECT_EQ(window_.state().car, before);
    QTest::keyClick(&window_, Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(window_.state().car.launch.acceleration, 0.9);
}

TEST_F(LaunchInTheWindow, AnotherSourceIsOneStepAndItsUndoBringsTheFieldsBack) {
    type("launch acceleration in g", "0.9");
    window_.document().apply(SetChoice{Choice::launchFrom, static_cast<int>(LaunchFrom::torque)},
                             EditPhase::whole, {});
    EXPECT_NE(field("engine torque at the flywheel"), nullptr);
    EXPECT_EQ(field("launch acceleration in g"), nullptr);
    QTest::keyClick(&window_, Qt::Key_Z, Qt::ControlModifier);
    ASSERT_NE(field("launch acceleration in g"), nullptr);
    EXPECT_EQ(field("launch acceleration in g")->text(), "0.9");
}

TEST_F(LaunchInTheWindow, ANumberOutOfItsLimitsIsRefusedInPlace) {
    const Car before = window_.state().car;
    type("launch acceleration in g", "40");
    EXPECT_EQ(window_.state().car, before);
    EXPECT_EQ(field("launch acceleration in g")->property("problem").toBool(), true);
    QTest::keyClick(field("launch acceleration in g"), Qt::Key_Escape);
    EXPECT_EQ(window_.state().car, before);
}

TEST_F(LaunchInTheWindow, AMissingNumberOfAnotherPageIsLedTo) {
    type("launch acceleration in g", "0.9");
    QPushButton* rate = nullptr;
    for (QPushButton* button : page().findChildren<QPushButton*>()) {
        rate =
            button->text().contains("heel rate", Qt::CaseInsensitive) && button->isVisible() ? button : rate;
    }
    ASSERT_NE(rate, nullptr);
    rate->setFocus();
    QTest::keyClick(rate, Qt::Key_Space);
    EXPECT_FALSE(page().isVisible()) << "wheel rates stand with the springs";
}

TEST_F(LaunchInTheWindow, AHoleBoltedElsewhereChangesTheLoads) {
    type("launch acceleration in g", "0.9");
    type("axle ratio", "3.73");
    type("rear unsprung weight", "260");
    const double before = page().shown().links->joints[0].worst.largest();
    window_.document().apply(UseHole{0, End::axle, 2}, EditPhase::whole, {});
    EXPECT_NE(page().shown().links->joints[0].worst.largest(), before);
}

}  // namespace
}  // namespace bolthole
