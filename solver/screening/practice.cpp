#include "solver/screening/screening_case.h"

#include <fmt/core.h>

#include <numbers>

namespace swale {

namespace {

constexpr double usual = 2.3, suspect = 2.0;  // belt widths

double degrees(double radians) {
    return radians * 180 / std::numbers::pi;
}

}  // namespace

HandMethod practice_of_widths(const ScreeningCase& screening) {
    const TransitionLayout& layout = screening.transition.layout;
    HandMethod method{"belt widths of practice",    usual * layout.belt_width, {}, {}, "",
                      "common practice, no source", "troughs of about 35 deg"};
    method.remark = "about 2.3 belt widths usually suffices; " + implied_excess(screening, *method.minimum_distance);
    if (layout.distance < suspect * layout.belt_width) method.remark += "; under 2 widths the junctions are suspect";
    return method;
}

std::vector<std::string> idler_practice(const ScreeningCase& screening) {
    const TransitionLayout& layout = screening.transition.layout;
    std::vector<std::string> rules;
    if (degrees(layout.trough.angle) > 20.5 && layout.stations.empty())
        rules.push_back(
            "above 20 deg intermediate idler sets stand next to terminal pulleys (a trade data sheet on transition lengths)");
    for (std::size_t k = 0; k < layout.stations.size(); ++k) {
        const Station& station = layout.stations[k];
        rules.push_back(
            fmt::format("station {} of {:.3g} deg: wings that turn evenly along the transition stand at {:.3g} deg there "
                        "(plane geometry)",
                        k + 1, degrees(station.angle), degrees(layout.trough.angle) * station.at / layout.distance));
    }
    if (layout.pulley.end == BeltEnd::tail)
        rules.push_back(
            "never load on a transition; at least one full set before the load point (CEMA, Belt Conveyors for Bulk "
            "Materials, 7th ed., at Tables 7.27 to 7.29)");
    return rules;
}

}  // namespace swale
