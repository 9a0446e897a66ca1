// The uncertainty of the figures of a car, through its travel: first order, quick enough for a drag.
#pragma once

#include <memory>
#include <vector>

#include "geometry/uncertainty/car_model.h"

namespace bolthole {

/// Travels at which the uncertainty of a trace is computed; between them it is interpolated.
inline constexpr int kUncertaintyStations = 9;

/// The uncertainty of a car's figures. SI, percent for anti-squat; NaN: not known, or the figure does not
/// exist.
struct TraceUncertainty {
    bool known = false;               ///< false: the car can't be assembled, and the rest is empty
    std::vector<CarInput> inputs;     ///< what was varied
    std::vector<double> travels;      ///< ride first, then from full droop to full bump, m
    Sensitivity sensitivity;          ///< kModelFigures rows for each travel, a column an input
    std::vector<std::size_t> starts;  ///< places of the inputs that nobody measured; see uncertainStarts()

    /// Standard uncertainty of a figure at ride.
    [[nodiscard]] double atRide(Figure figure) const;
    /// Of 1/distance of the instant center at ride, 1/m.
    [[nodiscard]] double inverseAtRide() const;
    /// At any travel of the range; `figure` as in ModelRow. Between the travels what each input changes, with
    /// its sign, follows a cubic through four of them, so that a figure that is exact at ride (plunge) stays
    /// so. NaN outside the range, where a neighbour is not known, and of an uncertainty at ride and both ends
    /// alone.
    [[nodiscard]] double at(std::size_t figure, double travel) const;
    /// The same of one of the computed travels, by its place in `travels`. NaN where the figure rests on a
    /// number that nobody measured.
    [[nodiscard]] double of(std::size_t place, std::size_t figure) const;
    /// The places of the inputs nobody measured that the figure rests on there.
    [[nodiscard]] std::vector<std::size_t> startsBehindFigure(std::size_t place, std::size_t figure) const;
    /// Whether the second derivatives matter at ride, or are not known though the figure exists: a straight
    /// line is then no good guide (see Sensitivity::nonlinearity()). For the instant center's place what all
    /// inputs together add counts too, by the relative uncertainty of 1/distance.
    [[nodiscard]] bool isNonlinearAtRide(Figure figure) const;

  private:
    [[nodiscard]] double centerNonlinearity() const;
    [[nodiscard]] double interpolated(std::size_t first, std::size_t count, std::size_t figure,
                                      double travel) const;
};

/// Above this share of the variance that the second derivatives add, first order is not trusted. A parabola
/// that adds a share B moves both ends of the 95 % interval to one side by 1.96 sqrt(B/2) of its half-width:
/// here a seventh. A judgement.
inline constexpr double kMostNonlinearity = 0.01;

/// Computes the uncertainty, into storage that is used again. The car must have passed findFaults().
void computeUncertainty(const Car& car, TraceUncertainty& uncertainty);
[[nodiscard]] TraceUncertainty computeUncertainty(const Car& car);
/// The same for the car bolted to `use` under `treatment`, at ride and both ends of travel alone.
[[nodiscard]] TraceUncertainty computeUncertainty(const Car& car, LengthTreatment treatment,
                                                  const HoleUse& use);

/// The standard uncertainty of the difference of a figure at ride between two choices of the same car, or
/// between two cars: numbers that are the same in both (same place, same value, same uncertainty) were
/// measured once, and their errors cancel; others are independent. NaN if either is not known or has no such
/// figure. `figure`, `place`: as TraceUncertainty::of().
[[nodiscard]] double uncertaintyOfDifference(const TraceUncertainty& one, const TraceUncertainty& other,
                                             std::size_t place, std::size_t figure);

/// Whether a difference is too small against its standard uncertainty to be told from none: not above
/// kCoverage95 times it. False where either is NaN.
[[nodiscard]] bool cannotTellApart(double difference, double uncertainty);

}  // namespace bolthole
