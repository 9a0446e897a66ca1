// The car file's optional limits and wishes: adjusters' ranges, angle limits, the target window.
#include <gmock/gmock.h>

#include <string>
#include <vector>

#include "app/carfile/car_file.h"
#include "geometry/edits/edit.h"
#include "tests/support/replaced.h"

namespace bolthole {
namespace {

using Json = nlohmann::ordered_json;
using testing::HasSubstr;

// A tidy file with every one of these keys.
const std::string kLimited = R"({
  "format": "bolthole-car",
  "version": 1,
  "units": "inch",
  "wheelbase": 2794,
  "rear_tire_radius": 336.55,
  "front_tire_radius": 323.85,
  "corner_weights": {"left_front": 471.2, "right_front": 448.9, "left_rear": 357.4, "right_rear": 349},
  "cg_height": 546.1,
  "links": [
    {
      "name": "lower",
      "kind": "rod",
      "side": "both",
      "chassis": {"holes": [{"name": "front", "at": [514.35, 469.9, 276.225]}], "use": 0},
      "axle": {"holes": [{"name": "bottom", "at": [12.7, 533.4, 184.15]}], "use": 0},
      "adjuster": {
        "pitch": 1.5875,
        "ends": 2,
        "shortest": 495.3,
        "longest": 533.4,
        "engagement": 31.75,
        "engagement_at": 508,
        "least_engagement": 19.05
      },
      "rod_end_limit": 14
    }
  ],
  "driveline": {
    "pinion_angle": 1.5,
    "pinion_joint": [279.4, 0, 342.9],
    "output_angle": 3.25,
    "output_joint": [1498.6, 0, 387.35],
    "joint_limit": 7.5
  },
  "wanted": {"ic_near": 1143, "ic_far": -5080, "anti_squat_low": 95, "anti_squat_high": 130}
}
)";

const std::vector<std::string> kAdjusterKeys{"shortest", "longest", "engagement", "engagement_at",
                                             "least_engagement"};

LoadedCar loaded(const std::string& text) {
    ReadResult read = readCar(text);
    EXPECT_TRUE(read.loaded) << read.problem.line();
    return read.loaded ? std::move(*read.loaded) : LoadedCar{};
}

TEST(CarFileLimits, AreReadInSiUnits) {
    const Car car = loaded(kLimited).car;
    const Adjuster& adjuster = car.links.at(0).adjuster.value();
    EXPECT_EQ(adjuster.shortest, 0.4953);
    EXPECT_EQ(adjuster.longest, 0.5334);
    EXPECT_EQ(adjuster.engagement, 0.03175);
    EXPECT_EQ(adjuster.engagementAt, 0.508);
    EXPECT_EQ(adjuster.leastEngagement, 0.01905);
    EXPECT_EQ(car.links[0].rodEndLimit, 14 * kRadiansPerDegree);
    EXPECT_EQ(car.driveline->jointLimit, 7.5 * kRadiansPerDegree);
    const TargetWindow& target = car.target.value();
    EXPECT_EQ(target.icNear, 1.143);
    EXPECT_EQ(target.icFar, -5.08);
    EXPECT_EQ(target.antiSquatLow, 95);
    EXPECT_EQ(target.antiSquatHigh, 130);
}

TEST(CarFileLimits, AreAbsentWhereNotGiven) {
    Json file = Json::parse(kLimited);
    for (const std::string& key : kAdjusterKeys) {
        file["links"][0]["adjuster"].erase(key);
    }
    file["links"][0].erase("rod_end_limit");
    file["driveline"].erase("joint_limit");
    file.erase("wanted");
    const LoadedCar read = loaded(file.dump());
    EXPECT_EQ(read.car.links[0].adjuster, Adjuster{.pitch = 0.0015875});
    EXPECT_EQ(read.car.links[0].rodEndLimit, std::nullopt);
    EXPECT_EQ(read.car.driveline->jointLimit, std::nullopt);
    EXPECT_EQ(read.car.target, std::nullopt);
    EXPECT_EQ(Json::parse(writeCar(read.car, read.source)), file) << "and stay so";
}

TEST(CarFileLimits, AWindowMayBeOpenTowardInfinity) {
    const Car car = loaded(replaced(kLimited, ", \"ic_far\": -5080", "")).car;
    EXPECT_EQ(car.target->icFar, std::nullopt);
    EXPECT_EQ(car.target->icNear, 1.143);
}

TEST(CarFileLimits, EveryByteOfATidyFileIsKept) {
    const LoadedCar read = loaded(kLimited);
    EXPECT_EQ(writeCar(read.car, read.source), kLimited);
    const std::string anew = writeCar(read.car, Json());
    EXPECT_EQ(loaded(anew).car, read.car);
}

TEST(CarFileLimits, UnknownKeysStayBesideThem) {
    std::string text = replaced(kLimited, "\"shortest\"", "\"jam_nut\": true, \"shortest\"");
    text = replaced(text, "\"joint_limit\"", "\"grease\": \"NLGI 2\", \"joint_limit\"");
    text = replaced(text, "\"ic_near\"", "\"why\": {\"tires\": 1}, \"ic_near\"");
    LoadedCar read = loaded(text);
    read.car.links[0].adjuster->longest = 0.54;
    read.car.target->antiSquatLow = 100;
    Json expected = Json::parse(text);
    expected["links"][0]["adjuster"]["longest"] = 540;
    expected["wanted"]["anti_squat_low"] = 100;
    EXPECT_EQ(Json::parse(writeCar(read.car, read.source)), expected);
}

TEST(CarFileLimits, RemovedOnesGoAway) {
    LoadedCar read = loaded(kLimited);
    read.car.links[0].adjuster = Adjuster{.pitch = 0.0015875};
    read.car.links[0].rodEndLimit.reset();
    read.car.driveline->jointLimit.reset();
    read.car.target.reset();
    const Json written = Json::parse(writeCar(read.car, read.source));
    for (const std::string& key : kAdjusterKeys) {
        EXPECT_FALSE(written["links"][0]["adjuster"].contains(key)) << key;
    }
    EXPECT_FALSE(written["links"][0].contains("rod_end_limit"));
    EXPECT_FALSE(written["driveline"].contains("joint_limit"));
    EXPECT_FALSE(written.contains("wanted"));
}

TEST(CarFileLimits, BadValuesAreRefusedAtTheirPlace) {
    struct Row {
        std::string from;
        std::string to;
        std::string line;
    };
    const std::string length = "expected a length above 0 and at most 100 m, found ";
    const std::string thread = "expected a length of thread from 0 to 1 m, found ";
    const std::string angle = "expected an angle above 0 and below 90 degrees, found ";
    const std::string adjuster = "links[0].adjuster.";
    const std::string lower = " (link 'lower')";
    for (const Row& row : {
             Row{"495.3", "0", adjuster + "shortest: " + length + "0" + lower},
             Row{"495.3", "null", adjuster + "shortest: " + length + "null" + lower},
             Row{"533.4,\n", "-1,\n", adjuster + "longest: " + length + "-1" + lower},
             Row{"31.75", "1001", adjuster + "engagement: " + thread + "1001" + lower},
             Row{": 508", ": \"20 in\"", adjuster + "engagement_at: " + length + "\"20 in\"" + lower},
             Row{"19.05", "-0.1", adjuster + "least_engagement: " + thread + "-0.1" + lower},
             Row{": 14\n", ": 90\n", "links[0].rod_end_limit: " + angle + "90" + lower},
             Row{": 14\n", ": 0\n", "links[0].rod_end_limit: " + angle + "0" + lower},
             Row{"7.5", "[]", "driveline.joint_limit: " + angle + "an empty array"},
             Row{"1143", "100001", "wanted.ic_near: expected a distance within 100 m, found 100001"},
             Row{"-5080", "false", "wanted.ic_far: expected a distance within 100 m, found false"},
             Row{"\"anti_squat_low\": 95, ", "",
                 "wanted.anti_squat_low: missing, expected a percentage from -10000 to 10000"},
             Row{": 130", ": 1e5",
                 "wanted.anti_squat_high: expected a percentage from -10000 to 10000, found 100000.0"},
             Row{"{\"ic_near\": 1143, \"ic_far\": -5080, \"anti_squat_low\": 95, \"anti_squat_high\": 130}",
                 "7", "wanted: expected an object, found 7"},
         }) {
        const ReadResult read = readCar(replaced(kLimited, row.from, row.to));
        EXPECT_FALSE(read.loaded);
        EXPECT_EQ(read.problem.line(), row.line);
    }
}

}  // namespace
}  // namespace bolthole
