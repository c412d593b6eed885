#pragma once

#include <chrono>

namespace swale {

/// Runs `work`, adds its wall time in seconds to `sum`, returns what it returned.
template <class Work>
auto timed(double& sum, const Work& work) {
    struct Clock {
        double& total;
        std::chrono::steady_clock::time_point begin = std::chrono::steady_clock::now();
        ~Clock() { total += std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count(); }
    } clock{sum};
    return work();
}

}  // namespace swale
