// The search for a target: what is found, put into the car, meets it.
#include "geometry/search/target_search.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>

#include "geometry/plates/plate_room.h"
#include "geometry/search/target_chance.h"
#include "geometry/search/target_reader.h"
#include "geometry/uncertainty/car_model.h"
#include "geometry/uncertainty/trace_uncertainty.h"
#include "tests/support/car_generator.h"
#include "tests/support/made_units.h"
#include "tests/support/plain_car.h"
#include "tests/support/watched.h"

namespace bolthole {
namespace {

Eigen::Vector2d inches(double x, double z) {
    return Eigen::Vector2d(x, z) * kInch;
}

Plate plateAround(const Eigen::Vector3d& at, double across, double up) {
    const Eigen::Vector2d middle = inSideView(at);
    Plate plate;
    plate.corners = {middle + inches(-across, -up), middle + inches(across, -up), middle + inches(across, up),
                     middle + inches(-across, up)};
    plate.holeDiameter = 0.5 * kInch;
    plate.edgeDistance = 0.75 * kInch;
    plate.holeSpacing = 2.5;
    return plate;
}

/// Lowers from axle (0, 6) to chassis (20, 10), uppers from axle (2, 20) to chassis (12, 18), inches, in
/// upright planes; both tires alike, so that the ground lies along the car's own axis.
Car flatCar() {
    Car car = plainCar();
    car.wheelbase = 110 * kInch;
    car.rearTireRadius = 13 * kInch;
    car.frontTireRadius = 13 * kInch;
    car.cgHeight = 20 * kInch;
    car.ballast.clear();
    car.springs.clear();
    car.links.resize(2);
    car.links[0].chassis.holes = {hole("front", 20, 18, 10)};
    car.links[0].axle.holes = {hole("low", 0, 18, 6)};
    car.links[0].axle.use = 0;
    car.links[1].chassis.holes = {hole("front", 12, 18, 18)};
    car.links[1].axle.holes = {hole("ear", 2, 18, 20)};
    car.links[0].axle.plate = plateAround(car.links[0].axle.inUse().at, 3, 5);
    return car;
}

TargetWindow anything() {
    return {.antiSquatLow = -1000, .antiSquatHigh = 1000};
}

/// The trace of the car with the hole planned and bolted, as the window would have it.
Trace traceOf(const Car& car, const NewHole& hole) {
    const EditResult planned = apply(car, hole.edit);
    EXPECT_EQ(planned.refusal, "");
    EXPECT_TRUE(
        planned.car.links[static_cast<std::size_t>(hole.edit.link)].bracket(hole.edit.end).inUse().planned);
    return computeTrace(planned.car);
}

// Worked by hand: the lower's line must pass through the chassis hole (20, 10) and the target center, which
// lies on the upper's line z = 20.4 - 0.2 x at x = 41.3333: so on z = 8 + 0.1 x. The foot of (0, 6) on that
// line is
// (-0.19802, 7.98020).
TEST(TargetHole, IsTheFootOfTheOldOneOnTheLineWorkedByHand) {
    const Car car = flatCar();
    TargetWindow target = anything();
    target.icNear = target.icFar = 124.0 / 3 * kInch;
    const NewHole found = searchHole(car, 0, End::axle, LengthTreatment::refit, limitsOf(target));
    ASSERT_TRUE(found.hasRoom);
    ASSERT_TRUE(found.answer.misses.empty());
    EXPECT_NEAR(found.edit.hole.at.x() / kInch, -0.2 / 1.01, 1e-5);
    EXPECT_NEAR(found.edit.hole.at.z() / kInch, 8 - 0.02 / 1.01, 1e-5);
    EXPECT_NEAR(found.edit.hole.at.y() / kInch, 18, 1e-12);
    EXPECT_NEAR(found.moved / kInch, 2 / std::sqrt(1.01), 1e-5);
    const Trace trace = traceOf(car, found);
    EXPECT_NEAR(trace.ride[Figure::icX], *target.icNear, 1e-4 * *target.icNear);
    // The slope of the patch's line to that center, over h / L: the physics' own worked case.
    EXPECT_NEAR(trace.ride[Figure::icZ] / kInch, 20.4 - 0.2 * 124 / 3, 1e-3);
}

// Two figures from the two coordinates of an upper's hole.
TEST(TargetHole, GivesDistanceAndHeightAtOnce) {
    Car car = flatCar();
    car.links[1].axle.plate = plateAround(car.links[1].axle.inUse().at, 3, 4);
    TargetWindow target = anything();
    // On the lower's line z = 6 + 0.2 x, where the axle stays put and the lower keeps its holes.
    target.icNear = target.icFar = 45 * kInch;
    target.icLow = target.icHigh = 15 * kInch;
    for (const LengthTreatment lengths : {LengthTreatment::refit, LengthTreatment::uppers}) {
        const NewHole found = searchHole(car, 1, End::axle, lengths, limitsOf(target));
        ASSERT_TRUE(found.hasRoom);
        ASSERT_TRUE(found.answer.misses.empty()) << nameOf(lengths);
        const Trace trace = traceOf(car, found);
        EXPECT_NEAR(trace.ride[Figure::icX], *target.icNear, 1e-4 * *target.icNear);
        EXPECT_NEAR(trace.ride[Figure::icZ], *target.icLow, 1e-4 * *target.icLow);
    }
}

TEST(TargetHole, SaysWhatBindsWhereThePlateIsTooSmall) {
    Car car = flatCar();
    car.links[0].axle.plate = plateAround(car.links[0].axle.inUse().at, 1, 2.5);
    TargetWindow target = anything();
    target.icNear = target.icFar = 124.0 / 3 * kInch;  // 2 in up, where the edge allows 1 3/4
    const NewHole found = searchHole(car, 0, End::axle, LengthTreatment::refit, limitsOf(target));
    ASSERT_TRUE(found.hasRoom);
    ASSERT_FALSE(found.answer.misses.empty());
    EXPECT_EQ(found.answer.misses.front().figure, TargetFigure::distance);
    ASSERT_FALSE(found.stops.empty());
    EXPECT_EQ(found.stops.front().kind, TargetStop::Kind::edge);
    EXPECT_NEAR(found.edit.hole.at.z() / kInch, 7.75, 1e-4);
    EXPECT_TRUE(std::isnan(found.answer.chance));
}

TEST(TargetHole, KeepsItsSpacingAndNamesTheHoleThatBinds) {
    Car car = flatCar();
    TargetWindow target = anything();
    // As it stands: an anti-squat within half a percent is had at the hole in use, where no other may be
    // drilled.
    const double now = computeTrace(car).ride[Figure::antiSquat];
    target.antiSquatLow = now - 40;
    target.antiSquatHigh = now + 40;
    const NewHole found = searchHole(car, 0, End::axle, LengthTreatment::refit, limitsOf(target));
    ASSERT_TRUE(found.answer.misses.empty());
    EXPECT_NEAR(found.moved, 1.25 * kInch, 1e-6);
    ASSERT_FALSE(found.stops.empty());
    EXPECT_EQ(found.stops.front().kind, TargetStop::Kind::hole);
    EXPECT_EQ(found.stops.front().hole, 0);
}

TEST(TargetHole, HasNoRoomOnAFullPlate) {
    Car car = flatCar();
    car.links[0].axle.plate = plateAround(car.links[0].axle.inUse().at, 1, 1);
    const NewHole found = searchHole(car, 0, End::axle, LengthTreatment::refit, limitsOf(anything()));
    EXPECT_FALSE(found.hasRoom);
}

TEST(TargetLength, GivesTheAntiSquatWithinTheAdjuster) {
    const Car car = flatCar();
    TargetWindow target = anything();
    Car turned = car;
    turned.links[1].length = builtLength(car.links[1]) + 0.006;
    const double aim = computeTrace(turned).ride[Figure::antiSquat];
    target.antiSquatLow = target.antiSquatHigh = aim;
    const NewLength found = searchLength(car, 1, limitsOf(target));
    ASSERT_TRUE(found.answer.misses.empty());
    EXPECT_LE(std::abs(found.change), 0.006 + 1e-6);
    turned.links[1].length = found.length;
    EXPECT_NEAR(computeTrace(turned).ride[Figure::antiSquat], aim, 1e-4 * aim);
    EXPECT_NEAR(found.length - found.change, builtLength(car.links[1]), 1e-12);
    const Station before = solveStation(car, 0);
    const Station after = solveStation(turned, 0);
    EXPECT_NEAR(found.answer.combination.pinionChange, after[Figure::pinion] - before[Figure::pinion], 1e-9);
}

TEST(TargetLength, StopsAtTheAdjustersEnd) {
    Car car = flatCar();
    const double built = builtLength(car.links[1]);
    car.links[1].adjuster->shortest = built - 0.002;
    car.links[1].adjuster->longest = built + 0.002;
    TargetWindow target = anything();
    target.antiSquatLow = target.antiSquatHigh = computeTrace(car).ride[Figure::antiSquat] + 60;
    const NewLength found = searchLength(car, 1, limitsOf(target));
    EXPECT_FALSE(found.answer.misses.empty());
    EXPECT_NEAR(std::abs(found.change), 0.002, 1e-6);
    ASSERT_FALSE(found.stops.empty());
}

TEST(TargetSearch, SaysWhyThereIsNothing) {
    Car car = flatCar();
    EXPECT_EQ(searchTarget(car, {}).problem, "no target is set for this car yet");
    car.target = anything();
    car.links.erase(car.links.begin() + 1);
    const TargetAnswers answers = searchTarget(car, {});
    EXPECT_FALSE(answers.complete);
    EXPECT_NE(answers.problem, "");
}

TEST(TargetSearch, StopsWhenCancelled) {
    Car car = flatCar();
    car.target = anything();
    TargetSearch search;
    search.isCancelled = [] { return true; };
    EXPECT_FALSE(searchTarget(car, search).complete);
}

/// Cars with three holes a bracket and a plate on each, and a window around what one of their combinations
/// has.
class TargetOfEachLayout : public testing::TestWithParam<Layout> {
  protected:
    // The sanitizers make the searches twenty times slower and look for other faults than a wrong answer:
    // there one layout of each kind of constraint.
    void SetUp() override {
        if (isWatched() && GetParam() != Layout::apart && GetParam() != Layout::torqueArm) {
            GTEST_SKIP() << "another layout of this kind is searched";
        }
    }
    struct Case {
        Car car;
        LengthTreatment lengths;
    };
    static std::vector<Case> cases(int count) {
        CarGenerator generator(31 + static_cast<std::uint64_t>(GetParam()));
        std::vector<Case> all;
        for (int number = 0; number < count; ++number) {
            Car car = generator.draw(GetParam());
            drillHoles(car, 2, 0.03);
            car.travel.steps = 21;
            for (Link& link : car.links) {
                link.axle.plate = plateAround(link.axle.inUse().at, 2.5, 3);
            }
            const Trace now = computeTrace(car);
            if (!now.assembly.usable() || !now.stations.front().usable || !now.stations.back().usable) {
                continue;
            }
            const double aim = now.ride[Figure::antiSquat] + generator.between(-25, 25);
            const double inverse = 1 / now.ride[Figure::icX];
            car.target = TargetWindow{.icNear = 1 / (inverse + 0.15),
                                      .icFar = 1 / (inverse - 0.15),
                                      .antiSquatLow = aim - 6,
                                      .antiSquatHigh = aim + 6,
                                      .changeLow = -200,
                                      .changeHigh = 200,
                                      .pinionChange = 4 * kRadiansPerDegree};
            all.push_back(
                {car, hasUpperRod(car) && number % 2 == 1 ? LengthTreatment::uppers : LengthTreatment::keep});
        }
        return all;
    }
};

TEST_P(TargetOfEachLayout, EveryAnswerReallyMeetsIt) {
    int met = 0;
    int drilled = 0;
    for (const Case& each : cases(5)) {
        const TargetAnswers answers = searchTarget(each.car, {.lengths = each.lengths});
        ASSERT_TRUE(answers.complete) << answers.problem;
        const double pinionNow = solveStation(each.car, 0)[Figure::pinion];
        const auto expectMet = [&](const Car& car, double tolerance) {
            const Trace trace = computeTrace(car);
            const TargetWindow& target = *each.car.target;
            const double inverse = 1 / trace.ride[Figure::icX];
            EXPECT_GE(inverse, target.inverseFar() - tolerance);
            EXPECT_LE(inverse, target.inverseNear() + tolerance);
            EXPECT_GE(trace.ride[Figure::antiSquat], target.antiSquatLow - tolerance * 100);
            EXPECT_LE(trace.ride[Figure::antiSquat], target.antiSquatHigh + tolerance * 100);
            EXPECT_LE(std::abs(trace.ride[Figure::pinion] - pinionNow), *target.pinionChange + tolerance);
            EXPECT_LE(std::abs(trace.stations.back()[Figure::antiSquat] -
                               trace.stations.front()[Figure::antiSquat]),
                      200 + tolerance * 100);
        };
        double last = 0;
        for (const TargetAnswer& answer : answers.meeting) {
            expectMet(*carWithCombination(each.car, answer.combination.use, each.lengths).car, 1e-6);
            EXPECT_GE(answer.chance, 0);
            EXPECT_LE(answer.chance, 1);
            if (answer.combination.problems == 0) {
                const double change =
                    std::round(std::abs(answer.combination.pinionChange) / kRadiansPerDegree * 10);
                EXPECT_GE(change, last);
                last = change;
            }
            ++met;
        }
        for (const TargetAnswer& answer : answers.nearest) {
            EXPECT_FALSE(answer.misses.empty());
        }
        for (const NewHole& hole : answers.holes) {
            if (!hole.hasRoom) {
                continue;
            }
            const Bracket& bracket =
                each.car.links[static_cast<std::size_t>(hole.edit.link)].bracket(hole.edit.end);
            EXPECT_THAT(plateTroubles(bracket, inSideView(hole.edit.hole.at), -1, Units::metric),
                        testing::IsEmpty());
            if (hole.answer.misses.empty()) {
                expectMet(apply(each.car, hole.edit).car, 1e-6);
                ++drilled;
            }
        }
        for (const NewLength& length : answers.lengths) {
            if (length.answer.misses.empty()) {
                Car turned = each.car;
                turned.links[static_cast<std::size_t>(length.link)].length = length.length;
                expectMet(turned, 1e-6);
            }
        }
    }
    EXPECT_GT(met + drilled, 0);
}

// A grid over the plate finds no place nearer to the hole in use by more than its own step, and none at all
// where the search says there is none.
TEST_P(TargetOfEachLayout, AGridFindsNoNearerPosition) {
    constexpr int kGrid = 25;
    for (const Case& each : cases(3)) {
        const TargetLimits limits = limitsOf(*each.car.target);
        const double pinion = solveStation(each.car, 0)[Figure::pinion];
        for (int link = 0; link < static_cast<int>(each.car.links.size()); ++link) {
            const Bracket& bracket = each.car.links[static_cast<std::size_t>(link)].axle;
            const NewHole found = searchHole(each.car, link, End::axle, each.lengths, limits);
            HolePlacement placement(each.car, found.edit, pinion);
            const Eigen::Vector2d home = inSideView(bracket.inUse().at);
            const Eigen::Vector2d step = inches(5, 6) / kGrid;
            double nearest = std::numeric_limits<double>::infinity();
            for (int across = 0; across < kGrid; ++across) {
                for (int up = 0; up < kGrid; ++up) {
                    const Eigen::Vector2d at = bracket.plate->corners.front() +
                                               step.cwiseProduct(Eigen::Vector2d(across + 0.5, up + 0.5));
                    if (placement.isAllowed(at) && positionAt(placement, limits, at).meets()) {
                        nearest = std::min(nearest, (at - home).norm());
                    }
                }
            }
            const double had = found.hasRoom && found.answer.misses.empty()
                                   ? found.moved
                                   : std::numeric_limits<double>::infinity();
            if (std::isfinite(nearest)) {
                EXPECT_LE(had, nearest + step.norm()) << "link " << link;
            }
        }
    }
}

// The round trip: a place somewhere on the plate has some center; asked for that center, distance and height
// to the last digit, the search comes to it or to a nearer place that has it too, and the car then gives it
// to 0.01 %.
TEST_P(TargetOfEachLayout, FindsTheHoleOfACenterThatOneHas) {
    CarGenerator places(7);
    int found = 0;
    for (const Case& each : cases(4)) {
        const int link = 0;
        const Bracket& bracket = each.car.links[link].axle;
        PlanHole plan{link, End::axle, bracket.inUse(), each.lengths};
        HolePlacement placement(each.car, plan, solveStation(each.car, 0)[Figure::pinion]);
        for (int round = 0; round < 6; ++round) {
            const Eigen::Vector2d at =
                inSideView(bracket.inUse().at) + inches(places.between(-1.7, 1.7), places.between(-2.2, 2.2));
            TargetFigures figures{};
            if (!placement.isAllowed(at) || !placement.figures(at, figures) ||
                !(std::abs(figures[0]) > 0.05)) {
                continue;
            }
            TargetWindow target{.antiSquatLow = -10'000, .antiSquatHigh = 10'000};
            target.icNear = target.icFar = 1 / figures[0];
            target.icLow = target.icHigh = figures[1];
            const NewHole hole = searchHole(each.car, link, End::axle, each.lengths, limitsOf(target));
            ASSERT_TRUE(hole.hasRoom);
            ASSERT_TRUE(hole.answer.misses.empty()) << "round " << round;
            EXPECT_LE(hole.moved, (at - inSideView(bracket.inUse().at)).norm() + 1e-6);
            const Trace trace = traceOf(each.car, hole);
            EXPECT_NEAR(trace.ride[Figure::icX], *target.icNear, 1e-4 * std::abs(*target.icNear));
            EXPECT_NEAR(trace.ride[Figure::icZ], *target.icLow, 1e-4 * std::abs(*target.icNear));
            ++found;
        }
    }
    EXPECT_GT(found, 3);
}

// Against samples drawn through the solver itself (JCGM 101), for windows that cut the uncertainty.
TEST_P(TargetOfEachLayout, ItsChanceIsTheShareOfDrawnSamples) {
    constexpr std::size_t kSamples = 4000;
    for (const Case& each : cases(2)) {
        const HoleUse use = holesInUse(each.car);
        const TraceUncertainty uncertainty = computeUncertainty(each.car, LengthTreatment::keep, use);
        const Trace now = computeTrace(each.car);
        const double middle = now.ride[Figure::antiSquat];
        const double inverse = 1 / now.ride[Figure::icX];
        TargetWindow target = anything();
        target.antiSquatLow = middle - uncertainty.atRide(Figure::antiSquat);
        target.antiSquatHigh = middle + 0.5 * uncertainty.atRide(Figure::antiSquat);
        target.icFar = 1 / (inverse - 0.8 * uncertainty.inverseAtRide());
        target.icNear = 1 / (inverse + 1.5 * uncertainty.inverseAtRide());
        const double chance =
            ChanceJudge(each.car, limitsOf(target)).chanceOf(each.car, LengthTreatment::keep, use, kAbsent);
        const std::vector<CarInput> inputs = uncertainInputs(each.car);
        const Samples samples = drawSamples(
            [&] {
                return std::make_unique<CarModel>(each.car, LengthTreatment::keep, use, inputs,
                                                  std::vector<double>{0.0});
            },
            asInputs(inputs), {.samples = kSamples, .seed = 3});
        std::size_t within = 0;
        for (Eigen::Index row = 0; row < samples.rows(); ++row) {
            const double antiSquat = samples(row, static_cast<Eigen::Index>(Figure::antiSquat));
            const double drawn = samples(row, static_cast<Eigen::Index>(kInverseDistance));
            within += antiSquat >= target.antiSquatLow && antiSquat <= target.antiSquatHigh &&
                              drawn >= target.inverseFar() && drawn <= target.inverseNear()
                          ? 1U
                          : 0U;
        }
        // Four standard deviations of each of the two shares, and a hundredth for what first order leaves
        // out.
        const double error = 4 * std::sqrt(2 * 0.25 / kSamples) + 0.01;
        EXPECT_NEAR(chance, static_cast<double>(within) / kSamples, error);
        EXPECT_GT(chance, 0.05);
        EXPECT_LT(chance, 0.95);
    }
}

INSTANTIATE_TEST_SUITE_P(Layouts, TargetOfEachLayout,
                         testing::Values(Layout::triangulated, Layout::apart, Layout::threeLink,
                                         Layout::torqueArm, Layout::wattsThreeLink, Layout::parallel,
                                         Layout::parallelGuide, Layout::ladderGuide));

// One figure: the normal distribution's own table, one standard deviation either way 0.6827 (any table; JCGM
// 100, table G.1 has 68.27 %).
TEST(TargetChance, OfOneFigureIsTheNormalDistributions) {
    const Car car = flatCar();
    const HoleUse use = holesInUse(car);
    const TraceUncertainty uncertainty = computeUncertainty(car, LengthTreatment::keep, use);
    const double middle = computeTrace(car).ride[Figure::antiSquat];
    TargetWindow target;
    target.antiSquatLow = middle - uncertainty.atRide(Figure::antiSquat);
    target.antiSquatHigh = middle + uncertainty.atRide(Figure::antiSquat);
    const ChanceJudge judge(car, limitsOf(target));
    EXPECT_NEAR(judge.chanceOf(car, LengthTreatment::keep, use, kAbsent), 0.6827, 5e-4);
    EXPECT_EQ(ChanceJudge(car, limitsOf(anything())).chanceOf(car, LengthTreatment::keep, use, kAbsent), 1);
}

// The pinion's change of a car left as it is rests on nothing: both readings have the same errors.
TEST(TargetChance, OfThePinionsChangeLeavesOutWhatBothHaveInCommon) {
    const Car car = flatCar();
    TargetWindow target = anything();
    target.pinionChange = 1e-6;
    const ChanceJudge judge(car, limitsOf(target));
    EXPECT_EQ(judge.chanceOf(car, LengthTreatment::keep, holesInUse(car), kAbsent), 1);
}

TEST(TargetFigures, SayWhatMissesAndByHowMuch) {
    TargetWindow target{.icNear = 1.0, .icFar = 1.27, .antiSquatLow = 90, .antiSquatHigh = 110};
    const TargetLimits limits = limitsOf(target);
    const std::vector<TargetMiss> misses = missesOf({1 / 1.524, 0, 84, 0, 0, 0}, limits);
    ASSERT_EQ(misses.size(), 2U);
    std::vector<std::string> words{wordsFor(misses[0], Units::inch), wordsFor(misses[1], Units::inch)};
    EXPECT_THAT(words,
                testing::UnorderedElementsAre("anti-squat 6 % too low", "instant center 10.0 in too far"));
    EXPECT_THAT(missesOf({1 / 1.1, 0, 90, 0, 0, 0}, limits), testing::IsEmpty());
}

}  // namespace
}  // namespace bolthole
