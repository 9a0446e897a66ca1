// The bench: car sheet, side view, travel slider, curves, figures and doubts around one document.
#pragma once

#include <QMainWindow>
#include <QTimer>

#include "app/document.h"
#include "app/settings.h"
#include "widgets/bench_state.h"

class QComboBox;
class QLabel;
class QMenu;
class QSplitter;

namespace bolthole {

class CarSheet;
class DoubtList;
class FigureStrip;
class FigureTable;
class NoticeBar;
class SideView;
class TravelCurves;
class TravelSlider;

/// One window on one document. Computes what the views show; the views ask for changes, the document makes
/// them.
class MainWindow : public QMainWindow {
    Q_OBJECT
  public:
    explicit MainWindow(Settings settings);
    ~MainWindow() override;

    /// Opens a car file, unsaved changes asked about first. On failure says why across the top; the car
    /// stays.
    void openFile(const QString& fileName);
    /// Opens a demo car that travels with the program: its file name without folder.
    void openDemo(const QString& name);

    [[nodiscard]] const BenchState& state() const { return state_; }
    [[nodiscard]] Document& document() { return document_; }
    [[nodiscard]] SideView& sideView() { return *sideView_; }

  protected:
    void closeEvent(QCloseEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

  private:
    void buildPanels();
    QWidget* buildTopBar();
    QWidget* buildBench();
    QWidget* buildPanel();
    void buildMenus();
    void buildFileMenu();
    void buildEditMenu();
    void buildViewMenu();
    void buildHelpMenu();
    void connectViews();
    void fillRecentMenu();

    void takeEdit(const Edit& edit, EditPhase phase);
    void takeSelection(const PointId& id);
    void moveCursor(double travel);
    void chooseStyle(int index);
    void carChanged();
    void solve();
    void solveCursor();
    void showState();
    void showNumbers();
    void showFileState();
    void stepHistory(bool forward);
    void settleTyping();

    void askOpen();
    bool saveFile();
    bool askSaveAs();
    bool saveTo(const QString& fileName);
    bool mayDiscard();
    void showKeys();
    void showCautions();
    void showAbout();

    Settings settings_;
    Document document_;
    BenchState state_;
    Trace spareTrace_;
    QTimer numbersTimer_;

    CarSheet* sheet_ = nullptr;
    SideView* sideView_ = nullptr;
    FigureStrip* strip_ = nullptr;
    TravelSlider* slider_ = nullptr;
    TravelCurves* curves_ = nullptr;
    FigureTable* figures_ = nullptr;
    DoubtList* doubts_ = nullptr;
    QLabel* doubtTitle_ = nullptr;
    NoticeBar* notice_ = nullptr;
    QLabel* title_ = nullptr;
    QLabel* fileState_ = nullptr;
    QComboBox* styleChoice_ = nullptr;
    QSplitter* benchSplit_ = nullptr;
    QSplitter* panelSplit_ = nullptr;
    QMenu* recentMenu_ = nullptr;
    QAction* openAction_ = nullptr;
    QAction* saveAction_ = nullptr;
    QAction* undoAction_ = nullptr;
    QAction* redoAction_ = nullptr;
};

}  // namespace bolthole
