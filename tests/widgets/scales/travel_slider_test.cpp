#include "widgets/scales/travel_slider.h"

#include <gmock/gmock.h>

#include <QAccessible>
#include <QApplication>
#include <QMouseEvent>
#include <QTest>
#include <QWheelEvent>
#include <cmath>

#include "tests/support/made_bench.h"
#include "tests/support/made_units.h"
#include "widgets/kit/theme.h"

namespace bolthole {
namespace {

using test::madeBench;
using test::MadeCurves;
using test::moveCursor;

constexpr double kRow = 8 * kInch / 80;

/// A slider wired as the window wires it: what is asked for is shown.
class Bench {
  public:
    explicit Bench(const MadeCurves& made = {}) : curves_(made), state(madeBench(made)) {
        ThemeKeeper::instance().choose(Appearance::light);
        slider.resize(slider.sizeHint().width(), 420);
        QObject::connect(&slider, &TravelSlider::cursorMoved, [this](double travel) {
            asked.push_back(travel);
            moveCursor(state, curves_, travel);
            slider.showCursor(state);
        });
        slider.showTrace(state);
        slider.show();
        [[maybe_unused]] const bool exposed = QTest::qWaitForWindowExposed(&slider);
    }
    [[nodiscard]] QPoint at(double travel) const {
        const QRect track = slider.track();
        const double share = (curves_.bump - travel) / (curves_.bump + curves_.droop);
        return {track.center().x(), track.top() + static_cast<int>(std::lround(share * track.height()))};
    }
    /// Turns the wheel over the slider; whether it was taken.
    bool turnWheel(int eighths) {
        const QPointF over = slider.rect().center();
        QWheelEvent event(over, slider.mapToGlobal(over), {}, QPoint(0, eighths), Qt::NoButton,
                          Qt::NoModifier, Qt::NoScrollPhase, false);
        event.ignore();
        QApplication::sendEvent(&slider, &event);
        return event.isAccepted();
    }

  private:
    MadeCurves curves_;

  public:
    BenchState state;
    TravelSlider slider;
    std::vector<double> asked;
};

TEST(TravelSlider, ClickAndDragMoveTheHandleWithinTheRange) {
    Bench bench;
    QTest::mousePress(&bench.slider, Qt::LeftButton, {}, bench.at(2 * kInch));
    ASSERT_EQ(bench.asked.size(), 1U);
    EXPECT_NEAR(bench.asked.back(), 2 * kInch, 0.02 * kInch);
    QTest::mouseMove(&bench.slider, {10, -500});
    EXPECT_EQ(bench.asked.back(), 4 * kInch);
    QTest::mouseMove(&bench.slider, {10, 5000});
    EXPECT_EQ(bench.asked.back(), -4 * kInch);
    QTest::mouseRelease(&bench.slider, Qt::LeftButton, {}, {10, 5000});
    QTest::mouseDClick(&bench.slider, Qt::LeftButton, {}, bench.at(-2 * kInch));
    EXPECT_EQ(bench.asked.back(), 0.0);
}

TEST(TravelSlider, OtherButtonsAndHoveringDoNothing) {
    Bench bench;
    QTest::mouseClick(&bench.slider, Qt::RightButton, {}, bench.at(2 * kInch));
    const QPointF over = bench.at(1 * kInch);
    QMouseEvent hover(QEvent::MouseMove, over, bench.slider.mapToGlobal(over), Qt::NoButton, Qt::NoButton,
                      {});
    QApplication::sendEvent(&bench.slider, &hover);
    EXPECT_TRUE(bench.asked.empty());
}

TEST(TravelSlider, KeysStepThroughTheRows) {
    Bench bench;
    QTest::keyClick(&bench.slider, Qt::Key_Down);
    EXPECT_NEAR(bench.asked.back(), -kRow, 1e-12);
    QTest::keyClick(&bench.slider, Qt::Key_PageDown);
    EXPECT_NEAR(bench.asked.back(), -11 * kRow, 1e-12);
    QTest::keyClick(&bench.slider, Qt::Key_End);
    EXPECT_EQ(bench.asked.back(), -4 * kInch);
    const std::size_t count = bench.asked.size();
    QTest::keyClick(&bench.slider, Qt::Key_Down);
    EXPECT_EQ(bench.asked.size(), count) << "already at full droop";
    QTest::keyClick(&bench.slider, Qt::Key_R);
    EXPECT_EQ(bench.asked.back(), 0.0);
}

TEST(TravelSlider, TheWheelMovesItOnlyWhileFocused) {
    Bench bench;
    bench.slider.clearFocus();
    EXPECT_FALSE(bench.turnWheel(120));
    EXPECT_TRUE(bench.asked.empty());
    bench.slider.activateWindow();
    bench.slider.setFocus();
    ASSERT_TRUE(QTest::qWaitFor([&] { return bench.slider.hasFocus(); }));
    EXPECT_TRUE(bench.turnWheel(60));
    EXPECT_TRUE(bench.asked.empty()) << "half a notch";
    EXPECT_TRUE(bench.turnWheel(60));
    ASSERT_EQ(bench.asked.size(), 1U);
    EXPECT_NEAR(bench.asked.back(), kRow, 1e-12);
    bench.turnWheel(-120);
    EXPECT_EQ(bench.asked.back(), 0.0);
}

TEST(TravelSlider, SpeaksAsASliderWithItsValueInWords) {
    MadeCurves made;
    made.unusableInBump = 10;
    Bench bench(made);
    QAccessibleInterface* voice = QAccessible::queryAccessibleInterface(&bench.slider);
    ASSERT_NE(voice, nullptr);
    EXPECT_EQ(voice->role(), QAccessible::Slider);
    EXPECT_EQ(voice->text(QAccessible::Name), QStringLiteral("Travel"));
    EXPECT_EQ(voice->text(QAccessible::Value), QStringLiteral("ride"));
    ASSERT_NE(voice->valueInterface(), nullptr);
    EXPECT_EQ(voice->valueInterface()->maximumValue().toDouble(), 4 * kInch);
    voice->valueInterface()->setCurrentValue(-0.5 * kInch);
    EXPECT_EQ(bench.asked.back(), -0.5 * kInch);
    EXPECT_EQ(voice->text(QAccessible::Value), QStringLiteral("0.5 in droop"));
    QTest::keyClick(&bench.slider, Qt::Key_Home);
    EXPECT_EQ(voice->text(QAccessible::Value), QStringLiteral("4.0 in bump, out of reach"));
}

TEST(TravelSlider, AlignsItsTrackWithThePlots) {
    Bench bench;
    bench.slider.alignTrack({8, 77, 400, 300});
    EXPECT_EQ(bench.slider.track().top(), 77);
    EXPECT_EQ(bench.slider.track().height(), 300);
    QTest::mouseClick(&bench.slider, Qt::LeftButton, {}, {20, 77});
    EXPECT_EQ(bench.asked.back(), 4 * kInch);
}

TEST(TravelSlider, TicksAreRoundApartAndNameRide) {
    for (const Units units : {Units::inch, Units::metric}) {
        for (const double height : {80.0, 200.0, 750.0}) {
            const TravelOnScreen axis{{-0.09, 0.12, 81}, 50, 50 + height};
            const auto ticks = travelTicks(axis, units, 24);
            int rides = 0;
            for (std::size_t i = 0; i < ticks.size(); ++i) {
                rides += ticks[i].label == QStringLiteral("ride") ? 1 : 0;
                EXPECT_GE(axis.position(ticks[i].travel), axis.top - 0.01);
                EXPECT_LE(axis.position(ticks[i].travel), axis.bottom + 0.01);
                if (i > 0) {
                    EXPECT_GE(axis.position(ticks[i - 1].travel) - axis.position(ticks[i].travel), 23.99);
                }
            }
            EXPECT_EQ(rides, 1);
        }
    }
    const auto inch = travelTicks({{-4 * kInch, 4 * kInch, 81}, 0, 320}, Units::inch, 24);
    ASSERT_EQ(inch.size(), 9U);
    EXPECT_EQ(inch.front().label, QString(QChar(0x2212)) + QStringLiteral("4"));
    EXPECT_EQ(inch.back().label, QStringLiteral("+4"));
}

TEST(TravelSlider, ACarWithoutTravelStillHasAnAxis) {
    const TravelOnScreen axis{{0, 0, 2}, 10, 110};
    EXPECT_EQ(axis.position(0), 60);
    EXPECT_EQ(axis.travelAt(90), 0);
    EXPECT_EQ(travelTicks(axis, Units::inch, 24).size(), 1U);
    EXPECT_EQ(*travelAfterKey(Qt::Key_Up, 0, axis.span), 0);
}

TEST(TravelSlider, StretchesOutOfReachAreDrawnDashed) {
    MadeCurves made;
    made.unusableInDroop = 20;
    const Bench whole;
    const Bench partly(made);
    const QImage all = const_cast<TravelSlider&>(whole.slider).grab().toImage();
    const QImage part = const_cast<TravelSlider&>(partly.slider).grab().toImage();
    const int scale = qRound(all.devicePixelRatio());
    const int x = whole.slider.track().center().x() * scale;
    const auto changes = [&](const QImage& image) {
        int count = 0;
        for (int y = whole.at(-2.2 * kInch).y() * scale; y < whole.at(-3.8 * kInch).y() * scale; ++y) {
            count += image.pixelColor(x, y) != image.pixelColor(x, y + 1) ? 1 : 0;
        }
        return count;
    };
    EXPECT_EQ(changes(all), 0);
    EXPECT_GT(changes(part), 10);
}

}  // namespace
}  // namespace bolthole
