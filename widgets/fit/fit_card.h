// The card that says what the passes taught the launch model, and takes it over.
#pragma once

#include <memory>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/fit/launch_fit.h"
#include "widgets/kit/card.h"
#include "widgets/state/bench_state.h"

class QGridLayout;
class QLabel;
class QProgressBar;
class QPushButton;

namespace bolthole {

class CalmCombo;
class PredictionPlot;
class ShareBar;
class ToneLabel;

/// Rows before · after · told by the passes, each pass predicted without itself, and one button. Knows only
/// what it is shown; whoever fits listens to seen(), fitRequested() and cancelRequested().
class FitCard : public Card {
    Q_OBJECT
  public:
    explicit FitCard(QWidget* parent = nullptr);

    /// Nothing is fitted, and why.
    void showNothing(const QString& why);
    /// A fit is under way; what was shown before stays, pale. 0 to 1.
    void showProgress(double share);
    /// A fit was given up: what was shown before is there again, with a button to fit.
    void showCancelled();
    /// Shows a fit of `car`, done or not: then what keeps it from being done.
    void showFit(const std::shared_ptr<const LaunchFit>& fit, const Car& car);

    /// The surface whose friction goes into the car: index into LaunchFit::surfaces.
    [[nodiscard]] std::size_t surface() const;

  signals:
    void edited(const bolthole::Edit& edit);  ///< the fit is taken over
    void seen();                              ///< the card came into sight
    void fitRequested();
    void cancelRequested();
    void launchNumbersRequested();  ///< the person wants to enter what the launch lacks

  protected:
    void showEvent(QShowEvent* event) override;

  private:
    struct Row {
        ToneLabel* label;
        ToneLabel* before;
        ToneLabel* after;
        ShareBar* bar;
        ToneLabel* told;
    };
    enum class Look { nothing, waiting, fitted };

    void buildHead(QGridLayout* grid);
    [[nodiscard]] QWidget* buildWait();
    [[nodiscard]] QWidget* buildTake();
    void addRow();
    void look(Look look);
    void showNumbers();
    void showPredictions(const Car& car);
    void showSurfaces();
    void takeOver();

    std::shared_ptr<const LaunchFit> fit_;  // null: none is shown
    Units units_ = Units::inch;
    std::vector<Row> rows_;
    QWidget* body_;
    QGridLayout* grid_;
    ToneLabel* message_;
    QWidget* wait_;
    QProgressBar* bar_;
    QPushButton* again_;
    QPushButton* enter_;
    ToneLabel* inside_;
    ToneLabel* left_;
    PredictionPlot* plot_;
    QWidget* surfaceRow_;
    CalmCombo* surfaces_;
    QPushButton* take_;
};

}  // namespace bolthole
