#include "app/controllers/combination_controller.h"

#include <algorithm>
#include <utility>

#include "geometry/combinations/present_combination.h"

namespace bolthole {

namespace {

// ms: the board is redrawn at most so often while combinations come in, and in a drag, whose picture comes
// first.
constexpr int kShowInterval = 200;
constexpr int kDragShowInterval = 700;
// ms: a drag moves the car on a hundred times a second; a job that was cancelled each time would never come
// to an end, so in a drag it may be so old before it is.
constexpr int kOldest = 500;

// Whether two cars differ in nothing that a combination's figures depend on.
bool sameCombinations(Car one, const Car& other) {
    one.title = other.title;
    one.notes = other.notes;
    one.units = other.units;
    one.target = other.target;
    return withoutKept(one) == withoutKept(other);
}

}  // namespace

CombinationController::CombinationController(BenchState& bench, HoleBoard& board, QObject* parent)
    : QObject(parent), bench_(bench), board_(board), runner_(this), uncertaintyRunner_(this) {
    connect(&runner_, &CombinationRunner::arrived, this, &CombinationController::take);
    connect(&uncertaintyRunner_, &CombinationUncertaintyRunner::arrived, this,
            &CombinationController::takeUncertainties);
    connect(&board, &HoleBoard::lengthsChosen, this, &CombinationController::chooseLengths);
    connect(&board, &HoleBoard::scopeChosen, this, &CombinationController::chooseScope);
    connect(&board, &HoleBoard::computeRequested, this, &CombinationController::computeAll);
    connect(&board, &HoleBoard::pointedAt, this, &CombinationController::point);
    showTimer_.setSingleShot(true);
    connect(&showTimer_, &QTimer::timeout, this, &CombinationController::publishDue);
    uncertaintyTimer_.setSingleShot(true);
    connect(&uncertaintyTimer_, &QTimer::timeout, this, &CombinationController::show);
}

void CombinationController::show() {
    board_.showBoard(bench_, state_);
}

void CombinationController::reset() {
    bench_.chosenLengths.reset();
    wantsMany_ = false;
    state_.scope = BoardState::kFirstScope;
    point(std::nullopt);
    compute(false);
}

void CombinationController::chooseLengths(LengthTreatment lengths) {
    bench_.chosenLengths = lengths;
    compute(false);
    remakeGhost();  // with the lengths just chosen
    emit pointedChanged();
    emit lengthsChanged();
}

void CombinationController::chooseScope(const CombinationScope& scope) {
    state_.scope = scope;
    compute(false);
}

void CombinationController::computeAll() {
    wantsMany_ = true;
    compute(false);
}

void CombinationController::carChanged(bool dragging) {
    // What was computed in a drag is computed once more when it ends, now with what a drag leaves out.
    const bool ends = dragging_ && !dragging;
    if (!ends && comingCar_ && bench_.faults.empty() && sameCombinations(bench_.car, *comingCar_)) {
        show();
        return;
    }
    remakeGhost();
    compute(dragging);
}

void CombinationController::compute(bool dragging) {
    const bool isUnderWay = runner_.isRunning() && age_.elapsed() < kOldest;
    if (dragging && dragging_ && bench_.faults.empty() && (isUnderWay || showTimer_.isActive())) {
        overtaken_ = true;
        return;
    }
    if (dragging != dragging_) {
        showTimer_.stop();
    }
    dragging_ = dragging;
    start(dragging);
}

void CombinationController::start(bool dragging) {
    runner_.cancel();
    uncertaintyRunner_.cancel();
    uncertaintyTimer_.stop();
    coming_.clear();
    overtaken_ = false;
    comingCar_.reset();
    state_.lengths = bench_.lengths();
    state_.problem = bench_.faults.empty() ? QString() : QString::fromStdString(bench_.problem);
    state_.complete = false;
    if (!bench_.faults.empty()) {
        showTimer_.stop();  // once the car can be computed again, it is at once
        state_.car.reset();
        state_.combinations.clear();
        clearUncertainties();
        show();
        return;
    }
    const CombinationSpace space(bench_.car, state_.scope);
    state_.total = space.count();
    state_.present = space.present();
    state_.mayCompute = space.count() <= kManyCombinations || wantsMany_;
    comingCar_ = std::make_shared<const Car>(bench_.car);
    if (!state_.mayCompute) {
        state_.car = comingCar_;
        state_.combinations.clear();
        clearUncertainties();
        solvePresent();
        show();
        if (dragging) {
            showTimer_.start(kDragShowInterval);
        }
        return;
    }
    runner_.start({comingCar_, state_.lengths, state_.scope}, dragging);
    age_.start();
    if (!dragging && !showTimer_.isActive()) {
        showTimer_.start(kShowInterval);
    }
}

// Of a space too large to compute unasked, the present combination alone.
void CombinationController::solvePresent() {
    if (state_.present) {
        HoleCombination combination = combinationAsItStands(*comingCar_);
        combination.index = *state_.present;
        state_.combinations = {combination};
    }
}

void CombinationController::take(const std::vector<HoleCombination>& combinations, bool last) {
    coming_.insert(coming_.end(), combinations.begin(), combinations.end());
    if (last) {
        publishComing(true);
    } else if (!dragging_ && !showTimer_.isActive()) {
        showTimer_.start(kShowInterval);
    }
}

// In a drag only whole tables are shown, as parts of ever new ones would flicker; here the next is begun.
void CombinationController::publishDue() {
    if (dragging_) {
        if (overtaken_) {
            start(true);
        }
    } else if (!coming_.empty()) {
        publishComing(false);
    }
}

// Hands what has come in to the board.
void CombinationController::publishComing(bool last) {
    showTimer_.stop();
    if (state_.car != comingCar_) {
        state_.car = comingCar_;
        state_.combinations.clear();
        clearUncertainties();
    }
    state_.combinations.insert(state_.combinations.end(), coming_.begin(), coming_.end());
    coming_.clear();
    state_.complete = last;
    state_.inDrag = dragging_;
    putPresentFirst();
    show();
    if (dragging_) {
        showTimer_.start(kDragShowInterval);
    } else if (last) {
        startUncertainties();
    }
}

void CombinationController::startUncertainties() {
    clearUncertainties();
    state_.uncertainties.resize(state_.total);
    uncertaintyRunner_.start(state_.car, state_.lengths, state_.scope);
}

void CombinationController::clearUncertainties() {
    state_.uncertainties.clear();
    state_.uncertaintyCount = 0;
}

void CombinationController::takeUncertainties(std::uint64_t first,
                                              const std::vector<CombinationUncertainty>& uncertainties,
                                              bool last) {
    std::ranges::copy(uncertainties, state_.uncertainties.begin() + static_cast<std::ptrdiff_t>(first));
    state_.uncertaintyCount += uncertainties.size();
    if (last) {
        uncertaintyTimer_.stop();
        show();
    } else if (!uncertaintyTimer_.isActive()) {
        uncertaintyTimer_.start(kShowInterval);
    }
}

void CombinationController::putPresentFirst() {
    if (!state_.present) {
        return;
    }
    const auto present = std::ranges::find(state_.combinations, *state_.present, &HoleCombination::index);
    if (present != state_.combinations.end()) {
        std::iter_swap(state_.combinations.begin(), present);
    }
}

void CombinationController::point(const std::optional<HoleUse>& use) {
    if (pointed_ == use) {
        return;
    }
    pointed_ = use;
    remakeGhost();
    emit pointedChanged();
}

void CombinationController::remakeGhost() {
    bench_.pointed.reset();
    if (!pointed_ || !bench_.faults.empty() || *pointed_ == holesInUse(bench_.car)) {
        return;
    }
    CarResult chosen = carWithCombination(bench_.car, *pointed_, state_.lengths);
    if (chosen.car) {
        showGhost(*chosen.car, QString::fromStdString(holeNames(*pointed_, bench_.car)));
    }
}

void CombinationController::preview(const std::shared_ptr<const Car>& car) {
    if (car) {
        bench_.pointed.reset();
        showGhost(*car, tr("as asked for"));
    } else {
        remakeGhost();
    }
    emit pointedChanged();
}

void CombinationController::showGhost(const Car& car, const QString& name) {
    Ghost ghost{car, {}, {}, name};
    computeTrace(ghost.car, ghost.trace);
    if (ghost.trace.assembly.usable()) {
        bench_.pointed = std::move(ghost);
        moveGhost();
    }
}

void CombinationController::moveGhost() {
    if (bench_.pointed) {
        bench_.pointed->cursor = solveStation(bench_.pointed->car, bench_.cursorTravel);
    }
}

}  // namespace bolthole
