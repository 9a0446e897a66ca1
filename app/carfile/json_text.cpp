#include "app/carfile/json_text.h"

#include <algorithm>
#include <unordered_set>
#include <utility>
#include <vector>

#include "geometry/units/say.h"

namespace bolthole {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t kMaxQuoted = 40;  // bytes of a file's own text repeated in an error line
constexpr std::size_t kMaxColumns = 110;
constexpr std::size_t kIndent = 2;
constexpr std::size_t kMostSpread = 60;  // elements of an array over several lines each

// The start of `text`, never cutting a UTF-8 sequence in two.
std::string shortened(std::string_view text) {
    if (text.size() <= kMaxQuoted) {
        return std::string(text);
    }
    std::size_t end = kMaxQuoted;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) {
        --end;
    }
    return std::string(text.substr(0, end)) + "...";
}

// ASCII only: line separators beyond ASCII would break the promise of one line.
std::string inQuotes(std::string_view text) {
    return Json(shortened(text)).dump(-1, ' ', true, Json::error_handler_t::replace);
}

// The place of byte `position` (counted from 1, as the parser counts) as words.
std::string lineAndColumn(std::string_view bytes, std::size_t position) {
    const std::string_view before = bytes.substr(0, position > 0 ? position - 1 : 0);
    const auto line = 1 + std::ranges::count(before, '\n');
    const std::size_t lineStart = before.rfind('\n') + 1;  // npos + 1 is 0
    return say("line %1, column %2", line, before.size() - lineStart + 1);
}

// The parser's own words without its numbering and without the bytes last read, which may be anything.
std::string syntaxError(const std::string& what) {
    const std::size_t dash = what.find(" - ");
    if (dash == std::string::npos) {
        return say("syntax error");
    }
    const std::size_t lastRead = what.find("; last read: ");
    return what.substr(dash + 3, lastRead == std::string::npos ? lastRead : lastRead - dash - 3);
}

// The same document with line breaks and tabs between its values as spaces. The parser spells out every
// control character before a syntax error, eight bytes each: megabytes of line breaks would cost it a second
// and more.
std::string spacesOutsideTexts(std::string_view bytes) {
    std::string result(bytes);
    bool inText = false;
    for (std::size_t i = 0; i < result.size(); ++i) {
        char& c = result[i];
        if (c == '"') {
            inText = !inText;
        } else if (inText && c == '\\') {
            ++i;
        } else if (!inText && (c == '\n' || c == '\r' || c == '\t')) {
            c = ' ';
        }
    }
    return result;
}

// Builds the document from the parser's events. The library's own builder would take quadratic time for an
// object of many keys and let a later key silently win over an earlier one.
class Builder {
  public:
    explicit Builder(std::string_view bytes) : bytes_(bytes) {}

    [[nodiscard]] Json& root() { return root_; }
    [[nodiscard]] const FileProblem& problem() const { return problem_; }

    // The events, named by the parser.
    bool null() { return add(Json(nullptr)); }
    bool boolean(bool value) { return add(Json(value)); }
    bool number_integer(Json::number_integer_t value) { return add(Json(value)); }
    bool number_unsigned(Json::number_unsigned_t value) { return add(Json(value)); }
    bool number_float(Json::number_float_t value, const std::string&) { return add(Json(value)); }
    bool string(std::string& value) { return add(Json(std::move(value))); }
    bool binary(Json::binary_t&) { return refuse(say("not JSON")); }
    bool start_object(std::size_t) { return open(Json::object()); }
    bool start_array(std::size_t) { return open(Json::array()); }
    bool end_object() { return close(); }
    bool end_array() { return close(); }

    bool key(std::string& name) {
        Frame& frame = frames_.back();
        frame.key = std::move(name);
        if (!frame.keys.insert(frame.key).second) {
            return refuse(say("key given twice, expected it once"));
        }
        return countPart();
    }

    bool parse_error(std::size_t position, const std::string& lastToken, const Json::exception& error) {
        constexpr int kOutOfRange = 406;
        if (error.id == kOutOfRange) {
            return refuse(say("expected a number a double can hold, found %1", shortened(lastToken)));
        }
        return refuse(say("not JSON at %1: %2", lineAndColumn(bytes_, position), syntaxError(error.what())));
    }

  private:
    using Members = std::vector<std::pair<const std::string, Json>>;

    struct Frame {
        Json* node;
        std::string key;                         // objects: the key last read
        std::unordered_set<std::string> keys{};  // objects: all keys so far
    };

    // Grows by moving: left to itself, the vector would copy whole subtrees, because its pairs' constant keys
    // cannot be moved.
    static void makeRoom(Members& members) {
        if (members.size() < members.capacity()) {
            return;
        }
        Members grown;
        grown.reserve(2 * members.size() + 1);
        for (auto& [key, value] : members) {
            grown.emplace_back(key, std::move(value));
        }
        members.swap(grown);
    }

    Json* insert(Json&& value) {
        if (frames_.empty()) {
            root_ = std::move(value);
            return &root_;
        }
        Frame& frame = frames_.back();
        if (frame.node->is_array()) {
            auto& elements = frame.node->get_ref<Json::array_t&>();
            return &elements.emplace_back(std::move(value));
        }
        // The underlying vector's own emplace_back: keys are known to be new.
        Members& members = frame.node->get_ref<Json::object_t&>();
        makeRoom(members);
        return &members.emplace_back(frame.key, std::move(value)).second;
    }

    bool add(Json&& value) {
        if (++values_ > kMaxJsonValues) {
            return refuse(say("more than %1 values", kMaxJsonValues));
        }
        insert(std::move(value));
        return true;
    }

    bool open(Json&& container) {
        if (frames_.size() >= kMaxNesting) {
            return refuse(say("nested deeper than %1 levels", kMaxNesting));
        }
        if (!countPart()) {
            return false;
        }
        Json* node = insert(std::move(container));
        frames_.push_back({node, {}});
        return true;
    }

    bool countPart() {
        return ++parts_ <= kMaxJsonParts ||
               refuse(say("more than %1 keys, arrays and objects", kMaxJsonParts));
    }

    bool close() {
        frames_.pop_back();
        return true;
    }

    // Where the parser stands: the key or element being read.
    [[nodiscard]] std::string path() const {
        std::string path;
        for (const Frame& frame : frames_) {
            if (frame.node->is_array()) {
                // All but the innermost array already hold the element being read.
                const bool innermost = &frame == &frames_.back();
                path = pathOf(path, frame.node->size() - (innermost ? 0 : 1));
            } else if (!frame.keys.empty()) {
                path = pathOf(path, frame.key);
            }
        }
        return path;
    }

    bool refuse(std::string reason) {
        // Deep nesting would make a path nobody reads.
        constexpr std::size_t kMaxPathDepth = 8;
        problem_ = {frames_.size() > kMaxPathDepth ? std::string() : path(), std::move(reason)};
        return false;
    }

    std::string_view bytes_;
    Json root_;
    std::vector<Frame> frames_;
    std::size_t values_ = 0;  // numbers, texts, true, false and null
    std::size_t parts_ = 0;   // keys, arrays and objects
    FileProblem problem_;
};

// Appends `value` on one line; gives up, with `out` in any state, once it is longer than `limit`.
bool appendOnOneLine(std::string& out, const Json& value, std::size_t limit) {
    if (!value.is_structured()) {
        out += value.dump(-1, ' ', false, Json::error_handler_t::replace);
        return out.size() <= limit;
    }
    out += value.is_object() ? '{' : '[';
    bool first = true;
    for (const auto& item : value.items()) {
        out += first ? "" : ", ";
        first = false;
        if (value.is_object()) {
            out += Json(item.key()).dump(-1, ' ', false, Json::error_handler_t::replace) + ": ";
        }
        if (!appendOnOneLine(out, item.value(), limit)) {
            return false;
        }
    }
    out += value.is_object() ? '}' : ']';
    return out.size() <= limit;
}

// `column`: where the value begins on its line. Recursion is bounded by kMaxNesting.
void append(std::string& out, const Json& value, std::size_t indent, std::size_t column) {
    std::string oneLine;
    // One column is kept for the comma that may follow.
    const std::size_t limit = column + 1 < kMaxColumns ? kMaxColumns - column - 1 : 0;
    if (appendOnOneLine(oneLine, value, limit) || !value.is_structured()) {
        out += oneLine;
        return;
    }
    const bool isObject = value.is_object();
    out += isObject ? "{" : "[";
    const std::size_t inner = indent + kIndent;
    const bool isLong = value.is_array() && value.size() > kMostSpread;
    bool first = true;
    for (const auto& item : value.items()) {
        out += first ? "\n" : ",\n";
        first = false;
        const std::size_t lineStart = out.size();
        out.append(inner, ' ');
        if (isObject) {
            out += Json(item.key()).dump(-1, ' ', false, Json::error_handler_t::replace) + ": ";
        }
        if (isLong) {
            appendOnOneLine(out, item.value(), out.max_size());
        } else {
            append(out, item.value(), inner, out.size() - lineStart);
        }
    }
    out += '\n';
    out.append(indent, ' ');
    out += isObject ? '}' : ']';
}

}  // namespace

JsonResult parseJson(std::string_view bytes) {
    Builder builder(bytes);
    if (!Json::sax_parse(spacesOutsideTexts(bytes), &builder)) {
        return {std::nullopt, builder.problem()};
    }
    return {std::move(builder.root()), {}};
}

std::string printJson(const Json& value) {
    std::string out;
    append(out, value, 0, 0);
    out += '\n';
    return out;
}

std::string pathOf(const std::string& path, std::string_view key) {
    const auto isWord = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_';
    };
    if (key.empty() || key.size() > kMaxQuoted || !std::ranges::all_of(key, isWord)) {
        return path + "[" + inQuotes(key) + "]";
    }
    return path.empty() ? std::string(key) : path + "." + std::string(key);
}

std::string pathOf(const std::string& path, std::size_t index) {
    return path + "[" + std::to_string(index) + "]";
}

std::string inWords(const Json& value) {
    if (value.is_object()) {
        return say("an object");
    }
    if (value.is_array()) {
        return value.empty() ? say("an empty array") : say("an array of %1", value.size());
    }
    if (value.is_string()) {
        return inQuotes(value.get_ref<const std::string&>());
    }
    return value.dump();
}

}  // namespace bolthole
