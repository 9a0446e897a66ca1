// The car from above with what its tires carry.
#pragma once

#include <QWidget>
#include <optional>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/weights/weights.h"
#include "widgets/scene/scene_style.h"

namespace bolthole {

/// The car in plan, front to the right, left up, to scale: tires with reading and share, the ends' and sides'
/// shares, the diagonal, and the CG. A track that is not entered is drawn as wide as the other, or as cars
/// usually are; the card says so.
class PlanPicture : public QWidget {
    Q_OBJECT
  public:
    explicit PlanPicture(QWidget* parent = nullptr);

    /// Shows the car; `usable`: whether its weights can be computed, else only the outline is drawn.
    void showCar(const Car& car, bool usable);
    [[nodiscard]] QSize sizeHint() const override { return {720, 330}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {420, 300}; }

    /// Where a point of the car (m, forward and left) is drawn. For tests.
    [[nodiscard]] QPointF placeOf(double forward, double left) const {
        return camera().toPicture(forward, left);
    }
    /// Where the last paint wrote its labels. For tests.
    [[nodiscard]] const std::vector<QRectF>& labels() const { return labels_; }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    struct Plan {
        double wheelbase = 0;
        double frontTrack = 0;  // as drawn
        double rearTrack = 0;
        double frontRadius = 0;
        double rearRadius = 0;
        CornerWeights corners;
        std::optional<WeightFigures> figures = std::nullopt;
        Units units = Units::inch;
    };
    [[nodiscard]] static Plan planOf(const Car& car, bool usable);
    [[nodiscard]] QString spokenWords() const;
    [[nodiscard]] QString centerWords(const WeightFigures& figures) const;
    [[nodiscard]] SideCamera camera() const;
    [[nodiscard]] double halfBody() const;  // m, of its width
    void compose();
    void addBody();
    void addAxles();
    void addTire(QPointF center, double radius, const QString& name, double weight);
    void nameGlass();
    void addEnds(const WeightFigures& figures);
    void addCenterOfGravity(const WeightFigures& figures);

    Plan plan_;
    Scene scene_;
    std::vector<QRectF> labels_;
};

}  // namespace bolthole
