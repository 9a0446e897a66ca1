// Before and after: what two cars share, what was turned from one to the other, and what that does.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/car/field_id.h"
#include "geometry/kinematics/trace.h"

namespace bolthole {

/// Where in the travel figures are compared: each car at its own ride and its own full bump and full droop.
enum class TravelPosition { ride, bump, droop };
inline constexpr std::array kTravelPositions{TravelPosition::ride, TravelPosition::bump,
                                             TravelPosition::droop};
/// "ride", "bump" or "droop".
[[nodiscard]] std::string_view nameOf(TravelPosition place);

/// The station of a trace at a place; null where the car can't be assembled.
[[nodiscard]] const Station* stationAt(const Trace& trace, TravelPosition place);

/// Two links of the same name, side and kind, by index.
struct SharedLink {
    int before = 0;
    int after = 0;
};

/// Name of the hole a bracket is bolted to; its number, counted from 1, where it has none.
[[nodiscard]] std::string nameOfHoleInUse(const Bracket& bracket);

/// A bolt that stands elsewhere now: in another hole, or in one that was moved or measured anew. A hole that
/// was only given another name is none.
struct BoltMove {
    SharedLink link;
    End end = End::chassis;
    std::string from;    ///< name of the hole
    std::string to;      ///< the same name: the hole itself was moved or measured anew
    Eigen::Vector3d by;  ///< m, car frame: from one hole's place to the other's
    int bolts = 1;       ///< both sides counted
};

/// A rod of another length.
struct LengthMove {
    SharedLink link;
    double before = 0;            ///< as built, m
    double after = 0;             ///< m
    std::optional<double> turns;  ///< of its adjuster, + longer; nothing without one
    int rods = 1;                 ///< both sides counted
};

/// A number of the car (radius, weight, height, driveline) that differs; of those entered beside the links
/// only what both cars have.
struct NumberMove {
    FieldId id;
    std::optional<double> before;
    std::optional<double> after;
};

/// A link that only one of the cars has.
struct UnsharedLink {
    std::string name;
    bool inBefore = false;
};

/// Two cars, solved and matched.
struct Comparison {
    Car beforeCar;
    Car afterCar;
    Trace before;
    Trace after;
    std::vector<SharedLink> shared;
    std::vector<BoltMove> bolts;
    std::vector<LengthMove> lengths;
    std::vector<NumberMove> numbers;
    std::vector<UnsharedLink> unshared;
};

/// The numbers of a car that are compared, driveline and what was entered beside the links included; the
/// steps of the sweep, single pieces of ballast and springs left out.
[[nodiscard]] const std::vector<FieldId>& comparedNumbers();

/// Compares two cars that have passed findFaults(). Links are matched by name, side and kind, in order where
/// several have the same. A place or number that differs by no more than a hundredth of a millimeter, a
/// thousandth of a degree or a gram, and a rod's length by no more than kNoAdjustment, is the same.
[[nodiscard]] Comparison compareCars(const Car& before, const Car& after);

/// The same but for the travels, which are left empty: what was turned, in a hundredth of the time.
[[nodiscard]] Comparison compareEntries(const Car& before, const Car& after);

/// How much a figure must change before a tape in sixteenths, an angle finder or a scale could show it: 1/16
/// in, a tenth of a degree, one percent. A judgement, common practice, no source; what the measured numbers'
/// own uncertainty makes of it is another matter.
[[nodiscard]] double tellingChange(Quantity quantity);

/// One figure in both cars.
struct FigureChange {
    Figure figure = Figure::travel;
    double before = 0;  ///< SI; NaN: does not exist
    double after = 0;
    /// It is of the instant center's place, which between the two cars went through infinity: both differ,
    /// and by how much means nothing.
    bool isThroughInfinity = false;

    [[nodiscard]] double change() const { return after - before; }
    /// How many telling changes it is; 0 where one does not exist.
    [[nodiscard]] double weight() const;
    /// Whether it says something: a telling change, or a figure that only one of the cars has.
    [[nodiscard]] bool tells() const;
};

/// One figure at one station of each car; a null station has no figures.
[[nodiscard]] FigureChange changeAt(Figure figure, const Station* before, const Station* after);
/// Every figure but the travels at one station of each car, those that tell first, the largest in telling
/// changes on top; then the rest in the figures' own order. A null station has no figures.
[[nodiscard]] std::vector<FigureChange> changesAt(const Station* before, const Station* after);

}  // namespace bolthole
