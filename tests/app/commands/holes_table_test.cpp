// The table of hole combinations: app/commands/holes_table.h.
#include "app/commands/holes_table.h"

#include <gmock/gmock.h>

#include <cmath>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "geometry/combinations/combination_figures.h"
#include "tests/support/csv.h"
#include "tests/support/level_car.h"

namespace bolthole {
namespace {

using testing::ElementsAre;
using testing::StartsWith;

std::string tableOf(const Car& car, LengthTreatment lengths, const CombinationScope& scope = {}) {
    std::string text;
    const HolesTable table{std::make_shared<const Car>(car), lengths, scope};
    EXPECT_TRUE(writeHolesTable(table, [&text](std::string_view bytes) {
        text += bytes;
        return true;
    }));
    return text;
}

/// A row by its columns' names. No two columns may have the same.
using Row = std::map<std::string, std::string>;

std::vector<Row> rowsOf(const std::string& csv) {
    const std::vector<std::vector<std::string>> cells = cellsOfCsv(csv);
    std::vector<Row> rows;
    for (std::size_t index = 1; index < cells.size(); ++index) {
        EXPECT_EQ(cells[index].size(), cells[0].size());
        Row& row = rows.emplace_back();
        for (std::size_t column = 0; column < cells[0].size(); ++column) {
            EXPECT_TRUE(row.emplace(cells[0][column], cells[index][column]).second) << cells[0][column];
        }
    }
    return rows;
}

double number(const Row& row, const std::string& column) {
    const std::string& cell = row.at(column);
    EXPECT_EQ(cell.find_first_not_of("-.0123456789"), std::string::npos) << column << " " << cell;
    return cell.empty() ? std::nan("") : std::stod(cell);
}

/// The level car with two holes at the lowers' axle end alone, and a driveline.
Car twoCombinations() {
    Car car = levelCar();
    for (Bracket* bracket : {&car.links[0].chassis, &car.links[1].chassis, &car.links[1].axle}) {
        bracket->holes.resize(1);
    }
    car.driveline = Driveline{0.02, in(12, 0, 13), 0.03, in(60, 0, 14)};
    return car;
}

}  // namespace

TEST(HolesTable, HasTheContractsColumns) {
    Car car = twoCombinations();
    EXPECT_THAT(tableOf(car, LengthTreatment::keep),
                StartsWith("lower chassis,lower axle,upper chassis,upper axle,track bar chassis,"
                           "track bar axle,in_use,ic_x_in,ic_z_in,svsa_angle_deg,anti_squat_pct,"
                           "anti_squat_droop_pct,anti_squat_bump_pct,axle_x_in,pinion_deg,lower length_in,"
                           "upper length_in,track bar length_in,problem,links\r\n"
                           "front,rear,front,rear,front,rear,yes,"));
    car.units = Units::metric;
    EXPECT_THAT(tableOf(car, LengthTreatment::keep),
                testing::AllOf(testing::HasSubstr(",in_use,ic_x_mm,ic_z_mm,svsa_angle_deg,"),
                               testing::HasSubstr(",axle_x_mm,pinion_deg,lower length_mm,upper length_mm,")));
}

TEST(HolesTable, RodsAloneHaveALength) {
    const Car car = CarGenerator(9).draw(Layout::torqueArm);
    EXPECT_THAT(cellsOfCsv(tableOf(car, LengthTreatment::keep)).at(0),
                testing::AllOf(testing::Contains("torque arm chassis"), testing::Contains("guide axle"),
                               testing::Contains("lower length_in"),
                               testing::Not(testing::Contains("torque arm length_in"))));
}

TEST(HolesTable, OrderIsFirstLinkSlowestChassisBeforeAxle) {
    Car car = levelCar();
    car.links[1].axle.use = 1;
    std::vector<std::string> order;
    std::vector<std::string> inUse;
    for (const Row& row : rowsOf(tableOf(car, LengthTreatment::refit))) {
        order.push_back(row.at("lower chassis").substr(0, 1) + row.at("lower axle").substr(0, 1) +
                        row.at("upper chassis").substr(0, 1) + row.at("upper axle").substr(0, 1));
        EXPECT_EQ(row.at("in_use"), order.back() == "frfh" ? "yes" : "no") << order.back();
    }
    EXPECT_THAT(order, ElementsAre("frfr", "frfh", "frhr", "frhh", "fhfr", "fhfh", "fhhr", "fhhh", "hrfr",
                                   "hrfh", "hrhr", "hrhh", "hhfr", "hhfh", "hhhr", "hhhh"));
}

// Each row is what the car bolted that way comes to.
TEST(HolesTable, FiguresAreThoseOfTheCarBoltedThatWay) {
    const Car car = twoCombinations();
    for (const LengthTreatment lengths :
         {LengthTreatment::keep, LengthTreatment::refit, LengthTreatment::uppers}) {
        const std::vector<Row> rows = rowsOf(tableOf(car, lengths));
        ASSERT_EQ(rows.size(), 2U);
        for (int hole = 0; hole < 2; ++hole) {
            const Row& row = rows[static_cast<std::size_t>(hole)];
            const Car chosen = carWithCombination(car, useOf({{0, hole}}), lengths).car.value();
            const Trace trace = computeTrace(chosen);
            EXPECT_NEAR(number(row, "svsa_angle_deg"), trace.ride[Figure::swingArmAngle] / kRadiansPerDegree,
                        1e-8);
            EXPECT_NEAR(number(row, "anti_squat_pct"), trace.ride[Figure::antiSquat], 1e-8);
            EXPECT_NEAR(number(row, "anti_squat_droop_pct"), trace.stations.front()[Figure::antiSquat], 1e-8);
            EXPECT_NEAR(number(row, "anti_squat_bump_pct"), trace.stations.back()[Figure::antiSquat], 1e-8);
            EXPECT_NEAR(number(row, "axle_x_in"), trace.ride[Figure::axleX] / kInch, 1e-8);
            EXPECT_NEAR(number(row, "pinion_deg"), trace.ride[Figure::pinion] / kRadiansPerDegree, 1e-8);
            EXPECT_NEAR(number(row, "lower length_in"), builtLength(chosen.links[0]) / kInch, 1e-8);
            EXPECT_NEAR(number(row, "upper length_in"), builtLength(chosen.links[1]) / kInch, 1e-8);
            EXPECT_EQ(row.at("links"), nameOf(lengths));
            EXPECT_EQ(row.at("problem"), "");
            if (hole == 1) {
                EXPECT_NEAR(number(row, "ic_x_in"), trace.ride[Figure::icX] / kInch, 1e-6);
            }
        }
    }
}

// The level car's links are parallel: no instant center, and all the same an anti-squat of nothing.
TEST(HolesTable, AFigureThatDoesNotExistIsEmpty) {
    Car car = twoCombinations();
    car.driveline.reset();
    const Row row = rowsOf(tableOf(car, LengthTreatment::refit)).at(0);
    EXPECT_EQ(row.at("ic_x_in"), "");
    EXPECT_EQ(row.at("ic_z_in"), "");
    EXPECT_EQ(row.at("pinion_deg"), "");
    EXPECT_NEAR(number(row, "anti_squat_pct"), 0, 1e-9);
}

TEST(HolesTable, WhatCannotBeAssembledKeepsItsRow) {
    Car car = twoCombinations();
    car.links[0].chassis.holes.push_back({-1, "far", in(20, 18, 40)});
    const std::vector<Row> rows = rowsOf(tableOf(car, LengthTreatment::keep));
    ASSERT_EQ(rows.size(), 4U);
    const Row& row = rows[2];
    EXPECT_EQ(row.at("lower chassis"), "far");
    EXPECT_EQ(row.at("problem"), "can't be assembled at ride: lower");
    for (const auto& [column, cell] : row) {
        const std::set<std::string> written{"problem", "links", "in_use"};
        const bool name = column.ends_with("chassis") || column.ends_with("axle");
        EXPECT_EQ(cell.empty(), !name && !written.contains(column)) << column;
    }
    EXPECT_EQ(rows[0].at("problem"), "");
}

TEST(HolesTable, ProblemsAreInTheCarsUnits) {
    Car car = twoCombinations();
    car.links[0].adjuster->longest = 20.05 * kInch;
    EXPECT_EQ(rowsOf(tableOf(car, LengthTreatment::refit)).at(1).at("problem"),
              "lower can't be set as long as 20.10 in");
    car.units = Units::metric;
    EXPECT_EQ(rowsOf(tableOf(car, LengthTreatment::refit)).at(1).at("problem"),
              "lower can't be set as long as 510.5 mm");
}

TEST(HolesTable, NamesMayHoldAnything) {
    Car car = twoCombinations();
    car.links[0].name = "lower, \"long\"";
    car.links[0].axle.holes[0].name = "5/8\"";
    car.links[0].axle.holes[1].name = "a,b\r\nc";
    car.links[1].name = "";
    car.links[1].axle.holes[0].name = "";
    car.links[0].adjuster->longest = 20.05 * kInch;
    const std::string csv = tableOf(car, LengthTreatment::refit);
    EXPECT_THAT(csv, StartsWith("\"lower, \"\"long\"\" chassis\",\"lower, \"\"long\"\" axle\",link 2 chassis,"
                                "link 2 axle,"));
    const std::vector<Row> rows = rowsOf(csv);
    ASSERT_EQ(rows.size(), 2U);
    EXPECT_EQ(rows[0].at("lower, \"long\" axle"), "5/8\"");
    EXPECT_EQ(rows[1].at("lower, \"long\" axle"), "a,b\r\nc");
    EXPECT_EQ(rows[1].at("problem"), "lower, \"long\" can't be set as long as 20.10 in");
    EXPECT_EQ(rows[1].at("link 2 axle"), "1") << "a hole without a name has its number";
    EXPECT_FALSE(rows[1].at("lower, \"long\" length_in").empty());
}

TEST(HolesTable, TiedSidesHaveFewerRows) {
    Car car = levelCar();
    splitPairs(car);
    drillHoles(car, 2, 0.02);
    EXPECT_EQ(rowsOf(tableOf(car, LengthTreatment::refit)).size(), 1024U);
    const std::vector<Row> tied = rowsOf(tableOf(car, LengthTreatment::refit, {.tieSides = true}));
    EXPECT_EQ(tied.size(), 64U);
    for (const Row& row : tied) {
        EXPECT_EQ(row.at("lower left axle"), row.at("lower right axle"));
    }
}

// More rows than any number of threads takes at once: all there, once, in order.
TEST(HolesTable, LongTablesAreWholeAndInOrder) {
    Car car = twoCombinations();
    car.travel.steps = 2;
    drillHoles(car, 4, 0.01);
    const CombinationSpace space(car, {});
    ASSERT_EQ(space.count(), 4096U);
    const std::vector<Row> rows = rowsOf(tableOf(car, LengthTreatment::refit));
    ASSERT_EQ(rows.size(), space.count());
    CombinationSolver solver(car, LengthTreatment::refit);
    HoleCombination combination;
    for (std::uint64_t index = 0; index < space.count(); index += 7) {
        const HoleUse use = space.at(index);
        ASSERT_EQ(rows[index].at("lower chassis"), "hole " + std::to_string(use.of(0, End::chassis) + 1));
        ASSERT_EQ(rows[index].at("track bar axle"), "hole " + std::to_string(use.of(2, End::axle) + 1));
        solver.solve(use, combination);
        ASSERT_NEAR(number(rows[index], "anti_squat_pct"), combination[Figure::antiSquat], 1e-9);
    }
}

TEST(HolesTable, StopsWhereItCannotBeWritten) {
    Car car = levelCar();
    car.travel.steps = 2;
    drillHoles(car, 5, 0.01);
    const HolesTable table{std::make_shared<const Car>(car), LengthTreatment::refit, {}};
    int pieces = 0;
    EXPECT_FALSE(writeHolesTable(table, [&pieces](std::string_view) { return ++pieces < 3; }));
    EXPECT_EQ(pieces, 3);
}

TEST(AnyAssembled, LooksForOne) {
    Car car = twoCombinations();
    const auto any = [&car](LengthTreatment lengths) {
        return anyAssembled({std::make_shared<const Car>(car), lengths, {}});
    };
    EXPECT_TRUE(any(LengthTreatment::keep));
    car.links[0].axle.holes[0].at = in(-40, 18, 7);
    car.links[0].length = 20 * kInch;
    EXPECT_TRUE(any(LengthTreatment::keep)) << "the second one";
    car.links[0].axle.holes[1].at = in(-40, 18, 7);
    EXPECT_FALSE(any(LengthTreatment::keep));
    EXPECT_TRUE(any(LengthTreatment::refit));
    car.links.clear();
    EXPECT_FALSE(any(LengthTreatment::refit));
}

}  // namespace bolthole
