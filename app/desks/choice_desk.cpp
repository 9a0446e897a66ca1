#include "app/desks/choice_desk.h"

#include <algorithm>
#include <utility>

#include "geometry/choices/present_choice.h"

namespace bolthole {

namespace {

// ms: the board is redrawn at most so often while choices come in, and in a drag, whose picture comes first.
constexpr int kShowInterval = 200;
constexpr int kDragShowInterval = 700;
// ms: a drag moves the car on a hundred times a second; a job that was cancelled each time would never come
// to an end, so in a drag it may be so old before it is.
constexpr int kOldest = 500;

// Whether two cars differ in nothing that a choice's figures depend on.
bool sameChoices(Car one, const Car& other) {
    one.title = other.title;
    one.notes = other.notes;
    one.units = other.units;
    one.wanted = other.wanted;
    return withoutKept(one) == withoutKept(other);
}

}  // namespace

ChoiceDesk::ChoiceDesk(BenchState& bench, HoleBoard& board, QObject* parent)
    : QObject(parent), bench_(bench), board_(board), runner_(this), spreadRunner_(this) {
    connect(&runner_, &ChoiceRunner::arrived, this, &ChoiceDesk::take);
    connect(&spreadRunner_, &ChoiceSpreadRunner::arrived, this, &ChoiceDesk::takeSpreads);
    connect(&board, &HoleBoard::lengthsChosen, this, &ChoiceDesk::chooseLengths);
    connect(&board, &HoleBoard::scopeChosen, this, &ChoiceDesk::chooseScope);
    connect(&board, &HoleBoard::computeWanted, this, &ChoiceDesk::computeAll);
    connect(&board, &HoleBoard::pointedAt, this, &ChoiceDesk::point);
    showTimer_.setSingleShot(true);
    connect(&showTimer_, &QTimer::timeout, this, &ChoiceDesk::publishDue);
    spreadTimer_.setSingleShot(true);
    connect(&spreadTimer_, &QTimer::timeout, this, &ChoiceDesk::show);
}

void ChoiceDesk::show() {
    board_.showBoard(bench_, state_);
}

void ChoiceDesk::reset() {
    chosen_.reset();
    wantsMany_ = false;
    state_.scope = BoardState::kFirstScope;
    point(std::nullopt);
    compute(false);
}

void ChoiceDesk::chooseLengths(LengthTreatment lengths) {
    chosen_ = lengths;
    compute(false);
    remakeGhost();  // with the lengths just chosen
    emit pointedChanged();
}

void ChoiceDesk::chooseScope(const ChoiceScope& scope) {
    state_.scope = scope;
    compute(false);
}

void ChoiceDesk::computeAll() {
    wantsMany_ = true;
    compute(false);
}

void ChoiceDesk::carChanged(bool dragging) {
    if (comingCar_ && bench_.faults.empty() && sameChoices(bench_.car, *comingCar_)) {
        show();
        return;
    }
    remakeGhost();
    compute(dragging);
}

void ChoiceDesk::compute(bool dragging) {
    if (dragging && dragging_ && runner_.isRunning() && age_.elapsed() < kOldest) {
        overtaken_ = true;
        return;
    }
    dragging_ = dragging;
    start(dragging);
}

void ChoiceDesk::start(bool dragging) {
    runner_.cancel();
    spreadRunner_.cancel();
    spreadTimer_.stop();
    coming_.clear();
    overtaken_ = false;
    comingCar_.reset();
    if (!dragging) {
        finishedCar_.reset();
    }
    const LengthTreatment wanted = chosen_.value_or(defaultTreatment(bench_.car));
    state_.lengths =
        wanted == LengthTreatment::uppers && !hasUpperRod(bench_.car) ? LengthTreatment::keep : wanted;
    state_.problem = bench_.faults.empty() ? QString() : QString::fromStdString(bench_.problem);
    state_.complete = false;
    if (!bench_.faults.empty()) {
        state_.car.reset();
        state_.choices.clear();
        clearSpreads();
        show();
        return;
    }
    const ChoiceSpace space(bench_.car, state_.scope);
    state_.total = space.count();
    state_.present = space.present();
    state_.mayCompute = space.count() <= kManyChoices || wantsMany_;
    comingCar_ = std::make_shared<const Car>(bench_.car);
    if (!state_.mayCompute) {
        state_.car = comingCar_;
        state_.choices.clear();
        clearSpreads();
        solvePresent();
        show();
        return;
    }
    runner_.start({comingCar_, state_.lengths, state_.scope}, dragging);
    age_.start();
    if (!showTimer_.isActive()) {
        showTimer_.start(dragging_ ? kDragShowInterval : kShowInterval);
    }
}

// Of a space too large to compute unasked, the present choice alone.
void ChoiceDesk::solvePresent() {
    if (state_.present) {
        HoleChoice choice = choiceAsItStands(*comingCar_);
        choice.index = *state_.present;
        state_.choices = {choice};
    }
}

void ChoiceDesk::take(const std::vector<HoleChoice>& choices, bool last) {
    coming_.insert(coming_.end(), choices.begin(), choices.end());
    if (last && dragging_) {
        finished_ = std::exchange(coming_, {});
        finishedCar_ = comingCar_;
    }
    if (last && !dragging_) {
        publishComing(true);
    } else if (!showTimer_.isActive()) {
        showTimer_.start(dragging_ ? kDragShowInterval : kShowInterval);
    }
    if (last && overtaken_) {
        start(dragging_);
    }
}

// In a drag only whole tables are shown: parts of ever new ones would flicker.
void ChoiceDesk::publishDue() {
    if (dragging_ && finishedCar_) {
        state_.car = std::exchange(finishedCar_, nullptr);
        state_.choices = std::exchange(finished_, {});
        state_.complete = true;
        state_.inDrag = true;
        clearSpreads();
        putPresentFirst();
        show();
    } else if (!dragging_ && !coming_.empty()) {
        publishComing(false);
    }
}

// Hands what has come in to the board.
void ChoiceDesk::publishComing(bool last) {
    showTimer_.stop();
    if (state_.car != comingCar_) {
        state_.car = comingCar_;
        state_.choices.clear();
        clearSpreads();
    }
    state_.choices.insert(state_.choices.end(), coming_.begin(), coming_.end());
    coming_.clear();
    state_.complete = last;
    state_.inDrag = false;
    putPresentFirst();
    show();
    if (last) {
        startSpreads();
    }
}

void ChoiceDesk::startSpreads() {
    clearSpreads();
    state_.spreads.resize(state_.total);
    spreadRunner_.start(state_.car, state_.lengths, state_.scope);
}

void ChoiceDesk::clearSpreads() {
    state_.spreads.clear();
    state_.spreadCount = 0;
}

void ChoiceDesk::takeSpreads(std::uint64_t first, const std::vector<ChoiceSpread>& spreads, bool last) {
    std::ranges::copy(spreads, state_.spreads.begin() + static_cast<std::ptrdiff_t>(first));
    state_.spreadCount += spreads.size();
    if (last) {
        spreadTimer_.stop();
        show();
    } else if (!spreadTimer_.isActive()) {
        spreadTimer_.start(kShowInterval);
    }
}

void ChoiceDesk::putPresentFirst() {
    if (!state_.present) {
        return;
    }
    const auto present = std::ranges::find(state_.choices, *state_.present, &HoleChoice::index);
    if (present != state_.choices.end()) {
        std::iter_swap(state_.choices.begin(), present);
    }
}

void ChoiceDesk::point(const std::optional<HoleUse>& use) {
    if (pointed_ == use) {
        return;
    }
    pointed_ = use;
    remakeGhost();
    emit pointedChanged();
}

void ChoiceDesk::remakeGhost() {
    bench_.pointed.reset();
    if (!pointed_ || !bench_.faults.empty() || *pointed_ == holesInUse(bench_.car)) {
        return;
    }
    CarResult chosen = carWithChoice(bench_.car, *pointed_, state_.lengths);
    if (chosen.car) {
        showGhost(*chosen.car, QString::fromStdString(holeNames(*pointed_, bench_.car)));
    }
}

void ChoiceDesk::preview(const std::shared_ptr<const Car>& car) {
    if (car) {
        bench_.pointed.reset();
        showGhost(*car, tr("as asked for"));
    } else {
        remakeGhost();
    }
    emit pointedChanged();
}

void ChoiceDesk::showGhost(const Car& car, const QString& name) {
    Ghost ghost{car, {}, {}, name};
    computeTrace(ghost.car, ghost.trace);
    if (ghost.trace.assembly.usable()) {
        bench_.pointed = std::move(ghost);
        moveGhost();
    }
}

void ChoiceDesk::moveGhost() {
    if (bench_.pointed) {
        bench_.pointed->cursor = solveStation(bench_.pointed->car, bench_.cursorTravel);
    }
}

}  // namespace bolthole
