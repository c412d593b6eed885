#include "solver/screening/screening_case.h"

namespace swale {

namespace {

constexpr double usual = 2.3, suspect = 2.0;  // belt widths

}  // namespace

HandMethod practice_of_widths(const ScreeningCase& screening) {
    const TransitionLayout& layout = screening.transition.layout;
    HandMethod method{
        "belt widths of practice", {}, {}, {}, "", "common practice, no source", "sets of three rolls at about 35 deg"};
    if (!holds_for(screening, 3, 3, method)) return method;
    method.minimum_distance = usual * layout.belt_width;
    method.remark = "about 2.3 belt widths usually suffices; " + implied_excess(screening, *method.minimum_distance);
    if (layout.distance < suspect * layout.belt_width) method.remark += "; under 2 widths the junctions are suspect";
    return method;
}

}  // namespace swale
