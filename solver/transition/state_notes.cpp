#include "solver/transition/state_notes.h"

#include "solver/load/bulk_section.h"
#include "solver/transition/belt_bulk.h"
#include "solver/transition/sag.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace swale {

void note_accuracy(const TransitionCase& transition, const TensionState& state, const std::string& why, StateResult& result) {
    if (const Excess excess = discretisation_excess(transition, state, result); excess.name)
        result.notes.push_back(fmt::format("accuracy: the {}'s discretisation error is {:.2g}, {:.2g} is wanted ({:.2g} %){}",
                                           excess.name, excess.error, excess.wanted, 100 * transition.settings.accuracy,
                                           why.empty() ? "" : "; " + why));
}

void note_floating_end(const TransitionLayout& layout, int sets, StateResult& result) {
    if (layout.trough.support == Support::held) return;
    const std::string last = fmt::format("set {} ", sets);
    const bool seated = std::any_of(result.supports.begin(), result.supports.end(), [&](const SupportForce& support) {
        return support.name.starts_with(last) && support.force.norm() > 0;
    });
    if (!seated)
        result.notes.push_back(
            fmt::format("the belt lies in no roll of {}the last of the model: more sets are needed, and the "
                        "far-end error says nothing",
                        last));
}

namespace {

void note_mode(const std::optional<double>& eigenvalue, const char* kind, const char* advice, StateResult& result) {
    if (!eigenvalue)
        result.notes.push_back(fmt::format("stability against {} modes was not found out", kind));
    else if (*eigenvalue < 0)
        result.notes.push_back(
            fmt::format("warning: lowest {} eigenvalue {:.2g} < 0 N/mm^3: this shape is unstable, "
                        "the belt may tip or wrinkle{}",
                        kind, *eigenvalue, advice));
}

}  // namespace

void note_others(StateResult& result) {
    for (const OtherEquilibrium& other : result.others)
        result.notes.push_back(fmt::format(
            "warning: another equilibrium, found {}: up to {:.0f} mm away, its energy {} by {:.3g} J, edge strain {:.3g} % "
            "(coarse grid); both are judged",
            other.start, other.distance, other.energy_difference < 0 ? "lower" : "higher",
            std::abs(other.energy_difference) / 1e3, 100 * other.edge_strain_max.value));
}

void note_run_on(StateResult& result) {
    if (!result.run_on) return;
    const RunOnLine& line = *result.run_on;
    result.notes.push_back(fmt::format(
        "run-on in steady motion: every strip reaches the pulley with the same stretch, {:.3g} %, and a line straight across "
        "the belt arrives warped by {:.2g} mm; to stick like that it needs friction of up to {:.2f}",
        100 * line.strain, line.warp, line.friction));
    if (line.beyond_grip > 0)
        result.notes.push_back(fmt::format(
            "warning: over {:.1f} % of the width that friction is more than {} (rubber on a dry pulley 0.3 to 0.45, from "
            "memory, fairly sure), so that the belt slips there: judge it by the plane section too",
            100 * line.beyond_grip, assumed_friction));
}

void note_sag(const TransitionCase& transition, const TensionState& state, StateResult& result) {
    const double sag = sag_over_span(transition, state);
    if (sag > slack_sag)
        result.notes.push_back(
            fmt::format("warning: the belt sags by some {:.0f} % of its longest free span (w l / 8 T); conveyors are run at "
                        "1 to 3 % (common practice, no source)",
                        100 * sag));
}

void note_bulk(const TransitionCase& transition, const TensionState& state, StateResult& result) {
    if (!transition.bulk || !state.loaded) return;
    const Bulk& bulk = *transition.bulk;
    const TransitionLayout& layout = transition.layout;
    const double from = loaded_from(layout, bulk);
    if (layout.pulley.end == BeltEnd::tail && from < layout.distance)
        result.notes.push_back(
            fmt::format("warning: the belt is loaded from {:.0f} mm on, on its transition: never load on a transition, have at "
                        "least one full set before the load point (CEMA, 7th ed.)",
                        from));
    if (bulk_fill(layout, bulk) > 1 + 1e-9)
        result.notes.push_back(fmt::format("warning: the load fills {:.0f} % of the cross-section of ISO 5048; it spills",
                                           100 * bulk_fill(layout, bulk)));
    constexpr double degree = std::numbers::pi / 180;
    if (result.bulk && result.bulk->steepest > bulk.surcharge + 0.1 * degree)
        result.notes.push_back(fmt::format(
            "warning: where the trough flattens the load needs a surcharge angle of {:.0f} deg to stay on the belt, "
            "it has {:.0f} deg; what does not stand so steep spills over the edges",
            result.bulk->steepest / degree, bulk.surcharge / degree));
}

namespace {

// The edge of a belt that is wider than its rolls.
void note_overhang(const TransitionLayout& layout, StateResult& result) {
    const Trough& trough = layout.trough;
    const double shorter = std::min(trough.wing_roll, trough.wing_roll_right.value_or(trough.wing_roll));
    const double beyond = layout.belt_width / 2 - (layout.junctions().back() + trough.roll_gap / 2 + shorter);
    if (trough.support == Support::rolls && beyond > 0)
        result.notes.push_back(fmt::format(
            "warning: the belt's edge stands {:.0f} mm beyond the end of its wing roll: it is not carried there", beyond));
}

}  // namespace

void note_sets(const TransitionLayout& layout, bool endless, StateResult& result) {
    constexpr double us_practice = 2, commentary = 3;
    const double tilt = layout.trough.wing_tilt * 180 / std::numbers::pi;
    if (tilt > us_practice + 1e-9)
        result.notes.push_back(fmt::format(
            "{}wing rolls tilted forward by {:.3g} deg: US practice goes to {} deg (a troubleshooting page of the trade), the "
            "commentary of GB 50431-2020 to {} deg; the wear and the steering pull of a tilt are not computed",
            tilt > commentary + 1e-9 ? "warning: " : "", tilt, us_practice, commentary));
    note_overhang(layout, result);
    if (!layout.same_left_and_right()) result.notes.push_back("left and right rolls differ: the whole belt is modelled");
    if (layout.any_measured())
        result.notes.push_back(
            "sets and pulley stand as surveyed; sets that were not surveyed, and the trough behind them, stand as drawn");
    if (endless && !layout.same_fore_and_aft())
        result.notes.push_back(
            "behind the last modelled set the trough goes on with sets without tilt and offset, whose bays are not read; what "
            "that does is in the far-end error, and there is no running trough to compare with");
}

namespace {

bool off_centre_roll(const StateResult& result) {
    if (!result.running_trough) return false;
    const auto centre = result.running_trough->roll_forces.find("centre");
    return centre != result.running_trough->roll_forces.end() && centre->second == 0;
}

}  // namespace

void note_running_trough(const BeltModel& model, StateResult& result) {
    if (!model.beyond)
        result.notes.push_back(
            "warning: the running trough behind the last set is not stable by itself: a plane of symmetry ends the belt there "
            "in its place, as with a number of sets");
    else if (off_centre_roll(result))
        result.notes.push_back(
            fmt::format("warning: in the running trough the belt lies on its wing rolls alone, off the centre roll: without "
                        "friction it may "
                        "lie tipped as well{}",
                        model.half ? "; compare with model = \"full\"" : ""));
}

void note_instability(const BeltStability& lowest, Symmetry model, StateResult& result) {
    note_mode(lowest.symmetric, "symmetric", "", result);
    note_mode(lowest.antisymmetric, "antisymmetric",
              model == Symmetry::half ? "; compare with model = \"full\"" : "; friction, which is left out, may hold it",
              result);
    if (lowest.trough_tips)
        result.notes.push_back(
            "warning: in the running trough behind the last set the belt is not stable against tipping: it is too "
            "stiff, or too slack, to lie in the trough without friction");
}

}  // namespace swale
