// The target window under the mouse: which part of it is gripped, and what a drag makes of it.
#pragma once

#include <QPointF>
#include <optional>

#include "widgets/board/combination_map_scale.h"

namespace bolthole {

/// What of the window lies under the pointer.
struct WindowGrip {
    bool inside = false;  ///< the whole window moves
    int across = 0;       ///< -1 the near (left) side, +1 the far one
    int up = 0;           ///< -1 the lower side, +1 the upper one

    [[nodiscard]] bool isEdge() const { return across != 0 || up != 0; }
    bool operator==(const WindowGrip&) const = default;
};

/// The part of `target` at `place`; sides are gripped within a few px. Sides outside the plot can't be.
[[nodiscard]] WindowGrip gripAt(const CombinationMapScale& scale, const std::optional<TargetWindow>& target,
                                QPointF place);

/// The distance at `x`, m, rounded to whole inches or to 10 mm, or coarser where a px is wider than that.
/// Nothing: infinity, which a few px about its place count as.
[[nodiscard]] std::optional<double> snappedDistance(const CombinationMapScale& scale, double x, Units units);
/// The anti-squat at `y`, rounded to whole percent, or coarser where a px is wider than that.
[[nodiscard]] double snappedAntiSquat(const CombinationMapScale& scale, double y);

/// The window with those px as corners, any two opposite ones; never empty.
[[nodiscard]] TargetWindow windowFrom(const CombinationMapScale& scale, const QRectF& box, Units units);

/// A drag of the window, from where it began.
class WindowDrag {
  public:
    /// `grip`: nothing gripped draws a new window from `from` on.
    WindowDrag(const CombinationMapScale& scale, Units units, const std::optional<TargetWindow>& target,
               WindowGrip grip, QPointF from);

    /// The window with the pointer at `place`.
    [[nodiscard]] TargetWindow to(QPointF place) const;

  private:
    [[nodiscard]] TargetWindow moved(QPointF by) const;
    [[nodiscard]] TargetWindow resized(QPointF by) const;

    CombinationMapScale scale_;  // as it was: the drag must not chase an axis that follows it
    Units units_;
    std::optional<TargetWindow> target_;
    WindowGrip grip_;
    QPointF from_;
};

}  // namespace bolthole
