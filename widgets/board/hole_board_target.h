// The target window in numbers: what the mouse draws on the map can be typed here.
#pragma once

#include <QWidget>
#include <array>
#include <optional>

#include "widgets/state/bench_state.h"

class QAbstractButton;
class QBoxLayout;

namespace bolthole {

class NoteLabel;
class NumberField;
class ToneLabel;

/// Four fields and a button to take the window away. An empty distance means infinity.
class HoleBoardTarget : public QWidget {
    Q_OBJECT
  public:
    explicit HoleBoardTarget(QWidget* parent = nullptr);

    /// Shows the bench's window; `whole` is what typing begins with while there is none.
    void showTarget(const BenchState& bench, const TargetWindow& whole);

    /// px that it takes in one row; narrower it has two.
    [[nodiscard]] int rowWidth() const;
    /// Narrow enough for two rows, whatever it has now.
    [[nodiscard]] QSize minimumSizeHint() const override;

  signals:
    void edited(const bolthole::Edit& edit, bolthole::EditPhase phase);

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    enum Side { kNear, kFar, kLow, kHigh };
    [[nodiscard]] NumberField* makeField(Side side, const QString& name, const QString& howTo);
    [[nodiscard]] TargetWindow with(Side side, std::optional<double> value) const;
    [[nodiscard]] std::string refuse(Side side, std::optional<double> value) const;
    [[nodiscard]] TargetWindow opened(Side side, double value) const;
    void take(Side side, std::optional<double> value);

    std::array<NumberField*, 4> fields_{};
    ToneLabel* lengthUnit_;
    QAbstractButton* clear_;
    NoteLabel* note_;
    QBoxLayout* rows_;
    std::optional<TargetWindow> target_;
    TargetWindow whole_;
    NumberStyle style_;
};

}  // namespace bolthole
