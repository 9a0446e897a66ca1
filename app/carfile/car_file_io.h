// The two sides of the car file's one description (car_file.cpp): a reader that checks and a writer that
// keeps what it does not know. Both offer the same members, so that one function an object describes its
// keys. Private to car_file.cpp.
#pragma once

#include <Eigen/Core>
#include <array>
#include <nlohmann/json.hpp>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "app/carfile/json_text.h"
#include "geometry/car/fields.h"
#include "geometry/car/pass_fields.h"
#include "geometry/edits/edit.h"
#include "geometry/units/say.h"

namespace bolthole::detail {

using Json = nlohmann::ordered_json;

/// A word of the file and what it means.
template <typename T>
using Word = std::pair<std::string_view, T>;

/// What was expected of a text that is refused; empty: it is allowed.
using TextRule = std::string (*)(std::string_view text);

/// SI value of a number of the file; nothing if the node is no number.
[[nodiscard]] std::optional<double> decode(const Json& node, Quantity quantity);

/// The shortest decimal that decode() turns back into `value`; an integer where it is one.
[[nodiscard]] Json encode(double value, Quantity quantity);

/// What the number of the file was, if it still stands for `value`; else the new number.
[[nodiscard]] Json keptOrEncoded(const Json* old, double value, Quantity quantity);

/// Refuse the file: what is wrong at that place, or what was expected there and what was found.
[[noreturn]] void fail(std::string path, std::string reason);
[[noreturn]] void failExpected(std::string path, std::string_view expected, const Json& found);

/// Rows of numbers as the file has them.
using Table = std::vector<std::vector<double>>;
/// What a table may be: at most so many rows, each of one quantity in at most so many columns, or of as many
/// quantities as it has columns.
struct TableShape {
    std::size_t rows;
    std::size_t columns;
    std::vector<Quantity> quantities;
};

/// The member of an object, or null.
[[nodiscard]] const Json* member(const Json* object, const char* key);

/// Reads one object of the file. Every member throws the first FileProblem it meets. `at` addresses the
/// object's numbers, so that limits come from refusal().
class Reader {
  public:
    Reader(const Json& node, std::string path, FieldId at);

    /// Where this object's numbers stand.
    [[nodiscard]] FieldId at() const { return at_; }

    /// True or false; absent: false, and a new file does not show that either.
    void rareFlag(const char* key, bool& value);

    /// From here on the object's numbers are the uncertainties of those its keys name.
    void readUncertainties() { at_.uncertainty = true; }

    /// Which numbers of the object come from there, nobody having measured them, by their names: "wheelbase",
    /// "at[1]", "at" for all of a point. Absent: none.
    void origins(const char* key, Uncertainties& marks, Scope scope, Origin origin);

    /// The corners of a plate: pairs, forward and up.
    void corners(const char* key, std::vector<Eigen::Vector2d>& value);
    /// A number of a plate; checkPlate() bounds it.
    void plateNumber(const char* key, double& value, Quantity quantity);
    /// Which numbers of the plate nobody measured: "edge_distance", "corners[1][0]", "corners[1]" for both of
    /// its coordinates. Absent: none. After the corners.
    void plateStarts(const char* key, Plate& plate);
    void checkPlate(const Plate& plate) const;
    /// Numbers in a row, at most so many; absent: none.
    void row(const char* key, std::vector<double>& values, Quantity quantity, std::size_t most);
    /// Rows of numbers; absent: none.
    void table(const char* key, Table& rows, const TableShape& shape);
    /// Refuses tables that fit one another badly.
    void check(const TableFault& fault) const;

    /// A number of a pass, which stands as the file has it and may be absent.
    void passNumber(const char* key, std::optional<double>& value, PassField field);
    /// A whole number that must be there.
    void wholeBetween(const char* key, int& value, int least, int most);
    /// Any number between two that must be there.
    void realBetween(const char* key, double& value, double least, double most);
    /// A text of a form of its own that must be there.
    void ruledText(const char* key, std::string& value, TextRule rule);
    /// The same, empty where absent.
    void rareRuledText(const char* key, std::string& value, TextRule rule);
    /// Which of several words an array names; absent: none.
    template <std::size_t N>
    void wordSet(const char* key, std::array<bool, N>& set, const std::array<std::string_view, N>& words) {
        readWordSet(key, set, words);
    }

    /// The file's mark and version.
    void mark(const char* format, int newestVersion);
    /// A number that must be there, or that has a default.
    void number(const char* key, double& value, Field field, std::optional<double> fallback = {});
    void optionalNumber(const char* key, std::optional<double>& value, Field field);
    /// A whole number, bounded as its field.
    void whole(const char* key, int& value, Field field, std::optional<int> fallback = {});
    /// An index into `size` things, 0 where absent.
    void index(const char* key, int& value, std::size_t size);
    void point(const char* key, Eigen::Vector3d& value, Field field);
    /// A text that must be there.
    void text(const char* key, std::string& value);
    /// A text that is empty where absent.
    void optionalText(const char* key, std::string& value);
    /// The same; a new file does not show it empty either.
    void rareText(const char* key, std::string& value) { optionalText(key, value); }

    template <typename T, std::size_t N>
    void word(const char* key, T& value, const std::array<Word<T>, N>& words,
              std::optional<T> fallback = {}) {
        const Json* node = fallback ? find(key) : &need(key, oneOf(spellings(words)));
        value = node == nullptr ? *fallback : words[chosen(key, *node, spellings(words))].second;
    }
    template <typename T, std::size_t N>
    void optionalWord(const char* key, std::optional<T>& value, const std::array<Word<T>, N>& words) {
        const Json* node = find(key);
        value.reset();
        if (node != nullptr) {
            value = words[chosen(key, *node, spellings(words))].second;
        }
    }
    /// An object that must be there.
    template <typename T>
    void object(const char* key, T& value, FieldId at) {
        Reader inner(need(key, say("an object")), pathOf(path_, key), at);
        exchange(inner, value);
    }
    /// An object whose members all have defaults.
    template <typename T>
    void defaultedObject(const char* key, T& value) {
        static const Json nothing = Json::object();
        const Json* node = find(key);
        Reader inner(node == nullptr ? nothing : *node, pathOf(path_, key), at_);
        exchange(inner, value);
    }
    /// An object all whose members may be absent; a new file does not show it empty.
    template <typename T>
    void rareObject(const char* key, T& value) {
        defaultedObject(key, value);
    }
    /// A word with a default that a new file does not show either.
    template <typename T, std::size_t N>
    void rareWord(const char* key, T& value, const std::array<Word<T>, N>& words, T fallback) {
        word(key, value, words, std::optional(fallback));
    }
    /// A point any coordinate of which may be null; absent: none of them is known.
    void rarePoint(const char* key, std::array<std::optional<double>, 3>& value, Field field);
    /// A number with a default that a new file does not show either.
    void rareNumber(const char* key, double& value, Field field, double fallback) {
        number(key, value, field, fallback);
    }
    template <typename T>
    void optionalObject(const char* key, std::optional<T>& value) {
        value.reset();
        if (find(key) != nullptr) {
            object(key, value.emplace(), at_);
        }
    }
    /// An object of numbers, `inner`, that stand in a part `value` which may be absent.
    template <typename T, typename Inner>
    void optionalPart(const char* key, std::optional<T>& value, Inner& inner) {
        value.reset();
        if (find(key) != nullptr) {
            value.emplace();
            object(key, inner, at_);
        }
    }
    /// An array of objects; `place` is the member of FieldId that counts them.
    template <typename T>
    void list(const char* key, std::vector<T>& values, std::size_t least, std::size_t most,
              int FieldId::*place) {
        const Json& array = needArray(key, least, most);
        values.assign(array.size(), T{});
        for (std::size_t i = 0; i < array.size(); ++i) {
            FieldId at = at_;
            at.*place = static_cast<int>(i);
            Reader inner(array[i], pathOf(pathOf(path_, key), i), at);
            values[i].id = static_cast<int>(i);
            exchange(inner, values[i]);
        }
    }

    /// An array that is empty where absent.
    template <typename T>
    void optionalList(const char* key, std::vector<T>& values, std::size_t most, int FieldId::*place) {
        values.clear();
        if (find(key) != nullptr) {
            list(key, values, 0, most, place);
        }
    }
    /// An index into `size` things that may be absent.
    void optionalIndex(const char* key, std::optional<int>& value, std::size_t size);

  private:
    template <typename T, std::size_t N>
    static std::array<std::string_view, N> spellings(const std::array<Word<T>, N>& words) {
        std::array<std::string_view, N> result;
        for (std::size_t i = 0; i < N; ++i) {
            result[i] = words[i].first;
        }
        return result;
    }
    void readWordSet(const char* key, std::span<bool> set, std::span<const std::string_view> words);
    [[nodiscard]] static std::string oneOf(std::span<const std::string_view> words);
    [[nodiscard]] const Json* find(const char* key) const { return member(&node_, key); }
    /// The array of names under a key; null where it is absent.
    [[nodiscard]] const Json* namesOf(const char* key) const;
    [[nodiscard]] const Json& need(const char* key, std::string_view expected) const;
    [[nodiscard]] const Json& needArray(const char* key, std::size_t least, std::size_t most) const;
    [[nodiscard]] std::size_t chosen(const char* key, const Json& node,
                                     std::span<const std::string_view> words) const;
    [[nodiscard]] FieldId idOf(Field field) const;

    const Json& node_;
    std::string path_;
    FieldId at_;
};

/// Writes one object of the file over the one it came from: what still reads the same stays as it is, unknown
/// keys stay in their places, new keys follow the one described before them. The same members as Reader.
class Writer {
  public:
    /// `source`: the object as it was, or null for a new one, which gets every key, defaults included.
    explicit Writer(const Json* source);

    [[nodiscard]] FieldId at() const { return {}; }

    void rareFlag(const char* key, bool value);
    void readUncertainties() const {}
    void origins(const char* key, const Uncertainties& marks, Scope scope, Origin origin);
    void corners(const char* key, const std::vector<Eigen::Vector2d>& value);
    void plateNumber(const char* key, double value, Quantity quantity);
    void plateStarts(const char* key, const Plate& plate);
    void checkPlate(const Plate&) const {}
    void row(const char* key, const std::vector<double>& values, Quantity quantity, std::size_t most);
    void table(const char* key, const Table& rows, const TableShape& shape);
    void check(const TableFault&) const {}

    void passNumber(const char* key, const std::optional<double>& value, PassField field);
    void wholeBetween(const char* key, int value, int least, int most);
    void realBetween(const char* key, double value, double least, double most);
    void ruledText(const char* key, const std::string& value, TextRule) { text(key, value); }
    void rareRuledText(const char* key, const std::string& value, TextRule) { rareText(key, value); }
    template <std::size_t N>
    void wordSet(const char* key, const std::array<bool, N>& set,
                 const std::array<std::string_view, N>& words) {
        writeWordSet(key, set, words);
    }

    void mark(const char* format, int newestVersion);
    void number(const char* key, double value, Field field, std::optional<double> fallback = {});
    void optionalNumber(const char* key, const std::optional<double>& value, Field field);
    void whole(const char* key, int value, Field field, std::optional<int> fallback = {});
    void index(const char* key, int value, std::size_t size);
    void point(const char* key, const Eigen::Vector3d& value, Field field);
    void text(const char* key, const std::string& value);
    void optionalText(const char* key, const std::string& value);
    void rareText(const char* key, const std::string& value);

    template <typename T, std::size_t N>
    void word(const char* key, T value, const std::array<Word<T>, N>& words, std::optional<T> fallback = {}) {
        if (isNewDefault(key, fallback && value == *fallback)) {
            return;
        }
        for (const Word<T>& each : words) {
            if (each.second == value) {
                put(key, Json(each.first));
            }
        }
    }
    template <typename T, std::size_t N>
    void optionalWord(const char* key, const std::optional<T>& value, const std::array<Word<T>, N>& words) {
        if (value) {
            word(key, *value, words);
        } else {
            remove(key);
        }
    }
    template <typename T>
    void object(const char* key, T& value, FieldId) {
        Writer inner(member(source_, key));
        exchange(inner, value);
        put(key, inner.finish());
    }
    template <typename T>
    void defaultedObject(const char* key, T& value) {
        const Json* old = member(source_, key);
        const bool isNew = source_ != nullptr && old == nullptr;
        Writer inner(old);
        inner.sparse_ = isNew;
        exchange(inner, value);
        Json written = inner.finish();
        if (!isNew || !written.empty()) {
            put(key, std::move(written));
        }
    }
    template <typename T>
    void rareObject(const char* key, T& value) {
        const Json* old = member(source_, key);
        Writer inner(old);
        inner.sparse_ = true;
        exchange(inner, value);
        Json written = inner.finish();
        if (old != nullptr || !written.empty()) {
            put(key, std::move(written));
        }
    }
    template <typename T, std::size_t N>
    void rareWord(const char* key, T value, const std::array<Word<T>, N>& words, T fallback) {
        if (value != fallback || member(source_, key) != nullptr) {
            word(key, value, words);
        }
    }
    void rarePoint(const char* key, const std::array<std::optional<double>, 3>& value, Field field);
    void rareNumber(const char* key, double value, Field field, double fallback) {
        if (value != fallback || member(source_, key) != nullptr) {
            number(key, value, field);
        }
    }
    template <typename T>
    void optionalObject(const char* key, std::optional<T>& value) {
        if (value) {
            object(key, *value, {});
        } else {
            remove(key);
        }
    }
    template <typename T, typename Inner>
    void optionalPart(const char* key, const std::optional<T>& value, Inner& inner) {
        if (value) {
            object(key, inner, {});
        } else {
            remove(key);
        }
    }
    template <typename T>
    void list(const char* key, std::vector<T>& values, std::size_t, std::size_t, int FieldId::*) {
        const Json* old = member(source_, key);
        Json array = Json::array();
        for (T& value : values) {
            Writer inner(element(old, value.id));
            exchange(inner, value);
            array.push_back(inner.finish());
        }
        put(key, std::move(array));
    }

    template <typename T>
    void optionalList(const char* key, std::vector<T>& values, std::size_t most, int FieldId::*place) {
        if (values.empty()) {
            remove(key);
        } else {
            list(key, values, 0, most, place);
        }
    }
    void optionalIndex(const char* key, const std::optional<int>& value, std::size_t size);

    /// The object as it is to be written.
    [[nodiscard]] Json finish() const;

  private:
    struct Change {
        std::string key;
        std::optional<Json> value;  // nothing: the key goes away
    };

    void writeWordSet(const char* key, std::span<const bool> set, std::span<const std::string_view> words);
    [[nodiscard]] static const Json* element(const Json* array, int index);
    // Whether a key that was absent and is at its default may stay absent.
    [[nodiscard]] bool isNewDefault(const char* key, bool isDefault) const;
    void put(const char* key, Json value) { changes_.push_back({key, std::move(value)}); }
    void remove(const char* key) { changes_.push_back({key, std::nullopt}); }
    /// An array of names; the key goes with the last of them.
    void putNames(const char* key, Json names);

    const Json* source_;
    bool sparse_;  // defaults that were absent stay absent
    std::vector<Change> changes_;
};

}  // namespace bolthole::detail
