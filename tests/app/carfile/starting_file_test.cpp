// Starting numbers in the car file: there and back, in kept setups too; old files count as measured.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

#include "app/carfile/car_file.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/edits/edit.h"
#include "geometry/edits/starting_car.h"
#include "geometry/plates/plate_room.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using Json = nlohmann::ordered_json;

Json writtenAs(const Car& car) {
    return Json::parse(writeCar(car, Json()));
}

ReadResult readBack(const Json& json) {
    return readCar(json.dump());
}

Car startedWithSpring() {
    Car car = startingCar({.typed = {Field::wheelbase}});
    SuspensionPart spring;
    spring.name = "rear spring";
    spring.chassis.holes = {Hole{-1, "top", {0, 0.4, 0.6}}};
    spring.axle.holes = {Hole{-1, "bottom", {0, 0.4, 0.4}}};
    startFrom(spring);
    car.springs.push_back(spring);
    return apply(car, SetNumber{holeField(0, End::axle, 0, 2), 0.2}).car;
}

TEST(StartingFile, GoesThereAndBack) {
    const Car car = startedWithSpring();
    const ReadResult read = readBack(writtenAs(car));
    ASSERT_TRUE(read.loaded) << read.problem.line();
    EXPECT_EQ(startingNumbers(read.loaded->car), startingNumbers(car));
    EXPECT_EQ(writeCar(read.loaded->car, read.loaded->source), writeCar(car, read.loaded->source));
}

TEST(StartingFile, NamesNumbersAsTheFileDoes) {
    const Json json = writtenAs(startedWithSpring());
    EXPECT_THAT(
        json["starting"].get<std::vector<std::string>>(),
        testing::AllOf(testing::Contains("cg_height"), testing::Contains("corner_weights.left_rear"),
                       testing::Contains("travel.bump"), testing::Not(testing::Contains("wheelbase"))));
    EXPECT_EQ(json["links"][0]["chassis"]["holes"][0]["starting"], Json::parse(R"(["at"])"));
    EXPECT_EQ(json["links"][0]["axle"]["holes"][0]["starting"], Json::parse(R"(["at[0]", "at[1]"])"));
    EXPECT_EQ(json["springs"][0]["axle"]["holes"][0]["starting"], Json::parse(R"(["at"])"));
    EXPECT_THAT(json["driveline"]["starting"].get<std::vector<std::string>>(),
                testing::Contains("pinion_joint"));
}

TEST(StartingFile, StaysWithKeptSetups) {
    Car car = apply(startingCar({}), KeepSetup{"as bought", "2026-11-28", "", nullptr}).car;
    car = apply(car, SetNumber{{.field = Field::cgHeight}, 0.5}).car;
    const ReadResult read = readBack(writtenAs(car));
    ASSERT_TRUE(read.loaded) << read.problem.line();
    EXPECT_EQ(startingNumbers(read.loaded->car), startingNumbers(car));
    EXPECT_EQ(startingNumbers(*read.loaded->car.kept[0].car), startingNumbers(*car.kept[0].car));
}

TEST(StartingFile, WithoutTheKeyEverythingCountsAsMeasured) {
    const Json json = writtenAs(plainCar());
    EXPECT_EQ(json.dump().find("\"starting\""), std::string::npos);
    const ReadResult read = readBack(json);
    ASSERT_TRUE(read.loaded);
    EXPECT_TRUE(startingNumbers(read.loaded->car).empty());
}

TEST(StartingFile, TheKeyGoesWithTheLastMark) {
    Json json = writtenAs(plainCar());
    json["starting"] = Json::parse(R"(["cg_height"])");
    ReadResult read = readBack(json);
    ASSERT_TRUE(read.loaded) << read.problem.line();
    EXPECT_TRUE(isStarting(read.loaded->car, {.field = Field::cgHeight}));
    const Car typed = apply(read.loaded->car, SetNumber{{.field = Field::cgHeight}, 0.5}).car;
    EXPECT_FALSE(Json::parse(writeCar(typed, read.loaded->source)).contains("starting"));
}

TEST(StartingFile, WorkedOutNumbersGoThereAndBackUnderAKeyOfTheirOwn) {
    Car car = plainCar();
    const FieldId length{.field = Field::linkLength, .link = 0};
    car.links[0].length = 0.6;
    setOrigin(car, length, Origin::workedOut);
    const Json json = writtenAs(car);
    EXPECT_EQ(json["links"][0]["worked_out"], Json::parse(R"(["length"])"));
    EXPECT_EQ(json.dump().find("\"starting\""), std::string::npos);
    const ReadResult read = readBack(json);
    ASSERT_TRUE(read.loaded) << read.problem.line();
    EXPECT_EQ(originOf(read.loaded->car, length), Origin::workedOut);
    setOrigin(car, length, Origin::measured);
    EXPECT_FALSE(Json::parse(writeCar(car, read.loaded->source))["links"][0].contains("worked_out"));
}

TEST(StartingFile, WhatNamesNoNumberIsRefused) {
    const auto problemOf = [](const char* value) {
        Json json = writtenAs(plainCar());
        json["starting"] = Json::parse(value);
        return readBack(json).problem.line();
    };
    EXPECT_THAT(problemOf(R"(["of_the_moon"])"), testing::HasSubstr("starting[0]"));
    EXPECT_THAT(problemOf(R"(["cg_height", 3])"), testing::HasSubstr("starting[1]"));
    EXPECT_THAT(problemOf(R"(["wheelbase[0]"])"), testing::HasSubstr("the name of a measured number"));
    EXPECT_THAT(problemOf(R"(["travel.steps"])"), testing::HasSubstr("starting[0]"));
    EXPECT_THAT(problemOf(R"("cg_height")"), testing::HasSubstr("an array"));
    EXPECT_EQ(problemOf(R"(["cg_height", "cg_height"])"), problemOf("[]")) << "twice is once";
}

Car plainCarWithPlate() {
    Car car = plainCar();
    Bracket& bracket = car.links[0].axle;
    bracket.plate = rectangleAround(bracket, startingRules(Units::inch), Units::inch);
    return car;
}

TEST(StartingFile, APlateThatNobodyMeasuredStaysOne) {
    Car car = plainCarWithPlate();
    Bracket& bracket = car.links[0].axle;
    bracket.plate->starts.corners.erase({1, 0});
    bracket.plate->starts.markCorner(2, false);
    bracket.plate->starts.holeSpacing = false;
    const Json json = writtenAs(car);
    EXPECT_EQ(
        json["links"][0]["axle"]["outline"]["starting"],
        Json::parse(R"(["corners[0]", "corners[1][1]", "corners[3]", "hole_diameter", "edge_distance"])"));
    const ReadResult read = readBack(json);
    ASSERT_TRUE(read.loaded) << read.problem.line();
    EXPECT_EQ(read.loaded->car.links[0].axle.plate->starts, bracket.plate->starts);
    bracket.plate->starts = {};
    const Json measured = Json::parse(writeCar(car, read.loaded->source));
    EXPECT_FALSE(measured["links"][0]["axle"]["outline"].contains("starting"));
}

TEST(StartingFile, WhatNamesNoNumberOfAPlateIsRefused) {
    const auto problemOf = [](const char* value) {
        Json json = writtenAs(plainCarWithPlate());
        json["links"][0]["axle"]["outline"]["starting"] = Json::parse(value);
        return readBack(json).problem.line();
    };
    for (const char* name : {R"(["corners[5]"])", R"(["corners[0][2]"])", R"(["corners"])",
                             R"(["corners[0]x"])", R"([3])", R"(["at"])"}) {
        EXPECT_THAT(problemOf(name), testing::HasSubstr("outline.starting[0]")) << name;
        EXPECT_THAT(problemOf(name), testing::HasSubstr("the name of a number of this plate")) << name;
    }
    EXPECT_THAT(problemOf(R"("corners[0]")"), testing::HasSubstr("an array of names of numbers"));
}

}  // namespace
}  // namespace bolthole
