// Holes by power, on a drawn car.
#include "geometry/trials/power_map.h"

#include <gmock/gmock.h>

#include <algorithm>

#include "tests/support/launch_car.h"

namespace bolthole {

namespace {

// Three holes at the lower axle bracket, the middle in use.
Car threeHoles() {
    Car car = launchCar(Layout::triangulated, 12);
    car.launch.friction = 3;  // more power is never slower
    Bracket& bracket = car.links[0].axle;
    const Hole middle = bracket.inUse();
    bracket.holes = {middle, middle, middle};
    for (std::size_t hole = 0; hole < 3; ++hole) {
        bracket.holes[hole].id = 100 + static_cast<int>(hole);
        bracket.holes[hole].name = hole == 0 ? "top" : hole == 1 ? "middle" : "bottom";
        bracket.holes[hole].at.z() += 0.03 * (1 - static_cast<double>(hole));
    }
    bracket.use = 1;
    for (Bracket* other : {&car.links[0].chassis, &car.links[1].chassis, &car.links[1].axle}) {
        other->holes = {other->inUse()};
        other->use = 0;
    }
    return car;
}

}  // namespace

TEST(PowerMap, LaunchesEveryCombinationAtEveryPower) {
    const Car car = threeHoles();
    const PowerMap map = mapPower(car, {.powers = 3, .draws = 4});
    ASSERT_TRUE(map.complete);
    EXPECT_TRUE(map.isAll);
    ASSERT_EQ(map.combinations.size(), 3U);
    EXPECT_EQ(map.combinations[0].use, holesInUse(car));
    EXPECT_EQ(map.combinations[0].bolts, 0);
    EXPECT_THAT(map.shares,
                testing::ElementsAre(testing::DoubleEq(0.6), testing::DoubleEq(1), testing::DoubleEq(1.4)));
    EXPECT_EQ(map.peakTorque, 610);
    // As entered it is the launch of the car.
    const LaunchRun present = simulateLaunch(*launchInputsOf(car).inputs);
    EXPECT_NEAR(*map.cell(0, 1).sixtyFoot, *present.figures.sixtyFoot, 1e-9);
    for (std::size_t power = 0; power < 3; ++power) {
        int best = 0;
        for (std::size_t other = 0; other < 3; ++other) {
            best += map.cell(other, power).isBest ? 1 : 0;
            EXPECT_TRUE(map.cell(other, power).isLike || !map.cell(other, power).isBest);
        }
        EXPECT_EQ(best, 1);
    }
    EXPECT_LT(*map.cell(0, 2).sixtyFoot, *map.cell(0, 0).sixtyFoot);
    EXPECT_EQ(combinationNames(map, 0, car), "middle");
}

TEST(PowerMap, BandsAreOfWhatIsGoodThroughout) {
    const Car car = threeHoles();
    const PowerMap map = mapPower(car, {.powers = 5, .draws = 6, .threads = 1});
    ASSERT_FALSE(map.bands.empty());
    std::size_t next = map.bands.front().first;
    for (const PowerBand& band : map.bands) {
        EXPECT_EQ(band.first, next);
        next = band.last + 1;
        for (std::size_t power = band.first; power <= band.last; ++power) {
            EXPECT_TRUE(map.cell(band.combination, power).isGood);
        }
    }
    EXPECT_EQ(next, map.shares.size());
    const PowerMap again = mapPower(car, {.powers = 5, .draws = 6, .threads = 3});
    for (std::size_t cell = 0; cell < map.cells.size(); ++cell) {
        EXPECT_EQ(map.cells[cell].sixtyFoot, again.cells[cell].sixtyFoot);
        EXPECT_EQ(map.cells[cell].isLike, again.cells[cell].isLike);
    }
}

TEST(PowerMap, ItsBandsInWords) {
    const Car car = threeHoles();
    PowerMap map{.complete = true, .shares = {0.6, 1, 1.4}, .peakTorque = 600};
    for (int hole = 0; hole < 3; ++hole) {
        HoleUse use = holesInUse(car);
        use.set(0, End::axle, hole);
        map.combinations.push_back({use, 0});
    }
    EXPECT_EQ(bandWords(map, car, Units::metric), "");
    map.bands = {{0, 0, 1}, {1, 2, 0}};
    EXPECT_EQ(bandWords(map, car, Units::metric), "up to 480 N\u00B7m: middle; above: top");
    map.bands = {{0, 2, 2}};
    EXPECT_EQ(bandWords(map, car, Units::metric), "at any power: bottom");
    map.bands = {{0, 0, 1}, {1, 1, 0}, {2, 2, 2}};
    EXPECT_EQ(bandWords(map, car, Units::metric),
              "up to 480 N\u00B7m: middle; to 720 N\u00B7m: top; above: bottom");
}

TEST(PowerMap, StopsAndNamesWhatIsMissing) {
    Car car = threeHoles();
    PowerOptions options;
    options.isCancelled = [] { return true; };
    EXPECT_FALSE(mapPower(car, options).complete);
    car.launch.engine.torque.clear();
    const PowerMap map = mapPower(car);
    EXPECT_FALSE(map.complete);
    EXPECT_EQ(map.missing.size(), 1U);
}

}  // namespace bolthole
