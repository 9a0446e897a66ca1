// The change sheet as a PDF file.
#pragma once

#include <QByteArray>
#include <string>

#include "widgets/change_sheet.h"

namespace bolthole {

/// A sheet as PDF, every font embedded. `page` and `title` as the sheet was made for. Empty: it could not be
/// painted.
[[nodiscard]] QByteArray changePdf(const ChangeSheet& sheet, const QPageLayout& page,
                                   const std::string& title);

/// Writes a sheet, whole or not at all. Gives what went wrong, in words; empty: written. The request's cars
/// as for ChangeSheet.
[[nodiscard]] std::string writeChangeSheet(const ChangeRequest& request, ChangePaper paper,
                                           const std::string& fileName);

/// The sheet for the command line: dated today, in the after's units on their usual paper, the cars called by
/// their titles or, where those don't tell them apart, by their file names. Works without a display and
/// leaves standard error alone. Empty: it could not be painted.
[[nodiscard]] std::string makeChangeSheet(const Car& before, const Car& after, const std::string& beforeFile,
                                          const std::string& afterFile);

}  // namespace bolthole
