// The papers the dialogs offer.
#pragma once

#include <array>

#include "widgets/papers/wall_chart.h"

namespace bolthole {

/// A paper by the name a person knows it by.
struct PaperName {
    PaperSize paper;
    const char* name;
};
inline constexpr std::array<PaperName, 4> kPapers{{{PaperSize::letter, "Letter, 8 1/2 × 11 in"},
                                                   {PaperSize::tabloid, "Tabloid, 11 × 17 in"},
                                                   {PaperSize::a4, "A4, 210 × 297 mm"},
                                                   {PaperSize::a3, "A3, 297 × 420 mm"}}};

}  // namespace bolthole
