// Memory that large computations have freed, given back to the system.
#pragma once

namespace bolthole {

/// Some seconds after the last call gives what was freed back to the system, where that is much: the C
/// library keeps it else, so that an evening of large hole combinations held four times what was in use.
/// Window's thread.
void returnFreedMemorySoon();

}  // namespace bolthole
