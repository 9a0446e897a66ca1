// The forces of a shock as plain data: by shaft speed and click, one table each way.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace bolthole {

/// Limits of the car file; a table outside them is refused, never trimmed.
inline constexpr std::size_t kMaxDampingSpeeds = 32;
inline constexpr std::size_t kMaxDampingRows = 64;
inline constexpr std::size_t kMaxTorqueRows = 200;
inline constexpr int kMaxClick = 1000;

/// What a shock does one way, bump or rebound: a row of forces a click.
struct DampingWay {
    /// The clicks of the rows, whole numbers, rising. Two of them with a row for every click from one to the
    /// other say the same as the whole list; see clickOf().
    std::vector<int> clicks;
    std::vector<std::vector<double>> force;   ///< N at each speed, positive numbers, against the motion
    std::optional<double> at = std::nullopt;  ///< the click it is set to; past the ends it acts as the end

    /// The click of a row of forces.
    [[nodiscard]] int clickOf(std::size_t row) const {
        return force.size() == clicks.size() ? clicks[row] : clicks.front() + static_cast<int>(row);
    }

    bool operator==(const DampingWay&) const = default;
};

/// A shock's forces. Nothing of it is known where a list is empty.
struct Damping {
    std::vector<double> speeds;  ///< m/s of the shaft, rising, above 0
    DampingWay bump;
    DampingWay rebound;
    bool isEstimate = false;  ///< of no shock that was measured

    bool operator==(const Damping&) const = default;
};

/// An engine's torque at one speed.
struct TorquePoint {
    double speed = 0;   ///< rad/s
    double torque = 0;  ///< N m, at the flywheel

    bool operator==(const TorquePoint&) const = default;
};

/// What keeps a table from being used, and where in it; empty: nothing.
struct TableFault {
    std::string path;  ///< "bump.force[2]"
    std::string reason;
};
/// Speeds and clicks that do not rise, rows of unequal length or of another number than the clicks, forces
/// below 0 or not finite.
[[nodiscard]] TableFault refusal(const Damping& damping);
/// Speeds that do not rise or are below 0, torques outside the limits, too many of them.
[[nodiscard]] TableFault refusal(const std::vector<TorquePoint>& torque);

}  // namespace bolthole
