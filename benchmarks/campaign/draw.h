#pragma once

#include <cmath>
#include <cstdint>
#include <random>
#include <vector>

namespace swale::benchmark {

/// Random numbers that depend on (seed, index) alone. The distributions are written out because those of the standard library
/// differ from one to the next.
class Draw {
  public:
    Draw(int seed, int index) {
        std::seed_seq sequence{seed, index};
        generator_.seed(sequence);
    }

    double uniform(double low, double high) {
        const double share = static_cast<double>(generator_() >> 11) * 0x1p-53;
        return low + (high - low) * share;
    }
    double log_uniform(double low, double high) { return low * std::pow(high / low, uniform(0, 1)); }
    bool chance(double probability) { return uniform(0, 1) < probability; }

    template <class T>
    T one_of(const std::vector<T>& values) {
        return values.at(static_cast<std::size_t>(uniform(0, static_cast<double>(values.size()))));
    }

  private:
    std::mt19937_64 generator_;
};

/// Nearest multiple of `step`, so that a case can be written down as it is.
inline double rounded(double value, double step) {
    return std::round(value / step) * step;
}

/// Three significant digits.
inline double three_digits(double value) {
    return value == 0 ? 0 : rounded(value, std::pow(10.0, std::floor(std::log10(std::abs(value))) - 2));
}

}  // namespace swale::benchmark
