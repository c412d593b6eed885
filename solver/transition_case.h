#pragma once

#include "materials/belt.h"
#include "mesh/transition_layout.h"

#include <optional>
#include <string>
#include <vector>

namespace swale {

/// What the belt carries, from where on along x to the end of the trough, or at a head end from there to the trough.
struct Bulk {
    double density = 0;               ///< [t/mm^3]
    double surcharge = 0;             ///< angle of its surface at the free edges [rad]
    double fill = 1;                  ///< share of the cross-section of a full load
    std::optional<double> free_edge;  ///< in place of it: from the belt's edge to the bulk, along the belt in a full set [mm]
    std::optional<double> from;       ///< x where the load begins [mm]; absent: head 0, tail the first full set
};

/// A limit with its source in print. `advisory`: over it is a warning, not a failure.
struct Limit {
    double value = 0;
    bool advisory = false;
    std::string source;
};

/// What the criteria hold the belt against; absent: the value is reported, not judged.
struct Limits {
    std::optional<Limit> edge_tension;     ///< edge tension / rated tension
    std::optional<Limit> tension_min;      ///< lowest N11 anywhere [N/mm]
    std::optional<Limit> edge_strain;      ///< stretch less one
    std::optional<Limit> junction_strain;  ///< bending strain at the junction
    std::optional<Limit> lift_off;         ///< of the first full set's centre roll [mm]
    std::optional<Limit> roll_force;       ///< resultant on one roll of a set [N]
};

/// One operating state. Exactly one of total and elongation is set.
struct TensionState {
    std::string name;
    std::optional<double> total;        ///< resultant of the whole belt along x at the far end [N]
    std::optional<double> elongation;   ///< held far end only: its displacement along x [mm]
    bool loaded = false;                ///< the belt carries the case's bulk
    std::optional<Limits> limits = {};  ///< all that it is held against, if not the limits of the case
};

enum class Symmetry { half, full };

struct SolveSettings {
    double accuracy = 0.02;  ///< wanted relative discretisation error of what is judged, edge strain always
    Symmetry model = Symmetry::half;
    double grid = 1;              ///< factor on every knot span; 0.5 halves them
    int newton_iterations = 150;  ///< bound for one grid
    int starts = 1;               ///< further starts where a strip is slack, in search of other equilibria
    int tension_path = 0;         ///< tensions from the highest to the lowest at which eigenvalues are found; 0: none
};

/// Everything that defines a run. Internal units: mm, N, t, s, rad.
struct TransitionCase {
    std::string title;
    Belt belt;
    TransitionLayout layout;
    std::optional<Bulk> bulk;
    std::vector<TensionState> states;
    Limits limits;
    SolveSettings settings;
    std::optional<TransitionLayout> drawn = {};  ///< before a survey took the place of a part of it

    const Limits& limits_in(const TensionState& state) const { return state.limits ? *state.limits : limits; }
};

}  // namespace swale
