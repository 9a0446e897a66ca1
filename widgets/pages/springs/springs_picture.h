// Axle, mounts and parts at the cursor, to scale: from behind or from the side.
#pragma once

#include <Eigen/Core>
#include <QWidget>
#include <optional>
#include <vector>

#include "geometry/car/part.h"
#include "geometry/kinematics/linkage.h"
#include "geometry/units/units.h"
#include "widgets/scene/scene_style.h"

namespace bolthole {

/// One part on one side of the car as it is drawn.
struct DrawnSpring {
    int item = 0;  ///< index into Car::springs
    PartKind kind = PartKind::spring;
    Eigen::Vector3d chassis = Eigen::Vector3d::Zero();  ///< m, car frame
    Eigen::Vector3d axle = Eigen::Vector3d::Zero();     ///< m, car frame, at the pose drawn
    std::vector<Eigen::Vector3d> freeChassis;           ///< holes not in use
    std::vector<Eigen::Vector3d> freeAxle;
    std::optional<double> stopLength;  ///< m, how far a bump stop reaches
    bool slack = false;
    bool isPast = false;  ///< at or past its closed or open length
    QString label;        ///< empty: its other side carries the words
};

/// What the picture shows.
struct SpringsScene {
    bool usable = false;  ///< false: the links do not reach here, `words` says so
    AxlePose pose;
    double tireRadius = 0;        ///< m
    std::optional<double> track;  ///< m; absent: no tires from behind
    std::vector<DrawnSpring> parts;
    int chosen = -1;  ///< the part that is singled out, index into Car::springs
    Units units = Units::inch;
    QString words;  ///< where the cursor stands
};

enum class SpringsSight { behind, side };

/// The picture. Keeps its scale while the travel moves; a click on a part picks it.
class SpringsPicture : public QWidget {
    Q_OBJECT
  public:
    explicit SpringsPicture(QWidget* parent = nullptr);

    void showScene(SpringsScene scene);
    void setSight(SpringsSight sight);
    [[nodiscard]] SpringsSight sight() const { return sight_; }
    [[nodiscard]] const SpringsScene& scene() const { return scene_; }
    [[nodiscard]] QSize sizeHint() const override { return {560, 320}; }
    /// Where a point of the car is drawn, px.
    [[nodiscard]] QPointF toPicture(const Eigen::Vector3d& car) const;

  signals:
    void picked(int item);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;

  private:
    [[nodiscard]] QPointF flat(const Eigen::Vector3d& car) const;
    void fitCamera();
    void compose();
    void addAxle();
    void addPart(const DrawnSpring& part);
    void addLabel(const DrawnSpring& part);
    void addLegend();
    [[nodiscard]] SceneView view() const { return {camera_, QRectF(rect())}; }

    SpringsScene scene_;
    SpringsSight sight_ = SpringsSight::behind;
    SideCamera camera_;
    Scene drawing_;
};

}  // namespace bolthole
