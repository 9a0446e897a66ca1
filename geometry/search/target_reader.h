// A car on which a hole or a rod's length is tried out, again and again.
#pragma once

#include <vector>

#include "geometry/edits/planned_hole.h"
#include "geometry/search/position_finder.h"

namespace bolthole {

/// Bolts a car one way and reads the target at ride and at both ends of travel.
class TargetReader {
  public:
    /// `car`: with a driveline, if need be of no consequence; see withPinion(). `pinionNow`: the pinion's
    /// inclination at ride as the car stands, NaN if not known.
    TargetReader(const Car& car, LengthTreatment treatment, const HoleUse& use, double pinionNow,
                 bool hasDriveline);

    void setNumber(const FieldId& id, double value) { bolted_.setNumber(id, value); }
    /// False: can't be assembled at ride. What only the ends of travel tell is NaN where they are not
    /// reached.
    bool figures(TargetFigures& figures);

  private:
    BoltedCar bolted_;
    HoleUse use_;
    double pinionNow_;
    bool hasDriveline_;
};

/// A new hole on the plate of a bracket that has one.
class HolePlacement final : public Placement {
  public:
    /// `edit`: names the bracket; its hole's place is where the hole is first put. The car must have passed
    /// findFaults().
    HolePlacement(const Car& car, const PlanHole& edit, double pinionNow);

    bool figures(const Eigen::Vector2d& at, TargetFigures& figures) override;
    void walls(const Eigen::Vector2d& at, std::vector<HalfPlane>& walls) const override;
    [[nodiscard]] bool isAllowed(const Eigen::Vector2d& at) const override;

    /// The least distance to the edge: the plate's own, or what keeps the hole from cutting the edge, m.
    [[nodiscard]] double edge() const { return edge_; }
    /// The least distance between centers, m.
    [[nodiscard]] double spacing() const { return spacing_; }

  private:
    const Bracket& bracket_;  // of the caller's car
    double edge_;
    double spacing_;
    std::vector<FieldId> across_;  // of the new hole, and of its like on the other side
    std::vector<FieldId> up_;
    TargetReader reader_;
};

/// How long a rod's adjuster can be set, m.
struct LengthRange {
    double shortest = 0;
    double longest = 0;
    bool isEntered = false;  ///< false: nothing of it was entered, and it is kFreeAdjustment either way
};
/// Where neither lengths nor thread are entered for an adjuster. A judgement, common practice, no source. m.
inline constexpr double kFreeAdjustment = 0.025;
/// From the lengths entered and the thread that must stay held.
[[nodiscard]] LengthRange adjusterRange(const Link& rod);

/// A rod set to another length: the first coordinate, the second is of no consequence.
class LengthPlacement final : public Placement {
  public:
    LengthPlacement(const Car& car, int link, const LengthRange& range, double pinionNow);

    bool figures(const Eigen::Vector2d& at, TargetFigures& figures) override;
    void walls(const Eigen::Vector2d& at, std::vector<HalfPlane>& walls) const override;
    [[nodiscard]] bool isAllowed(const Eigen::Vector2d& at) const override;

  private:
    FieldId id_;
    LengthRange range_;
    TargetReader reader_;
};

}  // namespace bolthole
