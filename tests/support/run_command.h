// Runs a command of the program in the test's own process, and a folder of its own to work in.
#pragma once

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

#include "app/commands/command_line.h"

namespace bolthole::test {

inline const std::string kWagonFile = BOLTHOLE_DEMO_DIR "/long-roof-wagon.bolt.json";
inline const std::string kCoupeFile = BOLTHOLE_DEMO_DIR "/light-coupe.bolt.json";

/// What a command came to.
struct Outcome {
    ExitCode code;
    std::string out;  ///< standard output
    std::string err;  ///< standard error
};

inline Outcome runWords(const std::vector<std::string>& words) {
    testing::internal::CaptureStdout();
    testing::internal::CaptureStderr();
    const ExitCode code = runCommand(words);
    std::string out = testing::internal::GetCapturedStdout();
    std::string err = testing::internal::GetCapturedStderr();
    return {code, std::move(out), std::move(err)};
}

inline std::string bytesOf(const std::filesystem::path& file) {
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

/// A command that paints, with nothing a toolkit could lean on: no display, no platform, no folder of its
/// own.
class BareCommand : public testing::Test {
  protected:
    void SetUp() override {
        std::string pattern = (std::filesystem::temp_directory_path() / "bolthole-test-XXXXXX").string();
        ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
        folder_ = pattern;
        for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM", "XDG_RUNTIME_DIR"}) {
            ::unsetenv(name);
        }
    }
    void TearDown() override { std::filesystem::remove_all(folder_); }

    /// Runs `command` with `words`; what it printed stands in out_ and err_.
    ExitCode runAs(const char* command, std::vector<std::string> words) {
        words.insert(words.begin(), command);
        Outcome outcome = runWords(words);
        out_ = std::move(outcome.out);
        err_ = std::move(outcome.err);
        return outcome.code;
    }
    [[nodiscard]] std::string file(const char* name) const { return (folder_ / name).string(); }

    std::filesystem::path folder_;
    std::string out_;
    std::string err_;
};

}  // namespace bolthole::test
