#include "solver/strain/read_places.h"
#include "solver/strain/readings.h"
#include "solver/strain/run_on_line.h"
#include "solver/strain/samples.h"
#include "solver/strain/support_forces.h"
#include "solver/strain/weight_balance.h"
#include "solver/transition/run_on.h"
#include "solver/transition/state_solver.h"

#include <fmt/core.h>

namespace swale {

namespace {

void store_shape(const BeltModel& model, const ControlPoints& points, BeltShape& shape) {
    shape.knots_along = model.patch.along.knots();
    shape.knots_across = model.patch.across.knots();
    shape.control_points = points;
}

// How far the splines miss the held profiles that they are laid on.
void note_held_profiles(const TransitionCase& transition, const BeltModel& model, StateResult& result) {
    const TransitionLayout& layout = transition.layout;
    const double underside = transition.belt.section.underside;
    for (const IdlerSet& set : model.idlers) {
        if (set.support == Support::rolls) continue;
        const bool full = set.name.starts_with("set");
        const TroughProfile profile =
            full ? held_profile(layout, underside) : profile_at(layout, underside, set.angle, set.lift);
        result.notes.push_back(fmt::format("held profile of {}: the belt's spline misses it by at most {:.4f} mm", set.name,
                                           profile_deviation(model.patch.across, profile)));
    }
}

}  // namespace

StateResult recover_judged(const TransitionCase& transition, const TensionState& state, const BeltModel& model,
                           const ControlPoints& points, const Readings& readings) {
    const Section& section = transition.belt.section;
    const TransitionLayout& layout = transition.layout;
    const BeltProbe probe(model.patch, points, section);
    StateResult result;
    result.status = SolveStatus::converged;
    static_cast<Readings&>(result) = readings;
    result.name = state.name;
    result.tension = far_tension(state, model, points);
    result.pulley_tension = pulley_tension(model, points, result.tension);
    result.far_end_force = far_end_force(state, model, points);
    result.far_strain = far_strain(probe);
    result.excluded = reading_range(layout, section, model).excluded;
    result.supports = support_forces(transition, model, points);
    result.bulk = weight_balance(transition, model, result);
    if (model.beyond && layout.same_fore_and_aft()) result.running_trough = running_trough(transition, model.beyond->bay);
    return result;
}

StateResult recover_state(const TransitionCase& transition, const TensionState& state, const BeltModel& model,
                          const ControlPoints& points, const Readings& readings) {
    const Section& section = transition.belt.section;
    const TransitionLayout& layout = transition.layout;
    const BeltProbe probe(model.patch, points, section);
    StateResult result = recover_judged(transition, state, model, points, readings);
    result.along = sample_along(probe, layout);
    result.across = sample_across(probe, layout, model);
    result.surface = sample_surface(probe, model);
    if (layout.pulley.run_on == RunOn::steady)
        result.run_on = run_on_line(model.patch, points, section, run_on_stretch(model.system, section, points),
                                    layout.pulley.diameter / 2 + section.underside);
    store_shape(model, points, result.shape);
    note_held_profiles(transition, model, result);
    return result;
}

}  // namespace swale
