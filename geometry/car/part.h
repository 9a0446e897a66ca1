// A spring, shock, bump stop or strap as plain data. What it does stands in
// geometry/statics/suspension_part.h.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "geometry/car/bracket.h"
#include "geometry/car/damping.h"

namespace bolthole {

/// Springs and coilovers carry the car; the rest only pushes or stops, each by its numbers.
enum class PartKind { spring, shock, coilOver, bumpStop, strap };
/// "spring", "shock", "coilover", "bump stop", "strap".
[[nodiscard]] std::string_view nameOf(PartKind kind);

/// A part without gas pushes only by its rate, N.
inline constexpr double kNoPush = 0;

/// A part with one mount on the axle and one on the chassis, each a bracket of one or more holes, or a
/// mirrored pair of them. Its length is the distance between the holes in use. `id` as for Hole.
///
/// It pushes `push`, and `rate` for every meter it is shorter than `freeLength`. Longer than that it is
/// loose: it never pulls. A bump stop has its foot on the chassis and its pad on the axle, and its lengths
/// lie along the line between them at the measured pose, fixed in the chassis: the pad slides under it.
struct SuspensionPart {
    int id = -1;
    std::string name;
    PartKind kind = PartKind::spring;
    Side side = Side::both;
    Bracket chassis;
    Bracket axle;
    std::optional<double> rate = std::nullopt;          ///< N/m
    std::optional<double> freeLength = std::nullopt;    ///< m
    std::optional<double> closedLength = std::nullopt;  ///< m, the shortest: coils touch, shock bottoms
    std::optional<double> openLength = std::nullopt;    ///< m, the longest: shock topped out, strap taut
    double push = kNoPush;                              ///< N, whatever its length: a shock's gas
    std::optional<Damping> damping = std::nullopt;      ///< a shock's or coilover's forces by shaft speed
    Uncertainties uncertainties{};

    [[nodiscard]] const Bracket& bracket(End end) const { return end == End::chassis ? chassis : axle; }
    [[nodiscard]] Bracket& bracket(End end) { return end == End::chassis ? chassis : axle; }
    /// Whether it is one of those the car stands on.
    [[nodiscard]] bool carries() const { return kind == PartKind::spring || kind == PartKind::coilOver; }
    /// N at a length of `length` (m), + pushes the mounts apart.
    [[nodiscard]] double force(double length) const;
    /// N/m at that length: 0 where it is loose or no spring.
    [[nodiscard]] double rateAt(double length) const;

    bool operator==(const SuspensionPart&) const = default;
};
}  // namespace bolthole
