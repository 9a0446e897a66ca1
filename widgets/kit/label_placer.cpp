#include "widgets/kit/label_placer.h"

#include <QPointF>
#include <algorithm>
#include <array>

namespace bolthole {

bool LabelPlacer::isFree(const QRectF& place) const {
    return picture_.contains(place) &&
           std::ranges::none_of(taken_, [&](const QRectF& other) { return other.intersects(place); });
}

QRectF LabelPlacer::place(QPointF point, QSizeF size, double gap, int preferred, int distances) {
    constexpr std::array<std::array<int, 2>, 8> kDirections{
        {{1, 0}, {1, -1}, {0, -1}, {-1, -1}, {-1, 0}, {-1, 1}, {0, 1}, {1, 1}}};
    // Preferred, then its neighbors on either side, ending opposite.
    constexpr std::array kOrder{0, 1, 7, 2, 6, 3, 5, 4};
    constexpr std::array kGaps{1.0, 2.5, 4.0};
    for (int farther = 0; farther < std::min(distances, static_cast<int>(kGaps.size())); ++farther) {
        const double distance = kGaps[static_cast<std::size_t>(farther)] * gap;
        for (const int turn : kOrder) {
            const auto& direction = kDirections[static_cast<std::size_t>((preferred + turn) % 8)];
            const QPointF center = point + QPointF(direction[0] * (distance + size.width() / 2),
                                                   direction[1] * (distance + size.height() / 2));
            const QRectF place(center - QPointF(size.width() / 2, size.height() / 2), size);
            if (isFree(place)) {
                take(place);
                return place;
            }
        }
    }
    return {};
}

}  // namespace bolthole
