#include "widgets/board/hole_board_message.h"

#include <QElapsedTimer>
#include <QThread>
#include <algorithm>
#include <cmath>

#include "widgets/board/hole_board_header.h"
#include "widgets/kit/translation.h"

namespace bolthole {

namespace {

// Combinations kept in memory beyond this are not offered, bytes: a laptop in a shop must stay usable.
constexpr double kMostMemory = 2e9;
constexpr std::uint64_t kTimed = 8;

// With one combination in scope: nothing to choose at all, or only what was left out of the scope.
QString singleCombination(const BoardState& board) {
    const CombinationScope widest{.tieSides = false, .crosswise = true};
    if (CombinationSpace(*board.car, widest).count() > 1) {
        return tr(
            "Every bracket that takes part has one hole. Let the other links "
            "take part above to compare.");
    }
    return tr("Every bracket has one hole: add holes in the car sheet to compare.");
}

BoardMessage tooMany(const BoardState& board, const QString& computingTime) {
    const QString count = groupedNumber(board.total);
    const double memory = static_cast<double>(board.total) * static_cast<double>(sizeof(HoleCombination));
    if (memory > kMostMemory) {
        return {tr("This car has %1 combinations, more than can be compared at once. "
                   "Tie the sides, leave the track bar out, or take holes away in "
                   "the car sheet.")
                    .arg(board.total >= CombinationSpace::kCountLimit ? tr("over %1").arg(count) : count),
                false};
    }
    return {tr("This car has %1 combinations; computing them takes %2 and %3 GB of memory.")
                .arg(count, computingTime, QString::number(std::max(memory / 1e9, 0.1), 'f', 1)),
            true};
}

}  // namespace

BoardMessage boardMessage(const BoardState& board, const QString& computingTime) {
    if (!board.problem.isEmpty()) {
        return {board.problem, false};
    }
    if (!board.car) {
        return {tr("Computing the combinations…"), false};
    }
    if (!board.mayCompute) {
        return tooMany(board, computingTime);
    }
    return board.total <= 1 ? BoardMessage{singleCombination(board), false} : BoardMessage{};
}

QString computingTimeInWords(const BoardState& board) {
    const CombinationSpace space(*board.car, board.scope);
    CombinationSolver solver(*board.car, board.lengths);
    HoleCombination combination;
    QElapsedTimer timer;
    timer.start();
    for (std::uint64_t one = 0; one < kTimed; ++one) {
        solver.solve(space.at(space.count() / kTimed * one), combination);
    }
    const double each = static_cast<double>(timer.nsecsElapsed()) * 1e-9 / static_cast<double>(kTimed);
    return aboutSeconds(each * static_cast<double>(board.total) / std::max(1, QThread::idealThreadCount()));
}

QString aboutSeconds(double seconds) {
    const auto rounded = [](double value) {
        const double digit = std::pow(10.0, std::floor(std::log10(value)));
        return QString::number(std::round(value / digit) * digit, 'f', 0);
    };
    if (seconds < 1.5) {
        return tr("about a second");
    }
    if (seconds < 95) {
        return tr("about %1 s").arg(rounded(seconds));
    }
    if (seconds < 5400) {
        return tr("about %1 min").arg(rounded(seconds / 60));
    }
    return tr("about %1 h").arg(rounded(seconds / 3600));
}

QString orderInWords(bool hasTarget, bool hasDriveline, const QString& sortedBy) {
    const QString change =
        hasDriveline ? tr("least pinion change (to 0.1°)") : tr("least turn of the housing (to 0.1°)");
    const QString then = tr("%1, then fewest bolts moved; ties by fewest links adjusted, then by the "
                            "holes' own order. What can't be assembled comes last.")
                             .arg(change);
    QString order = hasTarget ? tr("inside the target window first, then %1").arg(then) : then;
    order = sortedBy.isEmpty() ? tr("Order: %1").arg(order)
                               : tr("Sorted by %1; click Rank for the order: %2").arg(sortedBy, order);
    return hasTarget ? order
                     : tr("Drag a window on the map to say what you want.") + QLatin1Char(' ') + order;
}

}  // namespace bolthole
