// The picture of the hole board's map, in layers: ground, target window, dots, marks and labels.
#pragma once

#include <QPainter>
#include <QPixmap>
#include <optional>
#include <vector>

#include "widgets/board/combination_map_scale.h"

namespace bolthole {

/// Where the baseline lies on the axes.
struct BaselineMark {
    double inverse = 0;    ///< 1/distance of its instant center, 1/m
    double antiSquat = 0;  ///< percent

    bool operator==(const BaselineMark&) const = default;
};

/// What is painted.
struct CombinationMapPicture {
    const CombinationList& list;
    const CombinationMapScale& scale;
    const std::vector<std::optional<QPointF>>& places;  ///< of the list's items; see placesOf()
    QSize size;
    std::optional<std::size_t> selected;
    std::optional<std::size_t> pointed;
    std::optional<TargetWindow> target;  ///< as dragged
    bool focused = false;
    std::optional<BaselineMark> baseline = {};
};

/// Where the axes lie in a map of `size`, leaving room for their labels.
[[nodiscard]] QRectF combinationPlot(QSize size, const CombinationMapScale& scale);

/// Where each item is drawn; at the plot's edge where it lies beyond. Nothing where it has no place or the
/// filter holds it back.
[[nodiscard]] std::vector<std::optional<QPointF>> placesOf(const CombinationList& list,
                                                           const CombinationMapScale& scale);

/// Which way a combination lies beyond the plot: -1, 0 or 1 to the right and downward.
[[nodiscard]] QPoint beyond(const CombinationList::Item& item, const CombinationMapScale& scale);

/// Radius of a dot where so many are shown in a plot, px: fewer dots in more room are larger.
[[nodiscard]] double dotRadius(std::size_t count, const QRectF& plot);

/// Card, grid, axes, key. Fast.
void paintMapGround(QPainter& painter, const CombinationMapPicture& picture);
/// Where the target window's label stands: in a corner of it, off the dots; null where it has no room.
[[nodiscard]] QRectF windowLabelBox(const CombinationMapPicture& picture);
/// The target window.
void paintMapWindow(QPainter& painter, const CombinationMapPicture& picture);
/// What the tinted ground past infinity means, over dots and bars: they must not strike it through.
void paintMapBehindWords(QPainter& painter, const CombinationMapPicture& picture);
/// The target window's sides alone, over the dots: a crowd of them must not hide it.
void paintMapWindowSides(QPainter& painter, const CombinationMapPicture& picture);
/// All dots, as lines and fills.
void paintMapDots(QPainter& painter, const CombinationMapPicture& picture);
/// The same on a transparent ground; to be kept, as this is what takes time with many combinations.
[[nodiscard]] QPixmap paintMapDots(const CombinationMapPicture& picture, double ratio);
/// Up to so many shown combinations, each has its bars.
inline constexpr std::size_t kFewCombinations = 40;
/// The uncertainty of the combinations, bars of 95 in 100 across and up: of all where few are shown. Under
/// the dots.
void paintMapErrors(QPainter& painter, const CombinationMapPicture& picture);
/// The same of those in use, selected or pointed at, over their marks, which would hide short ones.
void paintMarkedErrors(QPainter& painter, const CombinationMapPicture& picture);
/// Where the bars of a combination lie, px: across, then up; nothing where it has none.
[[nodiscard]] std::vector<QRectF> errorBars(const CombinationMapPicture& picture, std::size_t at);
/// The present combination, what is selected or pointed at, names where they fit, what lies beyond the edges.
/// A name stands at its dot, is tied to it by a line, or comes when it is pointed at; none stands on a bar.
void paintMapMarks(QPainter& painter, const CombinationMapPicture& picture);

}  // namespace bolthole
