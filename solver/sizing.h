#pragma once

#include "solver/transition_result.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace swale {

/// One distance that was tried.
struct SizingStep {
    double distance = 0;  ///< [mm]
    bool passed = false;  ///< every limit in every state, with the estimated error on top
    double headroom = 0;  ///< share of the binding limit that is left, its error taken off; below zero: over it
    std::string binding;  ///< criterion and state nearest to a limit, or why there is no answer
};

/// The step that a solved transition makes. A state without a solution does not pass.
SizingStep sizing_step(double distance, const TransitionResult& result);

/// The shortest distance that passes and how it was found.
struct Sizing {
    std::optional<double> distance;  ///< [mm]; absent: none within the bounds passes
    std::vector<SizingStep> steps;   ///< in the order tried
    std::string reason;              ///< what binds, or what stands in the way

    const SizingStep& step_at(double at) const;
};

using DistanceTrial = std::function<SizingStep(double distance)>;

/// Where a distance in whole mm is looked for [mm], from `start` on, and how closely it is found.
struct SizingBounds {
    double shortest = 0, longest = 0, start = 0;
    double relative = 0.005;
};

/// Goes from the start outwards until one distance passes and a shorter one fails, then closes in on what lies between. Where
/// the headroom does not grow with distance all along, the answer is the end of a stretch that passes, not of the shortest one.
Sizing shortest_distance(const SizingBounds& bounds, const DistanceTrial& trial);

}  // namespace swale
