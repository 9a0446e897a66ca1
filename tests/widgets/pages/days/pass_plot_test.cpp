// The plot of the passes by itself: what stands over, in and below it, and what it says.
#include "widgets/pages/days/pass_plot.h"

#include <gmock/gmock.h>

#include <QTest>

#include "tests/support/season_car.h"
#include "tests/support/shown_chart.h"
#include "widgets/kit/theme.h"

namespace bolthole {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

class PassPlotTest : public testing::Test {
  protected:
    PassPlotTest() {
        ThemeKeeper::instance().choose(Appearance::light);
        QObject::connect(&plot_, &PassPlot::picked, [this](const std::optional<std::size_t>& pass) {
            picked_.push_back(pass);
            plot_.showSelected(pass);
        });
        plot_.resize(760, 240);
    }
    void show(const Car& car) {
        book_.take(car, {car.units});
        plot_.refresh();
        plot_.show();
    }
    [[nodiscard]] static Car season() {
        Car car = seasonCar({2.335, 2.340, 2.330}, {2.302, 2.308, 2.298, 2.304});
        car.units = Units::inch;
        return car;
    }
    [[nodiscard]] const ChartCard& card() const { return plot_.cards().front(); }

    PassBook book_;
    PassPlot plot_{book_};
    std::vector<std::optional<std::size_t>> picked_;
};

// Whether any pixel of that part is not the ground's.
bool hasInk(const QImage& image, const QRect& part) {
    const QRgb ground = image.pixel(0, 0);
    for (int y = part.top(); y <= part.bottom(); ++y) {
        for (int x = part.left(); x <= part.right(); ++x) {
            if (image.pixel(x, y) != ground) {
                return true;
            }
        }
    }
    return false;
}

TEST_F(PassPlotTest, TheKeyToTheSurfacesTakesAnotherLineWhereItIsNarrow) {
    Car car = season();
    car.passes[0].surface.kind = SurfaceKind::preppedTrack;
    car.passes[1].surface.kind.reset();
    book_.take(car, {car.units});
    SurfaceKey key(book_);
    key.refresh();
    const QSize whole = key.sizeHint();
    EXPECT_EQ(key.heightForWidth(whole.width()), whole.height());
    const int narrow = whole.width() * 3 / 4;
    ASSERT_GE(narrow, key.minimumSizeHint().width());
    ASSERT_EQ(key.heightForWidth(narrow), 2 * whole.height());
    key.resize(narrow, 2 * whole.height());
    const QImage image = key.grab().toImage();
    EXPECT_TRUE(hasInk(image, {0, whole.height(), narrow, whole.height()}));
    EXPECT_FALSE(hasInk(image, {narrow - 1, 0, 1, 2 * whole.height()})) << "cut at the right";
}

TEST_F(PassPlotTest, SaysWhatEachStretchWasRunWith) {
    Car car = season();
    Pass later = madePass(1, 1, 2.25, "2026-11-28", 10);
    later.surface = {SurfaceKind::preppedTrack, "", 24};
    car.passes.push_back(later);
    show(car);
    ASSERT_EQ(card().sections.size(), 3U);
    EXPECT_EQ(card().sections[0].title, "A");
    EXPECT_EQ(card().sections[0].words, "");
    EXPECT_EQ(card().sections[1].title, "B");
    EXPECT_THAT(card().sections[1].words.toStdString(), HasSubstr("lower axle hole 'top'"));
    EXPECT_EQ(card().sections[1].divider, ChartLine::fineDashes) << "changed on the same day";
    EXPECT_EQ(card().sections[2].divider, ChartLine::solid) << "another day";
    const std::vector<ImposedGroup>& days = plot_.axis().groups;
    ASSERT_EQ(days.size(), 2U);
    EXPECT_EQ(days[0].text, "Nov 20, 2026, street, north lane, surface 51.8 °F");
    EXPECT_EQ(days[1].text, "Nov 28, 2026, prepped track, surface 75.2 °F");
    // A day stands half a pass further from the one before.
    const std::vector<ChartPoint>& places = card().series.back().points;
    EXPECT_EQ(places[1].imposed - places[0].imposed, 1);
    EXPECT_EQ(places[7].imposed - places[6].imposed, 1.5);
    const std::vector<PointMark>& marks = card().series.back().marks;
    EXPECT_EQ(marks[0].mark, ChartMark::circle);
    EXPECT_FALSE(marks[0].isFilled);
    EXPECT_EQ(marks[7].mark, ChartMark::square);
    EXPECT_TRUE(marks[7].isFilled);
}

TEST_F(PassPlotTest, DrawsTheMeanOfAStretchAndWhereTheTrueOneLies) {
    show(season());
    const std::vector<ChartPoint>& means = card().series.front().points;
    ASSERT_EQ(means.size(), 6U);
    // By hand: (2.335 + 2.340 + 2.330) / 3, (2.302 + 2.308 + 2.298 + 2.304) / 4.
    EXPECT_NEAR(means[0].value, 2.335, 1e-9);
    EXPECT_NEAR(means[1].value, 2.335, 1e-9);
    EXPECT_NEAR(means[3].value, 2.303, 1e-9);
    EXPECT_NEAR(means[0].value - means[0].low, means[0].high - means[0].value, 1e-9);
    EXPECT_GT(means[0].high - means[0].low, means[3].high - means[3].low) << "three tell less than four";
    EXPECT_LT(means[0].imposed, card().series.back().points[0].imposed);
    EXPECT_GT(means[1].imposed, card().series.back().points[2].imposed);
}

TEST_F(PassPlotTest, AStruckPassIsPaleAndDoesNotStretchTheAxis) {
    Car car = season();
    car.passes[1].sixtyFoot = 3.4;
    car.passes[1].struck = true;
    show(car);
    EXPECT_TRUE(card().series.back().marks[1].isPale);
    EXPECT_FALSE(card().series.back().marks[0].isPale);
    EXPECT_NEAR(plot_.placeOf(1)->y(), plot_.onScreen().front().plot().area.top(), 1e-6);
    EXPECT_GT(plot_.placeOf(0)->y() - plot_.placeOf(1)->y(), 4);
    EXPECT_EQ(plot_.pointWords(0, 1, 1), "Pass 2 of Nov 20, 2026, setup A: 3.400 s\nstreet, north lane")
        << "as it was run, wherever it is drawn";
}

TEST_F(PassPlotTest, ThePickedPassIsRingedAndSaidToScreenReaders) {
    show(season());
    EXPECT_EQ(plot_.accessibleName(), "60 ft times");
    EXPECT_EQ(plot_.focusPolicy(), Qt::StrongFocus);
    plot_.showSelected(4);
    EXPECT_EQ(plot_.accessibleDescription(), "Pass 5 of Nov 20, 2026, setup B: 2.308 s, street, north lane");
    const QPoint ring = plot_.placeOf(4)->toPoint() + QPoint(9, 0);
    EXPECT_TRUE(test::isSeen(plot_.grab().toImage(), ring, theme().focus));
    QTest::mouseClick(&plot_, Qt::LeftButton, Qt::NoModifier, QPoint(2, 2));
    EXPECT_THAT(picked_, ElementsAre(std::nullopt)) << "a click beside all passes picks none";
    QTest::keyClick(&plot_, Qt::Key_Left);
    EXPECT_EQ(picked_.back(), 6U) << "the first step goes to the end it comes from";
}

TEST_F(PassPlotTest, SaysWhatItIsDrawnAgainstAndWhyItIsEmpty) {
    Car car = season();
    for (Pass& pass : car.passes) {
        pass.surface.temperature.reset();
    }
    show(car);
    plot_.setMeasure(PassMeasure::surfaceTemperature);
    EXPECT_EQ(plot_.accessibleDescription(), "No timed pass has a number for surface temperature.");
    car.passes[0].surface.temperature = 11;
    show(car);
    EXPECT_EQ(plot_.axis().title, "surface temperature, °F · 6 timed passes without it");
    ASSERT_EQ(card().notes.size(), 1U);
    EXPECT_EQ(card().notes[0].text, "A");
    EXPECT_EQ(card().notes[0].value, 2.335);
    EXPECT_TRUE(card().sections.empty());
}

}  // namespace
}  // namespace bolthole
