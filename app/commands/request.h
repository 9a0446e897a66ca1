// What was asked for on the command line: a command's words sorted into files and options.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/combinations/hole_combination.h"
#include "geometry/units/units.h"

namespace bolthole {

/// An option, with a value or without.
struct Option {
    std::string_view name;                     ///< as typed: "--units"
    std::string_view valueName;                ///< as the help shows it; empty: takes no value
    std::span<const std::string_view> values;  ///< what is accepted; empty: anything
};

inline constexpr std::array<std::string_view, 2> kUnitValues{"inch", "metric"};
inline constexpr std::array<std::string_view, 3> kLengthValues{"keep", "refit", "uppers"};
inline constexpr Option kOutputOption{"-o", "FILE", {}};
inline constexpr Option kUnitsOption{"--units", "inch|metric", kUnitValues};
inline constexpr Option kLengthsOption{"--lengths", "keep|refit|uppers", kLengthValues};
inline constexpr Option kTieOption{"--tie", {}, {}};
inline constexpr Option kAllOption{"--all", {}, {}};
inline constexpr Option kUncertaintyOption{"--uncertainty", {}, {}};

/// The words of one command, sorted.
class Request {
  public:
    /// Sorts `words` (without the command's own name). Options may stand anywhere, their value in the next
    /// word or after "="; after "--" everything is a file. Gives nothing and sets `problem` for an unknown
    /// option, a missing, unknown or repeated value, a value where none belongs.
    [[nodiscard]] static std::optional<Request> sort(std::span<const std::string> words,
                                                     std::span<const Option> options, std::string& problem);

    [[nodiscard]] const std::vector<std::string>& files() const { return files_; }
    /// Whether an option was given.
    [[nodiscard]] bool has(const Option& option) const { return value(option).has_value(); }
    /// The value of an option, if it was given; empty for one that takes none.
    [[nodiscard]] std::optional<std::string> value(const Option& option) const;
    /// The units asked for, if any.
    [[nodiscard]] std::optional<Units> units() const;
    /// The treatment of the rods' lengths asked for, if any.
    [[nodiscard]] std::optional<LengthTreatment> lengths() const;

  private:
    struct Given {
        std::string_view option;
        std::string value;
    };

    [[nodiscard]] std::string give(const Option& option, const std::string& value);

    std::vector<std::string> files_;
    std::vector<Given> given_;
};

}  // namespace bolthole
