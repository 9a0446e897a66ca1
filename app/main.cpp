#include <string>
#include <vector>

#include "app/commands/command_line.h"
#include "app/window/window_start.h"

int main(int argc, char** argv) {
    const std::vector<std::string> words(argv + (argc > 0 ? 1 : 0), argv + argc);
    // Commands make no application object: they need no display and start faster.
    if (bolthole::isCommand(words)) {
        return static_cast<int>(bolthole::runCommand(words));
    }
    return bolthole::runWindow(argc, argv);
}
