// The chart command: exit codes, standard error, and that it needs neither display nor application object.
#include "app/commands/chart_command.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "tests/support/run_command.h"

namespace bolthole {
namespace {

namespace fs = std::filesystem;
using test::bytesOf;
using test::kWagonFile;
using testing::AllOf;
using testing::HasSubstr;
using testing::StartsWith;

class ChartCommand : public test::BareCommand {
  protected:
    ExitCode run(const std::vector<std::string>& words) { return runAs("chart", words); }
    [[nodiscard]] std::string pdf() const { return (folder_ / "chart.pdf").string(); }
    /// A car file with `from` replaced by `to`, once at least.
    std::string changed(const std::string& from, const std::string& to) {
        std::string text = bytesOf(kWagonFile);
        std::size_t at = text.find(from);
        EXPECT_NE(at, std::string::npos) << from;
        for (; at != std::string::npos; at = text.find(from, at + to.size())) {
            text.replace(at, from.size(), to);
        }
        const std::string file = (folder_ / "changed.bolt.json").string();
        std::ofstream(file) << text;
        return file;
    }
};

TEST_F(ChartCommand, WritesThePdfAndNothingElse) {
    for (const char* paper : {"letter", "tabloid", "a4", "a3"}) {
        EXPECT_EQ(run({kWagonFile, "-o", pdf(), "--paper", paper}), ExitCode::done);
        EXPECT_EQ(out_, "");
        EXPECT_EQ(err_, "");
        EXPECT_THAT(bytesOf(pdf()), StartsWith("%PDF-"));
    }
}

TEST_F(ChartCommand, TakesPaperFromTheUnits) {
    ASSERT_EQ(run({kWagonFile, "-o", pdf()}), ExitCode::done);
    EXPECT_THAT(bytesOf(pdf()), HasSubstr("/MediaBox [0 0 792.000000 612.000000]"));
    ASSERT_EQ(run({kWagonFile, "-o", pdf(), "--units", "metric"}), ExitCode::done);
    EXPECT_THAT(bytesOf(pdf()), HasSubstr("/MediaBox [0 0 842.000000 595.000000]"));
}

TEST_F(ChartCommand, RefusesBadUse) {
    const auto refused = [&](const std::vector<std::string>& words, const std::string& why) {
        EXPECT_EQ(run(words), ExitCode::badUse) << why;
        EXPECT_EQ(out_, "");
        EXPECT_THAT(err_, AllOf(StartsWith("bolthole: "), HasSubstr(why)));
        EXPECT_EQ(std::ranges::count(err_, '\n'), 1) << err_;
        EXPECT_FALSE(fs::exists(pdf()));
    };
    refused({kWagonFile}, "-o");
    refused({"-o", pdf()}, "no file given");
    refused({kWagonFile, "-o", pdf(), "--paper", "a5"}, "--paper: expected letter or tabloid or a4 or a3");
    refused({kWagonFile, "-o", pdf(), "--lengths", "free"}, "--lengths: expected keep or refit or uppers");
    refused({(folder_ / "none.bolt.json").string(), "-o", pdf()}, "none.bolt.json");
    refused({kWagonFile, "-o", (folder_ / "none" / "chart.pdf").string()}, "cannot be written");
}

TEST_F(ChartCommand, RefusesUppersOnACarWithoutAnUpperRod) {
    const std::string car = changed(R"("name": "upper")", R"("role": "lower", "name": "upper")");
    EXPECT_EQ(run({car, "-o", pdf(), "--lengths", "uppers"}), ExitCode::badUse);
    EXPECT_THAT(err_, HasSubstr("needs an upper link"));
    EXPECT_EQ(run({car, "-o", pdf()}), ExitCode::done) << err_;
}

TEST_F(ChartCommand, EndsWithOneWhereNoCombinationCanBeAssembled) {
    const std::string car = changed(R"("length": 539.56)", R"("length": 2539.56)");
    EXPECT_EQ(run({car, "-o", pdf(), "--lengths", "keep"}), ExitCode::cannotAssemble);
    EXPECT_EQ(out_, "");
    EXPECT_THAT(err_, HasSubstr("no combination of holes can be assembled"));
    EXPECT_FALSE(fs::exists(pdf()));
}

}  // namespace
}  // namespace bolthole
