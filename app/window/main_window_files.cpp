// The window and its file: opening, saving, what another program or window does to it, and what was left
// behind.
#include <QAction>
#include <QComboBox>
#include <QFile>
#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QMessageBox>
#include <QPushButton>
#include <algorithm>

#include "app/controllers/combination_controller.h"
#include "app/controllers/recovery_controller.h"
#include "app/window/main_window.h"
#include "app/window/recovery_dialog.h"
#include "app/window/start_strip.h"
#include "widgets/fields/car_sheet.h"
#include "widgets/fields/new_car_dialog.h"
#include "widgets/kit/notice_bar.h"
#include "widgets/views/view_deck.h"

namespace bolthole {

QString MainWindow::fileFilter() {
    return tr("Cars (*.bolt.json *.json);;All files (*)");
}

void MainWindow::showFileState() {
    const QString name = QString::fromStdString(document_.car().title);
    title_->setText(name.isEmpty() ? tr("Untitled car") : name);
    const bool isDemo = isDemo_ && document_.fileName().isEmpty();
    QString words = isDemo                           ? tr("a demo: an invented car")
                    : document_.fileName().isEmpty() ? tr("not saved yet")
                                                     : QFileInfo(document_.fileName()).fileName();
    if (document_.isEdited()) {
        words = isDemo ? tr("a demo, edited") : tr("edited");
    }
    const bool shared = recovery_->hasCompany();
    fileState_->setText(shared ? tr("%1 · open in another window too").arg(words) : words);
    fileState_->setToolTip(
        shared ? tr("%1\nWhichever window saves last is asked before it replaces what the other saved.")
                     .arg(document_.fileName())
               : document_.fileName());
    setWindowTitle(tr("%1[*] – Bolthole").arg(title_->text()));
    setWindowModified(document_.isEdited());
}

// A car was opened: nothing of the last one stays selected, pointed at or told.
void MainWindow::startAnew() {
    notice_->hide();
    startStrip_->hide();  // its words are of the demo that a start showed
    toldChanged_ = false;
    isDemo_ = false;
    showFileState();
    state_.selection = {};
    controller_->reset();
    moveCursor(0);
    views_->showLinks();
    sheet_->startAnew();
}

bool MainWindow::mayOpenTwice(const QString& fileName) {
    if (!recovery_->isOpenElsewhere(QFileInfo(fileName).absoluteFilePath())) {
        return true;
    }
    QMessageBox question(QMessageBox::Warning, tr("Open in another window"),
                         tr("'%1' is open in another Bolthole window.").arg(QFileInfo(fileName).fileName()),
                         QMessageBox::Cancel, this);
    question.setInformativeText(
        tr("Both can change it. Whichever saves last is asked before it replaces what the other saved."));
    const auto* open = question.addButton(tr("Open it here &too"), QMessageBox::AcceptRole);
    question.exec();
    return question.clickedButton() == open;
}

QString MainWindow::openFile(const QString& fileName) {
    if (!mayDiscard() || !mayOpenTwice(fileName)) {
        return {};
    }
    const QString problem = document_.open(fileName);
    if (!problem.isEmpty()) {
        QString said = tr("%1 was not opened: %2").arg(QFileInfo(fileName).fileName(), problem);
        notice_->say(said);
        return said;
    }
    settings_.remember(document_.fileName());
    settings_.save();
    startAnew();
    return {};
}

QString MainWindow::openAtStart(const QString& fileName, const QString& demo) {
    QString problem = fileName.isEmpty() ? QString() : openFile(fileName);
    if (document_.fileName().isEmpty()) {
        openDemo(demo);
        if (fileName.isEmpty()) {
            offerFirstSteps();
        }
    }
    if (!problem.isEmpty()) {  // a car that opens takes the notice away
        notice_->say(problem);
    }
    return problem;
}

void MainWindow::openDemo(const QString& name) {
    QFile file(QStringLiteral(":/demo/") + name);
    if (!mayDiscard() || !file.open(QIODevice::ReadOnly)) {
        return;
    }
    ReadResult result = readCar(file.readAll().toStdString());
    if (!result.loaded) {
        notice_->say(QString::fromStdString(result.problem.line()));
        return;
    }
    document_.adopt(std::move(*result.loaded));
    startAnew();
    isDemo_ = true;
    showFileState();
}

void MainWindow::offerFirstSteps() {
    startStrip_->say(tr("This is a demo: an invented car, to try everything on."));
}

void MainWindow::askNew() {
    NewCarDialog dialog(state_.style, this);
    connect(&dialog, &NewCarDialog::howToRequested, this, &MainWindow::showHowTo);
    if (dialog.exec() != QDialog::Accepted || !mayDiscard()) {
        return;
    }
    document_.adopt({startingCar(*dialog.chosen()), nlohmann::ordered_json::object()});
    startAnew();
}

void MainWindow::askOpen() {
    const QString start = document_.fileName().isEmpty() ? QString() : QFileInfo(document_.fileName()).path();
    const QString fileName = QFileDialog::getOpenFileName(this, tr("Open a car"), start, fileFilter());
    if (!fileName.isEmpty()) {
        openFile(fileName);
    }
}

bool MainWindow::saveFile() {
    return document_.fileName().isEmpty() ? askSaveAs() : saveTo(document_.fileName());
}

bool MainWindow::askSaveAs() {
    commitTyping();
    QString suggested = document_.fileName();
    if (suggested.isEmpty()) {
        suggested = title_->text().toLower().simplified().replace(QLatin1Char(' '), QLatin1Char('-')) +
                    QStringLiteral(".bolt.json");
    }
    QString fileName = QFileDialog::getSaveFileName(this, tr("Save the car as"), suggested, fileFilter());
    if (!fileName.isEmpty() && QFileInfo(fileName).suffix().isEmpty()) {
        fileName += QStringLiteral(".bolt.json");  // else the next Open would not offer it
        if (QFileInfo::exists(fileName) && !mayReplace(fileName)) {
            return false;
        }
    }
    return !fileName.isEmpty() && saveTo(fileName);
}

bool MainWindow::mayReplace(const QString& fileName) {
    return QMessageBox::question(
               this, tr("Save the car as"),
               tr("'%1' is there already. Replace it?").arg(QFileInfo(fileName).fileName())) ==
           QMessageBox::Yes;
}

bool MainWindow::saveTo(const QString& fileName, bool replaceTheirs) {
    commitTyping();
    const SaveResult result = document_.save(fileName, replaceTheirs);
    if (result.outcome == SaveResult::Outcome::changedElsewhere) {
        return askChangedElsewhere(fileName);
    }
    if (!result.saved()) {
        return askNotSaved(fileName, result.reason);
    }
    notice_->hide();
    toldChanged_ = false;
    if (!result.reason.isEmpty()) {
        notice_->say(
            tr("Saved. The file that was there is kept as %1.").arg(QFileInfo(result.reason).fileName()));
    }
    settings_.remember(document_.fileName());
    settings_.save();
    return true;
}

// Asks what to do about a file that another program changed. Gives whether the car is saved now.
bool MainWindow::askChangedElsewhere(const QString& fileName) {
    QMessageBox question(QMessageBox::Warning, tr("Changed by another program"),
                         tr("'%1' was changed since it was opened here.").arg(QFileInfo(fileName).fileName()),
                         QMessageBox::Cancel, this);
    question.setInformativeText(tr("Replaced, it is kept beside the new one under a name of its own."));
    const auto* replace = question.addButton(tr("&Replace it, keep a copy"), QMessageBox::AcceptRole);
    const auto* another = question.addButton(tr("Save under another &name…"), QMessageBox::ActionRole);
    question.exec();
    if (question.clickedButton() == replace) {
        return saveTo(fileName, true);
    }
    return question.clickedButton() == another && askSaveAs();
}

// Says why a car was not saved, and offers another place. Gives whether it is saved now.
bool MainWindow::askNotSaved(const QString& fileName, const QString& reason) {
    QMessageBox question(QMessageBox::Warning, tr("Not saved"),
                         tr("The car was not saved: '%1' %2.").arg(QFileInfo(fileName).fileName(), reason),
                         QMessageBox::Cancel, this);
    question.setInformativeText(recovery_->problem().isEmpty()
                                    ? tr("What was there is as it was. The car is still open, and its "
                                         "changes stand in the recovery log.")
                                    : tr("What was there is as it was. The car is still open."));
    const auto* again = question.addButton(tr("&Try again"), QMessageBox::AcceptRole);
    const auto* another = question.addButton(tr("Save under another &name…"), QMessageBox::ActionRole);
    question.exec();
    if (question.clickedButton() == again) {
        return saveTo(fileName);
    }
    return question.clickedButton() == another && askSaveAs();
}

bool MainWindow::mayDiscard() {
    commitTyping();
    if (!document_.isEdited()) {
        return true;
    }
    const auto answer = QMessageBox::question(
        this, tr("Save the car?"), tr("'%1' has changes that are not saved.").arg(title_->text()),
        QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, QMessageBox::Save);
    return answer == QMessageBox::Discard || (answer == QMessageBox::Save && saveFile());
}

void MainWindow::sayChangedElsewhere() {
    if (!toldChanged_ && document_.isChangedElsewhere()) {
        toldChanged_ = true;
        notice_->say(
            tr("%1 was changed by another program. What is here is as you left it; saving asks first.")
                .arg(QFileInfo(document_.fileName()).fileName()));
    }
}

void MainWindow::showRecoveryProblem() {
    if (!recovery_->problem().isEmpty()) {
        notice_->say(tr("Changes are not kept against a crash or a power cut (%1). Save often.")
                         .arg(recovery_->problem()));
    }
}

void MainWindow::offerLeftBehind() {
    const QList<AbandonedLog> logs = recovery_->leftBehind();
    if (logs.isEmpty()) {
        return;
    }
    RecoveryDialog dialog(logs, this);
    if (dialog.exec() == QDialog::Accepted) {
        bringBack(dialog.chosen());
    }
}

void MainWindow::askLeftBehind() {
    if (recovery_->leftBehind().isEmpty()) {
        notice_->say(tr("Nothing unsaved was left behind."));
        return;
    }
    offerLeftBehind();
}

void MainWindow::bringBack(const AbandonedLog& log) {
    if (!mayDiscard()) {
        return;
    }
    const QString problem = recovery_->bringBack(log);
    if (!problem.isEmpty()) {
        notice_->say(tr("Not recovered: %1").arg(problem));
        return;
    }
    startAnew();
    notice_->say(tr("Brought back as it stood %1, after: %2. It is not saved yet.")
                     .arg(whenInWords(log.newest.when, QDate::currentDate()), log.newest.what));
}

}  // namespace bolthole
