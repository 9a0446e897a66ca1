#include "app/commands/log_table.h"

#include <array>
#include <charconv>
#include <optional>

#include "app/commands/csv_text.h"
#include "app/commands/log_columns.h"
#include "geometry/car/pass_fields.h"
#include "geometry/compare/setup_changes.h"
#include "geometry/passes/air.h"
#include "geometry/units/csv.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

/// What the file itself would write: reads back as the same number.
std::string shortestDecimal(double value) {
    constexpr std::size_t kLongest = 800;  // of a double without an exponent
    std::array<char, kLongest> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
    return {text.data(), end.ptr};
}

std::string numberCell(const Pass& pass, PassField field, Units units) {
    const OptionalNumber& value = numberOf(pass, field);
    if (!value) {
        return {};
    }
    return units == Units::metric ? shortestDecimal(*value)
                                  : plainDecimal(toShown(*value, ruleOf(field).unit, units));
}

/// Writes a row at a time: the headers, or a pass.
class LogWriter {
  public:
    LogWriter(const Car& car, Units units) : car_(car), units_(units) {}

    std::string write() {
        addRow();
        for (row_ = 0; row_ < car_.passes.size(); ++row_) {
            pass_ = &car_.passes[row_];
            addRow();
        }
        return std::move(table_);
    }

  private:
    void addRow() {
        for (const char* name : {"number", "date", "time", "place", "setup", "surface"}) {
            addWords(name);
        }
        addNumbers(PassField::surfaceTemperature, PassField::humidity);
        addDensityAltitude();
        addNumbers(PassField::leftFrontPressure, PassField::quarterSpeed);
        addWords("seen");
        addWords("struck");
        add(pass_ == nullptr ? "changes" : changesSincePassBefore(car_, row_, units_));
        addWords("note");
        table_ += kLineEnd;
        isFirst_ = true;
    }

    void add(std::string_view cell) {
        table_ += isFirst_ ? "" : ",";
        table_ += csvField(cell);
        isFirst_ = false;
    }

    void addWords(std::string_view name) {
        add(pass_ == nullptr ? std::string(name) : findLogColumn(name)->write(*pass_, car_));
    }

    void addNumbers(PassField first, PassField last) {
        for (int at = static_cast<int>(first); at <= static_cast<int>(last); ++at) {
            const auto field = static_cast<PassField>(at);
            const PassFieldRule& rule = ruleOf(field);
            add(pass_ == nullptr ? std::string(rule.column) + std::string(suffixOf(rule.unit, units_))
                                 : numberCell(*pass_, field, units_));
        }
    }

    void addDensityAltitude() {
        if (pass_ == nullptr) {
            add("density_altitude" + std::string(suffixOf(PassUnit::metre, units_)));
            return;
        }
        const Answer<double> altitude = densityAltitude(pass_->air);
        add(altitude ? plainDecimal(toShown(*altitude, PassUnit::metre, units_)) : std::string());
    }

    const Car& car_;
    Units units_;
    const Pass* pass_ = nullptr;  // null: the headers
    std::size_t row_ = 0;
    bool isFirst_ = true;
    std::string table_{};
};

}  // namespace

std::string logTable(const Car& car, Units units) {
    return LogWriter(car, units).write();
}

}  // namespace bolthole
