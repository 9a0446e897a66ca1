// The schema of the car file and the fuzzer's words against the table of numbers, geometry/car/fields.h: both
// have every number of the table, as the table has it. With BOLTHOLE_WRITE_SCHEMA=1 in the environment they
// are written anew instead: what is said of objects and words stays as it stands in the schema.
#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <fstream>
#include <functional>
#include <set>
#include <sstream>
#include <string>
#include <string_view>

#include "app/carfile/car_file_io.h"
#include "geometry/car/fields.h"

namespace bolthole {
namespace {

using Json = nlohmann::ordered_json;

const std::string kSchemaFile = BOLTHOLE_SOURCE_DIR "/resources/car.schema.json";
const std::string kWordFile = BOLTHOLE_SOURCE_DIR "/tests/fuzz/car_file.dict";

bool isWriting() {
    return std::getenv("BOLTHOLE_WRITE_SCHEMA") != nullptr;
}

std::string textOf(const std::string& name) {
    const std::ifstream file(name);
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

/// As the schema is laid out: an object that holds no other stands on one line.
std::string printed(const Json& node, int indent = 0) {
    const auto isObject = [](const Json& each) { return each.is_object(); };
    if (node.is_object() && std::ranges::any_of(node, isObject)) {
        std::string text;
        for (const auto& [key, value] : node.items()) {
            text += (text.empty() ? "{\n" : ",\n") + std::string(static_cast<std::size_t>(indent) + 2, ' ') +
                    Json(key).dump() + ": " + printed(value, indent + 2);
        }
        return text + "\n" + std::string(static_cast<std::size_t>(indent), ' ') + "}";
    }
    if (!node.is_structured()) {
        return node.dump();
    }
    std::string text;
    for (const auto& [key, value] : node.items()) {
        text +=
            (text.empty() ? "" : ", ") + (node.is_object() ? Json(key).dump() + ": " : "") + printed(value);
    }
    return (node.is_object() ? "{" : "[") + text + (node.is_object() ? "}" : "]");
}

std::string_view unitWords(Quantity quantity) {
    switch (quantity) {
        case Quantity::length:
            return "mm";
        case Quantity::angle:
            return "deg";
        case Quantity::mass:
            return "kg";
        case Quantity::percent:
            return "percent";
        case Quantity::force:
            return "N";
        case Quantity::torque:
            return "N m";
        case Quantity::rate:
            return "N/mm";
        case Quantity::rollRate:
            return "N m/deg";
        case Quantity::volume:
            return "L";
        case Quantity::density:
            return "kg/L";
        case Quantity::time:
            return "s";
        case Quantity::speed:
            return "rpm";
        case Quantity::inertia:
            return "kg m^2";
        case Quantity::damping:
            return "N s/mm";
        case Quantity::shaftSpeed:
            return "mm/s";
        case Quantity::pressure:
            return "kPa";
        case Quantity::ratio:
        case Quantity::count:
            break;
    }
    return "";
}

std::string described(std::string words, Quantity quantity) {
    const std::string unit(unitWords(quantity));
    return words.empty() || unit.empty() ? words + unit : words + ", " + unit;
}

/// A bound as the file shows it: without what the conversion to its unit rounds off.
Json shownBound(double bound, Quantity quantity) {
    const double shown = bound / fileUnit(quantity);
    const double whole = std::round(shown);
    return std::abs(shown - whole) < 1e-9 * std::abs(whole) ? Json(static_cast<std::int64_t>(whole))
                                                            : detail::encode(bound, quantity);
}

/// What the schema has to say of a number.
Json expectedNumber(const FieldRule& rule) {
    const Limits& limits = *rule.limits;
    return Json{{"description", described(std::string(rule.meaning), rule.quantity)},
                {"type", rule.quantity == Quantity::count ? "integer" : "number"},
                {limits.lowIsOpen ? "exclusiveMinimum" : "minimum", shownBound(limits.low, rule.quantity)},
                {limits.highIsOpen ? "exclusiveMaximum" : "maximum", shownBound(limits.high, rule.quantity)}};
}

Json expectedUncertainty(const FieldRule& rule) {
    std::string words = "Of " + std::string(rule.path);
    std::ranges::replace(words, '_', ' ');
    for (std::size_t dot = words.find('.'); dot != std::string::npos; dot = words.find('.')) {
        words.replace(dot, 1, ", ");
    }
    Json node{
        {"description", described(std::move(words), rule.quantity)}, {"type", "number"}, {"minimum", 0}};
    const double high = uncertaintyLimits(rule.field).high;
    const bool isKnown = rule.quantity == Quantity::length || rule.quantity == Quantity::angle ||
                         rule.quantity == Quantity::mass;
    if (isKnown) {
        node["maximum"] = shownBound(high, rule.quantity);
    }
    return node;
}

/// Goes through the schema, along what it refers to, and makes what is missing if it is being written.
class Schema {
  public:
    explicit Schema(Json& schema) : schema_(schema) {}

    Json* rootOf(Scope scope) {
        const char* name = nullptr;
        switch (scope) {
            case Scope::car:
                return &schema_;
            case Scope::tool:
                name = "tools";
                break;
            case Scope::link:
                name = "link";
                break;
            case Scope::hole:
            case Scope::mount:
                name = "hole";
                break;
            case Scope::driveline:
                name = "driveline";
                break;
            case Scope::target:
                return &schema_["properties"]["wanted"];
            case Scope::ballast:
                name = "load";
                break;
            case Scope::spring:
                name = "spring";
                break;
        }
        return &schema_["$defs"][name];
    }
    /// The property of an object, a reference as it stands; null: none.
    Json* property(Json& object, const std::string& key) {
        Json& properties = resolved(object)["properties"];
        if (isWriting() && !properties.contains(key)) {
            properties[key] = Json::object();
        }
        return properties.contains(key) ? &properties[key] : nullptr;
    }
    /// The node of a path from an object on; null: none.
    Json* find(Json& object, std::string_view path) {
        const std::size_t dot = path.find('.');
        Json* node = property(object, std::string(path.substr(0, dot)));
        if (dot == std::string_view::npos || node == nullptr) {
            return node;
        }
        if (node->empty()) {
            *node = {{"description", ""},
                     {"type", "object"},
                     {"additionalProperties", true},
                     {"properties", Json::object()}};
        }
        return find(*node, path.substr(dot + 1));
    }

  private:
    Json& resolved(Json& node) {
        if (!node.contains("$ref")) {
            return node;
        }
        const std::string pointer = node["$ref"].get<std::string>().substr(1);
        return schema_[Json::json_pointer(pointer)];
    }

    Json& schema_;
};

/// Compares what stands there, or makes it stand there.
void expectNode(Json* node, Json expected, const std::string& path) {
    ASSERT_NE(node, nullptr) << path << ": add " << printed(expected);
    if (expected.contains("type") && node->contains("default")) {
        expected["default"] = (*node)["default"];
    }
    if (isWriting()) {
        *node = expected;
    }
    EXPECT_EQ(printed(*node), printed(expected)) << path;
}

void expectPoint(const Json* node, std::string_view definition, const std::string& path) {
    ASSERT_NE(node, nullptr) << path;
    EXPECT_EQ(node->value("$ref", ""), "#/$defs/" + std::string(definition)) << path;
}

TEST(CarSchema, HasEveryNumberAsTheTableHasIt) {
    Json document = Json::parse(textOf(kSchemaFile));
    EXPECT_EQ(printed(document) + "\n", textOf(kSchemaFile)) << "laid out otherwise than this test prints it";
    Schema schema(document);
    for (const FieldRule& rule : fieldRules()) {
        Json* root = schema.rootOf(rule.scope);
        Json* node = schema.find(*root, rule.path);
        const std::string path = jsonPath({.field = rule.field});
        if (rule.hasAxis) {
            expectPoint(node, rule.mayBeUnknown ? "entered_point" : "point", path);
        } else {
            expectNode(node, expectedNumber(rule), path);
        }
        if (!rule.isMeasured) {
            continue;
        }
        Json* own = schema.property(*schema.find(*root, "u"), std::string(rule.path));
        if (rule.hasAxis) {
            expectPoint(own, "point_uncertainty", path + ", u");
        } else {
            expectNode(own, expectedUncertainty(rule), path + ", u");
        }
    }
    if (isWriting()) {
        std::ofstream(kSchemaFile) << printed(document) << "\n";
    }
}

/// Every key and word of the schema.
void addWords(const Json& node, std::set<std::string>& words) {
    if (node.is_object() && node.contains("properties") && node["properties"].is_object()) {
        for (const auto& [key, value] : node["properties"].items()) {
            words.insert(key);
        }
    }
    if (node.is_object() && node.contains("enum") && node["enum"].is_array()) {
        for (const Json& word : node["enum"]) {
            words.insert(word.get<std::string>());
        }
    }
    if (node.is_structured()) {
        for (const Json& each : node) {
            addWords(each, words);
        }
    }
}

TEST(CarSchema, TheFuzzerKnowsEveryKeyAndWord) {
    std::set<std::string> words;
    addWords(Json::parse(textOf(kSchemaFile)), words);
    std::string expected = "# Keys and words of the car file, and numbers that hurt.\n";
    for (const std::string& word : words) {
        expected += Json(Json(word).dump()).dump() + "\n";
    }
    std::istringstream old(textOf(kWordFile));
    for (std::string line; std::getline(old, line);) {
        if (!line.starts_with("#") && !line.starts_with("\"\\\"")) {
            expected += line + "\n";
        }
    }
    if (isWriting()) {
        std::ofstream(kWordFile) << expected;
    }
    EXPECT_EQ(textOf(kWordFile), expected);
}

}  // namespace
}  // namespace bolthole
