// Passes: entering, changing, striking and removing them, and the setups they stand on, all through apply().
#include <gmock/gmock.h>

#include <cmath>
#include <limits>

#include "geometry/car/faults.h"
#include "geometry/car/pass_fields.h"
#include "geometry/compare/setup_changes.h"
#include "geometry/edits/edit.h"
#include "geometry/units/text.h"
#include "tests/support/edit_tools.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::StartsWith;

Pass pass(int number, const std::string& date = "2026-11-20", const std::string& time = "") {
    Pass made;
    made.number = number;
    made.date = date;
    made.time = time;
    made.sixtyFoot = 2.2;
    return made;
}

Car otherHole(const Car& car, int hole = 1) {
    return applied(car, UseHole{0, End::axle, hole});
}

std::vector<int> numbersOf(const Car& car) {
    std::vector<int> numbers;
    for (const Pass& each : car.passes) {
        numbers.push_back(each.number);
    }
    return numbers;
}

TEST(AddPass, KeepsTheCarAsItStandsOnce) {
    const Car one = applied(plainCar(), AddPass{pass(1)});
    ASSERT_EQ(one.kept.size(), 1U);
    EXPECT_EQ(one.kept[0].name, "first setup");
    EXPECT_EQ(one.kept[0].date, "2026-11-20");
    EXPECT_TRUE(*one.kept[0].car == plainCar());
    EXPECT_EQ(one.passes[0].setup, 0);
    EXPECT_FALSE(one.baseline) << "a pass is no comparison";
    const Car two = applied(one, AddPass{pass(2)});
    EXPECT_EQ(two.kept.size(), 1U);
    EXPECT_EQ(two.passes[1].setup, 0);
}

TEST(AddPass, NamesANewSetupByWhatChanged) {
    const Car one = applied(plainCar(), AddPass{pass(1)});
    const Car two = applied(otherHole(one), AddPass{pass(2)});
    ASSERT_EQ(two.kept.size(), 2U);
    EXPECT_EQ(two.kept[1].name, "lower axle hole 'top'");
    EXPECT_EQ(two.stateName, "lower axle hole 'top'");
    EXPECT_EQ(two.passes[1].setup, 1);
    const Car back = applied(otherHole(two, 0), AddPass{pass(3)});
    EXPECT_EQ(back.kept.size(), 2U);
    EXPECT_EQ(back.passes[2].setup, 0) << "the first setup again, not a third one";
}

TEST(AddPass, ASetupOfItsOwnIsTaken) {
    Car car = applied(plainCar(), AddPass{pass(1)});
    car = applied(otherHole(car), AddPass{pass(2)});
    Pass third = pass(3);
    third.setup = 0;
    car = applied(car, AddPass{third});
    EXPECT_EQ(car.passes[2].setup, 0);
    EXPECT_EQ(car.kept.size(), 2U);
}

// What is wished, noted or guessed of the uncertainty of a number makes no other setup.
TEST(AddPass, WordsAndWishesMakeNoSetup) {
    Car car = applied(plainCar(), AddPass{pass(1)});
    car.notes = "windy";
    car.title = "Other";
    car.units = Units::metric;
    car.target = TargetWindow{1.0, 2.0, 100, 150};
    car.tools.tape = 0.002;
    car.travel.steps = 11;
    car = applied(car, AddHole{0, End::axle, [] {
                                   Hole planned = hole("third", 0.5, 21, 11);
                                   planned.planned = true;
                                   return planned;
                               }()});
    car = applied(car, AddPass{pass(2)});
    EXPECT_EQ(car.kept.size(), 1U);
    EXPECT_EQ(car.passes[1].setup, 0);
}

TEST(AddPass, StandsWhereItsDayAndTimeBelong) {
    Car car = applied(plainCar(), AddPass{pass(1, "2026-11-20", "14:05")});
    car = applied(car, AddPass{pass(3, "2026-11-27")});
    car = applied(car, AddPass{pass(2, "2026-11-20", "15:00")});
    EXPECT_THAT(numbersOf(car), ElementsAre(1, 2, 3));
    car = applied(car, AddPass{pass(4, "2026-11-20")});
    EXPECT_THAT(numbersOf(car), ElementsAre(1, 2, 4, 3)) << "without a time: after those of its day";
}

TEST(AddPass, RefusesWhatAFileCouldNotHold) {
    const Car car = plainCar();
    expectRefused(car, AddPass{pass(0)}, "number: expected a whole number from 1 to 1000000, found 0");
    expectRefused(car, AddPass{pass(1, "20.11.2026")},
                  "date: expected a date as 2026-11-20, found '20.11.2026'");
    expectRefused(car, AddPass{pass(1, "2026-02-29")}, "date: ");
    expectRefused(car, AddPass{pass(1, "2026-11-20", "25:00")}, "time: expected a time as 14:05");
    Pass bad = pass(1);
    bad.setup = 0;
    expectRefused(car, AddPass{bad}, "setup: expected no index, as nothing is kept, found 0");
    bad = pass(1);
    bad.pressures.leftRear = -1;
    expectRefused(car, AddPass{bad}, "pressures.left_rear: expected a pressure from 0 to 1000 kPa, found -1");
    bad = pass(1);
    bad.sixtyFoot = 0;
    expectRefused(car, AddPass{bad}, "sixty_foot: expected a time above 0 and up to 1000 s, found 0");
    bad.sixtyFoot = std::nan("");
    expectRefused(car, AddPass{bad}, "sixty_foot: ");
    Car unbuilt = car;
    unbuilt.links[0].chassis.holes[0].at = unbuilt.links[0].axle.holes[0].at;
    expectRefused(unbuilt, AddPass{pass(1)}, "a car that can't be computed is not kept");
    Car full = applied(car, AddPass{pass(1)});
    full.passes.resize(kMaxPasses, full.passes[0]);
    expectRefused(full, AddPass{pass(2)}, "at most 10000 passes");
}

TEST(ChangePass, PutsAnotherInItsPlace) {
    Car car = applied(plainCar(), AddPass{pass(1)});
    car.passes[0].id = 5;
    Pass changed = car.passes[0];
    changed.id = -1;
    changed.sixtyFoot = 2.1;
    changed.seen[static_cast<std::size_t>(Seen::bounced)] = true;
    car = applied(car, ChangePass{0, changed});
    EXPECT_EQ(car.passes[0].sixtyFoot, 2.1);
    EXPECT_TRUE(car.passes[0].saw(Seen::bounced));
    EXPECT_EQ(car.passes[0].id, 5) << "what else the file says of it stays with it";
    expectRefused(car, ChangePass{1, changed}, "there is no pass in row 2");
    changed.number = -3;
    expectRefused(car, ChangePass{0, changed}, "number: ");
}

TEST(ChangePass, MovesWhereItsDaySaysSo) {
    Car car = plainCar();
    for (const int number : {1, 2, 3}) {
        car = applied(car, AddPass{pass(number)});
    }
    Pass earlier = car.passes[2];
    earlier.date = "2026-11-13";
    EXPECT_THAT(numbersOf(applied(car, ChangePass{2, earlier})), ElementsAre(3, 1, 2));
}

TEST(StrikePass, AndBack) {
    const Car car = applied(plainCar(), AddPass{pass(1)});
    const Car struck = applied(car, StrikePass{0, true});
    EXPECT_TRUE(struck.passes[0].struck);
    EXPECT_FALSE(isCounted(struck.passes[0]));
    EXPECT_TRUE(applied(struck, StrikePass{0, false}) == car);
    expectRefused(car, StrikePass{-1, true}, "there is no pass in row 0");
}

TEST(RemovePass, LeavesItsSetup) {
    const Car car = applied(plainCar(), AddPass{pass(1)});
    const Car none = applied(car, RemovePass{0});
    EXPECT_TRUE(none.passes.empty());
    EXPECT_EQ(none.kept.size(), 1U);
    expectRefused(none, RemovePass{0}, "there is no pass in row 1");
}

TEST(RemoveKept, IsRefusedWhileAPassStandsOnIt) {
    Car car = applied(plainCar(), AddPass{pass(1)});
    expectRefused(car, RemoveKept{0},
                  "a pass stands on 'first setup', pass 1 of 2026-11-20; remove or move it first");
    car = applied(car, AddPass{pass(2)});
    expectRefused(
        car, RemoveKept{0},
        "2 passes stand on 'first setup', the last of them pass 2 of 2026-11-20; remove or move them first");
    EXPECT_EQ(apply(applied(applied(car, RemovePass{0}), RemovePass{0}), RemoveKept{0}).refusal, "");
}

TEST(RemoveKept, PassesFollowTheirSetups) {
    Car car = applied(plainCar(), KeepSetup{"unused", "2026-11-01", "", nullptr});
    car = applied(otherHole(car), AddPass{pass(1)});
    ASSERT_EQ(car.passes[0].setup, 1);
    const Car fewer = applied(car, RemoveKept{0});
    EXPECT_EQ(fewer.passes[0].setup, 0);
    EXPECT_EQ(fewer.kept[0].car->links[0].axle.use, 1);
}

TEST(RestoreKept, IsTheWayBackToAPassAndKeepsThePasses) {
    Car car = applied(plainCar(), AddPass{pass(1)});
    car = applied(otherHole(car), AddPass{pass(2)});
    const Car back = applied(car, RestoreKept{*car.passes[0].setup});
    EXPECT_EQ(back.links[0].axle.use, 0);
    EXPECT_EQ(back.passes, car.passes);
    EXPECT_EQ(back.kept, car.kept);
    EXPECT_TRUE(isSameSetup(back, *car.kept[0].car));
}

// A setup somebody ran is history: the swap keeps it and puts the bench beside it.
TEST(SwapBaseline, LeavesTheSetupOfAPassAlone) {
    Car car = applied(plainCar(), AddPass{pass(1)});
    car = otherHole(applied(car, SetBaseline{0}));
    const Car swapped = applied(car, SwapBaseline{"2026-11-21"});
    ASSERT_EQ(swapped.kept.size(), 2U);
    EXPECT_TRUE(swapped.kept[0] == car.kept[0]);
    EXPECT_EQ(swapped.passes, car.passes);
    EXPECT_EQ(swapped.baseline, 1);
    EXPECT_EQ(swapped.kept[1].car->links[0].axle.use, 1);
    EXPECT_EQ(swapped.links[0].axle.use, 0);
    const Car again = applied(swapped, SwapBaseline{"2026-11-22"});
    EXPECT_EQ(again.kept.size(), 2U) << "no pass stands on that one";
    EXPECT_EQ(again.links[0].axle.use, 1);
    EXPECT_EQ(again.passes, car.passes);
}

TEST(Passes, AKeptSetupHoldsNone) {
    Car car = applied(plainCar(), AddPass{pass(1)});
    car = applied(car, KeepSetup{"later", "2026-11-21", "", nullptr});
    EXPECT_TRUE(car.kept[1].car->passes.empty());
    EXPECT_EQ(car.passes.size(), 1U);
    EXPECT_TRUE(withoutKept(car).passes.empty());
}

TEST(Passes, EveryEditSaysWhatItDoes) {
    const Car car = applied(plainCar(), AddPass{pass(7)});
    EXPECT_EQ(describe(AddPass{pass(8)}, car), "Enter pass 8 of 2026-11-20");
    EXPECT_EQ(describe(ChangePass{0, pass(9)}, car), "Change pass 7 of 2026-11-20");
    EXPECT_EQ(describe(RemovePass{0}, car), "Remove pass 7 of 2026-11-20");
    EXPECT_EQ(describe(StrikePass{0, true}, car), "Strike pass 7 of 2026-11-20");
    EXPECT_EQ(describe(StrikePass{0, false}, car), "Count pass 7 of 2026-11-20");
    EXPECT_EQ(describe(RemovePass{4}, car), "Remove pass in row 5");
}

TEST(PassFaults, AreNamedWhereTheyStand) {
    Car car = plainCar();
    for (const int number : {1, 2, 3, 4}) {
        car = applied(car, AddPass{pass(number)});
    }
    car.passes[3].sixtyFoot = -1;
    car.passes[1].setup = 1;
    const std::vector<Fault> faults = findFaults(car);
    ASSERT_EQ(faults.size(), 2U);
    EXPECT_EQ(faults[0].path, "passes[1].setup");
    EXPECT_EQ(faults[0].reason, "expected the index of a kept setup, a whole number from 0 to 0, found 1");
    EXPECT_EQ(faults[1].path, "passes[3].sixty_foot");
    car.passes.resize(kMaxPasses + 1, pass(1));
    EXPECT_THAT(findFaults(car)[0].reason, StartsWith("expected at most 10000 passes"));
}

// Every number at the ends of its range, just outside and not finite.
TEST(PassFaults, EveryNumberHasItsLimits) {
    for (const PassFieldRule& rule : passFieldRules()) {
        const auto reasonFor = [&rule](double value) {
            Pass made = pass(1);
            numberOf(made, rule.field) = value;
            return findFault(made, 0);
        };
        const double beyond = (rule.most - rule.least) * 1e-9;
        EXPECT_EQ(reasonFor(rule.most).reason, "") << rule.path;
        EXPECT_EQ(reasonFor(rule.most + beyond).path, rule.path);
        EXPECT_EQ(reasonFor(rule.least).reason.empty(), !rule.aboveLeast) << rule.path;
        EXPECT_EQ(reasonFor(rule.least + beyond).reason, "") << rule.path;
        EXPECT_EQ(reasonFor(rule.least - beyond).path, rule.path);
        EXPECT_EQ(reasonFor(std::numeric_limits<double>::infinity()).path, rule.path);
        EXPECT_EQ(reasonFor(std::nan("")).path, rule.path);
    }
}

TEST(PassDates, AreDaysOfTheCalendar) {
    for (const char* good : {"2026-11-20", "2024-02-29", "2000-02-29", "1999-12-31"}) {
        EXPECT_EQ(refuseDate(good), "") << good;
    }
    for (const char* bad : {"", "2026-11-31", "2023-02-29", "1900-02-29", "2026-00-10", "2026-13-01",
                            "2026-1-2", "2026-11-20 ", "2026/11/20", "-026-11-20", "2026-11-2x"}) {
        EXPECT_EQ(refuseDate(bad), "a date as 2026-11-20") << bad;
    }
}

TEST(PassTimes, AreTimesOfDay) {
    for (const char* good : {"00:00", "23:59", "14:05:30"}) {
        EXPECT_EQ(refuseTime(good), "") << good;
    }
    for (const char* bad :
         {"", "24:00", "14:60", "14:05:60", "1405", "14:5", "2:05 PM", "14:05:3", "14-05"}) {
        EXPECT_EQ(refuseTime(bad), "a time as 14:05 or 14:05:30") << bad;
    }
}

// Exact by definition (NIST SP 811, Appendix B, from memory): 1 psi 6.894757293168361 kPa, 1 mile 1.609344
// km, 0 deg C 32 deg F.
TEST(PassUnits, AreConvertedExactly) {
    EXPECT_NEAR(toShown(6.894757293168361, PassUnit::kilopascal, Units::inch), 1, 1e-15);
    EXPECT_EQ(toShown(1.609344, PassUnit::kilometresPerHour, Units::inch), 1);
    EXPECT_EQ(toShown(0, PassUnit::celsius, Units::inch), 32);
    EXPECT_EQ(toShown(100, PassUnit::celsius, Units::inch), 212);
    EXPECT_EQ(toShown(0.3048, PassUnit::metre, Units::inch), 1);
    EXPECT_EQ(toShown(1002, PassUnit::hectopascal, Units::inch), 1002);
    EXPECT_EQ(toShown(124, PassUnit::kilopascal, Units::metric), 124);
}

TEST(PassUnits, WhatWasShownReadsBackTheSame) {
    for (int tenth = 0; tenth <= 10'000; tenth += 7) {
        const double value = tenth / 10.0;
        for (const PassUnit unit : {PassUnit::kilopascal, PassUnit::celsius, PassUnit::kilometresPerHour}) {
            const double shown = std::stod(plainDecimal(toShown(value, unit, Units::inch)));
            ASSERT_EQ(fromShown(shown, unit, Units::inch), value);
            const double typed = fromShown(value, unit, Units::inch);
            ASSERT_EQ(plainDecimal(toShown(typed, unit, Units::inch)), plainDecimal(value));
        }
    }
}

}  // namespace
}  // namespace bolthole
