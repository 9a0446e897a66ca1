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
    return event->type() == QEvent::StyleChange && !isVisible() ? QAbstractScrollArea::event(event)
                                                                : QScrollArea::event(event);
}

}  // namespace bolthole
