// compare with a PDF file: exit codes, standard error, and that it needs neither display nor application
// object.
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
using test::kCoupeFile;
using test::kWagonFile;
using testing::HasSubstr;
using testing::StartsWith;

class ChangeCommand : public test::BareCommand {
  protected:
    ExitCode run(const std::vector<std::string>& words) { return runAs("compare", words); }
};

TEST_F(ChangeCommand, WritesThePdfAndNothingElse) {
    for (const char* name : {"sheet.pdf", "SHEET.PDF"}) {
        EXPECT_EQ(run({kWagonFile, kCoupeFile, "-o", file(name)}), ExitCode::done);
        EXPECT_EQ(out_, "");
        EXPECT_EQ(err_, "");
        EXPECT_THAT(bytesOf(file(name)), StartsWith("%PDF-"));
    }
    EXPECT_EQ(run({kWagonFile, kWagonFile, "-o", file("same.pdf")}), ExitCode::done) << err_;
    EXPECT_THAT(bytesOf(file("same.pdf")), StartsWith("%PDF-"));
}

TEST_F(ChangeCommand, TakesPaperFromTheUnits) {
    ASSERT_EQ(run({kWagonFile, kCoupeFile, "-o", file("sheet.pdf")}), ExitCode::done);
    EXPECT_THAT(bytesOf(file("sheet.pdf")), HasSubstr("/MediaBox [0 0 612.000000 792.000000]"));
    ASSERT_EQ(run({kWagonFile, kCoupeFile, "-o", file("sheet.pdf"), "--units", "metric"}), ExitCode::done);
    EXPECT_THAT(bytesOf(file("sheet.pdf")), HasSubstr("/MediaBox [0 0 595.000000 842.000000]"));
}

TEST_F(ChangeCommand, WritesTheTableToAnyOtherFile) {
    ASSERT_EQ(run({kWagonFile, kCoupeFile, "-o", file("sheet.csv")}), ExitCode::done);
    EXPECT_THAT(bytesOf(file("sheet.csv")), StartsWith("figure,at,before,after,change\r\n"));
    ASSERT_EQ(run({kWagonFile, kCoupeFile, "-o", file("pdf")}), ExitCode::done);
    EXPECT_THAT(bytesOf(file("pdf")), StartsWith("figure,at,before,after,change\r\n"));
}

TEST_F(ChangeCommand, RefusesWhatItCannotDo) {
    EXPECT_EQ(run({kWagonFile, "-o", file("sheet.pdf")}), ExitCode::badUse);
    EXPECT_EQ(run({kWagonFile, kCoupeFile, "-o", (folder_ / "none" / "sheet.pdf").string()}),
              ExitCode::badUse);
    EXPECT_THAT(err_, HasSubstr("cannot be written"));
    std::string text = bytesOf(kWagonFile);
    const std::string length = R"("length": 539.56)";
    ASSERT_NE(text.find(length), std::string::npos);
    text.replace(text.find(length), length.size(), R"("length": 2539.56)");
    std::ofstream(file("far.bolt.json")) << text;
    EXPECT_EQ(run({kWagonFile, file("far.bolt.json"), "-o", file("sheet.pdf")}), ExitCode::cannotAssemble);
    EXPECT_THAT(err_, HasSubstr("far.bolt.json: links"));
    EXPECT_FALSE(fs::exists(file("sheet.pdf")));
}

}  // namespace
}  // namespace bolthole
