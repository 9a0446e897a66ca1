// Room on the plate of a bracket: how far a hole's center is from the edge and from the other holes, and
// which of the plate's own rules a hole there would break. All of it in side view, as the plate is
// (geometry/car/bracket.h).
#pragma once

#include <string>
#include <vector>

#include "geometry/car/faults.h"
#include "geometry/units/text.h"

namespace bolthole {

/// A point as the side view shows it, m: forward, up.
[[nodiscard]] inline Eigen::Vector2d inSideView(const Eigen::Vector3d& point) {
    return {point.x(), point.z()};
}

/// Where a point lies on a plate.
struct EdgeRoom {
    double distance = 0;  ///< m, to the nearest point of the edge, never below 0
    Eigen::Vector2d nearest = Eigen::Vector2d::Zero();  ///< that point of the edge, m
    bool inside = false;                                ///< on the edge counts as outside
};
/// The outline must have a corner at least; it closes from the last corner to the first. Distance of a point
/// to each side as to a segment: Schneider & Eberly, "Geometric Tools for Computer Graphics", 2003, ch. 6,
/// distance in 2D of point and segment; inside by the number of sides a ray crosses: O'Rourke, "Computational
/// Geometry in C", 2nd ed. 1998, ch. 7, point in polygon. Both from memory, no page.
[[nodiscard]] EdgeRoom edgeRoom(const std::vector<Eigen::Vector2d>& corners, const Eigen::Vector2d& at);

/// The line a hole's center must not cross toward the edge: `distance` (m, above 0) inside the outline, as
/// polylines: along each side and around each corner that points inward, cut where another side is nearer.
/// Straight ones have two points, arcs one every 5 degrees at least. It moves and turns with the outline:
/// nothing here compares a side's direction. The outline must not cross itself.
[[nodiscard]] std::vector<std::vector<Eigen::Vector2d>> edgeLimit(const std::vector<Eigen::Vector2d>& corners,
                                                                  double distance);

/// The hole of a bracket nearest to a point.
struct HoleRoom {
    int hole = -1;        ///< index, or -1: there is no other
    double distance = 0;  ///< m, center to center in side view
};
/// `except`: index of a hole that does not count, as it is the one asked about; -1: all count.
[[nodiscard]] HoleRoom holeRoom(const Bracket& bracket, const Eigen::Vector2d& at, int except);

/// What a hole centered at `at` breaks of the plate's rules, in words that follow a hole's name, each
/// complete: "12.0 mm to the plate's edge, 19.0 mm wanted". Empty: nothing, or the bracket has no plate.
/// `except` as for holeRoom(). Every hole nearer than the spacing is named.
[[nodiscard]] std::vector<std::string> plateTroubles(const Bracket& bracket, const Eigen::Vector2d& at,
                                                     int except, Units units);

/// A plate to start from, to be measured over: a rectangle the edge distance around all holes, grown outward
/// to whole sixteenths of an inch or millimeters, with the rules of `rules`.
[[nodiscard]] Plate rectangleAround(const Bracket& bracket, const Plate& rules, Units units);
/// Rules to start from where none were entered: a hole of 1/2 in or 12 mm, edge distance 1.5 and spacing 3
/// times that. Common practice, no source; strength is for a qualified person.
[[nodiscard]] Plate startingRules(Units units);

/// Adds a warning for every hole of a link that breaks a rule of its bracket's plate, at the hole. A pair of
/// holes too near each other is told once: at the planned one, else at the later. Part of findWarnings() in
/// geometry/edits/edit.h.
void addPlateWarnings(const Car& car, std::vector<Warning>& warnings);

}  // namespace bolthole
