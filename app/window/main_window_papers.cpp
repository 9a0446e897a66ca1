// What the window puts on paper, and the other car file it compares with.
#include <QClipboard>
#include <QDate>
#include <QFileDialog>
#include <QFileInfo>
#include <QGuiApplication>

#include "app/controllers/baseline_controller.h"
#include "app/controllers/combination_controller.h"
#include "app/controllers/trial_controller.h"
#include "app/papers/change_dialogs.h"
#include "app/papers/chart_dialogs.h"
#include "app/papers/sheet_dialogs.h"
#include "app/papers/template_dialogs.h"
#include "app/window/main_window.h"
#include "widgets/kit/notice_bar.h"
#include "widgets/pages/brackets/bracket_page.h"
#include "widgets/papers/sheets/setup_facts.h"
#include "widgets/words/trial_words.h"

namespace bolthole {

// Nothing is printed of a car that can't be computed, and typing counts as done.
bool MainWindow::readyForPaper() {
    commitTyping();
    if (!state_.faults.empty()) {
        notice_->say(tr("Nothing to print: %1").arg(QString::fromStdString(state_.problem)));
        return false;
    }
    return true;
}

// Which holes for how much power, and what to try next, stand on the papers where the Launch page has
// computed them: a preview does not wait for launches.
ChartRequest MainWindow::chartRequest() const {
    const auto& powers = trialController_->powers();
    const std::string words = powers ? bandWords(*powers, state_.car, state_.style.units) : std::string();
    return {state_.car, controller_->state().lengths, state_.style, QDate::currentDate(),
            QString::fromStdString(words)};
}

void MainWindow::previewWallChart() {
    if (readyForPaper()) {
        previewChart(this, chartRequest());
    }
}

void MainWindow::saveWallChart() {
    if (readyForPaper()) {
        exportChart(this, chartRequest(), usualPaper(state_.style.units));
    }
}

std::optional<ChangeRequest> MainWindow::changeRequest() {
    if (!readyForPaper()) {
        return std::nullopt;
    }
    const KeptSetup* baseline = state_.car.baselineSetup();
    if (baseline == nullptr) {
        notice_->say(tr("Nothing to compare with yet: keep the current car (Ctrl+K), then change it."));
        return std::nullopt;
    }
    const QString now = tr("as on the bench");
    const auto& trials = trialController_->trials();
    const QStringList next = trials ? nextToTry(*trials, state_.car, state_.style.units) : QStringList();
    return ChangeRequest{
        *baseline->car,       state_.car, QString::fromStdString(baseline->name), now, state_.style,
        QDate::currentDate(), next};
}

void MainWindow::previewChange() {
    if (const std::optional<ChangeRequest> request = changeRequest()) {
        previewChangeSheet(this, *request);
    }
}

void MainWindow::saveChange() {
    if (const std::optional<ChangeRequest> request = changeRequest()) {
        saveChangeSheet(this, *request);
    }
}

// Of the bracket chosen on the Brackets page.
std::optional<TemplateRequest> MainWindow::templateRequest() {
    if (!readyForPaper()) {
        return std::nullopt;
    }
    const std::optional<BracketId> place = brackets_->place();
    if (!place) {
        notice_->say(tr("No bracket to drill: the car has no links."));
        return std::nullopt;
    }
    return TemplateRequest{state_.car, *place, state_.style};
}

void MainWindow::previewDrillingTemplate() {
    if (const std::optional<TemplateRequest> request = templateRequest()) {
        previewTemplate(this, *request);
    }
}

void MainWindow::saveDrillingTemplate() {
    if (const std::optional<TemplateRequest> request = templateRequest()) {
        saveTemplate(this, *request);
    }
}

void MainWindow::saveCutTemplate() {
    if (const std::optional<TemplateRequest> request = templateRequest()) {
        saveTemplateCut(this, *request);
    }
}

void MainWindow::previewSheetOf(SheetKind kind) {
    if (readyForPaper()) {
        previewSheet(this, kind, state_.car, state_.style);
    }
}

void MainWindow::copySetup() {
    if (readyForPaper()) {
        QGuiApplication::clipboard()->setText(
            setupText(setupFactsOf(state_.car, state_.style, true), QDate::currentDate()));
        notice_->say(tr("The setup is on the clipboard, as a few lines of text."));
    }
}

void MainWindow::askOtherCar() {
    commitTyping();
    const QString start = document_.fileName().isEmpty() ? QString() : QFileInfo(document_.fileName()).path();
    const QString fileName =
        QFileDialog::getOpenFileName(this, tr("Compare with another car"), start, fileFilter());
    if (!fileName.isEmpty()) {
        compareWithFile(fileName);
    }
}

void MainWindow::compareWithFile(const QString& fileName) {
    ReadResult read = readCarFile(fileName.toStdString());
    if (!read.loaded) {
        notice_->say(tr("%1 was not opened: %2")
                         .arg(QFileInfo(fileName).fileName(), QString::fromStdString(read.problem.line())));
        return;
    }
    Car& car = read.loaded->car;
    const QDate changed = QFileInfo(fileName).lastModified().date();
    const QString name =
        car.title.empty() ? QFileInfo(fileName).fileName() : QString::fromStdString(car.title);
    takeEdit(KeepSetup{name.toStdString(), changed.toString(Qt::ISODate).toStdString(),
                       tr("from %1").arg(QFileInfo(fileName).fileName()).toStdString(),
                       std::make_shared<const Car>(std::move(car))},
             EditPhase::whole);
}

}  // namespace bolthole
