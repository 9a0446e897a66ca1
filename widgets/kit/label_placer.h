// Places labels beside points so that they never cover each other.
#pragma once

#include <QRectF>
#include <QSizeF>
#include <vector>

namespace bolthole {

/// Keeps what is taken in one picture. Cheap: a few dozen rectangles at most.
class LabelPlacer {
  public:
    /// Labels stay inside `picture`.
    explicit LabelPlacer(QRectF picture) : picture_(picture) {}

    /// Marks a place as taken.
    void take(const QRectF& place) { taken_.push_back(place); }

    /// A free place of `size` beside `point`, `gap` away: tries the eight directions, preferred first (0
    /// right, then counterclockwise), then farther out. Takes it. Null if everything near is taken: then
    /// leave the label out. `distances`: how many distances are tried; 1 keeps the label at its point.
    [[nodiscard]] QRectF place(QPointF point, QSizeF size, double gap, int preferred = 0, int distances = 3);

    /// Whether nothing was put there and it is inside the picture.
    [[nodiscard]] bool isFree(const QRectF& place) const;

  private:
    QRectF picture_;
    std::vector<QRectF> taken_;
};

}  // namespace bolthole
