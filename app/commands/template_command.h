// The command that prints a drilling template.
#pragma once

#include <array>
#include <string>

#include "app/commands/request.h"
#include "geometry/car/car.h"

namespace bolthole {

inline constexpr std::array<std::string_view, 2> kEndValues{"chassis", "axle"};
inline constexpr Option kLinkNameOption{"--link", "NAME|#N", {}};
inline constexpr Option kEndOption{"--end", "chassis|axle", kEndValues};
inline constexpr std::array<std::string_view, 2> kFaceValues{"left", "right"};
inline constexpr Option kFaceOption{"--face", "left|right", kFaceValues};

/// What the command came to.
struct TemplateOutcome {
    std::string bytes;      ///< PDF, SVG or DXF; empty: there is none
    std::string complaint;  ///< why: option or place in the car file, and what is wrong
};

/// Makes the template of the bracket the request names, in the car's units: the link by its name or by #N,
/// counted from 1 in the file's order, where a name stands for several. As SVG or DXF, for a cutting table,
/// where the file after -o ends so: one face, the left one unless another is asked for. Works without a
/// display and leaves standard error alone. Makes a QGuiApplication of its own where there is none.
[[nodiscard]] TemplateOutcome makeTemplate(const Request& request, const Car& car);

}  // namespace bolthole
