// The launch's least known numbers from passes: seasons with known truth, mistakes, struck passes, any car.
#include "geometry/fit/launch_fit.h"

#include <gmock/gmock.h>

#include <atomic>
#include <cstdlib>
#include <map>

#include "tests/support/edit_tools.h"
#include "tests/support/made_season.h"
#include "tests/support/watched.h"

namespace bolthole {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

SeasonTruth knownTruth() {
    SeasonTruth truth;
    truth.friction = {1.05};
    truth.scatter = {0.015};
    truth.torqueScale = 0.92;
    truth.frontDampingScale = 1.1;
    return truth;
}

Car knownSeason(std::size_t passes = 12) {
    SeasonRandom random(5);
    return makeSeason(knownTruth(), passes, random);
}

const FittedNumber& numberOf(const LaunchFit& fit, LaunchNumber number, std::size_t surface = 0) {
    const FittedNumber* found = fit.find(number, surface);
    if (found == nullptr) {
        ADD_FAILURE() << "no number " << static_cast<int>(number);
        static const FittedNumber kNone{};
        return kNone;
    }
    return *found;
}

void expectSame(const LaunchFit& one, const LaunchFit& other) {
    ASSERT_EQ(one.numbers.size(), other.numbers.size());
    for (std::size_t index = 0; index < one.numbers.size(); ++index) {
        EXPECT_EQ(one.numbers[index].after, other.numbers[index].after);
        EXPECT_EQ(one.numbers[index].afterU, other.numbers[index].afterU);
    }
    ASSERT_EQ(one.passes.size(), other.passes.size());
    for (std::size_t index = 0; index < one.passes.size(); ++index) {
        EXPECT_EQ(one.passes[index].predicted, other.passes[index].predicted);
        EXPECT_EQ(one.passes[index].predictedU, other.passes[index].predictedU);
    }
}

/// What the truth says of a fitted number.
double truthOf(const SeasonTruth& truth, const FittedNumber& number, const LaunchFit& fit) {
    switch (number.number) {
        case LaunchNumber::friction:
            for (std::size_t surface = 0; surface < fit.surfaces.size(); ++surface) {
                if (fit.surfaces[surface].name == number.surface) {
                    return truth.friction[surface];
                }
            }
            break;
        case LaunchNumber::torqueScale:
            return truth.torqueScale;
        case LaunchNumber::stallSpeed:
            return truth.stallSpeed;
        case LaunchNumber::frontDampingScale:
            return truth.frontDampingScale;
        case LaunchNumber::rearDampingScale:
            return truth.rearDampingScale;
        case LaunchNumber::peakSlip:
            return truth.peakSlip;
    }
    ADD_FAILURE() << "no such surface";
    return 0;
}

std::size_t seasonsAsked(std::size_t usually) {
    const char* wanted = std::getenv("BOLTHOLE_SEASONS");
    return wanted == nullptr ? usually : static_cast<std::size_t>(std::atoi(wanted));
}

// Under AddressSanitizer a fit takes minutes.
constexpr const char* kFigures = "compares figures of fits; that they are computed cleanly other tests watch";

}  // namespace

TEST(LaunchFit, FindsWhatTheCarIsInTruth) {
    const LaunchFit fit = fitLaunch(knownSeason());
    ASSERT_EQ(fit.end, FitEnd::done);
    EXPECT_THAT(fit.numbers, SizeIs(6));
    EXPECT_THAT(fit.unused, IsEmpty());
    for (const FittedNumber& number : fit.numbers) {
        EXPECT_NEAR(number.after, truthOf(knownTruth(), number, fit), 2.5 * number.afterU)
            << "number " << static_cast<int>(number.number);
        EXPECT_LE(number.afterU, number.beforeU * (1 + 1e-12));
        EXPECT_GE(number.toldPercent(), -1e-9);
    }
    EXPECT_GT(numberOf(fit, LaunchNumber::friction).toldPercent(), 80);
    EXPECT_LT(numberOf(fit, LaunchNumber::rearDampingScale).toldPercent(), 40) << "hardly shows in a 60 ft";
}

TEST(LaunchFit, BeforeIsWhatWasEntered) {
    Car season = knownSeason(3);
    season = applied(season, SetNumber{{.field = Field::tirePeakSlip}, 12});
    season = applied(season, SetNumber{{.field = Field::stallSpeed, .uncertainty = true}, 50 * kRpm});
    season = applied(season, SetNumber{{.field = Field::friction, .uncertainty = true}, 0.05});
    const LaunchFit fit = fitLaunch(season);
    ASSERT_EQ(fit.end, FitEnd::done);
    EXPECT_EQ(numberOf(fit, LaunchNumber::friction).before, 1.25);
    EXPECT_EQ(numberOf(fit, LaunchNumber::friction).beforeU, 0.05);
    EXPECT_NEAR(numberOf(fit, LaunchNumber::stallSpeed).before / kRpm, 3600, 1e-9);
    EXPECT_NEAR(numberOf(fit, LaunchNumber::stallSpeed).beforeU / kRpm, 50, 1e-9);
    EXPECT_EQ(numberOf(fit, LaunchNumber::torqueScale).before, 1);
    EXPECT_EQ(numberOf(fit, LaunchNumber::torqueScale).beforeU, 0.15);
    EXPECT_NEAR(numberOf(fit, LaunchNumber::peakSlip).before, 12, 1e-12);
    EXPECT_EQ(numberOf(fit, LaunchNumber::peakSlip).beforeU, 3);
}

// A number entered as exact is not fitted.
TEST(LaunchFit, WhatIsKnownStays) {
    Car season = knownSeason(4);
    season = applied(season, SetNumber{{.field = Field::stallSpeed, .uncertainty = true}, 0});
    const LaunchFit fit = fitLaunch(season);
    ASSERT_EQ(fit.end, FitEnd::done);
    EXPECT_EQ(fit.find(LaunchNumber::stallSpeed), nullptr);
    EXPECT_THAT(fit.numbers, SizeIs(5));
    EXPECT_FALSE(takeOver(fit).stallSpeed);
}

TEST(LaunchFit, EachSurfaceHasItsFriction) {
    SeasonTruth truth;
    truth.friction = {1.05, 1.35};
    truth.scatter = {0.012, 0.012};
    SeasonRandom random(6);
    const LaunchFit fit = fitLaunch(makeSeason(truth, 12, random));
    ASSERT_EQ(fit.end, FitEnd::done);
    ASSERT_THAT(fit.surfaces, SizeIs(2));
    EXPECT_EQ(fit.surfaces[0].name, "lane 1");
    EXPECT_EQ(fit.surfaces[1].passes, 6U);
    const FittedNumber& first = numberOf(fit, LaunchNumber::friction, 0);
    const FittedNumber& second = numberOf(fit, LaunchNumber::friction, 1);
    EXPECT_NEAR(first.after, 1.05, 2.5 * first.afterU);
    EXPECT_NEAR(second.after, 1.35, 2.5 * second.afterU);
    EXPECT_GT(second.after - first.after, 0.1);
    EXPECT_EQ(*takeOver(fit).friction, std::round(second.after * 1000) / 1000) << "the last pass's surface";
    EXPECT_EQ(*takeOver(fit, 0).friction, std::round(first.after * 1000) / 1000);
}

TEST(LaunchFit, SurfacesGoByNameThenKind) {
    Pass pass;
    EXPECT_EQ(surfaceNameOf(pass), "unnamed surface");
    pass.surface.kind = SurfaceKind::street;
    EXPECT_EQ(surfaceNameOf(pass), "street");
    pass.surface.name = "north lane";
    EXPECT_EQ(surfaceNameOf(pass), "north lane");
    pass.surface.name = "  ";
    EXPECT_EQ(surfaceNameOf(pass), "street");
}

// A pass missed by more than half a second counts as good as nothing: the fit is the one without it.
TEST(LaunchFit, AMissedPassIsAsGoodAsNone) {
    if (isWatched()) {
        GTEST_SKIP() << kFigures;
    }
    const Car season = knownSeason();
    for (const std::size_t missed : {std::size_t{2}, std::size_t{9}}) {
        const LaunchFit without = fitLaunch(applied(season, StrikePass{static_cast<int>(missed), true}));
        Car wrong = season;
        *wrong.passes[missed].sixtyFoot += 0.6;
        const LaunchFit fit = fitLaunch(wrong);
        ASSERT_EQ(fit.end, FitEnd::done);
        EXPECT_LT(fit.passes[missed].weight, 0.05);
        EXPECT_FALSE(fit.passes[missed].isInside());
        for (std::size_t index = 0; index < fit.numbers.size(); ++index) {
            EXPECT_NEAR(fit.numbers[index].after, without.numbers[index].after,
                        0.25 * without.numbers[index].afterU);
        }
    }
}

TEST(LaunchFit, StruckPassesAndThoseWithoutATimeChangeNothing) {
    const Car season = knownSeason(8);
    Car more = season;
    Pass struck = season.passes[3];
    struck.number = 20;
    struck.struck = true;
    *struck.sixtyFoot = 9;
    struck.surface.name = "elsewhere";
    more.passes.push_back(struck);
    Pass untimed = season.passes[4];
    untimed.sixtyFoot.reset();
    more.passes.insert(more.passes.begin() + 2, untimed);
    const LaunchFit fit = fitLaunch(more);
    expectSame(fitLaunch(season), fit);
    EXPECT_THAT(fit.surfaces, SizeIs(1));
    EXPECT_EQ(fit.passes[2].row, 3U);
}

// What is predicted without a pass is what the others alone give: the linear shortcut against fits without
// it.
TEST(LaunchFit, APassIsPredictedAsIfItHadNotBeenRun) {
    if (isWatched()) {
        GTEST_SKIP() << kFigures;
    }
    const Car season = knownSeason(8);
    const LaunchFit whole = fitLaunch(season);
    ASSERT_EQ(whole.end, FitEnd::done);
    for (const std::size_t row : {std::size_t{0}, std::size_t{3}, std::size_t{6}}) {
        Car others = applied(season, StrikePass{static_cast<int>(row), true});
        const LaunchFit fit = fitLaunch(others);
        ASSERT_EQ(fit.end, FitEnd::done);
        Car corrected = *season.kept[row].car;
        corrected.launch.friction = numberOf(fit, LaunchNumber::friction).after;
        corrected =
            applied(corrected,
                    CorrectLaunch{.stallSpeed = numberOf(fit, LaunchNumber::stallSpeed).after,
                                  .peakSlip = numberOf(fit, LaunchNumber::peakSlip).after,
                                  .torqueScale = numberOf(fit, LaunchNumber::torqueScale).after,
                                  .frontDampingScale = numberOf(fit, LaunchNumber::frontDampingScale).after,
                                  .rearDampingScale = numberOf(fit, LaunchNumber::rearDampingScale).after});
        LaunchInputsResult inputs = launchInputsOf(corrected);
        ASSERT_TRUE(inputs.inputs);
        inputs.inputs->engine.launchSpeed = *season.passes[row].launchRpm * kRpm;
        const LaunchRun run = simulateLaunch(*inputs.inputs);
        EXPECT_NEAR(whole.passes[row].predicted, *run.figures.sixtyFoot, 0.3 * whole.passes[row].predictedU);
    }
}

// Truths drawn from the priors; 95 % intervals hold what they should. BOLTHOLE_SEASONS=200 draws as many.
TEST(LaunchFit, IntervalsHoldTheTruth) {
    const std::size_t seasons = seasonsAsked(isWatched() ? 1 : 12);  // each takes minutes then
    std::map<LaunchNumber, int> held;
    std::map<LaunchNumber, int> asked;
    int inside = 0;
    int predicted = 0;
    for (std::size_t season = 0; season < seasons; ++season) {
        SeasonRandom random(1000 + season);
        const SeasonTruth truth = drawTruth(random);
        const LaunchFit fit = fitLaunch(makeSeason(truth, 10, random));
        if (fit.end != FitEnd::done) {
            ADD_FAILURE() << "season " << season;
            continue;
        }
        for (const FittedNumber& number : fit.numbers) {
            const double off = std::abs(number.after - truthOf(truth, number, fit));
            ++asked[number.number];
            held[number.number] += off <= 1.96 * number.afterU ? 1 : 0;
        }
        inside += static_cast<int>(fit.inside());
        predicted += static_cast<int>(fit.passes.size());
    }
    int allHeld = 0;
    int allAsked = 0;
    for (const auto& [number, count] : asked) {
        std::printf("number %d: %d of %d held\n", static_cast<int>(number), held[number], count);
        allHeld += held[number];
        allAsked += count;
    }
    std::printf("all: %d of %d held; predictions: %d of %d inside\n", allHeld, allAsked, inside, predicted);
    // Of a few seasons the share that is held scatters by itself: twice the standard deviation of as many
    // independent draws (binomial) is granted to fewer than a hundred.
    const auto chance = [seasons](double share, int count) {
        return seasons < 100 ? 2 * std::sqrt(count * share * (1 - share)) : 0;
    };
    EXPECT_GE(allHeld, 0.90 * allAsked - chance(0.90, allAsked));
    EXPECT_LE(allHeld, 0.98 * allAsked + chance(0.98, allAsked));
    EXPECT_GE(inside, 0.90 * predicted - chance(0.90, predicted));
    EXPECT_LE(inside, 0.98 * predicted + chance(0.98, predicted));
}

TEST(LaunchFit, ThreadsChangeNothing) {
    const Car season = knownSeason(6);
    expectSame(fitLaunch(season, {.threads = 1}), fitLaunch(season, {.threads = 3}));
}

TEST(LaunchFit, CanBeGivenUpAnywhere) {
    const Car season = knownSeason(5);
    for (const int after : {0, 1, 7, 60, 400}) {
        std::atomic<int> asked = 0;
        const LaunchFit fit = fitLaunch(season, {.isCancelled = [&] { return asked++ >= after; }});
        EXPECT_EQ(fit.end, FitEnd::cancelled);
        EXPECT_THAT(fit.numbers, IsEmpty());
        EXPECT_THAT(fit.passes, IsEmpty());
    }
}

TEST(LaunchFit, TellsItsProgress) {
    double last = 0;
    bool rises = true;
    const LaunchFit fit = fitLaunch(knownSeason(4), {.progress = [&](double share) {
                                        rises = rises && share >= last && share <= 1;
                                        last = share;
                                    }});
    EXPECT_EQ(fit.end, FitEnd::done);
    EXPECT_TRUE(rises);
    EXPECT_EQ(last, 1);
    EXPECT_GT(fit.launches, 100);
}

TEST(LaunchFit, SaysWhatIsMissing) {
    Car season = knownSeason(2);
    season.launch.engine.inertia.reset();
    season.launch.friction.reset();
    const LaunchFit fit = fitLaunch(season);
    EXPECT_EQ(fit.end, FitEnd::missing);
    ASSERT_THAT(fit.missing, SizeIs(2));
    EXPECT_EQ(fit.missing[0].path, "launch.friction");
    EXPECT_EQ(fit.missing[1].path, "launch.engine.inertia");
}

TEST(LaunchFit, NoTimedPassIsNoFit) {
    Car season = knownSeason(3);
    for (Pass& pass : season.passes) {
        pass.struck = true;
    }
    EXPECT_EQ(fitLaunch(season).end, FitEnd::noPass);
    season.passes.clear();
    EXPECT_EQ(fitLaunch(season).end, FitEnd::noPass);
    EXPECT_THAT(fitLaunch(season).unused, IsEmpty());
}

// Numbers entered after a setup was kept are the setup's, too; what only the setup could know is missed and
// said.
TEST(LaunchFit, ASetupKeptTooEarlyTakesWhatTheBenchHas) {
    Car season = knownSeason(6);
    const LaunchFit fit = fitLaunch(season);
    Car early = *season.kept[1].car;
    early.launch.engine = {};
    early.launch.coupling = {};
    early.launch.pitchInertia.reset();
    early.wheelRates = {};
    season.kept[1].car = std::make_shared<const Car>(early);
    expectSame(fit, fitLaunch(season));
    early.springs[0].freeLength.reset();
    season.kept[1].car = std::make_shared<const Car>(early);
    const LaunchFit less = fitLaunch(season);
    EXPECT_THAT(less.passes, SizeIs(5));
    ASSERT_THAT(less.unused, SizeIs(1));
    EXPECT_EQ(less.unused[0].row, 1U);
    EXPECT_THAT(less.unused[0].reason, HasSubstr("its setup lacks springs[0].free_length"));
}

TEST(LaunchFit, APassWithoutASetupIsLeftOutAndSaid) {
    Car season = knownSeason(3);
    season.passes[2].setup.reset();
    const LaunchFit fit = fitLaunch(season);
    EXPECT_THAT(fit.passes, SizeIs(2));
    ASSERT_THAT(fit.unused, SizeIs(1));
    EXPECT_EQ(fit.unused[0].row, 2U);
}

// Once taken over, what was learned is what is entered, and every setup is corrected alike. A second fit
// begins there with a ± as wide as before, so the passes pull once more: in a linear model by that part of
// the first move that was still prior, (after_u/before_u)^2. By hand: with the prior at 0 of variance p and
// the passes' own estimate d of variance q the first answer is d p/(p + q); with the prior there, the second
// is farther by d p q/(p + q)^2.
TEST(LaunchFit, TakenOverItStands) {
    if (isWatched()) {
        GTEST_SKIP() << kFigures;
    }
    const Car season = knownSeason();
    const LaunchFit fit = fitLaunch(season);
    const Car taught = applied(season, takeOver(fit));
    EXPECT_EQ(taught.launch.friction, takeOver(fit).friction);
    EXPECT_EQ(taught.kept.size(), season.kept.size());
    EXPECT_EQ(taught.kept[4].car->launch.friction, taught.launch.friction);
    const LaunchFit again = fitLaunch(taught);
    ASSERT_EQ(again.end, FitEnd::done);
    ASSERT_EQ(again.numbers.size(), fit.numbers.size());
    for (std::size_t index = 0; index < fit.numbers.size(); ++index) {
        const FittedNumber& first = fit.numbers[index];
        const FittedNumber& second = again.numbers[index];
        const double prior = std::pow(first.afterU / first.beforeU, 2);
        const double move = first.number == LaunchNumber::torqueScale ||
                                    first.number == LaunchNumber::frontDampingScale ||
                                    first.number == LaunchNumber::rearDampingScale
                                ? first.after / first.before - 1
                                : first.after - first.before;
        EXPECT_LE(std::abs(second.after - second.before), prior * std::abs(move) + 0.35 * second.afterU)
            << static_cast<int>(second.number);
    }
}

// Whatever stands in a car, a fit ends with an answer or a reason, and all its numbers are numbers.
TEST(LaunchFit, AnyCarEndsInNumbersOrAReason) {
    int done = 0;
    const std::uint64_t cars = isWatched() ? 2 : 6;
    for (std::uint64_t seed = 0; seed < cars; ++seed) {
        CarGenerator generator(4000 + seed);
        SeasonRandom random(seed);
        Car car = generator.draw(seed % 2 == 0 ? Layout::torqueArm : Layout::apart);
        car.launch = makeLaunchSetup();
        dressForLaunch(car);
        const auto factor = [&generator] { return std::exp(generator.between(-1, 1)); };
        *car.launch.friction *= factor();
        *car.launch.pitchInertia *= factor();
        *car.launch.engine.launchSpeed *= factor();
        *car.launch.coupling.stallSpeed *= factor();
        car.launch.coupling.kind = seed % 3 == 0 ? CouplingKind::clutch : CouplingKind::converter;
        for (int number = 1; number <= 3; ++number) {
            Pass pass;
            pass.number = number;
            pass.date = "2026-11-20";
            pass.sixtyFoot = generator.between(0.1, 10);
            pass.launchRpm = generator.between(800, 6000);
            car = applied(car, AddPass{pass});
            *car.launch.front.droop *= factor();
        }
        const LaunchFit fit = fitLaunch(car);
        EXPECT_THAT(fit.end, testing::AnyOf(FitEnd::done, FitEnd::noPass)) << "seed " << seed;
        EXPECT_EQ(fit.passes.size() + fit.unused.size(), 3U);
        done += fit.end == FitEnd::done ? 1 : 0;
        for (const FittedNumber& number : fit.numbers) {
            EXPECT_TRUE(std::isfinite(number.after));
            EXPECT_GT(number.afterU, 0);
            EXPECT_LE(number.afterU, number.beforeU * (1 + 1e-9));
        }
        for (const FittedPass& pass : fit.passes) {
            EXPECT_TRUE(std::isfinite(pass.predicted));
            EXPECT_GT(pass.predictedU, 0);
        }
    }
    EXPECT_GE(done, isWatched() ? 1 : 3);
}

}  // namespace bolthole
