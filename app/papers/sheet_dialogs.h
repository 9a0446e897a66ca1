// The sheets to write on and to hand on, from the window: preview, paper, PDF file.
#pragma once

#include "widgets/papers/sheets/sheets.h"

class QWidget;

namespace bolthole {

/// Shows the sheet, with a choice of papers and buttons to print and to save it. Returns when the person
/// closes it. The car must have passed findFaults().
void previewSheet(QWidget* parent, SheetKind kind, const Car& car, NumberStyle style);

}  // namespace bolthole
