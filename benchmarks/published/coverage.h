#pragma once

#include "benchmarks/reading_names.h"

#include <array>
#include <string>
#include <vector>

namespace swale::benchmark {

/// An error estimate beside what it estimates. The truth is known as well as the reference is: `floor` is the reference's own
/// error estimate.
struct Comparison {
    double value = 0;
    double estimate = 0;
    double error = 0;  ///< |value - reference|
    double floor = 0;

    /// "yes": the error is at most the estimate. "no": it is above it by more than the floor. "open": above by less, so the
    /// reference can't tell; left out of the count.
    enum class Covered { yes, no, open };
    Covered covered() const;
    /// Above the floor, so that a ratio of estimate to error means something.
    bool resolved() const { return error > floor; }
    double ratio() const { return estimate / error; }
};

const char* word(Comparison::Covered covered);

/// Comparisons of one kind by quantity: how many are covered, how far the estimates are off.
class Coverage {
  public:
    void add(std::size_t reading, const Comparison& comparison) { all_[reading].push_back(comparison); }
    /// A table by quantity and over all.
    void print() const;

  private:
    std::array<std::vector<Comparison>, reading_count> all_;
};

}  // namespace swale::benchmark
