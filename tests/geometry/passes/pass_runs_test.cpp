// What passes were run with, and two of these against each other.
#include "geometry/passes/pass_runs.h"

#include <gmock/gmock.h>

#include <memory>

#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::ElementsAre;

/// Passes one after the other, each like the last unless told otherwise.
class Runs {
  public:
    Runs() {
        for (const char* name : {"first", "second"}) {
            car_.kept.push_back({-1, name, "", "", std::make_shared<const Car>(plainCar())});
        }
        next_.date = "2026-11-20";
        next_.setup = 0;
        next_.surface = {SurfaceKind::street, "north lane", std::nullopt};
        next_.pressures = {220, 220, 120, 120};
        next_.launchRpm = 2500;
    }
    Pass& next() { return next_; }
    Runs& run(double sixtyFoot) {
        next_.number = static_cast<int>(car_.passes.size()) + 1;
        next_.sixtyFoot = sixtyFoot;
        car_.passes.push_back(next_);
        return *this;
    }
    [[nodiscard]] Car& car() { return car_; }
    [[nodiscard]] RunWith ranWith(std::size_t row) const { return runWith(car_.passes[row]); }

  private:
    Car car_ = plainCar();
    Pass next_;
};

TEST(Letters, GoOnPastZ) {
    EXPECT_EQ(letterOf(0), "A");
    EXPECT_EQ(letterOf(25), "Z");
    EXPECT_EQ(letterOf(26), "AA");
    EXPECT_EQ(letterOf(27), "AB");
    EXPECT_EQ(letterOf(26 + 26 * 26), "AAA");
}

TEST(RunLists, TellApartSetupPressuresAndRpm) {
    Runs runs;
    runs.run(2.2);
    runs.next().pressures.leftRear = 127;
    runs.run(2.2);
    runs.next().pressures.leftRear = 120;
    runs.run(2.2);
    runs.next().launchRpm = 2600;
    runs.run(2.2);
    runs.next().setup = 1;
    runs.run(2.2);
    runs.next().surface.name = "south lane";  // no part of what it was run with
    runs.run(2.2);
    const RunList list = runsOf(runs.car());
    EXPECT_THAT(list.ofPass, ElementsAre(0, 1, 0, 2, 3, 3));
    EXPECT_THAT(list.firstOf, ElementsAre(0, 1, 3, 4));
    ASSERT_EQ(list.runs.size(), 4U);
    EXPECT_EQ(list.runs[1], runs.ranWith(1));
}

TEST(Repeats, HaveOnePressureAndOneRpm) {
    Runs runs;
    runs.run(2.20).run(2.22);
    runs.next().pressures = {220, 220, 127, 127};
    runs.run(2.10).run(2.12);
    runs.next().launchRpm = 2700;
    runs.run(2.00);
    EXPECT_EQ(repeatsOf(runs.car()).size(), 3U);
    // Two pairs 0.02 apart: pooled by hand, the root of 0.0002.
    EXPECT_NEAR(scatterOf(runs.car())->deviation, 0.01414213562, 1e-9);
}

TEST(SharedGround, IsTheDayWithMostOfBoth) {
    Runs runs;
    runs.run(2.2).run(2.2);
    runs.next().setup = 1;
    runs.run(2.1);
    runs.next().date = "2026-11-21";
    runs.run(2.1).run(2.1);
    runs.next().setup = 0;
    runs.run(2.2).run(2.2).run(2.2);
    const Answer<Ground> ground = sharedGround(runs.car(), runs.ranWith(0), runs.ranWith(2));
    ASSERT_TRUE(ground);
    EXPECT_EQ(ground->date, "2026-11-21");
    EXPECT_EQ(ground->name, "north lane");
    EXPECT_EQ(sampleOn(runs.car(), runs.ranWith(0), *ground).count, 3);
}

TEST(SharedGround, MayLieOnDifferentDaysButNeverOnTwoSurfaces) {
    Runs runs;
    runs.run(2.2).run(2.2);
    runs.next().setup = 1;
    runs.next().date = "2026-11-21";
    runs.run(2.1).run(2.1);
    const Answer<Ground> ground = sharedGround(runs.car(), runs.ranWith(0), runs.ranWith(2));
    ASSERT_TRUE(ground);
    EXPECT_FALSE(ground->date);
    for (Pass& pass : runs.car().passes) {
        if (pass.setup == 1) {
            pass.surface.kind = SurfaceKind::preppedTrack;
        }
    }
    const Answer<Ground> none = sharedGround(runs.car(), runs.ranWith(0), runs.ranWith(2));
    EXPECT_FALSE(none);
    EXPECT_EQ(none.reason, "they were never run on one surface");
    EXPECT_EQ(compareRuns(runs.car(), runs.ranWith(0), runs.ranWith(2)).reason, none.reason);
}

TEST(SharedGround, DoesNotCountStruckPasses) {
    Runs runs;
    runs.run(2.2);
    runs.next().setup = 1;
    runs.run(2.1);
    runs.car().passes.back().struck = true;
    EXPECT_FALSE(sharedGround(runs.car(), runs.ranWith(0), runs.ranWith(1)));
}

// Welch's interval of 2.20, 2.21, 2.19 against 2.10, 2.11, 2.09: both scatter by 0.01, so it is the pooled
// one with 4 degrees of freedom: 2.776 * 0.01 * sqrt(2/3). 2.776 stands in the e-Handbook's table 1.3.6.7.2
// (from memory).
TEST(RunComparison, IsWelchs) {
    Runs runs;
    for (const double noise : {0.0, 0.01, -0.01}) {
        runs.next().setup = 0;
        runs.run(2.20 + noise);
        runs.next().setup = 1;
        runs.run(2.10 + noise);
    }
    const Answer<RunComparison> comparison = compareRuns(runs.car(), runs.ranWith(0), runs.ranWith(1));
    ASSERT_TRUE(comparison);
    ASSERT_TRUE(comparison->times.difference);
    EXPECT_NEAR(comparison->times.difference->change, -0.1, 1e-12);
    EXPECT_NEAR(comparison->times.difference->high, -0.1 + 2.776 * 0.01 * std::sqrt(2.0 / 3.0), 1e-5);
    EXPECT_TRUE(comparison->times.difference->apart());
    EXPECT_EQ(comparison->ground.date, "2026-11-20");
}

// A day that slows by 0.02 s an hour, exactly, run as two pairs an hour apart each: the second setup, run two
// hours later, would be 0.04 s slower by the day alone.
TEST(RunComparison, SaysWhatTheDaysTrendAloneWouldDo) {
    Runs runs;
    runs.next().time = "12:00";
    runs.run(2.200);
    runs.next().time = "13:00";
    runs.run(2.2201);
    runs.next().setup = 1;
    runs.next().time = "14:00";
    runs.run(2.24);
    runs.next().time = "15:00";
    runs.run(2.26);
    const Answer<RunComparison> comparison = compareRuns(runs.car(), runs.ranWith(0), runs.ranWith(2));
    ASSERT_TRUE(comparison && comparison->drift);
    ASSERT_TRUE(comparison->drift->drift) << comparison->drift->drift.reason;
    EXPECT_TRUE(comparison->drift->isByHour);
    ASSERT_TRUE(comparison->byDrift);
    EXPECT_NEAR(*comparison->byDrift, 0.0401, 1e-4);
    // Without a trend that can be told from none nothing is said of it.
    runs.car().passes[1].sixtyFoot = 2.15;
    EXPECT_FALSE(compareRuns(runs.car(), runs.ranWith(0), runs.ranWith(2))->byDrift);
}

}  // namespace
}  // namespace bolthole
