// The window's menus and what they say.
#include <QAction>
#include <QActionGroup>
#include <QApplication>
#include <QDate>
#include <QDir>
#include <QFileInfo>
#include <QMenuBar>
#include <QMessageBox>
#include <QSplitter>

#include "app/controllers/bolt_motion.h"
#include "app/window/desktop_motion.h"
#include "app/window/main_window.h"
#include "app/window/start_strip.h"
#include "widgets/board/hole_board.h"
#include "widgets/compare/baseline_panel.h"
#include "widgets/curves/travel_curves.h"
#include "widgets/fields/car_sheet.h"
#include "widgets/pages/launch/launch_page.h"
#include "widgets/pages/measure/help_window.h"
#include "widgets/papers/sheets/sheets.h"
#include "widgets/readouts/figure_table.h"
#include "widgets/readouts/warning_list.h"
#include "widgets/views/view_deck.h"

namespace bolthole {

void MainWindow::buildMenus() {
    buildFileMenu();
    buildEditMenu();
    buildViewMenu();
    buildPapersMenu();
    buildHelpMenu();
}

void MainWindow::buildFileMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&File"));
    QAction* fresh = menu->addAction(tr("&New car…"), QKeySequence::New, this, &MainWindow::askNew);
    fresh->setStatusTip(tr("A car of a chosen layout with numbers to start from"));
    menu->addAction(openAction_);
    recentMenu_ = menu->addMenu(tr("Open &recent"));
    QMenu* demos = menu->addMenu(tr("Open a &demo car"));
    for (const QString& name : QDir(QStringLiteral(":/demo")).entryList()) {
        QString words = name.section(QLatin1Char('.'), 0, 0).replace(QLatin1Char('-'), QLatin1Char(' '));
        words[0] = words[0].toUpper();
        demos->addAction(words, this, [this, name] { openDemo(name); });
    }
    startStrip_->addWay(tr("Look at another demo"), demos->menuAction());
    startStrip_->addWay(tr("Start my car…"), fresh);
    menu->addSeparator();
    menu->addAction(saveAction_);
    menu->addAction(tr("Save &as…"), QKeySequence(QStringLiteral("Ctrl+Shift+S")), this,
                    [this] { askSaveAs(); });
    menu->addSeparator();
    menu->addAction(tr("&Unsaved work…"), this, &MainWindow::askLeftBehind)
        ->setStatusTip(tr("What was not saved when the program last ended by itself"));
    menu->addSeparator();
    menu->addAction(tr("&Quit"), QKeySequence(QStringLiteral("Ctrl+Q")), this, &QWidget::close);
    connect(openAction_, &QAction::triggered, this, &MainWindow::askOpen);
    connect(saveAction_, &QAction::triggered, this, [this] { saveFile(); });
    connect(recentMenu_, &QMenu::aboutToShow, this, &MainWindow::fillRecentMenu);
}

void MainWindow::fillRecentMenu() {
    recentMenu_->clear();
    for (const QString& fileName : settings_.recentFiles) {
        QAction* action = recentMenu_->addAction(QFileInfo(fileName).fileName(), this,
                                                 [this, fileName] { openFile(fileName); });
        action->setToolTip(fileName);
        action->setEnabled(QFileInfo::exists(fileName));
    }
    if (settings_.recentFiles.isEmpty()) {
        recentMenu_->addAction(tr("No car was opened yet"))->setEnabled(false);
    }
    recentMenu_->setToolTipsVisible(true);
}

void MainWindow::buildEditMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Edit"));
    menu->addAction(undoAction_);
    menu->addAction(redoAction_);
    QUndoStack& history = document_.undoStack();
    const auto refresh = [this, &history] {
        undoAction_->setEnabled(history.canUndo());
        redoAction_->setEnabled(history.canRedo());
        undoAction_->setToolTip(history.canUndo() ? tr("Undo: %1").arg(history.undoText())
                                                  : tr("Nothing to undo"));
        redoAction_->setToolTip(history.canRedo() ? tr("Redo: %1").arg(history.redoText())
                                                  : tr("Nothing to redo"));
        undoAction_->setStatusTip(history.undoText());
        redoAction_->setStatusTip(history.redoText());
    };
    connect(&history, &QUndoStack::indexChanged, this, refresh);
    connect(undoAction_, &QAction::triggered, this, [this] { stepHistory(false); });
    connect(redoAction_, &QAction::triggered, this, [this] { stepHistory(true); });
    refresh();
    menu->addSeparator();
    menu->addAction(tr("Next starting &number"), QKeySequence(QStringLiteral("Ctrl+M")), sheet_,
                    &CarSheet::goToNextStarting)
        ->setStatusTip(tr("The next number that nobody measured"));
    menu->addAction(tr("Enter &measurements…"), QKeySequence(QStringLiteral("Ctrl+Shift+M")), this,
                    &MainWindow::enterMeasurements)
        ->setStatusTip(tr("Types in a filled measuring sheet, number by number"));
    menu->addAction(tr("Next bracket's &holes"), QKeySequence(QStringLiteral("Ctrl+G")), sheet_,
                    [this] { sheet_->goToNextHoles(1); })
        ->setStatusTip(tr("The holes of the next bracket, link by link"));
    menu->addAction(tr("Previous bracket's h&oles"), QKeySequence(QStringLiteral("Ctrl+Shift+G")), sheet_,
                    [this] { sheet_->goToNextHoles(-1); })
        ->setStatusTip(tr("The holes of the bracket before, link by link"));
    buildCompareEntries(menu);
}

void MainWindow::buildCompareEntries(QMenu* menu) {
    menu->addSeparator();
    menu->addAction(keepAction_);
    menu->addAction(tr("&Swap before and after"), QKeySequence(QStringLiteral("Ctrl+Shift+K")), this, [this] {
        commitTyping();
        takeEdit(SwapBaseline{QDate::currentDate().toString(Qt::ISODate).toStdString()}, EditPhase::whole);
    });
    menu->addAction(tr("Compare with another car &file…"), this, &MainWindow::askOtherCar);
    menu->addSeparator();
    menu->addAction(tr("Change &tires or ride height…"), QKeySequence(QStringLiteral("Ctrl+T")), this,
                    [this] {
                        commitTyping();
                        baselinePanel_->askRideChange();
                    });
}

void MainWindow::buildPapersMenu() {
    QMenu* menu = menuBar()->addMenu(tr("Shop &papers"));
    menu->addAction(tr("&Wall chart…"), QKeySequence::Print, this, &MainWindow::previewWallChart);
    menu->addAction(tr("Wall chart as &PDF…"), QKeySequence(QStringLiteral("Ctrl+Shift+P")), this,
                    &MainWindow::saveWallChart);
    menu->addSeparator();
    menu->addAction(tr("&Change sheet…"), this, &MainWindow::previewChange);
    menu->addAction(tr("C&hange sheet as PDF…"), this, &MainWindow::saveChange);
    menu->addSeparator();
    menu->addAction(tr("&Drilling template…"), this, &MainWindow::previewDrillingTemplate)
        ->setStatusTip(tr("The bracket chosen on the Brackets page, at true size"));
    menu->addAction(tr("Drilling &template as PDF…"), this, &MainWindow::saveDrillingTemplate);
    menu->addAction(tr("Drilling template as S&VG or DXF…"), this, &MainWindow::saveCutTemplate)
        ->setStatusTip(tr("Outline and holes of the bracket at true size, for a cutting table"));
    menu->addSeparator();
    const auto addSheet = [&](const QString& text, const QString& tip, SheetKind kind) {
        QAction* sheet = menu->addAction(text, this, [this, kind] { previewSheetOf(kind); });
        sheet->setStatusTip(tip);
        return sheet;
    };
    startStrip_->addWay(
        tr("Print the measuring sheet…"),
        addSheet(tr("&Measuring sheet…"), tr("What to measure on this car, with boxes for a pen"),
                 SheetKind::measuring));
    startStrip_->addWay(tr("Open…"), openAction_);
    addSheet(tr("Test-da&y sheet…"), tr("The setup, and eight passes to fill in"), SheetKind::testDay);
    addSheet(tr("&Setup card…"), tr("Holes, lengths, clicks and figures on one page"), SheetKind::setup);
    menu->addAction(tr("C&opy setup as text"), this, &MainWindow::copySetup)
        ->setStatusTip(tr("A few lines on the clipboard, to send to a friend"));
}

void MainWindow::buildViewMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&View"));
    menu->addAction(tr("Show the &links"), QKeySequence(QStringLiteral("Ctrl+1")), views_,
                    &ViewDeck::showLinks);
    menu->addAction(tr("Show the &whole car"), QKeySequence(QStringLiteral("Ctrl+2")), views_,
                    &ViewDeck::showAll);
    menu->addAction(tr("Axle to &ride height"), QKeySequence(QStringLiteral("Ctrl+R")), this,
                    [this] { moveCursor(0); });
    menu->addSeparator();
    menu->addMenu(tr("P&ages"))->addActions(pageGroup_->actions());
    menu->addMenu(tr("Si&de, rear or top"))->addActions(views_->choices().actions());
    menu->addSeparator();
    const auto addToggle = [&](const QString& text, QWidget* part, const QString& key) {
        QAction* action = menu->addAction(text);
        action->setCheckable(true);
        action->setChecked(true);
        action->setShortcut(QKeySequence(key));
        connect(action, &QAction::toggled, part, &QWidget::setVisible);
        return action;
    };
    sheetAction_ = addToggle(tr("&Car sheet"), sheet_, QStringLiteral("F2"));
    addToggle(tr("Travel c&urves"), curves_->parentWidget(), QStringLiteral("F3"));
    addToggle(tr("&Panel below"), panelSplit_->widget(1), QStringLiteral("F4"));
    buildPanelMenu(*menu->addMenu(tr("Show in the pa&nel")));
    menu->addSeparator();
    QAction* plusMinus = menu->addAction(tr("Show &±"));
    plusMinus->setCheckable(true);
    plusMinus->setChecked(settings_.showsUncertainty);
    plusMinus->setShortcut(QKeySequence(QStringLiteral("Ctrl+U")));
    plusMinus->setToolTip(tr("± beside the figures, bands around the curves, the instant center's cloud"));
    connect(plusMinus, &QAction::toggled, this, &MainWindow::chooseUncertainty);
    menu->addAction(buildStillEntry());
    buildLookMenu(*menu->addMenu(tr("Li&ght or dark")));
}

void MainWindow::buildPanelMenu(QMenu& menu) {
    menu.addAction(tr("&Hole combinations"), QKeySequence(QStringLiteral("F6")), this,
                   [this] { showPage(board_); });
    menu.addAction(tr("&Before and after"), QKeySequence(QStringLiteral("F7")), this,
                   [this] { showPage(baselinePanel_); });
    menu.addAction(tr("&Figures through travel"), QKeySequence(QStringLiteral("F8")), this,
                   [this] { showPage(figures_); });
    menu.addAction(tr("&Warnings"), QKeySequence(QStringLiteral("F9")), this,
                   [this] { showPage(warnings_); });
}

void MainWindow::buildLookMenu(QMenu& menu) {
    auto* group = new QActionGroup(this);
    const auto addLook = [&](const QString& text, Appearance appearance) {
        QAction* action = group->addAction(menu.addAction(text));
        action->setCheckable(true);
        action->setChecked(settings_.appearance == appearance);
        connect(action, &QAction::triggered, this, [this, appearance] {
            settings_.appearance = appearance;
            settings_.save();
            ThemeKeeper::instance().choose(appearance);
            showState();
        });
    };
    addLook(tr("As the &desktop"), Appearance::followDesktop);
    addLook(tr("&Light"), Appearance::light);
    addLook(tr("D&ark"), Appearance::dark);
}

// Not chosen here, it is as the desktop wishes.
QAction* MainWindow::buildStillEntry() {
    auto* still = new QAction(tr("&Keep pictures still"), this);
    still->setCheckable(true);
    still->setToolTip(tr("Nothing plays or moves by itself; a launch is gone through by hand"));
    const auto keep = [this, still](bool kept) {
        const QSignalBlocker blocker(still);
        still->setChecked(kept);
        launch_->keepStill(kept);
        motion_->keepStill(kept);
    };
    keep(settings_.keepsStill.value_or(desktopWishesStill()));
    connect(still, &QAction::toggled, this, [this](bool kept) {
        settings_.keepsStill = kept;
        settings_.save();
        launch_->keepStill(kept);
        motion_->keepStill(kept);
    });
    if (!settings_.keepsStill && !still->isChecked()) {
        askDesktopForStill(this, [this, keep](bool wished) {
            if (wished && !settings_.keepsStill) {
                keep(true);
            }
        });
    }
    return still;
}

void MainWindow::buildHelpMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Help"));
    menu->addAction(tr("How to &measure"), QKeySequence(QStringLiteral("Shift+F1")), this,
                    [this] { showHelp(HelpTopic::measuring); });
    menu->addAction(tr("At the &bench"), this, [this] { showHelp(HelpTopic::bench); });
    menu->addAction(tr("&Words on screen"), this, [this] { showHelp(HelpTopic::words); });
    menu->addAction(tr("&Keys and mouse"), QKeySequence(QStringLiteral("F1")), this,
                    [this] { showHelp(HelpTopic::keys); });
    menu->addAction(tr("W&hat is computed"), this, [this] { showHelp(HelpTopic::computed); });
    menu->addSeparator();
    menu->addAction(tr("&Cautions"), this, &MainWindow::showCautions);
    menu->addAction(tr("&About Bolthole"), this, &MainWindow::showAbout);
}

void MainWindow::showHelp(HelpTopic topic) {
    if (help_ == nullptr) {
        QStringList pages;
        for (const QAction* action : pageActions_) {
            pages << tr("%1 %2").arg(action->shortcut().toString(QKeySequence::NativeText), action->text());
        }
        help_ = new HelpWindow(pages.join(QStringLiteral(", ")), this);
    }
    // A car that can't be computed can't be drawn.
    help_->showTopic(topic, state_.faults.empty() ? state_.car : state_.solvedCar);
}

void MainWindow::showCautions() {
    QMessageBox::information(
        this, tr("Cautions"),
        tr("<p>Bolthole calculates from your measurements. It knows nothing of the strength of a bracket, a "
           "weld, a "
           "bolt or a driveshaft: that is for a qualified person.</p><p>Car on rated stands on level ground, "
           "wheels "
           "chocked, before anything comes loose. Take weight off a link before its bolt comes out, and hold "
           "the "
           "axle: with a link out it can roll, and the pinion can drop or snap up. A squeezed spring can "
           "kill: a "
           "compressor made for it, nobody in its way.</p><p>Before you drill: link out, eyes covered, and "
           "look what "
           "is behind the plate.</p><p>Torque every bolt to the manufacturer's spec. After a change run the "
           "suspension through its full travel and check for bind, driveline and yoke engagement, brake "
           "hoses and "
           "lines, tire clearance and wheel alignment, before the car moves under power. A preload may pull "
           "to one "
           "side under braking: try it gently first.</p><p>Test only on a closed course and where it is "
           "legal. Local "
           "rules, the sanctioning body and a licensed engineer's or mechanic's word come first.</p>"));
}

void MainWindow::showAbout() {
    QMessageBox::about(
        this, tr("About Bolthole"),
        tr("<h3>Bolthole %1</h3><p>A workbench for the rear links of a car that has to hook: where the "
           "instant center "
           "goes, before a bolt is moved.</p><p>Copyright © 2026 the authors of Bolthole.</p><p>Free "
           "software under "
           "the GNU General Public License, version 3 or later: you may share and change it under its terms. "
           "It "
           "comes with no warranty, to the extent the law permits; see sections 15 and 16 of the license.</p>"
           "<p>It stands on Qt (LGPL-3), Eigen (MPL-2), Boost.Math (BSL-1) and JSON for Modern C++ "
           "(MIT).</p>")
            .arg(QApplication::applicationVersion()));
}

}  // namespace bolthole
