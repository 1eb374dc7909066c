#pragma once

#include <algorithm>
#include <cstddef>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace thawslip {

/// Calls `work(i)` for every i below `count`, on as many threads as the machine has cores; on this
/// one alone where there is too little to share. Each call must touch only what is its own, so the
/// outcome does not depend on the number of threads. The first exception thrown is thrown again.
template <class Work>
void in_parallel(std::size_t count, const Work& work) {
    constexpr std::size_t worth_a_thread = 8;
    const std::size_t cores = std::max(std::thread::hardware_concurrency(), 1U);
    const std::size_t threads = std::clamp<std::size_t>(count / worth_a_thread, 1, cores);
    std::exception_ptr thrown;
    std::mutex guard;
    const auto share = [&](std::size_t first) {
        try {
            for (std::size_t i = first; i < count; i += threads) {
                work(i);
            }
        } catch (...) {
            const std::lock_guard lock{guard};
            thrown = thrown ? thrown : std::current_exception();
        }
    };
    std::vector<std::thread> others;
    for (std::size_t t = 1; t < threads; ++t) {
        others.emplace_back(share, t);
    }
    share(0);
    for (auto& other : others) {
        other.join();
    }
    if (thrown) {
        std::rethrow_exception(thrown);
    }
}

} // namespace thawslip
