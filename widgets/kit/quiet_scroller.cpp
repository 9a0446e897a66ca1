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
        return QAbstractScrollArea::event(
            event);  // NOLINT(bugprone-parent-virtual-call): the one between measures
    }
    return QScrollArea::event(event);
}

}  // namespace bolthole
