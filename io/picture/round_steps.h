#pragma once

#include <string>
#include <vector>

namespace swale {

/// The smallest of 1, 2, 2.5, 5 times a power of ten that is not below `least` (above zero).
double round_step(double least);

/// Multiples of a round step from `low` to `high`, about `count` of them.
std::vector<double> round_steps(double low, double high, int count);

/// Each with as many decimals as their step needs: "0.50", "0.75".
std::vector<std::string> step_labels(const std::vector<double>& steps);

}  // namespace swale
