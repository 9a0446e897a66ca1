// How one number is measured: the measuring sheet's picture with its point lit up, and the words of its
// field.
#pragma once

#include <QDialog>

#include "widgets/state/bench_state.h"

namespace bolthole {

class PointPicture;
class ToneLabel;

/// A small window beside the bench that blocks nothing; Esc closes it and gives the keys back to the field.
class HowToPanel : public QDialog {
    Q_OBJECT
  public:
    explicit HowToPanel(QWidget* parent = nullptr);

    /// Shows it for a number of the car, below `field` where that leaves it on the screen. A number that is
    /// not on the measuring sheet, or has no place in its pictures, has words alone.
    void showNumber(const BenchState& state, const FieldId& id, const QWidget* field);

  private:
    void standBy(const QWidget& field);

    ToneLabel* name_;
    PointPicture* picture_;
    ToneLabel* words_;
};

}  // namespace bolthole
