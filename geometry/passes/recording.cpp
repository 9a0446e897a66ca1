#include "geometry/passes/recording.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/units/say.h"
#include "geometry/units/units.h"

namespace bolthole {

namespace {

constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();
constexpr double kSixtyFeet = 60 * 12 * kMetresPerInch;
constexpr std::size_t kLeastRows = 3;

std::string lowered(std::string_view text) {
    std::string result(text);
    std::ranges::transform(result, result.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    return result;
}

std::string_view trimmed(std::string_view text) {
    const std::size_t from = text.find_first_not_of(" \t");
    return from == std::string_view::npos ? std::string_view()
                                          : text.substr(from, text.find_last_not_of(" \t") - from + 1);
}

/// The number of a cell; nothing where it is none.
std::optional<double> numberOf(std::string_view cell) {
    std::string_view text = trimmed(cell);
    if (text.starts_with('+')) {
        text.remove_prefix(1);
    }
    return csvNumber(text);
}

/// What a header names, the first rule that fits; kinds that were taken are left out.
struct HeaderRule {
    Recorded kind;
    std::string_view all;   ///< must stand in it
    std::string_view also;  ///< and this, where not empty
};
constexpr std::array kHeaderRules{
    HeaderRule{Recorded::frontTravel, "front", "travel"},
    HeaderRule{Recorded::frontTravel, "front", "shock"},
    HeaderRule{Recorded::rearTravel, "rear", "travel"},
    HeaderRule{Recorded::rearTravel, "rear", "shock"},
    HeaderRule{Recorded::shaftSpeed, "shaft", ""},
    HeaderRule{Recorded::acceleration, "accel", "long"},
    HeaderRule{Recorded::acceleration, "long", "g"},
    HeaderRule{Recorded::acceleration, "accel", ""},
    HeaderRule{Recorded::engineSpeed, "rpm", ""},
    HeaderRule{Recorded::engineSpeed, "engine", "speed"},
    HeaderRule{Recorded::speed, "speed", ""},
    HeaderRule{Recorded::speed, "velocity", ""},
    HeaderRule{Recorded::time, "time", ""},
    HeaderRule{Recorded::time, "elapsed", ""},
};

std::optional<Recorded> kindOf(const std::string& header, const std::vector<RecordedColumn>& taken) {
    for (const HeaderRule& rule : kHeaderRules) {
        const bool isNamed =
            header.find(rule.all) != std::string::npos && header.find(rule.also) != std::string::npos;
        const bool isAcross =
            header.find("lat") != std::string::npos || header.find("vert") != std::string::npos;
        if (isNamed && !(isAcross && rule.kind == Recorded::acceleration) &&
            std::ranges::find(taken, rule.kind, &RecordedColumn::is) == taken.end()) {
            return rule.kind;
        }
    }
    return std::nullopt;
}

/// The unit between brackets, where the kind has it; else the usual one.
std::string unitIn(const std::string& header, Recorded kind) {
    const std::size_t open = header.find_first_of("([");
    const std::size_t close = header.find_first_of(")]", open == std::string::npos ? 0 : open);
    if (open != std::string::npos && close != std::string::npos) {
        const std::string said = header.substr(open + 1, close - open - 1);
        for (const RecordedUnit& unit : unitsOf(kind)) {
            if (said == unit.mark || (said == "m/s^2" && unit.mark == "m/s2") ||
                (said == "kph" && unit.mark == "km/h")) {
                return std::string(unit.mark);
            }
        }
    }
    return std::string(unitsOf(kind).front().mark);
}

/// Fills a recording row by row.
class TableReader {
  public:
    TableReader(const CsvRows& table, const std::vector<RecordedColumn>& columns)
        : table_(table), columns_(columns) {}

    ReadRecording read() {
        if (!table_.problem.empty()) {
            return {{}, table_.problem};
        }
        if (table_.rows.size() < kLeastRows + 1) {
            return {{}, say("it has no rows, or too few: a row of headers and three of numbers at least")};
        }
        if (std::string problem = findColumns(); !problem.empty()) {
            return {{}, std::move(problem)};
        }
        for (std::size_t row = 1; row < table_.rows.size(); ++row) {
            if (std::string problem = takeRow(row); !problem.empty()) {
                return {{}, std::move(problem)};
            }
        }
        return std::move(result_);
    }

  private:
    std::string findColumns() {
        const std::vector<std::string>& headers = table_.rows.front();
        for (const RecordedColumn& column : columns_) {
            const auto found = std::ranges::find(headers, column.header);
            if (found == headers.end()) {
                return say("it has no column \"%1\"", column.header);
            }
            places_.push_back(static_cast<std::size_t>(found - headers.begin()));
        }
        return {};
    }

    std::string takeRow(std::size_t row) {
        const std::vector<std::string>& cells = table_.rows[row];
        for (std::size_t at = 0; at < columns_.size(); ++at) {
            const RecordedColumn& column = columns_[at];
            const std::string_view cell =
                places_[at] < cells.size() ? std::string_view(cells[places_[at]]) : "";
            const std::optional<double> number = numberOf(cell);
            if (column.is == Recorded::time) {
                if (!number || (!result_.recording.time.empty() &&
                                !(*number * unitOf(column).size > result_.recording.time.back()))) {
                    return say("row %1: expected a later time, found \"%2\"", row + 1, cell);
                }
                result_.recording.time.push_back(*number * unitOf(column).size);
            } else if (!number && !trimmed(cell).empty()) {
                return say("row %1: expected a number as %2, found \"%3\"", row + 1, column.header, cell);
            } else {
                result_.recording.values[static_cast<std::size_t>(column.is)].push_back(
                    number ? *number * unitOf(column).size : kNoNumber);
            }
        }
        return {};
    }

    const CsvRows& table_;
    const std::vector<RecordedColumn>& columns_;
    std::vector<std::size_t> places_;
    ReadRecording result_{};
};

/// The acceleration at each sample; of the speed by differences where it was not recorded.
std::vector<double> accelerationOf(const Recording& recording) {
    if (recording.has(Recorded::acceleration)) {
        return recording.of(Recorded::acceleration);
    }
    std::vector<double> result;
    const std::vector<double>& speed = recording.of(Recorded::speed);
    for (std::size_t at = 0; at + 1 < speed.size(); ++at) {
        result.push_back((speed[at + 1] - speed[at]) / (recording.time[at + 1] - recording.time[at]));
    }
    return result;
}

/// Follows distance sample by sample.
class Odometer {
  public:
    Odometer(const Recording& recording, double start)
        : recording_(recording), start_(start), bySpeed_(recording.has(Recorded::speed)) {}

    /// When the car had come that far, s of the table's clock.
    [[nodiscard]] std::optional<double> timeAt(double distance) const {
        double gone = 0;
        double speed = 0;
        double before = start_;
        std::optional<double> last = valueAt(start_);
        for (std::size_t at = 0; at < recording_.time.size() && last; ++at) {
            const double now = recording_.time[at];
            const std::optional<double> value = sample(at);
            if (now <= start_ || !value) {
                continue;  // a gap is bridged by a straight line
            }
            const double step = now - before;
            const double faster = bySpeed_ ? *value : speed + (*last + *value) / 2 * step;
            const double from = bySpeed_ ? *last : speed;
            const double more = (from + faster) / 2 * step;
            if (gone + more >= distance && more > 0) {
                return before + step * shareOf(distance - gone, from, faster, step);
            }
            gone += more;
            speed = faster;
            before = now;
            last = value;
        }
        return std::nullopt;
    }

  private:
    // The part of a step after which `way` is gone, the speed running straight from one to the other.
    static double shareOf(double way, double from, double to, double step) {
        const double a = (to - from) * step / 2;
        const double b = from * step;
        if (!(way > 0)) {
            return 0;
        }
        if (std::abs(a) < 1e-12 * std::abs(b)) {
            return way / b;
        }
        return 2 * way / (b + std::sqrt(std::max(0.0, b * b + 4 * a * way)));
    }
    [[nodiscard]] std::optional<double> sample(std::size_t at) const {
        const double value = recording_.of(bySpeed_ ? Recorded::speed : Recorded::acceleration)[at];
        return std::isnan(value) ? std::nullopt : std::optional(value);
    }
    // At the start the car stands, whatever an unsteady speed says.
    [[nodiscard]] std::optional<double> valueAt(double time) const {
        if (bySpeed_) {
            return 0.0;
        }
        for (std::size_t at = 0; at < recording_.time.size(); ++at) {
            if (recording_.time[at] >= time && sample(at)) {
                return sample(at);
            }
        }
        return std::nullopt;
    }

    const Recording& recording_;
    double start_;
    bool bySpeed_;
};

}  // namespace

std::vector<RecordedColumn> guessColumns(const std::vector<std::string>& headers) {
    std::vector<RecordedColumn> columns;
    for (const std::string& header : headers) {
        const std::string text = lowered(header);
        if (const std::optional<Recorded> kind = kindOf(text, columns)) {
            columns.push_back({*kind, header, unitIn(text, *kind)});
        }
    }
    std::ranges::sort(columns, {}, &RecordedColumn::is);
    return columns;
}

ReadRecording readRecording(const CsvRows& table, const std::vector<RecordedColumn>& columns) {
    return TableReader(table, columns).read();
}

std::optional<double> findStart(const Recording& recording) {
    if (!recording.has(Recorded::acceleration) && !recording.has(Recorded::speed)) {
        return std::nullopt;
    }
    const std::vector<double> acceleration = accelerationOf(recording);
    std::optional<std::size_t> rise;
    for (std::size_t at = 0; at < acceleration.size(); ++at) {
        if (!(acceleration[at] >= kStartAcceleration)) {
            rise.reset();
        } else if (!rise) {
            rise = at;
        }
        if (rise && recording.time[at] - recording.time[*rise] >= kStartHold) {
            return recording.time[*rise == 0 || !recording.has(Recorded::acceleration) ? *rise : *rise - 1];
        }
    }
    return std::nullopt;
}

std::optional<double> recordedSixtyFoot(const Recording& recording, double start, double rollout) {
    if (!recording.has(Recorded::acceleration) && !recording.has(Recorded::speed)) {
        return std::nullopt;
    }
    const Odometer odometer(recording, start);
    const std::optional<double> beam = odometer.timeAt(rollout);
    const std::optional<double> line = odometer.timeAt(rollout + kSixtyFeet);
    return beam && line ? std::optional(*line - *beam) : std::nullopt;
}

}  // namespace bolthole
