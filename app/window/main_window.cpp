#include "app/window/main_window.h"

#include <QAction>
#include <QApplication>
#include <QCloseEvent>
#include <QComboBox>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QMimeData>
#include <QSplitter>
#include <QStackedWidget>
#include <QTabBar>
#include <QTabWidget>
#include <QUrl>
#include <algorithm>

#include "app/controllers/baseline_controller.h"
#include "app/controllers/bolt_motion.h"
#include "app/controllers/cloud_runner.h"
#include "app/controllers/combination_controller.h"
#include "app/controllers/drag_turns.h"
#include "app/controllers/fit_controller.h"
#include "app/controllers/recovery_controller.h"
#include "app/controllers/target_controller.h"
#include "app/controllers/trial_controller.h"
#include "app/papers/paper_dialogs.h"
#include "app/window/panel_room.h"
#include "app/window/pass_controller.h"
#include "app/window/recording_controller.h"
#include "geometry/checks/warnings.h"
#include "widgets/board/hole_board.h"
#include "widgets/compare/baseline_panel.h"
#include "widgets/curves/travel_curves.h"
#include "widgets/fields/car_sheet.h"
#include "widgets/fit/fit_words.h"
#include "widgets/kit/before_events.h"
#include "widgets/kit/job_runner.h"
#include "widgets/kit/notice_bar.h"
#include "widgets/kit/said.h"
#include "widgets/pages/brackets/bracket_page.h"
#include "widgets/pages/days/days_page.h"
#include "widgets/pages/days/pass_words.h"
#include "widgets/pages/launch/launch_page.h"
#include "widgets/pages/measure/how_to_panel.h"
#include "widgets/pages/measure/measure_dialog.h"
#include "widgets/pages/work_page.h"
#include "widgets/readouts/figure_strip.h"
#include "widgets/readouts/figure_table.h"
#include "widgets/readouts/warning_list.h"
#include "widgets/scales/travel_slider.h"
#include "widgets/state/drawn_points.h"
#include "widgets/trials/trials_panel.h"
#include "widgets/views/side_view.h"
#include "widgets/views/view_deck.h"

namespace bolthole {

namespace {

// The choices of the style box, in its order.
constexpr std::array kStyles{
    NumberStyle{Units::inch, InchStyle::sixteenths}, NumberStyle{Units::inch, InchStyle::thirtySeconds},
    NumberStyle{Units::inch, InchStyle::decimal}, NumberStyle{Units::metric, InchStyle::sixteenths}};

constexpr int kNumbersInterval = 350;  // ms

// The point, where the car has it: a car that takes another's place may have fewer links or holes.
PointId presentPoint(const Car& car, const PointId& id) {
    return pointAt(car, id) ? id : PointId{};
}

}  // namespace

MainWindow::MainWindow(Settings settings) : settings_(std::move(settings)) {
    translateSaid();
    clearUpperVectorsBeforeEvents();
    setAcceptDrops(true);
    resize(1480, 920);
    state_.showsUncertainty = settings_.showsUncertainty;
    buildPanels();
    buildMenus();
    connectViews();
    restoreGeometry(settings_.windowGeometry);
    benchSplit_->restoreState(settings_.benchSplit);
    panelSplit_->restoreState(settings_.panelSplit);
    views_->choose(settings_.view);
    recovery_ = std::make_unique<RecoveryController>(document_, recoveryFolder());
    connect(recovery_.get(), &RecoveryController::othersChanged, this, &MainWindow::showFileState);
    connect(recovery_.get(), &RecoveryController::problemChanged, this, &MainWindow::showRecoveryProblem);
    connect(&document_, &Document::carChanged, this, &MainWindow::carChanged);
    connect(&document_, &Document::fileStateChanged, this, &MainWindow::showFileState);
}

MainWindow::~MainWindow() {
    // The undo stack tells its listeners while it is taken down; they must not hear it.
    recovery_->disconnect(this);
    document_.disconnect(this);
    document_.undoStack().disconnect();
    board_->disconnect();  // it points at nothing once it is hidden, and says so
}

SideView& MainWindow::sideView() {
    return views_->sideView();
}

void MainWindow::connectViews() {
    connect(views_, &ViewDeck::edited, this, &MainWindow::takeEdit);
    connect(views_, &ViewDeck::selected, this, &MainWindow::takeSelection);
    connect(sheet_, &CarSheet::edited, this, [this](const Edit& edit) { takeEdit(edit, EditPhase::whole); });
    connect(sheet_, &CarSheet::fieldRequested, this, &MainWindow::goToField);
    connect(sheet_, &CarSheet::howToRequested, this, &MainWindow::showHowTo);
    connect(sheet_, &CarSheet::enteringRequested, this, &MainWindow::enterMeasurements);
    connect(sheet_, &CarSheet::selected, this, [this](const PointId& id) {
        state_.selection = id;
        views_->showState(state_);
    });
    connect(slider_, &TravelSlider::cursorMoved, this, &MainWindow::moveCursor);
    connect(curves_, &TravelCurves::cursorMoved, this, &MainWindow::moveCursor);
    connect(curves_, &TravelCurves::plotAreaChanged, slider_, &TravelSlider::alignTrack);
    connect(board_, &HoleBoard::edited, this, &MainWindow::takeEdit);
    connect(baselinePanel_, &BaselinePanel::edited, this, &MainWindow::takeKeptEdit);
    connect(baselinePanel_, &BaselinePanel::ridePreviewed, controller_, &CombinationController::preview);
    connect(baselinePanel_, &BaselinePanel::howToRequested, this, &MainWindow::showHowTo);
    connect(baselinePanel_, &BaselinePanel::otherCarRequested, this, &MainWindow::askOtherCar);
    connect(baselinePanel_, &BaselinePanel::sheetPreviewRequested, this, &MainWindow::previewChange);
    connect(baselinePanel_, &BaselinePanel::sheetFileRequested, this, &MainWindow::saveChange);
    connect(keepAction_, &QAction::triggered, this, [this] {
        commitTyping();
        baselinePanel_->askKeep();
    });
    connect(controller_, &CombinationController::pointedChanged, this, [this] {
        passController_->keepGhost();
        showGhost();
    });
    connect(warnings_, &WarningList::fieldRequested, this, &MainWindow::goToField);
    connect(warnings_, &WarningList::edited, this,
            [this](const Edit& edit) { takeEdit(edit, EditPhase::whole); });
    for (WorkPage* page : besideBench_) {
        connect(page, &WorkPage::edited, this,
                [this](const Edit& edit) { takeEdit(edit, EditPhase::whole); });
        connect(page, &WorkPage::fieldRequested, this, &MainWindow::goToField);
        connect(page, &WorkPage::howToRequested, this, &MainWindow::showHowTo);
    }
    connect(targetController_, &TargetController::edited, this, &MainWindow::takeEdit);
    connectHowTo();
    connectTestDays();
    connect(cloudRunner_, &CloudRunner::arrived, this, &MainWindow::takeCloud);
    connect(&JobNews::instance(), &JobNews::failed, notice_, &NoticeBar::say);
    connect(&PaperNews::instance(), &PaperNews::saved, notice_, &NoticeBar::tell);
    connect(styleChoice_, &QComboBox::activated, this, &MainWindow::chooseStyle);
    numbersTimer_.setSingleShot(true);
    numbersTimer_.setInterval(kNumbersInterval);
    connect(&numbersTimer_, &QTimer::timeout, this, &MainWindow::showNumbers);
    turns_ = new DragTurns({[this] { showCurves(); }, [this] { views_->showOthers(state_); }}, this);
}

// F1 in fields of numbers that are none of the car's.
void MainWindow::connectHowTo() {
    connect(brackets_, &BracketPage::plateHowToRequested, this,
            [this](PlateNumber number, const QString& name, const QString& howTo) {
                howToPanel().showPicture(name, howTo, howToPicture(number), QApplication::focusWidget());
            });
    connect(days_, &TestDaysPage::howToRequested, this, [this](PassField field) {
        howToPanel().showPicture(labelOf(field), howToMeasure(field), howToPicture(field),
                                 QApplication::focusWidget());
    });
}

// Test days, what they teach, and what to try next.
void MainWindow::connectTestDays() {
    connect(passController_, &PassController::pointedChanged, this, &MainWindow::showGhost);
    connect(passController_, &PassController::passesRead, this, [this](const std::vector<Pass>& passes) {
        const QString refusal = document_.takePasses(passes, state_.selection);
        if (!refusal.isEmpty()) {
            notice_->say(refusal);
        }
    });
    connect(days_, &TestDaysPage::edited, this, &MainWindow::takePassEdit);
    connect(passController_, &PassController::said, notice_, &NoticeBar::say);
    connect(fitController_, &FitController::fitted, this, &MainWindow::showFit);
    connect(trialController_, &TrialController::tried, fitController_, &FitController::fitAnyway);
    connect(recordingController_, &RecordingController::said, notice_, &NoticeBar::say);
    connect(recordingController_, &RecordingController::edited, this,
            [this](const Edit& edit) { takeEdit(edit, EditPhase::whole); });
    connect(fitController_, &FitController::edited, this, &MainWindow::takeProposal);
    connect(trialController_, &TrialController::edited, this, &MainWindow::takeProposal);
    connect(trialController_, &TrialController::launchRequested, launch_, &LaunchPage::showTried);
}

void MainWindow::takeSelection(const PointId& id) {
    state_.selection = id;
    views_->showState(state_);
    FieldId field;
    if (id.kind == PointId::Kind::hole) {
        field = {.field = Field::holeAt, .link = id.link, .end = id.end, .hole = id.hole, .axis = -1};
    } else if (id.kind == PointId::Kind::joint) {
        field.field = id.end == End::axle ? Field::pinionJoint : Field::outputJoint;
    } else {
        return;
    }
    sheet_->revealField(field);
}

// What is pointed at on the board stands in side view and curves.
void MainWindow::showGhost() {
    views_->showState(state_);
    curves_->showTrace(state_);
}

const BoardState& MainWindow::boardState() const {
    return controller_->state();
}

void MainWindow::moveCursor(double travel) {
    state_.cursorTravel = travel;
    solveCursor();
    controller_->moveGhost();
    baselineController_->moveGhost();
    views_->showState(state_);
    strip_->showState(state_);
    slider_->showCursor(state_);
    curves_->showCursor(state_);
    figures_->showCursor(state_);
    baselineController_->showCursor();
}

void MainWindow::chooseStyle(int index) {
    const NumberStyle style = kStyles[static_cast<std::size_t>(std::clamp(index, 0, 3))];
    commitTyping();
    if (style.units == Units::inch) {
        settings_.inches = style.inches;
        settings_.save();
    }
    if (document_.car().units != style.units) {
        takeEdit(SetUnits{style.units}, EditPhase::whole);
    } else {
        carChanged();
    }
}

// What the passes taught, to whom it concerns beside its own card.
void MainWindow::showFit() {
    const std::shared_ptr<const LaunchFit>& fit = fitController_->fit();
    recordingController_->showFit(fit);
    trials_->showFared(fit ? faredWords(*fit) : QString());
}

void MainWindow::carChanged() {
    motion_->carWillChange(document_.isDragging());
    state_.car = document_.car();
    state_.style = {state_.car.units, settings_.inches};
    state_.selection = presentPoint(state_.car, state_.selection);
    solve();
    drawCloud();
    baselineController_->carChanged();
    controller_->carChanged(document_.isDragging());
    passController_->keepGhost();
    targetController_->carChanged();
    fitController_->carChanged(document_.isDragging());
    trialController_->carChanged(document_.isDragging());
    showState();
    motion_->carChanged();
}

// A car that can't be assembled has no figures, and none of another car stand in for them.
void MainWindow::solve() {
    state_.faults = findFaults(state_.car);
    state_.traceIsCurrent = false;
    state_.problem.clear();
    if (!state_.faults.empty()) {
        state_.problem = state_.faults.front().path + ": " + state_.faults.front().reason;
        state_.trace = {};
    } else {
        computeTrace(state_.car, state_.trace);
        state_.solvedCar = state_.car;
        state_.traceIsCurrent = state_.trace.assembly.usable();
        if (!state_.traceIsCurrent) {
            state_.problem = describe(state_.trace.assembly, state_.car, state_.style.units);
        }
    }
    if (state_.traceIsCurrent) {
        computeUncertainty(state_.car, state_.uncertainty);
    } else {
        state_.uncertainty = {};
    }
    if (!document_.isDragging()) {
        state_.warnings = state_.faults.empty() ? findWarnings(state_.car) : std::vector<Warning>{};
    }
    solveCursor();
}

void MainWindow::solveCursor() {
    const TravelRange& range = state_.solvedCar.travel;
    state_.cursorTravel = std::clamp(state_.cursorTravel, -range.droop, range.bump);
    if (state_.trace.assembly.usable()) {
        state_.cursor = solveStation(state_.solvedCar, state_.cursorTravel);
    } else {
        state_.cursor = Station{};
    }
}

// A cloud belongs to the car as it stood still: in a drag there is none.
void MainWindow::drawCloud() {
    state_.cloud.reset();
    if (state_.traceIsCurrent && !document_.isDragging()) {
        cloudRunner_->start(std::make_shared<const Car>(state_.car));
    } else {
        cloudRunner_->cancel();
    }
}

void MainWindow::takeCloud(const std::shared_ptr<const IcCloud>& cloud) {
    state_.cloud = cloud;
    views_->showState(state_);
    strip_->showState(state_);
    curves_->showCursor(state_);
    for (WorkPage* page : besideBench_) {
        page->showState(state_);
    }
}

void MainWindow::showCurves() {
    curves_->setMoving(document_.isDragging());
    curves_->showTrace(state_);
}

void MainWindow::showState() {
    views_->showUnderHand(state_);
    strip_->showState(state_);
    slider_->showTrace(state_);
    const bool hasTurns = document_.isDragging() && views_->shown() == ViewDeck::Shown::all;
    hasTurns ? turns_->step() : turns_->showAll();
    if (document_.isDragging()) {
        // The eye is on the picture: numbers in table and sheet follow a drag as fast as they can be read.
        if (!numbersTimer_.isActive()) {
            numbersTimer_.start();
        }
    } else {
        showNumbers();
        warnings_->showState(state_);
        const std::size_t count = state_.faults.size() + state_.warnings.size();
        pages_->setTabText(pages_->indexOf(warnings_),
                           count == 0 ? tr("No warnings") : tr("Warnings: %1").arg(count));
        showStyle();
        showFileState();
    }
}

void MainWindow::showStyle() {
    const auto* found = std::ranges::find(kStyles, state_.style);
    const auto index = static_cast<int>(found - kStyles.begin());
    styleChoice_->setCurrentIndex(state_.style.units == Units::metric ? 3 : index);
}

void MainWindow::showNumbers() {
    showCaution();
    figures_->showState(state_);
    sheet_->showState(state_);
    for (WorkPage* page : besideBench_) {
        page->showState(state_);
    }
    days_->showState(state_);
    if (measure_ != nullptr && measure_->isVisible()) {
        measure_->showState(state_);
    }
    baselineController_->show(document_.carBeforeBolting());
}

// Undo during a drag gives up the drag first: the step undone is the one before it.
void MainWindow::stepHistory(bool forward) {
    views_->abandonDrag();
    board_->abandonDrag();
    sheet_->discardTyping();
    for (WorkPage* page : besideBench_) {
        page->discardTyping();
    }
    days_->discardTyping();
    if (measure_ != nullptr) {
        measure_->discardTyping();
    }
    forward ? document_.undoStack().redo() : document_.undoStack().undo();
    state_.selection = presentPoint(state_.car, document_.selection());
    views_->showState(state_);
}

void MainWindow::commitTyping() {
    views_->abandonDrag();
    board_->abandonDrag();
    sheet_->commitPending();
    for (WorkPage* page : besideBench_) {
        page->commitPending();
    }
    days_->commitPending();
    if (measure_ != nullptr && measure_->isVisible()) {
        measure_->commitPending();
    }
}

void MainWindow::showHowTo(const FieldId& id) {
    howToPanel().showNumber(state_, id, QApplication::focusWidget());
}

// Over a form that has to be closed first it is that form's own, which can still be closed and read.
HowToPanel& MainWindow::howToPanel() {
    QWidget* parent = QApplication::activeModalWidget() != nullptr ? QApplication::activeModalWidget() : this;
    auto* panel = parent->findChild<HowToPanel*>(QString(), Qt::FindDirectChildrenOnly);
    return panel != nullptr ? *panel : *new HowToPanel(parent);
}

void MainWindow::enterMeasurements() {
    commitTyping();
    if (measure_ == nullptr) {
        measure_ = new MeasureDialog(this);
        measure_->offerHistory(undoAction_, redoAction_);
        connect(measure_, &MeasureDialog::edited, this,
                [this](const Edit& edit) { takeEdit(edit, EditPhase::whole); });
    }
    measure_->show();
    measure_->showState(state_);
    measure_->begin();
    measure_->activateWindow();
}

// To the page in front if the number stands there, else to the car sheet beside the bench, else to the page
// that has it.
void MainWindow::goToField(const FieldId& id) {
    const auto page = [&](int index) { return besideBench_[static_cast<std::size_t>(index) - 1]; };
    const auto pages = static_cast<int>(besideBench_.size());  // the test days, after them, have no fields
    int index = workPages_->currentIndex();
    if (index == 0 || index > pages || !page(index)->hasField(id)) {
        index = 0;
        for (int other = 1; other <= pages && !sheet_->hasField(id); ++other) {
            index = index == 0 && page(other)->hasField(id) ? other : index;
        }
    }
    showWorkPage(index);
    if (index == 0) {
        sheetAction_->setChecked(true);
        sheet_->focusField(id);
    } else {
        page(index)->focusField(id);
    }
}

// A page has all the fields it needs: the car sheet stands beside the bench only.
void MainWindow::showWorkPage(int index) {
    if (workPages_->currentIndex() == index) {
        return;
    }
    commitTyping();
    workPages_->setCurrentIndex(index);
    pageTabs_->setCurrentIndex(index);
    pageActions_[static_cast<std::size_t>(index)]->setChecked(true);
    sheetAction_->setEnabled(index == 0);
    sheet_->setVisible(index == 0 && sheetAction_->isChecked());
    if (index > static_cast<int>(besideBench_.size())) {
        days_->enter();
    } else if (index > 0) {
        besideBench_[static_cast<std::size_t>(index) - 1]->enter();
    }
}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (!mayDiscard()) {
        event->ignore();
        return;
    }
    recovery_->release();
    settings_.windowGeometry = saveGeometry();
    settings_.benchSplit = benchSplit_->saveState();
    panelRoom_->leave();
    settings_.panelSplit = panelSplit_->saveState();
    settings_.view = views_->chosen();
    settings_.save();
    event->accept();
}

void MainWindow::changeEvent(QEvent* event) {
    QMainWindow::changeEvent(event);
    if (event->type() == QEvent::ActivationChange && isActiveWindow()) {
        recovery_->lookForOthers();
        sayChangedElsewhere();
    }
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    if (event->mimeData()->hasUrls() && event->mimeData()->urls().constFirst().isLocalFile()) {
        event->acceptProposedAction();
    }
}

void MainWindow::dropEvent(QDropEvent* event) {
    openFile(event->mimeData()->urls().constFirst().toLocalFile());
}

}  // namespace bolthole
