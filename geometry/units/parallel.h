// The same work on several threads, for what is one question to whoever asks.
#pragma once

#include <functional>

namespace bolthole {

/// Runs `work` once on each of `threads` threads, the caller's among them, and returns when all are done; one
/// thread at least. An exception that leaves any of them is thrown to the caller when all have ended, the
/// first of several. What they share, `work` has to guard.
void inParallel(int threads, const std::function<void()>& work);

/// How many threads the machine runs at once; 1 where it does not say.
[[nodiscard]] int machineThreads();

}  // namespace bolthole
