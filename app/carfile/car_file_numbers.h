// The numbers of one part of a car in its file, by their rows of geometry/car/fields.h: keys, objects within
// objects, what may be absent and what an absent one stands for. Serves Reader and Writer alike. Private to
// car_file.cpp.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "geometry/car/fields.h"

namespace bolthole::detail {

template <typename Io>
class Numbers;

/// The numbers in an object of their own within a part's, for Io to read or write.
template <typename Io>
struct InnerNumbers {
    Numbers<Io>& outer;
    std::string path;
};

/// The numbers of a part, or of an object within it, that have not had their turn: in the order of their rows
/// unless one is called for. What else the object holds goes between them by hand.
template <typename Io>
class Numbers {
  public:
    /// All numbers of a part.
    Numbers(Io& io, const Part<Car>& part, Scope scope) : io_(io), part_(part), scope_(scope) {
        const auto rules = rulesOf(scope);
        left_.assign(rules.begin(), rules.end());
    }
    /// Those of an object within it; `path` names it from the part on.
    Numbers(Io& io, const Numbers& outer, const std::string& path)
        : io_(io), part_(outer.part_), scope_(outer.scope_), path_(path) {
        for (const FieldRule* rule : rulesOf(scope_)) {
            if (isBelow(*rule, path_)) {
                left_.push_back(rule);
            }
        }
    }

    [[nodiscard]] Io& io() const { return io_; }
    /// The object: "weighing.driver"; empty: the part itself.
    [[nodiscard]] const std::string& path() const { return path_; }
    /// The part, if it is such a one; else null.
    template <typename T>
    [[nodiscard]] T* part() const {
        T* const* found = std::get_if<T*>(&part_);
        return found == nullptr ? nullptr : *found;
    }

    /// The rows of that key, which have had their turn then.
    std::vector<const FieldRule*> take(std::string_view key) {
        std::vector<const FieldRule*> rules;
        std::erase_if(left_, [&](const FieldRule* rule) {
            const bool isIt = keyOf(*rule) == key;
            if (isIt) {
                rules.push_back(rule);
            }
            return isIt;
        });
        return rules;
    }
    /// The number or the object of that key.
    void only(const std::string& key) {
        const std::vector<const FieldRule*> rules = take(key);
        if (rules.size() == 1 && keyOf(*rules.front()).size() + prefix() == rules.front()->path.size()) {
            exchangeNumber(*rules.front());
        } else if (!rules.empty()) {
            exchangeObject(key, rules);
        }
    }
    /// An object that the part may have or not.
    template <typename T>
    void optional(const std::string& key, std::optional<T>& value) {
        take(key);
        InnerNumbers<Io> inner{*this, pathOf(key)};
        io_.optionalPart(key.c_str(), value, inner);
    }
    /// The object of that key, which holds more than numbers and may be empty of them.
    void object(const std::string& key) {
        take(key);
        InnerNumbers<Io> inner{*this, pathOf(key)};
        io_.rareObject(key.c_str(), inner);
    }
    /// All that are left.
    void rest() {
        while (!left_.empty()) {
            only(std::string(keyOf(*left_.front())));
        }
    }

  private:
    static bool isBelow(const FieldRule& rule, std::string_view path) {
        return rule.path.size() > path.size() && rule.path.starts_with(path) && rule.path[path.size()] == '.';
    }
    [[nodiscard]] std::size_t prefix() const { return path_.empty() ? 0 : path_.size() + 1; }
    [[nodiscard]] std::string pathOf(const std::string& key) const {
        return path_.empty() ? key : path_ + "." + key;
    }
    /// Its key in this object: its own, or that of the object it stands in.
    [[nodiscard]] std::string_view keyOf(const FieldRule& rule) const {
        const std::string_view rest = rule.path.substr(prefix());
        return rest.substr(0, rest.find('.'));
    }

    void exchangeNumber(const FieldRule& rule) {
        struct Visitor {
            Io& io;
            const FieldRule& rule;
            const char* key;
            void operator()(std::monostate) const {}
            void operator()(double* value) const {
                if (rule.isRare) {
                    io.rareNumber(key, *value, rule.field, *rule.fallback);
                } else {
                    io.number(key, *value, rule.field, rule.fallback);
                }
            }
            void operator()(int* value) const {
                const auto fallback =
                    rule.fallback ? std::optional(static_cast<int>(*rule.fallback)) : std::nullopt;
                io.whole(key, *value, rule.field, fallback);
            }
            void operator()(OptionalNumber* value) const { io.optionalNumber(key, *value, rule.field); }
        };
        // Rows name their keys by literals, so that the last of a path ends as a C string does.
        const char* key = rule.path.substr(prefix()).data();
        if (rule.hasAxis) {
            exchangePoint(rule, key);
        } else {
            std::visit(Visitor{io_, rule, key}, rule.access.slot(part_, -1));
        }
    }

    void exchangePoint(const FieldRule& rule, const char* key) {
        if (rule.mayBeUnknown) {
            std::array<OptionalNumber, 3> point;
            each<OptionalNumber>(rule,
                                 [&](std::size_t axis, OptionalNumber& number) { point[axis] = number; });
            io_.rarePoint(key, point, rule.field);
            each<OptionalNumber>(rule,
                                 [&](std::size_t axis, OptionalNumber& number) { number = point[axis]; });
        } else {
            Eigen::Vector3d point = Eigen::Vector3d::Zero();
            const auto at = [&point](std::size_t axis) -> double& {
                return point[static_cast<Eigen::Index>(axis)];
            };
            each<double>(rule, [&](std::size_t axis, double& number) { at(axis) = number; });
            io_.point(key, point, rule.field);
            each<double>(rule, [&](std::size_t axis, double& number) { number = at(axis); });
        }
    }

    template <typename T, typename Do>
    void each(const FieldRule& rule, const Do& action) const {
        for (int axis = 0; axis < 3; ++axis) {
            const Slot<Car> slot = rule.access.slot(part_, axis);
            if (T* const* number = std::get_if<T*>(&slot)) {
                action(static_cast<std::size_t>(axis), **number);
            }
        }
    }

    /// An object is there if one of its numbers must be; a new file shows it if it shows one of its numbers.
    void exchangeObject(const std::string& key, const std::vector<const FieldRule*>& rules) {
        InnerNumbers<Io> inner{*this, pathOf(key)};
        const auto hasFallback = [](const FieldRule* rule) { return rule->fallback.has_value(); };
        if (std::ranges::all_of(rules, hasFallback)) {
            io_.defaultedObject(key.c_str(), inner);
        } else if (std::ranges::none_of(rules, &FieldRule::mayBeUnknown)) {
            io_.object(key.c_str(), inner, io_.at());
        } else {
            io_.rareObject(key.c_str(), inner);
        }
    }

    Io& io_;
    Part<Car> part_;
    Scope scope_;
    std::string path_;
    std::vector<const FieldRule*> left_;
};

}  // namespace bolthole::detail
