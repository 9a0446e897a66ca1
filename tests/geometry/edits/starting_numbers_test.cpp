// Which numbers nobody measured: through every edit, in their places, and what it takes to be measured.
#include "geometry/car/starting_numbers.h"

#include <gmock/gmock.h>

#include <random>

#include "geometry/car/fields.h"
#include "geometry/car/measuring_tool.h"
#include "geometry/edits/starting_car.h"
#include "geometry/edits/starting_link.h"
#include "tests/support/edit_tools.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

constexpr FieldId kCgHeight{.field = Field::cgHeight};

std::size_t startsOfCar(const Car& car) {
    return startingNumbers(car).size();
}

/// The car with every number typed, the same as it is.
Car typedThrough(Car car) {
    for (const FieldId& id : startingNumbers(car)) {
        car = applied(car, SetNumber{id, *numberAt(car, id)});
    }
    return car;
}

TEST(StartingNumbers, ANewCarHasNothingElse) {
    for (const LinkLayout layout : kLinkLayouts) {
        const Car car = startingCar({.layout = layout});
        EXPECT_EQ(startingNumbers(car), measurableNumbers(car));
        EXPECT_TRUE(isStarting(car, kCgHeight));
        EXPECT_TRUE(isStarting(car, {.field = Field::leftRearWeight}));
        EXPECT_TRUE(isStarting(car, {.field = Field::bump}));
        EXPECT_TRUE(isStarting(car, holeField(0, End::axle, 0, 2)));
        EXPECT_TRUE(isStarting(car, {.field = Field::outputJoint, .axis = 0}));
        EXPECT_FALSE(isStarting(car, {.field = Field::steps})) << "a count is chosen";
    }
    EXPECT_EQ(startsOfCar(plainCar()), 0U) << "whatever is not marked counts as measured";
}

TEST(StartingNumbers, WhatWasTypedForTheNewCarIsMeasured) {
    const Car car = startingCar({.typed = {Field::wheelbase, Field::frontTireRadius}});
    EXPECT_FALSE(isStarting(car, {.field = Field::wheelbase}));
    EXPECT_TRUE(isStarting(car, {.field = Field::rearTireRadius}));
    EXPECT_FALSE(isStarting(car, {.field = Field::frontTireRadius}));
    EXPECT_EQ(startsOfCar(car) + 2, measurableNumbers(car).size());
}

TEST(StartingNumbers, TypingTheSameNumberMeasuresItAndAStepDoesNot) {
    const Car car = startingCar({});
    const Car typed = applied(car, SetNumber{kCgHeight, car.cgHeight});
    EXPECT_FALSE(isStarting(typed, kCgHeight));
    EXPECT_EQ(startsOfCar(typed) + 1, startsOfCar(car));
    EXPECT_EQ(typed.cgHeight, car.cgHeight);
    EXPECT_NE(typed, car) << "so that it is a step of undo";
    EXPECT_TRUE(isStarting(applied(car, SetNumber{kCgHeight, 0.6, SetNumber::By::stepped}), kCgHeight));
    EXPECT_TRUE(
        isStarting(applied(car, MoveHole{0, End::axle, 0, {0.01, 0.4, 0.2}}), holeField(0, End::axle, 0, 2)))
        << "a drag measures nothing";
    const FieldId uncertainty{.field = Field::cgHeight, .uncertainty = true};
    EXPECT_TRUE(isStarting(applied(car, SetNumber{uncertainty, 0.02}), kCgHeight));
    EXPECT_FALSE(isStarting(applied(car, SetNumber{uncertainty, 0.02}), uncertainty));
    EXPECT_EQ(startsOfCar(typedThrough(car)), 0U);
}

TEST(StartingNumbers, FollowHolesAndLinksThatMoveInTheirLists) {
    Car car = typedThrough(startingCar({.layout = LinkLayout::threeLink}));
    Hole hole = car.links[0].axle.holes[0];
    hole.name = "new";
    startFrom(hole);
    car = applied(car, AddHole{0, End::axle, hole});
    EXPECT_EQ(startsOfCar(car), 3U);
    EXPECT_TRUE(isStarting(car, holeField(0, End::axle, 1, 0)));
    const Car fewer = applied(car, RemoveHole{0, End::axle, 0});
    EXPECT_TRUE(isStarting(fewer, holeField(0, End::axle, 0, 0))) << "the new one came in its place";
    car = applied(car, AddLink{startingLink(car, LinkPattern::torqueArm)});
    EXPECT_EQ(startsOfCar(car), 9U);
    car = applied(car, RemoveLink{0});
    EXPECT_EQ(startsOfCar(car), 6U);
    EXPECT_TRUE(isStarting(car, holeField(2, End::chassis, 0, 1)));
    EXPECT_FALSE(isStarting(car, holeField(1, End::chassis, 0, 1)));
}

TEST(StartingNumbers, StayWithBothHalvesOfAPair) {
    const Car car = startingCar({});
    const Car split = applied(car, SplitLink{0});
    EXPECT_TRUE(isStarting(split, holeField(1, End::axle, 0, 1)));
    EXPECT_EQ(startsOfCar(applied(split, JoinLinks{1})), startsOfCar(car));
}

TEST(StartingNumbers, AreKeptAndComeBackWithTheirSetup) {
    const Car car = applied(startingCar({}), KeepSetup{"as bought", "2026-11-28", "", nullptr});
    const Car typed = typedThrough(car);
    EXPECT_EQ(startsOfCar(typed), 0U);
    EXPECT_EQ(startsOfCar(applied(typed, RestoreKept{0})), startsOfCar(car));
    const Car swapped = applied(typed, SwapBaseline{"2026-11-28"});
    EXPECT_EQ(startsOfCar(swapped), startsOfCar(car));
    EXPECT_EQ(startsOfCar(*swapped.kept[0].car), 0U);
}

// A length worked out from a hole that nobody measured is no more measured than the hole.
TEST(StartingNumbers, ALengthWorkedOutOfThemIsOne) {
    Car car = typedThrough(startingCar({}));
    RideChange change = noChange(car);
    change.rearTireRadius += 0.01;
    const FieldId length{.field = Field::linkLength, .link = 0};
    EXPECT_FALSE(isStarting(applied(car, ChangeRide{change}), length));
    setOrigin(car, holeField(0, End::chassis, 0, 1), Origin::starting);
    const Car changed = applied(car, ChangeRide{change});
    EXPECT_TRUE(isStarting(changed, length));
    EXPECT_FALSE(isStarting(changed, {.field = Field::rearTireRadius}));
}

/// A measured car and the same with a lower's axle hole changed for another and every length refitted.
struct Refitted {
    Car before;
    Car after;
};

Refitted refitted() {
    Car car = typedThrough(startingCar({}));
    car.links[0].length = builtLength(car.links[0]);
    Hole other = car.links[0].axle.holes[0];
    other.name = "2";
    other.at.z() -= 0.04;
    car.links[0].axle.holes.push_back(other);
    HoleUse use = holesInUse(car);
    use.set(0, End::axle, static_cast<int>(car.links[0].axle.holes.size()) - 1);
    return {car, applied(car, ChooseHoles{use, LengthTreatment::refit})};
}

const FieldId kFirstLength{.field = Field::linkLength, .link = 0};

TEST(WorkedOutNumbers, ALengthRefittedToMeasuredHolesIsNotMeasured) {
    const auto [before, after] = refitted();
    ASSERT_NE(after.links[0].length, before.links[0].length);
    EXPECT_EQ(originOf(before, kFirstLength), Origin::measured);
    EXPECT_EQ(originOf(after, kFirstLength), Origin::workedOut);
    EXPECT_FALSE(isMeasured(after, kFirstLength));
    EXPECT_THAT(unmeasuredNumbers(after), testing::ElementsAre(kFirstLength));
    EXPECT_TRUE(startingNumbers(after).empty());
}

// 2 x the tape's 1/16 in / sqrt(6), some 1.3 mm: nearer than that nobody has read the holes either.
TEST(WorkedOutNumbers, AMeasuredLengthStaysWhereNoTapeTellsItFromTheRefitOne) {
    for (const auto& [by, stays] : {std::pair(0.0012, true), std::pair(0.0014, false)}) {
        Car car = refitted().before;
        const FieldId length{.field = Field::linkLength, .link = 1};
        car.links[1].length = holeDistance(car.links[1]) + by;
        HoleUse use = holesInUse(car);
        use.set(0, End::axle, static_cast<int>(car.links[0].axle.holes.size()) - 1);
        const Car after = applied(car, ChooseHoles{use, LengthTreatment::refit});
        EXPECT_EQ(after.links[1].length == car.links[1].length, stays);
        EXPECT_EQ(isMeasured(after, length), stays);
        EXPECT_EQ(originOf(after, kFirstLength), Origin::workedOut);
        car.tools.tape = kTapeUncertainty / 2;
        EXPECT_FALSE(isMeasured(applied(car, ChooseHoles{use, LengthTreatment::refit}), length))
            << "a better tape tells them";
    }
}

TEST(MeasurableNumbers, LeaveOutWhatIsNotDrilled) {
    Car car = plainCar();
    const std::size_t count = measurableNumbers(car).size();
    Hole planned = car.links[0].axle.holes[0];
    planned.planned = true;
    car.links[0].axle.holes.push_back(planned);
    EXPECT_EQ(measurableNumbers(car).size(), count);
    car.links[0].axle.holes.back().planned = false;
    EXPECT_EQ(measurableNumbers(car).size(), count + 3) << "drilled, it is measured";
}

TEST(WorkedOutNumbers, TypedTheyCountAsMeasuredSteppedTheyDoNot) {
    const Car car = refitted().after;
    const double same = *car.links[0].length;
    EXPECT_TRUE(isMeasured(applied(car, SetNumber{kFirstLength, same}), kFirstLength));
    EXPECT_FALSE(isMeasured(applied(car, SetNumber{kFirstLength, same + 0.001, SetNumber::By::stepped}),
                            kFirstLength));
    EXPECT_EQ(originOf(applied(car, ClearNumber{kFirstLength}), kFirstLength), Origin::measured)
        << "none is there";
}

TEST(WorkedOutNumbers, ALengthFoundForATargetIsOne) {
    Car car = refitted().before;
    const SetNumber found{kFirstLength, 0.5, SetNumber::By::workedOut};
    EXPECT_EQ(originOf(applied(car, found), kFirstLength), Origin::workedOut);
    setOrigin(car, holeField(0, End::chassis, 0, 1), Origin::starting);
    EXPECT_EQ(originOf(applied(car, found), kFirstLength), Origin::starting) << "it rests on one";
}

TEST(StartingNumbers, ChangingTiresKeepsTheirMarks) {
    const Car car = startingCar({});
    RideChange change = noChange(car);
    change.frontTireRadius += 0.01;
    const Car changed = applied(car, ChangeRide{change});
    EXPECT_FALSE(isStarting(changed, {.field = Field::frontTireRadius})) << "that was typed";
    EXPECT_TRUE(isStarting(changed, {.field = Field::rearTireRadius}));
    EXPECT_TRUE(isStarting(changed, kCgHeight));
    Car estimated = typedThrough(car);
    estimated.cgHeightFrom = CgHeightSource::estimate;
    EXPECT_TRUE(isStarting(applied(estimated, ChangeRide{change}), kCgHeight))
        << "an estimate, written down, is no measurement";
}

/// Any edit of one number, hole or link of a car.
class EditDrawer {
  public:
    explicit EditDrawer(std::uint64_t seed) : random_(seed) {}

    Edit draw(const Car& car) {
        const std::vector<FieldId> ids = measurableNumbers(car);
        const FieldId id = ids[below(ids.size())];
        const int link = static_cast<int>(below(car.links.size()));
        const End end = below(2) == 0 ? End::chassis : End::axle;
        const int hole = static_cast<int>(below(findLink(car, link)->bracket(end).holes.size()));
        switch (below(10)) {
            case 0:
                return SetNumber{id, *numberAt(car, id)};
            case 1:
                return SetNumber{id, *numberAt(car, id) * 1.001, SetNumber::By::stepped};
            case 2:
                return ClearNumber{id};
            case 3:
                return MoveHole{link, end, hole, findHole(car, link, end, hole)->at * 1.0001};
            case 4: {
                Hole added = *findHole(car, link, end, hole);
                startFrom(added);
                return AddHole{link, end, added};
            }
            case 5:
                return RemoveHole{link, end, hole};
            case 6:
                return SplitLink{link};
            case 7:
                return JoinLinks{link};
            case 8:
                return AddLink{startingLink(car, LinkPattern::trackBar)};
            default:
                return UseHole{link, end, hole};
        }
    }

  private:
    std::size_t below(std::size_t size) { return random_() % size; }
    std::mt19937_64 random_;
};

// Whatever is done, only typing makes a number that stays measured, and nothing that was measured and stays
// becomes a starting number.
TEST(StartingNumbers, SurviveEveryEdit) {
    std::size_t marked = 0;
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        EditDrawer drawer(seed);
        Car car = startingCar({.layout = kLinkLayouts[seed % kLinkLayouts.size()]});
        for (int step = 0; step < 60; ++step) {
            const Edit edit = drawer.draw(car);
            const EditResult result = bolthole::apply(car, edit);
            const std::size_t before = startsOfCar(car);
            const std::size_t after = startsOfCar(result.car);
            const auto* typed = edit.as<SetNumber>();
            if (!result.refusal.empty() || edit.as<MoveHole>() != nullptr || edit.as<UseHole>() != nullptr ||
                (typed != nullptr && typed->by != SetNumber::By::typed)) {
                ASSERT_EQ(startingNumbers(result.car), startingNumbers(car)) << describe(edit, car);
            } else if (typed != nullptr) {
                ASSERT_EQ(after + (isStarting(car, typed->id) ? 1 : 0), before) << describe(edit, car);
            } else if (edit.as<AddHole>() != nullptr) {
                ASSERT_EQ(after, before + 3) << describe(edit, car);
            } else if (edit.as<AddLink>() != nullptr) {
                ASSERT_EQ(after, before + 6) << describe(edit, car);
            }
            marked += after;
            car = result.car;
        }
    }
    EXPECT_GT(marked, 10'000U);
}

}  // namespace
}  // namespace bolthole
