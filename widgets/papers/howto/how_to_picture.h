// How one number of a car is measured, as a picture of the tool at its place. One painter for paper and
// screen.
#pragma once

#include <optional>

#include "geometry/car/car.h"
#include "geometry/car/field_id.h"
#include "geometry/car/pass_fields.h"
#include "widgets/papers/howto/how_to_sketch.h"

namespace bolthole {

/// A picture and the letter in it that the number is.
struct HowToPicture {
    void (*draw)(HowToSketch& sketch) = nullptr;
    QString letter;
};

/// The picture of a number of `car`, or of an uncertainty of one. Nothing: it can't be pictured, and
/// whyNoHowTo() says why, or the measuring sheet's picture of the car itself always has it.
[[nodiscard]] std::optional<HowToPicture> howToPicture(const Car& car, const FieldId& id);

/// The same of a number of a test day's pass.
[[nodiscard]] HowToPicture howToPicture(PassField field);

/// The numbers of a bracket's plate.
enum class PlateNumber { holeDiameter, edgeDistance, holeSpacing, cornerForward, cornerUp };
/// The same of one of those.
[[nodiscard]] HowToPicture howToPicture(PlateNumber number);

/// Why a number has no picture: "a target: chosen, not measured". Empty: it has one.
[[nodiscard]] QString whyNoHowTo(Field field);

/// Draws it into `box`, mm, black on white, in a frame, the number's letter lit up.
HowToMarks drawHowTo(QPainter& painter, const QRectF& box, const PrintFonts& fonts,
                     const HowToPicture& picture);

}  // namespace bolthole
