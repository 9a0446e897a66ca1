// Files as earlier versions of the program wrote them, kept in versions/: they still open, mean the same, and
// a save loses none of their keys. A change of the format adds a file here, never takes one away.
#include <gmock/gmock.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "app/carfile/car_file.h"
#include "geometry/car/faults.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/kinematics/trace.h"

namespace bolthole {
namespace {

using Json = nlohmann::ordered_json;

const std::filesystem::path kVersions = BOLTHOLE_SOURCE_DIR "/tests/app/carfile/versions";

std::string bytesOf(const std::filesystem::path& file) {
    std::ostringstream bytes;
    bytes << std::ifstream(file, std::ios::binary).rdbuf();
    return bytes.str();
}

/// Every key that `wanted` has stands in `found` too, with the same value.
void expectHolds(const Json& found, const Json& wanted, const std::string& where) {
    ASSERT_EQ(found.type(), wanted.type()) << where;
    if (wanted.is_object()) {
        for (const auto& [key, value] : wanted.items()) {
            ASSERT_TRUE(found.contains(key)) << where << '.' << key;
            expectHolds(found[key], value, where + '.' + key);
        }
    } else if (wanted.is_array()) {
        ASSERT_EQ(found.size(), wanted.size()) << where;
        for (std::size_t item = 0; item < wanted.size(); ++item) {
            expectHolds(found[item], wanted[item], where + '[' + std::to_string(item) + ']');
        }
    } else {
        EXPECT_EQ(found, wanted) << where;
    }
}

/// The holes of a bracket against what the file says in mm.
void expectHoles(const Bracket& bracket, const Json& written) {
    ASSERT_EQ(bracket.holes.size(), written["holes"].size());
    for (std::size_t hole = 0; hole < bracket.holes.size(); ++hole) {
        for (int axis = 0; axis < 3; ++axis) {
            EXPECT_NEAR(bracket.holes[hole].at[axis],
                        written["holes"][hole]["at"][static_cast<std::size_t>(axis)].get<double>() / 1000,
                        1e-12);
        }
    }
    EXPECT_EQ(bracket.use, written["use"].get<int>());
}

TEST(EarlierVersions, StillOpenAndMeanTheSame) {
    int files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(kVersions)) {
        SCOPED_TRACE(entry.path().filename().string());
        const Json written = Json::parse(bytesOf(entry.path()));
        const ReadResult read = readCarFile(entry.path().string());
        ASSERT_TRUE(read.loaded) << read.problem.line();
        const Car& car = read.loaded->car;
        EXPECT_TRUE(findFaults(car).empty());
        EXPECT_TRUE(computeTrace(car).assembly.usable());
        EXPECT_NEAR(car.wheelbase, written["wheelbase"].get<double>() / 1000, 1e-12);
        EXPECT_NEAR(car.cornerWeights.leftFront, written["corner_weights"]["left_front"].get<double>(),
                    1e-12);
        ASSERT_EQ(car.links.size(), written["links"].size());
        for (std::size_t link = 0; link < car.links.size(); ++link) {
            expectHoles(car.links[link].chassis, written["links"][link]["chassis"]);
            expectHoles(car.links[link].axle, written["links"][link]["axle"]);
        }
        EXPECT_EQ(car.kept.size(), written.contains("kept") ? written["kept"].size() : 0);
        EXPECT_EQ(car.passes.size(), written.contains("passes") ? written["passes"].size() : 0);
        ++files;
    }
    EXPECT_GE(files, 3);
}

TEST(EarlierVersions, LoseNoKeyInASave) {
    for (const auto& entry : std::filesystem::directory_iterator(kVersions)) {
        SCOPED_TRACE(entry.path().filename().string());
        const Json written = Json::parse(bytesOf(entry.path()));
        ReadResult read = readCarFile(entry.path().string());
        ASSERT_TRUE(read.loaded) << read.problem.line();
        const Json saved = Json::parse(writeCar(read.loaded->car, read.loaded->source));
        expectHolds(saved, written, "car");
    }
}

// A file without the marks of what was measured is one of measured numbers: nobody is told to measure again.
TEST(EarlierVersions, TheirNumbersCountAsMeasured) {
    const ReadResult read = readCarFile((kVersions / "links-alone.bolt.json").string());
    ASSERT_TRUE(read.loaded) << read.problem.line();
    EXPECT_TRUE(startingNumbers(read.loaded->car).empty());
}

}  // namespace
}  // namespace bolthole
