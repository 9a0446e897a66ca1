// The driveshaft from the side, to scale: output, shaft, joints and pinion, with the angle each joint works
// at.
#pragma once

#include <QWidget>

#include "widgets/pages/driveline/driveline_reading.h"
#include "widgets/scene/scene_style.h"

namespace bolthole {

/// Front of the car to the right; nothing is exaggerated. The joints' angles are those in space, which a
/// shaft that also runs askew in plan makes larger than they look here.
class DrivelinePicture : public QWidget {
    Q_OBJECT
  public:
    explicit DrivelinePicture(QWidget* parent = nullptr);

    /// Shows the driveline at `station`, which is usable. Both are copied.
    void showDriveline(const DrivelineReading& reading, const Station& station, double rearTireRadius,
                       Units units);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    /// Where a joint's center is drawn, px; for tests.
    [[nodiscard]] QPointF positionOfJoint(std::size_t joint) const;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    void describeInWords();
    void addParts();
    void addWords();
    [[nodiscard]] static QString lieWords(const QString& what, double angle);
    /// Car frame side view (x, z), m: joints from the front.
    [[nodiscard]] std::vector<QPointF> joints(const AxlePose& pose) const;
    [[nodiscard]] QPointF alongPinion(const AxlePose& pose) const;
    [[nodiscard]] QRectF box() const;
    [[nodiscard]] SideCamera camera() const;

    DrivelineReading reading_;
    Station station_;
    DrivelineRow row_;
    double rearTireRadius_ = 0;
    Units units_ = Units::inch;
    Scene scene_;
};

}  // namespace bolthole
