#include "geometry/plates/plate_room.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numbers>
#include <utility>

#include "geometry/car/fields.h"
#include "geometry/units/say.h"

namespace bolthole {

namespace {

constexpr double kRounding = 1e-9;  // m; a distance entered as the least is not below it
constexpr double kUsualInchHole = kMetresPerInch / 2;
constexpr double kUsualMetricHole = 0.012;
constexpr double kUsualEdge = 1.5;  // diameters
constexpr double kUsualSpacing = 3;

Eigen::Vector2d nearestOnSide(const Eigen::Vector2d& from, const Eigen::Vector2d& to,
                              const Eigen::Vector2d& at) {
    const Eigen::Vector2d side = to - from;
    const double square = side.squaredNorm();
    const double share = square > 0 ? std::clamp((at - from).dot(side) / square, 0.0, 1.0) : 0.0;
    return from + share * side;
}

/// Whether a ray forward from `at` crosses the side. Each side owns its lower end only, so that a corner is
/// not counted twice.
bool crossesRay(const Eigen::Vector2d& from, const Eigen::Vector2d& to, const Eigen::Vector2d& at) {
    if ((from.y() > at.y()) == (to.y() > at.y())) {
        return false;
    }
    return at.x() < from.x() + (at.y() - from.y()) / (to.y() - from.y()) * (to.x() - from.x());
}

std::string lengthText(double length, Units units) {
    return withUnit(fineFigureText(length, Quantity::length, units), Quantity::length, units);
}

std::string edgeTrouble(const Plate& plate, const Eigen::Vector2d& at, Units units) {
    const EdgeRoom room = edgeRoom(plate.corners, at);
    if (!room.inside) {
        return say("outside the plate's outline by %1: check the hole and the corners",
                   lengthText(room.distance, units));
    }
    const bool cutsEdge = room.distance < plate.holeDiameter / 2 - kRounding;
    if (!cutsEdge && room.distance >= plate.edgeDistance - kRounding) {
        return {};
    }
    const std::string wanted = lengthText(plate.edgeDistance, units);
    const std::string have = lengthText(room.distance, units);
    if (cutsEdge) {
        return say("%1 to the plate's edge: the hole would cut it", have);
    }
    // Where both read alike, it is less all the same.
    return have == wanted ? say("%1 to the plate's edge, a hair under what is wanted", have)
                          : say("%1 to the plate's edge, %2 wanted", have, wanted);
}

std::string diameterText(double diameters) {
    return figureText(diameters, Quantity::ratio, Units::metric);
}

std::string nameOf(const Bracket& bracket, int hole) {
    const std::string& name = bracket.holes[static_cast<std::size_t>(hole)].name;
    return name.empty() ? say("hole %1", hole + 1) : "'" + name + "'";
}

std::string spacingTrouble(const Bracket& bracket, const Eigen::Vector2d& at, int other) {
    const Plate& plate = *bracket.plate;
    const double apart = (at - inSideView(bracket.holes[static_cast<std::size_t>(other)].at)).norm();
    if (apart >= plate.holeSpacing * plate.holeDiameter - kRounding) {
        return {};
    }
    const std::string have = diameterText(apart / plate.holeDiameter);
    const std::string wanted = diameterText(plate.holeSpacing);
    const std::string from = nameOf(bracket, other);
    return have == wanted
               ? say("%1 diameters from %2, center to center, a hair under what is wanted", have, from)
               : say("%1 diameters from %2, center to center, %3 wanted", have, from, wanted);
}

/// Whether the pair of the two holes is told at `hole`.
bool tellsPair(const Bracket& bracket, int hole, int other) {
    const bool planned = bracket.holes[static_cast<std::size_t>(hole)].planned;
    const bool otherPlanned = bracket.holes[static_cast<std::size_t>(other)].planned;
    return planned != otherPlanned ? planned : hole > other;
}

class PlateChecker {
  public:
    PlateChecker(const Car& car, int link, End end, std::vector<Warning>& warnings)
        : car_(car),
          bracket_(car.links[static_cast<std::size_t>(link)].bracket(end)),
          link_(link),
          end_(end),
          warnings_(warnings) {}

    void check() {
        for (int hole = 0; bracket_.plate && hole < static_cast<int>(bracket_.holes.size()); ++hole) {
            checkHole(hole);
        }
    }

  private:
    void checkHole(int hole) {
        const Eigen::Vector2d at = inSideView(bracket_.holes[static_cast<std::size_t>(hole)].at);
        add(hole, edgeTrouble(*bracket_.plate, at, car_.units));
        for (int other = 0; other < static_cast<int>(bracket_.holes.size()); ++other) {
            if (other != hole && tellsPair(bracket_, hole, other)) {
                add(hole, spacingTrouble(bracket_, at, other));
            }
        }
    }
    void add(int hole, const std::string& trouble) {
        if (!trouble.empty()) {
            const FieldId id{.field = Field::holeAt, .link = link_, .end = end_, .hole = hole, .axis = 0};
            const bool planned = bracket_.holes[static_cast<std::size_t>(hole)].planned;
            const bool inUse = hole == bracket_.use;
            const std::string name = holeWords(car_, link_, end_, hole);
            std::string follows = inUse ? say("the bracket may tear; ask a qualified person") : std::string();
            if (bracket_.plate->starts.any()) {
                const std::string measure =
                    say("it comes of starting numbers of the plate: measure them first");
                follows += (follows.empty() ? "" : "; ") + measure;
            }
            warnings_.push_back(
                {jsonPath(id),
                 id,
                 {inUse ? Severity::danger : Severity::check,
                  planned ? say("planned %1: %2", name, trouble) : say("%1: %2", name, trouble),
                  std::move(follows)}});
        }
    }

    const Car& car_;
    const Bracket& bracket_;
    int link_;
    End end_;
    std::vector<Warning>& warnings_;
};

}  // namespace

EdgeRoom edgeRoom(const std::vector<Eigen::Vector2d>& corners, const Eigen::Vector2d& at) {
    EdgeRoom room{.distance = std::numeric_limits<double>::infinity()};
    for (std::size_t corner = 0; corner < corners.size(); ++corner) {
        const Eigen::Vector2d& from = corners[corner];
        const Eigen::Vector2d& to = corners[(corner + 1) % corners.size()];
        const Eigen::Vector2d nearest = nearestOnSide(from, to, at);
        const double distance = (at - nearest).norm();
        if (distance < room.distance) {
            room.distance = distance;
            room.nearest = nearest;
        }
        room.inside = room.inside != crossesRay(from, to, at);
    }
    room.inside = room.inside && room.distance > 0;
    return room;
}

namespace {

/// Cuts lines at the distance from the edge that they run along, where another side of it is nearer.
class LimitCutter {
  public:
    LimitCutter(const std::vector<Eigen::Vector2d>& corners, double distance)
        : corners_(corners), distance_(distance) {}

    /// Adds what holds of the line that `at` gives for 0 to 1, looked at in `pieces` of it; `isCurved`: with
    /// all its points, else with its ends alone.
    void add(const std::function<Eigen::Vector2d(double)>& at, int pieces, bool isCurved) {
        std::vector<Eigen::Vector2d> run;
        const auto close = [&] {
            if (run.size() > 1) {
                lines_.push_back(isCurved ? run : std::vector{run.front(), run.back()});
            }
            run.clear();
        };
        bool held = false;
        for (int piece = 0; piece <= pieces; ++piece) {
            const double share = static_cast<double>(piece) / pieces;
            const bool holds = isLimit(at(share));
            if (piece > 0 && holds != held) {
                run.push_back(at(crossing(at, share - 1.0 / pieces, share, held)));
                if (!holds) {
                    close();
                }
            }
            if (holds) {
                run.push_back(at(share));
            }
            held = holds;
        }
        close();
    }
    [[nodiscard]] std::vector<std::vector<Eigen::Vector2d>> take() { return std::move(lines_); }

  private:
    // A point computed to lie at the distance is off by rounding.
    [[nodiscard]] bool isLimit(const Eigen::Vector2d& point) const {
        const EdgeRoom room = edgeRoom(corners_, point);
        return room.inside && room.distance >= distance_ - kRounding;
    }
    // Between two shares of which only one holds, the last that does.
    [[nodiscard]] double crossing(const std::function<Eigen::Vector2d(double)>& at, double from, double to,
                                  bool heldFirst) const {
        constexpr int kHalvings = 40;
        double holding = heldFirst ? from : to;
        double other = heldFirst ? to : from;
        for (int halving = 0; halving < kHalvings; ++halving) {
            const double middle = (holding + other) / 2;
            (isLimit(at(middle)) ? holding : other) = middle;
        }
        return holding;
    }

    const std::vector<Eigen::Vector2d>& corners_;
    double distance_;
    std::vector<std::vector<Eigen::Vector2d>> lines_;
};

/// Twice the signed area, counterclockwise +.
double turningOf(const std::vector<Eigen::Vector2d>& corners) {
    double sum = 0;
    for (std::size_t corner = 0; corner < corners.size(); ++corner) {
        const Eigen::Vector2d& next = corners[(corner + 1) % corners.size()];
        sum += corners[corner].x() * next.y() - corners[corner].y() * next.x();
    }
    return sum;
}

}  // namespace

std::vector<std::vector<Eigen::Vector2d>> edgeLimit(const std::vector<Eigen::Vector2d>& corners,
                                                    double distance) {
    constexpr int kPieces = 64;  // of a side: what another side cuts out of less is not noticed
    constexpr double kArc = 5 * std::numbers::pi / 180;
    const double way = turningOf(corners) < 0 ? -1 : 1;
    const auto inward = [&](std::size_t corner) -> Eigen::Vector2d {
        const Eigen::Vector2d side = corners[(corner + 1) % corners.size()] - corners[corner];
        return way * Eigen::Vector2d(-side.y(), side.x()).normalized();
    };
    LimitCutter cutter(corners, distance);
    for (std::size_t corner = 0; corner < corners.size(); ++corner) {
        const Eigen::Vector2d& from = corners[corner];
        const Eigen::Vector2d along = corners[(corner + 1) % corners.size()] - from;
        const Eigen::Vector2d normal = inward(corner);
        cutter.add([&](double share) -> Eigen::Vector2d { return from + share * along + distance * normal; },
                   kPieces, false);
        const Eigen::Vector2d before = inward((corner + corners.size() - 1) % corners.size());
        const double turn = std::atan2(before.x() * normal.y() - before.y() * normal.x(), before.dot(normal));
        if (way * turn < 0) {  // it points inward
            const int pieces = std::max(1, static_cast<int>(std::ceil(std::abs(turn) / kArc - kRounding)));
            cutter.add(
                [&](double share) -> Eigen::Vector2d {
                    return from + distance * (Eigen::Rotation2Dd(share * turn) * before);
                },
                pieces, true);
        }
    }
    return cutter.take();
}

HoleRoom holeRoom(const Bracket& bracket, const Eigen::Vector2d& at, int except) {
    HoleRoom nearest{-1, std::numeric_limits<double>::infinity()};
    for (int hole = 0; hole < static_cast<int>(bracket.holes.size()); ++hole) {
        const double apart = (at - inSideView(bracket.holes[static_cast<std::size_t>(hole)].at)).norm();
        if (hole != except && apart < nearest.distance) {
            nearest = {hole, apart};
        }
    }
    return nearest;
}

std::vector<std::string> plateTroubles(const Bracket& bracket, const Eigen::Vector2d& at, int except,
                                       Units units) {
    std::vector<std::string> troubles;
    const auto add = [&troubles](std::string trouble) {
        if (!trouble.empty()) {
            troubles.push_back(std::move(trouble));
        }
    };
    if (bracket.plate) {
        add(edgeTrouble(*bracket.plate, at, units));
        for (int other = 0; other < static_cast<int>(bracket.holes.size()); ++other) {
            if (other != except) {
                add(spacingTrouble(bracket, at, other));
            }
        }
    }
    return troubles;
}

Plate startingRules(Units units) {
    Plate rules;
    rules.holeDiameter = units == Units::inch ? kUsualInchHole : kUsualMetricHole;
    rules.edgeDistance = kUsualEdge * rules.holeDiameter;
    rules.holeSpacing = kUsualSpacing;
    rules.starts = {.corners = {}, .holeDiameter = true, .edgeDistance = true, .holeSpacing = true};
    return rules;
}

Plate rectangleAround(const Bracket& bracket, const Plate& rules, Units units) {
    Eigen::AlignedBox2d box;
    for (const Hole& hole : bracket.holes) {
        box.extend(inSideView(hole.at));
    }
    const double step = units == Units::inch ? kMetresPerInch / 16 : kMetresPerMillimetre;
    const double margin = std::max(rules.edgeDistance, rules.holeDiameter);
    const auto outward = [&](double value, double way) {
        return way * std::ceil((way * value + margin) / step - kRounding) * step;
    };
    const double back = outward(box.min().x(), -1);
    const double front = outward(box.max().x(), 1);
    const double low = outward(box.min().y(), -1);
    const double high = outward(box.max().y(), 1);
    Plate plate = rules;
    plate.corners = {{back, low}, {front, low}, {front, high}, {back, high}};
    plate.starts.corners.clear();
    for (std::size_t corner = 0; corner < plate.corners.size(); ++corner) {
        plate.starts.markCorner(corner, true);
    }
    return plate;
}

void addPlateWarnings(const Car& car, std::vector<Warning>& warnings) {
    for (int link = 0; link < static_cast<int>(car.links.size()); ++link) {
        PlateChecker(car, link, End::chassis, warnings).check();
        PlateChecker(car, link, End::axle, warnings).check();
    }
}

}  // namespace bolthole
