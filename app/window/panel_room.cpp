#include "app/window/panel_room.h"

#include <QSplitter>
#include <QTabWidget>
#include <algorithm>

namespace bolthole {

PanelRoom::PanelRoom(QSplitter& split, QTabWidget& tabs)
    : QObject(&tabs), split_(split), tabs_(tabs), last_(tabs.currentIndex()) {
    connect(&tabs_, &QTabWidget::currentChanged, this, &PanelRoom::change);
}

void PanelRoom::giveHint(QWidget* tab) {
    hinted_.insert(tabs_.indexOf(tab), tab);
}

// 0: the panel is hidden.
int PanelRoom::height() const {
    return split_.sizes().last();
}

void PanelRoom::setHeight(int height) {
    const QList<int> sizes = split_.sizes();
    if (sizes.last() > 0 && sizes.last() != height) {
        split_.setSizes({sizes.first() + sizes.last() - height, height});
    }
}

void PanelRoom::change(int index) {
    const int now = height();
    if (now > 0) {
        heights_.insert(last_, now);
    }
    last_ = index;
    int wanted = heights_.value(index, heights_.value(0, now));
    if (!heights_.contains(index) && hinted_.contains(index)) {
        const int frame = split_.widget(1)->height() - tabs_.currentWidget()->height();
        wanted = std::max(wanted, hinted_[index]->sizeHint().height() + frame);
    }
    setHeight(wanted);
}

void PanelRoom::leave() {
    if (last_ != 0 && heights_.contains(0)) {
        setHeight(heights_[0]);
    }
}

}  // namespace bolthole
