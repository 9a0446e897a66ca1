#include "widgets/views/side_view.h"

namespace bolthole {

SideView::SideView(QWidget* parent)
    : BenchPicture(ViewPlane::side, tr("Show the whole car, its CG and the instant center (A)"), parent) {
    setAccessibleName(tr("Side view of the rear links"));
    setObjectName(QStringLiteral("sideView"));
}

std::vector<EdgeMarker> SideView::paintPicture(QPainter& painter, const BenchState& state) {
    SideDrawing drawing(painter, state, points(), camera(), rect(), marks());
    keepFreeOf(drawing);
    drawing.draw(&layers_);
    return drawing.edgeMarkers();
}

}  // namespace bolthole
