// The command that prints the wall chart.
#pragma once

#include <array>
#include <string>

#include "app/commands/request.h"
#include "geometry/car/car.h"
#include "widgets/papers/wall_chart.h"

namespace bolthole {

inline constexpr std::array<std::string_view, 4> kPaperValues{"letter", "tabloid", "a4", "a3"};
inline constexpr Option kPaperOption{"--paper", "letter|tabloid|a4|a3", kPaperValues};

/// The paper asked for, or the usual one for `units`.
[[nodiscard]] PaperSize paperAsked(const Request& request, Units units);

/// What the command came to.
struct ChartOutcome {
    enum class End { done, cannotAssemble, badUse };
    End end = End::badUse;
    std::string pdf;        ///< where done
    std::string complaint;  ///< else: place in the car file or option, and what is wrong
};

/// Makes the chart the request asks for, dated today, in the car's units. Works without a display and leaves
/// standard error alone. Makes a QGuiApplication of its own where there is none.
[[nodiscard]] ChartOutcome makeChart(const Request& request, const Car& car);

}  // namespace bolthole
