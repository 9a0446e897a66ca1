// importLog() of app/commands/log_table.h.
#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <utility>

#include "app/commands/log_columns.h"
#include "app/commands/log_table.h"
#include "geometry/car/pass_fields.h"
#include "geometry/units/csv.h"

namespace bolthole {

namespace {

constexpr std::size_t kMostProblems = 100;

/// What a column of the file means: words, a number in some units, or nothing that is read.
struct Meaning {
    const LogColumn* words = nullptr;
    std::optional<PassField> number = std::nullopt;
    Units units = Units::metric;
    bool isKnown = false;

    /// The thing it sets, whatever its unit; for telling columns given twice.
    [[nodiscard]] std::string target() const {
        return words != nullptr ? std::string(words->name)
               : number         ? std::string(ruleOf(*number).path)
                                : std::string();
    }
};

std::string trimmed(std::string_view text) {
    constexpr std::string_view kBlank = " \t";
    const std::size_t first = text.find_first_not_of(kBlank);
    return first == std::string_view::npos
               ? std::string()
               : std::string(text.substr(first, text.find_last_not_of(kBlank) - first + 1));
}

std::string lowered(std::string text) {
    std::ranges::transform(text, text.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c + ('a' - 'A')) : c;
    });
    return text;
}

bool isComputed(const std::string& header) {
    return header == "changes" || header == "density_altitude_m" || header == "density_altitude_ft";
}

Meaning meaningOf(const std::string& header) {
    if (const LogColumn* column = findLogColumn(header)) {
        return {column, std::nullopt, Units::metric, true};
    }
    for (const PassFieldRule& rule : passFieldRules()) {
        for (const Units units : {Units::metric, Units::inch}) {
            if (header == std::string(rule.column) + std::string(suffixOf(rule.unit, units))) {
                return {nullptr, rule.field, units, true};
            }
        }
    }
    return {nullptr, std::nullopt, Units::metric, isComputed(header)};
}

/// Puts a cell into the pass; gives what was expected where it can't be read.
std::string readCell(Pass& pass, const Meaning& meaning, const std::string& cell, const Car& car) {
    if (meaning.words != nullptr) {
        const std::string_view name = meaning.words->name;
        const bool isOwnWords = name == "note" || name == "place" || name == "surface" || name == "setup";
        return meaning.words->read(pass, isOwnWords ? cell : trimmed(cell), car);
    }
    if (!meaning.number) {
        return {};
    }
    OptionalNumber& value = numberOf(pass, *meaning.number);
    const std::string text = trimmed(cell);
    value.reset();
    if (text.empty()) {
        return {};
    }
    const std::optional<double> shown = csvNumber(text);
    const PassUnit unit = ruleOf(*meaning.number).unit;
    value = shown ? fromShown(*shown, unit, meaning.units) : std::nan("");
    return refusal(*meaning.number, *value, meaning.units);
}

/// One import, from its headers on.
class Importer {
  public:
    Importer(const Car& car, const CsvRows& csv) : car_(car), rows_(csv.rows) {}

    ImportedLog import() {
        readHeaders();
        if (result_.problems.empty()) {
            listPasses();
            for (std::size_t row = 1; row < rows_.size() && result_.problems.size() < kMostProblems; ++row) {
                readRow(row);
            }
        }
        result_.car = car_;
        if (result_.problems.empty()) {
            place();
        }
        return std::move(result_);
    }

  private:
    using Key = std::pair<std::string, int>;

    void complain(std::string problem) { result_.problems.push_back(std::move(problem)); }

    void readHeaders() {
        for (const std::string& cell : rows_.front()) {
            const std::string header = lowered(trimmed(cell));
            const Meaning meaning = meaningOf(header);
            if (!meaning.isKnown) {
                result_.unknown.push_back(header);
            }
            const std::string target = meaning.target();
            if (!target.empty() && std::ranges::find(columns_, target, &Meaning::target) != columns_.end()) {
                complain("row 1, " + header + ": given twice, expected it once and in one unit");
            }
            columns_.push_back(meaning);
            headers_.push_back(header);
        }
        for (const char* needed : {"number", "date"}) {
            if (std::ranges::find(headers_, needed) == headers_.end()) {
                complain(std::string("row 1: no column '") + needed + "', expected number and date");
            }
        }
    }

    /// The car's passes by day and number, several of one in their order.
    void listPasses() {
        for (std::size_t at = 0; at < car_.passes.size(); ++at) {
            known_[{car_.passes[at].date, car_.passes[at].number}].push_back(at);
        }
    }

    void readRow(std::size_t row) {
        const std::vector<std::string>& cells = rows_[row];
        const std::string where = "row " + std::to_string(row + 1);
        if (cells.size() != columns_.size()) {
            complain(where + ": expected " + std::to_string(columns_.size()) + " fields, found " +
                     std::to_string(cells.size()));
            return;
        }
        Pass key;
        readInto(key, row, true);
        std::vector<std::size_t>& same = known_[{key.date, key.number}];
        std::optional<std::size_t> changed;
        if (!same.empty()) {
            changed = same.front();
            same.erase(same.begin());
        }
        Pass pass = changed ? car_.passes[*changed] : Pass{};
        readInto(pass, row, false);
        read_.emplace_back(changed, std::move(pass));
    }

    /// Reads the row's number and date alone, or all of it, which complains.
    void readInto(Pass& pass, std::size_t row, bool onlyKey) {
        for (std::size_t at = 0; at < columns_.size(); ++at) {
            const bool isKey = headers_[at] == "number" || headers_[at] == "date";
            if (onlyKey && !isKey) {
                continue;
            }
            const std::string& cell = rows_[row][at];
            const std::string expected = readCell(pass, columns_[at], cell, car_);
            if (!expected.empty() && !onlyKey) {
                constexpr std::size_t kMostShown = 40;
                complain("row " + std::to_string(row + 1) + ", " + headers_[at] + ": expected " + expected +
                         ", found '" + cell.substr(0, kMostShown) + "'");
            }
        }
    }

    /// Changed passes stay where they are unless their day or time changed.
    void place() {
        std::vector<Pass>& passes = result_.car.passes;
        std::vector<Pass> moving;
        std::vector<std::size_t> leaving;
        for (auto& [changed, pass] : read_) {
            const bool stays =
                changed && passes[*changed].date == pass.date && passes[*changed].time == pass.time;
            if (stays) {
                passes[*changed] = std::move(pass);
                continue;
            }
            if (changed) {
                leaving.push_back(*changed);
            }
            moving.push_back(std::move(pass));
        }
        std::ranges::sort(leaving);
        for (auto at = leaving.rbegin(); at != leaving.rend(); ++at) {
            passes.erase(passes.begin() + static_cast<std::ptrdiff_t>(*at));
        }
        for (const Pass& pass : moving) {
            insertInOrder(passes, pass);
        }
        if (passes.size() > kMaxPasses) {
            complain(std::to_string(passes.size()) + " passes in all, expected at most " +
                     std::to_string(kMaxPasses));
            result_.car = car_;
        }
    }

    const Car& car_;
    const std::vector<std::vector<std::string>>& rows_;
    std::vector<Meaning> columns_{};
    std::vector<std::string> headers_{};
    std::map<Key, std::vector<std::size_t>> known_{};
    std::vector<std::pair<std::optional<std::size_t>, Pass>> read_{};
    ImportedLog result_{};
};

}  // namespace

ImportedLog importLog(const Car& car, std::string_view csv) {
    const CsvRows rows = readCsv(csv, kMaxPasses + 1);
    if (!rows.problem.empty()) {
        return {car, {rows.problem}, {}};
    }
    if (rows.rows.empty()) {
        return {car, {"nothing in it, expected a row of headers"}, {}};
    }
    return Importer(car, rows).import();
}

}  // namespace bolthole
