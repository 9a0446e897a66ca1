// JSON as text: strict, bounded reading and the car file's own way of printing. Knows nothing of cars.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>

namespace bolthole {

/// Bounds on what is read, so that a hostile file costs neither the stack nor much time and memory.
inline constexpr std::size_t kMaxNesting = 64;
inline constexpr std::size_t kMaxJsonValues = 2'000'000;  ///< numbers, texts, true, false and null
inline constexpr std::size_t kMaxJsonParts = 1'000'000;   ///< keys, arrays and objects

/// What was wrong with a file: the JSON path and what was expected, as one line without the file's name:
/// "links[0].axle.holes[1].at: expected three numbers (link 'lower', axle hole 'top')".
struct FileProblem {
    std::string path;    ///< JSON path, may be empty (the whole file)
    std::string reason;  ///< what is wrong and what was expected
    std::string
        part{};  ///< what a person calls the part at fault: "link 'lower', axle hole 'top'"; may be empty

    [[nodiscard]] std::string line() const {
        return (path.empty() ? reason : path + ": " + reason) + (part.empty() ? "" : " (" + part + ")");
    }
};

/// The document, or the problem.
struct JsonResult {
    std::optional<nlohmann::ordered_json> value;
    FileProblem problem;
};

/// Reads one JSON document (RFC 8259, UTF-8). Refused, with line and column where they help: anything after
/// the document, ill-formed UTF-8, numbers that overflow a double, a key given twice in an object, nesting
/// deeper than kMaxNesting, more than kMaxJsonValues values or kMaxJsonParts parts. Keeps the order of keys.
[[nodiscard]] JsonResult parseJson(std::string_view bytes);

/// Prints a document with two spaces of indent. What fits on a line of 110 columns stays on one line, as a
/// point or a hole does; of an array of more than sixty every element does, however long: nobody reads so
/// many, and a season's kept cars take half the room. Ends with a newline. The same document gives the same
/// bytes.
[[nodiscard]] std::string printJson(const nlohmann::ordered_json& value);

/// The path of a key inside the object at `path`: "axle" in "links[0]" is "links[0].axle". Keys that are not
/// plain words are quoted and cut short.
[[nodiscard]] std::string pathOf(const std::string& path, std::string_view key);

/// The path of an element of the array at `path`.
[[nodiscard]] std::string pathOf(const std::string& path, std::size_t index);

/// A value in a few words for an error line: "abc", 12.5, "an array of 2", "an object". ASCII only.
[[nodiscard]] std::string inWords(const nlohmann::ordered_json& value);

}  // namespace bolthole
