// What was turned and what that does: the list of changes over the table of differences.
#pragma once

#include <QWidget>
#include <vector>

#include "widgets/state/bench_state.h"
#include "widgets/words/change_words.h"

class QAbstractButton;
class QListWidget;
class QPushButton;

namespace bolthole {

class DifferenceTable;
class ToneLabel;

/// Shows one comparison, or in words why there is none.
class DifferenceView : public QWidget {
    Q_OBJECT
  public:
    explicit DifferenceView(QWidget* parent = nullptr);

    /// `comparison`: null where there is none to show; `message` says why, and also where there is one but a
    /// car of it can't be computed.
    void showState(const BenchState& state, const Comparison* comparison, const QString& message);
    /// The cursor moved: its columns alone.
    void showCursor(const BenchState& state, const Comparison* comparison);

    /// Whether the car before its last bolting is offered where there is no table.
    void showOffer(bool offered);

    [[nodiscard]] QSize minimumSizeHint() const override { return {240, 100}; }

  signals:
    /// The person wants the car before its last bolting as the baseline.
    void offerTaken();

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    void showLines(const std::vector<ChangeLine>& lines);
    void showTelling(const BenchState& state);
    void showFold();
    void fit();
    void showWithin(ToneLabel& label, const QString& text) const;
    [[nodiscard]] int rowsOfChanges() const;
    void copyLines() const;

    QString fullTitle_;
    QString fullStarts_;
    ToneLabel* title_;
    ToneLabel* starts_;  // what nobody measured of both cars
    QListWidget* lines_;
    ToneLabel* message_;
    QPushButton* offer_;
    DifferenceTable* table_;
    QAbstractButton* fold_;
    ToneLabel* telling_;
};

}  // namespace bolthole
