// The next thing to try, or any other of the single changes, as a card: what, why, what to expect, the way
// back, and a button that does it.
#pragma once

#include <memory>

#include "geometry/trials/launch_trials.h"
#include "widgets/kit/card.h"

class QPushButton;

namespace bolthole {

class ToneLabel;

/// One change in words, with "Set it" and "Show its launch".
class TrialCard : public Card {
    Q_OBJECT
  public:
    explicit TrialCard(QWidget* parent = nullptr);

    /// Shows a trial of `trials`, which belong to `car`. `isFirst`: it is the next thing to try.
    void showTrial(const LaunchTrial& trial, const Car& car, Units units, bool isFirst);
    /// What it says, a line a label, for tests and screen readers.
    [[nodiscard]] QString said() const;
    [[nodiscard]] QPushButton* setButton() const { return set_; }
    [[nodiscard]] QPushButton* launchButton() const { return launch_; }

  signals:
    void setRequested();     ///< "Set it"
    void launchRequested();  ///< "Show its launch"

  protected:
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

  private:
    void dress();

    ToneLabel* heading_;
    ToneLabel* title_;
    ToneLabel* why_;
    ToneLabel* expected_;
    ToneLabel* chance_;
    ToneLabel* effort_;
    ToneLabel* proof_;
    ToneLabel* undo_;
    QPushButton* set_;
    QPushButton* launch_;
    bool isFirst_ = true;
};

}  // namespace bolthole
