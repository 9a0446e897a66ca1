// Random but plausible cars: the same seed gives the same cars with every compiler.
#pragma once

#include <Eigen/Core>
#include <cstdint>
#include <random>
#include <string>

#include "geometry/car/car.h"

namespace bolthole {

/// Layouts the generator knows. The number of rows counts equations against the four unknowns.
enum class Layout {
    triangulated,          ///< symmetric, uppers splayed: 4 rows
    apart,                 ///< triangulated, left and right set apart by up to 25 mm: 4 rows
    threeLink,             ///< two lowers, a center third link, a track bar: 4 rows
    torqueArm,             ///< two lowers, a slider, a guide: 4 rows
    wattsThreeLink,        ///< two lowers, a center third link, a guide: 4 rows
    parallel,              ///< four links in planes y = const, nothing sideways: 4 rows, y not held
    parallelGuide,         ///< the same with a guide: 5 rows, over-held
    parallelTrackBar,      ///< the same with a track bar: 5 rows, over-held
    triangulatedTrackBar,  ///< triangulated with a track bar as well: 5 rows, over-held
    ladderGuide            ///< two pivots and a guide: 5 rows, over-held in roll
};

/// Whether the layout has as many equations as unknowns.
[[nodiscard]] bool isExactlyHeld(Layout layout);

/// Draws cars. Dimensions are spread about those of a full-size rear-drive car; common practice, no source.
class CarGenerator {
  public:
    explicit CarGenerator(std::uint64_t seed) : random_(seed) {}

    /// A whole car of `layout`, with a driveline, corner weights, and every length set to fit.
    [[nodiscard]] Car draw(Layout layout);

    /// Writes every rod's length, off from its holes by up to `share` of it.
    void misbuild(Car& car, double share);

    /// Evenly spread over [low, high).
    [[nodiscard]] double between(double low, double high);

  private:
    [[nodiscard]] Eigen::Vector3d within(const Eigen::Vector3d& low, const Eigen::Vector3d& high);
    [[nodiscard]] Link lower();
    [[nodiscard]] Link upper(double radius, bool splayed);
    [[nodiscard]] Link thirdLink(double radius);
    [[nodiscard]] Link trackBar(double radius);
    [[nodiscard]] Link guide(double radius);
    [[nodiscard]] Link slider(double radius);
    [[nodiscard]] Link pivot(double radius);
    void addLinks(Car& car, Layout layout);
    void addFourLinks(Car& car, Layout layout);
    void setApart(Car& car);
    [[nodiscard]] Driveline driveline(double radius);

    std::mt19937_64 random_;
};

/// The two holes of a link, m, car frame. Written in braces, so that they are drawn in this order.
struct Ends {
    Eigen::Vector3d chassis;
    Eigen::Vector3d axle;
};

/// A link with one hole at each end.
[[nodiscard]] Link makeLink(std::string name, LinkKind kind, Side side, const Ends& ends);

/// Replaces each mirrored pair by its left and its right link, named "NAME left" and "NAME right".
void splitPairs(Car& car);

/// Gives every bracket of the car's links `count` holes one above the other, `step` (m) apart. The ones in
/// use stay where they are, in the middle, or just below it where the count is even.
void drillHoles(Car& car, int count, double step);

/// Swaps the car's left and right: every y is negated. Mirrored pairs stay as they are.
void mirror(Car& car);

/// Moves every link and the driveline sideways by `offset` (m). The car's pairs must have been split.
void shiftSideways(Car& car, double offset);

}  // namespace bolthole
