// The command figures: against sums done by hand, against the command sweep, and against the rows of the
// pages.
#include "app/commands/figures_command.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <map>
#include <set>
#include <string_view>
#include <utility>

#include "app/carfile/car_file.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/units/uncertainty_text.h"
#include "tests/support/csv.h"
#include "tests/support/plain_car.h"
#include "tests/support/run_command.h"
#include "widgets/pages/loads/loads_facts.h"
#include "widgets/pages/roll/roll_facts.h"
#include "widgets/pages/springs/spring_facts.h"

namespace bolthole {
namespace {

using test::runWords;
using testing::ElementsAre;
using testing::HasSubstr;

constexpr double kPound = 0.45359237;  // kg, exact

/// A table of figures by "page/figure": value, unit, u.
struct FigureCells {
    std::string value;
    std::string unit;
    std::string uncertainty;

    [[nodiscard]] double number() const { return std::stod(value); }
};
using FigureMap = std::map<std::string, FigureCells>;

FigureMap figuresOf(const std::string& csv) {
    const std::vector<std::vector<std::string>> rows = cellsOfCsv(csv);
    EXPECT_THAT(rows.at(0), ElementsAre("page", "figure", "value", "unit", "u"));
    FigureMap figures;
    for (std::size_t row = 1; row < rows.size(); ++row) {
        const std::vector<std::string>& cells = rows[row];
        if (cells.size() != 5) {
            ADD_FAILURE() << "row " << row << " has " << cells.size() << " cells";
            continue;
        }
        const bool isNew =
            figures.emplace(cells[0] + '/' + cells[1], FigureCells{cells[2], cells[3], cells[4]}).second;
        EXPECT_TRUE(isNew) << cells[0] << '/' << cells[1] << " stands there twice";
    }
    return figures;
}

std::vector<std::string> demoCars() {
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(BOLTHOLE_DEMO_DIR)) {
        files.push_back(entry.path().string());
    }
    std::ranges::sort(files);
    EXPECT_EQ(files.size(), 5U);
    return files;
}

/// plainCar() as it was weighed, on scales good to 0.5 kg a pad, launched at 1 g.
Car weighedCar() {
    Car car = plainCar();
    car.ballast.clear();
    car.weighing.scaleUncertainty = 0.5;
    car.launch.acceleration = 1.0;
    car.units = Units::metric;
    return car;
}

// The pages' own reading goes through the whole travel, the one here through few steps: alike to what the
// solver leaves over.
void expectShown(const FigureCells& cells, double value, const std::string& id) {
    if (std::isnan(value)) {
        EXPECT_EQ(cells.value, "") << id;
        return;
    }
    ASSERT_NE(cells.value, "") << id;
    EXPECT_NEAR(cells.number(), value, 1e-8 * std::max(1.0, std::abs(value))) << id;
}

}  // namespace

// 470 and 450 kg in front, 360 and 350 behind: 1630 in all, 920 in front, 450 + 360 across; the CG is the
// front's share of a wheelbase of 116 in ahead of the axle. By the balance of moments (Meriam & Kraige,
// "Engineering Mechanics: Statics", 7th ed., Wiley, 2012, equilibrium in two dimensions; from memory). Four
// independent readings of 0.5 kg: their sum has 2 * 0.5 (JCGM 100:2008, 5.1.2).
TEST(FiguresCommand, HasTheWeightsDoneByHand) {
    const FigureMap figures = figuresOf(figuresTable(weighedCar()));
    EXPECT_NEAR(figures.at("weights/total").number(), 1630, 1e-6);
    EXPECT_EQ(figures.at("weights/total").unit, "kg");
    EXPECT_NEAR(std::stod(figures.at("weights/total").uncertainty), 1.0, 1e-6);
    EXPECT_NEAR(figures.at("weights/front_share").number(), 100.0 * 920 / 1630, 1e-6);
    EXPECT_EQ(figures.at("weights/front_share").unit, "%");
    EXPECT_NEAR(figures.at("weights/cross_weight").number(), 450 + 360, 1e-6);
    EXPECT_NEAR(figures.at("weights/cg_ahead").number(), 116 * 25.4 * 920 / 1630, 1e-6);
}

// One figure on two pages is as sure on both.
TEST(FiguresCommand, AntiSquatIsAsSureAmongTheWeightsAsAmongTheLinks) {
    const FigureMap figures = figuresOf(figuresTable(weighedCar()));
    const double links = std::stod(figures.at("links/anti_squat_ride").uncertainty);
    EXPECT_GT(links, 0.1);
    EXPECT_NEAR(std::stod(figures.at("weights/anti_squat_ride").uncertainty), links, 0.02 * links);
    Car started = weighedCar();
    setOrigin(started, {.field = Field::wheelbase}, Origin::starting);
    EXPECT_EQ(figuresOf(figuresTable(started)).at("weights/anti_squat_ride").uncertainty, "");
}

// A published mean has its own spread, and the page says it: ± 98 mm of 95 in 100.
TEST(FiguresCommand, TheHeightOfOtherCarsIsAsUnsureAsItsSpread) {
    const FigureMap figures = figuresOf(figuresTable(weighedCar()));
    EXPECT_NEAR(figures.at("weights/cg_height_of_others").number(), 545, 1e-9);
    EXPECT_NEAR(std::stod(figures.at("weights/cg_height_of_others").uncertainty), 50, 1e-9);
}

TEST(FiguresCommand, ShowsInchUnitsWhereTheCarDoes) {
    Car car = weighedCar();
    car.units = Units::inch;
    const FigureMap figures = figuresOf(figuresTable(car));
    EXPECT_NEAR(figures.at("weights/total").number(), 1630 / kPound, 1e-6);
    EXPECT_EQ(figures.at("weights/total").unit, "lb");
    EXPECT_NEAR(std::stod(figures.at("weights/total").uncertainty), 1.0 / kPound, 1e-6);
    EXPECT_NEAR(figures.at("weights/cg_ahead").number(), 116.0 * 920 / 1630, 1e-6);
    EXPECT_EQ(figures.at("weights/cg_ahead").unit, "in");
}

// At 1 g the weight times CG height over wheelbase goes to the rear (Gillespie, "Fundamentals of Vehicle
// Dynamics", 1992, ch. 1, loads on axles; from memory): 1630 kg, 22 in, 116 in.
TEST(FiguresCommand, HasTheLoadTransferDoneByHand) {
    const FigureMap figures = figuresOf(figuresTable(weighedCar()));
    const double transfer = 1630 * 9.80665 * 22 / 116;
    EXPECT_NEAR(figures.at("loads/acceleration").number(), 1, 1e-9);
    EXPECT_EQ(figures.at("loads/acceleration").unit, "g");
    EXPECT_NEAR(figures.at("loads/load_transfer").number(), transfer, 1e-3);
    EXPECT_NEAR(figures.at("loads/front_axle").number(), 920 * 9.80665 - transfer, 1e-3);
    EXPECT_NEAR(figures.at("loads/rear_axle").number(), 710 * 9.80665 + transfer, 1e-3);
}

// The lower link's axle holes stand at 7 1/4 and 9 3/4 in, one over the other.
TEST(FiguresCommand, HasTheSpacingOfHolesDoneByHand) {
    const FigureMap figures = figuresOf(figuresTable(weighedCar()));
    EXPECT_NEAR(figures.at("brackets/link_1_lower_axle_hole_1_spacing").number(), 2.5 * 25.4, 1e-6);
    EXPECT_EQ(figures.count("brackets/link_1_lower_axle_hole_1_edge"), 0U) << "no outline was entered";
}

// The same figures by the command whose table was there before.
TEST(FiguresCommand, AgreesWithTheSweepAtRideAndBothEnds) {
    for (const std::string& file : demoCars()) {
        const test::Outcome sweep = runWords({"sweep", file});
        const std::vector<std::vector<std::string>> rows = cellsOfCsv(sweep.out);
        const FigureMap figures = figuresOf(runWords({"figures", file}).out);
        for (const auto& [place, row] :
             {std::pair("_droop", std::size_t{1}), std::pair("_bump", rows.size() - 1)}) {
            for (std::size_t column = 0; column < rows[0].size(); ++column) {
                std::string name = rows[0][column];
                for (const std::string_view suffix : {"_in", "_mm", "_deg", "_pct"}) {
                    if (name.ends_with(suffix)) {
                        name.resize(name.size() - suffix.size());
                    }
                }
                EXPECT_EQ(figures.at("links/" + name + place).value, rows[row][column]) << file << name;
            }
        }
        EXPECT_NEAR(figures.at("links/travel_ride").number(), 0, 1e-12);
        EXPECT_NE(figures.at("links/anti_squat_ride").uncertainty, "") << file;
    }
}

TEST(FiguresCommand, RunsForEveryDemoCar) {
    for (const std::string& file : demoCars()) {
        const test::Outcome outcome = runWords({"figures", file});
        EXPECT_EQ(outcome.code, ExitCode::done) << file;
        EXPECT_EQ(outcome.err, "") << file;
        std::set<std::string> pages;
        for (const auto& [name, cells] : figuresOf(outcome.out)) {
            pages.insert(name.substr(0, name.find('/')));
            EXPECT_EQ(cells.value.find_first_not_of("-0123456789."), std::string::npos) << name;
            EXPECT_EQ(cells.uncertainty.find_first_not_of("0123456789."), std::string::npos) << name;
            EXPECT_TRUE(cells.uncertainty.empty() || !cells.value.empty()) << name;
        }
        for (const char* page : {"links", "weights", "loads", "roll", "brackets"}) {
            EXPECT_EQ(pages.count(page), 1U) << file << ": " << page;
        }
    }
}

// Every number of the cards, with the 95 % the page shows: 1.96 standard uncertainties (JCGM 100, table G.1).
TEST(FiguresCommand, HasEveryNumberAndUncertaintyOfTheCards) {
    for (const std::string& file : demoCars()) {
        const ReadResult read = readCarFile(file);
        ASSERT_TRUE(read.loaded) << file;
        const Car& car = read.loaded->car;
        const FigureMap figures = figuresOf(figuresTable(car));
        const auto expectAll = [&](const std::string& page, const ReadCards& cardsOf) {
            CardFacts cards = cardsOf(car);
            FactUncertainty().addTo(cards, car, car.units, cardsOf);
            for (const std::vector<Fact>& card : cards) {
                for (const Fact& fact : card) {
                    if (fact.number.id.empty()) {
                        continue;
                    }
                    const FigureCells& cells = figures.at(page + '/' + fact.number.id);
                    const double unit = shownUnit(fact.number.quantity, car.units);
                    expectShown(cells, fact.number.value / unit, fact.number.id);
                    const double u = cells.uncertainty.empty() ? kNaN : std::stod(cells.uncertainty) * unit;
                    const std::string half =
                        halfWidthText(u, fact.number.quantity, car.units, fact.number.fineness);
                    EXPECT_EQ(fact.plusMinus.isEmpty(), half.empty()) << fact.number.id;
                    EXPECT_THAT(fact.plusMinus.toStdString(), HasSubstr(half)) << fact.number.id;
                }
            }
        };
        expectAll("loads", [](const Car& of) { return readLaunchCards(of, of.units); });
        expectAll("roll", [](const Car& of) { return rollCards(readRollBriefly(of), of.units); });
        if (!car.springs.empty()) {
            expectAll("springs", [](const Car& of) { return springCards(of, findSpringsAtRide(of)); });
        }
    }
}

TEST(FiguresCommand, RefusesWhatIsNoCar) {
    const test::Outcome outcome = runWords({"figures", BOLTHOLE_SOURCE_DIR "/README.md"});
    EXPECT_EQ(outcome.code, ExitCode::badUse);
    EXPECT_EQ(outcome.out, "");
    EXPECT_THAT(outcome.err, HasSubstr("README.md"));
}

}  // namespace bolthole
