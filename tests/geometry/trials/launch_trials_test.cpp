// Every single change tried, on drawn cars.
#include "geometry/trials/launch_trials.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <atomic>

#include "tests/support/launch_car.h"

namespace bolthole {

namespace {

const PaddockChange* changeOf(const std::vector<PaddockChange>& changes, Field field, double to) {
    for (const PaddockChange& change : changes) {
        const auto* edit = change.edit.as<SetNumber>();
        if (edit != nullptr && edit->id.field == field && std::abs(edit->value - to) < 1e-9) {
            return &change;
        }
    }
    return nullptr;
}

}  // namespace

TEST(PaddockChanges, AreWhatCanBeTurnedInThePaddock) {
    Car car = launchCar(Layout::triangulated, 21);
    car.ballast = {
        {.id = 1, .name = "fuel", .volume = 0.06, .density = 745, .at = {{-0.7, 0, 0.5}}, .aboard = 60},
        {.id = 2, .name = "ballast", .mass = 20, .at = {{-0.9, 0, 0.5}}, .aboard = 100},
        {.id = 3, .name = "weighed", .mass = 20, .at = {{-0.9, 0, 0.5}}, .weighed = 100, .aboard = 100},
        {.id = 4, .name = "at home", .mass = 20, .at = {{-0.9, 0, 0.5}}, .aboard = 0}};
    const std::vector<PaddockChange> changes = paddockChanges(car, defaultTreatment(car));
    const PaddockChange* softer = changeOf(changes, Field::frontReboundClick, 3);
    ASSERT_NE(softer, nullptr);
    EXPECT_FALSE(softer->isFirmer);
    EXPECT_EQ(softer->from, 5);
    EXPECT_EQ(softer->bolts, 0);
    EXPECT_GT(softer->minutes, 0);
    ASSERT_NE(changeOf(changes, Field::frontBumpClick, 7), nullptr);
    EXPECT_TRUE(changeOf(changes, Field::frontBumpClick, 7)->isFirmer);
    EXPECT_NE(changeOf(changes, Field::ballastAboard, 85), nullptr);
    EXPECT_NE(changeOf(changes, Field::ballastAboard, 35), nullptr);
    EXPECT_NE(changeOf(changes, Field::ballastAt, -0.9 + kBallastStep), nullptr);
    const auto moved = [](const PaddockChange& change) { return change.kind == ChangeKind::ballast; };
    EXPECT_EQ(std::ranges::count_if(changes, moved), 2);  // of the one that was not on the scales
    EXPECT_NE(changeOf(changes, Field::launchSpeed, *car.launch.engine.launchSpeed + 200 * kRpm), nullptr);
    EXPECT_NE(changeOf(changes, Field::frontDroop, kDroopLeft * *car.launch.front.droop), nullptr);
    for (const PaddockChange& change : changes) {
        EXPECT_TRUE(bolthole::apply(car, change.edit).refusal.empty()) << change.words;
    }
}

TEST(PaddockChanges, StepPressuresWhereTheRateWasReadAtTwo) {
    Car car = launchCar(Layout::triangulated, 21);
    const auto stepped = [&car] {
        std::vector<double> found;
        for (const PaddockChange& change : paddockChanges(car, defaultTreatment(car))) {
            if (change.kind == ChangeKind::pressure) {
                EXPECT_EQ(change.edit.as<SetNumber>()->id.field, Field::rearPressure);
                found.push_back(change.edit.as<SetNumber>()->value / kPascalsPerPsi);
            }
        }
        return found;
    };
    EnteredRates& rear = car.wheelRates.rear;
    rear.tirePressure = 17 * kPascalsPerPsi;
    rear.pressure = 17 * kPascalsPerPsi;
    EXPECT_THAT(stepped(), testing::IsEmpty());
    rear.otherPressure = 22 * kPascalsPerPsi;
    rear.otherTire = 1.2 * *rear.tire;
    EXPECT_THAT(stepped(),
                testing::ElementsAre(testing::DoubleNear(15, 1e-9), testing::DoubleNear(19, 1e-9)));
    // Softer tires, another launch: the paired runs are of the tires as they are then.
    const auto rateAt = [&car](double psi) {
        const Edit edit = SetNumber{{.field = Field::rearPressure}, psi * kPascalsPerPsi};
        return launchInputsOf(bolthole::apply(car, edit).car).inputs->tires.rearRate;
    };
    EXPECT_NEAR(rateAt(15), *rear.tire * (1 - 2 * 0.2 / 5), 1e-6);
    rear.pressure = 1.5 * kPascalsPerPsi;  // no step below nothing
    EXPECT_THAT(stepped(), testing::ElementsAre(testing::DoubleNear(3.5, 1e-9)));
}

TEST(LaunchTrials, AreTheSameOnAnyThreadsAndInOrder) {
    const Car car = launchCar(Layout::threeLink, 5);
    const LaunchTrials one = tryChanges(car, {.draws = 6, .threads = 1});
    const LaunchTrials two = tryChanges(car, {.draws = 6, .threads = 3});
    ASSERT_TRUE(one.complete);
    ASSERT_EQ(one.trials.size(), two.trials.size());
    ASSERT_GT(one.trials.size(), 8U);
    for (std::size_t index = 0; index < one.trials.size(); ++index) {
        const LaunchTrial& trial = one.trials[index];
        EXPECT_EQ(trial.change.words, two.trials[index].change.words);
        EXPECT_EQ(trial.sixtyFoot, two.trials[index].sixtyFoot);
        EXPECT_EQ(trial.sixtyFootChange.uncertainty, two.trials[index].sixtyFootChange.uncertainty);
        EXPECT_EQ(trial.group, two.trials[index].group);
        EXPECT_GE(trial.group, 0);
        if (index > 0) {
            EXPECT_LE(trial.chance, one.trials[index - 1].chance);
        }
        if (trial.sixtyFoot) {
            EXPECT_NEAR(*trial.sixtyFoot, *one.present.figures.sixtyFoot + *trial.sixtyFootChange.change,
                        1e-12);
        }
    }
    EXPECT_EQ(one.trials.front().group, 0);
}

// A change is worked out as if it were the only one: its figures are those of the car that has it.
TEST(LaunchTrials, AreLaunchesOfTheChangedCar) {
    const Car car = launchCar(Layout::triangulated, 8);
    const LaunchTrials trials = tryChanges(car, {.draws = 2});
    ASSERT_TRUE(trials.complete);
    int compared = 0;
    for (const LaunchTrial& trial : trials.trials) {
        const LaunchInputsResult changed = launchInputsOf(bolthole::apply(car, trial.change.edit).car);
        ASSERT_TRUE(changed.inputs);
        const LaunchRun run = simulateLaunch(*changed.inputs);
        if (run.end == LaunchEnd::done) {
            EXPECT_EQ(trial.sixtyFoot, run.figures.sixtyFoot) << trial.change.words;
            ++compared;
        }
    }
    EXPECT_GT(compared, 8);
}

TEST(LaunchTrials, StopWhenTheyAreToldTo) {
    const Car car = launchCar(Layout::triangulated, 8);
    std::atomic<int> asked = 0;
    TrialOptions options{.draws = 40};
    options.isCancelled = [&asked] { return ++asked > 30; };
    EXPECT_FALSE(tryChanges(car, options).complete);
    EXPECT_LT(asked, 100);
}

TEST(LaunchTrials, NameWhatIsMissing) {
    Car car = launchCar(Layout::triangulated, 8);
    car.launch.wheelInertia.reset();
    const LaunchTrials trials = tryChanges(car);
    EXPECT_FALSE(trials.complete);
    ASSERT_EQ(trials.missing.size(), 1U);
    EXPECT_EQ(trials.missing.front().path, "launch.wheel_inertia");
}

}  // namespace bolthole
