// Enter measurements: the filled measuring sheet typed in, one number at a time in the sheet's order.
#pragma once

#include <QDialog>
#include <array>
#include <optional>

#include "widgets/pages/measure/measuring_walk.h"
#include "widgets/state/bench_state.h"

class QAction;
class QCheckBox;
class QHBoxLayout;
class QLabel;
class QPushButton;
class QStackedWidget;
class QVBoxLayout;

namespace bolthole {

class NumberField;
class PointPicture;
class ToneLabel;

/// A window beside the bench. Two big fields for two readings, the sheet's picture with the point lit up,
/// what is left counted. Two readings far apart ask for a third. Enter goes from one reading to the next and
/// on to the next number; with nothing typed it goes on and leaves the number alone. Page Up and Page Down go
/// back and forth and take what is typed, Ctrl+Page Down skips it and goes to the next number that is left.
/// Where a bolt's place is asked for, Ctrl+H adds a hole to its bracket and goes there, and of several holes
/// Ctrl+B says that the link is bolted in this one.
/// Every number is one edit.
class MeasureDialog : public QDialog {
    Q_OBJECT
  public:
    explicit MeasureDialog(QWidget* parent = nullptr);

    /// The window's undo and redo, which work here too and lead to the number they changed.
    void offerHistory(QAction* undo, QAction* redo);
    /// Shows the car. While it has the same numbers to measure, the place in the walk and what is typed stay.
    void showState(const BenchState& state);
    /// To the first number that is left; with `from`, to that one where the sheet has it.
    void begin(const std::optional<FieldId>& from = std::nullopt);
    /// Takes what is typed. False: it can't be read, and stays with its reason.
    bool commitPending();
    /// Drops what is typed.
    void discardTyping();

    /// The number asked for; nothing where all is measured and that is said.
    [[nodiscard]] std::optional<FieldId> asked() const;

  signals:
    void edited(const Edit& edit);

  protected:
    void hideEvent(QHideEvent* event) override;

  private:
    QWidget* buildWalk();
    QVBoxLayout* buildButtons(QWidget* face);
    QWidget* buildDone();
    void addHole();
    void showHoleButtons();
    void boltHere();
    void buildFields();
    NumberField* makeReading(const QString& name);
    QWidget* addReading(std::size_t at, const QString& name);
    [[nodiscard]] std::optional<Edit> editOfTyped() const;
    QPushButton* makeButton(const QString& words, const QString& key, const QString& tip);
    void goTo(std::size_t stop);
    void goBy(int steps);
    void skip();
    void finish();
    void finishReadings();
    [[nodiscard]] bool areFarApart() const;
    void readingTaken();
    void showStop();
    void showReadings();
    void showWarnings();
    void showPicture();
    void followHistory();
    [[nodiscard]] const WalkStop& stop() const { return walk_.stops[at_]; }

    BenchState const* state_ = nullptr;
    Car car_;  // as shown last
    NumberStyle style_;
    MeasuringWalk walk_;
    std::size_t at_ = 0;
    bool done_ = false;
    bool isRoundAgain_ = false;           // the sheet's last box is past: what was left out comes once more
    bool toldApart_ = false;              // that these readings lie far apart; a third is asked for
    std::optional<std::size_t> changed_;  // the stop whose number the last change was about
    std::array<std::optional<double>, 3> readings_{};

    QStackedWidget* faces_;
    PointPicture* picture_ = nullptr;
    ToneLabel* count_ = nullptr;
    ToneLabel* area_ = nullptr;
    ToneLabel* name_ = nullptr;
    ToneLabel* now_ = nullptr;
    ToneLabel* mean_ = nullptr;
    ToneLabel* howTo_ = nullptr;
    ToneLabel* warning_ = nullptr;
    QPushButton* anotherHole_ = nullptr;  // seen where a bolt's place is asked for
    QCheckBox* boltedHere_ = nullptr;     // the same, and the bracket has several holes
    QHBoxLayout* fieldRow_ = nullptr;
    QWidget* fields_ = nullptr;
    QHBoxLayout* historyRow_ = nullptr;
    std::array<NumberField*, 3> field_{};
    QWidget* third_ = nullptr;  // with its words; seen only when it is asked for
};

}  // namespace bolthole
