// A pass as recorded: its table read, its start, its 60 ft. Against motions with a closed form: constant
// acceleration, t = sqrt(2 d/a), and constant power, d = sqrt(8 P/9 m) t^1.5 (derived from m v^2/2 = P t).
#include "geometry/passes/recording.h"

#include <gmock/gmock.h>

#include <cmath>
#include <functional>
#include <sstream>

#include "geometry/units/units.h"

namespace bolthole {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

constexpr double kSixtyFeet = 18.288;
constexpr double kRollout = 0.287;

/// A table of time and one value, sampled at `rate` after standing for a second.
std::string sampled(const std::string& header, double rate, double until,
                    const std::function<double(double)>& value) {
    std::ostringstream text;
    text.precision(12);
    text << "Time (s)," << header << ",Satellites\r\n";
    for (int row = 0; row / rate < 1 + until; ++row) {
        const double time = row / rate;
        text << 100 + time << ',' << (time < 1 ? 0 : value(time - 1)) << ",9\r\n";
    }
    return text.str();
}

Recording read(const std::string& bytes) {
    const CsvRows table = readCsv(bytes, kMostRecordedRows + 1);
    const ReadRecording result = readRecording(table, guessColumns(table.rows.front()));
    EXPECT_EQ(result.problem, "");
    return result.recording;
}

double clockOf(double acceleration) {
    return std::sqrt(2 * (kSixtyFeet + kRollout) / acceleration) - std::sqrt(2 * kRollout / acceleration);
}

TEST(Recording, SixtyFootOfAConstantAccelerationRecordedAsSpeed) {
    const Recording recording = read(sampled("Speed (m/s)", 100, 4, [](double t) { return 6 * t; }));
    ASSERT_TRUE(recording.has(Recorded::speed));
    EXPECT_NEAR(findStart(recording).value_or(0), 101, 0.011);
    EXPECT_NEAR(recordedSixtyFoot(recording, 101, kRollout).value_or(0), clockOf(6), 1e-9);
}

TEST(Recording, OrAsAcceleration) {
    const Recording recording = read(sampled("Long. accel (g)", 50, 4, [](double) { return 0.5; }));
    EXPECT_NEAR(findStart(recording).value_or(0), 101, 0.021);
    EXPECT_NEAR(recordedSixtyFoot(recording, 101, kRollout).value_or(0), clockOf(0.5 * 9.80665), 1e-9);
}

TEST(Recording, SixtyFootAtConstantPower) {
    constexpr double kPowerByMass = 150;  // W/kg
    const Recording recording =
        read(sampled("speed", 1000, 5, [](double t) { return 3.6 * std::sqrt(2 * kPowerByMass * t); }));
    const auto timeOf = [](double distance) {
        return std::pow(distance / std::sqrt(8 * kPowerByMass / 9), 2.0 / 3);
    };
    EXPECT_NEAR(recordedSixtyFoot(recording, 101, kRollout).value_or(0),
                timeOf(kSixtyFeet + kRollout) - timeOf(kRollout), 1e-3);
}

TEST(Recording, ThatEndsBeforeSixtyFeetHasNone) {
    const Recording recording = read(sampled("speed (km/h)", 20, 1, [](double t) { return 20 * t; }));
    EXPECT_FALSE(recordedSixtyFoot(recording, 101, kRollout));
}

TEST(Recording, AJoltIsNoStart) {
    const Recording recording = read(sampled("accel (g)", 100, 3, [](double t) {
        return t > 0.5 && t < 0.55 ? 0.4 : t > 1 ? 0.5 : 0.0;
    }));
    EXPECT_NEAR(findStart(recording).value_or(0), 102, 0.02);
}

TEST(Recording, AGapIsBridgedByAStraightLine) {
    std::string text = "time,speed (m/s)\n0,0\n1,4\n2,\n3,12\n4,16\n";
    const Recording recording = read(text);
    EXPECT_TRUE(std::isnan(recording.of(Recorded::speed)[2]));
    EXPECT_NEAR(recordedSixtyFoot(recording, 0, 0).value_or(0), std::sqrt(2 * kSixtyFeet / 4), 1e-9);
}

TEST(Recording, ColumnsAreGuessedByTheirHeaders) {
    const std::vector<RecordedColumn> columns =
        guessColumns({"Elapsed time [ms]", "GPS Speed (mph)", "Engine RPM", "Driveshaft RPM",
                      "Front shock travel (in)", "Rear travel (mm)", "Lat accel", "Long accel (g)", "Lap"});
    const auto unitOf = [&](Recorded kind) {
        for (const RecordedColumn& column : columns) {
            if (column.is == kind) {
                return column.header + "|" + column.unit;
            }
        }
        return std::string("none");
    };
    EXPECT_EQ(unitOf(Recorded::time), "Elapsed time [ms]|ms");
    EXPECT_EQ(unitOf(Recorded::speed), "GPS Speed (mph)|mph");
    EXPECT_EQ(unitOf(Recorded::engineSpeed), "Engine RPM|rpm");
    EXPECT_EQ(unitOf(Recorded::shaftSpeed), "Driveshaft RPM|rpm");
    EXPECT_EQ(unitOf(Recorded::frontTravel), "Front shock travel (in)|in");
    EXPECT_EQ(unitOf(Recorded::rearTravel), "Rear travel (mm)|mm");
    EXPECT_EQ(unitOf(Recorded::acceleration), "Long accel (g)|g");
    EXPECT_TRUE(std::ranges::is_sorted(columns, {}, &RecordedColumn::is));
}

TEST(Recording, UnitsAreThoseOfNistSp811) {
    // Factors from memory: mile 1609.344 m, inch 25.4 mm, g 9.80665 m/s^2.
    const Recording recording =
        read("time [ms],speed (mph),rear travel (in),engine rpm\n0,0,0,0\n500,60,1,60\n1000,60,2,60\n");
    EXPECT_DOUBLE_EQ(recording.time[1], 0.5);
    EXPECT_NEAR(recording.of(Recorded::speed)[1], 26.8224, 1e-12);
    EXPECT_NEAR(recording.of(Recorded::rearTravel)[2], 0.0508, 1e-15);
    EXPECT_NEAR(recording.of(Recorded::engineSpeed)[1], 2 * 3.141592653589793, 1e-12);
}

TEST(Recording, SaysTheRowItCantRead) {
    const auto problemOf = [](const std::string& bytes) {
        const CsvRows table = readCsv(bytes, 100);
        return readRecording(table, {{Recorded::time, "time", "s"}, {Recorded::speed, "speed", "m/s"}})
            .problem;
    };
    EXPECT_THAT(problemOf("time,speed\n0,0\n1,x\n2,3\n"),
                HasSubstr("row 3: expected a number as speed, found \"x\""));
    EXPECT_THAT(problemOf("time,speed\n0,0\n1,1\n1,3\n"), HasSubstr("row 4: expected a later time"));
    EXPECT_THAT(problemOf("time,velocity\n0,0\n1,1\n2,3\n"), HasSubstr("no column \"speed\""));
    EXPECT_THAT(problemOf("time,speed\n0,0\n"), HasSubstr("too few"));
}

TEST(PassRecording, IsRefusedAtItsPlace) {
    PassRecording recording{
        "pass 7.csv", std::string(64, 'a'), 1.5, {{Recorded::time, "t", "s"}, {Recorded::speed, "v", "mph"}}};
    EXPECT_EQ(refusal(recording).reason, "");
    recording.file = "../pass.csv";
    EXPECT_EQ(refusal(recording).path, "file");
    recording.file = "pass.csv";
    recording.sha256 = "abc";
    EXPECT_EQ(refusal(recording).path, "sha256");
    recording.sha256 = std::string(64, '0');
    recording.columns[1].unit = "furlongs";
    EXPECT_EQ(refusal(recording).path, "columns.speed.unit");
    recording.columns.pop_back();
    EXPECT_EQ(refusal(recording).path, "columns");
    recording.columns.clear();
    EXPECT_EQ(refusal(recording).path, "columns.time");
}

}  // namespace
}  // namespace bolthole
