// bolthole holes: exit codes, options, where the table goes.
#include <gmock/gmock.h>

#include <algorithm>
#include <clocale>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "app/commands/command_line.h"
#include "tests/support/csv.h"
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

Outcome runHoles(std::vector<std::string> words) {
    words.insert(words.begin(), "holes");
    return test::runWords(words);
}

/// The cells of one column, without its head.
std::vector<std::string> columnOf(const std::string& csv, const std::string& name) {
    const std::vector<std::vector<std::string>> cells = cellsOfCsv(csv);
    std::vector<std::string> column;
    const auto found = std::ranges::find(cells.at(0), name);
    EXPECT_NE(found, cells.at(0).end()) << name;
    for (std::size_t row = 1; row < cells.size() && found != cells.at(0).end(); ++row) {
        column.push_back(cells[row].at(static_cast<std::size_t>(found - cells[0].begin())));
    }
    return column;
}

/// A link of one side with its first two holes at each end.
Json oneSide(Json link, const std::string& side) {
    link["name"] = link["name"].get<std::string>() + " " + side;
    link["side"] = side;
    for (const char* end : {"chassis", "axle"}) {
        Json& holes = link[end]["holes"];
        holes = Json(std::vector<Json>{holes[0], holes[1]});
        for (Json& hole : holes) {
            hole["at"][1] = hole["at"][1].get<double>() * (side == "right" ? -1 : 1);
        }
    }
    return link;
}

/// One line, nothing on standard output.
void expectRefused(const Outcome& outcome, ExitCode code, const std::string& reason) {
    EXPECT_EQ(outcome.code, code);
    EXPECT_EQ(outcome.out, "");
    EXPECT_THAT(outcome.err, AllOf(StartsWith("bolthole: "), HasSubstr(reason), EndsWith("\n")));
    EXPECT_EQ(std::ranges::count(outcome.err, '\n'), 1);
}

class HolesCommand : public testing::Test {
  protected:
    void SetUp() override {
        std::string pattern = (fs::temp_directory_path() / "bolthole-test-XXXXXX").string();
        ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
        folder = pattern;
    }
    void TearDown() override { fs::remove_all(folder); }

    template <typename Change>
    std::string changed(const std::string& car, Change change) {
        Json json = Json::parse(bytesOf(car));
        change(json);
        std::ofstream(folder / "changed.bolt.json", std::ios::binary) << json.dump();
        return (folder / "changed.bolt.json").string();
    }
    // The coupe with so many holes at each end of every link.
    std::string drilled(int holes) {
        return changed(test::kCoupeFile, [holes](Json& car) {
            car["travel"] = {{"bump", 0}, {"droop", 0}, {"steps", 2}};
            for (Json& link : car["links"]) {
                for (const char* end : {"chassis", "axle"}) {
                    const Json first = link[end]["holes"][0];
                    link[end]["holes"] = Json(std::vector<Json>(static_cast<std::size_t>(holes), first));
                    link[end]["use"] = 0;
                }
            }
        });
    }
    std::size_t filesThere() const {
        return static_cast<std::size_t>(
            std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
    }

    fs::path folder;
};

}  // namespace

TEST_F(HolesCommand, GivesARowACombinationAndNothingElse) {
    const Outcome wagon = runHoles({test::kWagonFile});
    EXPECT_EQ(wagon.code, ExitCode::done);
    EXPECT_EQ(wagon.err, "");
    EXPECT_EQ(cellsOfCsv(wagon.out).size(), 1U + 6);
    const Outcome coupe = runHoles({test::kCoupeFile});
    EXPECT_EQ(coupe.code, ExitCode::done);
    EXPECT_EQ(coupe.err, "");
    EXPECT_EQ(cellsOfCsv(coupe.out).size(), 1U + 1296);
    EXPECT_EQ(std::ranges::count(columnOf(coupe.out, "in_use"), "yes"), 1);
}

TEST_F(HolesCommand, SaysHowTheLengthsWereTreatedInEveryRow) {
    for (const std::string links : {"keep", "refit", "uppers"}) {
        for (const std::string& cell :
             columnOf(runHoles({test::kWagonFile, "--lengths", links}).out, "links")) {
            EXPECT_EQ(cell, links);
        }
    }
    EXPECT_EQ(columnOf(runHoles({test::kWagonFile}).out, "links").at(0), "uppers")
        << "every upper has an adjuster";
    const std::string fixed = changed(test::kWagonFile, [](Json& car) { car["links"][1].erase("adjuster"); });
    EXPECT_EQ(columnOf(runHoles({fixed}).out, "links").at(0), "keep");
}

// In every treatment but reset the present choice is the car as it stands.
TEST_F(HolesCommand, ThePresentCombinationIsTheSweepsRide) {
    testing::internal::CaptureStdout();
    ASSERT_EQ(runCommand({"sweep", test::kWagonFile}), ExitCode::done);
    const std::string sweep = testing::internal::GetCapturedStdout();
    const std::string holes = runHoles({test::kWagonFile, "--lengths", "keep"}).out;
    const std::vector<std::string> inUse = columnOf(holes, "in_use");
    const auto row = static_cast<std::size_t>(std::ranges::find(inUse, "yes") - inUse.begin());
    ASSERT_LT(row, inUse.size());
    for (const char* column :
         {"ic_x_in", "ic_z_in", "svsa_angle_deg", "anti_squat_pct", "axle_x_in", "pinion_deg"}) {
        EXPECT_NEAR(std::stod(columnOf(holes, column).at(row)), std::stod(columnOf(sweep, column).at(40)),
                    1e-9)
            << column;
    }
    EXPECT_EQ(columnOf(holes, "anti_squat_droop_pct").at(row), columnOf(sweep, "anti_squat_pct").front());
    EXPECT_EQ(columnOf(holes, "anti_squat_bump_pct").at(row), columnOf(sweep, "anti_squat_pct").back());
}

TEST_F(HolesCommand, UnitsAreTheCarsOrThoseAskedFor) {
    const std::string inch = runHoles({test::kWagonFile}).out;
    const std::string metric = runHoles({test::kWagonFile, "--units", "metric"}).out;
    const std::vector<std::string> in = columnOf(inch, "ic_x_in");
    const std::vector<std::string> mm = columnOf(metric, "ic_x_mm");
    ASSERT_EQ(in.size(), mm.size());
    for (std::size_t row = 0; row < in.size(); ++row) {
        EXPECT_NEAR(std::stod(in[row]) * 25.4, std::stod(mm[row]), 1e-6);
    }
    EXPECT_EQ(columnOf(inch, "anti_squat_pct"), columnOf(metric, "anti_squat_pct"));
}

TEST_F(HolesCommand, OutputGoesToTheFileWholeOrNotAtAll) {
    const fs::path target = folder / "holes.csv";
    const Outcome result = runHoles({test::kCoupeFile, "-o", target.string()});
    EXPECT_EQ(result.code, ExitCode::done);
    EXPECT_EQ(result.out + result.err, "");
    EXPECT_EQ(bytesOf(target), runHoles({test::kCoupeFile}).out);
    EXPECT_EQ(filesThere(), 1U);
    expectRefused(runHoles({test::kCoupeFile, "-o", (folder / "no" / "holes.csv").string()}),
                  ExitCode::badUse, "cannot be written");
    EXPECT_EQ(filesThere(), 1U);
}

TEST_F(HolesCommand, RefusesUppersWithoutAnUpperRod) {
    const std::string without = changed(test::kCoupeFile, [](Json& car) { car["links"].erase(1); });
    expectRefused(runHoles({without, "--lengths", "uppers"}), ExitCode::badUse,
                  "'uppers' needs an upper link and the car has none, expected keep or refit");
}

TEST_F(HolesCommand, OneThatCannotBeAssembledAtAllEndsWith1) {
    const std::string apart = changed(test::kWagonFile, [](Json& car) { car["links"][0]["length"] = 25; });
    expectRefused(runHoles({apart, "--lengths", "keep"}), ExitCode::cannotAssemble, "links[0]: ");
    EXPECT_EQ(runHoles({apart, "--lengths", "refit"}).code, ExitCode::done);
    const std::string loose = changed(test::kCoupeFile, [](Json& car) { car["links"].erase(1); });
    expectRefused(runHoles({loose}), ExitCode::cannotAssemble,
                  "nothing keeps the axle housing from turning over");
    EXPECT_EQ(runHoles({loose, "-o", (folder / "none.csv").string()}).code, ExitCode::cannotAssemble);
    EXPECT_FALSE(fs::exists(folder / "none.csv"));
}

TEST_F(HolesCommand, MoreThanManyAreAskedForFirst) {
    const std::string many = drilled(7);  // 7^6
    expectRefused(runHoles({many}), ExitCode::badUse,
                  "links: 117649 hole combinations, expected at most 65536; --all computes them all");
    const fs::path target = folder / "all.csv";
    const Outcome all = runHoles({many, "--all", "-o", target.string()});
    EXPECT_EQ(all.code, ExitCode::done);
    EXPECT_EQ(all.err, "");
    const std::string table = bytesOf(target);
    EXPECT_EQ(std::ranges::count(table, '\n'), 1 + 117649);
    expectRefused(runHoles({drilled(64)}), ExitCode::badUse, "links: 68719476736 hole combinations");
}

TEST_F(HolesCommand, TiesSidesOnRequest) {
    const std::string split = changed(test::kCoupeFile, [](Json& car) {
        car["travel"]["steps"] = 2;
        car["links"] = Json{oneSide(car["links"][0], "left"), oneSide(car["links"][0], "right"),
                            oneSide(car["links"][1], "left"), oneSide(car["links"][1], "right"),
                            oneSide(car["links"][2], "center")};
    });
    EXPECT_EQ(cellsOfCsv(runHoles({split}).out).size(), 1U + 1024);
    EXPECT_EQ(cellsOfCsv(runHoles({split, "--tie"}).out).size(), 1U + 64);
}

TEST_F(HolesCommand, RefusesBadOptions) {
    expectRefused(runHoles({test::kWagonFile, "--lengths", "longer"}), ExitCode::badUse,
                  "--lengths: expected keep or refit or uppers, found 'longer'");
    expectRefused(runHoles({test::kWagonFile, "--all=yes"}), ExitCode::badUse, "--all takes no value");
    expectRefused(runHoles({test::kWagonFile, "--all", "--all"}), ExitCode::badUse, "--all was given twice");
    expectRefused(runHoles({test::kWagonFile, "--every"}), ExitCode::badUse, "unknown option --every");
    expectRefused(runHoles({}), ExitCode::badUse,
                  "expected bolthole holes CAR [--lengths keep|refit|uppers] [--tie] [--all] [-o FILE] "
                  "[--units inch|metric]");
    EXPECT_EQ(runHoles({"--all", "--", test::kWagonFile}).code, ExitCode::done);
    EXPECT_EQ(runHoles({"--tie", test::kWagonFile, "--all"}).code, ExitCode::done);
}

TEST_F(HolesCommand, NoLocaleDecides) {
    const std::string expected = runHoles({test::kWagonFile}).out;
    const std::string before = std::setlocale(LC_ALL, nullptr);
    for (const char* name : {"de_DE.UTF-8", "C.UTF-8", "C"}) {
        if (std::setlocale(LC_ALL, name) != nullptr) {
            EXPECT_EQ(runHoles({test::kWagonFile}).out, expected) << name;
        }
    }
    std::setlocale(LC_ALL, before.c_str());
}

}  // namespace bolthole
