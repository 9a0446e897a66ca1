// Cells of a table that its view's edge cuts.
#pragma once

#include <QStyleOptionViewItem>

namespace bolthole {

/// Where an edge of the view cuts the cell that is painted, though there is room for the whole of it, puts an
/// ellipsis in place of its text, at the side that is seen, and returns true: half a number reads as another.
/// `held`: px at the view's left that something else lies over.
bool takeCutCell(QStyleOptionViewItem& option, int held = 0);

}  // namespace bolthole
