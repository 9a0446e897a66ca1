#include "widgets/readouts/doubt_list.h"

#include "widgets/kit/theme.h"

namespace bolthole {

DoubtList::DoubtList(QWidget* parent) : QListWidget(parent) {
    setObjectName(QStringLiteral("doubtList"));
    setAccessibleName(tr("Warnings"));
    setToolTip(tr("Double-click or press Enter to go to the field."));
    setFrameShape(QFrame::NoFrame);
    setWordWrap(true);
    setSpacing(2);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    connect(this, &QListWidget::itemActivated, this, [this](QListWidgetItem* item) {
        const auto place = static_cast<std::size_t>(row(item));
        if (place < fields_.size()) {
            emit fieldWanted(fields_[place]);
        }
    });
}

void DoubtList::showState(const BenchState& state) {
    QStringList lines;
    fields_.clear();
    for (const Fault& fault : state.faults) {
        lines << tr("Can't compute: %1: %2")
                     .arg(QString::fromStdString(fault.path), QString::fromStdString(fault.reason));
        fields_.push_back(fault.id);
    }
    for (const Doubt& doubt : state.doubts) {
        lines << QString::fromStdString(doubt.reason);
        fields_.push_back(doubt.id);
    }
    if (lines.isEmpty()) {
        lines << tr("Nothing looks wrong in what was entered.");
    }
    if (lines != shown_) {
        shown_ = lines;
        clear();
        addItems(lines);
        item(0)->setForeground(fields_.empty() ? theme().muted : theme().ink);
    }
}

}  // namespace bolthole
