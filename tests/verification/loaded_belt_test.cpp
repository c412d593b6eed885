#include "benchmarks/published/fabric_belt.h"
#include "materials/gravity.h"
#include "mesh/belt_grid.h"
#include "solver/transition.h"
#include "solver/transition/endless_trough.h"
#include "solver/transition/grid_ladder.h"
#include "tests/verification/reference.h"

#include <doctest/doctest.h>

#include <cmath>

// Bulk on the belt: what carries it, and how deep it makes the belt hang.

using namespace swale;
using namespace swale::verification;

namespace {

TransitionCase loaded(double distance, double grid) {
    TransitionCase transition = benchmark::fabric_transition(distance, 0, grid);
    transition.layout.pulley.end = BeltEnd::head;
    transition.bulk = Bulk{1.2e-9, 20 * std::numbers::pi / 180, 0.8, {}, {}};
    transition.states = {{"full", 45e3, {}, true}};
    return transition;
}

TroughBay solved_bay(const TransitionCase& transition) {
    const TensionState& state = transition.states.front();
    NewtonTimes times;
    const Patch half_bay = half_bay_of(transition.layout, coarse_grid(transition, 3), 3);
    TroughBay bay = solve_trough_bay(transition, state, half_bay, first_scale(transition, state), points_per_span, times);
    REQUIRE_MESSAGE(bay.outcome.converged, bay.outcome.sentence);
    return bay;
}

Eigen::Vector3d centre_line(const TroughBay& bay, double x) {
    return bay.patch.jet(bay.points, x, 0).position;
}

}  // namespace

// A belt too stiff to bend across hangs between flat sets like a beam under tension: with lambda = L sqrt(T/D),
//   w = q L^2/(8 T) - q L^2 tanh(lambda/4)/(2 T lambda)   (Timoshenko, Strength of Materials, part II).
TEST_CASE("between flat sets a belt sags under its load and its weight as the tensioned beam does") {
    TransitionCase transition = loaded(2000, 1);
    transition.layout.trough.angle = 0;
    transition.belt.section.bending = orthotropic(70e3, 1e9, 0, 8e3);
    const TroughBay bay = solved_bay(transition);
    const double L = transition.layout.trough.spacing, width = transition.belt.width, T = 45e3 / width, D = 70e3;
    const double load = bulk_mass(transition) / width;
    const double q = (transition.belt.section.mass + load) * gravity, lambda = L * std::sqrt(T / D);
    const double sag = q * L * L / T * (0.125 - std::tanh(lambda / 4) / (2 * lambda));
    check("sag of a loaded belt",
          {sag, "mm", "tensioned beam", Kind::closed_form, "flat sets, stiff across, bulk of 62 kg/m", 5e-3,
           "the reaction F spreads over c = 4 mm to both sides, which takes up to 3/16 F c/T = 0.015 mm off"},
          centre_line(bay, 0).z() - centre_line(bay, bay.patch.along.end()).z());
}

TEST_CASE("in the running trough the rolls of a set bear the load and the belt of a spacing") {
    const TransitionCase transition = loaded(2000, 2);
    const TroughBay bay = solved_bay(transition);
    // Half a set bears half a bay of half the belt.
    double carried = 0;
    const IdlerSet set{"set", 0, transition.layout.trough.angle, 0, Support::rolls, 0};
    for (const BeltContact& contact : set_contacts(transition, bay.state, bay.patch, bay.scale, set))
        carried += contact.energy->force(bay.points).z();
    const double belt = transition.belt.section.mass * transition.belt.width * bay.scale, load = bulk_mass(transition);
    const double weight = (belt + load) * gravity * transition.layout.trough.spacing / 4;
    check("forces of the rolls of a loaded set",
          {weight, "N", "weight", Kind::closed_form, "bulk of 158 kg/m, quarter of a bay", 1e-5, "equilibrium"}, carried);
}

TEST_CASE("supports of a loaded head transition bear belt and load and the trough behind bears its own") {
    const TransitionResult result = solve_transition(loaded(2400, 2));
    const StateResult& state = result.states.front();
    REQUIRE_MESSAGE(state.status == SolveStatus::converged, state.reason);
    REQUIRE(state.bulk);
    CHECK(std::abs(state.bulk->imbalance) < 1e-5);
    // The bulk reaches from the pulley to the end of the model, half a spacing behind its last set.
    CHECK(state.bulk->length == doctest::Approx(2400 + (result.sets - 0.5) * 1200).epsilon(1e-3));
}

#ifdef SWALE_LONG_TESTS
TEST_CASE("half and full model of a loaded belt agree") {
    TransitionCase transition = loaded(2400, 2);
    const StateResult half = solve_transition(transition).states.front();
    transition.settings.model = Symmetry::full;
    const StateResult full = solve_transition(transition).states.front();
    REQUIRE(full.status == SolveStatus::converged);
    CHECK(full.edge_strain_max.value == doctest::Approx(half.edge_strain_max.value).epsilon(1e-5));
    CHECK(full.bulk->weight == doctest::Approx(half.bulk->weight).epsilon(1e-9));
}
#endif
