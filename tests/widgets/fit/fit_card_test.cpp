// What the card says where nothing can be fitted.
#include "widgets/fit/fit_card.h"

#include <gtest/gtest.h>

#include <QLabel>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

#include "geometry/edits/starting_car.h"
#include "widgets/fit/fit_words.h"
#include "widgets/kit/theme.h"

namespace bolthole {
namespace {

class FitCardTest : public testing::Test {
  protected:
    FitCardTest() {
        ThemeKeeper::instance().choose(Appearance::light);
        card_.show();
    }
    void showMissing(std::size_t count) {
        auto fit = std::make_shared<LaunchFit>();
        fit->end = FitEnd::missing;
        fit->missing.assign(count, {"launch.engine.torque", "expected rows of rpm and torque"});
        card_.showFit(fit, startingCar({}));
    }
    [[nodiscard]] QString shown() const {
        QString text;
        for (const QLabel* label : card_.findChildren<QLabel*>()) {
            text += label->isVisible() ? label->text() + QLatin1Char('\n') : QString();
        }
        return text;
    }
    [[nodiscard]] QPushButton* enter() const {
        for (auto* button : card_.findChildren<QPushButton*>()) {
            if (button->text().contains(QStringLiteral("Launch page"))) {
                return button;
            }
        }
        return nullptr;
    }

    FitCard card_;
};

TEST_F(FitCardTest, WhatTheLaunchLacksIsSaidOnceWithTheWayToEnterIt) {
    ASSERT_NE(enter(), nullptr);
    EXPECT_FALSE(enter()->isVisible());
    showMissing(18);
    EXPECT_TRUE(shown().contains("It lacks 18 numbers, which the Launch page lists."))
        << shown().toStdString();
    EXPECT_FALSE(shown().contains("expected"));
    const QSignalSpy asked(&card_, &FitCard::launchNumbersRequested);
    enter()->setFocus();
    QTest::keyClick(enter(), Qt::Key_Space);
    EXPECT_EQ(asked.size(), 1);
    showMissing(1);
    EXPECT_TRUE(shown().contains("It lacks one number"));
    card_.showNothing(QStringLiteral("Not fitted."));
    EXPECT_FALSE(enter()->isVisible());
}

TEST_F(FitCardTest, PassesLeftOutForOneReasonAreOneLine) {
    Car car = startingCar({});
    car.passes.resize(4);
    for (int row = 0; row < 4; ++row) {
        car.passes[static_cast<std::size_t>(row)].date = "2026-05-01";
        car.passes[static_cast<std::size_t>(row)].number = row + 1;
    }
    LaunchFit fit;
    fit.unused = {{0, "no 60 ft"}, {1, "it spun"}, {2, "no 60 ft"}, {3, "no 60 ft"}};
    const QStringList lines = unusedWords(fit, car).split(QLatin1Char('\n'));
    ASSERT_EQ(lines.size(), 2);
    EXPECT_EQ(lines[0].toStdString(), "Left out: " + passWords(car.passes[0]) + " and 2 more, no 60 ft");
    EXPECT_EQ(lines[1].toStdString(), "Left out: " + passWords(car.passes[1]) + ", it spun");
}

}  // namespace
}  // namespace bolthole
