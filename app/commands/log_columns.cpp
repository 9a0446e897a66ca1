#include "app/commands/log_columns.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>

#include "geometry/car/pass_fields.h"

namespace bolthole {

namespace {

std::optional<int> wholeNumber(std::string_view text) {
    int number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    const bool whole = error == std::errc() && end == text.data() + text.size();
    return whole ? std::optional(number) : std::nullopt;
}

std::string writeNumber(const Pass& pass, const Car&) {
    return std::to_string(pass.number);
}

std::string readNumber(Pass& pass, const std::string& cell, const Car&) {
    const std::optional<int> number = wholeNumber(cell);
    if (!number || *number < kLeastPassNumber || *number > kMostPassNumber) {
        return "a whole number from " + std::to_string(kLeastPassNumber) + " to " +
               std::to_string(kMostPassNumber);
    }
    pass.number = *number;
    return {};
}

std::string readDate(Pass& pass, const std::string& cell, const Car&) {
    pass.date = cell;
    return refuseDate(cell);
}

std::string readTime(Pass& pass, const std::string& cell, const Car&) {
    pass.time = cell;
    return cell.empty() ? std::string() : refuseTime(cell);
}

std::string writeSetup(const Pass& pass, const Car& car) {
    if (!pass.setup) {
        return {};
    }
    const std::string& name = car.kept[static_cast<std::size_t>(*pass.setup)].name;
    const bool isTheOnly = std::ranges::count(car.kept, name, &KeptSetup::name) == 1;
    return isTheOnly && !name.starts_with('#') ? name : "#" + std::to_string(*pass.setup + 1);
}

std::string readSetup(Pass& pass, const std::string& cell, const Car& car) {
    pass.setup.reset();
    if (cell.empty()) {
        return {};
    }
    if (cell.starts_with('#')) {
        const std::optional<int> number = wholeNumber(std::string_view(cell).substr(1));
        if (!number || *number < 1 || static_cast<std::size_t>(*number) > car.kept.size()) {
            return car.kept.empty() ? "nothing, as the car keeps no setup"
                                    : "a setup from #1 to #" + std::to_string(car.kept.size());
        }
        pass.setup = *number - 1;
        return {};
    }
    const auto found = std::ranges::find(car.kept, cell, &KeptSetup::name);
    if (found == car.kept.end() || std::ranges::count(car.kept, cell, &KeptSetup::name) > 1) {
        return found == car.kept.end() ? "the name of a setup the car keeps"
                                       : "the name of one setup, or its number as #1";
    }
    pass.setup = static_cast<int>(found - car.kept.begin());
    return {};
}

/// The kind a text spells, as the file or as a person writes it.
std::optional<SurfaceKind> kindOf(std::string_view text) {
    for (std::size_t at = 0; at < kSurfaceKinds; ++at) {
        const auto kind = static_cast<SurfaceKind>(at);
        if (text == surfaceKindKeys()[at] || text == nameOf(kind)) {
            return kind;
        }
    }
    return std::nullopt;
}

constexpr std::string_view kKindEnd = ": ";

std::string writeSurface(const Pass& pass, const Car&) {
    const PassSurface& surface = pass.surface;
    if (surface.kind) {
        const std::string kind(nameOf(*surface.kind));
        return surface.name.empty() ? kind : kind + std::string(kKindEnd) + surface.name;
    }
    const std::string_view name = surface.name;
    const bool misread = kindOf(name.substr(0, name.find(kKindEnd))) || name.starts_with(kKindEnd);
    return misread ? std::string(kKindEnd) + surface.name : surface.name;
}

std::string readSurface(Pass& pass, const std::string& cell, const Car&) {
    const std::string_view text = cell;
    const std::size_t end = text.find(kKindEnd);
    const std::string_view first = text.substr(0, end);
    const bool isSplit = end != std::string_view::npos && (first.empty() || kindOf(first));
    pass.surface.kind = kindOf(first);
    pass.surface.name = isSplit             ? text.substr(end + kKindEnd.size())
                        : pass.surface.kind ? std::string_view()
                                            : text;
    return {};
}

std::string writeSeen(const Pass& pass, const Car&) {
    std::string words;
    for (std::size_t at = 0; at < kSeenCount; ++at) {
        if (pass.seen[at]) {
            words += (words.empty() ? "" : " ") + std::string(seenKeys()[at]);
        }
    }
    return words;
}

std::string readSeen(Pass& pass, const std::string& cell, const Car&) {
    pass.seen = {};
    std::string_view rest = cell;
    while (!rest.empty()) {
        const std::size_t end = rest.find(' ');
        const std::string_view word = rest.substr(0, end);
        rest = end == std::string_view::npos ? std::string_view() : rest.substr(end + 1);
        if (word.empty()) {
            continue;
        }
        const auto found = std::ranges::find(seenKeys(), word);
        if (found == seenKeys().end()) {
            std::string expected = "words with spaces between them, each of";
            for (const std::string_view key : seenKeys()) {
                expected += " " + std::string(key);
            }
            return expected;
        }
        pass.seen[static_cast<std::size_t>(found - seenKeys().begin())] = true;
    }
    return {};
}

std::string readStruck(Pass& pass, const std::string& cell, const Car&) {
    pass.struck = cell == yesOrNo(true);
    return cell.empty() || pass.struck || cell == yesOrNo(false) ? "" : "yes or no";
}

constexpr std::array<LogColumn, 9> kLogColumns{{
    {"number", writeNumber, readNumber},
    {"date", [](const Pass& pass, const Car&) { return pass.date; }, readDate},
    {"time", [](const Pass& pass, const Car&) { return pass.time; }, readTime},
    {"place", [](const Pass& pass, const Car&) { return pass.place; },
     [](Pass& pass, const std::string& cell, const Car&) {
         pass.place = cell;
         return std::string();
     }},
    {"setup", writeSetup, readSetup},
    {"surface", writeSurface, readSurface},
    {"seen", writeSeen, readSeen},
    {"struck", [](const Pass& pass, const Car&) { return std::string(yesOrNo(pass.struck)); }, readStruck},
    {"note", [](const Pass& pass, const Car&) { return pass.note; },
     [](Pass& pass, const std::string& cell, const Car&) {
         pass.note = cell;
         return std::string();
     }},
}};

}  // namespace

const LogColumn* findLogColumn(std::string_view name) {
    const auto* const found = std::ranges::find(kLogColumns, name, &LogColumn::name);
    return found == kLogColumns.end() ? nullptr : found;
}

std::string_view yesOrNo(bool value) {
    return value ? "yes" : "no";
}

}  // namespace bolthole
