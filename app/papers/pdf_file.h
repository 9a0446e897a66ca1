// The program's papers as PDF.
#pragma once

#include <QByteArray>
#include <QPageLayout>
#include <string>

#include "geometry/units/say.h"
#include "widgets/papers/kit/printed_sheets.h"

namespace bolthole {

/// The sheets as PDF, every font embedded. `page`: the one they were laid out for. Empty: they could not be
/// painted, for want of memory.
[[nodiscard]] QByteArray pdfOf(const PrintedSheets& sheets, const QPageLayout& page,
                               const std::string& title);

/// What is said where nothing could be painted: why, and what to do.
inline constexpr std::string_view kNotPainted = phrase(
    "could not be painted: memory ran out; close other programs, or choose a smaller paper, and try again");

/// Writes that PDF, whole or not at all. Gives what went wrong, in words; empty: written.
[[nodiscard]] std::string writePdf(const PrintedSheets& sheets, const QPageLayout& page,
                                   const std::string& title, const std::string& fileName);

}  // namespace bolthole
