// Memory that large computations have freed, given back to the system.
#pragma once

namespace bolthole {

/// Five seconds after the last call gives what was freed back to the system, where the process has grown by
/// 64 MB: the C library keeps it else, so that a random user's process held four times what was in use.
/// Window's thread, which then waits: measured 12 ms where there was hardly anything to give back, 0.12 s for
/// 400 MB in four million blocks.
void returnFreedMemorySoon();

}  // namespace bolthole
