// Writes a file whole or not at all. Knows no Qt.
#pragma once

#include <string>
#include <string_view>

namespace bolthole {

/// Writes `bytes` to `fileName`: into a temporary file beside it, flushed to the disk, then renamed over it,
/// so that a reader sees the old file or the new one. An existing file keeps its permissions, a symbolic link
/// stays one. A device or pipe is written directly. Gives what went wrong, in words; empty: written.
[[nodiscard]] std::string writeWholeFile(const std::string& fileName, std::string_view bytes);

}  // namespace bolthole
