// The program without a window: the commands of the car file's contract.
#pragma once

#include <string>
#include <vector>

namespace bolthole {

/// Exit codes of every command.
enum class ExitCode { done = 0, cannotAssemble = 1, badUse = 2 };

/// Whether the words (argv without the program's name) name a command, --help or --version, so that no window
/// is wanted; or begin with a bare word that is neither a command nor a file, which runCommand() refuses.
[[nodiscard]] bool isCommand(const std::vector<std::string>& words);

/// Runs a command. Results go to standard output or the file after -o, written whole or not at all; errors to
/// standard error, one line each: "bolthole: FILE: PATH: what is wrong and what was expected".
[[nodiscard]] ExitCode runCommand(const std::vector<std::string>& words);

}  // namespace bolthole
