// Springs and shocks for the tests: upright or leaning, one line of numbers each.
#pragma once

#include <string>
#include <utility>

#include "geometry/statics/suspension_part.h"
#include "tests/support/car_generator.h"

namespace bolthole {

/// A part with one hole at each end.
inline SuspensionPart makePart(std::string name, PartKind kind, Side side, const Ends& ends) {
    SuspensionPart part;
    part.name = std::move(name);
    part.kind = kind;
    part.side = side;
    part.chassis.holes = {Hole{-1, "top", ends.chassis}};
    part.axle.holes = {Hole{-1, "bottom", ends.axle}};
    return part;
}

/// A pair of coil springs that carries about a car's rear: anywhere over the axle, leaning any way.
inline SuspensionPart drawSprings(CarGenerator& generator, double axleHeight) {
    const double x = generator.between(-0.1, 0.05);
    const double y = generator.between(0.4, 0.55);
    SuspensionPart springs = makePart("coil", PartKind::spring, Side::both,
                                      {{x + generator.between(-0.1, 0.1), y - generator.between(-0.02, 0.15),
                                        axleHeight + generator.between(0.25, 0.4)},
                                       {x, y, axleHeight + generator.between(-0.05, 0.06)}});
    springs.rate = generator.between(15e3, 50e3);
    springs.freeLength =
        (springs.axle.inUse().at - springs.chassis.inUse().at).norm() + generator.between(0.11, 0.2);
    return springs;
}

}  // namespace bolthole
