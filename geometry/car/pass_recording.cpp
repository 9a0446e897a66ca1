#include "geometry/car/pass_recording.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "geometry/units/say.h"
#include "geometry/units/units.h"

namespace bolthole {

namespace {

constexpr double kMileAnHour = 1609.344 / 3600;  // m/s
constexpr std::size_t kHashDigits = 64;
constexpr std::size_t kLongestName = 255;

TableFault refuseColumns(const std::vector<RecordedColumn>& columns) {
    for (std::size_t kind = 0; kind < kRecordedKinds; ++kind) {
        const std::string key(recordedKeys()[kind]);
        const auto count = std::ranges::count(columns, static_cast<Recorded>(kind), &RecordedColumn::is);
        if (count > 1) {
            return {"columns." + key, say("expected one column, found %1", count)};
        }
        if (kind == 0 && count == 0) {
            return {"columns." + key, say("expected the column of the time, found none")};
        }
    }
    for (const RecordedColumn& column : columns) {
        const std::vector<RecordedUnit>& units = unitsOf(column.is);
        if (std::ranges::find(units, column.unit, &RecordedUnit::mark) == units.end()) {
            return {"columns." + std::string(recordedKeys()[static_cast<std::size_t>(column.is)]) + ".unit",
                    say("no such unit, found \"%1\"", column.unit)};
        }
        if (std::string expected = refuseHeader(column.header); !expected.empty()) {
            return {"columns", say("expected %1", expected)};
        }
    }
    return columns.size() < 2 ? TableFault{"columns", say("expected a column beside the time, found none")}
                              : TableFault{};
}

}  // namespace

const std::array<std::string_view, kRecordedKinds>& recordedKeys() {
    static constexpr std::array<std::string_view, kRecordedKinds> kKeys{
        "time", "speed", "acceleration", "engine_speed", "shaft_speed", "front_travel", "rear_travel"};
    return kKeys;
}

// Factors exact: mile 1609.344 m, foot 0.3048 m, g 9.80665 m/s^2 (NIST SP 811, Appendix B, from memory).
const std::vector<RecordedUnit>& unitsOf(Recorded kind) {
    static const std::array<std::vector<RecordedUnit>, kRecordedKinds> kUnits{{
        {{"s", 1}, {"ms", 1e-3}},
        {{"km/h", 1 / 3.6}, {"mph", kMileAnHour}, {"m/s", 1}},
        {{"g", kStandardGravity}, {"m/s2", 1}, {"ft/s2", 12 * kMetresPerInch}},
        {{"rpm", kRpm}, {"rad/s", 1}},
        {{"rpm", kRpm}, {"rad/s", 1}},
        {{"mm", kMetresPerMillimetre}, {"in", kMetresPerInch}},
        {{"mm", kMetresPerMillimetre}, {"in", kMetresPerInch}},
    }};
    return kUnits[static_cast<std::size_t>(kind)];
}

const RecordedUnit& unitOf(const RecordedColumn& column) {
    const auto found = std::ranges::find(unitsOf(column.is), column.unit, &RecordedUnit::mark);
    assert(found != unitsOf(column.is).end());
    return *found;
}

std::string refuseFileName(std::string_view text) {
    const bool isPlain =
        !text.empty() && text.size() <= kLongestName && text != "." && text != ".." &&
        text.find_first_of("/\\:") == std::string_view::npos &&
        std::ranges::none_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x20; });
    return isPlain ? std::string() : say("a file's name without a folder");
}

std::string refuseHash(std::string_view text) {
    const bool isHash = text.size() == kHashDigits && std::ranges::all_of(text, [](char c) {
                            return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f');
                        });
    return isHash ? std::string() : say("64 hexadecimal digits");
}

std::string refuseHeader(std::string_view text) {
    return text.empty() || text.size() > kLongestName ? say("a column's header") : std::string();
}

TableFault refusal(const PassRecording& recording) {
    if (std::string expected = refuseFileName(recording.file); !expected.empty()) {
        return {"file", say("expected %1", expected)};
    }
    if (std::string expected = refuseHash(recording.sha256); !expected.empty()) {
        return {"sha256", say("expected %1", expected)};
    }
    if (!(std::abs(recording.start) <= kMostRecordedTime)) {
        return {"start", say("expected a time in seconds")};
    }
    return refuseColumns(recording.columns);
}

}  // namespace bolthole
