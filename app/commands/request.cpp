#include "app/commands/request.h"

#include <algorithm>

namespace bolthole {

namespace {

std::string listed(std::span<const std::string_view> words) {
    std::string list;
    for (const std::string_view word : words) {
        list += (list.empty() ? "" : " or ") + std::string(word);
    }
    return list;
}

std::string unknownOption(const std::string& name, std::span<const Option> options) {
    std::vector<std::string_view> names;
    for (const Option& option : options) {
        names.push_back(option.name);
    }
    return "unknown option " + name + ", expected " + listed(names);
}

}  // namespace

std::optional<Request> Request::sort(std::span<const std::string> words, std::span<const Option> options,
                                     std::string& problem) {
    Request request;
    bool onlyFiles = false;
    for (std::size_t i = 0; i < words.size() && problem.empty(); ++i) {
        const std::string& word = words[i];
        if (onlyFiles || word.size() < 2 || word.front() != '-') {
            request.files_.push_back(word);
            continue;
        }
        if (word == "--") {
            onlyFiles = true;
            continue;
        }
        const std::size_t equals = word.find('=');
        const std::string name = word.substr(0, equals);
        const auto option = std::ranges::find(options, name, &Option::name);
        if (option == options.end()) {
            problem = unknownOption(name, options);
        } else if (option->valueName.empty()) {
            problem = equals == std::string::npos ? request.give(*option, "") : name + " takes no value";
        } else if (equals != std::string::npos) {
            problem = request.give(*option, word.substr(equals + 1));
        } else if (i + 1 == words.size()) {
            problem = name + " needs a value, expected " + std::string(option->valueName);
        } else {
            problem = request.give(*option, words[++i]);
        }
    }
    return problem.empty() ? std::optional(std::move(request)) : std::nullopt;
}

std::string Request::give(const Option& option, const std::string& value) {
    if (this->value(option)) {
        return std::string(option.name) + " was given twice, expected it once";
    }
    const bool accepted = option.valueName.empty() ? true
                          : option.values.empty()
                              ? !value.empty()
                              : std::ranges::find(option.values, value) != option.values.end();
    if (!accepted) {
        const std::string expected =
            option.values.empty() ? std::string(option.valueName) : listed(option.values);
        return std::string(option.name) + ": expected " + expected + ", found '" + value + "'";
    }
    given_.push_back({option.name, value});
    return {};
}

std::optional<std::string> Request::value(const Option& option) const {
    const auto given = std::ranges::find(given_, option.name, &Given::option);
    return given == given_.end() ? std::nullopt : std::optional(given->value);
}

std::optional<Units> Request::units() const {
    const std::optional<std::string> name = value(kUnitsOption);
    if (!name) {
        return std::nullopt;
    }
    return *name == "inch" ? Units::inch : Units::metric;
}

std::optional<LengthTreatment> Request::lengths() const {
    const std::optional<std::string> name = value(kLengthsOption);
    for (const LengthTreatment links :
         {LengthTreatment::keep, LengthTreatment::refit, LengthTreatment::uppers}) {
        if (name == nameOf(links)) {
            return links;
        }
    }
    return std::nullopt;
}

}  // namespace bolthole
