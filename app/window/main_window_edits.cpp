// The main window's one way for edits to reach the document, and what is said of them.
#include "app/window/main_window.h"
#include "geometry/passes/pass_warnings.h"
#include "widgets/kit/notice_bar.h"

namespace bolthole {

// A pass that looks like a slip of the pen is taken, and said: the clock may be right.
void MainWindow::takePassEdit(const Edit& edit) {
    const auto* added = edit.as<AddPass>();
    const auto* changed = edit.as<ChangePass>();
    const std::optional<Pass> pass = added != nullptr     ? std::optional(added->pass)
                                     : changed != nullptr ? std::optional(changed->pass)
                                                          : std::nullopt;
    const std::string slip = pass ? slipIn(*pass, state_.car.passes) : std::string();
    takeKeptEdit(edit, EditPhase::whole);  // a pass's setup can be recovered there, too
    if (!slip.empty()) {
        notice_->say(tr("Pass %1 is in the log; look at it again: %2. Undo takes it back.")
                         .arg(pass->number)
                         .arg(QString::fromStdString(slip)));
    }
}

// Whether it became a step that Undo takes back: the history's index says so only until the history is full.
bool MainWindow::takeAsStep(const Edit& edit, EditPhase phase) {
    const QUndoStack& history = document_.undoStack();
    const QUndoCommand* const before = history.command(history.index() - 1);
    takeEdit(edit, phase);
    return history.command(history.index() - 1) != before;
}

// What a button set elsewhere than where one looks is said.
void MainWindow::takeProposal(const Edit& edit, EditPhase phase) {
    if (takeAsStep(edit, phase)) {
        notice_->say(tr("Done: %1. Undo takes it back.").arg(document_.undoStack().undoText()));
    }
}

// Neither recovering nor deleting is asked about, so what went is said where it can be turned back.
void MainWindow::takeKeptEdit(const Edit& edit, EditPhase phase) {
    if (!takeAsStep(edit, phase)) {
        return;
    }
    const QString done = document_.undoStack().undoText();
    if (edit.as<RestoreKept>() != nullptr) {
        notice_->tell(tr("Done: %1. What was measured or changed since that setup was kept went with it; "
                         "Undo brings it back.")
                          .arg(done));
    } else if (edit.as<RemoveKept>() != nullptr) {
        notice_->tell(tr("Done: %1. Undo brings it back.").arg(done));
    }
}

void MainWindow::takeEdit(const Edit& edit, EditPhase phase) {
    if (edit.as<ChooseHoles>() != nullptr) {
        state_.selection = {};  // its note would stay on a hole that has nothing to do with what was bolted
    }
    const QString refusal = document_.apply(edit, phase, state_.selection);
    if (!refusal.isEmpty() && phase != EditPhase::dragging) {
        notice_->say(refusal);
    }
    if (phase != EditPhase::dragging) {
        showState();  // an edit that changed nothing, or was refused, left its typed text in the field
    }
}

}  // namespace bolthole
