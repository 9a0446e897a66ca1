#include "app/controllers/baseline_controller.h"

#include <utility>

namespace bolthole {

BaselineController::BaselineController(BenchState& bench, BaselinePanel& panel, QObject* parent)
    : QObject(parent), bench_(bench), panel_(panel) {}

void BaselineController::carChanged() {
    const KeptSetup* state = bench_.car.baselineSetup();
    if (state == nullptr) {
        shown_.reset();
        bench_.baseline.reset();
        return;
    }
    if (shown_ != state->car) {
        shown_ = state->car;
        Ghost ghost{*state->car, computeTrace(*state->car), {}, tr("before")};
        bench_.baseline.reset();
        if (ghost.trace.assembly.usable()) {
            computeUncertainty(ghost.car, ghost.uncertainty);
            bench_.baseline = std::move(ghost);
        }
    }
    moveGhost();
}

void BaselineController::moveGhost() {
    if (bench_.baseline) {
        bench_.baseline->cursor = solveStation(bench_.baseline->car, bench_.cursorTravel);
    }
}

void BaselineController::show(const std::shared_ptr<const Car>& beforeBolting) {
    comparison_.reset();
    if (bench_.baseline && bench_.faults.empty()) {
        comparison_ = compareCars(bench_.baseline->car, bench_.car);
    }
    panel_.offerBeforeBolting(beforeBolting);
    panel_.showState(bench_, comparison());
}

void BaselineController::showCursor() {
    panel_.showCursor(bench_, comparison());
}

}  // namespace bolthole
