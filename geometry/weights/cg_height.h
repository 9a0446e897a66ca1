// CG height: measured by raising one end of the car, or estimated from cars that others measured.
#pragma once

#include <optional>
#include <span>
#include <string>

#include "geometry/car/car.h"
#include "geometry/units/units.h"
#include "geometry/weights/weights.h"

namespace bolthole {

/// A CG height above level ground, and how far it may be off.
struct CgHeight {
    double height = 0;                                 ///< m
    std::optional<double> uncertainty = std::nullopt;  ///< standard uncertainty, m; absent: not known
    CgHeightSource source = CgHeightSource::entered;
    std::string remark;  ///< what makes it doubtful, in one sentence; empty: nothing

    bool operator==(const CgHeight&) const = default;
};
struct CgHeightResult {
    std::optional<CgHeight> value;
    std::string refusal;  ///< why there is none, in one sentence; empty if there is one
};

/// The lift method, as it was carried out: both axles weighed level, then one axle again with one end raised
/// and the car rolling free. Springs must be blocked at ride height, liquids and loads stay as they were.
struct LiftTest {
    CornerWeights level;  ///< kg, as the car was lifted: the same loads, driver or not
    CarEnd raised = CarEnd::front;
    double lift = 0;  ///< m the tires of that end stood above the other end's
    CarEnd read = CarEnd::front;
    double reading = 0;  ///< kg, both tires of that axle with the car raised

    bool operator==(const LiftTest&) const = default;
};

/// What the lift method needs of the car, m: wheelbase with the car level, loaded radii.
struct LiftCar {
    double wheelbase = 0;
    double rearTireRadius = 0;
    double frontTireRadius = 0;
};
[[nodiscard]] LiftCar liftCar(const Car& car);

/// Standard uncertainties of what went into a lift, as tapes and pad scales have them; common practice, no
/// source.
struct LiftUncertainty {
    double scale = kScaleUncertainty;  ///< kg, of one tire's reading
    double lift = 0.002;               ///< m
    double wheelbase = 0.003;          ///< m
    double radius = 0.002;             ///< m, of one radius

    bool operator==(const LiftUncertainty&) const = default;
};

/// What of a lift's standard uncertainty stems from what, m.
struct LiftParts {
    double scales = 0;
    double lift = 0;
    double wheelbase = 0;
    double radii = 0;

    [[nodiscard]] double total() const;
};

/// Angle the car was turned by the lift, rad, nose up +: the rise of the front wheels' centers over the rear
/// ones', s = L sin a + (rf - rr)(cos a - 1). NaN where no angle gives that lift.
[[nodiscard]] double liftAngle(const LiftTest& test, const LiftCar& car);

/// CG height by the lift method, m; NaN where liftAngle() is, or 0.
///
/// Moments about the rear wheels' centers, which the raised car stands still over, both axles' forces upright
/// through their wheels' centers: with W and F the weights of car and front axle level, F' the front raised,
/// b = L F/W and d = rf - rr,
///   h = rr + d F'/W + (b - L F'/W) cot a.
/// The usual form (R. N. Jazar, Vehicle Dynamics, 1st ed., Springer, eqs 2.29-2.32, p. 43) writes d F/W and
/// sin a = lift/L; with tires of one size the two are the same, else they differ by fractions of d.
[[nodiscard]] double liftHeight(const LiftTest& test, const LiftCar& car);

/// First-order uncertainty of liftHeight() (JCGM 100:2008, sec. 5.1.2, from memory): slopes by central
/// differences, inputs independent, an axle's reading being the sum of two tires'.
[[nodiscard]] LiftParts liftParts(const LiftTest& test, const LiftCar& car,
                                  const LiftUncertainty& uncertainty);

/// CG height from a lift, with its uncertainty, which says what a small lift is worth, and a remark where the
/// CG comes out under the wheels' centers. Refuses a lift that is none or more than the wheelbase, a reading
/// above the car's weight, and readings that put the CG under the ground. Lengths in `units`.
[[nodiscard]] CgHeightResult cgHeightByLift(const LiftTest& test, const LiftCar& car,
                                            const LiftUncertainty& uncertainty, Units units);

/// For a car nobody lifted: 0.545 m with a standard uncertainty of 0.05 m.
///
/// NHTSA published measured CG heights of passenger cars (G. J. Heydinger et al., SAE 1999-01-1336, carries
/// the measurements; with its rollover ratings, model years 1971 to 2020, read in the data of a chart,
/// "Trends in vehicle centre of gravity height and static stability factor", 2022). The decade means run from
/// 0.524 to 0.553 m, which says how decades differ, not cars. Of the single cars in it, the 404 sedans,
/// coupes, wagons and convertibles have a mean of 0.545 m and a standard deviation of 0.027 m, 0.450 m the
/// lowest and 0.675 m the highest (computed). Those stood as they were built; a car lowered, lightened or on
/// other tires is none of them, so the standard uncertainty is taken at nearly twice their spread: 400 of the
/// 404 lie within twice it.
[[nodiscard]] CgHeight estimatedCgHeight();

/// The height from the source somebody chose. `entered`: the number typed, m. Refuses a lift that was not
/// entered, or as cgHeightByLift() does.
[[nodiscard]] CgHeightResult cgHeightFrom(CgHeightSource source, double entered,
                                          const std::optional<LiftTest>& test, const LiftCar& car,
                                          const LiftUncertainty& uncertainty, Units units);

/// CG height, m, after loads came and went: the mean of the heights weighed by mass. `total`: mass the height
/// holds for, kg. The car is taken to stay at its ride height.
[[nodiscard]] double cgHeightWithBallast(double height, double total, std::span<const MassAt> changes);

/// The height and where it comes from, in words: "CG height 21.5 in ± 0.8 in by the lift method". What stands
/// after ± is kCoverage95 times the standard uncertainty.
[[nodiscard]] std::string describe(const CgHeight& height, Units units);

}  // namespace bolthole
