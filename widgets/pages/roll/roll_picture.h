// The rear axle from behind, to scale and rolled: ground, tires, links and the roll center.
#pragma once

#include <QWidget>
#include <optional>

#include "widgets/pages/roll/roll_reading.h"
#include "widgets/scene/scene_style.h"

namespace bolthole {

/// The car's left at the left. The body stands still, axle and ground roll: what a lift under the left tire
/// does. Nothing is exaggerated.
class RollPicture : public QWidget {
    Q_OBJECT
  public:
    explicit RollPicture(QWidget* parent = nullptr);

    /// `reading` is read in place until the next call; `at`: the figures at the roll shown.
    void showRoll(const RollReading& reading, const RollFigures& at, Units units);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    /// Where the roll center is drawn, px; nothing where there is none. For tests.
    [[nodiscard]] std::optional<QPointF> placeOfCenter() const;
    /// Where a point of the car (y left, z up, m) is drawn, px.
    [[nodiscard]] QPointF place(double y, double z) const { return camera().toPicture(-y, z); }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    [[nodiscard]] SideCamera camera() const;
    [[nodiscard]] QPointF onAxle(const Eigen::Vector3d& point) const;  // from its center; in the plane
    void compose();
    void addAxle();
    void addCenter();

    const RollReading* reading_ = nullptr;
    RollFigures at_;
    Units units_ = Units::inch;
    Scene scene_;
};

/// The roll axis from the side, to scale, at ride: through the roll center with its slope, and the crossings
/// of the links it runs through.
class RollAxisPicture : public QWidget {
    Q_OBJECT
  public:
    explicit RollAxisPicture(QWidget* parent = nullptr);

    /// `reading` is read in place until the next call.
    void showRoll(const RollReading& reading, Units units);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    [[nodiscard]] SideCamera camera() const;
    [[nodiscard]] QPointF onAxis(double ahead) const;
    void addWheels();
    void addAxis(const SceneView& view);

    const RollReading* reading_ = nullptr;
    Units units_ = Units::inch;
    Scene scene_;
};

/// "rises 1.2° toward the front", "falls …", "level"; `angle` in rad, rising +.
[[nodiscard]] QString axisWords(double angle);

}  // namespace bolthole
