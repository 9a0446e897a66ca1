// bolthole launch and bolthole try: tables, units, what is missing or wrong, and laws that hold for any
// launch.
#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <nlohmann/json.hpp>

#include "tests/support/csv.h"
#include "tests/support/run_command.h"

namespace bolthole {
namespace {

using LaunchJson = nlohmann::ordered_json;
using LaunchCells = std::vector<std::vector<std::string>>;

class LaunchCommand : public test::BareCommand {
  protected:
    LaunchCells launched(std::vector<std::string> words) {
        EXPECT_EQ(runAs("launch", std::move(words)), ExitCode::done) << err_;
        EXPECT_EQ(err_, "");
        return cellsOfCsv(out_);
    }
    std::map<std::string, std::string> summaryOf(const std::string& car) {
        std::map<std::string, std::string> summary;
        for (const std::vector<std::string>& row : launched({car, "--summary", "--units", "metric"})) {
            summary[row[0]] = row[1];
        }
        return summary;
    }
    template <typename Change>
    std::string coupeWith(Change change) {
        LaunchJson json = LaunchJson::parse(test::bytesOf(test::kCoupeFile));
        change(json);
        std::ofstream(file("changed.bolt.json"), std::ios::binary) << json.dump();
        return file("changed.bolt.json");
    }
    LaunchJson& reboundOf(LaunchJson& car) { return car["launch"]["front"]["damping"]["rebound"]; }
};

}  // namespace

TEST_F(LaunchCommand, WritesARowEveryHundredthUntilSixtyFeetAndTwoAndAHalfSeconds) {
    const LaunchCells cells = launched({test::kCoupeFile, "--units", "metric"});
    EXPECT_THAT(cells[0],
                testing::ElementsAre("time_s", "distance_mm", "speed_m_s", "acceleration_g", "engine_rpm",
                                     "slip_pct", "rear_travel_mm", "front_travel_mm", "nose_up_deg",
                                     "rear_load_N", "front_load_N", "thrust_N", "grip_N"));
    ASSERT_GE(cells.size(), 252U);
    for (std::size_t row = 1; row < cells.size(); ++row) {
        ASSERT_EQ(cells[row].size(), 13U);
        EXPECT_NEAR(std::stod(cells[row][0]), 0.01 * (static_cast<double>(row) - 1), 1e-12);
        EXPECT_LE(std::abs(std::stod(cells[row][11])), std::stod(cells[row][12]) + 1e-6);  // thrust, grip
    }
    EXPECT_GE(std::stod(cells.back()[0]), 2.5 - 1e-9);
    EXPECT_GE(std::stod(cells.back()[1]), 18'288);
}

TEST_F(LaunchCommand, GivesTheSamePhysicsInBothUnits) {
    const LaunchCells metric = launched({test::kWagonFile, "--units", "metric", "--every", "0.1"});
    const LaunchCells inch = launched({test::kWagonFile, "--units", "inch", "--every", "0.1"});
    EXPECT_THAT(inch[0],
                testing::ElementsAre("time_s", "distance_in", "speed_mph", "acceleration_g", "engine_rpm",
                                     "slip_pct", "rear_travel_in", "front_travel_in", "nose_up_deg",
                                     "rear_load_lb", "front_load_lb", "thrust_lb", "grip_lb"));
    ASSERT_EQ(inch.size(), metric.size());
    const std::vector<double> factors{1,
                                      25.4,
                                      0.44704,
                                      1,
                                      1,
                                      1,
                                      25.4,
                                      25.4,
                                      1,
                                      4.4482216152605,
                                      4.4482216152605,
                                      4.4482216152605,
                                      4.4482216152605};
    for (std::size_t row = 1; row < inch.size(); ++row) {
        for (std::size_t column = 0; column < factors.size(); ++column) {
            const double value = std::stod(metric[row][column]);
            EXPECT_NEAR(std::stod(inch[row][column]) * factors[column], value, 1e-8 * (1 + std::abs(value)))
                << metric[0][column];
        }
    }
}

TEST_F(LaunchCommand, SummarizesInSixFigures) {
    const LaunchCells cells = launched({test::kCoupeFile, "--summary", "--units", "metric"});
    EXPECT_THAT(cells[0], testing::ElementsAre("figure", "value", "unit"));
    ASSERT_EQ(cells.size(), 7U);
    const std::vector<std::pair<std::string, std::string>> figures{
        {"sixty_foot_s", "s"}, {"from_release_s", "s"},     {"topped_out_s", "s"},
        {"front_up_s", "s"},   {"largest_slip_pct", "pct"}, {"least_rear_load_N", "N"}};
    for (std::size_t row = 1; row < cells.size(); ++row) {
        EXPECT_EQ(cells[row][0], figures[row - 1].first);
        EXPECT_EQ(cells[row][2], figures[row - 1].second);
    }
    EXPECT_LT(std::stod(cells[1][1]), std::stod(cells[2][1]));  // the clock starts after the rollout
}

TEST_F(LaunchCommand, TakesAClickPastTheEndsForTheEnd) {
    const auto summaryAt = [this](int click) {
        return summaryOf(coupeWith([&](LaunchJson& car) { reboundOf(car)["at"] = click; }));
    };
    EXPECT_EQ(summaryAt(24), summaryAt(12));
    EXPECT_NE(summaryAt(12), summaryAt(6));
}

TEST_F(LaunchCommand, NamesEachMissingNumberOnALineOfItsOwn) {
    const std::string car = coupeWith([](LaunchJson& json) {
        json["launch"].erase("wheel_inertia");
        json["launch"]["engine"].erase("torque");
    });
    EXPECT_EQ(runAs("launch", {car}), ExitCode::cannotAssemble);
    EXPECT_EQ(out_, "");
    EXPECT_EQ(std::count(err_.begin(), err_.end(), '\n'), 2) << err_;
    EXPECT_THAT(err_, testing::HasSubstr(": launch.wheel_inertia: missing"));
    EXPECT_THAT(err_, testing::HasSubstr(": launch.engine.torque: missing"));
}

TEST_F(LaunchCommand, RefusesBadTablesAtTheirPlace) {
    const auto lineFor = [this](const std::function<void(LaunchJson&)>& change) {
        EXPECT_EQ(runAs("launch", {coupeWith(change)}), ExitCode::badUse);
        EXPECT_EQ(out_, "");
        return err_;
    };
    EXPECT_THAT(lineFor([](LaunchJson& car) { car["launch"]["front"]["damping"]["speeds"][1] = 10; }),
                testing::HasSubstr("launch.front.damping.speeds[1]"));
    EXPECT_THAT(lineFor([this](LaunchJson& car) { reboundOf(car)["force"][1].erase(0); }),
                testing::HasSubstr("launch.front.damping.rebound.force[1]"));
    EXPECT_THAT(lineFor([](LaunchJson& car) { car["launch"]["engine"]["torque"][2][0] = 1500; }),
                testing::HasSubstr("launch.engine.torque[2][0]"));
    EXPECT_EQ(runAs("launch", {test::kCoupeFile, "--every", "0"}), ExitCode::badUse);
}

TEST_F(LaunchCommand, TriesEveryChangeMostPromisingFirst) {
    EXPECT_EQ(runAs("try", {test::kCoupeFile, "--units", "metric"}), ExitCode::done) << err_;
    const LaunchCells cells = cellsOfCsv(out_);
    EXPECT_THAT(cells[0], testing::ElementsAre("change", "sixty_foot_s", "change_s", "change_u", "chance_pct",
                                               "least_rear_load_change_N", "topped_out_change_s", "bolts"));
    ASSERT_GT(cells.size(), 8U);
    double before = 100;
    for (std::size_t row = 1; row < cells.size(); ++row) {
        ASSERT_EQ(cells[row].size(), 8U) << cells[row][0];
        const double chance = std::stod(cells[row][4]);
        EXPECT_LE(chance, before) << cells[row][0];
        before = chance;
    }
}

// Each change is worked out alone; that of a click is the launch of a car whose click was turned.
TEST_F(LaunchCommand, TryingAClickIsLaunchingTheCarWithIt) {
    EXPECT_EQ(runAs("try", {test::kCoupeFile}), ExitCode::done);
    std::map<std::string, double> tried;
    for (const std::vector<std::string>& row : cellsOfCsv(out_)) {
        if (row[0] != "change" && !row[1].empty()) {
            tried[row[0]] = std::stod(row[1]);
        }
    }
    const int present =
        LaunchJson::parse(test::bytesOf(test::kCoupeFile))["launch"]["front"]["damping"]["rebound"]["at"];
    const double turned = std::stod(
        summaryOf(coupeWith([&](LaunchJson& car) { reboundOf(car)["at"] = present + 2; }))["sixty_foot_s"]);
    EXPECT_THAT(tried, testing::Contains(
                           testing::Pair(testing::HasSubstr("rebound"), testing::DoubleNear(turned, 1e-6))));
}

}  // namespace bolthole
