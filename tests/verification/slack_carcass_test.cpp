#include "solver/transition.h"

#include "benchmarks/published/fabric_belt.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <utility>

// A whole transition whose carcass bears less in compression: nothing where it is taut, a slacker centre where it is slack.

using namespace swale;
using benchmark::fabric_transition;

namespace {

// Two sets on a coarse grid: what is checked is a matter of the law, not of the resolution.
StateResult solved(double tension_per_width, double share) {
    TransitionCase transition = fabric_transition(1200, 0, 2);
    transition.layout.trough.sets = 2;
    transition.belt.section.compression.share = share;
    transition.states = {{"state", tension_per_width * transition.belt.width, {}}};
    transition.settings.accuracy = 0.2;
    StateResult state = solve_transition(transition).states.front();
    REQUIRE_MESSAGE(state.status == SolveStatus::converged, state.reason);
    return state;
}

double largest_pull(const StateResult& state, bool of_compression) {
    double largest = 0;
    for (const SurfacePoint& point : state.surface.points)
        largest = std::max(largest, of_compression ? -point.force[0] : point.force[0]);
    return largest;
}

}  // namespace

TEST_CASE("a taut belt does not notice that its carcass is softer in compression") {
    StateResult linear = solved(40, 1), soft = solved(40, 0.1);
    CHECK(linear.tension_min.value > 0);
    for (std::size_t k = 0; k < linear.all().size(); ++k)
        CHECK(soft.all()[k]->value == doctest::Approx(linear.all()[k]->value).epsilon(1e-6));
}

TEST_CASE("where the centre is slack a softer carcass bears less compression and takes stretch off the edge") {
    StateResult stiffer = solved(5, 1);
    CHECK(stiffer.tension_min.value < -5);
    for (const double share : {0.3, 0.1}) {
        StateResult softer = solved(5, share);
        CHECK(softer.tension_min.value > stiffer.tension_min.value);
        CHECK(softer.tension_min.value < 0);
        CHECK(softer.centre_strain_min.value < stiffer.centre_strain_min.value);
        CHECK(softer.edge_strain_max.value < stiffer.edge_strain_max.value);
        CHECK(largest_pull(softer, true) < largest_pull(stiffer, true));
        // The whole tension is the same: what isn't pressed need not be pulled.
        CHECK(softer.tension == doctest::Approx(stiffer.tension).epsilon(1e-6));
        stiffer = std::move(softer);
    }
}
