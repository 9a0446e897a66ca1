// The window's parts and menus: what is built once.
#include <QAction>
#include <QActionGroup>
#include <QApplication>
#include <QComboBox>
#include <QDir>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenuBar>
#include <QMessageBox>
#include <QSplitter>
#include <QStatusBar>
#include <QToolButton>
#include <QVBoxLayout>

#include "app/main_window.h"
#include "widgets/car_sheet.h"
#include "widgets/card.h"
#include "widgets/doubt_list.h"
#include "widgets/figure_strip.h"
#include "widgets/figure_table.h"
#include "widgets/notice_bar.h"
#include "widgets/side_view.h"
#include "widgets/travel_curves.h"
#include "widgets/travel_slider.h"

namespace bolthole {

namespace {

QLabel* makeTitle(const QString& text, TextSize size, bool bold, QWidget* parent) {
    auto* label = new QLabel(text, parent);
    label->setFont(textFont(size, bold));
    label->setTextFormat(Qt::PlainText);
    return label;
}

QToolButton* makeButton(QAction* action, QWidget* parent) {
    auto* button = new QToolButton(parent);
    button->setDefaultAction(action);
    button->setAutoRaise(true);
    button->setFocusPolicy(Qt::TabFocus);
    return button;
}

Card* makeCard(QWidget* content, QWidget* parent) {
    auto* card = new Card(parent);
    auto* layout = new QVBoxLayout(card);
    layout->setContentsMargins(Card::kInset, Card::kInset, Card::kInset, Card::kInset);
    layout->addWidget(content);
    return card;
}

}  // namespace

void MainWindow::buildPanels() {
    openAction_ = new QAction(tr("&Open…"), this);
    openAction_->setShortcut(QKeySequence::Open);
    saveAction_ = new QAction(tr("&Save"), this);
    saveAction_->setShortcut(QKeySequence::Save);
    undoAction_ = new QAction(tr("&Undo"), this);
    undoAction_->setShortcut(QKeySequence::Undo);
    redoAction_ = new QAction(tr("&Redo"), this);
    redoAction_->setShortcuts(
        {QKeySequence(QStringLiteral("Ctrl+Shift+Z")), QKeySequence(QStringLiteral("Ctrl+Y"))});
    notice_ = new NoticeBar(this);
    sheet_ = new CarSheet(this);
    sheet_->setMinimumWidth(270);
    auto* right = new QSplitter(Qt::Vertical, this);
    right->addWidget(buildBench());
    right->addWidget(buildPanel());
    right->setStretchFactor(0, 1);
    right->setSizes({620, 230});
    right->setCollapsible(0, false);
    right->setHandleWidth(10);
    panelSplit_ = right;
    auto* bench = new QWidget(this);
    auto* benchLayout = new QVBoxLayout(bench);
    benchLayout->setContentsMargins(10, 10, 12, 8);
    benchLayout->addWidget(right);
    benchSplit_ = new QSplitter(Qt::Horizontal, this);
    benchSplit_->addWidget(sheet_);
    benchSplit_->addWidget(bench);
    benchSplit_->setStretchFactor(1, 1);
    benchSplit_->setSizes({300, 1180});
    benchSplit_->setHandleWidth(4);
    auto* whole = new QWidget(this);
    auto* column = new QVBoxLayout(whole);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(buildTopBar());
    column->addWidget(notice_);
    column->addWidget(benchSplit_, 1);
    setCentralWidget(whole);
    auto* caution = new QLabel(tr("Geometry only. Car on rated stands, wheels chocked, before a bolt comes "
                                  "out; brackets and welds are for a "
                                  "qualified person."),
                               this);
    caution->setFont(textFont(TextSize::small));
    caution->setContentsMargins(10, 0, 0, 0);
    statusBar()->addWidget(caution, 1);
    statusBar()->setSizeGripEnabled(false);
}

QWidget* MainWindow::buildTopBar() {
    auto* bar = new Card(this);
    bar->setObjectName(QStringLiteral("topBar"));
    auto* row = new QHBoxLayout(bar);
    row->setContentsMargins(16, 5, 12, 5);
    row->setSpacing(4);
    title_ = makeTitle({}, TextSize::title, true, bar);
    QFont font = title_->font();
    font.setPointSizeF(font.pointSizeF() * 1.2);
    title_->setFont(font);
    fileState_ = makeTitle({}, TextSize::small, false, bar);
    fileState_->setEnabled(false);
    row->addWidget(title_);
    row->addSpacing(8);
    row->addWidget(fileState_);
    row->addSpacing(24);
    for (QAction* action : {openAction_, saveAction_, undoAction_, redoAction_}) {
        row->addWidget(makeButton(action, bar));
    }
    row->addStretch(1);
    styleChoice_ = new QComboBox(bar);
    styleChoice_->addItems(
        {tr("inch, sixteenths"), tr("inch, thirty-seconds"), tr("inch, decimal"), tr("metric")});
    styleChoice_->setAccessibleName(tr("Units"));
    styleChoice_->setToolTip(
        tr("What lengths and weights are shown and typed in. The file stays in mm and kg."));
    styleChoice_->setObjectName(QStringLiteral("styleChoice"));
    row->addWidget(styleChoice_);
    return bar;
}

QWidget* MainWindow::buildBench() {
    strip_ = new FigureStrip(this);
    sideView_ = new SideView(this);
    auto* picture = new QWidget(this);
    auto* pictureColumn = new QVBoxLayout(picture);
    pictureColumn->setContentsMargins(0, 0, 0, 0);
    pictureColumn->setSpacing(0);
    pictureColumn->addWidget(strip_);
    pictureColumn->addWidget(sideView_, 1);
    slider_ = new TravelSlider(this);
    curves_ = new TravelCurves(this);
    auto* travel = new QWidget(this);
    auto* travelRow = new QHBoxLayout(travel);
    travelRow->setContentsMargins(0, 0, 0, 0);
    travelRow->setSpacing(2);
    travelRow->addWidget(slider_);
    travelRow->addWidget(curves_, 1);
    auto* split = new QSplitter(Qt::Horizontal, this);
    split->addWidget(makeCard(picture, this));
    split->addWidget(travel);
    split->setSizes({580, 500});
    split->setStretchFactor(0, 1);
    split->setStretchFactor(1, 1);
    split->setCollapsible(0, false);
    split->setHandleWidth(8);
    return split;
}

QWidget* MainWindow::buildPanel() {
    figures_ = new FigureTable(this);
    doubts_ = new DoubtList(this);
    doubtTitle_ = makeTitle(tr("Doubts"), TextSize::title, true, this);
    auto* figurePart = new QWidget(this);
    auto* figureColumn = new QVBoxLayout(figurePart);
    figureColumn->setContentsMargins(10, 8, 8, 8);
    figureColumn->addWidget(makeTitle(tr("Figures through travel"), TextSize::title, true, this));
    figureColumn->addWidget(figures_, 1);
    auto* doubtPart = new QWidget(this);
    auto* doubtColumn = new QVBoxLayout(doubtPart);
    doubtColumn->setContentsMargins(10, 8, 8, 8);
    doubtColumn->addWidget(doubtTitle_);
    doubtColumn->addWidget(doubts_, 1);
    auto* panel = new QSplitter(Qt::Horizontal, this);
    panel->addWidget(makeCard(figurePart, this));
    panel->addWidget(makeCard(doubtPart, this));
    panel->setSizes({640, 440});
    panel->setStretchFactor(0, 3);
    panel->setStretchFactor(1, 2);
    panel->setHandleWidth(8);
    return panel;
}

void MainWindow::buildMenus() {
    buildFileMenu();
    buildEditMenu();
    buildViewMenu();
    buildHelpMenu();
}

void MainWindow::buildFileMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&File"));
    menu->addAction(openAction_);
    recentMenu_ = menu->addMenu(tr("Open &recent"));
    QMenu* demos = menu->addMenu(tr("Open a &demo car"));
    for (const QString& name : QDir(QStringLiteral(":/demo")).entryList()) {
        QString words = name.section(QLatin1Char('.'), 0, 0).replace(QLatin1Char('-'), QLatin1Char(' '));
        words[0] = words[0].toUpper();
        demos->addAction(words, this, [this, name] { openDemo(name); });
    }
    menu->addSeparator();
    menu->addAction(saveAction_);
    menu->addAction(tr("Save &as…"), QKeySequence(QStringLiteral("Ctrl+Shift+S")), this,
                    [this] { askSaveAs(); });
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
}

void MainWindow::buildViewMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&View"));
    menu->addAction(tr("Show the &links"), QKeySequence(QStringLiteral("Ctrl+1")), sideView_,
                    &SideView::showLinks);
    menu->addAction(tr("Show the &whole car"), QKeySequence(QStringLiteral("Ctrl+2")), sideView_,
                    &SideView::showAll);
    menu->addAction(tr("Axle to &ride height"), QKeySequence(QStringLiteral("Ctrl+R")), this,
                    [this] { moveCursor(0); });
    menu->addSeparator();
    const auto addToggle = [&](const QString& text, QWidget* part, const QString& key) {
        QAction* action = menu->addAction(text);
        action->setCheckable(true);
        action->setChecked(true);
        action->setShortcut(QKeySequence(key));
        connect(action, &QAction::toggled, part, &QWidget::setVisible);
    };
    addToggle(tr("&Car sheet"), sheet_, QStringLiteral("F2"));
    addToggle(tr("Travel c&urves"), curves_->parentWidget(), QStringLiteral("F3"));
    addToggle(tr("&Figures and doubts"), panelSplit_->widget(1), QStringLiteral("F4"));
    menu->addSeparator();
    auto* group = new QActionGroup(this);
    const auto addLook = [&](const QString& text, Appearance appearance) {
        QAction* action = group->addAction(menu->addAction(text));
        action->setCheckable(true);
        action->setChecked(settings_.appearance == appearance);
        connect(action, &QAction::triggered, this, [this, appearance] {
            settings_.appearance = appearance;
            settings_.save();
            ThemeKeeper::instance().choose(appearance);
            showState();
        });
    };
    addLook(tr("Light and dark as the &desktop"), Appearance::followDesktop);
    addLook(tr("L&ight"), Appearance::light);
    addLook(tr("D&ark"), Appearance::dark);
}

void MainWindow::buildHelpMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Help"));
    menu->addAction(tr("&Keys and mouse"), QKeySequence(QStringLiteral("F1")), this, &MainWindow::showKeys);
    menu->addAction(tr("&Cautions"), this, &MainWindow::showCautions);
    menu->addAction(tr("&About Bolthole"), this, &MainWindow::showAbout);
}

void MainWindow::showKeys() {
    QMessageBox::information(
        this, tr("Keys and mouse"),
        tr("<h3>Side view</h3><p>Drag a hole or joint to move it: it snaps to the tape's fraction. "
           "<b>Shift</b> keeps one "
           "direction, <b>Alt</b> leaves the snapping out, <b>Esc</b> gives the drag up.<br>Click a free "
           "hole to bolt the "
           "link there.<br><b>. ,</b> walk through the holes; <b>arrows</b> nudge the selected one "
           "(<b>Shift</b>: four "
           "times as far); <b>Enter</b> bolts it.<br>Wheel or <b>+ −</b> zoom, drag on empty space pans, "
           "<b>L</b> shows "
           "the links, <b>A</b> the whole car.</p>"
           "<h3>Travel</h3><p>Drag the slider or anywhere in the curves. <b>Up Down</b> one row, <b>Page Up "
           "Page Down</b> "
           "ten, <b>Home End</b> full bump and full droop, <b>R</b> or double-click ride.</p>"
           "<h3>Car sheet</h3><p>Type 12 3/8, 12-3/8, 12.375 or 314 mm; <b>Up Down</b> step; <b>Esc</b> "
           "brings the old "
           "number back.</p>"));
}

void MainWindow::showCautions() {
    QMessageBox::information(
        this, tr("Cautions"),
        tr("<p>Bolthole computes geometry from what was measured. It does not know the strength of a "
           "bracket, a weld, a "
           "bolt or a driveshaft: that is for a qualified person.</p><p>Car on rated stands on level ground, "
           "wheels "
           "chocked, before anything comes loose. Torque every bolt to its maker's figure. After a change "
           "run the "
           "suspension through its full travel and check for bind, driveline and yoke engagement, brake "
           "hoses and lines, "
           "tire clearance and wheel alignment, before the car moves under power.</p><p>Test only on a "
           "closed course and "
           "where it is legal. Local rules, the sanctioning body and licensed practice come first.</p>"));
}

void MainWindow::showAbout() {
    QMessageBox::about(
        this, tr("About Bolthole"),
        tr("<h3>Bolthole %1</h3><p>A workbench for the rear links of a car that has to hook: where the "
           "instant center "
           "goes, before a bolt is moved.</p><p>Free software under the GNU General Public License, version "
           "3 or later. "
           "It stands on Qt (LGPL-3), Eigen (MPL-2), QCustomPlot (GPL-3) and JSON for Modern C++ (MIT).</p>")
            .arg(QApplication::applicationVersion()));
}

}  // namespace bolthole
