#include "io/layout_tables.h"

#include "io/pulley_table.h"
#include "io/transition_table.h"
#include "io/trough_table.h"
#include "mesh/trough_profile.h"

#include <fmt/format.h>
#include <algorithm>

namespace swale {
namespace {

bool any_held_profile(const TransitionLayout& layout) {
    const auto held = [](const Station& station) { return station.support == Support::held; };
    return layout.trough.support == Support::held || std::any_of(layout.stations.begin(), layout.stations.end(), held);
}

/// The key that settles where the flat of the profile ends.
const char* flat_key(const TransitionLayout& layout) {
    return layout.trough.flat_width ? "flat_width" : "junction_radius";
}

void check_profile(CaseTable& table, const TransitionLayout& layout, double underside) {
    for (const char* key : {"flat_width", "junction_radius"})
        if (table.has(key) && !any_held_profile(layout))
            table.reject(key, "this belongs to a held profile", "support = \"held\", or leave it out");
    if (!any_held_profile(layout)) return;
    if (!table.has("junction_radius")) return table.reject_missing("junction_radius", "a length, for the held profile");
    if (layout.trough.rolls != 3) return;
    if (layout.trough.angle == 0) return;  // a flat has no arcs to find room for
    const TroughProfile profile = held_profile(layout, underside);
    if (profile.half_flat <= 0)
        table.reject("junction_radius", "the arcs leave no flat between them", "a smaller radius or a longer centre_roll");
    if (profile.arc_ends()[1] > layout.belt_width / 2)
        table.reject(flat_key(layout), "flat and arcs are wider than the belt",
                     "a profile whose straight wings are on the belt");
}

void check_wings(CaseTable& table, const TransitionLayout& layout) {
    if (layout.junction() >= layout.belt_width / 2)
        table.reject("centre_roll", "the belt lies on the centre roll alone",
                     fmt::format("centre_roll and roll_gap together below the belt's width of {} mm", layout.belt_width));
    else if (layout.junctions().back() >= layout.belt_width / 2)
        table.reject("inner_roll", "the belt ends on the inner wings",
                     fmt::format("the belt's width of {} mm beyond the outer junctions", layout.belt_width));
}

}  // namespace

TransitionLayout read_layout(CaseTable& file, const Belt& belt) {
    TransitionLayout layout;
    layout.belt_width = belt.width;
    layout.pulley = read_pulley(file.table("pulley", true));
    CaseTable trough = file.table("trough", true);
    layout.trough = read_trough(trough, belt.width);
    CaseTable transition = file.table("transition", true);
    read_transition(transition, layout);
    check_profile(trough, layout, belt.section.underside);
    check_wings(trough, layout);
    trough.finish();
    return layout;
}

}  // namespace swale
