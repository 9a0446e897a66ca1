// --uncertainty: what it adds to each command's result, and that nothing changes without it.
#include <gmock/gmock.h>

#include <algorithm>
#include <clocale>
#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "app/carfile/car_file.h"
#include "app/commands/uncertainty_lines.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/uncertainty/roll_uncertainty.h"
#include "geometry/uncertainty/trace_uncertainty.h"
#include "geometry/units/uncertainty_text.h"
#include "tests/support/csv.h"
#include "tests/support/plain_car.h"
#include "tests/support/run_command.h"

namespace bolthole {
namespace {

using Json = nlohmann::ordered_json;
using test::bytesOf;
using test::runWords;
using testing::ElementsAre;
using testing::EndsWith;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

using Cells = std::vector<std::vector<std::string>>;

Cells tableOf(const std::vector<std::string>& words) {
    const test::Outcome outcome = runWords(words);
    EXPECT_EQ(outcome.code, ExitCode::done) << outcome.err;
    EXPECT_EQ(outcome.err, "");
    return cellsOfCsv(outcome.out);
}

std::vector<std::string> with(std::vector<std::string> words) {
    words.emplace_back("--uncertainty");
    return words;
}

std::size_t columnOf(const Cells& cells, const std::string& name) {
    const auto found = std::ranges::find(cells[0], name);
    EXPECT_NE(found, cells[0].end()) << name;
    return static_cast<std::size_t>(found - cells[0].begin());
}

std::vector<std::string> demoFiles() {
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(BOLTHOLE_DEMO_DIR)) {
        files.push_back(entry.path().string());
    }
    std::ranges::sort(files);
    return files;
}

// The columns that are there without the option stand first and unchanged, every other one ends in _u.
void expectOnlyMore(const Cells& plain, const Cells& more) {
    ASSERT_EQ(plain.size(), more.size());
    const std::size_t columns = plain[0].size();
    for (std::size_t row = 0; row < plain.size(); ++row) {
        ASSERT_EQ(more[row].size(), more[0].size());
        ASSERT_TRUE(std::equal(plain[row].begin(), plain[row].end(), more[row].begin())) << row;
    }
    for (std::size_t column = columns; column < more[0].size(); ++column) {
        const std::string& name = more[0][column];
        ASSERT_THAT(name, EndsWith("_u"));
        EXPECT_NE(std::ranges::find(plain[0], name.substr(0, name.size() - 2)), plain[0].end()) << name;
    }
}

}  // namespace

TEST(UncertaintyOption, OnlyAddsColumns) {
    for (const std::string& file : demoFiles()) {
        for (const char* command : {"sweep", "holes", "roll"}) {
            const std::vector<std::string> words{command, file};
            expectOnlyMore(tableOf(words), tableOf(with(words)));
        }
    }
}

TEST(UncertaintyOption, SweepHasAColumnForEveryFigureButTheImposedTravels) {
    const Cells cells = tableOf(with({"sweep", test::kWagonFile}));
    std::vector<std::string> added(cells[0].begin() + kFigureCount, cells[0].end());
    EXPECT_THAT(added, ElementsAre("ground_deg_u", "axle_x_in_u", "ic_x_in_u", "ic_z_in_u",
                                   "svsa_angle_deg_u", "anti_squat_pct_u", "pinion_deg_u", "driveshaft_deg_u",
                                   "pinion_to_driveshaft_deg_u", "front_joint_deg_u", "rear_joint_deg_u",
                                   "plunge_in_u"));
    const Car car = readCarFile(test::kWagonFile).loaded->car;
    const TraceUncertainty uncertainty = computeUncertainty(car);
    const std::size_t antiSquat = columnOf(cells, "anti_squat_pct_u");
    for (std::size_t row = 1; row < cells.size(); ++row) {
        const double travel = std::stod(cells[row][0]) * kMetresPerInch;
        EXPECT_NEAR(std::stod(cells[row][antiSquat]),
                    uncertainty.at(static_cast<std::size_t>(Figure::antiSquat), travel), 1e-9);
    }
    const Cells metric = tableOf(with({"sweep", test::kWagonFile, "--units=metric"}));
    EXPECT_NEAR(std::stod(metric[41][columnOf(metric, "ic_x_mm_u")]),
                25.4 * std::stod(cells[41][columnOf(cells, "ic_x_in_u")]), 1e-6);
}

TEST(UncertaintyOption, HolesSayTheUncertaintyOfEachCombination) {
    const Cells cells = tableOf(with({"holes", test::kWagonFile}));
    std::vector<std::string> added(cells[0].end() - 8, cells[0].end());
    EXPECT_THAT(
        added, ElementsAre("ic_x_in_u", "ic_z_in_u", "svsa_angle_deg_u", "anti_squat_pct_u",
                           "anti_squat_droop_pct_u", "anti_squat_bump_pct_u", "axle_x_in_u", "pinion_deg_u"));
    const std::size_t inUse = columnOf(cells, "in_use");
    const auto now = std::ranges::find_if(cells, [&](const auto& row) { return row[inUse] == "yes"; });
    ASSERT_NE(now, cells.end());
    const Car car = readCarFile(test::kWagonFile).loaded->car;
    const TraceUncertainty uncertainty = computeUncertainty(car, defaultTreatment(car), holesInUse(car));
    EXPECT_NEAR(std::stod((*now)[columnOf(cells, "anti_squat_pct_u")]), uncertainty.atRide(Figure::antiSquat),
                1e-9);
    EXPECT_NEAR(std::stod((*now)[columnOf(cells, "anti_squat_bump_pct_u")]),
                uncertainty.of(2, static_cast<std::size_t>(Figure::antiSquat)), 1e-9);
}

TEST(UncertaintyOption, RollSaysTheUncertaintyOfEachRow) {
    const Cells cells = tableOf(with({"roll", test::kWagonFile}));
    std::vector<std::string> added(cells[0].end() - 4, cells[0].end());
    EXPECT_THAT(added, ElementsAre("yaw_deg_u", "axle_y_in_u", "roll_center_in_u", "roll_steer_u"));
    const RollUncertainty uncertainty = computeRollUncertainty(readCarFile(test::kWagonFile).loaded->car);
    EXPECT_NEAR(std::stod(cells[1][columnOf(cells, "roll_center_in_u")]),
                uncertainty.of(0, RollFigure::center) / kMetresPerInch, 1e-9);
    EXPECT_GT(std::stod(cells[7][columnOf(cells, "roll_center_in_u")]), 0);
}

TEST(UncertaintyOption, CompareSaysWhatCanBeToldApart) {
    const std::vector<std::string> words{"compare", test::kWagonFile, test::kCoupeFile};
    const Cells plain = tableOf(words);
    const Cells more = tableOf(with(words));
    EXPECT_THAT(more[0], ElementsAre("figure", "at", "before", "after", "change", "change_u", "apart"));
    ASSERT_EQ(plain.size(), more.size());
    std::size_t told = 0;
    for (std::size_t row = 1; row < more.size(); ++row) {
        ASSERT_TRUE(std::equal(plain[row].begin(), plain[row].end(), more[row].begin()));
        ASSERT_EQ(more[row].size(), 7U);
        EXPECT_EQ(more[row][5].empty(), more[row][6].empty());
        if (more[row][6].empty()) {
            continue;
        }
        ++told;
        const bool isApart = std::abs(std::stod(more[row][4])) > kCoverage95 * std::stod(more[row][5]);
        EXPECT_EQ(more[row][6], isApart ? "yes" : "no") << more[row][0];
    }
    EXPECT_GE(told, 3 * (kFigureCount - 2));
}

TEST(UncertaintyOption, ACarIsNotToldApartFromItself) {
    for (const auto& row : tableOf(with({"compare", test::kWagonFile, test::kWagonFile}))) {
        if (row[6] == "yes" || row[6] == "no") {
            EXPECT_EQ(row[5], "0") << row[0];
            EXPECT_EQ(row[6], "no") << row[0];
        }
    }
}

TEST(UncertaintyOption, WhatWasWorkedOutIsToBeMeasuredNotMeasuredAgain) {
    Car car = plainCar();
    for (const FieldId& id : measurableNumbers(car)) {
        setOrigin(car, id, Origin::workedOut);
    }
    const std::vector<std::string> lines = uncertaintyLines(car);
    EXPECT_THAT(lines, testing::Contains(HasSubstr("; measure first: ")));
    EXPECT_THAT(lines, testing::Each(Not(HasSubstr("again"))));
    EXPECT_THAT(uncertaintyLines(plainCar()), testing::Contains(HasSubstr("; measure again first: ")));
}

TEST(UncertaintyOption, CheckTellsTheUncertaintyOfEachFigureAndWhatToMeasureAgain) {
    const test::Outcome plain = runWords({"check", test::kWagonFile});
    const test::Outcome more = runWords({"check", test::kWagonFile, "--uncertainty"});
    EXPECT_EQ(more.code, ExitCode::done);
    EXPECT_THAT(more.out, StartsWith(plain.out));
    EXPECT_THAT(more.out, HasSubstr(test::kWagonFile + ": anti-squat at ride "));
    EXPECT_THAT(more.out, HasSubstr(" % \u00B1 "));
    EXPECT_THAT(more.out, HasSubstr("(95 in 100, first order); measure again first: "));
    const std::string after = more.out.substr(more.out.find("anti-squat at ride"));
    const std::string line = after.substr(0, after.find('\n'));
    EXPECT_EQ(std::ranges::count(line, ';'), 1);
    EXPECT_NE(line.find(", then "), line.rfind(", then ")) << "three numbers: " << line;
    EXPECT_EQ(runWords({"check", test::kWagonFile, "--uncertainty"}).out, more.out) << "the same each time";
}

// Links nearly parallel: the line says an interval that was drawn, or that it runs through infinity.
TEST(UncertaintyOption, CheckDrawsWhereFirstOrderFails) {
    Json json = Json::parse(bytesOf(test::kWagonFile));
    for (Json& link : json["links"]) {
        if (link["name"] == "upper") {
            for (Json& hole : link["chassis"]["holes"]) {
                hole["at"][2] = hole["at"][2].get<double>() + 40;
            }
        }
    }
    const std::string file = (std::filesystem::temp_directory_path() / "bolthole-far.bolt.json").string();
    std::ofstream(file, std::ios::binary) << json.dump();
    const LoadedCar loaded = *readCarFile(file).loaded;
    const test::Outcome outcome = runWords({"check", file, "--uncertainty"});
    std::filesystem::remove(file);
    const bool isNonlinear = computeUncertainty(loaded.car).isNonlinearAtRide(Figure::icX);
    ASSERT_TRUE(isNonlinear) << computeTrace(loaded.car).ride[Figure::icX];
    EXPECT_THAT(outcome.out, HasSubstr("(95 in 100, drawn)"));
    EXPECT_THAT(outcome.out, HasSubstr("(95 in 100, first order)")) << "anti-squat does not bend";
}

TEST(UncertaintyOption, DependsOnNoLocale) {
    const std::string before = runWords({"sweep", test::kWagonFile, "--uncertainty"}).out;
    const std::string checked = runWords({"check", test::kWagonFile, "--uncertainty"}).out;
    for (const char* locale : {"de_DE.UTF-8", "fr_FR.UTF-8"}) {
        if (std::setlocale(LC_ALL, locale) != nullptr) {
            EXPECT_EQ(runWords({"sweep", test::kWagonFile, "--uncertainty"}).out, before);
            EXPECT_EQ(runWords({"check", test::kWagonFile, "--uncertainty"}).out, checked);
        }
    }
    std::setlocale(LC_ALL, "C");
}

TEST(UncertaintyOption, IsRefusedWhereItMeansNothing) {
    const test::Outcome twice = runWords({"sweep", test::kWagonFile, "--uncertainty", "--uncertainty"});
    EXPECT_EQ(twice.code, ExitCode::badUse);
    EXPECT_THAT(twice.err, HasSubstr("given twice"));
    const test::Outcome valued = runWords({"sweep", test::kWagonFile, "--uncertainty=2"});
    EXPECT_EQ(valued.code, ExitCode::badUse);
    EXPECT_THAT(valued.err, HasSubstr("takes no value"));
    const test::Outcome chart = runWords({"chart", test::kWagonFile, "-o", "x.pdf", "--uncertainty"});
    EXPECT_EQ(chart.code, ExitCode::badUse);
    EXPECT_THAT(chart.err, HasSubstr("unknown option --uncertainty"));
    const test::Outcome missing = runWords({"check", "/no/such.bolt.json", "--uncertainty"});
    EXPECT_EQ(missing.code, ExitCode::badUse);
    EXPECT_THAT(missing.out, Not(HasSubstr("at ride")));
    EXPECT_THAT(runWords({"--help"}).out, HasSubstr("[--uncertainty]"));
}

}  // namespace bolthole
