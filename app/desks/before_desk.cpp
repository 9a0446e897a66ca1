#include "app/desks/before_desk.h"

#include <utility>

namespace bolthole {

BeforeDesk::BeforeDesk(BenchState& bench, BeforePanel& panel, QObject* parent)
    : QObject(parent), bench_(bench), panel_(panel) {}

void BeforeDesk::carChanged() {
    const KeptState* state = bench_.car.beforeState();
    if (state == nullptr) {
        shown_.reset();
        bench_.before.reset();
        return;
    }
    if (shown_ != state->car) {
        shown_ = state->car;
        Ghost ghost{*state->car, computeTrace(*state->car), {}, tr("before")};
        bench_.before.reset();
        if (ghost.trace.assembly.usable()) {
            computeSpread(ghost.car, ghost.spread);
            bench_.before = std::move(ghost);
        }
    }
    moveGhost();
}

void BeforeDesk::moveGhost() {
    if (bench_.before) {
        bench_.before->cursor = solveStation(bench_.before->car, bench_.cursorTravel);
    }
}

void BeforeDesk::show() {
    comparison_.reset();
    if (bench_.before && bench_.faults.empty()) {
        comparison_ = compareCars(bench_.before->car, bench_.car);
    }
    panel_.showState(bench_, comparison());
}

void BeforeDesk::showCursor() {
    panel_.showCursor(bench_, comparison());
}

}  // namespace bolthole
