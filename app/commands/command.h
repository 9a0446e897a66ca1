// A command, what it comes to, and what is said of commands.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "app/carfile/file_writing.h"
#include "app/commands/command_line.h"
#include "app/commands/request.h"

namespace bolthole {

/// What a command came to; without a result nothing is written. A result too large to hold comes piece by
/// piece.
struct Outcome {
    ExitCode code = ExitCode::badUse;
    std::optional<std::string> result = std::nullopt;
    Producer pieces = nullptr;
};

/// One command of the program.
struct Command {
    std::string_view name;
    std::string_view files;  ///< as the help shows them
    std::string_view gives;
    std::size_t mostFiles;
    std::span<const Option> options;
    Outcome (*run)(const Request&);
};

/// A message as one line, whatever stands in the names it holds.
[[nodiscard]] std::string onOneLine(std::string line);
/// How it is called, on one line.
[[nodiscard]] std::string usageOf(const Command& command);
/// "sweep or holes or ...".
[[nodiscard]] std::string commandNames(std::span<const Command> commands);
/// What --help prints.
[[nodiscard]] std::string helpText(std::span<const Command> commands);

}  // namespace bolthole
