#include "benchmarks/published/fabric_belt.h"
#include "solver/transition.h"

#include <doctest/doctest.h>

#include <cmath>

// The trough behind the last set, condensed, against a trough that is modelled.

using namespace swale;

namespace {

TransitionCase fabric(double lift) {
    return benchmark::fabric_transition(2000, lift, 2);
}

#ifdef SWALE_LONG_TESTS

// Its tensions need some ten metres to even out: W/2pi sqrt(A11/A66). Data made up in the range of ST 1600.
TransitionCase steel_cord(double lift) {
    TransitionCase transition = benchmark::fabric_transition(3600, lift, 2);
    Section& section = transition.belt.section;
    section.membrane = orthotropic(115000, 123, 61.5, 30.8);
    section.bending = orthotropic(7110, 3780, 1890, 945);
    section.thickness = 19.2;
    section.underside = 8.6;
    section.mass = 28e-9;
    section.foundation = 1;
    transition.states = {{"120 N/mm", 120.0 * 1200, {}}};
    return transition;
}

#endif

StateResult solved(TransitionCase transition, std::optional<int> sets) {
    transition.layout.trough.sets = sets;
    const TransitionResult result = solve_transition(transition);
    REQUIRE_MESSAGE(result.states.front().status == SolveStatus::converged, result.states.front().reason);
    return result.states.front();
}

void check_like_many_sets(const TransitionCase& transition, int many, double tolerance) {
    const StateResult endless = solved(transition, {}), plane = solved(transition, many);
    const double far = plane.edge_strain_max.far_end_error.value();
    CHECK(std::abs(endless.edge_strain_max.value - plane.edge_strain_max.value) <=
          tolerance * plane.edge_strain_max.value + far);
    CHECK(endless.supports[1].force.z() == doctest::Approx(plane.supports[1].force.z()).epsilon(0.02));
}

}  // namespace

// A few sets and the condensed trough; tolerance: the grids' knots lie differently, which moves the edge strain by some 0.2 %.

TEST_CASE("an endless trough acts on a fabric belt as sixteen sets do") {
    check_like_many_sets(fabric(0), 16, 3e-3);
    check_like_many_sets(fabric(104), 16, 3e-3);
}

#ifdef SWALE_LONG_TESTS

TEST_CASE("an endless trough acts on a steel cord belt as thirty two sets do") {
    check_like_many_sets(steel_cord(0), 32, 5e-3);
    check_like_many_sets(steel_cord(104), 32, 5e-3);
}

TEST_CASE("behind few sets the far end's error is the distance from the endless trough") {
    const StateResult few = solved(steel_cord(0), 4), many = solved(steel_cord(0), 32);
    const double off = std::abs(few.edge_strain_max.value - many.edge_strain_max.value);
    CHECK(off > 0.02 * many.edge_strain_max.value);
    CHECK(few.edge_strain_max.far_end_error.value() == doctest::Approx(off).epsilon(0.15));
}

#endif

TEST_CASE("half and full model of an endless trough agree") {
    TransitionCase transition = fabric(0);
    const StateResult half = solved(transition, {});
    transition.settings.model = Symmetry::full;
    const StateResult full = solved(transition, {});
    CHECK(full.edge_strain_max.value == doctest::Approx(half.edge_strain_max.value).epsilon(1e-5));
    CHECK(full.eigenvalue_antisymmetric.value() == doctest::Approx(half.eigenvalue_antisymmetric.value()).epsilon(1e-3));
}
