// A Springs page with what a window would do around it, for tests that type and click, on a car whose
// geometry is worked out by hand.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QPushButton>
#include <QTest>
#include <algorithm>
#include <cmath>

#include "tests/support/level_car.h"
#include "tests/support/made_parts.h"
#include "tests/support/typing.h"
#include "widgets/kit/theme.h"
#include "widgets/pages/fact_card.h"
#include "widgets/pages/springs/springs_page.h"

namespace bolthole::test {

inline constexpr double kLink = 0.5;  // m

// Level links all of one length, held sideways by a guide: the axle never pitches, and rising by z it moves
// forward on their circle.
inline Car circlingCar() {
    Car car = levelCar();
    car.units = Units::metric;
    car.rearTrack = 1.5;
    const double radius = car.rearTireRadius;
    car.links[2] = makeLink("guide", LinkKind::guide, Side::center, {{0, 0, radius}, {0, 0, radius}});
    car.links[0].chassis.holes[0].at.x() = kLink;
    car.links[1].chassis.holes[0].at.x() = kLink;
    car.travel = {.bump = 0.08, .droop = 0.08, .steps = 33};
    return car;
}

inline double forwardAt(double travel) {
    return kLink - std::sqrt(kLink * kLink - travel * travel);
}

// From the axle's center plane at `y`, `tall` m straight up.
inline SuspensionPart upright(const char* name, PartKind kind, double y, double tall) {
    const double center = circlingCar().rearTireRadius;
    return makePart(name, kind, Side::both, {{0, y, center + tall}, {0, y, center}});
}

// Length of such a part at a travel, by hand.
inline double uprightLength(double tall, double travel) {
    return std::hypot(forwardAt(travel), tall - travel);
}

// How much shorter it gets for each meter of travel: the derivative of the above.
inline double uprightRatio(double tall, double travel) {
    const double forwardSlope = travel / std::sqrt(kLink * kLink - travel * travel);
    return (tall - travel - forwardAt(travel) * forwardSlope) / uprightLength(tall, travel);
}

/// The page with what a window would do: every edit is applied and the result shown.
class SpringsBench : public testing::Test {
  protected:
    static void SetUpTestSuite() { ThemeKeeper::instance().choose(Appearance::light); }

    SpringsBench() {
        QObject::connect(&page_, &SpringsPage::edited, &page_, [this](const Edit& edit) {
            edits_.push_back(edit);
            const EditResult result = bolthole::apply(state_.car, edit);
            EXPECT_EQ(result.refusal, "");
            show(result.car);
        });
        page_.resize(980, 900);
        show(circlingCar());
        page_.show();
        QApplication::setActiveWindow(&page_);
    }

    void show(const Car& car) {
        state_.car = state_.solvedCar = car;
        state_.faults = findFaults(car);
        if (state_.faults.empty()) {
            state_.trace = computeTrace(car);
        }
        state_.traceIsCurrent = state_.faults.empty() && state_.trace.assembly.usable();
        state_.problem = state_.traceIsCurrent ? "" : "as it stands it can't be";
        state_.style = {car.units, InchStyle::sixteenths};
        page_.showState(state_);
    }
    void showParts(std::vector<SuspensionPart> parts) {
        Car car = circlingCar();
        car.springs = std::move(parts);
        show(car);
    }

    template <class Kind>
    Kind* named(const QString& name) {
        return test::namedIn<Kind>(page_, name);
    }
    void type(const QString& name, const QString& text) { test::typeIn(page_, name, text); }
    /// The value a card shows beside a label; the texts of all cards of that title are searched.
    std::string fact(const QString& card, const QString& label) {
        for (FactCard* each : page_.findChildren<FactCard*>()) {
            if (each->accessibleName() != card) {
                continue;
            }
            for (ToneLabel* value : each->findChildren<ToneLabel*>()) {
                if (value->accessibleName() == label && value->isVisibleTo(each)) {
                    return value->text().toStdString();
                }
            }
        }
        return "none";
    }
    /// Whether any label that can be seen says so.
    bool says(const QString& words) {
        const QList<ToneLabel*> labels = page_.findChildren<ToneLabel*>();
        return std::ranges::any_of(labels, [&](const ToneLabel* label) {
            return label->isVisibleTo(&page_) && label->text().contains(words);
        });
    }
    /// Opens the menu by the keyboard and picks the entry with that mnemonic.
    void addByKey(Qt::Key mnemonic) {
        auto* add = named<QPushButton>(QStringLiteral("Add a spring, shock or stop"));
        ASSERT_NE(add, nullptr);
        add->setFocus();
        QTest::keyClick(add, Qt::Key_Space);
        QWidget* menu = QApplication::activePopupWidget();
        ASSERT_NE(menu, nullptr);
        QTest::keyClick(menu, mnemonic);
    }

    BenchState state_;
    SpringsPage page_;
    std::vector<Edit> edits_;
};

}  // namespace bolthole::test
