#include "widgets/kit/group_header.h"

#include <QPainter>
#include <algorithm>

#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr int kInset = 6;
constexpr int kAfterName = 2;

}  // namespace

GroupHeader::GroupHeader(int columnsInGroup, QWidget* parent)
    : QHeaderView(Qt::Horizontal, parent), columns_(columnsInGroup) {
    setSectionResizeMode(QHeaderView::Fixed);
    setHighlightSections(false);
    setSectionsClickable(true);
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, [this] { updateGeometry(); });
}

void GroupHeader::setGroups(const QStringList& names) {
    if (names != groups_) {
        groups_ = names;
        viewport()->update();
    }
}

QSize GroupHeader::sizeHint() const {
    const int title = QFontMetrics(textFont(TextSize::small, true)).height();
    const int label = QFontMetrics(textFont(TextSize::small)).height();
    return {QHeaderView::sizeHint().width(), title + label + 6};
}

int GroupHeader::firstShown(int group) const {
    const int end = std::min((group + 1) * columns_, count());
    for (int column = group * columns_; column < end; ++column) {
        if (!isSectionHidden(column)) {
            return column;
        }
    }
    return -1;
}

int GroupHeader::nameWidth(int group) const {
    return QFontMetrics(textFont(TextSize::small, true)).horizontalAdvance(groups_.value(group)) + kInset +
           kAfterName;
}

// A hidden section has no place, but no width either.
QRect GroupHeader::groupRect(int group, const QRect& section) const {
    const int first = firstShown(group);
    const int end = std::min((group + 1) * columns_, count());
    int width = 0;
    for (int column = first; column < end; ++column) {
        width += sectionSize(column);
    }
    return {sectionViewportPosition(first), section.top(), width, section.height() / 2};
}

void GroupHeader::paintSection(QPainter* painter, const QRect& rect, int section) const {
    painter->save();
    painter->setClipRect(rect);
    painter->fillRect(rect, theme().card);
    const int group = section / columns_;
    const QRect whole = groupRect(group, rect);
    painter->setPen(theme().ink);
    painter->setFont(textFont(TextSize::small, true));
    const QRect seen = whole.intersected(viewport()->rect()).adjusted(kInset, 0, -kAfterName, 0);
    const QString name = group < groups_.size() ? groups_[group] : QString();
    painter->drawText(seen, Qt::AlignLeft | Qt::AlignVCenter,
                      painter->fontMetrics().elidedText(name, Qt::ElideRight, seen.width()));
    painter->setPen(theme().muted);
    painter->setFont(textFont(TextSize::small));
    const QRect lower(rect.left(), rect.top() + rect.height() / 2, rect.width() - kInset, rect.height() / 2);
    painter->drawText(lower, Qt::AlignRight | Qt::AlignVCenter,
                      model()->headerData(section, Qt::Horizontal).toString());
    painter->setPen(theme().border);
    painter->drawLine(rect.bottomLeft(), rect.bottomRight());
    if (section == firstShown(group) && section > 0) {
        painter->drawLine(rect.topLeft(), rect.bottomLeft());
    }
    painter->restore();
}

}  // namespace bolthole
