// A bracket's outline and holes at true size for a cutting table or a laser: SVG, and DXF as release 12 has
// it.
#pragma once

#include <QByteArray>

#include "widgets/papers/template_scene.h"

namespace bolthole {

/// Layers of the DXF file and groups of the SVG.
namespace cut_layer {
inline constexpr const char* kOutline = "OUTLINE";
inline constexpr const char* kHoles = "HOLES";      ///< that are drilled
inline constexpr const char* kPlanned = "PLANNED";  ///< that are to be drilled
inline constexpr const char* kCenters = "CENTERS";
inline constexpr const char* kCheck =
    "CHECK";  ///< a line of known length, to be measured before anything is cut
inline constexpr const char* kNotes =
    "NOTES";  ///< of the SVG alone: what nobody measured, as text without lines
}  // namespace cut_layer

/// Length of the line on the layer CHECK: 100 mm or 4 in.
[[nodiscard]] double cutCheckLength(Units units);

/// The face as SVG 1.1, sized in mm; `title`: the car's. What has no diameter is a cross alone. What nobody
/// measured stands in its description, and to be read in the group NOTES, which has fill and no stroke.
[[nodiscard]] QByteArray templateSvg(const TemplateScene& scene, const QString& title);

/// The face as ASCII DXF, AC1009, y up, in mm or inches: that format has no units, a comment at the top names
/// them and says what nobody measured, with '?' for what is not ASCII. Closed POLYLINE, CIRCLE, POINT and
/// LINE, no text, so that nothing is cut that should not be.
[[nodiscard]] QByteArray templateDxf(const TemplateScene& scene, Units units);

}  // namespace bolthole
