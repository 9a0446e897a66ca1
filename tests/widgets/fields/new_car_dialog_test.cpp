// Starting a car by real mouse and keys.
#include "widgets/fields/new_car_dialog.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QDialogButtonBox>
#include <QImage>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPainter>
#include <QPushButton>
#include <QTest>
#include <set>

#include "tests/support/made_units.h"
#include "widgets/kit/number_field.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"
#include "widgets/views/layout_picture.h"

namespace bolthole {
namespace {

class NewCarTest : public testing::Test {
  protected:
    static void SetUpTestSuite() { ThemeKeeper::instance().choose(Appearance::light); }

    NewCarTest() : dialog_({Units::inch, InchStyle::sixteenths}) {
        dialog_.show();
        QApplication::setActiveWindow(&dialog_);
    }

    QListWidget* list() { return dialog_.findChild<QListWidget*>("layouts"); }
    template <class Kind>
    Kind* named(const char* name) {
        for (Kind* each : dialog_.findChildren<Kind*>()) {
            if (each->accessibleName() == QLatin1String(name)) {
                return each;
            }
        }
        return nullptr;
    }
    QPushButton* start() {
        for (QPushButton* each : dialog_.findChildren<QPushButton*>()) {
            if (each->text().contains("Start")) {
                return each;
            }
        }
        return nullptr;
    }
    bool says(const QString& words) {
        const auto labels = dialog_.findChildren<QLabel*>();
        return std::ranges::any_of(
            labels, [&](const QLabel* label) { return label->isVisible() && label->text().contains(words); });
    }
    void type(const char* name, const QString& text) {
        auto* field = named<NumberField>(name);
        ASSERT_NE(field, nullptr) << name;
        field->setFocus();
        field->selectAll();
        QTest::keyClicks(field, text);
    }

    NewCarDialog dialog_;
};

TEST_F(NewCarTest, TheArrowsWalkThroughTheLayouts) {
    EXPECT_TRUE(list()->hasFocus());
    for (const LinkLayout layout : kLinkLayouts) {
        ASSERT_TRUE(dialog_.chosen().has_value());
        EXPECT_EQ(dialog_.chosen()->layout, layout);
        EXPECT_EQ(named<CalmCombo>("Held laterally by")->isVisible(), needsSidewaysHold(layout));
        EXPECT_EQ(says("Its uppers hold the axle laterally."), !needsSidewaysHold(layout));
        QTest::keyClick(list(), Qt::Key_Down);
    }
    QTest::keyClick(list(), Qt::Key_Home);
    EXPECT_EQ(dialog_.chosen()->layout, LinkLayout::triangulatedFourLink);
}

TEST_F(NewCarTest, WhatIsTypedAndChosenIsAskedFor) {
    list()->setCurrentRow(3);
    auto* title = named<QLineEdit>("title of the new car");
    title->setFocus();
    QTest::keyClicks(title, " Shop mule ");
    auto* hold = named<CalmCombo>("Held laterally by");
    hold->setFocus();
    QTest::keyClick(hold, Qt::Key_Down);
    type("wheelbase of the new car", "104 1/2");
    type("rear tire radius of the new car, loaded", "14");
    type("front tire radius of the new car, loaded", "330 mm");
    const std::optional<StartingCar> chosen = dialog_.chosen();
    ASSERT_TRUE(chosen.has_value());
    EXPECT_EQ(chosen->layout, LinkLayout::ladderBars);
    EXPECT_EQ(chosen->sideways, SidewaysHold::watts);
    EXPECT_EQ(chosen->title, "Shop mule");
    EXPECT_NEAR(chosen->wheelbase, 104.5 * kInch, 1e-12);
    EXPECT_NEAR(chosen->rearTireRadius, 14 * kInch, 1e-12);
    EXPECT_NEAR(chosen->frontTireRadius, 0.33, 1e-12);
    QTest::mouseClick(start(), Qt::LeftButton);
    EXPECT_EQ(dialog_.result(), QDialog::Accepted);
}

TEST_F(NewCarTest, ANumberThatCannotBeReadStartsNoCar) {
    type("wheelbase of the new car", "long");
    EXPECT_FALSE(dialog_.chosen().has_value());
    EXPECT_FALSE(start()->isEnabled());
    type("wheelbase of the new car", "-3");
    EXPECT_FALSE(start()->isEnabled());
    QTest::mouseDClick(list()->viewport(), Qt::LeftButton, Qt::NoModifier,
                       list()->visualItemRect(list()->item(1)).center());
    EXPECT_TRUE(dialog_.isVisible());
    type("wheelbase of the new car", "100");
    EXPECT_TRUE(start()->isEnabled());
}

// The same words as at the car's own field later: 108 1/2 in is a wheelbase, not a radius.
TEST_F(NewCarTest, ANumberNoCarHasIsDoubtedInPlace) {
    const QString doubt = QStringLiteral("rear tire radius 108 1/2 in looks outside what cars have");
    list()->setCurrentRow(1);
    EXPECT_FALSE(says("looks outside what cars have"));
    type("wheelbase of the new car", "210");
    type("rear tire radius of the new car, loaded", "108 1/2");
    EXPECT_TRUE(says(doubt));
    type("rear tire radius of the new car, loaded", "14");
    EXPECT_FALSE(says("looks outside what cars have"));
}

TEST_F(NewCarTest, NumbersThatNothingFitsStartNoCarAndSayWhy) {
    type("rear tire radius of the new car, loaded", "100 m");
    EXPECT_FALSE(start()->isEnabled());
    EXPECT_FALSE(dialog_.chosen().has_value());
    QStringList said;
    for (const ToneLabel* label : dialog_.findChildren<ToneLabel*>()) {
        if (!label->isHidden()) {
            said << label->text();
        }
    }
    EXPECT_TRUE(said.join(u' ').contains(QStringLiteral("▲ no starting numbers fit")));
    type("rear tire radius of the new car, loaded", "14");
    EXPECT_TRUE(start()->isEnabled());
    EXPECT_TRUE(dialog_.chosen().has_value());
}

TEST_F(NewCarTest, ADoubleClickStartsTheCar) {
    const QPoint at = list()->visualItemRect(list()->item(2)).center();
    QTest::mouseClick(list()->viewport(), Qt::LeftButton, Qt::NoModifier, at);
    EXPECT_TRUE(dialog_.isVisible()) << "a click only chooses";
    QTest::mouseDClick(list()->viewport(), Qt::LeftButton, Qt::NoModifier, at);
    EXPECT_EQ(dialog_.result(), QDialog::Accepted);
    EXPECT_EQ(dialog_.chosen()->layout, LinkLayout::threeLink);
}

TEST_F(NewCarTest, EnterStartsAndEscapeDoesNot) {
    QTest::keyClick(list(), Qt::Key_Return);
    EXPECT_EQ(dialog_.result(), QDialog::Accepted);
    dialog_.show();
    list()->setFocus();
    QTest::keyClick(list(), Qt::Key_Escape);
    EXPECT_EQ(dialog_.result(), QDialog::Rejected);
}

TEST_F(NewCarTest, AnotherUnitChangesNoLength) {
    type("wheelbase of the new car", "104 1/2");
    auto* units = named<CalmCombo>("Units");
    units->setFocus();
    QTest::keyClick(units, Qt::Key_Down);
    EXPECT_EQ(dialog_.chosen()->units, Units::metric);
    EXPECT_NEAR(dialog_.chosen()->wheelbase, 104.5 * kInch, 1e-12);
    EXPECT_EQ(named<NumberField>("wheelbase of the new car")->text(), "2654.3");
}

TEST_F(NewCarTest, SaysThatTheNumbersAreNotMeasured) {
    bool said = false;
    for (const QLabel* label : dialog_.findChildren<QLabel*>()) {
        said = said || label->text().contains("starting numbers: measure each one before you trust a figure");
    }
    EXPECT_TRUE(said);
    for (const QWidget* each : dialog_.findChildren<NumberField*>()) {
        EXPECT_FALSE(each->accessibleName().isEmpty());
        EXPECT_FALSE(each->toolTip().isEmpty());
    }
}

// No two layouts look alike, from either side, light or dark.
TEST_F(NewCarTest, EveryLayoutHasAPictureOfItsOwn) {
    for (const Appearance look : {Appearance::light, Appearance::dark}) {
        ThemeKeeper::instance().choose(look);
        for (const LayoutSight sight : {LayoutSight::side, LayoutSight::plan}) {
            std::set<QByteArray> pictures;
            for (const LinkLayout layout : kLinkLayouts) {
                for (const SidewaysHold hold : {SidewaysHold::trackBar, SidewaysHold::watts}) {
                    QImage image(140, 90, QImage::Format_RGB32);
                    image.fill(theme().card);
                    QPainter painter(&image);
                    drawLayout(painter, QRectF(image.rect()),
                               startingCar({.layout = layout, .sideways = hold}), sight);
                    painter.end();
                    pictures.insert(
                        QByteArray(reinterpret_cast<const char*>(image.constBits()), image.sizeInBytes()));
                }
            }
            EXPECT_EQ(pictures.size(), 9U) << static_cast<int>(sight);
        }
    }
    ThemeKeeper::instance().choose(Appearance::light);
}

}  // namespace
}  // namespace bolthole
