// Which measured numbers of a car its figures rest on, and the uncertainty of each.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/car/measuring_tool.h"
#include "geometry/combinations/hole_combination.h"
#include "geometry/uncertainty/propagation.h"

namespace bolthole {

/// The uncertainty of one number.
struct NumberUncertainty {
    double uncertainty = 0;  ///< standard, SI
    MeasuringTool tool = MeasuringTool::tape;
    bool own = false;  ///< entered for this number, not the tool's
    Distribution distribution = Distribution::normal;
};
/// Of the number that `id` names: its own, or that of the tool such numbers are taken with. What was built to
/// a number (a written length) is taken with the tape too. The lift's reading is the sum of two tires'.
[[nodiscard]] NumberUncertainty uncertaintyOf(const Car& car, const FieldId& id);
/// The standard uncertainty of a tool as entered for the car, or the one it has by default, SI. A ticket's
/// scale without one: that of AxleTicket.
[[nodiscard]] double uncertaintyOf(const Car& car, MeasuringTool tool);

/// One measured number, with the estimate that stands in the car.
struct CarInput {
    FieldId id;
    double value = 0;  ///< SI
    NumberUncertainty numberUncertainty;
    /// A starting number without an uncertainty of its own: nobody can say how far it is off, and a figure
    /// that rests on it has no uncertainty.
    bool starting = false;
};

/// The axis along which every measured point shares the error of what it is measured from: 0 for the line
/// below the rear axle, 1 for the center plane, 2 for the floor, of the field of its uncertainty. Nothing for
/// any other field.
[[nodiscard]] std::optional<std::size_t> datumAxis(Field field);
/// Whether the number is a coordinate that is measured from such a datum: of holes, joints and mounts.
[[nodiscard]] bool isFromDatum(const FieldId& id);

/// Every measured number that the figures of the car, bolted to `use`, may rest on: holes in use (a mirrored
/// pair's are one measurement), written lengths, wheelbase, radii, weights, what the CG height in use is made
/// of, driver and ballast where they count, driveline, and the datums whose uncertainty is entered: an input
/// named by that number, whose estimate is 0, that all points from the datum share. In the order a person
/// walks around the car.
[[nodiscard]] std::vector<CarInput> uncertainInputs(const Car& car, const HoleUse& use);
/// The same for the holes in use.
[[nodiscard]] std::vector<CarInput> uncertainInputs(const Car& car);
/// Whether the number is a starting number without an uncertainty of its own; of the CG height only while it
/// is the entered one that counts, as a lift is measured and an estimate has an uncertainty of its own.
[[nodiscard]] bool isUncertainStart(const Car& car, const FieldId& id);
/// The inputs' places that are such numbers.
[[nodiscard]] std::vector<std::size_t> uncertainStarts(std::span<const CarInput> inputs);
/// Which of those an output moves with: the places whose change or second difference is more than a rounding
/// of the whole row's.
[[nodiscard]] std::vector<std::size_t> startsBehind(const Sensitivity& sensitivity, Eigen::Index output,
                                                    std::span<const std::size_t> starts);

/// The numbers that the figures of the car rest on and nobody measured: of uncertainInputs() the starting
/// numbers, own uncertainty or not, and the CG height while it is an estimate.
[[nodiscard]] std::vector<FieldId> startsUsed(const Car& car);
/// The same of the car bolted to `use`.
[[nodiscard]] std::vector<FieldId> startsUsed(const Car& car, const HoleUse& use);
/// Those of uncertainInputs() that were worked out, and nobody measured yet.
[[nodiscard]] std::vector<FieldId> workedOutUsed(const Car& car);
/// Such numbers in a few words, a hole or the four corners once: "CG height, lower chassis hole", "wheelbase,
/// corner weights, CG height and 5 more numbers". Empty: none.
[[nodiscard]] std::string startWords(const Car& car, std::span<const FieldId> starts);

/// As propagation takes them.
[[nodiscard]] std::vector<UncertainInput> asInputs(std::span<const CarInput> inputs);

/// Name of a number in a person's words: "lower axle hole 'top', height".
[[nodiscard]] std::string numberWords(const Car& car, const FieldId& id);

}  // namespace bolthole
