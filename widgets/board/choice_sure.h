// How sure a hole choice is, as the hole board says it: the two columns and the line under the table.
#pragma once

#include "widgets/board/choice_columns.h"

namespace bolthole {

/// Of the columns `sure` and `toldApart`: see columnHelp(), columnText() and columnKey().
[[nodiscard]] QString sureHelp(const ChoiceColumn& column);
[[nodiscard]] QString sureCell(const ChoiceColumn& column, const ChoiceList& list, std::size_t at);
[[nodiscard]] double sureKey(const ChoiceColumn& column, const ChoiceList& list, std::size_t at);
/// The longest that stands in `toldApart`.
[[nodiscard]] QString cannotTellCell();

/// Whether the choice's anti-squat can be told from that of the holes in use, with the difference and its ±:
/// "Can't tell these two apart: anti-squat 4 % ± 6." Empty while that is not computed.
[[nodiscard]] QString toldApartInWords(const ChoiceList& list, std::size_t at);

}  // namespace bolthole
