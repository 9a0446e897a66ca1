// Files from a stranger: each is refused, or read, in little more time than the JSON library alone takes for
// as many bytes, and within 300 MB, with one line that says where and why.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "app/carfile/car_file.h"
#include "app/document/document.h"
#include "tests/support/json_reference.h"
#include "tests/support/run_command.h"
#include "tests/support/watched.h"

namespace bolthole {
namespace {

constexpr std::size_t kLargest = 16'000'000;
// No file may take longer than this many times what the JSON library takes for one of its size.
constexpr double kMostParsings = 2;
const std::string kHead = R"({"format":"bolthole-car","version":1,"x":)";

// `part` as often as fits into a file of that size, the largest that is read at all, between the two ends.
std::string filled(const std::string& head, const std::string& part, const std::string& tail,
                   std::size_t size = kLargest) {
    std::string text = head;
    text.reserve(size);
    while (text.size() + part.size() + tail.size() <= size) {
        text += part;
    }
    return text + tail;
}

struct Hostile {
    const char* name;
    std::function<std::string()> bytes;
    const char* reason;  ///< a part of the line
};

std::string manyKeys() {
    std::string keys;
    for (int key = 0; keys.size() < kLargest - 100; ++key) {
        keys += "\"k" + std::to_string(key) + "\":0,";
    }
    keys.back() = '}';
    return kHead + '{' + keys + '}';
}

std::string repeated(const std::string& part, int times) {
    std::string all;
    for (int count = 0; count < times; ++count) {
        all += part;
    }
    return all;
}

// Whole cars, as many as fit; 64 may be kept.
std::string manyStates() {
    std::string car = test::bytesOf(test::kWagonFile);
    car.resize(car.find_last_of('}'));
    const std::string state = R"({"name":"s","car":)" + test::bytesOf(test::kWagonFile) + "},";
    const auto times = static_cast<int>((kLargest - 2 * car.size() - 100) / state.size());
    const std::string states = repeated(state, times);
    return car + R"(,"kept":[)" + states.substr(0, states.size() - 1) + "]}";
}

std::string manyHoles() {
    const std::string hole = R"({"name":"h","at":[1,2,3]})";
    std::string holes = hole;
    for (int count = 1; count < 100'000; ++count) {
        holes += ',' + hole;
    }
    std::string car = test::bytesOf(test::kWagonFile);
    const std::size_t at = car.find("\"holes\": [") + 10;
    return car.insert(at, holes + ',');
}

std::function<std::string()> many(const std::string& head, const std::string& part, const std::string& tail) {
    return [=] { return filled(head, part, tail); };
}

std::vector<Hostile> hostileFiles() {
    return {
        {"nesting", [] { return std::string(kLargest, '['); }, "nested deeper than 64 levels"},
        {"zeros", many("[", "0,", "0]"), "more than 2000000 values"},
        {"zeros in a key", many(kHead + '[', "0,", "0]}"), "more than 2000000 values"},
        {"objects", many(kHead + '[', R"({"a":0},)", "0]}"), "keys, arrays and objects"},
        {"empty objects", many(kHead + '[', "{},", "0]}"), "keys, arrays and objects"},
        {"empty texts", many(kHead + '[', R"("",)", "0]}"), "more than 2000000 values"},
        {"keys", manyKeys, "keys, arrays and objects"},
        {"long text", many(kHead + '"', "a", "\"}"), "wheelbase: missing"},
        {"escapes", many(kHead + '"', R"(\n)", "\"}"), "wheelbase: missing"},
        {"code points", many(kHead + '"', R"(\u00e9)", "\"}"), "wheelbase: missing"},
        {"digits", many(kHead, "1", "}"), "x: expected a number a double can hold"},
        {"decimals", many(kHead + '[', "1.234567890123456e-5,", "0]}"), "wheelbase: missing"},
        {"just enough values", [] { return kHead + '[' + repeated("[0,0,0,0,0],", 398'000) + "0]}"; },
         "wheelbase: missing"},
        {"just enough texts", [] { return kHead + '[' + repeated(R"(["aaaaa","",""],)", 398'000) + "0]}"; },
         "wheelbase: missing"},
        {"kept states", manyStates, "kept"},
        {"holes", manyHoles, "links[0].chassis.holes"},
        {"ill-formed text", many(kHead + '"', "\xff\xfe", "\"}"), "UTF-8"},
        {"one byte too long", [] { return std::string(kLargest + 1, ' '); }, "larger than 16000000 bytes"}};
}

double processorSeconds(const rusage& cost) {
    return static_cast<double>(cost.ru_utime.tv_sec + cost.ru_stime.tv_sec) +
           1e-6 * static_cast<double>(cost.ru_utime.tv_usec + cost.ru_stime.tv_usec);
}

// Runs `work` in a process of its own; gives what that cost and the line it gave.
std::string runApart(const std::function<std::string()>& work, rusage& cost) {
    std::array<int, 2> pipe{};
    EXPECT_EQ(::pipe(pipe.data()), 0);
    const pid_t child = ::fork();
    if (child == 0) {
        const std::string line = work();
        const bool told = ::write(pipe[1], line.data(), std::min<std::size_t>(line.size(), 4000)) >= 0;
        ::_exit(told ? 0 : 1);
    }
    ::close(pipe[1]);
    std::array<char, 4096> text{};
    const ssize_t size = ::read(pipe[0], text.data(), text.size());
    ::close(pipe[0]);
    int status = 0;
    EXPECT_EQ(::wait4(child, &status, 0, &cost), child);
    EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0);
    return {text.data(), static_cast<std::size_t>(std::max<ssize_t>(size, 0))};
}

std::string readApart(const std::string& file, rusage& cost) {
    const auto read = [&file] {
        const ReadResult result = readCarFile(file);
        return result.loaded ? std::string("read") : result.problem.line();
    };
    return runApart(read, cost);
}

// What the JSON library alone takes for a file of small numbers of that size, s of one processor; nothing
// where the time is not held.
double parsingSeconds(std::size_t size) {
    if (isWatched()) {
        return 0;
    }
    const std::string bytes = filled("[", "[0,0,0,0,0],", "0]", size);
    rusage cost{};
    runApart([&bytes] { return std::to_string(valuesInJson(bytes)); }, cost);
    return processorSeconds(cost);
}

class HostileFile : public testing::Test {
  protected:
    void SetUp() override {
        std::string pattern = (std::filesystem::temp_directory_path() / "bolthole-test-XXXXXX").string();
        ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
        folder_ = pattern;
    }
    void TearDown() override { std::filesystem::remove_all(folder_); }
    // One line, and within the bounds.
    static void expectRefused(const std::string& file, const char* reason, double mostSeconds) {
        rusage cost{};
        const std::string line = readApart(file, cost);
        EXPECT_THAT(line, testing::HasSubstr(reason));
        EXPECT_EQ(line.find('\n'), std::string::npos) << line;
        EXPECT_LT(line.size(), 400U);
        if (!isWatched()) {  // which costs time and memory of its own
            EXPECT_LT(processorSeconds(cost), mostSeconds);
            EXPECT_LT(cost.ru_maxrss, 300'000) << "kB";
        }
    }
    std::filesystem::path folder_;
};

// Bounds of time are held against the library in the same run, so that a busy machine changes nothing.
TEST_F(HostileFile, CostsLittleMoreThanParsingAndLessThan300Megabytes) {
    const std::string file = (folder_ / "car.bolt.json").string();
    const double most = kMostParsings * parsingSeconds(kLargest);
    for (const Hostile& hostile : hostileFiles()) {
        SCOPED_TRACE(hostile.name);
        std::ofstream(file, std::ios::binary) << hostile.bytes();
        expectRefused(file, hostile.reason, most);
    }
}

// The command says, after the file's name, what the window says.
TEST_F(HostileFile, WindowAndCommandUseTheSameWords) {
    const std::string wagon = test::bytesOf(test::kWagonFile);
    const auto changed = [&wagon](const std::string& from, const std::string& to) {
        std::string bytes = wagon;
        return bytes.replace(bytes.find(from), from.size(), to);
    };
    const std::vector<std::pair<std::string, std::string>> files{
        {"hello", ""},
        {changed("\"version\": 1", "\"version\": 99"), "version"},
        {changed("2984.5", "NaN"), ""},
        {changed("2984.5", "-1"), "wheelbase"},
        {changed("2984.5", "1e308"), "wheelbase"},
        {changed("2984.5", "\"long\""), "wheelbase"},
        {changed("\"use\": 0", "\"use\": 7"), "links[0].chassis.use"},
        {changed("\"cg_height\"", "\"wheelbase\""), "wheelbase"},
        {changed("\"cg_height\"", "\"cg_hight\""), "cg_height"},
        {changed("Long-roof", "\xff"), ""},
    };
    const std::string file = (folder_ / "car.bolt.json").string();
    for (const auto& [bytes, path] : files) {
        std::ofstream(file, std::ios::binary) << bytes;
        Document document;
        const std::string window = document.open(QString::fromStdString(file)).toStdString();
        SCOPED_TRACE(window);
        EXPECT_THAT(window, testing::StartsWith(path));
        EXPECT_FALSE(window.empty());
        for (const char* command : {"check", "sweep", "holes"}) {
            const test::Outcome outcome = test::runWords({command, file});
            EXPECT_EQ(outcome.code, ExitCode::badUse);
            EXPECT_EQ(outcome.out + outcome.err, "bolthole: " + file + ": " + window + "\n") << command;
        }
    }
}

TEST_F(HostileFile, AGigabyteIsRefusedUnread) {
    const std::filesystem::path file = folder_ / "large.bolt.json";
    std::ofstream(file).close();
    std::filesystem::resize_file(file, 1'000'000'000);  // sparse
    expectRefused(file.string(), "larger than", parsingSeconds(kLargest / 4));
}

TEST_F(HostileFile, ADeviceWithoutEndIsRefused) {
    expectRefused("/dev/zero", "larger than", parsingSeconds(kLargest / 4));
}

}  // namespace
}  // namespace bolthole
