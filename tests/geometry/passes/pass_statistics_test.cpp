// What the passes of a car say: which repeat, how far they scatter, what a setup gained, how a day drifted.
#include "geometry/passes/pass_statistics.h"

#include <gmock/gmock.h>

#include <array>
#include <cmath>
#include <memory>

#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

class Season {
  public:
    explicit Season(int setups = 3) {
        for (int setup = 0; setup < setups; ++setup) {
            car_.kept.push_back({-1, std::to_string(setup), "", "", std::make_shared<const Car>(plainCar())});
        }
    }
    Season& run(int setup, double sixtyFoot, const std::string& lane = "north",
                const std::string& date = "2026-11-20", const std::string& time = "") {
        Pass pass;
        pass.number = static_cast<int>(car_.passes.size()) + 1;
        pass.date = date;
        pass.time = time;
        pass.setup = setup;
        pass.surface = {SurfaceKind::street, lane, std::nullopt};
        pass.sixtyFoot = sixtyFoot;
        car_.passes.push_back(pass);
        return *this;
    }
    [[nodiscard]] Car& car() { return car_; }

  private:
    Car car_ = plainCar();
};

TEST(Repeats, AreOfOneSetupSurfaceAndDay) {
    Season season;
    season.run(0, 2.20).run(1, 2.10).run(0, 2.24).run(0, 2.30, "south").run(0, 2.4, "north", "2026-11-27");
    season.run(1, 2.1).car().passes.back().struck = true;
    season.run(1, 2.1).car().passes.back().sixtyFoot.reset();
    season.run(1, 2.1).car().passes.back().setup.reset();
    season.run(1, 2.1).car().passes.back().surface.kind = SurfaceKind::preppedTrack;
    const std::vector<Repeats> groups = repeatsOf(season.car());
    ASSERT_EQ(groups.size(), 5U);
    EXPECT_EQ(groups[0].setup, 0);
    EXPECT_THAT(groups[0].passes, ElementsAre(0, 2));
    EXPECT_THAT(groups[0].sixtyFoot, ElementsAre(2.20, 2.24));
    EXPECT_THAT(groups[1].passes, ElementsAre(1));
    EXPECT_THAT(groups[2].passes, ElementsAre(3));
    EXPECT_THAT(groups[3].passes, ElementsAre(4));
    EXPECT_THAT(groups[4].passes, ElementsAre(8));
    EXPECT_EQ(repeatsOf(season.car(), {.surfaceName = "south"}).size(), 1U);
    EXPECT_EQ(repeatsOf(season.car(), {.surfaceKind = SurfaceKind::preppedTrack}).size(), 1U);
    EXPECT_EQ(repeatsOf(season.car(), {.date = "2026-11-27"}).size(), 1U);
}

// Pairs 0.02 apart have a variance of 0.0002 each; pooled by hand: the root of it.
TEST(Scatter, IsPooledOverRepeats) {
    Season season;
    EXPECT_EQ(scatterOf(season.car()).reason, "no setup was run twice on one surface and day");
    season.run(0, 2.20).run(1, 2.10).run(0, 2.22);
    season.run(1, 2.12).run(2, 9.0).run(0, 2.9, "south");
    const Answer<Scatter> scatter = scatterOf(season.car());
    ASSERT_TRUE(scatter);
    EXPECT_NEAR(scatter->deviation, std::sqrt(0.0002), 1e-12);
    EXPECT_EQ(scatter->freedom, 2);
    EXPECT_FALSE(scatterOf(season.car(), {.surfaceName = "south"}));
}

TEST(Setups, OnePassProvesNothing) {
    Season season;
    season.run(0, 2.20).run(0, 2.21).run(1, 2.05);
    const SetupComparison comparison = compareSetups(season.car(), 0, 1);
    EXPECT_FALSE(comparison.difference);
    EXPECT_EQ(verdict(comparison), "one pass proves nothing");
    EXPECT_EQ(verdict(compareSetups(season.car(), 0, 2)), "no pass was run");
    EXPECT_EQ(meanInterval(Sample{1, 2.2, 0}).reason, "one pass proves nothing");
    EXPECT_EQ(meanInterval(Sample{}).reason, "no pass was run");
    EXPECT_EQ(sampleOf(season.car(), 1).count, 1);
}

TEST(Setups, AreToldApartOrNot) {
    Season season;
    for (const double noise : {0.0, 0.01, -0.01, 0.005}) {
        season.run(0, 2.20 + noise).run(1, 2.10 + noise).run(2, 2.195 - noise);
    }
    EXPECT_THAT(verdict(compareSetups(season.car(), 0, 1)), HasSubstr("second is quicker by 0.1 s, ±"));
    EXPECT_THAT(verdict(compareSetups(season.car(), 1, 0)), HasSubstr("second is slower by 0.1 s, ±"));
    const SetupComparison close = compareSetups(season.car(), 0, 2);
    ASSERT_TRUE(close.difference);
    EXPECT_FALSE(close.difference->apart());
    ASSERT_TRUE(close.needed);
    EXPECT_EQ(close.more(), *close.needed - 4);
    EXPECT_EQ(verdict(close),
              "can't tell these apart, " + std::to_string(close.more()) + " more passes each would");
}

// What the size asks for, run with exactly that scatter and difference, is told apart; two thirds of it are
// not.
TEST(Setups, AsManyMoreAsSaidTellThemApart) {
    const Answer<int> needed = repeatsToTell(0.01, 0.012);
    ASSERT_TRUE(needed);
    const auto apart = [](int count) {
        return welchDifference(Sample{count, 2.2, 0.01}, Sample{count, 2.188, 0.01})->apart();
    };
    EXPECT_TRUE(apart(*needed));
    EXPECT_FALSE(apart(*needed / 3));
    EXPECT_GT(*repeatsToTell(0.01, 0.006), *needed);
    EXPECT_EQ(repeatsToTell(0.01, 0).reason, "there is no difference to tell");
    EXPECT_EQ(repeatsToTell(0.01, 1e-5).reason, "more than 1000 passes each");
    EXPECT_EQ(*repeatsToTell(0, 0.01), 2) << "without scatter two passes each are enough";
}

TEST(Intervals, AScatterFromElsewhereServesOnePass) {
    const Answer<Interval> interval = meanInterval(Sample{1, 2.2, 0}, Scatter{0.01, 4});
    ASSERT_TRUE(interval);
    // t with 4 degrees of freedom, 0.975: 2.776 (any table)
    EXPECT_NEAR(interval->high - interval->middle, 2.776 * 0.01, 1e-5);
    EXPECT_FALSE(meanInterval(Sample{}, Scatter{0.01, 4}));
}

TEST(Welch, NeedsScatter) {
    EXPECT_EQ(welchDifference(Sample{3, 2, 0}, Sample{3, 2.1, 0}).reason, "the passes do not scatter at all");
    EXPECT_TRUE(welchDifference(Sample{3, 2, 0.01}, Sample{3, 2.1, 0})) << "one that does is enough";
}

// A day 0.01 s an hour slower, and a setup 0.1 s quicker run later: neither is taken for the other.
TEST(DayDrift, IsNotASetupsGain) {
    Season season;
    const std::array times{"14:00", "14:30", "15:00", "15:30", "16:00", "16:30"};
    for (std::size_t at = 0; at < times.size(); ++at) {
        const double noise = at % 2 == 0 ? 0.0002 : -0.0002;
        const bool isLater = at >= 3;
        season.run(isLater ? 1 : 0, (isLater ? 2.1 : 2.2) + 0.005 * static_cast<double>(at) + noise, "north",
                   "2026-11-20", times[at]);
    }
    const DayDrift day = driftOf(season.car(), "2026-11-20");
    EXPECT_TRUE(day.isByHour);
    ASSERT_TRUE(day.drift);
    EXPECT_NEAR(day.drift->slope, 0.01, 5e-4);
    EXPECT_EQ(day.drift->freedom, 3);
    EXPECT_TRUE(day.drift->isTold());
}

TEST(DayDrift, WithoutTimesItIsForEachPass) {
    Season season;
    season.run(0, 2.20, "north", "2026-11-20", "14:00").run(0, 2.21).run(0, 2.22).run(0, 2.23);
    const DayDrift day = driftOf(season.car(), "2026-11-20");
    EXPECT_FALSE(day.isByHour);
    ASSERT_TRUE(day.drift);
    EXPECT_NEAR(day.drift->slope, 0.01, 1e-9);
}

TEST(DayDrift, HasItsReasons) {
    Season season;
    season.run(0, 2.20).run(1, 2.21).run(2, 2.2);
    EXPECT_EQ(driftOf(season.car(), "2026-11-20").drift.reason,
              "too few passes were repeated to see a trend");
    EXPECT_EQ(driftOf(season.car(), "2026-11-21").drift.reason,
              "too few passes were repeated to see a trend");
    Season still;
    for (int run = 0; run < 4; ++run) {
        still.run(0, 2.2 + run, "north", "2026-11-20", "14:00");
    }
    EXPECT_EQ(driftOf(still.car(), "2026-11-20").drift.reason, "all repeats were run at one time");
}

}  // namespace
}  // namespace bolthole
