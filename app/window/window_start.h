// Where the program with a window begins.
#pragma once

class QRect;
class QWidget;

namespace bolthole {

/// Opens the window, on the car file named on the command line if there is one, and runs until it is closed.
/// Gives the program's exit code.
[[nodiscard]] int runWindow(int argc, char** argv);

/// Brings a window that is larger than the `available` part of the screen, or lies off it, back onto it with
/// its frame, as far as its least size lets it.
void fitOnScreen(QWidget& window, const QRect& available);

}  // namespace bolthole
