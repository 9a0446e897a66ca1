// bolthole roll: its table, exit codes, units, and what it says where there is none.
#include <gmock/gmock.h>

#include <algorithm>
#include <clocale>
#include <nlohmann/json.hpp>

#include "app/carfile/car_file.h"
#include "geometry/kinematics/roll.h"
#include "tests/support/csv.h"
#include "tests/support/run_command.h"

namespace bolthole {
namespace {

using Json = nlohmann::ordered_json;
using test::bytesOf;
using testing::AllOf;
using testing::ElementsAre;
using testing::EndsWith;
using testing::HasSubstr;
using testing::StartsWith;

using Cells = std::vector<std::vector<std::string>>;

class RollCommand : public test::BareCommand {
  protected:
    ExitCode roll(std::vector<std::string> words) { return runAs("roll", std::move(words)); }
    Cells table(std::vector<std::string> words) {
        EXPECT_EQ(roll(std::move(words)), ExitCode::done);
        EXPECT_EQ(err_, "");
        return cellsOfCsv(out_);
    }
    template <typename Change>
    std::string changed(const std::string& car, Change change) {
        Json json = Json::parse(bytesOf(car));
        change(json);
        std::ofstream(file("changed.bolt.json"), std::ios::binary) << json.dump();
        return file("changed.bolt.json");
    }
};

double number(const std::string& cell) {
    return std::stod(cell);
}

}  // namespace

TEST_F(RollCommand, GivesThirteenRowsOfSixColumnsForBothDemoCars) {
    for (const std::string& car : {test::kWagonFile, test::kCoupeFile}) {
        const Cells cells = table({car});
        ASSERT_EQ(cells.size(), 14U);
        EXPECT_THAT(cells[0], ElementsAre("roll_deg", "yaw_deg", "axle_y_in", "bind_in", "roll_center_in",
                                          "roll_steer"));
        for (std::size_t row = 1; row < cells.size(); ++row) {
            ASSERT_EQ(cells[row].size(), 6U);
            EXPECT_NEAR(number(cells[row][0]), -3 + 0.5 * (static_cast<double>(row) - 1), 1e-12);
        }
        EXPECT_EQ(cells[7][0], "0");
    }
}

TEST_F(RollCommand, ItsCellsAreTheFigures) {
    for (const std::string& name : {test::kWagonFile, test::kCoupeFile}) {
        const RollTrace trace = computeRollTrace(readCarFile(name).loaded->car);
        const Cells cells = table({name, "--units", "metric"});
        EXPECT_EQ(cells[0][4], "roll_center_mm");
        for (std::size_t row = 0; row < 13; ++row) {
            const RollFigures& figures = trace.rows[row];
            EXPECT_NEAR(number(cells[row + 1][1]), figures.pose.yaw / kRadiansPerDegree, 1e-10);
            EXPECT_NEAR(number(cells[row + 1][2]), 1000 * figures.pose.y, 1e-9);
            EXPECT_NEAR(number(cells[row + 1][3]), 1000 * figures.bind, 1e-9);
            EXPECT_NEAR(number(cells[row + 1][4]), 1000 * figures.center, 1e-9);
            EXPECT_NEAR(number(cells[row + 1][5]), figures.steer, 1e-10);
        }
    }
}

// By hand from the table itself: the roll center's height less the tire's radius is how far the axle shifts
// for each radian, the roll steer how far it yaws for each degree.
TEST_F(RollCommand, RatesAreThoseOfItsOwnRows) {
    for (const std::string& name : {test::kWagonFile, test::kCoupeFile}) {
        const double radius = 1000 * readCarFile(name).loaded->car.rearTireRadius;
        const Cells cells = table({name, "--units", "metric"});
        const auto difference = [&](std::size_t column) {
            const double near = number(cells[8][column]) - number(cells[6][column]);
            const double far = number(cells[9][column]) - number(cells[5][column]);
            return (8 * near - far) / 6;  // for each degree
        };
        EXPECT_NEAR(number(cells[7][4]), radius + difference(2) / kRadiansPerDegree, 2e-3);
        EXPECT_NEAR(number(cells[7][5]), difference(1), 1e-5);
    }
}

TEST_F(RollCommand, UnitsAreTheCarsOrThoseAskedFor) {
    const Cells inch = table({test::kWagonFile});
    const Cells metric = table({test::kWagonFile, "--units", "metric"});
    for (std::size_t row = 1; row < inch.size(); ++row) {
        // Either is rounded to 12 digits.
        EXPECT_NEAR(number(inch[row][4]) * 25.4 / number(metric[row][4]), 1.0, 1e-11);
        EXPECT_EQ(inch[row][5], metric[row][5]);
    }
}

TEST_F(RollCommand, NothingSidewaysEndsWith1AndNothingWritten) {
    const std::string loose = changed(test::kCoupeFile, [](Json& car) { car["links"].erase(2); });
    EXPECT_EQ(roll({loose}), ExitCode::cannotAssemble);
    EXPECT_EQ(out_, "");
    EXPECT_EQ(err_, "bolthole: " + loose + ": links: nothing holds the axle laterally\n");
    EXPECT_EQ(roll({loose, "-o", file("roll.csv")}), ExitCode::cannotAssemble);
    EXPECT_FALSE(std::filesystem::exists(file("roll.csv")));
    EXPECT_EQ(runAs("sweep", {loose}), ExitCode::done) << "travel needs none";
}

TEST_F(RollCommand, OneThatCannotBeAssembledEndsWith1) {
    const std::string apart = changed(test::kWagonFile, [](Json& car) { car["links"][0]["length"] = 25; });
    EXPECT_EQ(roll({apart}), ExitCode::cannotAssemble);
    EXPECT_EQ(out_, "");
    EXPECT_THAT(err_, AllOf(HasSubstr("links[0]: "), EndsWith("at ride\n")));
}

// A bar of 20 mm out at the wheel hangs plumb before 3 degrees: rows past it keep their roll alone.
TEST_F(RollCommand, RowsOutOfReachStayEmptyAndTheLinkIsNamed) {
    const std::string tight = changed(test::kWagonFile, [](Json& car) {
        const auto rod = [](const char* name, const Json& front, const Json& rear) {
            const auto bracket = [](const Json& at) {
                return Json{{"holes", Json::array({Json{{"name", "bolt"}, {"at", at}}})}};
            };
            return Json{{"name", name},
                        {"kind", "rod"},
                        {"side", "center"},
                        {"chassis", bracket(front)},
                        {"axle", bracket(rear)}};
        };
        car["links"] = Json::array(
            {car["links"][0], rod("third link", Json::array({400, 0, 460}), Json::array({0, 0, 490})),
             rod("stub", Json::array({-140, 520, 330}), Json::array({-140, 500, 330}))});
    });
    EXPECT_EQ(roll({tight}), ExitCode::done);
    const Cells cells = cellsOfCsv(out_);
    ASSERT_EQ(cells.size(), 14U);
    EXPECT_THAT(cells.back(), ElementsAre("3", "", "", "", "", ""));
    EXPECT_THAT(cells[1], ElementsAre("-3", "", "", "", "", ""));
    EXPECT_NE(cells[7][4], "");
    EXPECT_EQ(std::ranges::count(err_, '\n'), 2);
    EXPECT_THAT(err_, AllOf(HasSubstr("links[2]: link 'stub' stops roll at 2."), HasSubstr("to the right\n"),
                            EndsWith("to the left\n")));
}

TEST_F(RollCommand, OutputGoesToTheFile) {
    EXPECT_EQ(roll({test::kCoupeFile, "-o", file("roll.csv")}), ExitCode::done);
    EXPECT_EQ(out_ + err_, "");
    const std::string written = bytesOf(file("roll.csv"));
    table({test::kCoupeFile});
    EXPECT_EQ(written, out_);
}

TEST_F(RollCommand, RefusesBadUse) {
    EXPECT_EQ(roll({}), ExitCode::badUse);
    EXPECT_THAT(err_, HasSubstr("expected bolthole roll CAR [-o FILE] [--units inch|metric]"));
    EXPECT_EQ(roll({test::kCoupeFile, test::kWagonFile}), ExitCode::badUse);
    EXPECT_EQ(roll({test::kCoupeFile, "--all"}), ExitCode::badUse);
    EXPECT_EQ(roll({file("none.bolt.json")}), ExitCode::badUse);
    EXPECT_EQ(out_, "");
}

TEST_F(RollCommand, NoLocaleDecides) {
    table({test::kWagonFile});
    const std::string expected = out_;
    const std::string before = std::setlocale(LC_ALL, nullptr);
    for (const char* name : {"de_DE.UTF-8", "C.UTF-8", "C"}) {
        if (std::setlocale(LC_ALL, name) != nullptr) {
            table({test::kWagonFile});
            EXPECT_EQ(out_, expected) << name;
        }
    }
    std::setlocale(LC_ALL, before.c_str());
}

}  // namespace bolthole
