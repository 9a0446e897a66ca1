// bolthole fit: what the passes teach, each pass predicted, recordings held against the fitted launch.
#include <gmock/gmock.h>

#include <QByteArray>
#include <cmath>
#include <nlohmann/json.hpp>

#include "app/carfile/car_file.h"
#include "app/document/recording_file.h"
#include "geometry/fit/fitted_launch.h"
#include "tests/support/csv.h"
#include "tests/support/made_season.h"
#include "tests/support/run_command.h"

namespace bolthole {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;

class FitCommand : public test::BareCommand {
  protected:
    void SetUp() override {
        BareCommand::SetUp();
        SeasonRandom random(3);
        car_ = makeSeason({}, 4, random);
    }
    std::string write() {
        std::ofstream(file("season.bolt.json"), std::ios::binary)
            << writeCar(car_, nlohmann::ordered_json::object());
        return file("season.bolt.json");
    }
    /// A recording of the first pass: the fitted launch's own speed and half a metre a second more, with the
    /// release at 100 s.
    void record() {
        fit_ = fitLaunch(car_);
        const std::optional<LaunchRun> run = fittedLaunch(car_, fit_, 0);
        ASSERT_TRUE(run);
        std::ostringstream text;
        text.precision(12);
        text << "t,v\r\n";
        for (const LaunchRow& row : run->rows) {
            text << 100 + row.time << ',' << (row.speed + 0.5) * 3.6 << "\r\n";
        }
        recorded_ = text.str();
        std::ofstream(file("pass-1.csv"), std::ios::binary) << recorded_;
        car_.passes[0].recording =
            PassRecording{"pass-1.csv",
                          recordingTable(QByteArray::fromStdString(recorded_)).sha256,
                          100,
                          {{Recorded::time, "t", "s"}, {Recorded::speed, "v", "km/h"}}};
    }

    Car car_;
    LaunchFit fit_;
    std::string recorded_;
};

TEST_F(FitCommand, WritesNumbersAndPasses) {
    const LaunchFit fit = fitLaunch(car_);
    ASSERT_EQ(fit.end, FitEnd::done);
    ASSERT_EQ(runAs("fit", {write()}), ExitCode::done) << err_;
    const auto numbers = cellsOfCsv(out_);
    EXPECT_THAT(numbers[0], ElementsAre("figure", "before", "before_u", "after", "after_u", "told_by_pct"));
    ASSERT_THAT(numbers, SizeIs(fit.numbers.size() + 1));
    EXPECT_EQ(numbers[1][0], "friction");
    EXPECT_NEAR(std::stod(numbers[1][3]), fit.numbers[0].after, 1e-9);
    ASSERT_EQ(runAs("fit", {file("season.bolt.json"), "--passes"}), ExitCode::done) << err_;
    const auto passes = cellsOfCsv(out_);
    EXPECT_THAT(passes[0], ElementsAre("pass", "run_s", "predicted_s", "predicted_u"));
    EXPECT_THAT(passes, SizeIs(fit.passes.size() + 1));
}

TEST_F(FitCommand, HoldsRecordingsAgainstTheFittedLaunchSampleBySample) {
    record();
    ASSERT_EQ(runAs("fit", {write(), "--recordings"}), ExitCode::done);
    EXPECT_EQ(err_, "");
    const auto cells = cellsOfCsv(out_);
    EXPECT_THAT(cells[0], ElementsAre("pass", "time_s", "figure", "unit", "recorded", "fitted"));
    ASSERT_GT(cells.size(), 100U);
    for (std::size_t row = 1; row < cells.size(); ++row) {
        EXPECT_THAT(cells[row], ElementsAre("1", testing::_, "speed", "km/h", testing::_, testing::_));
        EXPECT_NEAR(std::stod(cells[row][4]) - std::stod(cells[row][5]), 0.5 * 3.6, 1e-3) << "row " << row;
    }
}

TEST_F(FitCommand, SaysWhichRecordingCantBeHad) {
    record();
    std::ofstream(file("pass-1.csv"), std::ios::binary) << recorded_ << "9999,0\r\n";
    ASSERT_EQ(runAs("fit", {write(), "--recordings"}), ExitCode::done);
    EXPECT_THAT(err_, HasSubstr("passes[0].recording: pass-1.csv is not the file that was recorded"));
    EXPECT_THAT(cellsOfCsv(out_), SizeIs(1));
    std::filesystem::remove(file("pass-1.csv"));
    ASSERT_EQ(runAs("fit", {file("season.bolt.json"), "--recordings"}), ExitCode::done);
    EXPECT_THAT(err_, HasSubstr("passes[0].recording: pass-1.csv is not beside the car's file"));
}

TEST_F(FitCommand, WithoutAPassItSaysWhy) {
    car_.passes.clear();
    EXPECT_EQ(runAs("fit", {write()}), ExitCode::cannotAssemble);
    EXPECT_THAT(err_, HasSubstr("passes: expected a pass with a sixty_foot that is not struck"));
    EXPECT_EQ(out_, "");
}

}  // namespace
}  // namespace bolthole
