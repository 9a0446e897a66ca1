// What is done before each event of the program is dealt with.
#pragma once

namespace bolthole {

/// From now on clears the upper halves of the vector registers before every event (see clearUpperVectors()),
/// so that what is computed and painted in it is not slowed down by what the toolkit left in them. Once an
/// application; needs one.
void clearUpperVectorsBeforeEvents();

}  // namespace bolthole
