// The marks of numbers that nobody measured in the car file: Reader and Writer of app/carfile/car_file_io.h.
#include <array>

#include "app/carfile/car_file_io.h"
#include "geometry/car/starting_numbers.h"
#include "geometry/units/say.h"

namespace bolthole::detail {

namespace {

constexpr std::array<std::string_view, 3> kAxisMarks{"[0]", "[1]", "[2]"};

// Marks the number or point of that name. False: the object has none.
bool markNamed(std::string_view name, Uncertainties& marks, Scope scope, Origin origin) {
    for (const FieldRule* rule : rulesOf(scope)) {
        if (!mayBeStarting(rule->field) || !name.starts_with(rule->path)) {
            continue;
        }
        const std::string_view rest = name.substr(rule->path.size());
        bool isNamed = rest.empty() && !rule->hasAxis;
        if (isNamed) {
            marks.setOrigin(rule->field, -1, origin);
        }
        for (int axis = 0; rule->hasAxis && axis < 3; ++axis) {
            if (rest.empty() || rest == kAxisMarks[static_cast<std::size_t>(axis)]) {
                marks.setOrigin(rule->field, axis, origin);
                isNamed = true;
            }
        }
        if (isNamed) {
            return true;
        }
    }
    return false;
}

void writePoint(const Uncertainties& marks, const FieldRule& rule, Origin origin, Json& names) {
    std::array<bool, 3> marked{};
    for (std::size_t axis = 0; axis < 3; ++axis) {
        marked[axis] = marks.originOf(rule.field, static_cast<int>(axis)) == origin;
    }
    if (marked[0] && marked[1] && marked[2]) {
        names.push_back(rule.path);
        return;
    }
    for (std::size_t axis = 0; axis < 3; ++axis) {
        if (marked[axis]) {
            names.push_back(std::string(rule.path).append(kAxisMarks[axis]));
        }
    }
}

}  // namespace

void Reader::origins(const char* key, Uncertainties& marks, Scope scope, Origin origin) {
    const Json* node = find(key);
    if (node == nullptr) {
        return;
    }
    const std::string path = pathOf(path_, key);
    if (!node->is_array()) {
        failExpected(path, say("an array of names of numbers"), *node);
    }
    for (std::size_t index = 0; index < node->size(); ++index) {
        const Json& name = (*node)[index];
        if (!name.is_string() || !markNamed(name.get_ref<const std::string&>(), marks, scope, origin)) {
            failExpected(pathOf(path, index), say("the name of a measured number of this object"), name);
        }
    }
}

void Writer::origins(const char* key, const Uncertainties& marks, Scope scope, Origin origin) {
    Json names = Json::array();
    for (const FieldRule* rule : rulesOf(scope)) {
        if (rule->hasAxis) {
            writePoint(marks, *rule, origin, names);
        } else if (marks.originOf(rule->field) == origin) {
            names.push_back(rule->path);
        }
    }
    if (names.empty()) {
        remove(key);
    } else {
        put(key, std::move(names));
    }
}

}  // namespace bolthole::detail
