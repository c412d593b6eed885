#pragma once

#include <algorithm>
#include <atomic>
#include <functional>
#include <thread>
#include <vector>

namespace swale::benchmark {

/// Calls work(k) once for every number of `tasks` from `jobs` threads; each thread takes the next one left. `work` must not
/// throw.
inline void in_parallel(const std::vector<int>& tasks, int jobs, const std::function<void(int)>& work) {
    std::atomic<std::size_t> next = 0;
    const auto take = [&] {
        for (std::size_t k = next++; k < tasks.size(); k = next++) work(tasks[k]);
    };
    std::vector<std::thread> threads;
    for (int j = 1; j < std::max(1, jobs); ++j) threads.emplace_back(take);
    take();
    for (std::thread& thread : threads) thread.join();
}

/// first, first + 1, ... last - 1
inline std::vector<int> numbers(int first, int last) {
    std::vector<int> all;
    for (int k = first; k < last; ++k) all.push_back(k);
    return all;
}

}  // namespace swale::benchmark
