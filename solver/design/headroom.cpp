#include "solver/design/headroom.h"

#include <algorithm>
#include <cmath>

namespace swale {

double headroom_scale(const Judgement& judgement, double edge_tension) {
    const double scale = judgement.at_least ? std::abs(edge_tension) : std::abs(judgement.limit.value_or(0));
    return scale > 0 ? scale : 1;
}

double headroom_slope(const Judgement& judgement, double edge_tension, double derivative) {
    return (judgement.at_least ? 1 : -1) * derivative / headroom_scale(judgement, edge_tension);
}

std::optional<Headroom> headroom_of(const Judgement& judgement, double edge_tension) {
    if (!judgement.passed || !judgement.value || !judgement.limit) return {};
    const double left = (judgement.at_least ? 1 : -1) * (*judgement.value - *judgement.limit) - judgement.error.value_or(0);
    const double scale = headroom_scale(judgement, edge_tension);
    return Headroom{judgement.name, judgement.state, left / scale, scale, {}};
}

}  // namespace swale
