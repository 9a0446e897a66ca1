#include "geometry/units/csv.h"

#include <charconv>
#include <cmath>
#include <utility>

#include "geometry/units/say.h"

namespace bolthole {

namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

/// Reads one cell after another.
class CsvReader {
  public:
    explicit CsvReader(std::string_view bytes) : bytes_(bytes) {
        if (bytes_.starts_with(kByteOrderMark)) {
            at_ = kByteOrderMark.size();
        }
    }

    CsvRows read(std::size_t mostRows) {
        while (at_ < bytes_.size() && result_.problem.empty()) {
            readRow();
            if (result_.rows.size() > mostRows) {
                result_.problem = say("more than %1 rows", mostRows);
            }
        }
        if (!result_.problem.empty()) {
            result_.rows.clear();
        }
        return std::move(result_);
    }

  private:
    [[nodiscard]] bool isAt(char c) const { return at_ < bytes_.size() && bytes_[at_] == c; }

    void refuse(const std::string& reason) { result_.problem = say("line %1: %2", line_, reason); }

    void readRow() {
        std::vector<std::string> row;
        bool isQuoted = false;
        do {
            isQuoted = isQuoted || isAt('"');
            row.push_back(isAt('"') ? quotedCell() : plainCell());
        } while (result_.problem.empty() && isAt(',') && ++at_ > 0);
        if (!result_.problem.empty()) {
            return;
        }
        endLine();
        const bool isBlank = row.size() == 1 && row.front().empty() && !isQuoted;
        if (!isBlank) {
            result_.rows.push_back(std::move(row));
        }
    }

    // CRLF, LF or CR, or the file's end.
    void endLine() {
        const bool carriage = isAt('\r');
        at_ += carriage ? 1U : 0U;
        at_ += isAt('\n') ? 1U : 0U;
        ++line_;
    }

    std::string plainCell() {
        const std::size_t end = bytes_.find_first_of(",\"\r\n", at_);
        std::string cell(bytes_.substr(at_, end - at_));
        at_ = end == std::string_view::npos ? bytes_.size() : end;
        if (isAt('"')) {
            refuse(say("a quote inside a field, expected the whole field in quotes"));
        }
        return cell;
    }

    std::string quotedCell() {
        std::string cell;
        const std::size_t start = line_;
        for (++at_; at_ < bytes_.size(); ++at_) {
            if (bytes_[at_] != '"') {
                line_ += bytes_[at_] == '\n' ? 1U : 0U;
                cell += bytes_[at_];
            } else if (at_ + 1 < bytes_.size() && bytes_[at_ + 1] == '"') {
                cell += '"';
                ++at_;
            } else {
                ++at_;
                if (at_ < bytes_.size() && !isAt(',') && !isAt('\r') && !isAt('\n')) {
                    refuse(say("something after a closing quote, expected a comma or the line's end"));
                }
                return cell;
            }
        }
        line_ = start;
        refuse(say("a quote that is never closed"));
        return cell;
    }

    std::string_view bytes_;
    std::size_t at_ = 0;
    std::size_t line_ = 1;
    CsvRows result_{};
};

}  // namespace

std::string csvField(std::string_view text) {
    if (text.find_first_of(",\"\r\n") == std::string_view::npos) {
        return std::string(text);
    }
    std::string field = "\"";
    for (const char c : text) {
        field += c;
        if (c == '"') {
            field += c;
        }
    }
    return field + '"';
}

std::optional<double> csvNumber(std::string_view cell) {
    double value = 0;
    const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
    const bool isRead = error == std::errc() && end == cell.data() + cell.size() && std::isfinite(value);
    return isRead ? std::optional(value) : std::nullopt;
}

CsvRows readCsv(std::string_view bytes, std::size_t mostRows) {
    return CsvReader(bytes).read(mostRows);
}

}  // namespace bolthole
