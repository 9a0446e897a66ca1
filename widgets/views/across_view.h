// The rear and the top view: where the side view's third coordinate is seen and set.
#pragma once

#include "widgets/views/across_drawing.h"
#include "widgets/views/bench_picture.h"

namespace bolthole {

/// Shows BenchState from behind (the car's left on the left, up is up) or from above (front of the car to the
/// right, its left up), with the holes of both sides.
class AcrossView : public BenchPicture {
    Q_OBJECT
  public:
    /// `plane`: rear or top.
    explicit AcrossView(ViewPlane plane, QWidget* parent = nullptr);

  protected:
    [[nodiscard]] QRectF boxOfLinks(const BenchState& state) const override {
        return acrossLinksBox(state, plane());
    }
    [[nodiscard]] QRectF boxOfAll(const BenchState& state) const override {
        return acrossWholeBox(state, plane());
    }
    [[nodiscard]] std::vector<EdgeMarker> paintPicture(QPainter& painter, const BenchState& state) override;

  private:
    StillLayers layers_;
};

}  // namespace bolthole
