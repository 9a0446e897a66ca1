// The measuring sheet's picture on the screen, with the point that is asked for lit up; or the picture of how
// a number is measured.
#pragma once

#include <QWidget>

#include "widgets/papers/howto/how_to_picture.h"
#include "widgets/papers/sheets/measuring_picture.h"

namespace bolthole {

/// Paints what stands on the paper, by the paper's own painter: black on white in both themes.
class PointPicture : public QWidget {
    Q_OBJECT
  public:
    explicit PointPicture(QWidget* parent = nullptr);

    /// Shows an area of a car that has passed findFaults(), the point called `sign` lit; empty: none.
    void showPoint(const Car& car, const PlanArea& area, const QString& sign);
    /// Shows how a number is measured in general, its letter lit.
    void showHowTo(const HowToPicture& picture);
    /// Where the lit point and its number stand, px; empty where nothing is lit. For tests.
    [[nodiscard]] std::vector<QPointF> litAt() const;

    [[nodiscard]] QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    [[nodiscard]] double scale() const;
    MeasuringMarks paintOn(QPainter& painter) const;

    PrintFonts fonts_;
    Car car_;
    PlanArea area_;
    QString sign_;
    std::optional<HowToPicture> howTo_;  ///< else the area's
};

}  // namespace bolthole
