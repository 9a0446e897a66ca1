// Kept setups: keeping, naming, choosing, deleting, restoring and swapping, all through apply().
#include <gtest/gtest.h>

#include "geometry/car/numbers.h"
#include "geometry/edits/edit.h"
#include "tests/support/edit_tools.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

Car kept(const Car& car, const std::string& name) {
    return applied(car, KeepSetup{name, "2026-11-02", "note of " + name, nullptr});
}

Car moved(const Car& car) {
    return applied(car, UseHole{0, End::axle, 1});
}

/// The same geometry, holes and names; ids and what belongs to the bench aside.
bool isSameState(const Car& one, const Car& other) {
    Car first = withoutKept(one);
    Car second = withoutKept(other);
    first.target = second.target;
    first.units = second.units;
    return first == second;
}

TEST(KeepSetup, TheBenchIsKeptAndBecomesTheBaseline) {
    const Car car = kept(plainCar(), "Monday");
    ASSERT_EQ(car.kept.size(), 1U);
    EXPECT_EQ(car.baseline, 0);
    EXPECT_EQ(car.baselineSetup(), &car.kept[0]);
    EXPECT_EQ(car.kept[0].name, "Monday");
    EXPECT_EQ(car.kept[0].date, "2026-11-02");
    EXPECT_EQ(car.kept[0].note, "note of Monday");
    EXPECT_TRUE(*car.kept[0].car == plainCar());
    EXPECT_EQ(car.stateName, "Monday");
    EXPECT_TRUE(isSameState(car, plainCar()));
}

TEST(KeepSetup, AKeptSetupKeepsNoSetupsItself) {
    const Car car = kept(kept(plainCar(), "Monday"), "Tuesday");
    ASSERT_EQ(car.kept.size(), 2U);
    EXPECT_EQ(car.baseline, 1);
    EXPECT_TRUE(car.kept[1].car->kept.empty());
    EXPECT_FALSE(car.kept[1].car->baseline);
    EXPECT_TRUE(car.kept[1].car->stateName.empty());
    EXPECT_TRUE(car.kept[1].car->stateNote.empty());
}

TEST(KeepSetup, AKeptSetupStaysWhatItWas) {
    const Car car = moved(kept(plainCar(), "Monday"));
    EXPECT_EQ(car.links[0].axle.use, 1);
    EXPECT_EQ(car.kept[0].car->links[0].axle.use, 0);
}

TEST(KeepSetup, AnotherCarCanBeTheBaseline) {
    auto other = std::make_shared<Car>(kept(plainCar(), "its own"));
    other->wheelbase = 2.7;
    const Car car = applied(plainCar(), KeepSetup{"other", "2026-11-02", "", other});
    ASSERT_EQ(car.kept.size(), 1U);
    EXPECT_EQ(car.baseline, 0);
    EXPECT_EQ(car.kept[0].car->wheelbase, 2.7);
    EXPECT_TRUE(car.kept[0].car->kept.empty());
    EXPECT_EQ(car.stateName, "") << "the bench is still what it was";
    EXPECT_EQ(car.wheelbase, plainCar().wheelbase);
}

TEST(KeepSetup, RefusesBlankNamesAndTooMany) {
    expectRefused(plainCar(), KeepSetup{" \t", "", "", nullptr}, "needs a name");
    Car car = kept(plainCar(), "state");
    car.kept.resize(kMaxKept, car.kept[0]);
    expectRefused(car, KeepSetup{"one more", "", "", nullptr}, "at most 2000");
}

// A file that keeps such a car could not be opened again.
TEST(KeepSetup, RefusesACarThatCannotBeComputed) {
    Car car = kept(plainCar(), "Monday");
    car.links[0].chassis.holes[0].at = car.links[0].axle.holes[0].at;
    expectRefused(car, KeepSetup{"x", "", "", nullptr}, "links[0]: expected a link's current holes apart");
    expectRefused(car, SwapBaseline{"2026-11-09"}, "a car that can't be computed is not kept");
    const auto other = std::make_shared<const Car>(car);
    expectRefused(plainCar(), KeepSetup{"x", "", "", other}, "a car that can't be computed is not kept");
    EXPECT_EQ(apply(car, RestoreKept{0}).refusal, "") << "the way back is open";
}

TEST(DescribeKept, RenamesAndRewritesTheNote) {
    const Car car = applied(kept(plainCar(), "Monday"), DescribeKept{0, "before the meet", "dry track"});
    EXPECT_EQ(car.kept[0].name, "before the meet");
    EXPECT_EQ(car.kept[0].note, "dry track");
    EXPECT_EQ(car.kept[0].date, "2026-11-02");
    expectRefused(car, DescribeKept{0, "", "x"}, "needs a name");
    expectRefused(car, DescribeKept{1, "x", ""}, "no kept setup 2");
    expectRefused(car, DescribeKept{-1, "x", ""}, "no kept setup");
}

TEST(SetBaseline, ChoosesOneOrNone) {
    const Car car = kept(kept(plainCar(), "Monday"), "Tuesday");
    EXPECT_EQ(applied(car, SetBaseline{0}).baseline, 0);
    EXPECT_FALSE(applied(car, SetBaseline{std::nullopt}).baseline);
    EXPECT_EQ(applied(car, SetBaseline{std::nullopt}).baselineSetup(), nullptr);
    expectRefused(car, SetBaseline{2}, "no kept setup 3");
}

TEST(RemoveKept, TheBaselineFollowsTheDeletes) {
    const Car car = kept(kept(kept(plainCar(), "a"), "b"), "c");
    const Car middle = applied(car, SetBaseline{1});
    const Car firstGone = applied(middle, RemoveKept{0});
    EXPECT_EQ(firstGone.baseline, 0);
    EXPECT_EQ(firstGone.baselineSetup()->name, "b");
    const Car lastGone = applied(middle, RemoveKept{2});
    EXPECT_EQ(lastGone.baselineSetup()->name, "b");
    const Car itselfGone = applied(middle, RemoveKept{1});
    EXPECT_FALSE(itselfGone.baseline);
    ASSERT_EQ(itselfGone.kept.size(), 2U);
    EXPECT_EQ(itselfGone.kept[1].name, "c");
    expectRefused(car, RemoveKept{3}, "no kept setup 4");
}

TEST(RestoreKept, BringsTheStateBackAndKeepsTheRest) {
    Car car = moved(kept(plainCar(), "Monday"));
    car.units = Units::metric;
    car.target = TargetWindow{1.0, 2.0, 100, 150};
    const Car back = applied(car, RestoreKept{0});
    EXPECT_TRUE(isSameState(back, plainCar()));
    EXPECT_EQ(back.units, Units::metric);
    EXPECT_EQ(back.target, car.target);
    EXPECT_EQ(back.kept, car.kept);
    EXPECT_EQ(back.baseline, car.baseline);
    EXPECT_EQ(back.stateName, "Monday");
    EXPECT_EQ(back.stateNote, "note of Monday");
    expectRefused(car, RestoreKept{1}, "no kept setup 2");
}

TEST(SwapBaseline, TwiceIsTheSameButForTheDate) {
    const Car car = moved(kept(plainCar(), "Monday"));
    const Car swapped = applied(car, SwapBaseline{"2026-11-09"});
    EXPECT_TRUE(isSameState(swapped, plainCar()));
    EXPECT_TRUE(isSameState(*swapped.kept[0].car, car));
    EXPECT_EQ(swapped.kept[0].name, "after Monday");
    EXPECT_EQ(swapped.kept[0].date, "2026-11-09");
    EXPECT_EQ(swapped.baseline, 0);
    const Car again = applied(swapped, SwapBaseline{"2026-11-10"});
    EXPECT_TRUE(isSameState(again, car));
    EXPECT_TRUE(isSameState(*again.kept[0].car, plainCar()));
    EXPECT_EQ(again.kept[0].name, "Monday");
    EXPECT_EQ(again.kept[0].note, "note of Monday") << "the note comes back with its state";
}

TEST(SwapBaseline, WhatWasBroughtBackChangedAndSwappedGetsANameOfItsOwn) {
    Car car = kept(kept(plainCar(), "Monday"), "Tuesday");
    car = moved(applied(car, SetBaseline{0}));
    const Car swapped = applied(car, SwapBaseline{"2026-11-09"});
    EXPECT_EQ(swapped.kept[0].name, "after Monday") << "'Tuesday' is kept already, and another state";
    EXPECT_EQ(swapped.kept[1].name, "Tuesday");
    EXPECT_EQ(swapped.stateName, "Monday");
}

// A swapped state that is changed on the bench is another one: it must not come back under the first one's
// name.
TEST(SwapBaseline, WhatWasSwappedChangedAndSwappedBackIsNotCalledByTheOldName) {
    const Car swapped = applied(moved(kept(plainCar(), "Monday")), SwapBaseline{"2026-11-09"});
    ASSERT_EQ(swapped.stateName, "Monday");
    const Car changed = applied(swapped, SetNumber{{.field = Field::wheelbase}, swapped.wheelbase + 0.01});
    const Car back = applied(changed, SwapBaseline{"2026-11-10"});
    EXPECT_EQ(back.stateName, "after Monday");
    EXPECT_EQ(back.kept[0].name, "after Monday (2)");
    EXPECT_EQ(back.kept[0].note, "");
    EXPECT_EQ(applied(back, SwapBaseline{"2026-11-11"}).kept[0].name, "after Monday");
    // Units and the target are the bench's.
    EXPECT_EQ(applied(swapped, SetUnits{Units::metric}).stateName, "Monday");
}

TEST(SwapBaseline, NeedsABaseline) {
    expectRefused(plainCar(), SwapBaseline{"2026-11-09"}, "no setup is kept as the baseline");
}

// The ids tie what else a car file says of a part to it.
TEST(RestoreKept, PartsKeepTheirPlacesInTheFileByName) {
    Car car = plainCar();
    car.links[0].id = 0;
    car.links[1].id = 1;
    car.links[2].id = 2;
    car.links[0].axle.holes[0].id = 0;
    car.links[0].axle.holes[1].id = 1;
    auto other = std::make_shared<Car>(plainCar());
    std::swap(other->links[0], other->links[1]);
    other->links[0].id = 0;
    other->links[1].id = 1;
    other->links[1].axle.holes[0].id = 5;
    other->links[2].name = "a stranger";
    other->links[2].id = 2;
    car = applied(car, KeepSetup{"other", "2026-11-02", "", other});
    const Car back = applied(car, RestoreKept{0});
    EXPECT_EQ(back.links[0].name, "upper");
    EXPECT_EQ(back.links[0].id, 1);
    EXPECT_EQ(back.links[1].id, 0);
    EXPECT_EQ(back.links[1].axle.holes[0].id, 0);
    EXPECT_EQ(back.links[1].axle.holes[1].id, 1);
    EXPECT_EQ(back.links[2].id, -1) << "nothing is known of it on the bench";
}

TEST(KeptSetups, EveryEditSaysWhatItDoes) {
    const Car car = kept(kept(plainCar(), "Monday"), "Tuesday");
    EXPECT_EQ(describe(KeepSetup{"x", "", "", nullptr}, car), "Keep as 'x'");
    EXPECT_EQ(describe(KeepSetup{"x", "", "", std::make_shared<const Car>()}, car), "Take in 'x'");
    EXPECT_EQ(describe(DescribeKept{1, "x", ""}, car), "Describe 'Tuesday'");
    EXPECT_EQ(describe(SetBaseline{0}, car), "Compare with 'Monday'");
    EXPECT_EQ(describe(SetBaseline{std::nullopt}, car), "Compare with nothing");
    EXPECT_EQ(describe(RemoveKept{0}, car), "Delete 'Monday'");
    EXPECT_EQ(describe(RestoreKept{0}, car), "Recover 'Monday'");
    EXPECT_EQ(describe(SwapBaseline{""}, car), "Swap before and after");
    EXPECT_EQ(describe(RemoveKept{7}, car), "Delete kept setup 8");
}

}  // namespace
}  // namespace bolthole
