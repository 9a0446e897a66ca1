// The marks of numbers that nobody measured in the car file: Reader and Writer of app/carfile/car_file_io.h.
#include <array>
#include <string>
#include <utility>

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

struct PlateRuleName {
    std::string_view name;
    bool PlateStarts::*mark;
};
constexpr std::array<PlateRuleName, 3> kPlateRules{{{"hole_diameter", &PlateStarts::holeDiameter},
                                                    {"edge_distance", &PlateStarts::edgeDistance},
                                                    {"hole_spacing", &PlateStarts::holeSpacing}}};

std::string cornerName(std::size_t corner) {
    return "corners[" + std::to_string(corner) + "]";
}

// Marks the number or corner of that name. False: the plate has none.
bool markNamed(std::string_view name, Plate& plate) {
    for (const PlateRuleName& rule : kPlateRules) {
        if (name == rule.name) {
            plate.starts.*rule.mark = true;
            return true;
        }
    }
    for (std::size_t corner = 0; corner < plate.corners.size(); ++corner) {
        const std::string whole = cornerName(corner);
        if (!name.starts_with(whole)) {
            continue;
        }
        const std::string_view rest = name.substr(whole.size());
        for (const int axis : {0, 1}) {
            if (rest.empty() || rest == kAxisMarks[static_cast<std::size_t>(axis)]) {
                plate.starts.corners.insert({corner, axis});
            }
        }
        return rest.empty() || rest == kAxisMarks[0] || rest == kAxisMarks[1];
    }
    return false;
}

void writeCorner(const Plate& plate, std::size_t corner, Json& names) {
    const bool forward = plate.starts.corners.contains({corner, 0});
    const bool up = plate.starts.corners.contains({corner, 1});
    if (forward || up) {
        names.push_back(cornerName(corner).append(forward && up ? "" : kAxisMarks[forward ? 0 : 1]));
    }
}

}  // namespace

const Json* Reader::namesOf(const char* key) const {
    const Json* node = find(key);
    if (node != nullptr && !node->is_array()) {
        failExpected(pathOf(path_, key), say("an array of names of numbers"), *node);
    }
    return node;
}

void Reader::plateStarts(const char* key, Plate& plate) {
    const Json* node = namesOf(key);
    for (std::size_t index = 0; node != nullptr && index < node->size(); ++index) {
        const Json& name = (*node)[index];
        if (!name.is_string() || !markNamed(name.get_ref<const std::string&>(), plate)) {
            failExpected(pathOf(pathOf(path_, key), index), say("the name of a number of this plate"), name);
        }
    }
}

void Writer::plateStarts(const char* key, const Plate& plate) {
    Json names = Json::array();
    for (std::size_t corner = 0; corner < plate.corners.size(); ++corner) {
        writeCorner(plate, corner, names);
    }
    for (const PlateRuleName& rule : kPlateRules) {
        if (plate.starts.*rule.mark) {
            names.push_back(rule.name);
        }
    }
    putNames(key, std::move(names));
}

void Writer::putNames(const char* key, Json names) {
    if (names.empty()) {
        remove(key);
    } else {
        put(key, std::move(names));
    }
}

void Reader::origins(const char* key, Uncertainties& marks, Scope scope, Origin origin) {
    const Json* node = namesOf(key);
    for (std::size_t index = 0; node != nullptr && index < node->size(); ++index) {
        const Json& name = (*node)[index];
        if (!name.is_string() || !markNamed(name.get_ref<const std::string&>(), marks, scope, origin)) {
            failExpected(pathOf(pathOf(path_, key), index),
                         say("the name of a measured number of this object"), name);
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
    putNames(key, std::move(names));
}

}  // namespace bolthole::detail
