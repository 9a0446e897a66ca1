#include "widgets/views/across_view.h"

namespace bolthole {

AcrossView::AcrossView(ViewPlane plane, QWidget* parent)
    : BenchPicture(plane, tr("Show the whole car (A)"), parent) {
    const bool rear = plane == ViewPlane::rear;
    setAccessibleName(rear ? tr("Rear view of the rear links") : tr("Top view of the rear links"));
    setObjectName(rear ? QStringLiteral("rearView") : QStringLiteral("topView"));
}

std::vector<EdgeMarker> AcrossView::paintPicture(QPainter& painter, const BenchState& state) {
    AcrossDrawing drawing(painter, state, points(), camera(), rect(), marks(), plane());
    keepFreeOf(drawing);
    drawing.draw(&layers_);
    return drawing.edgeMarkers();
}

}  // namespace bolthole
