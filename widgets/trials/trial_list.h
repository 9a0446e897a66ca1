// All single changes as a table that can be sorted.
#pragma once

#include <memory>
#include <vector>

#include "geometry/trials/launch_trials.h"
#include "widgets/kit/read_table.h"

namespace bolthole {

/// A row a change. A click on a heading sorts by it, a second one the other way; Enter and a double click ask
/// to set it.
class TrialList : public ReadTable {
    Q_OBJECT
  public:
    enum Column { kRank, kChange, kGain, kChance };
    explicit TrialList(QWidget* parent = nullptr);

    /// Shows them in their own order; the one chosen stays chosen where there still is one of its words.
    void showTrials(std::shared_ptr<const LaunchTrials> trials, std::shared_ptr<const Car> car, Units units);
    /// Index into the trials of the row chosen; -1: none.
    [[nodiscard]] int chosen() const;
    void choose(int trial);
    /// Which others can't be told apart from a trial, in words; empty: none.
    [[nodiscard]] QString alikeWords(int trial) const;
    void sortBy(int column);

  signals:
    void trialChosen(int trial);
    void trialTaken(int trial);

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    void showRows();
    void showRow(int row, int trial);
    void sortOrder();
    [[nodiscard]] double keyOf(int trial) const;
    [[nodiscard]] int leaderOf(int trial) const;

    std::shared_ptr<const LaunchTrials> trials_;
    std::shared_ptr<const Car> car_;
    Units units_ = Units::inch;
    QStringList headings_;
    std::vector<int> order_;  // trials, a row each
    int sortedBy_ = kRank;
    bool isDescending_ = false;
    bool isShowing_ = false;  // rows are written, not chosen
};

}  // namespace bolthole
