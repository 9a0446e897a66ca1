#include "geometry/units/parallel.h"

#include <algorithm>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

#include "geometry/units/upper_vectors.h"

namespace bolthole {

void inParallel(int threads, const std::function<void()>& work) {
    std::exception_ptr first;
    std::mutex guard;
    const auto guarded = [&] {
        try {
            clearUpperVectors();
            work();
        } catch (...) {
            const std::scoped_lock lock(guard);
            if (!first) {
                first = std::current_exception();
            }
        }
    };
    {
        std::vector<std::jthread> others;
        for (int thread = 1; thread < threads; ++thread) {
            others.emplace_back(guarded);
        }
        guarded();
    }
    if (first) {
        std::rethrow_exception(first);
    }
}

int machineThreads() {
    return static_cast<int>(std::max(1U, std::thread::hardware_concurrency()));
}

}  // namespace bolthole
