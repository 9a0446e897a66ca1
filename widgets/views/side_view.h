// The side view: the car's rear links to scale, to be dragged, nudged and bolted.
#pragma once

#include "widgets/views/bench_picture.h"
#include "widgets/views/side_drawing.h"

namespace bolthole {

/// Shows BenchState from the side, front of the car to the right and the left links drawn in front, with the
/// instant center.
class SideView : public BenchPicture {
    Q_OBJECT
  public:
    explicit SideView(QWidget* parent = nullptr);

    [[nodiscard]] QSize minimumSizeHint() const override { return {320, 240}; }

  protected:
    [[nodiscard]] QRectF boxOfLinks(const BenchState& state) const override { return linksBox(state); }
    [[nodiscard]] QRectF boxOfAll(const BenchState& state) const override { return wholeBox(state); }
    [[nodiscard]] std::vector<EdgeMarker> paintPicture(QPainter& painter, const BenchState& state) override;

  private:
    StillLayers layers_;
};

}  // namespace bolthole
