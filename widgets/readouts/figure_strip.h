// The three figures a person looks for first, large, at the travel the axle is drawn at.
#pragma once

#include <QLabel>
#include <QWidget>
#include <array>

#include "widgets/state/bench_state.h"

namespace bolthole {

class FigureNote;

/// Anti-squat, swing arm, pinion to driveshaft and instant center, with one line below for what is wrong or
/// where the axle stands.
class FigureStrip : public QWidget {
    Q_OBJECT
  public:
    explicit FigureStrip(QWidget* parent = nullptr);

    void showState(const BenchState& state);
    /// The line under the figures as it is shown in the present width. For tests.
    [[nodiscard]] QString noteShown() const;

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    struct Cell {
        QLabel* title = nullptr;
        QLabel* value = nullptr;
        QLabel* plusMinus = nullptr;  // ±
        QLabel* baseline = nullptr;
        QString tip;
    };
    Cell addCell(const QString& title, const char* objectName, const QString& tip);
    void dress();
    void showUncertainty(const BenchState& state);
    [[nodiscard]] std::array<Cell, 4> cells() const {
        return {antiSquat_, instantCenter_, swingArm_, pinion_};
    }

    Cell antiSquat_;
    Cell instantCenter_;
    Cell swingArm_;
    Cell pinion_;
    FigureNote* note_;
};

}  // namespace bolthole
