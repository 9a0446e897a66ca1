// What the side views on paper have in common.
#pragma once

#include <array>

namespace bolthole {

/// About a live axle's housing, m; for drawing only.
inline constexpr double kHousingRadius = 0.11;

/// The scales a side view may have on paper: 1 to each of these.
inline constexpr std::array kPaperScales{2.0,  2.5,  3.0,  4.0,  5.0,  6.0,  7.0,  8.0,  9.0,  10.0,
                                         12.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 75.0, 100.0};

}  // namespace bolthole
