// The uncertainty of the numbers of one part of a car, where that was entered for the number itself, and
// which of them nobody has measured.
#pragma once

#include <optional>
#include <vector>

#include "geometry/car/field.h"

namespace bolthole {

/// Where a number of a car comes from.
enum class Origin {
    measured,   ///< somebody took it at the car and typed it
    starting,   ///< put there as a place to start from, measured by nobody
    workedOut,  ///< computed from other numbers, as a length that fits its holes, and not taken at the car
};

/// The own standard uncertainties of the numbers of a part: a hole, a link, a driveline, a load, a spring, or
/// of the car itself. A number without one has the uncertainty of the tool it was taken with; see
/// uncertaintyOf() in geometry/uncertainty/uncertain_inputs.h.
class Uncertainties {
  public:
    /// One of them: in the number's own SI unit, 0 for what is exact. `axis`: -1 where the number has none.
    struct Own {
        Field field{};
        int axis = -1;
        double value = 0;

        bool operator==(const Own&) const = default;
    };

    [[nodiscard]] std::optional<double> of(Field field, int axis = -1) const;
    /// Enters one, or takes it away.
    void set(Field field, int axis, std::optional<double> value);
    /// All of them, in the order of Field and axis.
    [[nodiscard]] const std::vector<Own>& all() const { return all_; }

    /// Says of one number of the part that it was not measured. `axis`: -1 where it has none.
    struct Mark {
        Field field{};
        int axis = -1;
        Origin origin = Origin::starting;

        bool operator==(const Mark&) const = default;
    };
    /// Where a number comes from. The mark goes wherever its part goes, so that it follows holes and links
    /// that move in their lists.
    [[nodiscard]] Origin originOf(Field field, int axis = -1) const;
    void setOrigin(Field field, int axis, Origin origin);
    [[nodiscard]] bool isStarting(Field field, int axis = -1) const {
        return originOf(field, axis) == Origin::starting;
    }
    /// Of all that were not measured, in the order of Field and axis. Some may mark a number that is absent.
    [[nodiscard]] const std::vector<Mark>& marks() const { return marks_; }

    bool operator==(const Uncertainties&) const = default;

  private:
    std::vector<Own> all_;
    std::vector<Mark> marks_;
};

}  // namespace bolthole
