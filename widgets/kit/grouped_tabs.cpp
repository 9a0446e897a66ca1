#include "widgets/kit/grouped_tabs.h"

#include <QPainter>

#include "widgets/kit/theme.h"

namespace bolthole {

void GroupedTabs::paintEvent(QPaintEvent* event) {
    QTabBar::paintEvent(event);
    QPainter painter(this);
    for (const int first : firsts_) {
        const QRect tab = tabRect(first);
        painter.fillRect(tab.left() - 2, tab.top() + tab.height() / 4, 1, tab.height() / 2, theme().border);
    }
}

}  // namespace bolthole
