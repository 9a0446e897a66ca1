// Where the program with a window begins.
#pragma once

namespace bolthole {

/// Opens the window, on the car file named on the command line if there is one, and runs until it is closed.
/// Gives the program's exit code.
[[nodiscard]] int runWindow(int argc, char** argv);

}  // namespace bolthole
