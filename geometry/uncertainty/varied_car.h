// A car whose measured numbers are varied, bolted to one combination of holes.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "geometry/combinations/hole_combination.h"
#include "geometry/uncertainty/uncertain_inputs.h"

namespace bolthole {

/// The car with the CG height that is in use as its own number where that is an estimate, so that it can be
/// varied like a measured one; what VariedCar computes with.
[[nodiscard]] Car withOwnHeight(const Car& car);

/// The estimates of the inputs are the numbers in the car; an input that is changed changes all that was set
/// to fit it: unwritten lengths, and those a treatment sets. The one measured point of an arm moves both its
/// ends.
class VariedCar {
  public:
    /// The car must have passed findFaults() and, for `uppers`, have an upper rod.
    VariedCar(const Car& car, LengthTreatment treatment, const HoleUse& use,
              std::span<const CarInput> inputs);

    /// From here on the car stays mirror-symmetric, which at the estimates it must be. Of a car that nothing
    /// but its symmetry holds sideways there is no other with figures. What is measured on one side counts
    /// half for each side, and what is measured sideways in the center plane not at all: to first order both
    /// give the same in side view.
    void keepSymmetric();

    /// Sets all inputs. False: the lengths of the treatment can't be had; see BoltedCar::bolt().
    bool set(std::span<const double> x);
    /// What the last set(), or the constructor with the estimates, came to.
    [[nodiscard]] bool isBolted() const { return isBolted_; }

    [[nodiscard]] const Car& car() const { return bolted_.car(); }
    [[nodiscard]] const Linkage& linkage() const { return bolted_.linkage(); }

  private:
    /// Where an input stands.
    struct VariedInput {
        FieldId id;
        std::optional<FieldId> follower{};        ///< an arm's own point, moved along
        double offset = 0;                        ///< of the follower
        std::optional<std::size_t> datum{};       ///< it is the datum's own error, along that axis
        std::optional<std::size_t> datumInput{};  ///< which input is the error of its datum
        // Where symmetry has to be kept: the same number of the other side, and the sign it has there.
        bool isFixed = false;
        std::optional<std::size_t> mirror{};
        double sign = 1;
    };
    [[nodiscard]] VariedInput variedInputOf(const Car& car, const FieldId& id) const;
    [[nodiscard]] std::optional<std::size_t> datumOf(const FieldId& id) const;
    [[nodiscard]] const Link* linkOf(std::size_t input) const;
    [[nodiscard]] bool isAcross(std::size_t input, std::size_t other, double sign) const;
    [[nodiscard]] double valueOf(std::size_t input, std::span<const double> x) const;

    BoltedCar bolted_;
    HoleUse use_;
    std::vector<CarInput> inputs_;
    std::vector<VariedInput> variedInputs_;
    std::vector<double> last_;  // inputs as the bolted car has them
    bool isBolted_ = false;
};

}  // namespace bolthole
