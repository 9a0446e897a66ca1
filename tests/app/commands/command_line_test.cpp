// The commands: exit codes, what goes to standard output, to standard error and to files.
#include "app/commands/command_line.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <algorithm>
#include <clocale>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <locale>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <vector>

#include "app/carfile/car_file.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/kinematics/trace.h"
#include "tests/support/run_command.h"

namespace bolthole {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;
using test::bytesOf;
using test::Outcome;
using testing::AllOf;
using testing::EndsWith;
using testing::HasSubstr;
using testing::StartsWith;

Outcome run(const std::vector<std::string>& words) {
    return test::runWords(words);
}

// Cells of a CSV without quotes.
std::vector<std::vector<std::string>> cellsOf(const std::string& csv) {
    std::vector<std::vector<std::string>> rows;
    std::istringstream lines(csv);
    for (std::string line; std::getline(lines, line);) {
        EXPECT_THAT(line, EndsWith("\r"));
        line.pop_back();
        std::vector<std::string>& row = rows.emplace_back();
        std::istringstream cells(line + ",");
        for (std::string cell; std::getline(cells, cell, ',');) {
            row.push_back(cell);
        }
    }
    return rows;
}

std::size_t lineCount(const std::string& text) {
    return static_cast<std::size_t>(std::ranges::count(text, '\n'));
}

class CommandLine : public testing::Test {
  protected:
    void SetUp() override {
        std::string pattern = (fs::temp_directory_path() / "bolthole-test-XXXXXX").string();
        ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
        folder = pattern;
    }
    void TearDown() override { fs::remove_all(folder); }

    // A changed demo car as a file.
    template <typename Change>
    std::string changed(const std::string& car, Change change) {
        Json json = Json::parse(bytesOf(car));
        change(json);
        return written("changed.bolt.json", json.dump());
    }
    std::string written(const std::string& name, const std::string& bytes) {
        std::ofstream(folder / name, std::ios::binary) << bytes;
        return (folder / name).string();
    }
    std::size_t filesThere() const {
        return static_cast<std::size_t>(
            std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
    }

    fs::path folder;
};

TEST(CommandNames, AreKnownFromFiles) {
    EXPECT_TRUE(isCommand({"sweep"}));
    EXPECT_TRUE(isCommand({"check", "a"}));
    EXPECT_TRUE(isCommand({"log", "a"}));
    EXPECT_TRUE(isCommand({"--help"}));
    EXPECT_TRUE(isCommand({"--version"}));
    EXPECT_TRUE(isCommand({"swep", "car.bolt.json"})) << "mistyped: refused, no window";
    EXPECT_FALSE(isCommand({}));
    EXPECT_FALSE(isCommand({"car.bolt.json"}));
    EXPECT_FALSE(isCommand({"car.bolt.json", "sweep"}));
    EXPECT_FALSE(isCommand({""}));
}

TEST_F(CommandLine, SweepHasTheContractsColumns) {
    const Outcome inch = run({"sweep", test::kWagonFile});
    EXPECT_EQ(inch.code, ExitCode::done);
    EXPECT_EQ(inch.err, "");
    EXPECT_THAT(
        inch.out,
        StartsWith("travel_in,front_travel_in,ground_deg,axle_x_in,ic_x_in,ic_z_in,svsa_angle_deg,"
                   "anti_squat_pct,pinion_deg,driveshaft_deg,pinion_to_driveshaft_deg,front_joint_deg,"
                   "rear_joint_deg,plunge_in\r\n-4,-4,0,"));
    EXPECT_THAT(inch.out, EndsWith("\r\n"));
    EXPECT_THAT(
        run({"sweep", test::kWagonFile, "--units", "metric"}).out,
        StartsWith("travel_mm,front_travel_mm,ground_deg,axle_x_mm,ic_x_mm,ic_z_mm,svsa_angle_deg,"
                   "anti_squat_pct,pinion_deg,driveshaft_deg,pinion_to_driveshaft_deg,front_joint_deg,"
                   "rear_joint_deg,plunge_mm\r\n-101.6,-101.6,0,"));
}

TEST_F(CommandLine, SweepRowsAreEvenlySpacedWithEveryCellFilled) {
    const auto rows = cellsOf(run({"sweep", test::kCoupeFile}).out);
    ASSERT_EQ(rows.size(), 82U);
    for (std::size_t i = 1; i < rows.size(); ++i) {
        ASSERT_EQ(rows[i].size(), kFigureCount);
        EXPECT_NEAR(std::stod(rows[i][0]), -4 + 0.1 * static_cast<double>(i - 1), 1e-11);
        for (const std::string& cell : rows[i]) {
            EXPECT_NE(cell, "");
            EXPECT_EQ(cell.find_first_not_of("-.0123456789"), std::string::npos) << cell;
        }
    }
}

TEST_F(CommandLine, UnitsChangeNothingButTheUnit) {
    const auto inch = cellsOf(run({"sweep", test::kCoupeFile}).out);
    const auto metric = cellsOf(run({"sweep", "--units", "metric", test::kCoupeFile}).out);
    ASSERT_EQ(inch.size(), metric.size());
    for (std::size_t row = 1; row < inch.size(); ++row) {
        for (std::size_t column = 0; column < kFigureCount; ++column) {
            const bool length = figureTable()[column].quantity == Quantity::length;
            const double value = std::stod(inch[row][column]) * (length ? 25.4 : 1.0);
            EXPECT_NEAR(std::stod(metric[row][column]), value, 1e-9 * std::max(1.0, std::abs(value)));
        }
    }
}

TEST_F(CommandLine, TheCarsUnitsAreTheDefault) {
    const std::string metric = changed(test::kCoupeFile, [](Json& car) { car["units"] = "metric"; });
    EXPECT_EQ(run({"sweep", metric}).out, run({"sweep", test::kCoupeFile, "--units", "metric"}).out);
}

TEST_F(CommandLine, OptionsStandAnywhere) {
    const std::string expected = run({"sweep", test::kCoupeFile, "--units", "metric"}).out;
    EXPECT_EQ(run({"sweep", "--units", "metric", test::kCoupeFile}).out, expected);
    EXPECT_EQ(run({"sweep", "--units=metric", "--", test::kCoupeFile}).out, expected);
    EXPECT_EQ(run({"sweep", "-o", "-", "--units=metric", test::kCoupeFile}).out, expected);
}

TEST_F(CommandLine, OutputGoesToTheFile) {
    const fs::path target = folder / "out.csv";
    const Outcome result = run({"sweep", "-o", target.string(), test::kCoupeFile});
    EXPECT_EQ(result.code, ExitCode::done);
    EXPECT_EQ(result.out + result.err, "");
    EXPECT_EQ(bytesOf(target), run({"sweep", test::kCoupeFile}).out);
    EXPECT_EQ(filesThere(), 1U);
}

TEST_F(CommandLine, AFileIsReplacedWithItsPermissionsAndThroughALink) {
    const std::string target = written("out.csv", "old");
    fs::permissions(target, fs::perms::owner_read | fs::perms::owner_write);
    fs::create_symlink("out.csv", folder / "link.csv");
    EXPECT_EQ(run({"sweep", test::kCoupeFile, "-o", (folder / "link.csv").string()}).code, ExitCode::done);
    EXPECT_TRUE(fs::is_symlink(folder / "link.csv"));
    EXPECT_THAT(bytesOf(target), StartsWith("travel_in"));
    EXPECT_EQ(fs::status(target).permissions(), fs::perms::owner_read | fs::perms::owner_write);
    EXPECT_EQ(filesThere(), 2U);
}

TEST_F(CommandLine, ANewFileFollowsTheUmask) {
    const mode_t before = ::umask(027);
    EXPECT_EQ(run({"sweep", test::kCoupeFile, "-o", (folder / "out.csv").string()}).code, ExitCode::done);
    ::umask(before);
    EXPECT_EQ(static_cast<unsigned>(fs::status(folder / "out.csv").permissions()), 0640U);
}

TEST_F(CommandLine, AnUnwritablePlaceIsRefusedAndNothingIsLeft) {
    const std::vector<std::string> places{(folder / "no" / "out.csv").string(), folder.string(),
                                          "/proc/out.csv"};
    for (const std::string& place : places) {
        const Outcome result = run({"sweep", test::kCoupeFile, "-o", place});
        EXPECT_EQ(result.code, ExitCode::badUse);
        EXPECT_EQ(result.out, "");
        EXPECT_THAT(result.err, StartsWith("bolthole: " + place + ": cannot be written: "));
        EXPECT_EQ(lineCount(result.err), 1U);
    }
    EXPECT_EQ(filesThere(), 0U);
}

TEST_F(CommandLine, ADeviceIsWrittenNotReplaced) {
    EXPECT_EQ(run({"sweep", test::kCoupeFile, "-o", "/dev/null"}).code, ExitCode::done);
    EXPECT_TRUE(fs::is_character_file("/dev/null"));
    if (fs::exists("/dev/full")) {
        const Outcome full = run({"sweep", test::kCoupeFile, "-o", "/dev/full"});
        EXPECT_EQ(full.code, ExitCode::badUse);
        EXPECT_THAT(full.err, HasSubstr("/dev/full: cannot be written: No space left"));
    }
}

TEST_F(CommandLine, TheCarItselfIsNeverOverwritten) {
    const std::string car = changed(test::kCoupeFile, [](Json&) {});
    const std::string before = bytesOf(car);
    const Outcome result = run({"sweep", car, "-o", car});
    EXPECT_EQ(result.code, ExitCode::badUse);
    EXPECT_EQ(bytesOf(car), before);
}

TEST_F(CommandLine, BadUseGetsOneLine) {
    const std::vector<std::pair<std::vector<std::string>, std::string>> uses{
        {{"sweep"}, "no file given"},
        {{"sweep", test::kCoupeFile, test::kWagonFile}, "2 files given"},
        {{"sweep", test::kCoupeFile, "--color"}, "unknown option --color, expected -o or --units"},
        {{"sweep", test::kCoupeFile, "-x"}, "unknown option -x"},
        {{"sweep", test::kCoupeFile, "-o"}, "-o needs a value, expected FILE"},
        {{"sweep", test::kCoupeFile, "--units"}, "--units needs a value"},
        {{"sweep", test::kCoupeFile, "--units", "feet"}, "--units: expected inch or metric, found 'feet'"},
        {{"sweep", test::kCoupeFile, "--units", "inch", "--units", "inch"}, "--units was given twice"},
        {{"sweep", test::kCoupeFile, "-o", ""}, "-o: expected FILE, found ''"},
        {{"check"}, "no file given"},
        {{"mend", test::kCoupeFile}, "no such command, expected sweep or holes or "},
        {{}, "no such command"}};
    for (const auto& [words, expected] : uses) {
        const Outcome result = run(words);
        EXPECT_EQ(result.code, ExitCode::badUse) << expected;
        EXPECT_EQ(result.out, "");
        EXPECT_THAT(result.err, AllOf(StartsWith("bolthole: "), HasSubstr(expected)));
        EXPECT_EQ(lineCount(result.err), 1U) << result.err;
    }
}

TEST_F(CommandLine, ABadFileIsNamedWithItsPath) {
    const std::string bad =
        changed(test::kCoupeFile, [](Json& car) { car["links"][1]["axle"]["holes"][0]["at"][2] = "x"; });
    for (const std::string command : {"sweep", "check"}) {
        const Outcome result = run({command, bad});
        EXPECT_EQ(result.code, ExitCode::badUse);
        EXPECT_EQ(result.out, "");
        EXPECT_EQ(result.err, "bolthole: " + bad +
                                  ": links[1].axle.holes[0].at[2]: expected a position within 100 m "
                                  "of the origin, found \"x\" (link 'upper', axle hole '1')\n");
    }
    EXPECT_THAT(run({"sweep", (folder / "no\nfile").string()}).err, HasSubstr("no file: cannot be opened"));
}

TEST_F(CommandLine, TravelOutOfReachKeepsItsRows) {
    const std::string car = changed(test::kWagonFile, [](Json& json) {
        json["travel"] = {{"bump", 101.6}, {"droop", 508}, {"steps", 61}, {"front_ratio", 0.5}};
    });
    const Outcome result = run({"sweep", car});
    EXPECT_EQ(result.code, ExitCode::done);
    EXPECT_THAT(result.err, AllOf(StartsWith("bolthole: " + car + ": links["), HasSubstr("of droop")));
    EXPECT_EQ(lineCount(result.err), 1U);
    const auto rows = cellsOf(result.out);
    ASSERT_EQ(rows.size(), 62U);
    EXPECT_EQ(rows[1][0], "-20");
    EXPECT_EQ(rows[1][1], "-10");
    for (std::size_t column = 2; column < kFigureCount; ++column) {
        EXPECT_EQ(rows[1][column], "");
        EXPECT_NE(rows.back()[column], "");
    }
}

TEST_F(CommandLine, WithoutADrivelineItsColumnsAreEmpty) {
    const std::string car = changed(test::kWagonFile, [](Json& json) { json.erase("driveline"); });
    const auto rows = cellsOf(run({"sweep", car}).out);
    ASSERT_EQ(rows.size(), 82U);
    for (std::size_t column = 0; column < kFigureCount; ++column) {
        const bool driveline = column >= static_cast<std::size_t>(Figure::pinion);
        EXPECT_EQ(rows[1][column].empty(), driveline) << rows[0][column];
    }
}

TEST_F(CommandLine, ACarThatCannotBeAssembledGivesNoTable) {
    const std::string apart =
        changed(test::kWagonFile, [](Json& json) { json["links"][0]["length"] = 5000; });
    const std::string loose = changed(test::kWagonFile, [](Json& json) { json["links"] = Json::array(); });
    for (const std::string& car : {apart, loose}) {
        const Outcome sweep = run({"sweep", car, "-o", (folder / "out.csv").string()});
        EXPECT_EQ(sweep.code, ExitCode::cannotAssemble);
        EXPECT_EQ(sweep.out, "");
        EXPECT_THAT(sweep.err, StartsWith("bolthole: " + car + ": links"));
        EXPECT_EQ(lineCount(sweep.err), 1U);
        EXPECT_FALSE(fs::exists(folder / "out.csv"));
        const Outcome check = run({"check", car});
        EXPECT_EQ(check.code, ExitCode::cannotAssemble);
        EXPECT_THAT(check.out, StartsWith(car + ": links"));
        EXPECT_EQ(check.err, "");
    }
}

TEST_F(CommandLine, SymmetryIsSaidByCheckAndNotBySweep) {
    const std::string car = changed(test::kCoupeFile, [](Json& json) { json["links"].erase(2); });
    const Outcome sweep = run({"sweep", car});
    EXPECT_EQ(sweep.code, ExitCode::done);
    EXPECT_EQ(sweep.err, "");
    const Outcome check = run({"check", car});
    EXPECT_EQ(check.code, ExitCode::done);
    EXPECT_THAT(check.out, HasSubstr("nothing holds the axle laterally"));
}

// The columns have no room for it, and whoever reads them has no window.
TEST_F(CommandLine, FiguresThatRestOnStartingNumbersAreSaidTo) {
    Car car = readCarFile(test::kWagonFile).loaded.value().car;
    setOrigin(car, {.field = Field::cgHeight}, Origin::starting);
    const std::string file = written("started.bolt.json", writeCar(car, {}));
    for (const std::vector<std::string>& words :
         std::initializer_list<std::vector<std::string>>{{"sweep", file},
                                                         {"holes", file},
                                                         {"figures", file},
                                                         {"roll", file},
                                                         {"compare", test::kWagonFile, file}}) {
        const Outcome outcome = run(words);
        EXPECT_EQ(outcome.code, ExitCode::done);
        EXPECT_EQ(outcome.err,
                  "bolthole: " + file + ": figures rest on starting numbers, not measured: CG height\n")
            << words[0];
    }
    EXPECT_EQ(run({"sweep", test::kWagonFile}).err, "");
}

TEST_F(CommandLine, CheckIsSilentOnAGoodCar) {
    const Outcome result = run({"check", test::kWagonFile, test::kCoupeFile});
    EXPECT_EQ(result.code, ExitCode::done);
    EXPECT_EQ(result.out + result.err, "");
}

TEST_F(CommandLine, CheckSaysWhatIsDoubtfulAndExitsZero) {
    const std::string car = changed(test::kWagonFile, [](Json& json) { json["links"][0]["length"] = 545; });
    const Outcome result = run({"check", car});
    EXPECT_EQ(result.code, ExitCode::done);
    EXPECT_THAT(result.out, StartsWith(car + ": links[0].length: "));
}

TEST_F(CommandLine, CheckGoesThroughAllFilesAndKeepsTheWorstCode) {
    const std::string apart =
        changed(test::kWagonFile, [](Json& json) { json["links"][0]["length"] = 5000; });
    const std::string broken = written("broken.json", "{");
    const Outcome result = run({"check", broken, apart, test::kWagonFile});
    EXPECT_EQ(result.code, ExitCode::badUse);
    EXPECT_THAT(result.err, StartsWith("bolthole: " + broken + ": not JSON at line 1"));
    EXPECT_THAT(result.out, StartsWith(apart + ": "));
    EXPECT_EQ(run({"check", apart, test::kWagonFile}).code, ExitCode::cannotAssemble);
}

TEST_F(CommandLine, ANameWithALineBreakStaysOnOneLine) {
    const std::string car = changed(test::kWagonFile, [](Json& json) {
        json["links"][0]["name"] = "lo\nwer";
        json["links"][0]["length"] = 5000;
    });
    EXPECT_EQ(lineCount(run({"sweep", car}).err), 1U);
}

TEST_F(CommandLine, HelpAndVersion) {
    for (const std::vector<std::string>& words : {std::vector<std::string>{"--help"}, {"sweep", "--help"}}) {
        const Outcome help = run(words);
        EXPECT_EQ(help.code, ExitCode::done);
        EXPECT_THAT(help.out, AllOf(HasSubstr("bolthole sweep CAR [-o FILE] [--units inch|metric]"),
                                    HasSubstr("bolthole check CAR...")));
    }
    EXPECT_THAT(run({"--version"}).out,
                testing::MatchesRegex("bolthole [0-9]+\\.[0-9]+\\.[0-9]+\ncar file version " +
                                      std::to_string(kCarFileVersion) + "\n"));
}

struct DecimalComma : std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
};

// Both of the program's locales, that of streams and, where the system has a German one, that of C.
TEST_F(CommandLine, ADecimalCommaInTheLocaleChangesNothing) {
    const std::string expected = run({"sweep", test::kCoupeFile}).out;
    const std::locale before = std::locale::global(std::locale(std::locale(), new DecimalComma));
    std::setlocale(LC_ALL, "de_DE.UTF-8");
    const std::string found = run({"sweep", test::kCoupeFile}).out;
    std::setlocale(LC_ALL, "C");
    std::locale::global(before);
    EXPECT_EQ(found, expected);
}

}  // namespace
}  // namespace bolthole
