#include "benchmarks/campaign/case_text.h"

#include "materials/data_sheet.h"

#include <fmt/format.h>

#include <numbers>

namespace swale::benchmark {

namespace {

double degrees(double radians) {
    return radians * 180 / std::numbers::pi;
}

std::string quantity(const std::string& key, double value, const std::string& unit) {
    return fmt::format("{} = \"{:.10g} {}\"\n", key, value, unit);
}

std::string section_text(const Belt& belt) {
    std::string text =
        fmt::format("[belt.section]\nkind = \"{}\"\n", belt.carcass == Carcass::steel_cord ? "steel cord" : "textile");
    for (const BeltDatum& entry : belt.data)
        if (entry.name != "rated_tension") text += quantity(entry.name, entry.value, entry.unit);
    return text;
}

std::string belt_text(const Belt& belt) {
    std::string text = "[belt]\n" + quantity("width", belt.width, "mm");
    if (!belt.designation.empty()) return text + fmt::format("designation = \"{}\"\n", belt.designation);
    if (belt.rated_tension) text += quantity("rated_tension", *belt.rated_tension, "N/mm");
    return text + section_text(belt);
}

std::string state_text(const TensionState& state) {
    return fmt::format("\n[[tension]]\nname = \"{}\"\n", state.name) + quantity("total", state.total.value_or(0) / 1e3, "kN");
}

std::string pulley_text(const Pulley& pulley) {
    return fmt::format("\n[pulley]\nend = \"{}\"\n", pulley.end == BeltEnd::tail ? "tail" : "head") +
           quantity("diameter", pulley.diameter, "mm") + quantity("lift", pulley.lift, "mm") +
           fmt::format("grip = \"{}\"\n", pulley.grip == Grip::stuck ? "stuck" : "sliding");
}

std::string trough_text(const Trough& trough) {
    return "\n[trough]\n" + quantity("angle", degrees(trough.angle), "deg") +
           quantity("centre_roll", trough.centre_roll, "mm") + quantity("wing_roll", trough.wing_roll, "mm") +
           quantity("roll_gap", trough.roll_gap, "mm") + quantity("roll_end_radius", trough.roll_end_radius, "mm") +
           quantity("roll_diameter", trough.roll_diameter, "mm") + quantity("spacing", trough.spacing, "mm") +
           (trough.sets ? fmt::format("sets = {}\n", *trough.sets) : "");
}

std::string station_text(const Station& station) {
    return "[[transition.idlers]]\n" + quantity("at", station.at, "mm") + quantity("angle", degrees(station.angle), "deg") +
           (station.lift ? quantity("lift", *station.lift, "mm") : "");
}

}  // namespace

std::string case_text(const TransitionCase& transition) {
    std::string text = fmt::format("title = \"{}\"\n\n", transition.title) + belt_text(transition.belt);
    for (const TensionState& state : transition.states) text += state_text(state);
    text += pulley_text(transition.layout.pulley) + trough_text(transition.layout.trough);
    text += "\n[transition]\n" + quantity("distance", transition.layout.distance, "mm");
    for (const Station& station : transition.layout.stations) text += station_text(station);
    return text + fmt::format("\n[solve]\nmodel = \"{}\"\n", transition.settings.model == Symmetry::half ? "half" : "full");
}

std::string case_line(const TransitionCase& transition) {
    const Belt& belt = transition.belt;
    const TransitionLayout& layout = transition.layout;
    const std::string name = !belt.designation.empty()
                                 ? belt.designation
                                 : fmt::format("own {:.3g} mm {:.3g} N/mm {:.3g} Nm", belt.section.thickness,
                                               belt.section.membrane(0, 0), belt.section.bending(1, 1) / 1e3);
    return fmt::format("W {:.0f}, {}, {:.3g} deg, L {:.2f} W, lift {:.2f} depth, {} stations, {}, {}", belt.width, name,
                       degrees(layout.trough.angle), layout.distance / belt.width, layout.pulley.lift / layout.trough_depth(),
                       layout.stations.size(), layout.pulley.grip == Grip::stuck ? "stuck" : "sliding",
                       transition.settings.model == Symmetry::half ? "half" : "full");
}

}  // namespace swale::benchmark
