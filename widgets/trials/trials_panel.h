// What to try next: the card, and all single changes under it.
#pragma once

#include <QWidget>
#include <memory>

#include "geometry/trials/launch_trials.h"

class QProgressBar;
class QPushButton;

namespace bolthole {

class Card;
class ToneLabel;
class TrialCard;
class TrialList;

/// Computes nothing: it says when it is seen, and is shown what came of trying.
class TrialsPanel : public QWidget {
    Q_OBJECT
  public:
    explicit TrialsPanel(QWidget* parent = nullptr);

    /// What came of trying the changes of `car`. What is missing is said in words.
    void showTrials(const std::shared_ptr<const LaunchTrials>& trials, const std::shared_ptr<const Car>& car,
                    Units units);
    /// The changes are being tried: how far, 0 to 1. What was shown before goes.
    void showProgress(double share);
    /// How past predictions fared, beside the trials; empty: nobody knows.
    void showFared(const QString& words);
    /// Nothing to show, and why.
    void showMessage(const QString& why);
    /// It was cancelled; a button asks for it again.
    void showStopped();

    /// For tests.
    [[nodiscard]] TrialCard& card() const { return *card_; }
    [[nodiscard]] TrialList& list() const { return *list_; }
    [[nodiscard]] QPushButton* cancelButton() const { return cancel_; }
    [[nodiscard]] QString message() const;

  signals:
    void edited(const bolthole::Edit& edit);  ///< "Set it": one change that can be undone
    /// "Show its launch": the changed car, and what it is called.
    void launchRequested(const std::shared_ptr<const bolthole::Car>& car, const QString& name);
    void seen(bool isSeen);  ///< shown or hidden
    void cancelled();        ///< "Cancel"
    void requested();        ///< "Try again"

  protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

  private:
    enum class Look { nothing, working, stopped, trials };
    void look(Look what);
    void showChosen(int trial);
    void take(int trial);
    void showLaunch();

    std::shared_ptr<const LaunchTrials> trials_;
    std::shared_ptr<const Car> car_;
    Units units_ = Units::inch;
    int shown_ = 0;  // the trial on the card
    TrialCard* card_;
    TrialList* list_;
    Card* listCard_;
    Card* waiting_;
    ToneLabel* message_;
    ToneLabel* alike_;
    ToneLabel* fared_;
    QProgressBar* progress_;
    QPushButton* cancel_;
};

}  // namespace bolthole
