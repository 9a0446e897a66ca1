// A pass's recording over the launch that is computed for its setup.
#pragma once

#include <optional>
#include <vector>

#include "geometry/dynamics/launch_run.h"
#include "geometry/fit/recording_misfit.h"
#include "geometry/units/units.h"
#include "widgets/curves/chart_data.h"
#include "widgets/kit/card.h"

class QAbstractButton;
class QLabel;

namespace bolthole {

class CurveChart;

/// A recording as it is shown.
struct ShownRecording {
    QString
        problem{};  ///< why there is nothing to show: the file is gone, or was changed; empty: it is shown
    Recording recording{};
    double start = 0;                                    ///< the release, s of the recording's clock
    std::vector<LaunchRow> computed{};                   ///< of the pass's setup; empty: not computed
    std::vector<LaunchRow> fitted{};                     ///< by the fitted model; empty: no fit
    std::vector<RecordedMisfit> misfits{};               ///< against the fitted one, sample by sample
    std::optional<double> byRecording = std::nullopt;    ///< 60 ft, s
    std::optional<double> byClock = std::nullopt;        ///< s
    std::optional<double> byComputation = std::nullopt;  ///< s
};

/// One card a recorded quantity over seconds from the release: recorded solid, computed dashed, fitted thin;
/// and, where there is a fit, one of what the recording has more than it.
[[nodiscard]] std::vector<ChartCard> recordingCards(const ShownRecording& shown, Units units);
/// "60 ft: recorded 2.21 s, by the clock 2.213 s, computed 2.25 s", and by how much the recording differs
/// from the fitted launch.
[[nodiscard]] QString recordingWords(const ShownRecording& shown, Units units);

/// Knows only what it is shown; whoever reads files listens to its signals.
class RecordingCard : public Card {
    Q_OBJECT
  public:
    explicit RecordingCard(QWidget* parent = nullptr);

    /// Of a pass without a recording: offers to add one.
    void offer();
    void showRecording(const ShownRecording& shown, Units units);

  signals:
    void addRequested();
    void removeRequested();
    /// The release is `by` seconds later than where it stood.
    void startMoved(double by);

  private:
    void showParts(bool hasRecording, bool hasCurves);

    QLabel* words_;
    CurveChart* chart_;
    QAbstractButton* add_;
    QAbstractButton* start_;
    QAbstractButton* remove_;
};

}  // namespace bolthole
