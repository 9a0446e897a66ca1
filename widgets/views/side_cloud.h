// The uncertainty of the instant center, drawn in the side view: the drawn cloud and the first-order outline.
#pragma once

#include <QPainter>

#include "widgets/state/bench_state.h"
#include "widgets/state/side_camera.h"

namespace bolthole {

/// Whether the cloud stands at the instant center that is drawn: it is of ride.
[[nodiscard]] bool showsCloud(const BenchState& state);
/// Whether first order's outline is drawn: while there is no cloud, and where it agrees with the cloud.
[[nodiscard]] bool showsOutline(const BenchState& state);

/// Draws both as they are to be seen, in the painter's logical pixels; nothing outside `picture`.
void drawCenterUncertainty(QPainter& painter, const BenchState& state, const SideCamera& camera,
                           const QRectF& picture);

}  // namespace bolthole
