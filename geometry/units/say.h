// Sentences for a person, without Qt: every text of this floor and of the car file's reader goes through
// here, so that it can be put into another language. What is printed for programs to read is English, and
// never comes by here with a translator set.
#pragma once

#include <array>
#include <concepts>
#include <span>
#include <string>
#include <string_view>
#include <utility>

namespace bolthole {

/// Puts a text into a person's language, its places left as they are. `count`: of how many things it speaks;
/// %n in it has become that number, in the plural form the language has for so many. Below 0: it speaks of no
/// number.
using SayTranslator = std::string (*)(const char* text, int count);

/// From now on texts come from `translator`; null: as they stand, in English. To be called before there is a
/// second thread, or while no other composes texts.
void setSayTranslator(SayTranslator translator);

/// Of how many things a text speaks: its %n.
struct Count {
    int of = 0;

    /// `things`: at most as many as an int holds, as all lists of a car are.
    template <std::integral Number>
    explicit constexpr Count(Number things) : of(static_cast<int>(things)) {}
};

/// What stands at a place of a text: words or a whole number.
class SaidPart {
  public:
    // NOLINTBEGIN(google-explicit-constructor): a part is whatever can be read
    SaidPart(std::string text) : text_(std::move(text)) {}
    SaidPart(std::string_view text) : text_(text) {}
    SaidPart(const char* text) : text_(text) {}
    template <std::integral Number>
    SaidPart(Number number) : text_(std::to_string(number)) {}
    // NOLINTEND(google-explicit-constructor)

    [[nodiscard]] const std::string& text() const { return text_; }

  private:
    std::string text_;
};

/// The text in the person's language with parts[0] at %1, and so on up to %9. Parts are put in as they are,
/// whatever signs they hold; a place without a part stays. `count`: as a SayTranslator takes it.
[[nodiscard]] std::string sayWith(std::string_view text, int count, std::span<const SaidPart> parts);

/// The same, parts one after the other: say("%1 stops travel at %2", name, length). The text is a whole
/// sentence, or what can stand alone, so that the parts may change their order.
template <class... Parts>
[[nodiscard]] std::string say(std::string_view text, Parts&&... parts) {
    const std::array<SaidPart, sizeof...(Parts)> all{SaidPart(std::forward<Parts>(parts))...};
    return sayWith(text, -1, all);
}

/// The same of so many things, %n in the text: say("%n rows of %1", Count(rows), name). English has its text
/// for one written apart, as there is no translation into it.
template <class... Parts>
[[nodiscard]] std::string say(std::string_view text, Count count, Parts&&... parts) {
    const std::array<SaidPart, sizeof...(Parts)> all{SaidPart(std::forward<Parts>(parts))...};
    return sayWith(text, count.of, all);
}

/// Marks a text that say() is given elsewhere, so that those who translate find it.
[[nodiscard]] consteval std::string_view phrase(std::string_view text) {
    return text;
}

}  // namespace bolthole
