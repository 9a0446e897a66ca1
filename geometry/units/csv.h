// CSV after RFC 4180, read and written, without a word about cars.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bolthole {

/// A field, in quotes where it could be misread.
[[nodiscard]] std::string csvField(std::string_view text);

/// The rows of a file, cells as they were meant.
struct CsvRows {
    std::vector<std::vector<std::string>> rows;
    std::string problem;  ///< why it can't be read, with the line it stands on; empty: read
};

/// The number a cell holds in decimal digits with a point, with nothing around it; nothing where it is none
/// or not finite.
[[nodiscard]] std::optional<double> csvNumber(std::string_view cell);

/// Reads CSV after RFC 4180: commas, double quotes, CRLF. A file whose lines end in LF or CR alone, one
/// without a last line end and one with a byte order mark are read, too, as programs write them; lines
/// without anything on them are passed over. Refused: a quote inside a field that did not begin with one,
/// anything after a closing quote, a quote that is never closed, and more than `mostRows` rows.
[[nodiscard]] CsvRows readCsv(std::string_view bytes, std::size_t mostRows);

}  // namespace bolthole
