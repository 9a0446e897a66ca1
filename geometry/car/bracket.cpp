#include "geometry/car/bracket.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <iterator>
#include <string_view>
#include <utility>

#include "geometry/units/say.h"

namespace bolthole {

namespace {

constexpr double kFarthestCorner = 100;   // m
constexpr double kLargestDiameter = 0.2;  // m
constexpr double kLargestEdge = 1.0;      // m
constexpr double kMostDiameters = 20;
constexpr double kSmallestArea = 1e-8;  // m^2

double cross(const Eigen::Vector2d& one, const Eigen::Vector2d& other) {
    return one.x() * other.y() - one.y() * other.x();
}

/// On which side of the line from `from` to `to` a point lies: above 0 to its left, 0 on it.
double sideOf(const Eigen::Vector2d& from, const Eigen::Vector2d& to, const Eigen::Vector2d& point) {
    return cross(to - from, point - from);
}

bool areApart(double one, double other) {
    return (one > 0 && other < 0) || (one < 0 && other > 0);
}

bool cutsThrough(const Eigen::Vector2d& a, const Eigen::Vector2d& b, const Eigen::Vector2d& c,
                 const Eigen::Vector2d& d) {
    return areApart(sideOf(a, b, c), sideOf(a, b, d)) && areApart(sideOf(c, d, a), sideOf(c, d, b));
}

bool crossesItself(const std::vector<Eigen::Vector2d>& corners) {
    const std::size_t count = corners.size();
    for (std::size_t one = 0; one < count; ++one) {
        for (std::size_t other = one + 1; other < count; ++other) {
            if (cutsThrough(corners[one], corners[(one + 1) % count], corners[other],
                            corners[(other + 1) % count])) {
                return true;
            }
        }
    }
    return false;
}

double areaOf(const std::vector<Eigen::Vector2d>& corners) {
    double twice = 0;
    for (std::size_t corner = 0; corner < corners.size(); ++corner) {
        twice += cross(corners[corner], corners[(corner + 1) % corners.size()]);
    }
    return std::abs(twice) / 2;
}

std::string_view wrongWith(const std::vector<Eigen::Vector2d>& corners) {
    if (corners.size() < kMinPlateCorners || corners.size() > kMaxPlateCorners) {
        return phrase("expected 3 to 24 corners");
    }
    const auto isFar = [](const Eigen::Vector2d& corner) {
        return !(std::abs(corner.x()) <= kFarthestCorner && std::abs(corner.y()) <= kFarthestCorner);
    };
    if (std::ranges::any_of(corners, isFar)) {
        return phrase("expected corners within 100 m of the origin");
    }
    if (crossesItself(corners)) {
        return phrase("expected the corners in order around, found an outline that crosses itself");
    }
    return areaOf(corners) < kSmallestArea
               ? phrase("expected an outline with room inside, found its corners on one line")
               : "";
}

// Gives every corner's marks to the corner it has become.
void renumber(PlateStarts& starts, const auto& newIndex) {
    std::set<PlateStarts::Coordinate> moved;
    for (const PlateStarts::Coordinate& each : starts.corners) {
        moved.insert({newIndex(each.corner), each.axis});
    }
    starts.corners = std::move(moved);
}

auto placeOf(Plate& plate, std::size_t corner) {
    return std::next(plate.corners.begin(), static_cast<std::ptrdiff_t>(corner));
}

}  // namespace

std::size_t PlateStarts::cornerCount() const {
    std::set<std::size_t> found;
    for (const Coordinate& each : corners) {
        found.insert(each.corner);
    }
    return found.size();
}

void PlateStarts::markCorner(std::size_t corner, bool isStarting) {
    for (const int axis : {0, 1}) {
        if (isStarting) {
            corners.insert({corner, axis});
        } else {
            corners.erase({corner, axis});
        }
    }
}

void insertCorner(Plate& plate, std::size_t at, const Eigen::Vector2d& corner) {
    plate.corners.insert(placeOf(plate, at), corner);
    renumber(plate.starts, [at](std::size_t index) { return index < at ? index : index + 1; });
    plate.starts.markCorner(at, true);
}

void removeCorner(Plate& plate, std::size_t at) {
    plate.corners.erase(placeOf(plate, at));
    plate.starts.markCorner(at, false);
    renumber(plate.starts, [at](std::size_t index) { return index < at ? index : index - 1; });
}

void swapCorners(Plate& plate, std::size_t one, std::size_t other) {
    std::swap(plate.corners[one], plate.corners[other]);
    renumber(plate.starts, [=](std::size_t index) {
        return index == one ? other : index == other ? one : index;
    });
}

PlateFault refusal(const Plate& plate) {
    if (const std::string_view reason = wrongWith(plate.corners); !reason.empty()) {
        return {"corners", say(reason)};
    }
    if (!(plate.holeDiameter > 0 && plate.holeDiameter <= kLargestDiameter)) {
        return {"hole_diameter", say("expected a hole diameter above 0 and at most 200 mm")};
    }
    if (!(plate.edgeDistance >= 0 && plate.edgeDistance <= kLargestEdge)) {
        return {"edge_distance", say("expected an edge distance from 0 to 1 m")};
    }
    if (!(plate.holeSpacing >= 1 && plate.holeSpacing <= kMostDiameters)) {
        return {"hole_spacing", say("expected a hole spacing from 1 to 20 diameters")};
    }
    return {};
}

}  // namespace bolthole
