// What a launch case takes from what was entered, what it refuses and why, and the combinations it goes
// through.
#include "geometry/statics/launch_case.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "geometry/combinations/combination_loads.h"
#include "tests/support/car_generator.h"
#include "tests/support/level_car.h"
#include "tests/support/made_parts.h"

namespace bolthole {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

LaunchCase caseOf(const Car& car) {
    return launchCaseOf(car, computeTrace(car), fullStanceOf(car));
}

FieldId field(Field which) {
    return {.field = which};
}

// A triangulated four-link with all that link loads need.
Car launchingCar() {
    CarGenerator generator(900);
    Car car = generator.draw(Layout::triangulated);
    car.rearTrack = 1.48;
    car.travel = {.bump = 0.06, .droop = 0.06, .steps = 13};
    car.launch.acceleration = 0.8;
    car.launch.axleRatio = 3.73;
    car.launch.unsprungMass = 110;
    return car;
}

Car withRates(Car car) {
    car.frontTrack = 1.5;
    car.wheelRates.front = {28e3, 220e3, 40e3};
    car.wheelRates.rear = {24e3, 220e3, 25e3};
    return car;
}

TEST(LaunchCase, NothingEnteredNamesAllThatIsNeeded) {
    Car car = launchingCar();
    car.launch = {};
    const LaunchCase launch = caseOf(car);
    EXPECT_FALSE(launch.thrust);
    EXPECT_EQ(launch.thrust.refusal, "enter the launch acceleration in g");
    EXPECT_THAT(launch.thrust.missing, ElementsAre(field(Field::launchAcceleration)));
    EXPECT_EQ(launch.links.refusal,
              "enter the launch acceleration in g, the axle ratio and the rear unsprung weight");
    EXPECT_EQ(launch.attitude.refusal,
              "enter the launch acceleration in g, the front wheel rate and the rear wheel rate");
    EXPECT_EQ(launch.shaftTorque.refusal, "enter the launch acceleration in g and the axle ratio");
    EXPECT_FALSE(launch.antiLift);
    EXPECT_THAT(launch.antiLift.missing, ElementsAre(field(Field::brakeRearShare)));
}

TEST(LaunchCase, EveryMissingNumberIsNamedOnceAndNoFigureIsGuessed) {
    Car car = launchingCar();
    car.rearTrack.reset();
    car.launch.axleRatio.reset();
    car.launch.unsprungMass.reset();
    const LaunchCase launch = caseOf(car);
    EXPECT_TRUE(launch.loads);
    EXPECT_EQ(launch.linkCase.refusal, "enter the axle ratio, the rear track and the rear unsprung weight");
    EXPECT_FALSE(launch.links);
    EXPECT_EQ(launch.attitude.refusal, "enter the front wheel rate and the rear wheel rate");
    const std::vector<FieldId> missing = missingOf(launch);
    for (std::size_t index = 0; index < missing.size(); ++index) {
        EXPECT_EQ(std::ranges::count(missing, missing[index]), 1);
        EXPECT_FALSE(numberAt(car, missing[index]).has_value());
    }
    EXPECT_THAT(missing, testing::Contains(field(Field::unsprungMass)));
}

TEST(LaunchCase, EnteringWhatIsMissingLeavesNothingMissing) {
    Car car = withRates(launchingCar());
    car.launch.springBase = 1.0;
    car.brakes = {.rearShare = 30, .deceleration = 0.7};
    const LaunchCase launch = caseOf(car);
    EXPECT_THAT(missingOf(launch), IsEmpty());
    EXPECT_TRUE(launch.attitude && launch.sides && launch.preload && launch.springDifference);
    EXPECT_TRUE(launch.braking && launch.braking->travel && launch.links);
}

TEST(LaunchCase, TorqueNeedsItsRatiosAndFriction) {
    Car car = launchingCar();
    car.launch.from = LaunchFrom::torque;
    car.launch.axleRatio.reset();
    EXPECT_THAT(caseOf(car).thrust.missing, ElementsAre(field(Field::engineTorque), field(Field::launchGear),
                                                        field(Field::axleRatio), field(Field::friction)));
}

TEST(LaunchCase, ThrustIsTheEnginesOrWhatCapsIt) {
    Car car = launchingCar();
    car.launch.from = LaunchFrom::torque;
    car.launch.engineTorque = 300;
    car.launch.gear = 2;
    car.launch.friction = 1.2;
    LaunchCase launch = caseOf(car);
    const double whole = 300 * 2 * 3.73 / car.rearTireRadius;
    EXPECT_NEAR(launch.thrust->force, whole, 1e-9) << "converter and efficiency absent: 1 and all of it";
    EXPECT_EQ(launch.thrust->cap, ThrustCap::none);
    EXPECT_NEAR(launch.thrust->acceleration, whole / launch.standing.mass, 1e-12);
    car.launch.converter = 2;
    car.launch.efficiency = 50;
    EXPECT_NEAR(caseOf(car).thrust->force, whole, 1e-9);

    car.launch.friction = 0.3;
    launch = caseOf(car);
    EXPECT_EQ(launch.thrust->cap, ThrustCap::grip);
    EXPECT_NEAR(launch.thrust->force, 0.3 * launch.loads->rear, 1e-8) << "the tires are at their limit";
    EXPECT_NEAR(*launch.thrust->byEngine, whole, 1e-9);

    car.launch.friction = 9;
    car.launch.engineTorque = 3000;
    launch = caseOf(car);
    EXPECT_EQ(launch.thrust->cap, ThrustCap::lift);
    EXPECT_NEAR(launch.loads->front, 0, 1e-8);
    EXPECT_FALSE(launch.loads->wheelsUp);
}

// A 60-ft time counts from where the front tire leaves the beam.
TEST(LaunchCase, SixtyFootTimeCountsAfterTheRollout) {
    Car car = launchingCar();
    car.launch.from = LaunchFrom::sixtyFoot;
    car.launch.sixtyFoot = 1.8;
    car.frontTireRadius = 11 * 0.0254;
    LaunchCase launch = caseOf(car);
    ASSERT_TRUE(launch.thrust && launch.thrust->rollout);
    EXPECT_FALSE(launch.thrust->rollout->isEntered);
    EXPECT_NEAR(launch.thrust->rollout->distance / 0.0254, 11.3, 0.05) << "22-in tire at 1 9/16 in";
    const double usual = launch.thrust->acceleration;
    EXPECT_NEAR(std::sqrt(2 * (18.288 + launch.thrust->rollout->distance) / usual) -
                    std::sqrt(2 * launch.thrust->rollout->distance / usual),
                1.8, 1e-12);
    car.launch.rollout = 0.2;
    launch = caseOf(car);
    EXPECT_TRUE(launch.thrust->rollout->isEntered);
    EXPECT_EQ(launch.thrust->rollout->distance, 0.2);
    EXPECT_GT(launch.thrust->acceleration, usual);
    EXPECT_NEAR(launch.thrust->force, launch.standing.mass * launch.thrust->acceleration, 1e-9);
    EXPECT_EQ(launch.linkCase->load.thrust, launch.thrust->force) << "and loads follow";
    car.launch.rollout = 0;
    EXPECT_NEAR(caseOf(car).thrust->acceleration, 2 * 18.288 / (1.8 * 1.8), 1e-12);
}

// An open differential ends at twice what the lighter rear tire holds; anything else at what both hold.
TEST(LaunchCase, AnOpenDifferentialHoldsTwiceTheLighterTire) {
    Car car = launchingCar();
    car.launch.from = LaunchFrom::torque;
    car.launch.engineTorque = 3000;
    car.launch.gear = 3;
    car.launch.friction = 0.8;
    car.launch.leftShift = 300;
    const double locked = *caseOf(car).thrust->byGrip;
    for (const Differential same : {Differential::limited, Differential::locked}) {
        car.launch.differential = same;
        EXPECT_EQ(*caseOf(car).thrust->byGrip, locked);
        EXPECT_FALSE(caseOf(car).thrust->lighterFrom);
    }
    car.launch.differential = Differential::open;
    LaunchCase launch = caseOf(car);
    // F = mu (N0 + F h/L - 2 x 300 N), by hand.
    const StandingCar& at = launch.standing;
    EXPECT_NEAR(launch.thrust->force, 0.8 * (at.rear() - 600) / (1 - 0.8 * at.cgHeight / at.wheelbase), 1e-6);
    EXPECT_EQ(launch.thrust->cap, ThrustCap::grip);
    EXPECT_EQ(launch.thrust->lighterFrom, ShiftSource::entered);
    EXPECT_LT(launch.thrust->force, locked);

    car.launch.leftShift.reset();
    EXPECT_EQ(caseOf(car).thrust->lighterFrom, ShiftSource::even) << "tracks and rates are missing";
    EXPECT_NEAR(*caseOf(car).thrust->byGrip, locked, 1e-9);
    launch = caseOf(withRates(car));
    EXPECT_EQ(launch.thrust->lighterFrom, ShiftSource::computed);
    EXPECT_NEAR(launch.thrust->force, 2 * 0.8 * std::min(launch.sides->leftRear, launch.sides->rightRear),
                1e-6);
    EXPECT_LT(launch.thrust->force, locked);
}

TEST(LaunchCase, MoreThanTheTiresHoldIsSaid) {
    Car car = launchingCar();
    EXPECT_FALSE(caseOf(car).thrust->isBeyondGrip()) << "no friction entered";
    car.launch.friction = 5;
    EXPECT_FALSE(caseOf(car).thrust->isBeyondGrip());
    car.launch.friction = 0.4;
    EXPECT_TRUE(caseOf(car).thrust->isBeyondGrip());
    EXPECT_NEAR(caseOf(car).thrust->acceleration, 0.8 * kStandardGravity, 1e-12) << "entered is entered";
}

TEST(LaunchCase, WheelsUpLeaveNoAttitude) {
    Car car = withRates(launchingCar());
    car.launch.acceleration = 4;
    const LaunchCase launch = caseOf(car);
    EXPECT_TRUE(launch.loads->wheelsUp);
    EXPECT_THAT(launch.attitude.refusal, HasSubstr("off the ground"));
    EXPECT_THAT(launch.attitude.missing, IsEmpty());
}

TEST(LaunchCase, TheLeftTiresShareComesFromWhereItSays) {
    Car car = launchingCar();
    EXPECT_EQ(caseOf(car).linkCase->shift, ShiftSource::even);
    EXPECT_EQ(caseOf(car).linkCase->load.leftShift, 0);
    car = withRates(car);
    const LaunchCase launch = caseOf(car);
    EXPECT_EQ(launch.linkCase->shift, ShiftSource::computed);
    EXPECT_NEAR(launch.linkCase->load.leftShift, launch.sides->leftRear - launch.loads->rear / 2, 1e-9);
    car.launch.leftShift = 123;
    EXPECT_EQ(caseOf(car).linkCase->shift, ShiftSource::entered);
    EXPECT_EQ(caseOf(car).linkCase->load.leftShift, 123);
}

TEST(LaunchCase, SpringsNobodyMeasuredAreStandInsAndSaidToBe) {
    Car car = launchingCar();
    EXPECT_NEAR(*caseOf(car).linkCase->standIn, kStandInShare * 1.48, 1e-12);
    car.launch.springBase = 0.97;
    EXPECT_EQ(caseOf(car).linkCase->standIn, 0.97);
    EXPECT_TRUE(caseOf(car).linkCase->baseIsEntered);
    CarGenerator generator(901);
    car.springs = {makePart("damper", PartKind::shock, Side::both, {{0, 0.4, 0.7}, {0, 0.5, 0.3}})};
    EXPECT_TRUE(caseOf(car).linkCase->standIn.has_value()) << "a shock carries nothing";
    car.springs.push_back(drawSprings(generator, car.rearTireRadius));
    EXPECT_FALSE(caseOf(car).linkCase->standIn.has_value());
    EXPECT_EQ(caseOf(car).stance.rear, RearRateSource::springs);
}

TEST(LaunchCase, RatingsAreHeldAgainstTheWorstLoadTimesTheFactor) {
    Car car = launchingCar();
    car.links[0].rating = 20'000;
    LinkFigures links = *caseOf(car).links;
    const JointLoads lower = links.joints[0];
    ASSERT_EQ(lower.link, 0);
    EXPECT_NEAR(*lower.use, std::max(lower.worst.tension, lower.worst.compression) / 20'000, 1e-12);
    EXPECT_FALSE(links.joints[2].use.has_value());
    car.launch.loadFactor = 2.5;
    links = *caseOf(car).links;
    EXPECT_NEAR(*links.joints[0].use, 2.5 * *lower.use, 1e-12);
    EXPECT_EQ(mostUsedOf(links.joints)->link, 0);
}

TEST(LaunchCase, TheWorstLoadIsTheLargestOfTheSweepAndRideIsRide) {
    const Car car = launchingCar();
    const Trace trace = computeTrace(car);
    const LinkFigures links = *launchCaseOf(car, trace, fullStanceOf(car)).links;
    const std::size_t ride = trace.stations.size() / 2;
    ASSERT_EQ(trace.stations[ride][Figure::travel], 0);
    for (std::size_t joint = 0; joint < links.joints.size(); ++joint) {
        double most = 0;
        for (std::size_t station = 0; station < trace.stations.size(); ++station) {
            most = std::max(most, std::abs(links.sweep.value(station, joint)));
        }
        EXPECT_EQ(links.joints[joint].worst.largest(), most);
        EXPECT_NEAR(links.joints[joint].atRide, links.sweep.value(ride, joint), 1e-5);
    }
    EXPECT_GE(largestOf(links.joints)->worst.largest(), links.joints[0].worst.largest());
}

TEST(LaunchCase, SharedLoadsAreCalledSo) {
    CarGenerator generator(902);
    Car car = generator.draw(Layout::triangulatedTrackBar);
    car.rearTrack = 1.48;
    car.launch = launchingCar().launch;
    EXPECT_TRUE(caseOf(car).links->hasShared());
    EXPECT_FALSE(caseOf(launchingCar()).links->hasShared());
}

TEST(LaunchCase, ACarThatCannotBeAssembledHasAProblemAndNothingElse) {
    Car car = launchingCar();
    car.links[0].length = 3.0;
    const LaunchCase launch = caseOf(car);
    EXPECT_FALSE(launch.problem.empty());
    EXPECT_FALSE(launch.thrust || launch.links);
}

TEST(NearCombinations, AreAllOfThemByBoltsMovedThePresentFirst) {
    const Car car = levelCar();
    const NearCombinations near = nearCombinations(car, 1000);
    const CombinationSpace space(car, {});
    ASSERT_EQ(near.uses.size(), space.count());
    EXPECT_TRUE(near.isAll());
    EXPECT_EQ(near.uses.front(), holesInUse(car));
    std::set<std::uint64_t> indices;
    CombinationSolver solver(car, LengthTreatment::refit);
    int last = 0;
    for (const HoleUse& use : near.uses) {
        indices.insert(space.indexOf(use).value());
        HoleCombination combination;
        solver.solve(use, combination);
        EXPECT_GE(combination.boltsMoved, last);
        last = combination.boltsMoved;
    }
    EXPECT_EQ(indices.size(), space.count()) << "each once";
}

TEST(NearCombinations, OfVeryManyAreTheNearestAndQuick) {
    Car car = levelCar();
    drillHoles(car, 40, 0.001);
    const NearCombinations near = nearCombinations(car, 500);
    EXPECT_EQ(near.uses.size(), 500U);
    EXPECT_FALSE(near.isAll());
    EXPECT_EQ(near.total, CombinationSpace(car, {}).count());
}

TEST(CombinationLoads, ThePresentCombinationIsTheCarsOwnWorst) {
    const Car car = launchingCar();
    const LaunchCase launch = caseOf(car);
    CombinationLoadSolver solver(car, LengthTreatment::keep, *launch.linkCase);
    const CombinationLoad load = solver.solve(holesInUse(car));
    const JointLoads& largest = *largestOf(launch.links->joints);
    EXPECT_TRUE(load.assembled && load.balanced);
    EXPECT_EQ(load.boltsMoved, 0);
    EXPECT_NEAR(load.load, largest.worst.largest(), 1e-4);
    EXPECT_EQ(load.link, largest.link);
    EXPECT_EQ(load.isTension, largest.worst.tension > largest.worst.compression);
    EXPECT_FALSE(load.ratingUse.has_value());
}

TEST(CombinationLoads, ACombinationThatCannotBeAssembledHasNoFigureAndComesLast) {
    Car car = launchingCar();
    Hole far = car.links[0].axle.holes[0];
    far.at.x() -= 2.5;
    car.links[0].axle.holes.push_back(far);
    CombinationLoadSolver solver(car, LengthTreatment::keep, *caseOf(car).linkCase);
    std::vector<CombinationLoad> loads;
    HoleUse use = holesInUse(car);
    use.set(0, End::axle, 1);
    loads.push_back(solver.solve(use));
    loads.push_back(solver.solve(holesInUse(car)));
    EXPECT_FALSE(loads[0].assembled);
    EXPECT_TRUE(std::isnan(loads[0].load));
    EXPECT_THAT(byLoad(loads), ElementsAre(1U, 0U));
}

}  // namespace
}  // namespace bolthole
