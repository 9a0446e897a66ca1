// The log as a table: its columns, and that what was written is read back; and tables of others, good and
// bad.
#include "app/commands/log_table.h"

#include <gmock/gmock.h>

#include <array>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <map>
#include <memory>

#include "app/carfile/car_file.h"
#include "app/commands/log_command.h"
#include "geometry/car/faults.h"
#include "geometry/edits/edit.h"
#include "geometry/units/csv.h"
#include "tests/support/csv.h"
#include "tests/support/plain_car.h"

namespace bolthole {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;
using testing::StartsWith;

// The contract's columns.
const std::string kMetricHeaders =
    "number,date,time,place,setup,surface,surface_c,air_c,air_hpa,humidity_pct,density_altitude_m,left_front_"
    "kpa,"
    "right_front_kpa,left_rear_kpa,right_rear_kpa,launch_rpm,sixty_foot_s,330ft_s,eighth_s,eighth_km_h,"
    "quarter_s,"
    "quarter_km_h,seen,struck,changes,note\r\n";
const std::string kInchHeaders =
    "number,date,time,place,setup,surface,surface_f,air_f,air_hpa,humidity_pct,density_altitude_ft,left_"
    "front_psi,"
    "right_front_psi,left_rear_psi,right_rear_psi,launch_rpm,sixty_foot_s,330ft_s,eighth_s,eighth_mph,"
    "quarter_s,"
    "quarter_mph,seen,struck,changes,note\r\n";

Pass wholePass(int number) {
    Pass pass;
    pass.number = number;
    pass.date = "2026-11-20";
    pass.time = "14:05";
    pass.place = "airstrip";
    pass.setup = 0;
    pass.surface = {SurfaceKind::street, "north lane", 11};
    pass.air = {7, 1002, 71};
    pass.pressures = {220, 220, 124, 124};
    pass.launchRpm = 2600;
    pass.sixtyFoot = 2.213;
    pass.times = {5.71, 8.62, 131.5, 13.21, 166.8};
    pass.seen[static_cast<std::size_t>(Seen::noseToppedOut)] = true;
    pass.seen[static_cast<std::size_t>(Seen::spunAtHit)] = true;
    return pass;
}

Car keptCar() {
    Car car = plainCar();
    for (const char* name : {"base", "rear rebound +2", "twice", "twice", "#odd"}) {
        car.kept.push_back({-1, name, "2026-11-01", "", std::make_shared<const Car>(plainCar())});
    }
    return car;
}

Car season() {
    Car car = keptCar();
    car.passes.push_back(wholePass(1));
    Pass bare;
    bare.number = 2;
    bare.date = "2026-11-20";
    car.passes.push_back(bare);
    Pass odd = wholePass(3);
    odd.setup = 3;
    odd.struck = true;
    odd.place = "the \"old\" strip, west";
    odd.note = "two\r\nlines, \"quoted\"";
    odd.surface = {std::nullopt, "street: but a name", std::nullopt};
    odd.pressures.leftRear = 110.3161;
    car.passes.push_back(odd);
    odd = wholePass(4);
    odd.setup = 4;
    odd.surface = {SurfaceKind::unpreppedTrack, "", -3.5};
    odd.air.humidity.reset();
    car.passes.push_back(odd);
    odd.surface = {std::nullopt, "north lane", std::nullopt};
    car.passes.push_back(odd);  // the same number and day twice
    return car;
}

std::map<std::string, std::string> rowOf(const std::string& table, std::size_t row) {
    const auto cells = cellsOfCsv(table);
    std::map<std::string, std::string> named;
    for (std::size_t at = 0; at < cells[0].size(); ++at) {
        named[cells[0][at]] = cells.at(row).at(at);
    }
    return named;
}

TEST(LogTable, HasTheColumnsOfTheContract) {
    Car car = plainCar();
    EXPECT_EQ(logTable(car, Units::metric), kMetricHeaders);
    EXPECT_EQ(logTable(car, Units::inch), kInchHeaders);
}

TEST(LogTable, WritesAPassInMetric) {
    Car car = keptCar();
    car.passes = {wholePass(7)};
    EXPECT_THAT(
        logTable(car, Units::metric),
        testing::MatchesRegex("[^\n]*\n7,2026-11-20,14:05,airstrip,base,street: north lane,11,7,1002,71,"
                              "-?[0-9.]+,220,220,124,124,2600,2.213,5.71,8.62,131.5,13.21,166.8,"
                              "nose_topped_out spun_at_hit,no,,\r\n"));
}

// 220 kPa / 6.894757293168361 = 31.9083..., 131.5 km/h / 1.609344 = 81.7103..., 7 deg C = 44.6 deg F (exact
// factors).
TEST(LogTable, WritesAPassInInch) {
    Car car = keptCar();
    car.passes = {wholePass(7)};
    auto row = rowOf(logTable(car, Units::inch), 1);
    EXPECT_EQ(row["air_f"], "44.6");
    EXPECT_EQ(row["surface_f"], "51.8");
    EXPECT_EQ(row["air_hpa"], "1002");
    EXPECT_NEAR(std::stod(row["left_front_psi"]), 220 / 6.894757293168361, 1e-9);
    EXPECT_NEAR(std::stod(row["eighth_mph"]), 131.5 / 1.609344, 1e-9);
    auto metric = rowOf(logTable(car, Units::metric), 1);
    EXPECT_NEAR(std::stod(row["density_altitude_ft"]) * 0.3048, std::stod(metric["density_altitude_m"]),
                1e-6);
}

TEST(LogTable, WhatIsNotKnownIsAnEmptyField) {
    auto row = rowOf(logTable(season(), Units::metric), 2);
    for (const auto& [name, cell] : row) {
        const bool isSaid = name == "number" || name == "date" || name == "struck";
        EXPECT_EQ(cell.empty(), !isSaid) << name << ": " << cell;
    }
    EXPECT_EQ(rowOf(logTable(season(), Units::metric), 4)["density_altitude_m"], "")
        << "humidity is not guessed";
}

TEST(LogTable, SetupsAreNamedWhereTheNameTells) {
    const std::string table = logTable(season(), Units::metric);
    EXPECT_EQ(rowOf(table, 1)["setup"], "base");
    EXPECT_EQ(rowOf(table, 3)["setup"], "#4") << "two have that name";
    EXPECT_EQ(rowOf(table, 4)["setup"], "#5") << "the name looks like a number";
}

TEST(LogTable, ChangesStandInTheirColumn) {
    Car car = keptCar();
    car.passes = {wholePass(1), wholePass(2)};
    car.passes[1].launchRpm = 2400;
    EXPECT_EQ(rowOf(logTable(car, Units::metric), 2)["changes"], "launch -200 rpm");
}

// Into the car without its passes, and into the car with them: both give the same car again.
TEST(LogImport, ReadsBackWhatWasWritten) {
    for (const Units units : {Units::metric, Units::inch}) {
        const Car car = season();
        const std::string table = logTable(car, units);
        Car empty = car;
        empty.passes.clear();
        for (const Car& into : {empty, car}) {
            const ImportedLog imported = importLog(into, table);
            EXPECT_THAT(imported.problems, IsEmpty());
            EXPECT_THAT(imported.unknown, IsEmpty());
            EXPECT_TRUE(imported.car == car) << table;
        }
    }
}

TEST(LogImport, WhatWasTypedInPsiStaysInMetricToo) {
    Car car = keptCar();
    const ImportedLog first = importLog(car, "number,date,left_rear_psi,air_f\n1,2026-11-20,18,50\n");
    ASSERT_THAT(first.problems, IsEmpty());
    EXPECT_NEAR(*first.car.passes[0].pressures.leftRear, 18 * 6.894757293168361, 1e-9);
    EXPECT_NEAR(*first.car.passes[0].air.temperature, 10, 1e-12);
    const ImportedLog second = importLog(car, logTable(first.car, Units::metric));
    EXPECT_TRUE(second.car == first.car);
    EXPECT_EQ(rowOf(logTable(second.car, Units::inch), 1)["left_rear_psi"], "18");
}

TEST(LogImport, ColumnsInAnyOrderWithUnknownOnesTold) {
    const ImportedLog imported =
        importLog(keptCar(), "\xEF\xBB\xBFsixty_foot_s, Date ,mood,number,wind\n2.2,2026-11-20,good,1,3\n");
    EXPECT_THAT(imported.problems, IsEmpty());
    EXPECT_THAT(imported.unknown, ElementsAre("mood", "wind"));
    ASSERT_THAT(imported.car.passes, SizeIs(1));
    EXPECT_EQ(imported.car.passes[0].sixtyFoot, 2.2);
    EXPECT_FALSE(imported.car.passes[0].setup);
}

TEST(LogImport, ChangesWhatItHasColumnsForAndAddsTheRest) {
    Car car = keptCar();
    car.passes = {wholePass(1), wholePass(2)};
    const ImportedLog imported = importLog(
        car, "number,date,sixty_foot_s,launch_rpm\r\n3,2026-11-19,2.3,2000\r\n2,2026-11-20,2.1,\r\n");
    ASSERT_THAT(imported.problems, IsEmpty());
    ASSERT_THAT(imported.car.passes, SizeIs(3));
    EXPECT_EQ(imported.car.passes[0].number, 3) << "where its day belongs";
    EXPECT_TRUE(imported.car.passes[1] == car.passes[0]);
    Pass changed = car.passes[1];
    changed.sixtyFoot = 2.1;
    changed.launchRpm.reset();
    EXPECT_TRUE(imported.car.passes[2] == changed);
}

TEST(LogImport, SurfacesAndSetupsAsPeopleWriteThem) {
    const ImportedLog imported =
        importLog(keptCar(),
                  "number,date,surface,setup,struck,seen\n"
                  "1,2026-11-20,prepped track,rear rebound +2,yes,bounced  moved_left\n"
                  "2,2026-11-20,prepped_track: lane 2,#1,,\n"
                  "3,2026-11-20,lane 2,,no,\n");
    ASSERT_THAT(imported.problems, IsEmpty());
    const std::vector<Pass>& passes = imported.car.passes;
    EXPECT_EQ(passes[0].surface, (PassSurface{SurfaceKind::preppedTrack, "", std::nullopt}));
    EXPECT_EQ(passes[0].setup, 1);
    EXPECT_TRUE(passes[0].struck);
    EXPECT_TRUE(passes[0].saw(Seen::bounced) && passes[0].saw(Seen::movedLeft));
    EXPECT_EQ(passes[1].surface, (PassSurface{SurfaceKind::preppedTrack, "lane 2", std::nullopt}));
    EXPECT_EQ(passes[1].setup, 0);
    EXPECT_EQ(passes[2].surface, (PassSurface{std::nullopt, "lane 2", std::nullopt}));
}

struct BadTable {
    std::string csv;
    std::string problem;
};

TEST(LogImport, WhatCannotBeReadIsToldByRowAndColumnAndNothingIs) {
    const std::string head = "number,date,left_rear_psi,time,setup,seen,struck\n";
    const std::vector<BadTable> bad{
        {"", "nothing in it, expected a row of headers"},
        {"date\n2026-11-20\n", "row 1: no column 'number', expected number and date"},
        {"number,date,left_rear_psi,left_rear_kpa\n",
         "row 1, left_rear_kpa: given twice, expected it once and in one"},
        {"number,date,number\n", "row 1, number: given twice"},
        {head + "1,2026-11-20,abc,,,,\n",
         "row 2, left_rear_psi: expected a pressure from 0 to 145 psi, found 'abc'"},
        {head + "1,2026-11-20,\"18,5\",,,,\n", "row 2, left_rear_psi: expected a pressure"},
        {head + "1,2026-11-20,900,,,,\n", "row 2, left_rear_psi: expected a pressure"},
        {head + "1,2026-11-20,nan,,,,\n", "row 2, left_rear_psi: expected a pressure"},
        {head + ",2026-11-20,,,,,\n", "row 2, number: expected a whole number from 1 to 1000000, found ''"},
        {head + "1,11/20/2026,,,,,\n", "row 2, date: expected a date as 2026-11-20, found '11/20/2026'"},
        {head + "1,2026-11-20,,2 pm,,,\n", "row 2, time: expected a time as 14:05 or 14:05:30, found '2 pm'"},
        {head + "1,2026-11-20,,,gone,,\n",
         "row 2, setup: expected the name of a setup the car keeps, found 'gone'"},
        {head + "1,2026-11-20,,,twice,,\n",
         "row 2, setup: expected the name of one setup, or its number as #1"},
        {head + "1,2026-11-20,,,#6,,\n", "row 2, setup: expected a setup from #1 to #5, found '#6'"},
        {head + "1,2026-11-20,,,,flew,\n",
         "row 2, seen: expected words with spaces between them, each of nose_"},
        {head + "1,2026-11-20,,,,,maybe\n", "row 2, struck: expected yes or no, found 'maybe'"},
        {head + "1,2026-11-20,,,,\n", "row 2: expected 7 fields, found 6"},
        {head + "1,2026-11-20,\"18,,,,\n", "line 2: a quote that is never closed"},
        {head + "1,2026-11-20,1\"8,,,,\n", "line 2: a quote inside a field"},
        {head + "1,2026-11-20,\"18\"x,,,,\n", "line 2: something after a closing quote"},
    };
    for (const BadTable& each : bad) {
        Car car = keptCar();
        car.passes = {wholePass(9)};
        const ImportedLog imported = importLog(car, each.csv);
        ASSERT_THAT(imported.problems, SizeIs(1)) << each.csv;
        EXPECT_THAT(imported.problems[0], StartsWith(each.problem));
        EXPECT_TRUE(imported.car == car);
    }
}

TEST(LogImport, EveryRowThatIsWrongIsTold) {
    const ImportedLog imported =
        importLog(keptCar(), "number,date,sixty_foot_s\n1,2026-11-20,x\n2,2026-11-20,2.2\n3,yesterday,-1\n");
    EXPECT_THAT(imported.problems,
                ElementsAre(StartsWith("row 2, sixty_foot_s: "), StartsWith("row 4, date: "),
                            StartsWith("row 4, sixty_foot_s: ")));
    EXPECT_THAT(imported.car.passes, IsEmpty());
    std::string many = "number,date\n";
    for (int row = 0; row < 500; ++row) {
        many += "0,x\n";
    }
    EXPECT_LE(importLog(keptCar(), many).problems.size(), 101U);
}

TEST(LogImport, AtMostAsManyAsACarHolds) {
    Car car = keptCar();
    car.passes.assign(kMaxPasses, wholePass(1));
    const ImportedLog imported = importLog(car, "number,date\n2,2026-11-20\n");
    EXPECT_THAT(imported.problems, ElementsAre(StartsWith("10001 passes in all, expected at most 10000")));
    EXPECT_TRUE(imported.car == car);
}

TEST(Csv, IsReadAsProgramsWriteIt) {
    EXPECT_EQ(readCsv("a,b\r\n1,\"x,\"\"y\"\"\r\nz\"\r\n", 10).rows,
              (std::vector<std::vector<std::string>>{{"a", "b"}, {"1", "x,\"y\"\r\nz"}}));
    EXPECT_EQ(readCsv("a\rb\n\nc", 10).rows, (std::vector<std::vector<std::string>>{{"a"}, {"b"}, {"c"}}));
    EXPECT_EQ(readCsv("\"\"\n", 10).rows, (std::vector<std::vector<std::string>>{{""}}));
    EXPECT_EQ(readCsv("a,\n,b\n", 10).rows, (std::vector<std::vector<std::string>>{{"a", ""}, {"", "b"}}));
    EXPECT_THAT(readCsv("a\nb\nc\n", 2).problem, HasSubstr("more than 2 rows"));
    EXPECT_THAT(readCsv("a\n\"b\nc\nd", 9).problem, StartsWith("line 2: a quote that is never closed"));
    for (const char* text : {"plain", "com,ma", "qu\"ote", "li\r\nne", "", " blank "}) {
        EXPECT_EQ(readCsv(csvField(text) + ",x\r\n", 9).rows[0][0], text);
    }
}

// Any bytes are read or refused, and never half read.
TEST(LogImport, AnyBytesAreReadOrRefused) {
    const Car car = season();
    const std::string table = logTable(car, Units::metric);
    unsigned state = 12345;
    const auto random = [&state](std::size_t below) {
        state = state * 1664525U + 1013904223U;
        return static_cast<std::size_t>(state >> 8U) % below;
    };
    for (int run = 0; run < 500; ++run) {
        std::string bytes = table;
        for (std::size_t change = 0; change < 1 + random(5); ++change) {
            bytes[random(bytes.size())] = static_cast<char>(random(256));
        }
        const ImportedLog imported = importLog(car, bytes);
        ASSERT_TRUE(imported.problems.empty() || imported.car == car);
        if (imported.problems.empty()) {
            ASSERT_TRUE(findFaults(imported.car).empty());
        }
    }
}

double quickestOf(const auto& work) {
    double best = 1e9;
    for (int run = 0; run < 4; ++run) {
        const auto start = std::chrono::steady_clock::now();
        work();
        best =
            std::min(best, std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
    }
    return best;
}

// No absolute time: what the JSON library takes to read the same passes from the car file is the measure.
TEST(LogTable, TwoThousandAreWrittenInAFewTimesWhatParsingThemTakes) {
    Car car = keptCar();
    for (int number = 1; number <= 2000; ++number) {
        car.passes.push_back(wholePass(number));
    }
    const std::string bytes = writeCar(car, nlohmann::ordered_json());
    const double parsing = quickestOf([&] { EXPECT_FALSE(nlohmann::ordered_json::parse(bytes).empty()); });
    for (const Units units : {Units::metric, Units::inch}) {
        std::string table;
        EXPECT_LT(quickestOf([&] { table = logTable(car, units); }), 5 * parsing);
        EXPECT_LT(quickestOf([&] { EXPECT_THAT(importLog(car, table).problems, IsEmpty()); }), 20 * parsing);
    }
}

class LogCommand : public testing::Test {
  protected:
    void SetUp() override {
        std::string pattern = (std::filesystem::temp_directory_path() / "bolthole-log-XXXXXX").string();
        ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
        folder_ = pattern;
        write("car.json", writeCar(season(), nlohmann::ordered_json()));
    }
    void TearDown() override { std::filesystem::remove_all(folder_); }

    [[nodiscard]] std::string path(const std::string& name) const { return (folder_ / name).string(); }
    void write(const std::string& name, const std::string& bytes) const {
        std::ofstream(path(name), std::ios::binary) << bytes;
    }
    static LogOutcome run(const std::vector<std::string>& words) {
        constexpr std::array<Option, 3> kOptions{kImportOption, kOutputOption, kUnitsOption};
        std::string problem;
        const std::optional<Request> request = Request::sort(words, kOptions, problem);
        EXPECT_TRUE(request) << problem;
        return request ? runLog(*request) : LogOutcome{};
    }

    std::filesystem::path folder_;
};

TEST_F(LogCommand, WritesInTheUnitsAskedFor) {
    EXPECT_THAT(run({path("car.json")}).result, StartsWith(kInchHeaders)) << "the car's own";
    const LogOutcome metric = run({path("car.json"), "--units", "metric"});
    EXPECT_TRUE(metric.done);
    EXPECT_THAT(metric.result, StartsWith(kMetricHeaders));
    EXPECT_THAT(metric.lines, IsEmpty());
}

TEST_F(LogCommand, ImportsWhatItWroteWithoutChangingTheFile) {
    write("log.csv", run({path("car.json"), "--units=metric"}).result);
    const LogOutcome imported = run({path("car.json"), "--import", path("log.csv"), "-o", path("new.json")});
    EXPECT_TRUE(imported.done);
    EXPECT_EQ(imported.result, readCarBytes(path("car.json")).bytes);
}

TEST_F(LogCommand, TellsOfHeadersItPassesOver) {
    write("log.csv", "number,date,mood\n9,2026-12-01,good\n");
    const LogOutcome imported = run({path("car.json"), "--import", path("log.csv")});
    EXPECT_TRUE(imported.done);
    ASSERT_THAT(imported.lines, SizeIs(1));
    EXPECT_EQ(imported.lines[0].about, path("log.csv"));
    EXPECT_EQ(imported.lines[0].what, "row 1, 'mood': no such column, passed over");
    const ReadResult read = readCar(imported.result);
    ASSERT_TRUE(read.loaded) << read.problem.line();
    EXPECT_EQ(read.loaded->car.passes.back().date, "2026-12-01");
}

TEST_F(LogCommand, RefusesBadFiles) {
    write("log.csv", "number,date\n0,x\n");
    const LogOutcome bad = run({path("car.json"), "--import", path("log.csv")});
    EXPECT_FALSE(bad.done);
    EXPECT_EQ(bad.result, "");
    EXPECT_THAT(bad.lines, SizeIs(2));
    EXPECT_FALSE(run({path("none.json")}).done);
    const LogOutcome none = run({path("car.json"), "--import", path("none.csv")});
    EXPECT_FALSE(none.done);
    EXPECT_THAT(none.lines[0].what, StartsWith("cannot be opened: "));
    EXPECT_FALSE(run({path("car.json"), "--import", path("log.csv"), "-o", path("log.csv")}).done);
}

}  // namespace
}  // namespace bolthole
