// The uncertainty of a hole combination, as the hole board says it: the two columns and the line under the
// table.
#pragma once

#include "widgets/board/combination_columns.h"

namespace bolthole {

/// Of the columns `uncertainty` and `toldApart`: see columnHelp(), columnText() and columnKey().
[[nodiscard]] QString uncertaintyHelp(const CombinationColumn& column);
[[nodiscard]] QString uncertaintyCell(const CombinationColumn& column, const CombinationList& list,
                                      std::size_t at);
[[nodiscard]] double uncertaintyKey(const CombinationColumn& column, const CombinationList& list,
                                    std::size_t at);
/// The longest that stands in `toldApart`.
[[nodiscard]] QString cannotTellCell();

/// Whether the combination's anti-squat can be told from that of the holes in use, with the difference and
/// its ±: "Can't tell these two apart: anti-squat 4 % ± 6." Empty while that is not computed.
[[nodiscard]] QString toldApartInWords(const CombinationList& list, std::size_t at);

}  // namespace bolthole
