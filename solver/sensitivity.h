#pragma once

#include "solver/transition_case.h"
#include "solver/transition_result.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace swale {

/// A number of the case that its answer depends on.
struct Parameter {
    std::string name;        ///< in print: "distance", "station 1 angle", "tension", "A11"
    std::string unit;        ///< "mm", "rad", "N", "N/mm", "N mm", "t/mm^2", "1" of a factor
    double step = 0;         ///< small change in which partial derivatives are taken
    bool of_trough = false;  ///< the running trough changes with it
    std::function<double(const TransitionCase&, const TensionState&)> value;
    /// Puts another value in the place of that of the case as it was given.
    std::function<void(TransitionCase&, TensionState&, double)> set;
};

/// What a designer chooses: distance, the stations at the same shares of it; pulley lift; place, angle and height of every
/// station. Angles in rad.
std::vector<Parameter> geometry_parameters(const TransitionCase& transition);

/// What is given, and known only nearly: the state's tension, mass per area, membrane stiffness as a whole ("A", a factor) and
/// A11, A22, A66, bending stiffness as a whole ("D") and D11, D22, D66.
std::vector<Parameter> belt_parameters(const TransitionCase& transition);

/// How the value of a criterion changes with a parameter, per unit of it.
struct Sensitivity {
    std::string criterion, state, parameter, unit;
    std::optional<double> derivative;  ///< absent where the criterion has no value, or its belt has no derivatives (`why`)
    std::string why;
};

/// Derivatives of every criterion of every converged state, from the tangent of its finest grid: one solve for each parameter,
/// du/dp = -K^-1 dr/dp, with all that depends on p alone taken as a central difference of `step`. The belt's knots move with
/// pulley and sets. Criteria that hang on eigenvalues have none, nor has a belt in steady run-on.
std::vector<Sensitivity> sensitivities(const TransitionCase& transition, const TransitionResult& result,
                                       const std::vector<Parameter>& parameters);

}  // namespace swale
