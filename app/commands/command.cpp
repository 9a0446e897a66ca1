#include "app/commands/command.h"

#include <algorithm>

namespace bolthole {

std::string onOneLine(std::string line) {
    std::ranges::replace_if(
        line, [](char c) { return (c >= 0 && c < ' ') || c == 0x7F; }, ' ');
    return line + '\n';
}

std::string usageOf(const Command& command) {
    std::string usage = "bolthole " + std::string(command.name) + " " + std::string(command.files);
    for (const Option& option : command.options) {
        const std::string value(option.valueName);
        usage += " [" + std::string(option.name) + (value.empty() ? "" : " ") + value + "]";
    }
    return usage;
}

std::string commandNames(std::span<const Command> commands) {
    std::string names;
    for (const Command& command : commands) {
        names += (names.empty() ? "" : " or ") + std::string(command.name);
    }
    return names;
}

std::string helpText(std::span<const Command> commands) {
    std::string text = "bolthole [CAR]\n    opens the window\n";
    for (const Command& command : commands) {
        text += usageOf(command) + "\n    " + std::string(command.gives) + "\n";
    }
    return text +
           "bolthole --version\n\n"
           "CAR is a car file (.bolt.json). Results go to standard output, or to FILE, which is written "
           "whole or not\nat all. Units are the car's unless --units is given. --uncertainty adds how sure "
           "the "
           "figures are: standard\nuncertainties in columns of a figure's name and _u. Exit codes: 0 done, 1 "
           "the car can't be assembled,\n2 bad use or a bad file.\n";
}

}  // namespace bolthole
