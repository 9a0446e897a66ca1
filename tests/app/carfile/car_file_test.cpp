// The car file: what is read, what is refused and where, what a save keeps.
#include "app/carfile/car_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <ostream>
#include <string>
#include <vector>

#include "geometry/car/numbers.h"
#include "geometry/edits/edit.h"
#include "tests/support/replaced.h"

namespace bolthole {
namespace {

using Json = nlohmann::ordered_json;
using testing::HasSubstr;
using testing::StartsWith;

// The example of the car file's contract, with every key there is.
const std::string kExample = R"({
  "format": "bolthole-car",
  "version": 1,
  "title": "Example",
  "notes": "none",
  "units": "inch",
  "wheelbase": 2794,
  "rear_tire_radius": 336.55,
  "front_tire_radius": 323.85,
  "rear_track": 1498.6,
  "corner_weights": {"left_front": 471.2, "right_front": 448.9, "left_rear": 357.4, "right_rear": 349.0},
  "cg_height": 546.1,
  "travel": {"bump": 101.6, "droop": 76.2, "steps": 41, "front_ratio": 0.5},
  "links": [
    {
      "name": "lower",
      "kind": "rod",
      "side": "both",
      "role": "lower",
      "chassis": {"holes": [{"name": "front", "at": [514.35, 469.9, 276.225]}], "use": 0},
      "axle": {
        "holes": [
          {"name": "bottom", "at": [12.7, 533.4, 184.15]},
          {"name": "top", "at": [12.7, 533.4, 247.65]}
        ],
        "use": 1
      },
      "length": 510.0,
      "adjuster": {"pitch": 1.5875, "ends": 2}
    }
  ],
  "driveline": {
    "pinion_angle": 1.5,
    "pinion_joint": [279.4, 0, 342.9],
    "output_angle": 3.25,
    "output_joint": [1498.6, 0, 387.35]
  }
}
)";

Car carOf(const std::string& text) {
    const ReadResult read = readCar(text);
    EXPECT_TRUE(read.loaded) << read.problem.line();
    return read.loaded ? read.loaded->car : Car{};
}

std::string savedAgain(const std::string& text) {
    const ReadResult read = readCar(text);
    EXPECT_TRUE(read.loaded) << read.problem.line();
    return read.loaded ? writeCar(read.loaded->car, read.loaded->source) : std::string();
}

TEST(CarFile, ReadsEveryKeyInSiUnits) {
    const Car car = carOf(kExample);
    EXPECT_EQ(car.title, "Example");
    EXPECT_EQ(car.notes, "none");
    EXPECT_EQ(car.units, Units::inch);
    EXPECT_EQ(car.wheelbase, 2.794);
    EXPECT_EQ(car.rearTireRadius, 0.33655);
    EXPECT_EQ(car.frontTireRadius, 0.32385);
    EXPECT_EQ(car.rearTrack, 1.4986);
    EXPECT_EQ(car.cornerWeights.leftFront, 471.2);
    EXPECT_EQ(car.cornerWeights.rightFront, 448.9);
    EXPECT_EQ(car.cornerWeights.leftRear, 357.4);
    EXPECT_EQ(car.cornerWeights.rightRear, 349.0);
    EXPECT_EQ(car.cgHeight, 0.5461);
    EXPECT_EQ(car.travel.bump, 0.1016);
    EXPECT_EQ(car.travel.droop, 0.0762);
    EXPECT_EQ(car.travel.steps, 41);
    EXPECT_EQ(car.travel.frontRatio, 0.5);
    ASSERT_TRUE(car.driveline);
    EXPECT_EQ(car.driveline->pinionAngle, 1.5 * kRadiansPerDegree);
    EXPECT_EQ(car.driveline->outputAngle, 3.25 * kRadiansPerDegree);
    EXPECT_EQ(car.driveline->pinionJoint, Eigen::Vector3d(0.2794, 0, 0.3429));
    EXPECT_EQ(car.driveline->outputJoint, Eigen::Vector3d(1.4986, 0, 0.38735));
}

TEST(CarFile, ReadsEveryKeyOfALink) {
    const Car car = carOf(kExample);
    ASSERT_EQ(car.links.size(), 1U);
    const Link& link = car.links[0];
    EXPECT_EQ(link.id, 0);
    EXPECT_EQ(link.name, "lower");
    EXPECT_EQ(link.kind, LinkKind::rod);
    EXPECT_EQ(link.side, Side::both);
    EXPECT_EQ(link.role, Role::lower);
    EXPECT_EQ(link.length, 0.51);
    ASSERT_TRUE(link.adjuster);
    EXPECT_EQ(link.adjuster->pitch, 0.0015875);
    EXPECT_EQ(link.adjuster->threadedEnds, 2);
    EXPECT_EQ(link.chassis.holes.size(), 1U);
    ASSERT_EQ(link.axle.holes.size(), 2U);
    EXPECT_EQ(link.axle.use, 1);
    EXPECT_EQ(link.axle.holes[1].id, 1);
    EXPECT_EQ(link.axle.holes[1].name, "top");
    EXPECT_EQ(link.axle.holes[1].at, Eigen::Vector3d(0.0127, 0.5334, 0.24765));
}

TEST(CarFile, AbsentKeysGetTheContractsDefaults) {
    const Car car =
        carOf(R"({"format": "bolthole-car", "version": 1, "wheelbase": 2794, "rear_tire_radius": 336,
        "front_tire_radius": 323, "cg_height": 546,
        "corner_weights": {"left_front": 4, "right_front": 3, "left_rear": 2, "right_rear": 1},
        "links": [{"name": "a", "kind": "guide", "chassis": {"holes": [{"name": "b", "at": [1, 2, 3]}]},
                   "axle": {"holes": [{"name": "c", "at": [4, 5, 6]}]}}]})");
    EXPECT_EQ(car.units, Units::inch);
    EXPECT_EQ(car.title, "");
    EXPECT_FALSE(car.rearTrack);
    EXPECT_EQ(car.travel.bump, 0.1016);
    EXPECT_EQ(car.travel.droop, 0.1016);
    EXPECT_EQ(car.travel.steps, 81);
    EXPECT_EQ(car.travel.frontRatio, 1.0);
    EXPECT_FALSE(car.driveline);
    ASSERT_EQ(car.links.size(), 1U);
    EXPECT_EQ(car.links[0].side, Side::both);
    EXPECT_EQ(car.links[0].chassis.use, 0);
    EXPECT_FALSE(car.links[0].length);
    EXPECT_FALSE(car.links[0].adjuster);
    EXPECT_FALSE(car.links[0].role);
}

TEST(CarFile, WholeNumbersMayBeWrittenWithAPoint) {
    EXPECT_EQ(carOf(replaced(kExample, "\"steps\": 41", "\"steps\": 41.0")).travel.steps, 41);
    EXPECT_EQ(carOf(replaced(kExample, "\"use\": 1", "\"use\": 1.0")).links[0].axle.use, 1);
    EXPECT_TRUE(readCar(replaced(kExample, "\"version\": 1", "\"version\": 1.0")).loaded);
}

TEST(CarFile, AByteOrderMarkIsNoFault) {
    EXPECT_TRUE(readCar("\xEF\xBB\xBF" + kExample).loaded);
}

// A file with one fault: a piece of the example replaced.
struct BadFile {
    std::string from;
    std::string to;
    std::string path;
    std::string reason;
};

class OneFault : public testing::TestWithParam<BadFile> {};

// How a failing case is named.
void PrintTo(const BadFile& bad, std::ostream* out) {
    *out << bad.path << " as " << bad.to;
}

TEST_P(OneFault, IsRefusedAtItsPlace) {
    const BadFile& bad = GetParam();
    const ReadResult read = readCar(replaced(kExample, bad.from, bad.to));
    EXPECT_FALSE(read.loaded);
    EXPECT_EQ(read.problem.path, bad.path);
    EXPECT_THAT(read.problem.reason, HasSubstr(bad.reason));
    EXPECT_EQ(read.problem.line().find('\n'), std::string::npos);
}

INSTANTIATE_TEST_SUITE_P(
    Kinds, OneFault,
    testing::Values(
        BadFile{"\"bolthole-car\"", "\"other\"", "format", R"(expected "bolthole-car", found "other")"},
        BadFile{"\"format\": \"bolthole-car\",", "", "format", R"(missing, expected "bolthole-car")"},
        BadFile{"\"version\": 1", "\"version\": 2", "version", "a newer program wrote this file), found 2"},
        BadFile{"\"version\": 1", "\"version\": 0", "version", "expected version 1, found 0"},
        BadFile{"\"version\": 1", "\"version\": 1.5", "version", "found 1.5"},
        BadFile{"\"version\": 1", "\"version\": \"1\"", "version", "found \"1\""},
        BadFile{"\"Example\"", "7", "title", "expected a text, found 7"},
        BadFile{"\"inch\"", "\"feet\"", "units", R"(expected "inch" or "metric", found "feet")"},
        BadFile{"2794", "\"abc\"", "wheelbase", "expected a length above 0 and at most 100 m, found \"abc\""},
        BadFile{"2794", "null", "wheelbase", "found null"},
        BadFile{"2794", "true", "wheelbase", "found true"},
        BadFile{"2794", "[1, 2]", "wheelbase", "found an array of 2"},
        BadFile{"\"wheelbase\": 2794,", "", "wheelbase", "missing, expected a length above 0"},
        BadFile{"2794", "0", "wheelbase", "expected a length above 0 and at most 100 m, found 0"},
        BadFile{"2794", "-2794", "wheelbase", "found -2794"},
        BadFile{"2794", "100000.1", "wheelbase", "found 100000.1"},
        BadFile{"2794", "1e308", "wheelbase", "found 1e+308"},
        BadFile{"2794", "1e999", "wheelbase", "expected a number a double can hold, found 1e999"},
        BadFile{"2794", "-1e999", "wheelbase", "expected a number a double can hold, found -1e999"},
        BadFile{"2794", "NaN", "wheelbase", "not JSON at line 7, column 16"},
        BadFile{"2794", "Infinity", "wheelbase", "not JSON at line 7, column 16"},
        BadFile{"2794", "1e-400", "wheelbase", "expected a length above 0"},
        BadFile{"1498.6", "0", "rear_track", "expected a length above 0"},
        BadFile{"336.55", "0", "rear_tire_radius", "expected a length above 0"},
        BadFile{"323.85", "-1", "front_tire_radius", "expected a length above 0"},
        BadFile{"546.1", "0", "cg_height", "expected a length above 0"}));

INSTANTIATE_TEST_SUITE_P(
    Parts, OneFault,
    testing::Values(
        BadFile{"471.2", "0", "corner_weights.left_front", "expected a weight above 0"},
        BadFile{"\"right_rear\": 349.0", "\"x\": 1", "corner_weights.right_rear",
                "missing, expected a weight"},
        BadFile{"{\"left_front\"", "7, \"was\": {\"left_front\"", "corner_weights",
                "expected an object, found 7"},
        BadFile{"\"bump\": 101.6", "\"bump\": -1", "travel.bump", "expected a length from 0"},
        BadFile{"\"steps\": 41", "\"steps\": 40.5", "travel.steps",
                "expected a whole number from 2 to 100000, found 40.5"},
        BadFile{"\"steps\": 41", "\"steps\": 1", "travel.steps", "found 1"},
        BadFile{"\"steps\": 41", "\"steps\": 100001", "travel.steps", "found 100001"},
        BadFile{"\"steps\": 41", "\"steps\": 1e300", "travel.steps", "found 1e+300"},
        BadFile{"\"links\": [", "\"links\": 3, \"was\": [", "links",
                "expected an array of 0 to 16 objects, found 3"},
        BadFile{"\"name\": \"lower\",", "", "links[0].name", "missing, expected a text"},
        BadFile{"\"kind\": \"rod\"", "\"kind\": \"bar\"", "links[0].kind",
                R"(expected "rod", "pivot", "slider" or "guide", found "bar")"},
        BadFile{"\"kind\": \"rod\",", "", "links[0].kind", "missing, expected \"rod\""},
        BadFile{"\"both\"", "1", "links[0].side", "found 1"},
        BadFile{"\"role\": \"lower\"", "\"role\": \"middle\"", "links[0].role",
                R"(expected "lower", "upper" or "crosswise", found "middle")"},
        BadFile{"{\"name\": \"front\", \"at\": [514.35, 469.9, 276.225]}", "", "links[0].chassis.holes",
                "expected an array of 1 to 64 objects, found an empty array"},
        BadFile{"{\"name\": \"front\", \"at\": [514.35, 469.9, 276.225]}", "5", "links[0].chassis.holes[0]",
                "expected an object, found 5"},
        BadFile{"\"name\": \"top\", ", "", "links[0].axle.holes[1].name", "missing"},
        BadFile{"247.65", "\"abc\"", "links[0].axle.holes[1].at[2]",
                "expected a position within 100 m of the origin, found \"abc\""},
        BadFile{"[12.7, 533.4, 247.65]", "[12.7, 533.4]", "links[0].axle.holes[1].at",
                "expected an array of three numbers (forward, left, up), found an array of 2"},
        BadFile{"533.4, 247.65", "-100001, 247.65", "links[0].axle.holes[1].at[1]", "within 100 m"},
        BadFile{"\"use\": 1", "\"use\": 2", "links[0].axle.use", "a whole number from 0 to 1, found 2"},
        BadFile{"\"use\": 1", "\"use\": -1", "links[0].axle.use", "found -1"},
        BadFile{"\"use\": 1", "\"use\": 0.5", "links[0].axle.use", "found 0.5"},
        BadFile{"510.0", "-510.0", "links[0].length", "expected a length above 0"},
        BadFile{"510.0", "null", "links[0].length", "found null"},
        BadFile{"1.5875", "0", "links[0].adjuster.pitch", "above 0"},
        BadFile{", \"ends\": 2", "", "links[0].adjuster.ends", "missing, expected 1 or 2"},
        BadFile{"\"ends\": 2", "\"ends\": 3", "links[0].adjuster.ends", "expected 1 or 2, found 3"},
        BadFile{"\"pinion_angle\": 1.5,", "", "driveline.pinion_angle", "missing, expected an angle"},
        BadFile{"[279.4, 0, 342.9]", "[279.4, 0, null]", "driveline.pinion_joint[2]", "found null"},
        BadFile{"[1498.6, 0, 387.35]", "{}", "driveline.output_joint", "found an object"}));

INSTANTIATE_TEST_SUITE_P(
    Syntax, OneFault,
    testing::Values(
        BadFile{"\"cg_height\": 546.1,", "\"cg_height\": 546.1, \"cg_height\": 1,", "cg_height",
                "key given twice"},
        BadFile{"\"use\": 1", "\"use\": 1, \"a b\\n\": 1, \"a b\\n\": 2", "links[0].axle[\"a b\\n\"]",
                "key given twice"},
        BadFile{"387.35]\n  }\n}\n", "387.35]\n  }\n}\nmore", "", "not JSON at line 39, column 1"},
        BadFile{"387.35]\n  }\n}\n", "387.35]\n  }\n", "driveline", "not JSON at line 38, column 1"},
        BadFile{"2794,", "2794", "wheelbase", "not JSON at line 8, column 20: unexpected string"},
        BadFile{"\"Example\"", "\"Ex\xFF\"", "title", "ill-formed UTF-8"},
        BadFile{"\"Example\"", "\"\xC0\xAF\"", "title", "ill-formed UTF-8"},
        BadFile{"\"Example\"", "\"a\nb\"", "title", "control character"},
        BadFile{"\"Example\"", "'Example'", "title", "not JSON"},
        BadFile{"2794", "2794 // mm\n", "wheelbase", "not JSON"},
        BadFile{"2794", "02794", "wheelbase", "not JSON"}));

TEST(CarFile, RefusesWhatIsNoObject) {
    for (const std::string text : {"[]", "7", "\"car\"", "null"}) {
        const ReadResult read = readCar(text);
        EXPECT_FALSE(read.loaded);
        EXPECT_EQ(read.problem.path, "");
        EXPECT_THAT(read.problem.reason, StartsWith("expected an object, found ")) << text;
    }
    EXPECT_THAT(readCar("").problem.line(), StartsWith("not JSON at line 1, column 1"));
}

TEST(CarFile, RefusesTooManyLinksAndHoles) {
    Json file = Json::parse(kExample);
    const Json link = file["links"][0];
    file["links"] = Json(std::vector<Json>(kMaxLinks, link));
    EXPECT_TRUE(readCar(file.dump()).loaded);
    file["links"].push_back(link);
    EXPECT_EQ(readCar(file.dump()).problem.line(),
              "links: expected an array of 0 to 16 objects, found an array of 17");
    file["links"] = Json(std::vector<Json>{link});
    Json& holes = file["links"][0]["axle"]["holes"];
    holes = Json(std::vector<Json>(kMaxHoles, holes[0]));
    EXPECT_TRUE(readCar(file.dump()).loaded);
    holes.push_back(holes[0]);
    EXPECT_EQ(readCar(file.dump()).problem.path, "links[0].axle.holes");
}

TEST(CarFile, RefusesNestingThatWouldCostTheStack) {
    const std::string deepest(kMaxNesting - 1, '[');
    const std::string closed(kMaxNesting - 1, ']');
    EXPECT_TRUE(
        readCar(replaced(kExample, "\"notes\"", "\"x\": " + deepest + closed + ", \"notes\"")).loaded);
    EXPECT_THAT(readCar(replaced(kExample, "\"notes\"", "\"x\": [" + deepest + closed + "], \"notes\""))
                    .problem.line(),
                HasSubstr("nested deeper than 64 levels"));
    EXPECT_THAT(readCar(std::string(kMaxFileBytes, '[')).problem.line(), HasSubstr("nested deeper"));
}

TEST(CarFile, RefusesMoreThanItWillHold) {
    EXPECT_THAT(readCar(std::string(kMaxFileBytes + 1, ' ')).problem.line(),
                HasSubstr("larger than 16000000"));
    const std::string padded = kExample + std::string(kMaxFileBytes - kExample.size(), '\n');
    EXPECT_TRUE(readCar(padded).loaded);
    std::string many = "[0";
    for (std::size_t i = 0; i < kMaxJsonValues; ++i) {
        many += ",0";
    }
    EXPECT_THAT(readCar(many + "]").problem.line(), HasSubstr("more than 2000000 values"));
    std::string parts = "[[]";
    for (std::size_t i = 0; i < kMaxJsonParts; ++i) {
        parts += ",[]";
    }
    EXPECT_THAT(readCar(parts + "]").problem.line(), HasSubstr("more than 1000000 keys, arrays and objects"));
}

TEST(CarFile, AFileThatCannotBeOpenedSaysWhy) {
    EXPECT_THAT(readCarFile("no/such/file").problem.line(), HasSubstr("cannot be opened: No such file"));
    EXPECT_THAT(readCarFile(".").problem.line(), HasSubstr("cannot be read: Is a directory"));
    EXPECT_THAT(readCarFile("/dev/zero").problem.line(), HasSubstr("larger than"));
}

TEST(CarFile, SavingUnchangedKeepsEveryByteOfATidyFile) {
    EXPECT_EQ(savedAgain(kExample), kExample);
}

TEST(CarFile, ASecondSaveIsIdentical) {
    const std::string untidy = Json::parse(kExample).dump();
    const std::string once = savedAgain(untidy);
    EXPECT_EQ(savedAgain(once), once);
    EXPECT_EQ(Json::parse(once), Json::parse(kExample));
}

TEST(CarFile, UnknownKeysStayEverywhere) {
    std::string text = replaced(kExample, "\"title\"", "\"aaa\": [1, {\"b\": null}], \"title\"");
    text = replaced(text, "\"left_front\"", "\"scale\": \"pads\", \"left_front\"");
    text = replaced(text, "\"bump\"", "\"stops\": 2, \"bump\"");
    text = replaced(text, "\"kind\"", "\"color\": \"red\", \"kind\"");
    text = replaced(text, "\"use\": 0", "\"use\": 0, \"plate\": 6.35");
    text = replaced(text, "{\"name\": \"top\"", "{\"bolt\": \"5/8\", \"name\": \"top\"");
    text = replaced(text, "\"ends\": 2", "\"ends\": 2, \"jam_nut\": true");
    text = replaced(text, "\"pinion_angle\"", "\"shaft\": {\"diameter\": 76.2}, \"pinion_angle\"");
    ReadResult read = readCar(text);
    ASSERT_TRUE(read.loaded) << read.problem.line();
    read.loaded->car.wheelbase = 3.0;
    Json expected = Json::parse(text);
    expected["wheelbase"] = 3000;
    // ordered_json compares keys in their order.
    EXPECT_EQ(Json::parse(writeCar(read.loaded->car, read.loaded->source)), expected);
}

TEST(CarFile, UnknownKeysFollowTheirHoleAndLink) {
    Json file = Json::parse(kExample);
    file["links"].push_back(file["links"][0]);
    file["links"][1]["mark"] = "second";
    file["links"][1]["axle"]["holes"][1]["mark"] = "top";
    ReadResult read = readCar(file.dump());
    ASSERT_TRUE(read.loaded);
    Car& car = read.loaded->car;
    car.links.erase(car.links.begin());
    std::vector<Hole>& holes = car.links[0].axle.holes;
    holes.erase(holes.begin());
    holes.push_back({-1, "new", {0.1, 0.2, 0.3}});
    const Json written = Json::parse(writeCar(car, read.loaded->source));
    ASSERT_EQ(written["links"].size(), 1U);
    EXPECT_EQ(written["links"][0]["mark"], "second");
    EXPECT_EQ(written["links"][0]["axle"]["holes"],
              Json::parse(R"([{"name": "top", "at": [12.7, 533.4, 247.65], "mark": "top"},
                              {"name": "new", "at": [100, 200, 300]}])"));
}

TEST(CarFile, OnlyWhatChangedIsRewritten) {
    ReadResult read = readCar(replaced(kExample, "2794,", "2794.0,"));
    ASSERT_TRUE(read.loaded);
    read.loaded->car.links[0].axle.holes[1].at.z() = fromMillimetres(238.125);
    read.loaded->car.links[0].axle.use = 0;
    std::string expected = replaced(kExample, "2794,", "2794.0,");
    expected = replaced(expected, "247.65", "238.125");
    expected = replaced(expected, "\"use\": 1", "\"use\": 0");
    EXPECT_EQ(writeCar(read.loaded->car, read.loaded->source), expected);
}

TEST(CarFile, DefaultsThatWereAbsentStayAbsent) {
    Json file = Json::parse(kExample);
    for (const char* key : {"title", "notes", "units", "rear_track", "travel", "driveline"}) {
        file.erase(key);
    }
    for (const char* key : {"side", "role", "length", "adjuster"}) {
        file["links"][0].erase(key);
    }
    file["links"][0]["chassis"].erase("use");
    ReadResult read = readCar(file.dump());
    ASSERT_TRUE(read.loaded) << read.problem.line();
    EXPECT_EQ(Json::parse(writeCar(read.loaded->car, read.loaded->source)), file);

    read.loaded->car.travel.bump = 0.05;
    read.loaded->car.notes = "new";
    const Json written = Json::parse(writeCar(read.loaded->car, read.loaded->source));
    EXPECT_EQ(written["travel"], Json::parse(R"({"bump": 50})"));
    EXPECT_EQ(std::next(written.begin(), 2).key(), "notes");  // where the contract has it: after the version
}

TEST(CarFile, RemovedOptionalPartsGoAway) {
    ReadResult read = readCar(kExample);
    ASSERT_TRUE(read.loaded);
    Car& car = read.loaded->car;
    car.driveline.reset();
    car.rearTrack.reset();
    car.links[0].length.reset();
    car.links[0].adjuster.reset();
    car.links[0].role.reset();
    const Json written = Json::parse(writeCar(car, read.loaded->source));
    EXPECT_FALSE(written.contains("driveline"));
    EXPECT_FALSE(written.contains("rear_track"));
    for (const char* key : {"length", "adjuster", "role"}) {
        EXPECT_FALSE(written["links"][0].contains(key)) << key;
    }
}

TEST(CarFile, ANewCarGetsEveryKeyInTheContractsOrder) {
    const Car car = carOf(kExample);
    EXPECT_EQ(writeCar(car, Json()), replaced(replaced(kExample, "349.0", "349"), "510.0", "510"));
    EXPECT_EQ(writeCar(car, Json::object()), writeCar(car, Json()));
}

// Sixteenths of an inch, tenths of a millimetre, hundredths of a degree.
TEST(CarFile, NumbersAreShortAndReadBackTheSame) {
    Car car = carOf(kExample);
    for (int i = 1; i < 4000; ++i) {
        const double sixteenths = i * 15875 / 10000.0;  // one rounding, as the decimal itself has
        car.wheelbase = fromMillimetres(sixteenths);
        car.links[0].length = fromMillimetres(i / 10.0);
        car.driveline->pinionAngle = (i - 2000) / 100.0 * kRadiansPerDegree;
        const std::string text = writeCar(car, Json());
        ASSERT_EQ(carOf(text), car) << i;
        const Json written = Json::parse(text);
        ASSERT_EQ(written["wheelbase"], sixteenths);
        ASSERT_LE(written["wheelbase"].dump().size(), 9U);
        ASSERT_EQ(written["links"][0]["length"], i / 10.0);
        ASSERT_EQ(written["driveline"]["pinion_angle"], (i - 2000) / 100.0);
        ASSERT_LE(written["driveline"]["pinion_angle"].dump().size(), 6U);
    }
}

TEST(CarFile, PathsAreThoseOfTheEdits) {
    const FieldId id{.field = Field::holeAt, .link = 0, .end = End::axle, .hole = 1, .axis = 2};
    EXPECT_EQ(readCar(replaced(kExample, "247.65", "{}")).problem.path, jsonPath(id));
}

// What a save may do to any number a person could type: it reads back within one unit in the last place, and
// the file is the same from then on.
TEST(CarFile, AwkwardNumbersSettleAtTheFirstSave) {
    Car car = carOf(kExample);
    for (const double value : {std::nextafter(0.1, 1.0), 1.0 / 3.0, 2.0 / 3.0, 99.999999999999986, 1e-9}) {
        car.cgHeight = value;
        const std::string once = writeCar(car, Json());
        EXPECT_NEAR(carOf(once).cgHeight, value, std::numeric_limits<double>::epsilon() * value);
        EXPECT_EQ(savedAgain(once), once);
    }
}

}  // namespace
}  // namespace bolthole
