#include "geometry/units/say.h"

#include <atomic>

namespace bolthole {

namespace {

std::atomic<SayTranslator>& translatorInUse() {
    static std::atomic<SayTranslator> translator{nullptr};
    return translator;
}

std::string inEnglish(std::string_view text, int count) {
    std::string words(text);
    const std::size_t place = count < 0 ? std::string::npos : words.find("%n");
    return place == std::string::npos ? words : words.replace(place, 2, std::to_string(count));
}

/// The part whose place stands at `at`, "%1" to "%9"; null: none does.
const SaidPart* partAt(std::string_view words, std::size_t at, std::span<const SaidPart> parts) {
    if (words[at] != '%' || at + 1 == words.size() || words[at + 1] < '1' || words[at + 1] > '9') {
        return nullptr;
    }
    const auto part = static_cast<std::size_t>(words[at + 1] - '1');
    return part < parts.size() ? &parts[part] : nullptr;
}

}  // namespace

void setSayTranslator(SayTranslator translator) {
    translatorInUse() = translator;
}

std::string sayWith(std::string_view text, int count, std::span<const SaidPart> parts) {
    const SayTranslator translator = translatorInUse();
    std::string words =
        translator == nullptr ? inEnglish(text, count) : translator(std::string(text).c_str(), count);
    if (parts.empty()) {
        return words;
    }
    std::string whole;
    for (std::size_t at = 0; at < words.size(); ++at) {
        if (const SaidPart* part = partAt(words, at, parts); part != nullptr) {
            whole += part->text();
            ++at;
        } else {
            whole += words[at];
        }
    }
    return whole;
}

}  // namespace bolthole
