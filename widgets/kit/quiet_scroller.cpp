#include "widgets/kit/quiet_scroller.h"

#include <QEvent>

namespace bolthole {

QuietScroller::QuietScroller(QWidget* parent) : QScrollArea(parent) {
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setFocusPolicy(Qt::NoFocus);
    viewport()->setAutoFillBackground(false);
}

// QScrollArea would measure all it holds at once, and did so for every page when the theme changed.
bool QuietScroller::event(QEvent* event) {
    if (event->type() == QEvent::StyleChange && !isVisible()) {
        // NOLINTNEXTLINE(bugprone-parent-virtual-call): the one between is what measures
        return QAbstractScrollArea::event(event);
    }
    return QScrollArea::event(event);
}

}  // namespace bolthole
