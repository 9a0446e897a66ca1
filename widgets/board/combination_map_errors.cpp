// The layer of the hole board's map under the dots: the uncertainty of the combinations.
#include <algorithm>
#include <array>
#include <cmath>

#include "geometry/units/uncertainty_text.h"
#include "widgets/board/combination_map_paint.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr double kCap = 2.5;  // px, half of the stroke across a bar's end

// A bar between two places, with a stroke across each end. What leaves the plot is cut off by the painter.
void paintBar(QPainter& painter, QPointF from, QPointF to) {
    const QPointF along = to - from;
    const double length = std::hypot(along.x(), along.y());
    if (length < 1) {
        return;
    }
    const QPointF across = QPointF(-along.y(), along.x()) / length * kCap;
    painter.drawLine(from, to);
    painter.drawLine(from - across, from + across);
    painter.drawLine(to - across, to + across);
}

// The ends of a combination's bars: left, right, below, above.
std::optional<std::array<QPointF, 4>> barEnds(const CombinationMapPicture& picture, std::size_t at) {
    const CombinationUncertainty* uncertainty = picture.list.uncertainty(at);
    if (uncertainty == nullptr || !picture.places[at] || !std::isfinite(uncertainty->inverse)) {
        return std::nullopt;
    }
    const CombinationList::Item& item = picture.list.items()[at];
    const QPointF place = picture.scale.at(item.inverse, item.antiSquat);
    // Far beyond the plot a place means nothing to a painter.
    const QRectF& plot = picture.scale.plot();
    const auto x = [&](double inverse) {
        return std::clamp(picture.scale.x(inverse), plot.left() - 50, plot.right() + 50);
    };
    const auto y = [&](double antiSquat) {
        return std::clamp(picture.scale.y(antiSquat), plot.top() - 50, plot.bottom() + 50);
    };
    const double inverse = kCoverage95 * uncertainty->inverse;
    const double antiSquat = kCoverage95 * uncertainty->antiSquat;
    return std::array{
        QPointF(x(item.inverse + inverse), place.y()), QPointF(x(item.inverse - inverse), place.y()),
        QPointF(place.x(), y(item.antiSquat - antiSquat)), QPointF(place.x(), y(item.antiSquat + antiSquat))};
}

void paintCombination(QPainter& painter, const CombinationMapPicture& picture, std::size_t at) {
    if (const auto ends = barEnds(picture, at)) {
        paintBar(painter, (*ends)[0], (*ends)[1]);
        paintBar(painter, (*ends)[2], (*ends)[3]);
    }
}

}  // namespace

std::vector<QRectF> errorBars(const CombinationMapPicture& picture, std::size_t at) {
    const auto ends = at < picture.places.size() ? barEnds(picture, at) : std::nullopt;
    if (!ends) {
        return {};
    }
    const QRectF across((*ends)[0], (*ends)[1]);
    const QRectF up((*ends)[3], (*ends)[2]);
    return {across.normalized().adjusted(-1, -kCap, 1, kCap), up.normalized().adjusted(-kCap, -1, kCap, 1)};
}

void paintMapErrors(QPainter& painter, const CombinationMapPicture& picture) {
    if (picture.list.shownCount() > kFewCombinations) {
        return;
    }
    painter.save();
    painter.setClipRect(picture.scale.plot());
    painter.setPen(QPen(theme().muted, 1));
    for (std::size_t at = 0; at < picture.places.size(); ++at) {
        paintCombination(painter, picture, at);
    }
    painter.restore();
}

void paintMarkedErrors(QPainter& painter, const CombinationMapPicture& picture) {
    painter.save();
    painter.setClipRect(picture.scale.plot());
    painter.setPen(QPen(theme().ink, 1.3));
    for (const std::optional<std::size_t>& at : {picture.list.present(), picture.selected, picture.pointed}) {
        if (at && *at < picture.places.size()) {
            paintCombination(painter, picture, *at);
        }
    }
    painter.restore();
}

}  // namespace bolthole
