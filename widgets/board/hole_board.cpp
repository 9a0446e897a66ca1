#include "widgets/board/hole_board.h"

#include <QPainter>

#include "widgets/board/combination_map.h"
#include "widgets/board/hole_board_parts.h"
#include "widgets/kit/theme.h"

namespace bolthole {

HoleBoard::HoleBoard(QWidget* parent) : QWidget(parent), parts_(std::make_unique<HoleBoardParts>(*this)) {
    setObjectName(QStringLiteral("holeBoard"));
    setAccessibleName(tr("Hole combinations"));
    connect(&ThemeKeeper::instance(), &ThemeKeeper::changed, this, qOverload<>(&QWidget::update));
}

HoleBoard::~HoleBoard() = default;

void HoleBoard::showBoard(const BenchState& bench, const BoardState& board) {
    parts_->show(bench, board);
}

void HoleBoard::abandonDrag() {
    parts_->map().abandonDrag();
}

std::optional<QPointF> HoleBoard::placeOf(std::uint64_t combination) const {
    return parts_->placeOf(combination);
}

QWidget& HoleBoard::map() {
    return parts_->map();
}

void HoleBoard::paintEvent(QPaintEvent*) {
    QPainter(this).fillRect(rect(), theme().card);
}

void HoleBoard::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    parts_->tellPointed();
}

// What nobody sees selected must not stand as a ghost in the pictures.
void HoleBoard::hideEvent(QHideEvent* event) {
    QWidget::hideEvent(event);
    parts_->tellPointed();
}

void HoleBoard::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    parts_->fitTo(size());
}

}  // namespace bolthole
