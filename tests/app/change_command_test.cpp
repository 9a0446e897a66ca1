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

#include "app/command_line.h"

namespace bolthole {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;
using testing::StartsWith;

const std::string kWagon = BOLTHOLE_DEMO_DIR "/long-roof-wagon.bolt.json";
const std::string kCoupe = BOLTHOLE_DEMO_DIR "/light-coupe.bolt.json";

std::string bytesOf(const fs::path& file) {
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

class ChangeCommand : public testing::Test {
  protected:
    void SetUp() override {
        std::string pattern = (fs::temp_directory_path() / "bolthole-test-XXXXXX").string();
        ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
        folder_ = pattern;
        // Nothing that a toolkit could lean on.
        for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM", "XDG_RUNTIME_DIR"}) {
            ::unsetenv(name);
        }
    }
    void TearDown() override { fs::remove_all(folder_); }

    ExitCode run(std::vector<std::string> words) {
        words.insert(words.begin(), "compare");
        testing::internal::CaptureStdout();
        testing::internal::CaptureStderr();
        const ExitCode code = runCommand(words);
        out_ = testing::internal::GetCapturedStdout();
        err_ = testing::internal::GetCapturedStderr();
        return code;
    }
    [[nodiscard]] std::string file(const char* name) const { return (folder_ / name).string(); }

    fs::path folder_;
    std::string out_;
    std::string err_;
};

TEST_F(ChangeCommand, WritesThePdfAndNothingElse) {
    for (const char* name : {"sheet.pdf", "SHEET.PDF"}) {
        EXPECT_EQ(run({kWagon, kCoupe, "-o", file(name)}), ExitCode::done);
        EXPECT_EQ(out_, "");
        EXPECT_EQ(err_, "");
        EXPECT_THAT(bytesOf(file(name)), StartsWith("%PDF-"));
    }
    EXPECT_EQ(run({kWagon, kWagon, "-o", file("same.pdf")}), ExitCode::done) << err_;
    EXPECT_THAT(bytesOf(file("same.pdf")), StartsWith("%PDF-"));
}

TEST_F(ChangeCommand, TakesPaperFromTheUnits) {
    ASSERT_EQ(run({kWagon, kCoupe, "-o", file("sheet.pdf")}), ExitCode::done);
    EXPECT_THAT(bytesOf(file("sheet.pdf")), HasSubstr("/MediaBox [0 0 612.000000 792.000000]"));
    ASSERT_EQ(run({kWagon, kCoupe, "-o", file("sheet.pdf"), "--units", "metric"}), ExitCode::done);
    EXPECT_THAT(bytesOf(file("sheet.pdf")), HasSubstr("/MediaBox [0 0 595.000000 842.000000]"));
}

TEST_F(ChangeCommand, WritesTheTableToAnyOtherFile) {
    ASSERT_EQ(run({kWagon, kCoupe, "-o", file("sheet.csv")}), ExitCode::done);
    EXPECT_THAT(bytesOf(file("sheet.csv")), StartsWith("figure,at,before,after,change\r\n"));
    ASSERT_EQ(run({kWagon, kCoupe, "-o", file("pdf")}), ExitCode::done);
    EXPECT_THAT(bytesOf(file("pdf")), StartsWith("figure,at,before,after,change\r\n"));
}

TEST_F(ChangeCommand, RefusesWhatItCannotDo) {
    EXPECT_EQ(run({kWagon, "-o", file("sheet.pdf")}), ExitCode::badUse);
    EXPECT_EQ(run({kWagon, kCoupe, "-o", (folder_ / "none" / "sheet.pdf").string()}), ExitCode::badUse);
    EXPECT_THAT(err_, HasSubstr("cannot be written"));
    std::string text = bytesOf(kWagon);
    const std::string length = R"("length": 539.56)";
    ASSERT_NE(text.find(length), std::string::npos);
    text.replace(text.find(length), length.size(), R"("length": 2539.56)");
    std::ofstream(file("far.bolt.json")) << text;
    EXPECT_EQ(run({kWagon, file("far.bolt.json"), "-o", file("sheet.pdf")}), ExitCode::cannotAssemble);
    EXPECT_THAT(err_, HasSubstr("far.bolt.json: links"));
    EXPECT_FALSE(fs::exists(file("sheet.pdf")));
}

}  // namespace
}  // namespace bolthole
