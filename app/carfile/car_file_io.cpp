#include "app/carfile/car_file_io.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <limits>

#include "geometry/units/say.h"

namespace bolthole::detail {

namespace {

double toSi(double inFile, Quantity quantity) {
    return quantity == Quantity::length ? fromMillimetres(inFile) : inFile * fileUnit(quantity);
}

double toFile(double si, Quantity quantity) {
    return quantity == Quantity::length ? si * 1000.0 : si / fileUnit(quantity);
}

// What is allowed for a number, in words: what a value that no number accepts is refused with.
std::string allowed(const FieldId& id) {
    return refusal(id, std::numeric_limits<double>::quiet_NaN());
}

double checkedNumber(const Json& node, const std::string& path, const FieldId& id) {
    const std::optional<double> value = decode(node, quantityOf(id.field));
    const std::string expected = value ? refusal(id, *value) : allowed(id);
    if (!expected.empty()) {
        failExpected(path, expected, node);
    }
    return *value;
}

std::optional<int> wholeNumber(const Json& node, int least, int most) {
    const std::optional<double> value = decode(node, Quantity::count);
    const bool fits = value && *value >= least && *value <= most && *value == std::floor(*value);
    return fits ? std::optional<int>(static_cast<int>(*value)) : std::nullopt;
}

}  // namespace

void fail(std::string path, std::string reason) {
    throw FileProblem{std::move(path), std::move(reason)};
}

void failExpected(std::string path, std::string_view expected, const Json& found) {
    fail(std::move(path), say("expected %1, found %2", expected, inWords(found)));
}

Json keptOrEncoded(const Json* old, double value, Quantity quantity) {
    return old != nullptr && decode(*old, quantity) == value ? *old : encode(value, quantity);
}

std::optional<double> decode(const Json& node, Quantity quantity) {
    return node.is_number() ? std::optional<double>(toSi(node.get<double>(), quantity)) : std::nullopt;
}

Json encode(double value, Quantity quantity) {
    const double exact = toFile(value, quantity);
    double nearest = exact;
    for (const int digits : {15, 16, 17}) {
        std::array<char, 32> text;
        const auto printed =
            std::to_chars(text.data(), text.data() + text.size(), exact, std::chars_format::general, digits);
        std::from_chars(text.data(), printed.ptr, nearest);
        if (toSi(nearest, quantity) == value) {
            break;
        }
    }
    constexpr double kLargestInteger = 1e15;
    const bool isInteger = std::abs(nearest) < kLargestInteger && nearest == std::floor(nearest);
    return isInteger ? Json(static_cast<std::int64_t>(nearest)) : Json(nearest);
}

const Json* member(const Json* object, const char* key) {
    if (object == nullptr || !object->is_object()) {
        return nullptr;
    }
    const auto found = object->find(key);
    return found == object->end() ? nullptr : &*found;
}

Reader::Reader(const Json& node, std::string path, FieldId at)
    : node_(node), path_(std::move(path)), at_(at) {
    if (!node.is_object()) {
        failExpected(path_, say("an object"), node);
    }
}

void Reader::mark(const char* format, int newestVersion) {
    const std::string expected = Json(format).dump();
    const Json& mark = need("format", expected);
    if (mark != Json(format)) {
        failExpected(pathOf(path_, "format"), expected, mark);
    }
    const std::string expectedVersion =
        newestVersion == 1 ? say("version 1") : say("a version from 1 to %1", newestVersion);
    const Json& version = need("version", expectedVersion);
    if (!wholeNumber(version, 1, newestVersion)) {
        const bool isNewer = wholeNumber(version, newestVersion, std::numeric_limits<int>::max()).has_value();
        failExpected(pathOf(path_, "version"),
                     isNewer ? say("%1 (a newer program wrote this file)", expectedVersion) : expectedVersion,
                     version);
    }
}

void Reader::number(const char* key, double& value, Field field, std::optional<double> fallback) {
    const FieldId id = idOf(field);
    const Json* node = fallback ? find(key) : &need(key, allowed(id));
    value = node == nullptr ? *fallback : checkedNumber(*node, pathOf(path_, key), id);
}

void Reader::optionalNumber(const char* key, std::optional<double>& value, Field field) {
    const Json* node = find(key);
    value.reset();
    if (node != nullptr) {
        value = checkedNumber(*node, pathOf(path_, key), idOf(field));
    }
}

void Reader::whole(const char* key, int& value, Field field, std::optional<int> fallback) {
    double number = 0;
    const std::optional<double> numberFallback = fallback ? std::optional<double>(*fallback) : std::nullopt;
    Reader::number(key, number, field, numberFallback);
    value = static_cast<int>(number);
}

void Reader::index(const char* key, int& value, std::size_t size) {
    value = 0;
    const Json* node = find(key);
    if (node == nullptr) {
        return;
    }
    const int last = static_cast<int>(size) - 1;
    const std::optional<int> index = wholeNumber(*node, 0, last);
    if (!index) {
        failExpected(pathOf(path_, key), say("the index of a hole, a whole number from 0 to %1", last),
                     *node);
    }
    value = *index;
}

void Reader::optionalIndex(const char* key, std::optional<int>& value, std::size_t size) {
    const Json* node = find(key);
    value.reset();
    if (node == nullptr) {
        return;
    }
    const int last = static_cast<int>(size) - 1;
    value = wholeNumber(*node, 0, last);
    if (!value) {
        failExpected(pathOf(path_, key),
                     size == 0 ? say("no index, as the list is empty")
                               : say("an index, a whole number from 0 to %1", last),
                     *node);
    }
}

void Reader::point(const char* key, Eigen::Vector3d& value, Field field) {
    const std::string expected = say("an array of three numbers (forward, left, up)");
    const Json& node = need(key, expected);
    const std::string path = pathOf(path_, key);
    if (!node.is_array() || node.size() != 3) {
        failExpected(path, expected, node);
    }
    FieldId id = idOf(field);
    for (std::size_t axis = 0; axis < 3; ++axis) {
        id.axis = static_cast<int>(axis);
        value[id.axis] = checkedNumber(node[axis], pathOf(path, axis), id);
    }
}

void Reader::rarePoint(const char* key, std::array<std::optional<double>, 3>& value, Field field) {
    const std::string expected = say("an array of three numbers or nulls (forward, left, up)");
    value = {};
    const Json* node = find(key);
    if (node == nullptr) {
        return;
    }
    const std::string path = pathOf(path_, key);
    if (!node->is_array() || node->size() != 3) {
        failExpected(path, expected, *node);
    }
    FieldId id = idOf(field);
    for (std::size_t axis = 0; axis < 3; ++axis) {
        id.axis = static_cast<int>(axis);
        if (!(*node)[axis].is_null()) {
            value[axis] = checkedNumber((*node)[axis], pathOf(path, axis), id);
        }
    }
}

void Reader::rareFlag(const char* key, bool& value) {
    const Json* node = find(key);
    if (node != nullptr && !node->is_boolean()) {
        failExpected(pathOf(path_, key), say("true or false"), *node);
    }
    value = node != nullptr && node->get<bool>();
}

void Reader::corners(const char* key, std::vector<Eigen::Vector2d>& value) {
    const std::string expected = say("an array of two numbers (forward, up)");
    const Json& array = needArray(key, kMinPlateCorners, kMaxPlateCorners);
    value.clear();
    for (std::size_t index = 0; index < array.size(); ++index) {
        const Json& node = array[index];
        const bool isPair = node.is_array() && node.size() == 2;
        const std::optional<double> forward = isPair ? decode(node[0], Quantity::length) : std::nullopt;
        const std::optional<double> up = isPair ? decode(node[1], Quantity::length) : std::nullopt;
        if (!forward || !up) {
            failExpected(pathOf(pathOf(path_, key), index), expected, node);
        }
        value.emplace_back(*forward, *up);
    }
}

void Reader::plateNumber(const char* key, double& value, Quantity quantity) {
    const std::string expected = say("a number");
    const Json& node = need(key, expected);
    const std::optional<double> number = decode(node, quantity);
    if (!number) {
        failExpected(pathOf(path_, key), expected, node);
    }
    value = *number;
}

void Reader::checkPlate(const Plate& plate) const {
    PlateFault fault = refusal(plate);
    if (!fault.reason.empty()) {
        fail(pathOf(path_, fault.path.c_str()), std::move(fault.reason));
    }
}

void Reader::text(const char* key, std::string& value) {
    const std::string expected = say("a text");
    const Json& node = need(key, expected);
    if (!node.is_string()) {
        failExpected(pathOf(path_, key), expected, node);
    }
    value = node.get<std::string>();
}

void Reader::optionalText(const char* key, std::string& value) {
    value.clear();
    if (find(key) != nullptr) {
        text(key, value);
    }
}

std::string Reader::oneOf(std::span<const std::string_view> words) {
    std::string list;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string word = '"' + std::string(words[i]) + '"';
        list = i == 0                  ? word
               : i + 1 == words.size() ? say("%1 or %2", list, word)
                                       : say("%1, %2", list, word);
    }
    return list;
}

const Json& Reader::need(const char* key, std::string_view expected) const {
    const Json* node = find(key);
    if (node == nullptr) {
        fail(pathOf(path_, key), say("missing, expected %1", expected));
    }
    return *node;
}

const Json& Reader::needArray(const char* key, std::size_t least, std::size_t most) const {
    const std::string expected = say("an array of %1 to %2 objects", least, most);
    const Json& node = need(key, expected);
    if (!node.is_array() || node.size() < least || node.size() > most) {
        failExpected(pathOf(path_, key), expected, node);
    }
    return node;
}

std::size_t Reader::chosen(const char* key, const Json& node, std::span<const std::string_view> words) const {
    if (node.is_string()) {
        const auto found = std::ranges::find(words, std::string_view(node.get_ref<const std::string&>()));
        if (found != words.end()) {
            return static_cast<std::size_t>(found - words.begin());
        }
    }
    failExpected(pathOf(path_, key), oneOf(words), node);
}

FieldId Reader::idOf(Field field) const {
    FieldId id = at_;
    id.field = field;
    return id;
}

Writer::Writer(const Json* source)
    : source_(source != nullptr && source->is_object() ? source : nullptr), sparse_(source_ != nullptr) {}

void Writer::mark(const char* format, int newestVersion) {
    put("format", Json(format));
    put("version", keptOrEncoded(member(source_, "version"), newestVersion, Quantity::count));
}

void Writer::number(const char* key, double value, Field field, std::optional<double> fallback) {
    if (!isNewDefault(key, fallback && value == *fallback)) {
        put(key, keptOrEncoded(member(source_, key), value, quantityOf(field)));
    }
}

void Writer::optionalNumber(const char* key, const std::optional<double>& value, Field field) {
    if (value) {
        number(key, *value, field);
    } else {
        remove(key);
    }
}

void Writer::whole(const char* key, int value, Field field, std::optional<int> fallback) {
    number(key, value, field, fallback ? std::optional<double>(*fallback) : std::nullopt);
}

void Writer::index(const char* key, int value, std::size_t) {
    if (!isNewDefault(key, value == 0)) {
        put(key, keptOrEncoded(member(source_, key), value, Quantity::count));
    }
}

void Writer::optionalIndex(const char* key, const std::optional<int>& value, std::size_t) {
    if (value) {
        put(key, keptOrEncoded(member(source_, key), *value, Quantity::count));
    } else {
        remove(key);
    }
}

void Writer::point(const char* key, const Eigen::Vector3d& value, Field field) {
    const Json* old = member(source_, key);
    Json point = Json::array();
    for (int axis = 0; axis < 3; ++axis) {
        point.push_back(keptOrEncoded(element(old, axis), value[axis], quantityOf(field)));
    }
    put(key, std::move(point));
}

void Writer::rareFlag(const char* key, bool value) {
    if (value || member(source_, key) != nullptr) {
        put(key, Json(value));
    }
}

void Writer::corners(const char* key, const std::vector<Eigen::Vector2d>& value) {
    const Json* old = member(source_, key);
    Json array = Json::array();
    for (std::size_t index = 0; index < value.size(); ++index) {
        const Json* pair = element(old, static_cast<int>(index));
        array.push_back(Json::array({keptOrEncoded(element(pair, 0), value[index].x(), Quantity::length),
                                     keptOrEncoded(element(pair, 1), value[index].y(), Quantity::length)}));
    }
    put(key, std::move(array));
}

void Writer::plateNumber(const char* key, double value, Quantity quantity) {
    put(key, keptOrEncoded(member(source_, key), value, quantity));
}

void Writer::rarePoint(const char* key, const std::array<std::optional<double>, 3>& value, Field field) {
    if (!value[0] && !value[1] && !value[2]) {
        remove(key);
        return;
    }
    const Json* old = member(source_, key);
    Json point = Json::array();
    for (int axis = 0; axis < 3; ++axis) {
        const std::optional<double>& one = value[static_cast<std::size_t>(axis)];
        point.push_back(one ? keptOrEncoded(element(old, axis), *one, quantityOf(field)) : Json());
    }
    put(key, std::move(point));
}

void Writer::text(const char* key, const std::string& value) {
    put(key, Json(value));
}

void Writer::optionalText(const char* key, const std::string& value) {
    if (!isNewDefault(key, value.empty())) {
        text(key, value);
    }
}

void Writer::rareText(const char* key, const std::string& value) {
    if (!value.empty() || member(source_, key) != nullptr) {
        text(key, value);
    }
}

const Json* Writer::element(const Json* array, int index) {
    if (array == nullptr || !array->is_array() || index < 0 ||
        static_cast<std::size_t>(index) >= array->size()) {
        return nullptr;
    }
    return &(*array)[static_cast<std::size_t>(index)];
}

bool Writer::isNewDefault(const char* key, bool isDefault) const {
    return isDefault && sparse_ && member(source_, key) == nullptr;
}

Json Writer::finish() const {
    Json out = Json::object();
    // The underlying vector's emplace_back: every key comes once.
    std::vector<std::pair<const std::string, Json>>& members = out.get_ref<Json::object_t&>();
    const auto isOld = [this](const Change& change) {
        return member(source_, change.key.c_str()) != nullptr;
    };
    const auto putNewFrom = [&](auto change) {
        for (; change != changes_.end() && !isOld(*change); ++change) {
            if (change->value) {
                members.emplace_back(change->key, *change->value);
            }
        }
    };
    putNewFrom(changes_.begin());
    if (source_ == nullptr) {
        return out;
    }
    for (const auto& [key, value] : source_->get_ref<const Json::object_t&>()) {
        const auto change = std::ranges::find(changes_, key, &Change::key);
        if (change == changes_.end()) {
            members.emplace_back(key, value);
            continue;
        }
        if (change->value) {
            members.emplace_back(key, *change->value);
        }
        putNewFrom(std::next(change));
    }
    return out;
}

}  // namespace bolthole::detail
