// The linkage over rear travel, as the equations of motion need it: the axle's x and pitch and the parts'
// lengths with their first and second derivatives, at a fraction of the cost of a solved pose.
//
// Between nodes a polynomial of degree 5 meets value, first and second derivative of the solved poses at both
// (Hermite interpolation; from memory: J. Stoer, R. Bulirsch, "Introduction to Numerical Analysis", ch. 2).
// Nodes stand 10 mm apart, closer where that is not enough: toward the end of what the links reach, where the
// rates grow without bound.
#pragma once

#include <Eigen/Core>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "geometry/kinematics/axle_solver.h"
#include "geometry/kinematics/linkage.h"
#include "geometry/statics/suspension_part.h"

namespace bolthole {

/// A line between chassis and axle whose length is tabled.
struct TableLine {
    Eigen::Vector3d onAxle = Eigen::Vector3d::Zero();     ///< m, from the axle's center, at the measured pose
    Eigen::Vector3d onChassis = Eigen::Vector3d::Zero();  ///< m, car frame
    /// A bump stop's: as PartLine::fixedAxis.
    bool alongFixedAxis = false;

    bool operator==(const TableLine&) const = default;
};

/// A tabled quantity at one travel.
struct TableValue {
    double value = 0;
    double first = 0;   ///< d/d travel
    double second = 0;  ///< d^2/d travel^2
};

/// Holds a linkage's solution over travel, both wheels moving alike: x and pitch follow, y and yaw too. Grows
/// outward from ride as asked; its storage is used again from one car to the next, and what was solved of a
/// linkage is not solved again while the same one is asked for.
class LinkageTable {
  public:
    /// How far from ride it goes at most, m: beyond, a car's own parts have long stopped the axle. A
    /// judgement.
    static constexpr double kFarthest = 0.9;

    /// Assembles the car at ride and covers nothing else yet. The same linkage and lines as before are not
    /// solved anew; everything read afterward is the same to the last digit as if they were. Not usable: the
    /// report says why, and nothing else here may be used.
    MoveReport begin(const Linkage& linkage, std::span<const TableLine> lines);
    /// Adds a node in bump (`direction` +1) or droop (-1). False where the links reach no further, or at
    /// kFarthest.
    bool extend(int direction);
    /// Adds nodes until `low` and `high` (m of travel) are covered or the links end.
    void cover(double low, double high);

    /// Travel the table covers, m.
    [[nodiscard]] double lowest() const { return droop_.nodes[droop_.covered]; }
    [[nodiscard]] double highest() const { return bump_.nodes[bump_.covered]; }
    /// Why it goes no further in that direction, and which link ran out, once extend() returned false;
    /// `reached` where kFarthest was.
    [[nodiscard]] const MoveReport& end(int direction) const { return (direction > 0 ? bump_ : droop_).end; }
    /// How many solved poses it stands on.
    [[nodiscard]] std::size_t nodeCount() const { return bump_.covered + droop_.covered + 1; }
    /// Of the quantities read: x, pitch, then the lines in order.
    [[nodiscard]] std::size_t quantityCount() const { return quantities_; }

    /// The axle's x (m, m/m, 1/m) and pitch (rad, rad/m, rad/m^2), then every line's length (m, m/m, 1/m), at
    /// `travel`. Beyond what is covered the outermost polynomial goes on. `values` has quantityCount()
    /// places. At least one node beside ride must be covered.
    void read(double travel, TableValue* values);

  private:
    static constexpr std::size_t kPieceSize = 6;
    static constexpr int kX = 0;
    static constexpr int kPitch = 1;

    /// A solved pose: where, and every quantity there.
    struct Node {
        double travel = 0;
        std::vector<TableValue> values{};
    };
    /// One way from ride.
    struct Way {
        std::vector<double> nodes;         // travel; ride first
        std::vector<double> pieces;        // a block of kPieceSize numbers a quantity for each interval
        std::size_t covered = 0;           // intervals that are part of the table now, of those solved
        std::size_t piece = 0;             // where the last reading was: the next is close by
        std::optional<AxleSolver> solver;  // at the outermost node
        Node outermost;
        double step = 0;
        MoveReport end;
        double failedAt = 0;  // travel at which `end` was met
    };

    [[nodiscard]] bool isSolved(const Linkage& linkage, std::span<const TableLine> lines) const;
    void start(Way& way, const Node& ride);
    bool solveNext(Way& way, int direction);
    bool turnsCorner(Way& way, int direction) const;
    void add(Way& way, int direction);
    void readNode(const AxleSolver& solver, double travel, Node& node) const;
    [[nodiscard]] bool isClose(const Node& from, const Node& to) const;
    void writePiece(Way& way, const Node& low, const Node& high) const;

    Linkage linkage_;
    std::vector<TableLine> asked_;
    std::vector<PartLine> lines_;
    std::size_t quantities_ = 2;
    MoveReport ride_;
    std::optional<AxleSolver> rideSolver_;
    Node trial_;
    Way bump_;
    Way droop_;
};

}  // namespace bolthole
