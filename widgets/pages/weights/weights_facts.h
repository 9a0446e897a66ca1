// What the weights page's cards say: figures of geometry/weights/weights.h and geometry/weights/cg_height.h
// in words.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "geometry/statics/entered_setup.h"
#include "geometry/weights/entered_figures.h"
#include "widgets/pages/fact_uncertainty.h"

namespace bolthole {

/// The rows of a card and what stands under them.
struct CardWords {
    std::vector<Fact> facts;
    QString note;
};

// All of these take a car that passed findFaults(); figures are in the car's units.

/// Totals, shares and CG of the corner weights.
[[nodiscard]] CardWords weighedCard(const Car& car);
/// The same with what is aboard now. `stance`: with the rear rates the springs make, if they do.
[[nodiscard]] CardWords ballastCard(const Car& car, const Stance& stance);
/// The other reading, and the driver as the difference of both.
[[nodiscard]] CardWords driverCard(const Car& car);
/// The other scale beside the corner weights.
[[nodiscard]] CardWords ticketCard(const Car& car);
/// The CG height in use, where it comes from, how far it may be off. `antiSquat`: at ride, percent; nothing
/// where it is not known.
[[nodiscard]] CardWords heightCard(const Car& car, std::optional<double> antiSquat);
/// How far the pads are from level and what that does to the readings.
[[nodiscard]] CardWords padsCard(const Car& car, const FullStance& stance);

/// All six, in the order above.
[[nodiscard]] std::vector<CardWords> weightCards(const Car& car, const FullStance& stance,
                                                 std::optional<double> antiSquat);
/// Their rows alone.
[[nodiscard]] CardFacts factsOf(const std::vector<CardWords>& cards);
/// The rows of a car whose numbers were varied, its anti-squat solved anew: what tells how sure they are.
[[nodiscard]] CardFacts variedWeightFacts(const Car& varied);

/// Anti-squat, percent, if the CG were `shift` (m) higher than the `height` (m) it was computed with: by its
/// equation in geometry/kinematics/trace.cpp it goes with 1/height, on level ground.
[[nodiscard]] double antiSquatAt(double antiSquat, double height, double shift);

/// "2 of 4 entered".
[[nodiscard]] QString enteredOf(const EnteredCorners& corners);

/// What is missing of tracks and wheel rates to say what a single corner carries: "rear track, front wheel
/// rate"; empty: nothing.
[[nodiscard]] QString missingForRoll(const Car& car, const Stance& stance);

/// Numbers of one unit family as the cards write them, with units.
class CardNumbers {
  public:
    explicit CardNumbers(Units units) : units_(units) {}

    [[nodiscard]] QString mass(double kilograms) const { return text(kilograms, Quantity::mass); }
    /// As precise as it was read off a scale: "866 lb", "1158.1 lb".
    [[nodiscard]] QString entered(double kilograms) const;
    [[nodiscard]] QString length(double metres) const { return text(metres, Quantity::length); }
    [[nodiscard]] QString angle(double radians) const { return text(radians, Quantity::angle); }
    [[nodiscard]] QString percent(double percents) const { return text(percents, Quantity::percent); }
    [[nodiscard]] QString massShift(double kilograms) const;
    /// "0.4 in left" of the middle.
    [[nodiscard]] QString sideways(double left) const;
    /// "23.0 in ± 0.8 in"; the height alone where nothing is known of its uncertainty.
    [[nodiscard]] QString height(const CgHeight& height) const;
    /// "+40.1 / −3.0 lb"
    [[nodiscard]] QString massPair(double left, double right) const;

  private:
    [[nodiscard]] QString text(double value, Quantity quantity) const;
    Units units_;
};

}  // namespace bolthole
