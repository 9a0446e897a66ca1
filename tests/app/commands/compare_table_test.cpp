// compare: its rows against the traces of both cars, and the command around it.
#include "app/commands/compare_table.h"

#include <gmock/gmock.h>
#include <sys/stat.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "app/carfile/car_file.h"
#include "app/commands/command_line.h"
#include "geometry/combinations/combination_figures.h"
#include "tests/support/run_command.h"

namespace bolthole {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;
using testing::HasSubstr;
using testing::StartsWith;

struct ComparisonRow {
    std::string figure;
    std::string at;
    std::string before;
    std::string after;
    std::string change;
};

// Reads what RFC 4180 writes, quotes included.
std::vector<std::string> fieldsOf(const std::string& line) {
    std::vector<std::string> fields(1);
    bool quoted = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const char c = line[i];
        if (c == '"' && quoted && i + 1 < line.size() && line[i + 1] == '"') {
            fields.back() += line[++i];
        } else if (c == '"') {
            quoted = !quoted;
        } else if (c == ',' && !quoted) {
            fields.emplace_back();
        } else {
            fields.back() += c;
        }
    }
    return fields;
}

std::vector<ComparisonRow> comparisonRows(const std::string& csv) {
    std::vector<ComparisonRow> rows;
    std::size_t from = 0;
    for (std::size_t to = 0; (to = csv.find("\r\n", from)) != std::string::npos; from = to + 2) {
        std::vector<std::string> fields = fieldsOf(csv.substr(from, to - from));
        EXPECT_EQ(fields.size(), 5U) << csv.substr(from, to - from);
        fields.resize(5);
        rows.push_back({fields[0], fields[1], fields[2], fields[3], fields[4]});
    }
    EXPECT_EQ(from, csv.size()) << "every row ends with CRLF";
    return rows;
}

const ComparisonRow& rowFor(const std::vector<ComparisonRow>& rows, const std::string& figure,
                            const std::string& at = "ride") {
    static const ComparisonRow none{"none", "", "none", "none", "none"};
    for (const ComparisonRow& row : rows) {
        if (row.figure == figure && row.at == at) {
            return row;
        }
    }
    ADD_FAILURE() << "no row " << figure << " at " << at;
    return none;
}

Car demo(const std::string& file) {
    const ReadResult read = readCarFile(file);
    EXPECT_TRUE(read.loaded) << read.problem.line();
    return read.loaded->car;
}

Car otherWagon() {
    Car car = demo(test::kWagonFile);
    car.links[0].axle.use = car.links[0].axle.use == 0 ? 1 : 0;
    car.cgHeight += 0.0254;
    car.links[1].length = builtLength(car.links[1]) - 0.00635;
    return car;
}

void expectNumber(const std::string& text, double value, const std::string& where) {
    if (std::isnan(value)) {
        EXPECT_EQ(text, "") << where;
        return;
    }
    ASSERT_NE(text, "") << where;
    EXPECT_NEAR(std::stod(text), value, 1e-9 * std::max(1.0, std::abs(value))) << where;
    EXPECT_EQ(text.find_first_of("eE"), std::string::npos) << "plain decimals: " << text;
}

TEST(CompareTable, EveryFigureIsThatOfEachCarsOwnTrace) {
    const Car before = demo(test::kWagonFile);
    const Car after = otherWagon();
    const Trace from = computeTrace(before);
    const Trace to = computeTrace(after);
    for (const Units units : {Units::inch, Units::metric}) {
        const std::vector<ComparisonRow> rows =
            comparisonRows(compareTable(compareCars(before, after), units));
        for (const FigureInfo& info : figureTable()) {
            const std::string suffix = info.quantity != Quantity::length ? ""
                                       : units == Units::inch            ? "_in"
                                                                         : "_mm";
            const double unit = info.quantity == Quantity::length  ? (units == Units::inch ? 0.0254 : 0.001)
                                : info.quantity == Quantity::angle ? std::atan(1.0) / 45
                                                                   : 1.0;
            const std::array<std::pair<std::string, std::array<double, 2>>, 3> places{
                {{"ride", {from.ride[info.figure], to.ride[info.figure]}},
                 {"bump", {from.stations.back()[info.figure], to.stations.back()[info.figure]}},
                 {"droop", {from.stations.front()[info.figure], to.stations.front()[info.figure]}}}};
            for (const auto& [at, values] : places) {
                const ComparisonRow& row = rowFor(rows, std::string(info.column) + suffix, at);
                expectNumber(row.before, values[0] / unit, row.figure);
                expectNumber(row.after, values[1] / unit, row.figure);
                expectNumber(row.change, (values[1] - values[0]) / unit, row.figure);
            }
        }
    }
}

TEST(CompareTable, TheRowsStandInTheContractsOrder) {
    const std::vector<ComparisonRow> rows =
        comparisonRows(compareTable(compareCars(demo(test::kWagonFile), otherWagon()), Units::inch));
    EXPECT_EQ(rows[0].figure + rows[0].at + rows[0].before + rows[0].after + rows[0].change,
              "figureatbeforeafterchange");
    EXPECT_EQ(rows[1].figure, "travel_in");
    EXPECT_EQ(rows[1].at, "ride");
    EXPECT_EQ(rows[2].at, "bump");
    EXPECT_EQ(rows[3].at, "droop");
    EXPECT_EQ(rows[3 * kFigureCount + 1].figure, demo(test::kWagonFile).links[0].name + " chassis");
    // What was entered beside the links follows, as far as either car has it.
    const auto joint = std::ranges::find(rows, std::string("output_joint_z_in"), &ComparisonRow::figure);
    ASSERT_NE(joint, rows.end());
    EXPECT_EQ(std::next(joint)->figure, "front_track_in");
    EXPECT_EQ(rows.back().figure, "driveline_slip_yoke_inward_in");
    for (std::size_t row = 3 * kFigureCount + 1; row < rows.size(); ++row) {
        EXPECT_EQ(rows[row].at, "ride");
    }
}

TEST(CompareTable, HolesLengthsTurnsAndNumbers) {
    const Car before = demo(test::kWagonFile);
    const Car after = otherWagon();
    const std::vector<ComparisonRow> rows =
        comparisonRows(compareTable(compareCars(before, after), Units::inch));
    const std::string lower = before.links[0].name;
    const std::string upper = before.links[1].name;
    const ComparisonRow& axle = rowFor(rows, lower + " axle");
    EXPECT_EQ(axle.before, before.links[0].axle.inUse().name);
    EXPECT_EQ(axle.after, after.links[0].axle.inUse().name);
    EXPECT_NE(axle.before, axle.after);
    EXPECT_EQ(axle.change, "");
    const ComparisonRow& length = rowFor(rows, upper + " length_in");
    expectNumber(length.change, -0.25, "1/4 in shorter");
    expectNumber(length.before, builtLength(before.links[1]) / 0.0254, "as built");
    ASSERT_TRUE(before.links[1].adjuster);
    const ComparisonRow& turns = rowFor(rows, upper + " turns");
    expectNumber(turns.change, adjusterTurns(-0.00635, *before.links[1].adjuster), "shorter");
    EXPECT_LT(std::stod(turns.change), 0);
    EXPECT_EQ(turns.before + turns.after, "");
    expectNumber(rowFor(rows, "cg_height_in").change, 1.0, "an inch");
    expectNumber(rowFor(rows, "wheelbase_in").change, 0.0, "the same");
    expectNumber(rowFor(rows, "left_front_weight_lb").before, before.cornerWeights.leftFront / 0.45359237,
                 "in pounds");
    expectNumber(rowFor(rows, "front_ratio").after, before.travel.frontRatio, "a ratio has no unit");
    expectNumber(rowFor(rows, "pinion_joint_x_in").after, before.driveline->pinionJoint.x() / 0.0254, "");
    expectNumber(rowFor(rows, "output_angle_deg").after, before.driveline->outputAngle * 45 / std::atan(1.0),
                 "");
}

TEST(CompareTable, ACarWithItselfGivesZerosOrNothing) {
    for (const std::string& file : {test::kWagonFile, test::kCoupeFile}) {
        const Car car = demo(file);
        const std::vector<ComparisonRow> rows =
            comparisonRows(compareTable(compareCars(car, car), Units::inch));
        int numbers = 0;
        for (std::size_t row = 1; row < rows.size(); ++row) {
            EXPECT_EQ(rows[row].before, rows[row].after) << rows[row].figure;
            EXPECT_TRUE(rows[row].change == "0" || rows[row].change.empty())
                << rows[row].figure << ": " << rows[row].change;
            numbers += rows[row].change == "0" ? 1 : 0;
        }
        EXPECT_GT(numbers, 40);
    }
}

TEST(CompareTable, OtherUnitsChangeNothingButTheNames) {
    const Car before = demo(test::kWagonFile);
    Car after = before;
    after.units = before.units == Units::inch ? Units::metric : Units::inch;
    EXPECT_EQ(compareTable(compareCars(before, after), Units::metric),
              compareTable(compareCars(before, before), Units::metric));
    EXPECT_EQ(compareTable(compareCars(after, before), Units::inch),
              compareTable(compareCars(before, before), Units::inch));
}

TEST(CompareTable, UnlikeLinksCompareWhatTheyShare) {
    const Car before = demo(test::kWagonFile);
    Car after = before;
    after.links[1].name = "strut, \"long\"";
    after.links.erase(after.links.begin());
    const std::vector<ComparisonRow> rows =
        comparisonRows(compareTable(compareCars(before, after), Units::inch));
    const ComparisonRow& gone = rowFor(rows, before.links[0].name);
    EXPECT_EQ(gone.before, "present");
    EXPECT_EQ(gone.after + gone.change, "");
    const ComparisonRow& come = rowFor(rows, "strut, \"long\"");
    EXPECT_EQ(come.after, "present");
    EXPECT_EQ(come.before + come.change, "");
}

TEST(CompareTable, WhatIsAbsentIsEmpty) {
    const Car before = demo(test::kWagonFile);
    Car after = before;
    after.driveline.reset();
    const std::vector<ComparisonRow> rows =
        comparisonRows(compareTable(compareCars(before, after), Units::metric));
    for (const char* figure : {"pinion_deg", "pinion_angle_deg", "pinion_joint_x_mm"}) {
        EXPECT_NE(rowFor(rows, figure).before, "") << figure;
        EXPECT_EQ(rowFor(rows, figure).after + rowFor(rows, figure).change, "") << figure;
    }
}

class CompareCommand : public testing::Test {
  protected:
    struct Outcome {
        ExitCode code;
        std::string out;
        std::string err;
    };
    void SetUp() override {
        std::string pattern = (fs::temp_directory_path() / "bolthole-compare-XXXXXX").string();
        ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
        folder_ = pattern;
    }
    void TearDown() override { fs::remove_all(folder_); }

    static Outcome run(const std::vector<std::string>& words) {
        testing::internal::CaptureStdout();
        testing::internal::CaptureStderr();
        const ExitCode code = runCommand(words);
        std::string out = testing::internal::GetCapturedStdout();
        return {code, std::move(out), testing::internal::GetCapturedStderr()};
    }
    std::string saved(const std::string& name, const Car& car) {
        std::ofstream(folder_ / name, std::ios::binary) << writeCar(car, Json());
        return (folder_ / name).string();
    }

    fs::path folder_;
};

TEST_F(CompareCommand, WritesTheTableInTheUnitsOfTheCarAfter) {
    Car after = otherWagon();
    after.units = Units::metric;
    const std::string file = saved("after.bolt.json", after);
    const Outcome metric = run({"compare", test::kWagonFile, file});
    EXPECT_EQ(metric.code, ExitCode::done);
    EXPECT_EQ(metric.err, "");
    EXPECT_THAT(metric.out, StartsWith("figure,at,before,after,change\r\ntravel_mm,ride,0,0,0\r\n"));
    const Outcome inch = run({"compare", "--units", "inch", test::kWagonFile, file});
    EXPECT_THAT(inch.out, StartsWith("figure,at,before,after,change\r\ntravel_in,ride,0,0,0\r\n"));
    EXPECT_THAT(run({"compare", file, test::kWagonFile}).out, HasSubstr("ic_x_in,ride,"));
    EXPECT_EQ(inch.out, compareTable(compareCars(demo(test::kWagonFile), demo(file)), Units::inch));
}

TEST_F(CompareCommand, WritesToAFile) {
    const std::string output = (folder_ / "out.csv").string();
    const Outcome result = run({"compare", test::kWagonFile, test::kCoupeFile, "-o", output});
    EXPECT_EQ(result.code, ExitCode::done);
    EXPECT_EQ(result.out + result.err, "");
    std::ifstream stream(output, std::ios::binary);
    EXPECT_EQ(std::string(std::istreambuf_iterator<char>(stream), {}),
              run({"compare", test::kWagonFile, test::kCoupeFile}).out);
    EXPECT_EQ(run({"compare", test::kWagonFile, test::kCoupeFile, "-o", test::kWagonFile}).code,
              ExitCode::badUse);
}

TEST_F(CompareCommand, NeedsExactlyTwoFiles) {
    for (const std::vector<std::string>& words :
         {std::vector<std::string>{"compare"},
          {"compare", test::kWagonFile},
          {"compare", test::kWagonFile, test::kCoupeFile, test::kWagonFile}}) {
        const Outcome result = run(words);
        EXPECT_EQ(result.code, ExitCode::badUse);
        EXPECT_EQ(result.out, "");
        EXPECT_THAT(result.err, StartsWith("bolthole: compare: "));
        EXPECT_THAT(result.err, HasSubstr("BEFORE AFTER"));
    }
    EXPECT_EQ(run({"compare", test::kWagonFile, (folder_ / "none").string()}).code, ExitCode::badUse);
}

TEST_F(CompareCommand, ACarThatCannotBeAssembledGivesNoTable) {
    Car apart = demo(test::kWagonFile);
    apart.links[0].length = 5.0;
    const std::string file = saved("apart.bolt.json", apart);
    for (const std::vector<std::string>& words :
         {std::vector<std::string>{"compare", test::kWagonFile, file}, {"compare", file, test::kWagonFile}}) {
        const Outcome result = run(words);
        EXPECT_EQ(result.code, ExitCode::cannotAssemble);
        EXPECT_EQ(result.out, "");
        EXPECT_THAT(result.err, StartsWith("bolthole: " + file + ": links"));
    }
}

TEST_F(CompareCommand, TravelOutOfReachIsSaidAndLeavesItsFiguresEmpty) {
    Car far = demo(test::kWagonFile);
    far.travel.bump = 2.0;
    const std::string file = saved("far.bolt.json", far);
    const Outcome result = run({"compare", test::kWagonFile, file});
    EXPECT_EQ(result.code, ExitCode::done);
    EXPECT_THAT(result.err, StartsWith("bolthole: " + file + ": links"));
    const std::vector<ComparisonRow> rows = comparisonRows(result.out);
    EXPECT_EQ(rowFor(rows, "anti_squat_pct", "bump").after, "");
    EXPECT_EQ(rowFor(rows, "anti_squat_pct", "bump").change, "");
    EXPECT_NE(rowFor(rows, "anti_squat_pct", "bump").before, "");
    const double unit = far.units == Units::inch ? 0.0254 : 0.001;
    expectNumber(rowFor(rows, far.units == Units::inch ? "travel_in" : "travel_mm", "bump").after, 2.0 / unit,
                 "what was imposed is known");
}

}  // namespace
}  // namespace bolthole
