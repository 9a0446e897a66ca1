// The drilling template from the window: preview, paper, PDF file.
#pragma once

#include <QString>

#include "widgets/papers/drilling_template.h"

class QWidget;

namespace bolthole {

/// Shows the template sheet by sheet, with a choice of papers and buttons to print and to save it. Returns
/// when the person closes it. For both functions the car must have passed findFaults(); where no paper is
/// large enough they say so in a message box and go no further.
void previewTemplate(QWidget* parent, const TemplateRequest& request);

/// Writes the template as PDF on the paper usual for its units, whole or not at all; asks where to if
/// `fileName` is empty. False: given up, or failed, which a message box then said.
bool saveTemplate(QWidget* parent, const TemplateRequest& request, QString fileName = {});

/// Writes one face of the bracket for a cutting table, as SVG or as DXF by the file's ending, whole or not at
/// all; asks where to if `fileName` is empty. False: given up, or failed, which a message box then said.
bool saveTemplateCut(QWidget* parent, const TemplateRequest& request, QString fileName = {});

}  // namespace bolthole
