// A pass: one run of a test day, as plain data.
//
// Unlike the rest of geometry/ its numbers stand in the units of the car file, metric but not SI: deg C, hPa,
// kPa over the surroundings, percent, rpm, s, km/h. They are entered, shown and compared, and no more: what
// computes with them converts at its own door, and a number typed or read keeps every digit.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/car/entered.h"
#include "geometry/car/pass_recording.h"

namespace bolthole {

/// What a pass was run on.
enum class SurfaceKind {
    preppedTrack,    ///< a strip treated for grip
    unpreppedTrack,  ///< a strip that was not
    street           ///< a road or airfield
};
inline constexpr std::size_t kSurfaceKinds = 3;
/// As the car file spells them, in the order of SurfaceKind: "prepped_track", "unprepped_track", "street".
[[nodiscard]] const std::array<std::string_view, kSurfaceKinds>& surfaceKindKeys();
/// The same for a person: "prepped track".
[[nodiscard]] std::string_view nameOf(SurfaceKind kind);

/// Where the tires stood.
struct PassSurface {
    std::optional<SurfaceKind> kind = std::nullopt;
    std::string name{};                         ///< own words: "north lane"
    OptionalNumber temperature = std::nullopt;  ///< deg C

    bool operator==(const PassSurface&) const = default;
};

/// The air of a pass, at the place itself: `pressure` is what a barometer there shows, not reduced to the
/// sea.
struct PassAir {
    OptionalNumber temperature = std::nullopt;  ///< deg C
    OptionalNumber pressure = std::nullopt;     ///< hPa
    OptionalNumber humidity = std::nullopt;     ///< percent, relative

    bool operator==(const PassAir&) const = default;
};

/// What the clocks said beyond the sixty foot.
struct PassTimes {
    OptionalNumber threeThirty = std::nullopt;   ///< s, at 330 ft
    OptionalNumber eighth = std::nullopt;        ///< s, at the eighth mile
    OptionalNumber eighthSpeed = std::nullopt;   ///< km/h there
    OptionalNumber quarter = std::nullopt;       ///< s, at the quarter mile
    OptionalNumber quarterSpeed = std::nullopt;  ///< km/h there

    bool operator==(const PassTimes&) const = default;
};

/// What somebody saw of a pass.
enum class Seen {
    noseToppedOut,
    frontTiresUp,
    spunAtHit,
    spunLater,
    bounced,
    paddleMarks,
    movedLeft,
    movedRight
};
inline constexpr std::size_t kSeenCount = 8;
/// As the car file spells them, in the order of Seen: "nose_topped_out".
[[nodiscard]] const std::array<std::string_view, kSeenCount>& seenKeys();
/// The same for a person: "nose topped out".
[[nodiscard]] std::string nameOf(Seen seen);

/// One pass. Everything but number and date may be missing.
struct Pass {
    int id = -1;         ///< as for Hole: where it stands in the file it came from
    int number = 1;      ///< of its day, from 1
    std::string date{};  ///< 2026-11-20; see refuseDate()
    std::string time{};  ///< 14:05 or 14:05:30, or empty; see refuseTime()
    std::string place{};
    std::optional<int> setup = std::nullopt;  ///< index into Car::kept: the car as it ran
    bool struck = false;                      ///< kept and shown, counted nowhere
    PassSurface surface{};
    PassAir air{};
    EnteredCorners pressures{};               ///< kPa, tires cold or hot as the person holds it
    OptionalNumber launchRpm = std::nullopt;  ///< rpm the car was launched at
    OptionalNumber sixtyFoot = std::nullopt;  ///< s, from leaving the start beam to 60 ft, by the clock
    PassTimes times{};
    std::array<bool, kSeenCount> seen{};  ///< by Seen
    std::string note{};
    std::optional<PassRecording> recording = std::nullopt;

    [[nodiscard]] bool saw(Seen what) const { return seen[static_cast<std::size_t>(what)]; }

    bool operator==(const Pass&) const = default;
};

/// Whether a pass counts in statistics: not struck, and timed to sixty foot.
[[nodiscard]] inline bool isCounted(const Pass& pass) {
    return !pass.struck && pass.sixtyFoot.has_value();
}

/// Whether `one` was run after `other`, by date and, where both have one, time. Passes of a day without times
/// are not told apart.
[[nodiscard]] bool isLater(const Pass& one, const Pass& other);

/// Puts a pass among others: after the last that was not run later.
void insertInOrder(std::vector<Pass>& passes, const Pass& pass);

/// "pass 7 of 2026-11-20".
[[nodiscard]] std::string passWords(const Pass& pass);

}  // namespace bolthole
