// The bench: car sheet, side view, travel slider, curves, figures and warnings around one document.
#pragma once

#include <QMainWindow>
#include <QTimer>
#include <memory>

#include "app/document/document.h"
#include "app/document/settings.h"
#include "widgets/papers/change_sheet.h"
#include "widgets/papers/template_scene.h"
#include "widgets/papers/wall_chart.h"
#include "widgets/state/bench_state.h"

class QActionGroup;
class QComboBox;
class QLabel;
class QMenu;
class QSplitter;
class QStackedWidget;
class QTabBar;
class QTabWidget;

namespace bolthole {

class BaselineController;
class BoltMotion;
class BaselinePanel;
class BracketPage;
class CloudRunner;
enum class HelpTopic;
enum class SheetKind;
struct AbandonedLog;
struct BoardState;
class CarSheet;
class CombinationController;
class DragTurns;
class WarningList;
class FigureStrip;
class FigureTable;
class HelpWindow;
class HoleBoard;
class HowToPanel;
class LaunchPage;
class MeasureDialog;
class NoticeBar;
class FitController;
class StartStrip;
class TrialController;
class PanelRoom;
class PassController;
class TestDaysPage;
class RecordingController;
class TrialsPanel;
class RecoveryController;
class SideView;
class TravelCurves;
class TravelSlider;
class ViewDeck;
class TargetController;
class WorkPage;

/// One window on one document. Computes what the views show; the views ask for changes, the document makes
/// them.
class MainWindow : public QMainWindow {
    Q_OBJECT
  public:
    explicit MainWindow(Settings settings);
    ~MainWindow() override;

    /// Opens a car file, unsaved changes asked about first. On failure says why across the top; the car
    /// stays. Returns what it said; empty where it was opened, or left by choice.
    QString openFile(const QString& fileName);
    /// What a window begins with: the file asked for, or a demo car where that is empty or can't be opened.
    /// Why it can't stays across the top, and is returned.
    QString openAtStart(const QString& fileName, const QString& demo);
    /// Opens a demo car that travels with the program: its file name without folder.
    void openDemo(const QString& name);
    /// Offers what a person may want whom a start shows a demo: a car of their own, above all.
    void offerFirstSteps();
    /// Takes the car of another file in as a kept setup and makes it the baseline.
    void compareWithFile(const QString& fileName);
    /// Offers what programs that ended without saving left behind; shows nothing where there is nothing.
    void offerLeftBehind();

    [[nodiscard]] const BenchState& state() const { return state_; }
    [[nodiscard]] Document& document() { return document_; }
    [[nodiscard]] SideView& sideView();
    [[nodiscard]] ViewDeck& views() { return *views_; }
    [[nodiscard]] HoleBoard& holeBoard() { return *board_; }
    [[nodiscard]] const BoardState& boardState() const;

  protected:
    void closeEvent(QCloseEvent* event) override;
    void changeEvent(QEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

  private:
    void buildPanels();
    QWidget* buildTopBar();
    QWidget* buildBench();
    QWidget* buildPanel();
    QWidget* buildPages(QWidget* bench);
    void buildLaunchAndDays();
    void addPage(const QString& title, const QString& tip, QWidget* page);
    void showWorkPage(int index);
    void goToField(const FieldId& id);
    void buildMenus();
    void buildFileMenu();
    void buildEditMenu();
    void buildViewMenu();
    void buildPanelMenu(QMenu& menu);
    void buildLookMenu(QMenu& menu);
    void buildCompareEntries(QMenu* menu);
    void buildPapersMenu();
    void buildHelpMenu();
    void connectViews();
    void connectHowTo();
    void connectTestDays();
    void fillRecentMenu();

    void takeEdit(const Edit& edit, EditPhase phase);
    void takeSelection(const PointId& id);
    void moveCursor(double travel);
    void chooseStyle(int index);
    void carChanged();
    void solve();
    void solveCursor();
    void drawCloud();
    void takeCloud(const std::shared_ptr<const IcCloud>& cloud);
    void chooseUncertainty(bool shown);
    QAction* buildStillEntry();
    void showState();
    void showCurves();
    void showCaution();
    void showNumbers();
    void showPage(QWidget* page);
    void showGhost();
    void showFileState();
    void showStyle();
    void stepHistory(bool forward);
    void enterMeasurements();
    void showHowTo(const FieldId& id);
    HowToPanel& howToPanel();
    void commitTyping();

    [[nodiscard]] static QString fileFilter();
    [[nodiscard]] bool readyForPaper();
    [[nodiscard]] ChartRequest chartRequest() const;
    [[nodiscard]] std::optional<ChangeRequest> changeRequest();
    void previewWallChart();
    void saveWallChart();
    void previewChange();
    void saveChange();
    [[nodiscard]] std::optional<TemplateRequest> templateRequest();
    void previewDrillingTemplate();
    void saveDrillingTemplate();
    void saveCutTemplate();
    void previewSheetOf(SheetKind kind);
    void copySetup();
    void askOtherCar();
    void askNew();
    void askOpen();
    bool saveFile();
    bool askSaveAs();
    void showFit();
    void takePassEdit(const Edit& edit);
    void takeProposal(const Edit& edit, EditPhase phase);
    void takeKeptEdit(const Edit& edit, EditPhase phase);
    bool takeAsStep(const Edit& edit, EditPhase phase);
    [[nodiscard]] bool mayReplace(const QString& fileName);
    bool saveTo(const QString& fileName, bool replaceTheirs = false);
    bool askChangedElsewhere(const QString& fileName);
    bool askNotSaved(const QString& fileName, const QString& reason);
    bool mayDiscard();
    [[nodiscard]] bool mayOpenTwice(const QString& fileName);
    void startAnew();
    void sayChangedElsewhere();
    void showRecoveryProblem();
    void askLeftBehind();
    void bringBack(const AbandonedLog& log);
    void showHelp(HelpTopic topic);
    void showCautions();
    void showAbout();

    Settings settings_;
    Document document_;
    BenchState state_;
    QTimer numbersTimer_;
    std::unique_ptr<RecoveryController> recovery_;
    bool toldChanged_ = false;  // of the file being changed elsewhere, once
    bool isDemo_ = false;       // until it is saved under a name

    CarSheet* sheet_ = nullptr;
    ViewDeck* views_ = nullptr;
    BoltMotion* motion_ = nullptr;
    DragTurns* turns_ = nullptr;
    QLabel* caution_ = nullptr;
    FigureStrip* strip_ = nullptr;
    TravelSlider* slider_ = nullptr;
    TravelCurves* curves_ = nullptr;
    FigureTable* figures_ = nullptr;
    WarningList* warnings_ = nullptr;
    HoleBoard* board_ = nullptr;
    CombinationController* controller_ = nullptr;
    BaselinePanel* baselinePanel_ = nullptr;
    BaselineController* baselineController_ = nullptr;
    BracketPage* brackets_ = nullptr;
    LaunchPage* launch_ = nullptr;
    // Made when they are first wanted.
    HelpWindow* help_ = nullptr;
    MeasureDialog* measure_ = nullptr;
    CloudRunner* cloudRunner_ = nullptr;
    TargetController* targetController_ = nullptr;
    TestDaysPage* days_ = nullptr;
    PassController* passController_ = nullptr;
    RecordingController* recordingController_ = nullptr;
    FitController* fitController_ = nullptr;
    TrialsPanel* trials_ = nullptr;
    TrialController* trialController_ = nullptr;
    QTabWidget* pages_ = nullptr;
    QStackedWidget* workPages_ = nullptr;  // the bench first
    std::vector<WorkPage*> besideBench_;   // the others, but for the test days at the end
    QTabBar* pageTabs_ = nullptr;
    QActionGroup* pageGroup_ = nullptr;
    QAction* sheetAction_ = nullptr;     // whether the car sheet is to be seen beside the bench
    std::vector<QAction*> pageActions_;  // one each, the bench's first
    StartStrip* startStrip_ = nullptr;
    NoticeBar* notice_ = nullptr;
    QLabel* title_ = nullptr;
    QLabel* fileState_ = nullptr;
    QComboBox* styleChoice_ = nullptr;
    QSplitter* benchSplit_ = nullptr;
    QSplitter* panelSplit_ = nullptr;
    PanelRoom* panelRoom_ = nullptr;
    QMenu* recentMenu_ = nullptr;
    QAction* openAction_ = nullptr;
    QAction* saveAction_ = nullptr;
    QAction* undoAction_ = nullptr;
    QAction* redoAction_ = nullptr;
    QAction* keepAction_ = nullptr;
};

}  // namespace bolthole
