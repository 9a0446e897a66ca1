// The sheet command: exit codes, what it writes, and that it needs neither display nor application object;
// and the drilling template as drawings for a cutting table, read back by ezdxf.
#include "app/commands/sheet_command.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

#include "app/carfile/car_file.h"
#include "tests/support/run_command.h"

namespace bolthole {
namespace {

namespace fs = std::filesystem;
using test::bytesOf;
using test::kCoupeFile;
using test::kWagonFile;
using testing::AllOf;
using testing::HasSubstr;
using testing::StartsWith;

constexpr std::array kDemos{"long-roof-wagon", "light-coupe", "short-pickup", "gully-roadster",
                            "notch-sedan"};

std::string fileOf(const char* demo) {
    return std::string(BOLTHOLE_DEMO_DIR) + "/" + demo + ".bolt.json";
}

// What another's program says.
std::string saidBy(const std::string& command) {
    std::string text;
    std::FILE* pipe = ::popen(command.c_str(), "r");
    EXPECT_NE(pipe, nullptr);
    std::array<char, 4096> bytes{};
    for (std::size_t count = 1; pipe != nullptr && count > 0;) {
        count = std::fread(bytes.data(), 1, bytes.size(), pipe);
        text.append(bytes.data(), count);
    }
    EXPECT_EQ(::pclose(pipe), 0) << command;
    return text;
}

class SheetCommand : public test::BareCommand {
  protected:
    ExitCode run(const std::vector<std::string>& words) { return runAs("sheet", words); }
    [[nodiscard]] std::string pdf() const { return file("sheet.pdf"); }
    [[nodiscard]] std::string text() const { return saidBy("pdftotext -layout '" + pdf() + "' -"); }
};

TEST_F(SheetCommand, PrintsEverySheetOfEveryDemo) {
    for (const char* demo : kDemos) {
        for (const char* sheet : {"measuring", "test-day", "setup"}) {
            for (const char* paper : {"letter", "a4"}) {
                EXPECT_EQ(run({fileOf(demo), "--of", sheet, "-o", pdf(), "--paper", paper}), ExitCode::done)
                    << err_;
                EXPECT_EQ(out_ + err_, "");
                EXPECT_THAT(bytesOf(pdf()), StartsWith("%PDF-")) << demo << sheet;
            }
        }
    }
}

// The pages a person is promised are pages: one for a test day, one for a card.
TEST_F(SheetCommand, TestDayAndCardAreOnePage) {
    for (const char* demo : kDemos) {
        for (const char* sheet : {"test-day", "setup"}) {
            ASSERT_EQ(run({fileOf(demo), "--of", sheet, "-o", pdf()}), ExitCode::done) << err_;
            EXPECT_THAT(saidBy("pdfinfo '" + pdf() + "'"), testing::ContainsRegex("Pages: +1\n"))
                << demo << sheet;
        }
    }
}

TEST_F(SheetCommand, TheMeasuringSheetNamesThisCarsHoles) {
    ASSERT_EQ(run({kWagonFile, "--of", "measuring", "-o", pdf()}), ExitCode::done) << err_;
    EXPECT_THAT(text(), AllOf(HasSubstr("lower, axle, bottom"), HasSubstr("upper, chassis, high"),
                              HasSubstr("1st"), HasSubstr("rear U-joint"), HasSubstr("driver aboard")));
}

TEST_F(SheetCommand, TheTestDaySheetHoldsTheSetupAndEightPasses) {
    ASSERT_EQ(run({kCoupeFile, "--of", "test-day", "-o", pdf()}), ExitCode::done) << err_;
    const std::string said = text();
    EXPECT_THAT(said, AllOf(HasSubstr("track bar"), HasSubstr("rear shock, rebound"), HasSubstr("330 ft"),
                            HasSubstr("Closed course only")));
    const std::regex seen("nose topped out");
    EXPECT_EQ(std::distance(std::sregex_iterator(said.begin(), said.end(), seen), std::sregex_iterator()), 8);
}

TEST_F(SheetCommand, TheSetupIsAlsoText) {
    ASSERT_EQ(run({kWagonFile, "--of", "setup"}), ExitCode::done) << err_;
    EXPECT_THAT(out_,
                AllOf(StartsWith("Long-roof wagon, "), HasSubstr("lower: axle hole middle, \u2248 21 1/4 in"),
                      HasSubstr("rear shock, rebound 5"), HasSubstr("Anti-squat ")));
    EXPECT_LE(std::ranges::count(out_, '\n'), 14) << "about a dozen lines";
    const std::string kept = file("setup.txt");
    ASSERT_EQ(run({kWagonFile, "--of", "setup", "-o", kept, "--units", "metric"}), ExitCode::done) << err_;
    EXPECT_THAT(bytesOf(kept), HasSubstr("539.6 mm center to center"));
}

// The figures are the sweep's at ride, to the decimals shown.
TEST_F(SheetCommand, TheSetupsFiguresAreTheSweeps) {
    ASSERT_EQ(runAs("sweep", {kWagonFile}), ExitCode::done);
    std::istringstream lines(out_);
    std::string head;
    std::string line;
    std::getline(lines, head);
    double antiSquat = 0;
    while (std::getline(lines, line)) {
        std::vector<std::string> heads;
        std::vector<std::string> cells;
        std::string cell;
        for (std::istringstream of(head); std::getline(of, cell, ',');) {
            heads.push_back(cell);
        }
        for (std::istringstream of(line); std::getline(of, cell, ',');) {
            cells.push_back(cell);
        }
        if (std::abs(std::stod(cells[0])) < 1e-9) {
            const auto column = std::ranges::find(heads, "anti_squat_pct") - heads.begin();
            antiSquat = std::stod(cells[static_cast<std::size_t>(column)]);
        }
    }
    ASSERT_GT(antiSquat, 0);
    ASSERT_EQ(run({kWagonFile, "--of", "setup"}), ExitCode::done);
    std::array<char, 32> expected{};
    std::snprintf(expected.data(), expected.size(), "Anti-squat %.1f ", antiSquat);
    EXPECT_THAT(out_, HasSubstr(expected.data()));
}

TEST_F(SheetCommand, RefusesBadUse) {
    const auto refused = [&](const std::vector<std::string>& words, const std::string& why) {
        EXPECT_EQ(run(words), ExitCode::badUse) << why;
        EXPECT_EQ(out_, "");
        EXPECT_THAT(err_, AllOf(StartsWith("bolthole: "), HasSubstr(why)));
        EXPECT_EQ(std::ranges::count(err_, '\n'), 1) << err_;
        EXPECT_FALSE(fs::exists(pdf()));
    };
    refused({kWagonFile, "-o", pdf()}, "--of: no sheet named");
    refused({kWagonFile, "--of", "measuring"}, "-o: no file given");
    refused({kWagonFile, "--of", "map", "-o", pdf()}, "--of: expected measuring or test-day or setup");
    refused({kWagonFile, "--of", "setup", "-o", pdf(), "--paper", "a3"}, "--paper: expected letter or a4");
    refused({"none.bolt.json", "--of", "setup", "-o", pdf()}, "none.bolt.json");
}

class CutTemplate : public test::BareCommand {
  protected:
    void make(const char* name, const std::vector<std::string>& more = {}) {
        std::vector<std::string> words{kWagonFile, "--link", "lower", "--end", "axle", "-o", file(name)};
        words.insert(words.end(), more.begin(), more.end());
        ASSERT_EQ(runAs("template", words), ExitCode::done) << err_;
        EXPECT_EQ(out_ + err_, "");
    }
    // Every entity as ezdxf reads it, a line each, and what its audit has against the file.
    [[nodiscard]] std::string readByEzdxf(const char* name) const {
        const std::string script = file("read.py");
        std::ofstream(script) << R"(import sys, ezdxf
drawing = ezdxf.readfile(sys.argv[1])
print(drawing.dxfversion, "errors", len(drawing.audit().errors))
for one in drawing.modelspace():
    kind, layer = one.dxftype(), one.dxf.layer
    if kind == "CIRCLE": print(kind, layer, "%.4f %.4f %.4f" % (one.dxf.center.x, one.dxf.center.y, one.dxf.radius))
    if kind == "POINT": print(kind, layer, "%.4f %.4f" % (one.dxf.location.x, one.dxf.location.y))
    if kind == "LINE": print(kind, layer, "%.4f" % (one.dxf.end - one.dxf.start).magnitude)
    if kind == "POLYLINE": print(kind, layer, one.is_closed, " ".join("%.4f,%.4f" % (v.dxf.location.x, v.dxf.location.y) for v in one.vertices))
)";
        return saidBy("/usr/bin/python3 '" + script + "' '" + file(name) + "'");
    }
};

// The wagon's lower axle bracket by hand, from its file: outline x -12.7 to 76.2 mm and z 152.4 to 285.75,
// holes at x 12.7 and z 247.65, 215.9, 184.15, all 15.875 across. Seen from the left the car's front is at
// the left: x turns round.
TEST_F(CutTemplate, EzdxfReadsTheBracketAtTrueSize) {
    make("bracket.dxf", {"--units", "metric"});
    const std::string read = readByEzdxf("bracket.dxf");
    EXPECT_THAT(read,
                AllOf(StartsWith("AC1009 errors 0\n"), HasSubstr("CIRCLE HOLES -12.7000 247.6500 7.9375\n"),
                      HasSubstr("CIRCLE HOLES -12.7000 215.9000 7.9375\n"),
                      HasSubstr("CIRCLE HOLES -12.7000 184.1500 7.9375\n"),
                      HasSubstr("POINT CENTERS -12.7000 215.9000\n"), HasSubstr("LINE CHECK 100.0000\n")));
    EXPECT_THAT(read, HasSubstr("POLYLINE OUTLINE True 12.7000,152.4000 -76.2000,152.4000 -76.2000,285.7500 "
                                "12.7000,285.7500\n"));
}

TEST_F(CutTemplate, InInchesAndFromTheRight) {
    make("bracket.dxf", {"--face", "right"});
    EXPECT_THAT(bytesOf(file("bracket.dxf")),
                AllOf(HasSubstr("inches, 1:1"), HasSubstr("seen from the right")));
    EXPECT_THAT(readByEzdxf("bracket.dxf"),
                AllOf(HasSubstr("CIRCLE HOLES 0.5000 8.5000 0.3125\n"), HasSubstr("LINE CHECK 4.0000\n")));
}

// By SVG 1.1's rules: a viewBox as large as the picture's size in mm makes one unit a millimeter.
TEST_F(CutTemplate, TheSvgIsInMillimeters) {
    make("bracket.svg");
    const std::string svg = bytesOf(file("bracket.svg"));
    const std::regex size(
        "width=\"([0-9.]+)mm\" height=\"([0-9.]+)mm\" viewBox=\"[-0-9.]+ [-0-9.]+ ([0-9.]+) ([0-9.]+)\"");
    std::smatch found;
    ASSERT_TRUE(std::regex_search(svg, found, size)) << svg;
    EXPECT_EQ(found[1], found[3]);
    EXPECT_EQ(found[2], found[4]);
    EXPECT_THAT(
        svg, AllOf(HasSubstr("cx=\"-12.7000\" cy=\"-215.9000\" r=\"7.9375\""), HasSubstr("<g id=\"CHECK\""),
                   HasSubstr("M 12.7000 -152.4000 L -76.2000 -152.4000")));
    const std::string script = file("read.py");
    std::ofstream(script)
        << "import sys, xml.dom.minidom\n"
           "print(len(xml.dom.minidom.parse(sys.argv[1]).getElementsByTagName('circle')))\n";
    EXPECT_EQ(saidBy("/usr/bin/python3 '" + script + "' '" + file("bracket.svg") + "'"), "3\n");
}

}  // namespace
}  // namespace bolthole
