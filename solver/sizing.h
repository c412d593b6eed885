#pragma once

#include "solver/transition.h"

#include <optional>
#include <string>
#include <vector>

namespace swale {

/// What is looked for. distance: the shortest that passes, all else as it is. lift, idlers: the pulley lift, or the
/// intermediate sets, that leave most of the limits at the given distance. all: the shortest distance with lift and sets as it
/// needs them.
enum class SizingAim { distance, lift, idlers, all };

/// What may be chosen. Lengths in mm, angles in rad.
struct SizingBounds {
    SizingAim aim = SizingAim::distance;
    double shortest = 0, longest = 0;          ///< distance
    double lowest_lift = 0, highest_lift = 0;  ///< of the pulley
    int most_idlers = 2;                       ///< intermediate sets
    std::vector<double> angles = {};           ///< of sets in stock; empty: any up to the full sets'
    double relative = 0.009;                   ///< share by which a distance may be longer than the limits with errors need
};

/// One arrangement that was tried.
struct SizingStep {
    TransitionLayout layout;
    bool coarse = false;  ///< on the coarse grid alone, whose error isn't known: to come near
    bool whole = false;   ///< solved in all states as `solve` does; otherwise as far as the criteria of some states need
    bool passed = false;  ///< every limit in every state looked at, with the estimated error on top
    double headroom = 0;  ///< share of the binding limit that is left, its error taken off; below zero: over it
    std::string binding;  ///< criterion and state nearest to a limit, or why there is no answer
};

/// One way to build the transition, as good as it was found.
struct Arrangement {
    std::string name;  ///< in print: "as given", "pulley 95 mm up", "one set of 20 deg"
    TransitionCase transition;
    bool passes = false;
    double headroom = 0;  ///< as in SizingStep
    std::string binding;
};

/// What a change by one unit of a parameter does to the headroom of what binds, to first order.
struct Lever {
    std::string parameter, unit;
    double slope = 0;                ///< of the binding headroom, per unit
    std::optional<double> needed;    ///< change that brings it to zero from where it stands; absent if that is too far to tell
    std::optional<double> distance;  ///< what a unit of it is worth in distance [mm]; negative: shorter
};

struct Sizing {
    std::optional<Arrangement> best;        ///< the one that passes; absent: none within the bounds does
    TransitionResult result;                ///< whole solution of the best, or of the one that comes nearest
    std::vector<Arrangement> arrangements;  ///< all kinds that were looked at, best first
    std::vector<SizingStep> steps;          ///< in the order tried
    std::vector<Lever> levers;              ///< of what binds in the best, or in the one that comes nearest
    std::string reason;                     ///< what binds, or what stands in the way
    int states_tried = 0, whole_solutions = 0;
};

/// Finds the arrangement of a case within the bounds. Derivatives of every criterion lead from one trial to the next; what is
/// answered passed a whole solution, and for a distance a shorter one within `relative` was seen to fail, unless it is the
/// shortest allowed. Where headroom does not grow with distance all along, the answer is the end of a stretch that passes.
Sizing size_transition(const TransitionCase& given, const SizingBounds& bounds, const ProgressListener& listener = {});

}  // namespace swale
