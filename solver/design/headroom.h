#pragma once

#include "solver/transition_result.h"

#include <optional>
#include <string>
#include <vector>

namespace swale {

/// What a criterion leaves of its limit in one state.
struct Headroom {
    std::string criterion, state;
    double share = 0;            ///< of the limit, its error taken off; below zero: over it
    double scale = 1;            ///< what it is a share of, in the criterion's unit
    std::vector<double> slopes;  ///< per unit of each parameter asked for; empty: not known

    /// In the criterion's unit.
    double left() const { return share * scale; }
    std::string name() const { return criterion + " in \"" + state + "\""; }
};

/// What a headroom is a share of: the limit; for a lower limit, which may be zero, the largest edge tension.
double headroom_scale(const Judgement& judgement, double edge_tension);

/// How a headroom's share changes, from how the criterion's value does; the scale and the error taken as they are.
double headroom_slope(const Judgement& judgement, double edge_tension, double derivative);

/// Absent where nothing is judged. `edge_tension`: the state's largest [N/mm].
std::optional<Headroom> headroom_of(const Judgement& judgement, double edge_tension);

}  // namespace swale
