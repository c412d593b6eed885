#include "solver/screening/screening_case.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <cmath>
#include <numbers>

namespace swale {

namespace {

using Rules = std::vector<std::string>;

constexpr const char* data_sheet = "a trade data sheet on transition lengths";
constexpr const char* handbook = "a handbook on bulk conveying, online chapters, which cite CEMA";
constexpr const char* cema = "CEMA, Belt Conveyors for Bulk Materials, 7th ed., at Tables 7.27 to 7.29";

double degrees(double radians) {
    return radians * 180 / std::numbers::pi;
}

std::string listed(const std::vector<double>& values, const char* format, const char* unit) {
    std::vector<std::string> texts;
    for (const double value : values) texts.push_back(fmt::format(fmt::runtime(format), value));
    return fmt::format("{} {}", fmt::join(texts, ", "), unit);
}

// Angles of the sets that practice puts before one of three rolls; the handbook has these two troughs alone.
std::vector<double> angles_before(const TransitionLayout& layout) {
    if (layout.trough.rolls != 3) return {};
    const double angle = degrees(layout.trough.angle);
    if (std::abs(angle - 35) < 0.5) return {20};
    if (std::abs(angle - 45) < 0.5) return {20, 35};
    return {};
}

// Shares of the transition at which one to four sets stand: the sheet's Table 3.
std::vector<double> shares(std::size_t sets) {
    constexpr std::size_t most = 4;
    const std::vector<double> table[most] = {{0.33}, {0.17, 0.50}, {0.10, 0.30, 0.60}, {0.07, 0.20, 0.40, 0.67}};
    return sets >= 1 && sets <= most ? table[sets - 1] : std::vector<double>{};
}

void are_needed(const TransitionLayout& layout, Rules& rules) {
    if (degrees(layout.trough.angle) > 20.5 && layout.stations.empty())
        rules.push_back(fmt::format(
            "above 20 deg intermediate idler sets always stand next to terminal pulleys; here none ({})", data_sheet));
}

void have_angles(const TransitionLayout& layout, Rules& rules) {
    const std::vector<double> usual = angles_before(layout);
    if (usual.empty()) return;
    std::vector<double> own;
    for (const Station& station : layout.stations) own.push_back(degrees(station.angle));
    rules.push_back(fmt::format("before sets of {:.0f} deg stand sets of {}; here {} ({})", degrees(layout.trough.angle),
                                listed(usual, "{:.0f}", "deg"), own.empty() ? "none" : listed(own, "{:.3g}", "deg"), handbook));
}

// The sheet does not say from which end it counts.
void have_places(const TransitionLayout& layout, Rules& rules) {
    if (layout.trough.rolls != 3) return;
    const std::size_t sets = layout.stations.empty() ? angles_before(layout).size() : layout.stations.size();
    std::vector<double> from_pulley, from_trough, own;
    for (const double share : shares(sets)) {
        from_pulley.push_back(share * layout.distance);
        from_trough.insert(from_trough.begin(), (1 - share) * layout.distance);
    }
    if (from_pulley.empty()) return;
    for (const Station& station : layout.stations) own.push_back(station.at);
    rules.push_back(
        fmt::format("{} intermediate {} at {}: {} from the pulley if that is where it is counted from, which "
                    "is not said, "
                    "{} if from the first full set; here {} ({}, Table 3)",
                    sets, sets == 1 ? "set stands" : "sets stand", listed(shares(sets), "{:.2f}", "of the transition"),
                    listed(from_pulley, "{:.0f}", "mm"), listed(from_trough, "{:.0f}", "mm"),
                    own.empty() ? "none" : listed(own, "{:.0f}", "mm"), data_sheet));
}

// Wings that turn evenly along the transition: angle(x) = angle x / L.
void turn_evenly(const TransitionLayout& layout, Rules& rules) {
    for (std::size_t k = 0; k < layout.stations.size(); ++k) {
        const Station& station = layout.stations[k];
        rules.push_back(
            fmt::format("station {} of {:.3g} deg: wings that turn evenly along the transition stand at {:.3g} deg there "
                        "(plane geometry)",
                        k + 1, degrees(station.angle), degrees(layout.trough.angle) * station.at / layout.distance));
    }
}

// The handbook says so of a pulley in line with the trough's bottom.
void begin_level(const TransitionLayout& layout, Rules& rules) {
    const bool in_line = std::abs(layout.pulley.lift) < 1;
    if (layout.pulley.end != BeltEnd::tail || layout.stations.empty() || !in_line) return;
    const double below = layout.pulley.lift - layout.lift_of(layout.stations.front());
    if (std::abs(below) > 1)
        rules.push_back(fmt::format(
            "at the loading end the first intermediate set is level with the pulley's top; here it is {:.0f} mm {} ({})",
            std::abs(below), below > 0 ? "below" : "above", handbook));
}

void lift_pulley(const TransitionLayout& layout, Rules& rules) {
    const double depth = layout.trough_depth();
    if (depth <= 0) return;
    rules.push_back(fmt::format(
        "a raised pulley stands a third to a little over half of the trough's depth above the centre rolls, {:.0f} to "
        "{:.0f} mm; here {:.0f} mm (Lemmon 2013, Beltcon 17, B17-02, section 2){}",
        depth / 3, depth / 2, layout.pulley.lift,
        layout.pulley.end == BeltEnd::head ? fmt::format("; at a discharge a third is preferred ({})", cema) : ""));
}

void bear_loads(const TransitionLayout& layout, Rules& rules) {
    if (degrees(layout.trough.angle) > 20.5 || !layout.stations.empty())
        rules.push_back(fmt::format("rolls of intermediate sets are of metal and rated for what they bear ({})", cema));
    if (layout.pulley.end == BeltEnd::tail)
        rules.push_back(fmt::format("never load on a transition; at least one full set before the load point ({})", cema));
}

}  // namespace

std::vector<std::string> idler_practice(const ScreeningCase& screening) {
    Rules rules;
    for (const auto rule : {are_needed, have_angles, have_places, turn_evenly, begin_level, lift_pulley, bear_loads})
        rule(screening.transition.layout, rules);
    return rules;
}

}  // namespace swale
