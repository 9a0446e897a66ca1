// What a question to a handful of passes comes to: a value, or why there is none.
#pragma once

#include <optional>
#include <string>

namespace bolthole {

/// A value, or the reason why there is none, as a sentence without its full stop. Never both, never neither.
template <class T>
struct Answer {
    std::optional<T> value = std::nullopt;
    std::string reason{};

    Answer(T found) : value(std::move(found)) {}  // NOLINT(google-explicit-constructor): a value is an answer
    /// No value.
    [[nodiscard]] static Answer none(const std::string& why) {
        Answer answer;
        answer.reason = why;
        return answer;
    }

    [[nodiscard]] explicit operator bool() const { return value.has_value(); }
    [[nodiscard]] const T& operator*() const { return *value; }
    [[nodiscard]] const T* operator->() const { return &*value; }

  private:
    Answer() = default;
};

}  // namespace bolthole
