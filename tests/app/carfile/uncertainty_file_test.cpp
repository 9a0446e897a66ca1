// The car file's keys of uncertainties, tools, plates, planned holes and more of the target.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <functional>
#include <iterator>
#include <string>

#include "app/carfile/car_file.h"
#include "geometry/car/fields.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::StartsWith;
using Json = nlohmann::ordered_json;

Car withEveryUncertainty() {
    Car car = plainCar();
    double size = 0;
    for (FieldId id : allIds(car)) {
        if (!mayHaveUncertainty(id.field)) {
            continue;
        }
        id.uncertainty = true;
        size += 0.0125;
        EditResult result = apply(car, SetNumber{id, size * fileUnit(quantityOf(id.field))});
        EXPECT_EQ(result.refusal, "") << jsonPath(id);
        car = std::move(result.car);
    }
    return car;
}

Car withEverythingNew() {
    Car car = withEveryUncertainty();
    car.tools = {.tape = 0.0005,
                 .calipers = 0.0001,
                 .angleFinder = 0.25 * kRadiansPerDegree,
                 .floor = 0.001,
                 .centerPlane = 0.002,
                 .originLine = 0.0015};
    car.links[0].axle.plate = Plate{.corners = {{0, 0.15}, {0.1, 0.15}, {0.1, 0.3}},
                                    .holeDiameter = 0.016,
                                    .edgeDistance = 0.02,
                                    .holeSpacing = 2,
                                    .starts = {.corners = {{2, 1}}}};
    car.links[0].axle.holes[1].planned = true;
    car.target = TargetWindow{.icNear = 1,
                              .icFar = 2,
                              .antiSquatLow = 100,
                              .antiSquatHigh = 120,
                              .icLow = 0.1,
                              .icHigh = 0.4,
                              .changeLow = -20,
                              .changeHigh = 10,
                              .pinionChange = 1 * kRadiansPerDegree,
                              .joint = 3 * kRadiansPerDegree};
    return car;
}

Json jsonOf(const Car& car) {
    return Json::parse(writeCar(car, Json()));
}

// Numbers within a rounding of the file's units, everything else exact.
void expectSameNumbers(const Car& one, const Car& other) {
    for (FieldId id : allIds(one)) {
        for (const bool uncertainty : {false, true}) {
            id.uncertainty = uncertainty;
            const std::optional<double> mine = numberAt(one, id);
            const std::optional<double> theirs = numberAt(other, id);
            ASSERT_EQ(mine.has_value(), theirs.has_value()) << jsonPath(id);
            if (mine) {
                EXPECT_NEAR(*mine, *theirs, 1e-12 * std::max(1.0, std::abs(*mine))) << jsonPath(id);
            }
        }
    }
}

std::string refusalAfter(const std::function<void(Json&)>& change) {
    Json json = jsonOf(withEverythingNew());
    change(json);
    const ReadResult read = readCar(json.dump());
    return read.loaded ? "" : read.problem.line();
}

}  // namespace

TEST(UncertaintyFile, ComesBackAsItWasWritten) {
    const Car car = withEverythingNew();
    const std::string bytes = writeCar(car, Json());
    const ReadResult read = readCar(bytes);
    ASSERT_TRUE(read.loaded) << read.problem.line();
    const Car& back = read.loaded->car;
    expectSameNumbers(car, back);
    ASSERT_TRUE(back.links[0].axle.plate.has_value());
    EXPECT_EQ(back.links[0].axle.plate->corners.size(), 3U);
    EXPECT_NEAR(back.links[0].axle.plate->corners[2].y(), 0.3, 1e-12);
    EXPECT_TRUE(back.links[0].axle.holes[1].planned);
    EXPECT_FALSE(back.links[0].axle.holes[0].planned);
    EXPECT_EQ(writeCar(back, read.loaded->source), bytes);
}

TEST(UncertaintyFile, NothingEnteredLeavesNoKey) {
    const std::string bytes = writeCar(plainCar(), Json());
    for (const char* key : {"\"u\"", "\"tools\"", "\"planned\"", "\"outline\"", "\"ic_low\""}) {
        EXPECT_EQ(bytes.find(key), std::string::npos) << key;
    }
}

TEST(UncertaintyFile, StandsUnderTheNumbersOwnNameInTheFilesUnits) {
    Car car = plainCar();
    const auto enter = [&car](FieldId id, double value) {
        id.uncertainty = true;
        car = apply(car, SetNumber{id, value}).car;
    };
    enter({.field = Field::wheelbase}, 0.002);
    enter({.field = Field::leftRearWeight}, 0.5);
    enter({.field = Field::pinionAngle}, 0.1 * kRadiansPerDegree);
    enter(holeField(0, End::axle, 1, 2), 0.001);
    const Json json = jsonOf(car);
    EXPECT_EQ(json["u"]["wheelbase"], 2);
    EXPECT_EQ(json["u"]["corner_weights.left_rear"], 0.5);
    EXPECT_EQ(json["driveline"]["u"]["pinion_angle"], 0.1);
    EXPECT_EQ(json["links"][0]["axle"]["holes"][1]["u"]["at"], Json::parse("[null, null, 1]"));
}

TEST(UncertaintyFile, UnknownKeysBesideThemAreKept) {
    Json json = jsonOf(withEverythingNew());
    json["u"]["of_the_moon"] = 3;
    json["tools"]["laser"] = 0.1;
    json["links"][0]["axle"]["outline"]["material"] = "3/16 in plate";
    const ReadResult read = readCar(json.dump());
    ASSERT_TRUE(read.loaded) << read.problem.line();
    const Json back = Json::parse(writeCar(read.loaded->car, read.loaded->source));
    EXPECT_EQ(back["u"]["of_the_moon"], 3);
    EXPECT_EQ(back["tools"]["laser"], 0.1);
    EXPECT_EQ(back["links"][0]["axle"]["outline"]["material"], "3/16 in plate");
}

TEST(UncertaintyFile, IsRefusedByItsPath) {
    struct Row {
        std::function<void(Json&)> change;
        const char* path;
    };
    const std::vector<Row> rows{
        {[](Json& json) { json["u"]["wheelbase"] = -1; }, "u.wheelbase: "},
        {[](Json& json) { json["u"]["wheelbase"] = 1001; }, "u.wheelbase: "},
        {[](Json& json) { json["u"]["wheelbase"] = "sure"; }, "u.wheelbase: "},
        {[](Json& json) { json["u"]["corner_weights.left_rear"] = -2; }, "u[\"corner_weights.left_rear\"]: "},
        {[](Json& json) { json["u"] = 3; }, "u: "},
        {[](Json& json) { json["driveline"]["u"]["pinion_angle"] = 46; }, "driveline.u.pinion_angle: "},
        {[](Json& json) { json["links"][1]["chassis"]["holes"][0]["u"]["at"][1] = -1; },
         "links[1].chassis.holes[0].u.at"},
        {[](Json& json) { json["tools"]["tape"] = -0.1; }, "tools.tape: "},
        {[](Json& json) { json["tools"]["angle_finder"] = 60; }, "tools.angle_finder: "},
        {[](Json& json) { json["links"][0]["axle"]["holes"][1]["planned"] = "soon"; },
         "links[0].axle.holes[1].planned: "},
        {[](Json& json) { json["links"][0]["axle"]["outline"]["corners"].erase(2); },
         "links[0].axle.outline.corners: "},
        {[](Json& json) { json["links"][0]["axle"]["outline"]["corners"][1] = Json::parse("[1]"); },
         "links[0].axle.outline.corners[1]: "},
        {[](Json& json) { json["links"][0]["axle"]["outline"]["hole_diameter"] = 0; },
         "links[0].axle.outline.hole_diameter: "},
        {[](Json& json) { json["links"][0]["axle"]["outline"].erase("hole_spacing"); },
         "links[0].axle.outline.hole_spacing: "},
        {[](Json& json) { json["wanted"]["pinion_change"] = 0; }, "wanted.pinion_change: "},
        {[](Json& json) { json["wanted"]["ic_low"] = 100001; }, "wanted.ic_low: "},
    };
    EXPECT_EQ(refusalAfter([](Json&) {}), "");
    for (const Row& row : rows) {
        EXPECT_THAT(refusalAfter(row.change), StartsWith(row.path));
    }
}

// Every key the writer can write is in the schema.
TEST(UncertaintyFile, IsDescribedByTheSchema) {
    std::ifstream stream(BOLTHOLE_SOURCE_DIR "/resources/car.schema.json", std::ios::binary);
    const Json schema = Json::parse(std::string{std::istreambuf_iterator<char>(stream), {}});
    const Json json = jsonOf(withEverythingNew());
    const Json& defs = schema["$defs"];
    const auto expectKeys = [](const Json& object, const Json& node) {
        ASSERT_TRUE(object.is_object() && !object.empty());
        for (const auto& [key, value] : object.items()) {
            ASSERT_TRUE(node["properties"].contains(key)) << key;
            const Json& rule = node["properties"][key];
            if (value.is_number() && rule.contains("maximum")) {
                EXPECT_LE(value.get<double>(), rule["maximum"].get<double>()) << key;
            }
        }
        for (const auto& [key, rule] : node["properties"].items()) {
            EXPECT_TRUE(object.contains(key)) << key << " is described but never written";
        }
    };
    expectKeys(json["u"], defs["car_uncertainties"]);
    expectKeys(json["links"][1]["u"], defs["link_uncertainties"]);
    expectKeys(json["links"][0]["axle"]["holes"][0]["u"], defs["hole_uncertainties"]);
    expectKeys(json["springs"][0]["axle"]["holes"][0]["u"], defs["hole_uncertainties"]);
    expectKeys(json["driveline"]["u"], defs["driveline_uncertainties"]);
    expectKeys(json["loads"][0]["u"], defs["load_uncertainties"]);
    expectKeys(json["springs"][0]["u"], defs["spring_uncertainties"]);
    expectKeys(json["tools"], defs["tools"]);
    expectKeys(json["links"][0]["axle"]["outline"], defs["outline"]);
    expectKeys(json["wanted"], schema["properties"]["wanted"]);
}

}  // namespace bolthole
