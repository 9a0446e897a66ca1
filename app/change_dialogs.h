// The change sheet from the window: preview, paper, PDF file.
#pragma once

#include <QString>

#include "widgets/change_sheet.h"

class QWidget;

namespace bolthole {

/// Shows the sheet, with a choice of papers and buttons to print and to save it. Returns when the person
/// closes it. For all functions here both cars must have passed findFaults().
void previewChangeSheet(QWidget* parent, const ChangeRequest& request);

/// Asks for a printer and prints the sheet on it, laid out anew for the paper the printer has. False: given
/// up, or failed, which a message box then said.
bool printChangeSheetOnPaper(QWidget* parent, const ChangeRequest& request, ChangePaper paper);

/// Writes the sheet as PDF on the paper usual for its units, whole or not at all; asks where to if `fileName`
/// is empty. False: given up, or failed, which a message box then said.
bool saveChangeSheet(QWidget* parent, const ChangeRequest& request, QString fileName = {});
/// The same on a paper.
bool saveChangeSheet(QWidget* parent, const ChangeRequest& request, ChangePaper paper, QString fileName = {});

}  // namespace bolthole
