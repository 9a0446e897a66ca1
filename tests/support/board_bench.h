// A hole board with what a window would do around it, for tests that point, click, drag and type.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>
#include <memory>
#include <utility>
#include <vector>

#include "widgets/board/combination_map.h"
#include "widgets/board/combination_table.h"
#include "widgets/board/hole_board.h"
#include "widgets/kit/theme.h"

namespace bolthole::test {

/// Bolt holes one above the other, from the top down, a pair of coordinates fixed; inches.
inline Bracket bracketAt(double x, double y, const std::vector<std::pair<std::string, double>>& heights,
                         int use) {
    Bracket bracket;
    for (const auto& [name, height] : heights) {
        bracket.holes.push_back({-1, name, kMetresPerInch * Eigen::Vector3d(x, y, height)});
    }
    bracket.use = use;
    return bracket;
}

/// An invented car with a triangulated four-link: three lower axle holes, two upper front ones.
inline Car wagonCar() {
    Car car;
    car.title = "Shop wagon";
    car.wheelbase = 116 * kMetresPerInch;
    car.rearTireRadius = 13.625 * kMetresPerInch;
    car.frontTireRadius = 13.375 * kMetresPerInch;
    car.cornerWeights = {541, 525, 393, 380};
    car.cgHeight = 23 * kMetresPerInch;
    Link lower;
    lower.name = "lower";
    lower.chassis = bracketAt(21.5, 18, {{"front", 10.5}}, 0);
    lower.axle = bracketAt(0.5, 20.5, {{"top", 9.75}, {"middle", 8.5}, {"bottom", 7.25}}, 1);
    Link upper;
    upper.name = "upper";
    upper.chassis = bracketAt(12.5, 16, {{"high", 18.25}, {"low", 17.25}}, 0);
    upper.axle = bracketAt(1, 6, {{"ear", 19.25}}, 0);
    upper.adjuster = Adjuster{.pitch = kMetresPerInch / 16};
    car.links = {lower, upper};
    car.driveline = Driveline{0.026, {0.28, 0, 0.343}, 0.057, {1.5, 0, 0.387}};
    return car;
}

/// An invented car with a parallel four-link and a track bar, several holes at every end; its instant centers
/// pass through infinity to behind the axle.
inline Car coupeCar() {
    Car car = wagonCar();
    car.title = "Shop coupe";
    Link& lower = car.links[0];
    lower.chassis =
        bracketAt(20.5, 15.5, {{"top", 10.5}, {"upper", 9.5}, {"lower", 8.5}, {"bottom", 7.5}}, 1);
    lower.axle = bracketAt(1, 15.5, {{"top", 9.5}, {"middle", 8.25}, {"bottom", 7}}, 1);
    lower.adjuster = Adjuster{.pitch = kMetresPerInch / 16, .threadedEnds = 1};
    Link& upper = car.links[1];
    upper.chassis =
        bracketAt(13.5, 15.5, {{"top", 17}, {"upper", 15.75}, {"lower", 14.5}, {"bottom", 13.25}}, 1);
    upper.axle = bracketAt(0.75, 15.5, {{"top", 18.25}, {"middle", 17}, {"bottom", 15.75}}, 1);
    Link bar;
    bar.name = "track bar";
    bar.side = Side::center;
    bar.chassis = bracketAt(-5, 15.75, {{"high", 13.25}, {"low", 11.25}}, 0);
    bar.axle = bracketAt(-5, -15, {{"middle", 12.25}}, 0);
    car.links.push_back(bar);
    return car;
}

/// Every combination of the car, computed.
inline BoardState solvedBoard(const Car& car, LengthTreatment lengths = LengthTreatment::keep,
                              const CombinationScope& scope = {}) {
    BoardState board;
    board.lengths = lengths;
    board.scope = scope;
    const CombinationSpace space(car, scope);
    board.total = space.count();
    board.present = space.present();
    board.car = std::make_shared<const Car>(car);
    board.complete = true;
    CombinationSolver solver(car, lengths);
    board.combinations.resize(static_cast<std::size_t>(space.count()));
    for (std::uint64_t index = 0; index < space.count(); ++index) {
        HoleCombination& combination = board.combinations[static_cast<std::size_t>(index)];
        solver.solve(space.at(index), combination);
        combination.index = index;
    }
    return board;
}

/// A board in a window of its own, with everything it says. Target windows are applied and shown; other edits
/// are only recorded.
class BoardBench : public testing::Test {
  protected:
    static void SetUpTestSuite() { ThemeKeeper::instance().choose(Appearance::light); }

    BoardBench() : board_(std::make_unique<HoleBoard>()) {
        QObject::connect(board_.get(), &HoleBoard::edited, board_.get(),
                         [this](const Edit& edit, EditPhase phase) { take(edit, phase); });
        QObject::connect(board_.get(), &HoleBoard::pointedAt, board_.get(),
                         [this](const std::optional<HoleUse>& use) { pointed_.push_back(use); });
        board_->resize(1000, 330);
    }

    void take(const Edit& edit, EditPhase phase) {
        edits_.emplace_back(edit, phase);
        if (const auto* set = edit.as<SetTarget>()) {
            if (phase == EditPhase::dragging && !before_) {
                before_ = bench_.car.target;
            }
            bench_.car.target = phase == EditPhase::abandoned ? *before_ : set->target;
            if (phase != EditPhase::dragging) {
                before_.reset();
            }
            show();
        }
    }

    void open(const Car& car, LengthTreatment lengths = LengthTreatment::keep) {
        bench_.car = bench_.solvedCar = car;
        state_ = solvedBoard(car, lengths);
        openWindow();
    }
    void openWindow() {
        show();
        board_->show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(board_.get()));
        QApplication::setActiveWindow(board_.get());
    }
    void show() { board_->showBoard(bench_, state_); }

    template <class Kind>
    Kind* part(const char* name) {
        return board_->findChild<Kind*>(QString::fromLatin1(name));
    }
    CombinationTable& table() { return *part<CombinationTable>("combinationTable"); }
    CombinationMap& map() { return static_cast<CombinationMap&>(board_->map()); }
    /// Where a combination is drawn; fails the test if it is not.
    QPoint dot(std::uint64_t combination) {
        const std::optional<QPointF> place = board_->placeOf(combination);
        EXPECT_TRUE(place.has_value()) << combination;
        return place.value_or(QPointF()).toPoint();
    }
    /// Text of a cell.
    QString cell(int row, CombinationColumn::Kind kind) {
        return table().combinations().index(row, columnOf(kind)).data().toString();
    }
    int columnOf(CombinationColumn::Kind kind) {
        const auto& columns = table().combinations().columns();
        for (std::size_t column = 0; column < columns.size(); ++column) {
            if (columns[column].kind == kind) {
                return static_cast<int>(column);
            }
        }
        ADD_FAILURE() << "no such column";
        return -1;
    }
    /// The combination in the selected row; nothing if none is.
    std::optional<HoleUse> selectedUse() {
        const QModelIndexList rows = table().selectionModel()->selectedRows();
        if (rows.size() != 1) {
            return std::nullopt;
        }
        return state_.combinations[*table().combinations().itemAt(rows[0].row())].use;
    }

    BenchState bench_;
    BoardState state_;
    std::unique_ptr<HoleBoard> board_;
    std::vector<std::pair<Edit, EditPhase>> edits_;
    std::vector<std::optional<HoleUse>> pointed_;
    std::optional<std::optional<TargetWindow>> before_;
};

}  // namespace bolthole::test
