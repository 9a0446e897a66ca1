#include "widgets/fields/wheel_grid.h"

#include <QGridLayout>

#include "widgets/kit/unit_text.h"

namespace bolthole {

WheelGrid::WheelGrid(SheetHub& hub, const QString& title, const WheelFields& wheels, QWidget* parent)
    : QWidget(parent), hub_(hub), title_(title), quantity_(quantityOf(wheels.front())) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 2, 0, 0);
    grid->setHorizontalSpacing(4);
    grid->setVerticalSpacing(3);
    heading_ = new ToneLabel(ToneLabel::Tone::muted, QString(), this);
    heading_->setContentsMargins(4, 0, 0, 0);
    grid->addWidget(heading_, 0, 0);
    addWheels(grid, wheels);
    remark_ = new ToneLabel(ToneLabel::Tone::muted, QString(), this);
    remark_->setAlignment(Qt::AlignRight);
    remark_->setContentsMargins(0, 0, 7, 0);
    grid->addWidget(remark_, 5, 0, 1, 3);
}

void WheelGrid::addWheels(QGridLayout* grid, const WheelFields& wheels) {
    const QString ends[2] = {tr("front"), tr("rear")};
    const QString sides[2] = {tr("left"), tr("right")};
    for (int end = 0; end < 2; ++end) {
        auto* label = new QLabel(ends[end], this);
        label->setContentsMargins(10, 0, 0, 0);
        grid->addWidget(label, 1 + 2 * end, 0);
        auto* note = new NoteLabel(this);
        for (int side = 0; side < 2; ++side) {
            const Field wheel = wheels[2 * static_cast<std::size_t>(end) + static_cast<std::size_t>(side)];
            NumberField* field = hub_.makeField(carField(wheel), this);
            note->watch(field, sides[side] + u' ' + ends[end]);
            grid->addWidget(field, 1 + 2 * end, 1 + side);
        }
        grid->addWidget(note, 2 + 2 * end, 0, 1, 3);
    }
    for (int side = 0; side < 2; ++side) {
        auto* heading = new ToneLabel(ToneLabel::Tone::muted, sides[side], this);
        heading->setAlignment(Qt::AlignRight);
        heading->setContentsMargins(0, 0, 7, 0);
        grid->addWidget(heading, 0, 1 + side);
        grid->setColumnStretch(1 + side, 1);
    }
}

void WheelGrid::refresh(const QString& remark) {
    heading_->showText(QStringLiteral("%1, %2").arg(title_, unitText(quantity_, hub_.state().style.units)));
    remark_->showText(remark);
    remark_->setVisible(!remark.isEmpty());
}

}  // namespace bolthole
