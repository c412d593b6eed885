#pragma once

#include "solver/design/arrangement.h"
#include "solver/design/trial.h"

#include <functional>
#include <vector>

namespace swale {

/// Tries values of the variables; the headrooms' slopes are by these, in their order.
using ValuesTrial = std::function<Trial(const std::vector<double>& values)>;

/// Values and what they leave.
struct Optimum {
    std::vector<double> values;
    Trial trial;
    double least() const { return !trial.solved() ? -1 : trial.least() ? trial.least()->share : 1; }
};

/// The values between their bounds that leave most of the limit that is nearest: max t with t <= every headroom, by sequential
/// quadratic programming (Kraft's SLSQP, of the library NLopt) on the trials and their slopes, from several starts one after
/// the other. The best of all that was tried. A trial without a solution counts as over every limit.
Optimum most_headroom(const std::vector<Variable>& variables, const std::vector<std::vector<double>>& starts,
                      const ValuesTrial& trial, int most_trials);

/// The smallest first value with every headroom at least `margin`; the same method.
Optimum least_first_value(const std::vector<Variable>& variables, const std::vector<double>& start, double margin,
                          const ValuesTrial& trial, int most_trials);

}  // namespace swale
