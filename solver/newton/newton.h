#pragma once

#include "solver/equilibrium/system.h"

#include <functional>
#include <string>

namespace swale {

struct NewtonSettings {
    int iterations = 60;
    double tolerance = 1e-8;  ///< residual relative to the sum of forces that flow through the belt
    double step_cap = 40;     ///< largest move of a control point in one step [mm]
    double armijo = 1e-4;     ///< share of the predicted decrease that a step must bring
    int halvings = 30;        ///< bound of the line search
};

/// How a solution was found, or why not.
struct NewtonOutcome {
    bool converged = false;
    std::string sentence;  ///< with both numbers
    int iterations = 0;
    double residual = 0;  ///< relative
    double tolerance = 0;
    Eigen::VectorXd q;
};

/// Time spent [s].
struct NewtonTimes {
    TermTimes terms;
    double factorisation = 0;  ///< and the solves
    NewtonTimes& operator+=(const NewtonTimes& other);
};

using NewtonWatcher = std::function<void(int iteration, double residual)>;

/// Minimises the potential energy of a system from `start`: Newton steps with a diagonal shift while the tangent is not
/// positive definite, a cap on the step, and Armijo backtracking on the energy. No convergence is an outcome, not an exception.
NewtonOutcome minimise(const System& system, const Eigen::VectorXd& start, const NewtonSettings& settings,
                       const NewtonWatcher& watcher = {}, NewtonTimes* times = nullptr);

}  // namespace swale
