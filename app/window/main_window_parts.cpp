// The window's parts and menus: what is built once.
#include <QAction>
#include <QActionGroup>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QMenuBar>
#include <QSplitter>
#include <QStackedWidget>
#include <QStatusBar>
#include <QTabBar>
#include <QTabWidget>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>

#include "app/controllers/baseline_controller.h"
#include "app/controllers/bolt_motion.h"
#include "app/controllers/cloud_runner.h"
#include "app/controllers/combination_controller.h"
#include "app/controllers/fit_controller.h"
#include "app/controllers/target_controller.h"
#include "app/controllers/trial_controller.h"
#include "app/window/main_window.h"
#include "app/window/panel_room.h"
#include "app/window/pass_controller.h"
#include "app/window/recording_controller.h"
#include "app/window/start_strip.h"
#include "widgets/board/hole_board.h"
#include "widgets/compare/baseline_panel.h"
#include "widgets/curves/travel_curves.h"
#include "widgets/fields/car_sheet.h"
#include "widgets/fit/fit_card.h"
#include "widgets/kit/card.h"
#include "widgets/kit/dressing.h"
#include "widgets/kit/grouped_tabs.h"
#include "widgets/kit/notice_bar.h"
#include "widgets/kit/picture_copy.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/pages/accuracy/accuracy_page.h"
#include "widgets/pages/brackets/bracket_page.h"
#include "widgets/pages/days/days_page.h"
#include "widgets/pages/driveline/driveline_page.h"
#include "widgets/pages/launch/launch_page.h"
#include "widgets/pages/loads/loads_page.h"
#include "widgets/pages/roll/roll_page.h"
#include "widgets/pages/springs/springs_page.h"
#include "widgets/pages/target/target_page.h"
#include "widgets/pages/weights/weights_page.h"
#include "widgets/readouts/figure_strip.h"
#include "widgets/readouts/figure_table.h"
#include "widgets/readouts/warning_list.h"
#include "widgets/scales/travel_slider.h"
#include "widgets/trials/power_map_view.h"
#include "widgets/trials/trials_panel.h"
#include "widgets/views/across_view.h"
#include "widgets/views/side_view.h"
#include "widgets/views/target_mark.h"
#include "widgets/views/view_deck.h"
#include "widgets/words/starting_words.h"

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

/// A part of the window that wears the style sheet by itself: styled when it is seen.
QWidget* dressed(QWidget* part) {
    Dressing::instance().wear(part);
    return part;
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
    keepAction_ = new QAction(tr("&Keep this setup…"), this);
    keepAction_->setShortcut(QKeySequence(QStringLiteral("Ctrl+K")));
    keepAction_->setToolTip(tr("Keeps the current car, to compare with after the next change"));
    notice_ = new NoticeBar(this);
    startStrip_ = new StartStrip(this);
    sheet_ = new CarSheet(this);
    sheet_->setMinimumWidth(270);
    auto* right = new QSplitter(Qt::Vertical, this);
    right->addWidget(buildBench());
    right->addWidget(buildPanel());
    // The side view is what one looks at: it gets most of the height, and what a larger window has more.
    right->setStretchFactor(0, 3);
    right->setStretchFactor(1, 1);
    right->setSizes({550, 270});
    right->setCollapsible(0, false);
    right->setHandleWidth(10);
    panelSplit_ = right;
    panelRoom_ = new PanelRoom(*panelSplit_, *pages_);
    panelRoom_->giveHint(baselinePanel_);
    auto* bench = new QWidget(this);
    auto* benchLayout = new QVBoxLayout(bench);
    benchLayout->setContentsMargins(10, 10, 12, 8);
    benchLayout->addWidget(right);
    benchSplit_ = new QSplitter(Qt::Horizontal, this);
    benchSplit_->addWidget(sheet_);
    benchSplit_->addWidget(buildPages(bench));
    benchSplit_->setStretchFactor(1, 1);
    benchSplit_->setSizes({300, 1180});
    benchSplit_->setHandleWidth(4);
    auto* whole = new QWidget(this);
    auto* column = new QVBoxLayout(whole);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(dressed(buildTopBar()));
    column->addWidget(notice_);
    column->addWidget(startStrip_);
    column->addWidget(dressed(pageTabs_));  // over the car sheet too: in one place on every page
    column->addWidget(benchSplit_, 1);
    setCentralWidget(whole);
    caution_ = new QLabel(this);
    caution_->setFont(textFont(TextSize::small));
    caution_->setContentsMargins(10, 0, 0, 0);
    statusBar()->addWidget(caution_, 1);
    statusBar()->setSizeGripEnabled(false);
    for (QWidget* part :
         std::initializer_list<QWidget*>{menuBar(), statusBar(), notice_, startStrip_, sheet_}) {
        Dressing::instance().wear(part);
    }
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
    fileState_->setObjectName(QStringLiteral("fileState"));
    fileState_->setEnabled(false);
    row->addWidget(title_);
    row->addSpacing(8);
    row->addWidget(fileState_);
    row->addSpacing(24);
    for (QAction* action : {openAction_, saveAction_, undoAction_, redoAction_, keepAction_}) {
        row->addWidget(makeButton(action, bar));
    }
    row->addStretch(1);
    styleChoice_ = new CalmCombo(bar);
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
    views_ = new ViewDeck(this);
    motion_ = new BoltMotion(state_, *views_, this);
    auto* picture = new QWidget(this);
    auto* pictureColumn = new QVBoxLayout(picture);
    pictureColumn->setContentsMargins(0, 0, 0, 0);
    pictureColumn->setSpacing(0);
    pictureColumn->addWidget(strip_);
    pictureColumn->addWidget(views_, 1);
    slider_ = new TravelSlider(this);
    slider_->setObjectName(QStringLiteral("benchSlider"));
    curves_ = new TravelCurves(this);
    for (QWidget* shown :
         std::initializer_list<QWidget*>{&views_->sideView(), &views_->rearView(), &views_->topView()}) {
        offerPicture(*shown);
    }
    auto* travel = new QWidget(this);
    auto* travelRow = new QHBoxLayout(travel);
    travelRow->setContentsMargins(0, 0, 0, 0);
    travelRow->setSpacing(2);
    travelRow->addWidget(slider_);
    travelRow->addWidget(curves_, 1);
    auto* split = new QSplitter(Qt::Horizontal, this);
    split->addWidget(dressed(makeCard(picture, this)));
    split->addWidget(dressed(travel));
    split->setSizes({700, 460});
    split->setStretchFactor(0, 2);
    split->setStretchFactor(1, 1);
    split->setCollapsible(0, false);
    split->setHandleWidth(8);
    return split;
}

QWidget* MainWindow::buildPanel() {
    board_ = new HoleBoard(this);
    controller_ = new CombinationController(state_, *board_, this);
    baselinePanel_ = new BaselinePanel(this);
    baselineController_ = new BaselineController(state_, *baselinePanel_, this);
    cloudRunner_ = new CloudRunner(this);
    figures_ = new FigureTable(this);
    warnings_ = new WarningList(this);
    pages_ = new QTabWidget(this);
    pages_->setDocumentMode(true);
    pages_->setObjectName(QStringLiteral("pages"));
    pages_->setAccessibleName(tr("Panel"));
    pages_->addTab(board_, tr("Hole combinations"));
    pages_->addTab(baselinePanel_, tr("Before and after"));
    pages_->addTab(figures_, tr("Figures through travel"));
    pages_->addTab(warnings_, tr("Warnings"));
    return dressed(makeCard(pages_, this));
}

void MainWindow::buildLaunchAndDays() {
    launch_ = new LaunchPage(this);
    const TrialParts trials = makeTrialParts(state_, this);
    launch_->addSide(trials.panel);
    launch_->addSide(trials.powers);
    trialController_ = trials.controller;
    trials_ = trials.panel;
    days_ = new TestDaysPage(this);
    passController_ = new PassController(state_, *days_, this);
    recordingController_ = new RecordingController(state_, document_, *days_, this);
    auto* fit = new FitCard(days_);
    days_->addSide(fit);
    connect(fit, &FitCard::launchNumbersRequested, this,
            [this] { showWorkPage(workPages_->indexOf(launch_)); });
    fitController_ = new FitController(state_, *fit, this);
}

QWidget* MainWindow::buildPages(QWidget* bench) {
    workPages_ = new QStackedWidget(this);
    pageGroup_ = new QActionGroup(this);
    auto* tabs = new GroupedTabs(this);
    pageTabs_ = tabs;
    pageTabs_->setObjectName(QStringLiteral("workPages"));
    pageTabs_->setAccessibleName(tr("Pages"));
    pageTabs_->setDrawBase(false);
    pageTabs_->setExpanding(false);
    addPage(tr("Links"), tr("The bench: side view, curves, hole combinations, before and after"), bench);
    auto* driveline = new DrivelinePage(this);
    connect(driveline, &DrivelinePage::cursorMoved, this, &MainWindow::moveCursor);
    auto* roll = new RollPage(this);
    connect(roll, &RollPage::cursorMoved, this, &MainWindow::moveCursor);
    brackets_ = new BracketPage(this);
    connect(brackets_, &BracketPage::templatePreviewRequested, this, &MainWindow::previewDrillingTemplate);
    connect(brackets_, &BracketPage::templateFileRequested, this, &MainWindow::saveDrillingTemplate);
    buildLaunchAndDays();
    auto* target = new TargetPage(this);
    connect(target, &TargetPage::lengthsChosen, controller_, &CombinationController::chooseLengths);
    connect(controller_, &CombinationController::lengthsChanged, this, [this] {
        trialController_->carChanged(document_.isDragging());
        showState();
    });
    auto* mark = new TargetMark(views_->sideView());
    targetController_ = new TargetController(state_, controller_->state(), *target, *mark, this);
    // As the person's week goes: measure, choose, launch, and the test days.
    besideBench_ = {new WeightsPage(this),  driveline, new SpringsPage(this), brackets_, target, roll,
                    new AccuracyPage(this), launch_,   new LoadsPage(this)};
    const std::vector<QWidget*> firsts{target, launch_};
    const QStringList tips{tr("Scales, pads, loads and CG height"),
                           tr("Joint angles, speed variation, slip-yoke travel and pinion angle"),
                           tr("Springs, shocks, stops and straps through travel"),
                           tr("Plates, room around the holes, drilling template"),
                           tr("A target, and the holes and lengths that give it"),
                           tr("Roll center, roll axis, roll steer and bind"),
                           tr("How far each figure can be trusted, and what to measure again"),
                           tr("The first second after the release: played, over time and in figures"),
                           tr("Load transfer, attitude, roll, link loads and braking")};
    for (std::size_t index = 0; index < besideBench_.size(); ++index) {
        if (std::ranges::find(firsts, besideBench_[index]) != firsts.end()) {
            tabs->beginGroup();
        }
        addPage(besideBench_[index]->title(), tips[static_cast<int>(index)], dressed(besideBench_[index]));
    }
    tabs->beginGroup();
    addPage(days_->title(), tr("Every pass with its setup, and what the times tell"), dressed(days_));
    pageActions_.front()->setChecked(true);
    connect(pageTabs_, &QTabBar::currentChanged, this, &MainWindow::showWorkPage);
    return workPages_;
}

void MainWindow::addPage(const QString& title, const QString& tip, QWidget* page) {
    const int index = workPages_->addWidget(page);
    auto* action = new QAction(title, this);
    action->setCheckable(true);
    const QString key = QStringLiteral("1234567890-=").at(index);  // as the keys lie on a keyboard
    action->setToolTip(tr("%1 (Alt+%2)").arg(tip, key));
    action->setShortcut(QKeySequence(QStringLiteral("Alt+") + key));
    pageGroup_->addAction(action);
    pageTabs_->setTabToolTip(pageTabs_->addTab(title), action->toolTip());
    connect(action, &QAction::triggered, this, [this, index] { showWorkPage(index); });
    pageActions_.push_back(action);
}

void MainWindow::showPage(QWidget* page) {
    showWorkPage(0);
    pages_->parentWidget()->show();
    pages_->setCurrentWidget(page);
    page->setFocus(Qt::ShortcutFocusReason);
}

void MainWindow::chooseUncertainty(bool shown) {
    state_.showsUncertainty = shown;
    settings_.showsUncertainty = shown;
    settings_.save();
    showState();
}

void MainWindow::showCaution() {
    caution_->setText(allCalculatedWords(state_.car) + QLatin1Char(' ') +
                      tr("Car on rated stands, wheels chocked, before a bolt comes out."));
}

}  // namespace bolthole
