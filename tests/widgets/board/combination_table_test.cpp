// The hole board's table: what its columns say, how they sort, and the filter.
#include "widgets/board/combination_table.h"

#include <gmock/gmock.h>

#include <QApplication>
#include <QCheckBox>
#include <QHeaderView>
#include <QLineEdit>
#include <QScrollBar>
#include <algorithm>
#include <cmath>

#include "geometry/car/starting_numbers.h"
#include "tests/support/board_bench.h"
#include "tests/support/text_notes.h"
#include "widgets/board/frozen_columns.h"
#include "widgets/kit/cut_cell.h"

namespace bolthole::test {
namespace {

using Kind = CombinationColumn::Kind;

// A dot is but two pixels wide: its color is thinned at its rim.
bool isNear(const QColor& one, const QColor& other) {
    return std::abs(one.red() - other.red()) + std::abs(one.green() - other.green()) +
               std::abs(one.blue() - other.blue()) <
           90;
}

class CombinationTableTest : public BoardBench {
  protected:
    /// The rows' combinations, top to bottom.
    std::vector<std::uint64_t> rows() {
        std::vector<std::uint64_t> found;
        for (int row = 0; row < table().combinations().rowCount(); ++row) {
            found.push_back(state_.combinations[*table().combinations().itemAt(row)].index);
        }
        return found;
    }
    std::vector<std::uint64_t> ranked() {
        std::vector<std::uint64_t> found;
        for (const std::size_t at : rankCombinations(state_.combinations, bench_.car.target)) {
            found.push_back(state_.combinations[at].index);
        }
        return found;
    }
    std::vector<double> column(Figure figure) {
        std::vector<double> values;
        for (int row = 0; row < table().combinations().rowCount(); ++row) {
            values.push_back(state_.combinations[*table().combinations().itemAt(row)][figure]);
        }
        return values;
    }
    void clickHeader(Kind kind) {
        const int at = columnOf(kind);
        table().scrollTo(table().combinations().index(0, at));
        QTest::mouseClick(table().horizontalHeader()->viewport(), Qt::LeftButton, {},
                          {table().columnViewportPosition(at) + 8, table().horizontalHeader()->height() / 2});
    }
    void filter(const QString& text) {
        auto* field = part<QLineEdit>("combinationFilter");
        field->clear();
        QTest::keyClicks(field, text);
    }
};

TEST_F(CombinationTableTest, HolesAndProblemStayInSightWhileTheRestScrolls) {
    for (const auto& [car, width] :
         {std::pair{wagonCar(), 1500}, std::pair{coupeCar(), 1500}, std::pair{coupeCar(), 1000}}) {
        open(car);
        board_->resize(width, 330);
        QApplication::processEvents();
        auto* frozen = part<FrozenColumns>("frozenColumns");
        table().horizontalScrollBar()->setValue(table().horizontalScrollBar()->maximum());
        ASSERT_GT(table().horizontalScrollBar()->value(), 0) << "all of it fits: nothing scrolls";
        ASSERT_TRUE(frozen->isVisible());
        const auto& columns = table().combinations().columns();
        EXPECT_EQ(frozen->held(), frozenCount(columns));
        for (int column = 0; column < frozen->held(); ++column) {
            EXPECT_FALSE(frozen->isColumnHidden(column));
            EXPECT_EQ(frozen->columnWidth(column), table().columnWidth(column));
        }
        EXPECT_EQ(columns[static_cast<std::size_t>(frozen->held()) - 1].kind, Kind::problem);
        EXPECT_EQ(frozen->rowHeight(0), table().rowHeight(0));
        table().verticalScrollBar()->setValue(3);
        EXPECT_EQ(frozen->verticalScrollBar()->value(), table().verticalScrollBar()->value());
        QTest::mouseClick(frozen->viewport(), Qt::LeftButton, {},
                          {10, frozen->rowViewportPosition(frozen->rowAt(20)) + 5});
        EXPECT_TRUE(selectedUse().has_value()) << "a click there picks as in the table";
    }
}

/// Its holes numbered from the top down, as most are painted on brackets.
Car numberedCoupe() {
    Car car = coupeCar();
    for (Link& link : car.links) {
        for (Bracket* bracket : {&link.chassis, &link.axle}) {
            for (std::size_t hole = 0; hole < bracket->holes.size(); ++hole) {
                bracket->holes[hole].name = std::to_string(hole + 1);
            }
        }
    }
    return car;
}

// As wide as the bench gives it on a screen of 1280 px, also after another car's fewer or more columns.
TEST_F(CombinationTableTest, HeadsAndHoleNamesAreWholeInASmallWindow) {
    for (const Car& car : {wagonCar(), numberedCoupe(), wagonCar()}) {
        open(car);
        board_->resize(950, 220);
        QApplication::processEvents();
        const QAbstractItemView& cells = table();
        const QFontMetrics head(table().horizontalHeader()->font());
        const auto& columns = table().combinations().columns();
        for (int column = 0; column < static_cast<int>(columns.size()); ++column) {
            const CombinationColumn& what = columns[static_cast<std::size_t>(column)];
            const QString title = columnTitle(what, car, Units::inch);
            EXPECT_LE(head.horizontalAdvance(title), table().columnWidth(column) - 12) << title.toStdString();
            if (what.kind == Kind::names || what.kind == Kind::hole) {
                EXPECT_LE(cells.sizeHintForColumn(column), table().columnWidth(column))
                    << title.toStdString();
            }
        }
    }
}

TEST_F(CombinationTableTest, ComesInRankOrder) {
    Car car = coupeCar();
    car.target = TargetWindow{45 * kMetresPerInch, 70 * kMetresPerInch, 80, 140};
    open(car);
    EXPECT_EQ(rows(), ranked());
    EXPECT_EQ(cell(0, Kind::rank), "1");
    bench_.car.target.reset();
    show();
    EXPECT_EQ(rows(), ranked());
}

TEST_F(CombinationTableTest, EveryColumnSortsAndTheRankColumnLeadsBack) {
    open(coupeCar());
    clickHeader(Kind::antiSquat);
    EXPECT_THAT(column(Figure::antiSquat), testing::Pointwise(testing::Le(), [&] {
                    auto next = column(Figure::antiSquat);
                    next.erase(next.begin());
                    next.push_back(std::numeric_limits<double>::infinity());
                    return next;
                }()));
    clickHeader(Kind::antiSquat);
    EXPECT_TRUE(std::ranges::is_sorted(column(Figure::antiSquat), std::ranges::greater{}));
    for (int at = 1; at < table().combinations().columnCount(); ++at) {
        table().combinations().sort(at, Qt::AscendingOrder);
        std::vector<std::uint64_t> up = rows();
        EXPECT_EQ(table().combinations().rowCount(), static_cast<int>(state_.total));
        std::ranges::sort(up);
        EXPECT_EQ(std::ranges::adjacent_find(up), up.end());
    }
    clickHeader(Kind::rank);
    EXPECT_EQ(rows(), ranked());
}

TEST_F(CombinationTableTest, WhatDoesNotExistSortsLastEitherWay) {
    bench_.car = wagonCar();
    state_ = solvedBoard(bench_.car);
    state_.combinations[3].ride[static_cast<std::size_t>(Figure::antiSquat)] = kAbsent;
    openWindow();
    for (const Qt::SortOrder order : {Qt::AscendingOrder, Qt::DescendingOrder}) {
        table().combinations().sort(columnOf(Kind::antiSquat), order);
        EXPECT_TRUE(std::isnan(column(Figure::antiSquat).back()));
        EXPECT_EQ(std::ranges::count_if(column(Figure::antiSquat), [](double v) { return std::isnan(v); }),
                  1);
    }
}

// As on the map: near, far, infinity, far behind, near behind.
TEST_F(CombinationTableTest, DistancesSortThroughInfinity) {
    bench_.car = wagonCar();
    state_ = solvedBoard(bench_.car);
    const double distances[] = {-2, 3, kAbsent, 1, -9, 50};
    for (std::size_t at = 0; at < 6; ++at) {
        state_.combinations[at].ride[static_cast<std::size_t>(Figure::icX)] = distances[at];
    }
    openWindow();
    table().combinations().sort(columnOf(Kind::instantCenter), Qt::AscendingOrder);
    EXPECT_EQ(rows(), (std::vector<std::uint64_t>{3, 1, 5, 2, 4, 0}));
}

TEST_F(CombinationTableTest, ThePresentRowIsMarked) {
    open(wagonCar());
    const int row = *table().combinations().rowOf(static_cast<std::size_t>(*state_.present));
    EXPECT_EQ(cell(row, Kind::bolts), "current");
    const QModelIndex hole = table().combinations().index(row, columnOf(Kind::hole));
    EXPECT_GT(hole.data(Qt::FontRole).value<QFont>().weight(), QFont::Normal);
    EXPECT_TRUE(table().combinations().index(row, 0).data(Qt::DecorationRole).canConvert<QPixmap>());
    EXPECT_NE(cell(row == 0 ? 1 : 0, Kind::bolts), "current");
}

// A hole nobody measured speaks for the combinations that use it, a CG height for every anti-squat and for
// nothing else.
TEST_F(CombinationTableTest, WhatRestsOnStartingNumbersIsMarkedAndNotBold) {
    const auto at = [this](int row, Kind kind, int role) {
        return table().combinations().index(row, columnOf(kind)).data(role);
    };
    const auto rests = [&](int row, Kind kind) { return at(row, kind, kRestsOnStartsRole).toBool(); };
    const auto isBold = [&](int row) { return at(row, Kind::antiSquat, Qt::FontRole).value<QFont>().bold(); };
    Car car = wagonCar();
    open(car);
    EXPECT_FALSE(rests(1, Kind::antiSquat));
    EXPECT_TRUE(isBold(1));
    startFrom(car.links[0].axle.holes[0]);
    open(car);
    int resting = 0;
    for (int row = 0; row < table().combinations().rowCount(); ++row) {
        const std::size_t item = *table().combinations().itemAt(row);
        const bool usesIt = state_.combinations[item].use.of(0, End::axle) == 0;
        EXPECT_EQ(rests(row, Kind::antiSquat), usesIt) << row;
        EXPECT_EQ(rests(row, Kind::instantCenter), usesIt) << row;
        EXPECT_EQ(isBold(row), !usesIt) << row;
        EXPECT_EQ(at(row, Kind::instantCenter, Qt::ToolTipRole).toString().contains("lower top hole"),
                  usesIt);
        resting += usesIt ? 1 : 0;
    }
    EXPECT_EQ(resting, 2);
    car = wagonCar();
    setOrigin(car, {.field = Field::cgHeight}, Origin::starting);
    open(car);
    EXPECT_TRUE(rests(0, Kind::antiSquat));
    EXPECT_FALSE(isBold(0));
    EXPECT_FALSE(rests(0, Kind::instantCenter)) << "the links know nothing of a center of gravity";
    EXPECT_FALSE(rests(0, Kind::pinion));
    EXPECT_FALSE(rests(0, Kind::bolts));
    EXPECT_THAT(at(0, Kind::antiSquat, Qt::AccessibleTextRole).toString().toStdString(),
                testing::HasSubstr("rests on starting numbers"));
}

TEST_F(CombinationTableTest, AHoleThatIsNotDrilledYetIsCalledPlanned) {
    Car car = wagonCar();
    car.links[0].axle.holes[0].planned = true;
    open(car);
    for (int row = 0; row < table().combinations().rowCount(); ++row) {
        const bool usesIt =
            state_.combinations[*table().combinations().itemAt(row)].use.of(0, End::axle) == 0;
        EXPECT_EQ(cell(row, Kind::hole).endsWith(", planned"), usesIt) << row;
        EXPECT_EQ(cell(row, Kind::problem).contains("a hole is not drilled yet"), usesIt) << row;
    }
}

// "127.0 x 14.2" cut to "127.0 x 1" is another number.
TEST_F(CombinationTableTest, NoNumberIsCutByTheEdge) {
    Car car = coupeCar();
    open(car);
    const auto shown = [this](int column, int width) {
        QStyleOptionViewItem option;
        option.widget = &table();
        option.rect = table().visualRect(table().combinations().index(0, column));
        option.rect.setWidth(width);
        option.text = QStringLiteral("12.3 × 4.5");
        const bool isCut = takeCutCell(option);
        EXPECT_EQ(isCut, option.text == QStringLiteral("…"));
        return isCut;
    };
    const int right = table().viewport()->width();
    const int first = table().columnViewportPosition(0);
    EXPECT_FALSE(shown(0, right - first));
    EXPECT_TRUE(shown(1, right - table().columnViewportPosition(1) + 1));
    EXPECT_FALSE(shown(0, right + 50)) << "wider than the view it is never whole: as much as there is";
}

// The columns that are held lie over the table's left: what stands beside them is whole.
TEST_F(CombinationTableTest, ANumberBesideTheHeldColumnsIsNotCut) {
    open(wagonCar());
    for (const int width : {1000, 900, 820, 760}) {
        board_->resize(width, 330);
        QCoreApplication::processEvents();
        const auto* frozen = table().findChild<FrozenColumns*>();
        TextNotes notes(table().size());
        table().render(&notes);
        int whole = 0;
        for (int column = frozen->held(); column < table().combinations().columnCount(); ++column) {
            const QModelIndex cell = table().combinations().index(0, column);
            const QString text = cell.data().toString();
            const bool isWhole = table().visualRect(cell).right() < table().viewport()->width();
            if (text.isEmpty() || !isWhole) {
                continue;
            }
            ++whole;
            EXPECT_TRUE(std::ranges::any_of(notes.notes(),
                                            [&](const TextNotes::Note& note) { return note.text == text; }))
                << width << ": " << text.toStdString();
        }
        EXPECT_GT(whole, 0) << width;
    }
}

// Painted as under a field: dots in the color of such numbers.
TEST_F(CombinationTableTest, DotsStandUnderWhatRestsOnStartingNumbers) {
    const auto dots = [this] {
        const QImage image = table().grab().toImage();
        int count = 0;
        for (int y = 0; y < image.height(); ++y) {
            for (int x = 0; x < image.width(); ++x) {
                count += isNear(image.pixelColor(x, y), theme().startingMark) ? 1 : 0;
            }
        }
        return count;
    };
    Car car = wagonCar();
    open(car);
    const int without = dots();
    setOrigin(car, {.field = Field::cgHeight}, Origin::starting);
    open(car);
    EXPECT_GT(dots(), without + 20);
}

TEST_F(CombinationTableTest, TheFilterMatchesHolesAndProblems) {
    bench_.car = coupeCar();
    state_ = solvedBoard(bench_.car);
    for (HoleCombination& combination : state_.combinations) {
        combination.problems = 0;
    }
    state_.combinations[4].problems = 1U << static_cast<unsigned>(CombinationProblem::droopRunsOut);
    state_.combinations[4].details[static_cast<std::size_t>(CombinationProblem::droopRunsOut)] = {0, -1,
                                                                                                  -0.05F};
    openWindow();
    filter("stops travel");
    EXPECT_EQ(rows(), std::vector<std::uint64_t>{4});
    filter("middle HIGH");
    const auto matching = std::ranges::count_if(state_.combinations, [&](const HoleCombination& combination) {
        const std::string names = holeNames(combination.use, bench_.car);
        return names.find("middle") != std::string::npos && names.find("high") != std::string::npos;
    });
    EXPECT_EQ(table().combinations().rowCount(), matching);
    EXPECT_LT(matching, static_cast<long>(state_.total));
    filter("no such hole");
    EXPECT_EQ(table().combinations().rowCount(), 0);
    EXPECT_EQ(board_->placeOf(0), std::nullopt);
    filter("");
    EXPECT_EQ(table().combinations().rowCount(), static_cast<int>(state_.total));
    QTest::mouseClick(part<QCheckBox>("noProblems"), Qt::LeftButton, {}, {8, 10});
    EXPECT_EQ(table().combinations().rowCount(), static_cast<int>(state_.total) - 1);
    EXPECT_EQ(board_->placeOf(4), std::nullopt);
}

TEST_F(CombinationTableTest, TargetOnlyFollowsTheWindow) {
    open(wagonCar());
    auto* only = part<QCheckBox>("targetOnly");
    EXPECT_FALSE(only->isEnabled());
    bench_.car.target = TargetWindow{50 * kMetresPerInch, 66 * kMetresPerInch, 105, 135};
    show();
    QTest::mouseClick(only, Qt::LeftButton, {}, {8, 10});
    for (const std::uint64_t combination : rows()) {
        EXPECT_TRUE(meetsTarget(state_.combinations[combination], *bench_.car.target));
    }
    EXPECT_LT(rows().size(), state_.combinations.size());
}

TEST_F(CombinationTableTest, AFilterThatHidesTheSelectionDropsIt) {
    open(wagonCar());
    table().selectRow(0);
    ASSERT_TRUE(pointed_.back().has_value());
    filter("no such hole");
    EXPECT_EQ(pointed_.back(), std::nullopt);
    filter("");
    EXPECT_EQ(selectedUse(), std::nullopt);
}

TEST_F(CombinationTableTest, ColumnsAreThoseOfTheCar) {
    const Car car = coupeCar();
    std::vector<std::string> titles;
    for (const CombinationColumn& column : combinationColumns(car)) {
        titles.push_back(columnTitle(column, car, Units::inch).toStdString());
        EXPECT_FALSE(columnHelp(column, car).isEmpty());
    }
    // With so many holes their names share one column, or the figures would be scrolled out of sight.
    EXPECT_THAT(titles,
                testing::ElementsAre("Rank", "Holes", "Problem", "IC × height, in", "Anti-squat", "±",
                                     "Clearly different?", "droop … bump, %", "Pinion", "Pinion change",
                                     "Axle shift, in", "Front joint", "Rear joint", "Lower, in", "Upper, in",
                                     "Track bar, in", "Bolts moved", "Adjusters turned", "Lower chassis",
                                     "Lower axle", "Upper chassis", "Upper axle", "Track bar chassis"));
    EXPECT_EQ(combinationColumns(wagonCar())[1].kind, Kind::hole);
    Car bare = wagonCar();
    bare.driveline.reset();
    EXPECT_FALSE(std::ranges::any_of(combinationColumns(bare), [](const CombinationColumn& column) {
        return column.kind == Kind::frontJoint || column.kind == Kind::pinion;
    }));
}

TEST_F(CombinationTableTest, CellsSayWhatTheCombinationComesTo) {
    open(wagonCar(), LengthTreatment::refit);
    const int row = *table().combinations().rowOf(2);
    const HoleCombination& combination = state_.combinations[2];
    EXPECT_EQ(cell(row, Kind::hole), "middle");
    EXPECT_EQ(cell(row, Kind::antiSquat).toStdString(),
              figureText(combination[Figure::antiSquat], Quantity::percent, Units::inch) + " %");
    EXPECT_EQ(cell(row, Kind::instantCenter).toStdString(),
              figureText(combination[Figure::icX], Quantity::length, Units::inch) + " × " +
                  figureText(combination[Figure::icZ], Quantity::length, Units::inch));
    EXPECT_EQ(cell(row, Kind::pinionChange), "0.0°");
}

// Pitch 1/16 in: two counter-turning ends move an eighth a turn, one end a sixteenth, in halves.
TEST(RodWork, IsTurnsOrANewRod) {
    Link rod;
    EXPECT_EQ(rodWorkText(Car{}, rod, 0.0), "");
    EXPECT_EQ(rodWorkText(Car{}, rod, 0.003), "new link");
    EXPECT_EQ(rodWorkText(Car{}, rod, 0.0012), "") << "no tape tells it from the link there is";
    Car careful;
    careful.tools.tape = 0.0005;
    EXPECT_EQ(rodWorkText(careful, rod, 0.0012), "new link");
    rod.adjuster = Adjuster{.pitch = kMetresPerInch / 16};
    EXPECT_EQ(rodWorkText(Car{}, rod, kMetresPerInch / 4), "2.0 turns longer");
    EXPECT_EQ(rodWorkText(Car{}, rod, -0.3 * kMetresPerInch), "2.4 turns shorter");
    EXPECT_EQ(rodWorkText(Car{}, rod, 0.0001), "under 0.1 turn");
    EXPECT_EQ(rodWorkText(Car{}, rod, kNoAdjustment / 2), "");
    rod.adjuster->threadedEnds = 1;
    EXPECT_EQ(rodWorkText(Car{}, rod, kMetresPerInch / 4), "4 turns longer");
    EXPECT_EQ(rodWorkText(Car{}, rod, -0.1 * kMetresPerInch), "1.5 turns shorter");
    EXPECT_EQ(rodWorkText(Car{}, rod, 0.0002), "within half a turn");
}

TEST_F(CombinationTableTest, FarInstantCentersPretendNoPrecision) {
    bench_.car = wagonCar();
    state_ = solvedBoard(bench_.car);
    state_.combinations[0].ride[static_cast<std::size_t>(Figure::icX)] = -45.928;
    state_.combinations[0].ride[static_cast<std::size_t>(Figure::icZ)] = 4.987;
    EXPECT_EQ(instantCenterText(state_.combinations[0], Units::metric), "−45900 × 4990");
}

}  // namespace
}  // namespace bolthole::test
