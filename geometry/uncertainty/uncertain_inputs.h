// Which measured numbers of a car its figures rest on, and how sure each is.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/car/measuring_tool.h"
#include "geometry/choices/hole_choice.h"
#include "geometry/uncertainty/propagation.h"

namespace bolthole {

/// How sure one number is.
struct Sureness {
    double uncertainty = 0;  ///< standard, SI
    MeasuringTool tool = MeasuringTool::tape;
    bool own = false;  ///< entered for this number, not the tool's
    Spread spread = Spread::normal;
};
/// Of the number that `id` names: its own, or that of the tool such numbers are taken with. What was built to
/// a number (a written length) is taken with the tape too. The lift's reading is the sum of two tires'.
[[nodiscard]] Sureness surenessOf(const Car& car, const FieldId& id);
/// The standard uncertainty of a tool as entered for the car, or the one it has by default, SI. A ticket's
/// scale without one: that of AxleTicket.
[[nodiscard]] double uncertaintyOf(const Car& car, MeasuringTool tool);

/// One measured number, with the estimate that stands in the car.
struct CarInput {
    FieldId id;
    double value = 0;  ///< SI
    Sureness sureness;
};

/// Every measured number that the figures of the car, bolted to `use`, may rest on: holes in use (a mirrored
/// pair's are one measurement), written lengths, wheelbase, radii, weights, what the CG height in use is made
/// of, driver and loads where they count, driveline. In the order a person walks around the car.
[[nodiscard]] std::vector<CarInput> uncertainInputs(const Car& car, const HoleUse& use);
/// The same for the holes in use.
[[nodiscard]] std::vector<CarInput> uncertainInputs(const Car& car);
/// As propagation takes them.
[[nodiscard]] std::vector<UncertainInput> asInputs(std::span<const CarInput> inputs);

/// Name of a number in a person's words: "lower axle hole 'top', up".
[[nodiscard]] std::string numberWords(const Car& car, const FieldId& id);

}  // namespace bolthole
