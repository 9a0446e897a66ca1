// How one number is measured: the measuring sheet's picture with its point lit up, or a picture of the tool
// at its place, and the words of its field.
#pragma once

#include <QDialog>

#include "widgets/papers/howto/how_to_picture.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

class PointPicture;
class ToneLabel;

/// A small window beside the bench that blocks nothing; Esc closes it and gives the keys back to the field.
class HowToPanel : public QDialog {
    Q_OBJECT
  public:
    explicit HowToPanel(QWidget* parent = nullptr);

    /// Shows it for a number of the car, below `field` where that leaves it on the screen. A number that
    /// can't be pictured has words alone, which say so.
    void showNumber(const BenchState& state, const FieldId& id, const QWidget* field);

    /// The same for a number that is none of the car's: what it is called, how it is measured, and its
    /// picture.
    void showPicture(const QString& name, const QString& howTo, const HowToPicture& picture,
                     const QWidget* field);

  private:
    void open(bool isDrawn, const QWidget* field);
    bool showOnSheet(const Car& car, const FieldId& id, const QString& howTo);
    bool showHowTo(const Car& car, const FieldId& id);
    void standBy(const QWidget& field);

    ToneLabel* name_;
    PointPicture* picture_;
    ToneLabel* words_;
};

}  // namespace bolthole
