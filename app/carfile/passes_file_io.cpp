// What reading and writing passes needs beyond the rest of the car file: members of
// app/carfile/car_file_io.h.
#include <algorithm>
#include <cmath>

#include "app/carfile/car_file_io.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole::detail {

namespace {

/// What the number of the file was, if it still stands for `value`; else the new number.
Json keptOrNew(const Json* old, double value) {
    return old != nullptr && decode(*old, Quantity::count) == value ? *old : encode(value, Quantity::count);
}

/// Which of the words an array of the file names; nothing where it is no such array.
std::optional<std::vector<std::size_t>> indexesOf(const Json& node, std::span<const std::string_view> words) {
    if (!node.is_array()) {
        return std::nullopt;
    }
    std::vector<std::size_t> indexes;
    for (const Json& each : node) {
        const auto found =
            each.is_string() ? std::ranges::find(words, std::string_view(each.get_ref<const std::string&>()))
                             : words.end();
        if (found == words.end()) {
            return std::nullopt;
        }
        indexes.push_back(static_cast<std::size_t>(found - words.begin()));
    }
    return indexes;
}

}  // namespace

void Reader::passNumber(const char* key, std::optional<double>& value, PassField field) {
    const Json* node = find(key);
    value.reset();
    if (node == nullptr) {
        return;
    }
    value = decode(*node, Quantity::count);
    const std::string expected = refusal(field, value.value_or(std::nan("")));
    if (!expected.empty()) {
        failExpected(pathOf(path_, key), expected, *node);
    }
}

void Reader::wholeBetween(const char* key, int& value, int least, int most) {
    const std::string expected = say("a whole number from %1 to %2", least, most);
    const Json& node = need(key, expected);
    const std::optional<double> number = decode(node, Quantity::count);
    if (!number || *number < least || *number > most || *number != std::floor(*number)) {
        failExpected(pathOf(path_, key), expected, node);
    }
    value = static_cast<int>(*number);
}

void Reader::realBetween(const char* key, double& value, double least, double most) {
    const std::string expected = say("a number from %1 to %2", plainDecimal(least), plainDecimal(most));
    const Json& node = need(key, expected);
    const std::optional<double> number = decode(node, Quantity::ratio);
    if (!number || !(*number >= least && *number <= most)) {
        failExpected(pathOf(path_, key), expected, node);
    }
    value = *number;
}

void Reader::ruledText(const char* key, std::string& value, TextRule rule) {
    const Json& node = need(key, rule(""));
    const std::string expected =
        node.is_string() ? rule(node.get_ref<const std::string&>()) : rule(std::string_view());
    if (!expected.empty()) {
        failExpected(pathOf(path_, key), expected, node);
    }
    value = node.get<std::string>();
}

void Reader::rareRuledText(const char* key, std::string& value, TextRule rule) {
    const Json* node = find(key);
    value.clear();
    if (node != nullptr && *node != Json("")) {
        ruledText(key, value, rule);
    }
}

void Reader::readWordSet(const char* key, std::span<bool> set, std::span<const std::string_view> words) {
    const Json* node = find(key);
    std::ranges::fill(set, false);
    if (node == nullptr) {
        return;
    }
    const auto indexes = indexesOf(*node, words);
    if (!indexes) {
        failExpected(pathOf(path_, key), say("an array of %1", oneOf(words)), *node);
    }
    for (const std::size_t index : *indexes) {
        set[index] = true;
    }
}

void Writer::passNumber(const char* key, const std::optional<double>& value, PassField) {
    if (value) {
        put(key, keptOrNew(member(source_, key), *value));
    } else {
        remove(key);
    }
}

void Writer::wholeBetween(const char* key, int value, int, int) {
    put(key, keptOrNew(member(source_, key), value));
}

void Writer::realBetween(const char* key, double value, double, double) {
    put(key, keptOrNew(member(source_, key), value));
}

/// The file's own order of the words stays while they say the same.
void Writer::writeWordSet(const char* key, std::span<const bool> set,
                          std::span<const std::string_view> words) {
    const Json* old = member(source_, key);
    std::vector<bool> before(set.size(), false);
    if (const auto indexes = old == nullptr ? std::nullopt : indexesOf(*old, words)) {
        for (const std::size_t index : *indexes) {
            before[index] = true;
        }
    }
    if (old != nullptr && std::ranges::equal(before, set)) {
        put(key, *old);
        return;
    }
    Json array = Json::array();
    for (std::size_t index = 0; index < set.size(); ++index) {
        if (set[index]) {
            array.push_back(words[index]);
        }
    }
    if (array.empty() && old == nullptr) {
        return;
    }
    put(key, std::move(array));
}

}  // namespace bolthole::detail
