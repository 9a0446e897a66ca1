// Test days: every pass written down, what its times say, and two setups held against each other.
#pragma once

#include <QDateTime>
#include <QWidget>
#include <functional>
#include <optional>

#include "geometry/car/pass_fields.h"
#include "widgets/pages/days/pass_book.h"
#include "widgets/state/bench_state.h"

class QBoxLayout;
class QComboBox;
class QLabel;
class QMenu;
class QToolButton;
class QVBoxLayout;

namespace bolthole {

class Card;
class CompareCard;
class PassEntry;
class PassPlot;
class PassTable;
class RecordingCard;
class SeenCard;
class SurfaceKey;

/// Left the plot over the log, whose last row takes the next pass; right what the passes tell. Beside the
/// bench like the other pages, but without a column of the car's numbers: what is typed here becomes passes.
/// Hidden it computes nothing.
class TestDaysPage : public QWidget {
    Q_OBJECT
  public:
    explicit TestDaysPage(QWidget* parent = nullptr);
    ~TestDaysPage() override;

    /// What the page is called, also for screen readers.
    [[nodiscard]] QString title() const { return tr("Test days"); }
    /// Shows `state`, which is read in place from then on and must outlive the page.
    void showState(const BenchState& state);
    /// Enters the row of the next pass.
    void enter();
    /// Takes or drops what is still being typed: a pass is taken where its 60 ft time was typed.
    void commitPending();
    void discardTyping();

    /// Room at the right, under the comparison, for what else the passes lead to.
    void addSide(QWidget* widget);
    /// Day and time of a pass that is entered now; tests have a clock of their own.
    void setClock(std::function<QDateTime()> clock);
    /// The pass picked in plot or log, as a row of Car::passes.
    [[nodiscard]] const std::optional<std::size_t>& selected() const { return selected_; }
    void select(const std::optional<std::size_t>& pass);
    /// Shows the picked pass's recording, or offers to add one.
    [[nodiscard]] RecordingCard& recording() { return *recording_; }

    /// For tests.
    [[nodiscard]] PassTable& table() { return *table_; }
    [[nodiscard]] PassPlot& plot() { return *plot_; }
    [[nodiscard]] PassEntry& entry() { return *entry_; }
    [[nodiscard]] const CompareCard& comparison() const { return *compare_; }

  signals:
    void edited(const bolthole::Edit& edit);  ///< a whole change
    /// The kept setup whose pass is picked, to be seen as a ghost on the bench; nothing: none.
    void setupPointed(const std::optional<int>& state);
    /// The picked pass, else the last, as a row of Car::passes, its recording to be shown; nothing: there is
    /// none.
    void passPicked(const std::optional<std::size_t>& pass);
    /// How a number of a pass is measured is asked for in its field.
    void howToRequested(bolthole::PassField field);
    void importRequested();  ///< from a file
    void pasteRequested();   ///< from the clipboard
    void exportRequested();  ///< to a file

  protected:
    void showEvent(QShowEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

  private:
    void refreshIfSeen();
    void refresh();
    void showPasses();
    QWidget* buildPlotCard();
    QWidget* buildLogCard();
    QWidget* buildTools();
    QWidget* buildSide();
    QToolButton* addTool(QBoxLayout* row, const QString& text, const QString& tip);
    void connectParts();
    void enterPass(const Edit& edit);
    void revealNew(const std::vector<Pass>& before);
    void showSelection();
    void keepSelection(const std::optional<Pass>& was, std::size_t count);
    void openPass(std::size_t pass);
    void openNext(const Pass& pass);
    void strike(std::size_t pass);
    void restoreSetup(std::size_t pass);
    void showMenu(const QPoint& global);
    void goToLog();

    const BenchState* state_ = nullptr;
    bool stale_ = true;  // the state is not shown yet
    PassBook book_;
    std::optional<std::size_t> selected_;
    std::optional<int> pointed_;
    Card* plotCard_ = nullptr;
    QComboBox* against_ = nullptr;
    SurfaceKey* key_ = nullptr;
    QLabel* onePass_ = nullptr;
    PassPlot* plot_ = nullptr;
    PassTable* table_ = nullptr;
    PassEntry* entry_ = nullptr;
    QLabel* count_ = nullptr;
    CompareCard* compare_ = nullptr;
    SeenCard* seen_ = nullptr;
    RecordingCard* recording_ = nullptr;
    QVBoxLayout* side_ = nullptr;
    std::vector<QToolButton*> passTools_;  // those that need a pass
    QToolButton* strikeTool_ = nullptr;
};

}  // namespace bolthole
