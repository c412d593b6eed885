#pragma once

#include "solver/design/headroom.h"
#include "solver/sensitivity.h"
#include "solver/sizing.h"

#include <string>
#include <vector>

namespace swale {

/// A number that may be chosen, and between what.
struct Variable {
    Parameter parameter;
    double low = 0, high = 0;
};

/// The case with other values of its variables, in their order.
TransitionCase with_values(TransitionCase transition, const std::vector<Variable>& variables,
                           const std::vector<double>& values);
std::vector<double> values_of(const TransitionCase& transition, const std::vector<Variable>& variables);

/// Distance in whole mm, from the bounds; the stations keep their shares of it.
Variable distance_variable(const SizingBounds& bounds, const TransitionCase& transition);
Variable lift_variable(const SizingBounds& bounds, const TransitionCase& transition);
/// Share of the distance and angle of every station. Each share stays in a window of its own.
std::vector<Variable> station_variables(const SizingBounds& bounds, const TransitionCase& transition);

/// The case at another distance in whole mm, its stations at the same shares of it, in whole mm too.
TransitionCase at_distance(TransitionCase transition, double distance);
/// Numbers as they are built: lengths in whole mm, angles in tenths of a degree.
TransitionCase as_built(TransitionCase transition);
/// The case with so many stations, evenly spread over distance and angle; its own if it has as many.
TransitionCase with_stations(TransitionCase transition, int stations);

/// In print, beside the distance: "no set between, pulley 95 mm up".
std::string name_of(const TransitionLayout& layout);

/// Why rolls and pulley can't stand so; empty if they can.
std::string why_impossible(const TransitionLayout& layout);

}  // namespace swale
