// What a bad file's message calls the part at fault, beside its place in the JSON.
#include <gmock/gmock.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "app/carfile/car_file.h"

namespace bolthole {
namespace {

using Json = nlohmann::ordered_json;

Json wagon() {
    std::ifstream file(BOLTHOLE_DEMO_DIR "/long-roof-wagon.bolt.json");
    return Json::parse(file);
}

FileProblem problemOf(const Json& car) {
    return readCar(car.dump()).problem;
}

TEST(PartAtFault, IsTheLinkAndTheHoleByName) {
    Json car = wagon();
    const std::string link = car["links"][0]["name"];
    const std::string hole = car["links"][0]["axle"]["holes"][1]["name"];
    car["links"][0]["axle"]["holes"][1]["at"][2] = "high";
    const FileProblem problem = problemOf(car);
    EXPECT_THAT(problem.path, testing::StartsWith("links[0].axle.holes[1].at"));
    EXPECT_EQ(problem.part, "link '" + link + "', axle hole '" + hole + "'");
    EXPECT_THAT(problem.line(), testing::EndsWith(" (link '" + link + "', axle hole '" + hole + "')"));
}

TEST(PartAtFault, IsItsNumberWhereItHasNoName) {
    Json car = wagon();
    car["links"][1].erase("name");
    car["links"][1]["length"] = -5;
    EXPECT_EQ(problemOf(car).part, "link 2");
}

TEST(PartAtFault, IsNobodyOutsideTheLinks) {
    Json car = wagon();
    car["wheelbase"] = -1;
    EXPECT_EQ(problemOf(car).part, "");
    EXPECT_THAT(problemOf(car).line(), testing::StartsWith("wheelbase: expected"));
    for (const char* file :
         {"{", "[]", R"({"links": 7})", R"({"links": [7]})", R"({"links": [{"axle": 3}]})"}) {
        EXPECT_FALSE(readCar(file).problem.line().empty()) << file;
    }
}

}  // namespace
}  // namespace bolthole
