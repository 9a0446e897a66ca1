// Kept setups in the car file: what is read, what a save keeps, what is refused and where.
#include <gmock/gmock.h>

#include "app/carfile/car_file.h"
#include "geometry/edits/edit.h"

namespace bolthole {
namespace {

using Json = nlohmann::ordered_json;
using testing::StartsWith;

// A state: the keys of a car without its mark, with what this program does not know at every level.
Json state(const std::string& name, double wheelbase) {
    return Json::parse(R"({"name": ")" + name + R"(", "date": "2026-11-02", "note": "dry", "mood": "good",
        "car": {
          "title": "Example", "units": "metric", "wheelbase": )" +
                       std::to_string(wheelbase) + R"(, "rear_tire_radius": 336.55,
          "front_tire_radius": 323.85, "paint": "primer",
          "corner_weights": {"left_front": 471.2, "right_front": 448.9, "left_rear": 357.4,
                             "right_rear": 349},
          "cg_height": 546.1,
          "links": [{"name": "lower", "kind": "rod", "maker": "home",
            "chassis": {"holes": [{"name": "front", "at": [514.35, 469.9, 276.225], "worn": true}]},
            "axle": {"holes": [{"name": "bottom", "at": [12.7, 533.4, 184.15]}]}}]}})");
}

Json example() {
    Json car = state("", 2794)["car"];
    car["kept"] = Json::array({state("Monday", 2780), state("Tuesday", 2785)});
    car["before"] = 1;
    car["state_name"] = "Tuesday";
    car["state_note"] = "dry";
    Json file = {{"format", "bolthole-car"}, {"version", 1}};
    file.update(car);
    return file;
}

LoadedCar loaded(const Json& json) {
    ReadResult read = readCar(json.dump());
    EXPECT_TRUE(read.loaded) << read.problem.line();
    return read.loaded ? std::move(*read.loaded) : LoadedCar{};
}

Json savedAs(const Car& car, const Json& source) {
    return Json::parse(writeCar(car, source));
}

void expectRefused(const Json& json, const std::string& line) {
    const ReadResult read = readCar(json.dump());
    EXPECT_FALSE(read.loaded);
    EXPECT_THAT(read.problem.line(), StartsWith(line));
}

TEST(KeptInFile, IsReadInSiUnits) {
    const Car car = loaded(example()).car;
    ASSERT_EQ(car.kept.size(), 2U);
    EXPECT_EQ(car.baseline, 1);
    EXPECT_EQ(car.stateName, "Tuesday");
    EXPECT_EQ(car.stateNote, "dry");
    const KeptSetup& first = car.kept[0];
    EXPECT_EQ(first.name, "Monday");
    EXPECT_EQ(first.date, "2026-11-02");
    EXPECT_EQ(first.note, "dry");
    ASSERT_NE(first.car, nullptr);
    EXPECT_EQ(first.car->wheelbase, 2.780);
    EXPECT_EQ(first.car->units, Units::metric);
    EXPECT_EQ(first.car->links[0].chassis.holes[0].at.x(), 0.51435);
    EXPECT_EQ(first.car->travel.steps, 81) << "defaults are those of the car";
    EXPECT_TRUE(first.car->kept.empty());
}

TEST(KeptInFile, ASaveChangesNothing) {
    const LoadedCar car = loaded(example());
    EXPECT_EQ(savedAs(car.car, car.source), car.source);
    EXPECT_EQ(writeCar(car.car, car.source), writeCar(car.car, car.source));
}

TEST(KeptInFile, AbsentIsNoneAndStaysAbsent) {
    Json json = example();
    for (const char* key : {"kept", "before", "state_name", "state_note"}) {
        json.erase(key);
    }
    const LoadedCar car = loaded(json);
    EXPECT_TRUE(car.car.kept.empty());
    EXPECT_FALSE(car.car.baseline);
    EXPECT_EQ(car.car.stateName, "");
    EXPECT_EQ(savedAs(car.car, car.source), json);
    const Json fresh = savedAs(car.car, Json());
    for (const char* key : {"kept", "before", "state_name", "state_note"}) {
        EXPECT_FALSE(fresh.contains(key)) << key;
    }
}

TEST(KeptInFile, WhatIsKeptReadsBackTheSame) {
    Json json = example();
    json.erase("kept");
    json.erase("before");
    const LoadedCar car = loaded(json);
    const Car kept = apply(car.car, KeepSetup{"Friday", "2026-11-06", "two\nlines", nullptr}).car;
    const Car again = loaded(savedAs(kept, car.source)).car;
    ASSERT_EQ(again.kept.size(), 1U);
    EXPECT_EQ(again.baseline, 0);
    EXPECT_EQ(again.kept[0].name, "Friday");
    EXPECT_EQ(again.kept[0].note, "two\nlines");
    EXPECT_EQ(again.stateName, "Friday");
    EXPECT_TRUE(*again.kept[0].car == withoutKept(car.car)) << "every number as it was";
}

TEST(KeptInFile, UnknownKeysStayWithTheirState) {
    const LoadedCar car = loaded(example());
    const Car fewer = apply(car.car, RemoveKept{0}).car;
    const Json json = savedAs(fewer, car.source);
    ASSERT_EQ(json["kept"].size(), 1U);
    EXPECT_EQ(json["kept"][0], example()["kept"][1]);
    EXPECT_EQ(json["before"], 0);
    const Json renamed = savedAs(apply(fewer, DescribeKept{0, "x", ""}).car, car.source);
    EXPECT_EQ(renamed["kept"][0]["name"], "x");
    EXPECT_EQ(renamed["kept"][0]["mood"], "good");
    EXPECT_EQ(renamed["kept"][0]["car"]["links"][0]["maker"], "home");
}

TEST(KeptInFile, TheLastDeletedTakesTheKeyAway) {
    const LoadedCar car = loaded(example());
    const Car none = apply(apply(car.car, RemoveKept{0}).car, RemoveKept{0}).car;
    const Json json = savedAs(none, car.source);
    EXPECT_FALSE(json.contains("kept"));
    EXPECT_FALSE(json.contains("before"));
}

// What the file says of the bench's parts stays with the bench, of the kept setup's parts with that.
TEST(KeptInFile, UnknownKeysStayInPlaceThroughASwap) {
    Json json = example();
    json["links"][0]["maker"] = "shop";
    const LoadedCar car = loaded(json);
    const Car swapped = apply(car.car, SwapBaseline{"2026-11-09"}).car;
    const Json saved = savedAs(swapped, car.source);
    EXPECT_EQ(saved["wheelbase"], 2785);
    EXPECT_EQ(saved["links"][0]["maker"], "shop");
    EXPECT_EQ(saved["kept"][1]["car"]["wheelbase"], 2794);
    EXPECT_EQ(saved["kept"][1]["car"]["links"][0]["maker"], "home");
    EXPECT_EQ(saved["kept"][1]["car"]["links"][0]["chassis"]["holes"][0]["worn"], true);
    const Car again = loaded(saved).car;
    EXPECT_TRUE(*again.kept[1].car == *swapped.kept[1].car);
}

TEST(KeptInFile, ABadIndexIsRefused) {
    for (const Json& bad : {Json(2), Json(-1), Json(0.5), Json("Monday"), Json(nullptr)}) {
        Json json = example();
        json["before"] = bad;
        expectRefused(json, "before: expected an index, a whole number from 0 to 1");
    }
    Json json = example();
    json.erase("kept");
    expectRefused(json, "before: expected no index, as the list is empty");
}

TEST(KeptInFile, WhatIsWrongInsideIsNamedWhereItStands) {
    Json json = example();
    json["kept"][0]["car"]["wheelbase"] = -1;
    expectRefused(json, "kept[0].car.wheelbase: ");
    json = example();
    json["kept"][1]["car"]["links"][0]["axle"]["holes"][0]["at"] = {1, 2};
    expectRefused(json, "kept[1].car.links[0].axle.holes[0].at");
    json = example();
    json["kept"][0].erase("car");
    expectRefused(json, "kept[0].car: ");
    json = example();
    json["kept"][0].erase("name");
    expectRefused(json, "kept[0].name: ");
    json = example();
    json["kept"] = "none";
    expectRefused(json, "kept: ");
}

// Each number by itself is allowed; the car is not.
TEST(KeptInFile, AKeptCarThatCannotBeComputedIsRefused) {
    Json json = example();
    Json& link = json["kept"][1]["car"]["links"][0];
    link["chassis"]["holes"][0]["at"] = link["axle"]["holes"][0]["at"];
    expectRefused(json, "kept[1].car.links[0]: expected a link's current holes apart");
}

TEST(KeptInFile, AtMostTwoThousand) {
    Json json = example();
    while (json["kept"].size() < kMaxKept) {
        json["kept"].push_back(state("more", 2790));
    }
    EXPECT_EQ(loaded(json).car.kept.size(), kMaxKept);
    json["kept"].push_back(state("one too many", 2790));
    expectRefused(json, "kept: ");
}

}  // namespace
}  // namespace bolthole
