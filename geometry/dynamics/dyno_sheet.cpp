#include "geometry/dynamics/dyno_sheet.h"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <optional>

#include "geometry/units/say.h"
#include "geometry/units/units.h"

namespace bolthole {

namespace {

constexpr std::size_t kShownText = 40;
constexpr std::string_view kSpaces = " \r\v\f";
constexpr double kNewtonMetresPerPoundFoot = kNewtonsPerPoundForce * 12 * kMetresPerInch;

std::string_view trimmed(std::string_view text) {
    const std::size_t first = text.find_first_not_of(" \t\r\v\f\"");
    if (first == std::string_view::npos) {
        return {};
    }
    return text.substr(first, text.find_last_not_of(" \t\r\v\f\"") - first + 1);
}

std::vector<std::string_view> split(std::string_view text, std::string_view at, bool keepsEmpty) {
    std::vector<std::string_view> cells;
    while (true) {
        const std::size_t end = text.find_first_of(at);
        const std::string_view cell = trimmed(text.substr(0, end));
        if (keepsEmpty || !cell.empty()) {
            cells.push_back(cell);
        }
        if (end == std::string_view::npos) {
            return cells;
        }
        text.remove_prefix(end + 1);
    }
}

bool isLetter(char c) {
    return std::isalpha(static_cast<unsigned char>(c)) != 0;
}

/// What parts the cells of a line: the first of tab and semicolon it has; else commas in a line with words,
/// such as a heading; else spaces, where they part two numbers; else commas.
std::vector<std::string_view> cellsOf(std::string_view line) {
    for (const std::string_view part : {"\t", ";"}) {
        if (line.find_first_of(part) != std::string_view::npos) {
            return split(line, part, true);
        }
    }
    std::vector<std::string_view> words = split(line, kSpaces, false);
    const bool commasPart = std::ranges::any_of(
        words, [&words](std::string_view word) { return &word != &words.back() && word.ends_with(','); });
    const bool isHeading = std::ranges::any_of(line, isLetter) && line.find(',') != std::string_view::npos;
    return words.size() < 2 || commasPart || isHeading ? split(line, ",", true) : words;
}

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

/// "1,500" and "12,345": commas between threes of digits.
bool partsThousands(std::string_view cell) {
    const std::vector<std::string_view> groups = split(cell.substr(0, cell.find('.')), ",", true);
    return std::ranges::all_of(groups, [&groups](const std::string_view& group) {
        const bool isFirst = &group == &groups.front();
        const bool isLong = isFirst ? !group.empty() && group.size() <= 3 : group.size() == 3;
        return isLong && std::ranges::all_of(group, isDigit);
    });
}

/// The number without its commas: those that part thousands go, another is the decimal point.
std::string withoutCommas(std::string_view cell) {
    std::string plain(cell);
    if (cell.find(',') == std::string_view::npos) {
        return plain;
    }
    if (partsThousands(cell)) {
        std::erase(plain, ',');
    } else {
        std::ranges::replace(plain, ',', '.');
    }
    return plain;
}

std::optional<double> numberOf(std::string_view cell) {
    const std::string plain = withoutCommas(cell);
    double value = 0;
    const auto [end, error] =
        std::from_chars(plain.data(), plain.data() + plain.size(), value, std::chars_format::fixed);
    const bool isRead = error == std::errc() && end == plain.data() + plain.size() && std::isfinite(value);
    return isRead ? std::optional(value) : std::nullopt;
}

/// Small letters and digits alone.
std::string letters(std::string_view text) {
    std::string small;
    for (const char c : text) {
        if (std::isalnum(static_cast<unsigned char>(c)) != 0) {
            small += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        }
    }
    return small;
}

bool has(const std::string& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

std::optional<TorqueUnit> unitIn(const std::string& words) {
    if (has(words, "lbft") || has(words, "lbfft") || has(words, "ftlb") || has(words, "poundf")) {
        return TorqueUnit::poundFeet;
    }
    return has(words, "nm") || has(words, "newton") ? std::optional(TorqueUnit::newtonMetres) : std::nullopt;
}

/// Reads one sheet, line by line.
class SheetReader {
  public:
    explicit SheetReader(TorqueUnit usual) { sheet_.unit = usual; }

    DynoSheet read(std::string_view text) {
        for (const std::string_view line : split(text, "\n", true)) {
            ++line_;
            if (!line.empty()) {
                readLine(line);
            }
        }
        if (sheet_.refused.empty() && sheet_.torque.size() > kMaxTorqueRows) {
            refuse({}, say("expected at most %1 rows, found %2", kMaxTorqueRows, sheet_.torque.size()));
        }
        if (!sheet_.refused.empty()) {
            sheet_.torque.clear();
        }
        return std::move(sheet_);
    }

  private:
    void readLine(std::string_view line) {
        const std::vector<std::string_view> cells = cellsOf(line);
        const bool hasNumber =
            std::ranges::any_of(cells, [](std::string_view cell) { return numberOf(cell).has_value(); });
        if (!hasNumber && sheet_.torque.empty() && sheet_.refused.empty()) {
            readHeading(line, cells);
        } else {
            readRow(line, cells);
        }
    }

    void readHeading(std::string_view line, const std::vector<std::string_view>& cells) {
        if (const std::optional<TorqueUnit> unit = unitIn(letters(line))) {
            sheet_.unit = *unit;
            sheet_.unitIsSaid = true;
        }
        for (std::size_t column = 0; column < cells.size(); ++column) {
            const std::string words = letters(cells[column]);
            if (has(words, "rpm")) {
                speedColumn_ = column;
            } else if (!torqueIsNamed_ && (has(words, "torque") || words == "tq" || unitIn(words))) {
                torqueColumn_ = column;
                torqueIsNamed_ = true;
            }
        }
    }

    void readRow(std::string_view line, const std::vector<std::string_view>& cells) {
        const auto cell = [&](std::size_t column) {
            return column < cells.size() ? numberOf(cells[column]) : std::nullopt;
        };
        const std::optional<double> rpm = cell(speedColumn_);
        const std::optional<double> torque = cell(torqueColumn_);
        if (!rpm || !torque) {
            refuse(line, say("expected a speed in rpm and a torque"));
            return;
        }
        const double factor = sheet_.unit == TorqueUnit::poundFeet ? kNewtonMetresPerPoundFoot : 1;
        const TorquePoint point{*rpm * kRpm, *torque * factor};
        if (!refusal(std::vector<TorquePoint>{point}).reason.empty()) {
            refuse(line, say("out of range"));
        } else if (!sheet_.torque.empty() && point.speed <= sheet_.torque.back().speed) {
            refuse(line, say("the speed does not rise over the row before"));
        } else {
            sheet_.torque.push_back(point);
        }
    }

    void refuse(std::string_view line, std::string reason) {
        std::string shown(trimmed(line.substr(0, kShownText)));
        std::ranges::replace(shown, '\t', ' ');
        sheet_.refused.push_back({line_, std::move(shown), std::move(reason)});
    }

    DynoSheet sheet_;
    int line_ = 0;
    std::size_t speedColumn_ = 0;
    std::size_t torqueColumn_ = 1;
    bool torqueIsNamed_ = false;
};

}  // namespace

DynoSheet readDynoSheet(std::string_view text, TorqueUnit usual) {
    return SheetReader(usual).read(text);
}

}  // namespace bolthole
