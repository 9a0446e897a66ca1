#include "widgets/kit/cut_cell.h"

#include <QAbstractItemView>

namespace bolthole {

bool takeCutCell(QStyleOptionViewItem& option, int held) {
    const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
    if (view == nullptr) {
        return false;
    }
    const int right = view->viewport()->width();
    const bool isCutLeft = option.rect.left() < held;
    const bool isCut = isCutLeft || option.rect.right() >= right;
    const bool hasRoom = option.rect.width() <= right - held;
    const bool isSeen = option.rect.right() > held && option.rect.left() < right;
    if (!isCut || !hasRoom || !isSeen || option.text.isEmpty()) {
        return false;
    }
    option.text = QChar(0x2026);
    option.displayAlignment = (isCutLeft ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter;
    return true;
}

}  // namespace bolthole
