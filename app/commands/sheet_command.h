// The command that prints the sheets to write on and to hand on.
#pragma once

#include <array>
#include <string>

#include "app/commands/request.h"
#include "geometry/car/car.h"

namespace bolthole {

inline constexpr std::array<std::string_view, 3> kSheetValues{"measuring", "test-day", "setup"};
inline constexpr std::array<std::string_view, 2> kSheetPaperValues{"letter", "a4"};
inline constexpr Option kSheetOption{"--of", "measuring|test-day|setup", kSheetValues};
inline constexpr Option kSheetPaperOption{"--paper", "letter|a4", kSheetPaperValues};

/// What the command came to.
struct SheetOutcome {
    std::string bytes;      ///< a PDF, or the setup as text; empty: there is none
    std::string complaint;  ///< why: the option and what is wrong
};

/// Makes the sheet the request names, dated today, in the car's units; of the setup, where no file ending in
/// .pdf is asked for, a few lines of text. Works without a display and leaves standard error alone.
[[nodiscard]] SheetOutcome makeSheet(const Request& request, const Car& car);

}  // namespace bolthole
