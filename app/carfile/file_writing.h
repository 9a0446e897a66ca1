// Writes a file whole or not at all. Knows no Qt.
#pragma once

#include <functional>
#include <string>
#include <string_view>

namespace bolthole {

/// Writes `bytes` to `fileName`: into a temporary file beside it, flushed to the disk, then renamed over it,
/// so that a reader sees the old file or the new one. An existing file keeps its permissions, a symbolic link
/// stays one. A device or pipe is written directly. Gives what went wrong, in words; empty: written.
[[nodiscard]] std::string writeWholeFile(const std::string& fileName, std::string_view bytes);

/// Takes the next bytes of a result; false: they can't be written, and there is no use in going on.
using WriteBytes = std::function<bool(std::string_view bytes)>;
/// Hands over a result piece by piece; false: not all of it was taken.
using Producer = std::function<bool(const WriteBytes& write)>;

/// The same with bytes that come piece by piece, so that a result larger than memory can be written.
[[nodiscard]] std::string writeWholeFile(const std::string& fileName, const Producer& produce);

}  // namespace bolthole
