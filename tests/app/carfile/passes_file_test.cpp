// Passes in the car file: what is read, what a save keeps, what is refused and where, and a whole season of
// them.
#include <gmock/gmock.h>

#include <chrono>

#include "app/carfile/car_file.h"
#include "geometry/car/pass_fields.h"
#include "geometry/edits/edit.h"
#include "tests/support/watched.h"

namespace bolthole {
namespace {

using Json = nlohmann::ordered_json;
using testing::ElementsAre;
using testing::StartsWith;

Json carWithoutMark() {
    return Json::parse(
        R"({"title": "Example", "units": "metric", "wheelbase": 2794, "rear_tire_radius": 336.55,
        "front_tire_radius": 323.85,
        "corner_weights": {"left_front": 471.2, "right_front": 448.9, "left_rear": 357.4, "right_rear": 349},
        "cg_height": 546.1,
        "links": [{"name": "lower", "kind": "rod",
          "chassis": {"holes": [{"name": "front", "at": [514.35, 469.9, 276.225]}]},
          "axle": {"holes": [{"name": "bottom", "at": [12.7, 533.4, 184.15]}]}}]})");
}

Json wholePass() {
    return Json::parse(
        R"({"number": 7, "date": "2026-11-20", "time": "14:05", "place": "airstrip", "setup": 0,
        "struck": false, "weather": "low sun",
        "surface": {"kind": "street", "name": "north lane", "temperature": 11, "wet": false},
        "air": {"temperature": 7, "pressure": 1002, "humidity": 71},
        "pressures": {"left_front": 220, "right_front": 220.5, "left_rear": 124, "right_rear": 124},
        "launch_rpm": 2600, "sixty_foot": 2.213,
        "times": {"330ft": 5.71, "eighth": 8.62, "eighth_speed": 131.5, "quarter": 13.21, "quarter_speed": 166.8},
        "seen": ["spun_at_hit", "nose_topped_out"], "note": ""})");
}

Json passExample() {
    Json file = {{"format", "bolthole-car"}, {"version", 1}};
    file.update(carWithoutMark());
    file["kept"] =
        Json::array({{{"name", "first setup"}, {"date", "2026-11-20"}, {"car", carWithoutMark()}}});
    file["passes"] = Json::array({wholePass(), {{"number", 8}, {"date", "2026-11-20"}}});
    return file;
}

LoadedCar loadedPasses(const Json& json) {
    ReadResult read = readCar(json.dump());
    EXPECT_TRUE(read.loaded) << read.problem.line();
    return read.loaded ? std::move(*read.loaded) : LoadedCar{};
}

Json savedPasses(const Car& car, const Json& source) {
    return Json::parse(writeCar(car, source));
}

void expectPassRefused(const Json& json, const std::string& line) {
    const ReadResult read = readCar(json.dump());
    EXPECT_FALSE(read.loaded);
    EXPECT_THAT(read.problem.line(), StartsWith(line));
}

TEST(PassesInFile, AreReadAsTheyStand) {
    const Car car = loadedPasses(passExample()).car;
    ASSERT_EQ(car.passes.size(), 2U);
    const Pass& pass = car.passes[0];
    EXPECT_EQ(pass.number, 7);
    EXPECT_EQ(pass.date, "2026-11-20");
    EXPECT_EQ(pass.time, "14:05");
    EXPECT_EQ(pass.place, "airstrip");
    EXPECT_EQ(pass.setup, 0);
    EXPECT_FALSE(pass.struck);
    EXPECT_EQ(pass.surface, (PassSurface{SurfaceKind::street, "north lane", 11}));
    EXPECT_EQ(pass.air, (PassAir{7, 1002, 71}));
    EXPECT_EQ(pass.pressures, (EnteredCorners{220, 220.5, 124, 124}));
    EXPECT_EQ(pass.launchRpm, 2600);
    EXPECT_EQ(pass.sixtyFoot, 2.213);
    EXPECT_EQ(pass.times, (PassTimes{5.71, 8.62, 131.5, 13.21, 166.8}));
    EXPECT_TRUE(pass.saw(Seen::noseToppedOut));
    EXPECT_TRUE(pass.saw(Seen::spunAtHit));
    EXPECT_FALSE(pass.saw(Seen::bounced));
    Pass bare;
    bare.id = 1;
    bare.number = 8;
    bare.date = "2026-11-20";
    EXPECT_TRUE(car.passes[1] == bare) << "everything else is not known";
}

TEST(PassesInFile, ASaveChangesNothing) {
    const LoadedCar car = loadedPasses(passExample());
    EXPECT_EQ(savedPasses(car.car, car.source), car.source)
        << "unknown keys and the order of what was seen too";
    EXPECT_EQ(writeCar(car.car, car.source), writeCar(car.car, car.source));
}

TEST(PassesInFile, AbsentIsNoneAndStaysAbsent) {
    Json json = passExample();
    json.erase("passes");
    const LoadedCar car = loadedPasses(json);
    EXPECT_TRUE(car.car.passes.empty());
    EXPECT_EQ(savedPasses(car.car, car.source), json);
    EXPECT_FALSE(savedPasses(car.car, Json()).contains("passes"));
}

TEST(PassesInFile, WhatIsEnteredReadsBackTheSame) {
    LoadedCar car = loadedPasses(passExample());
    Pass pass = car.car.passes[0];
    pass.number = 9;
    pass.struck = true;
    pass.surface.kind = SurfaceKind::preppedTrack;
    pass.air.humidity.reset();
    pass.sixtyFoot = 2.0999999999999996;
    pass.seen[static_cast<std::size_t>(Seen::movedRight)] = true;
    pass.note = "two\nlines";
    const Car entered = apply(car.car, AddPass{pass}).car;
    const Json saved = savedPasses(entered, car.source);
    EXPECT_EQ(saved["passes"][0], passExample()["passes"][0]);
    EXPECT_FALSE(saved["passes"][2]["air"].contains("humidity"));
    EXPECT_EQ(saved["passes"][2]["seen"],
              Json::parse(R"(["nose_topped_out", "spun_at_hit", "moved_right"])"));
    Car again = loadedPasses(saved).car;
    again.passes[2].id = entered.passes[2].id;
    EXPECT_EQ(again.passes, entered.passes);
    Car anew = loadedPasses(savedPasses(entered, Json())).car;
    for (std::size_t at = 0; at < anew.passes.size(); ++at) {
        anew.passes[at].id = entered.passes[at].id;
    }
    EXPECT_EQ(anew.passes, entered.passes);
}

TEST(PassesInFile, UnknownKeysStayWithTheirPass) {
    Json json = passExample();
    json["passes"][1]["mood"] = "good";
    const LoadedCar car = loadedPasses(json);
    const Json saved = savedPasses(apply(car.car, RemovePass{0}).car, car.source);
    ASSERT_EQ(saved["passes"].size(), 1U);
    EXPECT_EQ(saved["passes"][0]["mood"], "good");
    const Json none = savedPasses(apply(apply(car.car, RemovePass{0}).car, RemovePass{0}).car, car.source);
    EXPECT_FALSE(none.contains("passes"));
}

struct BadPass {
    const char* pointer;  // JSON pointer in the pass
    Json value;
    std::string line;
};

TEST(PassesInFile, WhatIsWrongIsNamedWhereItStands) {
    const std::vector<BadPass> bad{
        {"/number", 0, "passes[0].number: expected a whole number from 1 to 1000000, found 0"},
        {"/number", 1.5, "passes[0].number: expected a whole number"},
        {"/number", "7", "passes[0].number: expected a whole number from 1 to 1000000, found \"7\""},
        {"/date", "today", "passes[0].date: expected a date as 2026-11-20, found \"today\""},
        {"/date", nullptr, "passes[0].date: expected a date as 2026-11-20, found null"},
        {"/time", "9 am", "passes[0].time: expected a time as 14:05 or 14:05:30, found \"9 am\""},
        {"/place", 3, "passes[0].place: expected a text, found 3"},
        {"/setup", 1,
         "passes[0].setup: expected the index of a kept setup, a whole number from 0 to 0, found 1"},
        {"/setup", -1, "passes[0].setup: expected an index"},
        {"/struck", 0, "passes[0].struck: expected true or false, found 0"},
        {"/surface", 4, "passes[0].surface: expected an object, found 4"},
        {"/surface/kind", "ice",
         "passes[0].surface.kind: expected \"prepped_track\", \"unprepped_track\" or"},
        {"/surface/temperature", 200,
         "passes[0].surface.temperature: expected a temperature from -40 to 120 \u00B0C, found 200"},
        {"/air/pressure", 29.9,
         "passes[0].air.pressure: expected a pressure from 300 to 1100 hPa, found 29.9"},
        {"/air/humidity", 101, "passes[0].air.humidity: expected a number from 0 to 100 %, found 101"},
        {"/pressures/left_rear", "18 psi",
         "passes[0].pressures.left_rear: expected a pressure from 0 to 1000 kPa"},
        {"/launch_rpm", 0, "passes[0].launch_rpm: expected a number above 0 and up to 30000 rpm, found 0"},
        {"/sixty_foot", -2, "passes[0].sixty_foot: expected a time above 0 and up to 1000 s, found -2"},
        {"/times/eighth_speed", 1e9, "passes[0].times.eighth_speed: expected a speed above 0"},
        {"/seen", "bounced", "passes[0].seen: expected an array of \"nose_topped_out\", "},
        {"/seen", Json::array({"flew"}), "passes[0].seen: expected an array of"},
    };
    for (const BadPass& each : bad) {
        Json json = passExample();
        json["passes"][0][Json::json_pointer(each.pointer)] = each.value;
        expectPassRefused(json, each.line);
    }
    for (const char* needed : {"number", "date"}) {
        Json json = passExample();
        json["passes"][1].erase(needed);
        expectPassRefused(json, std::string("passes[1].") + needed + ": missing, expected ");
    }
    Json json = passExample();
    json["passes"] = "none";
    expectPassRefused(json, "passes: expected an array of 0 to 10000 objects");
}

TEST(PassesInFile, AtMostTenThousand) {
    Json json = passExample();
    json["passes"] = Json(kMaxPasses, Json{{"number", 1}, {"date", "2026-11-20"}});
    EXPECT_EQ(loadedPasses(json).car.passes.size(), kMaxPasses);
    json["passes"].push_back(wholePass());
    expectPassRefused(json, "passes: ");
}

/// A season: so many passes, a setup kept for every `each` of them.
Json season(std::size_t passes, std::size_t each, const Json& setup) {
    Json json = passExample();
    json["kept"] = Json::array();
    json["passes"] = Json::array();
    for (std::size_t at = 0; at < passes; ++at) {
        if (at % each == 0) {
            json["kept"].push_back({{"name", "setup " + std::to_string(at)}, {"car", setup}});
        }
        Json pass = wholePass();
        pass["number"] = at + 1;
        pass["setup"] = json["kept"].size() - 1;
        json["passes"].push_back(std::move(pass));
    }
    return json;
}

double secondsOf(const auto& work) {
    const auto start = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

/// The quickest of some, which other work on the machine slows least.
double quickestOf(const auto& work) {
    double best = secondsOf(work);
    for (int run = 0; run < 4; ++run) {
        best = std::min(best, secondsOf(work));
    }
    return best;
}

// No absolute time: what the JSON library itself takes for the same bytes is the measure. The reader keeps
// each object's keys to find doubles, builds the document and the car from it.
TEST(PassesInFile, TwoThousandOpenInAFewTimesWhatParsingTakes) {
    const std::string bytes = season(2000, 50, carWithoutMark()).dump();
    const double parsing = quickestOf([&] { EXPECT_FALSE(Json::parse(bytes).empty()); });
    const double opening = quickestOf([&] { EXPECT_TRUE(readCar(bytes).loaded); });
    RecordProperty("opening_in_parsings", std::to_string(opening / parsing));
    EXPECT_LT(opening, 10 * parsing);
}

// The largest demo car kept anew for each of 2,000 passes: seasons in one file of less than its 16 MB.
TEST(PassesInFile, TwoThousandPassesEachOnACarOfItsOwnLoad) {
    const FileBytes wagon = readCarBytes(BOLTHOLE_DEMO_DIR "/long-roof-wagon.bolt.json");
    ASSERT_EQ(wagon.problem, "");
    Json setup = Json::parse(wagon.bytes);
    setup.erase("format");
    setup.erase("version");
    const std::size_t passes = isWatched() ? 200 : 2000;
    const Json json = season(passes, 1, setup);
    const ReadResult read = readCar(json.dump());
    ASSERT_TRUE(read.loaded) << read.problem.line();
    EXPECT_EQ(read.loaded->car.kept.size(), passes);
    EXPECT_EQ(read.loaded->car.passes.size(), passes);
    const std::string written = writeCar(read.loaded->car, read.loaded->source);
    RecordProperty("bytes_written", std::to_string(written.size()));
    EXPECT_LT(written.size(), kMaxFileBytes) << "what was read can be saved and opened again";
    const ReadResult again = readCar(written);
    ASSERT_TRUE(again.loaded) << again.problem.line();
    EXPECT_EQ(writeCar(again.loaded->car, again.loaded->source), written);
}

}  // namespace
}  // namespace bolthole
