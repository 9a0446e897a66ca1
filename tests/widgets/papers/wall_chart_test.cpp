// The wall chart's parts: what goes down and across, what is said where, where things stand. The PDF itself
// is read back in tests/app/papers/chart_file_window_test.cpp.
#include "widgets/papers/wall_chart.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <cmath>
#include <set>

#include "geometry/car/starting_numbers.h"
#include "tests/support/car_generator.h"
#include "tests/support/plain_car.h"
#include "widgets/papers/wall_chart_cells.h"
#include "widgets/papers/wall_chart_layout.h"
#include "widgets/papers/wall_chart_side.h"

namespace bolthole {
namespace {

using testing::AnyOf;
using testing::Each;
using testing::Lt;

constexpr std::array kPapers{PaperSize::letter, PaperSize::tabloid, PaperSize::a4, PaperSize::a3};

// Adds holes above the first one, `step` inches apart, until the bracket has `count`.
void addHoles(Bracket& bracket, int count, double step) {
    const Eigen::Vector3d first = bracket.holes.front().at;
    for (int hole = static_cast<int>(bracket.holes.size()); hole < count; ++hole) {
        bracket.holes.push_back({-1, "hole " + std::to_string(hole + 1),
                                 first + Eigen::Vector3d(0, 0, hole * step * kMetresPerInch)});
    }
}

// The plain car with 2 lower axle holes and `uppers` upper chassis holes.
Car carWithUppers(int uppers) {
    Car car = plainCar();
    addHoles(car.links[1].chassis, uppers, 0.75);
    return car;
}

/// All that stands behind one chart, at hand.
struct Made {
    Made(Car given, LengthTreatment lengths, PaperSize paper = PaperSize::letter, NumberStyle style = {})
        : car(std::move(given)),
          chart(computeChart(car, lengths)),
          words(car, chart, lengths, style, {}),
          frame(frameOf(pageLayoutOf(paper).paintRect(QPageLayout::Millimeter).size(), fonts, words,
                        style.units)),
          layout(layOut(frame, fonts, chart, words)) {}
    Made(const Made&) = delete;

    Car car;
    ChartCombinations chart;
    ChartWords words;
    PrintFonts fonts;
    SheetFrame frame;
    ChartLayout layout;
};

TEST(WallChart, PutsLowersDownAndUppersAcross) {
    const ChartAxes axes = chartAxes(carWithUppers(3));
    ASSERT_TRUE(axes.isMatrix());
    EXPECT_EQ(axes.down.count(), 2);
    EXPECT_EQ(axes.down.brackets.front().link, 0);
    EXPECT_EQ(axes.across.count(), 3);
    EXPECT_EQ(axes.across.brackets.front().link, 1);
}

TEST(WallChart, HasOneListWhereOnlyOneLinkHasHolesToChoose) {
    const Made made(carWithUppers(1), LengthTreatment::keep);
    EXPECT_FALSE(made.chart.axes.isMatrix());
    EXPECT_EQ(made.chart.rows, 2);
    EXPECT_EQ(made.words.title(made.chart.axes.down), "LOWER, axle hole");
}

TEST(WallChart, PutsLadderBarsInAList) {
    CarGenerator generator(7);
    Car car = generator.draw(Layout::ladderGuide);
    addHoles(car.links[0].chassis, 3, 1);
    const ChartAxes axes = chartAxes(car);
    EXPECT_FALSE(axes.isMatrix());
    EXPECT_EQ(axes.down.count(), 3);
}

TEST(WallChart, PutsTorqueArmAndThirdLinkAcross) {
    CarGenerator generator(7);
    for (const Layout layout : {Layout::torqueArm, Layout::threeLink}) {
        Car car = generator.draw(layout);
        for (Link& link : car.links) {
            addHoles(link.chassis, 2, 0.5);
        }
        const ChartAxes axes = chartAxes(car);
        ASSERT_TRUE(axes.isMatrix());
        const Link& across = car.links[static_cast<std::size_t>(axes.across.brackets.front().link)];
        EXPECT_TRUE(across.kind == LinkKind::slider || across.side == Side::center);
        EXPECT_EQ(axes.across.count(), 2);
        EXPECT_EQ(axes.down.count(), 2) << "the lowers";
    }
}

TEST(WallChart, VariesCrosswiseLinksOnlyWhereNothingElseHasACombination) {
    CarGenerator generator(3);
    Car car = generator.draw(Layout::threeLink);
    const auto trackBar = std::ranges::find_if(
        car.links, [&](const Link& link) { return roleOf(link, car.rearTireRadius) == Role::crosswise; });
    ASSERT_NE(trackBar, car.links.end());
    addHoles(trackBar->chassis, 3, 0.5);
    EXPECT_EQ(chartAxes(car).down.count(), 3);
    addHoles(car.links[0].axle, 2, 0.5);
    const ChartAxes axes = chartAxes(car);
    EXPECT_EQ(axes.down.count() * axes.across.count(), 2);
    const Made made(car, LengthTreatment::keep);
    const QStringList said = made.words.treatment();
    ASSERT_EQ(said.size(), 2) << "how lengths are rounded is a line of its own";
    EXPECT_TRUE(said[0].contains(" current: chassis ")) << qPrintable(said[0]);
    EXPECT_TRUE(
        said[1].startsWith("Printed: link lengths from hole center to hole center, to the nearest 1/32"))
        << qPrintable(said[1]);
}

TEST(WallChart, TiesSidesSetApart) {
    Car car = carWithUppers(2);
    splitPairs(car);
    const Made made(car, LengthTreatment::keep);
    EXPECT_EQ(made.chart.rows, 2);
    EXPECT_EQ(made.chart.columns, 2);
    for (const HoleCombination& combination : made.chart.combinations) {
        EXPECT_EQ(combination.use.of(0, End::axle), combination.use.of(1, End::axle));
    }
    EXPECT_EQ(made.words.title(made.chart.axes.down), "LOWER LEFT AND RIGHT, axle hole");
}

TEST(WallChart, MarksThePresentCombinationAndSaysWhenItIsNotThere) {
    Car car = carWithUppers(3);
    car.links[0].axle.use = 1;
    car.links[1].chassis.use = 2;
    const Made made(car, LengthTreatment::keep);
    EXPECT_EQ(made.chart.now, std::pair(1, 2));
    splitPairs(car);
    car.links[1].axle.use = 0;  // the lower right bar elsewhere than the left one
    const Made unlike(car, LengthTreatment::keep);
    EXPECT_FALSE(unlike.chart.now);
    EXPECT_TRUE(unlike.words.legend().join(' ').contains("bolted unlike"));
}

TEST(WallChart, SaysEveryLengthWhereItDepends) {
    const auto placesIn = [](const Made& made) {
        std::vector<LengthPosition> places;
        for (const ChartRod& rod : made.chart.rods) {
            places.push_back(rod.place);
        }
        return places;
    };
    using LengthPositions = std::vector<LengthPosition>;
    const Made reset(carWithUppers(3), LengthTreatment::refit);
    EXPECT_EQ(placesIn(reset), (LengthPositions{LengthPosition::row, LengthPosition::column}));
    EXPECT_EQ(reset.words.rowLengths(1).size(), 1U);
    EXPECT_EQ(reset.words.columnLengths(1).size(), 1U);
    EXPECT_TRUE(reset.words.cell(1, 1).lengths.empty());
    const Made keep(carWithUppers(3), LengthTreatment::keep);
    EXPECT_EQ(placesIn(keep), (LengthPositions{LengthPosition::once, LengthPosition::once}));
    EXPECT_THAT(keep.words.rodLines(),
                Each(testing::Truly([](const QString& line) { return line.endsWith("stays"); })));
    const Made uppers(carWithUppers(3), LengthTreatment::uppers);
    EXPECT_EQ(placesIn(uppers), (LengthPositions{LengthPosition::once, LengthPosition::cell}));
    EXPECT_EQ(uppers.words.cell(1, 1).lengths.size(), 1U);
}

// Whatever is said of a rod at its row, its column or its cell is that combination's length.
TEST(WallChart, SaysTheLengthOfTheCombination) {
    for (const LengthTreatment lengths : {LengthTreatment::refit, LengthTreatment::uppers}) {
        const Made made(carWithUppers(4), lengths, PaperSize::letter, {Units::metric, InchStyle::decimal});
        CombinationSolver solver(made.car, lengths);
        for (int row = 0; row < made.chart.rows; ++row) {
            for (int column = 0; column < made.chart.columns; ++column) {
                HoleCombination combination;
                solver.solve(made.chart.at(row, column).use, combination);
                std::vector<LengthWords> said = made.words.cell(row, column).lengths;
                const auto add = [&](const std::vector<LengthWords>& more) {
                    said.insert(said.end(), more.begin(), more.end());
                };
                add(made.words.rowLengths(row));
                add(made.words.columnLengths(column));
                ASSERT_FALSE(said.empty());
                for (const LengthWords& one : said) {
                    const bool isUpper = one.length.startsWith("upper");
                    const QString length =
                        QString::number(1000 * combination.length[isUpper ? 1 : 0], 'f', 1);
                    EXPECT_TRUE(one.length.endsWith(' ' + length + " mm")) << qPrintable(one.length);
                }
            }
        }
    }
}

// ASME B1.1: 3/4-16 UNF, pitch 1/16 in; left- and right-hand ends move 1/8 in apart in one turn.
TEST(WallChart, TurnsAnAdjusterByItsThread) {
    Car car = plainCar();
    Link& upper = car.links[1];
    upper.axle.holes.front().at = Eigen::Vector3d(1, 6, 18) * kMetresPerInch;
    upper.chassis.holes.front().at = Eigen::Vector3d(12, 6, 18) * kMetresPerInch;
    for (const double farther : {0.125, 0.3125, -0.25}) {
        upper.chassis.holes.push_back(upper.chassis.holes.front());
        upper.chassis.holes.back().at.x() += farther * kMetresPerInch;
    }
    upper.adjuster = Adjuster{25.4e-3 / 16, 2};
    const Made made(car, LengthTreatment::refit);
    ASSERT_EQ(made.chart.columns, 4);
    EXPECT_EQ(made.words.columnLengths(0).front().whole(), "upper 11 in");
    EXPECT_EQ(made.words.columnLengths(1).front().whole(), "upper 11 1/8 in, +1 turn");
    EXPECT_EQ(made.words.columnLengths(2).front().whole(), "upper 11 5/16 in, +2 1/2 turns");
    EXPECT_EQ(made.words.columnLengths(3).front().whole(),
              QString::fromUtf8("upper 10 3/4 in, \u22122 turns"));
    upper.adjuster.reset();
    const Made fixed(car, LengthTreatment::refit);
    EXPECT_EQ(fixed.words.columnLengths(1).front().whole(), "upper 11 1/8 in, new link");
}

// In sixteenths the sheet of the car has 11 3/32 in, and so has the chart.
TEST(WallChart, HasTheLengthThatStandsInTheLinksField) {
    Car car = plainCar();
    Link& upper = car.links[1];
    upper.axle.holes.front().at = Eigen::Vector3d(1, 6, 18) * kMetresPerInch;
    upper.chassis.holes.front().at = Eigen::Vector3d(12.1, 6, 18) * kMetresPerInch;
    upper.chassis.holes.push_back(upper.chassis.holes.front());
    upper.chassis.holes.back().at.x() += 0.125 * kMetresPerInch;
    const Made made(car, LengthTreatment::refit);
    const QString field = QString::fromStdString(
        fieldText(upper.chassis.holes.front().at.x() - kMetresPerInch, Quantity::length, {}));
    EXPECT_EQ(field, QString::fromUtf8("\u2248 11 3/32"));
    EXPECT_TRUE(made.words.columnLengths(0).front().length.endsWith("11 3/32 in"));
}

TEST(WallChart, SaysBehindAndInfinityInWords) {
    Car car = plainCar();
    car.travel.frontRatio = 1;
    Link& upper = car.links[1];
    // Chassis holes that leave the upper below, along and above the lower's direction, side by side with it.
    car.links[0].axle.holes.resize(1);
    const Eigen::Vector3d along = car.links[0].chassis.holes[0].at - car.links[0].axle.holes[0].at;
    const Eigen::Vector3d base = upper.axle.holes[0].at;
    upper.chassis.holes.clear();
    for (const double tilt : {-0.1, 0.0, 0.15}) {
        const double forward = 0.3;
        upper.chassis.holes.push_back(
            {-1, "", base + Eigen::Vector3d(forward, 0.3, forward * (along.z() / along.x() + tilt))});
    }
    const Made made(car, LengthTreatment::refit);
    ASSERT_EQ(made.chart.rows, 3);
    const auto text = [&](int row) {
        QString all;
        for (const TextRun& run : made.words.cell(row, 0).instantCenter) {
            all += run.text;
        }
        return all;
    };
    EXPECT_TRUE(text(0).contains(QString::fromUtf8(" \u00D7 ")) && !text(0).contains("behind"))
        << qPrintable(text(0));
    EXPECT_EQ(text(1), QString::fromUtf8("\u221E"));
    EXPECT_TRUE(text(2).contains(" in behind")) << qPrintable(text(2));
    EXPECT_TRUE(made.words.legend().join(' ').contains(QString::fromUtf8("\u221E")));
}

TEST(WallChart, ShadesInFiveStepsAtMostEachHoldingItsFigures) {
    for (const int uppers : {2, 5, 12, 40}) {
        const Made made(carWithUppers(uppers), LengthTreatment::refit);
        const ShadeScale& shades = made.chart.shades;
        ASSERT_GE(shades.steps, 1);
        ASSERT_LE(shades.steps, kMostShades);
        for (const HoleCombination& combination : made.chart.combinations) {
            const double figure = std::round(combination[Figure::antiSquat]);
            const int step = shades.stepOf(figure);
            const bool isOpenBelow = step == 0 && shades.isOpenBelow;
            const bool isOpenAbove = step == shades.steps - 1 && shades.isOpenAbove;
            EXPECT_TRUE(isOpenBelow || figure >= shades.first + step * shades.width);
            EXPECT_TRUE(isOpenAbove || figure < shades.first + (step + 1) * shades.width);
        }
        for (int step = 1; step < shades.steps; ++step) {
            EXPECT_LT(shadeColor(step, shades.steps).lightness(),
                      shadeColor(step - 1, shades.steps).lightness());
        }
        // Black on it: at least 7:1, WCAG 2.1 success criterion 1.4.6 (from memory).
        const double darkest = std::pow(shadeColor(shades.steps - 1, shades.steps).redF(), 2.2);
        EXPECT_GE((darkest + 0.05) / 0.05, 7.0);
    }
}

TEST(WallChart, ShowsEveryCombinationOnceOnEveryPaper) {
    for (const PaperSize paper : kPapers) {
        for (const int uppers : {1, 2, 3, 7, 23}) {
            const Made made(carWithUppers(uppers), LengthTreatment::uppers, paper);
            std::set<std::pair<int, int>> shown;
            std::size_t cells = 0;
            for (const ChartSheet& sheet : made.layout.sheets) {
                for (int row = 0; row < sheet.rows; ++row) {
                    for (int column = 0; column < sheet.columns; ++column) {
                        shown.emplace(sheet.firstRow + row, sheet.firstColumn + column);
                        ++cells;
                    }
                }
            }
            EXPECT_EQ(cells, made.chart.combinations.size());
            EXPECT_EQ(shown.size(), made.chart.combinations.size());
            EXPECT_TRUE(made.layout.sheets.front().hasKey);
            EXPECT_GE(made.layout.scale, 1.0) << "shrunk below the least sizes";
        }
    }
}

TEST(WallChart, KeepsCellsInsideTheSheetAndClearOfTheKey) {
    for (const PaperSize paper : kPapers) {
        for (const int uppers : {1, 2, 4, 16}) {
            const Made made(carWithUppers(uppers), LengthTreatment::uppers, paper);
            const QRectF body = made.frame.body.adjusted(-0.1, -0.1, 0.1, 0.1);
            for (const ChartSheet& sheet : made.layout.sheets) {
                if (sheet.rows == 0) {
                    continue;
                }
                EXPECT_TRUE(body.contains(made.layout.matrix));
                EXPECT_FALSE(sheet.hasKey && made.layout.key.intersects(made.layout.matrix));
                const int across = made.chart.axes.isMatrix() ? sheet.columns : made.layout.across;
                const int down = made.chart.axes.isMatrix() ? sheet.rows : (sheet.rows + across - 1) / across;
                const QRectF last = made.layout.cellAt(down - 1, across - 1);
                EXPECT_TRUE(made.layout.matrix.adjusted(-0.1, -0.1, 0.1, 0.1).contains(last));
                EXPECT_FALSE(made.layout.cellAt(0, 0).intersects(made.layout.cellAt(0, 1)));
                EXPECT_FALSE(made.layout.cellAt(0, 0).intersects(made.layout.cellAt(1, 0)));
            }
        }
    }
}

// The names of holes and links stand clear of each other, whatever the linkage.
TEST(WallChart, NamesHolesInTheSideViewWithoutCollisions) {
    QImage paper(2000, 1600, QImage::Format_RGB32);
    CarGenerator generator(11);
    const QRectF area(5, 5, 160, 120);
    for (const Layout layout : {Layout::triangulated, Layout::apart, Layout::threeLink, Layout::torqueArm,
                                Layout::parallelTrackBar, Layout::ladderGuide}) {
        Car car = generator.draw(layout);
        std::size_t holes = 0;
        for (Link& link : car.links) {
            if (link.kind != LinkKind::guide && link.kind != LinkKind::slider) {
                addHoles(link.chassis, 3, 1.25);
            }
            holes +=
                link.chassis.holes.size() > 1 && link.side != Side::right ? link.chassis.holes.size() : 0;
        }
        const Made made(car, LengthTreatment::keep);
        QPainter painter(&paper);
        painter.scale(10, 10);
        const SidePicture picture =
            drawSidePicture(painter, area, made.frame, made.fonts, made.car, made.words);
        EXPECT_GE(picture.labels.size(), holes);
        EXPECT_LE(picture.bottom, area.bottom() + 0.1);
        for (std::size_t one = 0; one < picture.labels.size(); ++one) {
            EXPECT_TRUE(area.contains(picture.labels[one])) << static_cast<int>(layout) << " label " << one;
            for (std::size_t other = 0; other < one; ++other) {
                EXPECT_FALSE(picture.labels[one].intersects(picture.labels[other]))
                    << static_cast<int>(layout) << " labels " << one << " and " << other;
            }
        }
    }
}

TEST(WallChart, KeepsLongNamesInTheirPlaces) {
    Car car = carWithUppers(3);
    for (Hole& hole : car.links[1].chassis.holes) {
        hole.name = "the hole somebody drilled on a Sunday and could not stop talking about";
    }
    car.links[0].axle.holes[1].name = std::string(80, 'W');
    const Made made(car, LengthTreatment::refit);
    EXPECT_LE(made.layout.rowHeading, 1.6 * CellMeasure::kWidestHeading);
    EXPECT_TRUE(made.frame.body.adjusted(-0.1, -0.1, 0.1, 0.1).contains(made.layout.matrix));
}

TEST(WallChart, AnInstantCenterFarAwayIsToldInInchesOrMeters) {
    EXPECT_TRUE(farAwayWords(Units::inch).contains("over 1000 in away"));
    EXPECT_TRUE(farAwayWords(Units::metric).contains("over 25.4 m away"));
}

TEST(WallChart, ShortNamesAreWhole) {
    Car car = carWithUppers(2);
    car.links[0].axle.holes[0].name = "bracket";
    for (const PaperSize paper : {PaperSize::letter, PaperSize::tabloid, PaperSize::a4, PaperSize::a3}) {
        const Made made(car, LengthTreatment::keep, paper);
        for (int row = 0; row < made.chart.rows; ++row) {
            for (const HoleWords& hole : made.words.holes(made.chart.axes.down, row)) {
                EXPECT_LE(CellMeasure::nameWidth(hole, made.fonts, made.layout.scale),
                          made.layout.rowHeading - CellMeasure::kHeadingPad + 0.01)
                    << hole.hole.toStdString() << " at " << made.layout.scale;
            }
        }
    }
}

TEST(WallChart, SaysOfEachRodWhetherItsLengthWasTaped) {
    Car car = carWithUppers(2);
    car.links[0].length = builtLength(car.links[0]);
    car.links[1].length.reset();
    const auto lines = [&] {
        return Made(car, LengthTreatment::keep).words.rodLines().join('\n').toStdString();
    };
    EXPECT_THAT(lines(), testing::HasSubstr(" now, as its holes stand"));
    EXPECT_THAT(lines(), testing::Not(testing::HasSubstr("not measured")));
    setOrigin(car, {.field = Field::linkLength, .link = 0}, Origin::workedOut);
    EXPECT_THAT(lines(), testing::HasSubstr(" now, not measured"));
}

TEST(WallChart, TheCautionCallsStartingNumbersWhatTheyAre) {
    Car car = carWithUppers(2);
    EXPECT_TRUE(cautionWords(car).contains(QStringLiteral("Calculated from your measurements;")));
    setOrigin(car, {.field = Field::cgHeight}, Origin::starting);
    EXPECT_TRUE(
        cautionWords(car).contains(QStringLiteral("also from starting numbers, which nobody measured;")));
}

TEST(WallChart, SaysWhyACombinationCannotBeAssembled) {
    Car car = carWithUppers(2);
    car.links[1].length = builtLength(car.links[1]);
    car.links[1].chassis.holes[1].at.x() += 0.5;
    const Made made(car, LengthTreatment::keep);
    const CellWords cell = made.words.cell(0, 1);
    EXPECT_FALSE(cell.assembled);
    EXPECT_EQ(cell.antiSquat, QString::fromUtf8("\u2014"));
    ASSERT_FALSE(cell.problems.isEmpty());
    EXPECT_TRUE(cell.problems.front().startsWith("can't be assembled")) << qPrintable(cell.problems.front());
    EXPECT_TRUE(made.words.cell(0, 0).assembled);
}

TEST(WallChart, CountsItsCombinationsWithoutComputingThem) {
    EXPECT_EQ(chartCombinationCount(carWithUppers(5)), 10U);
    Car car = plainCar();
    addHoles(car.links[0].chassis, 64, 0.1);
    addHoles(car.links[0].axle, 64, 0.1);
    addHoles(car.links[1].chassis, 64, 0.1);
    EXPECT_EQ(chartCombinationCount(car), 64U * 64U * 64U);
}

// What nobody measured stands in the heading, and what follows stands lower by it.
TEST(WallChart, NamesStartingNumbersInItsHeading) {
    const Made measured(carWithUppers(2), LengthTreatment::keep);
    Car car = carWithUppers(2);
    setOrigin(car, {.field = Field::cgHeight}, Origin::starting);
    const Made made(car, LengthTreatment::keep);
    EXPECT_EQ(made.words.starting(), QStringLiteral("Starting numbers, not measured: CG height"));
    EXPECT_NEAR(made.frame.around.body().top() - measured.frame.around.body().top(),
                made.frame.text.leading(), 1e-9);
}

}  // namespace
}  // namespace bolthole
