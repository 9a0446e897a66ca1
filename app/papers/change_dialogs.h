// The change sheet from the window: preview, paper, PDF file.
#pragma once

#include <QString>

#include "widgets/papers/change_sheet.h"

class QWidget;

namespace bolthole {

/// Shows the sheet, with a choice of papers and buttons to print and to save it. Returns when the person
/// closes it. For all functions here both cars must have passed findFaults().
void previewChangeSheet(QWidget* parent, const ChangeRequest& request);

/// Writes the sheet as PDF on the paper usual for its units, whole or not at all; asks where to if `fileName`
/// is empty. False: given up, or failed, which a message box then said.
bool saveChangeSheet(QWidget* parent, const ChangeRequest& request, QString fileName = {});

}  // namespace bolthole
